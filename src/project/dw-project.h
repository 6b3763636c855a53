/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-project.h
 * A whole project: conditions, the meeting, notes, setups, the parts box.
 *
 * A project is a value: dw_project_copy() gives one that shares nothing a
 * caller cannotice. Copies share setups and the parts box behind the scenes
 * until one of them is edited, so a snapshot costs little; that is why
 * dw_project_get_setup() and dw_project_get_parts() return const pointers and
 * a change starts with dw_project_edit_setup() or dw_project_edit_parts().
 *
 * All numbers are SI, temperatures in degrees Celsius. One project may be
 * used by one thread at a time; different copies by different threads.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

#include "model/dw-damper.h"
#include "project/dw-parts.h"

G_BEGIN_DECLS

#define DW_PROJECT_MAX_SETUPS 1000 /**< setups in one project */
#define DW_PROJECT_MAX_ID     64   /**< characters of a setup's id */
#define DW_PROJECT_MAX_TEXT   200  /**< characters of a title or name */
#define DW_PROJECT_MAX_NOTES  4000 /**< characters of the notes to a project or a setup */

typedef enum
{
  DW_FRONT,
  DW_REAR,
  DW_N_AXLES
} dw_axle;

/** What it is like today. */
typedef struct
{
  double oil_temperature; /**< [degC] of the oil in the dampers */
  double air_temperature; /**< [degC] */
} dw_conditions;

/** Shaft speeds at which setups are judged, low < middle < high. */
typedef struct
{
  double low;    /**< [m/s] */
  double middle; /**< [m/s] */
  double high;   /**< [m/s] */
} dw_speeds;

/** What the car puts on its springs. */
typedef struct
{
  bool has_sprung_mass[DW_N_AXLES];
  double sprung_mass[DW_N_AXLES]; /**< [kg] per wheel; only if has_sprung_mass, else 0 */
} dw_car;

/** What the sheet says of the occasion. */
typedef enum
{
  DW_MEETING_EVENT,
  DW_MEETING_TRACK,
  DW_MEETING_SURFACE,
  DW_MEETING_DRIVER,
  DW_MEETING_CAR,
  DW_N_MEETING
} dw_meeting_field;

/** One way to build the four dampers; each entry stands for left and right. */
typedef struct
{
  char *id;    /**< owned; unique in the project, see dw_project_id_is_valid() */
  char *name;  /**< owned; see dw_project_text_is_valid() */
  char *notes; /**< owned, never NULL; see dw_project_notes_are_valid() */
  dw_damper damper[DW_N_AXLES];
} dw_setup;

typedef struct
{
  char *title;  /**< owned, never NULL */
  char *fitted; /**< owned, never NULL: id of the setup in the car, "" = none */
  dw_conditions conditions;
  dw_speeds speeds;
  dw_car car;
  char *meeting[DW_N_MEETING]; /**< owned, never NULL; "" = not said */
  char *notes;                 /**< owned, never NULL; see dw_project_notes_are_valid() */
  GPtrArray *setups;           /**< private: use the functions below */
  dw_parts *parts;             /**< private: use the functions below */
} dw_project;

/** A project ready to edit: one setup "baseline", fitted; a small parts box. Caller frees. */
dw_project *dw_project_new (void);

/** Without title, setups and parts, conditions and speeds at their defaults. Caller frees. */
dw_project *dw_project_new_empty (void);

/** Caller frees. */
dw_project *dw_project_copy (const dw_project *project);

/** Everything that a file holds is the same, numbers to the last bit. */
bool dw_project_equal (const dw_project *a, const dw_project *b);

/** NULL is allowed. */
void dw_project_free (dw_project *project);

/** Conditions, speeds and car that a project has when nothing is said. */
dw_conditions dw_conditions_defaults (void);
dw_speeds dw_speeds_defaults (void);

/** @param title  valid text, copied */
void dw_project_set_title (dw_project *project, const char *title);

/**
 * Say something of the occasion.
 *
 * @param text  copied; "" = not said
 * @return      false, and nothing changed, when it is not valid, see dw_project_text_is_valid()
 */
bool dw_project_set_meeting (dw_project *project, dw_meeting_field field, const char *text);

/**
 * Note something on the project as a whole.
 *
 * @param notes  copied to the last blank; "" = nothing
 * @return       false, and nothing changed, when they are not valid
 */
bool dw_project_set_notes (dw_project *project, const char *notes);

/**
 * Say which setup is in the car.
 *
 * @param id  of a setup of this project, or NULL or "" for none; copied
 * @return    false, and nothing changed, when there is no such setup
 */
bool dw_project_set_fitted (dw_project *project, const char *id);

guint dw_project_get_n_setups (const dw_project *project);

/** Borrowed, valid until the project changes. @param index  < number of setups */
const dw_setup *dw_project_get_setup (const dw_project *project, guint index);

/** Borrowed as above; NULL when there is no setup of this id. */
const dw_setup *dw_project_find_setup (const dw_project *project, const char *id);

/** Place of a setup in the list, -1 when there is none of this id. */
int dw_project_find_index (const dw_project *project, const char *id);

/** The setup in the car, borrowed; NULL when none is. */
const dw_setup *dw_project_get_fitted (const dw_project *project);

/**
 * A setup to write into; the copies made before keep theirs.
 *
 * The id must not be changed through this pointer. Borrowed, valid until the
 * project is copied or changed otherwise.
 */
dw_setup *dw_project_edit_setup (dw_project *project, guint index);

/**
 * Put a setup without notes at the end of the list.
 *
 * @param id    valid, and not in use; NULL = make one from the name
 * @param name  valid text, copied
 * @param front copied, as is @p rear; not checked here
 * @return      its place in the list; -1, and nothing changed, when the list is full, the
 *              id is in use or not valid, or the name is not valid
 */
int dw_project_add_setup (dw_project *project, const char *id, const char *name,
                          const dw_damper *front, const dw_damper *rear);

/** Take a setup out. When it was the fitted one, none is afterwards. */
void dw_project_remove_setup (dw_project *project, guint index);

/** Change the order; the setups between move up or down by one. */
void dw_project_move_setup (dw_project *project, guint from, guint to);

/** @return  false, and nothing changed, when the name is not valid */
bool dw_project_rename_setup (dw_project *project, guint index, const char *name);

/** Note something on a setup, as for the project. */
bool dw_project_set_setup_notes (dw_project *project, guint index, const char *notes);

/**
 * An id that no setup has yet, made from a name: "Rear quicker" gives
 * "rear-quicker", then "rear-quicker-2". Caller frees.
 */
char *dw_project_make_id (const dw_project *project, const char *name);

/** Borrowed, valid until the project changes. */
const dw_parts *dw_project_get_parts (const dw_project *project);

/** The parts box to write into; the copies made before keep theirs. Borrowed as for a setup. */
dw_parts *dw_project_edit_parts (dw_project *project);

/** An XML name without colon, 1 to DW_PROJECT_MAX_ID characters. NULL is not. */
bool dw_project_id_is_valid (const char *id);

/** UTF-8 without control characters, 0 to DW_PROJECT_MAX_TEXT characters. NULL is not. */
bool dw_project_text_is_valid (const char *text);

/**
 * UTF-8 in any number of lines, 0 to DW_PROJECT_MAX_NOTES characters, of the control characters only
 * line feed and tab. NULL is not.
 */
bool dw_project_notes_are_valid (const char *notes);

/** "front" or "rear". */
const char *dw_axle_name (dw_axle axle);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (dw_project, dw_project_free)

G_END_DECLS
