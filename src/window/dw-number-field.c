/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-number-field.h"
#include "window/dw-widget.h"

#include <glib/gi18n.h>
#include <math.h>

/* Page Up and Page Down go this many steps. */
#define PAGE_STEPS 10
/* The longest unit, so that numbers stand in line. */
#define UNIT_CHARS 5

struct _DwNumberField
{
  GtkWidget parent_instance;

  /* Template children (borrowed) */
  GtkLabel *name;
  GtkEntry *entry;
  GtkLabel *unit;
  GtkLabel *message;

  dw_quantity quantity;
  dw_limit_id limit;
  dw_step step;
  gboolean whole;
  gboolean optional; /* may be empty, which is NaN */
  dw_units units;
  gboolean show_label;
  char *tip; /* owned */

  double value;
  gboolean in_run;  /* changed since the last final commit */
  double origin;    /* value when the run began */
  guint run;        /* its number */
  gboolean typed;   /* the text is the user's, not that of the value */
  gboolean writing; /* the text changes by our own doing */
  gboolean refused; /* by the handler of "committed" */
};

G_DEFINE_FINAL_TYPE (DwNumberField, dw_number_field, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_LABEL,
  PROP_SHOW_LABEL,
  PROP_CHARS,
  PROP_VALUE,
  PROP_UNITS,
  N_PROPS,
  PROP_TOOLTIP_TEXT = N_PROPS /* GtkWidget's, kept here */
};

static GParamSpec *properties[N_PROPS];

enum
{
  COMMITTED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- what is shown ---- */

static gboolean
same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/* The value keeps the digits that are not shown, as long as nobody types. Caller frees. */
static char *
shown_text (DwNumberField *self, double value)
{
  return dw_quantity_format_short (self->quantity, self->units, value);
}

static void
write_text (DwNumberField *self)
{
  g_autofree char *text = isnan (self->value) ? g_strdup ("") : shown_text (self, self->value);

  self->typed = FALSE;
  if (g_str_equal (text, gtk_editable_get_text (GTK_EDITABLE (self->entry))))
    return;
  self->writing = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
  self->writing = FALSE;
}

static void
show_message (DwNumberField *self, const char *message)
{
  GtkWidget *entry = GTK_WIDGET (self->entry);
  const gboolean wrong = message != NULL;

  if (g_strcmp0 (message, dw_number_field_get_error (self)) == 0)
    return;
  gtk_label_set_label (self->message, wrong ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), wrong);
  if (wrong)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
  if (wrong)
    gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                    message, -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

static void
name_for_readers (DwNumberField *self)
{
  const char *label = gtk_label_get_label (self->name);
  const char *unit = gtk_label_get_label (self->unit);
  /* Translators: name of a field and its unit, as a screen reader says it: "Bore, mm". */
  g_autofree char *text = *unit == '\0' ? g_strdup (label)
                                        : g_strdup_printf (_ ("%s, %s"), label, unit);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, text,
                                  -1);
}

/* With names, fields stand in columns, and the room for a unit is kept where there is none. */
static void
show_unit (DwNumberField *self)
{
  const char *unit = dw_quantity_unit (self->quantity, self->units);

  gtk_label_set_label (self->unit, unit);
  gtk_label_set_width_chars (self->unit, self->show_label ? UNIT_CHARS : -1);
  gtk_widget_set_visible (GTK_WIDGET (self->unit), self->show_label || *unit != '\0');
  name_for_readers (self);
}

