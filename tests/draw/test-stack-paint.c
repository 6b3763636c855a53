/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whole pictures against stored ones, two pixels a point, with letters of DejaVu Sans.
 * DW_UPDATE_IMAGES=1 in the environment stores what is painted now: look at it before you commit it. */
#include "draw/dw-stack-paint.h"

#include "draw-pictures.h"
#include "draw-samples.h"

static const struct
{
  const char *name;
  dw_style_id style;
  int n_shims;
  double width, height; /* [pt] */
} pictures[] = {
  { "stack-print.png", DW_STYLE_PRINT, 3, 200.0, 150.0 },
  { "stack-print-16.png", DW_STYLE_PRINT, 16, 260.0, 200.0 },
  { "stack-print-small.png", DW_STYLE_PRINT, 6, 110.0, 90.0 },
  { "stack-print-none.png", DW_STYLE_PRINT, 0, 150.0, 110.0 },
  { "stack-dark.png", DW_STYLE_DARK, 4, 220.0, 160.0 },
};

static dw_damper
damper_of (int n_shims)
{
  static const double thicknesses[] = { 0.15e-3, 0.1e-3, 0.1e-3, 0.2e-3 }; /* [m] */
  static const int counts[] = { 1, 3, 2, 1 };
  dw_damper d = sample_damper ();
  d.valve.n_shims = n_shims;
  for (int i = 0; i < n_shims; i++)
    {
      d.valve.shims[i] = (dw_shim){ thicknesses[i % 4], counts[i % 4], 4e9, 0.38, 100e6 };
      if (i == 5)
        d.valve.shims[i].count = 40;
    }
  return d;
}

/* @param layout  set to what is painted, caller frees; may be NULL */
static cairo_surface_t *
paint_layout (const dw_damper *damper, dw_style_id id, double width, double height,
              dw_stack_layout **out)
{
  dw_chart_style style = dw_chart_style_make (id);
  style.font_family = "DejaVu Sans";
  dw_text_pango *pango = dw_text_pango_new (&style);
  const dw_text_metrics metrics = dw_text_pango_metrics (pango);
  const dw_stack_labels labels = dw_stack_labels_defaults ();
  const dw_number_format numbers = dw_number_format_defaults ();
  const dw_rect area = { 0.0, 0.0, width, height };
  dw_stack_layout *layout = dw_stack_layout_new (damper, &labels, &numbers, &style, &metrics,
                                                 &area);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)(2.0 * width),
                                                         (int)(2.0 * height));
  cairo_t *cr = cairo_create (surface);
  cairo_scale (cr, 2.0, 2.0);
  dw_stack_paint (layout, &style, cr);
  ck_assert_int_eq (cairo_status (cr), CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  if (out != NULL)
    *out = layout;
  else
    dw_stack_layout_free (layout);
  dw_text_pango_free (pango);
  return surface;
}

static cairo_surface_t *
paint (const dw_damper *damper, dw_style_id id, double width, double height)
{
  return paint_layout (damper, id, width, height, NULL);
}

START_TEST (a_picture_is_the_stored_one)
{
  const dw_damper damper = damper_of (pictures[_i].n_shims);
  cairo_surface_t *surface = paint (&damper, pictures[_i].style, pictures[_i].width,
                                    pictures[_i].height);
  picture_assert_stored (surface, pictures[_i].name);
  cairo_surface_destroy (surface);
}
END_TEST

START_TEST (another_order_is_another_picture)
{
  dw_damper damper = damper_of (4);
  double clearly;
  cairo_surface_t *p = paint (&damper, DW_STYLE_PRINT, 200.0, 150.0);
  cairo_surface_t *q = paint (&damper, DW_STYLE_PRINT, 200.0, 150.0);
  ck_assert (picture_difference (p, q, &clearly) == 0.0);
  const dw_shim first = damper.valve.shims[0];
  damper.valve.shims[0] = damper.valve.shims[3];
  damper.valve.shims[3] = first;
  cairo_surface_t *turned = paint (&damper, DW_STYLE_PRINT, 200.0, 150.0);
  ck_assert (picture_difference (p, turned, &clearly) > 0.1);
  cairo_surface_destroy (p);
  cairo_surface_destroy (q);
  cairo_surface_destroy (turned);
}
END_TEST

/* Black runs in a column of pixels, as a copier sees it: what is darker than half is black. */
static int
count_lines (cairo_surface_t *surface, double x, double top, double bottom)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  bool was_black = false;
  int n = 0;
  for (int y = (int)(2.0 * top); y < (int)(2.0 * bottom); y++)
    {
      const bool is_black = data[y * stride + 4 * (int)(2.0 * x)] < 128;
      n += is_black && !was_black;
      was_black = is_black;
    }
  return n;
}

START_TEST (a_copier_keeps_every_line_and_no_tone)
{
  const dw_damper damper = damper_of (4);
  dw_stack_layout *layout;
  cairo_surface_t *surface = paint_layout (&damper, DW_STYLE_PRINT, 200.0, 150.0, &layout);
  const double x = layout->hub.x + layout->hub.width + 6.0;
  const double top = layout->stop.y - 1.0;
  const double bottom = layout->piston.y + 1.0;
  /* both faces of the stop washer, both of each of seven leaves, neighbours sharing one */
  ck_assert_int_eq (count_lines (surface, x, top, bottom), 2 + 8);
  /* the washer's face and its seat on them */
  ck_assert_int_eq (count_lines (surface, layout->hub.x + 6.0, top, bottom), 2 + 8);
  dw_stack_layout_free (layout);
  cairo_surface_destroy (surface);
}
END_TEST

START_TEST (absurd_dampers_are_painted)
{
  for (int id = 0; id < DW_N_STYLES; id++)
    {
      dw_damper d = damper_of (16);
      for (int i = 0; i < 16; i++)
        d.valve.shims[i] = (dw_shim){ i % 2 == 0 ? 3e-3 : 0.01e-3, 64, 4e9, 0.38, 100e6 };
      cairo_surface_destroy (paint (&d, (dw_style_id)id, 110.0, 90.0));
      d.valve.n_shims = 1;
      d.valve.lift_limit = 10e-3;
      d.valve.shims[0].count = 1;
      cairo_surface_destroy (paint (&d, (dw_style_id)id, 260.0, 200.0));
      d.valve.lift_limit = 0.0;
      cairo_surface_destroy (paint (&d, (dw_style_id)id, 20.0, 10.0));
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/stack-paint");
  TCase *tcase = tcase_create ("stack-paint");
  tcase_add_loop_test (tcase, a_picture_is_the_stored_one, 0, N_ENTRIES (pictures));
  tcase_add_test (tcase, another_order_is_another_picture);
  tcase_add_test (tcase, a_copier_keeps_every_line_and_no_tone);
  tcase_add_test (tcase, absurd_dampers_are_painted);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
