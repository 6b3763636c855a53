/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-figures-strip.h"

#include <glib/gi18n.h>
#include <math.h>

#include "study/dw-compare.h"
#include "sheet/dw-finding-text.h"
#include "sheet/dw-verdict.h"
#include "window/dw-widget.h"

enum
{
  ROW_COMPRESSION,
  ROW_REBOUND,
  ROW_SHARE,
  ROW_RATIO,
  ROW_PACK,
  N_ROWS,
  N_COLUMNS = DW_N_SPEEDS
};

struct _DwFiguresStrip
{
  GtkWidget parent_instance;

  /* Children, made here */
  GtkWidget *box;
  GtkLabel *corner;
  GtkLabel *head[N_COLUMNS];
  GtkLabel *name[N_ROWS];
  GtkLabel *cell[N_ROWS][N_COLUMNS];
  GtkLabel *change[N_ROWS][N_COLUMNS];
  GtkLabel *pack; /* spans the columns: it belongs to no speed */
  GtkInscription *verdict;
};

G_DEFINE_FINAL_TYPE (DwFiguresStrip, dw_figures_strip, GTK_TYPE_WIDGET)

static const int DIGITS = 3;
static const int NAME_CHARS = 9;
static const int BEFORE_CELL = 4; /* [px] */
static const guint VERDICT_LINES = 2;
static const guint MOST_VERDICT_LINES = 3;

/* ---- one figure ---- */

static void
show (DwFiguresStrip *self, int row, int column, const char *value, double change)
{
  const bool same = isnan (change) || dw_compare_judge (change) == DW_CHANGE_SAME;
  g_autofree char *text = same ? g_strdup ("") : dw_quantity_format_change (change);

  gtk_label_set_label (self->cell[row][column], value);
  gtk_label_set_label (self->change[row][column], text);
}

static void
show_damping (DwFiguresStrip *self, const dw_comparison *c, int stroke, dw_units units)
{
  const int row = stroke == DW_COMPRESSION ? ROW_COMPRESSION : ROW_REBOUND;

  for (int i = 0; i < DW_N_SPEEDS; i++)
    {
      g_autofree char *value = dw_quantity_format_digits (DW_QUANTITY_DAMPING, units,
                                                          c->b.c[stroke][i], DIGITS);
      show (self, row, i, value, c->c[stroke][i]);
    }
}

static char *
pack_text (const dw_comparison *c, int stroke, dw_units units)
{
  const double change = c->pack[stroke];
  g_autofree char *value = dw_quantity_format_digits (DW_QUANTITY_NUMBER, units, c->b.pack[stroke],
                                                      DIGITS);
  g_autofree char *by = isnan (change) || dw_compare_judge (change) == DW_CHANGE_SAME
                            ? g_strdup ("")
                            : dw_quantity_format_change (change);

  return g_strdup_printf (*by != '\0' ? "%s %s %s" : "%s %s",
                          stroke == DW_COMPRESSION ? _ ("compression") : _ ("rebound"), value, by);
}

static void
show_pack (DwFiguresStrip *self, const dw_comparison *c, dw_units units)
{
  g_autofree char *in = pack_text (c, DW_COMPRESSION, units);
  g_autofree char *out = pack_text (c, DW_REBOUND, units);
  g_autofree char *text = g_strdup_printf ("%s, %s", in, out);
  gtk_label_set_label (self->pack, text);
}

static void
show_ratios (DwFiguresStrip *self, const dw_project *project, const dw_comparison *c,
             const dw_damper *fitted, const dw_damper *shown, dw_axle axle, dw_units units)
{
  const bool known = project->car.has_sprung_mass[axle];
  const double mass = project->car.sprung_mass[axle];

  gtk_widget_set_visible (GTK_WIDGET (self->name[ROW_RATIO]), known);
  for (int i = 0; i < DW_N_SPEEDS; i++)
    {
      g_autofree char *share = dw_quantity_format_digits (DW_QUANTITY_NUMBER, units,
                                                          c->b.rebound_share[i], DIGITS);
      show (self, ROW_SHARE, i, share, c->rebound_share[i]);
      gtk_widget_set_visible (GTK_WIDGET (self->cell[ROW_RATIO][i]), known);
      gtk_widget_set_visible (GTK_WIDGET (self->change[ROW_RATIO][i]), known);
      if (!known)
        continue;
      const double before = dw_figures_damping_ratio (&c->a, fitted, i, mass);
      const double after = dw_figures_damping_ratio (&c->b, shown, i, mass);
      g_autofree char *ratio = dw_quantity_format_digits (DW_QUANTITY_NUMBER, units, after, DIGITS);
      show (self, ROW_RATIO, i, ratio, dw_compare_change (before, after));
    }
}

