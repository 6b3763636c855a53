/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-bench-steps.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "model/dw-limits.h"
#include "sheet/dw-build-words.h"
#include "sheet/dw-difference-words.h"
#include "sheet/dw-part-words.h"
#include "study/dw-work-oil.h"

/* [m] A piston of another thickness is of no use; see from_new_parts(). */
static const double ANOTHER_THICKNESS = 0.1e-3;

/* Digits of a volume that is poured by hand. */
static const int VOLUME_DIGITS = 3;

/* What the steps are made of. */
typedef struct
{
  GArray *steps;
  const dw_damper *a; /* NULL = from new parts */
  const dw_damper *b;
  const dw_parts *parts;
  const dw_work *work;
  dw_units units;
} teller;

static void
clear_step (gpointer data)
{
  g_free (((dw_bench_step *)data)->text);
}

/* @p text  taken */
static void
add (const teller *t, dw_bench_step_kind kind, char *text)
{
  const dw_bench_step step = { kind, text };
  g_array_append_val (t->steps, step);
}

static char *
length (const teller *t, double value)
{
  return dw_part_words_quantity (DW_QUANTITY_LENGTH, t->units, value);
}

/* Drills are told to a hundredth of a millimetre: "1.40", as they are marked. */
static char *
drill_size (const teller *t, double size)
{
  if ((t->units & DW_UNITS_INCH) != 0)
    return length (t, size);
  g_autofree char *number = g_strdup_printf ("%.2f", size / 1e-3);
  return g_strdup_printf ("%s %s", number, dw_quantity_unit (DW_QUANTITY_LENGTH, t->units));
}

/* ---- piston ---- */

/* "1.50 mm, then 1.60 mm" */
static char *
passes (const teller *t, const dw_drill_passes *p)
{
  GString *text = g_string_new (NULL);
  for (int i = 0; i < p->n; i++)
    {
      g_autofree char *drill = drill_size (t, p->drill[i]);
      g_string_append_printf (text, "%s%s", i > 0 ? _ (", then ") : "", drill);
    }
  return g_string_free (text, FALSE);
}

static char *
holes_words (const teller *t, const dw_work_holes *h)
{
  g_autofree char *drills = passes (t, &h->passes);
  g_autofree char *from = h->from > 0.0 ? drill_size (t, h->from) : NULL;
  if (from == NULL)
    return g_strdup_printf (
        /* Translators: how many holes; the drills in their order */
        h->covered ? ngettext ("%d covered hole from solid: %s", "%d covered holes from solid: %s",
                               (gulong)h->count)
                   : ngettext ("%d open hole from solid: %s", "%d open holes from solid: %s",
                               (gulong)h->count),
        h->count, drills);
  return g_strdup_printf (
      /* Translators: how many holes, their size now; the drills in their order */
      h->covered
          ? ngettext ("%d covered hole of %s: %s", "%d covered holes of %s: %s", (gulong)h->count)
          : ngettext ("%d open hole of %s: %s", "%d open holes of %s: %s", (gulong)h->count),
      h->count, from, drills);
}

/* Where covered holes have to be, unless they are those that have been there before. */
static void
tell_hole_circle (const teller *t)
{
  bool is_new = t->work->piston != DW_WORK_PISTON_DRILL && dw_piston_has_covered (&t->b->piston);
  for (int i = 0; i < t->work->n_holes; i++)
    is_new = is_new || (t->work->holes[i].covered && t->work->holes[i].from <= 0.0);
  if (!is_new)
    return;
  g_autofree char *circle = length (t, t->b->valve.hole_circle);
  /* Translators: diameter of the circle that the holes lie on */
  add (t, DW_STEP_REMARK, g_strdup_printf (_ ("Covered holes lie on a circle of %s."), circle));
}

static void
tell_drilling (const teller *t)
{
  for (int i = 0; i < t->work->n_holes; i++)
    {
      const dw_work_holes *h = &t->work->holes[i];
      add (t, DW_STEP_ITEM, holes_words (t, h));
      if (isnan (h->check))
        continue;
      g_autofree char *check = drill_size (t, h->check);
      /* Translators: a drill as a gauge that is too large for the hole */
      add (t, DW_STEP_REMARK, g_strdup_printf (_ ("Check: %s must not go in."), check));
    }
  if (t->work->n_holes > 0)
    add (t, DW_STEP_ACTION,
         g_strdup (_ ("Deburr both sides by hand, wash out the swarf, dry; seat of the shim "
                      "unhurt?")));
}

