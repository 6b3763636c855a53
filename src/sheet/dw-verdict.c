/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-verdict.h"

#include <glib/gi18n.h>
#include <math.h>

static char *
percent_text (double percent)
{
  const double size = fabs (percent);
  return g_strdup_printf (size < 9.95 ? "%.1f" : "%.0f", size);
}

/* One speed; @p where is translated. */
static char *
at_speed (double percent, const char *where)
{
  g_autofree char *size = percent_text (percent);

  switch (dw_compare_judge (percent))
    {
    case DW_CHANGE_SAME:
      return g_strdup_printf (_ ("the same at %s"), where);
    case DW_CHANGE_LESS:
      return g_strdup_printf (_ ("%s %% softer at %s"), size, where);
    case DW_CHANGE_MORE:
      return g_strdup_printf (_ ("%s %% firmer at %s"), size, where);
    case DW_CHANGE_UNKNOWN:
      break;
    }
  return g_strdup_printf (_ ("not to be compared at %s"), where);
}

static void
add_stroke (GString *text, const char *name, const double change[DW_N_SPEEDS])
{
  const char *const where[DW_N_SPEEDS] = { _ ("low speed"), _ ("middle speed"), _ ("high speed") };
  bool same = true;

  for (int i = 0; i < DW_N_SPEEDS; i++)
    same = same && dw_compare_judge (change[i]) == DW_CHANGE_SAME;
  g_string_append_printf (text, "%s ", name);
  if (same)
    {
      g_string_append (text, _ ("the same"));
      return;
    }
  for (int i = 0; i < DW_N_SPEEDS; i++)
    {
      g_autofree char *one = at_speed (change[i], where[i]);
      g_string_append_printf (text, "%s%s", i > 0 ? ", " : "", one);
    }
}

char *
dw_verdict_text (const dw_comparison *comparison)
{
  GString *text = g_string_new (NULL);

  add_stroke (text, _ ("Compression"), comparison->force[DW_COMPRESSION]);
  g_string_append (text, ". ");
  add_stroke (text, _ ("Rebound"), comparison->force[DW_REBOUND]);
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}
