/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file start-probe.h
 * Inside a program whose start is measured: tells when its first frame is done and ends it. Counts
 * widgets, so that a bare window can be made of as many.
 */
#pragma once

#include <gtk/gtk.h>

/** Variable that names a file into which the window's widgets are counted. */
#define START_PROBE_COUNTS "DW_BENCH_COUNTS"

/** Kinds of widgets. All but boxes are one with what GTK makes inside them. */
typedef enum
{
  PROBE_LABEL,
  PROBE_ENTRY,
  PROBE_BUTTON,
  PROBE_ICON_BUTTON,
  PROBE_TOGGLE,
  PROBE_CHECK,
  PROBE_DROP_DOWN,
  PROBE_MENU_BUTTON,
  PROBE_IMAGE,
  PROBE_SEPARATOR,
  PROBE_DRAWING_AREA,
  PROBE_BOX, /**< anything else */
  N_PROBE_KINDS
} probe_kind;

typedef struct
{
  int n[N_PROBE_KINDS][2]; /**< of each kind, hidden and shown */
  int menu_items;          /**< in all menu buttons together */
} probe_counts;

/** After the window's first frame print "time-us pss-mb rss-mb widgets" and leave the process. */
void start_probe_watch (GtkWindow *window);

/** What was counted into a file. */
gboolean start_probe_read (const char *path, probe_counts *counts);
