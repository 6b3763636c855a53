/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-history.h"

#include "project-samples.h"

/* Models of a history are texts here: what they hold is plain to see. */
static gpointer
copy_text (gconstpointer model)
{
  return g_strdup (model);
}

static gboolean
equal_texts (gconstpointer a, gconstpointer b)
{
  return g_str_equal (a, b);
}

static const DwHistoryOps text_ops = { copy_text, equal_texts, g_free };

#define assert_model(history, text) ck_assert_str_eq (dw_history_get_model (history), text)

START_TEST (a_new_history_has_nothing_to_undo_and_is_saved)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  assert_model (history, "0");
  ck_assert (!dw_history_is_modified (history));
  ck_assert (!dw_history_undo (history));
  ck_assert (!dw_history_redo (history));
  ck_assert_ptr_null (dw_history_get_undo_label (history));
  ck_assert_ptr_null (dw_history_get_redo_label (history));
  dw_history_free (NULL);
}
END_TEST

START_TEST (undo_and_redo_walk_the_steps_and_name_them)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  ck_assert (dw_history_record (history, "first", NULL, "1"));
  ck_assert (dw_history_record (history, "second", NULL, "2"));
  ck_assert_str_eq (dw_history_get_undo_label (history), "second");
  ck_assert (dw_history_undo (history));
  assert_model (history, "1");
  ck_assert_str_eq (dw_history_get_undo_label (history), "first");
  ck_assert_str_eq (dw_history_get_redo_label (history), "second");
  ck_assert (dw_history_undo (history));
  assert_model (history, "0");
  ck_assert (!dw_history_undo (history));
  ck_assert (dw_history_redo (history));
  ck_assert (dw_history_redo (history));
  assert_model (history, "2");
  ck_assert (!dw_history_redo (history));
}
END_TEST

START_TEST (an_edit_that_changes_nothing_is_dropped_and_keeps_redo)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "first", NULL, "1");
  dw_history_undo (history);
  ck_assert (!dw_history_record (history, "nothing", NULL, "0"));
  ck_assert (dw_history_redo (history));
  assert_model (history, "1");
}
END_TEST

START_TEST (an_edit_after_undo_cuts_off_the_branch)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "first", NULL, "1");
  dw_history_record (history, "second", NULL, "2");
  dw_history_undo (history);
  dw_history_undo (history);
  dw_history_record (history, "other", NULL, "3");
  ck_assert (!dw_history_redo (history));
  ck_assert (dw_history_undo (history));
  assert_model (history, "0");
  ck_assert (!dw_history_undo (history));
}
END_TEST

START_TEST (edits_of_one_key_become_one_step)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "drag", "bore", "1");
  dw_history_record (history, "drag", "bore", "2");
  dw_history_record (history, "drag", "bore", "3");
  dw_history_record (history, "drag", "rod", "4");
  dw_history_record (history, "plain", NULL, "5");
  dw_history_record (history, "plain", NULL, "6");
  dw_history_undo (history);
  assert_model (history, "5");
  dw_history_undo (history);
  assert_model (history, "4");
  dw_history_undo (history);
  assert_model (history, "3");
  dw_history_undo (history);
  assert_model (history, "0");
}
END_TEST

START_TEST (undo_redo_and_save_end_a_run)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "drag", "bore", "1");
  dw_history_record (history, "other", NULL, "2");
  dw_history_undo (history);
  dw_history_record (history, "drag", "bore", "3");
  dw_history_undo (history);
  assert_model (history, "1");
  dw_history_redo (history);
  dw_history_record (history, "drag", "bore", "4");
  dw_history_undo (history);
  assert_model (history, "3");
  dw_history_redo (history);
  dw_history_record (history, "type", "name", "5");
  dw_history_set_saved (history, 0);
  dw_history_record (history, "type", "name", "6");
  dw_history_undo (history);
  assert_model (history, "5");
}
END_TEST

START_TEST (a_run_that_ends_where_it_began_leaves_no_step)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "drag", "bore", "1");
  ck_assert (dw_history_record (history, "drag", "bore", "0"));
  assert_model (history, "0");
  ck_assert (!dw_history_is_modified (history));
  ck_assert (!dw_history_undo (history));
  ck_assert (dw_history_record (history, "drag", "bore", "2"));
  ck_assert (dw_history_undo (history));
  assert_model (history, "0");
}
END_TEST

START_TEST (modified_is_told_by_the_state_and_not_by_the_content)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "first", NULL, "1");
  dw_history_set_saved (history, dw_history_get_state (history));
  ck_assert (!dw_history_is_modified (history));
  dw_history_record (history, "second", NULL, "2");
  ck_assert (dw_history_is_modified (history));
  dw_history_undo (history);
  ck_assert (!dw_history_is_modified (history));
  dw_history_undo (history);
  ck_assert (dw_history_is_modified (history));
  dw_history_record (history, "other", NULL, "9");
  dw_history_undo (history);
  ck_assert_msg (dw_history_is_modified (history), "the saved state was cut off for good");
}
END_TEST

START_TEST (a_saved_step_is_not_merged_over)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "drag", "bore", "1");
  dw_history_set_saved (history, dw_history_get_state (history));
  dw_history_record (history, "drag", "bore", "2");
  ck_assert (dw_history_is_modified (history));
  dw_history_undo (history);
  assert_model (history, "1");
  ck_assert (!dw_history_is_modified (history));
}
END_TEST

START_TEST (what_is_typed_while_a_save_runs_is_not_saved_by_it)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "type", "name", "1");
  const guint64 state = dw_history_get_state (history);
  dw_history_record (history, "type", "name", "2");
  dw_history_set_saved (history, state);
  ck_assert (dw_history_is_modified (history));
}
END_TEST

