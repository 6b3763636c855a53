/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-sheet-part.h"

#include <string.h>

#include "sheet-laws.h"
#include "sheet-samples.h"

static const dw_sheet_title TITLE = { "Rear quicker", "Setup sheet", NULL };

static dw_block *
block_of (double height)
{
  dw_block *block = dw_block_new (100.0);
  dw_block_add_frame (block, (dw_rect){ 0.0, 0.0, 100.0, height }, 1.0, -1.0);
  block->height = height;
  return block;
}

static char *
page_words (const dw_sheet_part *part, guint page)
{
  return dw_block_get_words (g_ptr_array_index (part->flow.pages, page));
}

/* Everything but the foot, which comes on later. */
static void
expect_above_foot (const dw_sheet_part *part)
{
  dw_rect room = part->tools->frame;
  room.height -= dw_sheet_foot_height (part->tools);
  for (guint i = 0; i < part->flow.pages->len; i++)
    expect_lawful_block (g_ptr_array_index (part->flow.pages, i), &room, "part");
}

#define WITH_PART(tools, part)                                                                     \
  g_autoptr (dw_project) project = sample_project ();                                              \
  const dw_sheet_options options = sample_sheet_options (project);                                 \
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);                                      \
  g_autoptr (dw_sheet_part) part = dw_sheet_part_new (tools, &TITLE)

START_TEST (it_begins_with_its_head)
{
  WITH_PART (tools, part);
  g_autoptr (dw_block) head = dw_sheet_head_make (tools, &TITLE);
  g_autofree char *words = page_words (part, 0);
  ck_assert (g_str_has_prefix (words, "Rear quicker\n"));
  assert_close (dw_sheet_part_room (part),
                tools->frame.height - head->height - dw_sheet_foot_height (tools), 1e-12, 0.0,
                "frame less head and foot");
  dw_sheet_part_free (NULL);
}
END_TEST

START_TEST (a_heading_is_never_the_last_thing_on_a_page)
{
  WITH_PART (tools, part);
  const double room = dw_sheet_part_room (part);
  const double heading = dw_sheet_heading_height (tools);
  /* room for the heading, but not for the line below it */
  dw_sheet_part_add (part, block_of (room - heading - 5.0));
  dw_sheet_part_add_heading (part, "Notes", 10.0);
  dw_sheet_part_add (part, block_of (10.0));
  ck_assert_uint_eq (part->flow.pages->len, 2);
  g_autofree char *first = page_words (part, 0);
  g_autofree char *second = page_words (part, 1);
  ck_assert_ptr_null (strstr (first, "Notes"));
  ck_assert_str_eq (second, "Rear quicker, continued\nSetup sheet\nNotes\n");
  expect_above_foot (part);
}
END_TEST

START_TEST (a_heading_with_room_stays)
{
  WITH_PART (tools, part);
  dw_sheet_part_add (part,
                     block_of (dw_sheet_part_room (part) - dw_sheet_heading_height (tools) - 10.0));
  dw_sheet_part_add_heading (part, "Notes", 10.0);
  dw_sheet_part_add (part, block_of (10.0));
  ck_assert_uint_eq (part->flow.pages->len, 1);
  assert_close (dw_sheet_part_room (part), 0.0, 0.0, 1e-9, "full");
}
END_TEST

START_TEST (writing_lines_fill_the_page_and_no_other)
{
  WITH_PART (tools, part);
  dw_sheet_part_add (part, block_of (dw_sheet_part_room (part) - 47.0));
  const dw_block *page = g_ptr_array_index (part->flow.pages, 0);
  const guint before = page->items->len;
  dw_sheet_part_add_writing_lines (part, 15.0, 8);
  ck_assert_uint_eq (page->items->len - before, 3);
  dw_sheet_part_add_writing_lines (part, 15.0, 8);
  ck_assert_uint_eq (part->flow.pages->len, 1);
  expect_above_foot (part);
}
END_TEST

START_TEST (writing_lines_are_no_more_than_asked_for)
{
  WITH_PART (tools, part);
  const double room = dw_sheet_part_room (part);
  dw_sheet_part_add_writing_lines (part, 15.0, 4);
  assert_close (room - dw_sheet_part_room (part), 60.0, 1e-9, 0.0, "four");
}
END_TEST

