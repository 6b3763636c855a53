/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dw-label-column.h"

#include <assert.h>
#include <math.h>

int
dw_label_column_room (double top, double bottom, double height)
{
  return (int)floor (fmax (0.0, bottom - top) / height + 1e-9);
}

/* Neighbours that have run into each other. */
typedef struct
{
  int n;
  double sum; /* of their wanted places */
} block;

static double
mean (const block *b)
{
  return b->sum / b->n;
}

/* With the labels above taken off, y[i] = middle[i] - i height, "no overlap" is "rising". Nearest
 * rising numbers: pool adjacent violators, each block at its mean. Bounds that are the same for all are
 * kept by cutting that solution to them (Barlow, Bartholomew, Bremner and Brunk, Statistical Inference
 * under Order Restrictions, 1972, from memory; the test compares with a search). */
void
dw_label_column_spread (const double *wanted, int n, double height, double top, double bottom,
                        double *middle)
{
  block blocks[DW_LABEL_COLUMN_MOST];
  int n_blocks = 0;
  assert (n >= 0 && n <= DW_LABEL_COLUMN_MOST);

  for (int i = 0; i < n; i++)
    {
      blocks[n_blocks++] = (block){ 1, wanted[i] - i * height };
      while (n_blocks > 1 && mean (&blocks[n_blocks - 2]) > mean (&blocks[n_blocks - 1]))
        {
          blocks[n_blocks - 2].n += blocks[n_blocks - 1].n;
          blocks[n_blocks - 2].sum += blocks[n_blocks - 1].sum;
          n_blocks--;
        }
    }
  const double low = top + 0.5 * height;
  const double high = bottom - (n - 0.5) * height;
  int i = 0;
  for (int b = 0; b < n_blocks; b++)
    for (int k = 0; k < blocks[b].n; k++, i++)
      middle[i] = fmax (low, fmin (high, mean (&blocks[b]))) + i * height;
}
