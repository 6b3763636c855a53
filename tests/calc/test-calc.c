/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The program as a whole: help, wrong usage, exit statuses, files, locales. */

#include <errno.h>
#include <locale.h>
#include <stdlib.h>
#include <string.h>

#include "calc-run.h"
#include "calc/dw-calc-command.h"

static const dw_calc_command *const commands[] = {
  &dw_calc_check,  &dw_calc_force, &dw_calc_compare, &dw_calc_chart,  &dw_calc_drill, &dw_calc_oil,
  &dw_calc_drills, &dw_calc_shim,  &dw_calc_sheet,   &dw_calc_stacks, &dw_calc_match, &dw_calc_oils
};

#define SHIM                                                                                       \
  "shim --hub 6 --outer 10.6 --thickness 0.15,0.1 --modulus-gpa 4 --poisson 0.38 --ring 7.1:9.3 "  \
  "--pressure-kpa 50,100.5"

/* Everything that prints a result. */
static const char *const good[] = {
  "force {demo}/club-final.dampwright",
  "force {demo}/club-final.dampwright --format csv",
  "force {demo}/early-void.dampwright",
  "force {demo}/smooth-indoor.dampwright --to 2.5 --count 10",
  "force {data}/valid/everything.dampwright",
  "force {data}/valid/everything.dampwright --format csv",
  "force {data}/valid/bare.dampwright",
  "force {data}/valid/empty.dampwright",
  "compare {demo}/club-final.dampwright baseline trial-2",
  "compare {demo}/club-final.dampwright baseline trial-2 --format csv",
  "compare {data}/valid/everything.dampwright baseline trial-1",
  "drill {demo}/club-final.dampwright",
  "drill {demo}/club-final.dampwright --setup trial-2 --sets kinds --drills table --sort oil",
  "drill {demo}/early-void.dampwright --axle front --tolerance 0.025",
  "drill {data}/valid/everything.dampwright --axle rear --drills metric --format csv",
  "drill {data}/valid/everything.dampwright --setup trial-1 --sets kinds",
  "drill {demo}/club-final.dampwright --keep-compression 7.5 --pack 1.1:1.7 --most-holes 3",
  "oil --viscosity-cst 450.5 --at-c -10:60:2.5",
  "oil --viscosity-cst 450.5 --at-c -10:60:2.5 --format csv",
  "oil --blend 350:0.4,500:0.6 --at-c 25,25.5",
  "oils {demo}/club-final.dampwright",
  "oils {demo}/club-final.dampwright --setup trial-1 --axle rear --at-c 12.5 --warm-up 7.5",
  "oils {demo}/early-void.dampwright --at-c 60 --format csv",
  "oils {data}/valid/everything.dampwright",
  "oils {data}/valid/everything.dampwright --format csv",
  "stacks {demo}/club-final.dampwright",
  "stacks {demo}/club-final.dampwright --setup trial-1 --axle rear --most-leaves 2 --dampers 1",
  "stacks {demo}/club-final.dampwright --axle front --format csv",
  "match {demo}/club-final.dampwright --axle front --keep compression --change rebound:-10",
  "match {demo}/club-final.dampwright --axle rear --like trial-1 --use stack,oil,blend,piston",
  "match {demo}/early-void.dampwright --axle front --use oil,temperature --temperatures 20:30",
  "match {data}/valid/everything.dampwright --setup baseline --axle rear --use stack,piston,blend",
  "match {demo}/club-final.dampwright --axle front --fair --threads 2 --format csv",
  "drills",
  "drills --from 1.2 --to 1.35 --format csv",
  SHIM,
  SHIM " --format csv",
  "force --help",
  "sheet --help",
  "--help",
  "--version",
};

