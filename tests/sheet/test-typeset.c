/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-typeset.h"

#include <string.h>

#include "test-support.h"

#define HEBREW "\u05db\u05d9\u05d5\u05d5\u05e0\u05d5\u05df"

static dw_typeset *
make (void)
{
  return dw_typeset_new ("DejaVu Sans");
}

static double
size_of (PangoLayout *layout)
{
  return (double)pango_font_description_get_size (pango_layout_get_font_description (layout))
         / PANGO_SCALE;
}

static double
width_of (PangoLayout *layout)
{
  PangoRectangle logical;
  pango_layout_get_extents (layout, NULL, &logical);
  return (double)logical.width / PANGO_SCALE;
}

/* The text of a line, without the blanks around it; caller frees. */
static char *
line_text (PangoLayout *layout, int line)
{
  const PangoLayoutLine *l = pango_layout_get_line_readonly (layout, line);
  return g_strstrip (g_strndup (pango_layout_get_text (layout) + l->start_index, (gsize)l->length));
}

START_TEST (no_type_is_smaller_than_the_least)
{
  for (int type = 0; type < DW_N_TYPES; type++)
    ck_assert (dw_type_size ((dw_type)type) >= DW_TYPE_LEAST);
  ck_assert (dw_type_size (DW_TYPE_TITLE) > dw_type_size (DW_TYPE_HEADING));
  ck_assert (dw_type_size (DW_TYPE_HEADING) > dw_type_size (DW_TYPE_BODY));
}
END_TEST

START_TEST (a_line_is_as_long_as_its_text)
{
  g_autoptr (dw_typeset) typeset = make ();
  g_autoptr (PangoLayout) one = dw_typeset_line (typeset, (dw_type)_i, "six holes");
  g_autoptr (PangoLayout) two = dw_typeset_line (typeset, (dw_type)_i, "six holes six holes");
  ck_assert (size_of (one) == dw_type_size ((dw_type)_i));
  ck_assert_int_eq (pango_layout_get_line_count (two), 1);
  ck_assert (width_of (two) > 2.0 * width_of (one));
  assert_close (dw_typeset_line_height (typeset, (dw_type)_i) / dw_type_size ((dw_type)_i), 1.2,
                0.0, 0.1, "DejaVu Sans: ascent and descent are 1.164 em");
}
END_TEST

START_TEST (a_line_has_no_second_one)
{
  g_autoptr (dw_typeset) typeset = make ();
  g_autoptr (PangoLayout) line = dw_typeset_line (typeset, DW_TYPE_BODY, "one\ntwo");
  ck_assert_int_eq (pango_layout_get_line_count (line), 1);
}
END_TEST

START_TEST (lines_stay_within_their_width)
{
  static const char text[] = "Only the rear shim differs. Look at the tyres after five laps:\nthe "
                             "inner edge should wear less.";
  static const double widths[] = { 400.0, 180.0, 60.0, 12.0 };
  g_autoptr (dw_typeset) typeset = make ();
  int before = 1;
  for (int i = 0; i < N_ENTRIES (widths); i++)
    {
      g_autoptr (PangoLayout) lines = dw_typeset_lines (typeset, DW_TYPE_BODY, text, widths[i]);
      ck_assert (width_of (lines) <= widths[i] + 0.01);
      ck_assert_int_gt (pango_layout_get_line_count (lines), before);
      ck_assert (size_of (lines) == dw_type_size (DW_TYPE_BODY));
      ck_assert_str_eq (pango_layout_get_text (lines), text);
      before = pango_layout_get_line_count (lines);
    }
}
END_TEST

static const struct
{
  const char *text;
  double width;
  bool is_full; /* in its own size */
  int n_lines;
  const char *why;
} fits[] = {
  { "six", 100.0, true, 1, "has room" },
  { "", 100.0, true, 1, "nothing" },
  { "Rear quicker on rebound", 150.0, false, 1, "smaller letters are enough" },
  { "Rear quicker on rebound", 50.0, false, 3, "goes on in other lines" },
  { "WWWWWWWWWWWWWWWWWWWWWWWW", 100.0, false, 3, "a word without a blank is divided" },
};

