/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-layout.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-drill-map-notes.h"
#include "draw/dw-phrase.h"
#include "model/dw-drill.h"

/* Distances, in ems of the tick letters. */
static const double PADDING = 0.6;
static const double ROW_GAP = 0.35;
static const double LABEL_GAP = 0.55;
static const double LEAST_MAJOR_X = 2.9;
static const double LEAST_MAJOR_Y = 2.6;
static const double LEAST_MINOR = 0.5;
static const double BESIDE_GAP = 1.2;

/* The legend stands beside the plot of an area at least so wide [em], and so wide [1 of its height]
 * and takes above the plot at most this part of the height. */
static const double WIDE_LEAST = 38.0;
static const double WIDE = 0.95;
static const double LEGEND_PART = 0.3;

/* The shorter side of the area has so much for each line [em], and lines at least. */
static const double LEVEL_DISTANCE = 3.7;
static const double LEAST_LEVELS = 4.0;

/* Largest dots, and the mark of now, in radii of a marker. */
static const double DOT = 0.95;
static const double MARK = 1.6;

/* A strip's values reach so far over those that drills may make. [1] */
static const double STRIP_MARGIN = 0.12;

typedef struct
{
  const dw_drill_map *map;
  const dw_chart_style *style;
  const dw_text_metrics *metrics;
  double em;    /* [pt] of the tick letters */
  double top;   /* [pt] of what is still free */
  double right; /* [pt] */
} builder;

static double
row (const builder *b, dw_text_role role)
{
  return dw_text_height (b->metrics, role) + ROW_GAP * b->em;
}

static char *
axis_caption (const builder *b, int set)
{
  const dw_word words[]
      = { { "what", b->map->labels.axis[set] }, { "unit", b->map->length_unit }, { NULL, NULL } };
  return dw_phrase_fill (b->map->labels.caption, words);
}

/* ---- scales ---- */

/* What drills may make, and a part of what is gone, where the curve may leave the plot. */
static void
strip_range (const dw_drill_map *map, double *low, double *high)
{
  dw_drill_lines_range (map, map->shade, low, high);
  if (!isfinite (*low))
    *low = *high = 0.0;
  const double least = 1e-3 * fmax (1.0, fabs (*high));
  const double margin = fmax (least, STRIP_MARGIN * (*high - *low));
  *low -= margin;
  *high += margin;
}

static void
make_scales (const builder *b, dw_drill_map_layout *layout)
{
  const dw_drill_field *field = b->map->shade;
  const dw_rect *plot = &layout->plot;
  double low = field->y_low;
  double high = field->y_high;
  if (layout->is_strip)
    strip_range (b->map, &low, &high);
  layout->x = (dw_scale){ false, field->x_low, field->x_high, plot->x, plot->x + plot->width };
  layout->y = (dw_scale){ false, low, high, plot->y + plot->height, plot->y };
}

static dw_ticks_options
tick_options (const builder *b, const dw_drill_map_layout *layout, bool is_vertical)
{
  const bool is_size = !is_vertical || !layout->is_strip;
  return (dw_ticks_options){
    .numbers = &b->map->numbers,
    .metrics = b->metrics,
    .factor = is_size ? b->map->length_factor : dw_drill_measure_factor (b->map->shade_measure),
    .is_vertical = is_vertical,
    .least_major = (is_vertical ? LEAST_MAJOR_Y : LEAST_MAJOR_X) * b->em,
    .least_minor = LEAST_MINOR * b->em,
  };
}

static void
make_ticks (const builder *b, dw_drill_map_layout *layout)
{
  const dw_ticks_options across = tick_options (b, layout, false);
  const dw_ticks_options up = tick_options (b, layout, true);
  make_scales (b, layout);
  dw_ticks_make (&layout->x, &across, &layout->x_ticks);
  dw_ticks_make (&layout->y, &up, &layout->y_ticks);
  if (layout->is_strip)
    dw_ticks_add_signs (&layout->y_ticks, &up);
}

/* ---- places ---- */

