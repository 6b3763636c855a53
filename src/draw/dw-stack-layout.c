/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-stack-layout.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-label-column.h"
#include "draw/dw-page-scale.h"
#include "study/dw-piston-face.h"

/* [1] Largest scales. */
static const double LARGEST_ACROSS = 20.0;
static const double LARGEST_FACTOR = 300.0;

/* In ems of the notes' letters. */
static const double PADDING = 0.7;
static const double GAP = 0.4;         /* between words and drawing */
static const double FAN = 1.2;         /* width in which leaders go aslant */
static const double LEADER_END = 0.25; /* before a label */

/* [pt] Half of the piston is never drawn narrower for the labels' sake. */
static const double LEAST_HALF = 20.0;

/* [1] of the drawing's height. */
static const double PISTON_SHARE = 0.2;
static const double STOP_SHARE = 0.05;
static const double SHAFT_SHARE = 0.06; /* sticks out beyond the stop washer */

/* [pt] */
static const double PISTON_LEAST = 8.0;
static const double PISTON_MOST = 32.0;
static const double STOP_LEAST = 2.5;
static const double STOP_MOST = 6.0;

/* [pt] The thinnest leaf should have this much before the lift limit is drawn to scale, and the
 * thickest is not drawn larger than that. */
static const double LEAF_WANTED = 4.0;
static const double LEAF_MOST = 14.0;

/* [1] Most of the height over the piston that the leaves take at the cost of the lift limit. */
static const double LEAVES_SHARE = 0.65;

/* [pt] Between two lines in a bar. */
static const double LEAST_LEAF = 2.2;

/* [1] Half the shaft's end over half the shaft, and over half the hub: thinner than both. */
static const double SHAFT_OF_ROD = 0.6;
static const double SHAFT_OF_HUB = 0.6;

/* Lines that a heading or a caption is broken into at most. */
#define MOST_LINES 2

/* What a drawing is made from. */
typedef struct
{
  const dw_damper *damper;
  const dw_stack_labels *labels;
  const dw_number_format *numbers;
  const dw_text_metrics *metrics;
  dw_stack_layout *layout;
  double em;                   /* [pt] */
  double line;                 /* [pt] */
  dw_rect inner;               /* what is left of the area */
  double label_x;              /* [pt] */
  double label_width;          /* [pt] */
  char *entries[DW_MAX_SHIMS]; /* NULL = not written */
  char *lift[2];               /* to scale; cut */
  int n_shown;                 /* entries with a label each */
  bool shows_lift;
  char *more; /* the other entries; NULL = none, or not written */
} sheet;

/* ---- headings ---- */

/* In lines as wide as the area; what is too much for the last one is shortened. @return  how many */
static int
break_text (const sheet *s, const char *text, char *lines[MOST_LINES])
{
  g_auto (GStrv) all = dw_text_wrap (s->metrics, text, DW_TEXT_NOTE, s->inner.width);
  int n = 0;
  for (; all[n] != NULL && n < MOST_LINES - 1; n++)
    lines[n] = g_strdup (all[n]);
  if (all[n] != NULL)
    {
      lines[n] = g_strjoinv (" ", &all[n]);
      n++;
    }
  return n;
}

/* A heading at the top, or a caption at the bottom of what is left; takes its lines off it. */
static void
add_block (sheet *s, dw_label_kind kind, const char *text, bool is_top)
{
  char *lines[MOST_LINES];
  if (text == NULL || *text == '\0')
    return;
  const int n = break_text (s, text, lines);
  const double height = n * s->line;
  double y = is_top ? s->inner.y : s->inner.y + s->inner.height - height;
  for (int i = 0; i < n; i++, y += s->line)
    {
      dw_chart_label_list_add (&s->layout->texts, s->metrics, kind, DW_TEXT_NOTE, lines[i],
                               (dw_spot){ s->inner.x, y }, s->inner.width);
      g_free (lines[i]);
    }
  const double taken = fmin (s->inner.height, height + GAP * s->em);
  s->inner.height -= taken;
  s->inner.y += is_top ? taken : 0.0;
}

/* ---- across ---- */

static double
wider (const sheet *s, const char *text, double width)
{
  return text == NULL ? width
                      : fmax (width, dw_text_measure (s->metrics, text, DW_TEXT_NOTE).width);
}

static double
widest_label (const sheet *s)
{
  double width = wider (s, s->more, 0.0);
  for (int i = 0; i < s->n_shown; i++)
    width = wider (s, s->entries[i], width);
  return s->shows_lift ? wider (s, s->lift[s->layout->lift_is_cut ? 1 : 0], width) : width;
}

