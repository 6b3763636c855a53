/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-list.h"

#include <glib/gi18n.h>
#include <math.h>

#include "window/dw-drill-words.h"
#include "window/dw-widget.h"

/* What a column tells. */
typedef enum
{
  COLUMN_SIZE,    /* of a set */
  COLUMN_CHANGE,  /* of a stroke at a speed [%] */
  COLUMN_PACK,    /* of a stroke */
  COLUMN_SHARE,   /* rebound share at middle speed */
  COLUMN_OIL,     /* that holds */
  COLUMN_SCATTER, /* [%] */
  COLUMN_HOLES,
  COLUMN_PASSES
} column_kind;

typedef struct
{
  column_kind kind;
  int first;  /* set or stroke */
  int second; /* speed */
  const char *title;
  const char *tip;
} column;

static const column COLUMNS[] = {
  { COLUMN_SIZE, 0, 0, N_ ("Set 1"),
    N_ ("Drill for the holes of set 1; – leaves them as they are") },
  { COLUMN_SIZE, 1, 0, N_ ("Set 2"),
    N_ ("Drill for the holes of set 2; – leaves them as they are") },
  { COLUMN_CHANGE, DW_COMPRESSION, DW_LOW, N_ ("Compr. low"),
    N_ ("Change of compression at low speed, where viscosity rules") },
  { COLUMN_CHANGE, DW_COMPRESSION, DW_MIDDLE, N_ ("middle"),
    N_ ("Change of compression at middle speed") },
  { COLUMN_CHANGE, DW_COMPRESSION, DW_HIGH, N_ ("high"),
    N_ ("Change of compression at high speed, where the oil’s inertia counts as well") },
  { COLUMN_CHANGE, DW_REBOUND, DW_LOW, N_ ("Reb. low"), N_ ("Change of rebound at low speed") },
  { COLUMN_CHANGE, DW_REBOUND, DW_MIDDLE, N_ ("middle"), N_ ("Change of rebound at middle speed") },
  { COLUMN_CHANGE, DW_REBOUND, DW_HIGH, N_ ("high"), N_ ("Change of rebound at high speed") },
  { COLUMN_PACK, DW_COMPRESSION, 0, N_ ("Pack"),
    N_ ("Pack in compression: how much faster than in proportion the force grows from low to high "
        "speed") },
  { COLUMN_SHARE, 0, DW_MIDDLE, N_ ("Reb. share"),
    N_ ("Rebound over compression force at middle speed") },
  { COLUMN_OIL, 0, 0, N_ ("Oil to hold"),
    N_ ("The oil that brings low-speed compression back to what it is now, and how to get it from "
        "the bottles in the parts box") },
  { COLUMN_SCATTER, 0, 0, N_ ("Scatter"),
    N_ ("How far the force may be off by the drilled holes alone, two standard deviations") },
  { COLUMN_HOLES, 0, 0, N_ ("Holes"), N_ ("Holes to drill in one piston") },
  { COLUMN_PASSES, 0, 0, N_ ("Passes"),
    N_ ("Drills through all of these holes, one after the other") },
};

struct _DwDrillList
{
  GtkWidget parent_instance;

  /* Children, made here */
  GtkWidget *scrolled;
  GtkColumnView *view;

  /* Owned */
  GtkCustomFilter *filter;
  GtkFilterListModel *filtered;
  GtkSortListModel *sorted;
  GtkSingleSelection *selection;
  GArray *bottles; /* of double [m2/s] */

  dw_drill_filter wanted;
  dw_units units;
  gboolean choosing; /* not by the user */
};

G_DEFINE_FINAL_TYPE (DwDrillList, dw_drill_list, GTK_TYPE_WIDGET)

