/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-sheet-head.h"

#include <string.h>

#include "sheet-laws.h"
#include "sheet-samples.h"

static const dw_sheet_title TITLE = { "Rear quicker on rebound", "Setup sheet", "trial: an idea" };

static int
count_items (const dw_block *block, dw_item_kind kind)
{
  int n = 0;
  for (guint i = 0; i < block->items->len; i++)
    n += g_array_index (block->items, dw_item, i).kind == kind;
  return n;
}

static dw_rect
room_of (const dw_sheet_tools *tools, const dw_block *block)
{
  return (dw_rect){ 0.0, 0.0, tools->frame.width, block->height };
}

START_TEST (the_head_tells_what_it_is_about)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  dw_block *block = dw_sheet_head_make (tools, &TITLE);
  const dw_rect room = room_of (tools, block);
  expect_lawful_block (block, &room, "head");
  g_autofree char *words = sample_block_words (block);
  ck_assert_str_eq (words, "Rear quicker on rebound\n"
                           "Rough club final, drying track (invented example)\n"
                           "Setup sheet\ntrial: an idea\n2026-05-03\n");
}
END_TEST

START_TEST (a_project_of_the_same_name_is_told_once)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_project_set_title (project, TITLE.title);
  dw_sheet_options options = sample_sheet_options (project);
  options.date = NULL;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autofree char *words = sample_block_words (dw_sheet_head_make (tools, &TITLE));
  ck_assert_str_eq (words, "Rear quicker on rebound\nSetup sheet\ntrial: an idea\n");
}
END_TEST

START_TEST (a_blank_head_has_lines_for_name_and_date)
{
  static const dw_sheet_title blank = { "", "Setup sheet", NULL };
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  dw_block *block = dw_sheet_head_make (tools, &blank);
  const dw_rect room = room_of (tools, block);
  expect_lawful_block (block, &room, "blank head");
  /* name, date, and the line below all */
  ck_assert_int_eq (count_items (block, DW_ITEM_LINE), 3);
  g_autofree char *words = sample_block_words (block);
  /* the day it was printed is not the day it is filled in */
  ck_assert_str_eq (words, "Setup\nRough club final, drying track (invented example)\n"
                           "Setup sheet\nDate\n");
}
END_TEST

START_TEST (the_fields_tell_the_meeting_and_the_conditions)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.units = _i == 0 ? DW_UNITS_METRIC : DW_UNITS_FAHRENHEIT;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  dw_block *block = dw_sheet_head_fields (tools, false);
  const dw_rect room = room_of (tools, block);
  expect_lawful_block (block, &room, "fields");
  /* only "Run, place" is left to write in */
  ck_assert_int_eq (count_items (block, DW_ITEM_LINE), 1);
  g_autofree char *words = sample_block_words (block);
  const char *oil = _i == 0 ? "28 °C" : "82.4 °F";
  const char *air = _i == 0 ? "21 °C" : "69.8 °F";
  expect_in_order (
      words, (const char *[]){ "Event\nRough club final (invented)\n",
                               "Track\nClay bowl with a tabletop (invented)\n",
                               "Surface\ndrying clay, ruts in the fast corner\n",
                               "Oil in the dampers\n", oil, "Driver\nExample driver (invented)\n",
                               "Car\n1:8 buggy (invented)\n", "Run, place\n", "Air\n", air, NULL });
}
END_TEST

START_TEST (what_is_not_said_is_a_line_to_write_on)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_project_set_meeting (project, DW_MEETING_TRACK, "");
  dw_project_set_meeting (project, DW_MEETING_CAR, "");
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autoptr (dw_block) some = dw_sheet_head_fields (tools, false);
  g_autoptr (dw_block) none = dw_sheet_head_fields (tools, true);
  ck_assert_int_eq (count_items (some, DW_ITEM_LINE), 3);
  ck_assert_int_eq (count_items (none, DW_ITEM_LINE), 8);
  ck_assert_int_eq (count_items (none, DW_ITEM_TEXT), 8);
  g_autofree char *words = dw_block_get_words (none);
  ck_assert_ptr_null (strstr (words, "invented"));
  ck_assert_ptr_null (strstr (words, "°C"));
}
END_TEST

