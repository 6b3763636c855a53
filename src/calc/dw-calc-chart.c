/* SPDX-License-Identifier: GPL-3.0-or-later */
/* dampcalc chart: force against shaft speed of up to four setups, drawn into a file. */

#include "calc/dw-calc-command.h"

#include <string.h>

#include "calc/dw-calc-error.h"
#include "calc/dw-calc-input.h"
#include "calc/dw-calc-number.h"
#include "calc/dw-calc-text.h"
#include "sheet/dw-chart-page.h"
#include "sheet/dw-export.h"

static const char *const paragraphs[] = {
  "FILE is a project, as the window saves it. Draws setups over each other, front and rear side "
  "by side with the same axes: compression up, rebound down, against shaft speed. The fitted setup "
  "is the solid, heavy line; every other has its own dash, marker and colour.",
  "A ring marks where a void opens behind the piston; from there on the curve is dotted: the force "
  "that is reached once the lost travel is over. The thin line from the ring on is the force until "
  "then.",
  "The end of the name behind -o decides what is written: .svg and .pdf for print and the web, "
  ".png as pixels, .csv for the numbers of the curves.",
  NULL,
};

static const char *const examples[] = {
  "chart club-day.dampwright --setup baseline,trial-1 -o curves.svg",
  "chart club-day.dampwright --setup baseline,trial-1 --axle rear --log --quantity c -o rear.png",
  "chart club-day.dampwright --setup baseline --style print -o curves.pdf",
  NULL,
};

static const dw_calc_option options[] = {
  { "--setup", "ID[,ID...]",
    "Setups to draw, one to four; the first is the reference. Default: the fitted one." },
  { "--axle", "front|rear", "Only this axle. Default: both." },
  { "--to", "V",
    "Fastest speed in m/s, 0.01 to 10; of the wheel with --at wheel. Default: the project's high "
    "speed." },
  { "--log", NULL, "Speed by its logarithm, over two decades." },
  { "--quantity", "force|c", "Force in N (default), or c, force over speed, in N s/m." },
  { "--at", "shaft|wheel",
    "At the damper's shaft (default), or at the wheel by the motion ratio." },
  { "--strip", "compression|rebound",
    "Show below which holes the oil of the first setup takes in this stroke." },
  { "--band", NULL,
    "Shade what the spread of parts makes of each curve: holes drilled to H12, bottle 5 %, oil 2 "
    "K, clearance 0.01 mm, piston 0.05 mm, shim 5 %. Two standard deviations." },
  { "--style", "light|dark|contrast|contrast-dark|sun|print",
    "Colours and lines. Default: print for .pdf, else light. sun is for a screen in bright sun." },
  { "--size", "WxH",
    "Size of the page in points (1/72 inch), 100 to 4000 either way. Default: 842x595, A4 lying." },
  { "--dpi", "N", "Pixels of a .png per inch, 36 to 600. Default: 144, two a point." },
  { NULL, NULL, NULL },
};

static const double USUAL_DPI = 144.0;
#define LEAST_DPI 36
#define MOST_DPI  600

static const double POINTS_PER_INCH = 72.0;

/* [m/s] Below it a chart would show nothing but the seal. */
static const double LEAST_TO = 0.01;

/* What the command line asks for. */
typedef struct
{
  dw_export_kind kind;
  int dpi;
  double to; /* [m/s]; 0 = the project's high speed */
  dw_calc_axles axles;
  char **ids; /* owned; NULL = the fitted setup */
  dw_chart_page_options page;
} request;

static void
request_clear (request *r)
{
  g_clear_pointer (&r->ids, g_strfreev);
}

/* ---- arguments ---- */

static gboolean
read_kind (const dw_calc_arguments *arguments, dw_export_kind *kind, GError **error)
{
  const char *path = dw_calc_arguments_require (arguments, "-o", error);
  if (path == NULL)
    return FALSE;
  return dw_export_kind_of (path, kind)
         || dw_calc_misused (error, "-o needs a name that ends in .svg, .png, .pdf or .csv");
}

