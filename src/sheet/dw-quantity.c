/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-quantity.h"

#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "model/dw-units.h"
#include "project/dw-decimal.h"

/* One unit: SI = value * 10^power * factor + offset. Decimal units have factor 1, so that reading
 * and writing are exact. */
typedef struct
{
  dw_quantity quantity;
  const char *name;
  int power;
  double factor;
  double offset;
  dw_units shown; /* the choice that shows it; DW_UNITS_METRIC = the one shown otherwise */
  bool is_default;
} unit;

#define DECIMAL(q, name, power)                                                                    \
  {                                                                                                \
    q, name, power, 1.0, 0.0, DW_UNITS_METRIC, false                                               \
  }
#define SHOWN(q, name, power)                                                                      \
  {                                                                                                \
    q, name, power, 1.0, 0.0, DW_UNITS_METRIC, true                                                \
  }
#define OTHER(q, name, factor, when)                                                               \
  {                                                                                                \
    q, name, 0, factor, 0.0, when, false                                                           \
  }

static const unit units_table[] = {
  SHOWN (DW_QUANTITY_NUMBER, "", 0),
  DECIMAL (DW_QUANTITY_NUMBER, "%", -2),
  SHOWN (DW_QUANTITY_LENGTH, "mm", -3),
  DECIMAL (DW_QUANTITY_LENGTH, "cm", -2),
  DECIMAL (DW_QUANTITY_LENGTH, "um", -6),
  DECIMAL (DW_QUANTITY_LENGTH, "µm", -6),
  DECIMAL (DW_QUANTITY_LENGTH, "m", 0),
  OTHER (DW_QUANTITY_LENGTH, "in", DW_INCH, DW_UNITS_INCH),
  OTHER (DW_QUANTITY_LENGTH, "\"", DW_INCH, DW_UNITS_METRIC),
  OTHER (DW_QUANTITY_LENGTH, "thou", DW_THOU, DW_UNITS_METRIC),
  OTHER (DW_QUANTITY_LENGTH, "mil", DW_THOU, DW_UNITS_METRIC),
  SHOWN (DW_QUANTITY_FORCE, "N", 0),
  OTHER (DW_QUANTITY_FORCE, "lbf", DW_LBF, DW_UNITS_LBF),
  SHOWN (DW_QUANTITY_DAMPING, "N s/m", 0),
  OTHER (DW_QUANTITY_DAMPING, "lbf s/in", DW_LBF_PER_INCH, DW_UNITS_LBF),
  SHOWN (DW_QUANTITY_RATE, "N/mm", 3),
  DECIMAL (DW_QUANTITY_RATE, "N/m", 0),
  OTHER (DW_QUANTITY_RATE, "lbf/in", DW_LBF_PER_INCH, DW_UNITS_LBF_PER_INCH),
  OTHER (DW_QUANTITY_RATE, "lb/in", DW_LBF_PER_INCH, DW_UNITS_METRIC),
  OTHER (DW_QUANTITY_RATE, "gf/mm", DW_GF_PER_MM, DW_UNITS_METRIC),
  SHOWN (DW_QUANTITY_SPEED, "m/s", 0),
  DECIMAL (DW_QUANTITY_SPEED, "mm/s", -3),
  OTHER (DW_QUANTITY_SPEED, "in/s", DW_INCH, DW_UNITS_INCH),
  SHOWN (DW_QUANTITY_TEMPERATURE, "°C", 0),
  DECIMAL (DW_QUANTITY_TEMPERATURE, "degC", 0),
  DECIMAL (DW_QUANTITY_TEMPERATURE, "C", 0),
  { DW_QUANTITY_TEMPERATURE, "°F", 0, 1.0 / 1.8, -32.0 / 1.8, DW_UNITS_FAHRENHEIT, false },
  { DW_QUANTITY_TEMPERATURE, "degF", 0, 1.0 / 1.8, -32.0 / 1.8, DW_UNITS_METRIC, false },
  { DW_QUANTITY_TEMPERATURE, "F", 0, 1.0 / 1.8, -32.0 / 1.8, DW_UNITS_METRIC, false },
  SHOWN (DW_QUANTITY_VISCOSITY, "cSt", -6),
  DECIMAL (DW_QUANTITY_VISCOSITY, "mm²/s", -6),
  DECIMAL (DW_QUANTITY_VISCOSITY, "mm2/s", -6),
  SHOWN (DW_QUANTITY_DENSITY, "kg/m³", 0),
  DECIMAL (DW_QUANTITY_DENSITY, "kg/m3", 0),
  DECIMAL (DW_QUANTITY_DENSITY, "g/cm3", 3),
  DECIMAL (DW_QUANTITY_DENSITY, "g/ml", 3),
  SHOWN (DW_QUANTITY_PRESSURE, "kPa", 3),
  DECIMAL (DW_QUANTITY_PRESSURE, "Pa", 0),
  DECIMAL (DW_QUANTITY_PRESSURE, "bar", 5),
  DECIMAL (DW_QUANTITY_PRESSURE, "MPa", 6),
  OTHER (DW_QUANTITY_PRESSURE, "psi", DW_PSI, DW_UNITS_METRIC),
  SHOWN (DW_QUANTITY_MODULUS, "GPa", 9),
  DECIMAL (DW_QUANTITY_MODULUS, "MPa", 6),
  SHOWN (DW_QUANTITY_STRESS, "MPa", 6),
  DECIMAL (DW_QUANTITY_STRESS, "GPa", 9),
  SHOWN (DW_QUANTITY_VOLUME, "ml", -6),
  DECIMAL (DW_QUANTITY_VOLUME, "cm3", -6),
  DECIMAL (DW_QUANTITY_VOLUME, "cm³", -6),
  SHOWN (DW_QUANTITY_MASS, "kg", 0),
  DECIMAL (DW_QUANTITY_MASS, "g", -3),
  OTHER (DW_QUANTITY_MASS, "lb", 0.45359237, DW_UNITS_METRIC),
  SHOWN (DW_QUANTITY_SHEAR_RATE, "1/s", 0),
};

