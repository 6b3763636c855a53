/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-notes.h
 * Words in the plot of a map of drill sizes: values on the lines, and what is now. Each looks for a
 * place where it covers no dot and no other word; one that finds none is left out.
 */
#pragma once

#include "draw/dw-chart-label.h"
#include "draw/dw-drill-dots.h"
#include "draw/dw-drill-lines.h"
#include "draw/dw-drill-regions.h"

/** What the words belong to. Borrows everything; changes the lines only. */
typedef struct
{
  const dw_drill_map *map;
  const dw_chart_style *style;
  const dw_text_metrics *metrics;
  const dw_rect *plot;
  dw_drill_lines *lines; /**< cut where a word stands on them */
  const dw_drill_dots *dots;
  const dw_drill_regions *regions;
  double mark_radius; /**< [pt] of now */
} dw_drill_map_notes;

/** Add them: now first, then oils, then levels. */
void dw_drill_map_notes_add (const dw_drill_map_notes *notes, dw_chart_label_list *texts);
