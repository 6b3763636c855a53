/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-chart-view.h"

#include <glib/gi18n.h>
#include <math.h>

#include "draw/dw-chart-describe.h"
#include "draw/dw-chart-layout.h"
#include "draw/dw-chart-paint.h"
#include "draw/dw-chart-reading.h"
#include "draw/dw-readout.h"
#include "draw/dw-text.h"
#include "sheet/dw-quantity.h"
#include "window/dw-widget.h"

/* The reading line and its figures are a widget of their own: when the line moves, the chart's
 * drawing is taken from GTK's store and only the strip under the line, the columns of figures and
 * the speed at the axis are drawn again. */
#define DW_TYPE_CHART_CURSOR (dw_chart_cursor_get_type ())
G_DECLARE_FINAL_TYPE (DwChartCursor, dw_chart_cursor, DW, CHART_CURSOR, GtkWidget)

struct _DwChartCursor
{
  GtkWidget parent_instance;
  DwChartView *view; /* borrowed: the parent */
};

struct _DwChartView
{
  GtkWidget parent_instance;

  /* Children, made here */
  GtkDrawingArea *canvas;
  DwChartCursor *cursor;
  GtkLabel *stale;

  /* Owned */
  dw_series *series[DW_MAX_SERIES];
  dw_chart_layout *layout;  /* of the last allocation; hits and readings use it too */
  cairo_surface_t *picture; /* of that layout */
  dw_text_pango *texts;

  dw_chart chart;
  dw_chart_style style;
  double described[3];
  double reading; /* [m/s] as shown; NaN = no reading line */
  gboolean dragging;
  double drag_x0, drag_y0, drag_x1, drag_y1;
};

G_DEFINE_FINAL_TYPE (DwChartCursor, dw_chart_cursor, GTK_TYPE_WIDGET)
G_DEFINE_FINAL_TYPE (DwChartView, dw_chart_view, GTK_TYPE_WIDGET)

static guint reading_signal;

static const double ZOOM_STEP = 1.25;

/* Shorter drags are clicks [px]. */
static const double SHORTEST_DRAG = 6.0;

/* ---- layout ---- */

static void
clear_layout (DwChartView *self)
{
  g_clear_pointer (&self->layout, dw_chart_layout_free);
  g_clear_pointer (&self->picture, cairo_surface_destroy);
}

static void
drop_layout (DwChartView *self)
{
  clear_layout (self);
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
  gtk_widget_queue_draw (GTK_WIDGET (self->cursor));
}

static dw_chart_layout *
layout_now (DwChartView *self)
{
  const int width = gtk_widget_get_width (GTK_WIDGET (self));
  const int height = gtk_widget_get_height (GTK_WIDGET (self));

  if (self->layout == NULL && width > 0 && height > 0)
    {
      const dw_rect area = { 0.0, 0.0, width, height };
      dw_text_metrics metrics;
      if (self->texts == NULL)
        self->texts = dw_text_pango_new (&self->style);
      metrics = dw_text_pango_metrics (self->texts);
      self->layout = dw_chart_layout_new (&self->chart, &self->style, &metrics, &area);
    }
  return self->layout;
}

/* Kept while a rectangle is dragged over it. */
static cairo_surface_t *
picture_now (DwChartView *self, const dw_chart_layout *layout, int width, int height)
{
  if (self->picture == NULL)
    {
      self->picture = dw_widget_new_picture (GTK_WIDGET (self), width, height);
      cairo_t *cr = cairo_create (self->picture);
      dw_chart_paint (layout, &self->style, cr);
      cairo_destroy (cr);
    }
  return self->picture;
}

static void
paint_canvas (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  DwChartView *self = data;
  const dw_chart_layout *layout = layout_now (self);

  (void)area;
  if (layout == NULL)
    return;
  cairo_set_source_surface (cr, picture_now (self, layout, width, height), 0.0, 0.0);
  cairo_paint (cr);
  if (self->dragging)
    dw_chart_drag_paint (layout, &self->style, self->drag_x0, self->drag_y0, self->drag_x1,
                         self->drag_y1, cr);
}