static const unit *
shown_unit (dw_quantity quantity, dw_units units)
{
  const unit *fallback = NULL;

  for (size_t i = 0; i < G_N_ELEMENTS (units_table); i++)
    {
      const unit *u = &units_table[i];
      if (u->quantity != quantity)
        continue;
      if (u->shown != DW_UNITS_METRIC && (units & u->shown) != 0)
        return u;
      if (u->is_default)
        fallback = u;
    }
  g_return_val_if_fail (fallback != NULL, &units_table[0]);
  return fallback;
}

static const unit *
unit_named (dw_quantity quantity, const char *name)
{
  for (size_t i = 0; i < G_N_ELEMENTS (units_table); i++)
    if (units_table[i].quantity == quantity && strcmp (units_table[i].name, name) == 0)
      return &units_table[i];
  /* what no unit of this quantity tells apart may be typed in any case: "MM", "psi" */
  for (size_t i = 0; i < G_N_ELEMENTS (units_table); i++)
    if (units_table[i].quantity == quantity && *name != '\0'
        && g_ascii_strcasecmp (units_table[i].name, name) == 0)
      return &units_table[i];
  return NULL;
}

const char *
dw_quantity_unit (dw_quantity quantity, dw_units units)
{
  return shown_unit (quantity, units)->name;
}

/* Length of the number at the start: sign, digits, one point or comma, exponent. */
static size_t
number_length (const char *text)
{
  const char *p = text;
  bool digits = false;

  if (*p == '+' || *p == '-')
    p++;
  for (; g_ascii_isdigit (*p); p++)
    digits = true;
  if (*p == '.' || *p == ',')
    for (p++; g_ascii_isdigit (*p); p++)
      digits = true;
  if (!digits)
    return 0;
  if (*p == 'e' || *p == 'E')
    {
      const char *q = p + 1;
      if (*q == '+' || *q == '-')
        q++;
      if (g_ascii_isdigit (*q))
        {
          while (g_ascii_isdigit (*q))
            q++;
          p = q;
        }
    }
  return (size_t)(p - text);
}

/* 0.5 in is 12.7 mm, not the 12.700000000000001 that the product of two doubles makes of it: the
 * metric number of 15 digits, all that a double can tell apart in every case. */
