/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-reader.h"

#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "project-samples.h"

/* [us] What is refused by a rule is refused at once, even on a busy machine with sanitizers. */
#define AT_ONCE (2 * G_USEC_PER_SEC)

/* tests/data/malformed/NAME.dampwright: its first finding of this severity, with part of its text. */
static const struct
{
  const char *name;
  dw_severity severity;
  int line;
  const char *piece;
} malformed[] = {
  { "empty", DW_ERROR, 1, "the file is empty" },
  { "not-utf-8", DW_ERROR, 4, "byte 0xFC is not text in UTF-8" },
  { "zero-byte", DW_ERROR, 4, "byte 0x00 is not text in UTF-8" },
  { "other-encoding", DW_ERROR, 1, "encoding \"ISO-8859-1\" is not accepted, allowed UTF-8" },
  { "no-xml", DW_ERROR, 1, "not well-formed XML: Start tag expected" },
  { "cut-off", DW_ERROR, 19, "not well-formed XML: " },
  { "wrong-end-tag", DW_ERROR, 10, "not well-formed XML: Opening and ending tag mismatch: piston" },
  { "twice-the-same-attribute", DW_ERROR, 6, "not well-formed XML: Attribute bore-mm redefined" },
  { "undefined-entity", DW_ERROR, 4, "not well-formed XML: Entity 'first' not defined" },
  { "undefined-prefix", DW_ERROR, 28, "not well-formed XML: Namespace prefix x" },
  { "control-character", DW_ERROR, 4, "not well-formed XML: " },
  { "document-type", DW_ERROR, 2, "DOCTYPE) is not accepted" },
  { "billion-laughs", DW_ERROR, 2, "DOCTYPE) is not accepted" },
  { "external-entity", DW_ERROR, 2, "DOCTYPE) is not accepted" },
  { "too-deep", DW_ERROR, 59, "nested too deeply, allowed 32" },
  { "too-many-attributes", DW_ERROR, 29, "more than 200 attributes in one element" },
  { "another-document", DW_ERROR, 2, "not a project: the outermost element must be <project>" },
  { "no-namespace", DW_ERROR, 2, "not a project: the outermost element must be <project>" },
  { "another-root", DW_ERROR, 2, "not a project" },
  { "newer-namespace", DW_ERROR, 2,
    "newer version of this program: project version 2, this one reads 1" },
  { "newer-version", DW_ERROR, 2,
    "newer version of this program: project version 7, this one reads 1" },
  { "huge-version", DW_ERROR, 2, "newer version of this program" },
  { "version-zero", DW_ERROR, 2, "version \"0\" is not known, allowed 1" },
  { "version-word", DW_ERROR, 2, "version \"one\" is not known, allowed 1" },
  { "no-version", DW_ERROR, 2, "<project> lacks version, allowed 1" },
  { "unknown-attribute", DW_WARNING, 5,
    "attribute colour is not known in <setup> and is left out" },
  { "foreign-attribute", DW_WARNING, 6, "attribute x:id is not known in <setup> and is left out" },
  { "unknown-element", DW_WARNING, 28, "element <weather> is not known and is left out" },
  { "foreign-element", DW_WARNING, 28, "<parts> of another namespace is left out" },
  { "misplaced-element", DW_WARNING, 29, "<holes> does not belong in <parts> and is left out" },
  { "stray-text", DW_WARNING, 21, "text \"stray\" in <damper> is left out" },
  { "stray-cdata", DW_WARNING, 19, "text \"stray\" in <damper> is left out" },
  { "number-below", DW_ERROR, 6, "bore-mm \"4.99\" is outside the allowed range 5 to 40 mm" },
  { "number-above", DW_ERROR, 6, "bore-mm \"55\" is outside the allowed range 5 to 40 mm" },
  { "number-on-another-line", DW_ERROR, 12,
    "hole-circle-mm \"76\" is outside the allowed range 0.5 to 39 mm" },
  { "number-overflow", DW_ERROR, 6, "bore-mm \"1e999\" is outside the allowed range 5 to 40 mm" },
  { "number-comma", DW_ERROR, 6,
    "bore-mm \"15,5\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-hex", DW_ERROR, 6,
    "bore-mm \"0x10\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-inf", DW_ERROR, 6,
    "bore-mm \"inf\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-nan", DW_ERROR, 6,
    "bore-mm \"nan\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-rubbish", DW_ERROR, 6,
    "bore-mm \"16mm\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-empty", DW_ERROR, 6,
    "bore-mm \"\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-blank", DW_ERROR, 6,
    "bore-mm \"  \" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-two-points", DW_ERROR, 6,
    "bore-mm \"1.6.0\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-exponent", DW_ERROR, 6,
    "bore-mm \"16e\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-sign", DW_ERROR, 6,
    "bore-mm \"-\" is not a number with a decimal point; allowed range 5 to 40 mm" },
  { "number-negative", DW_ERROR, 7,
    "clearance-mm \"-0.03\" is outside the allowed range 0 to 0.5 mm" },
  { "number-long", DW_ERROR, 6, "...\" is not a number with a decimal point; allowed range" },
  { "stance-ride-height", DW_ERROR, 18,
    "ride-height-mm \"-1\" is outside the allowed range 0 to 200 mm" },
  { "stance-droop", DW_ERROR, 18, "droop-mm \"100.5\" is outside the allowed range 0 to 100 mm" },
  { "two-stances", DW_ERROR, 19, "<stance> stands in <damper> once more, allowed once" },
  { "body-filling", DW_ERROR, 6, "filling-ml \"0\" is outside the allowed range 0.1 to 200 ml" },
  { "vented-pressure", DW_ERROR, 16,
    "pressure-kpa \"150\" is outside the allowed range 50 to 110 kPa" },
  { "count-fraction", DW_ERROR, 9, "count \"4.5\" is not a whole number; allowed range 1 to 64" },
  { "count-zero", DW_ERROR, 9, "count \"0\" is outside the allowed range 1 to 64" },
  { "count-large", DW_ERROR, 9, "count \"65\" is outside the allowed range 1 to 64" },
  { "count-huge", DW_ERROR, 9,
    "count \"99999999999999999999\" is outside the allowed range 1 to 64" },
  { "count-word", DW_ERROR, 9, "count \"four\" is not a whole number; allowed range 1 to 64" },
  { "word-gas", DW_ERROR, 16, "kind \"air\" is not one of bladder, vented, emulsion" },
  { "word-stroke", DW_ERROR, 11, "opens-on \"Rebound\" is not one of compression, rebound" },
  { "word-covered", DW_ERROR, 9, "covered \"true\" is not one of no, yes" },
  { "word-axle", DW_ERROR, 19, "axle \"middle\" is not one of front, rear" },
  { "no-bore", DW_ERROR, 6, "<body> lacks bore-mm, allowed 5 to 40 mm" },
  { "no-axle", DW_ERROR, 19, "<damper> lacks axle, allowed one of front, rear" },
  { "no-id", DW_ERROR, 4, "<setup> lacks id, allowed an id" },
  { "no-speed", DW_ERROR, 3, "<speeds> lacks high-m-s, allowed 0.0001 to 10 m/s" },
  { "no-body", DW_ERROR, 19, "<damper> lacks <body>" },
  { "no-piston", DW_ERROR, 19, "<damper> lacks <piston>" },
  { "no-oil", DW_ERROR, 5, "<damper> lacks <oil>" },
  { "no-valve", DW_ERROR, 5, "<damper> lacks <valve>, which covered holes need" },
  { "no-rear", DW_ERROR, 4, "<setup> lacks <damper axle=\"rear\">" },
  { "two-bodies", DW_ERROR, 21, "<body> stands in <damper> once more, allowed once" },
  { "two-conditions", DW_ERROR, 4, "<conditions> stands in <project> once more, allowed once" },
  { "two-parts", DW_ERROR, 32, "<parts> stands in <project> once more, allowed once" },
  { "two-fronts", DW_ERROR, 19,
    "<damper axle=\"front\"> stands in <setup> once more, allowed once" },
  { "too-many-holes", DW_ERROR, 38, "too many <holes> in <piston>, allowed 16" },
  { "too-many-shims", DW_ERROR, 29, "too many <shim> in <valve>, allowed 16" },
  { "three-oil-parts", DW_ERROR, 25, "too many <part> in <oil>, allowed 2" },
  { "one-oil-part", DW_ERROR, 22, "<oil> has 1 <part>, allowed 2" },
  { "same-id", DW_ERROR, 28, "id \"a\" is already that of line 4" },
  { "id-syntax", DW_ERROR, 4, "id \"1 a\" is not an id, allowed 1 to 64 letters" },
  { "id-long", DW_ERROR, 4, "is not an id, allowed 1 to 64 letters" },
  { "id-empty", DW_ERROR, 4, "id \"\" is not an id, allowed 1 to 64 letters" },
  { "fitted-nothing", DW_ERROR, 2, "fitted \"b\" names no setup of this project" },
  { "fitted-syntax", DW_ERROR, 2, "fitted \"a:b\" is not an id" },
  { "name-control", DW_ERROR, 4, "holds a control character, allowed 0 to 200 characters" },
  { "name-long", DW_ERROR, 4,
    "is too long or holds a control character, allowed 0 to 200 characters" },
  { "meeting-long", DW_ERROR, 4,
    "is too long or holds a control character, allowed 0 to 200 characters" },
  { "meeting-control", DW_ERROR, 5,
    "is too long or holds a control character, allowed 0 to 200 characters" },
  { "two-meetings", DW_ERROR, 5, "<meeting> stands in <project> once more, allowed once" },
  { "notes-long", DW_ERROR, 4, "<notes> has 4001 characters, allowed 0 to 4000" },
  { "notes-return", DW_ERROR, 4,
    "<notes> holds a control character, allowed 0 to 4000 characters, of the control characters "
    "line feed and tab only" },
  { "notes-control", DW_ERROR, 27, "<notes> holds a control character, allowed 0 to 4000" },
  { "notes-entity", DW_ERROR, 4, "not well-formed XML: Entity 'car' not defined" },
  { "two-notes", DW_ERROR, 28, "<notes> stands in <setup> once more, allowed once" },
  { "notes-element", DW_WARNING, 4, "element <b> is not known and is left out" },
  { "notes-attribute", DW_WARNING, 4, "attribute lang is not known in <notes> and is left out" },
  { "speeds-fall", DW_ERROR, 3, "speeds do not rise: 0.05, 2, 1 m/s, allowed low < middle < high" },
  { "oil-without-viscosity", DW_ERROR, 15,
    "<oil> has no viscosity, allowed exactly one of: viscosity-cst;" },
  { "oil-of-two-forms", DW_ERROR, 22, "<oil> has more than one viscosity, allowed exactly one of" },
  { "oil-thinning-half", DW_ERROR, 15,
    "one of thinning-rate-per-s and thinning-exponent, allowed both or neither" },
  { "misfit-rod", DW_ERROR, 6, "rod-mm \"15\": shaft of 15 mm needs a bore above" },
  { "misfit-hole", DW_ERROR, 9,
    "diameter-mm \"2\": covered hole of 2 mm on the 7.6 mm circle leaves the shim's ring" },
  { "misfit-no-path", DW_ERROR, 21, "<piston>: nothing lets the oil pass in both strokes" },
  { "misfit-shares", DW_ERROR, 22, "<oil>: shares add to 0.9, must add to 1" },
  { "misfit-points", DW_ERROR, 16,
    "t2-c \"22\": second point at 22 degC must lie at least 5 degC above" },
  { "misfit-preload", DW_ERROR, 18, "preload-mm \"80\": preload of 80 mm must be below" },
  { "misfit-bottle", DW_ERROR, 30, "<oil>: shares add to 0.4, must add to 1" },
  { "misfit-outer", DW_ERROR, 11,
    "outer-diameter-mm \"18\": shim of 18 mm must fit into the bore of 16 mm" },
  { "parts-range", DW_ERROR, 29, "diameter-mm \"13\" is outside the allowed range 0.2 to 10 mm" },
  { "bottle-volume", DW_ERROR, 30, "volume-ml \"0\" is outside the allowed range 0.1 to 10000 ml" },
};

