/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-view.h"

#include <glib/gi18n.h>
#include <math.h>

/* [px] Around pages and between them. */
static const float MARGIN = 12.0F;

/* [px] Least width of a page that fits itself to the room. */
static const int LEAST_WIDTH = 260;

/* Sizes that steps go through. [1] */
static const double SIZES[] = { 0.25, 0.33, 0.5,  0.67, 0.75, 0.9, 1.0, 1.1,
                                1.25, 1.5,  1.75, 2.0,  2.5,  3.0, 4.0 };

struct _DwSheetView
{
  GtkWidget parent_instance;

  /* Owned */
  dw_sheet *sheet; /* NULL = none */

  double zoom; /* 0 = fit */
  int width;   /* that was told last */
};

G_DEFINE_FINAL_TYPE (DwSheetView, dw_sheet_view, GTK_TYPE_WIDGET)

static guint zoomed_signal;

/* ---- sizes ---- */

/* [px] of a point at the real size, as the screen says. */
static double
pixels_per_point (void)
{
  int dpi = 0;
  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  return (dpi > 0 ? dpi / 1024.0 : 96.0) / 72.0;
}

static double
fit_to (DwSheetView *self, int width)
{
  const double room = fmax (1.0, width - 2.0 * (double)MARGIN);
  return room / (dw_sheet_get_width (self->sheet) * pixels_per_point ());
}

static double
zoom_for (DwSheetView *self, int width)
{
  return self->zoom > 0.0 ? self->zoom : fit_to (self, width);
}

static graphene_rect_t
box_at (DwSheetView *self, int page, int width)
{
  const double scale = zoom_for (self, width) * pixels_per_point ();
  const float w = (float)rint (dw_sheet_get_width (self->sheet) * scale);
  const float h = (float)rint (dw_sheet_get_height (self->sheet) * scale);
  const float x = fmaxf (MARGIN, floorf (((float)width - w) / 2.0F));
  return GRAPHENE_RECT_INIT (x, MARGIN + (float)page * (h + MARGIN), w, h);
}

graphene_rect_t
dw_sheet_view_page_box (DwSheetView *self, int page)
{
  g_return_val_if_fail (DW_IS_SHEET_VIEW (self) && self->sheet != NULL,
                        GRAPHENE_RECT_INIT (0, 0, 0, 0));
  return box_at (self, page, gtk_widget_get_width (GTK_WIDGET (self)));
}

int
dw_sheet_view_page_at (DwSheetView *self, double y)
{
  g_return_val_if_fail (DW_IS_SHEET_VIEW (self), 0);
  if (self->sheet == NULL)
    return 0;
  const graphene_rect_t first = dw_sheet_view_page_box (self, 0);
  const int page = (int)floor ((y - (double)MARGIN) / (double)(first.size.height + MARGIN));
  return CLAMP (page, 0, dw_sheet_get_n_pages (self->sheet) - 1);
}

static void
dw_sheet_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  DwSheetView *self = DW_SHEET_VIEW (widget);
  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = LEAST_WIDTH;
  if (self->sheet == NULL)
    return;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      if (self->zoom > 0.0)
        *minimum = *natural = (int)ceilf (box_at (self, 0, 0).size.width + 2.0F * MARGIN);
      return;
    }
  const int last = dw_sheet_get_n_pages (self->sheet) - 1;
  const graphene_rect_t box = box_at (self, last, for_size > 0 ? for_size : LEAST_WIDTH);
  *minimum = *natural = (int)ceilf (box.origin.y + box.size.height + MARGIN);
}

static GtkSizeRequestMode
dw_sheet_view_get_request_mode (GtkWidget *widget)
{
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
tell_zoomed (gpointer data)
{
  g_autoptr (DwSheetView) self = data;
  g_signal_emit (self, zoomed_signal, 0);
}

/* Pages that fit themselves have another size in another room. Who shows it can not be laid out anew
 * in the middle of a layout. */
static void
dw_sheet_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  DwSheetView *self = DW_SHEET_VIEW (widget);
  (void)height;
  (void)baseline;
  if (width == self->width)
    return;
  self->width = width;
  if (self->zoom == 0.0)
    g_idle_add_once (tell_zoomed, g_object_ref (self));
}

/* ---- painting ---- */

static void
dw_sheet_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  DwSheetView *self = DW_SHEET_VIEW (widget);
  const float hair = 1.0F;
  const GdkRGBA edge = { 0.0F, 0.0F, 0.0F, 0.45F };

  for (int page = 0; self->sheet != NULL && page < dw_sheet_get_n_pages (self->sheet); page++)
    {
      const graphene_rect_t box = dw_sheet_view_page_box (self, page);
      const graphene_rect_t around = GRAPHENE_RECT_INIT (box.origin.x - hair, box.origin.y - hair,
                                                         box.size.width + 2.0F * hair,
                                                         box.size.height + 2.0F * hair);
      const double scale = (double)box.size.width / dw_sheet_get_width (self->sheet);
      gtk_snapshot_append_color (snapshot, &edge, &around);
      cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &box);
      cairo_translate (cr, (double)box.origin.x, (double)box.origin.y);
      cairo_scale (cr, scale, scale);
      dw_sheet_paint (self->sheet, page, cr);
      cairo_destroy (cr);
    }
}

/* ---- what is shown ---- */

