/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-flow.h"

#include "test-support.h"

/* Pages of 200 by 300 with a margin of 20: 260 high inside. */
static const dw_rect FRAME = { 20.0, 20.0, 160.0, 260.0 };

enum
{
  HEAD = 30
};

static int n_heads;

static double
put_head (dw_block *page, gpointer data)
{
  ck_assert_ptr_eq (data, &n_heads);
  n_heads++;
  dw_block_add_frame (page, (dw_rect){ 20.0, 20.0, 160.0, HEAD }, 1.0, -1.0);
  return 20.0 + HEAD;
}

/* A block of some height with a frame over all of it. */
static dw_block *
block_of (double height)
{
  dw_block *block = dw_block_new (160.0);
  dw_block_add_frame (block, (dw_rect){ 0.0, 0.0, 160.0, height }, 1.0, -1.0);
  block->height = height;
  return block;
}

static dw_rect
box (const dw_flow *flow, guint page, guint i)
{
  const dw_block *p = g_ptr_array_index (flow->pages, page);
  ck_assert_uint_lt (i, p->items->len);
  return g_array_index (p->items, dw_item, i).box;
}

static void
start (dw_flow *flow)
{
  n_heads = 0;
  dw_flow_init (flow, 200.0, 300.0, &FRAME, put_head, &n_heads);
}

START_TEST (it_begins_with_an_empty_page)
{
  dw_flow flow;
  start (&flow);
  const dw_place place = dw_flow_start (&flow);
  ck_assert_uint_eq (flow.pages->len, 1);
  ck_assert (place.page == 0 && place.y == 20.0);
  ck_assert (dw_flow_room (&flow, place) == 260.0);
  ck_assert (dw_flow_page (&flow, place)->height == 300.0);
  ck_assert (dw_flow_page (&flow, place)->width == 200.0);
  ck_assert_int_eq (n_heads, 0);
  dw_flow_clear (&flow);
}
END_TEST

START_TEST (blocks_stand_below_each_other)
{
  dw_flow flow;
  start (&flow);
  dw_place place = dw_flow_start (&flow);
  dw_flow_add (&flow, block_of (100.0), 0.0, &place);
  dw_flow_add (&flow, block_of (50.0), 7.0, &place);
  ck_assert (box (&flow, 0, 0).x == 20.0 && box (&flow, 0, 0).y == 20.0);
  ck_assert (box (&flow, 0, 1).x == 27.0 && box (&flow, 0, 1).y == 120.0);
  ck_assert (place.y == 170.0 && dw_flow_room (&flow, place) == 110.0);
  dw_flow_clear (&flow);
}
END_TEST

START_TEST (what_does_not_fit_goes_to_the_next_page)
{
  dw_flow flow;
  start (&flow);
  dw_place place = dw_flow_start (&flow);
  dw_flow_add (&flow, block_of (200.0), 0.0, &place);
  dw_flow_add (&flow, block_of (61.0), 0.0, &place);
  ck_assert_uint_eq (flow.pages->len, 2);
  ck_assert_int_eq (n_heads, 1);
  ck_assert (place.page == 1 && box (&flow, 1, 1).y == 50.0 && place.y == 111.0);
  dw_flow_clear (&flow);
}
END_TEST

/* Heights are measured one by one and added up in another order. */
START_TEST (rounding_turns_no_page)
{
  dw_flow flow;
  start (&flow);
  dw_place place = dw_flow_start (&flow);
  for (int i = 0; i < 26; i++)
    dw_flow_add (&flow, block_of (10.0 + 1e-9), 0.0, &place);
  ck_assert_uint_eq (flow.pages->len, 1);
  dw_flow_add (&flow, block_of (0.001), 0.0, &place);
  ck_assert_uint_eq (flow.pages->len, 2);
  dw_flow_clear (&flow);
}
END_TEST

START_TEST (a_block_higher_than_a_page_has_one_to_itself)
{
  dw_flow flow;
  start (&flow);
  dw_place place = dw_flow_start (&flow);
  dw_flow_add (&flow, block_of (400.0), 0.0, &place);
  ck_assert_uint_eq (flow.pages->len, 1);
  dw_flow_add (&flow, block_of (400.0), 0.0, &place);
  dw_flow_add (&flow, block_of (10.0), 0.0, &place);
  ck_assert_uint_eq (flow.pages->len, 3);
  ck_assert (box (&flow, 1, 1).y == 50.0 && box (&flow, 2, 1).y == 50.0);
  dw_flow_clear (&flow);
}
END_TEST