START_TEST (what_does_not_fit_becomes_smaller_then_longer)
{
  g_autoptr (dw_typeset) typeset = make ();
  g_autoptr (PangoLayout) layout = dw_typeset_fit (typeset, DW_TYPE_TITLE, fits[_i].text,
                                                   fits[_i].width);
  const double full = dw_type_size (DW_TYPE_TITLE);
  ck_assert_msg ((size_of (layout) == full) == fits[_i].is_full, "%s: %g pt", fits[_i].why,
                 size_of (layout));
  ck_assert (size_of (layout) >= DW_TYPE_LEAST);
  ck_assert_msg (width_of (layout) <= fits[_i].width + 0.01, "%s", fits[_i].why);
  ck_assert_msg (pango_layout_get_line_count (layout) == fits[_i].n_lines, "%s: %d lines",
                 fits[_i].why, pango_layout_get_line_count (layout));
  ck_assert_str_eq (pango_layout_get_text (layout), fits[_i].text);
}
END_TEST

START_TEST (a_number_stays_with_its_unit)
{
  static const char text[] = "bladder 101.3 kPa, 1.2 ml; 6 × 1.35 mm, 4 × 1.1 mm; seal 0.4 N";
  static const char *const pairs[] = { "101.3 kPa", "1.2 ml", "6 × 1.35 mm", "4 × 1.1 mm",
                                       "0.4 N" };
  g_autoptr (dw_typeset) typeset = make ();
  for (double width = 62.0; width < 320.0; width += 0.5)
    {
      g_autoptr (PangoLayout) lines = dw_typeset_values (typeset, DW_TYPE_BODY, text, width);
      int n = 0;
      for (int i = 0; i < pango_layout_get_line_count (lines); i++)
        {
          g_autofree char *line = line_text (lines, i);
          for (int k = 0; k < N_ENTRIES (pairs); k++)
            n += strstr (line, pairs[k]) != NULL;
        }
      ck_assert_msg (n == N_ENTRIES (pairs), "at %g pt", width);
      ck_assert (width_of (lines) <= width + 0.01);
    }
}
END_TEST

/* Only where a line has room for both. */
START_TEST (what_must_be_divided_is)
{
  g_autoptr (dw_typeset) typeset = make ();
  g_autoptr (PangoLayout) lines = dw_typeset_values (typeset, DW_TYPE_BODY, "12 × 12345.678 mm",
                                                     40.0);
  ck_assert_int_ge (pango_layout_get_line_count (lines), 2);
  ck_assert (width_of (lines) <= 40.01);
}
END_TEST

START_TEST (right_to_left_begins_at_the_right)
{
  g_autoptr (dw_typeset) typeset = make ();
  g_autoptr (PangoLayout) lines = dw_typeset_lines (typeset, DW_TYPE_BODY, HEBREW, 200.0);
  PangoRectangle logical;
  pango_layout_get_extents (lines, NULL, &logical);
  assert_close ((double)(logical.x + logical.width) / PANGO_SCALE, 200.0, 0.0, 0.01, "right edge");
  ck_assert (logical.x > 0);
}
END_TEST

START_TEST (a_family_is_taken_and_there_is_a_usual_one)
{
  g_autoptr (dw_typeset) usual = dw_typeset_new (NULL);
  g_autoptr (dw_typeset) mono = dw_typeset_new ("DejaVu Sans Mono");
  g_autoptr (PangoLayout) narrow = dw_typeset_line (mono, DW_TYPE_BODY, "iiii");
  g_autoptr (PangoLayout) wide = dw_typeset_line (mono, DW_TYPE_BODY, "WWWW");
  g_autoptr (PangoLayout) other = dw_typeset_line (usual, DW_TYPE_BODY, "iiii");
  ck_assert (width_of (narrow) == width_of (wide));
  ck_assert_str_eq (pango_font_description_get_family (pango_layout_get_font_description (other)),
                    "Sans");
  dw_typeset_free (NULL);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/typeset");
  TCase *tcase = tcase_create ("typeset");
  tcase_add_test (tcase, no_type_is_smaller_than_the_least);
  tcase_add_loop_test (tcase, a_line_is_as_long_as_its_text, 0, DW_N_TYPES);
  tcase_add_test (tcase, a_line_has_no_second_one);
  tcase_add_test (tcase, lines_stay_within_their_width);
  tcase_add_loop_test (tcase, what_does_not_fit_becomes_smaller_then_longer, 0, N_ENTRIES (fits));
  tcase_add_test (tcase, a_number_stays_with_its_unit);
  tcase_add_test (tcase, what_must_be_divided_is);
  tcase_add_test (tcase, right_to_left_begins_at_the_right);
  tcase_add_test (tcase, a_family_is_taken_and_there_is_a_usual_one);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
