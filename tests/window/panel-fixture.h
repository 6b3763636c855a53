/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file panel-fixture.h
 * What tests of the damper panel and its parts share: GTK without an application, a document,
 * a window to show a widget in, typing and keys.
 */
#pragma once

#include <gtk/gtk.h>

#include "test-support.h"
#include "project/dw-document.h"
#include "window/dw-damper-editor.h"
#include "window/dw-number-field.h"

/** For tcase_add_checked_fixture(), in the test's process. Without a display the test fails. */
void panel_start (void);
void panel_stop (void);

/** A document of one setup "a" that uses everything: open and covered holes, two kinds of shim of
 * materials without a name, an oil that thins. Front and rear differ. Caller unrefs. */
DwDocument *panel_document (dw_oil_kind kind);

/** The damper in the document's setup "a"; borrowed. */
const dw_damper *panel_damper (DwDocument *document, dw_axle axle);

/** An editor of the front of "a". Caller unrefs. */
DwDamperEditor *panel_editor (DwDocument *document);

/** Put a widget into a window of 640 by 700 pixels and show it. Floating widget taken. */
GtkWidget *panel_show (GtkWidget *widget);

/** Run the main loop until the frame is drawn. */
void panel_settle (void);

/** The widget below @p root with this id in its template; must be there. */
GtkWidget *panel_find (GtkWidget *root, const char *id);

/** The entry of a number field, as GtkEntry. */
GtkWidget *panel_entry (DwNumberField *field);

/** What stands in a number field. */
const char *panel_text (DwNumberField *field);

/** Replace what stands in a number field key by key. */
void panel_type (DwNumberField *field, const char *text);

void panel_enter (DwNumberField *field);

/** Press a key in a number field; @return  whether the field took it */
gboolean panel_key (DwNumberField *field, guint keyval);

/** Row of a box of rows, from 0; must be there. */
GtkWidget *panel_row (GtkWidget *table, int index);

/** How many rows a table has. */
int panel_count_rows (GtkWidget *table);

/** Suite main for these tests. */
#define panel_case(suite, tc)                                                                      \
  do                                                                                               \
    {                                                                                              \
      tcase_set_timeout (tc, 60);                                                                  \
      tcase_add_checked_fixture (tc, panel_start, panel_stop);                                     \
      suite_add_tcase (suite, tc);                                                                 \
    }                                                                                              \
  while (0)
