/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "draw-samples.h"
#include "draw/dw-piston-layout.h"

static dw_chart_style style;

static dw_piston_layout *
make (const dw_damper *damper, double width, double height)
{
  style = dw_chart_style_make (DW_STYLE_LIGHT);
  style.font_family = "DejaVu Sans";
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_piston_labels labels = dw_piston_labels_defaults ();
  const dw_number_format numbers = dw_number_format_defaults ();
  const dw_rect area = { 10.0, 20.0, width, height };
  return dw_piston_layout_new (damper, &labels, &numbers, &style, &metrics, &area);
}

START_TEST (everything_is_to_the_stated_scale)
{
  const dw_damper d = sample_damper ();
  dw_piston_layout *layout = make (&d, 260.0, 260.0);
  const double points = layout->scale * 72.0 / 0.0254;
  const dw_chart_label *stated = dw_chart_label_list_find (&layout->texts, DW_LABEL_TITLE);
  ck_assert (layout->scale == 4.0);
  ck_assert_str_eq (stated->text, "4 : 1");
  assert_close (layout->bore_radius, 0.5 * d.body.bore * points, 1e-12, 0.0, "bore");
  assert_close (layout->shim_radius, 5.3e-3 * points, 1e-12, 0.0, "shim");
  for (int i = 0; i < layout->face.n_holes; i++)
    {
      const dw_face_hole *h = &layout->face.holes[i];
      assert_close (layout->spots[i].radius, 0.5 * h->diameter * points, 1e-12, 0.0, "hole");
      assert_close (dw_spot_distance (layout->spots[i].centre, layout->centre),
                    hypot (h->x, h->y) * points, 1e-9, 0.0, "on its circle");
    }
  dw_piston_layout_free (layout);
}
END_TEST

START_TEST (it_fits_into_any_area)
{
  const dw_damper d = sample_damper ();
  for (double width = 80.0; width < 1500.0; width *= 1.3)
    for (double height = 90.0; height < 1500.0; height *= 1.3)
      {
        dw_piston_layout *layout = make (&d, width, height);
        const dw_rect bore = { layout->centre.x - layout->bore_radius,
                               layout->centre.y - layout->bore_radius, 2.0 * layout->bore_radius,
                               2.0 * layout->bore_radius };
        ck_assert (dw_rect_holds_rect (&layout->area, &bore));
        ck_assert (layout->piston_radius < layout->bore_radius);
        for (int i = 0; i < layout->texts.n; i++)
          {
            ck_assert (dw_rect_holds_rect (&layout->area, &layout->texts.labels[i].box));
            ck_assert (!dw_rect_overlaps (&bore, &layout->texts.labels[i].box));
          }
        dw_piston_layout_free (layout);
      }
}
END_TEST

START_TEST (sizes_are_written_with_the_counts)
{
  const dw_damper d = sample_damper ();
  dw_piston_layout *layout = make (&d, 260.0, 260.0);
  const dw_chart_label *sizes = dw_chart_label_list_find (&layout->texts, DW_LABEL_SHARE);
  ck_assert_str_eq (sizes[0].text, "6 × 1.3 mm open");
  ck_assert_str_eq (sizes[1].text, "4 × 1.1 mm covered");
  dw_piston_layout_free (layout);
}
END_TEST

static dw_piston_layout *
make_with (const dw_damper *damper, const dw_piston_labels *labels, const dw_unit *length)
{
  style = dw_chart_style_make (DW_STYLE_PRINT);
  style.font_family = "DejaVu Sans";
  const dw_text_metrics metrics = sample_metrics (&style);
  const dw_number_format numbers = dw_number_format_defaults ();
  const dw_rect area = { 10.0, 20.0, 130.0, 120.0 };
  return dw_piston_layout_new_in (damper, labels, length, &numbers, &style, &metrics, &area);
}

START_TEST (sizes_are_written_in_inches_too)
{
  const dw_damper d = sample_damper ();
  const dw_piston_labels labels = dw_piston_labels_defaults ();
  const dw_unit inch = dw_chart_units_inch ().length;
  dw_piston_layout *layout = make_with (&d, &labels, &inch);
  const dw_chart_label *sizes = dw_chart_label_list_find (&layout->texts, DW_LABEL_SHARE);
  ck_assert_str_eq (sizes[0].text, "6 × 0.05118 in open");
  dw_piston_layout_free (layout);
}
END_TEST

