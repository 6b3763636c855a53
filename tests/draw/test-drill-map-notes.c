/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-notes.h"

#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw-samples.h"
#include "draw/dw-drill-map-layout.h"

static dw_drill_map_layout *
lay_out (const sample_map *sample, double width, double height)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_rect area = { 0.0, 0.0, width, height };
  return dw_drill_map_layout_new (&sample->map, &style, &metrics, &area);
}

static bool
is_note (const dw_chart_label *label)
{
  return label->kind == DW_LABEL_LEVEL || label->kind == DW_LABEL_OIL
         || label->kind == DW_LABEL_NOW;
}

static dw_spot
middle_of (const dw_chart_label *label)
{
  return (dw_spot){ label->box.x + 0.5 * label->box.width, label->box.y + 0.5 * label->box.height };
}

/* The line that a word belongs to. */
static const dw_drill_line *
line_of (const dw_drill_lines *lines, const dw_chart_label *label)
{
  for (int i = 0; i < lines->n_oils && label->kind == DW_LABEL_OIL; i++)
    if (strcmp (lines->oil[i].text, label->text) == 0)
      return &lines->oil[i];
  for (int i = 0; i < lines->n_contours && label->kind == DW_LABEL_LEVEL; i++)
    if (strcmp (lines->contour[i].text, label->text) == 0)
      return &lines->contour[i];
  return NULL;
}

/* How far a spot is from the middle line of a turned word, along and across. */
static bool
covers (const dw_chart_label *label, double width, double height, dw_spot spot)
{
  const dw_spot middle = middle_of (label);
  const double x = spot.x - middle.x;
  const double y = spot.y - middle.y;
  const double along = x * cos (label->angle) + y * sin (label->angle);
  const double across = y * cos (label->angle) - x * sin (label->angle);
  return fabs (along) < 0.5 * width && fabs (across) < 0.5 * height;
}

static const struct
{
  sample_map_kind kind;
  int nth;
  double width, height;
} maps[] = {
  { SAMPLE_HALVES, 4, 700.0, 500.0 }, { SAMPLE_HALVES, 1, 700.0, 500.0 },
  { SAMPLE_KINDS, 4, 600.0, 450.0 },  { SAMPLE_KINDS, 1, 1200.0, 900.0 },
  { SAMPLE_STRIP, 2, 500.0, 400.0 },  { SAMPLE_HALVES, 4, 300.0, 240.0 },
};

START_TEST (words_stand_on_their_lines_and_cover_no_dot)
{
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  sample_map *sample = sample_map_new (maps[_i].kind, maps[_i].nth, 2.6e-3);
  dw_drill_map_layout *layout = lay_out (sample, maps[_i].width, maps[_i].height);
  int n = 0;
  for (int i = 0; i < layout->texts.n; i++)
    {
      const dw_chart_label *label = &layout->texts.labels[i];
      if (!is_note (label))
        continue;
      const dw_text_extent extent = dw_text_measure (&metrics, label->text, DW_TEXT_NOTE);
      const double height = extent.ascent + extent.descent;
      ck_assert (dw_rect_holds_rect (&layout->plot, &label->box));
      ck_assert (!dw_polyline_holds (&layout->regions.no_room, middle_of (label)));
      for (int k = 0; k < layout->dots.n; k++)
        if (layout->dots.places[k].is_wanted)
          ck_assert_msg (!covers (label, extent.width, height, layout->dots.places[k].at),
                         "%s covers a dot", label->text);
      if (label->kind == DW_LABEL_NOW)
        continue;
      const dw_drill_line *line = line_of (&layout->lines, label);
      ck_assert_ptr_nonnull (line);
      /* the line is cut where the word stands, and goes on behind it */
      const double away = dw_polyline_nearest (&line->line, middle_of (label), NULL);
      ck_assert_msg (away > 0.4 * height && away < 0.5 * extent.width + 2.0, "%s: %.1f",
                     label->text, away);
      n++;
    }
  ck_assert_int_gt (n, 3);
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

/* In a map with room most lines have their value, and what is now its word. */
START_TEST (most_lines_have_a_word)
{
  sample_map *sample = sample_map_new ((sample_map_kind)_i, 4, 2.2e-3);
  dw_drill_map_layout *layout = lay_out (sample, 800.0, 600.0);
  const dw_drill_lines *lines = &layout->lines;
  int n = 0;
  for (int k = 0; k < lines->n_contours + lines->n_oils; k++)
    {
      const dw_drill_line *line = k < lines->n_contours ? &lines->contour[k]
                                                        : &lines->oil[k - lines->n_contours];
      bool is_told = false;
      for (int i = 0; i < layout->texts.n; i++)
        is_told = is_told || line_of (lines, &layout->texts.labels[i]) == line;
      n += is_told ? 1 : 0;
    }
  ck_assert_msg (10 * n >= 8 * (lines->n_contours + lines->n_oils), "%d of %d", n,
                 lines->n_contours + lines->n_oils);
  ck_assert_ptr_nonnull (dw_chart_label_list_find (&layout->texts, DW_LABEL_NOW));
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

/* Upright lines that stand close: a word lies along its own. */
START_TEST (a_turned_word_follows_its_line)
{
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 2, 2.2e-3);
  dw_drill_map_layout *layout = lay_out (sample, 420.0, 420.0);
  int n = 0;
  for (int i = 0; i < layout->texts.n; i++)
    {
      const dw_chart_label *label = &layout->texts.labels[i];
      ck_assert (fabs (label->angle) < 1.5708);
      if (label->angle == 0.0)
        continue;
      assert_close (label->angle, -1.5707963, 0.0, 0.02, "lines of kinds stand upright");
      ck_assert (label->box.height > label->box.width);
      n++;
    }
  ck_assert_int_gt (n, 0);
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
}
END_TEST

/* Where dots are everywhere a word is left out rather than put on one. */
START_TEST (a_word_without_a_place_is_left_out)
{
  sample_map *sample = sample_map_new (SAMPLE_KINDS, 4, 2.2e-3);
  const dw_drill_field *f = &sample->shade;
  const int n = 80;
  dw_drill_dot *dots = g_new (dw_drill_dot, n * n);
  for (int i = 0; i < n * n; i++)
    dots[i] = (dw_drill_dot){ f->x_low + (f->x_high - f->x_low) * (i % n + 0.5) / n,
                              f->y_low + (f->y_high - f->y_low) * (i / n + 0.5) / n, true };
  sample->map.dots = dots;
  sample->map.n_dots = n * n;
  dw_drill_map_layout *layout = lay_out (sample, 600.0, 450.0);
  for (int i = 0; i < layout->texts.n; i++)
    ck_assert (!is_note (&layout->texts.labels[i]));
  dw_drill_map_layout_free (layout);
  sample_map_free (sample);
  g_free (dots);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-map-notes");
  TCase *tcase = tcase_create ("drill-map-notes");
  tcase_add_loop_test (tcase, words_stand_on_their_lines_and_cover_no_dot, 0, N_ENTRIES (maps));
  tcase_add_loop_test (tcase, most_lines_have_a_word, 0, N_SAMPLE_MAPS);
  tcase_add_test (tcase, a_turned_word_follows_its_line);
  tcase_add_test (tcase, a_word_without_a_place_is_left_out);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
