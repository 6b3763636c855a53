/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-chart-export.h
 * The charts that the window shows, as a file or as a picture to paste: the same page as
 * `dampcalc chart` makes.
 */
#pragma once

#include "project/dw-project.h"
#include "sheet/dw-export.h"
#include "window/dw-chart-view.h"

G_BEGIN_DECLS

/**
 * Make the page in memory.
 *
 * @param drawn  of char *, ids whose curves are shown; the fitted one is the reference
 * @param look   chart whose choices, words and units are taken; its series are not looked at
 * @param kind   any, DW_EXPORT_CSV too
 * @return       caller frees; NULL with @p error
 */
GBytes *dw_chart_export_render (const dw_project *project, const GPtrArray *drawn,
                                const dw_chart *look, dw_export_kind kind, GError **error);

G_END_DECLS
