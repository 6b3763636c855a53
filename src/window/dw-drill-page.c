/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "model/dw-drill.h"
#include "window/dw-beside-layout.h"
#include "window/dw-chart-view.h"
#include "window/dw-drill-chart.h"
#include "window/dw-drill-edit.h"
#include "window/dw-drill-map-fill.h"
#include "window/dw-drill-map-words.h"
#include "window/dw-drill-plan.h"
#include "window/dw-drill-words.h"
#include "window/dw-piston-view.h"
#include "window/dw-short-names.h"
#include "window/dw-widget.h"

static const int FACE_EXTENT = 130; /* [px] */

struct _DwDrillPage
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkDropDown *axle;
  GtkDropDown *division;
  GtkDropDown *shade;
  GtkDropDown *contour;
  GtkLabel *note;
  DwDrillMapView *map;
  GtkLabel *sizes;
  GtkLabel *figures;
  DwChartView *chart;
  DwPistonView *face;
  GtkCheckButton *has_compression;
  GtkSpinButton *compression;
  GtkCheckButton *has_pack;
  GtkSpinButton *pack_from;
  GtkSpinButton *pack_to;
  GtkCheckButton *has_holes;
  GtkSpinButton *holes;
  GtkMenuButton *filter;
  GtkWidget *own_error_label;
  GtkSpinButton *own_error;
  DwDrillList *list;

  /* Owned */
  DwDocument *document;
  char *selected;
  DwDrillChoices *choices;
  DwDrillChoice *chosen; /* NULL = none */
  DwDrillChoice *pointed;
  char *last_trial; /* id */
  dw_damper put;    /* into it */

  dw_units units;
  gboolean is_stale; /* something changed while nobody looked */
  gboolean updating;

  /* Options */
  gboolean whole_table;
  gboolean oils;
  char *tolerance; /* "H11", "H12", "own"; owned */
};

G_DEFINE_FINAL_TYPE (DwDrillPage, dw_drill_page, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_WHOLE_TABLE,
  PROP_OILS,
  PROP_TOLERANCE,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];
static guint trial_made_signal;

/* ---- what is asked ---- */

static dw_axle
axle_now (DwDrillPage *self)
{
  return (dw_axle)gtk_drop_down_get_selected (self->axle);
}

static dw_spread_limits
limits_now (DwDrillPage *self)
{
  if (strcmp (self->tolerance, "own") == 0)
    return (dw_spread_limits){ .hole_error = gtk_spin_button_get_value (self->own_error) * 1e-3 };
  return (dw_spread_limits){ .hole_grade = strcmp (self->tolerance, "H11") == 0 ? 11 : 12 };
}

static void
ask (DwDrillPage *self)
{
  if (self->document == NULL || self->updating)
    return;
  self->is_stale = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (self->is_stale)
    return;
  const dw_project *project = dw_document_get_project (self->document);
  const dw_setup *setup = dw_project_find_setup (project, self->selected);
  const dw_spread_limits limits = limits_now (self);
  gtk_widget_set_sensitive (GTK_WIDGET (self), setup != NULL);
  if (setup != NULL)
    dw_drill_choices_ask (self->choices, project, &setup->damper[axle_now (self)],
                          (dw_drill_division)gtk_drop_down_get_selected (self->division),
                          self->whole_table, &limits);
}

/* ---- the map ---- */

/* The list of choices and the dots of the map are in the same order. */
static DwDrillChoice *
choice_at (DwDrillPage *self, int dot)
{
  GListModel *list = dw_drill_choices_get_list (self->choices);
  g_autoptr (DwDrillChoice) choice = dot >= 0 ? g_list_model_get_item (list, (guint)dot) : NULL;
  return choice; /* the list keeps it */
}

static int
dot_of (DwDrillPage *self, DwDrillChoice *choice)
{
  guint at;
  if (choice != NULL
      && g_list_store_find (G_LIST_STORE (dw_drill_choices_get_list (self->choices)), choice, &at))
    return (int)at;
  return -1;
}

static dw_drill_filter
filter_now (DwDrillPage *self)
{
  dw_drill_filter filter = dw_drill_filter_defaults ();
  if (gtk_check_button_get_active (self->has_compression))
    filter.keep_compression = gtk_spin_button_get_value (self->compression);
  if (gtk_check_button_get_active (self->has_pack))
    {
      filter.least_pack = gtk_spin_button_get_value (self->pack_from);
      filter.most_pack = gtk_spin_button_get_value (self->pack_to);
    }
  if (gtk_check_button_get_active (self->has_holes))
    filter.most_holes = gtk_spin_button_get_value_as_int (self->holes);
  return filter;
}