static double
half_width (const dw_damper *damper)
{
  const double piston = 0.5 * damper->body.bore - damper->piston.clearance;
  return damper->valve.n_shims > 0 ? fmax (piston, 0.5 * damper->valve.outer_diameter) : piston;
}

/* Scale, axis and the labels' column. The drawing with its labels stands in the middle. */
static void
divide_width (sheet *s)
{
  const double widest = widest_label (s);
  const double fan = widest > 0.0 ? FAN * s->em : 0.0;
  s->label_width = fmax (0.0, fmin (widest, s->inner.width - fan - LEAST_HALF));
  const double room = fmax (1.0, s->inner.width - fan - s->label_width);
  const double half = half_width (s->damper);
  s->layout->scale = dw_page_scale_round (room * DW_PAGE_POINT / half, LARGEST_ACROSS);
  const double drawn = half * s->layout->scale / DW_PAGE_POINT;
  s->layout->axis = s->inner.x + 0.5 * (room - drawn);
  s->label_x = s->layout->axis + drawn + fan;
}

/* [pt] */
static double
across (const sheet *s, double radius)
{
  return radius * s->layout->scale / DW_PAGE_POINT;
}

static double
shaft_radius (const dw_damper *damper)
{
  const double radius = SHAFT_OF_ROD * 0.5 * damper->body.rod;
  return damper->valve.n_shims > 0 ? fmin (radius, SHAFT_OF_HUB * 0.5 * damper->valve.hub_diameter)
                                   : radius;
}

/* ---- upwards ---- */

/* Real thicknesses. [m] */
typedef struct
{
  double leaves;
  double thinnest;
  double thickest;
  double lift;
} stack_sizes;

static stack_sizes
sizes_of (const dw_valve *valve)
{
  stack_sizes z = { .thinnest = HUGE_VAL, .lift = valve->lift_limit };
  for (int i = 0; i < valve->n_shims; i++)
    {
      z.leaves += valve->shims[i].count * valve->shims[i].thickness;
      z.thinnest = fmin (z.thinnest, valve->shims[i].thickness);
      z.thickest = fmax (z.thickest, valve->shims[i].thickness);
    }
  return z;
}

/* Everything to scale if the thinnest leaf can be seen then; else larger, and the lift gives way.
 * @p room [pt] over the piston */
static double
choose_factor (const stack_sizes *z, double room)
{
  const double most = fmin (LARGEST_FACTOR, LEAF_MOST * DW_PAGE_POINT / z->thickest);
  const double whole = dw_page_scale_round (room * DW_PAGE_POINT / (z->leaves + z->lift), most);
  if (z->thinnest * whole >= LEAF_WANTED * DW_PAGE_POINT)
    return whole;
  const double seen = LEAF_WANTED * DW_PAGE_POINT / z->thinnest;
  const double larger = dw_page_scale_round (
      fmin (seen, LEAVES_SHARE * room * DW_PAGE_POINT / z->leaves), most);
  return fmax (whole, larger);
}

static void
place_bars (sheet *s, double left, double right, double *y)
{
  const dw_valve *valve = &s->damper->valve;
  for (int i = 0; i < valve->n_shims; i++)
    {
      const dw_shim *shim = &valve->shims[i];
      const double height = shim->count * shim->thickness * s->layout->factor / DW_PAGE_POINT;
      const int most = MAX (1, (int)(height / LEAST_LEAF));
      *y -= height;
      s->layout->bars[i] = (dw_stack_bar){ { left, *y, right - left, height },
                                           shim->count,
                                           MIN (shim->count, most) };
    }
}

/* The largest hole that opens under the leaves; without shims the largest one. */
static void
place_channel (sheet *s)
{
  dw_stack_layout *layout = s->layout;
  const dw_face_hole *largest = NULL;
  dw_piston_face face;
  dw_piston_face_make (s->damper, &face);
  for (int i = 0; i < face.n_holes; i++)
    if ((face.holes[i].covered || !face.has_shim)
        && (largest == NULL || face.holes[i].diameter > largest->diameter))
      largest = &face.holes[i];
  if (largest == NULL)
    return;
  const double middle = hypot (largest->x, largest->y);
  const double left = fmax (layout->piston.x,
                            layout->axis + across (s, middle - 0.5 * largest->diameter));
  const double right = fmin (layout->piston.x + layout->piston.width,
                             layout->axis + across (s, middle + 0.5 * largest->diameter));
  layout->channel = (dw_rect){ left, layout->piston.y, fmax (0.0, right - left),
                               layout->piston.height };
}

