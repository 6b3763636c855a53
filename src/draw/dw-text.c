/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-text.h"

#include <pango/pangocairo.h>
#include <string.h>

struct dw_text_pango
{
  const dw_chart_style *style; /* borrowed */
  PangoLayout *layout[DW_N_TEXTS];
  GHashTable *known[DW_N_TEXTS]; /* text to dw_text_extent: a layout asks for the same again */
};

/* Texts that are remembered, a role; a chart has some dozens. */
#define MOST_KNOWN 500

static void
prepare (PangoLayout *layout, const dw_chart_style *style, dw_text_role role)
{
  const dw_font *font = &style->font[role];
  PangoContext *context = pango_layout_get_context (layout);
  cairo_font_options_t *options = cairo_font_options_create ();
  PangoFontDescription *description = pango_font_description_new ();

  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_layout_context_changed (layout);

  pango_font_description_set_family (description, style->font_family);
  pango_font_description_set_absolute_size (description, font->size * PANGO_SCALE);
  if (font->is_bold)
    pango_font_description_set_weight (description, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description (layout, description);
  pango_layout_set_single_paragraph_mode (layout, TRUE);

  pango_font_description_free (description);
  cairo_font_options_destroy (options);
}

dw_text_pango *
dw_text_pango_new (const dw_chart_style *style)
{
  dw_text_pango *pango = g_new0 (dw_text_pango, 1);
  pango->style = style;
  for (int i = 0; i < DW_N_TEXTS; i++)
    {
      PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
      pango->layout[i] = pango_layout_new (context);
      pango->known[i] = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
      prepare (pango->layout[i], style, (dw_text_role)i);
      g_object_unref (context);
    }
  return pango;
}

void
dw_text_pango_free (dw_text_pango *pango)
{
  if (pango == NULL)
    return;
  for (int i = 0; i < DW_N_TEXTS; i++)
    {
      g_object_unref (pango->layout[i]);
      g_hash_table_unref (pango->known[i]);
    }
  g_free (pango);
}

static dw_text_extent
measure_layout (PangoLayout *layout)
{
  PangoRectangle logical;
  pango_layout_get_extents (layout, NULL, &logical);
  const double ascent = (double)pango_layout_get_baseline (layout) / PANGO_SCALE;
  return (dw_text_extent){ (double)logical.width / PANGO_SCALE, ascent,
                           (double)logical.height / PANGO_SCALE - ascent };
}

static dw_text_extent
measure_with_pango (void *data, const char *text, dw_text_role role)
{
  dw_text_pango *pango = data;
  GHashTable *known = pango->known[role];
  const dw_text_extent *found = g_hash_table_lookup (known, text);
  if (found != NULL)
    return *found;
  pango_layout_set_text (pango->layout[role], text, -1);
  const dw_text_extent extent = measure_layout (pango->layout[role]);
  if (g_hash_table_size (known) >= MOST_KNOWN)
    g_hash_table_remove_all (known);
  g_hash_table_insert (known, g_strdup (text), g_memdup2 (&extent, sizeof extent));
  return extent;
}

dw_text_metrics
dw_text_pango_metrics (dw_text_pango *pango)
{
  return (dw_text_metrics){ measure_with_pango, pango };
}

dw_text_extent
dw_text_measure (const dw_text_metrics *metrics, const char *text, dw_text_role role)
{
  return metrics->measure (metrics->data, text, role);
}

double
dw_text_height (const dw_text_metrics *metrics, dw_text_role role)
{
  const dw_text_extent extent = dw_text_measure (metrics, "0", role);
  return extent.ascent + extent.descent;
}

/* @p kept characters of the text, the larger half at the start. */
static char *
shorten (const char *text, glong length, glong kept)
{
  const glong behind = kept / 2;
  const char *head_end = g_utf8_offset_to_pointer (text, kept - behind);
  const char *tail = g_utf8_offset_to_pointer (text, length - behind);
  g_autofree char *head = g_strndup (text, (gsize)(head_end - text));
  return g_strconcat (head, "\u2026", tail, NULL);
}

char *
dw_text_ellipsize (const dw_text_metrics *metrics, const char *text, dw_text_role role,
                   double width)
{
  if (dw_text_measure (metrics, text, role).width <= width)
    return g_strdup (text);

  const glong length = g_utf8_strlen (text, -1);
  glong low = 0; /* so many fit, or 0 */
  glong high = length;
  while (high - low > 1)
    {
      const glong middle = (low + high) / 2;
      g_autofree char *tried = shorten (text, length, middle);
      if (dw_text_measure (metrics, tried, role).width <= width)
        low = middle;
      else
        high = middle;
    }
  return low > 0 ? shorten (text, length, low) : g_strdup ("");
}

char **
dw_text_wrap (const dw_text_metrics *metrics, const char *text, dw_text_role role, double width)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  GPtrArray *lines = g_ptr_array_new ();
  char *line = NULL;
  for (char **word = words; *word != NULL; word++)
    {
      char *longer = line != NULL ? g_strconcat (line, " ", *word, NULL) : g_strdup (*word);
      if (line == NULL || dw_text_measure (metrics, longer, role).width <= width)
        {
          g_free (line);
          line = longer;
          continue;
        }
      g_free (longer);
      g_ptr_array_add (lines, line);
      line = g_strdup (*word);
    }
  if (line != NULL)
    g_ptr_array_add (lines, line);
  g_ptr_array_add (lines, NULL);
  return (char **)g_ptr_array_free (lines, FALSE);
}

static PangoLayout *
layout_at (cairo_t *cr, const dw_chart_style *style, dw_text_role role, const char *text,
           dw_spot at, double angle)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  prepare (layout, style, role);
  pango_layout_set_text (layout, text, -1);
  cairo_translate (cr, at.x, at.y);
  cairo_rotate (cr, angle);
  cairo_move_to (cr, 0.0, -(double)pango_layout_get_baseline (layout) / PANGO_SCALE);
  return layout;
}

void
dw_text_paint (cairo_t *cr, const dw_chart_style *style, dw_text_role role, const char *text,
               dw_spot at, double angle)
{
  cairo_save (cr);
  PangoLayout *layout = layout_at (cr, style, role, text, at, angle);
  pango_cairo_show_layout (cr, layout);
  g_object_unref (layout);
  cairo_restore (cr);
}

void
dw_text_paint_rimmed (cairo_t *cr, const dw_chart_style *style, dw_text_role role, const char *text,
                      dw_spot at, dw_color ink, dw_color rim)
{
  cairo_save (cr);
  PangoLayout *layout = layout_at (cr, style, role, text, at, 0.0);
  pango_cairo_layout_path (cr, layout);
  cairo_set_source_rgba (cr, rim.red, rim.green, rim.blue, rim.alpha);
  cairo_set_line_width (cr, 0.34 * style->font[role].size);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  /* nobody sees the steps of a rim; with its joins at every bend of a letter it is dear to draw */
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  cairo_stroke (cr);
  g_object_unref (layout);
  cairo_restore (cr);

  cairo_save (cr);
  cairo_set_source_rgba (cr, ink.red, ink.green, ink.blue, ink.alpha);
  dw_text_paint (cr, style, role, text, at, 0.0);
  cairo_restore (cr);
}