enum
{
  CHOSEN,
  ACTIVATED,
  FILTERED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const char NOTHING[] = "–";

/* ---- what stands in a cell ---- */

/* A number to sort by; what is not known comes last. */
static double
key_of (const column *c, DwDrillChoice *choice)
{
  const dw_drill_row *row = dw_drill_choice_get_row (choice);
  const dw_figures *figures = &row->result.figures;
  const gboolean is_whole = dw_drill_choice_is_whole (choice);

  switch (c->kind)
    {
    case COLUMN_SIZE:
      return row->result.size[c->first];
    case COLUMN_CHANGE:
      return row->result.change[c->first][c->second];
    case COLUMN_PACK:
      return figures->pack[c->first];
    case COLUMN_SHARE:
      return figures->rebound_share[c->second];
    case COLUMN_OIL:
      return is_whole && row->has_hold ? row->hold.viscosity : HUGE_VAL;
    case COLUMN_SCATTER:
      return is_whole ? dw_drill_row_scatter (row) : HUGE_VAL;
    case COLUMN_HOLES:
      return row->n_holes;
    case COLUMN_PASSES:
      return is_whole ? row->n_passes : HUGE_VAL;
    }
  g_return_val_if_reached (0.0);
}

static char *
cell_text (DwDrillList *self, const column *c, DwDrillChoice *choice)
{
  const dw_drill_row *row = dw_drill_choice_get_row (choice);
  const gboolean is_whole = dw_drill_choice_is_whole (choice);
  const double key = key_of (c, choice);

  switch (c->kind)
    {
    case COLUMN_SIZE:
      if (key == 0.0)
        return g_strdup (NOTHING);
      return (self->units & DW_UNITS_INCH) != 0
                 ? dw_quantity_format_short (DW_QUANTITY_LENGTH, self->units, key)
                 : g_strdup_printf ("%.2f", key / 1e-3);
    case COLUMN_CHANGE:
      return dw_quantity_format_change (key);
    case COLUMN_PACK:
    case COLUMN_SHARE:
      return dw_quantity_format_digits (DW_QUANTITY_NUMBER, self->units, key, 3);
    case COLUMN_OIL:
      return is_whole ? dw_drill_words_oil (row, (const double *)(gpointer)self->bottles->data,
                                            (int)self->bottles->len)
                      : g_strdup ("…");
    case COLUMN_SCATTER:
      return is_whole ? g_strdup_printf ("±\u202f%.1f\u202f%%", 100.0 * key) : g_strdup ("…");
    case COLUMN_HOLES:
      return g_strdup_printf ("%d", row->n_holes);
    case COLUMN_PASSES:
      return is_whole ? g_strdup_printf ("%d", row->n_passes) : g_strdup ("…");
    }
  g_return_val_if_reached (NULL);
}

int
dw_drill_list_n_columns (void)
{
  return (int)G_N_ELEMENTS (COLUMNS);
}

char *
dw_drill_list_dup_text (DwDrillList *self, DwDrillChoice *choice, int index)
{
  g_return_val_if_fail (DW_IS_DRILL_LIST (self) && DW_IS_DRILL_CHOICE (choice), NULL);
  g_return_val_if_fail (index >= 0 && index < dw_drill_list_n_columns (), NULL);
  return cell_text (self, &COLUMNS[index], choice);
}

/* ---- cells ---- */

static const column *
column_of (GtkListItemFactory *factory)
{
  return g_object_get_data (G_OBJECT (factory), "column");
}

static void
show_cell (DwDrillList *self, const column *c, GtkListItem *item)
{
  g_autofree char *text = cell_text (self, c, gtk_list_item_get_item (item));
  gtk_label_set_label (GTK_LABEL (gtk_list_item_get_child (item)), text);
}

static void
on_setup (GtkListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkWidget *label = gtk_label_new ("");
  (void)data;
  gtk_label_set_xalign (GTK_LABEL (label), column_of (factory)->kind == COLUMN_OIL ? 0.0F : 1.0F);
  gtk_widget_add_css_class (label, "figures");
  gtk_list_item_set_child (item, label);
}

/* A cell that is in sight follows its choice when that becomes whole. */
static void
on_whole (DwDrillChoice *choice, GParamSpec *pspec, gpointer data)
{
  GtkListItem *item = data;
  (void)choice;
  (void)pspec;
  DwDrillList *self = g_object_get_data (G_OBJECT (item), "list");
  const column *c = g_object_get_data (G_OBJECT (item), "column");
  if (gtk_list_item_get_item (item) != NULL)
    show_cell (self, c, item);
}

static void
on_bind (GtkListItemFactory *factory, GtkListItem *item, gpointer data)
{
  DwDrillList *self = data;
  const column *c = column_of (factory);
  show_cell (self, c, item);
  if (dw_drill_choice_is_whole (gtk_list_item_get_item (item)))
    return;
  g_object_set_data (G_OBJECT (item), "list", self);
  g_object_set_data (G_OBJECT (item), "column", (gpointer)(guintptr)c);
  const gulong handler = g_signal_connect (gtk_list_item_get_item (item), "notify::whole",
                                           G_CALLBACK (on_whole), item);
  g_object_set_data (G_OBJECT (item), "handler", (gpointer)handler);
}

static void
on_unbind (GtkListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const gulong handler = (gulong)(guintptr)g_object_steal_data (G_OBJECT (item), "handler");
  (void)factory;
  (void)data;
  if (handler != 0)
    g_signal_handler_disconnect (gtk_list_item_get_item (item), handler);
}

/* ---- order and choice ---- */

static int
compare (gconstpointer a, gconstpointer b, gpointer data)
{
  const column *c = data;
  const double x = key_of (c, DW_DRILL_CHOICE ((gpointer)(guintptr)a));
  const double y = key_of (c, DW_DRILL_CHOICE ((gpointer)(guintptr)b));
  return x < y ? GTK_ORDERING_SMALLER : x > y ? GTK_ORDERING_LARGER : GTK_ORDERING_EQUAL;
}

static gboolean
passes (gpointer item, gpointer data)
{
  DwDrillList *self = data;
  return dw_drill_filter_passes (&self->wanted, dw_drill_choice_get_row (item));
}

static void
on_selected (DwDrillList *self)
{
  if (!self->choosing)
    g_signal_emit (self, signals[CHOSEN], 0,
                   gtk_single_selection_get_selected_item (self->selection));
}

static void
on_activate (DwDrillList *self, guint position)
{
  g_autoptr (DwDrillChoice) choice = g_list_model_get_item (G_LIST_MODEL (self->selection),
                                                            position);
  if (choice != NULL)
    g_signal_emit (self, signals[ACTIVATED], 0, choice);
}

static void
on_shown_changed (DwDrillList *self)
{
  g_signal_emit (self, signals[FILTERED], 0);
}

/* ---- what it shows ---- */

void
dw_drill_list_set_choices (DwDrillList *self, GListModel *choices)
{
  g_return_if_fail (DW_IS_DRILL_LIST (self));
  self->choosing = TRUE;
  gtk_filter_list_model_set_model (self->filtered, choices);
  self->choosing = FALSE;
}

void
dw_drill_list_set_bottles (DwDrillList *self, const double *bottles, int n)
{
  g_return_if_fail (DW_IS_DRILL_LIST (self));
  g_array_set_size (self->bottles, 0);
  g_array_append_vals (self->bottles, bottles, (guint)n);
}

/* Cells are bound anew. */
static void
show_again (DwDrillList *self)
{
  gtk_filter_changed (GTK_FILTER (self->filter), GTK_FILTER_CHANGE_DIFFERENT);
}

void
dw_drill_list_set_units (DwDrillList *self, dw_units units)
{
  g_return_if_fail (DW_IS_DRILL_LIST (self));
  if (units == self->units)
    return;
  self->units = units;
  g_autoptr (GListModel) choices = gtk_filter_list_model_get_model (self->filtered);
  if (choices == NULL)
    return;
  g_object_ref (choices);
  dw_drill_list_set_choices (self, NULL);
  dw_drill_list_set_choices (self, choices);
}

void
dw_drill_list_set_filter (DwDrillList *self, const dw_drill_filter *filter)
{
  g_return_if_fail (DW_IS_DRILL_LIST (self));
  self->choosing = TRUE;
  self->wanted = *filter;
  show_again (self);
  self->choosing = FALSE;
}

DwDrillChoice *
dw_drill_list_get_chosen (DwDrillList *self)
{
  g_return_val_if_fail (DW_IS_DRILL_LIST (self), NULL);
  return gtk_single_selection_get_selected_item (self->selection);
}

void
dw_drill_list_choose (DwDrillList *self, DwDrillChoice *choice)
{
  g_return_if_fail (DW_IS_DRILL_LIST (self));

  GListModel *model = G_LIST_MODEL (self->selection);
  guint position = GTK_INVALID_LIST_POSITION;
  for (guint i = 0; choice != NULL && i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (DwDrillChoice) item = g_list_model_get_item (model, i);
      if (item == choice)
        position = i;
    }
  self->choosing = TRUE;
  gtk_single_selection_set_selected (self->selection, position);
  self->choosing = FALSE;
  /* GTK 4.8 scrolls by an action of the list that is inside the column view */
  if (position != GTK_INVALID_LIST_POSITION)
    for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->view)); child != NULL;
         child = gtk_widget_get_next_sibling (child))
      if (GTK_IS_LIST_VIEW (child)
          || g_strcmp0 (G_OBJECT_TYPE_NAME (child), "GtkColumnListView") == 0)
        gtk_widget_activate_action (child, "list.scroll-to-item", "u", position);
}