/* Which words are wanted, and how much room each leaves. */
START_TEST (words_left_out_give_their_room_to_the_drawing)
{
  const dw_damper d = sample_damper ();
  const dw_piston_labels all = dw_piston_labels_defaults ();
  const dw_piston_labels scale_only = { all.scale, NULL, NULL };
  const dw_piston_labels covered_only = { NULL, NULL, all.covered };
  const dw_piston_labels none = { NULL, NULL, NULL };
  const dw_piston_labels empty = { "", "", "" };
  const dw_unit mm = dw_chart_units_metric ().length;
  const struct
  {
    const char *why;
    const dw_piston_labels *labels;
    int n_texts;
    double scale; /* of a bore of 16 mm in 130 x 120 pt */
  } rows[] = {
    { "all", &all, 3, 1.5 },
    { "scale only", &scale_only, 1, 2.0 },
    { "one kind of holes", &covered_only, 1, 2.0 },
    { "none", &none, 0, 2.0 },
    { "empty ones keep their room", &empty, 0, 1.5 },
  };
  for (int i = 0; i < N_ENTRIES (rows); i++)
    {
      dw_piston_layout *layout = make_with (&d, rows[i].labels, &mm);
      const dw_rect bore = { layout->centre.x - layout->bore_radius,
                             layout->centre.y - layout->bore_radius, 2.0 * layout->bore_radius,
                             2.0 * layout->bore_radius };
      ck_assert_msg (layout->texts.n == rows[i].n_texts, "%s: %d", rows[i].why, layout->texts.n);
      ck_assert_msg (layout->scale == rows[i].scale, "%s: %g", rows[i].why, layout->scale);
      ck_assert (dw_rect_holds_rect (&layout->area, &bore));
      for (int k = 0; k < layout->texts.n; k++)
        ck_assert (!dw_rect_overlaps (&bore, &layout->texts.labels[k].box));
      dw_piston_layout_free (layout);
    }
}
END_TEST

START_TEST (a_hit_is_the_hole_or_one_near_its_rim)
{
  const dw_damper d = sample_damper ();
  dw_piston_layout *layout = make (&d, 260.0, 260.0);
  for (int i = 0; i < layout->face.n_holes; i++)
    {
      const dw_piston_spot *s = &layout->spots[i];
      ck_assert_int_eq (dw_piston_layout_hit (layout, s->centre.x, s->centre.y, 0.0), i);
      ck_assert_int_eq (
          dw_piston_layout_hit (layout, s->centre.x + s->radius + 2.0, s->centre.y, 3.0), i);
    }
  ck_assert_int_eq (dw_piston_layout_hit (layout, layout->centre.x, layout->centre.y, 3.0), -1);
  dw_piston_layout_free (layout);
}
END_TEST

START_TEST (holes_with_thin_land_are_marked)
{
  dw_damper d = dw_damper_defaults ();
  d.piston.holes[0] = (dw_holes){ 40, 1.3e-3, false };
  dw_piston_layout *layout = make (&d, 260.0, 260.0);
  ck_assert (layout->spots[layout->face.ligaments[0].hole].is_warned);
  ck_assert (layout->spots[layout->face.ligaments[0].other].is_warned);
  dw_piston_layout_free (layout);
  dw_piston_layout_free (NULL);
}
END_TEST

static dw_color
pixel (cairo_surface_t *surface, double x, double y)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const unsigned char *p = data + (size_t)y * (size_t)cairo_image_surface_get_stride (surface)
                           + 4 * (size_t)x;
  return (dw_color){ p[2] / 255.0, p[1] / 255.0, p[0] / 255.0, 1.0 };
}

START_TEST (metal_shaft_and_surroundings_are_painted)
{
  const dw_damper d = dw_damper_defaults ();
  dw_piston_layout *layout = make (&d, 260.0, 260.0);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 280, 290);
  cairo_t *cr = cairo_create (surface);
  dw_piston_paint (layout, &style, 0, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  const double between = 0.5 * (layout->shaft_radius + layout->piston_radius);
  const dw_color metal = pixel (surface, layout->centre.x + between * 0.5,
                                layout->centre.y - between * 0.866);
  const dw_color shaft = pixel (surface, layout->centre.x, layout->centre.y);
  assert_close (shaft.red, style.background.red, 0.0, 0.01, "the shaft is cut through");
  ck_assert (fabs (metal.red - style.background.red) > 0.05);
  cairo_surface_destroy (surface);
  dw_piston_layout_free (layout);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("draw/piston-layout");
  TCase *tcase = tcase_create ("piston-layout");
  tcase_add_test (tcase, everything_is_to_the_stated_scale);
  tcase_add_test (tcase, it_fits_into_any_area);
  tcase_add_test (tcase, sizes_are_written_with_the_counts);
  tcase_add_test (tcase, sizes_are_written_in_inches_too);
  tcase_add_test (tcase, words_left_out_give_their_room_to_the_drawing);
  tcase_add_test (tcase, a_hit_is_the_hole_or_one_near_its_rim);
  tcase_add_test (tcase, holes_with_thin_land_are_marked);
  tcase_add_test (tcase, metal_shaft_and_surroundings_are_painted);
  suite_add_tcase (suite, tcase);
  return run_suite (suite);
}