/* "Filter: 12 of 45" while something is left out. */
static void
show_count (DwDrillPage *self)
{
  const guint all = g_list_model_get_n_items (dw_drill_choices_get_list (self->choices));
  const guint shown = g_list_model_get_n_items (dw_drill_list_get_shown (self->list));
  g_autofree char *text = shown == all ? g_strdup (_ ("_Filter"))
                                       : g_strdup_printf (_ ("_Filter: %u of %u"), shown, all);
  gtk_menu_button_set_label (self->filter, text);
}

static void
show_map (DwDrillPage *self)
{
  const guint contour = gtk_drop_down_get_selected (self->contour);
  const dw_drill_map_options options = {
    .shade = (dw_drill_measure)gtk_drop_down_get_selected (self->shade),
    .has_contour = contour > 0,
    .contour = (dw_drill_measure)(contour > 0 ? contour - 1 : 0),
    .oils = self->oils,
    .filter = filter_now (self),
    .units = self->units,
    .chosen = dot_of (self, self->chosen),
  };
  dw_drill_map_fill (self->map, self->choices, &options);
}

/* ---- what a choice does ---- */

static void
show_choice (DwDrillPage *self)
{
  const dw_drilling *study = dw_drill_choices_get_study (self->choices);
  DwDrillChoice *choice = self->pointed != NULL ? self->pointed : self->chosen;
  const dw_drill_box *box = dw_drill_choices_get_box (self->choices);
  g_autofree char *sizes = NULL;
  g_autofree char *figures = NULL;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "drill.trial", self->chosen != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "drill.plan", self->chosen != NULL);
  if (study == NULL)
    return;
  if (choice != NULL)
    {
      dw_drill_row row = *dw_drill_choice_get_row (choice);
      const double size[DW_DRILL_SETS] = { row.result.size[0], row.result.size[1] };
      /* one row is computed sooner than its turn comes */
      if (!dw_drill_choice_is_whole (choice))
        dw_drill_row_make (study, box, size, &row, NULL);
      sizes = dw_drill_words_sizes (&study->sets, size, self->units);
      figures = dw_drill_words_figures (study, box, &row, self->units);
    }
  gtk_label_set_label (self->sizes, sizes != NULL ? sizes : _ ("Point at a dot"));
  gtk_label_set_label (self->figures, figures != NULL ? figures : "");
  const dw_spread_limits limits = limits_now (self);
  dw_drill_chart_show (self->chart, study, choice != NULL ? dw_drill_choice_get_row (choice) : NULL,
                       &limits, axle_now (self), self->units);
}

static void
choose (DwDrillPage *self, DwDrillChoice *choice)
{
  g_set_object (&self->chosen, choice);
  dw_drill_map_view_choose (self->map, dot_of (self, choice));
  dw_drill_list_choose (self->list, choice);
  show_choice (self);
}

gboolean
dw_drill_page_choose (DwDrillPage *self, const double size[DW_DRILL_SETS])
{
  g_return_val_if_fail (DW_IS_DRILL_PAGE (self), FALSE);

  GListModel *list = dw_drill_choices_get_list (self->choices);
  for (guint i = 0; i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (DwDrillChoice) choice = g_list_model_get_item (list, i);
      if (fabs (dw_drill_choice_get_size (choice, 0) - size[0]) > DW_DRILL_SAME
          || fabs (dw_drill_choice_get_size (choice, 1) - size[1]) > DW_DRILL_SAME)
        continue;
      choose (self, choice);
      return TRUE;
    }
  return FALSE;
}

/* ---- signals ---- */

static void
on_pointed (DwDrillPage *self, int dot)
{
  g_set_object (&self->pointed, choice_at (self, dot));
  show_choice (self);
}

static void
on_dot_chosen (DwDrillPage *self, int dot)
{
  choose (self, choice_at (self, dot));
}

static void
on_row_chosen (DwDrillPage *self, DwDrillChoice *choice)
{
  choose (self, choice);
}

static void
on_activated (DwDrillPage *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "drill.trial", NULL);
}

static void
on_row_activated (DwDrillPage *self, DwDrillChoice *choice)
{
  choose (self, choice);
  on_activated (self);
}

