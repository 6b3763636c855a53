/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-chart-style.h"

#include <string.h>

/* Lightness, chroma, hue. */
typedef struct
{
  double lightness, chroma, hue;
} lch;

/* What one ready-made style differs in from the others. */
typedef struct
{
  const char *name;
  lch background, plot, ink, muted, grid, minor_grid;
  lch share[DW_N_SHARES];
  lch metal, shim, warning;
  lch line[DW_N_SLOTS];
  double letters;    /* [1] of the usual size */
  double weight;     /* [1] of the usual line width */
  double band_alpha; /* [1] */
} recipe;

/* The colours of the trials are those of the search that dw-chart-style.h tells of. */
static const recipe recipes[DW_N_STYLES] = {
  [DW_STYLE_LIGHT] = {
    .name = "light",
    .background = { 99, 0, 0 }, .plot = { 99, 0, 0 }, .ink = { 18, 6, 280 }, .muted = { 40, 6, 280 },
    .grid = { 85, 3, 280 }, .minor_grid = { 93, 2, 280 },
    .share = { { 78, 22, 260 }, { 88, 34, 90 }, { 96, 2, 280 } },
    .metal = { 86, 3, 270 }, .shim = { 62, 30, 80 }, .warning = { 48, 75, 35 },
    .line = { { 18, 18, 280 }, { 48, 70, 345 }, { 32, 85, 300 }, { 48, 40, 150 }, { 24, 40, 60 } },
    .letters = 1.0, .weight = 1.0, .band_alpha = 0.2,
  },
  [DW_STYLE_DARK] = {
    .name = "dark",
    .background = { 14, 3, 280 }, .plot = { 14, 3, 280 }, .ink = { 94, 2, 280 }, .muted = { 75, 4, 280 },
    .grid = { 33, 4, 280 }, .minor_grid = { 22, 4, 280 },
    .share = { { 44, 28, 260 }, { 36, 26, 90 }, { 19, 3, 280 } },
    .metal = { 38, 3, 270 }, .shim = { 66, 34, 85 }, .warning = { 73, 55, 45 },
    .line = { { 96, 3, 280 }, { 62, 55, 0 }, { 58, 55, 285 }, { 82, 85, 135 }, { 58, 40, 105 } },
    .letters = 1.0, .weight = 1.0, .band_alpha = 0.26,
  },
  [DW_STYLE_CONTRAST] = {
    .name = "contrast",
    .background = { 100, 0, 0 }, .plot = { 100, 0, 0 }, .ink = { 0, 0, 0 }, .muted = { 0, 0, 0 },
    .grid = { 70, 0, 0 }, .minor_grid = { 88, 0, 0 },
    .share = { { 66, 26, 260 }, { 86, 50, 95 }, { 100, 0, 0 } },
    .metal = { 88, 0, 0 }, .shim = { 52, 34, 80 }, .warning = { 36, 70, 35 },
    .line = { { 0, 0, 0 }, { 37, 55, 0 }, { 31, 85, 300 }, { 37, 40, 150 }, { 28, 40, 75 } },
    .letters = 1.1, .weight = 1.35, .band_alpha = 0.28,
  },
  [DW_STYLE_CONTRAST_DARK] = {
    .name = "contrast-dark",
    .background = { 0, 0, 0 }, .plot = { 0, 0, 0 }, .ink = { 100, 0, 0 }, .muted = { 100, 0, 0 },
    .grid = { 42, 0, 0 }, .minor_grid = { 22, 0, 0 },
    .share = { { 52, 34, 260 }, { 36, 34, 90 }, { 0, 0, 0 } },
    .metal = { 30, 0, 0 }, .shim = { 72, 44, 85 }, .warning = { 74, 60, 50 },
    .line = { { 100, 0, 0 }, { 66, 55, 0 }, { 62, 55, 270 }, { 86, 85, 150 }, { 66, 70, 105 } },
    .letters = 1.1, .weight = 1.35, .band_alpha = 0.32,
  },
  [DW_STYLE_SUN] = {
    .name = "sun",
    .background = { 100, 0, 0 }, .plot = { 100, 0, 0 }, .ink = { 0, 0, 0 }, .muted = { 0, 0, 0 },
    .grid = { 74, 0, 0 }, .minor_grid = { 90, 0, 0 },
    .share = { { 62, 30, 260 }, { 88, 60, 95 }, { 100, 0, 0 } },
    .metal = { 88, 0, 0 }, .shim = { 52, 34, 80 }, .warning = { 36, 70, 35 },
    .line = { { 0, 0, 0 }, { 37, 55, 0 }, { 31, 85, 300 }, { 37, 40, 150 }, { 28, 40, 75 } },
    .letters = 1.3, .weight = 1.8, .band_alpha = 0.3,
  },
  [DW_STYLE_PRINT] = {
    .name = "print",
    .background = { 100, 0, 0 }, .plot = { 100, 0, 0 }, .ink = { 0, 0, 0 }, .muted = { 0, 0, 0 },
    .grid = { 78, 0, 0 }, .minor_grid = { 90, 0, 0 },
    .share = { { 78, 0, 0 }, { 91, 0, 0 }, { 100, 0, 0 } },
    .metal = { 90, 0, 0 }, .shim = { 60, 0, 0 }, .warning = { 0, 0, 0 },
    .line = { { 0, 0, 0 }, { 0, 0, 0 }, { 0, 0, 0 }, { 0, 0, 0 }, { 0, 0, 0 } },
    .letters = 0.9, .weight = 0.75, .band_alpha = 0.16,
  },
};

