/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-flow-layout.h"

/* Pixels between columns, wide enough that a unit is not read with the next name. */
#define COLUMN_SPACING 18
/* Pixels between rows. */
#define ROW_SPACING 6
/* Wider columns would part a name from its number: past this share of the column's width [1] what
 * is left over stays empty. */
#define WIDEST_SHARE 1.2

struct _DwFlowLayout
{
  GtkLayoutManager parent_instance;
  int column_width;
};

G_DEFINE_FINAL_TYPE (DwFlowLayout, dw_flow_layout, GTK_TYPE_LAYOUT_MANAGER)

enum
{
  PROP_0,
  PROP_COLUMN_WIDTH,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

static int
columns_in (int width, int column)
{
  return MAX (1, (width + COLUMN_SPACING) / (column + COLUMN_SPACING));
}

int
dw_flow_layout_get_n_columns (DwFlowLayout *self, int width)
{
  g_return_val_if_fail (DW_IS_FLOW_LAYOUT (self), 1);
  return columns_in (width, self->column_width);
}

static int
cell_width (int width, int n_columns, int column)
{
  const int all = (width - (n_columns - 1) * COLUMN_SPACING) / n_columns;
  return MIN (all, (int)(column * WIDEST_SHARE));
}

static GtkWidget *
next_shown (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

/* Width of a column: what was asked for, or more when a child cannot be so narrow. */
static int
column_width (DwFlowLayout *self, GtkWidget *widget)
{
  int width = self->column_width;

  for (GtkWidget *child = next_shown (gtk_widget_get_first_child (widget)); child != NULL;
       child = next_shown (gtk_widget_get_next_sibling (child)))
    {
      int minimum;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
      width = MAX (width, minimum);
    }
  return width;
}

/* Height of the row that starts at a child; the child after it is set. */
static int
row_height (GtkWidget **child, int n_columns, int width)
{
  int height = 0;

  for (int i = 0; i < n_columns && *child != NULL; i++)
    {
      int minimum;
      gtk_widget_measure (*child, GTK_ORIENTATION_VERTICAL, width, &minimum, NULL, NULL, NULL);
      height = MAX (height, minimum);
      *child = next_shown (gtk_widget_get_next_sibling (*child));
    }
  return height;
}

static GtkSizeRequestMode
dw_flow_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  (void)manager;
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
dw_flow_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                        int for_size, int *minimum, int *natural, int *minimum_baseline,
                        int *natural_baseline)
{
  const int column = column_width (DW_FLOW_LAYOUT (manager), widget);
  int size = 0;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    size = column;
  else
    {
      const int width = for_size < 0 ? column : for_size;
      const int n_columns = columns_in (width, column);
      GtkWidget *child = next_shown (gtk_widget_get_first_child (widget));
      while (child != NULL)
        size += (size > 0 ? ROW_SPACING : 0)
                + row_height (&child, n_columns, cell_width (width, n_columns, column));
    }
  *minimum = *natural = size;
  *minimum_baseline = *natural_baseline = -1;
}

static void
dw_flow_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                         int baseline)
{
  const int column = column_width (DW_FLOW_LAYOUT (manager), widget);
  const int n_columns = columns_in (width, column);
  const int cell = cell_width (width, n_columns, column);
  const gboolean mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkWidget *child = next_shown (gtk_widget_get_first_child (widget));
  int y = 0;

  (void)height;
  (void)baseline;
  while (child != NULL)
    {
      GtkWidget *end = child;
      const int row = row_height (&end, n_columns, cell);
      for (int i = 0; child != end; i++)
        {
          const int x = i * (cell + COLUMN_SPACING);
          const GtkAllocation place = { mirrored ? width - x - cell : x, y, cell, row };
          gtk_widget_size_allocate (child, &place, -1);
          child = next_shown (gtk_widget_get_next_sibling (child));
        }
      y += row + ROW_SPACING;
    }
}

static void
dw_flow_layout_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_COLUMN_WIDTH)
    g_value_set_int (value, DW_FLOW_LAYOUT (object)->column_width);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
dw_flow_layout_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_COLUMN_WIDTH)
    DW_FLOW_LAYOUT (object)->column_width = g_value_get_int (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
dw_flow_layout_class_init (DwFlowLayoutClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  object_class->get_property = dw_flow_layout_get_property;
  object_class->set_property = dw_flow_layout_set_property;
  layout_class->get_request_mode = dw_flow_layout_get_request_mode;
  layout_class->measure = dw_flow_layout_measure;
  layout_class->allocate = dw_flow_layout_allocate;

  properties[PROP_COLUMN_WIDTH] = g_param_spec_int ("column-width", NULL, NULL, 1, G_MAXINT, 200,
                                                    G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY
                                                        | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
dw_flow_layout_init (DwFlowLayout *self)
{
  self->column_width = 200;
}

GtkLayoutManager *
dw_flow_layout_new (int column_width)
{
  return g_object_new (DW_TYPE_FLOW_LAYOUT, "column-width", column_width, NULL);
}