START_TEST (an_empty_page_is_not_turned)
{
  dw_flow flow;
  start (&flow);
  dw_place place = dw_flow_start (&flow);
  dw_flow_need (&flow, 1000.0, &place);
  ck_assert (place.page == 0 && flow.pages->len == 1);
  dw_flow_add (&flow, block_of (10.0), 0.0, &place);
  dw_flow_need (&flow, 250.0, &place);
  ck_assert (place.page == 0);
  dw_flow_need (&flow, 250.1, &place);
  ck_assert (place.page == 1 && place.y == 50.0);
  dw_flow_clear (&flow);
}
END_TEST

START_TEST (columns_share_their_pages)
{
  dw_flow flow;
  start (&flow);
  dw_place left = dw_flow_start (&flow);
  dw_place right = left;
  g_autoptr (GPtrArray) rows = dw_rows_new ();
  for (int i = 0; i < 60; i++)
    g_ptr_array_add (rows, block_of (10.0));
  ck_assert (dw_rows_height (rows) == 600.0);
  dw_flow_add_rows (&flow, rows, 0.0, &left);
  ck_assert_uint_eq (rows->len, 0);
  ck_assert (dw_rows_height (rows) == 0.0);
  /* 26 on the first page, 23 under each head */
  ck_assert_int_eq (left.page, 2);
  ck_assert (left.y == 50.0 + 11 * 10.0);
  for (int i = 0; i < 30; i++)
    g_ptr_array_add (rows, block_of (10.0));
  dw_flow_add_rows (&flow, rows, 80.0, &right);
  ck_assert (right.page == 1 && right.y == 50.0 + 4 * 10.0);
  ck_assert_uint_eq (flow.pages->len, 3);
  ck_assert_int_eq (n_heads, 2);
  dw_flow_clear (&flow);
}
END_TEST

START_TEST (a_flow_without_heads_begins_at_the_top)
{
  dw_flow flow;
  dw_flow_init (&flow, 200.0, 300.0, &FRAME, NULL, NULL);
  dw_place place = dw_flow_start (&flow);
  dw_flow_add (&flow, block_of (200.0), 0.0, &place);
  dw_flow_add (&flow, block_of (200.0), 0.0, &place);
  ck_assert (box (&flow, 1, 0).y == 20.0);
  dw_flow_clear (&flow);
}
END_TEST

static const struct
{
  dw_place a, b, later;
} places[] = {
  { { 0, 10.0 }, { 0, 20.0 }, { 0, 20.0 } },
  { { 1, 10.0 }, { 0, 20.0 }, { 1, 10.0 } },
  { { 1, 10.0 }, { 2, 5.0 }, { 2, 5.0 } },
  { { 1, 10.0 }, { 1, 10.0 }, { 1, 10.0 } },
};

START_TEST (the_later_of_two_places_is_the_lower)
{
  const dw_place one = dw_place_later (places[_i].a, places[_i].b);
  const dw_place other = dw_place_later (places[_i].b, places[_i].a);
  ck_assert (one.page == places[_i].later.page && one.y == places[_i].later.y);
  ck_assert (other.page == one.page && other.y == one.y);
}
END_TEST

/* Whatever blocks: in order, none over another, all inside when they are no higher than a page. */
START_TEST (blocks_keep_their_order_and_do_not_overlap)
{
  test_random r = test_random_new (9001);
  for (int k = 0; k < 200; k++)
    {
      dw_flow flow;
      start (&flow);
      dw_place place = dw_flow_start (&flow);
      dw_place before = place;
      const int n = test_random_int (&r, 1, 60);
      for (int i = 0; i < n; i++)
        {
          const double height = test_random_uniform (&r, 0.5, 230.0);
          dw_flow_add (&flow, block_of (height), 0.0, &place);
          ck_assert (place.y <= 280.0 + 1e-6);
          ck_assert (place.page > before.page
                         ? place.page == before.page + 1 && place.y == 50.0 + height
                         : place.y == before.y + height);
          before = place;
        }
      ck_assert_int_eq (n_heads, (int)flow.pages->len - 1);
      dw_flow_clear (&flow);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/flow");
  TCase *tcase = tcase_create ("flow");
  tcase_add_test (tcase, it_begins_with_an_empty_page);
  tcase_add_test (tcase, blocks_stand_below_each_other);
  tcase_add_test (tcase, what_does_not_fit_goes_to_the_next_page);
  tcase_add_test (tcase, rounding_turns_no_page);
  tcase_add_test (tcase, a_block_higher_than_a_page_has_one_to_itself);
  tcase_add_test (tcase, an_empty_page_is_not_turned);
  tcase_add_test (tcase, columns_share_their_pages);
  tcase_add_test (tcase, a_flow_without_heads_begins_at_the_top);
  tcase_add_loop_test (tcase, the_later_of_two_places_is_the_lower, 0, N_ENTRIES (places));
  tcase_add_test (tcase, blocks_keep_their_order_and_do_not_overlap);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
