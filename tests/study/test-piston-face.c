/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "study/dw-piston-face.h"
#include "study-dampers.h"
#include "test-support.h"

static int
count_of (const dw_piston_face *face, bool covered)
{
  int n = 0;
  for (int i = 0; i < face->n_holes; i++)
    n += face->holes[i].covered == covered;
  return n;
}

START_TEST (every_hole_is_placed_on_its_circle)
{
  const dw_damper d = study_covered_damper ();
  dw_piston_face face;
  dw_piston_face_make (&d, &face);
  ck_assert_int_eq (count_of (&face, true), 4);
  ck_assert_int_eq (count_of (&face, false), d.piston.holes[0].count);
  ck_assert_int_eq (face.n_ligaments, 0);
  for (int i = 0; i < face.n_holes; i++)
    {
      const dw_face_hole *h = &face.holes[i];
      const double at = hypot (h->x, h->y);
      if (h->covered)
        assert_close (at, 4.1e-3, 1e-12, 0.0, "the file's circle");
      else
        assert_close (at, 0.5 * (5.3e-3 + face.piston_radius), 1e-12, 0.0,
                      "in the middle between shim and edge");
    }
}
END_TEST

START_TEST (a_plain_piston_has_its_holes_between_shaft_and_edge)
{
  const dw_damper d = dw_damper_defaults ();
  dw_piston_face face;
  dw_piston_face_make (&d, &face);
  ck_assert (!face.has_shim);
  for (int i = 0; i < face.n_holes; i++)
    assert_close (hypot (face.holes[i].x, face.holes[i].y),
                  0.5 * (face.shaft_radius + face.piston_radius), 1e-12, 0.0, "the middle");
  ck_assert (face.holes[0].x == 0.0 && face.holes[0].y > 0.0);
}
END_TEST

START_TEST (without_room_outside_open_holes_stand_between_covered_ones)
{
  dw_damper d = study_covered_damper ();
  dw_piston_face face;
  d.valve.outer_diameter = 14.5e-3;
  d.valve.hole_circle = 11e-3;
  d.piston.holes[0] = (dw_holes){ 4, 1.3e-3, false };
  dw_piston_face_make (&d, &face);
  ck_assert_int_eq (face.n_ligaments, 0);
  for (int i = 0; i < face.n_holes; i++)
    assert_close (hypot (face.holes[i].x, face.holes[i].y), 5.5e-3, 1e-12, 0.0, "one circle");
  assert_close (hypot (face.holes[0].x - face.holes[4].x, face.holes[0].y - face.holes[4].y),
                2.0 * 5.5e-3 * sin (3.141592653589793 / 8.0), 1e-9, 0.0, "half a step apart");
}
END_TEST

/* Least distance between the middles of two holes. [m] */
static double
least_distance (const dw_piston_face *face)
{
  double least = HUGE_VAL;
  for (int i = 0; i < face->n_holes; i++)
    for (int j = i + 1; j < face->n_holes; j++)
      least = fmin (
          least, hypot (face->holes[i].x - face->holes[j].x, face->holes[i].y - face->holes[j].y));
  return least;
}

START_TEST (counts_that_do_not_match_share_a_circle_too)
{
  static const struct
  {
    int covered;
    int open;
    int slots; /* the narrowest gap is that of so many even ones */
  } rows[] = { { 1, 6, 7 }, { 4, 6, 12 }, { 4, 2, 8 }, { 3, 1, 6 }, { 2, 7, 10 } };
  for (int shims = 0; shims < 2; shims++)
    for (int i = 0; i < N_ENTRIES (rows); i++)
      {
        dw_damper d = study_covered_damper ();
        dw_piston_face face;
        d.valve.n_shims = shims;
        d.valve.outer_diameter = 14.5e-3;
        d.valve.hole_circle = 11e-3;
        d.piston.holes[0] = (dw_holes){ rows[i].open, 1e-3, false };
        d.piston.holes[1] = (dw_holes){ rows[i].covered, 1e-3, true };
        dw_piston_face_make (&d, &face);
        const double radius = hypot (face.holes[0].x, face.holes[0].y);
        assert_close (least_distance (&face),
                      2.0 * radius * sin (3.141592653589793 / rows[i].slots), 1e-9, 0.0,
                      "even gaps");
        ck_assert_int_eq (face.n_ligaments, 0);
      }
}
END_TEST

START_TEST (sizes_of_a_kind_take_turns)
{
  dw_damper d = dw_damper_defaults ();
  dw_piston_face face;
  d.piston.holes[0] = (dw_holes){ 3, 1.2e-3, false };
  d.piston.holes[1] = (dw_holes){ 3, 1.4e-3, false };
  d.piston.n_holes = 2;
  dw_piston_face_make (&d, &face);
  ck_assert_int_eq (face.n_holes, 6);
  for (int i = 0; i < 6; i++)
    ck_assert_int_ne (face.holes[i].group, face.holes[(i + 1) % 6].group);
}
END_TEST