static void
on_hole_turned (DwDrillPage *self, int hole)
{
  dw_drill_choices_turn_hole (self->choices, hole);
}

static void
on_question_changed (DwDrillPage *self)
{
  ask (self);
}

static void
on_map_changed (DwDrillPage *self)
{
  if (!self->updating && gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_map (self);
}

static void
on_filter_changed (DwDrillPage *self)
{
  const dw_drill_filter filter = filter_now (self);
  dw_drill_list_set_filter (self->list, &filter);
  show_count (self);
  on_map_changed (self);
}

static void
show_note (DwDrillPage *self)
{
  const char *problem = dw_drill_choices_get_problem (self->choices);
  const dw_drilling *study = dw_drill_choices_get_study (self->choices);
  const char *text = NULL;

  if (problem != NULL)
    text = problem;
  else if (study->sets.n_holes[0] == 0 && study->sets.n_holes[1] == 0)
    text = _ ("No hole belongs to a set: click the holes that are to be drilled.");
  else if (dw_drill_choices_box_is_empty (self->choices) && !self->whole_table)
    text = _ ("The parts box has no drills: all drills there are, are shown.");
  gtk_label_set_label (self->note, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note), text != NULL);
}

/* Other choices: keep the sizes that were chosen where they are still among them. */
static void
on_choices_changed (DwDrillPage *self)
{
  const dw_drilling *study = dw_drill_choices_get_study (self->choices);
  const dw_drill_box *box = dw_drill_choices_get_box (self->choices);
  const gboolean had = self->chosen != NULL;
  const double size[DW_DRILL_SETS] = { had ? dw_drill_choice_get_size (self->chosen, 0) : 0.0,
                                       had ? dw_drill_choice_get_size (self->chosen, 1) : 0.0 };

  g_clear_object (&self->chosen);
  g_clear_object (&self->pointed);
  show_note (self);
  dw_drill_list_set_bottles (self->list, box->bottles, box->n_bottles);
  dw_drill_list_set_units (self->list, self->units);
  if (study != NULL)
    {
      dw_piston_view_set_damper (self->face, &study->sets.damper);
      dw_piston_view_set_sets (self->face, study->sets.set_of, study->sets.face.n_holes);
    }
  show_map (self);
  show_count (self);
  if (!had || !dw_drill_page_choose (self, size))
    show_choice (self);
}

static void
on_filled (DwDrillPage *self)
{
  if (self->chosen != NULL)
    show_choice (self);
}

/* ---- actions ---- */

static gboolean
drilled_now (DwDrillPage *self, dw_damper *drilled)
{
  const dw_drilling *study = dw_drill_choices_get_study (self->choices);
  return study != NULL && self->chosen != NULL
         && dw_drill_sets_apply (&study->sets, dw_drill_choice_get_row (self->chosen)->result.size,
                                 drilled, NULL)
                == DW_OK;
}

static void
make_trial (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwDrillPage *self = DW_DRILL_PAGE (widget);
  dw_damper drilled;

  (void)name;
  (void)parameter;
  if (!drilled_now (self, &drilled))
    return;
  const dw_drilling *study = dw_drill_choices_get_study (self->choices);
  g_autofree char *title = dw_drill_words_trial (
      &study->sets, dw_drill_choice_get_row (self->chosen)->result.size, axle_now (self),
      self->units);
  char *id = dw_drill_edit_trial (self->document, self->selected, axle_now (self), &drilled,
                                  self->last_trial, &self->put, title);
  if (id == NULL)
    return;
  g_free (self->last_trial);
  self->last_trial = id;
  self->put = drilled;
  g_signal_emit (self, trial_made_signal, 0, id);
}

static void
on_plan_done (DwDrillPage *self)
{
  dw_damper drilled;
  if (drilled_now (self, &drilled))
    dw_drill_edit_drilled (self->document, self->selected, axle_now (self), &drilled);
}

static void
show_plan (GtkWidget *widget, const char *name, GVariant *parameter)
{
  DwDrillPage *self = DW_DRILL_PAGE (widget);
  const dw_drilling *study = dw_drill_choices_get_study (self->choices);

  (void)name;
  (void)parameter;
  if (study == NULL || self->chosen == NULL)
    return;
  dw_drill_row row;
  if (dw_drill_row_make (study, dw_drill_choices_get_box (self->choices),
                         dw_drill_choice_get_row (self->chosen)->result.size, &row, NULL)
      != DW_OK)
    return;
  GtkWidget *plan = dw_drill_plan_new (study, dw_drill_choices_get_box (self->choices), &row,
                                       axle_now (self), self->units);
  gtk_window_set_transient_for (GTK_WINDOW (plan), GTK_WINDOW (gtk_widget_get_root (widget)));
  g_signal_connect_object (plan, "drilled", G_CALLBACK (on_plan_done), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (plan));
}