static dw_findings *
read_findings (const char *text, gsize length)
{
  dw_findings *findings = dw_findings_new ();
  g_autoptr (dw_project) project = dw_project_read_text (text, length, findings);
  ck_assert_msg ((project == NULL) == (dw_findings_get_n_errors (findings) > 0),
                 "a project is refused when there are errors, and only then");
  return findings;
}

START_TEST (every_malformed_file_is_told_by_line_and_reason)
{
  g_autofree char *name = g_strconcat (malformed[_i].name, ".dampwright", NULL);
  gsize length = 0;
  g_autofree char *text = sample_read ("malformed", name, &length);
  const gint64 start = g_get_monotonic_time ();
  g_autoptr (dw_findings) findings = read_findings (text, length);
  ck_assert_int_lt (g_get_monotonic_time () - start, AT_ONCE);

  bool found = false;
  for (guint i = 0; i < dw_findings_get_n (findings); i++)
    {
      const dw_finding *finding = dw_findings_get (findings, i);
      found |= finding->line == malformed[_i].line && finding->severity == malformed[_i].severity
               && strstr (finding->message, malformed[_i].piece) != NULL;
    }
  g_autofree char *all = dw_findings_to_text (findings, name);
  ck_assert_msg (found, "not on line %d: %s\nbut:\n%s", malformed[_i].line, malformed[_i].piece,
                 all);
  ck_assert_msg (dw_findings_get_n (findings) <= 2, "one fault, many findings:\n%s", all);
  ck_assert_msg ((dw_findings_get_n_errors (findings) > 0) == (malformed[_i].severity == DW_ERROR),
                 "%s", all);
}
END_TEST