static double
without_noise (dw_quantity quantity, double value)
{
  const unit *metric = shown_unit (quantity, DW_UNITS_METRIC);
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];
  double x;

  g_ascii_formatd (buffer, sizeof buffer, "%.15g",
                   dw_quantity_to_shown (quantity, DW_UNITS_METRIC, value));
  return dw_decimal_parse (buffer, metric->power, &x) ? x : value;
}

bool
dw_quantity_parse (dw_quantity quantity, dw_units units, const char *text, double *value)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  const size_t length = number_length (stripped);
  g_autofree char *number = g_strndup (stripped, length);
  g_autofree char *name = g_strstrip (g_strdup (stripped + length));
  const unit *u = *name == '\0' ? shown_unit (quantity, units) : unit_named (quantity, name);
  double x;

  if (length == 0 || u == NULL)
    return false;
  g_strdelimit (number, ",", '.');
  if (!dw_decimal_parse (number, u->power, &x) || !isfinite (x))
    return false;
  if (u->factor != 1.0)
    x = without_noise (quantity, x * u->factor + u->offset);
  *value = x;
  return true;
}

double
dw_quantity_to_shown (dw_quantity quantity, dw_units units, double value)
{
  const unit *u = shown_unit (quantity, units);
  return (value - u->offset) / u->factor / pow (10.0, u->power);
}

/* The locale decides the decimal sign, nothing else: no grouping, which would not read back. */
static char *
localised (const char *text)
{
  const char *point = strchr (text, '.');
  const char *sign = localeconv ()->decimal_point;

  if (point == NULL)
    return g_strdup (text);
  return g_strdup_printf ("%.*s%s%s", (int)(point - text), text, sign, point + 1);
}

/* @p format has one %g-like conversion. */
static char *
formatted (double shown, const char *format)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (buffer, sizeof buffer, format, shown);
  /* digits before the point are read better than an exponent */
  if (strchr (buffer, 'e') != NULL && fabs (shown) < 1e6 && fabs (shown) >= 1.0)
    g_ascii_formatd (buffer, sizeof buffer, "%.0f", shown);
  if (g_str_has_suffix (buffer, "."))
    buffer[strlen (buffer) - 1] = '\0';
  return localised (buffer);
}

char *
dw_quantity_format_digits (dw_quantity quantity, dw_units units, double value, int digits)
{
  char format[16];

  /* # keeps zeros: figures under each other end at the same digit */
  g_snprintf (format, sizeof format, "%%#.%dg", digits);
  return formatted (dw_quantity_to_shown (quantity, units, value), format);
}

/* Enough for half a thousandth of an inch on a piston. */
#define SHORT_DIGITS 4

char *
dw_quantity_format_short (dw_quantity quantity, dw_units units, double value)
{
  const char *shown = dw_quantity_unit (quantity, units);

  if (!g_str_equal (shown, dw_quantity_unit (quantity, DW_UNITS_METRIC)))
    {
      /* back and forth, for the zeros at the end to go */
      g_autofree char *digits = dw_quantity_format_digits (quantity, units, value, SHORT_DIGITS);
      dw_quantity_parse (quantity, units, digits, &value);
    }
  return dw_quantity_format (quantity, units, value);
}

char *
dw_quantity_format (dw_quantity quantity, dw_units units, double value)
{
  const unit *u = shown_unit (quantity, units);
  char buffer[DW_DECIMAL_SIZE];

  if (u->factor == 1.0 && u->offset == 0.0)
    return localised (dw_decimal_format (value, u->power, buffer));
  return formatted (dw_quantity_to_shown (quantity, units, value), "%.6g");
}

char *
dw_quantity_format_change (double percent)
{
  /* 9.95 and more would be written 10.0 */
  const int decimals = fabs (percent) < 9.95 ? 1 : 0;
  const double least = decimals == 1 ? 0.05 : 0.5;

  if (isnan (percent))
    return g_strdup ("");
  return g_strdup_printf ("%s%.*f\u202f%%",
                          fabs (percent) < least ? ""
                          : percent < 0.0        ? "\u2212"
                                                 : "+",
                          decimals, fabs (percent));
}
