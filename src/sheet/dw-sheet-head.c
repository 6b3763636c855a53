/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-sheet-head.h"

#include <glib/gi18n.h>
#include <math.h>

#include "sheet/dw-part-words.h"

/* [1] of the width: the title, and what kind of sheet it is. */
static const double TITLE_PART = 0.7;

/* [pt] */
static const double LINE_GAP = 2.0;
static const double FIELD_GAP = 10.0;
static const double FIELD_PAD = 3.0;
static const double HEAD_PAD = 6.0;
static const double FOOT_PAD = 3.0;

/* [pt] of a line that somebody writes on by hand. */
static const double WRITING_HEIGHT = 13.0;

/* As wide as the numbers of pages can become. */
static const int MOST_PAGES = 888;

/* ---- title ---- */

/* Title, or a line for it, in the left part; returns where it ends. */
static double
add_title (const dw_sheet_tools *tools, dw_block *block, const char *title, double width)
{
  if (*title == '\0')
    {
      g_autoptr (PangoLayout) name = dw_typeset_line (tools->typeset, DW_TYPE_STRONG, _ ("Setup"));
      int label_width = 0;
      pango_layout_get_size (name, &label_width, NULL);
      const double x = (double)label_width / PANGO_SCALE + LINE_GAP;
      const double y = 1.5 * WRITING_HEIGHT;
      dw_block_add_text (block, g_steal_pointer (&name), 0.0,
                         y - dw_typeset_line_height (tools->typeset, DW_TYPE_STRONG));
      dw_sheet_add_rule (block, x, y, width - x);
      return y + LINE_GAP;
    }
  return dw_block_add_text (block, dw_typeset_fit (tools->typeset, DW_TYPE_TITLE, title, width),
                            0.0, 0.0);
}

/* Words at the right; returns where they end. */
static double
add_right (const dw_sheet_tools *tools, dw_block *block, dw_type type, const char *text, double y)
{
  if (text == NULL || *text == '\0')
    return y;
  const double width = (1.0 - TITLE_PART) * block->width - FIELD_GAP;
  return y
         + dw_block_add_text_right (block, dw_typeset_fit (tools->typeset, type, text, width),
                                    block->width, y);
}

/* The day that a blank sheet is filled in is not the day it is printed. */
static double
add_date_line (const dw_sheet_tools *tools, dw_block *block, double y)
{
  const double from = (TITLE_PART + 0.5 * (1.0 - TITLE_PART)) * block->width;
  const double line = dw_typeset_line_height (tools->typeset, DW_TYPE_SMALL);
  const double end = y + 1.2 * WRITING_HEIGHT;
  dw_block_add_text_right (block, dw_typeset_line (tools->typeset, DW_TYPE_SMALL, _ ("Date")),
                           from - LINE_GAP, end - line);
  dw_sheet_add_rule (block, from, end, block->width - from);
  return end + LINE_GAP;
}

dw_block *
dw_sheet_head_make (const dw_sheet_tools *tools, const dw_sheet_title *title)
{
  const dw_sheet_options *o = &tools->options;
  const double width = tools->frame.width;
  dw_block *block = dw_block_new (width);
  double left = add_title (tools, block, title->title, TITLE_PART * width);
  if (*o->project->title != '\0' && !g_str_equal (o->project->title, title->title))
    left += dw_block_add_text (
        block, dw_typeset_fit (tools->typeset, DW_TYPE_BODY, o->project->title, TITLE_PART * width),
        0.0, left);
  double right = add_right (tools, block, DW_TYPE_HEADING, title->kind, 0.0);
  right = add_right (tools, block, DW_TYPE_BODY, title->note, right);
  right = *title->title != '\0' ? add_right (tools, block, DW_TYPE_BODY, o->date, right)
                                : add_date_line (tools, block, right);
  const double y = fmax (left, right) + LINE_GAP;
  dw_block_add_line (block, (dw_spot){ 0.0, y }, (dw_spot){ width, y }, 3.0 * DW_SHEET_RULE);
  block->height = y + HEAD_PAD;
  return block;
}

dw_block *
dw_sheet_head_continued (const dw_sheet_tools *tools, const dw_sheet_title *title)
{
  const double width = tools->frame.width;
  const char *name = *title->title != '\0' ? title->title : title->kind;
  /* Translators: name of a setup or a kind of sheet, on its second page. */
  g_autofree char *text = g_strdup_printf (_ ("%s, continued"), name);
  dw_block *block = dw_block_new (width);
  const double left = dw_block_add_text (
      block, dw_typeset_fit (tools->typeset, DW_TYPE_HEADING, text, TITLE_PART * width), 0.0, 0.0);
  const double right = add_right (tools, block, DW_TYPE_BODY, title->kind, 0.0);
  const double y = fmax (left, right) + LINE_GAP;
  dw_block_add_line (block, (dw_spot){ 0.0, y }, (dw_spot){ width, y }, 3.0 * DW_SHEET_RULE);
  block->height = y + HEAD_PAD;
  return block;
}

/* ---- fields ---- */

/* Name and value of a field; an empty one is a line to write on. */
static dw_block *
field (const dw_sheet_tools *tools, const char *name, const char *value, double width)
{
  dw_block *block = dw_block_new (width);
  const double y = dw_block_add_text (
      block, dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, name, width), 0.0, 0.0);
  if (*value != '\0')
    block->height = y
                    + dw_block_add_text (
                        block, dw_typeset_fit (tools->typeset, DW_TYPE_STRONG, value, width), 0.0,
                        y);
  else
    {
      block->height = y + WRITING_HEIGHT;
      dw_sheet_add_rule (block, 0.0, block->height - LINE_GAP, width);
    }
  return block;
}

