/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-difference-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "sheet/dw-part-words.h"

/* Between what was and what is, in every language. */
#define ARROW " → "

typedef struct
{
  const dw_difference *d;
  const dw_damper *a;
  const dw_damper *b;
  dw_units units;
  GString *text;
} teller;

static void
tell_change (const teller *t, const char *label, dw_quantity quantity, double before, double after)
{
  g_autofree char *was = dw_part_words_quantity (quantity, t->units, before);
  g_autofree char *is = dw_part_words_quantity (quantity, t->units, after);
  g_string_append_printf (t->text, "%s %s" ARROW "%s", label, was, is);
}

/* The study names a number's trade unit; the one that measures in it is meant. */
static dw_quantity
quantity_of (const dw_difference *d)
{
  const char *unit = d->unit + strspn (d->unit, " ");

  for (int i = 0; i < DW_N_QUANTITY_KINDS; i++)
    if (strcmp (dw_quantity_unit ((dw_quantity)i, DW_UNITS_METRIC), unit) == 0)
      return (dw_quantity)i;
  return DW_QUANTITY_NUMBER;
}

static int
first_of (unsigned set)
{
  return set != 0 ? g_bit_nth_lsf (set, -1) : 0;
}

/* ---- holes ---- */

static void
tell_holes (const teller *t)
{
  const dw_difference *d = t->d;
  const dw_holes *p = &t->a->piston.holes[first_of (d->before_set)];
  const dw_holes *q = &t->b->piston.holes[first_of (d->after_set)];
  const gboolean covered = (d->kind == DW_DIFFERENCE_ADDED ? q : p)->covered;
  g_autofree char *was = dw_part_words_some (d->n_before, p->diameter, t->units);
  g_autofree char *is = dw_part_words_some (d->n_after, q->diameter, t->units);

  if (d->kind == DW_DIFFERENCE_ADDED)
    /* Translators: "6 × 1.3 mm" follows, count and diameter. */
    g_string_append_printf (t->text,
                            covered ? _ ("covered holes added: %s") : _ ("holes added: %s"), is);
  else if (d->kind == DW_DIFFERENCE_REMOVED)
    g_string_append_printf (
        t->text, covered ? _ ("covered holes removed: %s") : _ ("holes removed: %s"), was);
  else if (p->covered != q->covered)
    g_string_append_printf (
        t->text, p->covered ? _ ("holes %s: covered → open") : _ ("holes %s: open → covered"), was);
  else
    {
      g_string_append_printf (t->text, covered ? _ ("covered holes: %s") : _ ("holes: %s"), was);
      g_string_append_printf (t->text, ARROW "%s", is);
    }
  if (d->kind != DW_DIFFERENCE_CHANGED && d->before != 0.0 && d->after != 0.0)
    g_string_append_printf (t->text, " (%.0f" ARROW "%.0f)", d->before, d->after);
}

/* ---- shims ---- */

static const struct
{
  const char *path;
  const char *label;
  dw_quantity quantity;
  size_t offset; /* of the double in a dw_shim */
} shim_numbers[] = {
  { "valve.shim.thickness", N_ ("thickness"), DW_QUANTITY_LENGTH, offsetof (dw_shim, thickness) },
  { "valve.shim.modulus", N_ ("modulus"), DW_QUANTITY_MODULUS, offsetof (dw_shim, modulus) },
  { "valve.shim.poisson", N_ ("Poisson's ratio"), DW_QUANTITY_NUMBER, offsetof (dw_shim, poisson) },
  { "valve.shim.strength", N_ ("strength"), DW_QUANTITY_STRESS, offsetof (dw_shim, strength) },
};

static double
number_at (const dw_shim *shim, size_t offset)
{
  return *(const double *)(const void *)((const char *)shim + offset);
}

