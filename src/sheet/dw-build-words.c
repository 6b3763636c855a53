/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet/dw-build-words.h"

#include <glib/gi18n.h>

#include "sheet/dw-part-words.h"

const char *
dw_build_name (dw_build build)
{
  static const char *const names[DW_N_BUILDS] = {
    [DW_BUILD_BODY] = N_ ("Body"),
    [DW_BUILD_PISTON] = N_ ("Piston"),
    [DW_BUILD_OPEN_HOLES] = N_ ("Open holes"),
    [DW_BUILD_COVERED_HOLES] = N_ ("Covered holes"),
    [DW_BUILD_STACK] = N_ ("Stack"),
    [DW_BUILD_SHIM] = N_ ("Shim"),
    [DW_BUILD_OIL] = N_ ("Oil"),
    [DW_BUILD_FILLING] = N_ ("Oil filling"),
    [DW_BUILD_GAS] = N_ ("Gas, seal"),
    [DW_BUILD_SPRING] = N_ ("Spring"),
    [DW_BUILD_LINKAGE] = N_ ("Motion ratio"),
    [DW_BUILD_RIDE_HEIGHT] = N_ ("Ride height"),
    [DW_BUILD_DROOP] = N_ ("Droop"),
  };
  return _ (names[build]);
}

bool
dw_build_is_open (dw_build build)
{
  return build == DW_BUILD_FILLING || build == DW_BUILD_RIDE_HEIGHT || build == DW_BUILD_DROOP;
}

static char *
length (dw_units units, double value)
{
  return dw_part_words_quantity (DW_QUANTITY_LENGTH, units, value);
}

static char *
tell_body (const dw_body *body, dw_units units)
{
  g_autofree char *bore = length (units, body->bore);
  g_autofree char *rod = length (units, body->rod);
  g_autofree char *stroke = length (units, body->stroke);
  /* Translators: three lengths with their units. */
  return g_strdup_printf (_ ("bore %s, shaft %s, stroke %s"), bore, rod, stroke);
}

static char *
tell_piston (const dw_piston *piston, dw_units units)
{
  g_autofree char *thickness = length (units, piston->thickness);
  g_autofree char *clearance = length (units, piston->clearance);
  /* Translators: of a piston; the clearance is the gap to the bore on each side. */
  return g_strdup_printf (_ ("%s thick, clearance %s"), thickness, clearance);
}

static char *
tell_stack (const dw_valve *valve, dw_units units)
{
  const bool on_rebound = valve->opens_on == DW_REBOUND;
  if (valve->n_shims == 0)
    return g_strdup ("");
  g_autofree char *stack = dw_part_words_stack (valve, units);
  if (valve->n_shims == 1)
    return g_strdup_printf (
        on_rebound ? _ ("%s, opens on rebound") : _ ("%s, opens on compression"), stack);
  return g_strdup_printf (on_rebound
                              /* Translators: several shims, the one on the piston first. */
                              ? _ ("from the piston out %s, opens on rebound")
                              : _ ("from the piston out %s, opens on compression"),
                          stack);
}

/* What is not there, a preload say, is not told. The unit stands behind the last of the lengths. */
static char *
tell_shim (const dw_valve *valve, dw_units units)
{
  if (valve->n_shims == 0)
    return g_strdup ("");
  g_autofree char *hub = dw_quantity_format_short (DW_QUANTITY_LENGTH, units, valve->hub_diameter);
  g_autofree char *outer = dw_quantity_format_short (DW_QUANTITY_LENGTH, units,
                                                     valve->outer_diameter);
  g_autofree char *limit = length (units, valve->lift_limit);
  GString *text = g_string_new (NULL);
  /* Translators: diameters of a shim, and how far its rim may lift. */
  g_string_printf (text, _ ("hub %s, outside %s, lift limit %s"), hub, outer, limit);
  if (valve->preload > 0.0)
    {
      g_autofree char *preload = dw_part_words_quantity (DW_QUANTITY_PRESSURE, units,
                                                         valve->preload);
      g_string_append_printf (text, _ (", opens at %s"), preload);
    }
  if (valve->seat_gap > 0.0)
    {
      g_autofree char *gap = length (units, valve->seat_gap);
      g_string_append_printf (text, _ (", seat gap %s"), gap);
    }
  return g_string_free (text, FALSE);
}

static char *
tell_gas (const dw_damper *damper, dw_units units)
{
  g_autofree char *gas = dw_part_words_gas (&damper->gas, units);
  g_autofree char *seal = dw_part_words_quantity (DW_QUANTITY_FORCE, units, damper->seal_friction);
  /* Translators: the gas space, and the friction of the seal. */
  return g_strdup_printf (_ ("%s; seal %s"), gas, seal);
}

static char *
tell_spring (const dw_spring *spring, dw_units units)
{
  g_autofree char *words = dw_part_words_spring (spring, units);
  g_autofree char *preload = length (units, spring->preload);
  /* Translators: a spring, and how far it is compressed at full droop. */
  return g_strdup_printf (_ ("%s, preload %s"), words, preload);
}

char *
dw_build_value (dw_build build, const dw_damper *damper, dw_units units)
{
  switch (build)
    {
    case DW_BUILD_BODY:
      return tell_body (&damper->body, units);
    case DW_BUILD_PISTON:
      return tell_piston (&damper->piston, units);
    case DW_BUILD_OPEN_HOLES:
      return dw_part_words_holes (&damper->piston, false, units);
    case DW_BUILD_COVERED_HOLES:
      return dw_part_words_holes (&damper->piston, true, units);
    case DW_BUILD_STACK:
      return tell_stack (&damper->valve, units);
    case DW_BUILD_SHIM:
      return tell_shim (&damper->valve, units);
    case DW_BUILD_OIL:
      return dw_part_words_oil (&damper->oil, units);
    case DW_BUILD_FILLING:
      return damper->body.has_filling
                 ? dw_part_words_quantity (DW_QUANTITY_VOLUME, units, damper->body.filling)
                 : g_strdup ("");
    case DW_BUILD_GAS:
      return tell_gas (damper, units);
    case DW_BUILD_SPRING:
      return tell_spring (&damper->spring, units);
    case DW_BUILD_LINKAGE:
      return dw_part_words_quantity (DW_QUANTITY_NUMBER, units, damper->motion_ratio);
    case DW_BUILD_RIDE_HEIGHT:
      return damper->stance.has_ride_height ? length (units, damper->stance.ride_height)
                                            : g_strdup ("");
    case DW_BUILD_DROOP:
      return damper->stance.has_droop ? length (units, damper->stance.droop) : g_strdup ("");
    case DW_N_BUILDS:
      break;
    }
  g_return_val_if_reached (NULL);
}
