/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "test-support.h"
#include "window/dw-damper-place.h"

/* Attributes of several forms lie at one place: one of the forms stands for all. */
static const dw_form_id forms[] = {
  DW_FORM_BODY,        DW_FORM_PISTON,       DW_FORM_HOLES,      DW_FORM_VALVE, DW_FORM_SHIM,
  DW_FORM_OIL_NOMINAL, DW_FORM_OIL_PART,     DW_FORM_GAS_SEALED, DW_FORM_SEAL,  DW_FORM_SPRING,
  DW_FORM_LINKAGE,     DW_FORM_OIL_MEASURED, DW_FORM_STANCE,
};

START_TEST (every_number_of_a_damper_has_a_place)
{
  int n = 0;
  for (int f = 0; f < N_ENTRIES (forms); f++)
    {
      const dw_form *form = dw_form_get (forms[f]);
      for (guint i = 0; i < form->n_fields; i++)
        {
          const dw_field *field = &form->fields[i];
          if (field->kind != DW_FIELD_NUMBER && field->kind != DW_FIELD_COUNT)
            continue;
          if (forms[f] == DW_FORM_OIL_MEASURED && field->optional)
            continue;
          const dw_damper_place *place = dw_damper_place_find (forms[f], field->name);
          ck_assert_msg (place != NULL, "%s", field->name);
          ck_assert_ptr_eq (dw_damper_place_field (place), field);
          n++;
        }
    }
  ck_assert_int_eq (n, DW_DAMPER_PLACES);
}
END_TEST

static dw_damper
full_damper (void)
{
  dw_damper damper;
  memset (&damper, 0, sizeof damper);
  return damper;
}

/* Writing a place changes what reads from it, and nothing else. */
START_TEST (places_do_not_overlap)
{
  const dw_damper_place *place = dw_damper_place_get (_i);
  for (int row = 0; row < (dw_damper_place_has_rows (place) ? 2 : 1); row++)
    {
      dw_damper damper = full_damper ();
      dw_damper_place_write (place, &damper, row, 1.0);
      ck_assert (dw_damper_place_read (place, &damper, row) == 1.0);
      for (int j = 0; j < DW_DAMPER_PLACES; j++)
        for (int r = 0; r < 2; r++)
          {
            const dw_damper_place *other = dw_damper_place_get (j);
            if (j == _i && (r == row || !dw_damper_place_has_rows (place)))
              continue;
            const double read = dw_damper_place_read (other, &damper, r);
            ck_assert_msg (dw_damper_place_is_optional (other) ? isnan (read) : read == 0.0,
                           "%s also changes %s", place->id, other->id);
          }
    }
}
END_TEST

START_TEST (steps_and_labels_are_there)
{
  const dw_damper_place *place = dw_damper_place_get (_i);
  const dw_limit_id limit = dw_damper_place_field (place)->limit;
  const dw_limit *range = dw_limit_get (limit);
  /* holes step through the drills there are, which end long before the range does */
  const double middle = place->step.kind == DW_STEP_DRILL ? 1.3e-3
                        : range->low > 0.0 && range->high / range->low > 100.0
                            ? sqrt (range->low * range->high)
                            : 0.5 * (range->low + range->high);
  const double up = dw_step_move (place->step, place->quantity, DW_UNITS_METRIC, limit, middle, 1);
  const double down = dw_step_move (place->step, place->quantity, DW_UNITS_METRIC, limit, middle,
                                    -1);

  ck_assert_msg (up > middle && down < middle, "%s does not step", place->id);
  ck_assert_msg (strstr (place->labels[DW_FRONT], "front") != NULL, "%s", place->id);
  ck_assert_msg (strstr (place->labels[DW_REAR], "rear") != NULL, "%s", place->id);
}
END_TEST

