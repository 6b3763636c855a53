/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-project-schema.h"

#include <libxml/xpath.h>
#include <libxml/xpathInternals.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "project-samples.h"
#include "project/dw-decimal.h"
#include "project/dw-field.h"
#include "project/dw-project-reader.h"
#include "project/dw-xml-guard.h"

/* [1] Far enough outside a range to survive rounding in either unit, near enough to catch a
 * range that is open at its end or was rounded. */
#define JUST_OUTSIDE 1e-12

/* Where each form stands in tests/data/valid/everything.dampwright. */
static const char *const form_paths[DW_N_FORMS] = {
  [DW_FORM_PROJECT] = "/p:project",
  [DW_FORM_CONDITIONS] = "//p:conditions",
  [DW_FORM_SPEEDS] = "//p:speeds",
  [DW_FORM_CAR] = "//p:car",
  [DW_FORM_MEETING] = "//p:meeting",
  [DW_FORM_NOTES] = "//p:notes",
  [DW_FORM_SETUP] = "//p:setup",
  [DW_FORM_DAMPER] = "//p:damper",
  [DW_FORM_BODY] = "//p:body",
  [DW_FORM_PISTON] = "//p:damper/p:piston",
  [DW_FORM_HOLES] = "//p:holes",
  [DW_FORM_VALVE] = "//p:valve",
  [DW_FORM_SHIM] = "//p:shim",
  [DW_FORM_OIL_NOMINAL] = "//p:damper/p:oil[@viscosity-cst]",
  [DW_FORM_OIL_MEASURED] = "//p:damper/p:oil[@t1-c]",
  [DW_FORM_OIL_BLEND] = "//p:damper/p:oil[p:part]",
  [DW_FORM_OIL_PART] = "//p:part",
  [DW_FORM_GAS_SEALED] = "//p:gas[@kind='bladder']",
  [DW_FORM_GAS_VENTED] = "//p:gas[@kind='vented']",
  [DW_FORM_SEAL] = "//p:seal",
  [DW_FORM_SPRING] = "//p:spring",
  [DW_FORM_LINKAGE] = "//p:linkage",
  [DW_FORM_STANCE] = "//p:stance",
  [DW_FORM_PARTS] = "//p:parts",
  [DW_FORM_DRILL] = "//p:drill",
  [DW_FORM_BOTTLE_NOMINAL] = "//p:parts/p:oil[@viscosity-cst]",
  [DW_FORM_BOTTLE_MEASURED] = "//p:parts/p:oil[@t1-c]",
  [DW_FORM_BOTTLE_BLEND] = "//p:parts/p:oil[p:part]",
  [DW_FORM_SPARE_PISTON] = "//p:parts/p:piston",
};

static dw_xml_guard guard;
static xmlDoc *schema;

static void
enter (void)
{
  dw_xml_guard_enter (&guard);
  gsize length = 0;
  const char *text = dw_project_schema_get_text (&length);
  schema = xmlReadMemory (text, (int)length, NULL, NULL, 0);
  ck_assert_ptr_nonnull (schema);
}

static void
leave (void)
{
  xmlFreeDoc (schema);
  dw_xml_guard_leave (&guard);
}

static bool
is_named (const xmlNode *node, const char *name)
{
  return node->type == XML_ELEMENT_NODE && g_str_equal ((const char *)node->name, name);
}

static char *
dup_property (xmlNode *node, const char *name)
{
  xmlChar *value = xmlGetNoNsProp (node, (const xmlChar *)name);
  char *copy = g_strdup ((const char *)value);
  xmlFree (value);
  return copy;
}

static xmlNode *
find_define (const char *name)
{
  for (xmlNode *node = xmlDocGetRootElement (schema)->children; node != NULL; node = node->next)
    if (is_named (node, "define"))
      {
        g_autofree char *own = dup_property (node, "name");
        if (g_strcmp0 (own, name) == 0)
          return node;
      }
  ck_abort_msg ("the schema defines no %s", name);
  return NULL;
}

