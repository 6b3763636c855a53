/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-paper.h"

#include <string.h>

#include "test-support.h"

static const struct
{
  dw_paper paper;
  const char *name;
  double width;  /* [mm] */
  double height; /* [mm] */
  const char *why;
} rows[] = {
  { DW_PAPER_A4, "a4", 210.0, 297.0, "ISO 216" },
  { DW_PAPER_LETTER, "letter", 215.9, 279.4, "ANSI/ASME Y14.1, 8.5 by 11 inches" },
};

START_TEST (sizes_are_those_of_the_standards)
{
  const double point = 25.4 / 72.0;
  assert_close (dw_paper_width (rows[_i].paper) * point, rows[_i].width, 1e-12, 0.0, rows[_i].why);
  assert_close (dw_paper_height (rows[_i].paper) * point, rows[_i].height, 1e-12, 0.0,
                rows[_i].why);
}
END_TEST

START_TEST (a_paper_is_found_by_its_name)
{
  dw_paper paper = DW_N_PAPERS;
  ck_assert_str_eq (dw_paper_name (rows[_i].paper), rows[_i].name);
  ck_assert (dw_paper_find (rows[_i].name, &paper));
  ck_assert_int_eq ((int)paper, (int)rows[_i].paper);
}
END_TEST

START_TEST (no_other_name_is_a_paper)
{
  static const char *const names[] = { "", "A4", "a4 ", "a", "legal", "a5" };
  dw_paper paper = DW_PAPER_LETTER;
  for (int i = 0; i < N_ENTRIES (names); i++)
    ck_assert_msg (!dw_paper_find (names[i], &paper), "\"%s\"", names[i]);
  ck_assert_int_eq ((int)paper, DW_PAPER_LETTER);
}
END_TEST

static const struct
{
  double width;
  double height;
  dw_paper paper;
  const char *why;
} shapes[] = {
  { 595.0, 842.0, DW_PAPER_A4, "A4 in whole points" },
  { 842.0, 1191.0, DW_PAPER_A4, "A3 has the shape of A4" },
  { 420.0, 595.0, DW_PAPER_A4, "A5 as well" },
  { 612.0, 792.0, DW_PAPER_LETTER, "Letter" },
  { 612.0, 1008.0, DW_PAPER_A4, "Legal is longer than either" },
  { 500.0, 500.0, DW_PAPER_LETTER, "a square is shorter than either" },
};

START_TEST (another_page_is_nearest_in_shape)
{
  ck_assert_msg (dw_paper_nearest (shapes[_i].width, shapes[_i].height) == shapes[_i].paper, "%s",
                 shapes[_i].why);
}
END_TEST

/* Office printers leave out up to a quarter of an inch; half an inch is enough for a binder's holes,
 * whose middles lie 12 mm from the edge (ISO 838). */
START_TEST (a_printer_reaches_all_of_the_frame)
{
  const dw_rect frame = dw_paper_frame (rows[_i].paper);
  const double right = dw_paper_width (rows[_i].paper) - frame.x - frame.width;
  const double bottom = dw_paper_height (rows[_i].paper) - frame.y - frame.height;
  ck_assert (frame.x >= 36.0 && frame.y >= 36.0);
  assert_close (right, frame.x, 1e-12, 0.0, "left and right alike");
  assert_close (bottom, frame.y, 1e-12, 0.0, "above and below alike");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/paper");
  TCase *tcase = tcase_create ("paper");
  tcase_add_loop_test (tcase, sizes_are_those_of_the_standards, 0, N_ENTRIES (rows));
  tcase_add_loop_test (tcase, a_paper_is_found_by_its_name, 0, N_ENTRIES (rows));
  tcase_add_test (tcase, no_other_name_is_a_paper);
  tcase_add_loop_test (tcase, another_page_is_nearest_in_shape, 0, N_ENTRIES (shapes));
  tcase_add_loop_test (tcase, a_printer_reaches_all_of_the_frame, 0, N_ENTRIES (rows));
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
