/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-field.h
 * One table for every attribute of the project file.
 *
 * It drives the reader, the writer and the test of the schema; ranges and
 * defaults come from dw-limits.h. Constant data: any thread may use it.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>
#include <stddef.h>

#include "model/dw-limits.h"

G_BEGIN_DECLS

#define DW_PROJECT_NAMESPACE_STEM "urn:dampwright:project:" /**< the version follows */
#define DW_PROJECT_VERSION        1 /**< that this program reads and writes */
#define DW_PROJECT_NAMESPACE      "urn:dampwright:project:1"

/** What an attribute holds, and the C type at its offset. */
typedef enum
{
  DW_FIELD_NUMBER,    /**< double in SI */
  DW_FIELD_COUNT,     /**< int */
  DW_FIELD_WORD,      /**< int or enum, index into words */
  DW_FIELD_FLAG,      /**< bool, "no" or "yes"; written when it is true */
  DW_FIELD_TEXT,      /**< char *, owned; may be left out */
  DW_FIELD_ID,        /**< char *, owned; must be given */
  DW_FIELD_REFERENCE, /**< char *, owned; an id or empty */
  DW_FIELD_VERSION    /**< nothing: DW_PROJECT_VERSION */
} dw_field_kind;

typedef struct
{
  const char *name; /**< of the attribute, "bore-mm" */
  dw_field_kind kind;
  size_t offset;            /**< in the struct that the form is read into */
  dw_limit_id limit;        /**< number and count only */
  int power;                /**< number only: of ten from the attribute's unit to SI */
  const char *unit;         /**< as it stands in a sentence, "mm"; "" for none */
  const char *path;         /**< in the findings of the model, NULL = that of the limit */
  bool optional;            /**< number: a bool at @p has says whether it was given;
                                 text: written only when it is not empty */
  size_t has;               /**< number only: offset of that bool; only if optional */
  const char *const *words; /**< word only: NULL at the end */
  int fallback;             /**< word only: when left out, -1 = must be given */
} dw_field;

/** The attributes that one kind of element may have; oil and gas come in several forms. */
typedef enum
{
  DW_FORM_PROJECT,
  DW_FORM_CONDITIONS,
  DW_FORM_SPEEDS,
  DW_FORM_CAR,
  DW_FORM_MEETING,
  DW_FORM_NOTES,
  DW_FORM_SETUP,
  DW_FORM_DAMPER,
  DW_FORM_BODY,
  DW_FORM_PISTON,
  DW_FORM_HOLES,
  DW_FORM_VALVE,
  DW_FORM_SHIM,
  DW_FORM_OIL_NOMINAL,
  DW_FORM_OIL_MEASURED,
  DW_FORM_OIL_BLEND,
  DW_FORM_OIL_PART,
  DW_FORM_GAS_SEALED,
  DW_FORM_GAS_VENTED,
  DW_FORM_SEAL,
  DW_FORM_SPRING,
  DW_FORM_LINKAGE,
  DW_FORM_STANCE,
  DW_FORM_PARTS,
  DW_FORM_DRILL,
  DW_FORM_BOTTLE_NOMINAL,
  DW_FORM_BOTTLE_MEASURED,
  DW_FORM_BOTTLE_BLEND,
  DW_FORM_SPARE_PISTON,
  DW_N_FORMS
} dw_form_id;

typedef struct
{
  const char *element; /**< name of the element */
  const char *pattern; /**< name of the definition in data/project.rng that holds the attributes */
  const dw_field *fields; /**< in the order in which they are written */
  guint n_fields;
} dw_form;

/** Never NULL; static storage. */
const dw_form *dw_form_get (dw_form_id id);

/** The field of this name, NULL when the form has none. */
const dw_field *dw_form_find (const dw_form *form, const char *name);

/** Whether any form is for elements of this name. */
bool dw_form_is_element (const char *name);

/**
 * What an attribute stands for when it is left out. Optional numbers and texts are left alone.
 *
 * @param values  the struct that the form belongs to
 * @return        false when the attribute must be given
 */
bool dw_field_set_default (const dw_field *field, void *values);

/** As above for all fields of a form; those that must be given are left alone. */
void dw_form_set_defaults (dw_form_id id, void *values);

/** The path by which the model's findings call a field, "" when they never do. */
const char *dw_field_get_path (const dw_field *field);

/** "5 to 40 mm"; for words and flags "one of bladder, vented, emulsion"; caller frees. */
char *dw_field_range_text (const dw_field *field);

G_END_DECLS
