/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "panel-fixture.h"

static void
set_stroke (dw_damper *damper, gconstpointer data)
{
  damper->body.stroke = *(const double *)data;
}

static void
set_hub (dw_damper *damper, gconstpointer data)
{
  damper->valve.hub_diameter = *(const double *)data;
}

static void
count (int *n)
{
  (*n)++;
}

static void
count_others (DwDamperEditor *editor, gboolean another, int *n)
{
  (void)editor;
  if (another)
    (*n)++;
}

START_TEST (a_change_is_one_step_of_the_right_axle)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  const dw_damper front = *panel_damper (document, DW_FRONT);
  const dw_damper rear = *panel_damper (document, DW_REAR);
  const double stroke = 25e-3;

  dw_damper_editor_set_axle (editor, DW_REAR);
  ck_assert (dw_damper_editor_change (editor, "Change", NULL, set_stroke, &stroke));
  ck_assert (panel_damper (document, DW_REAR)->body.stroke == stroke);
  ck_assert (dw_damper_editor_get_damper (editor)->body.stroke == stroke);
  ck_assert (dw_damper_equal (panel_damper (document, DW_FRONT), &front));
  ck_assert_str_eq (dw_document_get_undo_label (document), "Change");
  ck_assert (dw_document_undo (document));
  ck_assert (dw_damper_equal (panel_damper (document, DW_REAR), &rear));
  ck_assert (dw_damper_equal (dw_damper_editor_get_damper (editor), &rear));
  ck_assert (!dw_document_undo (document));
}
END_TEST

START_TEST (runs_merge_within_one_axle_only)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  int steps = 0;

  for (int a = 0; a < DW_N_AXLES; a++)
    {
      dw_damper_editor_set_axle (editor, (dw_axle)a);
      for (int i = 0; i < 5; i++)
        {
          const double stroke = (20.0 + i) * 1e-3;
          ck_assert (dw_damper_editor_change (editor, "Change", "stroke:1", set_stroke, &stroke));
        }
    }
  while (dw_document_undo (document))
    steps++;
  ck_assert_int_eq (steps, 2);
}
END_TEST

START_TEST (what_does_not_fit_is_refused_with_a_reason)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  const guint64 state = dw_document_get_state (document);
  const double hub = 9.5e-3;
  const double good = 6e-3;
  int told = 0;

  g_signal_connect_swapped (editor, "finding-changed", G_CALLBACK (count), &told);
  ck_assert (!dw_damper_editor_change (editor, "Change", NULL, set_hub, &hub));
  ck_assert_int_eq (told, 1);
  ck_assert_str_eq (dw_damper_editor_get_finding (editor)->field, "valve.hub-diameter");
  ck_assert_uint_eq (dw_document_get_state (document), state);
  ck_assert (dw_damper_editor_change (editor, "Change", NULL, set_hub, &good));
  ck_assert_ptr_null (dw_damper_editor_get_finding (editor));
  ck_assert_int_eq (told, 2);
}
END_TEST

static gboolean
break_front (dw_project *project, gpointer data)
{
  dw_damper *damper = &dw_project_edit_setup (project, 0)->damper[DW_FRONT];
  (void)data;
  damper->body.stroke = 1.0;
  damper->valve.hub_diameter = 9.5e-3;
  return TRUE;
}

START_TEST (there_is_a_way_out_of_what_does_not_fit)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  const double worse = 2.0;
  const double stroke = 25e-3;
  const double hub = 6e-3;

  dw_document_edit (document, "Break", NULL, break_front, NULL);
  ck_assert (!dw_damper_editor_change (editor, "Change", NULL, set_stroke, &worse));
  ck_assert (dw_damper_editor_change (editor, "Change", NULL, set_stroke, &stroke));
  ck_assert (dw_damper_editor_change (editor, "Change", NULL, set_hub, &hub));
  ck_assert_uint_eq (dw_damper_check (panel_damper (document, DW_FRONT), NULL, 0), 0);
}
END_TEST

START_TEST (a_change_of_nothing_is_no_step)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  const double stroke = panel_damper (document, DW_FRONT)->body.stroke;
  const guint64 state = dw_document_get_state (document);

  ck_assert (dw_damper_editor_change (editor, "Change", NULL, set_stroke, &stroke));
  ck_assert_uint_eq (dw_document_get_state (document), state);
}
END_TEST

static gboolean
remove_setup (dw_project *project, gpointer data)
{
  (void)data;
  dw_project_remove_setup (project, 0);
  return TRUE;
}

START_TEST (without_a_setup_nothing_is_edited)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  const double stroke = 25e-3;
  int others = 0;

  g_signal_connect (editor, "changed", G_CALLBACK (count_others), &others);
  dw_document_edit (document, "Remove", NULL, remove_setup, NULL);
  ck_assert_int_eq (others, 1);
  ck_assert_ptr_null (dw_damper_editor_get_damper (editor));
  ck_assert (!dw_damper_editor_change (editor, "Change", NULL, set_stroke, &stroke));
  ck_assert (!dw_damper_editor_copy_section (editor, DW_SECTION_OIL, TRUE, NULL));
  ck_assert (dw_document_undo (document));
  ck_assert_ptr_nonnull (dw_damper_editor_get_damper (editor));
  dw_damper_editor_set_document (editor, NULL);
  ck_assert_ptr_null (dw_damper_editor_get_damper (editor));
  ck_assert (!dw_damper_editor_change (editor, "Change", NULL, set_stroke, &stroke));
}
END_TEST

