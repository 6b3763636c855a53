/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-notes.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw/dw-phrase.h"

/* In ems of the notes' letters. */
static const double INSET = 0.4;  /* from frame and zero line */
static const double CLEAR = 0.15; /* from lines */

/* Digits of an onset speed. */
#define ONSET_DIGITS 2

/* Around a mark. */
#define ALL_PLACES   16
#define CLOSE_PLACES 5

static double
em (const dw_chart_notes *notes)
{
  return notes->style->font[DW_TEXT_NOTE].size;
}

/* How many lines and words a box would cover. */
static int
covered (const dw_chart_notes *notes, const dw_chart_label_list *texts, const dw_rect *box)
{
  const dw_rect wide = dw_rect_inset (box, -CLEAR * em (notes));
  int n = dw_chart_label_list_meets (texts, &wide) ? 4 : 0;
  for (int i = 0; i < notes->chart->n_series; i++)
    for (int s = 0; s < DW_N_STROKES; s++)
      if (dw_chart_curve_meets (&notes->curves[i][s], notes->style->onset_radius, &wide))
        n++;
  return n;
}

/* Index of the box that is in the plot and covers least, the first of equals; -1 when none fits.
 * @p least is what it covers. */
static int
choose (const dw_chart_notes *notes, const dw_chart_label_list *texts, const dw_rect *boxes, int n,
        int *least)
{
  int best = -1;
  for (int i = 0; i < n; i++)
    {
      if (!dw_rect_holds_rect (&notes->frame->plot, &boxes[i]))
        continue;
      const int covers = covered (notes, texts, &boxes[i]);
      if (best >= 0 && covers >= *least)
        continue;
      best = i;
      *least = covers;
    }
  return best;
}

static void
add (const dw_chart_notes *notes, dw_chart_label_list *texts, dw_label_kind kind, const char *text,
     const dw_rect *box, int slot)
{
  dw_chart_label *label = dw_chart_label_list_add (texts, notes->metrics, kind, DW_TEXT_NOTE, text,
                                                   (dw_spot){ box->x, box->y }, box->width + 0.01);
  if (label != NULL)
    label->slot = slot;
}

/* ---- strokes ---- */

/* Places of a stroke's word; the same places, mirrored, for the other stroke. */
#define N_STROKE_BOXES 6

/* False when its part of the plot is not shown or too low. */
static bool
stroke_boxes (const dw_chart_notes *notes, dw_stroke stroke, dw_rect boxes[N_STROKE_BOXES])
{
  const dw_rect *plot = &notes->frame->plot;
  const double inset = INSET * em (notes);
  const char *text = notes->chart->labels.stroke[stroke];
  const dw_rect size = dw_text_box (notes->metrics, DW_TEXT_NOTE, text, (dw_spot){ 0.0, 0.0 });
  const double plot_bottom = plot->y + plot->height;
  const double zero = dw_scale_place (&notes->frame->y, 0.0);
  const bool is_up = stroke == DW_COMPRESSION;
  const double top = is_up ? plot->y : fmax (zero, plot->y);
  const double bottom = is_up ? fmin (zero, plot_bottom) : plot_bottom;
  if (bottom - top < size.height)
    return false;

  const double gap = fmin (inset, 0.5 * (bottom - top - size.height));
  const double left = plot->x + inset;
  const double right = plot->x + plot->width - inset - size.width;
  const double middle = 0.5 * (left + right);
  const double near = is_up ? bottom - gap - size.height : top + gap;
  const double far = is_up ? top + gap : bottom - gap - size.height;
  const double corners[N_STROKE_BOXES][2] = { { right, near }, { left, near },   { left, far },
                                              { right, far },  { middle, near }, { middle, far } };
  for (int i = 0; i < N_STROKE_BOXES; i++)
    boxes[i] = (dw_rect){ corners[i][0], corners[i][1], size.width, size.height };
  return true;
}

