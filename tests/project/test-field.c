/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-field.h"

#include <math.h>
#include <string.h>

#include "model/dw-damper.h"
#include "project-samples.h"

/* What the end of an attribute's name says of its unit. Longer endings stand before shorter ones. */
static const struct
{
  const char *ending;
  const char *unit;
  int power;
} units[] = {
  { "-n-per-mm", "N/mm", 3 }, { "-per-s", "1/s", 0 }, { "-kg-m3", "kg/m3", 0 },
  { "-m-s", "m/s", 0 },       { "-mm", "mm", -3 },    { "-cst", "cSt", -6 },
  { "-ml", "ml", -6 },        { "-kpa", "kPa", 3 },   { "-mpa", "MPa", 6 },
  { "-gpa", "GPa", 9 },       { "-kg", "kg", 0 },     { "-n", "N", 0 },
  { "-c", "degC", 0 },        { "", "", 0 },
};

START_TEST (the_end_of_the_name_is_the_unit)
{
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  for (guint i = 0; i < form->n_fields; i++)
    {
      const dw_field *field = &form->fields[i];
      if (field->kind != DW_FIELD_NUMBER)
        continue;
      int n = 0;
      while (!g_str_has_suffix (field->name, units[n].ending))
        n++;
      ck_assert_msg (g_str_equal (field->unit, units[n].unit) && field->power == units[n].power,
                     "%s in <%s>", field->name, form->element);
    }
}
END_TEST

START_TEST (names_in_a_form_are_unique)
{
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  for (guint i = 0; i < form->n_fields; i++)
    ck_assert_ptr_eq (dw_form_find (form, form->fields[i].name), &form->fields[i]);
  ck_assert_ptr_null (dw_form_find (form, "colour"));
  ck_assert (dw_form_is_element (form->element));
}
END_TEST

START_TEST (only_elements_of_the_format_are_elements)
{
  ck_assert (dw_form_is_element ("valve"));
  ck_assert (!dw_form_is_element ("weather"));
  ck_assert (!dw_form_is_element (""));
}
END_TEST

START_TEST (every_limit_of_the_model_has_an_attribute)
{
  for (int limit = 0; limit < DW_N_LIMITS; limit++)
    {
      bool found = false;
      for (int id = 0; id < DW_N_FORMS; id++)
        for (guint i = 0; i < dw_form_get ((dw_form_id)id)->n_fields; i++)
          {
            const dw_field *field = &dw_form_get ((dw_form_id)id)->fields[i];
            const bool numeric = field->kind == DW_FIELD_NUMBER || field->kind == DW_FIELD_COUNT;
            found |= numeric && (int)field->limit == limit;
          }
      ck_assert_msg (found, "nothing in a file can set %s",
                     dw_limit_get ((dw_limit_id)limit)->path);
    }
}
END_TEST

static const struct
{
  dw_form_id form;
  const char *field;
  const char *range;
} ranges[] = {
  { DW_FORM_BODY, "bore-mm", "5 to 40 mm" },
  { DW_FORM_PISTON, "eccentricity", "0 to 1" },
  { DW_FORM_HOLES, "count", "1 to 64" },
  { DW_FORM_HOLES, "covered", "one of no, yes" },
  { DW_FORM_GAS_VENTED, "pressure-kpa", "50 to 110 kPa" },
  { DW_FORM_GAS_SEALED, "kind", "one of bladder, vented, emulsion" },
  { DW_FORM_OIL_PART, "viscosity-cst", "1 to 100000 cSt" },
  { DW_FORM_SPRING, "rate-n-per-mm", "0.001 to 100 N/mm" },
  { DW_FORM_SHIM, "modulus-gpa", "0.1 to 500 GPa" },
};

START_TEST (ranges_are_told_in_the_unit_of_the_file)
{
  const dw_field *field = dw_form_find (dw_form_get (ranges[_i].form), ranges[_i].field);
  ck_assert_ptr_nonnull (field);
  g_autofree char *text = dw_field_range_text (field);
  ck_assert_str_eq (text, ranges[_i].range);
}
END_TEST

START_TEST (paths_are_those_of_the_model)
{
  const dw_form *measured = dw_form_get (DW_FORM_OIL_MEASURED);
  ck_assert_str_eq (dw_field_get_path (dw_form_find (dw_form_get (DW_FORM_BODY), "rod-mm")),
                    "body.rod");
  ck_assert_str_eq (dw_field_get_path (dw_form_find (measured, "t2-c")), "oil.point.temperature");
  ck_assert_str_eq (dw_field_get_path (dw_form_find (measured, "viscosity1-cst")),
                    "oil.point.viscosity");
  ck_assert_str_eq (dw_field_get_path (dw_form_find (dw_form_get (DW_FORM_SETUP), "id")), "");
}
END_TEST

START_TEST (a_default_is_set_and_what_has_none_is_left_alone)
{
  dw_body body = { .bore = -1.0, .rod = -2.0, .stroke = -3.0 };
  dw_form_set_defaults (DW_FORM_BODY, &body);
  ck_assert (body.bore == -1.0 && body.rod == -2.0);
  ck_assert (body.stroke == dw_limit_get (DW_LIMIT_STROKE)->fallback);
  ck_assert (!dw_field_set_default (dw_form_find (dw_form_get (DW_FORM_BODY), "rod-mm"), &body));

  dw_gas gas = { DW_GAS_EMULSION, -1.0, -1.0 };
  dw_form_set_defaults (DW_FORM_GAS_SEALED, &gas);
  ck_assert (gas.kind == DW_GAS_BLADDER && gas.pressure == 101.325e3 && gas.volume == 1e-6);

  dw_holes holes = { -1, -1.0, true };
  dw_form_set_defaults (DW_FORM_HOLES, &holes);
  ck_assert (holes.count == 1 && holes.diameter == -1.0 && !holes.covered);

  dw_car car = { { false, false }, { -1.0, -1.0 } };
  dw_form_set_defaults (DW_FORM_CAR, &car);
  ck_assert (!car.has_sprung_mass[DW_FRONT] && car.sprung_mass[DW_FRONT] == -1.0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-field");
  TCase *tc = tcase_create ("field");
  tcase_add_loop_test (tc, the_end_of_the_name_is_the_unit, 0, DW_N_FORMS);
  tcase_add_loop_test (tc, names_in_a_form_are_unique, 0, DW_N_FORMS);
  tcase_add_test (tc, only_elements_of_the_format_are_elements);
  tcase_add_test (tc, every_limit_of_the_model_has_an_attribute);
  tcase_add_loop_test (tc, ranges_are_told_in_the_unit_of_the_file, 0, N_ENTRIES (ranges));
  tcase_add_test (tc, paths_are_those_of_the_model);
  tcase_add_test (tc, a_default_is_set_and_what_has_none_is_left_alone);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
