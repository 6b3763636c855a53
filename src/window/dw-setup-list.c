/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-setup-list.h"

#include <glib/gi18n.h>
#include <math.h>

#include "study/dw-difference.h"
#include "sheet/dw-difference-words.h"
#include "window/dw-widget.h"

struct _DwSetupList
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkListBox *list;
  GtkLabel *differences;

  /* Owned */
  char *shown; /* what the rows say, so that they are made anew only when that changes */

  dw_chart_style style;
  gboolean updating;
};

G_DEFINE_FINAL_TYPE (DwSetupList, dw_setup_list, GTK_TYPE_WIDGET)

enum
{
  SETUP_SELECTED,
  SETUP_DRAWN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static const int SAMPLE_WIDTH = 40;
static const int SAMPLE_HEIGHT = 18;

int
dw_setup_slot (const dw_project *project, const GPtrArray *drawn, const char *id)
{
  int next = DW_SLOT_TRIAL_1;

  for (guint i = 0; i < drawn->len; i++)
    {
      const char *one = g_ptr_array_index (drawn, i);
      const int slot = strcmp (one, project->fitted) == 0 ? DW_SLOT_FITTED : next++;
      if (strcmp (one, id) == 0)
        return slot;
    }
  return -1;
}

/* ---- words ---- */

char *
dw_setup_differences (const dw_setup *fitted, const dw_setup *setup, dw_axle axle, dw_units units)
{
  const dw_damper *a = &fitted->damper[axle];
  const dw_damper *b = &setup->damper[axle];
  g_autofree dw_difference *list = g_new (dw_difference, DW_MAX_DIFFERENCES);
  const size_t n = dw_difference_find (a, b, list, DW_MAX_DIFFERENCES);
  const size_t acting = dw_difference_count_acting (list, MIN (n, DW_MAX_DIFFERENCES));
  const char *where = axle == DW_FRONT ? _ ("Front") : _ ("Rear");
  GString *text = g_string_new (NULL);

  if (n == 0)
    g_string_append_printf (text, _ ("%s: as fitted"), where);
  for (size_t i = 0; i < n && i < DW_MAX_DIFFERENCES; i++)
    {
      g_autofree char *words = dw_difference_words (&list[i], a, b, units);
      g_string_append (text, i > 0 ? "\n" : "");
      /* Translators: front or rear axle, and what differs there. */
      g_string_append_printf (text, _ ("%s: %s"), where, words);
    }
  if (acting > 1)
    g_string_append_printf (
        text, "\n%s",
        _ ("More than one thing differs: the curves cannot tell which of them did it."));
  return g_string_free (text, FALSE);
}

static void
show_differences (DwSetupList *self, const dw_project *project, const char *selected,
                  dw_units units)
{
  const dw_setup *fitted = dw_project_get_fitted (project);
  const dw_setup *setup = dw_project_find_setup (project, selected);
  g_autofree char *text = NULL;

  if (fitted == NULL)
    text = g_strdup (_ ("No setup is fitted. Choose one and press “Fit in the car”."));
  else if (setup == fitted || setup == NULL)
    text = g_strdup (_ ("This setup is in the car. Add a trial to compare an idea with it."));
  else
    {
      g_autofree char *front = dw_setup_differences (fitted, setup, DW_FRONT, units);
      g_autofree char *rear = dw_setup_differences (fitted, setup, DW_REAR, units);
      text = g_strdup_printf ("%s\n%s", front, rear);
    }
  gtk_label_set_label (self->differences, text);
}

/* ---- rows ---- */

static void
draw_marker (cairo_t *cr, const dw_line_style *line, double x, double y, double r)
{
  switch (line->marker)
    {
    case DW_MARKER_CIRCLE:
      cairo_arc (cr, x, y, r, 0.0, 2.0 * G_PI);
      break;
    case DW_MARKER_SQUARE:
      cairo_rectangle (cr, x - r, y - r, 2.0 * r, 2.0 * r);
      break;
    case DW_MARKER_TRIANGLE:
      cairo_move_to (cr, x, y - r);
      cairo_line_to (cr, x + r, y + r);
      cairo_line_to (cr, x - r, y + r);
      cairo_close_path (cr);
      break;
    case DW_MARKER_DIAMOND:
      cairo_move_to (cr, x, y - r);
      cairo_line_to (cr, x + r, y);
      cairo_line_to (cr, x, y + r);
      cairo_line_to (cr, x - r, y);
      cairo_close_path (cr);
      break;
    case DW_MARKER_CROSS:
      cairo_move_to (cr, x - r, y - r);
      cairo_line_to (cr, x + r, y + r);
      cairo_move_to (cr, x - r, y + r);
      cairo_line_to (cr, x + r, y - r);
      cairo_stroke (cr);
      return;
    }
  cairo_fill (cr);
}

static void
draw_sample (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  DwSetupList *self = data;
  const int slot = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (area), "slot"));

  if (slot < 0)
    return;
  const dw_line_style *line = &self->style.line[slot];
  cairo_set_source_rgb (cr, line->color.red, line->color.green, line->color.blue);
  /* heavy styles are for charts: here a sample must leave its dashes to be seen */
  cairo_set_line_width (cr, fmin (line->width, 0.2 * height));
  cairo_set_dash (cr, line->dash, line->n_dash, 0.0);
  cairo_move_to (cr, 1.0, height / 2.0);
  cairo_line_to (cr, width - 1.0, height / 2.0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0.0);
  draw_marker (cr, line, width / 2.0, height / 2.0,
               fmin (self->style.marker_radius + 0.5, 0.34 * height));
}