START_TEST (no_malformed_file_is_left_out)
{
  char *folder = test_data_path ("malformed");
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  ck_assert_ptr_nonnull (dir);
  guint n = 0;
  const char *name = NULL;
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      bool listed = false;
      for (int i = 0; i < N_ENTRIES (malformed); i++)
        {
          g_autofree char *full = g_strconcat (malformed[i].name, ".dampwright", NULL);
          listed |= g_str_equal (full, name);
        }
      ck_assert_msg (listed, "%s is not in the table", name);
      n++;
    }
  ck_assert_int_eq (n, N_ENTRIES (malformed));
  free (folder);
}
END_TEST

START_TEST (nothing_is_printed)
{
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "dampwright-output-XXXXXX", NULL);
  const int file = g_mkstemp (path);
  ck_assert_int_ge (file, 0);
  unlink (path);
  fflush (NULL);
  const int old_out = dup (STDOUT_FILENO);
  const int old_err = dup (STDERR_FILENO);
  dup2 (file, STDOUT_FILENO);
  dup2 (file, STDERR_FILENO);
  for (int i = 0; i < N_ENTRIES (malformed); i++)
    {
      g_autofree char *name = g_strconcat (malformed[i].name, ".dampwright", NULL);
      gsize length = 0;
      g_autofree char *text = sample_read ("malformed", name, &length);
      dw_findings_free (read_findings (text, length));
    }
  fflush (NULL);
  dup2 (old_out, STDOUT_FILENO);
  dup2 (old_err, STDERR_FILENO);
  ck_assert_int_eq (lseek (file, 0, SEEK_END), 0);
}
END_TEST

