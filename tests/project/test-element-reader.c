/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-element-reader.h"

#include <string.h>

#include "model/dw-damper.h"
#include "project-samples.h"
#include "project/dw-parts.h"
#include "project/dw-xml-guard.h"

static dw_xml_guard guard;
static dw_element_reader reader;
static xmlNode *root;

static void
enter (void)
{
  dw_xml_guard_enter (&guard);
  reader.findings = dw_findings_new ();
}

static void
leave (void)
{
  dw_xml_source_free (reader.source);
  dw_findings_free (reader.findings);
  reader = (dw_element_reader){ NULL, NULL };
  dw_xml_guard_leave (&guard);
}

/* A root element in the namespace of projects; the text must outlive the test. */
static void
parse (const char *text)
{
  reader.source = dw_xml_source_parse (text, strlen (text), reader.findings);
  ck_assert_ptr_nonnull (reader.source);
  root = xmlDocGetRootElement (dw_xml_source_get_doc (reader.source));
}

#define NS " xmlns='urn:dampwright:project:1'"

START_TEST (attributes_are_read_into_the_struct)
{
  dw_valve valve = { 0 };
  parse ("<valve" NS " opens-on='compression' hub-diameter-mm='6.2' outer-diameter-mm='9.4'"
         " hole-circle-mm='7.6' preload-kpa='12.5'/>");
  dw_element_read_fields (&reader, root, DW_FORM_VALVE, &valve);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 0);
  ck_assert_int_eq (valve.opens_on, DW_COMPRESSION);
  ck_assert (valve.hub_diameter == 6.2e-3 && valve.outer_diameter == 9.4e-3);
  ck_assert (valve.hole_circle == 7.6e-3 && valve.preload == 12.5e3);
  ck_assert_msg (valve.lift_limit == 0.6e-3, "a default of the model");
}
END_TEST

START_TEST (what_is_wrong_leaves_the_value_alone)
{
  dw_holes holes = { .count = 7, .diameter = 7.0, .covered = true };
  parse ("<holes" NS " count='x' diameter-mm='1,3' covered='maybe'/>");
  dw_element_read_fields (&reader, root, DW_FORM_HOLES, &holes);
  ck_assert_uint_eq (dw_findings_get_n_errors (reader.findings), 3);
  ck_assert (holes.count == 7 && holes.diameter == 7.0 && holes.covered);
}
END_TEST

START_TEST (an_optional_number_says_whether_it_was_given)
{
  dw_bottle bottle = { .has_volume = false };
  parse ("<oil" NS " viscosity-cst='450'/>");
  dw_element_read_fields (&reader, root, DW_FORM_BOTTLE_NOMINAL, &bottle);
  ck_assert (!bottle.has_volume && !bottle.oil.has_thinning && bottle.oil.viscosity == 450e-6);
  dw_xml_source_free (reader.source);
  parse ("<oil" NS " viscosity-cst='450' volume-ml='60'/>");
  dw_element_read_fields (&reader, root, DW_FORM_BOTTLE_NOMINAL, &bottle);
  ck_assert (bottle.has_volume && bottle.volume == 60e-6);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 0);
}
END_TEST

START_TEST (what_is_not_known_goes_from_the_tree)
{
  static const dw_child_rule rules[] = { { "holes", false, 2 } };
  dw_piston piston = { 0 };
  parse ("<piston" NS " xmlns:x='urn:x' colour='red' x:y='1' thickness-mm='2'>a<!-- b -->"
         "<x:holes/><valve/><weather/><holes/></piston>");
  dw_element_check_children (&reader, root, rules, G_N_ELEMENTS (rules));
  dw_element_read_fields (&reader, root, DW_FORM_PISTON, &piston);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 6);
  ck_assert_uint_eq (dw_findings_get_n_errors (reader.findings), 0);
  ck_assert_uint_eq (xmlChildElementCount (root), 1);
  ck_assert (!dw_element_has (root, "colour"));
  ck_assert_ptr_null (xmlHasNsProp (root, (const xmlChar *)"y", (const xmlChar *)"urn:x"));
  ck_assert (dw_element_has (root, "thickness-mm") && piston.thickness == 2e-3);
}
END_TEST

