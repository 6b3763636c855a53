/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-drill-choices.h"

#include <string.h>

#include "model/dw-drill.h"
#include "sheet/dw-finding-text.h"

/* [us] One slice of computing: a frame must be possible between two of them. */
static const gint64 SLICE = 5000;

struct _DwDrillChoices
{
  GObject parent_instance;

  /* Owned */
  GListStore *list;
  GArray *drills;  /* of double [m] */
  GArray *bottles; /* of double [m2/s] */
  char *problem;

  /* What was asked for */
  gboolean was_asked;
  dw_damper damper;
  double temperature;
  double speeds[DW_N_SPEEDS];
  dw_drill_division division;
  gboolean whole_table;

  gboolean box_is_empty;
  gboolean has_study;
  dw_drill_sets sets;
  dw_drilling study;
  dw_drill_box box;
  guint next;   /* choice to be made whole */
  guint source; /* 0 = none */
};

G_DEFINE_FINAL_TYPE (DwDrillChoices, dw_drill_choices, G_TYPE_OBJECT)

enum
{
  CHANGED,
  FILLED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- slices ---- */

static gboolean
fill_some (gpointer data)
{
  DwDrillChoices *self = data;
  const gint64 end = g_get_monotonic_time () + SLICE;
  const guint n = g_list_model_get_n_items (G_LIST_MODEL (self->list));

  while (self->next < n && g_get_monotonic_time () < end)
    {
      g_autoptr (DwDrillChoice) choice = g_list_model_get_item (G_LIST_MODEL (self->list),
                                                                self->next++);
      const double size[DW_DRILL_SETS] = { dw_drill_choice_get_size (choice, 0),
                                           dw_drill_choice_get_size (choice, 1) };
      dw_drill_row row;
      if (dw_drill_row_make (&self->study, &self->box, size, &row, NULL) == DW_OK)
        dw_drill_choice_take_row (choice, &row);
    }
  if (self->next < n)
    return G_SOURCE_CONTINUE;
  self->source = 0;
  g_signal_emit (self, signals[FILLED], 0);
  return G_SOURCE_REMOVE;
}

static void
stop_filling (DwDrillChoices *self)
{
  if (self->source != 0)
    g_source_remove (self->source);
  self->source = 0;
  self->next = 0;
}

/* ---- choices ---- */

static void
add_choice (DwDrillChoices *self, GPtrArray *found, const double size[DW_DRILL_SETS])
{
  dw_drill_result result;
  if (dw_drill_is_choice (&self->sets, size)
      && dw_drilling_at (&self->study, size, &result, NULL) == DW_OK)
    g_ptr_array_add (found, dw_drill_choice_new (&result, dw_drill_count (&self->sets, size)));
}

static GPtrArray *
find_choices (DwDrillChoices *self)
{
  GPtrArray *found = g_ptr_array_new_with_free_func (g_object_unref);
  const int n = self->box.n_drills;
  g_autofree double *across = g_new (double, n + 1);
  g_autofree double *up = g_new (double, n + 1);
  const int n_across = dw_drill_sizes (&self->sets, 0, self->box.drills, n, across);
  const int n_up = dw_drill_sizes (&self->sets, 1, self->box.drills, n, up);

  for (int i = 0; i < n_across; i++)
    for (int k = 0; k < n_up; k++)
      add_choice (self, found, (const double[]){ across[i], up[k] });
  return found;
}

/* Everything that follows from damper, sets and box. */
static void
compute (DwDrillChoices *self)
{
  dw_error error = { .text = "" };

  stop_filling (self);
  g_clear_pointer (&self->problem, g_free);
  self->has_study = dw_drilling_init (&self->study, &self->sets, self->temperature, self->speeds,
                                      &error)
                    == DW_OK;
  g_autoptr (GPtrArray) found = NULL;
  if (self->has_study)
    found = find_choices (self);
  else
    self->problem = dw_finding_text (&error);
  g_list_store_splice (self->list, 0, g_list_model_get_n_items (G_LIST_MODEL (self->list)),
                       found != NULL ? found->pdata : NULL, found != NULL ? found->len : 0);
  if (self->has_study)
    self->source = g_idle_add_full (G_PRIORITY_LOW, fill_some, self, NULL);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* ---- what is asked ---- */

static void
list_drills (const dw_parts *parts, gboolean whole_table, GArray *drills)
{
  size_t n;
  const dw_drill_size *table = dw_drill_table (&n);
  if (whole_table || parts->drills->len == 0)
    for (size_t i = 0; i < n; i++)
      g_array_append_val (drills, table[i].diameter);
  else
    for (guint i = 0; i < parts->drills->len; i++)
      g_array_append_val (drills, g_array_index (parts->drills, dw_drill, i).diameter);
}

static void
list_bottles (const dw_parts *parts, GArray *bottles)
{
  for (guint i = 0; i < parts->oils->len; i++)
    {
      const dw_bottle *bottle = &g_array_index (parts->oils, dw_bottle, i);
      if (bottle->oil.kind == DW_OIL_NOMINAL)
        g_array_append_val (bottles, bottle->oil.viscosity);
    }
}

static gboolean
lists_equal (const GArray *a, const GArray *b)
{
  return a->len == b->len && memcmp (a->data, b->data, a->len * sizeof (double)) == 0;
}

/* The same holes, so that what the user said of each still holds. */
static gboolean
holes_are_the_same (const dw_damper *a, const dw_damper *b)
{
  if (a->piston.n_holes != b->piston.n_holes || (a->valve.n_shims > 0) != (b->valve.n_shims > 0))
    return FALSE;
  for (int i = 0; i < a->piston.n_holes; i++)
    if (a->piston.holes[i].count != b->piston.holes[i].count
        || a->piston.holes[i].covered != b->piston.holes[i].covered)
      return FALSE;
  return TRUE;
}

static void
divide (DwDrillChoices *self, const dw_damper *damper, dw_drill_division division, gboolean keep)
{
  int own[DW_MAX_FACE_HOLES];

  memcpy (own, self->sets.set_of, sizeof own);
  dw_drill_sets_init (&self->sets, damper, division);
  if (!keep)
    return;
  memcpy (self->sets.set_of, own, sizeof own);
  dw_drill_sets_update (&self->sets);
}

static gboolean
is_as_before (const DwDrillChoices *self, const dw_project *project, const dw_damper *damper,
              dw_drill_division division, gboolean whole_table, const dw_spread_limits *limits)
{
  return self->was_asked && dw_damper_equal (&self->damper, damper)
         && self->temperature == project->conditions.oil_temperature
         && self->speeds[DW_LOW] == project->speeds.low
         && self->speeds[DW_MIDDLE] == project->speeds.middle
         && self->speeds[DW_HIGH] == project->speeds.high && self->division == division
         && self->whole_table == whole_table && self->box.limits.hole_grade == limits->hole_grade
         && self->box.limits.hole_error == limits->hole_error;
}

void
dw_drill_choices_ask (DwDrillChoices *self, const dw_project *project, const dw_damper *damper,
                      dw_drill_division division, gboolean whole_table,
                      const dw_spread_limits *limits)
{
  g_return_if_fail (DW_IS_DRILL_CHOICES (self) && project != NULL && damper != NULL);

  const dw_parts *parts = dw_project_get_parts (project);
  g_autoptr (GArray) drills = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) bottles = g_array_new (FALSE, FALSE, sizeof (double));
  list_drills (parts, whole_table, drills);
  list_bottles (parts, bottles);
  if (is_as_before (self, project, damper, division, whole_table, limits)
      && lists_equal (drills, self->drills) && lists_equal (bottles, self->bottles))
    return;

  const gboolean keep = self->was_asked && self->division == division
                        && holes_are_the_same (&self->damper, damper);
  divide (self, damper, division, keep);
  self->was_asked = TRUE;
  self->damper = *damper;
  self->temperature = project->conditions.oil_temperature;
  self->speeds[DW_LOW] = project->speeds.low;
  self->speeds[DW_MIDDLE] = project->speeds.middle;
  self->speeds[DW_HIGH] = project->speeds.high;
  self->division = division;
  self->whole_table = whole_table;
  self->box_is_empty = parts->drills->len == 0;
  g_array_unref (self->drills);
  g_array_unref (self->bottles);
  self->drills = g_steal_pointer (&drills);
  self->bottles = g_steal_pointer (&bottles);
  self->box = (dw_drill_box){ .drills = (const double *)(gpointer)self->drills->data,
                              .n_drills = (int)self->drills->len,
                              .bottles = (const double *)(gpointer)self->bottles->data,
                              .n_bottles = (int)self->bottles->len,
                              .limits = *limits };
  compute (self);
}

void
dw_drill_choices_turn_hole (DwDrillChoices *self, int hole)
{
  g_return_if_fail (DW_IS_DRILL_CHOICES (self));

  if (!self->was_asked || hole < 0 || hole >= self->sets.face.n_holes)
    return;
  int *set = &self->sets.set_of[hole];
  *set = *set == DW_DRILL_SETS - 1 ? -1 : *set + 1;
  dw_drill_sets_update (&self->sets);
  compute (self);
}

/* ---- what there is ---- */

const dw_drilling *
dw_drill_choices_get_study (DwDrillChoices *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICES (self), NULL);
  return self->has_study ? &self->study : NULL;
}

