/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-damper.h"
#include "random-damper.h"
#include "test-support.h"
#include "sheet/dw-finding-text.h"

/* Untranslated, a finding reads as the model wrote it, whatever was wrong. */
START_TEST (every_finding_is_told_as_the_model_does)
{
  test_random r = test_random_new (7);
  int told = 0;
  int with_form = 0;

  for (int k = 0; k < 3000; k++)
    {
      dw_damper damper = k % 2 == 0 ? random_damper (&r) : extreme_damper (&r);
      dw_error findings[8];
      /* spoil the fit of one part */
      double *const parts[] = { &damper.body.rod,           &damper.piston.holes[0].diameter,
                                &damper.valve.hub_diameter, &damper.valve.outer_diameter,
                                &damper.valve.hole_circle,  &damper.spring.preload };
      *parts[test_random_int (&r, 0, N_ENTRIES (parts) - 1)] *= test_random_int (&r, 0, 1) == 0
                                                                    ? 0.2
                                                                    : 4.0;
      const size_t n = dw_damper_check (&damper, findings, N_ENTRIES (findings));
      for (size_t i = 0; i < n && i < N_ENTRIES (findings); i++)
        {
          g_autofree char *text = dw_finding_text (&findings[i]);
          ck_assert_str_eq (text, findings[i].text);
          told++;
          /* all that is about the fit of parts can be said in another language */
          if (findings[i].code == DW_ERR_GEOMETRY)
            ck_assert_msg (findings[i].form != NULL, "%s", findings[i].text);
          with_form += findings[i].form != NULL ? 1 : 0;
        }
    }
  ck_assert_int_gt (told, 500);
  ck_assert_int_gt (with_form, 200);
}
END_TEST

START_TEST (land_is_told_in_the_units_asked_for)
{
  static const struct
  {
    dw_ligament ligament;
    dw_units units;
    const char *text;
  } rows[] = {
    { { DW_LIGAMENT_HOLES, 0, 1, 0.1e-3, 0.26e-3 },
      DW_UNITS_METRIC,
      "holes of 1.3 mm and 1.1 mm: 0.1 mm of land, 0.26 mm advised" },
    { { DW_LIGAMENT_HOLES, 0, 1, -0.123e-3, 0.26e-3 },
      DW_UNITS_METRIC,
      "holes of 1.3 mm and 1.1 mm run into each other by 0.12 mm" },
    { { DW_LIGAMENT_EDGE, 0, -1, -0.3e-3, 0.0 },
      DW_UNITS_METRIC,
      "hole of 1.3 mm cuts the piston's edge by 0.3 mm" },
    { { DW_LIGAMENT_SHAFT, 1, -1, -0.3e-3, 0.0 },
      DW_UNITS_METRIC,
      "hole of 1.1 mm cuts the shaft by 0.3 mm" },
    { { DW_LIGAMENT_HUB, 0, -1, -2.54e-3, 0.0 },
      DW_UNITS_INCH,
      "hole of 0.05118 in cuts the hub of the shim by 0.1 in" },
  };
  static dw_piston_face face = { .n_holes = 2 };
  face.holes[0].diameter = 1.3e-3;
  face.holes[1].diameter = 1.1e-3;

  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      g_autofree char *text = dw_ligament_words (&face, &rows[i].ligament, rows[i].units);
      ck_assert_str_eq (text, rows[i].text);
    }
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/finding-text");
  TCase *tc = tcase_create ("finding-text");
  tcase_add_test (tc, every_finding_is_told_as_the_model_does);
  tcase_add_test (tc, land_is_told_in_the_units_asked_for);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