/* Caller frees. */
static char *
range_text (DwNumberField *self, gboolean is_number)
{
  const dw_limit *limit = dw_limit_get (self->limit);
  const char *unit = dw_quantity_unit (self->quantity, self->units);
  g_autofree char *low = shown_text (self, limit->low);
  g_autofree char *high = shown_text (self, limit->high);
  g_autofree char *range = NULL;

  if (self->whole)
    /* Translators: lowest and highest count. */
    return g_strdup_printf (_ ("allowed whole numbers from %s to %s"), low, high);
  if (*unit == '\0')
    /* Translators: lowest and highest value of a number without unit. */
    range = g_strdup_printf (_ ("allowed %s to %s"), low, high);
  else
    /* Translators: lowest and highest value, and their unit: "allowed 5 to 40 mm". */
    range = g_strdup_printf (_ ("allowed %s to %s %s"), low, high, unit);
  if (is_number)
    return g_steal_pointer (&range);
  /* Translators: then follows the range: "not a number; allowed 5 to 40 mm". */
  return g_strdup_printf (_ ("not a number; %s"), range);
}

/* ---- what is told ---- */

static void
begin_run (DwNumberField *self)
{
  if (self->in_run)
    return;
  self->in_run = TRUE;
  self->origin = self->value;
  self->run++;
}

/* @return  whether it was taken */
static gboolean
offer (DwNumberField *self, double value, gboolean final)
{
  const double before = self->value;
  gboolean taken;

  /* whoever is told may take the field away */
  g_object_ref (self);
  show_message (self, NULL);
  self->refused = FALSE;
  /* before it is told: what the owner then shows is no news and leaves the text alone */
  self->value = value;
  g_signal_emit (self, signals[COMMITTED], 0, value, final);
  if (self->refused)
    self->value = before;
  else if (!same (before, self->value))
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_VALUE]);
  taken = !self->refused;
  g_object_unref (self);
  return taken;
}

static gboolean
read_text (DwNumberField *self, double *value)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  g_autofree char *bare = g_strstrip (g_strdup (text));
  double x;

  if (self->optional && *bare == '\0')
    {
      *value = NAN;
      return TRUE;
    }
  const gboolean is_number = dw_quantity_parse (self->quantity, self->units, text, &x);

  if (is_number && dw_limit_holds (self->limit, x) && (!self->whole || x == floor (x)))
    {
      *value = x;
      return TRUE;
    }
  g_autofree char *message = range_text (self, is_number);
  show_message (self, message);
  return FALSE;
}

static void
on_text_changed (DwNumberField *self)
{
  double x;

  if (self->writing)
    return;
  self->typed = TRUE;
  begin_run (self);
  if (!read_text (self, &x))
    return;
  if (!same (x, self->value))
    offer (self, x, FALSE);
  else
    show_message (self, NULL);
}

/* Enter, and leaving the field. */
static void
finish (DwNumberField *self)
{
  double x = self->value;

  if (!self->in_run || (self->typed && !read_text (self, &x)) || !offer (self, x, TRUE))
    return;
  self->in_run = FALSE;
  write_text (self);
}

static gboolean
give_back (DwNumberField *self)
{
  if (!self->in_run)
    return FALSE;
  self->in_run = FALSE;
  self->typed = FALSE;
  show_message (self, NULL);
  if (!same (self->value, self->origin))
    offer (self, self->origin, TRUE);
  write_text (self);
  return TRUE;
}

void
dw_number_field_step (DwNumberField *self, int n)
{
  double x = self->value;
  double y;

  g_return_if_fail (DW_IS_NUMBER_FIELD (self));

  if (self->typed && !read_text (self, &x))
    return;
  if (isnan (x))
    return;
  y = dw_step_move (self->step, self->quantity, self->units, self->limit, x, n);
  begin_run (self);
  if (y == self->value || offer (self, y, FALSE))
    write_text (self);
}

/* ---- keys, wheel, focus ---- */