/* Collect the attribute patterns below a node, through references, not into inner elements. */
static void
collect_attributes (xmlNode *node, GPtrArray *attributes, int n_elements)
{
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    {
      if (is_named (child, "attribute"))
        g_ptr_array_add (attributes, child);
      else if (is_named (child, "element") && n_elements == 0)
        collect_attributes (child, attributes, 1);
      else if (is_named (child, "ref"))
        {
          g_autofree char *name = dup_property (child, "name");
          xmlNode *define = find_define (name);
          const bool holds_element = xmlFirstElementChild (define) != NULL
                                     && is_named (xmlLastElementChild (define), "element");
          if (!holds_element)
            collect_attributes (define, attributes, 1);
        }
      else if (child->type == XML_ELEMENT_NODE && !is_named (child, "element"))
        collect_attributes (child, attributes, n_elements);
    }
}

static GPtrArray *
attributes_of (const dw_form *form)
{
  GPtrArray *attributes = g_ptr_array_new ();
  collect_attributes (find_define (form->pattern), attributes, 0);
  return attributes;
}

/* The pattern of one attribute of a form. */
static xmlNode *
find_attribute (const dw_form *form, const char *name)
{
  g_autoptr (GPtrArray) attributes = attributes_of (form);
  for (guint i = 0; i < attributes->len; i++)
    {
      g_autofree char *own = dup_property (attributes->pdata[i], "name");
      if (g_strcmp0 (own, name) == 0)
        return attributes->pdata[i];
    }
  ck_abort_msg ("the schema has no %s in %s", name, form->pattern);
  return NULL;
}

/* The number in <param name="NAME"> below a pattern. */
static double
find_param (xmlNode *pattern, const char *name, int power)
{
  for (xmlNode *data = pattern->children; data != NULL; data = data->next)
    for (xmlNode *param = is_named (data, "data") ? data->children : NULL; param != NULL;
         param = param->next)
      {
        g_autofree char *own = is_named (param, "param") ? dup_property (param, "name") : NULL;
        if (g_strcmp0 (own, name) != 0)
          continue;
        xmlChar *text = xmlNodeGetContent (param);
        double value = NAN;
        ck_assert (dw_decimal_parse ((const char *)text, power, &value));
        xmlFree (text);
        return value;
      }
  return NAN;
}

static char *
dup_default (xmlNode *attribute)
{
  xmlChar *value = xmlGetNsProp (
      attribute, (const xmlChar *)"defaultValue",
      (const xmlChar *)"http://relaxng.org/ns/compatibility/annotations/1.0");
  char *copy = g_strdup ((const char *)value);
  xmlFree (value);
  return copy;
}

START_TEST (the_schema_in_the_program_is_the_one_that_is_installed)
{
  gsize length = 0;
  const char *text = dw_project_schema_get_text (&length);
  char *path = test_source_path ("data/project.rng");
  size_t n = 0;
  char *file = test_file_read (path, &n);
  ck_assert_uint_eq (n, length);
  ck_assert_mem_eq (file, text, n);
  free (file);
  free (path);
}
END_TEST

START_TEST (table_and_schema_have_the_same_attributes)
{
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  g_autoptr (GPtrArray) attributes = attributes_of (form);
  ck_assert_msg (attributes->len == form->n_fields,
                 "%s: %u attributes in the schema, %u in the table", form->pattern, attributes->len,
                 form->n_fields);
  for (guint i = 0; i < form->n_fields; i++)
    ck_assert_ptr_nonnull (find_attribute (form, form->fields[i].name));
}
END_TEST

