/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-damper-reader.h"

#include <string.h>

#include "project-samples.h"
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

/* The text must outlive the test. */
static void
parse (const char *text)
{
  reader.source = dw_xml_source_parse (text, strlen (text), reader.findings);
  ck_assert_ptr_nonnull (reader.source);
  root = xmlDocGetRootElement (dw_xml_source_get_doc (reader.source));
}

#define NS   " xmlns='urn:dampwright:project:1'"
#define BODY "<body bore-mm='16' rod-mm='3.5'/>\n"
#define OIL  "<oil viscosity-cst='450'/>\n"

START_TEST (what_is_left_out_takes_the_defaults_of_the_limits)
{
  dw_damper damper;
  parse ("<damper" NS ">" BODY "<piston/>" OIL "</damper>");
  dw_damper_read (&reader, root, &damper);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 0);
  ck_assert (damper.body.stroke == dw_limit_get (DW_LIMIT_STROKE)->fallback);
  ck_assert (damper.piston.thickness == dw_limit_get (DW_LIMIT_PISTON_THICKNESS)->fallback);
  ck_assert (damper.piston.clearance == dw_limit_get (DW_LIMIT_CLEARANCE)->fallback);
  ck_assert (damper.piston.eccentricity == dw_limit_get (DW_LIMIT_ECCENTRICITY)->fallback);
  ck_assert (damper.gas.kind == DW_GAS_BLADDER);
  ck_assert (damper.gas.pressure == dw_limit_get (DW_LIMIT_GAS_PRESSURE)->fallback);
  ck_assert (damper.gas.volume == dw_limit_get (DW_LIMIT_GAS_VOLUME)->fallback);
  ck_assert (damper.seal_friction == dw_limit_get (DW_LIMIT_SEAL_FRICTION)->fallback);
  ck_assert (damper.spring.rate == dw_limit_get (DW_LIMIT_SPRING_RATE)->fallback);
  ck_assert (damper.spring.free_length == dw_limit_get (DW_LIMIT_SPRING_LENGTH)->fallback);
  ck_assert (damper.spring.preload == dw_limit_get (DW_LIMIT_SPRING_PRELOAD)->fallback);
  ck_assert (damper.motion_ratio == dw_limit_get (DW_LIMIT_MOTION_RATIO)->fallback);
  ck_assert_int_eq (damper.piston.n_holes, 0);
  ck_assert_int_eq (damper.valve.n_shims, 0);
  ck_assert (!damper.oil.has_thinning && !damper.body.has_filling);
  ck_assert (!damper.stance.has_ride_height && !damper.stance.has_droop);
}
END_TEST

START_TEST (a_vented_damper_has_the_range_of_the_air)
{
  dw_damper damper;
  parse ("<damper" NS ">" BODY "<piston/>" OIL "<gas kind='vented' pressure-kpa='95'/></damper>");
  dw_damper_read (&reader, root, &damper);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 0);
  ck_assert (damper.gas.kind == DW_GAS_VENTED && damper.gas.pressure == 95e3);
}
END_TEST

static const struct
{
  const char *oil;
  dw_oil_kind kind;
} oils[] = {
  { "<oil viscosity-cst='450'/>", DW_OIL_NOMINAL },
  { "<oil t1-c='20' viscosity1-cst='400' t2-c='40' viscosity2-cst='300'/>", DW_OIL_MEASURED },
  { "<oil><part viscosity-cst='350' share='0.25'/><part viscosity-cst='500' share='0.75'/></oil>",
    DW_OIL_BLEND },
};

START_TEST (an_oil_is_known_by_its_form)
{
  dw_damper damper;
  g_autofree char *text = g_strdup_printf ("<damper" NS ">" BODY "<piston/>%s</damper>",
                                           oils[_i].oil);
  parse (text);
  dw_damper_read (&reader, root, &damper);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 0);
  ck_assert_int_eq (damper.oil.kind, oils[_i].kind);
  ck_assert (damper.oil.density == dw_limit_get (DW_LIMIT_DENSITY)->fallback);
}
END_TEST

