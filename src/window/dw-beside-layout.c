/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-beside-layout.h"

#include <stdbool.h>

/* Pixels between the two. */
#define SPACING 12

struct _DwBesideLayout
{
  GtkLayoutManager parent_instance;
};

G_DEFINE_FINAL_TYPE (DwBesideLayout, dw_beside_layout, GTK_TYPE_LAYOUT_MANAGER)

/* Widths and heights of both for one width. */
typedef struct
{
  GtkWidget *first;
  GtkWidget *second; /* NULL when it is hidden */
  int least[2];      /* [px] */
  int wanted[2];     /* [px] */
} pair;

static pair
pair_of (GtkWidget *widget)
{
  pair p = { .first = gtk_widget_get_first_child (widget) };

  p.second = gtk_widget_get_next_sibling (p.first);
  if (p.second != NULL && !gtk_widget_should_layout (p.second))
    p.second = NULL;
  gtk_widget_measure (p.first, GTK_ORIENTATION_HORIZONTAL, -1, &p.least[0], &p.wanted[0], NULL,
                      NULL);
  if (p.second != NULL)
    gtk_widget_measure (p.second, GTK_ORIENTATION_HORIZONTAL, -1, &p.least[1], &p.wanted[1], NULL,
                        NULL);
  return p;
}

static bool
is_beside (const pair *p, int width)
{
  return p->second != NULL && p->least[0] + SPACING + p->wanted[1] <= width;
}

static int
height_of (GtkWidget *child, int width)
{
  int least;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, &least, NULL, NULL, NULL);
  return least;
}

static int
height_for (const pair *p, int width)
{
  if (p->second == NULL)
    return height_of (p->first, width);
  if (is_beside (p, width))
    return MAX (height_of (p->first, width - SPACING - p->wanted[1]),
                height_of (p->second, p->wanted[1]));
  return height_of (p->first, width) + SPACING + height_of (p->second, MIN (width, p->wanted[1]));
}

static GtkSizeRequestMode
dw_beside_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  (void)manager;
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
dw_beside_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                          int for_size, int *minimum, int *natural, int *minimum_baseline,
                          int *natural_baseline)
{
  const pair p = pair_of (widget);

  (void)manager;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (p.least[0], p.least[1]);
      *natural = p.wanted[0] + (p.second != NULL ? SPACING + p.wanted[1] : 0);
    }
  else
    {
      const int width = for_size < 0 ? MAX (p.least[0], p.least[1]) : for_size;
      *minimum = *natural = height_for (&p, width);
    }
  *minimum_baseline = *natural_baseline = -1;
}

static void
dw_beside_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                           int baseline)
{
  const pair p = pair_of (widget);
  const bool beside = is_beside (&p, width);
  const bool mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  const int second_width = MIN (width, p.wanted[1]);
  const int first_width = beside ? width - SPACING - second_width : width;
  const int first_height = beside ? height : height_of (p.first, first_width);

  (void)manager;
  (void)baseline;
  gtk_widget_size_allocate (p.first,
                            &(GtkAllocation){ beside && mirrored ? width - first_width : 0, 0,
                                              first_width, first_height },
                            -1);
  if (p.second == NULL)
    return;
  const int x = beside != mirrored ? width - second_width : 0;
  const int y = beside ? 0 : first_height + SPACING;
  gtk_widget_size_allocate (
      p.second,
      &(GtkAllocation){ beside && mirrored ? 0 : x, y, second_width,
                        beside ? height : height_of (p.second, second_width) },
      -1);
}

static void
dw_beside_layout_class_init (DwBesideLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->get_request_mode = dw_beside_layout_get_request_mode;
  layout_class->measure = dw_beside_layout_measure;
  layout_class->allocate = dw_beside_layout_allocate;
}

static void
dw_beside_layout_init (DwBesideLayout *self)
{
  (void)self;
}

GtkLayoutManager *
dw_beside_layout_new (void)
{
  return g_object_new (DW_TYPE_BESIDE_LAYOUT, NULL);
}