/* Shims whose one number is another, or several. */
static void
tell_shim_change (const teller *t, const dw_shim *p, const dw_shim *q)
{
  const dw_difference *d = t->d;

  /* Translators: the place of shims in the stack, from the piston outwards. */
  g_string_append_printf (t->text, _ ("shim %d: "), d->index + 1);
  if (d->n_before > 1 && d->n_before == d->n_after)
    /* Translators: so many equal shims change; what changes follows. */
    g_string_append_printf (t->text, ngettext ("%d leaf, ", "%d leaves, ", (gulong)d->n_before),
                            d->n_before);
  for (size_t i = 0; i < G_N_ELEMENTS (shim_numbers); i++)
    if (strcmp (d->path, shim_numbers[i].path) == 0)
      {
        tell_change (t, _ (shim_numbers[i].label), shim_numbers[i].quantity, d->before, d->after);
        return;
      }
  g_autofree char *was = dw_part_words_some (d->n_before, p->thickness, t->units);
  g_autofree char *is = dw_part_words_some (d->n_after, q->thickness, t->units);
  g_string_append_printf (t->text, "%s" ARROW "%s", was, is);
  for (size_t i = 1; i < G_N_ELEMENTS (shim_numbers); i++)
    {
      const double before = number_at (p, shim_numbers[i].offset);
      const double after = number_at (q, shim_numbers[i].offset);
      if (before == after)
        continue;
      g_string_append (t->text, ", ");
      tell_change (t, _ (shim_numbers[i].label), shim_numbers[i].quantity, before, after);
    }
}

static void
tell_shims (const teller *t)
{
  const dw_difference *d = t->d;
  const dw_shim *p = &t->a->valve.shims[first_of (d->before_set)];
  const dw_shim *q = &t->b->valve.shims[first_of (d->after_set)];

  if (d->kind == DW_DIFFERENCE_ORDER)
    {
      g_string_append (t->text, _ ("order of the shims: "));
      g_autofree char *was = dw_part_words_stack (&t->a->valve, t->units);
      g_autofree char *is = dw_part_words_stack (&t->b->valve, t->units);
      g_string_append_printf (t->text, "%s" ARROW "%s", was, is);
      return;
    }
  if (d->kind == DW_DIFFERENCE_CHANGED)
    {
      tell_shim_change (t, p, q);
      return;
    }
  const gboolean added = d->kind == DW_DIFFERENCE_ADDED;
  const int n = added ? d->n_after : d->n_before;
  g_autofree char *size = dw_part_words_quantity (DW_QUANTITY_LENGTH, t->units,
                                                  (added ? q : p)->thickness);
  g_string_append_printf (
      t->text,
      /* Translators: how many, and the thickness of one. */
      added ? ngettext ("%d shim of %s added", "%d shims of %s added", (gulong)n)
            : ngettext ("%d shim of %s removed", "%d shims of %s removed", (gulong)n),
      n, size);
  if (d->before != 0.0 && d->after != 0.0)
    g_string_append_printf (t->text, " (%.0f" ARROW "%.0f)", d->before, d->after);
}

/* ---- all of it ---- */

/* @p was, @p is  taken */
static void
tell_part (const teller *t, const char *name, char *was, char *is)
{
  g_string_append_printf (t->text, "%s%s" ARROW "%s", name, was, is);
  g_free (was);
  g_free (is);
}

char *
dw_difference_words (const dw_difference *d, const dw_damper *a, const dw_damper *b, dw_units units)
{
  g_return_val_if_fail (d != NULL && a != NULL && b != NULL, NULL);

  const teller t = { d, a, b, units, g_string_new (NULL) };
  if (g_str_has_prefix (d->path, "piston.holes"))
    tell_holes (&t);
  else if (g_str_has_prefix (d->path, "valve.shim"))
    tell_shims (&t);
  else if (g_str_has_prefix (d->path, "oil"))
    tell_part (&t, _ ("oil "), dw_part_words_oil (&a->oil, units),
               dw_part_words_oil (&b->oil, units));
  else if (strcmp (d->path, "gas.kind") == 0)
    tell_part (&t, _ ("gas "), dw_part_words_gas (&a->gas, units),
               dw_part_words_gas (&b->gas, units));
  else if (strcmp (d->path, "valve.opens-on") == 0)
    g_string_append (t.text, b->valve.opens_on == DW_REBOUND
                                 ? _ ("shim opens on compression → on rebound")
                                 : _ ("shim opens on rebound → on compression"));
  else if (strcmp (d->path, "spring") == 0)
    tell_part (&t, _ ("spring "), dw_part_words_spring (&a->spring, units),
               dw_part_words_spring (&b->spring, units));
  else
    tell_change (&t, _ (d->label), quantity_of (d), d->before, d->after);
  return g_string_free (t.text, FALSE);
}
