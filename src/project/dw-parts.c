/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-parts.h"

static void
clear_spare_piston (gpointer data)
{
  dw_spare_piston *spare = data;
  g_clear_pointer (&spare->name, g_free);
}

dw_parts *
dw_parts_new (void)
{
  dw_parts *parts = g_new0 (dw_parts, 1);
  g_atomic_ref_count_init (&parts->refs);
  parts->drills = g_array_new (FALSE, TRUE, sizeof (dw_drill));
  parts->shims = g_array_new (FALSE, TRUE, sizeof (dw_shim));
  parts->oils = g_array_new (FALSE, TRUE, sizeof (dw_bottle));
  parts->pistons = g_array_new (FALSE, TRUE, sizeof (dw_spare_piston));
  g_array_set_clear_func (parts->pistons, clear_spare_piston);
  return parts;
}

dw_parts *
dw_parts_ref (dw_parts *parts)
{
  g_atomic_ref_count_inc (&parts->refs);
  return parts;
}

void
dw_parts_unref (dw_parts *parts)
{
  if (!g_atomic_ref_count_dec (&parts->refs))
    return;
  g_array_unref (parts->drills);
  g_array_unref (parts->shims);
  g_array_unref (parts->oils);
  g_array_unref (parts->pistons);
  g_free (parts);
}

bool
dw_parts_is_shared (dw_parts *parts)
{
  return !g_atomic_ref_count_compare (&parts->refs, 1);
}

static void
append_all (GArray *to, const GArray *from)
{
  if (from->len > 0)
    g_array_append_vals (to, from->data, from->len);
}

dw_parts *
dw_parts_copy (const dw_parts *parts)
{
  g_return_val_if_fail (parts != NULL, NULL);

  dw_parts *copy = dw_parts_new ();
  append_all (copy->drills, parts->drills);
  append_all (copy->shims, parts->shims);
  append_all (copy->oils, parts->oils);
  for (guint i = 0; i < parts->pistons->len; i++)
    {
      const dw_spare_piston *spare = &g_array_index (parts->pistons, dw_spare_piston, i);
      dw_parts_add_piston (copy, spare->name, &spare->piston);
    }
  return copy;
}

static bool
bottles_equal (const dw_bottle *a, const dw_bottle *b)
{
  return a->has_volume == b->has_volume && (!a->has_volume || a->volume == b->volume)
         && dw_oil_equal (&a->oil, &b->oil);
}

static bool
shims_equal (const dw_shim *a, const dw_shim *b)
{
  return a->thickness == b->thickness && a->count == b->count && a->modulus == b->modulus
         && a->poisson == b->poisson && a->strength == b->strength;
}

static bool
spare_pistons_equal (const dw_spare_piston *a, const dw_spare_piston *b)
{
  return g_str_equal (a->name, b->name) && dw_piston_equal (&a->piston, &b->piston);
}

bool
dw_parts_equal (const dw_parts *a, const dw_parts *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, false);

  if (a == b)
    return true;
  if (a->drills->len != b->drills->len || a->shims->len != b->shims->len
      || a->oils->len != b->oils->len || a->pistons->len != b->pistons->len)
    return false;
  for (guint i = 0; i < a->drills->len; i++)
    if (g_array_index (a->drills, dw_drill, i).diameter
        != g_array_index (b->drills, dw_drill, i).diameter)
      return false;
  for (guint i = 0; i < a->shims->len; i++)
    if (!shims_equal (&g_array_index (a->shims, dw_shim, i), &g_array_index (b->shims, dw_shim, i)))
      return false;
  for (guint i = 0; i < a->oils->len; i++)
    if (!bottles_equal (&g_array_index (a->oils, dw_bottle, i),
                        &g_array_index (b->oils, dw_bottle, i)))
      return false;
  for (guint i = 0; i < a->pistons->len; i++)
    if (!spare_pistons_equal (&g_array_index (a->pistons, dw_spare_piston, i),
                              &g_array_index (b->pistons, dw_spare_piston, i)))
      return false;
  return true;
}

void
dw_parts_add_piston (dw_parts *parts, const char *name, const dw_piston *piston)
{
  const dw_spare_piston spare = { .piston = *piston, .name = g_strdup (name) };
  g_array_append_val (parts->pistons, spare);
}
