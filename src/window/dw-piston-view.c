/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-piston-view.h"

#include <glib/gi18n.h>

#include "draw/dw-piston-layout.h"
#include "draw/dw-text.h"
#include "sheet/dw-finding-text.h"
#include "window/dw-widget.h"

/* A pointer need not hit a hole of half a millimetre exactly [px]. */
static const double REACH = 4.0;

/* Between the bore and the edge of the drawing [px]. */
static const double MARGIN = 3.0;

/* More warnings than this are only counted: the worst come first. */
#define SHOWN_WARNINGS 2

struct _DwPistonView
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkDrawingArea *canvas;
  GtkLabel *warning;

  /* Owned */
  dw_piston_layout *layout; /* NULL = to be made */
  dw_text_pango *texts;

  gboolean has_damper;
  dw_damper damper;
  dw_chart_style style;
  dw_units units;
  int hole; /* under the pointer; -1 = none */

  int *set_of; /* per hole; owned; NULL = no sets */
  int n_sets;
  int marked; /* hole that keys have reached; -1 = none */
};

G_DEFINE_FINAL_TYPE (DwPistonView, dw_piston_view, GTK_TYPE_WIDGET)

enum
{
  HOLE_TURNED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
drop_layout (DwPistonView *self)
{
  g_clear_pointer (&self->layout, dw_piston_layout_free);
  self->hole = -1;
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
}

static const dw_piston_layout *
layout_now (DwPistonView *self)
{
  const int width = gtk_widget_get_width (GTK_WIDGET (self->canvas));
  const int height = gtk_widget_get_height (GTK_WIDGET (self->canvas));

  if (self->layout != NULL || !self->has_damper || width <= 0 || height <= 0)
    return self->layout;
  if (self->texts == NULL)
    self->texts = dw_text_pango_new (&self->style);

  const dw_number_format numbers = dw_number_format_defaults ();
  const dw_text_metrics metrics = dw_text_pango_metrics (self->texts);
  /* The groups of holes stand in the table beside it, and how large a screen's pixels are nobody
   * knows: without these words, the lines that the layout keeps free for them may lie outside. */
  const dw_piston_labels labels = { "", "", "" };
  const double line = dw_text_height (&metrics, DW_TEXT_NOTE);
  const dw_rect area = { 0.0, -line, width, height + (self->damper.piston.n_holes + 1) * line };
  self->layout = dw_piston_layout_new (&self->damper, &labels, &numbers, &self->style, &metrics,
                                       &area);
  return self->layout;
}

/* How much larger than its round scale the face is drawn, to fill the widget. */
static double
zoom_of (DwPistonView *self, const dw_piston_layout *layout)
{
  const int width = gtk_widget_get_width (GTK_WIDGET (self->canvas));
  const int height = gtk_widget_get_height (GTK_WIDGET (self->canvas));
  return MAX (1.0, (MIN (width, height) / 2.0 - MARGIN) / layout->bore_radius);
}

static int
hit (DwPistonView *self, double x, double y)
{
  const dw_piston_layout *layout = layout_now (self);
  if (layout == NULL)
    return -1;
  const double zoom = zoom_of (self, layout);
  const dw_spot c = layout->centre;
  const double dx = x - gtk_widget_get_width (GTK_WIDGET (self->canvas)) / 2.0;
  const double dy = y - gtk_widget_get_height (GTK_WIDGET (self->canvas)) / 2.0;
  return dw_piston_layout_hit (layout, c.x + dx / zoom, c.y + dy / zoom, REACH);
}

/* The face lies on the panel as it is, not on a sheet. */
static dw_chart_style
style_here (DwPistonView *self)
{
  dw_chart_style style = self->style;
  GdkRGBA color;

  if (gtk_style_context_lookup_color (gtk_widget_get_style_context (GTK_WIDGET (self)),
                                      "theme_bg_color", &color))
    style.background = (dw_color){ color.red, color.green, color.blue, color.alpha };
  return style;
}

static void
paint (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  DwPistonView *self = data;
  const dw_piston_layout *layout = layout_now (self);

  if (layout == NULL)
    return;
  const dw_chart_style style = style_here (self);
  const double zoom = zoom_of (self, layout);
  cairo_surface_t *picture = dw_widget_new_picture (GTK_WIDGET (area), width, height);
  cairo_t *pen = cairo_create (picture);
  cairo_translate (pen, width / 2.0, height / 2.0);
  cairo_scale (pen, zoom, zoom);
  cairo_translate (pen, -layout->centre.x, -layout->centre.y);
  dw_piston_paint (layout, &style, self->hole, pen);
  if (self->set_of != NULL && self->n_sets == layout->face.n_holes)
    dw_piston_paint_sets (layout, &style, self->set_of,
                          gtk_widget_has_focus (GTK_WIDGET (self)) ? self->marked : -1, pen);
  cairo_destroy (pen);
  cairo_set_source_surface (cr, picture, 0.0, 0.0);
  cairo_paint (cr);
  cairo_surface_destroy (picture);
}

/* ---- in words ---- */

static char *
length_text (DwPistonView *self, double length)
{
  g_autofree char *number = dw_quantity_format_short (DW_QUANTITY_LENGTH, self->units, length);
  /* Translators: a length and its unit. */
  return g_strdup_printf (_ ("%s %s"), number, dw_quantity_unit (DW_QUANTITY_LENGTH, self->units));
}

char *
dw_piston_view_dup_description (DwPistonView *self)
{
  g_return_val_if_fail (DW_IS_PISTON_VIEW (self), NULL);

  if (!self->has_damper)
    return NULL;
  const dw_piston *piston = &self->damper.piston;
  g_autofree char *bore = length_text (self, self->damper.body.bore);
  /* Translators: the groups of holes follow, each after a comma. */
  GString *text = g_string_new (NULL);
  g_string_append_printf (text, _ ("Piston in a bore of %s"), bore);
  for (int i = 0; i < piston->n_holes; i++)
    {
      const dw_holes *holes = &piston->holes[i];
      g_autofree char *diameter = length_text (self, holes->diameter);
      g_string_append (text, ", ");
      g_string_append_printf (
          text,
          holes->covered
              /* Translators: count and diameter: "4 covered holes of 1.1 mm". */
              ? ngettext ("%d covered hole of %s", "%d covered holes of %s", (gulong)holes->count)
              : ngettext ("%d open hole of %s", "%d open holes of %s", (gulong)holes->count),
          holes->count, diameter);
    }
  return g_string_free (text, FALSE);
}

char *
dw_piston_view_dup_hole (DwPistonView *self, double x, double y)
{
  g_return_val_if_fail (DW_IS_PISTON_VIEW (self), NULL);

  const int i = hit (self, x, y);
  if (i < 0)
    return NULL;
  const dw_face_hole *hole = &self->layout->face.holes[i];
  g_autofree char *diameter = length_text (self, hole->diameter);
  return g_strdup_printf (hole->covered
                              /* Translators: diameter with unit, and which group of holes. */
                              ? _ ("Covered hole, %s, group %d: flows when the shim lifts")
                              : _ ("Open hole, %s, group %d: flows in both strokes"),
                          diameter, hole->group + 1);
}

static void
update_words (DwPistonView *self)
{
  g_autofree char *description = dw_piston_view_dup_description (self);
  g_autoptr (GString) warning = g_string_new (NULL);
  g_autofree dw_piston_face *face = g_new0 (dw_piston_face, 1);

  if (self->has_damper)
    dw_piston_face_make (&self->damper, face);
  for (int i = 0; i < MIN (face->n_ligaments, SHOWN_WARNINGS); i++)
    {
      g_autofree char *text = dw_ligament_words (face, &face->ligaments[i], self->units);
      g_string_append_printf (warning, "%s%s", i > 0 ? "\n" : "", text);
    }
  if (face->n_ligaments > SHOWN_WARNINGS)
    {
      const int more = face->n_ligaments - SHOWN_WARNINGS;
      g_string_append_c (warning, '\n');
      g_string_append_printf (warning, ngettext ("and %d more", "and %d more", (gulong)more), more);
    }
  gtk_label_set_label (self->warning, warning->str);
  gtk_widget_set_visible (GTK_WIDGET (self->warning), warning->len > 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->canvas),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  description != NULL ? description : "", -1);
}