START_TEST (shares_add_to_one)
{
  const dw_damper_place *place = dw_damper_place_find (DW_FORM_OIL_PART, "share");
  dw_damper damper = full_damper ();
  dw_damper_place_write (place, &damper, 0, 0.33);
  ck_assert (damper.oil.parts[0].share == 0.33);
  ck_assert (damper.oil.parts[1].share == 0.67);
  dw_damper_place_write (place, &damper, 1, 0.1);
  ck_assert (damper.oil.parts[0].share == 0.9);
}
END_TEST

START_TEST (what_is_optional_can_be_taken_away)
{
  static const struct
  {
    dw_form_id form;
    const char *attribute;
  } rows[] = { { DW_FORM_BODY, "filling-ml" },
               { DW_FORM_STANCE, "ride-height-mm" },
               { DW_FORM_STANCE, "droop-mm" } };
  const dw_damper nothing = full_damper ();
  int n = 0;

  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      const dw_damper_place *place = dw_damper_place_find (rows[i].form, rows[i].attribute);
      dw_damper damper;
      memcpy (&damper, &nothing, sizeof damper);
      ck_assert_ptr_nonnull (place);
      ck_assert (isnan (dw_damper_place_read (place, &damper, 0)));
      dw_damper_place_write (place, &damper, 0, 0.0);
      ck_assert_msg (dw_damper_place_read (place, &damper, 0) == 0.0, "0 is a value: %s",
                     place->id);
      dw_damper_place_write (place, &damper, 0, 12e-3);
      dw_damper_place_write (place, &damper, 0, NAN);
      ck_assert (isnan (dw_damper_place_read (place, &damper, 0)));
      ck_assert_msg (memcmp (&damper, &nothing, sizeof damper) == 0, "%s leaves something behind",
                     place->id);
    }
  for (int i = 0; i < DW_DAMPER_PLACES; i++)
    n += dw_damper_place_is_optional (dw_damper_place_get (i));
  ck_assert_int_eq (n, N_ENTRIES (rows));
}
END_TEST

START_TEST (findings_reach_their_place)
{
  static const struct
  {
    dw_form_id form;
    const char *attribute;
    int row;
    const char *path;
    int index;
    bool is_meant;
  } rows[] = {
    { DW_FORM_BODY, "rod-mm", 0, "body.rod", -1, true },
    { DW_FORM_BODY, "bore-mm", 0, "body.rod", -1, false },
    { DW_FORM_HOLES, "diameter-mm", 1, "piston.holes.diameter", 1, true },
    { DW_FORM_HOLES, "diameter-mm", 0, "piston.holes.diameter", 1, false },
    { DW_FORM_OIL_MEASURED, "t2-c", 0, "oil.point.temperature", 1, true },
    { DW_FORM_OIL_MEASURED, "t1-c", 0, "oil.point.temperature", 1, false },
    { DW_FORM_VALVE, "hole-circle-mm", 0, "valve.hole-circle", -1, true },
    { DW_FORM_SPRING, "preload-mm", 0, "spring.preload", -1, true },
    { DW_FORM_STANCE, "droop-mm", 0, "stance.droop", -1, true },
    { DW_FORM_STANCE, "droop-mm", 0, "stance.ride-height", -1, false },
  };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      dw_error finding = { .index = rows[i].index };
      g_strlcpy (finding.field, rows[i].path, sizeof finding.field);
      ck_assert_msg (
          dw_damper_place_is_meant (dw_damper_place_find (rows[i].form, rows[i].attribute),
                                    rows[i].row, &finding)
              == rows[i].is_meant,
          "%s", rows[i].attribute);
    }
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/damper-place");
  TCase *tc = tcase_create ("damper-place");
  tcase_add_test (tc, every_number_of_a_damper_has_a_place);
  tcase_add_loop_test (tc, places_do_not_overlap, 0, DW_DAMPER_PLACES);
  tcase_add_loop_test (tc, steps_and_labels_are_there, 0, DW_DAMPER_PLACES);
  tcase_add_test (tc, shares_add_to_one);
  tcase_add_test (tc, what_is_optional_can_be_taken_away);
  tcase_add_test (tc, findings_reach_their_place);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
