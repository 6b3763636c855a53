/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-label.h"

#include <glib.h>

void
dw_chart_label_list_clear (dw_chart_label_list *list)
{
  for (int i = 0; i < list->n; i++)
    g_free (list->labels[i].text);
  list->n = 0;
}

dw_rect
dw_text_box (const dw_text_metrics *metrics, dw_text_role role, const char *text, dw_spot corner)
{
  const dw_text_extent extent = dw_text_measure (metrics, text, role);
  return (dw_rect){ corner.x, corner.y, extent.width, extent.ascent + extent.descent };
}

dw_chart_label *
dw_chart_label_list_add (dw_chart_label_list *list, const dw_text_metrics *metrics,
                         dw_label_kind kind, dw_text_role role, const char *text, dw_spot corner,
                         double width)
{
  if (list->n == DW_MAX_LABELS)
    return NULL;
  g_autofree char *shown = dw_text_ellipsize (metrics, text, role, width);
  if (*shown == '\0')
    return NULL;

  const dw_text_extent extent = dw_text_measure (metrics, shown, role);
  dw_chart_label *label = &list->labels[list->n++];
  *label = (dw_chart_label){ .text = g_steal_pointer (&shown),
                             .kind = kind,
                             .role = role,
                             .slot = -1,
                             .box = { corner.x, corner.y, extent.width,
                                      extent.ascent + extent.descent },
                             .at = { corner.x, corner.y + extent.ascent } };
  return label;
}

bool
dw_chart_label_list_meets (const dw_chart_label_list *list, const dw_rect *box)
{
  for (int i = 0; i < list->n; i++)
    if (dw_rect_overlaps (&list->labels[i].box, box))
      return true;
  return false;
}

const dw_chart_label *
dw_chart_label_list_find (const dw_chart_label_list *list, dw_label_kind kind)
{
  for (int i = 0; i < list->n; i++)
    if (list->labels[i].kind == kind)
      return &list->labels[i];
  return NULL;
}
