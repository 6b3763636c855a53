/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-sheet-form.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "window/dw-number-field.h"
#include "window/dw-widget.h"

/* Texts of several lines. */
enum
{
  NOTES_SETUP,
  NOTES_PROJECT,
  N_NOTES
};

/* Numbers of the project. */
enum
{
  NUMBER_OIL,
  NUMBER_AIR,
  NUMBER_MASS_FRONT,
  NUMBER_MASS_REAR,
  N_NUMBERS
};

struct _DwSheetForm
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkGrid *meeting_grid;
  GtkLabel *meeting_error;
  GtkBox *numbers;
  GtkTextView *setup_notes;
  GtkLabel *setup_notes_error;
  GtkTextView *project_notes;
  GtkLabel *project_notes_error;

  /* Borrowed: made here, children of the above */
  GtkEditable *meeting[DW_N_MEETING];
  DwNumberField *number[N_NUMBERS];

  /* Owned */
  DwDocument *document;
  char *selected;

  gboolean updating; /* what is shown is being set, not typed */
  gboolean editing;  /* what is typed goes into the document now */
};

G_DEFINE_FINAL_TYPE (DwSheetForm, dw_sheet_form, GTK_TYPE_WIDGET)

static const struct
{
  const char *name;
  const char *step; /* that undo names */
} MEETING[DW_N_MEETING] = {
  [DW_MEETING_EVENT] = { N_ ("Event"), N_ ("Change the event") },
  [DW_MEETING_TRACK] = { N_ ("Track"), N_ ("Change the track") },
  [DW_MEETING_SURFACE] = { N_ ("Surface"), N_ ("Change the surface") },
  [DW_MEETING_DRIVER] = { N_ ("Driver"), N_ ("Change the driver") },
  [DW_MEETING_CAR] = { N_ ("Car"), N_ ("Change the car") },
};

static const struct
{
  const char *name;
  const char *step;
  dw_quantity quantity;
  dw_limit_id limit;
  double size; /* [SI or degC] one press of an arrow key */
  bool is_optional;
} NUMBERS[N_NUMBERS] = {
  [NUMBER_OIL] = { N_ ("Oil"), N_ ("Change the oil temperature"), DW_QUANTITY_TEMPERATURE,
                   DW_LIMIT_OIL_TEMPERATURE, 1.0, false },
  [NUMBER_AIR] = { N_ ("Air"), N_ ("Change the air temperature"), DW_QUANTITY_TEMPERATURE,
                   DW_LIMIT_AIR_TEMPERATURE, 1.0, false },
  [NUMBER_MASS_FRONT] = { N_ ("Mass front"), N_ ("Change the front sprung mass"), DW_QUANTITY_MASS,
                          DW_LIMIT_SPRUNG_MASS, 0.01, true },
  [NUMBER_MASS_REAR] = { N_ ("Mass rear"), N_ ("Change the rear sprung mass"), DW_QUANTITY_MASS,
                         DW_LIMIT_SPRUNG_MASS, 0.01, true },
};

static void
tell (GtkLabel *label, const char *why)
{
  gtk_label_set_label (label, why != NULL ? why : "");
  gtk_widget_set_visible (GTK_WIDGET (label), why != NULL);
}

/* One edit of the document, which tells this form as well while it happens. */
static void
edit (DwSheetForm *self, const char *step, const char *merge, DwDocumentEdit change, gpointer data)
{
  self->editing = TRUE;
  dw_document_edit (self->document, step, merge, change, data);
  self->editing = FALSE;
}

/* ---- the meeting ---- */

typedef struct
{
  int field; /* of the meeting, of the notes or of the numbers */
  const char *text;
  double value; /* [SI or degC] NaN = not given */
  const char *setup;
} change;

static gboolean
write_meeting (dw_project *project, gpointer data)
{
  const change *c = data;
  return dw_project_set_meeting (project, (dw_meeting_field)c->field, c->text);
}

static void
on_meeting_changed (GtkEditable *entry, DwSheetForm *self)
{
  const int field = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (entry), "field"));
  const char *text = gtk_editable_get_text (entry);
  const gboolean is_valid = dw_project_text_is_valid (text);
  g_autofree char *merge = g_strdup_printf ("meeting-%d", field);
  change c = { .field = field, .text = text };

  if (self->updating || self->document == NULL)
    return;
  if (is_valid)
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "error");
  else
    gtk_widget_add_css_class (GTK_WIDGET (entry), "error");
  tell (self->meeting_error,
        is_valid ? NULL
                 : _ ("Up to 200 characters, none of them a control character: not taken over."));
  if (is_valid)
    edit (self, _ (MEETING[field].step), merge, write_meeting, &c);
}