static GPtrArray *
numbered_rows (const dw_sheet_tools *tools, char letter, int n)
{
  GPtrArray *rows = dw_rows_new ();
  for (int i = 1; i <= n; i++)
    {
      g_autofree char *text = g_strdup_printf ("%c%04d", letter, i);
      dw_sheet_add_lines (tools, rows, DW_TYPE_BODY, text, dw_sheet_column (tools));
    }
  return rows;
}

/* The longer column says where what follows begins, whichever it is. */
START_TEST (two_columns_run_over_the_same_pages)
{
  WITH_PART (tools, part);
  g_autoptr (GPtrArray) front = numbered_rows (tools, 'a', _i == 0 ? 150 : 30);
  g_autoptr (GPtrArray) rear = numbered_rows (tools, 'b', _i == 0 ? 30 : 150);
  GPtrArray *const columns[DW_N_AXLES] = { front, rear };
  const double line = ((const dw_block *)g_ptr_array_index (front, 0))->height;
  dw_sheet_part_add_columns (part, columns);
  ck_assert_uint_eq (front->len + rear->len, 0);
  dw_sheet_part_add (part, block_of (line));
  ck_assert_uint_eq (part->flow.pages->len, 3);
  for (int letter = 'a'; letter <= 'b'; letter++)
    {
      int next = 1;
      for (guint page = 0; page < 3; page++)
        {
          g_autofree char *words = page_words (part, page);
          g_auto (GStrv) lines = g_strsplit (words, "\n", 0);
          for (char **l = lines; *l != NULL; l++)
            if ((*l)[0] == letter && strlen (*l) == 5)
              ck_assert_int_eq (g_ascii_strtoll (*l + 1, NULL, 10), next++);
        }
      ck_assert_int_eq (next - 1, (letter == 'a') == (_i == 0) ? 150 : 30);
    }
  expect_above_foot (part);
}
END_TEST

static dw_block *
column_heads (const dw_sheet_tools *tools)
{
  return dw_sheet_heading (tools, "Built from", 100.0);
}

START_TEST (heads_of_columns_stand_on_every_later_page)
{
  WITH_PART (tools, part);
  part->heads = column_heads;
  g_autoptr (GPtrArray) rows = numbered_rows (tools, 'a', 200);
  dw_sheet_part_add_rows (part, rows);
  ck_assert_uint_ge (part->flow.pages->len, 3);
  for (guint page = 1; page < part->flow.pages->len; page++)
    {
      g_autofree char *words = page_words (part, page);
      ck_assert (g_str_has_prefix (words, "Rear quicker, continued\nSetup sheet\nBuilt from\na"));
    }
  expect_above_foot (part);
}
END_TEST

static int n_freed;

static void
on_free (gpointer data)
{
  n_freed += data == &n_freed;
}

START_TEST (what_is_kept_for_a_part_is_freed_with_it)
{
  g_autoptr (dw_project) project = sample_project ();
  const dw_sheet_options options = sample_sheet_options (project);
  g_autoptr (dw_sheet_tools) tools = sample_tools (&options);
  dw_sheet_part *part = dw_sheet_part_new (tools, &TITLE);
  part->owned = &n_freed;
  part->free_owned = on_free;
  dw_sheet_part_free (part);
  ck_assert_int_eq (n_freed, 1);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/sheet-part");
  TCase *tcase = tcase_create ("sheet-part");
  tcase_add_test (tcase, it_begins_with_its_head);
  tcase_add_test (tcase, a_heading_is_never_the_last_thing_on_a_page);
  tcase_add_test (tcase, a_heading_with_room_stays);
  tcase_add_test (tcase, writing_lines_fill_the_page_and_no_other);
  tcase_add_test (tcase, writing_lines_are_no_more_than_asked_for);
  tcase_add_loop_test (tcase, two_columns_run_over_the_same_pages, 0, 2);
  tcase_add_test (tcase, heads_of_columns_stand_on_every_later_page);
  tcase_add_test (tcase, what_is_kept_for_a_part_is_freed_with_it);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
