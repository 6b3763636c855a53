/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-damper-place.h"

#include <glib/gi18n.h>
#include <math.h>
#include <stddef.h>
#include <string.h>

#define EVEN(size)                                                                                 \
  {                                                                                                \
    DW_STEP_EVEN, size                                                                             \
  }
#define DRILL                                                                                      \
  {                                                                                                \
    DW_STEP_DRILL, 0.0                                                                             \
  }
#define GRADE                                                                                      \
  {                                                                                                \
    DW_STEP_GRADE, 0.0                                                                             \
  }
#define LABELS(front, rear)                                                                        \
  {                                                                                                \
    [DW_FRONT] = front, [DW_REAR] = rear                                                           \
  }

/* Two lines a row: the layout is kept by hand. */
/* clang-format off */
static const dw_damper_place places[DW_DAMPER_PLACES] = {
  { "bore", DW_FORM_BODY, "bore-mm", DW_QUANTITY_LENGTH, EVEN (0.5e-3), -1,
    LABELS (N_ ("Change front bore"), N_ ("Change rear bore")) },
  { "rod", DW_FORM_BODY, "rod-mm", DW_QUANTITY_LENGTH, EVEN (0.1e-3), -1,
    LABELS (N_ ("Change front shaft diameter"), N_ ("Change rear shaft diameter")) },
  { "stroke", DW_FORM_BODY, "stroke-mm", DW_QUANTITY_LENGTH, EVEN (1e-3), -1,
    LABELS (N_ ("Change front stroke"), N_ ("Change rear stroke")) },
  { "filling", DW_FORM_BODY, "filling-ml", DW_QUANTITY_VOLUME, EVEN (0.1e-6), -1,
    LABELS (N_ ("Change front oil filling"), N_ ("Change rear oil filling")) },
  { "thickness", DW_FORM_PISTON, "thickness-mm", DW_QUANTITY_LENGTH, EVEN (0.05e-3), -1,
    LABELS (N_ ("Change front piston thickness"), N_ ("Change rear piston thickness")) },
  { "clearance", DW_FORM_PISTON, "clearance-mm", DW_QUANTITY_LENGTH, EVEN (0.005e-3), -1,
    LABELS (N_ ("Change front piston clearance"), N_ ("Change rear piston clearance")) },
  { "eccentricity", DW_FORM_PISTON, "eccentricity", DW_QUANTITY_NUMBER, EVEN (0.1), -1,
    LABELS (N_ ("Change front piston eccentricity"), N_ ("Change rear piston eccentricity")) },
  { "count", DW_FORM_HOLES, "count", DW_QUANTITY_NUMBER, EVEN (1.0), -1,
    LABELS (N_ ("Change front number of holes"), N_ ("Change rear number of holes")) },
  { "diameter", DW_FORM_HOLES, "diameter-mm", DW_QUANTITY_LENGTH, DRILL, -1,
    LABELS (N_ ("Change front hole diameter"), N_ ("Change rear hole diameter")) },
  { "hub", DW_FORM_VALVE, "hub-diameter-mm", DW_QUANTITY_LENGTH, EVEN (0.1e-3), -1,
    LABELS (N_ ("Change front shim hub"), N_ ("Change rear shim hub")) },
  { "outer", DW_FORM_VALVE, "outer-diameter-mm", DW_QUANTITY_LENGTH, EVEN (0.1e-3), -1,
    LABELS (N_ ("Change front shim diameter"), N_ ("Change rear shim diameter")) },
  { "hole_circle", DW_FORM_VALVE, "hole-circle-mm", DW_QUANTITY_LENGTH, EVEN (0.1e-3), -1,
    LABELS (N_ ("Change front hole circle"), N_ ("Change rear hole circle")) },
  { "lift_limit", DW_FORM_VALVE, "lift-limit-mm", DW_QUANTITY_LENGTH, EVEN (0.05e-3), -1,
    LABELS (N_ ("Change front lift limit"), N_ ("Change rear lift limit")) },
  { "coupling", DW_FORM_VALVE, "leaf-coupling", DW_QUANTITY_NUMBER, EVEN (0.1), -1,
    LABELS (N_ ("Change front leaf coupling"), N_ ("Change rear leaf coupling")) },
  { "valve_preload", DW_FORM_VALVE, "preload-kpa", DW_QUANTITY_PRESSURE, EVEN (1e3), -1,
    LABELS (N_ ("Change front shim preload"), N_ ("Change rear shim preload")) },
  { "seat_gap", DW_FORM_VALVE, "seat-gap-mm", DW_QUANTITY_LENGTH, EVEN (0.005e-3), -1,
    LABELS (N_ ("Change front seat gap"), N_ ("Change rear seat gap")) },
  { "thickness", DW_FORM_SHIM, "thickness-mm", DW_QUANTITY_LENGTH, EVEN (0.05e-3), -1,
    LABELS (N_ ("Change front shim thickness"), N_ ("Change rear shim thickness")) },
  { "count", DW_FORM_SHIM, "count", DW_QUANTITY_NUMBER, EVEN (1.0), -1,
    LABELS (N_ ("Change front number of shims"), N_ ("Change rear number of shims")) },
  { "modulus", DW_FORM_SHIM, "modulus-gpa", DW_QUANTITY_MODULUS, EVEN (0.1e9), -1,
    LABELS (N_ ("Change front shim stiffness"), N_ ("Change rear shim stiffness")) },
  { "poisson", DW_FORM_SHIM, "poisson", DW_QUANTITY_NUMBER, EVEN (0.01), -1,
    LABELS (N_ ("Change front shim Poisson's ratio"), N_ ("Change rear shim Poisson's ratio")) },
  { "strength", DW_FORM_SHIM, "strength-mpa", DW_QUANTITY_STRESS, EVEN (10e6), -1,
    LABELS (N_ ("Change front shim strength"), N_ ("Change rear shim strength")) },
  { "viscosity", DW_FORM_OIL_NOMINAL, "viscosity-cst", DW_QUANTITY_VISCOSITY, GRADE, -1,
    LABELS (N_ ("Change front oil"), N_ ("Change rear oil")) },
  { "t1", DW_FORM_OIL_MEASURED, "t1-c", DW_QUANTITY_TEMPERATURE, EVEN (1.0), 0,
    LABELS (N_ ("Change front cold oil temperature"), N_ ("Change rear cold oil temperature")) },
  { "viscosity1", DW_FORM_OIL_MEASURED, "viscosity1-cst", DW_QUANTITY_VISCOSITY, GRADE, 0,
    LABELS (N_ ("Change front cold oil viscosity"), N_ ("Change rear cold oil viscosity")) },
  { "t2", DW_FORM_OIL_MEASURED, "t2-c", DW_QUANTITY_TEMPERATURE, EVEN (1.0), 1,
    LABELS (N_ ("Change front warm oil temperature"), N_ ("Change rear warm oil temperature")) },
  { "viscosity2", DW_FORM_OIL_MEASURED, "viscosity2-cst", DW_QUANTITY_VISCOSITY, GRADE, 1,
    LABELS (N_ ("Change front warm oil viscosity"), N_ ("Change rear warm oil viscosity")) },
  { "density", DW_FORM_OIL_MEASURED, "density-kg-m3", DW_QUANTITY_DENSITY, EVEN (5.0), -1,
    LABELS (N_ ("Change front oil density"), N_ ("Change rear oil density")) },
  { "thinning_rate", DW_FORM_OIL_NOMINAL, "thinning-rate-per-s", DW_QUANTITY_SHEAR_RATE, EVEN (1e4), -1,
    LABELS (N_ ("Change front oil thinning rate"), N_ ("Change rear oil thinning rate")) },
  { "thinning_exponent", DW_FORM_OIL_NOMINAL, "thinning-exponent", DW_QUANTITY_NUMBER, EVEN (0.05), -1,
    LABELS (N_ ("Change front oil thinning exponent"), N_ ("Change rear oil thinning exponent")) },
  { "part_viscosity", DW_FORM_OIL_PART, "viscosity-cst", DW_QUANTITY_VISCOSITY, GRADE, -1,
    LABELS (N_ ("Change front blend"), N_ ("Change rear blend")) },
  { "part_share", DW_FORM_OIL_PART, "share", DW_QUANTITY_NUMBER, EVEN (0.05), -1,
    LABELS (N_ ("Change front blend shares"), N_ ("Change rear blend shares")) },
  { "pressure", DW_FORM_GAS_SEALED, "pressure-kpa", DW_QUANTITY_PRESSURE, EVEN (5e3), -1,
    LABELS (N_ ("Change front gas pressure"), N_ ("Change rear gas pressure")) },
  { "volume", DW_FORM_GAS_SEALED, "volume-ml", DW_QUANTITY_VOLUME, EVEN (0.1e-6), -1,
    LABELS (N_ ("Change front gas volume"), N_ ("Change rear gas volume")) },
  { "friction", DW_FORM_SEAL, "friction-n", DW_QUANTITY_FORCE, EVEN (0.1), -1,
    LABELS (N_ ("Change front seal friction"), N_ ("Change rear seal friction")) },
  { "rate", DW_FORM_SPRING, "rate-n-per-mm", DW_QUANTITY_RATE, EVEN (10.0), -1,
    LABELS (N_ ("Change front spring rate"), N_ ("Change rear spring rate")) },
  { "free_length", DW_FORM_SPRING, "free-length-mm", DW_QUANTITY_LENGTH, EVEN (1e-3), -1,
    LABELS (N_ ("Change front spring length"), N_ ("Change rear spring length")) },
  { "spring_preload", DW_FORM_SPRING, "preload-mm", DW_QUANTITY_LENGTH, EVEN (0.5e-3), -1,
    LABELS (N_ ("Change front spring preload"), N_ ("Change rear spring preload")) },
  { "motion_ratio", DW_FORM_LINKAGE, "motion-ratio", DW_QUANTITY_NUMBER, EVEN (0.01), -1,
    LABELS (N_ ("Change front motion ratio"), N_ ("Change rear motion ratio")) },
  { "ride_height", DW_FORM_STANCE, "ride-height-mm", DW_QUANTITY_LENGTH, EVEN (0.5e-3), -1,
    LABELS (N_ ("Change front ride height"), N_ ("Change rear ride height")) },
  { "droop", DW_FORM_STANCE, "droop-mm", DW_QUANTITY_LENGTH, EVEN (0.5e-3), -1,
    LABELS (N_ ("Change front droop"), N_ ("Change rear droop")) },
};
/* clang-format on */