START_TEST (a_recovered_project_is_modified_from_the_start)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_set_never_saved (history);
  ck_assert (dw_history_is_modified (history));
  dw_history_record (history, "first", NULL, "1");
  dw_history_undo (history);
  ck_assert (dw_history_is_modified (history));
}
END_TEST

START_TEST (state_numbers_are_never_used_twice)
{
  test_random random = test_random_new (1);
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  g_autoptr (GHashTable) content = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free,
                                                          g_free);
  for (int i = 0; i < 2000; i++)
    {
      g_autofree char *text = g_strdup_printf ("%d", test_random_int (&random, 0, 5));
      const int what = test_random_int (&random, 0, 3);
      if (what == 0)
        dw_history_undo (history);
      else if (what == 1)
        dw_history_redo (history);
      else
        dw_history_record (history, "edit", what == 2 ? "key" : NULL, text);
      const guint64 state = dw_history_get_state (history);
      const char *known = g_hash_table_lookup (content, &state);
      if (known != NULL)
        ck_assert_msg (g_str_equal (known, dw_history_get_model (history)),
                       "state %llu was \"%s\" (DW_SEED=%llu)", (unsigned long long)state, known,
                       (unsigned long long)test_seed ());
      else
        g_hash_table_insert (content, g_memdup2 (&state, sizeof state),
                             g_strdup (dw_history_get_model (history)));
    }
}
END_TEST

static guint
count_undo (DwHistory *history)
{
  guint n = 0;
  while (dw_history_undo (history))
    n++;
  return n;
}

START_TEST (the_oldest_steps_are_forgotten_and_the_current_model_never)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  for (int i = 1; i <= DW_HISTORY_LIMIT + 20; i++)
    {
      g_autofree char *text = g_strdup_printf ("%d", i);
      dw_history_record (history, "edit", NULL, text);
    }
  assert_model (history, "520");
  ck_assert (dw_history_is_modified (history));
  ck_assert_uint_eq (count_undo (history), DW_HISTORY_LIMIT);
  assert_model (history, "20");
  ck_assert_msg (dw_history_is_modified (history), "the saved state 0 was forgotten");
}
END_TEST

START_TEST (a_shorter_limit_keeps_at_least_one_step)
{
  g_autoptr (DwHistory) history = dw_history_new (&text_ops, "0");
  dw_history_record (history, "edit", NULL, "1");
  dw_history_record (history, "edit", NULL, "2");
  dw_history_set_saved (history, dw_history_get_state (history));
  dw_history_record (history, "edit", NULL, "3");
  dw_history_undo (history);
  dw_history_set_limit (history, 1);
  assert_model (history, "2");
  ck_assert (!dw_history_is_modified (history));
  ck_assert_msg (dw_history_redo (history), "what can be redone is not forgotten");
  dw_history_record (history, "edit", NULL, "4");
  assert_model (history, "4");
  ck_assert_uint_eq (count_undo (history), 1);
  assert_model (history, "3");
  ck_assert (dw_history_is_modified (history));
}
END_TEST

START_TEST (a_project_is_kept_as_it_was_when_it_was_recorded)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autoptr (DwHistory) history = dw_history_new (&dw_history_project_ops, project);
  ck_assert (!dw_history_record (history, "nothing", NULL, project));
  dw_project_edit_setup (project, 0)->damper[DW_FRONT].body.bore = 0.012;
  g_array_set_size (dw_project_edit_parts (project)->drills, 0);
  ck_assert (dw_history_record (history, "Change bore", NULL, project));
  dw_project_edit_setup (project, 0)->damper[DW_FRONT].body.bore = 0.013;

  const dw_project *now = dw_history_get_model (history);
  ck_assert (dw_project_get_setup (now, 0)->damper[DW_FRONT].body.bore == 0.012);
  ck_assert_uint_eq (dw_project_get_parts (now)->drills->len, 0);
  ck_assert (dw_history_undo (history));
  now = dw_history_get_model (history);
  ck_assert (dw_project_get_setup (now, 0)->damper[DW_FRONT].body.bore == 0.016);
  ck_assert_uint_gt (dw_project_get_parts (now)->drills->len, 0);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-history");
  TCase *tc = tcase_create ("history");
  tcase_add_test (tc, a_new_history_has_nothing_to_undo_and_is_saved);
  tcase_add_test (tc, undo_and_redo_walk_the_steps_and_name_them);
  tcase_add_test (tc, an_edit_that_changes_nothing_is_dropped_and_keeps_redo);
  tcase_add_test (tc, an_edit_after_undo_cuts_off_the_branch);
  tcase_add_test (tc, edits_of_one_key_become_one_step);
  tcase_add_test (tc, undo_redo_and_save_end_a_run);
  tcase_add_test (tc, a_run_that_ends_where_it_began_leaves_no_step);
  tcase_add_test (tc, modified_is_told_by_the_state_and_not_by_the_content);
  tcase_add_test (tc, a_saved_step_is_not_merged_over);
  tcase_add_test (tc, what_is_typed_while_a_save_runs_is_not_saved_by_it);
  tcase_add_test (tc, a_recovered_project_is_modified_from_the_start);
  tcase_add_test (tc, state_numbers_are_never_used_twice);
  tcase_add_test (tc, the_oldest_steps_are_forgotten_and_the_current_model_never);
  tcase_add_test (tc, a_shorter_limit_keeps_at_least_one_step);
  tcase_add_test (tc, a_project_is_kept_as_it_was_when_it_was_recorded);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