static gboolean
on_key_pressed (DwNumberField *self, guint keyval, guint keycode, GdkModifierType state)
{
  (void)keycode;
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      dw_number_field_step (self, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      dw_number_field_step (self, -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      dw_number_field_step (self, PAGE_STEPS);
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      dw_number_field_step (self, -PAGE_STEPS);
      return GDK_EVENT_STOP;
    case GDK_KEY_Escape:
      return give_back (self);
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static gboolean
on_scroll (DwNumberField *self, double dx, double dy)
{
  const GtkStateFlags state = gtk_widget_get_state_flags (GTK_WIDGET (self->entry));

  (void)dx;
  /* without focus the wheel scrolls the panel, and must not change what it passes */
  if ((state & GTK_STATE_FLAG_FOCUS_WITHIN) == 0 || dy == 0.0)
    return GDK_EVENT_PROPAGATE;
  dw_number_field_step (self, dy < 0.0 ? 1 : -1);
  return GDK_EVENT_STOP;
}

static gboolean
dw_number_field_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (DW_NUMBER_FIELD (widget)->entry));
}

/* ---- the object ---- */

static void
dw_number_field_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  DwNumberField *self = DW_NUMBER_FIELD (object);

  switch (id)
    {
    case PROP_LABEL:
      g_value_set_string (value, gtk_label_get_label (self->name));
      break;
    case PROP_SHOW_LABEL:
      g_value_set_boolean (value, self->show_label);
      break;
    case PROP_CHARS:
      g_value_set_int (value, gtk_editable_get_width_chars (GTK_EDITABLE (self->entry)));
      break;
    case PROP_VALUE:
      g_value_set_double (value, self->value);
      break;
    case PROP_UNITS:
      g_value_set_uint (value, self->units);
      break;
    case PROP_TOOLTIP_TEXT:
      g_value_set_string (value, self->tip);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
dw_number_field_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  DwNumberField *self = DW_NUMBER_FIELD (object);

  switch (id)
    {
    case PROP_LABEL:
      dw_number_field_set_label (self, g_value_get_string (value));
      break;
    case PROP_SHOW_LABEL:
      self->show_label = g_value_get_boolean (value);
      gtk_widget_set_visible (GTK_WIDGET (self->name), self->show_label);
      show_unit (self);
      break;
    case PROP_CHARS:
      gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), g_value_get_int (value));
      gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), g_value_get_int (value));
      break;
    case PROP_VALUE:
      dw_number_field_set_value (self, g_value_get_double (value));
      break;
    case PROP_UNITS:
      dw_number_field_set_units (self, g_value_get_uint (value));
      break;
    case PROP_TOOLTIP_TEXT:
      g_free (self->tip);
      self->tip = g_value_dup_string (value);
      gtk_widget_set_has_tooltip (GTK_WIDGET (self), self->tip != NULL && *self->tip != '\0');
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
dw_number_field_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DW_TYPE_NUMBER_FIELD);
  dw_widget_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (dw_number_field_parent_class)->dispose (object);
}

static void
dw_number_field_finalize (GObject *object)
{
  g_free (DW_NUMBER_FIELD (object)->tip);
  G_OBJECT_CLASS (dw_number_field_parent_class)->finalize (object);
}

/* Each tooltip that GTK itself is given is a question to the display, and a wait for the answer: with
 * some eighty fields a tenth of the window's start. */