START_TEST (all_faults_of_a_file_are_found_at_once)
{
  static const char text[] = "<project xmlns='urn:dampwright:project:1' version='1' colour='red'>\n"
                             "<conditions oil-c='999'/>\n"
                             "<setup id='a'>\n"
                             "<damper axle='front'><body bore-mm='55' rod-mm='x'/>\n"
                             "<piston/>\n"
                             "<oil/></damper>\n"
                             "</setup>\n"
                             "<setup id='a'/>\n"
                             "<weather/>\n"
                             "</project>";
  static const int lines[] = { 1, 2, 3, 4, 4, 6, 8, 8, 8, 9 };
  g_autoptr (dw_findings) findings = read_findings (text, strlen (text));
  g_autofree char *all = dw_findings_to_text (findings, "f");
  ck_assert_msg (dw_findings_get_n (findings) == N_ENTRIES (lines), "%s", all);
  for (int i = 0; i < N_ENTRIES (lines); i++)
    ck_assert_msg (dw_findings_get (findings, (guint)i)->line == lines[i], "%s", all);
}
END_TEST

START_TEST (a_range_error_reads_as_the_contract_says)
{
  gsize length = 0;
  g_autofree char *text = sample_read ("malformed", "number-above.dampwright", &length);
  g_autoptr (dw_findings) findings = read_findings (text, length);
  g_autofree char *line = dw_finding_to_text (dw_findings_get (findings, 0), "club.dampwright");
  ck_assert_str_eq (line,
                    "club.dampwright:6: bore-mm \"55\" is outside the allowed range 5 to 40 mm");
  ck_assert_str_eq (dw_findings_get (findings, 0)->element, "body");
  ck_assert_str_eq (dw_findings_get (findings, 0)->attribute, "bore-mm");
  ck_assert_str_eq (dw_findings_get (findings, 0)->value, "55");
}
END_TEST

