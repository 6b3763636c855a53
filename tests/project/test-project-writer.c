/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-writer.h"

#include <stdio.h>
#include <string.h>

#include "project-samples.h"

#define N_RANDOM 100

static void
assert_same_bytes (GBytes *a, GBytes *b, const char *why)
{
  ck_assert_msg (g_bytes_equal (a, b), "%s (DW_SEED=%llu)\n%.2000s\n%.2000s", why,
                 (unsigned long long)test_seed (), (const char *)g_bytes_get_data (a, NULL),
                 (const char *)g_bytes_get_data (b, NULL));
}

static dw_project *
read_back (GBytes *text)
{
  return sample_parse (g_bytes_get_data (text, NULL), g_bytes_get_size (text));
}

START_TEST (a_random_project_comes_back_to_the_last_bit)
{
  test_random random = test_random_new ((uint64_t)_i);
  g_autoptr (dw_project) project = sample_random_project (&random);
  g_autoptr (GBytes) text = dw_project_write_text (project);
  g_autoptr (dw_project) again = read_back (text);
  ck_assert_msg (dw_project_equal (project, again), "project %d of DW_SEED=%llu", _i,
                 (unsigned long long)test_seed ());
  g_autoptr (GBytes) second = dw_project_write_text (again);
  assert_same_bytes (text, second, "writing what was read");
}
END_TEST

START_TEST (a_good_file_is_stable_once_it_was_written)
{
  gsize length = 0;
  g_autofree char *file = sample_read ("valid", sample_valid_names[_i], &length);
  g_autoptr (dw_project) project = sample_parse (file, length);
  g_autoptr (GBytes) text = dw_project_write_text (project);
  g_autoptr (dw_project) again = read_back (text);
  ck_assert (dw_project_equal (project, again));
  g_autoptr (GBytes) second = dw_project_write_text (again);
  assert_same_bytes (text, second, sample_valid_names[_i]);
}
END_TEST

START_TEST (a_copy_is_written_alike)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autoptr (dw_project) copy = dw_project_copy (project);
  dw_project_edit_setup (copy, 0);
  g_autoptr (GBytes) text = dw_project_write_text (project);
  g_autoptr (GBytes) second = dw_project_write_text (copy);
  assert_same_bytes (text, second, "copy");
}
END_TEST

/* A setup with everything that may be present, and how it stands in a file. */
static const char written[]
    = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<project xmlns=\"urn:dampwright:project:1\" version=\"1\" title=\"Größe &lt;1&gt; &amp; "
      "&quot;2&quot;\" fitted=\"\">\n"
      "  <conditions oil-c=\"25\" air-c=\"20\"/>\n"
      "  <speeds low-m-s=\"0.05\" middle-m-s=\"0.2\" high-m-s=\"1\"/>\n"
      "  <car sprung-rear-kg=\"0.42\"/>\n"
      "  <meeting event=\"Round &amp; round\" car=\"buggy\"/>\n"
      "  <notes> \n</notes>\n"
      "  <setup id=\"a\" name=\"A\">\n"
      "    <damper axle=\"front\">\n"
      "      <body bore-mm=\"16\" rod-mm=\"3.5\" stroke-mm=\"30\" filling-ml=\"12.5\"/>\n"
      "      <piston thickness-mm=\"2.5\" clearance-mm=\"0.03\" eccentricity=\"0\">\n"
      "        <holes count=\"6\" diameter-mm=\"1.3\"/>\n"
      "        <holes count=\"2\" diameter-mm=\"1.05\" covered=\"yes\"/>\n"
      "      </piston>\n"
      "      <valve opens-on=\"rebound\" hub-diameter-mm=\"6.2\" outer-diameter-mm=\"9.6\" "
      "hole-circle-mm=\"7.6\" lift-limit-mm=\"0.6\" leaf-coupling=\"0\" preload-kpa=\"0\" "
      "seat-gap-mm=\"0\">\n"
      "        <shim thickness-mm=\"0.15\" count=\"1\" modulus-gpa=\"4\" poisson=\"0.38\" "
      "strength-mpa=\"100\"/>\n"
      "      </valve>\n"
      "      <oil viscosity-cst=\"450\" thinning-rate-per-s=\"12000\" thinning-exponent=\"0.8\"/>\n"
      "      <gas kind=\"bladder\" pressure-kpa=\"101.325\" volume-ml=\"1\"/>\n"
      "      <seal friction-n=\"0\"/>\n"
      "      <spring rate-n-per-mm=\"0.5\" free-length-mm=\"70\" preload-mm=\"0\"/>\n"
      "      <linkage motion-ratio=\"1\"/>\n"
      "      <stance ride-height-mm=\"24\" droop-mm=\"18\"/>\n"
      "    </damper>\n"
      "    <damper axle=\"rear\">\n"
      "      <body bore-mm=\"16\" rod-mm=\"3.5\" stroke-mm=\"30\"/>\n"
      "      <piston thickness-mm=\"2.5\" clearance-mm=\"0.03\" eccentricity=\"0\">\n"
      "        <holes count=\"6\" diameter-mm=\"1.3\"/>\n"
      "      </piston>\n"
      "      <oil>\n"
      "        <part viscosity-cst=\"350\" share=\"0.25\"/>\n"
      "        <part viscosity-cst=\"500\" share=\"0.75\"/>\n"
      "      </oil>\n"
      "      <gas kind=\"vented\" pressure-kpa=\"98.6\" volume-ml=\"1\"/>\n"
      "      <seal friction-n=\"0\"/>\n"
      "      <spring rate-n-per-mm=\"0.5\" free-length-mm=\"70\" preload-mm=\"0\"/>\n"
      "      <linkage motion-ratio=\"1\"/>\n"
      "    </damper>\n"
      "    <notes>First &lt;line&gt;,\n  second\n</notes>\n"
      "  </setup>\n"
      "  <parts>\n"
      "    <drill diameter-mm=\"1.3\"/>\n"
      "    <oil t1-c=\"20\" viscosity1-cst=\"410\" t2-c=\"40\" viscosity2-cst=\"290\" "
      "density-kg-m3=\"965\" volume-ml=\"30\"/>\n"
      "    <piston name=\"blank\" thickness-mm=\"2.5\" clearance-mm=\"0.03\" eccentricity=\"0\"/>\n"
      "  </parts>\n"
      "</project>\n";

