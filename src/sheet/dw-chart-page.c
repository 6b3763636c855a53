/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-chart-page.h"

#include <math.h>

#include "draw/dw-chart-describe.h"
#include "draw/dw-chart-paint.h"
#include "draw/dw-pen.h"
#include "draw/dw-phrase.h"
#include "model/dw-limits.h"
#include "sheet/dw-chart-csv.h"

/* A logarithmic axis shows two decades: from slow chassis movements to landings. */
static const double LOG_PART = 0.01;

/* [pt] A4, lying. */
static const double A4_LONG = 841.89;
static const double A4_SHORT = 595.28;

/* Panels stand side by side on a page at least so wide, in its heights. */
static const double SIDE_BY_SIDE = 1.05;

/* In ems of the legend's letters. */
static const double MARGIN = 1.2;
static const double GAP = 0.6;

/* The legend may take this part of the page. */
static const double LEGEND_PART = 0.25;

/* So may the sentences at the bottom. */
static const double FOOT_PART = 0.18;

/* Digits of a temperature. */
#define TEMPERATURE_DIGITS 3

struct dw_chart_page
{
  dw_chart_page_options options; /* its words are borrowed */
  dw_chart_style style;
  dw_text_pango *pango;
  dw_series *series[DW_N_AXLES][DW_MAX_SERIES];
  char *ids[DW_MAX_SERIES];
  dw_chart charts[DW_N_AXLES];
  dw_chart_layout *layouts[DW_N_AXLES]; /* NULL: not on the page */
  dw_legend legend;
  dw_chart_label_list texts;
};

dw_chart_page_labels
dw_chart_page_labels_defaults (void)
{
  return (dw_chart_page_labels){
    .axle = { "Front", "Rear" },
    .axes = "{quantity} in {unit}, {speed} in {speed_unit}",
    .key = "Ring: a void opens behind the piston. Dotted: the force past it, reached once the "
           "lost travel is over. Thin line: the force until then.",
    .foot = "Oil at {temperature} °C. Estimates for scale-model dampers: check on the car, one "
            "change at a time.",
  };
}

dw_chart_page_options
dw_chart_page_options_defaults (const dw_project *project)
{
  const dw_setup *fitted = dw_project_get_fitted (project);
  if (fitted == NULL && dw_project_get_n_setups (project) > 0)
    fitted = dw_project_get_setup (project, 0);
  return (dw_chart_page_options){
    .project = project,
    .setups = { fitted != NULL ? fitted->id : NULL },
    .n_setups = fitted != NULL ? 1 : 0,
    .has_axle = { true, true },
    .to = project->speeds.high,
    .look = dw_chart_defaults (),
    .labels = dw_chart_page_labels_defaults (),
    .style = DW_STYLE_LIGHT,
    .width = A4_LONG,
    .height = A4_SHORT,
  };
}

/* ---- curves ---- */

static dw_status
compute (dw_chart_page *page, int axle, int i, dw_error *err)
{
  const dw_chart_page_options *o = &page->options;
  const dw_setup *setup = dw_project_find_setup (o->project, o->setups[i]);
  const dw_damper *damper = &setup->damper[axle];
  dw_series *series = dw_series_new (setup->name);
  page->series[axle][i] = series;
  series->is_fitted = dw_project_get_fitted (o->project) == setup;
  series->motion_ratio = damper->motion_ratio;
  const double fastest = dw_limit_get (DW_LIMIT_SPEED)->high;
  const double to = fmin (fastest, dw_chart_shaft_speed (&o->look, series, o->to));
  const dw_series_range range = { o->look.is_log ? LOG_PART * to : 0.0, to, o->look.is_log };
  const double temperature = o->project->conditions.oil_temperature;
  const dw_status status = dw_series_fill (series, damper, temperature, &range, err);
  if (status != DW_OK || !o->has_band)
    return status;
  const dw_spread_limits limits = dw_spread_limits_defaults ();
  return dw_series_fill_band (series, damper, temperature, &limits, err);
}

static gboolean
compute_all (dw_chart_page *page, dw_chart_page_failure *failure)
{
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    for (int i = 0; page->options.has_axle[axle] && i < page->options.n_setups; i++)
      {
        dw_error finding;
        if (compute (page, axle, i, &finding) == DW_OK)
          continue;
        if (failure != NULL)
          *failure = (dw_chart_page_failure){ i, (dw_axle)axle, finding };
        return FALSE;
      }
  return TRUE;
}

