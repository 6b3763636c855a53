/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-map-fill.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <math.h>

#include "model/dw-drill.h"
#include "window/dw-drill-map-words.h"

/* [m] */
static const double INCH = 25.4e-3;

static dw_drill_dot *
make_dots (DwDrillChoices *choices, const dw_drill_sets *sets, const dw_drill_filter *filter,
           int *n)
{
  GListModel *list = dw_drill_choices_get_list (choices);
  const bool is_strip = dw_drill_field_is_strip (sets);
  const int across = is_strip ? dw_drill_field_across (sets) : 0;
  dw_drill_dot *dots = g_new0 (dw_drill_dot, MAX (1, g_list_model_get_n_items (list)));

  *n = (int)g_list_model_get_n_items (list);
  for (int i = 0; i < *n; i++)
    {
      g_autoptr (DwDrillChoice) choice = g_list_model_get_item (list, (guint)i);
      const dw_drill_row *row = dw_drill_choice_get_row (choice);
      double at[DW_DRILL_SETS];
      for (int s = 0; s < DW_DRILL_SETS; s++)
        at[s] = row->result.size[s] > 0.0 ? row->result.size[s] : sets->present[s];
      dots[i] = (dw_drill_dot){ at[across], at[1 - across], dw_drill_filter_passes (filter, row) };
    }
  return dots;
}

/* [m] How much larger the holes may come out. */
static double
tolerance_of (const dw_drill_sets *sets, const dw_spread_limits *limits)
{
  if (limits->hole_grade == 0)
    return limits->hole_error;
  const double zone = dw_tolerance_it (limits->hole_grade,
                                       sets->present[dw_drill_field_across (sets)]);
  return isnan (zone) ? 0.0 : zone;
}

/* Fields that a map needs, all over the same nodes. */
typedef struct
{
  dw_drill_field shade;
  dw_drill_field contour;
  dw_drill_field equal;
  dw_drill_field oil;
} map_fields;

static void
fill_fields (const dw_drilling *study, const dw_drill_map_options *options,
             const dw_drill_dot *dots, int n_dots, map_fields *fields)
{
  dw_drill_field place = { 0 };
  dw_drill_measure measures[4];
  dw_drill_field *wanted[4];
  int n = 0;

  dw_drill_field_place (&place, &study->sets, dots, n_dots);
  fields->shade = fields->contour = fields->equal = fields->oil = place;
  measures[n] = options->shade;
  wanted[n++] = &fields->shade;
  measures[n] = DW_MEASURE_COMPRESSION_LOW;
  wanted[n++] = &fields->equal;
  if (options->has_contour)
    {
      measures[n] = options->contour;
      wanted[n++] = &fields->contour;
    }
  if (options->oils)
    {
      measures[n] = DW_MEASURE_OIL;
      wanted[n++] = &fields->oil;
    }
  dw_drill_field_fill (study, measures, wanted, n);
}

void
dw_drill_map_fill (DwDrillMapView *view, DwDrillChoices *choices,
                   const dw_drill_map_options *options)
{
  const dw_drilling *study = dw_drill_choices_get_study (choices);

  if (study == NULL || (study->sets.n_holes[0] == 0 && study->sets.n_holes[1] == 0))
    {
      dw_drill_map_view_set_map (view, NULL);
      return;
    }
  const dw_drill_box *box = dw_drill_choices_get_box (choices);
  g_autofree map_fields *fields = g_new (map_fields, 1);
  int n_dots;
  g_autofree dw_drill_dot *dots = make_dots (choices, &study->sets, &options->filter, &n_dots);
  dw_drill_map map = dw_drill_map_defaults ();

  fill_fields (study, options, dots, n_dots, fields);
  map.labels = dw_drill_map_words (&study->sets);
  map.sets = &study->sets;
  map.shade = &fields->shade;
  map.shade_measure = options->shade;
  map.contour = options->has_contour ? &fields->contour : NULL;
  map.contour_measure = options->contour;
  map.equal = &fields->equal;
  map.oil = options->oils ? &fields->oil : NULL;
  map.oils = options->oils ? box->bottles : NULL;
  map.n_oils = options->oils ? box->n_bottles : 0;
  map.dots = dots;
  map.n_dots = n_dots;
  map.chosen = options->chosen;
  map.tolerance = tolerance_of (&study->sets, &box->limits);
  g_strlcpy (map.numbers.decimal, localeconv ()->decimal_point, sizeof map.numbers.decimal);
  if ((options->units & DW_UNITS_INCH) != 0)
    {
      map.length_factor = INCH;
      /* translators: the unit in "Set 1 in {unit}" */
      map.length_unit = _ ("inch");
    }
  dw_drill_map_view_set_map (view, &map);
}