static gboolean
dw_number_field_query_tooltip (GtkWidget *widget, int x, int y, gboolean keyboard,
                               GtkTooltip *tooltip)
{
  (void)x;
  (void)y;
  (void)keyboard;
  gtk_tooltip_set_text (tooltip, DW_NUMBER_FIELD (widget)->tip);
  return TRUE;
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  properties[PROP_LABEL] = g_param_spec_string ("label", NULL, NULL, "", flags);
  properties[PROP_SHOW_LABEL] = g_param_spec_boolean ("show-label", NULL, NULL, TRUE, flags);
  properties[PROP_CHARS] = g_param_spec_int ("chars", NULL, NULL, 1, 100, 8, flags);
  properties[PROP_VALUE] = g_param_spec_double ("value", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0.0,
                                                flags);
  properties[PROP_UNITS] = g_param_spec_uint ("units", NULL, NULL, 0, G_MAXUINT, 0, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  g_object_class_override_property (object_class, PROP_TOOLTIP_TEXT, "tooltip-text");
}

static void
dw_number_field_class_init (DwNumberFieldClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = dw_number_field_get_property;
  object_class->set_property = dw_number_field_set_property;
  object_class->dispose = dw_number_field_dispose;
  object_class->finalize = dw_number_field_finalize;
  widget_class->query_tooltip = dw_number_field_query_tooltip;
  widget_class->grab_focus = dw_number_field_grab_focus;
  install_properties (object_class);

  signals[COMMITTED] = g_signal_new ("committed", DW_TYPE_NUMBER_FIELD, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_BOOLEAN);

  gtk_widget_class_set_css_name (widget_class, "numberfield");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/dampwright/Dampwright/number-field.ui");
  gtk_widget_class_bind_template_child (widget_class, DwNumberField, name);
  gtk_widget_class_bind_template_child (widget_class, DwNumberField, entry);
  gtk_widget_class_bind_template_child (widget_class, DwNumberField, unit);
  gtk_widget_class_bind_template_child (widget_class, DwNumberField, message);
  gtk_widget_class_bind_template_callback (widget_class, on_text_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_key_pressed);
  gtk_widget_class_bind_template_callback (widget_class, on_scroll);
  gtk_widget_class_bind_template_callback (widget_class, finish);
}

static void
dw_number_field_init (DwNumberField *self)
{
  self->value = NAN;
  self->show_label = TRUE;
  self->quantity = DW_QUANTITY_NUMBER;
  self->limit = DW_LIMIT_MOTION_RATIO;
  self->step = (dw_step){ DW_STEP_EVEN, 0.1 };
  gtk_widget_init_template (GTK_WIDGET (self));
  show_unit (self);
}

GtkWidget *
dw_number_field_new (void)
{
  return g_object_new (DW_TYPE_NUMBER_FIELD, NULL);
}

void
dw_number_field_set_kind (DwNumberField *self, dw_quantity quantity, dw_limit_id limit,
                          dw_step step, gboolean whole)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));

  self->quantity = quantity;
  self->limit = limit;
  self->step = step;
  self->whole = whole;
  show_unit (self);
  dw_number_field_reset (self);
}

void
dw_number_field_set_optional (DwNumberField *self, gboolean optional)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));
  self->optional = optional;
}

void
dw_number_field_set_limit (DwNumberField *self, dw_limit_id limit)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));
  self->limit = limit;
}

void
dw_number_field_set_units (DwNumberField *self, dw_units units)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));

  if (units == self->units)
    return;
  self->units = units;
  show_unit (self);
  dw_number_field_reset (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_UNITS]);
}

double
dw_number_field_get_value (DwNumberField *self)
{
  g_return_val_if_fail (DW_IS_NUMBER_FIELD (self), NAN);
  return self->value;
}

void
dw_number_field_set_value (DwNumberField *self, double value)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));

  if (same (value, self->value))
    return;
  self->value = value;
  dw_number_field_reset (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_VALUE]);
}

void
dw_number_field_set_label (DwNumberField *self, const char *label)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));

  if (g_strcmp0 (label, gtk_label_get_label (self->name)) == 0)
    return;
  gtk_label_set_label (self->name, label != NULL ? label : "");
  name_for_readers (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_LABEL]);
}

const char *
dw_number_field_get_error (DwNumberField *self)
{
  g_return_val_if_fail (DW_IS_NUMBER_FIELD (self), NULL);
  return gtk_widget_get_visible (GTK_WIDGET (self->message)) ? gtk_label_get_label (self->message)
                                                             : NULL;
}

void
dw_number_field_set_error (DwNumberField *self, const char *message)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));

  self->refused = message != NULL;
  show_message (self, message);
}

void
dw_number_field_reset (DwNumberField *self)
{
  g_return_if_fail (DW_IS_NUMBER_FIELD (self));

  self->in_run = FALSE;
  show_message (self, NULL);
  write_text (self);
}

guint
dw_number_field_get_run (DwNumberField *self)
{
  g_return_val_if_fail (DW_IS_NUMBER_FIELD (self), 0);
  return self->run;
}
