/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-curves-page.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <math.h>

#include "window/dw-axles-layout.h"
#include "sheet/dw-chart-words.h"
#include "window/dw-damper-panel.h"
#include "window/dw-figures-strip.h"
#include "sheet/dw-finding-text.h"
#include "window/dw-setup-list.h"
#include "window/dw-widget.h"

/* The widgets of one axle. */
typedef struct
{
  DwChartView *chart;
  DwFiguresStrip *figures;
  DwDamperPanel *panel;
} axle_column;

struct _DwCurvesPage
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkBox *charts;
  GtkBox *panels;
  GtkDropDown *quantity;
  GtkDropDown *place;
  GtkToggleButton *button[DW_N_AXLES];

  axle_column axle[DW_N_AXLES];

  /* Owned */
  DwDocument *document;
  GPtrArray *drawn;
  char *selected;

  dw_units units;
  dw_chart_style style;
  dw_style_id style_id;
  int dpi; /* that the style was made for */
  gboolean has_style;
  gboolean sun;

  /* What is shown besides the curves */
  gboolean logarithmic;
  gboolean band;
  gboolean cap;
  char *flow; /* "none", "compression", "rebound"; owned */
};

G_DEFINE_FINAL_TYPE (DwCurvesPage, dw_curves_page, GTK_TYPE_WIDGET)

static guint restyled_signal;

enum
{
  PROP_0,
  PROP_LOGARITHMIC,
  PROP_BAND,
  PROP_CAP,
  PROP_FLOW,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

/* A chart is at least so wide [px] and so high [sizes of its letters]. */
static const int LEAST_CHART_WIDTH = 240;
static const double LEAST_CHART_LINES = 16.0;

static const int CHART_SPACING = 14; /* [px] */
static const int PANEL_SPACING = 6;  /* [px] */

/* The fastest speed shown is somewhat past the high one that is judged. */
static const double PAST_HIGH = 1.2;

/* ---- curves ---- */

static dw_chart
chart_of (DwCurvesPage *self, dw_axle axle)
{
  dw_chart chart = dw_chart_defaults ();

  chart.labels = dw_chart_words ();
  chart.labels.title = axle == DW_FRONT ? _ ("Front") : _ ("Rear");
  chart.labels.title_beside = axle == DW_FRONT ? _ ("Rear") : _ ("Front");
  chart.units = dw_chart_words_units (self->units);
  g_strlcpy (chart.numbers.decimal, localeconv ()->decimal_point, sizeof chart.numbers.decimal);
  chart.quantity = (dw_chart_quantity)gtk_drop_down_get_selected (self->quantity);
  chart.place = (dw_chart_place)gtk_drop_down_get_selected (self->place);
  chart.legend = DW_LEGEND_TABLE;
  chart.is_log = self->logarithmic;
  chart.shows_band = self->band;
  chart.shows_cap = self->cap;
  return chart;
}

static dw_series *
series_of (DwCurvesPage *self, const dw_project *project, const char *id, dw_axle axle,
           dw_error *error)
{
  const dw_setup *setup = dw_project_find_setup (project, id);
  const bool is_log = self->logarithmic;
  const double to = fmin (10.0, project->speeds.high * PAST_HIGH);
  const dw_series_range range
      = { .from = is_log ? project->speeds.low / 5.0 : 0.0, .to = to, .is_log = is_log };
  const dw_spread_limits limits = dw_spread_limits_defaults ();
  dw_series *series = dw_series_new (*setup->name != '\0' ? setup->name : setup->id);

  series->is_fitted = strcmp (project->fitted, id) == 0;
  series->slot = dw_setup_slot (project, self->drawn, id);
  series->motion_ratio = setup->damper[axle].motion_ratio;
  if (dw_series_fill (series, &setup->damper[axle], project->conditions.oil_temperature, &range,
                      error)
      != DW_OK)
    g_clear_pointer (&series, dw_series_free);
  /* a curve without its band is still right */
  if (series != NULL && self->band)
    dw_series_fill_band (series, &setup->damper[axle], project->conditions.oil_temperature, &limits,
                         NULL);
  return series;
}

/* The strip is that of the setup that is edited, where it is drawn. */
static void
choose_strip (DwCurvesPage *self, dw_chart *chart, const char *id, int index)
{
  if (strcmp (self->flow, "none") == 0 || g_strcmp0 (id, self->selected) != 0)
    return;
  chart->strip_series = index;
  chart->strip_stroke = strcmp (self->flow, "rebound") == 0 ? DW_REBOUND : DW_COMPRESSION;
}

/* What one axle's chart is to show. */
typedef struct
{
  dw_chart chart;
  dw_series *series[DW_MAX_SERIES]; /* owned */
  int n;
  dw_error error;
} axle_chart;

/* The fitted setup is the reference where it is drawn; the rest in the order of the list. */
static axle_chart
make_chart (DwCurvesPage *self, const dw_project *project, dw_axle axle)
{
  axle_chart made = { .chart = chart_of (self, axle), .error = { .code = DW_OK } };

  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < self->drawn->len && made.error.code == DW_OK; i++)
      {
        const char *id = g_ptr_array_index (self->drawn, i);
        if ((strcmp (project->fitted, id) == 0) != (pass == 0))
          continue;
        dw_series *series = series_of (self, project, id, axle, &made.error);
        if (series == NULL)
          continue;
        choose_strip (self, &made.chart, id, made.n);
        made.chart.series[made.n] = made.series[made.n] = series;
        made.chart.n_series = ++made.n;
      }
  return made;
}

