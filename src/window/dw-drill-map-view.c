/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-map-view.h"

#include <glib/gi18n.h>

#include "draw/dw-drill-map-describe.h"
#include "draw/dw-drill-map-layout.h"
#include "draw/dw-drill-map-paint.h"
#include "draw/dw-text.h"
#include "window/dw-widget.h"

/* The pointer need not hit a dot exactly [px]. */
static const double REACH = 14.0;

/* The map is at least so high [sizes of its letters] and so wide [px]. */
static const double LEAST_LINES = 15.0;
static const int LEAST_WIDTH = 260;

/* Fields that a map may borrow. */
enum
{
  FIELD_SHADE,
  FIELD_CONTOUR,
  FIELD_EQUAL,
  FIELD_OIL,
  N_FIELDS
};

struct _DwDrillMapView
{
  GtkWidget parent_instance;

  GtkDrawingArea *canvas; /* child, made here */

  /* Owned */
  dw_drill_field *fields[N_FIELDS];
  dw_drill_sets *sets;
  dw_drill_dot *dots;
  double *oils;
  dw_drill_map_layout *layout; /* NULL = to be made */
  cairo_surface_t *picture;    /* of its ground */
  dw_text_pango *texts;

  gboolean has_map;
  dw_drill_map map;
  dw_chart_style style;
};

G_DEFINE_FINAL_TYPE (DwDrillMapView, dw_drill_map_view, GTK_TYPE_WIDGET)

