/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-notes.h"

#include <glib.h>
#include <math.h>

/* The plot is looked at in cells of about this size. [pt] */
static const double CELL = 2.0;
#define MOST_CELLS 600 /* in each direction; larger cells beyond */

/* Kept free around a word, and between a word and the frame. [pt] */
static const double MARGIN = 1.0;
static const double FROM_FRAME = 3.0;

/* A place is tried at every so many points of a line. [pt] */
static const double EVERY = 5.0;

/* What a place costs: cells of other lines and of faint dots, hatching below it, a bend of the line
 * [for each radian], the frame being near. */
static const double COST_LINE = 1.0;
static const double COST_FAINT = 0.25;
static const double COST_GONE = 4.0;
static const double COST_BEND = 6.0;

/* A line that is longer than this gets a second word, at least so far from the first. [em] */
static const double LONG_LINE = 40.0;
static const double APART = 22.0;

enum
{
  TAKEN = 1, /* by a wanted dot, a mark, or there is no room to drill */
  FAINT = 2
};

#define SEVERAL 255

typedef struct
{
  const dw_drill_map_notes *notes;
  dw_chart_label_list *texts;
  double em;
  double cell; /* [pt] */
  int n_x;
  int n_y;
  guint8 *flags; /* TAKEN, FAINT */
  guint8 *line;  /* which line goes through, 0 = none, SEVERAL */
} ground;

/* ---- what is there ---- */

static int
column (const ground *g, double x)
{
  return CLAMP ((int)floor ((x - g->notes->plot->x) / g->cell), 0, g->n_x - 1);
}

static int
row (const ground *g, double y)
{
  return CLAMP ((int)floor ((y - g->notes->plot->y) / g->cell), 0, g->n_y - 1);
}

static void
take (ground *g, dw_spot at, double radius, guint8 flag)
{
  for (int y = row (g, at.y - radius); y <= row (g, at.y + radius); y++)
    for (int x = column (g, at.x - radius); x <= column (g, at.x + radius); x++)
      g->flags[y * g->n_x + x] |= flag;
}

static void
take_dots (ground *g)
{
  const dw_drill_dots *dots = g->notes->dots;
  for (int i = 0; i < dots->n; i++)
    if (dots->places[i].is_shown)
      take (g, dots->places[i].at, dots->radius, dots->places[i].is_wanted ? TAKEN : FAINT);
}

/* From the border upwards, and all that is right of its end; never what is smaller than now. */
static void
take_no_room (ground *g)
{
  const dw_polyline *border = g->notes->no_room;
  if (border->n == 0)
    return;
  const double end = border->spots[border->n - 1].x;
  for (int x = column (g, g->notes->now.x); x < g->n_x; x++)
    {
      const double middle = g->notes->plot->x + (x + 0.5) * g->cell;
      double y = g->notes->now.y;
      if (middle <= end && !dw_polyline_at (border, middle, &y))
        continue;
      for (int k = 0; k <= row (g, y); k++)
        g->flags[k * g->n_x + x] |= TAKEN;
    }
}

static void
add_line_cell (ground *g, dw_spot at, guint8 id)
{
  guint8 *cell = &g->line[row (g, at.y) * g->n_x + column (g, at.x)];
  *cell = *cell == 0 || *cell == id ? id : SEVERAL;
}

static void
add_line (ground *g, const dw_polyline *line, guint8 id)
{
  for (size_t i = 0; i + 1 < line->n; i++)
    {
      const dw_spot a = line->spots[i];
      const dw_spot b = line->spots[i + 1];
      if (dw_spot_is_gap (a) || dw_spot_is_gap (b))
        continue;
      const int n = 1 + (int)ceil (dw_spot_distance (a, b) / g->cell);
      for (int k = 0; k <= n; k++)
        add_line_cell (g, (dw_spot){ a.x + (b.x - a.x) * k / n, a.y + (b.y - a.y) * k / n }, id);
    }
}

