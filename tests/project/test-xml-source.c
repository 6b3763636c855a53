/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-xml-source.h"

#include <string.h>

#include "project-samples.h"
#include "project/dw-xml-guard.h"

static dw_xml_guard guard;

static void
enter (void)
{
  dw_xml_guard_enter (&guard);
}

static void
leave (void)
{
  dw_xml_guard_leave (&guard);
}

/* Parse what must be good. */
static dw_xml_source *
parse_good (const char *text)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  dw_xml_source *source = dw_xml_source_parse (text, strlen (text), findings);
  g_autofree char *found = dw_findings_to_text (findings, "text");
  ck_assert_msg (source != NULL && *found == '\0', "%s", found);
  return source;
}

/* Parse what must be refused with one finding that has this line and piece. */
static void
parse_bad (const char *text, gsize length, int line, const char *piece)
{
  g_autoptr (dw_findings) findings = dw_findings_new ();
  ck_assert_ptr_null (dw_xml_source_parse (text, length, findings));
  ck_assert_uint_eq (dw_findings_get_n (findings), 1);
  const dw_finding *finding = dw_findings_get (findings, 0);
  ck_assert_int_eq (finding->severity, DW_ERROR);
  ck_assert_msg (strstr (finding->message, piece) != NULL, "%s", finding->message);
  ck_assert_int_eq (finding->line, line);
}

static const char placed[] = "<?xml version='1.0'?>\n"
                             "<!-- <no a='1'> -->\n"
                             "<a\n"
                             " b='1'\n"
                             "   c = \"x > y 'z' b='2'\" d='\n"
                             "'\n"
                             ">\n"
                             "<?pi <no/> ?><e/>text &lt; more<f g='1'\n"
                             " x:h='2' xmlns:x='urn:x'/><![CDATA[ <no> ]]>\n"
                             "<i>\n"
                             "  <j k='1'/></i\n"
                             " ><l\n"
                             "/></a>\n"
                             "<!-- end <no> -->\n";

static const struct
{
  const char *element;
  const char *attribute;
  int line;
  const char *why;
} places[] = {
  { "a", NULL, 3, "where the tag begins, not where it ends" },
  { "a", "b", 4, "first attribute" },
  { "a", "c", 5, "blanks around the equals sign" },
  { "a", "d", 5, "behind a value with quotes and an angle" },
  { "a", "none", 3, "no such attribute: the element" },
  { "e", NULL, 8, "behind a processing instruction" },
  { "f", NULL, 8, "behind text" },
  { "f", "g", 8, "on the element's line" },
  { "f", "x:h", 9, "with a prefix" },
  { "i", NULL, 10, "behind CDATA" },
  { "j", "k", 11, "inside" },
  { "l", NULL, 12, "behind an end tag of two lines" },
};

static xmlNode *
find (xmlNode *node, const char *name)
{
  for (; node != NULL; node = node->next)
    {
      if (node->type == XML_ELEMENT_NODE && g_str_equal ((const char *)node->name, name))
        return node;
      xmlNode *below = find (node->children, name);
      if (below != NULL)
        return below;
    }
  return NULL;
}

START_TEST (elements_and_attributes_are_where_they_stand)
{
  g_autoptr (dw_xml_source) source = parse_good (placed);
  xmlNode *node = find (xmlDocGetRootElement (dw_xml_source_get_doc (source)), places[_i].element);
  ck_assert_ptr_nonnull (node);
  const int line = places[_i].attribute == NULL
                       ? dw_xml_source_get_line (source, node)
                       : dw_xml_source_get_attribute_line (source, node, places[_i].attribute);
  ck_assert_msg (line == places[_i].line, "line %d, not %d: %s", line, places[_i].line,
                 places[_i].why);
}
END_TEST

START_TEST (lines_stay_when_nodes_go)
{
  g_autoptr (dw_xml_source) source = parse_good (placed);
  xmlNode *root = xmlDocGetRootElement (dw_xml_source_get_doc (source));
  xmlNode *gone = find (root, "f");
  xmlUnlinkNode (gone);
  xmlFreeNode (gone);
  ck_assert_int_eq (dw_xml_source_get_line (source, find (root, "l")), 12);
}
END_TEST

START_TEST (lines_beyond_the_reach_of_libxml2_are_known)
{
  GString *text = g_string_new ("<a>");
  for (int i = 0; i < 70000; i++)
    g_string_append_c (text, '\n');
  g_string_append (text, "<b\nc='1'/></a>");
  g_autoptr (dw_xml_source) source = parse_good (text->str);
  xmlNode *node = find (xmlDocGetRootElement (dw_xml_source_get_doc (source)), "b");
  ck_assert_int_eq (dw_xml_source_get_line (source, node), 70001);
  ck_assert_int_eq (dw_xml_source_get_attribute_line (source, node, "c"), 70002);
  g_string_free (text, TRUE);
}
END_TEST

START_TEST (a_text_that_is_too_large_is_refused_unread)
{
  g_autofree char *text = g_malloc (DW_XML_MAX_SIZE + 1);
  memset (text, ' ', DW_XML_MAX_SIZE + 1);
  parse_bad (text, DW_XML_MAX_SIZE + 1, 0, "too large for a project, allowed 16 MiB");
  parse_bad (NULL, 0, 1, "the file is empty");
}
END_TEST

