/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-parts.h"

#include "project-samples.h"

/* A box with one entry of each kind. */
static dw_parts *
small_box (void)
{
  dw_parts *parts = dw_parts_new ();
  const dw_drill drill = { 1.3e-3 };
  const dw_shim shim = { 0.1e-3, 4, 4e9, 0.38, 100e6 };
  const dw_bottle bottle
      = { .oil = dw_damper_defaults ().oil, .has_volume = true, .volume = 60e-6 };
  const dw_piston piston = dw_damper_defaults ().piston;
  g_array_append_val (parts->drills, drill);
  g_array_append_val (parts->shims, shim);
  g_array_append_val (parts->oils, bottle);
  dw_parts_add_piston (parts, "six", &piston);
  return parts;
}

START_TEST (a_copy_is_equal_and_shares_nothing)
{
  dw_parts *parts = small_box ();
  dw_parts *copy = dw_parts_copy (parts);
  ck_assert (dw_parts_equal (parts, copy));
  ck_assert (dw_parts_equal (parts, parts));
  g_array_index (copy->pistons, dw_spare_piston, 0).name[0] = 'S';
  ck_assert (!dw_parts_equal (parts, copy));
  ck_assert_str_eq (g_array_index (parts->pistons, dw_spare_piston, 0).name, "six");
  dw_parts_unref (copy);
  dw_parts_unref (parts);
}
END_TEST

START_TEST (a_box_knows_whether_it_is_shared)
{
  dw_parts *parts = dw_parts_new ();
  ck_assert (!dw_parts_is_shared (parts));
  ck_assert_ptr_eq (dw_parts_ref (parts), parts);
  ck_assert (dw_parts_is_shared (parts));
  dw_parts_unref (parts);
  ck_assert (!dw_parts_is_shared (parts));
  dw_parts_unref (parts);
}
END_TEST

/* Changes that make a box another one. */
static void
change (dw_parts *parts, int what)
{
  dw_shim *shim = &g_array_index (parts->shims, dw_shim, 0);
  dw_bottle *bottle = &g_array_index (parts->oils, dw_bottle, 0);
  dw_spare_piston *spare = &g_array_index (parts->pistons, dw_spare_piston, 0);
  switch (what)
    {
    case 0:
      g_array_index (parts->drills, dw_drill, 0).diameter *= 1.5;
      break;
    case 1:
      g_array_set_size (parts->drills, 0);
      break;
    case 2:
      shim->thickness *= 1.5;
      break;
    case 3:
      shim->count++;
      break;
    case 4:
      shim->modulus *= 1.5;
      break;
    case 5:
      shim->poisson *= 1.1;
      break;
    case 6:
      shim->strength *= 1.5;
      break;
    case 7:
      g_array_set_size (parts->shims, 0);
      break;
    case 8:
      bottle->has_volume = false;
      break;
    case 9:
      bottle->volume *= 1.5;
      break;
    case 10:
      bottle->oil.viscosity *= 1.5;
      break;
    case 11:
      bottle->oil.has_thinning = true;
      break;
    case 12:
      g_array_set_size (parts->oils, 0);
      break;
    case 13:
      spare->piston.thickness *= 1.5;
      break;
    case 14:
      spare->piston.n_holes = 0;
      break;
    case 15:
      spare->piston.holes[0].covered = true;
      break;
    case 16:
      spare->name[0] = 'S';
      break;
    case 17:
      g_array_set_size (parts->pistons, 0);
      break;
    default:
      ck_abort_msg ("no change %d", what);
    }
}

START_TEST (any_difference_makes_boxes_unequal)
{
  dw_parts *parts = small_box ();
  dw_parts *other = small_box ();
  ck_assert (dw_parts_equal (parts, other));
  change (other, _i);
  ck_assert_msg (!dw_parts_equal (parts, other), "change %d went unseen", _i);
  ck_assert (!dw_parts_equal (other, parts));
  dw_parts_unref (parts);
  dw_parts_unref (other);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-parts");
  TCase *tc = tcase_create ("parts");
  tcase_add_test (tc, a_copy_is_equal_and_shares_nothing);
  tcase_add_test (tc, a_box_knows_whether_it_is_shared);
  tcase_add_loop_test (tc, any_difference_makes_boxes_unequal, 0, 18);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