/* ---- reading line ---- */

/* Letters may reach a little over their box. */
static cairo_t *
append_cairo (GtkSnapshot *snapshot, const dw_rect *box)
{
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (
      (float)floor (box->x) - 1.0F, (float)floor (box->y) - 1.0F, (float)ceil (box->width) + 3.0F,
      (float)ceil (box->height) + 3.0F);
  return gtk_snapshot_append_cairo (snapshot, &bounds);
}

static void
dw_chart_cursor_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  DwChartView *self = DW_CHART_CURSOR (widget)->view;
  const dw_chart_layout *layout = self != NULL ? layout_now (self) : NULL;

  if (layout == NULL || isnan (self->reading))
    return;
  const dw_chart_reading reading = dw_chart_read (&self->chart, layout, self->reading);
  const dw_text_metrics metrics = dw_text_pango_metrics (self->texts);
  const double reach = self->style.marker_radius * 2.0 + self->style.reading_width + 2.0;
  const dw_rect line = { reading.x - reach, reading.plot.y, 2.0 * reach, reading.plot.height };
  cairo_t *cr = append_cairo (snapshot, &line);
  dw_chart_reading_paint (&reading, &self->style, cr);
  cairo_destroy (cr);

  dw_chart_label_list texts = { .n = 0 };
  dw_readout_make (&self->chart, layout, &reading, &metrics, &texts);
  const dw_rect boxes[] = { dw_readout_table_box (layout), dw_readout_speed_box (&texts) };
  for (size_t i = 0; i < G_N_ELEMENTS (boxes); i++)
    if (boxes[i].width > 0.0)
      {
        cr = append_cairo (snapshot, &boxes[i]);
        dw_readout_paint (&texts, layout, &self->style, cr);
        cairo_destroy (cr);
      }
  dw_chart_label_list_clear (&texts);
}

static void
dw_chart_cursor_class_init (DwChartCursorClass *klass)
{
  GTK_WIDGET_CLASS (klass)->snapshot = dw_chart_cursor_snapshot;
}