static char *
piston_words (const teller *t)
{
  const dw_work *w = t->work;
  g_autofree char *thickness = length (t, t->b->piston.thickness);
  const char *name = w->spare >= 0
                         ? g_array_index (t->parts->pistons, dw_spare_piston, w->spare).name
                         : "";
  switch (w->piston)
    {
    case DW_WORK_PISTON_DRILL:
      return g_strdup (_ ("Drill the piston that is in it, in this order:"));
    case DW_WORK_PISTON_SPARE:
      /* Translators: name of a piston in the parts box */
      return g_strdup_printf (_ ("Take the piston “%s” from the box."), name);
    case DW_WORK_PISTON_SPARE_DRILL:
      return g_strdup_printf (_ ("Take the piston “%s” from the box and drill it, in this order:"),
                              name);
    case DW_WORK_PISTON_NEW:
      if (t->work->n_holes == 0)
        /* Translators: a thickness */
        return g_strdup_printf (
            _ ("Another piston is needed, %s thick and without holes; none is at hand."),
            thickness);
      /* Translators: a thickness */
      return g_strdup_printf (
          _ ("Another piston is needed, %s thick; none at hand can become it. Drill a blank, in "
             "this order:"),
          thickness);
    case DW_WORK_PISTON_KEEP:
      break;
    }
  return NULL;
}

static void
tell_piston (const teller *t)
{
  /* new parts are not under pressure */
  if (t->a != NULL && t->work->opens)
    add (t, DW_STEP_ACTION,
         g_strdup (_ ("Release the gas pressure, then open the damper over a tray.")));
  char *words = piston_words (t);
  if (words == NULL)
    return;
  add (t, DW_STEP_ACTION, words);
  tell_hole_circle (t);
  tell_drilling (t);
}

/* ---- stack ---- */

static void
tell_stack (const teller *t)
{
  const dw_valve *valve = &t->b->valve;
  if (!t->work->restacks)
    return;
  if (valve->n_shims == 0)
    {
      add (t, DW_STEP_ACTION, g_strdup (_ ("Fit the piston without shims.")));
      return;
    }
  add (t, DW_STEP_ACTION,
       g_strdup (valve->opens_on == DW_REBOUND
                     ? _ ("Stack on the side that opens on rebound, from the piston outwards:")
                     : _ ("Stack on the side that opens on compression, from the piston "
                          "outwards:")));
  for (int i = 0; i < valve->n_shims; i++)
    add (t, DW_STEP_ITEM,
         dw_part_words_some (valve->shims[i].count, valve->shims[i].thickness, t->units));
}

/* ---- everything else ---- */

/* Not: how much oil goes in, which is told where it is filled in; what has been chosen with the
 * piston before, its thickness and its hole circle; the side of the stack, told with it; numbers of a
 * valve without shims, which are of no part. */
static bool
is_told_here (const teller *t, const dw_difference *other)
{
  const char *path = other->path;
  return !dw_work_is_assumption (other, t->a, t->b) && strcmp (path, "body.filling") != 0
         && strcmp (path, "piston.thickness") != 0 && strcmp (path, "valve.hole-circle") != 0
         && strcmp (path, "valve.opens-on") != 0
         && (t->b->valve.n_shims > 0 || !g_str_has_prefix (path, "valve."));
}

/* Whether the piston and its stack are put onto it or into it. */
static bool
is_under_stack (const dw_difference *other)
{
  return g_str_has_prefix (other->path, "body.") || g_str_has_prefix (other->path, "valve.");
}

static void
tell_others (const teller *t, bool under_stack)
{
  for (size_t i = 0; t->a != NULL && i < t->work->n_others; i++)
    if (is_told_here (t, &t->work->others[i])
        && is_under_stack (&t->work->others[i]) == under_stack)
      {
        g_autofree char *words = dw_difference_words (&t->work->others[i], t->a, t->b, t->units);
        /* Translators: what is changed: "preload 4 mm → 5 mm" */
        add (t, DW_STEP_ACTION, g_strdup_printf (_ ("Change %s."), words));
      }
}

/* Of new parts there is no before. */
static void
tell_parts (const teller *t)
{
  static const dw_build builds[] = { DW_BUILD_BODY, DW_BUILD_SHIM, DW_BUILD_GAS, DW_BUILD_SPRING };
  for (gsize i = 0; t->a == NULL && i < G_N_ELEMENTS (builds); i++)
    {
      g_autofree char *value = dw_build_value (builds[i], t->b, t->units);
      if (*value == '\0')
        continue;
      /* Translators: name and value of a part: "Spring: 0.72 N/mm, 70 mm long" */
      add (t, DW_STEP_ACTION, g_strdup_printf (_ ("%s: %s"), dw_build_name (builds[i]), value));
    }
}

