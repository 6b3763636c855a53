/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-export.h
 * Drawings as files: SVG, PNG, PDF, and text such as CSV.
 *
 * A file is made whole in memory first and takes the old one's place only when it is complete on
 * disk. The same drawing gives the same bytes: no date but the one it says, no counter of the process.
 */
#pragma once

#include <cairo.h>
#include <glib.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define DW_EXPORT_ERROR (dw_export_error_quark ())

typedef enum
{
  DW_EXPORT_ERROR_SIZE,   /**< too small or too large to be drawn */
  DW_EXPORT_ERROR_DRAWING /**< cairo could not */
} dw_export_error;

GQuark dw_export_error_quark (void);

typedef enum
{
  DW_EXPORT_SVG,
  DW_EXPORT_PNG,
  DW_EXPORT_PDF,
  DW_EXPORT_CSV, /**< written by who knows the numbers, not by dw_export_render() */
  DW_N_EXPORTS
} dw_export_kind;

/** "svg" and so on, as a file's name ends. */
const char *dw_export_kind_name (dw_export_kind kind);

/** Kind by the end of a file's name, capitals or not; false when it is none of them. */
bool dw_export_kind_of (const char *path, dw_export_kind *kind);

/** Something to draw. Borrows everything. */
typedef struct
{
  double width;            /**< [pt] of a page */
  double height;           /**< [pt] */
  double dpi;              /**< pixels of a PNG per inch, 72 = one a point */
  int first_page;          /**< that is painted first; the numbers of the others follow */
  int n_pages;             /**< 1, or more for PDF */
  const char *title;       /**< for the file's own data; NULL = none */
  const char *description; /**< in words; NULL = none */
  const char *date;        /**< "2026-11-25", for a PDF's own data; NULL = the same in every file */
  void (*paint) (cairo_t *cr, int page, void *data); /**< in points, from the upper left corner */
  void *data;
} dw_drawing;

/** [pt] and pixels that a page may have at most, and at least. */
#define DW_EXPORT_LEAST_POINTS 100.0
#define DW_EXPORT_MOST_POINTS  4000.0
#define DW_EXPORT_MOST_PIXELS  16000.0

/**
 * Draw into memory.
 *
 * @param kind  not DW_EXPORT_CSV
 * @return      caller frees; NULL with DW_EXPORT_ERROR
 */
GBytes *dw_export_render (const dw_drawing *drawing, dw_export_kind kind, GError **error);

/**
 * Write a file, all or nothing; on failure the old one is untouched.
 *
 * @return  FALSE with G_FILE_ERROR
 */
gboolean dw_export_save (const char *path, GBytes *bytes, GError **error);

G_END_DECLS