static void
dw_chart_cursor_init (DwChartCursor *self)
{
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

static void
add_number (GString *text, const DwChartView *self, double value, int digits, const char *unit)
{
  char number[DW_NUMBER_ROOM];
  dw_number_steady (&self->chart.numbers, value, digits, number, sizeof number);
  g_string_append_printf (text, "%s %s", number, unit);
}

static void
add_stroke (GString *text, const DwChartView *self, const dw_chart_reading *reading, int stroke)
{
  const dw_unit *unit = dw_chart_value_unit (&self->chart);
  const dw_unit *length = &self->chart.units.length;

  /* Translators: compression or rebound; the setups follow. */
  g_string_append_printf (text, _ ("%s:"),
                          stroke == DW_COMPRESSION ? _ ("compression") : _ ("rebound"));
  for (int i = 0; i < reading->n_series; i++)
    {
      const dw_reading_value *v = &reading->values[i][stroke];
      if (!v->is_known)
        continue;
      g_string_append_printf (text, "%s %s ", i > 0 ? _ (";") : "", self->chart.series[i]->name);
      add_number (text, self,
                  (self->chart.quantity == DW_SHOW_DAMPING ? v->c : v->force) / unit->factor, 3,
                  unit->symbol);
      if (v->has_change)
        {
          g_autofree char *change = dw_quantity_format_change (v->change_percent);
          g_string_append_printf (text, " (%s)", change);
        }
      if (v->is_void && isinf (v->lost_travel))
        g_string_append (text, _ (", void"));
      else if (v->is_void)
        {
          g_string_append (text, _ (", travel lost to the void "));
          add_number (text, self, v->lost_travel / length->factor, 2, length->symbol);
        }
    }
}

char *
dw_chart_view_dup_reading (DwChartView *self)
{
  g_return_val_if_fail (DW_IS_CHART_VIEW (self), NULL);

  const dw_chart_layout *layout = layout_now (self);
  if (layout == NULL || isnan (self->reading) || self->chart.n_series == 0)
    return NULL;
  const dw_chart_reading reading = dw_chart_read (&self->chart, layout, self->reading);
  GString *text = g_string_new (NULL);
  const dw_unit *unit = &self->chart.units.speed;

  add_number (text, self, reading.speed / unit->factor, 3, unit->symbol);
  g_string_append (text, ", ");
  add_stroke (text, self, &reading, DW_COMPRESSION);
  g_string_append_c (text, '\n');
  add_stroke (text, self, &reading, DW_REBOUND);
  return g_string_free (text, FALSE);
}

void
dw_chart_view_read_at (DwChartView *self, double speed)
{
  g_return_if_fail (DW_IS_CHART_VIEW (self));

  if (speed == self->reading || (isnan (speed) && isnan (self->reading)))
    return;
  self->reading = speed;
  gtk_widget_queue_draw (GTK_WIDGET (self->cursor));
  g_autofree char *text = dw_chart_view_dup_reading (self);
  g_signal_emit (self, reading_signal, 0, text);
}

static void
on_motion (GtkEventControllerMotion *motion, double x, double y, gpointer data)
{
  DwChartView *self = data;
  const dw_chart_layout *layout = layout_now (self);

  (void)motion;
  if (layout == NULL || self->dragging)
    return;
  if (dw_rect_holds (&layout->frame.plot, x, y))
    dw_chart_view_read_at (self, dw_chart_layout_speed (layout, x));
  else
    dw_chart_view_read_at (self, NAN);
}

static void
on_leave (GtkEventControllerMotion *motion, gpointer data)
{
  (void)motion;
  dw_chart_view_read_at (data, NAN);
}

/* ---- zoom ---- */

static void
set_view (DwChartView *self, dw_view view)
{
  const dw_view whole = dw_chart_whole_view (&self->chart);

  self->chart.has_view = !dw_view_equal (&view, &whole);
  self->chart.view = view;
  drop_layout (self);
}

void
dw_chart_view_show_whole (DwChartView *self)
{
  g_return_if_fail (DW_IS_CHART_VIEW (self));
  self->chart.has_view = false;
  drop_layout (self);
}

static gboolean
on_scroll (GtkEventControllerScroll *scroll, double dx, double dy, gpointer data)
{
  DwChartView *self = data;
  const dw_chart_layout *layout = layout_now (self);
  const double x = isnan (self->reading) || layout == NULL
                       ? gtk_widget_get_width (GTK_WIDGET (self)) / 2.0
                       : dw_chart_layout_x (layout, self->reading);

  (void)scroll;
  (void)dx;
  if (layout == NULL || dy == 0.0)
    return FALSE;
  set_view (self, dw_chart_layout_zoom (layout, x, layout->zero, pow (ZOOM_STEP, -dy)));
  return TRUE;
}

static void
on_drag_begin (GtkGestureDrag *drag, double x, double y, gpointer data)
{
  DwChartView *self = data;
  const dw_chart_layout *layout = layout_now (self);

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (layout == NULL || !dw_rect_holds (&layout->frame.plot, x, y))
    {
      gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  self->drag_x0 = self->drag_x1 = x;
  self->drag_y0 = self->drag_y1 = y;
}

static void
on_drag_update (GtkGestureDrag *drag, double dx, double dy, gpointer data)
{
  DwChartView *self = data;

  (void)drag;
  self->drag_x1 = self->drag_x0 + dx;
  self->drag_y1 = self->drag_y0 + dy;
  self->dragging = fabs (dx) > SHORTEST_DRAG && fabs (dy) > SHORTEST_DRAG;
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
}

static void
on_drag_end (GtkGestureDrag *drag, double dx, double dy, gpointer data)
{
  DwChartView *self = data;
  const dw_chart_layout *layout = layout_now (self);

  (void)drag;
  (void)dx;
  (void)dy;
  if (self->dragging && layout != NULL)
    {
      self->dragging = FALSE;
      set_view (self, dw_chart_layout_drag (layout, self->drag_x0, self->drag_y0, self->drag_x1,
                                            self->drag_y1));
    }
}

static void
step_reading (DwChartView *self, const dw_chart_layout *layout, int direction, bool is_large)
{
  const double from = isnan (self->reading) ? layout->view.x_low : self->reading;
  dw_chart_view_read_at (self, dw_chart_layout_step (layout, from, direction, is_large));
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, gpointer data)
{
  DwChartView *self = data;
  const dw_chart_layout *layout = layout_now (self);
  const bool is_large = (state & GDK_SHIFT_MASK) != 0;

  (void)keys;
  (void)code;
  if (layout == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  const double centre = isnan (self->reading)
                            ? layout->frame.plot.x + layout->frame.plot.width / 2.0
                            : dw_chart_layout_x (layout, self->reading);
  switch (key)
    {
    case GDK_KEY_Left:
      step_reading (self, layout, -1, is_large);
      return TRUE;
    case GDK_KEY_Right:
      step_reading (self, layout, 1, is_large);
      return TRUE;
    case GDK_KEY_plus:
    case GDK_KEY_KP_Add:
    case GDK_KEY_equal:
      set_view (self, dw_chart_layout_zoom (layout, centre, layout->zero, ZOOM_STEP));
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      set_view (self, dw_chart_layout_zoom (layout, centre, layout->zero, 1.0 / ZOOM_STEP));
      return TRUE;
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      dw_chart_view_show_whole (self);
      return TRUE;
    case GDK_KEY_Escape:
      dw_chart_view_read_at (self, NAN);
      return TRUE;
    default:
      return FALSE;
    }
}

/* ---- content ---- */

static void
describe (DwChartView *self)
{
  g_autofree char *text = dw_chart_describe (&self->chart, self->described, 3);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->chart.labels.title != NULL ? self->chart.labels.title
                                                                   : _ ("Force chart"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

void
dw_chart_view_take (DwChartView *self, dw_series **series, int n, const dw_chart *chart)
{
  g_return_if_fail (DW_IS_CHART_VIEW (self) && n >= 0 && n <= DW_MAX_SERIES);

  dw_chart next = *chart;
  next.n_series = n;
  for (int i = 0; i < n; i++)
    next.series[i] = series[i];
  /* a zoom holds as long as the axes stay what they are */
  if (self->chart.has_view && self->chart.quantity == chart->quantity
      && self->chart.place == chart->place && self->chart.is_log == chart->is_log)
    {
      const dw_view whole = dw_chart_whole_view (&next);
      next.has_view = true;
      next.view = dw_view_clamp (&self->chart.view, &whole, next.is_log);
    }
  /* every edit comes by here, also of the other axle: what is drawn already stays */
  const bool same = dw_chart_same (&self->chart, &next);
  self->chart = next;
  for (int i = 0; i < DW_MAX_SERIES; i++)
    {
      dw_series_free (self->series[i]);
      self->series[i] = i < n ? series[i] : NULL;
    }
  if (!same)
    drop_layout (self);
  describe (self);
  if (!isnan (self->reading))
    {
      g_autofree char *text = dw_chart_view_dup_reading (self);
      g_signal_emit (self, reading_signal, 0, text);
    }
}

void
dw_chart_view_set_style (DwChartView *self, const dw_chart_style *style)
{
  g_return_if_fail (DW_IS_CHART_VIEW (self));

  g_clear_pointer (&self->texts, dw_text_pango_free);
  self->style = *style;
  drop_layout (self);
}

void
dw_chart_view_set_speeds (DwChartView *self, double low, double middle, double high)
{
  g_return_if_fail (DW_IS_CHART_VIEW (self));
  self->described[0] = low;
  self->described[1] = middle;
  self->described[2] = high;
}

void
dw_chart_view_set_stale (DwChartView *self, const char *why)
{
  g_return_if_fail (DW_IS_CHART_VIEW (self));

  g_autofree char *text = why != NULL ? g_strdup_printf (_ ("Not up to date: %s"), why) : NULL;
  gtk_label_set_label (self->stale, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->stale), why != NULL);
  gtk_widget_set_opacity (GTK_WIDGET (self->canvas), why != NULL ? 0.5 : 1.0);
}

const dw_chart *
dw_chart_view_get_chart (DwChartView *self)
{
  g_return_val_if_fail (DW_IS_CHART_VIEW (self), NULL);
  return &self->chart;
}

/* ---- widget ---- */

/* Not size_allocate(): GTK does not call it where a layout manager is set. */
static void
on_resize (GtkDrawingArea *canvas, int width, int height, gpointer data)
{
  DwChartView *self = data;

  (void)canvas;
  (void)width;
  (void)height;
  clear_layout (self);
}

static void
dw_chart_view_dispose (GObject *object)
{
  DwChartView *self = DW_CHART_VIEW (object);

  dw_widget_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (dw_chart_view_parent_class)->dispose (object);
}

static void
dw_chart_view_finalize (GObject *object)
{
  DwChartView *self = DW_CHART_VIEW (object);

  clear_layout (self);
  g_clear_pointer (&self->texts, dw_text_pango_free);
  for (int i = 0; i < DW_MAX_SERIES; i++)
    dw_series_free (self->series[i]);
  G_OBJECT_CLASS (dw_chart_view_parent_class)->finalize (object);
}

static void
dw_chart_view_class_init (DwChartViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = dw_chart_view_dispose;
  object_class->finalize = dw_chart_view_finalize;
  reading_signal = g_signal_new ("reading", DW_TYPE_CHART_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_css_name (widget_class, "chart");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
add_controllers (DwChartView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (
      GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect (motion, "leave", G_CALLBACK (on_leave), self);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  gtk_widget_add_controller (widget, motion);
  gtk_widget_add_controller (widget, scroll);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (drag));
}

static void
dw_chart_view_init (DwChartView *self)
{
  self->chart = dw_chart_defaults ();
  self->style = dw_chart_style_make (DW_STYLE_LIGHT);
  self->reading = NAN;
  self->described[0] = 0.05;
  self->described[1] = 0.2;
  self->described[2] = 1.0;

  self->canvas = GTK_DRAWING_AREA (gtk_drawing_area_new ());
  gtk_drawing_area_set_draw_func (self->canvas, paint_canvas, self, NULL);
  g_signal_connect (self->canvas, "resize", G_CALLBACK (on_resize), self);
  g_signal_connect_swapped (self->canvas, "notify::scale-factor", G_CALLBACK (drop_layout), self);
  gtk_widget_set_parent (GTK_WIDGET (self->canvas), GTK_WIDGET (self));
  self->cursor = g_object_new (DW_TYPE_CHART_CURSOR, NULL);
  self->cursor->view = self;
  gtk_widget_set_parent (GTK_WIDGET (self->cursor), GTK_WIDGET (self));
  self->stale = GTK_LABEL (gtk_label_new (""));
  gtk_label_set_wrap (self->stale, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->stale), "stale");
  gtk_widget_set_valign (GTK_WIDGET (self->stale), GTK_ALIGN_CENTER);
  gtk_widget_set_halign (GTK_WIDGET (self->stale), GTK_ALIGN_CENTER);
  gtk_widget_set_visible (GTK_WIDGET (self->stale), FALSE);
  gtk_widget_set_parent (GTK_WIDGET (self->stale), GTK_WIDGET (self));

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  add_controllers (self);
}

GtkWidget *
dw_chart_view_new (void)
{
  return g_object_new (DW_TYPE_CHART_VIEW, NULL);
}