START_TEST (every_attribute_is_explained_with_its_unit)
{
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  for (guint i = 0; i < form->n_fields; i++)
    {
      const dw_field *field = &form->fields[i];
      xmlNode *documentation = xmlFirstElementChild (find_attribute (form, field->name));
      ck_assert (is_named (documentation, "documentation"));
      xmlChar *text = xmlNodeGetContent (documentation);
      if (field->kind == DW_FIELD_NUMBER)
        {
          g_autofree char *range = dw_field_range_text (field);
          char *blank = strrchr (range, ' ');
          if (*field->unit != '\0')
            {
              *blank = '\0';
              g_autofree char *unit = g_strdup_printf ("%s: ", field->unit);
              ck_assert_msg (strstr ((const char *)text, unit) != NULL, "%s: %s", field->name,
                             text);
            }
          ck_assert_msg (strstr ((const char *)text, range) != NULL, "%s: %s, not %s", field->name,
                         text, range);
        }
      xmlFree (text);
    }
}
END_TEST

static void
compare_numbers (const dw_form *form, const dw_field *field, xmlNode *pattern)
{
  const dw_limit *limit = dw_limit_get (field->limit);
  const double low = find_param (pattern, "minInclusive", field->power);
  const double high = find_param (pattern, "maxInclusive", field->power);
  ck_assert_msg (low == limit->low && high == limit->high, "%s/%s: %.17g to %.17g in the schema",
                 form->pattern, field->name, low, high);

  g_autofree char *text = dup_default (pattern);
  ck_assert_msg ((text != NULL) == (!field->optional && !isnan (limit->fallback)),
                 "%s/%s: default in the schema: %s", form->pattern, field->name,
                 text != NULL ? text : "none");
  double fallback = NAN;
  if (text != NULL)
    ck_assert (dw_decimal_parse (text, field->power, &fallback) && fallback == limit->fallback);
}

/* The words of a pattern are words of the table; forms of gas share theirs between them. */
static guint
compare_words (const dw_field *field, xmlNode *node)
{
  guint n = 0;
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (is_named (child, "value"))
      {
        xmlChar *word = xmlNodeGetContent (child);
        ck_assert_msg (g_strv_contains (field->words, (const char *)word), "%s=\"%s\"", field->name,
                       word);
        xmlFree (word);
        n++;
      }
    else
      n += compare_words (field, child);
  return n;
}

START_TEST (ranges_defaults_and_words_are_those_of_the_table)
{
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  for (guint i = 0; i < form->n_fields; i++)
    {
      const dw_field *field = &form->fields[i];
      xmlNode *pattern = find_attribute (form, field->name);
      g_autofree char *text = dup_default (pattern);
      if (field->kind == DW_FIELD_NUMBER || field->kind == DW_FIELD_COUNT)
        compare_numbers (form, field, pattern);
      if (field->kind == DW_FIELD_FLAG)
        ck_assert_str_eq (text, "no");
      if (field->words != NULL && _i != DW_FORM_GAS_SEALED && _i != DW_FORM_GAS_VENTED)
        ck_assert_uint_eq (compare_words (field, pattern),
                           g_strv_length ((char **)(guintptr)field->words));
      if (field->kind == DW_FIELD_WORD && _i != DW_FORM_GAS_VENTED)
        ck_assert_str_eq (text == NULL ? "none" : text,
                          field->fallback < 0 ? "none" : field->words[field->fallback]);

      const bool must_be_given = !field->optional && field->kind != DW_FIELD_TEXT
                                 && field->kind != DW_FIELD_REFERENCE && text == NULL;
      const bool is_pair = field->optional && is_named (pattern->parent, "group");
      ck_assert_msg (is_named (pattern->parent, "optional") == (!must_be_given && !is_pair),
                     "%s/%s", form->pattern, field->name);
    }
}
END_TEST

START_TEST (gas_words_are_shared_between_its_two_forms)
{
  const dw_form *sealed = dw_form_get (DW_FORM_GAS_SEALED);
  const dw_form *vented = dw_form_get (DW_FORM_GAS_VENTED);
  const dw_field *kind = dw_form_find (sealed, "kind");
  ck_assert_uint_eq (compare_words (kind, find_attribute (sealed, "kind"))
                         + compare_words (kind, find_attribute (vented, "kind")),
                     3);
}
END_TEST

/* ---- the schema at work ---- */

