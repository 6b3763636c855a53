/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A few whole maps against stored pictures, as test-chart-paint.c does. */
#include "draw/dw-drill-map-paint.h"

#include <cairo-svg.h>
#include <glib.h>
#include <math.h>
#include <string.h>

#include "draw-pictures.h"
#include "draw-samples.h"

static const struct
{
  const char *name;
  dw_style_id style;
  sample_map_kind kind;
  int nth;
  double largest; /* [m] */
  dw_drill_measure shade, contour;
  double width, height;
} pictures[] = {
  { "drill-map-light.png", DW_STYLE_LIGHT, SAMPLE_HALVES, 3, 2.67e-3, DW_MEASURE_COMPRESSION_LOW,
    DW_MEASURE_PACK_COMPRESSION, 460.0, 340.0 },
  { "drill-map-dark.png", DW_STYLE_DARK, SAMPLE_KINDS, 1, 2.6e-3, DW_MEASURE_REBOUND_HIGH,
    DW_MEASURE_SHARE_HIGH, 420.0, 320.0 },
  { "drill-map-print.png", DW_STYLE_PRINT, SAMPLE_HALVES, 4, 2.2e-3, DW_MEASURE_OIL,
    DW_MEASURE_REBOUND_LOW, 300.0, 320.0 },
  { "drill-map-sun-strip.png", DW_STYLE_SUN, SAMPLE_STRIP, 3, 2.2e-3, DW_MEASURE_COMPRESSION_LOW,
    DW_MEASURE_PACK_COMPRESSION, 420.0, 260.0 },
};

typedef struct
{
  sample_map *sample;
  dw_chart_style style;
  dw_text_pango *pango;
  dw_drill_map_layout *layout;
  cairo_surface_t *surface;
} picture;

static void
open_picture (picture *p, int i, dw_style_id style)
{
  const dw_rect area = { 0.0, 0.0, pictures[i].width, pictures[i].height };
  p->sample = sample_map_new (pictures[i].kind, pictures[i].nth, pictures[i].largest);
  p->sample->map.shade_measure = pictures[i].shade;
  p->sample->map.contour_measure = pictures[i].contour;
  sample_map_fill (p->sample);
  p->sample->map.chosen = sample_map_dot (p->sample, 1.5e-3, 1.7e-3);
  p->sample->map.pointed = sample_map_dot (p->sample, 1.4e-3, 1.9e-3);
  p->style = dw_chart_style_make (style);
  p->style.font_family = "DejaVu Sans";
  p->pango = dw_text_pango_new (&p->style);
  const dw_text_metrics metrics = dw_text_pango_metrics (p->pango);
  p->layout = dw_drill_map_layout_new (&p->sample->map, &p->style, &metrics, &area);
  p->surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)area.width, (int)area.height);
}

static void
close_picture (picture *p)
{
  cairo_surface_destroy (p->surface);
  dw_drill_map_layout_free (p->layout);
  dw_text_pango_free (p->pango);
  sample_map_free (p->sample);
}

static void
paint (picture *p)
{
  cairo_t *cr = cairo_create (p->surface);
  dw_drill_map_paint (p->layout, &p->style, cr);
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (p->surface);
}

START_TEST (a_map_is_the_stored_one)
{
  picture p;
  open_picture (&p, _i, pictures[_i].style);
  paint (&p);
  picture_assert_stored (p.surface, pictures[_i].name);
  close_picture (&p);
}
END_TEST

START_TEST (painting_is_the_same_twice)
{
  picture p;
  double clearly;
  open_picture (&p, _i, DW_STYLE_LIGHT);
  paint (&p);
  cairo_surface_t *first = p.surface;
  p.surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)pictures[_i].width,
                                          (int)pictures[_i].height);
  paint (&p);
  ck_assert (picture_difference (first, p.surface, &clearly) == 0.0);
  cairo_surface_destroy (first);
  close_picture (&p);
}
END_TEST

/* A pixel as red, green, blue of 255. */
static void
pixel (cairo_surface_t *surface, dw_spot at, int rgb[3])
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const unsigned char *p = data + (int)at.y * cairo_image_surface_get_stride (surface)
                           + 4 * (int)at.x;
  for (int c = 0; c < 3; c++)
    rgb[c] = p[2 - c];
}