GListModel *
dw_drill_list_get_shown (DwDrillList *self)
{
  g_return_val_if_fail (DW_IS_DRILL_LIST (self), NULL);
  return G_LIST_MODEL (self->selection);
}

/* ---- widget ---- */

static void
add_column (DwDrillList *self, const column *c)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkColumnViewColumn *shown = gtk_column_view_column_new (_ (c->title), factory);
  g_autoptr (GtkSorter) sorter = GTK_SORTER (
      gtk_custom_sorter_new (compare, (gpointer)(guintptr)c, NULL));

  g_object_set_data (G_OBJECT (factory), "column", (gpointer)(guintptr)c);
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), self);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (on_unbind), self);
  gtk_column_view_column_set_sorter (shown, sorter);
  gtk_column_view_column_set_expand (shown, c->kind == COLUMN_OIL);
  gtk_column_view_append_column (self->view, shown);
  g_object_unref (shown);
}

/* GTK 4.8 has no tooltips of columns; their titles are the buttons of the first row. */
static void
add_tooltips (DwDrillList *self)
{
  GtkWidget *header = gtk_widget_get_first_child (GTK_WIDGET (self->view));
  GtkWidget *title = header != NULL ? gtk_widget_get_first_child (header) : NULL;
  for (size_t i = 0; i < G_N_ELEMENTS (COLUMNS) && title != NULL; i++)
    {
      dw_widget_set_tooltip (title, _ (COLUMNS[i].tip));
      title = gtk_widget_get_next_sibling (title);
    }
}

