/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/dw-geometry.h"
#include "test-support.h"

static const dw_rect box = { 10.0, 20.0, 30.0, 40.0 };

START_TEST (touching_rectangles_do_not_overlap)
{
  const dw_rect right = { 40.0, 20.0, 5.0, 40.0 };
  const dw_rect inside = { 39.9, 59.9, 5.0, 40.0 };
  ck_assert (!dw_rect_overlaps (&box, &right));
  ck_assert (dw_rect_overlaps (&box, &inside));
  ck_assert (dw_rect_overlaps (&inside, &box));
}
END_TEST

START_TEST (a_border_belongs_to_its_rectangle)
{
  ck_assert (dw_rect_holds (&box, 10.0, 60.0));
  ck_assert (!dw_rect_holds (&box, 9.99, 30.0));
  ck_assert (dw_rect_holds_rect (&box, &box));
  const dw_rect larger = { 10.0, 20.0, 30.1, 40.0 };
  ck_assert (!dw_rect_holds_rect (&box, &larger));
}
END_TEST

START_TEST (an_inset_is_never_inside_out)
{
  const dw_rect none = dw_rect_inset (&box, 100.0);
  ck_assert (none.width == 0.0 && none.height == 0.0);
  ck_assert (none.x == 25.0 && none.y == 40.0);
  const dw_rect wide = dw_rect_inset (&box, -1.0);
  ck_assert (wide.x == 9.0 && wide.width == 32.0);
}
END_TEST

START_TEST (what_is_cut_lies_inside_and_on_the_piece)
{
  test_random random = test_random_new (1);
  int n_inside = 0;
  for (int i = 0; i < 2000; i++)
    {
      const dw_spot from = { test_random_uniform (&random, -40.0, 90.0),
                             test_random_uniform (&random, -40.0, 120.0) };
      const dw_spot to = { test_random_uniform (&random, -40.0, 90.0),
                           test_random_uniform (&random, -40.0, 120.0) };
      dw_spot a = from;
      dw_spot b = to;
      const bool inside = dw_segment_clip (&box, &a, &b);
      const dw_rect wide = dw_rect_inset (&box, -1e-9);
      /* the judge: many spots along the piece */
      bool seen = false;
      for (int k = 0; k <= 400; k++)
        seen = seen
               || dw_rect_holds (&box, from.x + k / 400.0 * (to.x - from.x),
                                 from.y + k / 400.0 * (to.y - from.y));
      ck_assert (inside || !seen);
      if (!inside)
        continue;
      n_inside++;
      ck_assert (dw_rect_holds (&wide, a.x, a.y) && dw_rect_holds (&wide, b.x, b.y));
      assert_close (dw_spot_distance (dw_segment_nearest (from, to, a), a), 0.0, 0.0, 1e-9,
                    "the cut end lies on the piece");
    }
  ck_assert_int_gt (n_inside, 200);
}
END_TEST

START_TEST (the_nearest_spot_is_an_end_or_a_foot)
{
  const dw_spot a = { 0.0, 0.0 };
  const dw_spot b = { 10.0, 0.0 };
  const dw_spot beside = dw_segment_nearest (a, b, (dw_spot){ 3.0, 4.0 });
  const dw_spot behind = dw_segment_nearest (a, b, (dw_spot){ 14.0, 3.0 });
  const dw_spot point = dw_segment_nearest (a, a, (dw_spot){ 3.0, 4.0 });
  ck_assert (beside.x == 3.0 && beside.y == 0.0);
  ck_assert (behind.x == 10.0 && behind.y == 0.0);
  ck_assert (point.x == 0.0 && point.y == 0.0);
  ck_assert (dw_spot_distance (b, (dw_spot){ 14.0, 3.0 }) == 5.0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/geometry");
  TCase *tcase = tcase_create ("geometry");
  tcase_add_test (tcase, touching_rectangles_do_not_overlap);
  tcase_add_test (tcase, a_border_belongs_to_its_rectangle);
  tcase_add_test (tcase, an_inset_is_never_inside_out);
  tcase_add_test (tcase, what_is_cut_lies_inside_and_on_the_piece);
  tcase_add_test (tcase, the_nearest_spot_is_an_end_or_a_foot);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
