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
static const double EVERY = 7.0;

/* What a place costs: each cell of another line or of a faint dot, hatching below it, a head that must
 * be turned. A second word is not worth more than so much. */
static const double COST_LINE = 1.0;
static const double COST_FAINT = 0.25;
static const double COST_GONE = 3.0;
static const double COST_TURNED = 4.0;
static const double COST_SECOND = 12.0;

/* A line may leave the middle of a turned word by this part of its ascent. [1] */
static const double MOST_SAG = 0.25;

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

static void
take_no_room (ground *g)
{
  const dw_polyline *outline = &g->notes->regions->no_room;
  for (int y = 0; outline->n > 0 && y < g->n_y; y++)
    for (int x = 0; x < g->n_x; x++)
      if (dw_polyline_holds (outline, (dw_spot){ g->notes->plot->x + (x + 0.5) * g->cell,
                                                 g->notes->plot->y + (y + 0.5) * g->cell }))
        g->flags[y * g->n_x + x] |= TAKEN;
}

static void
take_border (ground *g)
{
  const dw_polyline *land = &g->notes->regions->land;
  for (size_t i = 0; i + 1 < land->n; i++)
    {
      const dw_spot a = land->spots[i];
      const dw_spot b = land->spots[i + 1];
      const int n = 1 + (int)ceil (dw_spot_distance (a, b) / g->cell);
      for (int k = 0; k <= n; k++)
        take (g, (dw_spot){ a.x + (b.x - a.x) * k / n, a.y + (b.y - a.y) * k / n },
              g->notes->style->line[DW_SLOT_TRIAL_1].width, TAKEN);
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
  take_border (g);
  take (g, g->notes->regions->now, g->notes->mark_radius, TAKEN);
  for (int i = 0; i < lines->n_contours; i++)
    add_line (g, &lines->contour[i].line, contour_id (i));
  for (int i = 0; i < lines->n_oils; i++)
    add_line (g, &lines->oil[i].line, oil_id (i));
  add_line (g, &lines->equal.line, OTHER_ID);
  add_line (g, &lines->curve.line, OTHER_ID);
}

/* ---- what a place costs ---- */

/* A text around its middle, perhaps turned. */
typedef struct
{
  dw_spot middle;
  double width;
  double height;
  double angle; /* [rad] clockwise */
} place;

/* The upright rectangle around it. */
static dw_rect
box_of (const place *p)
{
  const double c = fabs (cos (p->angle));
  const double s = fabs (sin (p->angle));
  const double width = p->width * c + p->height * s;
  const double height = p->width * s + p->height * c;
  return (dw_rect){ p->middle.x - 0.5 * width, p->middle.y - 0.5 * height, width, height };
}

static double
cost_of_cell (const ground *g, int at, guint8 own)
{
  if (g->flags[at] & TAKEN)
    return HUGE_VAL;
  return (g->flags[at] & FAINT ? COST_FAINT : 0.0)
         + (g->line[at] != 0 && g->line[at] != own ? COST_LINE : 0.0);
}

/* Of the cells under it; from @p limit on it does not matter how much. */
static double
cost_of_cells (const ground *g, const place *p, guint8 own, double limit)
{
  const double c = cos (p->angle);
  const double s = sin (p->angle);
  const int n_u = 1 + (int)ceil ((p->width + 2.0 * MARGIN) / g->cell);
  const int n_v = 1 + (int)ceil ((p->height + 2.0 * MARGIN) / g->cell);
  double cost = 0.0;
  for (int k = 0; k <= n_v && cost < limit; k++)
    for (int i = 0; i <= n_u; i++)
      {
        const double u = (p->width + 2.0 * MARGIN) * ((double)i / n_u - 0.5);
        const double v = (p->height + 2.0 * MARGIN) * ((double)k / n_v - 0.5);
        const int x = column (g, p->middle.x + u * c - v * s);
        const int y = row (g, p->middle.y + u * s + v * c);
        cost += cost_of_cell (g, y * g->n_x + x, own);
      }
  return cost;
}

/* Infinite when it is not less than @p limit. */
static double
cost_of (const ground *g, const place *p, guint8 own, double limit)
{
  const dw_rect inside = dw_rect_inset (g->notes->plot, FROM_FRAME);
  const dw_rect box = box_of (p);
  const dw_rect wide = dw_rect_inset (&box, -MARGIN);
  const dw_spot now = g->notes->regions->now;
  const bool is_gone = box.x < now.x || box.y + box.height > now.y;
  const double cost = (is_gone ? COST_GONE : 0.0) + (p->angle != 0.0 ? COST_TURNED : 0.0);
  if (cost >= limit || !dw_rect_holds_rect (&inside, &box)
      || dw_chart_label_list_meets (g->texts, &wide))
    return HUGE_VAL;
  const double whole = cost + cost_of_cells (g, p, own, limit - cost);
  return whole < limit ? whole : HUGE_VAL;
}

/* ---- words on lines ---- */

typedef struct
{
  dw_drill_line *line;
  guint8 id;
  dw_label_kind kind;
  dw_text_extent extent;
} word;

/* From spot @p i of a line on, @p step 1 or -1; false where the line ends before. */
static bool
spot_along (const dw_polyline *line, size_t i, int step, double distance, dw_spot *out)
{
  for (;;)
    {
      if (step < 0 ? i == 0 : i + 1 >= line->n)
        return false;
      const size_t next = step < 0 ? i - 1 : i + 1;
      const dw_spot a = line->spots[i];
      const dw_spot b = line->spots[next];
      if (dw_spot_is_gap (a) || dw_spot_is_gap (b))
        return false;
      const double length = dw_spot_distance (a, b);
      if (distance <= length && length > 0.0)
        {
          const double share = distance / length;
          *out = (dw_spot){ a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share };
          return true;
        }
      distance -= length;
      i = next;
    }
}

/* Angle of a chord of the line as long as the word; upright where the line bends under it, or ends.
 * @p along from spot i. */
static double
angle_at (const word *w, size_t i, double along, dw_spot middle)
{
  const dw_polyline *line = &w->line->line;
  const double half = 0.5 * w->extent.width;
  const double rest = dw_spot_distance (line->spots[i], line->spots[i + 1]) - along;
  dw_spot a;
  dw_spot b;
  if (!spot_along (line, i + 1, -1, half + rest, &a) || !spot_along (line, i, 1, half + along, &b))
    return 0.0;
  const double sag = dw_spot_distance (dw_segment_nearest (a, b, middle), middle);
  if (sag > MOST_SAG * w->extent.ascent)
    return 0.0;
  const double angle = a.x <= b.x ? atan2 (b.y - a.y, b.x - a.x) : atan2 (a.y - b.y, a.x - b.x);
  /* what stands upright is read from below upwards */
  return angle > 0.5 * G_PI - 1e-3 ? angle - G_PI : angle;
}

/* Upright and along the line: the better one counts. */
static void
try_place (const ground *g, const word *w, place p, double angle, place *best, double *least)
{
  for (int turned = 0; turned < (angle != 0.0 ? 2 : 1); turned++)
    {
      p.angle = turned == 1 ? angle : 0.0;
      const double cost = cost_of (g, &p, w->id, *least);
      if (cost < *least)
        {
          *least = cost;
          *best = p;
        }
    }
}

/* The best place for a word, farther than @p apart from @p first. @return  its cost */
static double
find_place (const ground *g, const word *w, const dw_spot *first, double apart, place *out)
{
  const dw_polyline *line = &w->line->line;
  const double height = w->extent.ascent + w->extent.descent;
  double least = HUGE_VAL;
  for (size_t i = 0; i + 1 < line->n; i++)
    {
      const dw_spot a = line->spots[i];
      const dw_spot b = line->spots[i + 1];
      if (dw_spot_is_gap (a) || dw_spot_is_gap (b))
        continue;
      const double length = dw_spot_distance (a, b);
      const int n = MAX (1, (int)(length / EVERY));
      for (int k = 0; k < n; k++)
        {
          const dw_spot at = { a.x + (b.x - a.x) * k / n, a.y + (b.y - a.y) * k / n };
          const place p = { at, w->extent.width, height, 0.0 };
          if (first != NULL && dw_spot_distance (at, *first) < apart)
            continue;
          try_place (g, w, p, angle_at (w, i, length * k / n, at), out, &least);
        }
    }
  return least;
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

/* A line that shows between the letters is read as one of them. */
static void
cut_line (dw_drill_line *line, const place *p)
{
  const dw_rect box = { p->middle.x - 0.5 * p->width - MARGIN, p->middle.y - 0.5 * p->height,
                        p->width + 2.0 * MARGIN, p->height };
  dw_polyline cut = { 0 };
  dw_polyline_cut (&line->line, &box, p->angle, &cut);
  dw_polyline_clear (&line->line);
  line->line = cut;
}

static void
add_at (ground *g, const word *w, const place *p)
{
  const dw_rect box = box_of (p);
  dw_chart_label *label = dw_chart_label_list_add (
      g->texts, g->notes->metrics, w->kind, DW_TEXT_NOTE, w->line->text, (dw_spot){ box.x, box.y },
      w->extent.width + 1.0);
  if (label == NULL)
    return;
  cut_line (w->line, p);
  /* from the middle to the left end of the baseline */
  const double u = -0.5 * p->width;
  const double v = w->extent.ascent - 0.5 * p->height;
  label->box = box;
  label->angle = p->angle;
  label->at = (dw_spot){ p->middle.x + u * cos (p->angle) - v * sin (p->angle),
                         p->middle.y + u * sin (p->angle) + v * cos (p->angle) };
}

static void
add_word (ground *g, dw_drill_line *line, guint8 id, dw_label_kind kind)
{
  const word w = { line, id, kind, dw_text_measure (g->notes->metrics, line->text, DW_TEXT_NOTE) };
  place first;
  place second;
  const bool is_long = length_of (&line->line) > LONG_LINE * g->em;
  if (find_place (g, &w, NULL, 0.0, &first) == HUGE_VAL)
    return;
  add_at (g, &w, &first);
  if (is_long && find_place (g, &w, &first.middle, APART * g->em, &second) < COST_SECOND)
    add_at (g, &w, &second);
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
  const double gap = g->notes->mark_radius + 2.0 * g->cell;
  const dw_spot now = g->notes->regions->now;
  for (unsigned i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      const dw_spot corner = { corners[i][0] < 0 ? now.x - gap - extent.width : now.x + gap,
                               corners[i][1] < 0 ? now.y - gap - height : now.y + gap };
      const place p = {
        { corner.x + 0.5 * extent.width, corner.y + 0.5 * height }, extent.width, height, 0.0
      };
      if (cost_of (g, &p, OTHER_ID, HUGE_VAL) == HUGE_VAL)
        continue;
      dw_chart_label_list_add (g->texts, g->notes->metrics, DW_LABEL_NOW, DW_TEXT_NOTE, text,
                               corner, extent.width + 1.0);
      return;
    }
}

void
dw_drill_map_notes_add (const dw_drill_map_notes *notes, dw_chart_label_list *texts)
{
  dw_drill_lines *lines = notes->lines;
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