enum
{
  POINTED,
  CHOSEN,
  ACTIVATED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- drawing ---- */

static void
drop_layout (DwDrillMapView *self)
{
  g_clear_pointer (&self->layout, dw_drill_map_layout_free);
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
}

static const dw_drill_map_layout *
layout_now (DwDrillMapView *self)
{
  const int width = gtk_widget_get_width (GTK_WIDGET (self->canvas));
  const int height = gtk_widget_get_height (GTK_WIDGET (self->canvas));

  if (self->layout != NULL || !self->has_map || width <= 0 || height <= 0)
    return self->layout;
  if (self->texts == NULL)
    self->texts = dw_text_pango_new (&self->style);
  const dw_rect area = { 0.0, 0.0, width, height };
  const dw_text_metrics metrics = dw_text_pango_metrics (self->texts);
  self->layout = dw_drill_map_layout_new (&self->map, &self->style, &metrics, &area);
  return self->layout;
}

static void
paint (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  DwDrillMapView *self = data;
  const dw_drill_map_layout *layout = layout_now (self);

  if (layout == NULL)
    return;
  if (self->picture == NULL)
    {
      self->picture = dw_widget_new_picture (GTK_WIDGET (area), width, height);
      cairo_t *pen = cairo_create (self->picture);
      dw_drill_map_paint_ground (layout, &self->style, pen);
      cairo_destroy (pen);
    }
  cairo_set_source_surface (cr, self->picture, 0.0, 0.0);
  cairo_paint (cr);
  dw_drill_map_paint_marks (layout, &self->style, cr);
}

/* The ground stays as it is drawn. */
static void
move_marks (DwDrillMapView *self)
{
  if (self->layout != NULL)
    dw_drill_map_layout_mark (self->layout, &self->map);
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
}

/* ---- dots ---- */

static void
point_at (DwDrillMapView *self, int dot)
{
  if (dot == self->map.pointed)
    return;
  self->map.pointed = dot;
  move_marks (self);
  g_signal_emit (self, signals[POINTED], 0, dot);
}

static int
hit (DwDrillMapView *self, double x, double y)
{
  const dw_drill_map_layout *layout = layout_now (self);
  return layout != NULL ? dw_drill_map_layout_hit (layout, x, y, REACH) : -1;
}

static void
on_motion (GtkEventControllerMotion *motion, double x, double y, gpointer data)
{
  (void)motion;
  point_at (data, hit (data, x, y));
}

static void
on_leave (GtkEventControllerMotion *motion, gpointer data)
{
  (void)motion;
  point_at (data, -1);
}

static void
choose (DwDrillMapView *self, int dot)
{
  if (dot < 0)
    return;
  dw_drill_map_view_choose (self, dot);
  g_signal_emit (self, signals[CHOSEN], 0, dot);
}

static void
on_pressed (GtkGestureClick *click, int n_press, double x, double y, gpointer data)
{
  DwDrillMapView *self = data;
  const int dot = hit (self, x, y);

  (void)click;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (dot < 0)
    return;
  if (n_press == 1)
    choose (self, dot);
  else
    g_signal_emit (self, signals[ACTIVATED], 0, dot);
}

/* From the chosen dot, or the first one. */
static void
step (DwDrillMapView *self, int dx, int dy)
{
  const dw_drill_map_layout *layout = layout_now (self);
  if (layout == NULL || self->map.n_dots == 0)
    return;
  choose (self,
          self->map.chosen < 0 ? 0 : dw_drill_map_layout_step (layout, self->map.chosen, dx, dy));
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, gpointer data)
{
  DwDrillMapView *self = data;

  (void)keys;
  (void)code;
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  switch (key)
    {
    case GDK_KEY_Left:
      step (self, -1, 0);
      return TRUE;
    case GDK_KEY_Right:
      step (self, 1, 0);
      return TRUE;
    case GDK_KEY_Up:
      step (self, 0, 1);
      return TRUE;
    case GDK_KEY_Down:
      step (self, 0, -1);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      if (self->map.chosen < 0)
        return FALSE;
      g_signal_emit (self, signals[ACTIVATED], 0, self->map.chosen);
      return TRUE;
    default:
      return FALSE;
    }
}

/* ---- content ---- */

static void
clear_copies (DwDrillMapView *self)
{
  for (int i = 0; i < N_FIELDS; i++)
    g_clear_pointer (&self->fields[i], g_free);
  g_clear_pointer (&self->sets, g_free);
  g_clear_pointer (&self->dots, g_free);
  g_clear_pointer (&self->oils, g_free);
}

static const dw_drill_field *
copy_field (DwDrillMapView *self, int which, const dw_drill_field *field)
{
  if (field != NULL)
    self->fields[which] = g_memdup2 (field, sizeof *field);
  return self->fields[which];
}

static void
describe (DwDrillMapView *self)
{
  g_autofree char *text = self->has_map ? dw_drill_map_describe (&self->map) : g_strdup ("");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Map of drill sizes"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  text, -1);
}

void
dw_drill_map_view_set_map (DwDrillMapView *self, const dw_drill_map *map)
{
  g_return_if_fail (DW_IS_DRILL_MAP_VIEW (self));

  clear_copies (self);
  self->has_map = map != NULL;
  if (map != NULL)
    {
      self->map = *map;
      self->map.shade = copy_field (self, FIELD_SHADE, map->shade);
      self->map.contour = copy_field (self, FIELD_CONTOUR, map->contour);
      self->map.equal = copy_field (self, FIELD_EQUAL, map->equal);
      self->map.oil = copy_field (self, FIELD_OIL, map->oil);
      self->map.sets = self->sets = g_memdup2 (map->sets, sizeof *map->sets);
      self->map.dots = self->dots = g_memdup2 (map->dots, (gsize)map->n_dots * sizeof *map->dots);
      self->map.oils = self->oils = g_memdup2 (map->oils, (gsize)map->n_oils * sizeof *map->oils);
      self->map.pointed = -1;
    }
  drop_layout (self);
  describe (self);
}

void
dw_drill_map_view_choose (DwDrillMapView *self, int dot)
{
  g_return_if_fail (DW_IS_DRILL_MAP_VIEW (self));

  if (!self->has_map || dot == self->map.chosen || dot >= self->map.n_dots)
    return;
  self->map.chosen = dot;
  move_marks (self);
  describe (self);
}

void
dw_drill_map_view_set_style (DwDrillMapView *self, const dw_chart_style *style)
{
  g_return_if_fail (DW_IS_DRILL_MAP_VIEW (self));

  g_clear_pointer (&self->texts, dw_text_pango_free);
  self->style = *style;
  gtk_widget_set_size_request (GTK_WIDGET (self), LEAST_WIDTH,
                               (int)(LEAST_LINES * style->font[DW_TEXT_TICK].size));
  drop_layout (self);
}

const dw_drill_map *
dw_drill_map_view_get_map (DwDrillMapView *self)
{
  g_return_val_if_fail (DW_IS_DRILL_MAP_VIEW (self), NULL);
  return self->has_map ? &self->map : NULL;
}

gboolean
dw_drill_map_view_place (DwDrillMapView *self, int dot, double *x, double *y)
{
  g_return_val_if_fail (DW_IS_DRILL_MAP_VIEW (self), FALSE);

  const dw_drill_map_layout *layout = layout_now (self);
  if (layout == NULL || dot < 0 || dot >= self->map.n_dots)
    return FALSE;
  const dw_drill_place *place = &layout->dots.places[dot];
  *x = place->at.x;
  *y = place->at.y;
  return place->is_shown;
}

/* ---- widget ---- */

static void
on_resize (GtkDrawingArea *canvas, int width, int height, gpointer data)
{
  (void)canvas;
  (void)width;
  (void)height;
  drop_layout (data);
}

static void
dw_drill_map_view_dispose (GObject *object)
{
  DwDrillMapView *self = DW_DRILL_MAP_VIEW (object);

  if (self->canvas != NULL)
    gtk_drawing_area_set_draw_func (self->canvas, NULL, NULL, NULL);
  dw_widget_drop_children (GTK_WIDGET (self));
  self->canvas = NULL;
  G_OBJECT_CLASS (dw_drill_map_view_parent_class)->dispose (object);
}

static void
dw_drill_map_view_finalize (GObject *object)
{
  DwDrillMapView *self = DW_DRILL_MAP_VIEW (object);

  g_clear_pointer (&self->layout, dw_drill_map_layout_free);
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  g_clear_pointer (&self->texts, dw_text_pango_free);
  clear_copies (self);
  G_OBJECT_CLASS (dw_drill_map_view_parent_class)->finalize (object);
}

static void
dw_drill_map_view_class_init (DwDrillMapViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  static const char *const NAMES[N_SIGNALS] = { "pointed", "chosen", "activated" };

  G_OBJECT_CLASS (klass)->dispose = dw_drill_map_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = dw_drill_map_view_finalize;
  for (int i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (NAMES[i], DW_TYPE_DRILL_MAP_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_css_name (widget_class, "chart");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
add_controllers (DwDrillMapView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect (motion, "leave", G_CALLBACK (on_leave), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  g_signal_connect (click, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (click));
}

static void
dw_drill_map_view_init (DwDrillMapView *self)
{
  self->map = dw_drill_map_defaults ();
  self->canvas = GTK_DRAWING_AREA (gtk_drawing_area_new ());
  gtk_drawing_area_set_draw_func (self->canvas, paint, self, NULL);
  g_signal_connect (self->canvas, "resize", G_CALLBACK (on_resize), self);
  g_signal_connect_swapped (self->canvas, "notify::scale-factor", G_CALLBACK (drop_layout), self);
  gtk_widget_set_parent (GTK_WIDGET (self->canvas), GTK_WIDGET (self));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  const dw_chart_style style = dw_chart_style_make (DW_STYLE_LIGHT);
  dw_drill_map_view_set_style (self, &style);
  add_controllers (self);
}

GtkWidget *
dw_drill_map_view_new (void)
{
  return g_object_new (DW_TYPE_DRILL_MAP_VIEW, NULL);
}
