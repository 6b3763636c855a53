/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-block.h"

#include <string.h>

#include "sheet/dw-typeset.h"
#include "test-support.h"

static PangoLayout *
text_of (const char *text, double width)
{
  g_autoptr (dw_typeset) typeset = dw_typeset_new ("DejaVu Sans");
  return width > 0.0 ? dw_typeset_lines (typeset, DW_TYPE_BODY, text, width)
                     : dw_typeset_line (typeset, DW_TYPE_BODY, text);
}

static const dw_item *
item (const dw_block *block, guint i)
{
  ck_assert_uint_lt (i, block->items->len);
  return &g_array_index (block->items, dw_item, i);
}

static int n_freed;
static int n_painted;

static void
count_free (G_GNUC_UNUSED gpointer data)
{
  n_freed++;
}

/* A square of 4 by 3 at the origin. */
static void
paint_square (cairo_t *cr, gpointer data)
{
  n_painted++;
  ck_assert_ptr_eq (data, &n_painted);
  cairo_rectangle (cr, 0.0, 0.0, 4.0, 3.0);
  cairo_fill (cr);
}

/* Where ink is when a block is painted. */
static dw_rect
ink_of (const dw_block *block)
{
  dw_rect ink;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  dw_block_paint (block, cr);
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

START_TEST (a_new_block_is_empty)
{
  g_autoptr (dw_block) block = dw_block_new (100.0);
  g_autofree char *words = dw_block_get_words (block);
  ck_assert (block->width == 100.0 && block->height == 0.0 && block->items->len == 0);
  ck_assert_str_eq (words, "");
  dw_block_free (NULL);
}
END_TEST

START_TEST (a_text_covers_its_box)
{
  g_autoptr (dw_block) block = dw_block_new (100.0);
  const double height = dw_block_add_text (block, text_of ("Hxg", 0.0), 10.0, 20.0);
  const dw_item *it = item (block, 0);
  ck_assert_int_eq ((int)it->kind, DW_ITEM_TEXT);
  ck_assert (it->box.x == 10.0 && it->box.y == 20.0 && it->box.height == height);
  const dw_rect ink = ink_of (block);
  ck_assert (ink.x >= 9.0 && ink.x + ink.width <= 10.0 + it->box.width + 1.0);
  ck_assert (ink.y >= 20.0 && ink.y + ink.height <= 20.0 + height + 1.0);
}
END_TEST

/* One line, lines that are broken, and lines that stand at the right of their width. */
START_TEST (a_text_at_the_right_ends_there)
{
  static const struct
  {
    const char *text;
    double width;
    PangoAlignment alignment;
  } rows[] = {
    { "12", 0.0, PANGO_ALIGN_LEFT },
    { "rear quicker on rebound", 60.0, PANGO_ALIGN_LEFT },
    { "4.61e+06", 30.0, PANGO_ALIGN_RIGHT },
    { "\u05db\u05d9\u05d5\u05d5\u05e0\u05d5\u05df", 90.0, PANGO_ALIGN_LEFT },
  };
  g_autoptr (dw_block) block = dw_block_new (100.0);
  PangoLayout *text = text_of (rows[_i].text, rows[_i].width);
  pango_layout_set_alignment (text, rows[_i].alignment);
  dw_block_add_text_right (block, text, 95.0, 5.0);
  const dw_item *it = item (block, 0);
  assert_close (it->box.x + it->box.width, 95.0, 0.0, 1e-9, rows[_i].text);
  const dw_rect ink = ink_of (block);
  ck_assert_msg (ink.x + ink.width <= 96.0, "%s", rows[_i].text);
}
END_TEST

START_TEST (single_lines_stand_where_they_are_put)
{
  static const double y[] = { 7.0, 40.0 };
  g_autoptr (dw_block) block = dw_block_new (100.0);
  g_autoptr (PangoLayout) text = text_of ("first line\nsecond", 90.0);
  const guint owners = G_OBJECT (text)->ref_count;
  for (int i = 0; i < 2; i++)
    {
      const double height = dw_block_add_text_line (block, text, i, 10.0, y[i]);
      const dw_item *it = item (block, (guint)i);
      ck_assert (it->line == i && it->box.x == 10.0 && it->box.y == y[i]);
      ck_assert (it->box.height == height && height > 8.0 && height < 12.0);
      /* the baseline */
      ck_assert (it->at.y > y[i] + 0.6 * height && it->at.y < y[i] + height);
    }
  /* the block keeps it alive, the caller has it still */
  ck_assert_uint_eq (G_OBJECT (text)->ref_count, owners + 2);
  const dw_rect ink = ink_of (block);
  ck_assert (ink.y >= 7.0 && ink.y + ink.height <= 52.0);
  g_autofree char *words = dw_block_get_words (block);
  ck_assert_str_eq (words, "first line\nsecond\n");
}
END_TEST

START_TEST (a_line_from_right_to_left_stands_at_the_right)
{
  g_autoptr (dw_block) block = dw_block_new (100.0);
  g_autoptr (PangoLayout) text = text_of ("\u05db\u05d9\u05d5\u05d5\u05df", 90.0);
  dw_block_add_text_line (block, text, 0, 5.0, 0.0);
  const dw_item *it = item (block, 0);
  assert_close (it->box.x + it->box.width, 95.0, 0.0, 0.01, "right end of its width");
  assert_close (it->at.x, it->box.x, 0.0, 1e-9, "where it is painted from");
}
END_TEST

START_TEST (lines_and_frames_are_painted_where_they_are)
{
  g_autoptr (dw_block) block = dw_block_new (100.0);
  dw_block_add_line (block, (dw_spot){ 10.0, 10.0 }, (dw_spot){ 30.0, 10.0 }, 2.0);
  dw_block_add_frame (block, (dw_rect){ 40.0, 20.0, 8.0, 6.0 }, 0.0, 0.5);
  const dw_rect ink = ink_of (block);
  assert_close (ink.x, 10.0, 0.0, 1.0, "line's left end");
  assert_close (ink.y, 9.0, 0.0, 1.0, "half the stroke");
  assert_close (ink.x + ink.width, 48.0, 0.0, 1.0, "frame's right edge");
  assert_close (ink.y + ink.height, 26.0, 0.0, 1.0, "frame's lower edge");
  ck_assert (item (block, 0)->box.width == 20.0 && item (block, 0)->box.height == 0.0);
  ck_assert (item (block, 1)->tone == 0.5);
}
END_TEST

/* The pixel at a spot of a painted block, 0 black to 255 white. */
static int
shade_at (const dw_block *block, int x, int y)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 60, 40);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  dw_block_paint (block, cr);
  cairo_surface_flush (surface);
  const int shade = cairo_image_surface_get_data (
      surface)[y * cairo_image_surface_get_stride (surface) + 4 * x];
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return shade;
}