static const struct
{
  const char *arguments;
  const char *piece; /* of the message */
} misuses[] = {
  { "", "no command" },
  { "stack {demo}/club-final.dampwright", "unknown command \"stack\"" },
  { "dril {demo}/club-final.dampwright", "unknown command \"dril\"" },
  { "matches", "unknown command \"matches\"" },
  { "sheets", "unknown command \"sheets\"" },
  { "chart", "needs FILE" },
  { "Force", "unknown command" },
  { "--what", "unknown option \"--what\"" },
  { "check", "needs FILE" },
  { "check a b", "\"b\"" },
  { "check a --format csv", "--format" },
  { "force", "needs FILE" },
  { "force a b", "\"b\"" },
  { "force a --axle middle", "front or rear" },
  { "force a --setup", "--setup needs ID" },
  { "force a --setup --axle front", "--setup needs ID" },
  { "force a --setup x --setup y", "twice" },
  { "force a --speeds 1,,2", "--speeds" },
  { "force a --speeds 11", "from 0 to 10 m/s" },
  { "force a --speeds -0.1", "from 0 to 10 m/s" },
  { "force a --speeds nan", "\"nan\"" },
  { "force a --speeds inf", "\"inf\"" },
  { "force a --speeds 0x1", "\"0x1\"" },
  { "force a --speeds 1m", "\"1m\"" },
  { "force a --speeds 1 --to 1 --count 2", "--speeds" },
  { "force a --to 1", "together" },
  { "force a --count 2", "together" },
  { "force a --to 0 --count 2", "--to" },
  { "force a --to 1 --count 0", "1 to 100000" },
  { "force a --to 1 --count 100001", "1 to 100000" },
  { "force a --to 1 --count 2.5", "whole number" },
  { "force a --format xml", "table or csv" },
  { "force a --fromat csv", "unknown option \"--fromat\"" },
  { "force a --help=yes", "takes no value" },
  { "compare a b", "needs FILE ID ID" },
  { "compare a b c d", "\"d\"" },
  { "compare a b c --axle front", "unknown option" },
  { "drill", "needs FILE" },
  { "drill a b", "\"b\"" },
  { "drill a --axle middle", "front or rear" },
  { "drill a --sets thirds", "halves or kinds" },
  { "drill a --drills inch", "box or table or metric" },
  { "drill a --tolerance H7", "H11, H12 or a number from 0 to 0.5 mm" },
  { "drill a --tolerance -0.1", "from 0 to 0.5 mm" },
  { "drill a --tolerance 0.6", "from 0 to 0.5 mm" },
  { "drill a --tolerance nan", "\"nan\"" },
  { "drill a --keep-compression 101", "0 to 100 %" },
  { "drill a --keep-compression 5,5", "--keep-compression" },
  { "drill a --pack 1", "FROM:TO" },
  { "drill a --pack 1:2:3", "FROM:TO" },
  { "drill a --pack 2:1", "goes up" },
  { "drill a --pack 1:x", "--pack needs a number from 0 to 100" },
  { "drill a --most-holes 0", "1 to 512" },
  { "drill a --most-holes 2.5", "whole number" },
  { "drill a --sort price", "size or compression" },
  { "drill a --hold", "unknown option \"--hold\"" },
  { "sheet", "needs FILE" },
  { "sheet a b -o x.pdf", "\"b\"" },
  { "sheet a", "-o is missing" },
  { "sheet a -o x", ".pdf, .png or .svg" },
  { "sheet a -o x.csv", ".pdf, .png or .svg" },
  { "sheet a -o x.pdf --kind poster", "setup or card or both or blank or all" },
  { "sheet a -o x.pdf --paper a5", "a4 or letter" },
  { "sheet a -o x.pdf --quantity power", "force or c" },
  { "sheet a -o x.pdf --date tomorrow", "--date needs a day as 2026-05-03" },
  { "sheet a -o x.pdf --date 2026-02-29", "--date needs a day" },
  { "sheet a -o x.pdf --date 2026-5-3", "--date needs a day" },
  { "sheet a -o x.pdf --date 2026-+5-03", "--date needs a day" },
  { "sheet a -o x.pdf --date ' 226-05-03'", "--date needs a day" },
  { "sheet a -o x.pdf --date 2026-05-03x", "--date needs a day" },
  { "sheet a -o x.pdf --date 0000-05-03", "--date needs a day" },
  { "sheet a -o x.pdf --page 1", "--page goes with" },
  { "sheet a -o x.svg --page 0", "1 to 1000" },
  { "sheet a -o x.png --page 1.5", "whole number" },
  { "sheet a -o x.svg --dpi 100", "--dpi goes with" },
  { "sheet a -o x.png --dpi 35", "36 to 600" },
  { "sheet a -o x.png --dpi 601", "36 to 600" },
  { "sheet a -o x.pdf --alone --against b", "exclude each other" },
  { "sheet a -o x.pdf --kind blank --setup b", "do not go with --kind blank" },
  { "sheet a -o x.pdf --kind all --alone", "do not go with --kind all" },
  { "sheet a -o x.pdf --format csv", "--format" },
  { "sheet a -o x.pdf --setup", "--setup needs ID" },
  { "oil", "--viscosity-cst" },
  { "oil --viscosity-cst 450", "--at-c is missing" },
  { "oil --viscosity-cst 450 --blend 1:0.5,2:0.5 --at-c 20", "either" },
  { "oil --viscosity-cst 0.5 --at-c 20", "1 to 100000 cSt" },
  { "oil --viscosity-cst 450 --at-c 151", "-25 to 150 degC" },
  { "oil --viscosity-cst 450 --at-c 60:0:5", "goes up" },
  { "oil --viscosity-cst 450 --at-c 0:60:0", "step" },
  { "oil --blend 350:0.5 --at-c 20", "two oils" },
  { "oil --blend 350:0.5,400:0.4 --at-c 20", "must add to 1" },
  { "oil --blend 350,400 --at-c 20", "N:SHARE" },
  { "oil x --viscosity-cst 450 --at-c 20", "\"x\"" },
  { "oils", "needs FILE" },
  { "oils a b", "\"b\"" },
  { "oils a --axle middle", "front or rear" },
  { "oils a --at-c 151", "-25 to 150 degC" },
  { "oils a --at-c 20,30", "--at-c" },
  { "oils a --warm-up -1", "0 to 100 degC" },
  { "oils a --warm-up 101", "0 to 100 degC" },
  { "oils a --drills box", "unknown option \"--drills\"" },
  { "stacks", "needs FILE" },
  { "stacks a b", "\"b\"" },
  { "stacks a --axle middle", "front or rear" },
  { "stacks a --most-leaves 0", "1 to 8" },
  { "stacks a --most-leaves 9", "1 to 8" },
  { "stacks a --most-leaves 2,5", "whole number" },
  { "stacks a --dampers 4", "1 to 2" },
  { "stacks a --sort force", "unknown option \"--sort\"" },
  { "match", "needs FILE" },
  { "match a", "--axle is missing" },
  { "match a --axle middle", "front or rear" },
  { "match a b --axle front", "\"b\"" },
  { "match a --axle front --keep all", "compression or rebound or both" },
  { "match a --axle front --change rebound", "STROKE-SPEED:PERCENT" },
  { "match a --axle front --change pull:5", "not \"pull:5\"" },
  { "match a --axle front --change rebound-fast:5", "not \"rebound-fast:5\"" },
  { "match a --axle front --change rebound-high-low:5", "STROKE-SPEED:PERCENT" },
  { "match a --axle front --change rebound:x", "from -90 to 900 %" },
  { "match a --axle front --change rebound:-90.5", "from -90 to 900 %" },
  { "match a --axle front --change ''", "STROKE-SPEED:PERCENT" },
  { "match a --axle front --change rebound:5,rebound-low:6", "rebound at the low speed twice" },
  { "match a --axle front --use open,shims", "not \"shims\"" },
  { "match a --axle front --use ''", "not \"\"" },
  { "match a --axle front --use temperature", "go together" },
  { "match a --axle front --temperatures 20:30", "go together" },
  { "match a --axle front --use temperature --temperatures 20", "FROM:TO" },
  { "match a --axle front --use temperature --temperatures 30:20", "goes up" },
  { "match a --axle front --use temperature --temperatures -30:20", "from -25 to 150 degC" },
  { "match a --axle front --most-leaves 9", "1 to 8" },
  { "match a --axle front --dampers 3", "1 to 2" },
  { "match a --axle front --threads 0", "1 to 64" },
  { "match a --axle front --fair --keep both", "--fair and --keep exclude each other" },
  { "match a --axle front --fair --change rebound:5", "--fair and --change exclude" },
  { "match a --axle front --fair --like b", "--fair and --like exclude" },
  { "match a --axle front --fair=yes", "takes no value" },
  { "drills --from 2 --to 1", "larger" },
  { "drills --from 1,2", "--from" },
  { "drills x", "\"x\"" },
  { "shim", "--hub is missing" },
  { SHIM " --hub 6", "twice" },
  { "shim --hub 6 --outer 10.6 --thickness 0.15 --modulus-gpa 4 --poisson 0.5 --ring 7:9 "
    "--pressure-kpa 50",
    "0 to 0.49" },
  { "shim --hub 6 --outer 10.6 --thickness 0.15 --modulus-gpa 4 --poisson 0.3 --ring 5:9 "
    "--pressure-kpa 50",
    "outside the hub" },
  { "shim --hub 6 --outer 10.6 --thickness 0.15 --modulus-gpa 4 --poisson 0.3 --ring 9:7 "
    "--pressure-kpa 50",
    "where it begins" },
  { "shim --hub 6 --outer 10.6 --thickness 0.15 --modulus-gpa 4 --poisson 0.3 --ring 7:11 "
    "--pressure-kpa 50",
    "inside the shim" },
  { "shim --hub 1 --outer 10.6 --thickness 0.15 --modulus-gpa 4 --poisson 0.3 --ring 7:9 "
    "--pressure-kpa 50",
    "at least 0.1" },
};