const dw_drill_box *
dw_drill_choices_get_box (DwDrillChoices *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICES (self), NULL);
  return &self->box;
}

const char *
dw_drill_choices_get_problem (DwDrillChoices *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICES (self), NULL);
  return self->problem;
}

GListModel *
dw_drill_choices_get_list (DwDrillChoices *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICES (self), NULL);
  return G_LIST_MODEL (self->list);
}

gboolean
dw_drill_choices_is_filled (DwDrillChoices *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICES (self), FALSE);
  return self->has_study && self->source == 0;
}

gboolean
dw_drill_choices_box_is_empty (DwDrillChoices *self)
{
  g_return_val_if_fail (DW_IS_DRILL_CHOICES (self), FALSE);
  return self->box_is_empty;
}

/* ---- object ---- */

static void
dw_drill_choices_finalize (GObject *object)
{
  DwDrillChoices *self = DW_DRILL_CHOICES (object);

  stop_filling (self);
  g_object_unref (self->list);
  g_array_unref (self->drills);
  g_array_unref (self->bottles);
  g_free (self->problem);
  G_OBJECT_CLASS (dw_drill_choices_parent_class)->finalize (object);
}

static void
dw_drill_choices_class_init (DwDrillChoicesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = dw_drill_choices_finalize;
  signals[CHANGED] = g_signal_new ("changed", DW_TYPE_DRILL_CHOICES, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  signals[FILLED] = g_signal_new ("filled", DW_TYPE_DRILL_CHOICES, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
}

static void
dw_drill_choices_init (DwDrillChoices *self)
{
  self->list = g_list_store_new (DW_TYPE_DRILL_CHOICE);
  self->drills = g_array_new (FALSE, FALSE, sizeof (double));
  self->bottles = g_array_new (FALSE, FALSE, sizeof (double));
}

DwDrillChoices *
dw_drill_choices_new (void)
{
  return g_object_new (DW_TYPE_DRILL_CHOICES, NULL);
}
