/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-settings.h"

#define SCHEMA "org.dampwright.Dampwright"

static const int DEFAULT_WIDTH = 1280;
static const int DEFAULT_HEIGHT = 800;

struct _DwSettings
{
  GObject parent_instance;

  /* Owned; NULL where the schema is not installed */
  GSettings *store;

  dw_units units;
  dw_theme theme;
  int width, height;
  gboolean maximized;
};

G_DEFINE_FINAL_TYPE (DwSettings, dw_settings, G_TYPE_OBJECT)

static guint changed_signal;

static const struct
{
  const char *key;
  dw_units bit;
} unit_keys[] = {
  { "length-inch", DW_UNITS_INCH },
  { "force-lbf", DW_UNITS_LBF },
  { "temperature-fahrenheit", DW_UNITS_FAHRENHEIT },
  { "rate-lbf-per-inch", DW_UNITS_LBF_PER_INCH },
};

static void
load (DwSettings *self)
{
  self->units = DW_UNITS_METRIC;
  for (size_t i = 0; i < G_N_ELEMENTS (unit_keys); i++)
    if (g_settings_get_boolean (self->store, unit_keys[i].key))
      self->units |= unit_keys[i].bit;
  self->theme = (dw_theme)g_settings_get_enum (self->store, "theme");
  self->width = g_settings_get_int (self->store, "window-width");
  self->height = g_settings_get_int (self->store, "window-height");
  self->maximized = g_settings_get_boolean (self->store, "window-maximized");
}

static void
on_store_changed (GSettings *store, const char *key, gpointer data)
{
  DwSettings *self = data;
  (void)store;
  load (self);
  if (!g_str_has_prefix (key, "window-"))
    g_signal_emit (self, changed_signal, 0);
}

DwSettings *
dw_settings_new (void)
{
  return g_object_new (DW_TYPE_SETTINGS, NULL);
}

dw_units
dw_settings_get_units (DwSettings *self)
{
  g_return_val_if_fail (DW_IS_SETTINGS (self), DW_UNITS_METRIC);
  return self->units;
}

void
dw_settings_set_units (DwSettings *self, dw_units units)
{
  g_return_if_fail (DW_IS_SETTINGS (self));

  if (self->units == units)
    return;
  if (self->store == NULL)
    {
      self->units = units;
      g_signal_emit (self, changed_signal, 0);
      return;
    }
  for (size_t i = 0; i < G_N_ELEMENTS (unit_keys); i++)
    g_settings_set_boolean (self->store, unit_keys[i].key, (units & unit_keys[i].bit) != 0);
}

dw_theme
dw_settings_get_theme (DwSettings *self)
{
  g_return_val_if_fail (DW_IS_SETTINGS (self), DW_THEME_SYSTEM);
  return self->theme;
}

void
dw_settings_set_theme (DwSettings *self, dw_theme theme)
{
  g_return_if_fail (DW_IS_SETTINGS (self));

  if (self->theme == theme)
    return;
  if (self->store != NULL)
    {
      g_settings_set_enum (self->store, "theme", (int)theme);
      return;
    }
  self->theme = theme;
  g_signal_emit (self, changed_signal, 0);
}

void
dw_settings_get_window (DwSettings *self, int *width, int *height, gboolean *maximized)
{
  g_return_if_fail (DW_IS_SETTINGS (self));
  *width = self->width;
  *height = self->height;
  *maximized = self->maximized;
}

void
dw_settings_set_window (DwSettings *self, int width, int height, gboolean maximized)
{
  g_return_if_fail (DW_IS_SETTINGS (self));

  self->width = width;
  self->height = height;
  self->maximized = maximized;
  if (self->store == NULL)
    return;
  g_settings_set_int (self->store, "window-width", width);
  g_settings_set_int (self->store, "window-height", height);
  g_settings_set_boolean (self->store, "window-maximized", maximized);
}

static void
dw_settings_dispose (GObject *object)
{
  DwSettings *self = DW_SETTINGS (object);

  if (self->store != NULL)
    g_signal_handlers_disconnect_by_data (self->store, self);
  g_clear_object (&self->store);
  G_OBJECT_CLASS (dw_settings_parent_class)->dispose (object);
}

static void
dw_settings_class_init (DwSettingsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = dw_settings_dispose;
  changed_signal = g_signal_new ("changed", DW_TYPE_SETTINGS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
dw_settings_init (DwSettings *self)
{
  /* g_settings_new() would end the program where the schema is missing */
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = source != NULL
                                           ? g_settings_schema_source_lookup (source, SCHEMA, TRUE)
                                           : NULL;

  self->width = DEFAULT_WIDTH;
  self->height = DEFAULT_HEIGHT;
  if (schema == NULL)
    return;
  self->store = g_settings_new_full (schema, NULL, NULL);
  load (self);
  g_signal_connect (self->store, "changed", G_CALLBACK (on_store_changed), self);
}