/* For those who do not see it: the texts of all pages. */
static void
describe (DwSheetView *self)
{
  GString *words = g_string_new (NULL);
  for (int page = 0; self->sheet != NULL && page < dw_sheet_get_n_pages (self->sheet); page++)
    {
      g_autofree char *text = dw_block_get_words (dw_sheet_get_page (self->sheet, page));
      g_string_append (words, text);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words->str, -1);
  g_string_free (words, TRUE);
}

void
dw_sheet_view_take (DwSheetView *self, dw_sheet *sheet)
{
  g_return_if_fail (DW_IS_SHEET_VIEW (self));
  dw_sheet_free (self->sheet);
  self->sheet = sheet;
  describe (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

dw_sheet *
dw_sheet_view_get_sheet (DwSheetView *self)
{
  g_return_val_if_fail (DW_IS_SHEET_VIEW (self), NULL);
  return self->sheet;
}

/* ---- zoom ---- */

void
dw_sheet_view_set_zoom (DwSheetView *self, double zoom)
{
  g_return_if_fail (DW_IS_SHEET_VIEW (self));
  const double wanted = zoom > 0.0 ? CLAMP (zoom, DW_SHEET_VIEW_LEAST, DW_SHEET_VIEW_MOST) : 0.0;
  if (wanted == self->zoom)
    return;
  self->zoom = wanted;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, zoomed_signal, 0);
}

double
dw_sheet_view_get_shown_zoom (DwSheetView *self)
{
  g_return_val_if_fail (DW_IS_SHEET_VIEW (self), 1.0);
  const int width = gtk_widget_get_width (GTK_WIDGET (self));
  if (self->zoom > 0.0)
    return self->zoom;
  return self->sheet != NULL && width > 0 ? fit_to (self, width) : 1.0;
}

double
dw_sheet_view_zoom_for_height (DwSheetView *self, double height)
{
  g_return_val_if_fail (DW_IS_SHEET_VIEW (self) && self->sheet != NULL, 1.0);
  return fmax (DW_SHEET_VIEW_LEAST,
               (height - 2.0 * (double)MARGIN)
                   / (dw_sheet_get_height (self->sheet) * pixels_per_point ()));
}

gboolean
dw_sheet_view_is_fitting (DwSheetView *self)
{
  g_return_val_if_fail (DW_IS_SHEET_VIEW (self), FALSE);
  return self->zoom == 0.0;
}

void
dw_sheet_view_step_zoom (DwSheetView *self, int steps)
{
  /* a size that differs by less is the same */
  static const double SAME = 0.01;
  double zoom = dw_sheet_view_get_shown_zoom (self);
  const int n = G_N_ELEMENTS (SIZES);
  for (; steps > 0; steps--)
    for (int i = 0; i < n; i++)
      if (SIZES[i] > zoom + SAME)
        {
          zoom = SIZES[i];
          break;
        }
  for (; steps < 0; steps++)
    for (int i = n; i > 0; i--)
      if (SIZES[i - 1] < zoom - SAME)
        {
          zoom = SIZES[i - 1];
          break;
        }
  dw_sheet_view_set_zoom (self, zoom);
}

static gboolean
on_scroll (GtkEventControllerScroll *controller, double dx, double dy, DwSheetView *self)
{
  const GdkModifierType state = gtk_event_controller_get_current_event_state (
      GTK_EVENT_CONTROLLER (controller));
  (void)dx;
  if ((state & GDK_CONTROL_MASK) == 0 || dy == 0.0)
    return FALSE;
  dw_sheet_view_step_zoom (self, dy < 0.0 ? 1 : -1);
  return TRUE;
}

static gboolean
on_key (GtkWidget *widget, GVariant *steps, gpointer data)
{
  (void)data;
  dw_sheet_view_step_zoom (DW_SHEET_VIEW (widget), g_variant_get_int32 (steps));
  return TRUE;
}

static void
on_clicked (GtkGestureClick *gesture)
{
  gtk_widget_grab_focus (gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture)));
}

/* ---- widget ---- */

static void
dw_sheet_view_finalize (GObject *object)
{
  dw_sheet_free (DW_SHEET_VIEW (object)->sheet);
  G_OBJECT_CLASS (dw_sheet_view_parent_class)->finalize (object);
}

static void
dw_sheet_view_class_init (DwSheetViewClass *klass)
{
  static const struct
  {
    guint key;
    int steps;
  } keys[] = { { GDK_KEY_plus, 1 },
               { GDK_KEY_equal, 1 },
               { GDK_KEY_KP_Add, 1 },
               { GDK_KEY_minus, -1 },
               { GDK_KEY_KP_Subtract, -1 } };
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = dw_sheet_view_finalize;
  widget_class->measure = dw_sheet_view_measure;
  widget_class->get_request_mode = dw_sheet_view_get_request_mode;
  widget_class->size_allocate = dw_sheet_view_size_allocate;
  widget_class->snapshot = dw_sheet_view_snapshot;
  zoomed_signal = g_signal_new ("zoomed", DW_TYPE_SHEET_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, 0, on_key, "i", keys[i].steps);
  gtk_widget_class_set_css_name (widget_class, "sheetview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
dw_sheet_view_init (DwSheetView *self)
{
  GtkEventController *scroll = gtk_event_controller_scroll_new (
      GTK_EVENT_CONTROLLER_SCROLL_VERTICAL | GTK_EVENT_CONTROLLER_SCROLL_DISCRETE);
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The sheet as it will be printed"), -1);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), self);
  g_signal_connect (click, "pressed", G_CALLBACK (on_clicked), NULL);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
dw_sheet_view_new (void)
{
  return g_object_new (DW_TYPE_SHEET_VIEW, NULL);
}