START_TEST (a_tag_with_a_million_attributes_takes_no_time)
{
  GString *text = g_string_new ("<a>\n<b");
  for (int i = 0; i < 1000000; i++)
    g_string_append_printf (text, " a%d=''", i);
  g_string_append (text, "/></a>");
  const gint64 start = g_get_monotonic_time ();
  parse_bad (text->str, text->len, 2, "more than 200 attributes");
  ck_assert_int_lt (g_get_monotonic_time () - start, 5 * G_USEC_PER_SEC);
  g_string_free (text, TRUE);
}
END_TEST

/* One that the scan for crowded tags could miss: libxml2 reads on after an error. */
START_TEST (crowded_tags_do_not_hide_behind_a_comment)
{
  GString *text = g_string_new ("<a b='<!--'>\n<b");
  for (int i = 0; i < 1000000; i++)
    g_string_append_printf (text, " a%d=''", i);
  g_string_append (text, "/>--></a>");
  parse_bad (text->str, text->len, 2, "more than 200 attributes");
  g_string_free (text, TRUE);
}
END_TEST

/* Nor behind an angle that a value holds. */
START_TEST (crowded_tags_do_not_hide_behind_a_value)
{
  GString *text = g_string_new ("<a>\n<b");
  for (int i = 0; i <= DW_XML_MAX_ATTRIBUTES; i++)
    g_string_append_printf (text, i % 2 == 0 ? " a%d='>\"'" : " a%d=\">'\"", i);
  g_string_append (text, "/></a>");
  parse_bad (text->str, text->len, 2, "more than 200 attributes");
  g_string_free (text, TRUE);
}
END_TEST

/* As people underline a heading in their notes. */
START_TEST (equals_signs_in_a_text_or_a_value_are_no_attributes)
{
  g_autofree char *line = g_strnfill (10 * DW_XML_MAX_ATTRIBUTES, '=');
  g_autofree char *text = g_strdup_printf ("<a b='%s' c=\"%s\">%s<![CDATA[%s]]></a>", line, line,
                                           line, line);
  g_autoptr (dw_xml_source) source = parse_good (text);
  ck_assert_ptr_nonnull (source);
}
END_TEST

START_TEST (depth_has_a_limit)
{
  GString *text = g_string_new (NULL);
  for (int i = 0; i < DW_XML_MAX_DEPTH; i++)
    g_string_append (text, "<a>\n");
  for (int i = 0; i < DW_XML_MAX_DEPTH; i++)
    g_string_append (text, "</a>");
  g_autoptr (dw_xml_source) source = parse_good (text->str);
  ck_assert_ptr_nonnull (source);
  g_string_prepend (text, "<a>\n");
  g_string_append (text, "</a>");
  parse_bad (text->str, text->len, DW_XML_MAX_DEPTH + 1, "nested too deeply, allowed 32");
  g_string_free (text, TRUE);
}
END_TEST

START_TEST (ten_megabytes_of_open_tags_take_no_time)
{
  GString *text = g_string_new (NULL);
  while (text->len < 10 * 1000 * 1000)
    g_string_append (text, "<a>");
  const gint64 start = g_get_monotonic_time ();
  parse_bad (text->str, text->len, 1, "nested too deeply");
  ck_assert_int_lt (g_get_monotonic_time () - start, 5 * G_USEC_PER_SEC);
  g_string_free (text, TRUE);
}
END_TEST

START_TEST (a_mark_for_utf8_in_front_is_allowed)
{
  g_autoptr (dw_xml_source) source = parse_good ("\xEF\xBB\xBF<a/>");
  ck_assert_ptr_nonnull (xmlDocGetRootElement (dw_xml_source_get_doc (source)));
  dw_xml_source_free (NULL);
}
END_TEST

START_TEST (another_encoding_is_refused)
{
  static const char utf16[] = "\xFF\xFE<\0a\0/\0>";
  parse_bad (utf16, sizeof utf16, 1, "byte 0xFF is not text in UTF-8");
  const char *latin = "<?xml version='1.0' encoding='ISO-8859-1'?><a/>";
  parse_bad (latin, strlen (latin), 1, "encoding \"ISO-8859-1\" is not accepted, allowed UTF-8");
  const char *unknown = "<?xml version='1.0' encoding='klingon'?><a/>";
  parse_bad (unknown, strlen (unknown), 1, "not well-formed XML");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("project/dw-xml-source");
  TCase *tc = tcase_create ("source");
  tcase_set_timeout (tc, 60);
  tcase_add_checked_fixture (tc, enter, leave);
  tcase_add_loop_test (tc, elements_and_attributes_are_where_they_stand, 0, N_ENTRIES (places));
  tcase_add_test (tc, lines_stay_when_nodes_go);
  tcase_add_test (tc, lines_beyond_the_reach_of_libxml2_are_known);
  tcase_add_test (tc, a_text_that_is_too_large_is_refused_unread);
  tcase_add_test (tc, a_tag_with_a_million_attributes_takes_no_time);
  tcase_add_test (tc, crowded_tags_do_not_hide_behind_a_comment);
  tcase_add_test (tc, crowded_tags_do_not_hide_behind_a_value);
  tcase_add_test (tc, equals_signs_in_a_text_or_a_value_are_no_attributes);
  tcase_add_test (tc, depth_has_a_limit);
  tcase_add_test (tc, ten_megabytes_of_open_tags_take_no_time);
  tcase_add_test (tc, a_mark_for_utf8_in_front_is_allowed);
  tcase_add_test (tc, another_encoding_is_refused);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