static double
widest_label (const dw_ticks *ticks)
{
  double widest = 0.0;
  for (int i = 0; i < ticks->n; i++)
    widest = fmax (widest, ticks->ticks[i].label_width);
  return widest;
}

static double
overhang (const dw_drill_map_layout *layout)
{
  double most = 0.0;
  for (int i = 0; i < layout->x_ticks.n; i++)
    {
      const dw_rect box = dw_drill_map_layout_x_label_box (layout, i);
      most = fmax (most, box.x + box.width - layout->plot.x - layout->plot.width);
    }
  return most;
}

/* What stands under the plot. */
static double
foot_room (const builder *b)
{
  return (LABEL_GAP + PADDING) * b->em + dw_text_height (b->metrics, DW_TEXT_TICK)
         + row (b, DW_TEXT_CAPTION);
}

/* The labels decide how much is left for the plot, and the plot how many labels there are. */
static void
place_plot (const builder *b, dw_drill_map_layout *layout)
{
  const dw_rect *area = &layout->area;
  const double left = area->x + PADDING * b->em;
  const double bottom = area->y + area->height - foot_room (b);
  dw_rect *plot = &layout->plot;

  layout->tick_height = dw_text_height (b->metrics, DW_TEXT_TICK);
  layout->tick_ascent = dw_text_measure (b->metrics, "0", DW_TEXT_TICK).ascent;
  *plot = (dw_rect){ left + 3.0 * b->em, b->top, fmax (1.0, b->right - left - 4.5 * b->em),
                     fmax (1.0, bottom - b->top) };
  make_ticks (b, layout);
  for (int round = 0; round < 3; round++)
    {
      const double x = left + fmax (widest_label (&layout->y_ticks) + LABEL_GAP * b->em, b->em);
      const double margin = round == 0 ? 1.5 * b->em : fmax (overhang (layout), 0.3 * b->em);
      plot->x = x;
      plot->width = fmax (1.0, b->right - x - margin);
      make_ticks (b, layout);
    }
  layout->y_tick_right = plot->x - LABEL_GAP * b->em;
  layout->x_tick_top = plot->y + plot->height + LABEL_GAP * b->em;
}

static void
add_y_caption (builder *b, dw_drill_map_layout *layout)
{
  const double left = layout->area.x + PADDING * b->em;
  g_autofree char *text = layout->is_strip ? dw_drill_map_measure_caption (&b->map->labels,
                                                                           b->map->shade_measure)
                                           : axis_caption (b, 1);
  dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_AXIS, DW_TEXT_CAPTION, text,
                           (dw_spot){ left, b->top }, b->right - left);
  b->top += dw_text_height (b->metrics, DW_TEXT_CAPTION);
  /* the uppermost label reaches half its height over the plot */
  b->top += fmax (ROW_GAP * b->em, 0.6 * dw_text_height (b->metrics, DW_TEXT_TICK));
}

static void
add_x_caption (const builder *b, dw_drill_map_layout *layout)
{
  const double left = layout->area.x + PADDING * b->em;
  const double right = layout->plot.x + layout->plot.width;
  const dw_spot corner = { left, layout->x_tick_top + layout->tick_height + ROW_GAP * b->em };
  g_autofree char *text = axis_caption (b, dw_drill_field_across (b->map->sets));
  dw_chart_label *label = dw_chart_label_list_add (&layout->texts, b->metrics, DW_LABEL_AXIS,
                                                   DW_TEXT_CAPTION, text, corner, right - left);
  if (label == NULL)
    return;
  const double shift = right - left - label->box.width;
  label->box.x += shift;
  label->at.x += shift;
}

/* ---- legend ---- */

static dw_drill_map_legend_input
legend_input (const builder *b, const dw_drill_map_layout *layout)
{
  return (dw_drill_map_legend_input){ b->map, b->style, b->metrics, &layout->lines,
                                      layout->regions.land.n > 0 };
}

static bool
is_wide (const builder *b, const dw_rect *area)
{
  return area->width >= WIDE_LEAST * b->em && area->width >= WIDE * area->height;
}

