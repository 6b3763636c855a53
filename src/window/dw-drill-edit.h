/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-edit.h
 * What drilling does to a project: an idea as a trial, or the piston that is now drilled. Both can be
 * undone in the program; the holes of the real part cannot.
 */
#pragma once

#include "project/dw-document.h"

G_BEGIN_DECLS

/**
 * Put a drilled damper into a trial.
 *
 * @param base   id of the setup it was drilled from
 * @param last   id of the trial of the last call, NULL = none: it is changed as long as nobody has
 *               changed it or noted something on it since, so that walking through choices leaves one trial
 * @param put    what the last call put into it; only with @p last
 * @param name   of the trial
 * @return       id of the trial, caller frees; NULL when the project is full or @p base is gone
 */
char *dw_drill_edit_trial (DwDocument *document, const char *base, dw_axle axle,
                           const dw_damper *drilled, const char *last, const dw_damper *put,
                           const char *name);

/**
 * The pistons of an axle are drilled now: the setup has them, it is the fitted one, and a spare piston
 * of the parts box that was like them has the same holes.
 *
 * @param id  of the setup
 * @return    whether anything was changed
 */
gboolean dw_drill_edit_drilled (DwDocument *document, const char *id, dw_axle axle,
                                const dw_damper *drilled);

G_END_DECLS