/* The tone in the plot is that of the bar beside the same value, in every style. */
START_TEST (tones_are_those_of_the_legend)
{
  picture p;
  int n = 0;
  open_picture (&p, 0, (dw_style_id)_i);
  p.sample->map.n_dots = 0;
  p.sample->map.n_oils = 0;
  p.sample->map.contour = NULL;
  p.sample->map.chosen = p.sample->map.pointed = -1;
  const dw_text_metrics metrics = dw_text_pango_metrics (p.pango);
  const dw_rect area = p.layout->area;
  dw_drill_map_layout_free (p.layout);
  p.layout = dw_drill_map_layout_new (&p.sample->map, &p.style, &metrics, &area);
  paint (&p);
  const dw_drill_sets *sets = &p.sample->study.sets;
  test_random random = test_random_new ((uint64_t)_i);
  for (int i = 0; i < 500; i++)
    {
      const double x = test_random_uniform (&random, sets->present[0] + 1e-4, 2.5e-3);
      const double y = test_random_uniform (&random, sets->present[1] + 1e-4, 2.5e-3);
      const double value = dw_drill_field_at (&p.sample->shade, x, y);
      const dw_spot on_bar = dw_drill_map_legend_value_at (&p.layout->legend, &p.layout->lines,
                                                           value);
      const dw_spot on_map = { dw_scale_place (&p.layout->x, x), dw_scale_place (&p.layout->y, y) };
      bool is_near_edge = false;
      for (int k = 0; k < p.layout->lines.shade.n; k++)
        is_near_edge = is_near_edge || fabs (value - p.layout->lines.shade.value[k]) < 1.5;
      if (is_near_edge || dw_spot_is_gap (on_bar))
        continue;
      int a[3];
      int b[3];
      pixel (p.surface, on_map, a);
      pixel (p.surface, on_bar, b);
      for (int c = 0; c < 3; c++)
        ck_assert_msg (ABS (a[c] - b[c]) <= 1, "%s: %.1f %% is %d,%d,%d and %d,%d,%d",
                       dw_style_name ((dw_style_id)_i), value, a[0], a[1], a[2], b[0], b[1], b[2]);
      n++;
    }
  ck_assert_int_gt (n, 200);
  close_picture (&p);
}
END_TEST

/* A window keeps the ground and paints the marks over it. */
START_TEST (ground_and_marks_are_the_whole)
{
  picture p;
  picture q;
  double clearly;
  open_picture (&p, _i, DW_STYLE_DARK);
  open_picture (&q, _i, DW_STYLE_DARK);
  paint (&p);
  cairo_t *cr = cairo_create (q.surface);
  dw_drill_map_paint_ground (q.layout, &q.style, cr);
  cairo_surface_flush (q.surface);
  const double marks = picture_difference (p.surface, q.surface, &clearly);
  ck_assert (marks > 0.1 && clearly < 0.03);
  dw_drill_map_paint_marks (q.layout, &q.style, cr);
  cairo_surface_flush (q.surface);
  ck_assert (picture_difference (p.surface, q.surface, &clearly) == 0.0);
  cairo_destroy (cr);
  close_picture (&p);
  close_picture (&q);
}
END_TEST

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_string_append_len (closure, (const char *)data, (gssize)length);
  return CAIRO_STATUS_SUCCESS;
}

START_TEST (a_vector_file_stays_one)
{
  picture p;
  g_autoptr (GString) svg = g_string_new (NULL);
  open_picture (&p, _i, DW_STYLE_PRINT);
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (collect, svg, pictures[_i].width,
                                                                  pictures[_i].height);
  cairo_t *cr = cairo_create (surface);
  dw_drill_map_paint (p.layout, &p.style, cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  ck_assert_int_eq (cairo_surface_status (surface), CAIRO_STATUS_SUCCESS);
  ck_assert_ptr_null (strstr (svg->str, "<image"));
  ck_assert_ptr_nonnull (strstr (svg->str, "<path"));
  ck_assert_uint_lt (svg->len, 1000000);
  cairo_surface_destroy (surface);
  close_picture (&p);
}
END_TEST

START_TEST (an_empty_map_is_its_background)
{
  const dw_drill_map map = dw_drill_map_defaults ();
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_rect area = { 0.0, 0.0, 40.0, 30.0 };
  int rgb[3];
  dw_drill_map_layout *layout = dw_drill_map_layout_new (&map, &style, &metrics, &area);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 40, 30);
  cairo_t *cr = cairo_create (surface);
  dw_drill_map_paint (layout, &style, cr);
  cairo_surface_flush (surface);
  pixel (surface, (dw_spot){ 20.0, 15.0 }, rgb);
  ck_assert_int_le (ABS (rgb[1] - (int)lrint (255.0 * style.background.green)), 1);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  dw_drill_map_layout_free (layout);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/drill-map-paint");
  TCase *tcase = tcase_create ("drill-map-paint");
  tcase_add_loop_test (tcase, a_map_is_the_stored_one, 0, N_ENTRIES (pictures));
  tcase_add_loop_test (tcase, painting_is_the_same_twice, 0, N_ENTRIES (pictures));
  tcase_add_loop_test (tcase, tones_are_those_of_the_legend, 0, DW_N_STYLES);
  tcase_add_loop_test (tcase, ground_and_marks_are_the_whole, 0, N_ENTRIES (pictures));
  tcase_add_loop_test (tcase, a_vector_file_stays_one, 0, N_ENTRIES (pictures));
  tcase_add_test (tcase, an_empty_map_is_its_background);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