/* What the model finds, and the line, element and attribute that it is shown at. */
static const struct
{
  const char *content;
  int line;
  const char *element;
  const char *attribute;
} misfits[] = {
  { "<body bore-mm='16'\nrod-mm='15'/><piston/>" OIL, 2, "body", "rod-mm" },
  { BODY "<piston clearance-mm='0.0001'/>" OIL, 2, "piston", "clearance-mm" },
  { BODY "<piston clearance-mm='0'>\n<holes diameter-mm='1' covered='yes'/></piston>"
         "<valve hub-diameter-mm='6' outer-diameter-mm='10' hole-circle-mm='8'>"
         "<shim thickness-mm='0.1'/></valve>" OIL,
    2, "piston", NULL },
  { BODY "<piston>\n<holes diameter-mm='1'/>\n<holes\ndiameter-mm='8'/></piston>" OIL, 5, "holes",
    "diameter-mm" },
  { BODY "<piston>\n<holes diameter-mm='2' count='64'/></piston>" OIL, 2, "piston", NULL },
  { BODY "<piston/>\n<valve hub-diameter-mm='9.9'\nouter-diameter-mm='10' hole-circle-mm='8'>"
         "<shim thickness-mm='0.1'/></valve>" OIL,
    3, "valve", "hub-diameter-mm" },
  { BODY "<piston/>\n<oil t1-c='20' viscosity1-cst='400'\nt2-c='40'\nviscosity2-cst='401'/>", 5,
    "oil", "viscosity2-cst" },
  { BODY "<piston/>\n<oil>\n<part viscosity-cst='1' share='1'/><part viscosity-cst='2' "
         "share='1'/></oil>",
    3, "oil", NULL },
  { BODY "<piston/>" OIL "<spring free-length-mm='50'\npreload-mm='60'/>", 4, "spring",
    "preload-mm" },
  { BODY "<piston/>" OIL "<spring preload-mm='80'/>", 3, "spring", "preload-mm" },
};

START_TEST (what_does_not_fit_is_shown_where_it_stands)
{
  dw_damper damper;
  g_autofree char *text = g_strdup_printf ("<damper" NS ">%s</damper>", misfits[_i].content);
  parse (text);
  dw_damper_read (&reader, root, &damper);
  ck_assert_uint_ge (dw_findings_get_n_errors (reader.findings), 1);
  const dw_finding *finding = dw_findings_get (reader.findings, 0);
  ck_assert_msg (finding->line == misfits[_i].line
                     && g_strcmp0 (finding->element, misfits[_i].element) == 0
                     && g_strcmp0 (finding->attribute, misfits[_i].attribute) == 0,
                 "row %d: line %d <%s> %s: %s", _i, finding->line, finding->element,
                 finding->attribute, finding->message);
}
END_TEST

START_TEST (misfits_are_not_sought_among_broken_numbers)
{
  dw_damper damper;
  parse ("<damper" NS "><body bore-mm='1000' rod-mm='20'/><piston/>" OIL "</damper>");
  dw_damper_read (&reader, root, &damper);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 1);
}
END_TEST

START_TEST (parts_of_the_box_are_read_alone)
{
  dw_spare_piston spare = { .name = NULL };
  parse ("<piston" NS " name='six'><holes count='6' diameter-mm='1.3'/></piston>");
  dw_spare_piston_read (&reader, root, &spare);
  ck_assert_str_eq (spare.name, "six");
  ck_assert (spare.piston.n_holes == 1 && spare.piston.holes[0].count == 6);
  g_free (spare.name);
  dw_xml_source_free (reader.source);

  dw_bottle bottle;
  parse ("<oil" NS " t1-c='20' viscosity1-cst='400' t2-c='21' viscosity2-cst='300'/>");
  dw_bottle_read (&reader, root, &bottle);
  ck_assert_uint_eq (dw_findings_get_n (reader.findings), 1);
  ck_assert_str_eq (dw_findings_get (reader.findings, 0)->attribute, "t2-c");
  dw_xml_source_free (reader.source);

  dw_shim shim = { .count = 0 };
  parse ("<shim" NS " thickness-mm='0.15'/>");
  dw_shim_read (&reader, root, &shim);
  ck_assert (shim.thickness == 0.15e-3 && shim.count == 1 && shim.modulus == 4e9
             && shim.poisson == 0.38 && shim.strength == 100e6);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-damper-reader");
  TCase *tc = tcase_create ("damper");
  tcase_add_checked_fixture (tc, enter, leave);
  tcase_add_test (tc, what_is_left_out_takes_the_defaults_of_the_limits);
  tcase_add_test (tc, a_vented_damper_has_the_range_of_the_air);
  tcase_add_loop_test (tc, an_oil_is_known_by_its_form, 0, N_ENTRIES (oils));
  tcase_add_loop_test (tc, what_does_not_fit_is_shown_where_it_stands, 0, N_ENTRIES (misfits));
  tcase_add_test (tc, misfits_are_not_sought_among_broken_numbers);
  tcase_add_test (tc, parts_of_the_box_are_read_alone);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
