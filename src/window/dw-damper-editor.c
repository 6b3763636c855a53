/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-damper-editor.h"

#include <glib/gi18n.h>

struct _DwDamperEditor
{
  GObject parent_instance;

  /* Owned */
  GSignalGroup *signals;
  DwDocument *document;
  char *setup;

  dw_axle axle;
  dw_units units;
  gboolean has_damper;
  dw_damper damper; /* as last told */
  gboolean has_finding;
  dw_error finding;
};

G_DEFINE_FINAL_TYPE (DwDamperEditor, dw_damper_editor, G_TYPE_OBJECT)

enum
{
  CHANGED,
  FINDING_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* ---- what is edited ---- */

static void
set_finding (DwDamperEditor *self, const dw_error *finding)
{
  if (finding == NULL && !self->has_finding)
    return;
  self->has_finding = finding != NULL;
  if (finding != NULL)
    self->finding = *finding;
  g_signal_emit (self, signals[FINDING_CHANGED], 0);
}

static const dw_setup *
current_setup (DwDamperEditor *self)
{
  if (self->document == NULL || self->setup == NULL)
    return NULL;
  return dw_project_find_setup (dw_document_get_project (self->document), self->setup);
}

/* Rows have come or gone: what is typed in one must not end up in another. */
static gboolean
rows_differ (const dw_damper *a, const dw_damper *b)
{
  return a->piston.n_holes != b->piston.n_holes || a->valve.n_shims != b->valve.n_shims
         || a->oil.kind != b->oil.kind;
}

static void
look_again (DwDamperEditor *self, gboolean another)
{
  const dw_setup *setup = current_setup (self);
  const gboolean had = self->has_damper;
  const dw_damper before = self->damper;

  self->has_damper = setup != NULL;
  if (setup != NULL)
    self->damper = setup->damper[self->axle];
  if (had != self->has_damper)
    another = TRUE;
  else if (had && rows_differ (&before, &self->damper))
    another = TRUE;
  if (!another && (!had || dw_damper_equal (&before, &self->damper)))
    return;
  set_finding (self, NULL);
  g_signal_emit (self, signals[CHANGED], 0, another);
}

static void
on_document_changed (DwDamperEditor *self)
{
  look_again (self, FALSE);
}

void
dw_damper_editor_reset (DwDamperEditor *self)
{
  g_return_if_fail (DW_IS_DAMPER_EDITOR (self));
  look_again (self, TRUE);
}

/* ---- changing ---- */

typedef struct
{
  const char *setup;
  dw_axle axle;
  const dw_damper *damper;
} replacement;

static gboolean
replace_damper (dw_project *project, gpointer data)
{
  const replacement *with = data;
  const int index = dw_project_find_index (project, with->setup);

  if (index < 0)
    return FALSE;
  dw_project_edit_setup (project, (guint)index)->damper[with->axle] = *with->damper;
  return TRUE;
}

/* What did not fit before may stay, as long as it gets better: there must be a way out. */
static gboolean
fits (const dw_damper *before, const dw_damper *after, dw_error *finding)
{
  const size_t n = dw_damper_check (after, finding, 1);
  return n == 0 || n < dw_damper_check (before, NULL, 0);
}

static void
write_damper (DwDamperEditor *self, dw_axle axle, const dw_damper *before, const dw_damper *after,
              const char *label, const char *merge)
{
  replacement with = { self->setup, axle, after };
  g_autofree char *key = NULL;

  set_finding (self, NULL);
  if (dw_damper_equal (before, after))
    return;
  if (merge != NULL)
    key = g_strdup_printf ("%s.%s.%s", self->setup, dw_axle_name (axle), merge);
  dw_document_edit (self->document, label, key, replace_damper, &with);
}

gboolean
dw_damper_editor_change (DwDamperEditor *self, const char *label, const char *merge,
                         DwDamperChange change, gconstpointer data)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), FALSE);
  g_return_val_if_fail (label != NULL && change != NULL, FALSE);

  const dw_setup *setup = current_setup (self);
  if (setup == NULL)
    return FALSE;

  const dw_damper before = setup->damper[self->axle];
  dw_damper after = before;
  dw_error finding;
  change (&after, data);
  if (!fits (&before, &after, &finding))
    {
      set_finding (self, &finding);
      return FALSE;
    }
  write_damper (self, self->axle, &before, &after, label, merge);
  return TRUE;
}

const char *
dw_damper_editor_label (DwDamperEditor *self, const char *front, const char *rear)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), front);
  return self->axle == DW_FRONT ? front : rear;
}

/* ---- sections ---- */

static const char *const section_names[DW_N_SECTIONS] = {
  [DW_SECTION_PISTON] = "piston", [DW_SECTION_VALVE] = "valve",   [DW_SECTION_OIL] = "oil",
  [DW_SECTION_GAS] = "gas",       [DW_SECTION_SPRING] = "spring", [DW_SECTION_BODY] = "body",
};

/* By the axle that is written to. */
static const char *const copy_labels[DW_N_SECTIONS][DW_N_AXLES] = {
  [DW_SECTION_PISTON] = { N_ ("Copy rear piston to front"), N_ ("Copy front piston to rear") },
  [DW_SECTION_VALVE] = { N_ ("Copy rear valve to front"), N_ ("Copy front valve to rear") },
  [DW_SECTION_OIL] = { N_ ("Copy rear oil to front"), N_ ("Copy front oil to rear") },
  [DW_SECTION_GAS] = { N_ ("Copy rear gas to front"), N_ ("Copy front gas to rear") },
  [DW_SECTION_SPRING] = { N_ ("Copy rear spring to front"), N_ ("Copy front spring to rear") },
  [DW_SECTION_BODY] = { N_ ("Copy rear body to front"), N_ ("Copy front body to rear") },
};