static void
dw_drill_list_dispose (GObject *object)
{
  DwDrillList *self = DW_DRILL_LIST (object);

  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  self->view = NULL;
  g_clear_object (&self->selection);
  G_OBJECT_CLASS (dw_drill_list_parent_class)->dispose (object);
}

static void
dw_drill_list_finalize (GObject *object)
{
  g_array_unref (DW_DRILL_LIST (object)->bottles);
  G_OBJECT_CLASS (dw_drill_list_parent_class)->finalize (object);
}

static void
dw_drill_list_class_init (DwDrillListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = dw_drill_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = dw_drill_list_finalize;
  signals[CHOSEN] = g_signal_new ("chosen", DW_TYPE_DRILL_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, DW_TYPE_DRILL_CHOICE);
  signals[ACTIVATED] = g_signal_new ("activated", DW_TYPE_DRILL_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, DW_TYPE_DRILL_CHOICE);
  signals[FILTERED] = g_signal_new ("filtered", DW_TYPE_DRILL_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                    NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "drilllist");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
dw_drill_list_init (DwDrillList *self)
{
  self->bottles = g_array_new (FALSE, FALSE, sizeof (double));
  self->wanted = dw_drill_filter_defaults ();
  self->filter = gtk_custom_filter_new (passes, self, NULL);
  self->filtered = gtk_filter_list_model_new (NULL, GTK_FILTER (self->filter));
  self->sorted = gtk_sort_list_model_new (G_LIST_MODEL (self->filtered), NULL);
  self->selection = gtk_single_selection_new (G_LIST_MODEL (self->sorted));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  self->view = GTK_COLUMN_VIEW (
      gtk_column_view_new (GTK_SELECTION_MODEL (g_object_ref (self->selection))));
  gtk_column_view_set_show_row_separators (self->view, TRUE);
  for (size_t i = 0; i < G_N_ELEMENTS (COLUMNS); i++)
    add_column (self, &COLUMNS[i]);
  add_tooltips (self);
  gtk_sort_list_model_set_sorter (self->sorted, gtk_column_view_get_sorter (self->view));
  g_signal_connect_object (self->selection, "notify::selected", G_CALLBACK (on_selected), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->selection, "items-changed", G_CALLBACK (on_shown_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->view, "activate", G_CALLBACK (on_activate), self,
                           G_CONNECT_SWAPPED);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Choices of drill sizes"), -1);

  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), GTK_WIDGET (self->view));
  gtk_widget_set_hexpand (self->scrolled, TRUE);
  gtk_widget_set_vexpand (self->scrolled, TRUE);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
}

GtkWidget *
dw_drill_list_new (void)
{
  return g_object_new (DW_TYPE_DRILL_LIST, NULL);
}