/* ---- what the window tells ---- */

void
dw_drill_page_update (DwDrillPage *self, DwDocument *document, const char *selected, dw_units units)
{
  g_return_if_fail (DW_IS_DRILL_PAGE (self) && DW_IS_DOCUMENT (document));

  const gboolean other_units = units != self->units;
  g_set_object (&self->document, document);
  if (g_strcmp0 (self->selected, selected) != 0)
    {
      g_free (self->selected);
      self->selected = g_strdup (selected);
    }
  self->units = units;
  dw_piston_view_set_units (self->face, units);
  ask (self);
  if (other_units && gtk_widget_get_mapped (GTK_WIDGET (self))
      && dw_drill_choices_get_study (self->choices) != NULL)
    on_choices_changed (self);
}

void
dw_drill_page_set_style (DwDrillPage *self, const dw_chart_style *style)
{
  g_return_if_fail (DW_IS_DRILL_PAGE (self));
  dw_drill_map_view_set_style (self->map, style);
  dw_chart_view_set_style (self->chart, style);
  dw_piston_view_set_style (self->face, style);
  gtk_widget_set_size_request (GTK_WIDGET (self->chart), -1,
                               (int)(17.0 * style->font[DW_TEXT_TICK].size));
}

DwDrillChoices *
dw_drill_page_get_choices (DwDrillPage *self)
{
  g_return_val_if_fail (DW_IS_DRILL_PAGE (self), NULL);
  return self->choices;
}

DwDrillMapView *
dw_drill_page_get_map (DwDrillPage *self)
{
  g_return_val_if_fail (DW_IS_DRILL_PAGE (self), NULL);
  return self->map;
}

DwDrillList *
dw_drill_page_get_list (DwDrillPage *self)
{
  g_return_val_if_fail (DW_IS_DRILL_PAGE (self), NULL);
  return self->list;
}

/* ---- widget ---- */

static void
dw_drill_page_map (GtkWidget *widget)
{
  DwDrillPage *self = DW_DRILL_PAGE (widget);
  GTK_WIDGET_CLASS (dw_drill_page_parent_class)->map (widget);
  if (self->is_stale)
    ask (self);
}

static void
dw_drill_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  const DwDrillPage *self = DW_DRILL_PAGE (object);

  switch (id)
    {
    case PROP_WHOLE_TABLE:
      g_value_set_boolean (value, self->whole_table);
      break;
    case PROP_OILS:
      g_value_set_boolean (value, self->oils);
      break;
    case PROP_TOLERANCE:
      g_value_set_string (value, self->tolerance);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
dw_drill_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  DwDrillPage *self = DW_DRILL_PAGE (object);

  switch (id)
    {
    case PROP_WHOLE_TABLE:
      self->whole_table = g_value_get_boolean (value);
      ask (self);
      break;
    case PROP_OILS:
      self->oils = g_value_get_boolean (value);
      on_map_changed (self);
      break;
    case PROP_TOLERANCE:
      g_free (self->tolerance);
      self->tolerance = g_value_dup_string (value);
      gtk_widget_set_visible (self->own_error_label, strcmp (self->tolerance, "own") == 0);
      gtk_widget_set_visible (GTK_WIDGET (self->own_error), strcmp (self->tolerance, "own") == 0);
      ask (self);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
dw_drill_page_dispose (GObject *object)
{
  DwDrillPage *self = DW_DRILL_PAGE (object);

  if (self->choices != NULL)
    g_signal_handlers_disconnect_by_data (self->choices, self);
  g_clear_object (&self->choices);
  g_clear_object (&self->document);
  g_clear_object (&self->chosen);
  g_clear_object (&self->pointed);
  gtk_widget_dispose_template (GTK_WIDGET (self), DW_TYPE_DRILL_PAGE);
  dw_widget_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (dw_drill_page_parent_class)->dispose (object);
}

static void
dw_drill_page_finalize (GObject *object)
{
  DwDrillPage *self = DW_DRILL_PAGE (object);

  g_free (self->selected);
  g_free (self->last_trial);
  g_free (self->tolerance);
  G_OBJECT_CLASS (dw_drill_page_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, axle);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, division);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, shade);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, contour);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, note);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, map);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, sizes);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, figures);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, chart);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, face);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, has_compression);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, compression);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, has_pack);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, pack_from);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, pack_to);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, has_holes);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, holes);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, filter);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, own_error_label);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, own_error);
  gtk_widget_class_bind_template_child (widget_class, DwDrillPage, list);
  gtk_widget_class_bind_template_callback (widget_class, on_question_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_map_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_filter_changed);
}