/* The good file with one attribute of a form changed (or taken out, when @p value is NULL). */
static char *
with_attribute (dw_form_id id, const char *name, const char *value, gsize *length)
{
  gsize n = 0;
  g_autofree char *text = sample_read ("valid", "everything.dampwright", &n);
  xmlDoc *doc = xmlReadMemory (text, (int)n, NULL, NULL, 0);
  xmlXPathContext *context = xmlXPathNewContext (doc);
  xmlXPathRegisterNs (context, (const xmlChar *)"p", (const xmlChar *)DW_PROJECT_NAMESPACE);
  xmlXPathObject *found = xmlXPathEval ((const xmlChar *)form_paths[id], context);
  ck_assert_msg (found != NULL && found->nodesetval != NULL && found->nodesetval->nodeNr > 0,
                 "the good file has no %s", form_paths[id]);
  xmlNode *node = found->nodesetval->nodeTab[0];
  if (value != NULL)
    xmlSetProp (node, (const xmlChar *)name, (const xmlChar *)value);
  else
    xmlUnsetProp (node, (const xmlChar *)name);
  xmlXPathFreeObject (found);
  xmlXPathFreeContext (context);

  xmlChar *out = NULL;
  int size = 0;
  xmlDocDumpMemoryEnc (doc, &out, &size, "UTF-8");
  xmlFreeDoc (doc);
  char *copy = g_strndup ((const char *)out, (gsize)size);
  xmlFree (out);
  *length = (gsize)size;
  return copy;
}

/* Number of breaches of the schema alone. */
static guint
count_breaches (const char *text, gsize length)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_xml_source) source = dw_xml_source_parse (text, length, findings);
  ck_assert_ptr_nonnull (source);
  dw_project_schema_check (source, findings);
  return dw_findings_get_n_errors (findings);
}

/* Whether the reader finds something wrong with this very attribute as given. */
static bool
is_refused (const char *text, gsize length, const dw_field *field, const char *value)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) project = dw_project_read_text (text, length, findings);
  g_autofree char *piece = g_strdup_printf ("%s \"%s\" is ", field->name, value);
  ck_assert (!sample_has_error (findings, piece) || project == NULL);
  return sample_has_error (findings, piece);
}

static void
try_value (dw_form_id id, const dw_field *field, const char *value, bool good)
{
  gsize length = 0;
  g_autofree char *text = with_attribute (id, field->name, value, &length);
  ck_assert_msg (is_refused (text, length, field, value) == !good, "the reader, %s/%s=\"%s\"",
                 dw_form_get (id)->pattern, field->name, value);
  ck_assert_msg ((count_breaches (text, length) == 0) == good, "the schema, %s/%s=\"%s\"",
                 dw_form_get (id)->pattern, field->name, value);
}

static void
try_numbers (dw_form_id id, const dw_field *field)
{
  const dw_limit *limit = dw_limit_get (field->limit);
  const double below = limit->low - fmax (fabs (limit->low), 1e-3) * JUST_OUTSIDE;
  const double above = limit->high + fabs (limit->high) * JUST_OUTSIDE;
  char buffer[DW_DECIMAL_SIZE];
  try_value (id, field, dw_decimal_format (limit->low, field->power, buffer), true);
  try_value (id, field, dw_decimal_format (limit->high, field->power, buffer), true);
  try_value (id, field, dw_decimal_format (below, field->power, buffer), false);
  try_value (id, field, dw_decimal_format (above, field->power, buffer), false);

  /* The reader alone holds the very last bit, where the schema's unit may round. */
  gsize length = 0;
  dw_decimal_format (nextafter (limit->high, INFINITY), field->power, buffer);
  g_autofree char *text = with_attribute (id, field->name, buffer, &length);
  ck_assert_msg (is_refused (text, length, field, buffer), "%s/%s=\"%s\"",
                 dw_form_get (id)->pattern, field->name, buffer);
}