static void
show_heads (DwFiguresStrip *self, const dw_project *project, dw_units units)
{
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  /* translators: c is damping, force over speed; its unit follows */
  g_autofree char *corner = g_strdup_printf (_ ("c in %s"),
                                             dw_quantity_unit (DW_QUANTITY_DAMPING, units));

  gtk_label_set_label (self->corner, corner);
  for (int i = 0; i < DW_N_SPEEDS; i++)
    {
      g_autofree char *value = dw_quantity_format (DW_QUANTITY_SPEED, units, speeds[i]);
      g_autofree char *text = g_strdup_printf ("%s %s", value,
                                               dw_quantity_unit (DW_QUANTITY_SPEED, units));
      gtk_label_set_label (self->head[i], text);
    }
}

void
dw_figures_strip_update (DwFiguresStrip *self, const dw_project *project, const dw_setup *setup,
                         dw_axle axle, dw_units units)
{
  g_return_if_fail (DW_IS_FIGURES_STRIP (self) && project != NULL);

  const dw_setup *fitted = dw_project_get_fitted (project);
  const double speeds[DW_N_SPEEDS] = { project->speeds.low, project->speeds.middle,
                                       project->speeds.high };
  const dw_setup *against = fitted != NULL ? fitted : setup;
  dw_comparison comparison;
  dw_error error;

  gtk_widget_set_visible (self->box, setup != NULL);
  if (setup == NULL)
    return;
  if (dw_compare_figures (&against->damper[axle], &setup->damper[axle],
                          project->conditions.oil_temperature, speeds, &comparison, &error)
      != DW_OK)
    {
      g_autofree char *why = dw_finding_text (&error);
      gtk_inscription_set_text (self->verdict, why);
      return;
    }
  show_heads (self, project, units);
  show_damping (self, &comparison, DW_COMPRESSION, units);
  show_damping (self, &comparison, DW_REBOUND, units);
  show_pack (self, &comparison, units);
  show_ratios (self, project, &comparison, &against->damper[axle], &setup->damper[axle], axle,
               units);
  if (against == setup)
    gtk_inscription_set_text (self->verdict, fitted != NULL ? _ ("This setup is fitted.") : "");
  else
    {
      g_autofree char *verdict = dw_verdict_text (&comparison);
      gtk_inscription_set_text (self->verdict, verdict);
    }
}

/* ---- widget ---- */

static GtkLabel *
new_label (GtkGrid *grid, const char *text, int column, int row, float align)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), align);
  gtk_grid_attach (grid, label, column, row, 1, 1);
  return GTK_LABEL (label);
}

/* A figure and its change, in columns of their own so that digits stand under each other. The style
 * sheet keeps room for a change, so that the columns stay where they are when it comes and goes: what
 * does not move need not be drawn again. */
static void
add_cell (DwFiguresStrip *self, GtkGrid *grid, int row, int column)
{
  self->cell[row][column] = new_label (grid, "", 2 * column + 1, row + 1, 1.0F);
  self->change[row][column] = new_label (grid, "", 2 * column + 2, row + 1, 0.0F);
  gtk_widget_set_margin_start (GTK_WIDGET (self->cell[row][column]), BEFORE_CELL);
  gtk_widget_add_css_class (GTK_WIDGET (self->cell[row][column]), "figures");
  gtk_widget_add_css_class (GTK_WIDGET (self->change[row][column]), "change");
}

/* All of the words, also those that there is no room for. Asked for, not set: see
 * dw_widget_set_tooltip(). */