START_TEST (only_changes_of_this_damper_are_told)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) front = panel_editor (document);
  g_autoptr (DwDamperEditor) rear = panel_editor (document);
  const double stroke = 25e-3;
  int changed = 0;
  int others = 0;

  dw_damper_editor_set_axle (rear, DW_REAR);
  g_signal_connect_swapped (front, "changed", G_CALLBACK (count), &changed);
  g_signal_connect (front, "changed", G_CALLBACK (count_others), &others);
  dw_damper_editor_change (rear, "Change", NULL, set_stroke, &stroke);
  ck_assert_int_eq (changed, 0);
  dw_damper_editor_change (front, "Change", NULL, set_stroke, &stroke);
  ck_assert_int_eq (changed, 1);
  ck_assert_int_eq (others, 0);
  dw_damper_editor_set_units (front, DW_UNITS_INCH);
  dw_damper_editor_set_setup (front, "b");
  ck_assert_int_eq (others, 2);
}
END_TEST

START_TEST (sections_are_copied_either_way)
{
  for (int to_other = 0; to_other < 2; to_other++)
    for (int section = 0; section < DW_N_SECTIONS; section++)
      {
        g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
        g_autoptr (DwDamperEditor) editor = panel_editor (document);
        const dw_axle target = to_other ? DW_REAR : DW_FRONT;
        const dw_damper front = *panel_damper (document, DW_FRONT);
        const dw_damper rear = *panel_damper (document, DW_REAR);
        const char *label = to_other ? "to rear" : "to front";

        dw_damper_editor_copy_section (editor, (dw_section)section, to_other, NULL);
        const dw_damper *after = panel_damper (document, target);
        const gboolean differed = section == DW_SECTION_SPRING || section == DW_SECTION_BODY;
        ck_assert (dw_damper_equal (after, to_other ? &rear : &front) != differed);
        ck_assert (dw_damper_equal (panel_damper (document, to_other ? DW_FRONT : DW_REAR),
                                    to_other ? &front : &rear));
        if (!differed)
          continue;
        ck_assert_ptr_nonnull (strstr (dw_document_get_undo_label (document), label));
        ck_assert (section == DW_SECTION_SPRING
                       ? after->spring.rate == (to_other ? front : rear).spring.rate
                       : after->body.stroke == (to_other ? front : rear).body.stroke);
        ck_assert (dw_document_undo (document));
        ck_assert (!dw_document_undo (document));
      }
}
END_TEST

static gboolean
narrow_rear (dw_project *project, gpointer data)
{
  dw_damper *damper = &dw_project_edit_setup (project, 0)->damper[DW_REAR];
  (void)data;
  damper->valve.outer_diameter = 8.7e-3;
  damper->piston.holes[1].diameter = 0.8e-3;
  damper->body.bore = 9e-3;
  damper->piston.holes[0].count = 2;
  return TRUE;
}

START_TEST (a_section_that_does_not_fit_over_there_is_not_copied)
{
  g_autoptr (DwDocument) document = panel_document (DW_OIL_NOMINAL);
  g_autoptr (DwDamperEditor) editor = panel_editor (document);
  dw_error finding = { 0 };

  dw_document_edit (document, "Narrow", NULL, narrow_rear, NULL);
  ck_assert_uint_eq (dw_damper_check (panel_damper (document, DW_REAR), NULL, 0), 0);
  const guint64 state = dw_document_get_state (document);
  ck_assert (!dw_damper_editor_copy_section (editor, DW_SECTION_VALVE, TRUE, &finding));
  ck_assert_str_eq (finding.field, "valve.outer-diameter");
  ck_assert_ptr_null (dw_damper_editor_get_finding (editor));
  ck_assert_uint_eq (dw_document_get_state (document), state);
}
END_TEST

START_TEST (sections_have_names)
{
  for (int i = 0; i < DW_N_SECTIONS; i++)
    ck_assert_int_eq (dw_section_find (dw_section_name ((dw_section)i)), i);
  ck_assert_int_eq (dw_section_find ("seal"), DW_N_SECTIONS);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/damper-editor");
  TCase *tc = tcase_create ("damper-editor");
  tcase_add_test (tc, a_change_is_one_step_of_the_right_axle);
  tcase_add_test (tc, runs_merge_within_one_axle_only);
  tcase_add_test (tc, what_does_not_fit_is_refused_with_a_reason);
  tcase_add_test (tc, there_is_a_way_out_of_what_does_not_fit);
  tcase_add_test (tc, a_change_of_nothing_is_no_step);
  tcase_add_test (tc, without_a_setup_nothing_is_edited);
  tcase_add_test (tc, only_changes_of_this_damper_are_told);
  tcase_add_test (tc, sections_are_copied_either_way);
  tcase_add_test (tc, a_section_that_does_not_fit_over_there_is_not_copied);
  tcase_add_test (tc, sections_have_names);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
