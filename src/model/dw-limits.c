/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-limits.h"

#include <assert.h>
#include <math.h>

#define DW_LIMIT_ROW(id, path, low, high, fallback) [id] = { path, low, high, fallback },
static const dw_limit limits[DW_N_LIMITS] = { DW_LIMIT_LIST (DW_LIMIT_ROW) };
#undef DW_LIMIT_ROW

const dw_limit *
dw_limit_get (dw_limit_id id)
{
  assert ((unsigned)id < DW_N_LIMITS);
  return &limits[id];
}

bool
dw_limit_holds (dw_limit_id id, double value)
{
  const dw_limit *limit = dw_limit_get (id);
  return isfinite (value) && value >= limit->low && value <= limit->high;
}