static void
dw_drill_page_class_init (DwDrillPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  static const GParamFlags FLAGS = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->dispose = dw_drill_page_dispose;
  object_class->finalize = dw_drill_page_finalize;
  object_class->get_property = dw_drill_page_get_property;
  object_class->set_property = dw_drill_page_set_property;
  widget_class->map = dw_drill_page_map;
  properties[PROP_WHOLE_TABLE] = g_param_spec_boolean ("whole-table", NULL, NULL, FALSE, FLAGS);
  properties[PROP_OILS] = g_param_spec_boolean ("oils", NULL, NULL, FALSE, FLAGS);
  properties[PROP_TOLERANCE] = g_param_spec_string ("tolerance", NULL, NULL, "H12", FLAGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  trial_made_signal = g_signal_new ("trial-made", DW_TYPE_DRILL_PAGE, G_SIGNAL_RUN_LAST, 0, NULL,
                                    NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_install_property_action (widget_class, "drill.whole-table", "whole-table");
  gtk_widget_class_install_property_action (widget_class, "drill.oils", "oils");
  gtk_widget_class_install_property_action (widget_class, "drill.tolerance", "tolerance");
  gtk_widget_class_install_action (widget_class, "drill.trial", NULL, make_trial);
  gtk_widget_class_install_action (widget_class, "drill.plan", NULL, show_plan);

  g_type_ensure (DW_TYPE_BESIDE_LAYOUT);
  g_type_ensure (DW_TYPE_CHART_VIEW);
  g_type_ensure (DW_TYPE_DRILL_LIST);
  g_type_ensure (DW_TYPE_DRILL_MAP_VIEW);
  g_type_ensure (DW_TYPE_PISTON_VIEW);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/drill-page.ui");
  bind_children (widget_class);
}

/* What tones and lines can show; lines can be left out. */
static void
fill_measures (DwDrillPage *self)
{
  g_autoptr (GtkStringList) tones = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) lines = gtk_string_list_new (NULL);

  gtk_string_list_append (lines, _ ("no lines"));
  for (int m = 0; m < DW_N_MEASURES; m++)
    {
      gtk_string_list_append (tones, dw_drill_measure_words ((dw_drill_measure)m));
      gtk_string_list_append (lines, dw_drill_measure_words ((dw_drill_measure)m));
    }
  gtk_drop_down_set_model (self->shade, G_LIST_MODEL (tones));
  gtk_drop_down_set_model (self->contour, G_LIST_MODEL (lines));
  gtk_drop_down_set_selected (self->shade, DW_MEASURE_COMPRESSION_LOW);
  gtk_drop_down_set_selected (self->contour, DW_MEASURE_PACK_COMPRESSION + 1);
}

static void
connect_children (DwDrillPage *self)
{
  g_signal_connect_object (self->map, "pointed", G_CALLBACK (on_pointed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->map, "chosen", G_CALLBACK (on_dot_chosen), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->map, "activated", G_CALLBACK (on_activated), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->list, "chosen", G_CALLBACK (on_row_chosen), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->list, "activated", G_CALLBACK (on_row_activated), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->face, "hole-turned", G_CALLBACK (on_hole_turned), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->choices, "changed", G_CALLBACK (on_choices_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->choices, "filled", G_CALLBACK (on_filled), self,
                           G_CONNECT_SWAPPED);
}

static void
dw_drill_page_init (DwDrillPage *self)
{
  self->selected = g_strdup ("");
  self->tolerance = g_strdup ("H12");
  self->choices = dw_drill_choices_new ();
  self->updating = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_measures (self);
  dw_short_names_apply (self->division);
  dw_short_names_apply (self->shade);
  dw_short_names_apply (self->contour);
  dw_piston_view_set_extent (self->face, FACE_EXTENT);
  connect_children (self);
  dw_drill_list_set_choices (self->list, dw_drill_choices_get_list (self->choices));
  self->updating = FALSE;
}