static dw_project *
make_written (void)
{
  dw_project *project = dw_project_new_empty ();
  dw_project_set_title (project, "Größe <1> & \"2\"");
  project->car.has_sprung_mass[DW_REAR] = true;
  project->car.sprung_mass[DW_REAR] = 0.42;
  dw_damper front = dw_damper_defaults ();
  front.piston.n_holes = 2;
  front.piston.holes[1] = (dw_holes){ 2, 1.05e-3, true };
  front.valve.n_shims = 1;
  front.valve.shims[0] = (dw_shim){ 0.15e-3, 1, 4e9, 0.38, 100e6 };
  front.oil.has_thinning = true;
  front.oil.thinning_rate = 12000.0;
  front.oil.thinning_exponent = 0.8;
  front.body.has_filling = true;
  front.body.filling = 12.5e-6;
  front.stance = (dw_stance){
    .has_ride_height = true, .ride_height = 24e-3, .has_droop = true, .droop = 18e-3
  };
  dw_damper rear = dw_damper_defaults ();
  rear.oil = (dw_oil){ .kind = DW_OIL_BLEND,
                       .n_parts = 2,
                       .parts = { { 350e-6, 0.25 }, { 500e-6, 0.75 } } };
  rear.gas.kind = DW_GAS_VENTED;
  rear.gas.pressure = 98.6e3;
  dw_project_add_setup (project, "a", "A", &front, &rear);
  dw_project_set_meeting (project, DW_MEETING_EVENT, "Round & round");
  dw_project_set_meeting (project, DW_MEETING_CAR, "buggy");
  dw_project_set_notes (project, " \n");
  dw_project_set_setup_notes (project, 0, "First <line>,\n  second\n");

  dw_parts *parts = dw_project_edit_parts (project);
  const dw_drill drill = { 1.3e-3 };
  const dw_bottle bottle = { .oil = { .kind = DW_OIL_MEASURED,
                                      .point_temperature = { 20.0, 40.0 },
                                      .point_viscosity = { 410e-6, 290e-6 },
                                      .density = 965.0 },
                             .has_volume = true,
                             .volume = 30e-6 };
  dw_piston blank = front.piston;
  blank.n_holes = 0;
  g_array_append_val (parts->drills, drill);
  g_array_append_val (parts->oils, bottle);
  dw_parts_add_piston (parts, "blank", &blank);
  return project;
}

START_TEST (a_project_is_written_in_this_very_order)
{
  g_autoptr (dw_project) project = make_written ();
  g_autoptr (GBytes) text = dw_project_write_text (project);
  g_autofree char *copy = g_strndup (g_bytes_get_data (text, NULL), g_bytes_get_size (text));
  ck_assert_str_eq (copy, written);
  g_autoptr (dw_project) again = read_back (text);
  ck_assert (dw_project_equal (project, again));
}
END_TEST

