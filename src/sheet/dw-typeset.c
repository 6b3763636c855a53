/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-typeset.h"

#include <math.h>
#include <pango/pangocairo.h>
#include <stdbool.h>
#include <string.h>

/* [pt] A text that is too long is set smaller in these steps. */
static const double SHRINK_STEP = 0.5;

static const struct
{
  double size; /* [pt] */
  bool is_bold;
} types[DW_N_TYPES] = {
  [DW_TYPE_TITLE] = { 16.0, true }, [DW_TYPE_HEADING] = { 11.0, true },
  [DW_TYPE_STRONG] = { 8.5, true }, [DW_TYPE_BODY] = { 8.5, false },
  [DW_TYPE_SMALL] = { 8.0, false },
};

struct dw_typeset
{
  PangoContext *context;
  char *family;
};

/* As in draw/dw-text.c: outlines without hints, so that a screen shows what a printer prints. */
dw_typeset *
dw_typeset_new (const char *family)
{
  dw_typeset *typeset = g_new0 (dw_typeset, 1);
  cairo_font_options_t *options = cairo_font_options_create ();
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  typeset->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  typeset->family = g_strdup (family != NULL ? family : "Sans");
  pango_cairo_context_set_font_options (typeset->context, options);
  pango_context_set_round_glyph_positions (typeset->context, FALSE);
  cairo_font_options_destroy (options);
  return typeset;
}

void
dw_typeset_free (dw_typeset *typeset)
{
  if (typeset == NULL)
    return;
  g_object_unref (typeset->context);
  g_free (typeset->family);
  g_free (typeset);
}

double
dw_type_size (dw_type type)
{
  return types[type].size;
}

static void
set_size (const dw_typeset *typeset, PangoLayout *layout, dw_type type, double size)
{
  PangoFontDescription *font = pango_font_description_new ();
  pango_font_description_set_family (font, typeset->family);
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  if (types[type].is_bold)
    pango_font_description_set_weight (font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
}

PangoLayout *
dw_typeset_line (dw_typeset *typeset, dw_type type, const char *text)
{
  PangoLayout *layout = pango_layout_new (typeset->context);
  set_size (typeset, layout, type, types[type].size);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

/* A word that is broken because it is too long gets no hyphen: it would look like part of a name.
 * @p attributes  taken; NULL = none yet */
static void
wrap (PangoLayout *layout, PangoAttrList *attributes, double width)
{
  PangoAttrList *all = attributes != NULL ? attributes : pango_attr_list_new ();
  pango_attr_list_insert (all, pango_attr_insert_hyphens_new (FALSE));
  pango_layout_set_attributes (layout, all);
  pango_attr_list_unref (all);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width (layout, (int)(width * PANGO_SCALE));
}

/* Bytes of the longest unit. */
#define MOST_UNIT 8

/* Bytes before a blank that belong to what follows it: a digit, the sign of "6 × 1.4"; 0 = none. */
static guint
bound_before (const char *text, guint blank)
{
  static const char TIMES[] = "×";
  const guint n = sizeof TIMES - 1;
  if (blank >= 1 && g_ascii_isdigit (text[blank - 1]))
    return 1;
  return blank >= n && memcmp (text + blank - n, TIMES, n) == 0 ? n : 0;
}

/* A number stays with its unit: no line ends inside "6 × 1.4 mm" or "0.72 N/mm". */
static PangoAttrList *
keep_units (PangoLayout *layout)
{
  const char *text = pango_layout_get_text (layout);
  PangoAttrList *attributes = pango_attr_list_new ();
  for (guint i = 0; text[i] != '\0'; i++)
    {
      const guint before = text[i] == ' ' ? bound_before (text, i) : 0;
      const size_t after = strcspn (text + i + 1, " \n");
      if (before == 0 || after == 0 || after > MOST_UNIT)
        continue;
      PangoAttribute *whole = pango_attr_allow_breaks_new (FALSE);
      whole->start_index = i - before;
      whole->end_index = i + 1 + (guint)after;
      pango_attr_list_insert (attributes, whole);
    }
  return attributes;
}

PangoLayout *
dw_typeset_lines (dw_typeset *typeset, dw_type type, const char *text, double width)
{
  PangoLayout *layout = dw_typeset_line (typeset, type, text);
  pango_layout_set_single_paragraph_mode (layout, FALSE);
  wrap (layout, NULL, width);
  return layout;
}

PangoLayout *
dw_typeset_values (dw_typeset *typeset, dw_type type, const char *text, double width)
{
  PangoLayout *layout = dw_typeset_line (typeset, type, text);
  pango_layout_set_single_paragraph_mode (layout, FALSE);
  wrap (layout, keep_units (layout), width);
  return layout;
}

static bool
fits (PangoLayout *layout, double width)
{
  PangoRectangle logical;
  pango_layout_get_extents (layout, NULL, &logical);
  return logical.width <= width * PANGO_SCALE;
}

PangoLayout *
dw_typeset_fit (dw_typeset *typeset, dw_type type, const char *text, double width)
{
  PangoLayout *layout = dw_typeset_line (typeset, type, text);
  for (double size = types[type].size - SHRINK_STEP; !fits (layout, width) && size >= DW_TYPE_LEAST;
       size -= SHRINK_STEP)
    set_size (typeset, layout, type, size);
  if (!fits (layout, width))
    wrap (layout, NULL, width);
  return layout;
}

double
dw_typeset_line_height (dw_typeset *typeset, dw_type type)
{
  PangoLayout *layout = dw_typeset_line (typeset, type, "0");
  PangoRectangle logical;
  pango_layout_get_extents (layout, NULL, &logical);
  g_object_unref (layout);
  return (double)logical.height / PANGO_SCALE;
}