const dw_damper_place *
dw_damper_place_get (int i)
{
  g_assert (i >= 0 && i < DW_DAMPER_PLACES);
  return &places[i];
}

const dw_damper_place *
dw_damper_place_find (dw_form_id form, const char *attribute)
{
  for (int i = 0; i < DW_DAMPER_PLACES; i++)
    if (places[i].form == form && g_str_equal (places[i].attribute, attribute))
      return &places[i];
  return NULL;
}

gboolean
dw_damper_place_has_rows (const dw_damper_place *place)
{
  return place->form == DW_FORM_HOLES || place->form == DW_FORM_SHIM
         || place->form == DW_FORM_OIL_PART;
}

gboolean
dw_damper_place_is_optional (const dw_damper_place *place)
{
  return place->form != DW_FORM_OIL_NOMINAL && dw_damper_place_field (place)->optional;
}

const dw_field *
dw_damper_place_field (const dw_damper_place *place)
{
  const dw_field *field = dw_form_find (dw_form_get (place->form), place->attribute);
  g_assert (field != NULL);
  return field;
}

/* Where the struct that a form is read into starts in a damper, and the size of its rows. */
static size_t
form_offset (dw_form_id form, int row)
{
  const size_t r = (size_t)row;

  if (form == DW_FORM_BODY)
    return offsetof (dw_damper, body);
  if (form == DW_FORM_PISTON)
    return offsetof (dw_damper, piston);
  if (form == DW_FORM_HOLES)
    return offsetof (dw_damper, piston.holes) + r * sizeof (dw_holes);
  if (form == DW_FORM_VALVE)
    return offsetof (dw_damper, valve);
  if (form == DW_FORM_SHIM)
    return offsetof (dw_damper, valve.shims) + r * sizeof (dw_shim);
  if (form == DW_FORM_OIL_NOMINAL || form == DW_FORM_OIL_MEASURED)
    return offsetof (dw_damper, oil);
  if (form == DW_FORM_OIL_PART)
    return offsetof (dw_damper, oil.parts) + r * sizeof (dw_oil_part);
  if (form == DW_FORM_GAS_SEALED)
    return offsetof (dw_damper, gas);
  if (form == DW_FORM_SPRING)
    return offsetof (dw_damper, spring);
  if (form == DW_FORM_STANCE)
    return offsetof (dw_damper, stance);
  g_assert (form == DW_FORM_SEAL || form == DW_FORM_LINKAGE);
  return 0;
}

