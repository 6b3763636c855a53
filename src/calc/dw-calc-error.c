/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-error.h"

G_DEFINE_QUARK (dw - calc - error - quark, dw_calc_error)

static gboolean set_error (GError **error, dw_calc_status status, const char *format, va_list args)
    G_GNUC_PRINTF (3, 0);

static gboolean
set_error (GError **error, dw_calc_status status, const char *format, va_list args)
{
  g_autofree char *message = g_strdup_vprintf (format, args);
  g_set_error_literal (error, DW_CALC_ERROR, (int)status, message);
  return FALSE;
}

gboolean
dw_calc_misused (GError **error, const char *format, ...)
{
  va_list args;
  va_start (args, format);
  set_error (error, DW_CALC_WRONG_USAGE, format, args);
  va_end (args);
  return FALSE;
}

gboolean
dw_calc_refused (GError **error, const char *format, ...)
{
  va_list args;
  va_start (args, format);
  set_error (error, DW_CALC_BAD_INPUT, format, args);
  va_end (args);
  return FALSE;
}

dw_calc_status
dw_calc_error_get_status (const GError *error)
{
  return error->domain == DW_CALC_ERROR ? (dw_calc_status)error->code : DW_CALC_IO;
}

char *
dw_calc_printable (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_new (NULL);
  for (char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    {
      const gunichar c = g_utf8_get_char (p);
      g_string_append_unichar (out, g_unichar_iscntrl (c) ? 0xFFFD : c);
    }
  return g_string_free (out, FALSE);
}

char *
dw_calc_error_to_text (const GError *error, const char *command)
{
  const char *gap = command != NULL ? " " : "";
  const char *name = command != NULL ? command : "";
  if (dw_calc_error_get_status (error) == DW_CALC_BAD_INPUT)
    return g_strconcat (error->message, "\n", NULL);

  g_autofree char *message = dw_calc_printable (error->message);
  if (dw_calc_error_get_status (error) == DW_CALC_WRONG_USAGE)
    return g_strdup_printf ("dampcalc%s%s: %s; see dampcalc%s%s --help\n", gap, name, message, gap,
                            name);
  return g_strdup_printf ("dampcalc%s%s: %s\n", gap, name, message);
}
