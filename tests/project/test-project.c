/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project.h"

#include <string.h>

#include "project-samples.h"

static dw_project *
three_setups (void)
{
  const dw_damper damper = dw_damper_defaults ();
  dw_project *project = dw_project_new_empty ();
  ck_assert_int_eq (dw_project_add_setup (project, "a", "First", &damper, &damper), 0);
  ck_assert_int_eq (dw_project_add_setup (project, "b", "Second", &damper, &damper), 1);
  ck_assert_int_eq (dw_project_add_setup (project, "c", "Third", &damper, &damper), 2);
  return project;
}

/* "abc" for setups a, b and c in this order */
static void
assert_order (const dw_project *project, const char *ids)
{
  ck_assert_uint_eq (dw_project_get_n_setups (project), strlen (ids));
  for (guint i = 0; i < strlen (ids); i++)
    ck_assert_int_eq (dw_project_get_setup (project, i)->id[0], ids[i]);
}

START_TEST (a_new_project_is_ready_to_edit)
{
  g_autoptr (dw_project) project = dw_project_new ();
  ck_assert_uint_eq (dw_project_get_n_setups (project), 1);
  ck_assert_ptr_nonnull (dw_project_get_fitted (project));
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    ck_assert_uint_eq (dw_damper_check (&dw_project_get_fitted (project)->damper[axle], NULL, 0),
                       0);
  ck_assert_uint_gt (dw_project_get_parts (project)->drills->len, 0);
  ck_assert (project->speeds.low == 0.05 && project->speeds.middle == 0.2
             && project->speeds.high == 1.0);
  ck_assert (project->conditions.oil_temperature == 25.0
             && project->conditions.air_temperature == 20.0);
}
END_TEST

START_TEST (a_copy_is_equal_and_editing_it_leaves_the_original)
{
  test_random random = test_random_new ((uint64_t)_i);
  g_autoptr (dw_project) project = sample_random_project (&random);
  g_autoptr (dw_project) copy = dw_project_copy (project);
  g_autoptr (dw_project) second = dw_project_copy (copy);
  ck_assert (dw_project_equal (project, copy));

  const dw_damper damper = dw_damper_defaults ();
  dw_project_add_setup (copy, "new-one", "New", &damper, &damper);
  dw_project_set_notes (copy, "other");
  dw_project_set_meeting (copy, DW_MEETING_CAR, "other");
  for (guint i = 0; i < dw_project_get_n_setups (copy); i++)
    dw_project_set_setup_notes (copy, i, "other");
  for (guint i = 0; i < dw_project_get_n_setups (copy); i++)
    dw_project_edit_setup (copy, i)->damper[DW_REAR].body.bore *= 1.5;
  const dw_drill drill = { 1e-3 };
  g_array_append_val (dw_project_edit_parts (copy)->drills, drill);
  ck_assert (!dw_project_equal (project, copy));
  ck_assert_msg (dw_project_equal (project, second), "an edit reached another copy (DW_SEED=%llu)",
                 (unsigned long long)test_seed ());
}
END_TEST

START_TEST (an_unshared_setup_is_edited_in_place)
{
  g_autoptr (dw_project) project = three_setups ();
  const dw_setup *before = dw_project_get_setup (project, 1);
  ck_assert_ptr_eq (dw_project_edit_setup (project, 1), before);
  g_autoptr (dw_project) copy = dw_project_copy (project);
  ck_assert_ptr_ne (dw_project_edit_setup (project, 1), before);
  ck_assert_ptr_eq (dw_project_get_setup (copy, 1), before);
}
END_TEST

START_TEST (a_setup_that_is_edited_keeps_its_notes)
{
  g_autoptr (dw_project) project = three_setups ();
  ck_assert (dw_project_set_setup_notes (project, 1, "one\n\ttwo "));
  g_autoptr (dw_project) copy = dw_project_copy (project);
  dw_project_edit_setup (copy, 1)->damper[DW_REAR].body.bore *= 1.5;
  ck_assert_str_eq (dw_project_get_setup (copy, 1)->notes, "one\n\ttwo ");
  ck_assert (dw_project_set_setup_notes (copy, 1, dw_project_get_setup (copy, 1)->notes + 4));
  ck_assert_str_eq (dw_project_get_setup (copy, 1)->notes, "\ttwo ");
  ck_assert_str_eq (dw_project_get_setup (project, 1)->notes, "one\n\ttwo ");
  ck_assert_str_eq (dw_project_get_setup (project, 0)->notes, "");
}
END_TEST

