/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-decimal.h"

#include <float.h>
#include <math.h>
#include <string.h>

/* Exponents past this are zero or infinite for any mantissa that a file may hold (16 MiB). */
#define EXPONENT_BOUND 100000000

/* Seventeen significant digits tell any two doubles apart. */
#define MOST_DIGITS 17

/* Any number of so many digits comes back from the nearest double, unless that is subnormal. */
#define SAFE_DIGITS DBL_DIG

/* Plain notation between these exponents, a power of ten elsewhere. */
#define LEAST_PLAIN_EXPONENT (-7)
#define MOST_PLAIN_EXPONENT  16

static bool
is_blank (char c)
{
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

static const char *
skip_digits (const char *p)
{
  while (g_ascii_isdigit (*p))
    p++;
  return p;
}

static const char *
skip_blanks (const char *p)
{
  while (is_blank (*p))
    p++;
  return p;
}

/* NULL when @p text does not begin with a mantissa, else where that ends. */
static const char *
skip_mantissa (const char *text)
{
  const char *p = text;
  if (*p == '+' || *p == '-')
    p++;

  const char *whole = p;
  p = skip_digits (p);
  ptrdiff_t n_digits = p - whole;
  if (*p == '.')
    {
      const char *fraction = p + 1;
      p = skip_digits (fraction);
      n_digits += p - fraction;
    }
  return n_digits > 0 ? p : NULL;
}

/* The digits at *p, saturating; *p is left alone when there are none. */
static int
read_exponent (const char **p)
{
  const char *q = *p;
  const bool negative = *q == '-';
  if (*q == '+' || *q == '-')
    q++;
  if (!g_ascii_isdigit (*q))
    return 0;

  int exponent = 0;
  for (; g_ascii_isdigit (*q); q++)
    exponent = MIN (exponent * 10 + (*q - '0'), EXPONENT_BOUND);
  *p = q;
  return negative ? -exponent : exponent;
}

bool
dw_decimal_parse (const char *text, int power, double *value)
{
  g_return_val_if_fail (text != NULL && value != NULL, false);

  const char *start = skip_blanks (text);
  const char *end = skip_mantissa (start);
  if (end == NULL)
    return false;

  const char *rest = end;
  int exponent = 0;
  if (*rest == 'e' || *rest == 'E')
    {
      const char *digits = rest + 1;
      exponent = read_exponent (&digits);
      if (digits == rest + 1)
        return false;
      rest = digits;
    }
  if (*skip_blanks (rest) != '\0')
    return false;

  g_autofree char *mantissa = g_strndup (start, (gsize)(end - start));
  g_autofree char *shifted = g_strdup_printf ("%se%d", mantissa, exponent + power);
  /* Adding zero turns "-0" into plain zero, so that equal projects are written alike. */
  *value = g_ascii_strtod (shifted, NULL) + 0.0;
  return true;
}

bool
dw_decimal_parse_int (const char *text, int *value)
{
  g_return_val_if_fail (text != NULL && value != NULL, false);

  const char *start = skip_blanks (text);
  const char *digits = *start == '+' || *start == '-' ? start + 1 : start;
  const char *end = skip_digits (digits);
  if (end == digits || *skip_blanks (end) != '\0')
    return false;

  const gint64 wide = g_ascii_strtoll (start, NULL, 10);
  if (wide < G_MININT || wide > G_MAXINT)
    return false;
  *value = (int)wide;
  return true;
}

/* The fewest digits that give the value back, and the exponent of the first of them. A number of
 * up to SAFE_DIGITS digits shows in so many of them, with zeros behind: fewer need not be tried. */
static int
shortest_digits (double value, char *digits)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  const int start = value >= DBL_MIN ? SAFE_DIGITS - 1 : 0;
  for (int precision = start; precision < MOST_DIGITS; precision++)
    {
      char format[8];
      g_snprintf (format, sizeof format, "%%.%de", precision);
      g_ascii_formatd (text, sizeof text, format, value);
      if (g_ascii_strtod (text, NULL) == value)
        break;
    }

  char *const exponent = strchr (text, 'e');
  *exponent = '\0';
  int n = 0;
  for (const char *p = text; *p != '\0'; p++)
    if (g_ascii_isdigit (*p))
      digits[n++] = *p;
  while (n > 1 && digits[n - 1] == '0')
    n--;
  digits[n] = '\0';
  return (int)g_ascii_strtoll (exponent + 1, NULL, 10);
}

/* digits d1 d2 d3 ..., the point stands after the first one and is moved by the exponent */
static void
place_point (GString *out, const char *digits, int exponent)
{
  const int n = (int)strlen (digits);
  if (exponent < 0)
    {
      g_string_append (out, "0.");
      for (int i = -1; i > exponent; i--)
        g_string_append_c (out, '0');
      g_string_append (out, digits);
      return;
    }
  for (int i = 0; i < MAX (n, exponent + 1); i++)
    {
      if (i == exponent + 1)
        g_string_append_c (out, '.');
      g_string_append_c (out, i < n ? digits[i] : '0');
    }
}

const char *
dw_decimal_format (double value, int power, char *buffer)
{
  if (value == 0.0 || !isfinite (value))
    {
      g_strlcpy (buffer, value == 0.0 ? "0" : isnan (value) ? "nan" : "inf", DW_DECIMAL_SIZE);
      return buffer;
    }

  char digits[MOST_DIGITS + 1];
  const int exponent = shortest_digits (fabs (value), digits) - power;
  g_autoptr (GString) out = g_string_sized_new (DW_DECIMAL_SIZE);
  if (value < 0.0)
    g_string_append_c (out, '-');
  if (exponent >= LEAST_PLAIN_EXPONENT && exponent <= MOST_PLAIN_EXPONENT)
    place_point (out, digits, exponent);
  else
    {
      place_point (out, digits, 0);
      g_string_append_printf (out, "e%d", exponent);
    }
  g_strlcpy (buffer, out->str, DW_DECIMAL_SIZE);
  return buffer;
}
