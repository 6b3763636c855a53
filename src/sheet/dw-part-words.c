/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-part-words.h"

#include <glib/gi18n.h>
#include <math.h>

char *
dw_part_words_quantity (dw_quantity quantity, dw_units units, double value)
{
  if (isnan (value))
    /* Translators: in place of a number: "ride height not given → 24 mm". */
    return g_strdup (_ ("not given"));

  g_autofree char *number = dw_quantity_format_short (quantity, units, value);
  const char *unit = dw_quantity_unit (quantity, units);

  return *unit != '\0' ? g_strdup_printf ("%s %s", number, unit) : g_steal_pointer (&number);
}

char *
dw_part_words_some (int count, double length, dw_units units)
{
  g_autofree char *size = dw_part_words_quantity (DW_QUANTITY_LENGTH, units, length);
  return g_strdup_printf ("%d × %s", count, size);
}

char *
dw_part_words_holes (const dw_piston *piston, bool covered, dw_units units)
{
  GString *text = g_string_new (NULL);
  for (int i = 0; i < piston->n_holes; i++)
    {
      const dw_holes *holes = &piston->holes[i];
      if (holes->covered != covered)
        continue;
      g_autofree char *some = dw_part_words_some (holes->count, holes->diameter, units);
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", some);
    }
  return g_string_free (text, FALSE);
}

char *
dw_part_words_stack (const dw_valve *valve, dw_units units)
{
  GString *text = g_string_new (NULL);
  for (int i = 0; i < valve->n_shims; i++)
    {
      g_autofree char *size = dw_quantity_format_short (DW_QUANTITY_LENGTH, units,
                                                        valve->shims[i].thickness);
      g_string_append_printf (text, "%s%d × %s", i > 0 ? ", " : "", valve->shims[i].count, size);
    }
  if (valve->n_shims > 0)
    g_string_append_printf (text, " %s", dw_quantity_unit (DW_QUANTITY_LENGTH, units));
  return g_string_free (text, FALSE);
}

/* ---- oil ---- */

static void
tell_points (GString *text, const dw_oil *oil, dw_units units)
{
  g_autofree char *v1 = dw_part_words_quantity (DW_QUANTITY_VISCOSITY, units,
                                                oil->point_viscosity[0]);
  g_autofree char *t1 = dw_part_words_quantity (DW_QUANTITY_TEMPERATURE, units,
                                                oil->point_temperature[0]);
  g_autofree char *v2 = dw_part_words_quantity (DW_QUANTITY_VISCOSITY, units,
                                                oil->point_viscosity[1]);
  g_autofree char *t2 = dw_part_words_quantity (DW_QUANTITY_TEMPERATURE, units,
                                                oil->point_temperature[1]);
  g_autofree char *density = dw_part_words_quantity (DW_QUANTITY_DENSITY, units, oil->density);
  /* Translators: viscosity, temperature, viscosity, temperature, density. */
  g_string_append_printf (text, _ ("%s at %s and %s at %s, %s"), v1, t1, v2, t2, density);
}

static void
tell_blend (GString *text, const dw_oil *oil, dw_units units)
{
  for (int i = 0; i < oil->n_parts; i++)
    {
      g_autofree char *share = dw_quantity_format (DW_QUANTITY_NUMBER, units,
                                                   oil->parts[i].share * 100.0);
      g_autofree char *viscosity = dw_part_words_quantity (DW_QUANTITY_VISCOSITY, units,
                                                           oil->parts[i].viscosity);
      /* Translators: between the two oils of a blend. */
      g_string_append (text, i > 0 ? _ (" with ") : "");
      /* Translators: share in percent, and viscosity with its unit. */
      g_string_append_printf (text, _ ("%s %% of %s"), share, viscosity);
    }
}

char *
dw_part_words_oil (const dw_oil *oil, dw_units units)
{
  GString *text = g_string_new (NULL);
  if (oil->kind == DW_OIL_MEASURED)
    tell_points (text, oil, units);
  else if (oil->kind == DW_OIL_BLEND)
    tell_blend (text, oil, units);
  else
    {
      g_autofree char *viscosity = dw_part_words_quantity (DW_QUANTITY_VISCOSITY, units,
                                                           oil->viscosity);
      g_string_append (text, viscosity);
    }
  if (oil->has_thinning)
    {
      g_autofree char *rate = dw_part_words_quantity (DW_QUANTITY_SHEAR_RATE, units,
                                                      oil->thinning_rate);
      g_autofree char *exponent = dw_part_words_quantity (DW_QUANTITY_NUMBER, units,
                                                          oil->thinning_exponent);
      /* Translators: the shear rate from which an oil thins, and how fast. */
      g_string_append_printf (text, _ (", thinning from %s (exponent %s)"), rate, exponent);
    }
  return g_string_free (text, FALSE);
}

/* ---- gas and spring ---- */

char *
dw_part_words_gas (const dw_gas *gas, dw_units units)
{
  static const char *const kinds[] = { [DW_GAS_BLADDER] = N_ ("bladder"),
                                       [DW_GAS_VENTED] = N_ ("vented"),
                                       [DW_GAS_EMULSION] = N_ ("emulsion") };

  if (gas->kind == DW_GAS_VENTED)
    return g_strdup (_ (kinds[gas->kind]));
  g_autofree char *pressure = dw_part_words_quantity (DW_QUANTITY_PRESSURE, units, gas->pressure);
  g_autofree char *volume = dw_part_words_quantity (DW_QUANTITY_VOLUME, units, gas->volume);
  return g_strdup_printf ("%s %s, %s", _ (kinds[gas->kind]), pressure, volume);
}

char *
dw_part_words_spring (const dw_spring *spring, dw_units units)
{
  g_autofree char *rate = dw_part_words_quantity (DW_QUANTITY_RATE, units, spring->rate);
  g_autofree char *length = dw_part_words_quantity (DW_QUANTITY_LENGTH, units, spring->free_length);
  /* Translators: rate and free length of a spring. */
  return g_strdup_printf (_ ("%s, %s long"), rate, length);
}