START_TEST (what_is_not_valid_is_not_said)
{
  g_autoptr (dw_project) project = three_setups ();
  g_autoptr (dw_project) before = dw_project_copy (project);
  for (int i = 0; i < DW_N_MEETING; i++)
    {
      ck_assert_str_eq (project->meeting[i], "");
      ck_assert (!dw_project_set_meeting (project, (dw_meeting_field)i, "two\nlines"));
      ck_assert (!dw_project_set_meeting (project, (dw_meeting_field)i, NULL));
    }
  ck_assert_str_eq (project->notes, "");
  ck_assert (!dw_project_set_notes (project, "\r\n") && !dw_project_set_notes (project, NULL));
  ck_assert (!dw_project_set_setup_notes (project, 0, "\x07"));
  ck_assert (dw_project_equal (project, before));
}
END_TEST

/* Changes that make a project another one. */
static void
change (dw_project *project, int what)
{
  switch (what)
    {
    case 0:
      dw_project_set_title (project, "other");
      break;
    case 1:
      dw_project_set_fitted (project, "b");
      break;
    case 2:
      project->conditions.oil_temperature += 1.0;
      break;
    case 3:
      project->conditions.air_temperature += 1.0;
      break;
    case 4:
      project->speeds.low *= 1.1;
      break;
    case 5:
      project->speeds.middle *= 1.1;
      break;
    case 6:
      project->speeds.high *= 1.1;
      break;
    case 7:
      project->car.has_sprung_mass[DW_FRONT] = true;
      break;
    case 8:
      project->car.has_sprung_mass[DW_REAR] = true;
      break;
    case 9:
      dw_project_rename_setup (project, 1, "other");
      break;
    case 10:
      dw_project_move_setup (project, 0, 1);
      break;
    case 11:
      dw_project_remove_setup (project, 2);
      break;
    case 12:
      dw_project_edit_setup (project, 0)->damper[DW_FRONT].seal_friction += 1.0;
      break;
    case 13:
      dw_project_edit_setup (project, 2)->damper[DW_REAR].seal_friction += 1.0;
      break;
    case 14:
      dw_parts_add_piston (dw_project_edit_parts (project), "p", &(dw_piston){ 0 });
      break;
    case 15:
      dw_project_set_meeting (project, DW_MEETING_EVENT, "other");
      break;
    case 16:
      dw_project_set_meeting (project, DW_MEETING_CAR, "other");
      break;
    case 17:
      dw_project_set_notes (project, " ");
      break;
    case 18:
      dw_project_set_setup_notes (project, 2, "\n");
      break;
    default:
      ck_abort_msg ("no change %d", what);
    }
}

START_TEST (any_difference_makes_projects_unequal)
{
  g_autoptr (dw_project) project = three_setups ();
  g_autoptr (dw_project) other = three_setups ();
  ck_assert (dw_project_equal (project, other));
  change (other, _i);
  ck_assert_msg (!dw_project_equal (project, other), "change %d went unseen", _i);
}
END_TEST

START_TEST (a_mass_that_is_not_given_does_not_count)
{
  g_autoptr (dw_project) project = three_setups ();
  g_autoptr (dw_project) other = three_setups ();
  other->car.sprung_mass[DW_FRONT] = 0.3;
  ck_assert (dw_project_equal (project, other));
  project->car.has_sprung_mass[DW_FRONT] = other->car.has_sprung_mass[DW_FRONT] = true;
  ck_assert (!dw_project_equal (project, other));
}
END_TEST

START_TEST (setups_are_found_by_id)
{
  g_autoptr (dw_project) project = three_setups ();
  ck_assert_int_eq (dw_project_find_index (project, "c"), 2);
  ck_assert_int_eq (dw_project_find_index (project, "d"), -1);
  ck_assert_int_eq (dw_project_find_index (project, NULL), -1);
  ck_assert_str_eq (dw_project_find_setup (project, "b")->name, "Second");
  ck_assert_ptr_null (dw_project_find_setup (project, ""));
  ck_assert_ptr_null (dw_project_get_fitted (project));
}
END_TEST

