/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A few whole ladders against stored pictures, as test-chart-paint.c does. */
#include "draw/dw-ladder-paint.h"

#include <cairo-svg.h>
#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw-pictures.h"
#include "draw-samples.h"
#include "draw/dw-pen.h"

static const struct
{
  const char *name;
  dw_style_id style;
  int most_leaves;
  double coupling; /* [1] */
  int speed;
  double width; /* [pt] */
} pictures[] = {
  { "ladder-light.png", DW_STYLE_LIGHT, 2, 0.0, DW_HIGH, 560.0 },
  { "ladder-print.png", DW_STYLE_PRINT, 2, 0.3, DW_MIDDLE, 330.0 },
};

typedef struct
{
  sample_ladder *sample;
  dw_chart_style style;
  dw_text_pango *pango;
  dw_ladder_layout *layout;
} picture;

static picture
open_picture (int i, dw_style_id style)
{
  picture p = { .sample = sample_ladder_new (pictures[i].most_leaves, pictures[i].coupling, false),
                .style = dw_chart_style_make (style) };
  sample_ladder_set_speed (p.sample, pictures[i].speed);
  p.sample->chart.chosen = 4;
  p.sample->chart.pointed = 8;
  p.style.font_family = "DejaVu Sans";
  return p;
}

static void
lay_out (picture *p, double width)
{
  p->pango = dw_text_pango_new (&p->style);
  const dw_text_metrics metrics = dw_text_pango_metrics (p->pango);
  p->layout = dw_ladder_layout_new (&p->sample->chart, &p->style, &metrics, (dw_spot){ 0.0, 0.0 },
                                    width);
}

static void
close_picture (picture *p)
{
  dw_ladder_layout_free (p->layout);
  dw_text_pango_free (p->pango);
  sample_ladder_free (p->sample);
}

static cairo_surface_t *
new_surface (const picture *p)
{
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)p->layout->area.width,
                                     (int)p->layout->area.height);
}

static cairo_surface_t *
paint (const picture *p)
{
  cairo_surface_t *surface = new_surface (p);
  cairo_t *cr = cairo_create (surface);
  dw_ladder_paint (p->layout, &p->style, cr);
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

START_TEST (a_ladder_is_the_stored_one)
{
  picture p = open_picture (_i, pictures[_i].style);
  lay_out (&p, pictures[_i].width);
  cairo_surface_t *surface = paint (&p);
  picture_assert_stored (surface, pictures[_i].name);
  cairo_surface_destroy (surface);
  close_picture (&p);
}
END_TEST

/* A window paints the strip that it shows, and keeps the head; what it sees is the whole picture. */
START_TEST (strips_are_the_whole)
{
  picture p = open_picture (0, (dw_style_id)_i);
  double clearly;
  lay_out (&p, 500.0);
  cairo_surface_t *whole = paint (&p);
  cairo_surface_t *strips = new_surface (&p);
  cairo_t *cr = cairo_create (strips);
  dw_pen_fill_rect (cr, &p.layout->area, p.style.background);
  for (double y = floor (p.layout->head.height); y < p.layout->area.height; y += 37.0)
    {
      cairo_save (cr);
      cairo_rectangle (cr, 0.0, y, p.layout->area.width, 37.0);
      cairo_clip (cr);
      dw_ladder_paint_rows (p.layout, &p.style, cr);
      cairo_restore (cr);
    }
  dw_ladder_paint_head (p.layout, &p.style, cr);
  dw_ladder_paint_marks (p.layout, &p.style, cr);
  cairo_surface_flush (strips);
  ck_assert_msg (picture_difference (whole, strips, &clearly) < 0.02, "%g",
                 picture_difference (whole, strips, &clearly));
  ck_assert (clearly == 0.0);
  cairo_destroy (cr);
  cairo_surface_destroy (strips);
  cairo_surface_destroy (whole);
  close_picture (&p);
}
END_TEST

/* Without tones: as a copier or a blind eye for colours sees it. */
START_TEST (what_is_fitted_is_told_by_more_than_colour)
{
  picture p = open_picture (0, DW_STYLE_PRINT);
  double clearly;
  lay_out (&p, 500.0);
  cairo_surface_t *with = paint (&p);
  const int fitted = dw_ladder_chart_fitted (&p.sample->chart);
  const double width = p.layout->rows[fitted].box.width;
  ck_assert (p.layout->rows[fitted].is_fitted && width > 0.0);
  p.layout->rows[fitted].is_fitted = false;
  cairo_surface_t *without = paint (&p);
  ck_assert_msg (picture_difference (with, without, &clearly) > 0.01, "pointer and mark");
  ck_assert (clearly > 0.0);
  cairo_surface_destroy (with);
  cairo_surface_destroy (without);
  close_picture (&p);
}
END_TEST

static cairo_status_t
keep (void *closure, const unsigned char *data, unsigned int length)
{
  g_string_append_len (closure, (const char *)data, (gssize)length);
  return CAIRO_STATUS_SUCCESS;
}

START_TEST (a_vector_file_stays_one)
{
  picture p = open_picture (_i, pictures[_i].style);
  g_autoptr (GString) svg = g_string_new (NULL);
  lay_out (&p, pictures[_i].width);
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (keep, svg, p.layout->area.width,
                                                                  p.layout->area.height);
  cairo_t *cr = cairo_create (surface);
  dw_ladder_paint (p.layout, &p.style, cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  ck_assert_int_eq (cairo_surface_status (surface), CAIRO_STATUS_SUCCESS);
  ck_assert_ptr_null (strstr (svg->str, "<image"));
  ck_assert_ptr_nonnull (strstr (svg->str, "<path"));
  cairo_surface_destroy (surface);
  close_picture (&p);
}
END_TEST

START_TEST (absurd_ladders_are_painted)
{
  for (int id = 0; id < DW_N_STYLES; id++)
    {
      picture p = open_picture (0, (dw_style_id)id);
      lay_out (&p, 12.0);
      cairo_surface_destroy (paint (&p));
      dw_ladder_layout_free (p.layout);
      dw_text_pango_free (p.pango);
      p.sample->chart.ladder = NULL;
      lay_out (&p, 200.0);
      cairo_surface_destroy (paint (&p));
      close_picture (&p);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/ladder-paint");
  TCase *tcase = tcase_create ("ladder-paint");
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, a_ladder_is_the_stored_one, 0, N_ENTRIES (pictures));
  tcase_add_loop_test (tcase, strips_are_the_whole, 0, DW_N_STYLES);
  tcase_add_test (tcase, what_is_fitted_is_told_by_more_than_colour);
  tcase_add_loop_test (tcase, a_vector_file_stays_one, 0, N_ENTRIES (pictures));
  tcase_add_test (tcase, absurd_ladders_are_painted);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