START_TEST (a_crowded_circle_grows_towards_the_edge)
{
  dw_damper d = dw_damper_defaults ();
  dw_piston_face few;
  dw_piston_face many;
  dw_piston_face_make (&d, &few);
  d.piston.holes[0] = (dw_holes){ 22, 1.3e-3, false };
  dw_piston_face_make (&d, &many);
  ck_assert (hypot (many.holes[0].x, many.holes[0].y) > hypot (few.holes[0].x, few.holes[0].y));
  ck_assert_int_eq (many.n_ligaments, 0);
}
END_TEST

/* Constructed pistons, each with one thing wrong. */
static const struct
{
  int count;
  double open;    /* [m] diameter of open holes */
  double covered; /* [m] diameter of four covered holes; 0 = none */
  double circle;  /* [m] of the covered holes */
  double hub;     /* [m] */
  dw_ligament_kind kind;
  const char *piece; /* of the text */
} pistons[] = {
  { 40, 1.3e-3, 0.0, 0.0, 0.0, DW_LIGAMENT_HOLES, "holes of 1.30 and 1.30 mm" },
  { 2, 1.2e-3, 5.0e-3, 8.2e-3, 3e-3, DW_LIGAMENT_HOLES, "mm of land" },
  { 2, 7.0e-3, 0.0, 0.0, 0.0, DW_LIGAMENT_EDGE, "cuts the piston's edge" },
  { 2, 7.0e-3, 0.0, 0.0, 0.0, DW_LIGAMENT_SHAFT, "cuts the shaft" },
  { 2, 1.2e-3, 2.0e-3, 7e-3, 6e-3, DW_LIGAMENT_HUB, "cuts the hub of the shim" },
};

START_TEST (thin_land_is_found)
{
  dw_damper d = study_covered_damper ();
  dw_piston_face face;
  d.piston.holes[0] = (dw_holes){ pistons[_i].count, pistons[_i].open, false };
  d.piston.holes[1] = (dw_holes){ 4, pistons[_i].covered, true };
  d.piston.n_holes = pistons[_i].covered > 0.0 ? 2 : 1;
  d.valve.n_shims = pistons[_i].covered > 0.0;
  d.valve.hole_circle = pistons[_i].circle;
  d.valve.hub_diameter = pistons[_i].hub;
  dw_piston_face_make (&d, &face);
  bool found = false;
  for (int i = 0; i < face.n_ligaments; i++)
    {
      char text[160];
      const dw_ligament *l = &face.ligaments[i];
      ck_assert (l->kind == DW_LIGAMENT_HOLES ? l->land < l->advised : l->land < 0.0);
      dw_ligament_text (&face, l, text, sizeof text);
      found = found || (l->kind == pistons[_i].kind && strstr (text, pistons[_i].piece) != NULL);
    }
  ck_assert_msg (found, "%s was not found among %d", pistons[_i].piece, face.n_ligaments);
}
END_TEST

START_TEST (a_fifth_of_a_diameter_is_enough)
{
  dw_damper d = dw_damper_defaults ();
  dw_piston_face face;
  /* two holes on a circle of 3 mm: 4.2 mm apart, less one diameter */
  for (int i = 0; i < 2; i++)
    {
      d.piston.holes[0] = (dw_holes){ 2, 1e-3, false };
      dw_piston_face_make (&d, &face);
      const double apart = 2.0 * hypot (face.holes[0].x, face.holes[0].y);
      d.piston.holes[0].diameter = apart / (i == 0 ? 1.2001 : 1.1999);
      face.piston_radius = 1.0;
      dw_piston_face_make (&d, &face);
      bool found = false;
      for (int k = 0; k < face.n_ligaments; k++)
        found = found || face.ligaments[k].kind == DW_LIGAMENT_HOLES;
      ck_assert (found == (i == 1));
    }
}
END_TEST

START_TEST (equal_findings_are_one)
{
  dw_damper d = dw_damper_defaults ();
  dw_piston_face face;
  d.piston.holes[0] = (dw_holes){ 40, 1.3e-3, false };
  dw_piston_face_make (&d, &face);
  ck_assert_int_eq (face.n_ligaments, 1);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/piston-face");
  TCase *tcase = tcase_create ("piston-face");
  tcase_add_test (tcase, every_hole_is_placed_on_its_circle);
  tcase_add_test (tcase, a_plain_piston_has_its_holes_between_shaft_and_edge);
  tcase_add_test (tcase, without_room_outside_open_holes_stand_between_covered_ones);
  tcase_add_test (tcase, counts_that_do_not_match_share_a_circle_too);
  tcase_add_test (tcase, sizes_of_a_kind_take_turns);
  tcase_add_test (tcase, a_crowded_circle_grows_towards_the_edge);
  tcase_add_loop_test (tcase, thin_land_is_found, 0, N_ENTRIES (pistons));
  tcase_add_test (tcase, a_fifth_of_a_diameter_is_enough);
  tcase_add_test (tcase, equal_findings_are_one);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
