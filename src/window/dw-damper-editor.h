/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-damper-editor.h
 * One damper of a document, edited: what the parts of the damper panel share.
 *
 * Every change is tried on a copy first. A damper that would not fit together is refused: nothing
 * reaches the document, and the model's finding says why. No widgets here. Use from the main
 * thread.
 *
 * Signals: "changed" (gboolean another) after the damper, or what is shown of it, changed; another
 * is TRUE when what is being typed must be dropped, because it now is another damper, or its rows
 * have moved. "finding-changed" when a change was refused, or the next one went through.
 */
#pragma once

#include <glib-object.h>

#include "project/dw-document.h"
#include "sheet/dw-quantity.h"

G_BEGIN_DECLS

#define DW_TYPE_DAMPER_EDITOR (dw_damper_editor_get_type ())
G_DECLARE_FINAL_TYPE (DwDamperEditor, dw_damper_editor, DW, DAMPER_EDITOR, GObject)

/** Change a damper. */
typedef void (*DwDamperChange) (dw_damper *damper, gconstpointer data);

/** Caller unrefs. */
DwDamperEditor *dw_damper_editor_new (void);

/** @param document  referenced; NULL = none */
void dw_damper_editor_set_document (DwDamperEditor *self, DwDocument *document);

/** @param id  of a setup, copied; NULL, or one that the document does not have = none */
void dw_damper_editor_set_setup (DwDamperEditor *self, const char *id);

void dw_damper_editor_set_axle (DwDamperEditor *self, dw_axle axle);

void dw_damper_editor_set_units (DwDamperEditor *self, dw_units units);

/** Borrowed; NULL when there is none. */
DwDocument *dw_damper_editor_get_document (DwDamperEditor *self);

/** Borrowed; NULL when there is none. */
const char *dw_damper_editor_get_setup (DwDamperEditor *self);

dw_axle dw_damper_editor_get_axle (DwDamperEditor *self);

dw_units dw_damper_editor_get_units (DwDamperEditor *self);

/** The damper as it stands in the document, borrowed until the next change; NULL = none. */
const dw_damper *dw_damper_editor_get_damper (DwDamperEditor *self);

/**
 * Change the damper, as one step to undo.
 *
 * @param label  "Change front bore", translated
 * @param merge  what runs of changes that become one step have in common, beside setup and axle;
 *               NULL = a step of its own
 * @param data   for @p change
 * @return       FALSE when it was refused, see dw_damper_editor_get_finding()
 */
gboolean dw_damper_editor_change (DwDamperEditor *self, const char *label, const char *merge,
                                  DwDamperChange change, gconstpointer data);

/** The one of two labels that is of this axle. */
const char *dw_damper_editor_label (DwDamperEditor *self, const char *front, const char *rear);

/** Why the last change was refused, borrowed; NULL when it was not. */
const dw_error *dw_damper_editor_get_finding (DwDamperEditor *self);

/** A part of the damper that is copied whole. */
typedef enum
{
  DW_SECTION_PISTON, /**< with its holes */
  DW_SECTION_VALVE,  /**< with its stack */
  DW_SECTION_OIL,
  DW_SECTION_GAS,
  DW_SECTION_SPRING, /**< with linkage and stance */
  DW_SECTION_BODY,   /**< with filling and seal */
  DW_N_SECTIONS
} dw_section;

/** "piston", "valve", ...: what findings' paths and the panel's actions begin with. */
const char *dw_section_name (dw_section section);

/** The section of this name; DW_N_SECTIONS when there is none. */
dw_section dw_section_find (const char *name);

/**
 * Make one section the same in front and rear, as one step to undo.
 *
 * @param to_other  from this axle to the other one, else from the other one to this
 * @param finding   set when the damper that is written to would not fit together; it may be the
 *                  other one, so dw_damper_editor_get_finding() does not tell it; may be NULL
 * @return          FALSE when it would not
 */
gboolean dw_damper_editor_copy_section (DwDamperEditor *self, dw_section section, gboolean to_other,
                                        dw_error *finding);

/** Tell the parts to drop what is being typed: rows have moved. */
void dw_damper_editor_reset (DwDamperEditor *self);

G_END_DECLS