START_TEST (wrong_usage_is_one_line_and_status_2)
{
  calc_result r = calc_run ("%s", misuses[_i].arguments);
  const char *end = strchr (r.err, '\n');
  ck_assert_msg (r.status == 2, "status %d for: %s", r.status, misuses[_i].arguments);
  ck_assert_msg (*r.out == '\0', "prints for: %s", misuses[_i].arguments);
  ck_assert_msg (end != NULL && end[1] == '\0', "not one line: %s", r.err);
  ck_assert_msg (strstr (r.err, misuses[_i].piece) != NULL, "no \"%s\" in: %s", misuses[_i].piece,
                 r.err);
  ck_assert_msg (g_str_has_prefix (r.err, "dampcalc") && g_str_has_suffix (r.err, " --help\n"),
                 "does not tell where to look: %s", r.err);
  calc_result_clear (&r);
}
END_TEST

START_TEST (wrong_usage_stays_one_line_whatever_was_typed)
{
  calc_result r = calc_run ("force a --axle \"$(printf 'x\\ny\\033[1m')\"");
  ck_assert_int_eq (r.status, 2);
  ck_assert (strchr (r.err, '\n') == r.err + strlen (r.err) - 1);
  ck_assert_ptr_null (strchr (r.err, '\033'));
  calc_result_clear (&r);
}
END_TEST