/* On the page. [pt] */
typedef struct
{
  double piston;
  double leaves;
  double lift;
  double stop;
  double over; /* shaft beyond the stop washer */
} heights;

static heights
divide_height (sheet *s)
{
  const double height = s->inner.height;
  const stack_sizes sizes = sizes_of (&s->damper->valve);
  heights h = { .piston = fmin (PISTON_MOST, 2.0 * PISTON_SHARE * height),
                .over = SHAFT_SHARE * height };
  if (s->layout->n_bars == 0)
    return h;

  h.piston = fmin (h.piston, fmax (PISTON_LEAST, PISTON_SHARE * height));
  h.stop = fmin (STOP_MOST, fmax (STOP_LEAST, STOP_SHARE * height));
  const double room = fmax (1.0, height - h.piston - h.stop - h.over);
  s->layout->factor = choose_factor (&sizes, room);
  h.leaves = sizes.leaves * s->layout->factor / DW_PAGE_POINT;
  const double to_scale = sizes.lift * s->layout->factor / DW_PAGE_POINT;
  h.lift = fmin (to_scale, fmax (0.0, room - h.leaves));
  s->layout->lift_is_cut = h.lift < to_scale - 1e-6;
  return h;
}

/* From the piston upwards, in the middle of the height that there is. */
static void
place_parts (sheet *s, const heights *h)
{
  dw_stack_layout *layout = s->layout;
  const dw_damper *damper = s->damper;
  const dw_valve *valve = &damper->valve;
  const double used = h->piston + h->leaves + h->lift + h->stop + h->over;
  const double bottom = s->inner.y + 0.5 * (s->inner.height + used);
  const double left = layout->axis + across (s, shaft_radius (damper));
  const double edge = layout->axis + across (s, 0.5 * damper->body.bore - damper->piston.clearance);
  double y = bottom - h->piston;

  layout->piston = (dw_rect){ left, y, edge - left, h->piston };
  place_channel (s);
  if (layout->n_bars > 0)
    {
      const double hub = layout->axis + across (s, 0.5 * valve->hub_diameter);
      const double rim = layout->axis + across (s, 0.5 * valve->outer_diameter);
      place_bars (s, left, rim, &y);
      y -= h->lift;
      layout->hub = (dw_rect){ left, y, hub - left, h->lift };
      y -= h->stop;
      layout->stop = (dw_rect){ left, y, rim - left, h->stop };
    }
  layout->shaft = (dw_rect){ layout->axis, y - h->over, left - layout->axis, bottom - y + h->over };
}

/* ---- labels ---- */

/* One label beside the drawing. */
typedef struct
{
  double at;   /* [pt] y of what it names */
  double from; /* [pt] x of where its leader begins */
  dw_label_kind kind;
  char *text; /* owned; NULL = not written */
} item;

/* From the top: lift, then the entries, the last one first. */
static int
collect_items (sheet *s, item items[DW_MAX_SHIMS + 1])
{
  const dw_stack_layout *layout = s->layout;
  const dw_rect *stop = &layout->stop;
  int n = 0;

  if (s->shows_lift)
    items[n++] = (item){ 0.5 * (stop->y + stop->height + layout->hub.y + layout->hub.height),
                         stop->x + stop->width, DW_LABEL_LIFT,
                         g_strdup (s->lift[layout->lift_is_cut ? 1 : 0]) };
  if (s->more != NULL)
    {
      const dw_rect *top = &layout->bars[layout->n_bars - 1].bar;
      const dw_rect *first = &layout->bars[s->n_shown].bar;
      items[n++] = (item){ 0.5 * (top->y + first->y + first->height), top->x + top->width,
                           DW_LABEL_LEAVES, g_strdup (s->more) };
    }
  for (int i = s->n_shown - 1; i >= 0; i--)
    {
      const dw_rect *bar = &layout->bars[i].bar;
      items[n++] = (item){ bar->y + 0.5 * bar->height, bar->x + bar->width, DW_LABEL_LEAVES,
                           g_strdup (s->entries[i]) };
    }
  return n;
}

static void
add_leader (sheet *s, const item *it, double y)
{
  const double slant = s->label_x - FAN * s->em + 0.5 * LEADER_END * s->em;
  s->layout->leaders[s->layout->n_leaders++] = (dw_stack_leader){
    { { it->from, it->at }, { slant, it->at }, { s->label_x - LEADER_END * s->em, y } }
  };
}

