/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-piston-layout.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-page-scale.h"
#include "draw/dw-pen.h"
#include "draw/dw-phrase.h"
#include "model/dw-units.h"

static const double TURN = 6.283185307179586; /* [rad] */

/* [1] Largest scale of a drawing. */
static const double LARGEST_SCALE = 20.0;

/* [pt] The gap round the piston, which to scale would be a hair. */
static const double LEAST_GAP = 1.4;

/* In ems of the notes' letters. */
static const double PADDING = 0.7;

/* Distance of the pattern in holes, finer than in the strip. [1 of an em] */
static const double PATTERN_SIZE = 0.45;

dw_piston_labels
dw_piston_labels_defaults (void)
{
  return (dw_piston_labels){ "{scale} : 1", "{count} × {diameter} {unit} open",
                             "{count} × {diameter} {unit} covered" };
}

static void
add_text (dw_piston_layout *layout, const dw_text_metrics *metrics, dw_label_kind kind,
          const char *text, double y, double pad)
{
  dw_chart_label_list_add (&layout->texts, metrics, kind, DW_TEXT_NOTE, text,
                           (dw_spot){ layout->area.x + pad, y }, layout->area.width - 2.0 * pad);
}

static void
add_scale (dw_piston_layout *layout, const dw_piston_labels *labels,
           const dw_number_format *numbers, const dw_text_metrics *metrics, double pad)
{
  char number[DW_NUMBER_ROOM];
  if (labels->scale == NULL)
    return;
  dw_number_digits (numbers, layout->scale, 3, number, sizeof number);
  const dw_word words[] = { { "scale", number }, { NULL, NULL } };
  g_autofree char *text = dw_phrase_fill (labels->scale, words);
  add_text (layout, metrics, DW_LABEL_TITLE, text, layout->area.y + pad, pad);
}

/* NULL = not wanted. */
static const char *
format_of (const dw_piston_labels *labels, const dw_holes *holes)
{
  return holes->covered ? labels->covered : labels->open;
}

static int
count_lines (const dw_piston *piston, const dw_piston_labels *labels)
{
  int n = 0;
  for (int i = 0; i < piston->n_holes; i++)
    n += format_of (labels, &piston->holes[i]) != NULL ? 1 : 0;
  return n;
}

/* What the words are made with. */
typedef struct
{
  const dw_piston_labels *labels;
  const dw_number_format *numbers;
  const dw_unit *length;
  const dw_text_metrics *metrics;
  double pad; /* [pt] */
} wording;

static char *
group_text (const wording *w, const dw_holes *holes)
{
  char count[DW_NUMBER_ROOM];
  char diameter[DW_NUMBER_ROOM];
  dw_number_fixed (w->numbers, holes->count, 0, count, sizeof count);
  dw_number_digits (w->numbers, holes->diameter / w->length->factor, 4, diameter, sizeof diameter);
  const dw_word words[] = {
    { "count", count }, { "diameter", diameter }, { "unit", w->length->symbol }, { NULL, NULL }
  };
  return dw_phrase_fill (format_of (w->labels, holes), words);
}

/* One line a group of holes, as far as they are wanted. */
static void
add_groups (dw_piston_layout *layout, const dw_piston *piston, const wording *w)
{
  const double line = dw_text_height (w->metrics, DW_TEXT_NOTE);
  double y = layout->area.y + layout->area.height - w->pad - line * count_lines (piston, w->labels);
  for (int i = 0; i < piston->n_holes; i++)
    {
      if (format_of (w->labels, &piston->holes[i]) == NULL)
        continue;
      g_autofree char *text = group_text (w, &piston->holes[i]);
      add_text (layout, w->metrics, DW_LABEL_SHARE, text, y, w->pad);
      y += line;
    }
}

static void
place_circles (dw_piston_layout *layout)
{
  const dw_piston_face *face = &layout->face;
  const double points = layout->scale / DW_PAGE_POINT;
  layout->bore_radius = face->bore_radius * points;
  layout->piston_radius = fmax (
      0.0, fmin (face->piston_radius * points, layout->bore_radius - LEAST_GAP));
  layout->shaft_radius = face->shaft_radius * points;
  layout->hub_radius = face->hub_radius * points;
  layout->shim_radius = face->shim_radius * points;
  for (int i = 0; i < face->n_holes; i++)
    layout->spots[i] = (dw_piston_spot){ { layout->centre.x + face->holes[i].x * points,
                                           layout->centre.y - face->holes[i].y * points },
                                         0.5 * face->holes[i].diameter * points,
                                         false };
  for (int i = 0; i < face->n_ligaments; i++)
    {
      layout->spots[face->ligaments[i].hole].is_warned = true;
      if (face->ligaments[i].other >= 0)
        layout->spots[face->ligaments[i].other].is_warned = true;
    }
}