/* Front and rear have the same axes, so that one can be held against the other. */
static void
share_axes (axle_chart made[DW_N_AXLES])
{
  dw_view whole[DW_N_AXLES];

  for (int a = 0; a < DW_N_AXLES; a++)
    if (made[a].error.code != DW_OK || made[a].n == 0)
      return;
  for (int a = 0; a < DW_N_AXLES; a++)
    whole[a] = dw_chart_whole_view (&made[a].chart);
  for (int a = 0; a < DW_N_AXLES; a++)
    {
      made[a].chart.has_range = true;
      made[a].chart.range = whole[DW_N_AXLES - 1 - a];
    }
}

static void
show_chart (DwCurvesPage *self, const dw_project *project, dw_axle axle, axle_chart *made)
{
  DwChartView *view = self->axle[axle].chart;

  if (made->error.code != DW_OK)
    {
      for (int i = 0; i < made->n; i++)
        dw_series_free (made->series[i]);
      g_autofree char *why = dw_finding_text (&made->error);
      dw_chart_view_set_stale (view, why);
      return;
    }
  dw_chart_view_set_stale (view, NULL);
  dw_chart_view_set_speeds (view, project->speeds.low, project->speeds.middle,
                            project->speeds.high);
  dw_chart_view_take (view, made->series, made->n, &made->chart);
}

static void
refresh (DwCurvesPage *self)
{
  axle_chart made[DW_N_AXLES];

  if (self->document == NULL)
    return;
  const dw_project *project = dw_document_get_project (self->document);
  const dw_setup *setup = dw_project_find_setup (project, self->selected);

  for (int a = 0; a < DW_N_AXLES; a++)
    made[a] = make_chart (self, project, (dw_axle)a);
  share_axes (made);
  for (int a = 0; a < DW_N_AXLES; a++)
    {
      show_chart (self, project, (dw_axle)a, &made[a]);
      dw_figures_strip_update (self->axle[a].figures, project, setup, (dw_axle)a, self->units);
      dw_damper_panel_set_units (self->axle[a].panel, self->units);
      dw_damper_panel_set_setup (self->axle[a].panel, self->selected);
    }
}

void
dw_curves_page_update (DwCurvesPage *self, DwDocument *document, const GPtrArray *drawn,
                       const char *selected, dw_units units)
{
  g_return_if_fail (DW_IS_CURVES_PAGE (self) && DW_IS_DOCUMENT (document));

  if (g_set_object (&self->document, document))
    for (int a = 0; a < DW_N_AXLES; a++)
      dw_damper_panel_set_document (self->axle[a].panel, document);
  g_ptr_array_set_size (self->drawn, 0);
  for (guint i = 0; i < drawn->len; i++)
    g_ptr_array_add (self->drawn, g_strdup (g_ptr_array_index (drawn, i)));
  if (g_strcmp0 (self->selected, selected) != 0)
    {
      g_free (self->selected);
      self->selected = g_strdup (selected);
    }
  self->units = units;
  refresh (self);
}

/* ---- style ---- */

/* What the theme really shows, whoever chose it: light letters mean a dark page. */
static bool
is_dark (DwCurvesPage *self)
{
  GdkRGBA ink;
  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &ink);
  return ink.red + ink.green + ink.blue > 1.5F;
}