static void
make_charts (dw_chart_page *page)
{
  const dw_chart_page_options *o = &page->options;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_chart *chart = &page->charts[axle];
      *chart = o->look;
      chart->labels.title = o->labels.axle[axle];
      if (o->is_part)
        chart->labels.caption = NULL;
      chart->legend = DW_LEGEND_NONE;
      chart->n_series = o->has_axle[axle] ? o->n_setups : 0;
      chart->strip_series = o->has_strip ? o->strip_setup : -1;
      for (int i = 0; i < chart->n_series; i++)
        chart->series[i] = page->series[axle][i];
    }
  /* the same axes, so that front and rear can be compared by eye */
  if (!o->has_axle[DW_FRONT] || !o->has_axle[DW_REAR])
    return;
  const dw_view front = dw_chart_whole_view (&page->charts[DW_FRONT]);
  const dw_view rear = dw_chart_whole_view (&page->charts[DW_REAR]);
  page->charts[DW_FRONT].has_range = page->charts[DW_REAR].has_range = true;
  page->charts[DW_FRONT].range = rear;
  page->charts[DW_REAR].range = front;
}

/* ---- layout ---- */

/* [pt] */
static double
margin_of (const dw_chart_page *page)
{
  return page->options.is_part ? 0.0 : MARGIN * page->style.font[DW_TEXT_LEGEND].size;
}

static void
add_line (dw_chart_page *page, const dw_text_metrics *metrics, dw_label_kind kind,
          dw_text_role role, const char *text, dw_spot corner)
{
  const double margin = margin_of (page);
  if (text != NULL && *text != '\0')
    dw_chart_label_list_add (&page->texts, metrics, kind, role, text, corner,
                             page->options.width - margin - corner.x);
}

static bool
has_void (const dw_chart_page *page)
{
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    for (int i = 0; i < page->charts[axle].n_series; i++)
      if (isfinite (page->series[axle][i]->onset_speed))
        return true;
  return false;
}

/* A sentence at the bottom, broken into lines; @p bottom moves up. Left out when the page is so
 * small that the charts need the room. */
static void
add_sentence (dw_chart_page *page, const dw_text_metrics *metrics, const char *text, double *bottom)
{
  const dw_chart_page_options *o = &page->options;
  const double margin = margin_of (page);
  const double line = dw_text_height (metrics, DW_TEXT_NOTE);
  g_auto (GStrv) lines = dw_text_wrap (metrics, text, DW_TEXT_NOTE, o->width - 2.0 * margin);
  const guint n = g_strv_length (lines);
  if (o->height - *bottom + n * line > FOOT_PART * o->height)
    return;
  *bottom -= n * line;
  for (guint i = 0; i < n; i++)
    add_line (page, metrics, DW_LABEL_SHARE, DW_TEXT_NOTE, lines[i],
              (dw_spot){ margin, *bottom + i * line });
}

/* What is to be known about the numbers; returns where it begins. */
static double
add_foot (dw_chart_page *page, const dw_text_metrics *metrics)
{
  const dw_chart_page_options *o = &page->options;
  const double em = page->style.font[DW_TEXT_LEGEND].size;
  char number[DW_NUMBER_ROOM];
  dw_number_digits (&o->look.numbers, o->project->conditions.oil_temperature, TEMPERATURE_DIGITS,
                    number, sizeof number);
  const dw_word words[] = { { "temperature", number }, { NULL, NULL } };
  g_autofree char *foot = dw_phrase_fill (o->labels.foot, words);
  double bottom = o->height - margin_of (page);
  if (!o->is_part)
    add_sentence (page, metrics, foot, &bottom);
  if (has_void (page))
    add_sentence (page, metrics, o->labels.key, &bottom);
  return bottom - GAP * em;
}

/* What the axes show, at the right end of the legend's first row; returns how wide it is. */
static double
add_axes (dw_chart_page *page, const dw_text_metrics *metrics, const dw_chart *chart, double y)
{
  const dw_word words[] = { { "quantity", chart->labels.quantity[chart->quantity][chart->place] },
                            { "unit", dw_chart_value_unit (chart)->symbol },
                            { "speed", chart->labels.speed[chart->place] },
                            { "speed_unit", chart->units.speed.symbol },
                            { NULL, NULL } };
  g_autofree char *text = dw_phrase_fill (page->options.labels.axes, words);
  const double width = dw_text_measure (metrics, text, DW_TEXT_LEGEND).width;
  add_line (page, metrics, DW_LABEL_AXIS, DW_TEXT_LEGEND, text,
            (dw_spot){ fmax (0.0, page->options.width - width), y });
  return width + page->style.font[DW_TEXT_LEGEND].size;
}

/* Title and legend; returns where they end. */
static double
add_head (dw_chart_page *page, const dw_text_metrics *metrics)
{
  const dw_chart_page_options *o = &page->options;
  const dw_chart *chart = &page->charts[o->has_axle[DW_FRONT] ? DW_FRONT : DW_REAR];
  const double em = page->style.font[DW_TEXT_LEGEND].size;
  const double margin = margin_of (page);
  double y = margin;
  double right = margin;
  if (o->is_part)
    right = add_axes (page, metrics, chart, y);
  else
    {
      add_line (page, metrics, DW_LABEL_TITLE, DW_TEXT_TITLE, o->project->title,
                (dw_spot){ margin, y });
      if (page->texts.n > 0)
        y += dw_text_height (metrics, DW_TEXT_TITLE) + GAP * em;
    }
  const dw_rect strip = { margin, y, fmax (em, o->width - margin - right),
                          LEGEND_PART * o->height };
  dw_legend_make (chart, &page->style, metrics, &strip, &page->legend);
  return y + page->legend.box.height + (o->is_part ? 0.0 : GAP * em);
}