START_TEST (a_setup_needs_a_free_id_and_a_good_name)
{
  const dw_damper damper = dw_damper_defaults ();
  g_autoptr (dw_project) project = three_setups ();
  ck_assert_int_eq (dw_project_add_setup (project, "a", "Again", &damper, &damper), -1);
  ck_assert_int_eq (dw_project_add_setup (project, "1 a", "Again", &damper, &damper), -1);
  ck_assert_int_eq (dw_project_add_setup (project, "d", "two\nlines", &damper, &damper), -1);
  ck_assert_int_eq (dw_project_add_setup (project, "d", NULL, &damper, &damper), -1);
  assert_order (project, "abc");
  ck_assert (!dw_project_rename_setup (project, 0, "\x01"));
  ck_assert_str_eq (dw_project_get_setup (project, 0)->name, "First");
  ck_assert (dw_project_rename_setup (project, 0, ""));
}
END_TEST

START_TEST (the_list_of_setups_has_an_end)
{
  const dw_damper damper = dw_damper_defaults ();
  g_autoptr (dw_project) project = dw_project_new_empty ();
  for (int i = 0; i < DW_PROJECT_MAX_SETUPS; i++)
    {
      g_autofree char *id = g_strdup_printf ("s%d", i);
      ck_assert_int_eq (dw_project_add_setup (project, id, "", &damper, &damper), i);
    }
  ck_assert_int_eq (dw_project_add_setup (project, "more", "", &damper, &damper), -1);
  ck_assert_uint_eq (dw_project_get_n_setups (project), DW_PROJECT_MAX_SETUPS);
}
END_TEST

START_TEST (only_a_setup_of_the_project_can_be_fitted)
{
  g_autoptr (dw_project) project = three_setups ();
  ck_assert (dw_project_set_fitted (project, "b"));
  ck_assert (!dw_project_set_fitted (project, "z"));
  ck_assert_str_eq (project->fitted, "b");
  dw_project_remove_setup (project, 0);
  ck_assert_str_eq (dw_project_get_fitted (project)->name, "Second");
  dw_project_remove_setup (project, 0);
  ck_assert_str_eq (project->fitted, "");
  ck_assert_ptr_null (dw_project_get_fitted (project));
  assert_order (project, "c");
  ck_assert (dw_project_set_fitted (project, "c"));
  ck_assert (dw_project_set_fitted (project, NULL));
  ck_assert_str_eq (project->fitted, "");
}
END_TEST

START_TEST (setups_can_change_places)
{
  g_autoptr (dw_project) project = three_setups ();
  dw_project_move_setup (project, 0, 2);
  assert_order (project, "bca");
  dw_project_move_setup (project, 2, 0);
  assert_order (project, "abc");
  dw_project_move_setup (project, 1, 2);
  assert_order (project, "acb");
  dw_project_move_setup (project, 1, 1);
  assert_order (project, "acb");
}
END_TEST

static const struct
{
  const char *name;
  const char *id;
} made_ids[] = {
  { "Rear quicker", "rear-quicker" },
  { "First", "first" },
  { "", "setup" },
  { "  --  ", "setup" },
  { "2 hot", "s-2-hot" },
  { "Größe & Öl!", "grosse-ol" },
  { "漢", "setup" },
  { "a", "a-2" },
  { "A", "a-2" },
};

START_TEST (an_id_is_made_from_the_name)
{
  g_autoptr (dw_project) project = three_setups ();
  g_autofree char *id = dw_project_make_id (project, made_ids[_i].name);
  ck_assert (dw_project_id_is_valid (id));
  ck_assert_int_eq (dw_project_find_index (project, id), -1);
  /* What stands for letters beyond ASCII is the C library's business. */
  if (g_str_is_ascii (made_ids[_i].name))
    ck_assert_str_eq (id, made_ids[_i].id);
}
END_TEST

START_TEST (made_ids_differ_even_for_one_long_name)
{
  const dw_damper damper = dw_damper_defaults ();
  g_autoptr (dw_project) project = dw_project_new_empty ();
  g_autofree char *name = g_strnfill (DW_PROJECT_MAX_TEXT, 'x');
  for (int i = 0; i < 120; i++)
    ck_assert_int_eq (dw_project_add_setup (project, NULL, name, &damper, &damper), i);
}
END_TEST

START_TEST (ids_are_names_without_colon)
{
  static const char *const good[] = { "a", "_", "trial-1", "A.b_c-9", "größe", "漢" };
  static const char *const bad[] = { "", "1", "-a", ".a", "a b", "a:b", " a", "a ", "a/b", "\xFF" };
  for (int i = 0; i < N_ENTRIES (good); i++)
    ck_assert_msg (dw_project_id_is_valid (good[i]), "%s", good[i]);
  for (int i = 0; i < N_ENTRIES (bad); i++)
    ck_assert_msg (!dw_project_id_is_valid (bad[i]), "%s", bad[i]);
  g_autofree char *longest = g_strnfill (DW_PROJECT_MAX_ID, 'a');
  g_autofree char *longer = g_strnfill (DW_PROJECT_MAX_ID + 1, 'a');
  ck_assert (dw_project_id_is_valid (longest) && !dw_project_id_is_valid (longer));
  ck_assert (!dw_project_id_is_valid (NULL));
}
END_TEST