/* Lines in a fixed order: contours, oils, the line of now. */
static guint8
contour_id (int i)
{
  return (guint8)(1 + i);
}

static guint8
oil_id (int i)
{
  return (guint8)(1 + DW_DRILL_MOST_LEVELS + i);
}

#define OTHER_ID (2 + DW_DRILL_MOST_LEVELS + DW_DRILL_MOST_OILS)

static void
begin (ground *g)
{
  const dw_rect *plot = g->notes->plot;
  const dw_drill_lines *lines = g->notes->lines;
  g->cell = fmax (CELL, fmax (plot->width, plot->height) / MOST_CELLS);
  g->n_x = 1 + (int)(plot->width / g->cell);
  g->n_y = 1 + (int)(plot->height / g->cell);
  g->flags = g_new0 (guint8, g->n_x * g->n_y);
  g->line = g_new0 (guint8, g->n_x * g->n_y);
  take_dots (g);
  take_no_room (g);
  take (g, g->notes->now, g->notes->mark_radius, TAKEN);
  for (int i = 0; i < lines->n_contours; i++)
    add_line (g, &lines->contour[i].line, contour_id (i));
  for (int i = 0; i < lines->n_oils; i++)
    add_line (g, &lines->oil[i].line, oil_id (i));
  add_line (g, &lines->equal, OTHER_ID);
  add_line (g, &lines->curve, OTHER_ID);
}

/* ---- what a place costs ---- */

static double
cost_of_cells (const ground *g, const dw_rect *box, guint8 own)
{
  double cost = 0.0;
  for (int y = row (g, box->y); y <= row (g, box->y + box->height); y++)
    for (int x = column (g, box->x); x <= column (g, box->x + box->width); x++)
      {
        const int at = y * g->n_x + x;
        if (g->flags[at] & TAKEN)
          return HUGE_VAL;
        cost += g->flags[at] & FAINT ? COST_FAINT : 0.0;
        cost += g->line[at] != 0 && g->line[at] != own ? COST_LINE : 0.0;
      }
  return cost;
}

/* How much a line turns around one of its spots. [rad] */
static double
bend_at (const dw_polyline *line, size_t i)
{
  const size_t reach = 3;
  if (i < reach || i + reach >= line->n)
    return 0.0;
  const dw_spot a = line->spots[i - reach];
  const dw_spot b = line->spots[i];
  const dw_spot c = line->spots[i + reach];
  const double turn = fabs (atan2 (b.y - a.y, b.x - a.x) - atan2 (c.y - b.y, c.x - b.x));
  return isnan (turn) ? 0.0 : fmin (turn, 2.0 * G_PI - turn);
}

static double
cost_of (const ground *g, const dw_rect *box, guint8 own, double bend)
{
  const dw_rect inside = dw_rect_inset (g->notes->plot, FROM_FRAME);
  const dw_rect wide = dw_rect_inset (box, -MARGIN);
  if (!dw_rect_holds_rect (&inside, box) || dw_chart_label_list_meets (g->texts, &wide))
    return HUGE_VAL;
  const bool is_gone = box->x < g->notes->now.x || box->y + box->height > g->notes->now.y;
  return cost_of_cells (g, &wide, own) + (is_gone ? COST_GONE : 0.0) + COST_BEND * bend;
}

/* ---- words on lines ---- */

typedef struct
{
  const dw_drill_line *line;
  guint8 id;
  dw_label_kind kind;
  dw_text_extent extent;
} word;

static dw_rect
box_at (const word *w, dw_spot middle)
{
  const double height = w->extent.ascent + w->extent.descent;
  return (dw_rect){ middle.x - 0.5 * w->extent.width, middle.y - 0.5 * height, w->extent.width,
                    height };
}

