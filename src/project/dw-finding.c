/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-finding.h"

#include <string.h>

struct dw_findings
{
  GPtrArray *held; /* of dw_finding, owned, in the order of their lines */
  guint n_dropped;
  guint n_errors;
};

static void
finding_free (gpointer data)
{
  dw_finding *finding = data;
  g_free (finding->element);
  g_free (finding->attribute);
  g_free (finding->value);
  g_free (finding->message);
  g_free (finding);
}

dw_findings *
dw_findings_new (void)
{
  dw_findings *findings = g_new0 (dw_findings, 1);
  findings->held = g_ptr_array_new_with_free_func (finding_free);
  return findings;
}

void
dw_findings_free (dw_findings *findings)
{
  if (findings == NULL)
    return;
  g_ptr_array_unref (findings->held);
  g_free (findings);
}

/* What stands in a file ends up on a terminal: no escape sequences, no broken UTF-8. */
static char *
printable (char *text)
{
  char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_sized_new (strlen (valid));
  for (char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    {
      const gunichar c = g_utf8_get_char (p);
      g_string_append_unichar (out, g_unichar_iscntrl (c) ? 0xFFFD : c);
    }
  g_free (valid);
  g_free (text);
  return g_string_free (out, FALSE);
}

/* Index of the last warning, -1 when there is none. */
static int
last_warning (const dw_findings *findings)
{
  for (int i = (int)findings->held->len - 1; i >= 0; i--)
    if (dw_findings_get (findings, (guint)i)->severity == DW_WARNING)
      return i;
  return -1;
}

/* Whether there is place for one more, after a warning has made way for an error if need be. */
static gboolean
make_room (dw_findings *findings, dw_severity severity)
{
  if (findings->held->len < DW_FINDINGS_MAX)
    return TRUE;

  findings->n_dropped++;
  const int victim = severity == DW_ERROR ? last_warning (findings) : -1;
  if (victim < 0)
    return FALSE;
  g_ptr_array_remove_index (findings->held, (guint)victim);
  return TRUE;
}

void
dw_findings_add (dw_findings *findings, dw_severity severity, int line, const char *element,
                 const char *attribute, const char *value, const char *format, ...)
{
  g_return_if_fail (findings != NULL);

  if (severity == DW_ERROR)
    findings->n_errors++;
  if (!make_room (findings, severity))
    return;

  va_list args;
  va_start (args, format);
  dw_finding *finding = g_new0 (dw_finding, 1);
  finding->severity = severity;
  finding->line = line;
  finding->element = g_strdup (element);
  finding->attribute = g_strdup (attribute);
  finding->value = g_strdup (value);
  finding->message = printable (g_strdup_vprintf (format, args));
  va_end (args);

  guint place = findings->held->len;
  while (place > 0 && dw_findings_get (findings, place - 1)->line > line)
    place--;
  g_ptr_array_insert (findings->held, (int)place, finding);
}

guint
dw_findings_get_n (const dw_findings *findings)
{
  return findings->held->len;
}

guint
dw_findings_get_n_dropped (const dw_findings *findings)
{
  return findings->n_dropped;
}

guint
dw_findings_get_n_errors (const dw_findings *findings)
{
  return findings->n_errors;
}

const dw_finding *
dw_findings_get (const dw_findings *findings, guint index)
{
  g_return_val_if_fail (index < findings->held->len, NULL);

  return g_ptr_array_index (findings->held, index);
}

char *
dw_finding_to_text (const dw_finding *finding, const char *file)
{
  const char *kind = finding->severity == DW_WARNING ? "warning: " : "";
  if (finding->line <= 0)
    return g_strdup_printf ("%s: %s%s", file, kind, finding->message);
  return g_strdup_printf ("%s:%d: %s%s", file, finding->line, kind, finding->message);
}

char *
dw_findings_to_text (const dw_findings *findings, const char *file)
{
  GString *out = g_string_new (NULL);
  for (guint i = 0; i < findings->held->len; i++)
    {
      g_autofree char *line = dw_finding_to_text (dw_findings_get (findings, i), file);
      g_string_append_printf (out, "%s\n", line);
    }
  if (findings->n_dropped > 0)
    g_string_append_printf (out, "%s: and %u more\n", file, findings->n_dropped);
  return g_string_free (out, FALSE);
}