static gboolean
read_size (const dw_calc_arguments *arguments, dw_chart_page_options *page, GError **error)
{
  const char *text = dw_calc_arguments_get (arguments, "--size");
  if (text == NULL)
    return TRUE;
  const int least = (int)DW_EXPORT_LEAST_POINTS;
  const int most = (int)DW_EXPORT_MOST_POINTS;
  int size[2];
  g_auto (GStrv) parts = g_strsplit (text, "x", -1);
  if (g_strv_length (parts) != 2)
    return dw_calc_misused (error, "--size needs two whole numbers of points with an x between "
                                   "them, 842x595");
  for (int i = 0; i < 2; i++)
    if (!dw_calc_count_parse ("--size", parts[i], least, most, &size[i], error))
      return FALSE;
  page->width = size[0];
  page->height = size[1];
  return TRUE;
}

static gboolean
read_style (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const char *words[DW_N_STYLES + 1] = { NULL };
  for (int i = 0; i < DW_N_STYLES; i++)
    words[i] = dw_style_name ((dw_style_id)i);
  int style = r->kind == DW_EXPORT_PDF ? DW_STYLE_PRINT : DW_STYLE_LIGHT;
  if (!dw_calc_arguments_choose (arguments, "--style", words, &style, error))
    return FALSE;
  r->page.style = (dw_style_id)style;
  return TRUE;
}

static gboolean
read_look (const dw_calc_arguments *arguments, request *r, GError **error)
{
  static const char *const quantities[] = { "force", "c", NULL };
  static const char *const places[] = { "shaft", "wheel", NULL };
  static const char *const strokes[] = { "compression", "rebound", NULL };
  int quantity = DW_SHOW_FORCE;
  int place = DW_AT_SHAFT;
  int stroke = DW_N_STROKES;
  if (!dw_calc_arguments_choose (arguments, "--quantity", quantities, &quantity, error)
      || !dw_calc_arguments_choose (arguments, "--at", places, &place, error)
      || !dw_calc_arguments_choose (arguments, "--strip", strokes, &stroke, error))
    return FALSE;
  r->page.look.quantity = (dw_chart_quantity)quantity;
  r->page.look.place = (dw_chart_place)place;
  r->page.look.is_log = dw_calc_arguments_has (arguments, "--log");
  r->page.has_band = dw_calc_arguments_has (arguments, "--band");
  r->page.has_strip = stroke != DW_N_STROKES;
  if (r->page.has_strip)
    r->page.look.strip_stroke = (dw_stroke)stroke;
  return TRUE;
}

static gboolean
read_ids (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const char *text = dw_calc_arguments_get (arguments, "--setup");
  if (text == NULL)
    return TRUE;
  r->ids = g_strsplit (text, ",", -1);
  const guint n = g_strv_length (r->ids);
  if (n > DW_MAX_SERIES)
    return dw_calc_misused (error, "--setup takes at most %d setups, not %u", DW_MAX_SERIES, n);
  for (guint i = 0; i < n; i++)
    {
      if (*r->ids[i] == '\0')
        return dw_calc_misused (error, "--setup needs ids with commas between them");
      for (guint k = 0; k < i; k++)
        if (strcmp (r->ids[k], r->ids[i]) == 0)
          return dw_calc_misused (error, "--setup names \"%s\" twice", r->ids[i]);
    }
  return TRUE;
}

/* A picture that no memory holds is refused before the project is read. */
static gboolean
check_pixels (const request *r, GError **error)
{
  const double longest = r->page.width > r->page.height ? r->page.width : r->page.height;
  if (r->kind != DW_EXPORT_PNG || longest * r->dpi <= POINTS_PER_INCH * DW_EXPORT_MOST_PIXELS)
    return TRUE;
  return dw_calc_misused (error, "--size and --dpi make a picture of more than %.0f pixels",
                          DW_EXPORT_MOST_PIXELS);
}

static gboolean
read_request (const dw_calc_arguments *arguments, request *r, GError **error)
{
  const dw_calc_range speeds = { LEAST_TO, dw_limit_get (DW_LIMIT_SPEED)->high, 0, "m/s" };
  const char *to = dw_calc_arguments_get (arguments, "--to");
  const char *dpi = dw_calc_arguments_get (arguments, "--dpi");
  if (!read_kind (arguments, &r->kind, error))
    return FALSE;
  if (dpi != NULL && r->kind != DW_EXPORT_PNG)
    return dw_calc_misused (error, "--dpi goes with a .png only");
  r->dpi = (int)USUAL_DPI;
  return (dpi == NULL || dw_calc_count_parse ("--dpi", dpi, LEAST_DPI, MOST_DPI, &r->dpi, error))
         && (to == NULL || dw_calc_number_parse ("--to", to, &speeds, &r->to, error))
         && dw_calc_input_axles (arguments, &r->axles, error) && read_ids (arguments, r, error)
         && read_style (arguments, r, error) && read_look (arguments, r, error)
         && read_size (arguments, &r->page, error) && check_pixels (r, error);
}