/* ---- oil ---- */

static char *
volume (const teller *t, double value)
{
  g_autofree char *number = dw_quantity_format_digits (DW_QUANTITY_VOLUME, t->units, value,
                                                       VOLUME_DIGITS);
  return g_strdup_printf ("%s %s", number, dw_quantity_unit (DW_QUANTITY_VOLUME, t->units));
}

static void
tell_bottle (const teller *t, const dw_work_oil *oil)
{
  g_autofree char *one = volume (t, oil->one);
  g_autofree char *both = volume (t, oil->both);
  g_autofree char *grade = isnan (oil->viscosity)
                               ? g_strdup (_ ("own oil"))
                               : dw_part_words_quantity (DW_QUANTITY_VISCOSITY, t->units,
                                                         oil->viscosity);
  /* Translators: an oil, its volume for one damper, its volume for both */
  add (t, DW_STEP_ITEM,
       g_strdup_printf (_ ("%s: %s a damper, %s for left and right"), grade, one, both));
}

static void
tell_oil (const teller *t)
{
  dw_work_oil bottles[DW_MAX_OIL_PARTS];
  bool is_measured = false;
  if (!t->work->refills)
    return;
  const double filling = dw_work_filling (t->b, &is_measured);
  const int n = dw_work_oil_parts (&t->b->oil, filling, bottles);
  add (t, DW_STEP_ACTION,
       g_strdup (n > 1 ? _ ("Mix the oil by volume, for left and right at once, and fill it in:")
                       : _ ("Fill in the oil:")));
  for (int i = 0; i < n; i++)
    tell_bottle (t, &bottles[i]);
  if (!is_measured)
    add (t, DW_STEP_REMARK,
         g_strdup (_ ("Volume estimated from bore and stroke: have a little more at hand.")));
  add (t, DW_STEP_ACTION,
       g_strdup (_ ("Move the shaft slowly until no more bubbles rise, then close.")));
}

/* ---- all of it ---- */

/* A damper that differs from the wanted one by a piston that can not be used: what has to be done
 * from there is what has to be done with new parts. */
static dw_damper
from_new_parts (const dw_damper *b)
{
  dw_damper a = *b;
  const double most = dw_limit_get (DW_LIMIT_PISTON_THICKNESS)->high;
  a.piston.thickness += a.piston.thickness + ANOTHER_THICKNESS <= most ? ANOTHER_THICKNESS
                                                                       : -ANOTHER_THICKNESS;
  return a;
}

/* The box as the study wants it. */
static void
find_work (const dw_damper *a, const dw_damper *b, const dw_parts *parts, dw_work *work)
{
  const guint n_spares = parts->pistons->len;
  const guint n_drills = parts->drills->len;
  g_autofree dw_piston *spares = g_new0 (dw_piston, n_spares + 1);
  g_autofree double *drills = g_new0 (double, n_drills + 1);
  for (guint i = 0; i < n_spares; i++)
    spares[i] = g_array_index (parts->pistons, dw_spare_piston, i).piston;
  for (guint i = 0; i < n_drills; i++)
    drills[i] = g_array_index (parts->drills, dw_drill, i).diameter;
  dw_work_find (a, b, spares, (int)n_spares, drills, (int)n_drills, work);
}

GArray *
dw_bench_steps_make (const dw_damper *a, const dw_damper *b, const dw_parts *parts, dw_units units)
{
  const dw_damper before = a != NULL ? *a : from_new_parts (b);
  g_autofree dw_work *work = g_new0 (dw_work, 1);
  const teller t = { g_array_new (FALSE, FALSE, sizeof (dw_bench_step)), a, b, parts, work, units };
  g_array_set_clear_func (t.steps, clear_step);
  find_work (&before, b, parts, work);
  tell_piston (&t);
  tell_others (&t, true);
  tell_stack (&t);
  tell_others (&t, false);
  tell_parts (&t);
  tell_oil (&t);
  if (t.steps->len == 0)
    add (&t, DW_STEP_REMARK, g_strdup (_ ("Nothing to do: these dampers stay as they are.")));
  else
    add (&t, DW_STEP_ACTION,
         g_strdup (_ ("Hold left and right against each other: both must move alike.")));
  return t.steps;
}