START_TEST (a_frame_has_its_tone_and_its_stroke)
{
  g_autoptr (dw_block) block = dw_block_new (60.0);
  dw_block_add_frame (block, (dw_rect){ 10.0, 10.0, 20.0, 20.0 }, 2.0, 0.5);
  dw_block_add_frame (block, (dw_rect){ 40.0, 10.0, 10.0, 20.0 }, 2.0, -1.0);
  ck_assert_int_eq (shade_at (block, 20, 20), 128);
  ck_assert_int_eq (shade_at (block, 9, 20), 0);
  ck_assert_int_eq (shade_at (block, 45, 20), 255);
  ck_assert_int_eq (shade_at (block, 40, 20), 0);
}
END_TEST

START_TEST (a_drawing_is_painted_in_its_box_and_freed)
{
  dw_block *block = dw_block_new (100.0);
  n_freed = n_painted = 0;
  dw_block_add_drawing (block, (dw_rect){ 30.0, 50.0, 10.0, 10.0 }, paint_square, &n_painted,
                        count_free);
  const dw_rect ink = ink_of (block);
  ck_assert (ink.x == 30.0 && ink.y == 50.0 && ink.width == 4.0 && ink.height == 3.0);
  ck_assert_int_eq (n_painted, 1);
  ck_assert_int_eq (n_freed, 0);
  dw_block_free (block);
  ck_assert_int_eq (n_freed, 1);
}
END_TEST

START_TEST (a_placed_block_moves_with_all_that_is_on_it)
{
  dw_block *block = dw_block_new (100.0);
  dw_block *other = dw_block_new (50.0);
  n_freed = n_painted = 0;
  dw_block_add_text (block, text_of ("first", 0.0), 0.0, 0.0);
  dw_block_add_text (other, text_of ("second", 0.0), 1.0, 2.0);
  dw_block_add_line (other, (dw_spot){ 0.0, 20.0 }, (dw_spot){ 50.0, 20.0 }, 1.0);
  dw_block_add_drawing (other, (dw_rect){ 2.0, 30.0, 4.0, 3.0 }, paint_square, &n_painted,
                        count_free);
  dw_block_place (block, other, 10.0, 100.0);
  ck_assert_int_eq (n_freed, 0);
  ck_assert_uint_eq (block->items->len, 4);
  ck_assert (item (block, 1)->box.x == 11.0 && item (block, 1)->box.y == 102.0);
  ck_assert (item (block, 1)->at.x == 11.0 && item (block, 1)->at.y == 102.0);
  ck_assert (item (block, 2)->box.x == 10.0 && item (block, 2)->box.y == 120.0);
  ck_assert (item (block, 3)->box.x == 12.0 && item (block, 3)->box.y == 130.0);
  g_autofree char *words = dw_block_get_words (block);
  ck_assert_str_eq (words, "first\nsecond\n");
  const dw_rect ink = ink_of (block);
  assert_close (ink.y + ink.height, 133.0, 0.0, 1.0, "the drawing is lowest");
  dw_block_free (block);
  ck_assert_int_eq (n_freed, 1);
}
END_TEST

/* What one item sets must not colour or move the next. */
START_TEST (items_do_not_depend_on_each_other)
{
  g_autoptr (dw_block) block = dw_block_new (60.0);
  dw_block_add_frame (block, (dw_rect){ 0.0, 0.0, 5.0, 5.0 }, 0.0, 0.8);
  dw_block_add_drawing (block, (dw_rect){ 20.0, 20.0, 4.0, 3.0 }, paint_square, &n_painted, NULL);
  dw_block_add_line (block, (dw_spot){ 30.0, 30.5 }, (dw_spot){ 50.0, 30.5 }, 1.0);
  ck_assert_int_eq (shade_at (block, 40, 30), 0);
  ck_assert_int_eq (shade_at (block, 2, 2), 204);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/block");
  TCase *tcase = tcase_create ("block");
  tcase_add_test (tcase, a_new_block_is_empty);
  tcase_add_test (tcase, a_text_covers_its_box);
  tcase_add_loop_test (tcase, a_text_at_the_right_ends_there, 0, 4);
  tcase_add_test (tcase, single_lines_stand_where_they_are_put);
  tcase_add_test (tcase, a_line_from_right_to_left_stands_at_the_right);
  tcase_add_test (tcase, lines_and_frames_are_painted_where_they_are);
  tcase_add_test (tcase, a_frame_has_its_tone_and_its_stroke);
  tcase_add_test (tcase, a_drawing_is_painted_in_its_box_and_freed);
  tcase_add_test (tcase, a_placed_block_moves_with_all_that_is_on_it);
  tcase_add_test (tcase, items_do_not_depend_on_each_other);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