START_TEST (what_is_left_out_with_a_warning_does_not_count)
{
  static const char *const names[] = { "unknown-attribute", "foreign-attribute", "unknown-element",
                                       "foreign-element",   "misplaced-element", "stray-text",
                                       "stray-cdata" };
  gsize length = 0;
  g_autofree char *text = sample_read ("malformed", "number-above.dampwright", &length);
  GString *repaired = g_string_new_len (text, (gssize)length);
  ck_assert_uint_eq (g_string_replace (repaired, "bore-mm=\"55\"", "bore-mm=\"16\"", 0), 1);
  g_autoptr (dw_project) good = sample_parse (repaired->str, repaired->len);
  for (int i = 0; i < N_ENTRIES (names); i++)
    {
      g_autofree char *name = g_strconcat (names[i], ".dampwright", NULL);
      g_autofree char *odd = sample_read ("malformed", name, &length);
      g_autoptr (dw_findings) findings = dw_findings_new ();
      g_autoptr (dw_project) project = dw_project_read_text (odd, length, findings);
      ck_assert_msg (project != NULL && dw_project_equal (project, good), "%s", names[i]);
      ck_assert_uint_eq (dw_findings_get_n (findings), 1);
    }
  g_string_free (repaired, TRUE);
}
END_TEST

START_TEST (a_project_without_elements_has_the_defaults)
{
  gsize length = 0;
  g_autofree char *text = sample_read ("valid", "empty.dampwright", &length);
  g_autoptr (dw_project) project = sample_parse (text, length);
  ck_assert_str_eq (project->title, "");
  ck_assert_str_eq (project->fitted, "");
  ck_assert (project->conditions.oil_temperature == 25.0);
  ck_assert (project->conditions.air_temperature == 20.0);
  ck_assert (project->speeds.low == 0.05 && project->speeds.middle == 0.2
             && project->speeds.high == 1.0);
  ck_assert (!project->car.has_sprung_mass[DW_FRONT] && !project->car.has_sprung_mass[DW_REAR]);
  for (int i = 0; i < DW_N_MEETING; i++)
    ck_assert_str_eq (project->meeting[i], "");
  ck_assert_str_eq (project->notes, "");
  ck_assert_uint_eq (dw_project_get_n_setups (project), 0);
  ck_assert_uint_eq (dw_project_get_parts (project)->drills->len, 0);
}
END_TEST