static void
add_meeting (DwSheetForm *self)
{
  for (int i = 0; i < DW_N_MEETING; i++)
    {
      GtkWidget *label = gtk_label_new (_ (MEETING[i].name));
      GtkWidget *entry = gtk_entry_new ();
      gtk_label_set_xalign (GTK_LABEL (label), 0.0F);
      gtk_label_set_mnemonic_widget (GTK_LABEL (label), entry);
      gtk_widget_set_hexpand (entry, TRUE);
      gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
      gtk_editable_set_enable_undo (GTK_EDITABLE (entry), FALSE);
      g_object_set_data (G_OBJECT (entry), "field", GINT_TO_POINTER (i));
      g_signal_connect (entry, "changed", G_CALLBACK (on_meeting_changed), self);
      gtk_grid_attach (self->meeting_grid, label, 0, i, 1, 1);
      gtk_grid_attach (self->meeting_grid, entry, 1, i, 1, 1);
      self->meeting[i] = GTK_EDITABLE (entry);
    }
}

/* ---- numbers ---- */

static double
number_of (const dw_project *project, int i)
{
  switch (i)
    {
    case NUMBER_OIL:
      return project->conditions.oil_temperature;
    case NUMBER_AIR:
      return project->conditions.air_temperature;
    default:
      {
        const int axle = i == NUMBER_MASS_FRONT ? DW_FRONT : DW_REAR;
        return project->car.has_sprung_mass[axle] ? project->car.sprung_mass[axle] : (double)NAN;
      }
    }
}

static gboolean
write_number (dw_project *project, gpointer data)
{
  const change *c = data;
  const int axle = c->field == NUMBER_MASS_FRONT ? DW_FRONT : DW_REAR;

  if (c->field == NUMBER_OIL)
    project->conditions.oil_temperature = c->value;
  else if (c->field == NUMBER_AIR)
    project->conditions.air_temperature = c->value;
  else
    {
      project->car.has_sprung_mass[axle] = !isnan (c->value);
      project->car.sprung_mass[axle] = isnan (c->value) ? 0.0 : c->value;
    }
  return TRUE;
}

static void
on_committed (DwNumberField *field, double value, gboolean final, DwSheetForm *self)
{
  const int i = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (field), "field"));
  g_autofree char *merge = g_strdup_printf ("number-%d:%u", i, dw_number_field_get_run (field));
  change c = { .field = i, .value = value };

  (void) final;
  if (!self->updating && self->document != NULL)
    edit (self, _ (NUMBERS[i].step), merge, write_number, &c);
}

static void
add_numbers (DwSheetForm *self)
{
  for (int i = 0; i < N_NUMBERS; i++)
    {
      GtkWidget *widget = dw_number_field_new ();
      DwNumberField *field = DW_NUMBER_FIELD (widget);
      const dw_step step = { DW_STEP_EVEN, NUMBERS[i].size };
      dw_number_field_set_kind (field, NUMBERS[i].quantity, NUMBERS[i].limit, step, FALSE);
      dw_number_field_set_optional (field, NUMBERS[i].is_optional);
      dw_number_field_set_label (field, _ (NUMBERS[i].name));
      g_object_set_data (G_OBJECT (field), "field", GINT_TO_POINTER (i));
      g_signal_connect (field, "committed", G_CALLBACK (on_committed), self);
      gtk_box_append (self->numbers, widget);
      self->number[i] = field;
    }
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->number[NUMBER_OIL]),
                               _ ("Temperature of the oil in the dampers: the curves follow it"));
  for (int i = NUMBER_MASS_FRONT; i <= NUMBER_MASS_REAR; i++)
    gtk_widget_set_tooltip_text (
        GTK_WIDGET (self->number[i]),
        _ ("Mass that one spring carries; without it there is no damping ratio"));
}

/* ---- notes ---- */

static gboolean
write_notes (dw_project *project, gpointer data)
{
  const change *c = data;
  const int index = c->field == NOTES_SETUP ? dw_project_find_index (project, c->setup) : 0;

  if (c->field == NOTES_PROJECT)
    return dw_project_set_notes (project, c->text);
  return index >= 0 && dw_project_set_setup_notes (project, (guint)index, c->text);
}

static char *
text_of (GtkTextBuffer *buffer)
{
  GtkTextIter start, end;
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, TRUE);
}

static void
take_notes (DwSheetForm *self, int field, GtkTextBuffer *buffer, GtkLabel *error)
{
  g_autofree char *text = text_of (buffer);
  g_autofree char *merge = g_strdup_printf ("notes-%d-%s", field, self->selected);
  const gboolean is_valid = dw_project_notes_are_valid (text);
  change c = { .field = field, .text = text, .setup = self->selected };

  if (self->updating || self->document == NULL)
    return;
  if (is_valid)
    {
      tell (error, NULL);
      edit (self,
            field == NOTES_SETUP ? _ ("Change the notes to a setup")
                                 : _ ("Change the notes to the project"),
            merge, write_notes, &c);
      return;
    }
  g_autofree char *why = g_strdup_printf (
      /* Translators: how many there are, how many there may be */
      _ ("%ld characters, up to %d are allowed, none of them a control character: not taken over."),
      g_utf8_strlen (text, -1), DW_PROJECT_MAX_NOTES);
  tell (error, why);
}