START_TEST (the_help_tells_every_command)
{
  g_autofree char *text = calc_output ("--help");
  for (size_t i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *line = g_strdup_printf ("\n  %-9s %s\n", commands[i]->name,
                                               commands[i]->summary);
      ck_assert_msg (strstr (text, line) != NULL, "no%sin %s", line, text);
    }
  ck_assert_ptr_nonnull (strstr (text, "not for vehicles"));
}
END_TEST

/* Each option stands in the help of its command and in the man page, with what follows it. */
START_TEST (help_and_man_page_tell_every_option)
{
  const dw_calc_command *command = commands[_i];
  g_autofree char *text = calc_output ("%s --help", command->name);
  char *path = test_source_path ("data/dampcalc.1");
  char *page = test_file_read (path, NULL);
  g_autoptr (GString) man = g_string_new (page);
  g_string_replace (man, "\\-", "-", 0);
  free (path);
  free (page);

  g_autofree char *section = g_strdup_printf (".SS %s", command->name);
  ck_assert_msg (strstr (man->str, section) != NULL, "no section %s", section);
  ck_assert_ptr_nonnull (strstr (text, command->summary));
  ck_assert_ptr_nonnull (strstr (text, "\nExample"));

  g_autofree dw_calc_option *options = dw_calc_command_make_options (command);
  for (const dw_calc_option *option = options; option->name != NULL; option++)
    {
      g_autofree char *head = g_strdup_printf ("\n  %s%s%s\n", option->name,
                                               option->value != NULL ? " " : "",
                                               option->value != NULL ? option->value : "");
      g_autofree char *with_value = g_strdup_printf (".BI %s \"", option->name);
      g_autofree char *alone = g_strdup_printf (".B %s\n", option->name);
      ck_assert_msg (strstr (text, head) != NULL, "no%sin %s", head, text);
      ck_assert_msg (strstr (man->str, option->value != NULL ? with_value : alone) != NULL,
                     "%s is not in the man page", option->name);
    }
}
END_TEST

START_TEST (help_wins_over_the_rest)
{
  g_autofree char *text = calc_output ("force --help --what");
  ck_assert (g_str_has_prefix (text, "Usage: dampcalc force FILE"));
}
END_TEST

START_TEST (the_version_is_that_of_the_build)
{
  g_autofree char *text = calc_output ("--version");
  ck_assert_str_eq (text, "dampcalc " DW_VERSION "\n");
}
END_TEST

