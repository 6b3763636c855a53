/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <libxml/parser.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "sheet-samples.h"
#include "sheet/dw-export.h"

static void
paint_page (cairo_t *cr, G_GNUC_UNUSED int number, void *data)
{
  dw_chart_page_paint (data, cr);
}

/* A drawing of the sample page; the page is the caller's to free. */
static dw_drawing
sample_drawing (dw_chart_page **page, const dw_project *project)
{
  dw_chart_page_options options = sample_options (project);
  options.width = 600.0;
  options.height = 400.0;
  *page = dw_chart_page_new (&options, NULL);
  return (dw_drawing){ .width = 600.0,
                       .height = 400.0,
                       .dpi = 72.0,
                       .n_pages = 1,
                       .title = "Heat 3 <& 4>",
                       .description = "Front & rear",
                       .paint = paint_page,
                       .data = *page };
}

static GBytes *
render (dw_export_kind kind)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autoptr (dw_chart_page) page = NULL;
  g_autoptr (GError) error = NULL;
  const dw_drawing drawing = sample_drawing (&page, project);
  GBytes *bytes = dw_export_render (&drawing, kind, &error);
  ck_assert_msg (bytes != NULL, "%s", error != NULL ? error->message : "no error");
  return bytes;
}

/* Bytes, NUL among them. */
static bool
holds (const char *data, gsize length, const char *piece)
{
  const gsize n = strlen (piece);
  for (gsize i = 0; i + n <= length; i++)
    if (memcmp (data + i, piece, n) == 0)
      return true;
  return false;
}

START_TEST (the_same_drawing_is_the_same_file)
{
  g_autoptr (GBytes) first = render ((dw_export_kind)_i);
  /* surfaces that were made in between must not show */
  cairo_surface_destroy (cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1));
  g_autoptr (GBytes) second = render ((dw_export_kind)_i);
  ck_assert (g_bytes_equal (first, second));
}
END_TEST

START_TEST (svg_is_xml_with_title_and_words)
{
  g_autoptr (GBytes) bytes = render (DW_EXPORT_SVG);
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  xmlDoc *doc = xmlReadMemory (data, (int)length, "x.svg", NULL, XML_PARSE_NONET);
  ck_assert_ptr_nonnull (doc);
  const xmlNode *root = xmlDocGetRootElement (doc);
  ck_assert_str_eq ((const char *)root->name, "svg");
  int found = 0;
  for (xmlNode *node = root->children; node != NULL; node = node->next)
    {
      xmlChar *text = xmlNodeGetContent (node);
      if (strcmp ((const char *)node->name, "title") == 0)
        found += strcmp ((const char *)text, "Heat 3 <& 4>") == 0;
      if (strcmp ((const char *)node->name, "desc") == 0)
        found += strcmp ((const char *)text, "Front & rear") == 0;
      xmlFree (text);
    }
  ck_assert_int_eq (found, 2);
  /* vectors all of it */
  ck_assert (!holds (data, length, "<image"));
  xmlFreeDoc (doc);
}
END_TEST

static unsigned
big_endian (const unsigned char *p)
{
  return (unsigned)p[0] << 24 | (unsigned)p[1] << 16 | (unsigned)p[2] << 8 | p[3];
}

START_TEST (png_has_as_many_pixels_as_asked)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autoptr (dw_chart_page) page = NULL;
  dw_drawing drawing = sample_drawing (&page, project);
  drawing.dpi = 108.0;
  g_autoptr (GBytes) bytes = dw_export_render (&drawing, DW_EXPORT_PNG, NULL);
  const unsigned char *data = g_bytes_get_data (bytes, NULL);
  ck_assert_mem_eq (data, "\x89PNG\r\n\x1a\n", 8);
  ck_assert_uint_eq (big_endian (data + 16), 900);
  ck_assert_uint_eq (big_endian (data + 20), 600);
}
END_TEST

START_TEST (pdf_has_title_pages_and_one_date)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autoptr (dw_chart_page) page = NULL;
  dw_drawing drawing = sample_drawing (&page, project);
  drawing.n_pages = 3;
  g_autoptr (GBytes) bytes = dw_export_render (&drawing, DW_EXPORT_PDF, NULL);
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  ck_assert_mem_eq (data, "%PDF-1.", 7);
  ck_assert (holds (data, length, "/Title (Heat 3 <& 4>)"));
  ck_assert (holds (data, length, "/CreationDate (20000101000000"));
  ck_assert (holds (data, length, "/Count 3"));
}
END_TEST

