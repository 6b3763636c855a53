/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "calc-run.h"

static const char *const good[] = {
  "{demo}/club-final.dampwright",       "{demo}/early-void.dampwright",
  "{demo}/smooth-indoor.dampwright",    "{data}/valid/bare.dampwright",
  "{data}/valid/everything.dampwright", "{data}/valid/empty.dampwright",
};

START_TEST (a_good_file_prints_nothing)
{
  calc_result r = calc_run ("check %s", good[_i]);
  ck_assert_msg (r.status == 0, "status %d: %s", r.status, good[_i]);
  ck_assert_str_eq (r.out, "");
  ck_assert_str_eq (r.err, "");
  calc_result_clear (&r);
}
END_TEST

/* Every broken file of the project layer: findings on standard output, with file and line. */
START_TEST (every_broken_file_is_found)
{
  g_autofree char *folder = calc_path ("{data}/malformed");
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = NULL;
  int n = 0;
  ck_assert_ptr_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autofree char *head = g_strconcat (path, ":", NULL);
      calc_result r = calc_run ("check %s", path);
      ck_assert_msg (r.status == 1, "status %d: %s", r.status, path);
      ck_assert_msg (g_str_has_prefix (r.out, head) && g_str_has_suffix (r.out, "\n"), "%s: %s",
                     path, r.out);
      ck_assert_str_eq (r.err, "");
      calc_result_clear (&r);
      n++;
    }
  ck_assert_int_gt (n, 50);
}
END_TEST

START_TEST (an_unknown_attribute_is_not_good)
{
  calc_result r = calc_run ("check {data}/malformed/unknown-attribute.dampwright");
  ck_assert_int_eq (r.status, 1);
  ck_assert_ptr_nonnull (strstr (r.out, ".dampwright:5: warning: "));
  ck_assert_ptr_nonnull (strstr (r.out, "colour"));
  calc_result_clear (&r);
}
END_TEST

/* An own oil whose line has no meaning at the project's temperature: the file can be read, the
 * forces cannot be computed. */
static const char *const too_cold
    = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<project xmlns=\"urn:dampwright:project:1\" version=\"1\" fitted=\"cold\">\n"
      "  <conditions oil-c=\"-25\"/>\n"
      "  <setup id=\"cold\">\n"
      "    <damper axle=\"front\"><body bore-mm=\"16\" rod-mm=\"3.5\"/><piston/>"
      "<oil viscosity-cst=\"450\"/></damper>\n"
      "    <damper axle=\"rear\"><body bore-mm=\"16\" rod-mm=\"3.5\"/><piston/>"
      "<oil t1-c=\"140\" viscosity1-cst=\"100000\" t2-c=\"150\" viscosity2-cst=\"50\" "
      "density-kg-m3=\"970\"/></damper>\n"
      "  </setup>\n"
      "</project>\n";

START_TEST (what_force_would_fail_on_is_found)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "cold.dampwright", NULL);
  ck_assert (g_file_set_contents (path, too_cold, -1, NULL));
  calc_result checked = calc_run ("check %s", path);
  calc_result forced = calc_run ("force %s", path);
  ck_assert_msg (checked.status == 1, "status %d: %s", checked.status, checked.out);
  ck_assert_str_eq (checked.err, "");
  ck_assert_msg (strstr (checked.out, "setup cold, rear: ") != NULL, "%s", checked.out);
  ck_assert_ptr_null (strstr (checked.out, "front"));
  ck_assert_int_eq (forced.status, 1);
  ck_assert_str_eq (forced.err, checked.out);
  calc_result_clear (&checked);
  calc_result_clear (&forced);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (findings_may_go_into_a_file)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "found", NULL);
  g_autofree char *written = NULL;
  calc_result shown = calc_run ("check {data}/malformed/no-bore.dampwright");
  calc_result kept = calc_run ("check {data}/malformed/no-bore.dampwright -o %s", path);
  ck_assert_int_eq (kept.status, 1);
  ck_assert_str_eq (kept.out, "");
  ck_assert (g_file_get_contents (path, &written, NULL, NULL));
  ck_assert_str_eq (written, shown.out);
  calc_result_clear (&shown);
  calc_result_clear (&kept);
  calc_remove_folder (folder);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc-check");
  TCase *tc = tcase_create ("check");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, a_good_file_prints_nothing, 0, N_ENTRIES (good));
  tcase_add_test (tc, every_broken_file_is_found);
  tcase_add_test (tc, an_unknown_attribute_is_not_good);
  tcase_add_test (tc, what_force_would_fail_on_is_found);
  tcase_add_test (tc, findings_may_go_into_a_file);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
