/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Photographs every page of the window, for people to look at.
 *
 * usage: photograph FOLDER LABEL PROJECT [PAGE]
 *
 * Writes FOLDER/LABEL-<page>-<theme>-<size>.png, of all pages or of one, in the caller's language and locale. Needs a
 * display; tests/photograph.sh gives it one and calls it once a language. A test suite with one test
 * a size, which fails when a picture could not be made or shows one colour only.
 */
#include <glib/gi18n.h>
#include <locale.h>
#include <stdlib.h>
#include <string.h>

#include "window-fixture.h"
#include "window/dw-curves-page.h"
#include "window/dw-damper-panel.h"
#include "window/dw-settings.h"
#include "window/dw-window-private.h"

typedef struct
{
  const char *name;
  dw_theme theme;
} photo_theme;

typedef struct
{
  int width;
  int height;
  int dpi; /* of letters; 96 = 100 % */
} photo_size;

/* What is done before the picture is taken. */
typedef struct
{
  const char *name;
  void (*prepare) (DwWindow *window);
} photo_page;

/* Its frame included, where the display has no shadows. */
static bool
has_size (GtkWidget *window, const photo_size *size)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (window));
  return gdk_surface_get_width (surface) == size->width
         && gdk_surface_get_height (surface) == size->height;
}

typedef struct
{
  GtkWidget *window;
  const photo_size *size;
} wanted_size;

static bool
is_resized (void *data)
{
  const wanted_size *wanted = data;
  return has_size (wanted->window, wanted->size);
}

/* Nothing but one colour is no picture of a window. */
static bool
is_blank (GdkTexture *texture)
{
  const int width = gdk_texture_get_width (texture);
  const int height = gdk_texture_get_height (texture);
  g_autofree guint32 *pixels = g_new (guint32, (gsize)width * (gsize)height);

  gdk_texture_download (texture, (guchar *)pixels, (gsize)width * sizeof *pixels);
  for (gsize i = 1; i < (gsize)width * (gsize)height; i++)
    if (pixels[i] != pixels[0])
      return false;
  return true;
}

static bool
save_picture (GtkWidget *window, const char *path)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (window);
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();

  gdk_paintable_snapshot (paintable, snapshot, gdk_paintable_get_intrinsic_width (paintable),
                          gdk_paintable_get_intrinsic_height (paintable));
  GskRenderNode *node = gtk_snapshot_to_node (snapshot);
  if (node == NULL)
    return false;
  GskRenderer *renderer = gtk_native_get_renderer (GTK_NATIVE (window));
  g_autoptr (GdkTexture) texture = gsk_renderer_render_texture (renderer, node, NULL);
  const bool is_saved = !is_blank (texture) && gdk_texture_save_to_png (texture, path);
  gsk_render_node_unref (node);
  return is_saved;
}

static void
set_size (DwWindow *window, const photo_size *size)
{
  wanted_size wanted = { GTK_WIDGET (window), size };

  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", size->dpi * 1024, NULL);
  gtk_window_set_default_size (GTK_WINDOW (window), size->width, size->height);
  /* a window that cannot be made so small is photographed as it is, and said below */
  fixture_until (is_resized, &wanted, 2000);
  fixture_settle ();
}

/* The reading line in the middle of a chart. */
static void
show_curves (DwWindow *window)
{
  DwChartView *chart = dw_curves_page_get_chart (window->curves, DW_REAR);
  GtkWidget *page = GTK_WIDGET (window->curves);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "curves");
  g_object_set (page, "band", FALSE, "flow", "none", "logarithmic", FALSE, NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (fixture_find_type (page, GTK_TYPE_DROP_DOWN)), 0);
  dw_chart_view_read_at (chart, 0.8);
}

/* Band and flow strip, no reading line. */
static void
show_extras (DwWindow *window)
{
  GtkWidget *page = GTK_WIDGET (window->curves);
  dw_chart_view_read_at (dw_curves_page_get_chart (window->curves, DW_REAR), (double)NAN);
  g_object_set (page, "band", TRUE, "flow", "rebound", NULL);
}

/* Damping on a logarithmic axis. */
static void
show_damping (DwWindow *window)
{
  GtkWidget *page = GTK_WIDGET (window->curves);
  g_object_set (page, "band", FALSE, "flow", "none", "logarithmic", TRUE, NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (fixture_find_type (page, GTK_TYPE_DROP_DOWN)), 1);
}

/* A choice of drill sizes, with the oils at hand. */
static void
show_drilling (DwWindow *window)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "drilling");
  fixture_settle ();
  GListModel *list = dw_drill_choices_get_list (dw_drill_page_get_choices (window->drill));
  const guint middle = g_list_model_get_n_items (list) / 2;
  g_autoptr (DwDrillChoice) choice = g_list_model_get_item (list, middle);
  g_object_set (window->drill, "oils", TRUE, NULL);
  if (choice != NULL)
    dw_drill_page_choose (window->drill, dw_drill_choice_get_row (choice)->result.size);
}

