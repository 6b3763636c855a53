/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-lines.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-contour.h"
#include "model/dw-drill.h"

/* Stands for what is below every level. */
static const double NOTHING = -1e300;
static const double KNOWN = -1e299;

/* [pt] No eye sees by how much a line is moved when spots are left out. */
static const double WITHIN = 0.1;

/* A field with a frame of nothing around it. */
#define PADDED (DW_DRILL_FIELD_MOST + 2)

void
dw_drill_lines_clear (dw_drill_lines *lines)
{
  for (int i = 0; i <= DW_DRILL_MOST_LEVELS; i++)
    dw_polyline_clear (&lines->tone[i]);
  for (int i = 0; i < lines->n_contours; i++)
    dw_polyline_clear (&lines->contour[i].line);
  for (int i = 0; i < lines->n_oils; i++)
    dw_polyline_clear (&lines->oil[i].line);
  dw_polyline_clear (&lines->equal.line);
  dw_polyline_clear (&lines->curve.line);
  *lines = (dw_drill_lines){ 0 };
}

int
dw_drill_lines_n_tones (const dw_drill_lines *lines)
{
  return lines->shade.n + 1;
}

double
dw_drill_lines_share (const dw_drill_lines *lines, int tone)
{
  return lines->shade.n > 0 ? (double)tone / lines->shade.n : 0.0;
}

/* ---- range ---- */

static double
node (double low, double high, int i, int n)
{
  return n > 1 ? low + (high - low) * i / (n - 1) : low;
}

/* Whether drills may make these sizes; half a cell below now counts as now. */
static bool
is_open (const dw_drill_map *map, const dw_drill_field *field, int i, int k)
{
  const dw_drill_sets *sets = map->sets;
  const int across = dw_drill_field_across (sets);
  const double at[] = { node (field->x_low, field->x_high, i, field->n_x),
                        node (field->y_low, field->y_high, k, field->n_y) };
  double size[DW_DRILL_SETS] = { 0.0, 0.0 };
  for (int a = 0; a < (field->n_y > 1 ? 2 : 1); a++)
    {
      const int set = a == 0 ? across : 1;
      const double cell = a == 0 ? (field->x_high - field->x_low) / (field->n_x - 1)
                                 : (field->y_high - field->y_low) / (field->n_y - 1);
      if (at[a] < sets->present[set] - 0.5 * cell)
        return false;
      size[set] = at[a] > sets->present[set] + DW_DRILL_SAME ? at[a] : 0.0;
    }
  return dw_drill_sets_have_room (sets, size);
}

static int
widen (const dw_drill_map *map, const dw_drill_field *field, bool whole, double *low, double *high)
{
  int n = 0;
  *low = HUGE_VAL;
  *high = -HUGE_VAL;
  for (int k = 0; k < field->n_y; k++)
    for (int i = 0; i < field->n_x; i++)
      {
        const double value = field->value[k * field->n_x + i];
        if (!isfinite (value) || !(whole || is_open (map, field, i, k)))
          continue;
        *low = fmin (*low, value);
        *high = fmax (*high, value);
        n++;
      }
  return n;
}

void
dw_drill_lines_range (const dw_drill_map *map, const dw_drill_field *field, double *low,
                      double *high)
{
  if (widen (map, field, false, low, high) == 0 && widen (map, field, true, low, high) == 0)
    *low = *high = (double)NAN;
}

/* ---- from nodes to the page ---- */

typedef struct
{
  const dw_drill_field *field;
  const dw_scale *x;
  const dw_scale *y;
} mapping;

/* Spots in nodes become places; @p pad nodes of a frame collapse to the border. */
static void
move_to_page (const mapping *m, int pad, dw_polyline *line)
{
  const dw_drill_field *f = m->field;
  for (size_t s = 0; s < line->n; s++)
    if (!dw_spot_is_gap (line->spots[s]))
      {
        const double i = fmin (f->n_x - 1.0, fmax (0.0, line->spots[s].x - pad));
        const double k = fmin (f->n_y - 1.0, fmax (0.0, line->spots[s].y - pad));
        const double x = f->x_low + (f->x_high - f->x_low) * i / (f->n_x - 1);
        const double y = f->y_low + (f->y_high - f->y_low) * k / (f->n_y - 1);
        line->spots[s] = (dw_spot){ dw_scale_place (m->x, x), dw_scale_place (m->y, y) };
      }
}

static void
make_line (const mapping *m, double level, dw_polyline *out)
{
  dw_contour_make (m->field->value, m->field->n_x, m->field->n_y, level, out);
  move_to_page (m, 0, out);
}

/* Closed outlines of what is not below a level: nothing all around closes them. */
static void
make_outline (const mapping *m, const double *padded, double level, dw_polyline *out)
{
  dw_contour_make (padded, m->field->n_x + 2, m->field->n_y + 2, level, out);
  move_to_page (m, 1, out);
}

static void
make_tones (const dw_drill_map *map, const mapping *m, dw_drill_lines *lines)
{
  const int n_x = m->field->n_x + 2;
  const int n_y = m->field->n_y + 2;
  double low;
  double high;
  g_autofree double *padded = g_new (double, PADDED *PADDED);
  for (int i = 0; i < n_x * n_y; i++)
    padded[i] = NOTHING;
  for (int k = 0; k < m->field->n_y; k++)
    for (int i = 0; i < m->field->n_x; i++)
      {
        const double value = m->field->value[k * m->field->n_x + i];
        if (isfinite (value))
          padded[(k + 1) * n_x + i + 1] = value;
      }
  dw_drill_lines_range (map, m->field, &low, &high);
  lines->shade = dw_drill_levels_make (map->shade_measure, low, high, DW_DRILL_SHADE_LEVELS);
  make_outline (m, padded, KNOWN, &lines->tone[0]);
  for (int i = 0; i < lines->shade.n; i++)
    make_outline (m, padded, lines->shade.value[i], &lines->tone[i + 1]);
}

