/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-text.h"

#include <math.h>
#include <string.h>

#include "model/dw-units.h"

/* Outside these a power of ten is shorter than the zeros. */
static const double LEAST_PLAIN = 1e-3;
static const double MOST_PLAIN = 1e6;

/* Blanks that the lines after the first are moved to the right. */
#define HANG 2

char *
dw_calc_plain (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup (g_ascii_formatd (text, sizeof text, "%.6g", value + 0.0));
}

char *
dw_calc_figure (double value, int digits)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  char format[16];

  if (isnan (value))
    return g_strdup ("-");
  if (!isfinite (value) || value == 0.0)
    return dw_calc_plain (value);
  if (fabs (value) < LEAST_PLAIN || fabs (value) >= MOST_PLAIN)
    {
      g_snprintf (format, sizeof format, "%%.%dg", digits);
      return g_strdup (g_ascii_formatd (text, sizeof text, format, value));
    }
  /* the exponent after rounding: 9.996 is 10.0, not 10.00 */
  g_snprintf (format, sizeof format, "%%.%de", digits - 1);
  g_ascii_formatd (text, sizeof text, format, value);
  const int exponent = (int)g_ascii_strtoll (strchr (text, 'e') + 1, NULL, 10);
  g_snprintf (format, sizeof format, "%%.%df", MAX (0, digits - 1 - exponent));
  return g_strdup (g_ascii_formatd (text, sizeof text, format, value));
}

char *
dw_calc_change (double percent)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  if (isnan (percent))
    return g_strdup ("-");
  /* no "-0.0" */
  if (fabs (percent) < 0.05)
    return g_strdup ("0.0");
  return g_strdup (g_ascii_formatd (text, sizeof text, "%+.1f", percent));
}

char *
dw_calc_size (double size)
{
  g_autofree char *text = dw_calc_plain (size / DW_MM);
  const char *point = strchr (text, '.');
  if (point != NULL && strlen (point) > 2)
    return g_steal_pointer (&text);
  return g_strconcat (text, point == NULL ? ".00" : "0", NULL);
}

char *
dw_calc_stack (const dw_shim *shims, int n, bool tells_material, bool is_csv)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (int i = 0; i < n; i++)
    {
      g_autofree char *size = dw_calc_size (shims[i].thickness);
      g_string_append (text, i == 0 ? "" : "+");
      if (is_csv || shims[i].count > 1)
        g_string_append_printf (text, "%dx", shims[i].count);
      g_string_append (text, size);
      if (tells_material)
        {
          g_autofree char *modulus = dw_calc_plain (shims[i].modulus / DW_GPA);
          g_string_append_printf (text, is_csv ? "(%sGPa)" : "(%s GPa)", modulus);
        }
    }
  return g_strdup (text->str);
}

const char *
dw_calc_line_end (const char *text, glong room)
{
  if (g_utf8_strlen (text, -1) <= room)
    return text + strlen (text);
  const char *limit = g_utf8_offset_to_pointer (text, room);
  for (const char *p = limit; p > text; p--)
    if (*p == ' ')
      return p;
  return limit;
}

void
dw_calc_wrap (FILE *file, int indent, gboolean hang, const char *text)
{
  /* names may come from anywhere: without this a broken one would break the measuring */
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  const char *p = valid;
  int margin = indent;
  do
    {
      const char *end = dw_calc_line_end (p, DW_CALC_WIDTH - margin);
      fprintf (file, "%*s%.*s\n", margin, "", (int)(end - p), p);
      margin = indent + (hang ? HANG : 0);
      for (p = end; *p == ' '; p++)
        continue;
    }
  while (*p != '\0');
}

void
dw_calc_wrapf (FILE *file, int indent, gboolean hang, const char *format, ...)
{
  va_list args;
  va_start (args, format);
  g_autofree char *text = g_strdup_vprintf (format, args);
  va_end (args);
  dw_calc_wrap (file, indent, hang, text);
}

void
dw_calc_title (FILE *file, const char *title)
{
  if (*title == '\0')
    return;
  dw_calc_wrap (file, 0, FALSE, title);
  fputc ('\n', file);
}
