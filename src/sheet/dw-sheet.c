/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-sheet.h"

#include <glib/gi18n.h>

#include "draw/dw-pen.h"
#include "sheet/dw-bench-card.h"
#include "sheet/dw-setup-sheet.h"
#include "sheet/dw-summary-sheet.h"

/* Pixels of a picture per inch: sharp enough to be read on a phone. */
static const double PICTURE_DPI = 150.0;

#define MOST_PARTS 2

struct dw_sheet
{
  dw_sheet_kind kind;
  dw_sheet_tools *tools;
  dw_sheet_part *parts[MOST_PARTS];
  int n_parts;
  char *title;
  char *date;      /* NULL = none */
  char *file_name; /* NULL = none */
};

/* ---- making ---- */

static bool
add_part (dw_sheet *sheet, dw_sheet_part *part)
{
  if (part == NULL)
    return false;
  sheet->parts[sheet->n_parts++] = part;
  return true;
}

static bool
add_parts (dw_sheet *sheet, dw_sheet_failure *failure)
{
  if (sheet->kind == DW_SHEET_SUMMARY)
    return add_part (sheet, dw_summary_sheet_new (sheet->tools, failure));
  if (sheet->kind != DW_SHEET_CARD && !add_part (sheet, dw_setup_sheet_new (sheet->tools, failure)))
    return false;
  return (sheet->kind != DW_SHEET_CARD && sheet->kind != DW_SHEET_BOTH)
         || add_part (sheet, dw_bench_card_new (sheet->tools));
}

/* The part that a page belongs to, and its number there. */
static const dw_sheet_part *
part_of (const dw_sheet *sheet, int *page)
{
  for (int i = 0; i < sheet->n_parts; i++)
    {
      const int n = (int)sheet->parts[i]->flow.pages->len;
      if (*page < n)
        return sheet->parts[i];
      *page -= n;
    }
  return NULL;
}

static void
add_feet (dw_sheet *sheet)
{
  const int n = dw_sheet_get_n_pages (sheet);
  for (int page = 0; page < n; page++)
    {
      int at = page;
      const dw_sheet_part *part = part_of (sheet, &at);
      dw_sheet_foot_add (sheet->tools, g_ptr_array_index (part->flow.pages, (guint)at), page + 1, n,
                         dw_sheet_goes_on (sheet, page));
    }
}

static char *
make_title (dw_sheet_kind kind, const dw_sheet_options *o)
{
  const char *what = kind == DW_SHEET_SUMMARY ? _ ("All setups")
                     : o->setup == NULL       ? _ ("Setup sheet")
                                              : dw_sheet_name (o->setup);
  return *o->project->title != '\0' ? g_strdup_printf ("%s – %s", what, o->project->title)
                                    : g_strdup (what);
}

dw_sheet *
dw_sheet_new (dw_sheet_kind kind, const dw_sheet_options *options, dw_sheet_failure *failure)
{
  g_return_val_if_fail (
      options->setup != NULL || kind == DW_SHEET_BLANK || kind == DW_SHEET_SUMMARY, NULL);
  dw_sheet_options own = *options;
  if (kind == DW_SHEET_BLANK)
    own.setup = NULL;
  if (own.setup == NULL || own.against == own.setup)
    own.against = NULL;

  g_autoptr (dw_sheet) sheet = g_new0 (dw_sheet, 1);
  sheet->kind = kind;
  own.date = sheet->date = g_strdup (own.date);
  own.file_name = sheet->file_name = g_strdup (own.file_name);
  sheet->tools = dw_sheet_tools_new (&own);
  sheet->title = make_title (kind, &own);
  if (!add_parts (sheet, failure))
    return NULL;
  add_feet (sheet);
  return g_steal_pointer (&sheet);
}

void
dw_sheet_free (dw_sheet *sheet)
{
  if (sheet == NULL)
    return;
  for (int i = 0; i < sheet->n_parts; i++)
    dw_sheet_part_free (sheet->parts[i]);
  dw_sheet_tools_free (sheet->tools);
  g_free (sheet->title);
  g_free (sheet->date);
  g_free (sheet->file_name);
  g_free (sheet);
}

/* ---- reading ---- */

int
dw_sheet_get_n_pages (const dw_sheet *sheet)
{
  int n = 0;
  for (int i = 0; i < sheet->n_parts; i++)
    n += (int)sheet->parts[i]->flow.pages->len;
  return n;
}

const dw_block *
dw_sheet_get_page (const dw_sheet *sheet, int page)
{
  const dw_sheet_part *part = part_of (sheet, &page);
  g_return_val_if_fail (part != NULL, NULL);
  return g_ptr_array_index (part->flow.pages, (guint)page);
}

bool
dw_sheet_goes_on (const dw_sheet *sheet, int page)
{
  const dw_sheet_part *part = part_of (sheet, &page);
  return part != NULL && (guint)page + 1 < part->flow.pages->len;
}

double
dw_sheet_get_width (const dw_sheet *sheet)
{
  return dw_paper_width (sheet->tools->options.paper);
}

double
dw_sheet_get_height (const dw_sheet *sheet)
{
  return dw_paper_height (sheet->tools->options.paper);
}

dw_rect
dw_sheet_get_frame (const dw_sheet *sheet)
{
  return sheet->tools->frame;
}

const char *
dw_sheet_get_title (const dw_sheet *sheet)
{
  return sheet->title;
}

/* ---- painting ---- */

void
dw_sheet_paint (const dw_sheet *sheet, int page, cairo_t *cr)
{
  const dw_rect paper = { 0.0, 0.0, dw_sheet_get_width (sheet), dw_sheet_get_height (sheet) };
  dw_pen_fill_rect (cr, &paper, sheet->tools->style.background);
  dw_block_paint (dw_sheet_get_page (sheet, page), cr);
}

static void
paint (cairo_t *cr, int page, void *data)
{
  dw_sheet_paint (data, page, cr);
}

dw_drawing
dw_sheet_drawing (dw_sheet *sheet, int first, int n_pages)
{
  return (dw_drawing){ .width = dw_sheet_get_width (sheet),
                       .height = dw_sheet_get_height (sheet),
                       .dpi = PICTURE_DPI,
                       .first_page = first,
                       .n_pages = n_pages,
                       .title = sheet->title,
                       .description = _ ("Setup sheet for the dampers of an off-road model car"),
                       .date = sheet->tools->options.date,
                       .paint = paint,
                       .data = sheet };
}