/* Blocks side by side, as high as the highest. */
static dw_block *
beside (dw_block **cells, int n, double width, double step)
{
  dw_block *row = dw_block_new (width);
  for (int i = 0; i < n; i++)
    {
      row->height = fmax (row->height, cells[i]->height);
      dw_block_place (row, cells[i], i * step, 0.0);
    }
  row->height += FIELD_PAD;
  return row;
}

enum
{
  N_ROWS = 2,
  N_COLUMNS = 4
};

static char *
temperature (const dw_sheet_tools *tools, double value, bool is_blank)
{
  return is_blank ? g_strdup ("")
                  : dw_part_words_quantity (DW_QUANTITY_TEMPERATURE, tools->options.units, value);
}

dw_block *
dw_sheet_head_fields (const dw_sheet_tools *tools, bool is_blank)
{
  const dw_project *project = tools->options.project;
  const double step = (tools->frame.width + FIELD_GAP) / N_COLUMNS;
  g_autofree char *oil = temperature (tools, project->conditions.oil_temperature, is_blank);
  g_autofree char *air = temperature (tools, project->conditions.air_temperature, is_blank);
  char *const *meeting = project->meeting;
  const char *const fields[N_ROWS * N_COLUMNS][2] = {
    { _ ("Event"), meeting[DW_MEETING_EVENT] },
    { _ ("Track"), meeting[DW_MEETING_TRACK] },
    { _ ("Surface"), meeting[DW_MEETING_SURFACE] },
    { _ ("Oil in the dampers"), oil },
    { _ ("Driver"), meeting[DW_MEETING_DRIVER] },
    { _ ("Car"), meeting[DW_MEETING_CAR] },
    { _ ("Run, place"), "" },
    { _ ("Air"), air },
  };
  dw_block *block = dw_block_new (tools->frame.width);
  for (int row = 0; row < N_ROWS; row++)
    {
      dw_block *cells[N_COLUMNS];
      for (int i = 0; i < N_COLUMNS; i++)
        {
          const char *const *f = fields[row * N_COLUMNS + i];
          cells[i] = field (tools, f[0], is_blank ? "" : f[1], step - FIELD_GAP);
        }
      dw_block *line = beside (cells, N_COLUMNS, tools->frame.width, step);
      const double height = line->height;
      dw_block_place (block, line, 0.0, block->height);
      block->height += height;
    }
  return block;
}

/* ---- foot ---- */

static const char *
caution (void)
{
  return _ ("Estimates for scale-model dampers, not for vehicles that carry people or go on roads. "
            "Check on the car, one change at a time; the event's and local rules and the maker's "
            "limits come first.");
}

/* Program and file at the left, page at the right. */
static PangoLayout *
make_source (const dw_sheet_tools *tools, double width)
{
  const char *file = tools->options.file_name;
  g_autofree char *text = file != NULL ? g_strdup_printf ("Dampwright " DW_VERSION ", %s", file)
                                       : g_strdup ("Dampwright " DW_VERSION);
  return dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, text, width);
}

static char *
page_words (int number, int n_pages, bool goes_on)
{
  if (goes_on)
    /* Translators: "page 1 of 3, continued on page 2" */
    return g_strdup_printf (_ ("page %d of %d, continued on page %d"), number, n_pages, number + 1);
  return g_strdup_printf (_ ("page %d of %d"), number, n_pages);
}

static PangoLayout *
make_page_words (const dw_sheet_tools *tools, int number, int n_pages, bool goes_on)
{
  g_autofree char *words = page_words (number, n_pages, goes_on);
  return dw_typeset_fit (tools->typeset, DW_TYPE_SMALL, words,
                         (1.0 - TITLE_PART) * tools->frame.width - FIELD_GAP);
}

static double
height_of (PangoLayout *layout)
{
  int height = 0;
  pango_layout_get_size (layout, NULL, &height);
  return (double)height / PANGO_SCALE;
}

/* How many pages there will be is not known when room is kept for the foot. */
double
dw_sheet_foot_height (const dw_sheet_tools *tools)
{
  g_autoptr (PangoLayout) warning = dw_typeset_lines (tools->typeset, DW_TYPE_SMALL, caution (),
                                                      tools->frame.width);
  g_autoptr (PangoLayout) source = make_source (tools, TITLE_PART * tools->frame.width);
  g_autoptr (PangoLayout) page = make_page_words (tools, MOST_PAGES, MOST_PAGES, true);
  return height_of (warning) + fmax (height_of (source), height_of (page)) + 2.0 * FOOT_PAD;
}

void
dw_sheet_foot_add (const dw_sheet_tools *tools, dw_block *page, int number, int n_pages,
                   bool goes_on)
{
  const dw_rect *frame = &tools->frame;
  const double right = frame->x + frame->width;
  double y = frame->y + frame->height - dw_sheet_foot_height (tools);
  dw_sheet_add_rule (page, frame->x, y, frame->width);
  y += FOOT_PAD;
  y += dw_block_add_text (
      page, dw_typeset_lines (tools->typeset, DW_TYPE_SMALL, caution (), frame->width), frame->x,
      y);
  dw_block_add_text (page, make_source (tools, TITLE_PART * frame->width), frame->x, y);
  dw_block_add_text_right (page, make_page_words (tools, number, n_pages, goes_on), right, y);
}