/* A blank, a line feed or an angle bracket may stand anywhere. */
START_TEST (notes_come_back_to_the_last_blank)
{
  static const char *const notes[] = { " ",
                                       "\n",
                                       "\t",
                                       "\n\n \t",
                                       "  a",
                                       "a  ",
                                       "\na\n",
                                       "a\n\n\nb",
                                       "]]>",
                                       "<!-- a -->",
                                       "<notes>a</notes>",
                                       "&#13;",
                                       "&amp;",
                                       "\xC2\xA0",
                                       "\xE2\x80\xA8",
                                       ("\xEF\xBB\xBF"
                                        "a"),
                                       "\"'" };
  const dw_damper damper = dw_damper_defaults ();
  for (int i = 0; i < N_ENTRIES (notes); i++)
    {
      g_autoptr (dw_project) project = dw_project_new_empty ();
      dw_project_add_setup (project, "a", "A", &damper, &damper);
      ck_assert (dw_project_set_notes (project, notes[i]));
      ck_assert (dw_project_set_setup_notes (project, 0, notes[i]));
      g_autoptr (GBytes) text = dw_project_write_text (project);
      g_autoptr (dw_project) again = read_back (text);
      ck_assert_str_eq (again->notes, notes[i]);
      ck_assert_str_eq (dw_project_get_setup (again, 0)->notes, notes[i]);
      ck_assert (dw_project_equal (project, again));
    }
}
END_TEST

START_TEST (what_is_not_said_is_not_written)
{
  g_autoptr (dw_project) project = dw_project_new ();
  g_autoptr (GBytes) text = dw_project_write_text (project);
  static const char *const names[] = { "<meeting", "<notes", "<stance", "filling-ml" };
  for (int i = 0; i < N_ENTRIES (names); i++)
    ck_assert_msg (
        g_strstr_len (g_bytes_get_data (text, NULL), (gssize)g_bytes_get_size (text), names[i])
            == NULL,
        "%s", names[i]);
}
END_TEST

START_TEST (a_valve_is_written_when_it_says_something)
{
  dw_damper damper = dw_damper_defaults ();
  damper.valve.preload = 5e3;
  g_autoptr (dw_project) project = dw_project_new_empty ();
  dw_project_add_setup (project, "a", "A", &damper, &damper);
  g_autoptr (GBytes) text = dw_project_write_text (project);
  ck_assert_ptr_nonnull (g_strstr_len (g_bytes_get_data (text, NULL),
                                       (gssize)g_bytes_get_size (text), "preload-kpa=\"5\""));
  g_autoptr (dw_project) again = read_back (text);
  ck_assert (dw_project_equal (project, again));
}
END_TEST

START_TEST (a_locale_with_a_comma_changes_no_byte)
{
  test_random random = test_random_new (1000);
  g_autoptr (dw_project) project = sample_random_project (&random);
  g_autoptr (dw_project) written_project = make_written ();
  g_autoptr (GBytes) text = dw_project_write_text (project);

  ck_assert_msg (test_use_locale ("de_DE.UTF-8"),
                 "the locale de_DE.UTF-8 is missing: tests/run.sh makes it and sets LOCPATH");
  char shown[16];
  snprintf (shown, sizeof shown, "%.1f", 1.5);
  ck_assert_msg (g_str_equal (shown, "1,5"), "the locale has no comma: %s", shown);
  g_autoptr (GBytes) second = dw_project_write_text (project);
  assert_same_bytes (text, second, "locale");
  g_autoptr (dw_project) again = read_back (second);
  ck_assert (dw_project_equal (project, again));

  g_autoptr (GBytes) third = dw_project_write_text (written_project);
  ck_assert_uint_eq (g_bytes_get_size (third), strlen (written));
  ck_assert_mem_eq (g_bytes_get_data (third, NULL), written, strlen (written));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-project-writer");
  TCase *tc = tcase_create ("writer");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, a_random_project_comes_back_to_the_last_bit, 0, N_RANDOM);
  tcase_add_loop_test (tc, a_good_file_is_stable_once_it_was_written, 0, 3);
  tcase_add_test (tc, a_copy_is_written_alike);
  tcase_add_test (tc, a_project_is_written_in_this_very_order);
  tcase_add_test (tc, notes_come_back_to_the_last_blank);
  tcase_add_test (tc, what_is_not_said_is_not_written);
  tcase_add_test (tc, a_valve_is_written_when_it_says_something);
  tcase_add_test (tc, a_locale_with_a_comma_changes_no_byte);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