const char *
dw_section_name (dw_section section)
{
  g_return_val_if_fail ((unsigned)section < DW_N_SECTIONS, "");
  return section_names[section];
}

dw_section
dw_section_find (const char *name)
{
  int i = 0;
  while (i < DW_N_SECTIONS && !g_str_equal (section_names[i], name))
    i++;
  return (dw_section)i;
}

static void
copy_section (dw_section section, const dw_damper *from, dw_damper *to)
{
  switch (section)
    {
    case DW_SECTION_PISTON:
      to->piston = from->piston;
      break;
    case DW_SECTION_VALVE:
      to->valve = from->valve;
      break;
    case DW_SECTION_OIL:
      to->oil = from->oil;
      break;
    case DW_SECTION_GAS:
      to->gas = from->gas;
      break;
    case DW_SECTION_SPRING:
      to->spring = from->spring;
      to->motion_ratio = from->motion_ratio;
      to->stance = from->stance;
      break;
    case DW_SECTION_BODY:
      to->body = from->body;
      to->seal_friction = from->seal_friction;
      break;
    case DW_N_SECTIONS:
      g_return_if_reached ();
    }
}

gboolean
dw_damper_editor_copy_section (DwDamperEditor *self, dw_section section, gboolean to_other,
                               dw_error *finding)
{
  dw_error ignored;

  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), FALSE);
  g_return_val_if_fail ((unsigned)section < DW_N_SECTIONS, FALSE);

  const dw_setup *setup = current_setup (self);
  if (setup == NULL)
    return FALSE;

  const dw_axle other = self->axle == DW_FRONT ? DW_REAR : DW_FRONT;
  const dw_axle target = to_other ? other : self->axle;
  const dw_damper before = setup->damper[target];
  dw_damper after = before;
  copy_section (section, &setup->damper[to_other ? self->axle : other], &after);
  if (!fits (&before, &after, finding != NULL ? finding : &ignored))
    return FALSE;
  write_damper (self, target, &before, &after, _ (copy_labels[section][target]), NULL);
  return TRUE;
}

/* ---- the object ---- */

static void
dw_damper_editor_dispose (GObject *object)
{
  DwDamperEditor *self = DW_DAMPER_EDITOR (object);

  g_clear_object (&self->signals);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (dw_damper_editor_parent_class)->dispose (object);
}

static void
dw_damper_editor_finalize (GObject *object)
{
  g_free (DW_DAMPER_EDITOR (object)->setup);
  G_OBJECT_CLASS (dw_damper_editor_parent_class)->finalize (object);
}

static void
dw_damper_editor_class_init (DwDamperEditorClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = dw_damper_editor_dispose;
  object_class->finalize = dw_damper_editor_finalize;
  signals[CHANGED] = g_signal_new ("changed", DW_TYPE_DAMPER_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  signals[FINDING_CHANGED] = g_signal_new ("finding-changed", DW_TYPE_DAMPER_EDITOR,
                                           G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
dw_damper_editor_init (DwDamperEditor *self)
{
  self->signals = g_signal_group_new (DW_TYPE_DOCUMENT);
  g_signal_group_connect_object (self->signals, "changed", G_CALLBACK (on_document_changed), self,
                                 G_CONNECT_SWAPPED);
}

DwDamperEditor *
dw_damper_editor_new (void)
{
  return g_object_new (DW_TYPE_DAMPER_EDITOR, NULL);
}

void
dw_damper_editor_set_document (DwDamperEditor *self, DwDocument *document)
{
  g_return_if_fail (DW_IS_DAMPER_EDITOR (self));

  if (!g_set_object (&self->document, document))
    return;
  g_signal_group_set_target (self->signals, document);
  look_again (self, TRUE);
}

void
dw_damper_editor_set_setup (DwDamperEditor *self, const char *id)
{
  g_return_if_fail (DW_IS_DAMPER_EDITOR (self));

  if (g_strcmp0 (id, self->setup) == 0)
    return;
  g_free (self->setup);
  self->setup = g_strdup (id);
  look_again (self, TRUE);
}

void
dw_damper_editor_set_axle (DwDamperEditor *self, dw_axle axle)
{
  g_return_if_fail (DW_IS_DAMPER_EDITOR (self));
  g_return_if_fail ((unsigned)axle < DW_N_AXLES);

  if (axle == self->axle)
    return;
  self->axle = axle;
  look_again (self, TRUE);
}

void
dw_damper_editor_set_units (DwDamperEditor *self, dw_units units)
{
  g_return_if_fail (DW_IS_DAMPER_EDITOR (self));

  if (units == self->units)
    return;
  self->units = units;
  look_again (self, TRUE);
}

DwDocument *
dw_damper_editor_get_document (DwDamperEditor *self)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), NULL);
  return self->document;
}

const char *
dw_damper_editor_get_setup (DwDamperEditor *self)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), NULL);
  return self->setup;
}

dw_axle
dw_damper_editor_get_axle (DwDamperEditor *self)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), DW_FRONT);
  return self->axle;
}

dw_units
dw_damper_editor_get_units (DwDamperEditor *self)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), DW_UNITS_METRIC);
  return self->units;
}

const dw_damper *
dw_damper_editor_get_damper (DwDamperEditor *self)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), NULL);
  return self->has_damper ? &self->damper : NULL;
}

const dw_error *
dw_damper_editor_get_finding (DwDamperEditor *self)
{
  g_return_val_if_fail (DW_IS_DAMPER_EDITOR (self), NULL);
  return self->has_finding ? &self->finding : NULL;
}
