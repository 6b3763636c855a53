/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-window-private.h
 * Shared by the window and its actions.
 */
#pragma once

#include "window/dw-curves-page.h"
#include "window/dw-drill-page.h"
#include "window/dw-setup-list.h"
#include "window/dw-sheet-page.h"
#include "window/dw-window.h"

struct _DwWindow
{
  GtkApplicationWindow parent_instance;

  /* Template children (borrowed) */
  GtkLabel *title;
  GtkLabel *subtitle;
  GtkInfoBar *info;
  GtkLabel *info_text;
  GtkButton *info_reload;
  GtkMenuButton *recent;
  GtkWidget *undo_button;
  GtkWidget *redo_button;
  DwSetupList *setups;
  GtkStack *pages;
  DwCurvesPage *curves;
  GtkBox *drill_place;
  GtkBox *sheet_place;

  /* Borrowed: made when they are first shown, NULL until then */
  DwDrillPage *drill;
  DwSheetPage *sheet;

  /* Owned */
  DwSettings *settings;
  DwDocument *document;
  GCancellable *cancellable; /* ends with the window */
  char *selected;
  GPtrArray *drawn;       /* of char *: ids whose curves are shown, in the order of their lines */
  char *told[3];          /* what is told and not yet answered: errors, warnings, hints; owned */
  gboolean offers_reload; /* with one of them */
  gboolean closing;       /* the user has said what becomes of unsaved work */
  gboolean close_after_save;
};

G_BEGIN_DECLS

/** Everything that depends on the project or on what is selected. */
void dw_window_refresh (DwWindow *self);

/** Sensitivity of all actions, in this one place. */
void dw_window_update_actions (DwWindow *self);

/**
 * A line above the pages, until it is answered. A later one of the same type takes its place, one of
 * another type stands below or above it.
 *
 * @param offer_reload  shows the button that loads the file again
 */
void dw_window_tell (DwWindow *self, GtkMessageType type, const char *text, gboolean offer_reload);

/** Take away all that was told. */
void dw_window_tell_nothing (DwWindow *self);

/** Fill the menu of recent projects and examples. */
void dw_window_show_recent (DwWindow *self);

void dw_window_install_actions (GtkWidgetClass *widget_class);

/** Ask the application to open a file. */
void dw_window_open (DwWindow *self, GFile *file);

/** Save, asking for a name when there is none. */
void dw_window_save (DwWindow *self);

G_END_DECLS