/* ---- pointer ---- */

static void
select_hole (DwPistonView *self, int hole)
{
  if (hole == self->hole)
    return;
  self->hole = hole;
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
}

static void
on_motion (DwPistonView *self, double x, double y)
{
  select_hole (self, hit (self, x, y));
}

static void
on_leave (DwPistonView *self)
{
  select_hole (self, -1);
}

/* ---- sets ---- */

static void
on_pressed (GtkGestureClick *click, int n_press, double x, double y, gpointer data)
{
  DwPistonView *self = data;
  const int hole = self->set_of != NULL ? hit (self, x, y) : -1;

  (void)click;
  (void)n_press;
  if (hole < 0)
    return;
  self->marked = hole;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  g_signal_emit (self, signals[HOLE_TURNED], 0, hole);
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, gpointer data)
{
  DwPistonView *self = data;

  (void)keys;
  (void)code;
  if (self->set_of == NULL || self->n_sets == 0 || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  switch (key)
    {
    case GDK_KEY_Right:
      self->marked = (self->marked + 1) % self->n_sets;
      break;
    case GDK_KEY_Left:
      self->marked = self->marked > 0 ? self->marked - 1 : self->n_sets - 1;
      break;
    case GDK_KEY_space:
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      if (self->marked >= 0)
        g_signal_emit (self, signals[HOLE_TURNED], 0, self->marked);
      break;
    default:
      return FALSE;
    }
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
  return TRUE;
}

static void
add_set_controllers (DwPistonView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (click, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self->canvas), GTK_EVENT_CONTROLLER (click));
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_object (focus, "enter", G_CALLBACK (gtk_widget_queue_draw), self->canvas,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (focus, "leave", G_CALLBACK (gtk_widget_queue_draw), self->canvas,
                           G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

void
dw_piston_view_set_sets (DwPistonView *self, const int *set_of, int n)
{
  g_return_if_fail (DW_IS_PISTON_VIEW (self));

  g_clear_pointer (&self->set_of, g_free);
  self->n_sets = set_of != NULL ? n : 0;
  if (set_of != NULL)
    self->set_of = g_memdup2 (set_of, (gsize)n * sizeof *set_of);
  self->marked = MIN (self->marked, self->n_sets - 1);
  gtk_widget_set_focusable (GTK_WIDGET (self), set_of != NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self->canvas));
}

void
dw_piston_view_set_extent (DwPistonView *self, int extent)
{
  g_return_if_fail (DW_IS_PISTON_VIEW (self));
  gtk_drawing_area_set_content_width (self->canvas, extent);
  gtk_drawing_area_set_content_height (self->canvas, extent);
}

static gboolean
on_query_tooltip (DwPistonView *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  g_autofree char *text = keyboard ? dw_piston_view_dup_description (self)
                                   : dw_piston_view_dup_hole (self, x, y);
  gtk_tooltip_set_text (tooltip, text);
  return text != NULL;
}

/* ---- the object ---- */

static void
dw_piston_view_dispose (GObject *object)
{
  DwPistonView *self = DW_PISTON_VIEW (object);

  /* a drawing area may still be drawn while it goes */
  if (self->canvas != NULL)
    gtk_drawing_area_set_draw_func (self->canvas, NULL, NULL, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), DW_TYPE_PISTON_VIEW);
  dw_widget_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->layout, dw_piston_layout_free);
  g_clear_pointer (&self->texts, dw_text_pango_free);
  g_clear_pointer (&self->set_of, g_free);
  G_OBJECT_CLASS (dw_piston_view_parent_class)->dispose (object);
}