/* ---- the page ---- */

static gboolean
choose_setups (request *r, const dw_project *project, const char *path, GError **error)
{
  dw_chart_page_options *page = &r->page;
  const dw_chart_page_options usual = dw_chart_page_options_defaults (project);
  if (r->ids == NULL)
    {
      memcpy (page->setups, usual.setups, sizeof page->setups);
      page->n_setups = usual.n_setups;
      g_autofree char *shown = dw_calc_printable (path);
      return page->n_setups > 0 || dw_calc_refused (error, "%s: there is no setup to draw", shown);
    }
  page->n_setups = (int)g_strv_length (r->ids);
  for (int i = 0; i < page->n_setups; i++)
    {
      const dw_setup *setup = dw_calc_input_find (project, path, r->ids[i], error);
      if (setup == NULL)
        return FALSE;
      page->setups[i] = setup->id;
    }
  return TRUE;
}

static void
paint (cairo_t *cr, G_GNUC_UNUSED int number, void *data)
{
  dw_chart_page_paint (data, cr);
}

static gboolean
write_page (const request *r, dw_chart_page *page, FILE *file, GError **error)
{
  const dw_project *project = r->page.project;
  if (r->kind == DW_EXPORT_CSV)
    {
      g_autofree char *text = dw_chart_page_to_csv (page);
      fputs (text, file);
      return TRUE;
    }
  const double speeds[] = { project->speeds.low, project->speeds.middle, project->speeds.high };
  g_autofree char *description = dw_chart_page_describe (page, speeds, G_N_ELEMENTS (speeds));
  const dw_drawing drawing = { .width = r->page.width,
                               .height = r->page.height,
                               .dpi = r->dpi,
                               .n_pages = 1,
                               .title = project->title,
                               .description = description,
                               .paint = paint,
                               .data = page };
  g_autoptr (GBytes) bytes = dw_export_render (&drawing, r->kind, error);
  if (bytes == NULL)
    return FALSE;
  gsize length = 0;
  const void *data = g_bytes_get_data (bytes, &length);
  fwrite (data, 1, length, file);
  return TRUE;
}

static gboolean
draw (request *r, const char *path, FILE *file, GError **error)
{
  g_autoptr (dw_project) project = dw_calc_input_load (path, error);
  if (project == NULL || !choose_setups (r, project, path, error))
    return FALSE;
  r->page.project = project;
  r->page.to = r->to > 0.0 ? r->to : project->speeds.high;
  r->page.has_axle[DW_FRONT] = r->axles.first == DW_FRONT;
  r->page.has_axle[DW_REAR] = r->axles.last == DW_REAR;

  dw_chart_page_failure failure;
  g_autoptr (dw_chart_page) page = dw_chart_page_new (&r->page, &failure);
  if (page == NULL)
    return dw_calc_input_refuse (path,
                                 dw_project_find_setup (project, r->page.setups[failure.setup]),
                                 failure.axle, &failure.finding, error);
  return write_page (r, page, file, error);
}

static int
run (const dw_calc_arguments *arguments, FILE *file, GError **error)
{
  const char *path = dw_calc_arguments_get_operand (arguments, 0);
  g_autoptr (dw_project) none = dw_project_new_empty ();
  request r = { .page = dw_chart_page_options_defaults (none) };
  int status = DW_CALC_WRONG_USAGE;
  if (read_request (arguments, &r, error))
    status = draw (&r, path, file, error) ? DW_CALC_GOOD : DW_CALC_BAD_INPUT;
  request_clear (&r);
  return status;
}

const dw_calc_command dw_calc_chart = {
  .name = "chart",
  .summary = "Draw the curves of one to four setups over each other",
  .operands = "FILE",
  .n_operands = 1,
  .has_format = false,
  .paragraphs = paragraphs,
  .examples = examples,
  .options = options,
  .run = run,
};
