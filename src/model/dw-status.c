/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-status.h"

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

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

/* How many numbers a form takes; -1 when it takes something else, or too many of them. */
static int
count_numbers (const char *form)
{
  int n = 0;
  for (const char *p = strchr (form, '%'); p != NULL; p = strchr (p, '%'))
    if (strncmp (p, "%%", 2) == 0)
      p += 2;
    else if (p[1] == '.' && p[2] >= '0' && p[2] <= '9' && p[3] == 'g' && n < DW_ERROR_NUMBERS)
      {
        n++;
        p += 4;
      }
    else
      return -1;
  return n;
}

dw_status
dw_fail (dw_error *err, dw_status code, const char *field, int index, const char *fmt, ...)
{
  va_list ap;

  va_start (ap, fmt);
  dw_fail_va (err, code, field, index, fmt, ap);
  va_end (ap);
  return code;
}

dw_status
dw_fail_va (dw_error *err, dw_status code, const char *field, int index, const char *fmt,
            va_list ap)
{
  va_list numbers;

  assert (fmt != NULL);
  if (err == NULL)
    return code;

  *err = (dw_error){ .code = code, .index = index };
  snprintf (err->field, sizeof err->field, "%s", field);
  va_copy (numbers, ap);
  vsnprintf (err->text, sizeof err->text, fmt, ap);
  const int n = count_numbers (fmt);
  err->form = n >= 0 ? fmt : NULL;
  for (int i = 0; i < n; i++)
    err->numbers[i] = va_arg (numbers, double);
  va_end (numbers);
  return code;
}
