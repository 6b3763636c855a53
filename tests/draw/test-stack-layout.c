/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-stack-layout.h"

#include <stdio.h>
#include <string.h>

#include "draw-samples.h"

static const double POINTS = 72.0 / 0.0254; /* [pt] in one metre */

static dw_stack_layout *
make_with (const dw_damper *damper, const dw_stack_labels *labels, double width, double height)
{
  dw_chart_style style = dw_chart_style_make (DW_STYLE_PRINT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_number_format numbers = dw_number_format_defaults ();
  const dw_rect area = { 10.0, 20.0, width, height };
  return dw_stack_layout_new (damper, labels, &numbers, &style, &metrics, &area);
}

static dw_stack_layout *
make (const dw_damper *damper, double width, double height)
{
  const dw_stack_labels labels = dw_stack_labels_defaults ();
  return make_with (damper, &labels, width, height);
}

static dw_damper
damper_of (int n_shims, test_random *r)
{
  dw_damper d = sample_damper ();
  d.valve.n_shims = n_shims;
  for (int i = 0; i < n_shims; i++)
    d.valve.shims[i] = (dw_shim){ test_random_int (r, 1, 10) * 0.05e-3,
                                  test_random_int (r, 1, i % 3 == 0 ? 64 : 3), 4e9, 0.38, 100e6 };
  d.valve.lift_limit = test_random_int (r, 0, 6) * 0.2e-3;
  return d;
}

/* ---- to scale ---- */

START_TEST (widths_are_to_the_stated_scale)
{
  const dw_damper d = sample_damper ();
  dw_stack_layout *layout = make (&d, 200.0, 150.0);
  const double points = layout->scale * POINTS;
  const dw_chart_label *stated = dw_chart_label_list_find (&layout->texts, DW_LABEL_SCALE);
  ck_assert (layout->scale == 4.0 && layout->factor == 30.0);
  ck_assert_str_eq (stated->text, "4\u00a0:\u00a01 across, thickness 30\u00a0:\u00a01");
  const dw_rect *parts[] = { &layout->piston, &layout->bars[0].bar, &layout->stop, &layout->hub };
  const double radii[] = { 8e-3 - 0.03e-3, 5.3e-3, 5.3e-3, 3e-3 };
  for (int i = 0; i < 4; i++)
    assert_close (parts[i]->x + parts[i]->width - layout->axis, radii[i] * points, 1e-9, 0.0,
                  "piston, shim, stop washer, hub");
  assert_close (layout->channel.width, 1.1e-3 * points, 1e-9, 0.0, "covered hole");
  assert_close (layout->channel.x + 0.5 * layout->channel.width - layout->axis, 4.1e-3 * points,
                1e-9, 0.0, "on its circle");
  dw_stack_layout_free (layout);
}
END_TEST

START_TEST (thicknesses_are_to_a_scale_of_their_own)
{
  dw_damper d = sample_damper ();
  d.valve.n_shims = 2;
  d.valve.shims[1] = (dw_shim){ 0.2e-3, 3, 4e9, 0.38, 100e6 };
  dw_stack_layout *layout = make (&d, 200.0, 150.0);
  const double points = layout->factor * POINTS;
  assert_close (layout->bars[0].bar.height, 0.15e-3 * points, 1e-9, 0.0, "one leaf");
  assert_close (layout->bars[1].bar.height, 3 * 0.2e-3 * points, 1e-9, 0.0, "three leaves");
  assert_close (layout->hub.height, 0.6e-3 * points, 1e-9, 0.0, "lift limit");
  ck_assert (layout->bars[1].n_leaves == 3 && layout->bars[1].n_drawn == 3);
  ck_assert (!layout->lift_is_cut);
  dw_stack_layout_free (layout);
}
END_TEST

START_TEST (parts_lie_on_each_other_in_their_order)
{
  test_random r = test_random_new (8201);
  for (int k = 0; k < 200; k++)
    {
      const dw_damper d = damper_of (1 + k % 16, &r);
      dw_stack_layout *layout = make (&d, 240.0, 180.0);
      double y = layout->piston.y;
      for (int i = 0; i < layout->n_bars; i++)
        {
          const dw_rect *bar = &layout->bars[i].bar;
          assert_close (bar->y + bar->height, y, 1e-9, 1e-9, "on the one before");
          assert_close (bar->height * d.valve.shims[0].thickness * d.valve.shims[0].count,
                        layout->bars[0].bar.height * d.valve.shims[i].thickness
                            * d.valve.shims[i].count,
                        1e-9, 0.0, "as thick as it is");
          ck_assert_int_eq (layout->bars[i].n_leaves, d.valve.shims[i].count);
          ck_assert_int_ge (layout->bars[i].n_drawn, 1);
          ck_assert_int_le (layout->bars[i].n_drawn, layout->bars[i].n_leaves);
          y = bar->y;
        }
      assert_close (layout->hub.y + layout->hub.height, y, 1e-9, 1e-9, "the hub on the last leaf");
      assert_close (layout->stop.y + layout->stop.height, layout->hub.y, 1e-9, 1e-9,
                    "the stop washer on the hub");
      ck_assert (layout->shaft.y < layout->stop.y);
      dw_stack_layout_free (layout);
    }
}
END_TEST

static const struct
{
  const char *why;
  double thickness; /* [m] */
  int count;
  double lift; /* [m] */
  double factor;
  bool is_cut;
} factor_rows[] = {
  { "an everyday stack", 0.15e-3, 1, 0.6e-3, 30.0, false },
  { "a single leaf is not drawn as a block", 1e-3, 1, 0.0, 4.0, false },
  { "thin leaves are seen although they lift far", 0.05e-3, 2, 3e-3, 25.0, true },
  { "a very thin one", 0.01e-3, 1, 0.1e-3, 200.0, false },
  { "many leaves have no room for more", 0.1e-3, 60, 0.2e-3, 4.0, false },
};

START_TEST (the_thinnest_leaf_is_seen)
{
  dw_damper d = sample_damper ();
  d.valve.shims[0].thickness = factor_rows[_i].thickness;
  d.valve.shims[0].count = factor_rows[_i].count;
  d.valve.lift_limit = factor_rows[_i].lift;
  dw_stack_layout *layout = make (&d, 200.0, 150.0);
  ck_assert_msg (layout->factor == factor_rows[_i].factor, "%s: %g", factor_rows[_i].why,
                 layout->factor);
  ck_assert_msg (layout->lift_is_cut == factor_rows[_i].is_cut, "%s", factor_rows[_i].why);
  const dw_chart_label *lift = dw_chart_label_list_find (&layout->texts, DW_LABEL_LIFT);
  ck_assert ((strstr (lift->text, "cut") != NULL) == factor_rows[_i].is_cut);
  dw_stack_layout_free (layout);
}
END_TEST

/* ---- labels ---- */

static void
check_inside (const dw_stack_layout *layout)
{
  const dw_rect *rects[] = { &layout->shaft, &layout->piston, &layout->channel, &layout->hub,
                             &layout->stop };
  for (int i = 0; i < N_ENTRIES (rects); i++)
    ck_assert (rects[i]->width <= 0.0 || dw_rect_holds_rect (&layout->area, rects[i]));
  for (int i = 0; i < layout->n_bars; i++)
    ck_assert (dw_rect_holds_rect (&layout->area, &layout->bars[i].bar));
  for (int i = 0; i < layout->n_leaders; i++)
    for (int k = 0; k < 3; k++)
      ck_assert (dw_rect_holds (&layout->area, layout->leaders[i].spots[k].x,
                                layout->leaders[i].spots[k].y));
}

/* No text outside, on another, or on a part. */
static void
check_texts (const dw_stack_layout *layout)
{
  const dw_rect drawing = { layout->axis, layout->shaft.y,
                            layout->piston.x + layout->piston.width - layout->axis,
                            layout->shaft.height };
  for (int i = 0; i < layout->texts.n; i++)
    {
      const dw_rect *box = &layout->texts.labels[i].box;
      ck_assert (dw_rect_holds_rect (&layout->area, box));
      ck_assert (!dw_rect_overlaps (box, &drawing));
      for (int k = 0; k < i; k++)
        {
          const dw_rect other = dw_rect_inset (&layout->texts.labels[k].box, 1e-6);
          ck_assert_msg (!dw_rect_overlaps (box, &other), "%s on %s", layout->texts.labels[i].text,
                         layout->texts.labels[k].text);
        }
    }
}

/* Leaders end before their labels, keep their order and do not cross. */
static void
check_leaders (const dw_stack_layout *layout)
{
  int at = 0;
  for (int i = 0; i < layout->texts.n; i++)
    {
      const dw_chart_label *label = &layout->texts.labels[i];
      if (label->kind != DW_LABEL_LEAVES && label->kind != DW_LABEL_LIFT)
        continue;
      const dw_stack_leader *leader = &layout->leaders[at++];
      ck_assert (leader->spots[2].x < label->box.x);
      assert_close (leader->spots[2].y, label->box.y + 0.5 * label->box.height, 0.0, 1e-9,
                    "at its middle");
      ck_assert (leader->spots[0].y == leader->spots[1].y);
      ck_assert (leader->spots[0].x <= leader->spots[1].x);
      for (int k = 0; k < 3 && at > 1; k++)
        ck_assert (layout->leaders[at - 2].spots[k].y < leader->spots[k].y + 1e-9);
    }
  ck_assert_int_eq (at, layout->n_leaders);
}

START_TEST (nothing_overlaps_in_any_area)
{
  test_random r = test_random_new (8202 + (uint64_t)_i);
  for (double width = 110.0; width <= 260.0; width += 30.0)
    for (double height = 90.0; height <= 200.0; height += 22.0)
      for (int n = 0; n <= 16; n++)
        {
          const dw_damper d = damper_of (n, &r);
          dw_stack_layout *layout = make (&d, width, height);
          check_inside (layout);
          check_texts (layout);
          check_leaders (layout);
          ck_assert_int_eq (layout->n_bars, n);
          dw_stack_layout_free (layout);
        }
}
END_TEST

static int
count_kind (const dw_stack_layout *layout, dw_label_kind kind)
{
  int n = 0;
  for (int i = 0; i < layout->texts.n; i++)
    n += layout->texts.labels[i].kind == kind;
  return n;
}

START_TEST (entries_are_named_from_the_piston_outwards)
{
  dw_damper d = sample_damper ();
  d.valve.n_shims = 3;
  d.valve.shims[1] = (dw_shim){ 0.1e-3, 4, 4e9, 0.38, 100e6 };
  d.valve.shims[2] = d.valve.shims[0];
  dw_stack_layout *layout = make (&d, 220.0, 160.0);
  const dw_chart_label *lift = dw_chart_label_list_find (&layout->texts, DW_LABEL_LIFT);
  const dw_chart_label *entry = dw_chart_label_list_find (&layout->texts, DW_LABEL_LEAVES);
  const dw_chart_label *opens = dw_chart_label_list_find (&layout->texts, DW_LABEL_TITLE);
  ck_assert_str_eq (lift->text, "lift 0.6 mm");
  ck_assert_str_eq (entry[0].text, "3: 1 × 0.15 mm");
  ck_assert_str_eq (entry[1].text, "2: 4 × 0.1 mm");
  ck_assert_str_eq (entry[2].text, "1: 1 × 0.15 mm");
  ck_assert_str_eq (opens->text, "opens on rebound");
  ck_assert (entry[2].box.y > entry[1].box.y && entry[1].box.y > entry[0].box.y);
  for (int i = 0; i < 3; i++)
    {
      const dw_rect *bar = &layout->bars[2 - i].bar;
      const dw_spot from = layout->leaders[1 + i].spots[0];
      assert_close (from.x, bar->x + bar->width, 1e-12, 0.0, "from the rim");
      assert_close (from.y, bar->y + 0.5 * bar->height, 1e-12, 0.0, "from its middle");
    }
  dw_stack_layout_free (layout);
}
END_TEST

START_TEST (what_has_no_room_is_told_in_one)
{
  dw_damper d = sample_damper ();
  d.valve.n_shims = 16;
  for (int i = 1; i < 16; i++)
    d.valve.shims[i] = d.valve.shims[0];
  dw_stack_layout *layout = make (&d, 150.0, 90.0);
  const dw_chart_label *entry = dw_chart_label_list_find (&layout->texts, DW_LABEL_LEAVES);
  const int n = count_kind (layout, DW_LABEL_LEAVES);
  ck_assert (n > 2 && n < 16);
  char expected[40];
  snprintf (expected, sizeof expected, "%d–16: %d leaves", n, 17 - n);
  ck_assert_str_eq (entry[0].text, expected);
  ck_assert_str_eq (entry[n - 1].text, "1: 1 × 0.15 mm");
  ck_assert_int_eq (count_kind (layout, DW_LABEL_LIFT), 0);
  dw_stack_layout_free (layout);

  layout = make (&d, 260.0, 200.0);
  ck_assert_int_eq (count_kind (layout, DW_LABEL_LEAVES), 16);
  dw_stack_layout_free (layout);
}
END_TEST

START_TEST (many_leaves_have_fewer_lines)
{
  dw_damper d = sample_damper ();
  d.valve.shims[0].count = 64;
  dw_stack_layout *layout = make (&d, 200.0, 150.0);
  const dw_stack_bar *bar = &layout->bars[0];
  ck_assert_int_eq (bar->n_leaves, 64);
  ck_assert (bar->n_drawn > 4 && bar->n_drawn < 64);
  ck_assert (bar->bar.height / bar->n_drawn >= 2.0);
  dw_stack_layout_free (layout);
}
END_TEST

START_TEST (without_shims_the_piston_is_drawn)
{
  dw_damper d = sample_damper ();
  d.valve.n_shims = 0;
  dw_stack_layout *layout = make (&d, 150.0, 110.0);
  ck_assert_str_eq (dw_chart_label_list_find (&layout->texts, DW_LABEL_TITLE)->text, "no shim");
  ck_assert_str_eq (dw_chart_label_list_find (&layout->texts, DW_LABEL_SCALE)->text,
                    "6\u00a0:\u00a01 across");
  ck_assert_int_eq (layout->texts.n, 2);
  ck_assert (layout->n_bars == 0 && layout->n_leaders == 0 && layout->factor == 0.0);
  ck_assert (layout->stop.width == 0.0 && layout->piston.width > 0.0);
  assert_close (layout->channel.width, 1.3e-3 * layout->scale * POINTS, 1e-9, 0.0,
                "its largest hole");
  dw_stack_layout_free (layout);
  dw_stack_layout_free (NULL);
}
END_TEST

START_TEST (a_shim_over_nothing_has_no_channel)
{
  dw_damper d = sample_damper ();
  d.piston.n_holes = 1;
  dw_stack_layout *layout = make (&d, 150.0, 110.0);
  ck_assert (layout->channel.width == 0.0 && layout->n_bars == 1);
  dw_stack_layout_free (layout);
}
END_TEST

START_TEST (words_left_out_give_their_room_to_the_drawing)
{
  const dw_damper d = sample_damper ();
  dw_stack_labels labels = dw_stack_labels_defaults ();
  dw_stack_layout *all = make_with (&d, &labels, 150.0, 110.0);
  labels.entry = labels.lift = labels.lift_cut = labels.scale = NULL;
  labels.opens[DW_REBOUND] = "";
  dw_stack_layout *bare = make_with (&d, &labels, 150.0, 110.0);
  ck_assert (bare->texts.n == 0 && bare->n_leaders == 0);
  ck_assert (bare->scale > all->scale && bare->factor >= all->factor);
  check_inside (bare);
  dw_stack_layout_free (all);
  dw_stack_layout_free (bare);
}
END_TEST

START_TEST (only_what_is_written_takes_room)
{
  const dw_damper d = sample_damper ();
  dw_stack_labels labels = dw_stack_labels_defaults ();
  dw_stack_layout *plain = make_with (&d, &labels, 150.0, 110.0);
  labels.lift_cut = "a lift of {lift} {unit} that would be cut if it did not fit";
  dw_stack_layout *wordy = make_with (&d, &labels, 150.0, 110.0);
  ck_assert (!plain->lift_is_cut);
  ck_assert (wordy->scale == plain->scale && wordy->factor == plain->factor);
  dw_stack_layout_free (plain);
  dw_stack_layout_free (wordy);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/stack-layout");
  TCase *tcase = tcase_create ("stack-layout");
  tcase_add_test (tcase, widths_are_to_the_stated_scale);
  tcase_add_test (tcase, thicknesses_are_to_a_scale_of_their_own);
  tcase_add_test (tcase, parts_lie_on_each_other_in_their_order);
  tcase_add_loop_test (tcase, the_thinnest_leaf_is_seen, 0, N_ENTRIES (factor_rows));
  tcase_add_loop_test (tcase, nothing_overlaps_in_any_area, 0, 4);
  tcase_add_test (tcase, entries_are_named_from_the_piston_outwards);
  tcase_add_test (tcase, what_has_no_room_is_told_in_one);
  tcase_add_test (tcase, many_leaves_have_fewer_lines);
  tcase_add_test (tcase, without_shims_the_piston_is_drawn);
  tcase_add_test (tcase, a_shim_over_nothing_has_no_channel);
  tcase_add_test (tcase, only_what_is_written_takes_room);
  tcase_add_test (tcase, words_left_out_give_their_room_to_the_drawing);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
