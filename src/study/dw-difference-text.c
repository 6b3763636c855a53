/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-difference-text.h"

#include <assert.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "model/dw-units.h"

static const double MPA = 1e6; /* [Pa] in one megapascal */

/* A text that grows up to DW_DIFFERENCE_TEXT bytes. */
typedef struct
{
  char *at;
  size_t left;
} writer;

static void put (writer *w, const char *format, ...) __attribute__ ((format (printf, 2, 3)));

static void
put (writer *w, const char *format, ...)
{
  va_list args;
  va_start (args, format);
  const int n = vsnprintf (w->at, w->left, format, args);
  va_end (args);
  const size_t used = n < 0 ? 0 : (size_t)n < w->left ? (size_t)n : w->left - 1;
  w->at += used;
  w->left -= used;
}

/* @p value  NaN when it is not given */
static void
put_value (writer *w, const dw_difference *d, double value)
{
  if (isnan (value))
    put (w, "not given");
  else
    put (w, "%.6g%s", value / d->unit_size, d->unit);
}

static void
put_number (writer *w, const dw_difference *d)
{
  put (w, "%s ", d->label);
  put_value (w, d, d->before);
  put (w, " -> ");
  put_value (w, d, d->after);
}

/* Index of the lowest bit; 0 when there is none. */
static int
first_of (unsigned set)
{
  for (int i = 0; set >> i != 0; i++)
    if ((set >> i & 1U) != 0)
      return i;
  return 0;
}

static void
put_holes (writer *w, const dw_difference *d, const dw_damper *a, const dw_damper *b)
{
  const dw_holes *p = &a->piston.holes[first_of (d->before_set)];
  const dw_holes *q = &b->piston.holes[first_of (d->after_set)];
  const char *covered = (d->kind == DW_DIFFERENCE_ADDED ? q : p)->covered ? "covered holes"
                                                                          : "holes";

  if (d->kind == DW_DIFFERENCE_ADDED)
    put (w, "%s added: %d x %.6g mm", covered, d->n_after, q->diameter / DW_MM);
  else if (d->kind == DW_DIFFERENCE_REMOVED)
    put (w, "%s removed: %d x %.6g mm", covered, d->n_before, p->diameter / DW_MM);
  else if (p->covered != q->covered)
    put (w, "holes %d x %.6g mm: %s", d->n_before, p->diameter / DW_MM,
         p->covered ? "covered -> open" : "open -> covered");
  else
    put (w, "%s: %d x %.6g mm -> %d x %.6g mm", covered, d->n_before, p->diameter / DW_MM,
         d->n_after, q->diameter / DW_MM);
  if (d->kind != DW_DIFFERENCE_CHANGED && d->before != 0.0 && d->after != 0.0)
    put (w, " (%.6g -> %.6g)", d->before, d->after);
}

/* Shims whose one number is another, or several. */
static void
put_shim_change (writer *w, const dw_difference *d, const dw_shim *p, const dw_shim *q)
{
  static const struct
  {
    const char *path;
    const char *label;
    double unit_size;
    const char *unit;
  } rows[] = {
    { "valve.shim.thickness", "thickness", DW_MM, " mm" },
    { "valve.shim.modulus", "modulus", DW_GPA, " GPa" },
    { "valve.shim.poisson", "Poisson's ratio", 1.0, "" },
    { "valve.shim.strength", "strength", MPA, " MPa" },
  };
  put (w, "shim %d: ", d->index + 1);
  if (d->n_before > 1 && d->n_before == d->n_after)
    put (w, "%d leaves, ", d->n_before);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    if (strcmp (d->path, rows[i].path) == 0)
      {
        put (w, "%s %.6g%s -> %.6g%s", rows[i].label, d->before / rows[i].unit_size, rows[i].unit,
             d->after / rows[i].unit_size, rows[i].unit);
        return;
      }
  put (w, "%d x %.6g mm -> %d x %.6g mm", d->n_before, p->thickness / DW_MM, d->n_after,
       q->thickness / DW_MM);
  if (p->modulus != q->modulus)
    put (w, ", modulus %.6g GPa -> %.6g GPa", p->modulus / DW_GPA, q->modulus / DW_GPA);
  if (p->poisson != q->poisson)
    put (w, ", Poisson's ratio %.6g -> %.6g", p->poisson, q->poisson);
  if (p->strength != q->strength)
    put (w, ", strength %.6g MPa -> %.6g MPa", p->strength / MPA, q->strength / MPA);
}