/* ---- lines ---- */

static void
make_contours (const dw_drill_map *map, const mapping *m, int most, dw_drill_lines *lines)
{
  double low;
  double high;
  dw_drill_lines_range (map, m->field, &low, &high);
  const dw_drill_levels levels = dw_drill_levels_make (map->contour_measure, low, high, most);
  for (int i = 0; i < levels.n; i++)
    {
      dw_drill_line *line = &lines->contour[lines->n_contours++];
      line->value = levels.value[i];
      dw_drill_level_text (map->contour_measure, &map->numbers, line->value, levels.decimals, true,
                           line->text, sizeof line->text);
      make_line (m, line->value, &line->line);
    }
}

/* Where a measure crosses a level in a strip: upright lines over the whole height. */
static void
make_uprights (const mapping *m, double level, dw_polyline *out)
{
  const dw_drill_field *f = m->field;
  dw_polyline_clear (out);
  for (int i = 0; i + 1 < f->n_x; i++)
    {
      const double a = f->value[i];
      const double b = f->value[i + 1];
      if (!isfinite (a) || !isfinite (b) || (a >= level) == (b >= level))
        continue;
      const double at = i + (level - a) / (b - a);
      const double x = dw_scale_place (m->x, f->x_low + (f->x_high - f->x_low) * at / (f->n_x - 1));
      dw_polyline_add (out, x, m->y->start);
      dw_polyline_add (out, x, m->y->end);
      dw_polyline_add_gap (out);
    }
}

static void
make_oils (const dw_drill_map *map, const mapping *m, dw_drill_lines *lines)
{
  for (int i = 0; i < map->n_oils && lines->n_oils < DW_DRILL_MOST_OILS; i++)
    {
      dw_drill_line *line = &lines->oil[lines->n_oils];
      line->value = map->oils[i];
      if (m->field->n_y > 1)
        make_line (m, line->value, &line->line);
      else
        make_uprights (m, line->value, &line->line);
      dw_drill_level_text (DW_MEASURE_OIL, &map->numbers, line->value, -1, true, line->text,
                           sizeof line->text);
      if (line->line.n > 0)
        lines->n_oils++;
      else
        dw_polyline_clear (&line->line);
    }
}

static void
make_curve (const mapping *m, dw_polyline *out)
{
  const dw_drill_field *f = m->field;
  for (int i = 0; i < f->n_x; i++)
    dw_polyline_add (out, dw_scale_place (m->x, node (f->x_low, f->x_high, i, f->n_x)),
                     dw_scale_place (m->y, f->value[i]));
}

void
dw_drill_lines_make (const dw_drill_map *map, const dw_scale *x, const dw_scale *y, int most,
                     dw_drill_lines *lines)
{
  const mapping shade = { map->shade, x, y };
  const mapping contour = { map->contour, x, y };
  const mapping equal = { map->equal, x, y };
  const mapping oil = { map->oil, x, y };
  const bool is_strip = map->shade == NULL || map->shade->n_y < 2;
  dw_drill_lines_clear (lines);
  lines->x = *x;
  lines->y = *y;
  if (map->shade != NULL && is_strip)
    make_curve (&shade, &lines->curve.line);
  if (!is_strip)
    make_tones (map, &shade, lines);
  if (map->contour != NULL && !is_strip)
    make_contours (map, &contour, most, lines);
  if (map->equal != NULL && !is_strip)
    make_line (&equal, 0.0, &lines->equal.line);
  if (map->oil != NULL && map->oils != NULL)
    make_oils (map, &oil, lines);
}

/* ---- moving ---- */

static double
moved (const dw_scale *from, const dw_scale *to, double place)
{
  return to->start + (place - from->start) / (from->end - from->start) * (to->end - to->start);
}

static void
move_line (const dw_drill_lines *from, const dw_scale *x, const dw_scale *y, dw_polyline *line)
{
  for (size_t i = 0; i < line->n; i++)
    if (!dw_spot_is_gap (line->spots[i]))
      line->spots[i] = (dw_spot){ moved (&from->x, x, line->spots[i].x),
                                  moved (&from->y, y, line->spots[i].y) };
  dw_polyline_straighten (line, WITHIN);
}

void
dw_drill_lines_move (dw_drill_lines *lines, const dw_scale *x, const dw_scale *y)
{
  for (int i = 0; i <= DW_DRILL_MOST_LEVELS; i++)
    move_line (lines, x, y, &lines->tone[i]);
  for (int i = 0; i < lines->n_contours; i++)
    move_line (lines, x, y, &lines->contour[i].line);
  for (int i = 0; i < lines->n_oils; i++)
    move_line (lines, x, y, &lines->oil[i].line);
  move_line (lines, x, y, &lines->equal.line);
  move_line (lines, x, y, &lines->curve.line);
  lines->x = *x;
  lines->y = *y;
}

void
dw_drill_lines_clip (dw_drill_lines *lines, const dw_rect *plot)
{
  dw_polyline cut = { 0 };
  dw_polyline_clip (&lines->curve.line, plot, &cut);
  dw_polyline_clear (&lines->curve.line);
  lines->curve.line = cut;
}
