/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-paper.h"

#include <math.h>
#include <string.h>

/* [pt] half an inch */
static const double MARGIN = 36.0;

static const struct
{
  const char *name;
  double width;  /* [pt] */
  double height; /* [pt] */
} papers[DW_N_PAPERS] = {
  [DW_PAPER_A4] = { "a4", 210.0 * 72.0 / 25.4, 297.0 * 72.0 / 25.4 },
  [DW_PAPER_LETTER] = { "letter", 8.5 * 72.0, 11.0 * 72.0 },
};

const char *
dw_paper_name (dw_paper paper)
{
  return papers[paper].name;
}

bool
dw_paper_find (const char *name, dw_paper *paper)
{
  for (int i = 0; i < DW_N_PAPERS; i++)
    if (strcmp (papers[i].name, name) == 0)
      {
        *paper = (dw_paper)i;
        return true;
      }
  return false;
}

dw_paper
dw_paper_nearest (double width, double height)
{
  const double shape = height / width;
  dw_paper best = DW_PAPER_A4;
  for (int i = 1; i < DW_N_PAPERS; i++)
    if (fabs (papers[i].height / papers[i].width - shape)
        < fabs (papers[best].height / papers[best].width - shape))
      best = (dw_paper)i;
  return best;
}

double
dw_paper_width (dw_paper paper)
{
  return papers[paper].width;
}

double
dw_paper_height (dw_paper paper)
{
  return papers[paper].height;
}

dw_rect
dw_paper_frame (dw_paper paper)
{
  const dw_rect all = { 0.0, 0.0, papers[paper].width, papers[paper].height };
  return dw_rect_inset (&all, MARGIN);
}
