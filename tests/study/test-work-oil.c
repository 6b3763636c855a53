/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-work-oil.h"

#include <math.h>

#include "random-damper.h"
#include "test-support.h"

START_TEST (a_filling_is_the_room_between_the_ends)
{
  dw_damper d = dw_damper_defaults ();
  bool is_measured = true;
  d.body = (dw_body){ .bore = 16e-3, .rod = 4e-3, .stroke = 30e-3 };
  d.piston.thickness = 2e-3;
  d.piston.clearance = 0.0;
  d.piston.n_holes = 1;
  d.piston.holes[0] = (dw_holes){ 5, 2e-3, false };
  /* pi/4 (16^2 (30 + 2) - (16^2 - 5 2^2) 2 - 4^2 15) mm3 */
  assert_close (dw_work_filling (&d, &is_measured), 0.25 * M_PI * 7480e-9, 1e-12, 0.0,
                "cylinder less piston, less half the shaft");
  ck_assert (!is_measured);
}
END_TEST

START_TEST (what_was_measured_is_poured)
{
  dw_damper d = dw_damper_defaults ();
  bool is_measured = false;
  d.body.has_filling = true;
  d.body.filling = 6.3e-6;
  ck_assert (dw_work_filling (&d, &is_measured) == 6.3e-6);
  ck_assert (is_measured);
  d.body.has_filling = false;
  d.body.filling = 0.0;
  ck_assert (dw_work_filling (&d, &is_measured) > 1e-6);
  ck_assert (!is_measured);
}
END_TEST

START_TEST (every_damper_takes_oil)
{
  test_random r = test_random_new (7301);
  for (int k = 0; k < 2000; k++)
    {
      const dw_damper d = k % 2 == 0 ? random_damper (&r) : extreme_damper (&r);
      bool is_measured;
      const double filling = dw_work_filling (&d, &is_measured);
      const double bore = 0.25 * M_PI * d.body.bore * d.body.bore;
      ck_assert (filling > 0.6 * bore * d.body.stroke);
      ck_assert (filling < bore * (d.body.stroke + d.piston.thickness));
    }
}
END_TEST

START_TEST (a_blend_is_poured_from_two_bottles)
{
  dw_work_oil parts[DW_MAX_OIL_PARTS];
  dw_oil oil = { .kind = DW_OIL_NOMINAL, .viscosity = 450e-6 };
  ck_assert_int_eq (dw_work_oil_parts (&oil, 5e-6, parts), 1);
  ck_assert (parts[0].viscosity == 450e-6 && parts[0].one == 5e-6 && parts[0].both == 10e-6);

  oil = (dw_oil){ .kind = DW_OIL_BLEND,
                  .n_parts = 2,
                  .parts = { { 350e-6, 0.25 }, { 600e-6, 0.75 } } };
  ck_assert_int_eq (dw_work_oil_parts (&oil, 8e-6, parts), 2);
  ck_assert (parts[0].viscosity == 350e-6 && parts[0].one == 2e-6 && parts[0].both == 4e-6);
  ck_assert (parts[1].viscosity == 600e-6 && parts[1].one == 6e-6 && parts[1].both == 12e-6);

  oil = (dw_oil){ .kind = DW_OIL_MEASURED };
  ck_assert_int_eq (dw_work_oil_parts (&oil, 8e-6, parts), 1);
  ck_assert (isnan (parts[0].viscosity) && parts[0].one == 8e-6);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/work-oil");
  TCase *tcase = tcase_create ("work-oil");
  tcase_add_test (tcase, a_filling_is_the_room_between_the_ends);
  tcase_add_test (tcase, what_was_measured_is_poured);
  tcase_add_test (tcase, every_damper_takes_oil);
  tcase_add_test (tcase, a_blend_is_poured_from_two_bottles);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