START_TEST (a_page_fits_a_terminal)
{
  g_autofree char *text = calc_output ("%s", good[_i]);
  const bool csv = strstr (good[_i], "csv") != NULL;
  ck_assert_msg (*text != '\0' && g_str_has_suffix (text, "\n"), "%s", good[_i]);
  ck_assert (g_utf8_validate (text, -1, NULL));
  g_auto (GStrv) lines = g_strsplit (text, "\n", 0);
  for (char **line = lines; *line != NULL; line++)
    {
      ck_assert_msg (csv || g_utf8_strlen (*line, -1) <= 120, "%s: %s", good[_i], *line);
      ck_assert_msg (!g_str_has_suffix (*line, " "), "%s: blank behind: %s", good[_i], *line);
    }
}
END_TEST

START_TEST (a_decimal_comma_changes_nothing)
{
  if (!test_use_locale ("de_DE.UTF-8"))
    return;
  ck_assert_str_eq (localeconv ()->decimal_point, ",");
  calc_result here = calc_run_in ("C", "%s", good[_i]);
  calc_result there = calc_run_in ("de_DE.UTF-8", "%s", good[_i]);
  ck_assert_int_eq (there.status, 0);
  ck_assert_str_eq (here.out, there.out);
  ck_assert_str_eq (here.err, there.err);
  calc_result_clear (&here);
  calc_result_clear (&there);
}
END_TEST

START_TEST (a_decimal_comma_changes_no_message)
{
  if (!test_use_locale ("de_DE.UTF-8"))
    return;
  static const char *const bad[] = { "check {data}/malformed/misfit-hole.dampwright",
                                     "force a --speeds 1,5,x", "drill a --tolerance 0,1",
                                     "oil --blend 350:0.5,400:0.4 --at-c 20" };
  for (size_t i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      calc_result here = calc_run_in ("C", "%s", bad[i]);
      calc_result there = calc_run_in ("de_DE.UTF-8", "%s", bad[i]);
      ck_assert_int_ne (here.status, 0);
      ck_assert_int_eq (here.status, there.status);
      ck_assert_str_eq (here.out, there.out);
      ck_assert_str_eq (here.err, there.err);
      calc_result_clear (&here);
      calc_result_clear (&there);
    }
}
END_TEST

START_TEST (a_full_disk_is_status_3)
{
  calc_result r = calc_run_to ("/dev/full", "%s", good[_i]);
  ck_assert_msg (r.status == 3, "status %d for %s", r.status, good[_i]);
  ck_assert_msg (strstr (r.err, g_strerror (ENOSPC)) != NULL, "%s", r.err);
  calc_result_clear (&r);
}
END_TEST

/* More than any buffer holds: the writing fails in the middle, not at the end. */
START_TEST (a_full_disk_ends_a_long_table)
{
  calc_result r = calc_run_to (
      "/dev/full", "force {demo}/club-final.dampwright --to 5 --count 100000 --format csv");
  ck_assert_int_eq (r.status, 3);
  calc_result_clear (&r);
}
END_TEST

