/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-number-format.h"

#include <glib.h>
#include <math.h>
#include <stdbool.h>
#include <string.h>

/* Beyond it the digits before the point would not fit into any label. */
static const double LARGEST = 1e18;

dw_number_format
dw_number_format_defaults (void)
{
  return (dw_number_format){ .decimal = ".", .minus = "\u2212" };
}

static void
put (const char *text, char *out, size_t room)
{
  g_strlcpy (out, text, room);
  /* a sign that was cut in the middle is none */
  const char *end;
  if (!g_utf8_validate (out, -1, &end))
    out[end - out] = '\0';
}

void
dw_number_fixed (const dw_number_format *format, double value, int decimals, char *out, size_t room)
{
  char digits[DW_NUMBER_ROOM];
  char pattern[16];

  if (isnan (value))
    {
      put ("-", out, room);
      return;
    }
  g_snprintf (pattern, sizeof pattern, "%%.%df", CLAMP (decimals, 0, 12));
  g_ascii_formatd (digits, sizeof digits, pattern, fmin (fabs (value), LARGEST));
  /* what rounds to nothing has no sign */
  const bool negative = value < 0.0 && strspn (digits, "0.") < strlen (digits);
  char *point = strchr (digits, '.');
  if (point != NULL)
    *point = '\0';

  g_autofree char *text = isinf (value)
                              ? g_strconcat (negative ? format->minus : "", "\u221e", NULL)
                              : g_strconcat (negative ? format->minus : "", digits,
                                             point != NULL ? format->decimal : "",
                                             point != NULL ? point + 1 : "", NULL);
  put (text, out, room);
}

/* Decimals that leave so many significant digits, after rounding. */
static int
decimals_for (double value, int digits)
{
  const double size = fabs (value);
  if (!(size > 0.0) || !isfinite (size))
    return 0;
  int decimals = digits - 1 - (int)floor (log10 (size));
  /* 9.996 in three digits is 10.0 */
  if (decimals >= 0 && decimals < 12 && rint (size * pow (10.0, decimals)) >= pow (10.0, digits))
    decimals--;
  return CLAMP (decimals, 0, 12);
}

void
dw_number_steady (const dw_number_format *format, double value, int digits, char *out, size_t room)
{
  dw_number_fixed (format, value, decimals_for (value, digits), out, room);
}

void
dw_number_digits (const dw_number_format *format, double value, int digits, char *out, size_t room)
{
  int decimals = decimals_for (value, digits);
  /* drop decimals while the number stays the same */
  while (decimals > 0)
    {
      const double scaled = rint (value * pow (10.0, decimals));
      if (fmod (scaled, 10.0) != 0.0)
        break;
      decimals--;
    }
  dw_number_fixed (format, value, decimals, out, room);
}
