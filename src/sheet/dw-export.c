/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-export.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <math.h>
#include <string.h>

/* One date for all files that say none, so that the same drawing is the same file. */
static const char DATE[] = "2000-01-01";

static const char CREATOR[] = "Dampwright " DW_VERSION;

/* [1] Points in an inch. */
static const double POINTS_PER_INCH = 72.0;

static const char *const names[DW_N_EXPORTS] = {
  [DW_EXPORT_SVG] = "svg",
  [DW_EXPORT_PNG] = "png",
  [DW_EXPORT_PDF] = "pdf",
  [DW_EXPORT_CSV] = "csv",
};

G_DEFINE_QUARK (dw - export - error - quark, dw_export_error)

const char *
dw_export_kind_name (dw_export_kind kind)
{
  return names[kind];
}

bool
dw_export_kind_of (const char *path, dw_export_kind *kind)
{
  const char *point = strrchr (path, '.');
  if (point == NULL || strchr (point, G_DIR_SEPARATOR) != NULL)
    return false;
  for (int i = 0; i < DW_N_EXPORTS; i++)
    if (g_ascii_strcasecmp (point + 1, names[i]) == 0)
      {
        *kind = (dw_export_kind)i;
        return true;
      }
  return false;
}

static cairo_status_t
append (void *closure, const unsigned char *data, unsigned length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static gboolean
check (cairo_status_t status, GError **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, DW_EXPORT_ERROR, DW_EXPORT_ERROR_DRAWING, "can not draw: %s",
               cairo_status_to_string (status));
  return FALSE;
}

/* ---- kinds ---- */

/* Paints all pages and closes the surface. */
static gboolean
paint_pages (const dw_drawing *drawing, cairo_surface_t *surface, double scale_x, double scale_y,
             GError **error)
{
  cairo_t *cr = cairo_create (surface);
  for (int page = 0; page < drawing->n_pages; page++)
    {
      cairo_save (cr);
      cairo_scale (cr, scale_x, scale_y);
      drawing->paint (cr, drawing->first_page + page, drawing->data);
      cairo_restore (cr);
      cairo_show_page (cr);
    }
  const cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  return check (status, error);
}

static gboolean
render_pdf (const dw_drawing *drawing, GByteArray *out, GError **error)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, out, drawing->width,
                                                                  drawing->height);
  g_autofree char *date = g_strconcat (drawing->date != NULL ? drawing->date : DATE, "T00:00:00Z",
                                       NULL);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, CREATOR);
  if (drawing->title != NULL)
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, drawing->title);
  if (drawing->description != NULL)
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, drawing->description);
  gboolean good = paint_pages (drawing, surface, 1.0, 1.0, error);
  cairo_surface_finish (surface);
  good = good && check (cairo_surface_status (surface), error);
  cairo_surface_destroy (surface);
  return good;
}

/* cairo numbers the surfaces of the process and writes the number into the file. */
static void
drop_surface_number (GString *text)
{
  static const char start[] = "id=\"surface";
  char *at = strstr (text->str, start);
  if (at == NULL)
    return;
  at += strlen (start);
  const size_t digits = strspn (at, "0123456789");
  g_string_erase (text, at - text->str, (gssize)digits);
}

/* What a screen reader and a file manager show of the picture. */
static void
insert_words (const dw_drawing *drawing, GString *text)
{
  const char *svg = strstr (text->str, "<svg");
  const char *end = svg != NULL ? strchr (svg, '>') : NULL;
  if (end == NULL)
    return;
  g_autoptr (GString) words = g_string_new (NULL);
  const char *const pairs[][2] = { { "title", drawing->title }, { "desc", drawing->description } };
  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    if (pairs[i][1] != NULL)
      {
        g_autofree char *escaped = g_markup_escape_text (pairs[i][1], -1);
        g_string_append_printf (words, "\n<%s>%s</%s>", pairs[i][0], escaped, pairs[i][0]);
      }
  g_string_insert (text, end + 1 - text->str, words->str);
}

static gboolean
render_svg (const dw_drawing *drawing, GByteArray *out, GError **error)
{
  g_autoptr (GByteArray) raw = g_byte_array_new ();
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (append, raw, drawing->width,
                                                                  drawing->height);
  gboolean good = paint_pages (drawing, surface, 1.0, 1.0, error);
  cairo_surface_finish (surface);
  good = good && check (cairo_surface_status (surface), error);
  cairo_surface_destroy (surface);

  g_autoptr (GString) text = g_string_new_len ((const char *)raw->data, (gssize)raw->len);
  drop_surface_number (text);
  insert_words (drawing, text);
  g_byte_array_append (out, (const guint8 *)text->str, (guint)text->len);
  return good;
}

static gboolean
render_png (const dw_drawing *drawing, GByteArray *out, GError **error)
{
  const double scale = drawing->dpi / POINTS_PER_INCH;
  const double width = rint (drawing->width * scale);
  const double height = rint (drawing->height * scale);
  if (!(width >= 1.0 && height >= 1.0 && width <= DW_EXPORT_MOST_PIXELS
        && height <= DW_EXPORT_MOST_PIXELS))
    {
      g_set_error (error, DW_EXPORT_ERROR, DW_EXPORT_ERROR_SIZE,
                   "a picture of %.0f by %.0f pixels can not be made, at most %.0f either way",
                   width, height, DW_EXPORT_MOST_PIXELS);
      return FALSE;
    }
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)width,
                                                         (int)height);
  /* whole pixels: the page is stretched by less than one, so that no border is left unpainted */
  gboolean good = paint_pages (drawing, surface, width / drawing->width, height / drawing->height,
                               error);
  good = good && check (cairo_surface_write_to_png_stream (surface, append, out), error);
  cairo_surface_destroy (surface);
  return good;
}

/* False for NaN as well. */
static bool
is_drawable (double points)
{
  return points >= DW_EXPORT_LEAST_POINTS && points <= DW_EXPORT_MOST_POINTS;
}

GBytes *
dw_export_render (const dw_drawing *drawing, dw_export_kind kind, GError **error)
{
  g_autoptr (GByteArray) out = g_byte_array_new ();
  gboolean good = FALSE;

  g_return_val_if_fail (kind != DW_EXPORT_CSV && drawing->n_pages > 0, NULL);

  if (!is_drawable (drawing->width) || !is_drawable (drawing->height))
    {
      g_set_error (error, DW_EXPORT_ERROR, DW_EXPORT_ERROR_SIZE,
                   "a page of %g by %g points can not be drawn, %g to %g either way",
                   drawing->width, drawing->height, DW_EXPORT_LEAST_POINTS, DW_EXPORT_MOST_POINTS);
      return NULL;
    }
  if (kind == DW_EXPORT_SVG)
    good = render_svg (drawing, out, error);
  else if (kind == DW_EXPORT_PNG)
    good = render_png (drawing, out, error);
  else
    good = render_pdf (drawing, out, error);
  return good ? g_byte_array_free_to_bytes (g_steal_pointer (&out)) : NULL;
}

gboolean
dw_export_save (const char *path, GBytes *bytes, GError **error)
{
  gsize length = 0;
  const char *data = g_bytes_get_data (bytes, &length);
  return g_file_set_contents_full (path, data, (gssize)length,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                   0666, error);
}
