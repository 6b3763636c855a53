/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "calc/dw-calc-csv.h"

#include <math.h>
#include <stdlib.h>

#include "test-support.h"

/* What is written into memory; end with captured(). */
static char *bytes;
static size_t n_bytes;

static FILE *
capture (void)
{
  FILE *file = open_memstream (&bytes, &n_bytes);
  ck_assert_ptr_nonnull (file);
  return file;
}

static const char *
captured (FILE *file)
{
  fclose (file);
  return bytes;
}

static void
tear_down (void)
{
  free (bytes);
  bytes = NULL;
}

START_TEST (rows_stand_under_the_header)
{
  FILE *file = capture ();
  dw_calc_csv csv = dw_calc_csv_begin (file, "name,value");
  for (int i = 0; i < 2; i++)
    {
      dw_calc_csv_text (&csv, "x");
      dw_calc_csv_number (&csv, 0.5 + i, 0);
      dw_calc_csv_end (&csv);
    }
  ck_assert_str_eq (captured (file), "name,value\nx,0.5\nx,1.5\n");
}
END_TEST

static const struct
{
  double value;
  int power;
  const char *text;
} numbers[] = {
  { 1.3e-3, -3, "1.3" },
  { 0.1 + 0.2, 0, "0.30000000000000004" },
  { 450e-6, -6, "450" },
  { 0.0, 0, "0" },
  { -0.0, 0, "0" },
  { INFINITY, -3, "inf" },
  { -INFINITY, 0, "-inf" },
  { NAN, 0, "" },
  { 1.0 / 3.0, 0, "0.3333333333333333" },
  { -2.5, 0, "-2.5" },
};

START_TEST (a_number_is_short_and_exact)
{
  FILE *file = capture ();
  dw_calc_csv csv = { .file = file };
  dw_calc_csv_number (&csv, numbers[_i].value, numbers[_i].power);
  ck_assert_str_eq (captured (file), numbers[_i].text);
}
END_TEST

static const struct
{
  const char *text;
  const char *field;
} texts[] = {
  { "trial-1", "trial-1" }, { "", "" },
  { "a b", "a b" },         { "a,b", "\"a,b\"" },
  { "a\"b", "\"a\"\"b\"" }, { "a\nb", "\"a\nb\"" },
};

START_TEST (a_text_is_quoted_when_it_has_to_be)
{
  FILE *file = capture ();
  dw_calc_csv csv = { .file = file };
  dw_calc_csv_text (&csv, texts[_i].text);
  ck_assert_str_eq (captured (file), texts[_i].field);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-csv");
  TCase *tc = tcase_create ("csv");
  tcase_add_checked_fixture (tc, NULL, tear_down);
  tcase_add_test (tc, rows_stand_under_the_header);
  tcase_add_loop_test (tc, a_number_is_short_and_exact, 0, N_ENTRIES (numbers));
  tcase_add_loop_test (tc, a_text_is_quoted_when_it_has_to_be, 0, N_ENTRIES (texts));
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