double
dw_damper_place_read (const dw_damper_place *place, const dw_damper *damper, int row)
{
  const dw_field *field = dw_damper_place_field (place);
  const char *values = (const char *)damper + form_offset (place->form, row);
  const char *at = values + field->offset;
  double value;
  int count;

  if (dw_damper_place_is_optional (place) && !*(const bool *)(values + field->has))
    return NAN;

  if (field->kind == DW_FIELD_COUNT)
    {
      memcpy (&count, at, sizeof count);
      return count;
    }
  memcpy (&value, at, sizeof value);
  return value;
}

/* The shares of two oils add to 1; through text, so that 1 - 0.33 is the 0.67 a user would type. */
static void
write_other_share (dw_damper *damper, int row, double share)
{
  g_autofree char *text = dw_quantity_format_digits (DW_QUANTITY_NUMBER, DW_UNITS_METRIC,
                                                     1.0 - share, 12);
  dw_quantity_parse (DW_QUANTITY_NUMBER, DW_UNITS_METRIC, text, &damper->oil.parts[1 - row].share);
}

void
dw_damper_place_write (const dw_damper_place *place, dw_damper *damper, int row, double value)
{
  const dw_field *field = dw_damper_place_field (place);
  char *values = (char *)damper + form_offset (place->form, row);
  char *at = values + field->offset;
  const gboolean given = !isnan (value);
  const double number = given ? value : 0.0;
  const int count = (int)number;

  g_return_if_fail (given || dw_damper_place_is_optional (place));
  if (dw_damper_place_is_optional (place))
    *(bool *)(values + field->has) = given;
  if (field->kind == DW_FIELD_COUNT)
    memcpy (at, &count, sizeof count);
  else
    memcpy (at, &number, sizeof number);
  if (field->limit == DW_LIMIT_SHARE)
    write_other_share (damper, row, value);
}

gboolean
dw_damper_place_is_meant (const dw_damper_place *place, int row, const dw_error *finding)
{
  const dw_field *field = dw_damper_place_field (place);
  const int index = dw_damper_place_has_rows (place) ? row : place->index;

  return index == finding->index && g_str_equal (dw_field_get_path (field), finding->field);
}