dw_piston_layout *
dw_piston_layout_new_in (const dw_damper *damper, const dw_piston_labels *labels,
                         const dw_unit *length, const dw_number_format *numbers,
                         const dw_chart_style *style, const dw_text_metrics *metrics,
                         const dw_rect *area)
{
  dw_piston_layout *layout = g_new0 (dw_piston_layout, 1);
  const double pad = PADDING * style->font[DW_TEXT_NOTE].size;
  const double line = dw_text_height (metrics, DW_TEXT_NOTE);
  const int n_lines = count_lines (&damper->piston, labels);
  const wording w = { labels, numbers, length, metrics, pad };
  layout->area = *area;
  dw_piston_face_make (damper, &layout->face);

  /* where nothing is written, the drawing keeps clear of the edge by itself */
  const double top = area->y + pad + (labels->scale != NULL ? line : 0.0);
  const double bottom = area->y + area->height - pad - (n_lines > 0 ? pad + line * n_lines : 0.0);
  const double room = fmax (1.0, fmin (area->width - 2.0 * pad, bottom - top));
  layout->scale = dw_page_scale_round (room * DW_PAGE_POINT / damper->body.bore, LARGEST_SCALE);
  layout->centre = (dw_spot){ area->x + 0.5 * area->width, 0.5 * (top + bottom) };
  place_circles (layout);
  add_scale (layout, labels, numbers, metrics, pad);
  add_groups (layout, &damper->piston, &w);
  return layout;
}

dw_piston_layout *
dw_piston_layout_new (const dw_damper *damper, const dw_piston_labels *labels,
                      const dw_number_format *numbers, const dw_chart_style *style,
                      const dw_text_metrics *metrics, const dw_rect *area)
{
  const dw_unit length = dw_chart_units_metric ().length;
  return dw_piston_layout_new_in (damper, labels, &length, numbers, style, metrics, area);
}

void
dw_piston_layout_free (dw_piston_layout *layout)
{
  if (layout == NULL)
    return;
  dw_chart_label_list_clear (&layout->texts);
  g_free (layout);
}

int
dw_piston_layout_hit (const dw_piston_layout *layout, double x, double y, double radius)
{
  int best = -1;
  double least = radius;
  for (int i = 0; i < layout->face.n_holes; i++)
    {
      const double beyond = dw_spot_distance (layout->spots[i].centre, (dw_spot){ x, y })
                            - layout->spots[i].radius;
      if (beyond <= least && (best < 0 || beyond < least))
        {
          best = i;
          least = beyond;
        }
    }
  return best;
}

/* ---- painting ---- */

static void
disc (cairo_t *cr, dw_spot centre, double radius, dw_color color)
{
  cairo_new_path (cr);
  cairo_arc (cr, centre.x, centre.y, radius, 0.0, TURN);
  dw_pen_color (cr, color);
  cairo_fill (cr);
}

