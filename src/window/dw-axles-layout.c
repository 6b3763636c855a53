/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-axles-layout.h"

struct _DwAxlesLayout
{
  GtkLayoutManager parent_instance;
  int spacing; /* [px] */
  gboolean both;
  dw_axle preferred;
};

G_DEFINE_FINAL_TYPE (DwAxlesLayout, dw_axles_layout, GTK_TYPE_LAYOUT_MANAGER)

static GtkWidget *
child_of (GtkWidget *widget, dw_axle axle)
{
  GtkWidget *first = gtk_widget_get_first_child (widget);
  return axle == DW_FRONT ? first : gtk_widget_get_next_sibling (first);
}

static int
least_width (GtkWidget *widget)
{
  int least = 0;

  for (int a = 0; a < DW_N_AXLES; a++)
    {
      int minimum;
      gtk_widget_measure (child_of (widget, (dw_axle)a), GTK_ORIENTATION_HORIZONTAL, -1, &minimum,
                          NULL, NULL, NULL);
      least = MAX (least, minimum);
    }
  return least;
}

static gboolean
shows_both (const DwAxlesLayout *self, GtkWidget *widget, int width)
{
  return self->both && 2 * least_width (widget) + self->spacing <= width;
}

static GtkSizeRequestMode
dw_axles_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  (void)manager;
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
dw_axles_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                         int for_size, int *minimum, int *natural, int *minimum_baseline,
                         int *natural_baseline)
{
  const DwAxlesLayout *self = DW_AXLES_LAYOUT (manager);
  const bool both = for_size < 0 || shows_both (self, widget, for_size);
  const int for_each = for_size < 0 || !both ? for_size : (for_size - self->spacing) / 2;

  *minimum = *natural = 0;
  *minimum_baseline = *natural_baseline = -1;
  for (int a = 0; a < DW_N_AXLES; a++)
    {
      int least, wanted;
      if (orientation == GTK_ORIENTATION_VERTICAL && !both && (dw_axle)a != self->preferred)
        continue;
      gtk_widget_measure (child_of (widget, (dw_axle)a), orientation,
                          orientation == GTK_ORIENTATION_VERTICAL ? for_each : -1, &least, &wanted,
                          NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural = MAX (*natural, wanted);
    }
  if (orientation == GTK_ORIENTATION_HORIZONTAL && self->both)
    *natural = 2 * *natural + self->spacing;
}

static void
dw_axles_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                          int baseline)
{
  const DwAxlesLayout *self = DW_AXLES_LAYOUT (manager);
  const bool both = shows_both (self, widget, width);
  const bool mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  const int half = (width - self->spacing) / 2;

  (void)baseline;
  for (int a = 0; a < DW_N_AXLES; a++)
    {
      GtkWidget *child = child_of (widget, (dw_axle)a);
      const bool is_shown = both || (dw_axle)a == self->preferred;
      const bool is_right = (a == DW_REAR) != mirrored;
      const GtkAllocation place = { both && is_right ? width - half : 0, 0, both ? half : width,
                                    height };
      gtk_widget_set_child_visible (child, is_shown);
      if (is_shown)
        gtk_widget_size_allocate (child, &place, -1);
    }
}

void
dw_axles_layout_show (DwAxlesLayout *self, gboolean both, dw_axle preferred)
{
  g_return_if_fail (DW_IS_AXLES_LAYOUT (self) && preferred < DW_N_AXLES);

  if (self->both == both && self->preferred == preferred)
    return;
  self->both = both;
  self->preferred = preferred;
  gtk_layout_manager_layout_changed (GTK_LAYOUT_MANAGER (self));
}

static void
dw_axles_layout_class_init (DwAxlesLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->get_request_mode = dw_axles_layout_get_request_mode;
  layout_class->measure = dw_axles_layout_measure;
  layout_class->allocate = dw_axles_layout_allocate;
}

static void
dw_axles_layout_init (DwAxlesLayout *self)
{
  self->both = TRUE;
}

GtkLayoutManager *
dw_axles_layout_new (int spacing)
{
  DwAxlesLayout *self = g_object_new (DW_TYPE_AXLES_LAYOUT, NULL);
  self->spacing = spacing;
  return GTK_LAYOUT_MANAGER (self);
}