static void
update_style (DwCurvesPage *self)
{
  GtkSettings *settings = gtk_settings_get_default ();
  g_autofree char *theme = NULL;
  const bool dark = is_dark (self);
  int dpi = 0;

  g_object_get (settings, "gtk-theme-name", &theme, "gtk-xft-dpi", &dpi, NULL);
  const bool contrast = theme != NULL
                        && (g_str_has_suffix (theme, "-hc")
                            || strstr (theme, "HighContrast") != NULL);
  dw_style_id id = dark ? DW_STYLE_DARK : DW_STYLE_LIGHT;
  if (contrast)
    id = dark ? DW_STYLE_CONTRAST_DARK : DW_STYLE_CONTRAST;
  if (self->sun)
    id = DW_STYLE_SUN;
  if (self->has_style && id == self->style_id && dpi == self->dpi)
    return;
  self->has_style = TRUE;
  self->style_id = id;
  self->dpi = dpi;
  self->style = dw_chart_style_make (id);
  /* points to pixels, and the user's size of letters */
  dw_chart_style_scale (&self->style, (dpi > 0 ? dpi / 1024.0 : 96.0) / 72.0);
  for (int a = 0; a < DW_N_AXLES; a++)
    {
      dw_chart_view_set_style (self->axle[a].chart, &self->style);
      gtk_widget_set_size_request (GTK_WIDGET (self->axle[a].chart), LEAST_CHART_WIDTH,
                                   (int)(LEAST_CHART_LINES * self->style.font[DW_TEXT_TICK].size));
      dw_damper_panel_set_style (self->axle[a].panel, &self->style);
    }
  g_signal_emit (self, restyled_signal, 0);
}

static void
dw_curves_page_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (dw_curves_page_parent_class)->css_changed (widget, change);
  update_style (DW_CURVES_PAGE (widget));
}

void
dw_curves_page_set_sun (DwCurvesPage *self, gboolean sun)
{
  g_return_if_fail (DW_IS_CURVES_PAGE (self));
  self->sun = sun;
  update_style (self);
}

const dw_chart_style *
dw_curves_page_get_style (DwCurvesPage *self)
{
  g_return_val_if_fail (DW_IS_CURVES_PAGE (self), NULL);
  return &self->style;
}

void
dw_curves_page_show_whole (DwCurvesPage *self)
{
  g_return_if_fail (DW_IS_CURVES_PAGE (self));
  for (int a = 0; a < DW_N_AXLES; a++)
    dw_chart_view_show_whole (self->axle[a].chart);
}

DwChartView *
dw_curves_page_get_chart (DwCurvesPage *self, dw_axle axle)
{
  g_return_val_if_fail (DW_IS_CURVES_PAGE (self), NULL);
  return self->axle[axle].chart;
}

/* ---- widget ---- */

static void
add_column (DwCurvesPage *self, dw_axle axle)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *chart = dw_chart_view_new ();
  GtkWidget *figures = dw_figures_strip_new ();
  /* in a low window the chart keeps its height, and the figures are scrolled */
  GtkWidget *figures_scroller = gtk_scrolled_window_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *panel = dw_damper_panel_new ();

  gtk_box_append (GTK_BOX (box), chart);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (figures_scroller), figures);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (figures_scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (figures_scroller), TRUE);
  gtk_box_append (GTK_BOX (box), figures_scroller);
  gtk_box_append (self->charts, box);

  dw_damper_panel_set_axle (DW_DAMPER_PANEL (panel), axle);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), panel);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_widget_set_hexpand (scrolled, TRUE);
  gtk_box_append (self->panels, scrolled);
  self->axle[axle] = (axle_column){ DW_CHART_VIEW (chart), DW_FIGURES_STRIP (figures),
                                    DW_DAMPER_PANEL (panel) };
}

static void
on_option_changed (DwCurvesPage *self)
{
  refresh (self);
}

/* One is always shown: taking the last one away brings the other. */
static void
on_axle_toggled (DwCurvesPage *self, GtkToggleButton *button)
{
  const dw_axle axle = button == self->button[DW_FRONT] ? DW_FRONT : DW_REAR;
  const dw_axle other = axle == DW_FRONT ? DW_REAR : DW_FRONT;
  const gboolean is_on = gtk_toggle_button_get_active (button);
  const gboolean other_on = gtk_toggle_button_get_active (self->button[other]);

  if (!is_on && !other_on)
    {
      gtk_toggle_button_set_active (self->button[other], TRUE);
      return;
    }
  GtkWidget *const boxes[] = { GTK_WIDGET (self->charts), GTK_WIDGET (self->panels) };
  for (size_t i = 0; i < G_N_ELEMENTS (boxes); i++)
    dw_axles_layout_show (DW_AXLES_LAYOUT (gtk_widget_get_layout_manager (boxes[i])),
                          is_on && other_on, is_on ? axle : other);
}