static const struct
{
  double width, height, dpi;
  dw_export_kind kind;
} sizes[] = {
  { 99.0, 400.0, 72.0, DW_EXPORT_SVG },     { 400.0, 4001.0, 72.0, DW_EXPORT_PDF },
  { 4000.0, 4000.0, 600.0, DW_EXPORT_PNG }, { (double)NAN, 400.0, 72.0, DW_EXPORT_SVG },
  { 400.0, 400.0, 0.0, DW_EXPORT_PNG },
};

START_TEST (sizes_out_of_reason_are_refused)
{
  g_autoptr (dw_project) project = sample_project ();
  g_autoptr (dw_chart_page) page = NULL;
  g_autoptr (GError) error = NULL;
  dw_drawing drawing = sample_drawing (&page, project);
  drawing.width = sizes[_i].width;
  drawing.height = sizes[_i].height;
  drawing.dpi = sizes[_i].dpi;
  ck_assert (dw_export_render (&drawing, sizes[_i].kind, &error) == NULL);
  ck_assert (g_error_matches (error, DW_EXPORT_ERROR, DW_EXPORT_ERROR_SIZE));
}
END_TEST

static const struct
{
  const char *path;
  int kind; /* -1 = none */
} paths[] = {
  { "a.svg", DW_EXPORT_SVG },
  { "dir.x/a.PNG", DW_EXPORT_PNG },
  { "a.b.pdf", DW_EXPORT_PDF },
  { "curves.csv", DW_EXPORT_CSV },
  { "a.jpg", -1 },
  { "svg", -1 },
  { "dir.svg/a", -1 },
  { "a.", -1 },
};

START_TEST (the_name_tells_the_kind)
{
  dw_export_kind kind = DW_N_EXPORTS;
  ck_assert (dw_export_kind_of (paths[_i].path, &kind) == (paths[_i].kind >= 0));
  ck_assert_int_eq ((int)kind, paths[_i].kind >= 0 ? paths[_i].kind : (int)DW_N_EXPORTS);
  if (paths[_i].kind >= 0)
    ck_assert (g_ascii_strcasecmp (dw_export_kind_name (kind), strrchr (paths[_i].path, '.') + 1)
               == 0);
}
END_TEST

START_TEST (a_save_replaces_all_and_a_failed_one_nothing)
{
  g_autofree char *folder = g_dir_make_tmp ("dw-export-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "a.svg", NULL);
  g_autofree char *below = g_build_filename (path, "b.svg", NULL);
  g_autofree char *read = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) old = g_bytes_new_static ("old", 3);
  g_autoptr (GBytes) new = g_bytes_new_static ("newer", 5);
  ck_assert (dw_export_save (path, old, NULL));
  ck_assert (dw_export_save (path, new, NULL));
  ck_assert (g_file_get_contents (path, &read, NULL, NULL));
  ck_assert_str_eq (read, "newer");
  /* a file is no folder, whoever asks */
  ck_assert (!dw_export_save (below, old, &error));
  ck_assert (error != NULL && error->domain == G_FILE_ERROR);
  g_clear_pointer (&read, g_free);
  ck_assert (g_file_get_contents (path, &read, NULL, NULL));
  ck_assert_str_eq (read, "newer");

  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  ck_assert_str_eq (g_dir_read_name (dir), "a.svg");
  ck_assert (g_dir_read_name (dir) == NULL);
  g_unlink (path);
  g_rmdir (folder);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("sheet/export");
  TCase *tcase = tcase_create ("export");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, the_same_drawing_is_the_same_file, 0, DW_EXPORT_CSV);
  tcase_add_test (tcase, svg_is_xml_with_title_and_words);
  tcase_add_test (tcase, png_has_as_many_pixels_as_asked);
  tcase_add_test (tcase, pdf_has_title_pages_and_one_date);
  tcase_add_loop_test (tcase, sizes_out_of_reason_are_refused, 0, N_ENTRIES (sizes));
  tcase_add_loop_test (tcase, the_name_tells_the_kind, 0, N_ENTRIES (paths));
  tcase_add_test (tcase, a_save_replaces_all_and_a_failed_one_nothing);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
