/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-damper-place.h
 * Where each number of a damper is, how it is stepped, and what changing it is called.
 *
 * Offset, range and path come from the project's own table of fields. Constant data: any thread.
 */
#pragma once

#include "model/dw-damper.h"
#include "model/dw-status.h"
#include "project/dw-field.h"
#include "project/dw-project.h"
#include "window/dw-step.h"

G_BEGIN_DECLS

#define DW_DAMPER_PLACES 40 /**< rows of the table */

/** One number of a damper; in a group of holes, a shim or an oil of a blend a row is named too. */
typedef struct
{
  const char *id; /**< of its field in the panel or the row, "bore" */
  dw_form_id form;
  const char *attribute; /**< of the form, "bore-mm" */
  dw_quantity quantity;
  dw_step step;
  int index;                      /**< of its findings; -1 = none, or that of the row */
  const char *labels[DW_N_AXLES]; /**< of the undo step, to be translated */
} dw_damper_place;

/** Never NULL; static storage. @param i  < DW_DAMPER_PLACES */
const dw_damper_place *dw_damper_place_get (int i);

/** The place of this form and attribute; NULL when it is not in the table. */
const dw_damper_place *dw_damper_place_find (dw_form_id form, const char *attribute);

/** Whether it stands in a row: holes, shims, oils of a blend. */
gboolean dw_damper_place_has_rows (const dw_damper_place *place);

/** Whether it need not be given; the two numbers of thinning, which come together, are not meant. */
gboolean dw_damper_place_is_optional (const dw_damper_place *place);

/** Of the project's table; never NULL, static storage. */
const dw_field *dw_damper_place_field (const dw_damper_place *place);

/** Its number [SI or degC]; NaN = not given. @param row  of its table, inside; else ignored */
double dw_damper_place_read (const dw_damper_place *place, const dw_damper *damper, int row);

/**
 * Write a number [SI or degC] inside its range, or NaN where it is optional, to take it away. The
 * other share of a blend follows.
 */
void dw_damper_place_write (const dw_damper_place *place, dw_damper *damper, int row, double value);

/** Whether the finding is about this number. */
gboolean dw_damper_place_is_meant (const dw_damper_place *place, int row, const dw_error *finding);

G_END_DECLS