/* Both words in the same corner of their half, where they cover least. */
static void
add_strokes (const dw_chart_notes *notes, dw_chart_label_list *texts)
{
  dw_rect boxes[DW_N_STROKES][N_STROKE_BOXES];
  bool is_shown[DW_N_STROKES];
  for (int s = 0; s < DW_N_STROKES; s++)
    is_shown[s] = stroke_boxes (notes, (dw_stroke)s, boxes[s]);

  int best = -1;
  int least = 0;
  for (int i = 0; i < N_STROKE_BOXES; i++)
    {
      int covers = 0;
      bool fits = true;
      for (int s = 0; s < DW_N_STROKES; s++)
        if (is_shown[s])
          {
            fits = fits && dw_rect_holds_rect (&notes->frame->plot, &boxes[s][i]);
            covers += covered (notes, texts, &boxes[s][i]);
          }
      if (fits && (best < 0 || covers < least))
        {
          best = i;
          least = covers;
        }
    }
  for (int s = 0; s < DW_N_STROKES; s++)
    if (best >= 0 && is_shown[s])
      add (notes, texts, DW_LABEL_STROKE, notes->chart->labels.stroke[s], &boxes[s][best], -1);
}

/* ---- onsets ---- */

/* An onset belongs to compression: its word is not to lie on the line between the strokes or below. */
static bool
is_below_zero (const dw_chart_notes *notes, const dw_rect *box)
{
  return box->y + box->height > dw_scale_place (&notes->frame->y, 0.0);
}

/* Places around the mark; first those where a curve that rises to the right is not. */
static int
boxes_around (const dw_chart_notes *notes, dw_spot mark, const char *text, dw_rect *boxes)
{
  const dw_rect size = dw_text_box (notes->metrics, DW_TEXT_NOTE, text, (dw_spot){ 0.0, 0.0 });
  const double near = notes->style->onset_radius + 0.35 * em (notes);
  const double right = mark.x + near;
  const double left = mark.x - near - size.width;
  const double centre = mark.x - 0.5 * size.width;
  const double below = mark.y + 0.3 * near;
  const double level = mark.y - 0.5 * size.height;
  const double above = mark.y - 0.3 * near - size.height;
  const dw_spot corners[] = {
    { right, below },
    { left, above },
    { left, below },
    { right, level },
    { left, level },
    { centre, mark.y + near },
    { centre, mark.y - near - size.height },
    { right, below + size.height },
    { left, above - size.height },
    { right, above },
    { left - 2.0 * em (notes), above - size.height },
    { right + 2.0 * em (notes), level },
    { left - 3.0 * em (notes), above - 2.0 * size.height },
  };
  int n = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      boxes[n] = (dw_rect){ corners[i].x, corners[i].y, size.width, size.height };
      if (!is_below_zero (notes, &boxes[n]))
        n++;
    }
  return n;
}

/* A bare number must stand close to its mark: only the first @p most places are tried. */
static bool
try_onset (const dw_chart_notes *notes, const dw_chart_curve *curve, const char *text, int most,
           dw_chart_label_list *texts)
{
  dw_rect boxes[ALL_PLACES];
  int covers = 0;
  const int n = boxes_around (notes, curve->onset, text, boxes);
  const int best = choose (notes, texts, boxes, MIN (n, most), &covers);
  if (best < 0 || covers > 0)
    return false;
  add (notes, texts, DW_LABEL_ONSET, text, &boxes[best], curve->slot);
  return true;
}

/* Marks of series with the same onset lie on each other; one word for both is enough. */
static bool
is_said (const dw_chart_label_list *texts, const char *text)
{
  for (int i = 0; i < texts->n; i++)
    if (texts->labels[i].kind == DW_LABEL_ONSET && strcmp (texts->labels[i].text, text) == 0)
      return true;
  return false;
}

static void
add_onset (const dw_chart_notes *notes, const dw_chart_curve *curve, dw_chart_label_list *texts)
{
  const dw_unit *unit = &notes->chart->units.speed;
  char number[DW_NUMBER_ROOM];
  dw_number_digits (&notes->chart->numbers, curve->onset_speed / unit->factor, ONSET_DIGITS, number,
                    sizeof number);
  const dw_word words[] = { { "speed", number }, { "unit", unit->symbol }, { NULL, NULL } };
  g_autofree char *whole = dw_phrase_fill (notes->chart->labels.onset, words);
  if (!is_said (texts, whole) && !is_said (texts, number)
      && !try_onset (notes, curve, whole, ALL_PLACES, texts))
    try_onset (notes, curve, number, CLOSE_PLACES, texts);
}

void
dw_chart_notes_add (const dw_chart_notes *notes, dw_chart_label_list *texts)
{
  add_strokes (notes, texts);
  for (int i = 0; i < notes->chart->n_series; i++)
    if (notes->curves[i][DW_COMPRESSION].has_onset)
      add_onset (notes, &notes->curves[i][DW_COMPRESSION], texts);
}
