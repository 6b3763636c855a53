/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-chart-export.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sheet/dw-chart-page.h"
#include "sheet/dw-chart-words.h"

/* Two screen pixels a point: sharp when it is pasted into a page. */
static const double PICTURE_DPI = 144.0;

static void
paint (cairo_t *cr, int page, void *data)
{
  (void)page;
  dw_chart_page_paint (data, cr);
}

static void
set_setups (dw_chart_page_options *options, const dw_project *project, const GPtrArray *drawn)
{
  options->n_setups = 0;
  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < drawn->len && options->n_setups < DW_MAX_SERIES; i++)
      {
        const char *id = g_ptr_array_index (drawn, i);
        if ((strcmp (project->fitted, id) == 0) == (pass == 0))
          options->setups[options->n_setups++] = id;
      }
}

/* What the window shows, in its words. */
static void
set_look (dw_chart_page_options *options, const dw_chart *look)
{
  options->look.quantity = look->quantity;
  options->look.place = look->place;
  options->look.is_log = look->is_log;
  options->look.shows_cap = look->shows_cap;
  options->look.units = look->units;
  options->look.numbers = look->numbers;
  options->look.labels = look->labels;
  options->look.strip_stroke = look->strip_stroke;
  options->labels = dw_chart_page_words ();
  options->has_strip = look->strip_series >= 0 && look->strip_series < options->n_setups;
  options->strip_setup = options->has_strip ? look->strip_series : 0;
  options->has_band = look->shows_band;
}

static GBytes *
render_page (const dw_chart_page_options *options, dw_chart_page *page, dw_export_kind kind,
             GError **error)
{
  const dw_project *project = options->project;
  const double speeds[] = { project->speeds.low, project->speeds.middle, project->speeds.high };

  if (kind == DW_EXPORT_CSV)
    {
      char *text = dw_chart_page_to_csv (page);
      return g_bytes_new_take (text, strlen (text));
    }
  g_autofree char *words = dw_chart_page_describe (page, speeds, G_N_ELEMENTS (speeds));
  const dw_drawing drawing = { .width = options->width,
                               .height = options->height,
                               .dpi = PICTURE_DPI,
                               .n_pages = 1,
                               .title = project->title,
                               .description = words,
                               .paint = paint,
                               .data = page };
  return dw_export_render (&drawing, kind, error);
}

GBytes *
dw_chart_export_render (const dw_project *project, const GPtrArray *drawn, const dw_chart *look,
                        dw_export_kind kind, GError **error)
{
  dw_chart_page_options options = dw_chart_page_options_defaults (project);
  dw_chart_page_failure failure;

  if (drawn->len == 0)
    {
      g_set_error_literal (error, DW_EXPORT_ERROR, DW_EXPORT_ERROR_DRAWING,
                           _ ("No setup is drawn."));
      return NULL;
    }
  set_setups (&options, project, drawn);
  set_look (&options, look);
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&options, &failure);
  if (page == NULL)
    {
      g_set_error (error, DW_EXPORT_ERROR, DW_EXPORT_ERROR_DRAWING, "%s", failure.finding.text);
      return NULL;
    }
  return render_page (&options, page, kind, error);
}
