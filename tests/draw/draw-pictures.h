/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file draw-pictures.h
 * Whole pictures against stored ones.
 */
#pragma once

#include <cairo.h>

/**
 * Mean difference of two pictures of one size [1 of 255].
 *
 * @param clearly  part of the pixels that differ much [1]
 */
double picture_difference (cairo_surface_t *a, cairo_surface_t *b, double *clearly);

/**
 * Fail the test unless a picture is nearly the stored one. DW_UPDATE_IMAGES=1 in the environment stores
 * what is painted now: look at it before you commit it.
 *
 * @param name  of a file in tests/data
 */
void picture_assert_stored (cairo_surface_t *surface, const char *name);
