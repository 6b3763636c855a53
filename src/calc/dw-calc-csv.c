/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-csv.h"

#include <math.h>
#include <string.h>

#include "project/dw-decimal.h"

dw_calc_csv
dw_calc_csv_begin (FILE *file, const char *header)
{
  fprintf (file, "%s\n", header);
  return (dw_calc_csv){ .file = file };
}

static void
begin_field (dw_calc_csv *csv)
{
  if (csv->is_started)
    fputc (',', csv->file);
  csv->is_started = TRUE;
}

void
dw_calc_csv_text (dw_calc_csv *csv, const char *text)
{
  begin_field (csv);
  if (strpbrk (text, ",\"\r\n") == NULL)
    {
      fputs (text, csv->file);
      return;
    }
  fputc ('"', csv->file);
  for (const char *p = text; *p != '\0'; p++)
    {
      if (*p == '"')
        fputc ('"', csv->file);
      fputc (*p, csv->file);
    }
  fputc ('"', csv->file);
}

void
dw_calc_csv_number (dw_calc_csv *csv, double value, int power)
{
  char text[DW_DECIMAL_SIZE];
  begin_field (csv);
  if (isinf (value) != 0)
    fputs (value < 0.0 ? "-inf" : "inf", csv->file);
  else if (!isnan (value))
    fputs (dw_decimal_format (value, power, text), csv->file);
}

void
dw_calc_csv_end (dw_calc_csv *csv)
{
  fputc ('\n', csv->file);
  csv->is_started = FALSE;
}