static void
on_toggled (GtkCheckButton *button, gpointer data)
{
  DwSetupList *self = data;

  if (!self->updating)
    g_signal_emit (self, signals[SETUP_DRAWN], 0, g_object_get_data (G_OBJECT (button), "id"),
                   gtk_check_button_get_active (button));
}

static GtkWidget *
new_name (const dw_project *project, const dw_setup *setup)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *name = gtk_label_new (*setup->name != '\0' ? setup->name : setup->id);

  gtk_label_set_xalign (GTK_LABEL (name), 0.0F);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (name), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_lines (GTK_LABEL (name), 2);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  dw_widget_set_tooltip (name, setup->name);
  gtk_box_append (GTK_BOX (box), name);
  if (strcmp (project->fitted, setup->id) == 0)
    {
      GtkWidget *badge = gtk_label_new (_ ("fitted"));
      gtk_label_set_xalign (GTK_LABEL (badge), 0.0F);
      gtk_widget_add_css_class (badge, "fitted");
      gtk_box_append (GTK_BOX (box), badge);
    }
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  return box;
}

static GtkWidget *
new_row (DwSetupList *self, const dw_project *project, const dw_setup *setup, int slot)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *check = gtk_check_button_new ();
  GtkWidget *sample = gtk_drawing_area_new ();
  g_autofree char *label = g_strdup_printf (_ ("Draw %s"), setup->name);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), slot >= 0);
  dw_widget_set_tooltip (check, _ ("Draw the curves of this setup"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_object_set_data_full (G_OBJECT (check), "id", g_strdup (setup->id), g_free);
  g_signal_connect_object (check, "toggled", G_CALLBACK (on_toggled), self, 0);

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (sample), SAMPLE_WIDTH);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (sample), SAMPLE_HEIGHT);
  gtk_widget_set_valign (sample, GTK_ALIGN_CENTER);
  g_object_set_data (G_OBJECT (sample), "slot", GINT_TO_POINTER (slot));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (sample), draw_sample, self, NULL);

  gtk_box_append (GTK_BOX (box), check);
  gtk_box_append (GTK_BOX (box), sample);
  gtk_box_append (GTK_BOX (box), new_name (project, setup));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data_full (G_OBJECT (row), "id", g_strdup (setup->id), g_free);
  return row;
}

/* All that the rows say, in one string. */
static char *
signature (const dw_project *project, const GPtrArray *drawn)
{
  GString *text = g_string_new (project->fitted);

  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    {
      const dw_setup *setup = dw_project_get_setup (project, i);
      g_string_append_printf (text, "\n%s\t%s\t%d", setup->id, setup->name,
                              dw_setup_slot (project, drawn, setup->id));
    }
  return g_string_free (text, FALSE);
}

static void
make_rows (DwSetupList *self, const dw_project *project, const GPtrArray *drawn)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_list_box_remove (self->list, child);
  for (guint i = 0; i < dw_project_get_n_setups (project); i++)
    {
      const dw_setup *setup = dw_project_get_setup (project, i);
      gtk_list_box_append (
          self->list, new_row (self, project, setup, dw_setup_slot (project, drawn, setup->id)));
    }
}

void
dw_setup_list_update (DwSetupList *self, const dw_project *project, const GPtrArray *drawn,
                      const char *selected, dw_units units)
{
  g_return_if_fail (DW_IS_SETUP_LIST (self) && project != NULL);

  g_autofree char *now = signature (project, drawn);
  const int index = dw_project_find_index (project, selected);

  self->updating = TRUE;
  if (g_strcmp0 (now, self->shown) != 0)
    {
      make_rows (self, project, drawn);
      g_free (self->shown);
      self->shown = g_steal_pointer (&now);
    }
  gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, index));
  self->updating = FALSE;
  show_differences (self, project, selected, units);
}

void
dw_setup_list_set_style (DwSetupList *self, const dw_chart_style *style)
{
  g_return_if_fail (DW_IS_SETUP_LIST (self));

  self->style = *style;
  gtk_widget_queue_draw (GTK_WIDGET (self->list));
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->list)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      GtkWidget *box = gtk_list_box_row_get_child (GTK_LIST_BOX_ROW (row));
      gtk_widget_queue_draw (gtk_widget_get_next_sibling (gtk_widget_get_first_child (box)));
    }
}

static void
on_row_selected (DwSetupList *self, GtkListBoxRow *row)
{
  if (row != NULL && !self->updating)
    g_signal_emit (self, signals[SETUP_SELECTED], 0, g_object_get_data (G_OBJECT (row), "id"));
}

static void
dw_setup_list_dispose (GObject *object)
{
  DwSetupList *self = DW_SETUP_LIST (object);

  self->updating = TRUE;
  dw_widget_drop_children (GTK_WIDGET (self));
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (dw_setup_list_parent_class)->dispose (object);
}

static void
dw_setup_list_class_init (DwSetupListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_setup_list_dispose;
  signals[SETUP_SELECTED] = g_signal_new ("setup-selected", DW_TYPE_SETUP_LIST, G_SIGNAL_RUN_LAST,
                                          0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SETUP_DRAWN] = g_signal_new ("setup-drawn", DW_TYPE_SETUP_LIST, G_SIGNAL_RUN_LAST, 0,
                                       NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_STRING,
                                       G_TYPE_BOOLEAN);
  gtk_widget_class_set_css_name (widget_class, "setuplist");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/setup-list.ui");
  gtk_widget_class_bind_template_child (widget_class, DwSetupList, list);
  gtk_widget_class_bind_template_child (widget_class, DwSetupList, differences);
  gtk_widget_class_bind_template_callback (widget_class, on_row_selected);
}

static void
dw_setup_list_init (DwSetupList *self)
{
  self->style = dw_chart_style_make (DW_STYLE_LIGHT);
  gtk_widget_init_template (GTK_WIDGET (self));
}
