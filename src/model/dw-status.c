/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-status.h"

#include <stdarg.h>
#include <stdio.h>

const char *
dw_status_text (dw_status code)
{
#define DW_STATUS_CASE(name, text)                                                                 \
  case name:                                                                                       \
    return text;
  switch (code)
    {
      DW_STATUS_LIST (DW_STATUS_CASE)
    case DW_N_STATUS:
      break;
    }
#undef DW_STATUS_CASE
  return "unknown status";
}

dw_status
dw_fail (dw_error *err, dw_status code, const char *field, int index, const char *fmt, ...)
{
  va_list ap;

  if (err == NULL)
    return code;

  err->code = code;
  err->index = index;
  snprintf (err->field, sizeof err->field, "%s", field);
  va_start (ap, fmt);
  vsnprintf (err->text, sizeof err->text, fmt, ap);
  va_end (ap);

  return code;
}