START_TEST (a_file_gets_the_same_bytes)
{
  if (strstr (good[_i], "--help") != NULL || strstr (good[_i], "--version") != NULL)
    return;
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "result", NULL);
  g_autofree char *expected = calc_output ("%s", good[_i]);
  g_autofree char *printed = calc_output ("%s -o %s", good[_i], path);
  g_autofree char *written = NULL;
  ck_assert_str_eq (printed, "");
  ck_assert (g_file_get_contents (path, &written, NULL, NULL));
  ck_assert_str_eq (written, expected);
  calc_expect_files (folder, 1);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (a_missing_folder_is_status_3)
{
  char *folder = calc_make_folder ();
  calc_result r = calc_run ("drills -o %s/none/result", folder);
  ck_assert_int_eq (r.status, 3);
  ck_assert_str_eq (r.out, "");
  ck_assert_msg (strstr (r.err, g_strerror (ENOENT)) != NULL, "%s", r.err);
  calc_expect_files (folder, 0);
  calc_result_clear (&r);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (an_old_file_stays_when_it_fails)
{
  char *folder = calc_make_folder ();
  g_autofree char *path = g_build_filename (folder, "result", NULL);
  g_autofree char *text = NULL;
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  calc_result r = calc_run ("force {demo}/club-final.dampwright --setup none -o %s", path);
  ck_assert_int_eq (r.status, 1);
  calc_result_clear (&r);
  r = calc_run ("force {data}/malformed/no-bore.dampwright -o %s", path);
  ck_assert_int_eq (r.status, 1);
  calc_result_clear (&r);
  r = calc_run ("force {demo}/none.dampwright -o %s", path);
  ck_assert_int_eq (r.status, 3);
  calc_result_clear (&r);
  ck_assert (g_file_get_contents (path, &text, NULL, NULL));
  ck_assert_str_eq (text, "old");
  calc_expect_files (folder, 1);
  calc_remove_folder (folder);
}
END_TEST

START_TEST (the_project_is_not_overwritten)
{
  char *folder = calc_make_folder ();
  g_autofree char *demo = calc_path ("{demo}/club-final.dampwright");
  g_autofree char *path = g_build_filename (folder, "a.dampwright", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  ck_assert (g_file_get_contents (demo, &before, NULL, NULL));
  ck_assert (g_file_set_contents (path, before, -1, NULL));
  calc_result r = calc_run ("force %s -o %s/./a.dampwright", path, folder);
  ck_assert_int_eq (r.status, 2);
  ck_assert (g_file_get_contents (path, &after, NULL, NULL));
  ck_assert_str_eq (before, after);
  calc_result_clear (&r);
  calc_remove_folder (folder);
}
END_TEST

static const char *const unreadable[] = {
  "check {demo}/none.dampwright",  "check {demo}",
  "force {demo}/none.dampwright",  "compare {demo}/none.dampwright a b",
  "drill {demo}/none.dampwright",  "sheet {demo}/none.dampwright -o none.pdf",
  "stacks {demo}/none.dampwright", "match {demo}/none.dampwright --axle front",
  "oils {demo}/none.dampwright",
};

START_TEST (a_file_that_cannot_be_read_is_status_3)
{
  calc_result r = calc_run ("%s", unreadable[_i]);
  ck_assert_msg (r.status == 3, "status %d for %s", r.status, unreadable[_i]);
  ck_assert_str_eq (r.out, "");
  ck_assert_ptr_nonnull (strstr (r.err, "/demo"));
  calc_result_clear (&r);
}
END_TEST

START_TEST (options_may_stand_anywhere)
{
  static const char *const same[] = {
    "force {demo}/club-final.dampwright --setup trial-1 --format csv",
    "force --setup trial-1 --format csv {demo}/club-final.dampwright",
    "force --setup=trial-1 {demo}/club-final.dampwright --format=csv",
    "force --format csv --setup trial-1 -- {demo}/club-final.dampwright",
  };
  g_autofree char *first = calc_output ("%s", same[0]);
  for (size_t i = 1; i < G_N_ELEMENTS (same); i++)
    {
      g_autofree char *other = calc_output ("%s", same[i]);
      ck_assert_str_eq (first, other);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("calc/dw-calc");
  TCase *tc = tcase_create ("program");
  tcase_set_timeout (tc, 60);
  tcase_add_loop_test (tc, wrong_usage_is_one_line_and_status_2, 0, N_ENTRIES (misuses));
  tcase_add_test (tc, wrong_usage_stays_one_line_whatever_was_typed);
  tcase_add_test (tc, the_help_tells_every_command);
  tcase_add_loop_test (tc, help_and_man_page_tell_every_option, 0, N_ENTRIES (commands));
  tcase_add_test (tc, help_wins_over_the_rest);
  tcase_add_test (tc, the_version_is_that_of_the_build);
  tcase_add_loop_test (tc, a_page_fits_a_terminal, 0, N_ENTRIES (good));
  tcase_add_loop_test (tc, a_decimal_comma_changes_nothing, 0, N_ENTRIES (good));
  tcase_add_test (tc, a_decimal_comma_changes_no_message);
  tcase_add_loop_test (tc, a_full_disk_is_status_3, 0, N_ENTRIES (good));
  tcase_add_test (tc, a_full_disk_ends_a_long_table);
  tcase_add_loop_test (tc, a_file_gets_the_same_bytes, 0, N_ENTRIES (good));
  tcase_add_test (tc, a_missing_folder_is_status_3);
  tcase_add_test (tc, an_old_file_stays_when_it_fails);
  tcase_add_test (tc, the_project_is_not_overwritten);
  tcase_add_loop_test (tc, a_file_that_cannot_be_read_is_status_3, 0, N_ENTRIES (unreadable));
  tcase_add_test (tc, options_may_stand_anywhere);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