START_TEST (both_refuse_what_is_just_outside_and_take_the_ends)
{
  static const char *const rubbish[] = { "", "1,5", "0x10", "nan", "NaN", "INF", "1 2", "five" };
  static const char *const whole[] = { "0", "65", "1.5", "1e1", "", "x" };
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  for (guint i = 0; i < form->n_fields; i++)
    {
      const dw_field *field = &form->fields[i];
      if (field->kind == DW_FIELD_NUMBER)
        {
          try_numbers ((dw_form_id)_i, field);
          for (int n = 0; n < N_ENTRIES (rubbish); n++)
            try_value ((dw_form_id)_i, field, rubbish[n], false);
        }
      else if (field->kind == DW_FIELD_COUNT)
        {
          try_value ((dw_form_id)_i, field, "1", true);
          try_value ((dw_form_id)_i, field, "64", true);
          for (int n = 0; n < N_ENTRIES (whole); n++)
            try_value ((dw_form_id)_i, field, whole[n], false);
        }
      else if (field->words != NULL)
        {
          try_value ((dw_form_id)_i, field, "other", false);
          try_value ((dw_form_id)_i, field, "", false);
        }
    }
}
END_TEST

START_TEST (both_want_what_must_be_given_and_nothing_else)
{
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  for (guint i = 0; i < form->n_fields; i++)
    {
      const dw_field *field = &form->fields[i];
      /* Taking these out makes an oil or a gas of another form. */
      if (g_str_equal (form->element, "oil") || g_str_equal (form->element, "gas"))
        continue;
      gsize length = 0;
      g_autofree char *text = with_attribute ((dw_form_id)_i, field->name, NULL, &length);
      g_autoptr (dw_findings) findings = dw_findings_new ();
      g_autoptr (dw_project) project = dw_project_read_text (text, length, findings);
      ck_assert ((project == NULL) == (dw_findings_get_n_errors (findings) > 0));
      g_autofree char *piece = g_strdup_printf ("<%s> lacks %s, allowed", form->element,
                                                field->name);
      ck_assert_msg (sample_has_error (findings, piece) == (count_breaches (text, length) > 0),
                     "%s/%s", form->pattern, field->name);
    }
}
END_TEST

static char *
repeat (const char *piece, int n)
{
  GString *text = g_string_new (NULL);
  for (int i = 0; i < n; i++)
    g_string_append (text, piece);
  return g_string_free (text, FALSE);
}

/* Whether reader and schema both take a text, or both refuse it. */
static void
try_length (const char *text, gsize length, bool good, const char *what)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_project) project = dw_project_read_text (text, length, findings);
  ck_assert_msg ((project != NULL) == good, "the reader, %s", what);
  ck_assert_msg ((count_breaches (text, length) == 0) == good, "the schema, %s", what);
}

START_TEST (both_count_the_characters_of_a_text)
{
  const dw_form *form = dw_form_get ((dw_form_id)_i);
  for (guint i = 0; i < form->n_fields; i++)
    for (int more = 0; more < 2 && form->fields[i].kind == DW_FIELD_TEXT; more++)
      {
        gsize length = 0;
        g_autofree char *value = repeat ("ä", DW_PROJECT_MAX_TEXT + more);
        g_autofree char *text = with_attribute ((dw_form_id)_i, form->fields[i].name, value,
                                                &length);
        try_length (text, length, more == 0, form->fields[i].name);
      }
}
END_TEST

START_TEST (both_count_the_characters_of_notes)
{
  static const char *const pieces[] = { "ä", " ", "\n", "a", "&amp;" };
  for (int more = 0; more < 2; more++)
    {
      g_autofree char *text = repeat (pieces[_i], DW_PROJECT_MAX_NOTES + more);
      g_autofree char *file = g_strdup_printf (
          "<project xmlns='urn:dampwright:project:1' version='1'><notes>%s</notes></project>",
          text);
      try_length (file, strlen (file), more == 0, pieces[_i]);
    }
}
END_TEST