static void
on_setup_notes_changed (GtkTextBuffer *buffer, DwSheetForm *self)
{
  take_notes (self, NOTES_SETUP, buffer, self->setup_notes_error);
}

static void
on_project_notes_changed (GtkTextBuffer *buffer, DwSheetForm *self)
{
  take_notes (self, NOTES_PROJECT, buffer, self->project_notes_error);
}

static void
connect_notes (DwSheetForm *self, GtkTextView *view, GCallback callback)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (view);
  /* undo is the window's: it names its steps */
  gtk_text_buffer_set_enable_undo (buffer, FALSE);
  g_signal_connect_object (buffer, "changed", callback, self, 0);
}

/* ---- showing ---- */

static void
show_notes (GtkTextView *view, GtkLabel *error, const char *notes)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (view);
  g_autofree char *shown = text_of (buffer);

  tell (error, NULL);
  if (strcmp (shown, notes) != 0)
    gtk_text_buffer_set_text (buffer, notes, -1);
}

static void
show_meeting (DwSheetForm *self, const dw_project *project)
{
  tell (self->meeting_error, NULL);
  for (int i = 0; i < DW_N_MEETING; i++)
    {
      gtk_widget_remove_css_class (GTK_WIDGET (self->meeting[i]), "error");
      if (strcmp (gtk_editable_get_text (self->meeting[i]), project->meeting[i]) != 0)
        gtk_editable_set_text (self->meeting[i], project->meeting[i]);
    }
}

void
dw_sheet_form_update (DwSheetForm *self, DwDocument *document, const char *selected, dw_units units)
{
  g_return_if_fail (DW_IS_SHEET_FORM (self) && DW_IS_DOCUMENT (document));

  g_set_object (&self->document, document);
  if (g_strcmp0 (self->selected, selected) != 0)
    {
      g_free (self->selected);
      self->selected = g_strdup (selected);
    }
  const dw_project *project = dw_document_get_project (document);
  const dw_setup *setup = dw_project_find_setup (project, self->selected);

  self->updating = TRUE;
  for (int i = 0; i < N_NUMBERS; i++)
    {
      dw_number_field_set_units (self->number[i], units);
      dw_number_field_set_value (self->number[i], number_of (project, i));
    }
  /* what is being typed stays as it is, also where it is not taken over */
  if (!self->editing)
    {
      show_meeting (self, project);
      show_notes (self->setup_notes, self->setup_notes_error, setup != NULL ? setup->notes : "");
      show_notes (self->project_notes, self->project_notes_error, project->notes);
    }
  gtk_widget_set_sensitive (GTK_WIDGET (self->setup_notes), setup != NULL);
  self->updating = FALSE;
}

/* ---- widget ---- */

static void
dw_sheet_form_dispose (GObject *object)
{
  DwSheetForm *self = DW_SHEET_FORM (object);

  self->updating = TRUE;
  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (self), DW_TYPE_SHEET_FORM);
  dw_widget_drop_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (dw_sheet_form_parent_class)->dispose (object);
}

static void
dw_sheet_form_finalize (GObject *object)
{
  g_free (DW_SHEET_FORM (object)->selected);
  G_OBJECT_CLASS (dw_sheet_form_parent_class)->finalize (object);
}

static void
dw_sheet_form_class_init (DwSheetFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = dw_sheet_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = dw_sheet_form_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/sheet-form.ui");
  gtk_widget_class_bind_template_child (widget_class, DwSheetForm, meeting_grid);
  gtk_widget_class_bind_template_child (widget_class, DwSheetForm, meeting_error);
  gtk_widget_class_bind_template_child (widget_class, DwSheetForm, numbers);
  gtk_widget_class_bind_template_child (widget_class, DwSheetForm, setup_notes);
  gtk_widget_class_bind_template_child (widget_class, DwSheetForm, setup_notes_error);
  gtk_widget_class_bind_template_child (widget_class, DwSheetForm, project_notes);
  gtk_widget_class_bind_template_child (widget_class, DwSheetForm, project_notes_error);
}

static void
dw_sheet_form_init (DwSheetForm *self)
{
  self->selected = g_strdup ("");
  gtk_widget_init_template (GTK_WIDGET (self));
  add_meeting (self);
  add_numbers (self);
  connect_notes (self, self->setup_notes, G_CALLBACK (on_setup_notes_changed));
  connect_notes (self, self->project_notes, G_CALLBACK (on_project_notes_changed));
}

GtkWidget *
dw_sheet_form_new (void)
{
  return g_object_new (DW_TYPE_SHEET_FORM, NULL);
}
