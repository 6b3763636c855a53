/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-compare.h"

#include <math.h>
#include <string.h>

#include "study-dampers.h"
#include "test-support.h"

static const double speeds[DW_N_SPEEDS] = { 0.05, 0.2, 1.0 };

static dw_comparison
compare (const dw_damper *a, const dw_damper *b)
{
  dw_comparison r;
  dw_error err = { .text = "" };
  ck_assert_msg (dw_compare_figures (a, b, 25.0, speeds, &r, &err) == DW_OK, "%s: %s", err.field,
                 err.text);
  return r;
}

START_TEST (a_damper_is_the_same_as_itself)
{
  const dw_damper a = study_damper ();
  const dw_comparison r = compare (&a, &a);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      for (int i = 0; i < DW_N_SPEEDS; i++)
        ck_assert (r.force[s][i] == 0.0 && r.c[s][i] == 0.0 && r.rebound_share[i] == 0.0);
      ck_assert (r.pack[s] == 0.0);
    }
}
END_TEST

/* The figures are those of the model, and each change is theirs, worked out here once more. */
START_TEST (changes_are_those_of_the_figures)
{
  const dw_damper a = study_damper ();
  dw_damper b = a;
  b.oil.viscosity *= 1.2;
  b.valve.shims[0].thickness *= 2.0;
  const dw_comparison r = compare (&a, &b);

  dw_force_model model;
  dw_figures before;
  dw_figures after;
  ck_assert_int_eq (dw_force_model_make (&a, 25.0, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &before, NULL), DW_OK);
  ck_assert_int_eq (dw_force_model_make (&b, 25.0, &model, NULL), DW_OK);
  ck_assert_int_eq (dw_figures_read (&model, speeds, &after, NULL), DW_OK);
  for (int s = 0; s < DW_N_STROKES; s++)
    {
      for (int i = 0; i < DW_N_SPEEDS; i++)
        {
          const double ratio = after.point[s][i].force / before.point[s][i].force;
          assert_close (r.force[s][i], (ratio - 1.0) * 100.0, 1e-9, 1e-9, "rounding only");
          assert_close (r.c[s][i], r.force[s][i], 1e-9, 1e-9, "the speeds are the same");
          ck_assert (r.a.point[s][i].force == before.point[s][i].force);
          ck_assert (r.b.point[s][i].force == after.point[s][i].force);
        }
      assert_close (r.pack[s], (after.pack[s] / before.pack[s] - 1.0) * 100.0, 1e-9, 1e-9,
                    "rounding only");
    }
  for (int i = 0; i < DW_N_SPEEDS; i++)
    assert_close (r.rebound_share[i],
                  (after.rebound_share[i] / before.rebound_share[i] - 1.0) * 100.0, 1e-9, 1e-9,
                  "rounding only");
}
END_TEST

/* The shim opens on rebound: a stiffer one must not touch compression. */
START_TEST (the_strokes_are_judged_apart)
{
  dw_damper a = study_damper ();
  a.valve.n_shims = 1;
  a.valve.shims[0].thickness = 0.1e-3;
  dw_damper b = a;
  b.valve.shims[0].thickness = 0.15e-3;
  const dw_comparison r = compare (&a, &b);
  for (int i = 0; i < DW_N_SPEEDS; i++)
    {
      ck_assert (r.force[DW_COMPRESSION][i] == 0.0);
      ck_assert_msg (r.force[DW_REBOUND][i] > 0.0, "%g %%", r.force[DW_REBOUND][i]);
      assert_close (r.rebound_share[i], r.force[DW_REBOUND][i], 1e-9, 1e-9,
                    "compression stays, so the share follows rebound");
    }
}
END_TEST

static const struct
{
  double before;
  double after;
  double percent;
  dw_change judged;
  const char *why;
} judgements[] = {
  { 10.0, 10.0, 0.0, DW_CHANGE_SAME, "nothing" },
  { 200.0, 201.0, 0.5, DW_CHANGE_SAME, "the edge belongs to the same" },
  { 200.0, 199.0, -0.5, DW_CHANGE_SAME, "on both sides" },
  { 200.0, 202.0, 1.0, DW_CHANGE_MORE, "past it" },
  { 200.0, 198.0, -1.0, DW_CHANGE_LESS, "past it downwards" },
  { 10.0, 20.0, 100.0, DW_CHANGE_MORE, "twice" },
  { 0.0, 0.0, 0.0, DW_CHANGE_SAME, "nothing stays nothing" },
  { 0.0, 1.0, NAN, DW_CHANGE_UNKNOWN, "no percentage of nothing" },
  { -2.0, -1.0, 50.0, DW_CHANGE_MORE, "gas that pushes half as much resists more" },
  { -2.0, 1.0, 150.0, DW_CHANGE_MORE, "across zero" },
};

START_TEST (a_change_is_in_percent_of_the_first)
{
  const double percent = dw_compare_change (judgements[_i].before, judgements[_i].after);
  const double expected = judgements[_i].percent;
  ck_assert_msg (isnan (expected) ? isnan (percent) : percent == expected, "%.17g: %s", percent,
                 judgements[_i].why);
  ck_assert_msg (dw_compare_judge (percent) == judgements[_i].judged, "%s", judgements[_i].why);
}
END_TEST

START_TEST (a_damper_that_can_not_be_built_is_named)
{
  const dw_damper a = study_damper ();
  dw_damper b = a;
  b.body.rod = b.body.bore;
  dw_comparison r;
  dw_error err;
  memset (&r, 0x55, sizeof r);
  const dw_comparison before = r;
  ck_assert_int_ne (dw_compare_figures (&a, &b, 25.0, speeds, &r, &err), DW_OK);
  ck_assert_str_eq (err.field, "body.rod");
  ck_assert_int_ne (dw_compare_figures (&b, &a, 25.0, speeds, &r, &err), DW_OK);
  ck_assert_int_ne (dw_compare_figures (&a, &a, 500.0, speeds, &r, &err), DW_OK);
  const double falling[DW_N_SPEEDS] = { 0.2, 0.1, 1.0 };
  ck_assert_int_eq (dw_compare_figures (&a, &a, 25.0, falling, &r, &err), DW_ERR_RANGE);
  ck_assert_msg (memcmp (&r, &before, sizeof r) == 0, "written although it failed");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/dw-compare");
  TCase *tc = tcase_create ("compare");
  tcase_add_test (tc, a_damper_is_the_same_as_itself);
  tcase_add_test (tc, changes_are_those_of_the_figures);
  tcase_add_test (tc, the_strokes_are_judged_apart);
  tcase_add_loop_test (tc, a_change_is_in_percent_of_the_first, 0, N_ENTRIES (judgements));
  tcase_add_test (tc, a_damper_that_can_not_be_built_is_named);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