static void
lay_out (dw_chart_page *page)
{
  const dw_chart_page_options *o = &page->options;
  const dw_text_metrics metrics = dw_text_pango_metrics (page->pango);
  const double edge = 0.5 * margin_of (page);
  const double top = add_head (page, &metrics);
  const double bottom = add_foot (page, &metrics);
  const bool both = o->has_axle[DW_FRONT] && o->has_axle[DW_REAR];
  const bool across = both && o->width >= SIDE_BY_SIDE * o->height;
  const double width = (o->width - 2.0 * edge) / (across ? 2.0 : 1.0);
  const double height = fmax (1.0, (bottom - top) / (both && !across ? 2.0 : 1.0));
  int place = 0;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      if (!o->has_axle[axle])
        continue;
      const dw_rect area = { edge + (across ? place * width : 0.0),
                             top + (across ? 0.0 : place * height), width, height };
      page->layouts[axle] = dw_chart_layout_new (&page->charts[axle], &page->style, &metrics,
                                                 &area);
      place++;
    }
}

dw_chart_page *
dw_chart_page_new (const dw_chart_page_options *options, dw_chart_page_failure *failure)
{
  g_autoptr (dw_chart_page) page = g_new0 (dw_chart_page, 1);
  page->options = *options;
  page->style = dw_chart_style_make (options->style);
  if (options->font_family != NULL)
    page->style.font_family = options->font_family;
  for (int i = 0; i < options->n_setups; i++)
    page->ids[i] = g_strdup (options->setups[i]);
  if (!compute_all (page, failure))
    return NULL;
  page->pango = dw_text_pango_new (&page->style);
  make_charts (page);
  lay_out (page);
  return g_steal_pointer (&page);
}

void
dw_chart_page_free (dw_chart_page *page)
{
  if (page == NULL)
    return;
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      dw_chart_layout_free (page->layouts[axle]);
      for (int i = 0; i < DW_MAX_SERIES; i++)
        dw_series_free (page->series[axle][i]);
    }
  for (int i = 0; i < DW_MAX_SERIES; i++)
    g_free (page->ids[i]);
  dw_legend_clear (&page->legend);
  dw_chart_label_list_clear (&page->texts);
  dw_text_pango_free (page->pango);
  g_free (page);
}

void
dw_chart_page_paint (const dw_chart_page *page, cairo_t *cr)
{
  const dw_chart_style *style = &page->style;
  const dw_rect all = { 0.0, 0.0, page->options.width, page->options.height };
  dw_pen_fill_rect (cr, &all, style->background);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    if (page->layouts[axle] != NULL)
      dw_chart_paint (page->layouts[axle], style, cr);
  dw_legend_paint (&page->legend, style, cr);
  for (int i = 0; i < page->texts.n; i++)
    {
      const dw_chart_label *label = &page->texts.labels[i];
      dw_pen_color (cr, label->kind == DW_LABEL_TITLE ? style->ink : style->muted);
      dw_text_paint (cr, style, label->role, label->text, label->at, 0.0);
    }
}

const dw_chart *
dw_chart_page_get_chart (const dw_chart_page *page, dw_axle axle)
{
  return page->layouts[axle] != NULL ? &page->charts[axle] : NULL;
}

const dw_chart_layout *
dw_chart_page_get_layout (const dw_chart_page *page, dw_axle axle)
{
  return page->layouts[axle];
}

char *
dw_chart_page_describe (const dw_chart_page *page, const double *speeds, int n_speeds)
{
  GString *out = g_string_new (NULL);
  for (int axle = 0; axle < DW_N_AXLES; axle++)
    {
      if (page->layouts[axle] == NULL)
        continue;
      g_autofree char *text = dw_chart_describe (&page->charts[axle], speeds, n_speeds);
      g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", text);
    }
  return g_string_free (out, FALSE);
}

char *
dw_chart_page_to_csv (const dw_chart_page *page)
{
  GString *out = g_string_new (dw_chart_csv_header);
  for (int i = 0; i < page->options.n_setups; i++)
    for (int axle = 0; axle < DW_N_AXLES; axle++)
      if (page->layouts[axle] != NULL)
        dw_chart_csv_add (&page->charts[axle], i, page->ids[i], dw_axle_name ((dw_axle)axle), out);
  return g_string_free (out, FALSE);
}