static gboolean
on_query_tooltip (GtkInscription *words, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const char *text = gtk_inscription_get_text (words);

  (void)x;
  (void)y;
  (void)keyboard;
  gtk_tooltip_set_text (tooltip, text);
  return text != NULL && *text != '\0';
}

/* No label: the room for so many lines does not depend on the words, so that the window need not be
 * laid out anew at each movement of the pointer. */
static GtkInscription *
new_words (DwFiguresStrip *self, const char *css_class, guint lines)
{
  GtkWidget *widget = gtk_inscription_new ("");
  GtkInscription *words = GTK_INSCRIPTION (widget);

  gtk_inscription_set_xalign (words, 0.0F);
  gtk_inscription_set_yalign (words, 0.0F);
  gtk_inscription_set_min_lines (words, lines);
  gtk_inscription_set_nat_lines (words, MOST_VERDICT_LINES);
  gtk_inscription_set_text_overflow (words, GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_set_has_tooltip (widget, TRUE);
  g_signal_connect (widget, "query-tooltip", G_CALLBACK (on_query_tooltip), NULL);
  gtk_widget_add_css_class (widget, css_class);
  gtk_box_append (GTK_BOX (self->box), widget);
  return words;
}

static void
dw_figures_strip_dispose (GObject *object)
{
  DwFiguresStrip *self = DW_FIGURES_STRIP (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (dw_figures_strip_parent_class)->dispose (object);
}

static void
dw_figures_strip_class_init (DwFiguresStripClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = dw_figures_strip_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "figures");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
dw_figures_strip_init (DwFiguresStrip *self)
{
  const char *const names[N_ROWS] = { _ ("Compression"), _ ("Rebound"), _ ("Rebound share"),
                                      _ ("Damping ratio"), _ ("Pack") };
  const char *const tips[N_ROWS] = {
    _ ("Force over speed when the shaft goes in, gas and seal included."),
    _ ("Force over speed when the shaft comes out. Under a shim it falls as the shim lifts."),
    _ ("Rebound force over compression force at the same speed; 1 for a plain piston."),
    _ ("Mean damping of both strokes at the wheel over the damping that would just not swing."),
    _ ("How much faster than in proportion the force grows from low to high speed; 1 when only "
       "viscosity acts. Small holes and thin oil pack more than large holes and thick oil."),
  };
  GtkWidget *grid = gtk_grid_new ();

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_grid_set_column_spacing (GTK_GRID (grid), 3);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 1);
  gtk_box_append (GTK_BOX (self->box), grid);
  self->corner = new_label (GTK_GRID (grid), "", 0, 0, 0.0F);
  gtk_widget_add_css_class (GTK_WIDGET (self->corner), "dim-label");
  for (int c = 0; c < N_COLUMNS; c++)
    {
      self->head[c] = new_label (GTK_GRID (grid), "", 2 * c + 1, 0, 1.0F);
      gtk_widget_add_css_class (GTK_WIDGET (self->head[c]), "dim-label");
      gtk_widget_set_hexpand (GTK_WIDGET (self->head[c]), TRUE);
    }
  for (int r = 0; r < N_ROWS; r++)
    {
      self->name[r] = new_label (GTK_GRID (grid), names[r], 0, r + 1, 0.0F);
      /* figures are never cut, their names can be: the tooltip has them too */
      gtk_label_set_ellipsize (self->name[r], PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (self->name[r], NAME_CHARS);
      dw_widget_set_tooltip (GTK_WIDGET (self->name[r]), tips[r]);
      for (int c = 0; c < N_COLUMNS && r != ROW_PACK; c++)
        add_cell (self, GTK_GRID (grid), r, c);
    }
  self->pack = GTK_LABEL (gtk_label_new (""));
  gtk_label_set_xalign (self->pack, 0.0F);
  gtk_label_set_ellipsize (self->pack, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (self->pack), "figures");
  gtk_grid_attach (GTK_GRID (grid), GTK_WIDGET (self->pack), 1, ROW_PACK + 1, 2 * N_COLUMNS, 1);
  self->verdict = new_words (self, "verdict", VERDICT_LINES);
}

GtkWidget *
dw_figures_strip_new (void)
{
  return g_object_new (DW_TYPE_FIGURES_STRIP, NULL);
}
