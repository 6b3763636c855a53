/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file window-fixture.h
 * The program inside a test: its application, a window on a demo project, a state folder of its
 * own. GTK is started in the test's child process, so every test has a fresh one.
 */
#pragma once

#include "test-support.h"
#include "window/dw-application.h"
#include "window/dw-window.h"

/** For tcase_add_checked_fixture(). Without a display the test fails. */
void fixture_start (void);
void fixture_stop (void);

/** Borrowed. */
DwApplication *fixture_app (void);

/** Folder for files of the test; borrowed. */
const char *fixture_folder (void);

/** A copy of a demo project, open in a window that is shown. */
DwWindow *fixture_open (const char *demo);

/** The first window of the application that is a DwWindow; NULL when there is none. */
DwWindow *fixture_window (void);

/** The first window that is no DwWindow, a dialog say; NULL when there is none. */
GtkWindow *fixture_dialog (void);

/** Run the main loop until @p done says so; false after @p ms milliseconds. */
bool fixture_until (bool (*done) (void *data), void *data, guint ms);

/** Run the main loop until nothing is waiting and the frame is drawn. */
void fixture_settle (void);

/** First widget of a type, the one given or below it; NULL when there is none. */
GtkWidget *fixture_find_type (GtkWidget *widget, GType type);

/** First label or inscription below a widget whose text has this piece; NULL when there is none. */
GtkWidget *fixture_find_text (GtkWidget *widget, const char *piece);

/** Suite main for window tests. */
#define fixture_case(suite, tc)                                                                    \
  do                                                                                               \
    {                                                                                              \
      tcase_set_timeout (tc, 60);                                                                  \
      tcase_add_checked_fixture (tc, fixture_start, fixture_stop);                                 \
      suite_add_tcase (suite, tc);                                                                 \
    }                                                                                              \
  while (0)