/* Dash, marker and width by slot, the same in every style. [pt] */
static const dw_line_style slots[DW_N_SLOTS] = {
  [DW_SLOT_FITTED] = { .width = 2.4, .n_dash = 0, .marker = DW_MARKER_CIRCLE },
  [DW_SLOT_TRIAL_1]
  = { .width = 1.7, .dash = { 7.0, 3.0 }, .n_dash = 2, .marker = DW_MARKER_SQUARE },
  [DW_SLOT_TRIAL_2]
  = { .width = 1.7, .dash = { 12.0, 3.0, 2.5, 3.0 }, .n_dash = 4, .marker = DW_MARKER_TRIANGLE },
  [DW_SLOT_TRIAL_3]
  = { .width = 1.7, .dash = { 3.6, 2.4 }, .n_dash = 2, .marker = DW_MARKER_DIAMOND },
  [DW_SLOT_TRIAL_4]
  = { .width = 1.7, .dash = { 14.0, 4.5 }, .n_dash = 2, .marker = DW_MARKER_CROSS },
};

static const dw_font fonts[DW_N_TEXTS] = {
  [DW_TEXT_TITLE] = { 12.0, true }, [DW_TEXT_CAPTION] = { 10.0, false },
  [DW_TEXT_TICK] = { 9.5, false },  [DW_TEXT_LEGEND] = { 10.0, false },
  [DW_TEXT_NOTE] = { 9.0, false },
};

static dw_color
color (lch c)
{
  return dw_color_from_lch (c.lightness, c.chroma, c.hue);
}

static void
scale_lines (dw_chart_style *style, double factor)
{
  double *const lengths[] = { &style->frame_width,      &style->zero_width,   &style->grid_width,
                              &style->minor_grid_width, &style->cap_width,    &style->reading_width,
                              &style->onset_radius,     &style->marker_radius };
  for (unsigned i = 0; i < sizeof lengths / sizeof *lengths; i++)
    *lengths[i] *= factor;
  for (int i = 0; i < DW_N_SLOTS; i++)
    style->line[i].width *= factor;
}

static void
scale_letters (dw_chart_style *style, double factor)
{
  for (int i = 0; i < DW_N_TEXTS; i++)
    style->font[i].size *= factor;
}

static void
scale_dashes (dw_chart_style *style, double factor)
{
  style->marker_spacing *= factor;
  for (int i = 0; i < DW_N_SLOTS; i++)
    for (int k = 0; k < style->line[i].n_dash; k++)
      style->line[i].dash[k] *= factor;
}

dw_chart_style
dw_chart_style_make (dw_style_id id)
{
  const recipe *r = &recipes[id];
  dw_chart_style style = {
    .font_family = "Sans",
    .background = color (r->background),
    .plot = color (r->plot),
    .ink = color (r->ink),
    .muted = color (r->muted),
    .grid = color (r->grid),
    .minor_grid = color (r->minor_grid),
    .metal = color (r->metal),
    .shim = color (r->shim),
    .warning = color (r->warning),
    .frame_width = 0.8,
    .zero_width = 1.5,
    .grid_width = 0.6,
    .minor_grid_width = 0.4,
    .marker_radius = 3.0,
    .marker_spacing = 96.0,
    .onset_radius = 3.6,
    .past_width = 0.62,
    .cap_width = 0.7,
    .reading_width = 1.0,
    .band_alpha = r->band_alpha,
  };
  memcpy (style.line, slots, sizeof slots);
  memcpy (style.font, fonts, sizeof fonts);
  for (int i = 0; i < DW_N_SLOTS; i++)
    style.line[i].color = color (r->line[i]);
  for (int i = 0; i < DW_N_SHARES; i++)
    style.share[i] = color (r->share[i]);
  scale_lines (&style, r->weight);
  scale_letters (&style, r->letters);
  scale_dashes (&style, r->weight > 1.0 ? r->weight : 1.0);
  return style;
}

const char *
dw_style_name (dw_style_id id)
{
  return recipes[id].name;
}

bool
dw_style_find (const char *name, dw_style_id *id)
{
  for (int i = 0; i < DW_N_STYLES; i++)
    if (strcmp (recipes[i].name, name) == 0)
      {
        *id = (dw_style_id)i;
        return true;
      }
  return false;
}

void
dw_chart_style_scale (dw_chart_style *style, double factor)
{
  scale_lines (style, factor);
  scale_letters (style, factor);
  scale_dashes (style, factor);
}