/* The best place for a word, farther than @p apart from @p first. @return  its cost */
static double
find_place (const ground *g, const word *w, const dw_spot *first, double apart, dw_spot *out)
{
  const dw_polyline *line = &w->line->line;
  double best = HUGE_VAL;
  for (size_t i = 0; i + 1 < line->n; i++)
    {
      const dw_spot a = line->spots[i];
      const dw_spot b = line->spots[i + 1];
      if (dw_spot_is_gap (a) || dw_spot_is_gap (b))
        continue;
      const int n = MAX (1, (int)(dw_spot_distance (a, b) / EVERY));
      for (int k = 0; k < n; k++)
        {
          const dw_spot at = { a.x + (b.x - a.x) * k / n, a.y + (b.y - a.y) * k / n };
          const dw_rect box = box_at (w, at);
          if (first != NULL && dw_spot_distance (at, *first) < apart)
            continue;
          const double cost = cost_of (g, &box, w->id, bend_at (line, i));
          if (cost < best)
            {
              best = cost;
              *out = at;
            }
        }
    }
  return best;
}

static double
length_of (const dw_polyline *line)
{
  double length = 0.0;
  for (size_t i = 0; i + 1 < line->n; i++)
    if (!dw_spot_is_gap (line->spots[i]) && !dw_spot_is_gap (line->spots[i + 1]))
      length += dw_spot_distance (line->spots[i], line->spots[i + 1]);
  return length;
}

static void
add_at (ground *g, const word *w, dw_spot at)
{
  const dw_rect box = box_at (w, at);
  dw_chart_label_list_add (g->texts, g->notes->metrics, w->kind, DW_TEXT_NOTE, w->line->text,
                           (dw_spot){ box.x, box.y }, w->extent.width + 1.0);
}

static void
add_word (ground *g, const dw_drill_line *line, guint8 id, dw_label_kind kind)
{
  const word w = { line, id, kind, dw_text_measure (g->notes->metrics, line->text, DW_TEXT_NOTE) };
  dw_spot first;
  dw_spot second;
  if (find_place (g, &w, NULL, 0.0, &first) == HUGE_VAL)
    return;
  add_at (g, &w, first);
  if (length_of (&line->line) > LONG_LINE * g->em
      && find_place (g, &w, &first, APART * g->em, &second) < HUGE_VAL)
    add_at (g, &w, second);
}

/* ---- now ---- */

/* Below to the left of the mark, where nothing can be drilled; else the other corners. */
static void
add_now (ground *g)
{
  static const int corners[][2] = { { -1, 1 }, { -1, -1 }, { 1, 1 }, { 1, -1 } };
  const char *text = g->notes->map->labels.now;
  const dw_text_extent extent = dw_text_measure (g->notes->metrics, text, DW_TEXT_NOTE);
  const double height = extent.ascent + extent.descent;
  const double gap = g->notes->mark_radius + MARGIN;
  const dw_spot now = g->notes->now;
  for (unsigned i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      const dw_spot corner = { corners[i][0] < 0 ? now.x - gap - extent.width : now.x + gap,
                               corners[i][1] < 0 ? now.y - gap - height : now.y + gap };
      const dw_rect box = { corner.x, corner.y, extent.width, height };
      if (cost_of (g, &box, OTHER_ID, 0.0) == HUGE_VAL)
        continue;
      dw_chart_label_list_add (g->texts, g->notes->metrics, DW_LABEL_NOW, DW_TEXT_NOTE, text,
                               corner, extent.width + 1.0);
      return;
    }
}

void
dw_drill_map_notes_add (const dw_drill_map_notes *notes, dw_chart_label_list *texts)
{
  const dw_drill_lines *lines = notes->lines;
  ground g = { .notes = notes, .texts = texts, .em = notes->style->font[DW_TEXT_TICK].size };
  begin (&g);
  add_now (&g);
  for (int i = 0; i < lines->n_oils; i++)
    add_word (&g, &lines->oil[i], oil_id (i), DW_LABEL_OIL);
  for (int i = 0; i < lines->n_contours; i++)
    add_word (&g, &lines->contour[i], contour_id (i), DW_LABEL_LEVEL);
  g_free (g.flags);
  g_free (g.line);
}