static void
put_stack (writer *w, const dw_valve *valve)
{
  for (int i = 0; i < valve->n_shims; i++)
    put (w, "%s%d x %.6g", i > 0 ? ", " : "", valve->shims[i].count,
         valve->shims[i].thickness / DW_MM);
  put (w, " mm");
}

static void
put_shims (writer *w, const dw_difference *d, const dw_damper *a, const dw_damper *b)
{
  const dw_shim *p = &a->valve.shims[first_of (d->before_set)];
  const dw_shim *q = &b->valve.shims[first_of (d->after_set)];

  if (d->kind == DW_DIFFERENCE_ORDER)
    {
      put (w, "order of the shims: ");
      put_stack (w, &a->valve);
      put (w, " -> ");
      put_stack (w, &b->valve);
      return;
    }
  if (d->kind == DW_DIFFERENCE_CHANGED)
    {
      put_shim_change (w, d, p, q);
      return;
    }
  const bool added = d->kind == DW_DIFFERENCE_ADDED;
  const int n = added ? d->n_after : d->n_before;
  put (w, "%d shim%s of %.6g mm %s", n, n == 1 ? "" : "s", (added ? q : p)->thickness / DW_MM,
       added ? "added" : "removed");
  if (d->before != 0.0 && d->after != 0.0)
    put (w, " (%.6g -> %.6g)", d->before, d->after);
}

static void
put_oil (writer *w, const dw_oil *oil)
{
  switch (oil->kind)
    {
    case DW_OIL_NOMINAL:
      put (w, "%.6g cSt", oil->viscosity / DW_CST);
      break;
    case DW_OIL_MEASURED:
      put (w, "%.6g cSt at %.6g degC and %.6g cSt at %.6g degC, %.6g kg/m3",
           oil->point_viscosity[0] / DW_CST, oil->point_temperature[0],
           oil->point_viscosity[1] / DW_CST, oil->point_temperature[1], oil->density);
      break;
    case DW_OIL_BLEND:
      for (int i = 0; i < oil->n_parts; i++)
        put (w, "%s%.6g %% of %.6g cSt", i > 0 ? " with " : "", oil->parts[i].share * 100.0,
             oil->parts[i].viscosity / DW_CST);
      break;
    }
  if (oil->has_thinning)
    put (w, ", thinning from %.6g 1/s (exponent %.6g)", oil->thinning_rate, oil->thinning_exponent);
}

static void
put_gas (writer *w, const dw_gas *gas)
{
  static const char *const kinds[] = { "bladder", "vented", "emulsion" };
  put (w, "%s", kinds[gas->kind]);
  if (gas->kind != DW_GAS_VENTED)
    put (w, " %.6g kPa, %.6g ml", gas->pressure / DW_KPA, gas->volume / DW_ML);
}

void
dw_difference_describe (const dw_difference *d, const dw_damper *a, const dw_damper *b, char *text)
{
  assert (d != NULL && a != NULL && b != NULL && text != NULL);

  writer w = { text, DW_DIFFERENCE_TEXT };
  text[0] = '\0';
  if (strncmp (d->path, "piston.holes", 12) == 0)
    put_holes (&w, d, a, b);
  else if (strncmp (d->path, "valve.shim", 10) == 0)
    put_shims (&w, d, a, b);
  else if (strncmp (d->path, "oil", 3) == 0)
    {
      put (&w, "oil ");
      put_oil (&w, &a->oil);
      put (&w, " -> ");
      put_oil (&w, &b->oil);
    }
  else if (strcmp (d->path, "gas.kind") == 0)
    {
      put (&w, "gas ");
      put_gas (&w, &a->gas);
      put (&w, " -> ");
      put_gas (&w, &b->gas);
    }
  else if (strcmp (d->path, "valve.opens-on") == 0)
    put (&w, "shim opens on %s -> on %s", dw_stroke_name (a->valve.opens_on),
         dw_stroke_name (b->valve.opens_on));
  else if (strcmp (d->path, "spring") == 0)
    put (&w, "spring %.6g N/mm, %.6g mm long -> %.6g N/mm, %.6g mm long",
         a->spring.rate / DW_N_PER_MM, a->spring.free_length / DW_MM, b->spring.rate / DW_N_PER_MM,
         b->spring.free_length / DW_MM);
  else
    put_number (&w, d);
}