START_TEST (texts_are_one_line_of_utf8)
{
  static const char *const good[] = { "", "a b", "<&>\"'", "äß漢🔧", "\xC2\xA0" };
  static const char *const bad[] = { "a\nb",     "\t",   "\x7F",        "\x01",
                                     "\xC2\x85", "\xFF", "\xEF\xBF\xBF" };
  for (int i = 0; i < N_ENTRIES (good); i++)
    ck_assert_msg (dw_project_text_is_valid (good[i]), "%d", i);
  for (int i = 0; i < N_ENTRIES (bad); i++)
    ck_assert_msg (!dw_project_text_is_valid (bad[i]), "%d", i);
  GString *text = g_string_new (NULL);
  for (int i = 0; i < DW_PROJECT_MAX_TEXT; i++)
    g_string_append (text, "ä");
  ck_assert_msg (dw_project_text_is_valid (text->str), "characters count, not bytes");
  g_string_append_c (text, 'x');
  ck_assert (!dw_project_text_is_valid (text->str));
  g_string_free (text, TRUE);
  ck_assert (!dw_project_text_is_valid (NULL));
}
END_TEST

START_TEST (notes_are_lines_of_utf8)
{
  static const char *const good[] = { "", "a\nb", "\t", " \n ", "<&>\"'", "äß漢🔧" };
  static const char *const bad[] = { "a\r\nb",   "\x7F", "\x01",        "\xC2\x85",
                                     "\xC2\x8A", "\xFF", "\xEF\xBF\xBF" };
  for (int i = 0; i < N_ENTRIES (good); i++)
    ck_assert_msg (dw_project_notes_are_valid (good[i]), "%d", i);
  for (int i = 0; i < N_ENTRIES (bad); i++)
    ck_assert_msg (!dw_project_notes_are_valid (bad[i]), "%d", i);
  GString *text = g_string_new (NULL);
  for (int i = 0; i < DW_PROJECT_MAX_NOTES; i++)
    g_string_append (text, "ä");
  ck_assert_msg (dw_project_notes_are_valid (text->str), "characters count, not bytes");
  g_string_append_c (text, 'x');
  ck_assert (!dw_project_notes_are_valid (text->str));
  g_string_free (text, TRUE);
  ck_assert (!dw_project_notes_are_valid (NULL));
}
END_TEST

START_TEST (axles_have_names)
{
  ck_assert_str_eq (dw_axle_name (DW_FRONT), "front");
  ck_assert_str_eq (dw_axle_name (DW_REAR), "rear");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-project");
  TCase *tc = tcase_create ("project");
  tcase_add_test (tc, a_new_project_is_ready_to_edit);
  tcase_add_loop_test (tc, a_copy_is_equal_and_editing_it_leaves_the_original, 0, 20);
  tcase_add_test (tc, an_unshared_setup_is_edited_in_place);
  tcase_add_test (tc, a_setup_that_is_edited_keeps_its_notes);
  tcase_add_test (tc, what_is_not_valid_is_not_said);
  tcase_add_loop_test (tc, any_difference_makes_projects_unequal, 0, 19);
  tcase_add_test (tc, a_mass_that_is_not_given_does_not_count);
  tcase_add_test (tc, setups_are_found_by_id);
  tcase_add_test (tc, a_setup_needs_a_free_id_and_a_good_name);
  tcase_add_test (tc, the_list_of_setups_has_an_end);
  tcase_add_test (tc, only_a_setup_of_the_project_can_be_fitted);
  tcase_add_test (tc, setups_can_change_places);
  tcase_add_loop_test (tc, an_id_is_made_from_the_name, 0, N_ENTRIES (made_ids));
  tcase_add_test (tc, made_ids_differ_even_for_one_long_name);
  tcase_add_test (tc, ids_are_names_without_colon);
  tcase_add_test (tc, texts_are_one_line_of_utf8);
  tcase_add_test (tc, notes_are_lines_of_utf8);
  tcase_add_test (tc, axles_have_names);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