START_TEST (everything_in_a_file_is_read)
{
  gsize length = 0;
  g_autofree char *text = sample_read ("valid", "everything.dampwright", &length);
  g_autoptr (dw_project) project = sample_parse (text, length);
  ck_assert_str_eq (project->title, "Grüße & <more>");
  ck_assert (project->conditions.oil_temperature == 31.5 && project->speeds.middle == 0.25);
  ck_assert (project->car.has_sprung_mass[DW_REAR] && project->car.sprung_mass[DW_REAR] == 0.42);
  static const char *const words[DW_N_MEETING] = { "Evening round", "Hill & dale", "loam, damp",
                                                   "A. Nobody", "1:8 buggy" };
  for (int i = 0; i < DW_N_MEETING; i++)
    ck_assert_str_eq (project->meeting[i], words[i]);
  ck_assert_str_eq (project->notes,
                    "  First line, blanks in front.\n\tA tab, <angles> and a & b\n\n"
                    "=== the end, a line feed behind\n");
  ck_assert_str_eq (dw_project_get_setup (project, 0)->notes, "");
  ck_assert_str_eq (dw_project_get_setup (project, 1)->notes, "Grüße");
  const dw_setup *baseline = dw_project_get_fitted (project);
  ck_assert_str_eq (baseline->name, "Baseline");
  const dw_damper *front = &baseline->damper[DW_FRONT];
  ck_assert (front->body.bore == 15.5e-3 && front->piston.n_holes == 2);
  ck_assert (!front->piston.holes[0].covered && front->piston.holes[1].covered);
  ck_assert (front->valve.n_shims == 2 && front->valve.shims[0].count == 2);
  ck_assert (front->valve.shims[0].strength == 90e6 && front->valve.shims[1].strength == 100e6);
  ck_assert (front->valve.preload == 12.5e3 && front->valve.seat_gap == 0.002e-3);
  ck_assert (front->oil.has_thinning && front->oil.thinning_rate == 12000.0);
  ck_assert (front->spring.rate == 580.0 && front->motion_ratio == 0.62);
  ck_assert (front->body.has_filling && front->body.filling == 12.5e-6);
  ck_assert (front->stance.has_ride_height && front->stance.ride_height == 24e-3);
  ck_assert (front->stance.has_droop && front->stance.droop == 18.5e-3);
  const dw_damper *rear = &baseline->damper[DW_REAR];
  ck_assert (rear->oil.kind == DW_OIL_MEASURED && rear->oil.point_viscosity[1] == 290e-6);
  ck_assert (rear->gas.kind == DW_GAS_VENTED && rear->gas.pressure == 98.6e3);
  ck_assert (!rear->body.has_filling && !rear->stance.has_ride_height && !rear->stance.has_droop);
  const dw_setup *trial = dw_project_find_setup (project, "trial-1");
  ck_assert (trial->damper[DW_REAR].oil.kind == DW_OIL_BLEND);
  ck_assert (trial->damper[DW_REAR].oil.parts[1].share == 0.75);
  ck_assert (trial->damper[DW_REAR].valve.opens_on == DW_COMPRESSION);
  ck_assert (!trial->damper[DW_REAR].stance.has_ride_height);
  ck_assert (trial->damper[DW_REAR].stance.has_droop && trial->damper[DW_REAR].stance.droop == 0.0);
  const dw_parts *parts = dw_project_get_parts (project);
  ck_assert (parts->drills->len == 1 && parts->shims->len == 1 && parts->oils->len == 3
             && parts->pistons->len == 2);
  ck_assert (g_array_index (parts->oils, dw_bottle, 2).volume == 15.5e-6);
  ck_assert_str_eq (g_array_index (parts->pistons, dw_spare_piston, 1).name, "four plus four");
}
END_TEST

START_TEST (a_setup_without_a_name_is_called_by_its_id)
{
  gsize length = 0;
  g_autofree char *text = sample_read ("valid", "bare.dampwright", &length);
  g_autoptr (dw_project) project = sample_parse (text, length);
  ck_assert_str_eq (dw_project_get_setup (project, 0)->name, "a");
}
END_TEST

/* A project of @p n elements, each the @p format with its number. */
static char *
repeat (const char *before, const char *element, int n, const char *after)
{
  GString *text = g_string_new ("<project xmlns='urn:dampwright:project:1' version='1'>");
  g_string_append (text, before);
  for (int i = 0; i < n; i++)
    {
      g_auto (GStrv) pieces = g_strsplit (element, "#", -1);
      g_autofree char *number = g_strdup_printf ("%d", i);
      g_autofree char *one = g_strjoinv (number, pieces);
      g_string_append (text, one);
    }
  g_string_append (text, after);
  g_string_append (text, "</project>");
  return g_string_free (text, FALSE);
}

#define PLAIN "<body bore-mm='16' rod-mm='3.5'/><piston/><oil viscosity-cst='450'/></damper>"

static const struct
{
  const char *before;
  const char *element;
  const char *after;
  int most;
  const char *piece;
} lists[] = {
  { "", "<setup id='s#'><damper axle='front'>" PLAIN "<damper axle='rear'>" PLAIN "</setup>", "",
    DW_PROJECT_MAX_SETUPS, "too many <setup> in <project>, allowed 1000" },
  { "<parts>", "<drill diameter-mm='1'/>", "</parts>", DW_PARTS_MAX,
    "too many <drill> in <parts>, allowed 500" },
  { "<parts>", "<shim thickness-mm='1'/>", "</parts>", DW_PARTS_MAX,
    "too many <shim> in <parts>, allowed 500" },
  { "<parts>", "<oil viscosity-cst='450'/>", "</parts>", DW_PARTS_MAX,
    "too many <oil> in <parts>, allowed 500" },
  { "<parts>", "<piston/>", "</parts>", DW_PARTS_MAX, "too many <piston> in <parts>, allowed 500" },
};

