/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-filter.h
 * Which choices of drill sizes are worth looking at. No GTK here. Pure functions.
 */
#pragma once

#include <glib.h>

#include "study/dw-drill-table.h"

G_BEGIN_DECLS

/** Conditions, each in use or not. Plain value; all zero lets everything pass. */
typedef struct
{
  gboolean has_compression;
  double compression; /**< [%] most that compression may change, at each of the three speeds */
  gboolean has_pack;
  double pack_from; /**< [1] of compression */
  double pack_to;   /**< [1] */
  gboolean has_holes;
  int holes; /**< most that are drilled in one piston */
} dw_drill_filter;

/** Whether a choice passes; what it is now always does. */
gboolean dw_drill_filter_passes (const dw_drill_filter *filter, const dw_drill_row *row);

G_END_DECLS
