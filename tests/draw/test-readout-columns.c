/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>

#include "draw-samples.h"

static dw_readout_columns
make (const dw_chart *chart, double room)
{
  static dw_chart_style style;
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  return dw_readout_columns_make (chart, &style, &metrics, 500.0, room);
}

static int
count (const dw_readout_columns *c, dw_readout_kind kind)
{
  int n = 0;
  for (int i = 0; i < c->n; i++)
    n += c->columns[i].kind == kind;
  return n;
}

START_TEST (with_room_all_columns_stand_in_order)
{
  dw_chart chart = sample_chart (2, false);
  const dw_readout_columns c = make (&chart, 1000.0);
  ck_assert_int_eq (c.n, 5);
  ck_assert_int_eq (c.columns[0].kind, DW_READ_VALUE);
  ck_assert_int_eq (c.columns[0].stroke, DW_COMPRESSION);
  ck_assert_int_eq (c.columns[1].kind, DW_READ_CHANGE);
  ck_assert_int_eq (c.columns[2].stroke, DW_REBOUND);
  ck_assert_int_eq (c.columns[4].kind, DW_READ_LOST);
  ck_assert (c.columns[4].right == 500.0);
  for (int i = 1; i < c.n; i++)
    ck_assert (c.columns[i].left > c.columns[i - 1].right);
  ck_assert (c.columns[0].left >= 500.0 - c.width);
  sample_chart_clear (&chart);
}
END_TEST

/* As the room shrinks, nothing that is less needed outlives something that is more. */
START_TEST (what_has_no_room_is_left_out_in_order)
{
  dw_chart chart = sample_chart (3, false);
  dw_readout_columns before = make (&chart, 1000.0);
  int kinds_seen = 1;
  for (double room = 1000.0; room > 0.0; room -= 1.0)
    {
      const dw_readout_columns c = make (&chart, room);
      ck_assert (c.width <= room);
      ck_assert_int_le (c.n, before.n);
      if (count (&c, DW_READ_CHANGE) < 2)
        ck_assert_int_eq (count (&c, DW_READ_LOST), 0);
      ck_assert_int_eq (count (&c, DW_READ_CHANGE) % 2, 0);
      ck_assert (c.n == 0 || count (&c, DW_READ_VALUE) == 2);
      kinds_seen += c.n != before.n;
      before = c;
    }
  ck_assert_int_eq (kinds_seen, 4);
  ck_assert_int_eq (before.n, 0);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (one_setup_has_no_changes)
{
  dw_chart chart = sample_chart (1, false);
  const dw_readout_columns c = make (&chart, 1000.0);
  ck_assert_int_eq (count (&c, DW_READ_CHANGE), 0);
  ck_assert_int_eq (count (&c, DW_READ_VALUE), 2);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (lost_travel_is_shown_only_where_a_void_can_open)
{
  dw_chart chart = sample_chart (1, false);
  dw_series *series = (dw_series *)(void *)(uintptr_t)chart.series[0];
  ck_assert_int_eq (count (&(dw_readout_columns){ 0 }, DW_READ_LOST), 0);
  series->onset_speed = HUGE_VAL;
  dw_readout_columns c = make (&chart, 1000.0);
  ck_assert_int_eq (count (&c, DW_READ_LOST), 0);
  series->onset_speed = 0.3;
  c = make (&chart, 1000.0);
  ck_assert_int_eq (count (&c, DW_READ_LOST), 1);
  sample_chart_clear (&chart);
}
END_TEST

START_TEST (the_head_names_the_users_unit)
{
  dw_chart chart = sample_chart (1, false);
  chart.units = dw_chart_units_inch ();
  char *head = dw_readout_columns_lost_head (&chart);
  ck_assert_str_eq (head, "lost in");
  free (head);
  sample_chart_clear (&chart);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/readout-columns");
  TCase *tcase = tcase_create ("readout-columns");
  tcase_add_test (tcase, with_room_all_columns_stand_in_order);
  tcase_add_test (tcase, what_has_no_room_is_left_out_in_order);
  tcase_add_test (tcase, one_setup_has_no_changes);
  tcase_add_test (tcase, lost_travel_is_shown_only_where_a_void_can_open);
  tcase_add_test (tcase, the_head_names_the_users_unit);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