START_TEST (every_list_has_an_end)
{
  g_autofree char *full = repeat (lists[_i].before, lists[_i].element, lists[_i].most,
                                  lists[_i].after);
  g_autoptr (dw_project) project = sample_parse (full, strlen (full));
  ck_assert_ptr_nonnull (project);
  g_autofree char *over = repeat (lists[_i].before, lists[_i].element, lists[_i].most + 2,
                                  lists[_i].after);
  g_autoptr (dw_findings) findings = read_findings (over, strlen (over));
  ck_assert_uint_eq (dw_findings_get_n (findings), 1);
  ck_assert (sample_has_error (findings, lists[_i].piece));
}
END_TEST

START_TEST (a_flood_of_faults_is_cut_and_counted)
{
  g_autofree char *text = repeat ("<parts>", "<drill diameter-mm='0'/>", 450, "</parts>");
  g_autoptr (dw_findings) findings = read_findings (text, strlen (text));
  ck_assert_uint_eq (dw_findings_get_n (findings), DW_FINDINGS_MAX);
  ck_assert_uint_eq (dw_findings_get_n_errors (findings), 450);
  g_autofree char *all = dw_findings_to_text (findings, "f");
  ck_assert (g_str_has_suffix (all, "f: and 250 more\n"));
}
END_TEST

START_TEST (an_external_entity_is_not_opened)
{
  /* Opening a pipe that nobody writes to would wait for ever: the time limit would end the test. */
  char *folder = sample_make_folder ();
  g_autofree char *pipe = g_build_filename (folder, "pipe", NULL);
  ck_assert_int_eq (mkfifo (pipe, 0600), 0);
  g_autofree char *text = g_strdup_printf (
      "<?xml version='1.0'?><!DOCTYPE project SYSTEM '%s' [<!ENTITY %% a SYSTEM '%s'> %%a;"
      "<!ENTITY b SYSTEM '%s'>]><project xmlns='urn:dampwright:project:1' version='1' "
      "title='&b;'>&b;"
      "</project>",
      pipe, pipe, pipe);
  g_autoptr (dw_findings) findings = read_findings (text, strlen (text));
  ck_assert (sample_has_error (findings, "(DOCTYPE) is not accepted"));
  sample_remove_folder (folder);
}
END_TEST

static gpointer
read_many_times (gpointer data)
{
  GBytes *text = data;
  for (int i = 0; i < 20; i++)
    {
      g_autoptr (dw_findings) findings = dw_findings_new ();
      gsize length = 0;
      const char *bytes = g_bytes_get_data (text, &length);
      g_autoptr (dw_project) project = dw_project_read_text (bytes, length, findings);
      if (project == NULL || dw_project_get_n_setups (project) != 2)
        return NULL;
    }
  return data;
}

START_TEST (several_threads_may_read_at_once)
{
  gsize length = 0;
  char *file = sample_read ("valid", "everything.dampwright", &length);
  g_autoptr (GBytes) text = g_bytes_new_take (file, length);
  GThread *threads[4];
  for (int i = 0; i < N_ENTRIES (threads); i++)
    threads[i] = g_thread_new ("reader", read_many_times, text);
  for (int i = 0; i < N_ENTRIES (threads); i++)
    ck_assert_ptr_eq (g_thread_join (threads[i]), text);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-project-reader");
  TCase *tc = tcase_create ("reader");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, every_malformed_file_is_told_by_line_and_reason, 0,
                       N_ENTRIES (malformed));
  tcase_add_test (tc, no_malformed_file_is_left_out);
  tcase_add_test (tc, nothing_is_printed);
  tcase_add_test (tc, all_faults_of_a_file_are_found_at_once);
  tcase_add_test (tc, a_range_error_reads_as_the_contract_says);
  tcase_add_test (tc, what_is_left_out_with_a_warning_does_not_count);
  tcase_add_test (tc, a_project_without_elements_has_the_defaults);
  tcase_add_test (tc, everything_in_a_file_is_read);
  tcase_add_test (tc, a_setup_without_a_name_is_called_by_its_id);
  tcase_add_loop_test (tc, every_list_has_an_end, 0, N_ENTRIES (lists));
  tcase_add_test (tc, a_flood_of_faults_is_cut_and_counted);
  tcase_add_test (tc, an_external_entity_is_not_opened);
  tcase_add_test (tc, several_threads_may_read_at_once);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