static void
add_legend_above (builder *b, dw_drill_map_layout *layout)
{
  const dw_rect *area = &layout->area;
  const double left = area->x + PADDING * b->em;
  const dw_rect strip = { left, b->top, b->right - left, LEGEND_PART * area->height };
  const dw_drill_map_legend_input input = legend_input (b, layout);
  dw_drill_map_legend_make_above (&input, &strip, &layout->legend, &layout->texts);
  if (layout->legend.box.height > 0.0)
    b->top += layout->legend.box.height + ROW_GAP * b->em;
}

static void
add_legend_beside (const builder *b, dw_drill_map_layout *layout, double width)
{
  const dw_rect *area = &layout->area;
  const double left = area->x + area->width - PADDING * b->em - width;
  const double top = area->y + PADDING * b->em;
  const dw_rect strip = { left, top, width, area->height - 2.0 * PADDING * b->em };
  const dw_drill_map_legend_input input = legend_input (b, layout);
  dw_drill_map_legend_make_beside (&input, &strip, &layout->legend, &layout->texts);
}

/* ---- all ---- */

/* Regions and dots of the plot. */
static void
place_data (const builder *b, dw_drill_map_layout *layout)
{
  dw_drill_regions_make (b->map, &layout->plot, &layout->x, &layout->y, &layout->regions);
  dw_drill_dots_make (b->map, &layout->plot, &layout->x, &layout->y, DOT * b->style->marker_radius,
                      &layout->dots);
}

static void
add_notes (const builder *b, dw_drill_map_layout *layout)
{
  const dw_drill_map_notes notes = { .map = b->map,
                                     .style = b->style,
                                     .metrics = b->metrics,
                                     .plot = &layout->plot,
                                     .lines = &layout->lines,
                                     .dots = &layout->dots,
                                     .regions = &layout->regions,
                                     .mark_radius = MARK * b->style->marker_radius };
  dw_drill_map_notes_add (&notes, &layout->texts);
}

/* So many that they do not crowd. */
static int
contour_levels (const builder *b, const dw_rect *area)
{
  const double n = fmin (area->width, area->height) / (LEVEL_DISTANCE * b->em);
  return (int)fmin (DW_DRILL_CONTOUR_LEVELS, fmax (LEAST_LEVELS, n));
}

/* Which lines and samples there are does not depend on the plot, but the plot on the legend. */
static void
make (builder *b, dw_drill_map_layout *layout)
{
  const dw_rect *area = &layout->area;
  const bool beside = is_wide (b, area);
  const dw_drill_map_legend_input input = legend_input (b, layout);
  const double width = dw_drill_map_legend_width (&input, area->width);
  layout->plot = *area;
  make_scales (b, layout);
  place_data (b, layout);
  dw_drill_lines_make (b->map, &layout->x, &layout->y, contour_levels (b, area), &layout->lines);
  if (beside)
    b->right -= width + BESIDE_GAP * b->em;
  else
    add_legend_above (b, layout);
  add_y_caption (b, layout);
  place_plot (b, layout);
  add_x_caption (b, layout);
  place_data (b, layout);
  dw_drill_lines_move (&layout->lines, &layout->x, &layout->y);
  dw_drill_lines_clip (&layout->lines, &layout->plot);
  if (beside)
    add_legend_beside (b, layout, width);
  add_notes (b, layout);
  dw_drill_map_layout_mark (layout, b->map);
}

dw_drill_map_layout *
dw_drill_map_layout_new (const dw_drill_map *map, const dw_chart_style *style,
                         const dw_text_metrics *metrics, const dw_rect *area)
{
  dw_drill_map_layout *layout = g_new0 (dw_drill_map_layout, 1);
  const double em = style->font[DW_TEXT_TICK].size;
  builder b = { .map = map,
                .style = style,
                .metrics = metrics,
                .em = em,
                .top = area->y + PADDING * em,
                .right = area->x + area->width - PADDING * em };
  layout->area = *area;
  layout->has_data = map->shade != NULL && map->sets != NULL;
  layout->chosen = -1;
  layout->pointed = -1;
  if (!layout->has_data)
    return layout;
  layout->is_strip = map->shade->n_y < 2;
  make (&b, layout);
  return layout;
}

