/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-drill-map-describe.h"

#include <glib.h>
#include <math.h>

#include "draw/dw-drill-lines.h"
#include "draw/dw-phrase.h"

/* Decimals of a size: in millimetres hundredths, in inches ten thousandths tell drills apart. */
static int
decimals (const dw_drill_map *map)
{
  return map->length_factor < 5e-3 ? 2 : 4;
}

static void
add_sentence (GString *out, const char *sentence)
{
  if (out->len > 0)
    g_string_append_c (out, ' ');
  g_string_append (out, sentence);
}

static char *
size_text (const dw_drill_map *map, double size)
{
  char number[DW_NUMBER_ROOM];
  dw_number_fixed (&map->numbers, size / map->length_factor, decimals (map), number, sizeof number);
  return g_strdup (number);
}

/* Both sizes, or that of a strip. */
static char *
sizes_text (const dw_drill_map *map, double x, double y)
{
  g_autofree char *across = size_text (map, x);
  g_autofree char *up = size_text (map, y);
  const dw_word words[] = { { "x", across }, { "y", up }, { NULL, NULL } };
  return dw_drill_field_is_strip (map->sets) ? g_strdup (across)
                                             : dw_phrase_fill (map->labels.sizes, words);
}

static char *
value_text (const dw_drill_map *map, dw_drill_measure measure, double value)
{
  char text[DW_NUMBER_ROOM];
  if (!isfinite (value))
    return g_strdup ("-");
  dw_drill_level_text (measure, &map->numbers, value, -1, true, text, sizeof text);
  return g_strdup (text);
}

static void
add_about (const dw_drill_map *map, GString *out)
{
  const dw_drill_field *field = map->shade;
  const dw_drill_map_labels *labels = &map->labels;
  double low;
  double high;
  dw_drill_lines_range (map, field, &low, &high);
  g_autofree char *what = dw_drill_map_measure_caption (labels, map->shade_measure);
  const dw_word shaded_words[] = { { "what", what }, { NULL, NULL } };
  g_autofree char *shaded = dw_phrase_fill (labels->shaded, shaded_words);
  g_autofree char *from = value_text (map, map->shade_measure, low);
  g_autofree char *to = value_text (map, map->shade_measure, high);
  g_autofree char *x_from = size_text (map, field->x_low);
  g_autofree char *x_to = size_text (map, field->x_high);
  g_autofree char *y_from = size_text (map, field->y_low);
  g_autofree char *y_to = size_text (map, field->y_high);
  const dw_word words[] = { { "shaded", shaded },
                            { "low", from },
                            { "high", to },
                            { "x", labels->axis[dw_drill_field_across (map->sets)] },
                            { "x_from", x_from },
                            { "x_to", x_to },
                            { "y", labels->axis[1] },
                            { "y_from", y_from },
                            { "y_to", y_to },
                            { "unit", map->length_unit },
                            { NULL, NULL } };
  g_autofree char *text = dw_phrase_fill (field->n_y > 1 ? labels->about : labels->about_strip,
                                          words);
  add_sentence (out, text);
}

static void
add_dots (const dw_drill_map *map, GString *out)
{
  int faint = 0;
  for (int i = 0; i < map->n_dots; i++)
    faint += map->dots[i].is_wanted ? 0 : 1;
  g_autofree char *n = g_strdup_printf ("%d", map->n_dots);
  g_autofree char *n_faint = g_strdup_printf ("%d", faint);
  const dw_word words[] = { { "n", n }, { "faint", n_faint }, { NULL, NULL } };
  g_autofree char *text = dw_phrase_fill (map->labels.about_dots, words);
  add_sentence (out, text);
}

static void
add_now (const dw_drill_map *map, GString *out)
{
  const dw_drill_sets *sets = map->sets;
  g_autofree char *size = sizes_text (map, sets->present[dw_drill_field_across (sets)],
                                      sets->present[1]);
  const dw_word words[] = { { "size", size }, { "unit", map->length_unit }, { NULL, NULL } };
  g_autofree char *text = dw_phrase_fill (map->labels.about_now, words);
  add_sentence (out, text);
}

/* "compression at low speed, change -20 %" */
static void
add_value (const dw_drill_map *map, dw_drill_measure measure, const dw_drill_field *field,
           const dw_drill_dot *dot, GString *out)
{
  g_autofree char *value = value_text (map, measure, dw_drill_field_at (field, dot->x, dot->y));
  if (out->len > 0)
    g_string_append (out, ", ");
  g_string_append_printf (out, "%s %s", map->labels.measure[measure], value);
}

static void
add_chosen (const dw_drill_map *map, GString *out)
{
  if (map->chosen < 0 || map->chosen >= map->n_dots)
    {
      add_sentence (out, map->labels.about_none);
      return;
    }
  const dw_drill_dot *dot = &map->dots[map->chosen];
  g_autofree char *size = sizes_text (map, dot->x, dot->y);
  g_autoptr (GString) values = g_string_new (NULL);
  add_value (map, map->shade_measure, map->shade, dot, values);
  if (map->contour != NULL)
    add_value (map, map->contour_measure, map->contour, dot, values);
  const dw_word words[] = {
    { "size", size }, { "unit", map->length_unit }, { "value", values->str }, { NULL, NULL }
  };
  g_autofree char *text = dw_phrase_fill (map->labels.about_chosen, words);
  add_sentence (out, text);
}

char *
dw_drill_map_describe (const dw_drill_map *map)
{
  GString *out = g_string_new (NULL);
  if (map->shade != NULL && map->sets != NULL)
    {
      add_about (map, out);
      add_dots (map, out);
      add_now (map, out);
      add_chosen (map, out);
    }
  return g_string_free (out, FALSE);
}
