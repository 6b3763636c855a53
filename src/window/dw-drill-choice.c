/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-choice.h"

struct _DwDrillChoice
{
  GObject parent_instance;
  dw_drill_row row;
  gboolean is_whole;
};

G_DEFINE_FINAL_TYPE (DwDrillChoice, dw_drill_choice, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_WHOLE,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

double
dw_drill_choice_get_size (DwDrillChoice *self, int set)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICE (self) && set >= 0 && set < DW_DRILL_SETS, 0.0);
  return self->row.result.size[set];
}

const dw_drill_row *
dw_drill_choice_get_row (DwDrillChoice *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICE (self), NULL);
  return &self->row;
}

gboolean
dw_drill_choice_is_whole (DwDrillChoice *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICE (self), FALSE);
  return self->is_whole;
}

void
dw_drill_choice_take_row (DwDrillChoice *self, const dw_drill_row *row)
{
  g_return_if_fail (DW_IS_DRILL_CHOICE (self) && row != NULL);
  self->row = *row;
  self->is_whole = TRUE;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_WHOLE]);
}

static void
dw_drill_choice_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_WHOLE)
    g_value_set_boolean (value, DW_DRILL_CHOICE (object)->is_whole);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
dw_drill_choice_class_init (DwDrillChoiceClass *klass)
{
  G_OBJECT_CLASS (klass)->get_property = dw_drill_choice_get_property;
  properties[PROP_WHOLE] = g_param_spec_boolean ("whole", NULL, NULL, FALSE,
                                                 G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, properties);
}

static void
dw_drill_choice_init (DwDrillChoice *self)
{
  self->row.mix.bottle = self->row.mix.other = -1;
}

DwDrillChoice *
dw_drill_choice_new (const dw_drill_result *result, int n_holes)
{
  DwDrillChoice *self = g_object_new (DW_TYPE_DRILL_CHOICE, NULL);
  self->row.result = *result;
  self->row.n_holes = n_holes;
  return self;
}