static void
dw_piston_view_class_init (DwPistonViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_piston_view_dispose;
  signals[HOLE_TURNED] = g_signal_new ("hole-turned", DW_TYPE_PISTON_VIEW, G_SIGNAL_RUN_LAST, 0,
                                       NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/piston-view.ui");
  gtk_widget_class_bind_template_child (widget_class, DwPistonView, canvas);
  gtk_widget_class_bind_template_child (widget_class, DwPistonView, warning);
  gtk_widget_class_bind_template_callback (widget_class, drop_layout);
  gtk_widget_class_bind_template_callback (widget_class, on_motion);
  gtk_widget_class_bind_template_callback (widget_class, on_leave);
  gtk_widget_class_bind_template_callback (widget_class, on_query_tooltip);
}

static void
dw_piston_view_init (DwPistonView *self)
{
  self->style = dw_chart_style_make (DW_STYLE_LIGHT);
  self->hole = -1;
  self->marked = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
  add_set_controllers (self);
  gtk_drawing_area_set_draw_func (self->canvas, paint, self, NULL);
}

GtkWidget *
dw_piston_view_new (void)
{
  return g_object_new (DW_TYPE_PISTON_VIEW, NULL);
}

/* A damper that differs from others only in what the face shows. */
static dw_damper
shown_part (const dw_damper *damper)
{
  dw_damper part = dw_damper_defaults ();

  part.body.bore = damper->body.bore;
  part.body.rod = damper->body.rod;
  part.piston = damper->piston;
  part.valve.hub_diameter = damper->valve.hub_diameter;
  part.valve.outer_diameter = damper->valve.outer_diameter;
  part.valve.hole_circle = damper->valve.hole_circle;
  part.valve.n_shims = MIN (damper->valve.n_shims, 1);
  return part;
}

void
dw_piston_view_set_damper (DwPistonView *self, const dw_damper *damper)
{
  g_return_if_fail (DW_IS_PISTON_VIEW (self));

  /* oil and spring are edited as well, and the face stays as it is drawn */
  if (damper != NULL && self->has_damper)
    {
      const dw_damper before = shown_part (&self->damper);
      const dw_damper now = shown_part (damper);
      if (dw_damper_equal (&before, &now))
        return;
    }
  self->has_damper = damper != NULL;
  if (damper != NULL)
    self->damper = *damper;
  drop_layout (self);
  update_words (self);
}

void
dw_piston_view_set_units (DwPistonView *self, dw_units units)
{
  g_return_if_fail (DW_IS_PISTON_VIEW (self));

  self->units = units;
  update_words (self);
}

void
dw_piston_view_set_style (DwPistonView *self, const dw_chart_style *style)
{
  g_return_if_fail (DW_IS_PISTON_VIEW (self) && style != NULL);

  self->style = *style;
  g_clear_pointer (&self->texts, dw_text_pango_free);
  drop_layout (self);
}