START_TEST (a_text_is_read_with_its_blanks)
{
  parse ("<notes" NS
         "> a &amp;<!-- b --> &#9;\n<?c d?><![CDATA[<e> ]]><weather>f</weather> g\n </notes>");
  g_autofree char *text = dw_element_read_text (&reader, root);
  ck_assert_str_eq (text, " a & \t\n<e>  g\n ");
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 1);
  ck_assert_uint_eq (xmlChildElementCount (root), 0);
  dw_xml_source_free (reader.source);
  parse ("<notes" NS "/>");
  g_autofree char *nothing = dw_element_read_text (&reader, root);
  ck_assert_str_eq (nothing, "");
}
END_TEST

START_TEST (children_in_excess_are_reported_once_and_taken_out)
{
  static const dw_child_rule rules[] = { { "holes", false, 2 }, { "shim", true, 1 } };
  parse ("<piston" NS "><holes/><holes/><holes/><holes/><holes/></piston>");
  dw_element_check_children (&reader, root, rules, G_N_ELEMENTS (rules));
  ck_assert_uint_eq (xmlChildElementCount (root), 2);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 2);
  ck_assert (sample_has_error (reader.findings, "too many <holes> in <piston>, allowed 2"));
  ck_assert (sample_has_error (reader.findings, "<piston> lacks <shim>"));
}
END_TEST

START_TEST (children_are_found_by_name)
{
  parse ("<piston" NS ">  <holes count='1'/><shim/> <!-- c --> <holes count='2'/></piston>");
  xmlNode *first = dw_element_child (root, "holes");
  xmlNode *second = dw_element_next (first);
  g_autofree char *count = dw_element_dup (second, "count");
  ck_assert_str_eq (count, "2");
  ck_assert_ptr_null (dw_element_next (second));
  ck_assert_ptr_null (dw_element_child (root, "valve"));
  ck_assert_ptr_null (dw_element_dup (second, "colour"));
  ck_assert_str_eq (dw_element_name (first), "holes");
}
END_TEST

START_TEST (a_report_has_the_place_and_the_value)
{
  parse ("<body" NS "\n bore-mm='16'/>");
  dw_element_report (&reader, DW_ERROR, root, "bore-mm", "no good: %d", 7);
  const dw_finding *finding = dw_findings_get (reader.findings, 0);
  ck_assert_int_eq (finding->line, 2);
  ck_assert_str_eq (finding->element, "body");
  ck_assert_str_eq (finding->attribute, "bore-mm");
  ck_assert_str_eq (finding->value, "16");
  ck_assert_str_eq (finding->message, "no good: 7");
}
END_TEST

START_TEST (a_long_value_is_cut_between_characters)
{
  dw_body body = { 0 };
  GString *text = g_string_new ("<body" NS " rod-mm='3' bore-mm='x");
  for (int i = 0; i < 100; i++)
    g_string_append (text, "漢");
  g_string_append (text, "'/>");
  parse (text->str);
  dw_element_read_fields (&reader, root, DW_FORM_BODY, &body);
  const char *message = dw_findings_get (reader.findings, 0)->message;
  ck_assert_msg (g_utf8_validate (message, -1, NULL) && strstr (message, "\xEF\xBF\xBD") == NULL
                     && strstr (message, "漢...\" is not a number") != NULL,
                 "%s", message);
  g_string_free (text, TRUE);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-element-reader");
  TCase *tc = tcase_create ("element");
  tcase_add_checked_fixture (tc, enter, leave);
  tcase_add_test (tc, attributes_are_read_into_the_struct);
  tcase_add_test (tc, what_is_wrong_leaves_the_value_alone);
  tcase_add_test (tc, an_optional_number_says_whether_it_was_given);
  tcase_add_test (tc, what_is_not_known_goes_from_the_tree);
  tcase_add_test (tc, a_text_is_read_with_its_blanks);
  tcase_add_test (tc, children_in_excess_are_reported_once_and_taken_out);
  tcase_add_test (tc, children_are_found_by_name);
  tcase_add_test (tc, a_report_has_the_place_and_the_value);
  tcase_add_test (tc, a_long_value_is_cut_between_characters);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
