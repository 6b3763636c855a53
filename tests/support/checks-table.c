/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks-table.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

check_row
check_row_read (const test_table *table, size_t i)
{
  const char *inputs = test_table_text (table, i, "inputs");
  const char *tolerance = test_table_text (table, i, "tolerance");
  check_row row = { .id = test_table_text (table, i, "id"),
                    .source = test_table_text (table, i, "source"),
                    .expected = test_table_number (table, i, "expected") };
  const char *end = strchr (inputs, ';');
  const size_t length = end != NULL ? (size_t)(end - inputs) : strlen (inputs);

  ck_assert_msg (strncmp (inputs, "calc=", 5) == 0, "%s: no calc", row.id);
  snprintf (row.calc, sizeof row.calc, "%.*s", (int)length - 5, inputs + 5);
  snprintf (row.inputs, sizeof row.inputs, "%s", end != NULL ? end : "");
  if (strncmp (tolerance, "rel=", 4) == 0)
    row.rel = strtod (tolerance + 4, NULL);
  else if (strncmp (tolerance, "abs=", 4) == 0)
    row.abs = strtod (tolerance + 4, NULL);
  else
    ck_abort_msg ("%s: tolerance %s", row.id, tolerance);
  /* a value printed with 8 digits cannot be met better than that */
  row.rel = row.rel < 1e-7 && row.abs == 0.0 ? 1e-7 : row.rel;
  return row;
}

const char *
check_input_text (const check_row *row, const char *name)
{
  static char text[64];
  char key[80];

  snprintf (key, sizeof key, ";%s=", name);
  const char *at = strstr (row->inputs, key);
  ck_assert_msg (at != NULL, "%s: no input %s in %s", row->id, name, row->inputs);
  at += strlen (key);
  snprintf (text, sizeof text, "%.*s", (int)strcspn (at, ";"), at);
  return text;
}

double
check_input (const check_row *row, const char *name)
{
  return strtod (check_input_text (row, name), NULL);
}
