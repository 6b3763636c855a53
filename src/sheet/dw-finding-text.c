/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-finding-text.h"

#include <glib/gi18n.h>
#include <math.h>

/* xgettext finds the model's forms in src/model/dw-damper.c. A translation of a form takes the same
 * numbers: msgfmt sees to that, a compiler cannot. */
#pragma GCC diagnostic ignored "-Wformat-nonliteral"

char *
dw_finding_text (const dw_error *finding)
{
  g_return_val_if_fail (finding != NULL, NULL);

  if (finding->form == NULL)
    return g_strdup (finding->text);
  return g_strdup_printf (_ (finding->form), finding->numbers[0], finding->numbers[1],
                          finding->numbers[2], finding->numbers[3]);
}

/* Caller frees. */
static char *
length_text (double length, dw_units units)
{
  /* a hundredth of a millimetre is what can be measured */
  g_autofree char *number = dw_quantity_format_short (DW_QUANTITY_LENGTH, units,
                                                      round (length * 1e5) / 1e5);
  /* Translators: a length and its unit. */
  return g_strdup_printf (_ ("%s %s"), number, dw_quantity_unit (DW_QUANTITY_LENGTH, units));
}

static const char *
cut_form (dw_ligament_kind kind)
{
  switch (kind)
    {
    case DW_LIGAMENT_EDGE:
      /* Translators: diameter of a hole, and by how much it cuts into something. */
      return _ ("hole of %s cuts the piston's edge by %s");
    case DW_LIGAMENT_SHAFT:
      return _ ("hole of %s cuts the shaft by %s");
    case DW_LIGAMENT_HUB:
      return _ ("hole of %s cuts the hub of the shim by %s");
    case DW_LIGAMENT_HOLES:
    default:
      g_return_val_if_reached ("%s %s");
    }
}

char *
dw_ligament_words (const dw_piston_face *face, const dw_ligament *ligament, dw_units units)
{
  g_return_val_if_fail (face != NULL && ligament != NULL, NULL);

  g_autofree char *diameter = length_text (face->holes[ligament->hole].diameter, units);
  g_autofree char *land = length_text (fabs (ligament->land), units);
  if (ligament->kind != DW_LIGAMENT_HOLES)
    return g_strdup_printf (cut_form (ligament->kind), diameter, land);

  g_autofree char *other = length_text (face->holes[ligament->other].diameter, units);
  if (ligament->land < 0.0)
    /* Translators: two diameters, and by how much the holes overlap. */
    return g_strdup_printf (_ ("holes of %s and %s run into each other by %s"), diameter, other,
                            land);
  g_autofree char *advised = length_text (ligament->advised, units);
  /* Translators: two diameters; the material left between the holes, and how much it should be. */
  return g_strdup_printf (_ ("holes of %s and %s: %s of land, %s advised"), diameter, other, land,
                          advised);
}