START_TEST (a_page_that_goes_on_says_of_what)
{
  static const dw_sheet_title blank = { "", "Setup sheet", NULL };
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  g_autofree char *named = sample_block_words (dw_sheet_head_continued (tools, &TITLE));
  g_autofree char *kind = sample_block_words (dw_sheet_head_continued (tools, &blank));
  ck_assert_str_eq (named, "Rear quicker on rebound, continued\nSetup sheet\n");
  ck_assert_str_eq (kind, "Setup sheet, continued\nSetup sheet\n");
}
END_TEST

static const struct
{
  int number, n_pages;
  bool goes_on;
  const char *words;
} feet[] = {
  { 1, 1, false, "\npage 1 of 1\n" },
  { 1, 2, true, "\npage 1 of 2, continued on page 2\n" },
  { 2, 12, false, "\npage 2 of 12\n" },
  { 10, 12, true, "\npage 10 of 12, continued on page 11\n" },
  { 999, 1000, true, "\npage 999 of 1000, continued on page 1000\n" },
};

START_TEST (the_foot_has_caution_source_and_number)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  g_autofree char *long_name = g_strnfill (200, 'W');
  for (int paper = 0; paper < DW_N_PAPERS; paper++)
    for (int k = 0; k < 2; k++)
      {
        options.paper = (dw_paper)paper;
        options.file_name = k == 0 ? "club-final.dampwright" : long_name;
        g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
        dw_block *page = dw_block_new (dw_paper_width (options.paper));
        dw_sheet_foot_add (tools, page, feet[_i].number, feet[_i].n_pages, feet[_i].goes_on);
        const double height = dw_sheet_foot_height (tools);
        const dw_rect room = { tools->frame.x, tools->frame.y + tools->frame.height - height,
                               tools->frame.width, height };
        expect_lawful_block (page, &room, feet[_i].words);
        g_autofree char *words = sample_block_words (page);
        ck_assert_msg (g_str_has_suffix (words, feet[_i].words), "%s", words);
        expect_in_order (
            words, (const char *[]){ "Estimates for scale-model dampers, not for vehicles",
                                     "Check on the car", "local rules and the maker's limits",
                                     "\nDampwright " DW_VERSION ", ", options.file_name, NULL });
      }
}
END_TEST

START_TEST (a_file_without_a_name_is_not_told)
{
  g_autoptr (dw_project) project = sample_project ();
  dw_sheet_options options = sample_sheet_options (project);
  options.file_name = NULL;
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  dw_block *page = dw_block_new (dw_paper_width (options.paper));
  dw_sheet_foot_add (tools, page, 1, 1, false);
  g_autofree char *words = sample_block_words (page);
  ck_assert_ptr_nonnull (strstr (words, "\nDampwright " DW_VERSION "\npage 1 of 1\n"));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/sheet-head");
  TCase *tcase = tcase_create ("sheet-head");
  tcase_add_test (tcase, the_head_tells_what_it_is_about);
  tcase_add_test (tcase, a_project_of_the_same_name_is_told_once);
  tcase_add_test (tcase, a_blank_head_has_lines_for_name_and_date);
  tcase_add_loop_test (tcase, the_fields_tell_the_meeting_and_the_conditions, 0, 2);
  tcase_add_test (tcase, what_is_not_said_is_a_line_to_write_on);
  tcase_add_test (tcase, a_page_that_goes_on_says_of_what);
  tcase_add_loop_test (tcase, the_foot_has_caution_source_and_number, 0, N_ENTRIES (feet));
  tcase_add_test (tcase, a_file_without_a_name_is_not_told);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