void
dw_drill_map_layout_free (dw_drill_map_layout *layout)
{
  if (layout == NULL)
    return;
  dw_drill_lines_clear (&layout->lines);
  dw_drill_dots_clear (&layout->dots);
  dw_drill_regions_clear (&layout->regions);
  dw_chart_label_list_clear (&layout->texts);
  g_free (layout);
}

/* ---- marks ---- */

static int
shown_dot (const dw_drill_map_layout *layout, int dot)
{
  return dot >= 0 && dot < layout->dots.n && layout->dots.places[dot].is_shown ? dot : -1;
}

/* [pt] to which a size may grow; nothing where it is that of now. */
static double
growth (const dw_scale *scale, double size, double present, double tolerance)
{
  if (!(size > present + DW_DRILL_SAME))
    return 0.0;
  const double end = fmin (scale->high, size + tolerance);
  return fabs (dw_scale_place (scale, end) - dw_scale_place (scale, size));
}

/* A dot's value on the legend's bar. */
static dw_spot
tone_of (const dw_drill_map_layout *layout, const dw_drill_map *map, int dot)
{
  const double value = dot < 0 ? (double)NAN
                               : dw_drill_field_at (map->shade, map->dots[dot].x, map->dots[dot].y);
  return dw_drill_map_legend_value_at (&layout->legend, &layout->lines, value);
}

void
dw_drill_map_layout_mark (dw_drill_map_layout *layout, const dw_drill_map *map)
{
  layout->chosen = shown_dot (layout, map->chosen);
  layout->pointed = shown_dot (layout, map->pointed);
  layout->chosen_tone = tone_of (layout, map, layout->chosen);
  layout->pointed_tone = tone_of (layout, map, layout->pointed);
  if (layout->chosen < 0)
    return;
  const dw_drill_dot *dot = &map->dots[layout->chosen];
  const dw_spot at = layout->dots.places[layout->chosen].at;
  const double x = growth (&layout->x, dot->x,
                           map->sets->present[dw_drill_field_across (map->sets)], map->tolerance);
  if (layout->is_strip)
    {
      layout->tolerance = (dw_rect){ at.x, layout->plot.y, x, layout->plot.height };
      return;
    }
  const double y = growth (&layout->y, dot->y, map->sets->present[1], map->tolerance);
  layout->tolerance = (dw_rect){ at.x, at.y - y, x, y };
}

/* ---- questions ---- */

dw_rect
dw_drill_map_layout_x_label_box (const dw_drill_map_layout *layout, int tick)
{
  const dw_tick *t = &layout->x_ticks.ticks[tick];
  return (dw_rect){ t->place - 0.5 * t->label_width, layout->x_tick_top, t->label_width,
                    layout->tick_height };
}

dw_rect
dw_drill_map_layout_y_label_box (const dw_drill_map_layout *layout, int tick)
{
  const dw_tick *t = &layout->y_ticks.ticks[tick];
  return (dw_rect){ layout->y_tick_right - t->label_width, t->place - 0.5 * layout->tick_height,
                    t->label_width, layout->tick_height };
}

int
dw_drill_map_layout_hit (const dw_drill_map_layout *layout, double x, double y, double radius)
{
  return dw_drill_dots_hit (&layout->dots, x, y, radius);
}

int
dw_drill_map_layout_step (const dw_drill_map_layout *layout, int dot, int dx, int dy)
{
  const int start = shown_dot (layout, dot);
  const dw_spot from = start >= 0 ? layout->dots.places[start].at : layout->regions.now;
  return dw_drill_dots_next (&layout->dots, from, dx, layout->is_strip ? 0 : dy);
}

void
dw_drill_map_layout_sizes (const dw_drill_map_layout *layout, double x, double y, double *size_x,
                           double *size_y)
{
  const bool is_inside = layout->has_data && dw_rect_holds (&layout->plot, x, y);
  if (size_x != NULL)
    *size_x = is_inside ? dw_scale_value (&layout->x, x) : (double)NAN;
  if (size_y != NULL)
    *size_y = is_inside && !layout->is_strip ? dw_scale_value (&layout->y, y) : (double)NAN;
}