static void
ring (cairo_t *cr, dw_spot centre, double radius, dw_color color, double width)
{
  cairo_new_path (cr);
  cairo_arc (cr, centre.x, centre.y, radius, 0.0, TURN);
  dw_pen_color (cr, color);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

static void
paint_hole (const dw_piston_layout *layout, const dw_chart_style *style, int i, bool is_selected,
            cairo_t *cr)
{
  const dw_piston_spot *spot = &layout->spots[i];
  const bool covered = layout->face.holes[i].covered;
  const double size = PATTERN_SIZE * style->font[DW_TEXT_NOTE].size;
  const dw_rect box = { spot->centre.x - spot->radius, spot->centre.y - spot->radius,
                        2.0 * spot->radius, 2.0 * spot->radius };
  const int share = covered ? DW_SHARE_COVERED : DW_SHARE_OPEN;
  const dw_color rim = spot->is_warned ? style->warning : style->ink;
  const double weight = is_selected || spot->is_warned ? 1.8 : 1.0;

  cairo_new_path (cr);
  cairo_arc (cr, spot->centre.x, spot->centre.y, spot->radius, 0.0, TURN);
  dw_pen_fill_pattern (cr, &box, style->share[share], dw_pen_share_pattern (share), style->ink,
                       size);
  ring (cr, spot->centre, spot->radius, rim, weight * style->frame_width);
  if (is_selected)
    ring (cr, spot->centre, spot->radius + 3.0 * style->frame_width, style->ink,
          style->frame_width);
}

static void
paint_holes (const dw_piston_layout *layout, const dw_chart_style *style, bool covered,
             int selected, cairo_t *cr)
{
  const int group = selected >= 0 && selected < layout->face.n_holes
                        ? layout->face.holes[selected].group
                        : -1;
  for (int i = 0; i < layout->face.n_holes; i++)
    if (layout->face.holes[i].covered == covered)
      paint_hole (layout, style, i, layout->face.holes[i].group == group, cr);
}

/* The shim is seen through, so that the holes under it can be. */
static void
paint_shim (const dw_piston_layout *layout, const dw_chart_style *style, cairo_t *cr)
{
  const double dash[] = { 4.0, 2.5 };
  if (!layout->face.has_shim)
    return;
  disc (cr, layout->centre, layout->shim_radius, dw_color_with_alpha (style->shim, 0.22));
  cairo_save (cr);
  cairo_set_dash (cr, dash, 2, 0.0);
  ring (cr, layout->centre, layout->shim_radius, style->shim, 2.0 * style->frame_width);
  cairo_restore (cr);
  disc (cr, layout->centre, layout->hub_radius, dw_color_mix (style->metal, style->shim, 0.4));
  ring (cr, layout->centre, layout->hub_radius, style->ink, style->frame_width);
}

void
dw_piston_paint (const dw_piston_layout *layout, const dw_chart_style *style, int selected,
                 cairo_t *cr)
{
  cairo_save (cr);
  dw_pen_fill_rect (cr, &layout->area, style->background);
  ring (cr, layout->centre, layout->bore_radius, style->ink, 2.0 * style->frame_width);
  disc (cr, layout->centre, layout->piston_radius, style->metal);
  ring (cr, layout->centre, layout->piston_radius, style->ink, style->frame_width);
  paint_holes (layout, style, true, selected, cr);
  paint_shim (layout, style, cr);
  paint_holes (layout, style, false, selected, cr);
  disc (cr, layout->centre, layout->shaft_radius, style->background);
  ring (cr, layout->centre, layout->shaft_radius, style->ink, style->frame_width);
  dw_pen_color (cr, style->ink);
  for (int i = 0; i < layout->texts.n; i++)
    dw_text_paint (cr, style, layout->texts.labels[i].role, layout->texts.labels[i].text,
                   layout->texts.labels[i].at, 0.0);
  cairo_restore (cr);
}

/* A digit stands in a hole at this height of letters [radii], and its middle is so far from where it
 * begins [of that height]. */
static const double DIGIT = 1.5;
static const double DIGIT_HALF_WIDTH = 0.32;
static const double DIGIT_HALF_HEIGHT = 0.365;

void
dw_piston_paint_sets (const dw_piston_layout *layout, const dw_chart_style *style,
                      const int *set_of, int marked, cairo_t *cr)
{
  dw_chart_style digits = *style;
  digits.font[DW_TEXT_NOTE].is_bold = true;
  cairo_save (cr);
  for (int i = 0; i < layout->face.n_holes; i++)
    {
      const dw_piston_spot *spot = &layout->spots[i];
      const double size = DIGIT * spot->radius;
      if (i == marked)
        dw_pen_open_mark (cr, spot->centre, 1.5 * spot->radius, style->reading_width, style->ink,
                          dw_color_with_alpha (style->ink, 0.0));
      if (set_of[i] < 0)
        continue;
      const char text[] = { (char)('1' + set_of[i]), '\0' };
      digits.font[DW_TEXT_NOTE].size = size;
      dw_text_paint_rimmed (cr, &digits, DW_TEXT_NOTE, text,
                            (dw_spot){ spot->centre.x - DIGIT_HALF_WIDTH * size,
                                       spot->centre.y + DIGIT_HALF_HEIGHT * size },
                            style->ink, style->plot);
    }
  cairo_restore (cr);
}