/* The sheet of the trial, then its second half with the bench card. */
static void
show_sheet (DwWindow *window)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "sheet");
  dw_sheet_page_set_kind (window->sheet, DW_SHEET_SETUP);
}

static void
show_card (DwWindow *window)
{
  gtk_widget_activate_action (GTK_WIDGET (window), "win.page", "s", "sheet");
  dw_sheet_page_set_kind (window->sheet, DW_SHEET_CARD);
}

/* The lower half of the damper panels. */
static void
show_panels (DwWindow *window)
{
  for (GtkWidget *widget = GTK_WIDGET (window); widget != NULL;)
    {
      if (DW_IS_DAMPER_PANEL (widget))
        {
          GtkWidget *scrolled = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
          GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (
              GTK_SCROLLED_WINDOW (scrolled));
          gtk_adjustment_set_value (adjustment, gtk_adjustment_get_upper (adjustment));
        }
      GtkWidget *next = gtk_widget_get_first_child (widget);
      while (next == NULL && widget != NULL)
        {
          next = gtk_widget_get_next_sibling (widget);
          widget = gtk_widget_get_parent (widget);
        }
      widget = next;
    }
}

static const char *folder;
static const char *label;
static const char *project;
static const char *only; /* page; NULL = all */

static void
photograph (DwWindow *window, const photo_page *page, const photo_theme *theme,
            const photo_size *size)
{
  g_autofree char *scale = size->dpi != 96 ? g_strdup_printf ("-%dpercent", size->dpi * 100 / 96)
                                           : g_strdup ("");
  g_autofree char *name = g_strdup_printf ("%s-%s-%s-%dx%d%s.png", label, page->name, theme->name,
                                           size->width, size->height, scale);
  g_autofree char *path = g_build_filename (folder, name, NULL);

  page->prepare (window);
  fixture_settle ();
  ck_assert_msg (has_size (GTK_WIDGET (window), size), "%s: the window needs %d x %d", name,
                 gtk_widget_get_width (GTK_WIDGET (window)),
                 gtk_widget_get_height (GTK_WIDGET (window)));
  /* between a change and its layout a window has nothing to show */
  bool is_saved = save_picture (GTK_WIDGET (window), path);
  for (int i = 0; i < 20 && !is_saved; i++)
    {
      fixture_settle ();
      is_saved = save_picture (GTK_WIDGET (window), path);
    }
  ck_assert_msg (is_saved, "%s: no picture", path);
}

static const photo_theme THEMES[] = { { "light", DW_THEME_LIGHT },
                                      { "dark", DW_THEME_DARK },
                                      { "contrast", DW_THEME_CONTRAST },
                                      { "sun", DW_THEME_SUN } };
static const photo_size SIZES[] = { { 1024, 700, 96 }, { 1600, 1000, 96 }, { 1024, 700, 144 } };
static const photo_page PAGES[] = { { "curves", show_curves },     { "extras", show_extras },
                                    { "damping", show_damping },   { "panels", show_panels },
                                    { "drilling", show_drilling }, { "sheet", show_sheet },
                                    { "card", show_card } };

START_TEST (every_page_has_its_picture)
{
  const photo_size *size = &SIZES[_i];

  setlocale (LC_NUMERIC, "");
  DwWindow *window = fixture_open (project);
  set_size (window, size);
  for (size_t t = 0; t < G_N_ELEMENTS (THEMES); t++)
    {
      dw_settings_set_theme (dw_application_get_settings (fixture_app ()), THEMES[t].theme);
      for (size_t p = 0; p < G_N_ELEMENTS (PAGES); p++)
        if (only == NULL || strcmp (PAGES[p].name, only) == 0)
          photograph (window, &PAGES[p], &THEMES[t], size);
    }
}
END_TEST

int
main (int argc, char **argv)
{
  Suite *s = suite_create ("window/photographs");
  TCase *tc = tcase_create ("pages");

  if (argc != 4 && argc != 5)
    {
      fprintf (stderr, "usage: photograph FOLDER LABEL PROJECT [PAGE]\n");
      return 2;
    }
  folder = argv[1];
  label = argv[2];
  project = argv[3];
  only = argc > 4 ? argv[4] : NULL;
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("DAMPWRIGHT_LOCALE_DIR"));
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  fixture_case (s, tc);
  tcase_add_loop_test (tc, every_page_has_its_picture, 0, (int)G_N_ELEMENTS (SIZES));
  return run_suite (s);
}
