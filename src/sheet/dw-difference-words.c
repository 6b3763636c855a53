/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-difference-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

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

/* "0.15 mm"; NaN stands for what is not given. Caller frees. */
static char *
value (const teller *t, dw_quantity quantity, double x)
{
  if (isnan (x))
    /* Translators: in place of a number: "ride height not given → 24 mm". */
    return g_strdup (_ ("not given"));

  g_autofree char *number = dw_quantity_format_short (quantity, t->units, x);
  const char *unit = dw_quantity_unit (quantity, t->units);

  return *unit != '\0' ? g_strdup_printf ("%s %s", number, unit) : g_steal_pointer (&number);
}

/* "6 × 1.3 mm"; caller frees. */
static char *
some (const teller *t, int count, double length)
{
  g_autofree char *size = value (t, DW_QUANTITY_LENGTH, length);
  return g_strdup_printf ("%d × %s", count, size);
}

static void
tell_change (const teller *t, const char *label, dw_quantity quantity, double before, double after)
{
  g_autofree char *was = value (t, quantity, before);
  g_autofree char *is = value (t, quantity, after);
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
  g_autofree char *was = some (t, d->n_before, p->diameter);
  g_autofree char *is = some (t, d->n_after, q->diameter);

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
  g_autofree char *was = some (t, d->n_before, p->thickness);
  g_autofree char *is = some (t, d->n_after, q->thickness);
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
tell_stack (const teller *t, const dw_valve *valve)
{
  for (int i = 0; i < valve->n_shims; i++)
    {
      g_autofree char *size = dw_quantity_format_short (DW_QUANTITY_LENGTH, t->units,
                                                        valve->shims[i].thickness);
      g_string_append_printf (t->text, "%s%d × %s", i > 0 ? ", " : "", valve->shims[i].count, size);
    }
  g_string_append_printf (t->text, " %s", dw_quantity_unit (DW_QUANTITY_LENGTH, t->units));
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
      tell_stack (t, &t->a->valve);
      g_string_append (t->text, ARROW);
      tell_stack (t, &t->b->valve);
      return;
    }
  if (d->kind == DW_DIFFERENCE_CHANGED)
    {
      tell_shim_change (t, p, q);
      return;
    }
  const gboolean added = d->kind == DW_DIFFERENCE_ADDED;
  const int n = added ? d->n_after : d->n_before;
  g_autofree char *size = value (t, DW_QUANTITY_LENGTH, (added ? q : p)->thickness);
  g_string_append_printf (
      t->text,
      /* Translators: how many, and the thickness of one. */
      added ? ngettext ("%d shim of %s added", "%d shims of %s added", (gulong)n)
            : ngettext ("%d shim of %s removed", "%d shims of %s removed", (gulong)n),
      n, size);
  if (d->before != 0.0 && d->after != 0.0)
    g_string_append_printf (t->text, " (%.0f" ARROW "%.0f)", d->before, d->after);
}

/* ---- filling ---- */

static void
tell_oil (const teller *t, const dw_oil *oil)
{
  switch (oil->kind)
    {
    case DW_OIL_NOMINAL:
      {
        g_autofree char *viscosity = value (t, DW_QUANTITY_VISCOSITY, oil->viscosity);
        g_string_append (t->text, viscosity);
        break;
      }
    case DW_OIL_MEASURED:
      {
        g_autofree char *v1 = value (t, DW_QUANTITY_VISCOSITY, oil->point_viscosity[0]);
        g_autofree char *t1 = value (t, DW_QUANTITY_TEMPERATURE, oil->point_temperature[0]);
        g_autofree char *v2 = value (t, DW_QUANTITY_VISCOSITY, oil->point_viscosity[1]);
        g_autofree char *t2 = value (t, DW_QUANTITY_TEMPERATURE, oil->point_temperature[1]);
        g_autofree char *density = value (t, DW_QUANTITY_DENSITY, oil->density);
        /* Translators: viscosity, temperature, viscosity, temperature, density. */
        g_string_append_printf (t->text, _ ("%s at %s and %s at %s, %s"), v1, t1, v2, t2, density);
        break;
      }
    case DW_OIL_BLEND:
      for (int i = 0; i < oil->n_parts; i++)
        {
          g_autofree char *share = dw_quantity_format (DW_QUANTITY_NUMBER, t->units,
                                                       oil->parts[i].share * 100.0);
          g_autofree char *viscosity = value (t, DW_QUANTITY_VISCOSITY, oil->parts[i].viscosity);
          /* Translators: between the two oils of a blend. */
          g_string_append (t->text, i > 0 ? _ (" with ") : "");
          /* Translators: share in percent, and viscosity with its unit. */
          g_string_append_printf (t->text, _ ("%s %% of %s"), share, viscosity);
        }
      break;
    }
  if (oil->has_thinning)
    {
      g_autofree char *rate = value (t, DW_QUANTITY_SHEAR_RATE, oil->thinning_rate);
      g_autofree char *exponent = value (t, DW_QUANTITY_NUMBER, oil->thinning_exponent);
      /* Translators: the shear rate from which an oil thins, and how fast. */
      g_string_append_printf (t->text, _ (", thinning from %s (exponent %s)"), rate, exponent);
    }
}

static void
tell_gas (const teller *t, const dw_gas *gas)
{
  static const char *const kinds[] = { [DW_GAS_BLADDER] = N_ ("bladder"),
                                       [DW_GAS_VENTED] = N_ ("vented"),
                                       [DW_GAS_EMULSION] = N_ ("emulsion") };

  g_string_append (t->text, _ (kinds[gas->kind]));
  if (gas->kind == DW_GAS_VENTED)
    return;
  g_autofree char *pressure = value (t, DW_QUANTITY_PRESSURE, gas->pressure);
  g_autofree char *volume = value (t, DW_QUANTITY_VOLUME, gas->volume);
  g_string_append_printf (t->text, " %s, %s", pressure, volume);
}

static void
tell_spring (const teller *t, const dw_spring *spring)
{
  g_autofree char *rate = value (t, DW_QUANTITY_RATE, spring->rate);
  g_autofree char *length = value (t, DW_QUANTITY_LENGTH, spring->free_length);
  /* Translators: rate and free length of a spring. */
  g_string_append_printf (t->text, _ ("%s, %s long"), rate, length);
}

/* ---- all of it ---- */

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
    {
      g_string_append (t.text, _ ("oil "));
      tell_oil (&t, &a->oil);
      g_string_append (t.text, ARROW);
      tell_oil (&t, &b->oil);
    }
  else if (strcmp (d->path, "gas.kind") == 0)
    {
      g_string_append (t.text, _ ("gas "));
      tell_gas (&t, &a->gas);
      g_string_append (t.text, ARROW);
      tell_gas (&t, &b->gas);
    }
  else if (strcmp (d->path, "valve.opens-on") == 0)
    g_string_append (t.text, b->valve.opens_on == DW_REBOUND
                                 ? _ ("shim opens on compression → on rebound")
                                 : _ ("shim opens on rebound → on compression"));
  else if (strcmp (d->path, "spring") == 0)
    {
      g_string_append (t.text, _ ("spring "));
      tell_spring (&t, &a->spring);
      g_string_append (t.text, ARROW);
      tell_spring (&t, &b->spring);
    }
  else
    tell_change (&t, _ (d->label), quantity_of (d), d->before, d->after);
  return g_string_free (t.text, FALSE);
}
