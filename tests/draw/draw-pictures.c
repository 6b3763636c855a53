/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-pictures.h"

#include <glib.h>
#include <stdlib.h>

#include "test-support.h"

/* Another release of the rasterisers moves edges by a fraction of a pixel: so much of the picture
 * may differ by more than this. */
static const int CLEARLY = 64; /* of 255 */
static const double MOST_CLEARLY = 0.004;
static const double MOST_ON_AVERAGE = 1.0; /* of 255 */

double
picture_difference (cairo_surface_t *a, cairo_surface_t *b, double *clearly)
{
  const int width = cairo_image_surface_get_width (a);
  const int height = cairo_image_surface_get_height (a);
  const unsigned char *pa = cairo_image_surface_get_data (a);
  const unsigned char *pb = cairo_image_surface_get_data (b);
  const int stride_a = cairo_image_surface_get_stride (a);
  const int stride_b = cairo_image_surface_get_stride (b);
  double sum = 0.0;
  int n = 0;
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        int most = 0;
        for (int c = 0; c < 3; c++)
          most = MAX (most, abs (pa[y * stride_a + 4 * x + c] - pb[y * stride_b + 4 * x + c]));
        sum += most;
        n += most > CLEARLY;
      }
  *clearly = (double)n / (width * height);
  return sum / (width * height);
}

void
picture_assert_stored (cairo_surface_t *surface, const char *name)
{
  char *path = test_data_path (name);
  double clearly;
  cairo_surface_flush (surface);
  if (g_strcmp0 (g_getenv ("DW_UPDATE_IMAGES"), "1") == 0)
    ck_assert_int_eq (cairo_surface_write_to_png (surface, path), CAIRO_STATUS_SUCCESS);
  cairo_surface_t *stored = cairo_image_surface_create_from_png (path);
  ck_assert_int_eq (cairo_surface_status (stored), CAIRO_STATUS_SUCCESS);
  ck_assert_int_eq (cairo_image_surface_get_width (stored),
                    cairo_image_surface_get_width (surface));
  ck_assert_int_eq (cairo_image_surface_get_height (stored),
                    cairo_image_surface_get_height (surface));
  const double mean = picture_difference (surface, stored, &clearly);
  ck_assert_msg (mean <= MOST_ON_AVERAGE && clearly <= MOST_CLEARLY,
                 "%s: %.2f of 255 on average, %.2f %% clearly", name, mean, 100.0 * clearly);
  cairo_surface_destroy (stored);
  free (path);
}
