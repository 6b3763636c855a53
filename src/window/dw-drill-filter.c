/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-filter.h"

#include <math.h>

gboolean
dw_drill_filter_passes (const dw_drill_filter *filter, const dw_drill_row *row)
{
  const dw_drill_result *r = &row->result;
  const double pack = r->figures.pack[DW_COMPRESSION];

  if (row->n_holes == 0)
    return TRUE;
  if (filter->has_holes && row->n_holes > filter->holes)
    return FALSE;
  if (filter->has_pack && !(pack >= filter->pack_from && pack <= filter->pack_to))
    return FALSE;
  for (int v = 0; filter->has_compression && v < DW_N_SPEEDS; v++)
    if (!(fabs (r->change[DW_COMPRESSION][v]) <= filter->compression))
      return FALSE;
  return TRUE;
}