static void
add_labels (sheet *s)
{
  item items[DW_MAX_SHIMS + 1];
  double wanted[DW_MAX_SHIMS + 1];
  double middle[DW_MAX_SHIMS + 1];
  const int n = collect_items (s, items);

  for (int i = 0; i < n; i++)
    wanted[i] = items[i].at;
  dw_label_column_spread (wanted, n, s->line, s->inner.y, s->inner.y + s->inner.height, middle);
  for (int i = 0; i < n; i++)
    {
      if (items[i].text == NULL)
        continue;
      const dw_chart_label *label = dw_chart_label_list_add (
          &s->layout->texts, s->metrics, items[i].kind, DW_TEXT_NOTE, items[i].text,
          (dw_spot){ s->label_x, middle[i] - 0.5 * s->line }, s->label_width);
      if (label != NULL)
        add_leader (s, &items[i], middle[i]);
      g_free (items[i].text);
    }
}

/* ---- all of it ---- */

/* The caption's height is needed before its numbers are known: that of numbers as long as any. */
static dw_rect
reserve_caption (sheet *s)
{
  const dw_rect before = s->inner;
  g_autofree char *text = dw_stack_words_scale (s->labels, s->numbers, 0.0125,
                                                s->layout->n_bars > 0 ? 0.0125 : 0.0);
  char *lines[MOST_LINES];
  const int n = text != NULL ? break_text (s, text, lines) : 0;
  for (int i = 0; i < n; i++)
    g_free (lines[i]);
  if (n > 0)
    s->inner.height = fmax (0.0, s->inner.height - n * s->line - GAP * s->em);
  return (dw_rect){ before.x, before.y + before.height - n * s->line, before.width, n * s->line };
}

static void
add_caption (sheet *s, const dw_rect *caption)
{
  g_autofree char *text = dw_stack_words_scale (s->labels, s->numbers, s->layout->scale,
                                                s->layout->factor);
  s->inner = *caption;
  add_block (s, DW_LABEL_SCALE, text, true);
}

static void
make_words (sheet *s)
{
  const dw_valve *valve = &s->damper->valve;
  for (int i = 0; i < valve->n_shims; i++)
    s->entries[i] = dw_stack_words_entry (s->labels, s->numbers, valve, i);
  for (int i = 0; i < 2 && valve->n_shims > 0; i++)
    s->lift[i] = dw_stack_words_lift (s->labels, s->numbers, valve, i == 1);
}

/* What there is room for beside the drawing: all entries, and the lift limit; else some entries, and
 * one label for all others. */
static void
choose_labels (sheet *s)
{
  const int n = s->layout->n_bars;
  const int room = dw_label_column_room (s->inner.y, s->inner.y + s->inner.height, s->line);
  s->n_shown = n <= room ? n : MAX (0, room - 1);
  s->shows_lift = n > 0 && n < room;
  if (s->n_shown < n && room > 0)
    s->more = dw_stack_words_more (s->labels, s->numbers, &s->damper->valve, s->n_shown);
}

static void
free_words (sheet *s)
{
  g_free (s->more);
  for (int i = 0; i < DW_MAX_SHIMS; i++)
    g_free (s->entries[i]);
  for (int i = 0; i < 2; i++)
    g_free (s->lift[i]);
}

dw_stack_layout *
dw_stack_layout_new (const dw_damper *damper, const dw_stack_labels *labels,
                     const dw_number_format *numbers, const dw_chart_style *style,
                     const dw_text_metrics *metrics, const dw_rect *area)
{
  dw_stack_layout *layout = g_new0 (dw_stack_layout, 1);
  const double em = style->font[DW_TEXT_NOTE].size;
  sheet s = { .damper = damper,
              .labels = labels,
              .numbers = numbers,
              .metrics = metrics,
              .layout = layout,
              .em = em,
              .line = dw_text_height (metrics, DW_TEXT_NOTE),
              .inner = dw_rect_inset (area, PADDING * em) };
  const dw_valve *valve = &damper->valve;
  layout->area = *area;
  layout->n_bars = valve->n_shims;
  make_words (&s);
  add_block (&s, DW_LABEL_TITLE, valve->n_shims > 0 ? labels->opens[valve->opens_on] : labels->none,
             true);
  const dw_rect caption = reserve_caption (&s);
  choose_labels (&s);
  /* whether the lift is cut is known from the height, and decides how wide its label is */
  const heights h = divide_height (&s);
  divide_width (&s);
  place_parts (&s, &h);
  if (valve->n_shims > 0)
    add_labels (&s);
  add_caption (&s, &caption);
  free_words (&s);
  return layout;
}

void
dw_stack_layout_free (dw_stack_layout *layout)
{
  if (layout == NULL)
    return;
  dw_chart_label_list_clear (&layout->texts);
  g_free (layout);
}