static const struct
{
  const char *text;
  int line;
  const char *why;
} breaches[] = {
  { "<a/>", 1, "another element" },
  { "<project xmlns='urn:dampwright:project:1'/>", 1, "no version" },
  { "<project xmlns='urn:dampwright:project:1' version='1'>\n<setup id='a'\n/></project>", 2,
    "no dampers, at the line where the tag begins" },
  { "<project xmlns='urn:dampwright:project:1' version='1'><parts/>\n<parts/></project>", 1,
    "twice" },
  { "<project xmlns='urn:dampwright:project:1' version='1'>\n<conditions oil-c='999'/></project>",
    2, "out of range" },
  { "<project xmlns='urn:dampwright:project:1' version='1' colour='red'/>", 1,
    "unknown attribute" },
  { "<project xmlns='urn:dampwright:project:1' version='1'>\n<notes>a<b/></notes></project>", 2,
    "an element in a text" },
  { "<project xmlns='urn:dampwright:project:1' version='1'>text</project>", 1, "text" },
};

START_TEST (a_breach_is_a_finding_with_its_line)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  g_autoptr (dw_xml_source) source = dw_xml_source_parse (breaches[_i].text,
                                                          strlen (breaches[_i].text), findings);
  dw_project_schema_check (source, findings);
  ck_assert_msg (dw_findings_get_n_errors (findings) > 0, "%s", breaches[_i].why);
  ck_assert (sample_has_error (findings, "against the schema: "));
  bool found = false;
  for (guint i = 0; i < dw_findings_get_n (findings); i++)
    found |= dw_findings_get (findings, i)->line == breaches[_i].line;
  g_autofree char *text = dw_findings_to_text (findings, "text");
  ck_assert_msg (found, "nothing on line %d (%s): %s", breaches[_i].line, breaches[_i].why, text);
}
END_TEST

START_TEST (good_files_keep_to_the_schema)
{
  gsize length = 0;
  g_autofree char *text = sample_read ("valid", sample_valid_names[_i], &length);
  ck_assert_uint_eq (count_breaches (text, length), 0);
}
END_TEST

START_TEST (the_schema_reads_points_in_a_locale_with_a_comma)
{
  ck_assert_msg (test_use_locale ("de_DE.UTF-8"),
                 "the locale de_DE.UTF-8 is missing: tests/run.sh makes it and sets LOCPATH");
  gsize length = 0;
  g_autofree char *good = sample_read ("valid", "everything.dampwright", &length);
  g_autoptr (dw_project) project = sample_parse (good, length);
  ck_assert_ptr_nonnull (project);
  g_autofree char *bad = with_attribute (DW_FORM_SHIM, "poisson", "0.495", &length);
  ck_assert_msg (count_breaches (bad, length) > 0, "0.495 was read as 0");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-project-schema");
  TCase *tc = tcase_create ("schema");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, enter, leave);
  tcase_add_test (tc, the_schema_in_the_program_is_the_one_that_is_installed);
  tcase_add_loop_test (tc, table_and_schema_have_the_same_attributes, 0, DW_N_FORMS);
  tcase_add_loop_test (tc, every_attribute_is_explained_with_its_unit, 0, DW_N_FORMS);
  tcase_add_loop_test (tc, ranges_defaults_and_words_are_those_of_the_table, 0, DW_N_FORMS);
  tcase_add_test (tc, gas_words_are_shared_between_its_two_forms);
  tcase_add_loop_test (tc, both_refuse_what_is_just_outside_and_take_the_ends, 0, DW_N_FORMS);
  tcase_add_loop_test (tc, both_want_what_must_be_given_and_nothing_else, 0, DW_N_FORMS);
  tcase_add_loop_test (tc, both_count_the_characters_of_a_text, 0, DW_N_FORMS);
  tcase_add_loop_test (tc, both_count_the_characters_of_notes, 0, 5);
  tcase_add_loop_test (tc, a_breach_is_a_finding_with_its_line, 0, N_ENTRIES (breaches));
  tcase_add_loop_test (tc, good_files_keep_to_the_schema, 0, 3);
  tcase_add_test (tc, the_schema_reads_points_in_a_locale_with_a_comma);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