static void
dw_curves_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  const DwCurvesPage *self = DW_CURVES_PAGE (object);

  switch (id)
    {
    case PROP_LOGARITHMIC:
      g_value_set_boolean (value, self->logarithmic);
      break;
    case PROP_BAND:
      g_value_set_boolean (value, self->band);
      break;
    case PROP_CAP:
      g_value_set_boolean (value, self->cap);
      break;
    case PROP_FLOW:
      g_value_set_string (value, self->flow);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
dw_curves_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  DwCurvesPage *self = DW_CURVES_PAGE (object);

  switch (id)
    {
    case PROP_LOGARITHMIC:
      self->logarithmic = g_value_get_boolean (value);
      break;
    case PROP_BAND:
      self->band = g_value_get_boolean (value);
      break;
    case PROP_CAP:
      self->cap = g_value_get_boolean (value);
      break;
    case PROP_FLOW:
      g_free (self->flow);
      self->flow = g_value_dup_string (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
  refresh (self);
}

static void
dw_curves_page_dispose (GObject *object)
{
  DwCurvesPage *self = DW_CURVES_PAGE (object);

  g_clear_object (&self->document);
  dw_widget_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (dw_curves_page_parent_class)->dispose (object);
}

static void
dw_curves_page_finalize (GObject *object)
{
  DwCurvesPage *self = DW_CURVES_PAGE (object);

  g_ptr_array_unref (self->drawn);
  g_free (self->selected);
  g_free (self->flow);
  G_OBJECT_CLASS (dw_curves_page_parent_class)->finalize (object);
}

/* Properties that are actions as well, for the menu. */
static void
install_options (DwCurvesPageClass *klass)
{
  static const char *const NAMES[N_PROPS] = { [PROP_LOGARITHMIC] = "logarithmic",
                                              [PROP_BAND] = "band",
                                              [PROP_CAP] = "cap",
                                              [PROP_FLOW] = "flow" };
  static const GParamFlags FLAGS = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  for (int i = PROP_LOGARITHMIC; i < PROP_FLOW; i++)
    properties[i] = g_param_spec_boolean (NAMES[i], NULL, NULL, i == PROP_CAP, FLAGS);
  properties[PROP_FLOW] = g_param_spec_string (NAMES[PROP_FLOW], NULL, NULL, "none", FLAGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, properties);
  for (int i = PROP_LOGARITHMIC; i < N_PROPS; i++)
    {
      g_autofree char *action = g_strconcat ("curves.", NAMES[i], NULL);
      gtk_widget_class_install_property_action (GTK_WIDGET_CLASS (klass), action, NAMES[i]);
    }
}

static void
dw_curves_page_class_init (DwCurvesPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_curves_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = dw_curves_page_finalize;
  G_OBJECT_CLASS (klass)->get_property = dw_curves_page_get_property;
  G_OBJECT_CLASS (klass)->set_property = dw_curves_page_set_property;
  widget_class->css_changed = dw_curves_page_css_changed;
  restyled_signal = g_signal_new ("restyled", DW_TYPE_CURVES_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
  install_options (klass);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/curves-page.ui");
  gtk_widget_class_bind_template_child (widget_class, DwCurvesPage, charts);
  gtk_widget_class_bind_template_child (widget_class, DwCurvesPage, panels);
  gtk_widget_class_bind_template_child (widget_class, DwCurvesPage, quantity);
  gtk_widget_class_bind_template_child (widget_class, DwCurvesPage, place);
  gtk_widget_class_bind_template_child_full (widget_class, "front", FALSE,
                                             G_STRUCT_OFFSET (DwCurvesPage, button[DW_FRONT]));
  gtk_widget_class_bind_template_child_full (widget_class, "rear", FALSE,
                                             G_STRUCT_OFFSET (DwCurvesPage, button[DW_REAR]));
  gtk_widget_class_bind_template_callback (widget_class, on_option_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_axle_toggled);
}

static void
dw_curves_page_init (DwCurvesPage *self)
{
  self->drawn = g_ptr_array_new_with_free_func (g_free);
  self->selected = g_strdup ("");
  self->flow = g_strdup ("none");
  self->cap = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_layout_manager (GTK_WIDGET (self->charts), dw_axles_layout_new (CHART_SPACING));
  gtk_widget_set_layout_manager (GTK_WIDGET (self->panels), dw_axles_layout_new (PANEL_SPACING));
  g_autoptr (GtkSizeGroup) heights = gtk_size_group_new (GTK_SIZE_GROUP_VERTICAL);
  for (int a = 0; a < DW_N_AXLES; a++)
    {
      add_column (self, (dw_axle)a);
      /* charts beside each other are as high as each other */
      gtk_size_group_add_widget (heights, GTK_WIDGET (self->axle[a].figures));
    }
  update_style (self);
}
