/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project/dw-field.h"

#include <math.h>

#include "project/dw-decimal.h"
#include "project/dw-parts.h"
#include "project/dw-project.h"

/* Enums are read and written as int. */
G_STATIC_ASSERT (sizeof (dw_stroke) == sizeof (int));
G_STATIC_ASSERT (sizeof (dw_gas_kind) == sizeof (int));
G_STATIC_ASSERT (sizeof (dw_axle) == sizeof (int));

static const char *const stroke_words[]
    = { [DW_COMPRESSION] = "compression", [DW_REBOUND] = "rebound", NULL };
static const char *const gas_words[] = {
  [DW_GAS_BLADDER] = "bladder", [DW_GAS_VENTED] = "vented", [DW_GAS_EMULSION] = "emulsion", NULL
};
static const char *const axle_words[] = { [DW_FRONT] = "front", [DW_REAR] = "rear", NULL };
static const char *const flag_words[] = { "no", "yes", NULL };

/* clang-format off */

#define AT(type, member) .offset = offsetof (type, member)
#define NUMBER(attribute, type, member, id, tens, word) \
  { .name = attribute, .kind = DW_FIELD_NUMBER, AT (type, member), \
    .limit = id, .power = tens, .unit = word }
#define OPTIONAL(attribute, type, member, given, id, tens, word) \
  { .name = attribute, .kind = DW_FIELD_NUMBER, AT (type, member), \
    .limit = id, .power = tens, .unit = word, .optional = true, .has = offsetof (type, given) }
#define COUNT(attribute, type, member, id) \
  { .name = attribute, .kind = DW_FIELD_COUNT, AT (type, member), .limit = id, .unit = "" }
#define WORD(attribute, type, member, list, index) \
  { .name = attribute, .kind = DW_FIELD_WORD, AT (type, member), .words = list, .fallback = index }
#define FLAG(attribute, type, member) \
  { .name = attribute, .kind = DW_FIELD_FLAG, AT (type, member), .words = flag_words }
#define STRING(attribute, type, member, what) \
  { .name = attribute, .kind = what, AT (type, member) }

static const dw_field project_fields[] = {
  { .name = "version", .kind = DW_FIELD_VERSION },
  STRING ("title", dw_project, title, DW_FIELD_TEXT),
  STRING ("fitted", dw_project, fitted, DW_FIELD_REFERENCE),
};

static const dw_field conditions_fields[] = {
  NUMBER ("oil-c", dw_conditions, oil_temperature, DW_LIMIT_OIL_TEMPERATURE, 0, "degC"),
  NUMBER ("air-c", dw_conditions, air_temperature, DW_LIMIT_AIR_TEMPERATURE, 0, "degC"),
};

static const dw_field speeds_fields[] = {
  NUMBER ("low-m-s", dw_speeds, low, DW_LIMIT_SPEED, 0, "m/s"),
  NUMBER ("middle-m-s", dw_speeds, middle, DW_LIMIT_SPEED, 0, "m/s"),
  NUMBER ("high-m-s", dw_speeds, high, DW_LIMIT_SPEED, 0, "m/s"),
};

static const dw_field car_fields[] = {
  OPTIONAL ("sprung-front-kg", dw_car, sprung_mass[DW_FRONT], has_sprung_mass[DW_FRONT],
            DW_LIMIT_SPRUNG_MASS, 0, "kg"),
  OPTIONAL ("sprung-rear-kg", dw_car, sprung_mass[DW_REAR], has_sprung_mass[DW_REAR],
            DW_LIMIT_SPRUNG_MASS, 0, "kg"),
};

#define WORDS(attribute, field) \
  { .name = attribute, .kind = DW_FIELD_TEXT, AT (dw_project, meeting[field]), .optional = true }

static const dw_field meeting_fields[] = {
  WORDS ("event", DW_MEETING_EVENT),
  WORDS ("track", DW_MEETING_TRACK),
  WORDS ("surface", DW_MEETING_SURFACE),
  WORDS ("driver", DW_MEETING_DRIVER),
  WORDS ("car", DW_MEETING_CAR),
};

static const dw_field setup_fields[] = {
  STRING ("id", dw_setup, id, DW_FIELD_ID),
  STRING ("name", dw_setup, name, DW_FIELD_TEXT),
};

/* Read into a dw_axle: a damper does not know where it sits. */
static const dw_field damper_fields[] = {
  { .name = "axle", .kind = DW_FIELD_WORD, .offset = 0, .words = axle_words, .fallback = -1 },
};

static const dw_field body_fields[] = {
  NUMBER ("bore-mm", dw_body, bore, DW_LIMIT_BORE, -3, "mm"),
  NUMBER ("rod-mm", dw_body, rod, DW_LIMIT_ROD, -3, "mm"),
  NUMBER ("stroke-mm", dw_body, stroke, DW_LIMIT_STROKE, -3, "mm"),
  OPTIONAL ("filling-ml", dw_body, filling, has_filling, DW_LIMIT_FILLING, -6, "ml"),
};

#define PISTON_FIELDS(type, piston) \
  NUMBER ("thickness-mm", type, piston thickness, DW_LIMIT_PISTON_THICKNESS, -3, "mm"), \
  NUMBER ("clearance-mm", type, piston clearance, DW_LIMIT_CLEARANCE, -3, "mm"), \
  NUMBER ("eccentricity", type, piston eccentricity, DW_LIMIT_ECCENTRICITY, 0, "")

static const dw_field piston_fields[] = {
  PISTON_FIELDS (dw_piston, ),
};

static const dw_field holes_fields[] = {
  COUNT ("count", dw_holes, count, DW_LIMIT_HOLE_COUNT),
  NUMBER ("diameter-mm", dw_holes, diameter, DW_LIMIT_HOLE_DIAMETER, -3, "mm"),
  FLAG ("covered", dw_holes, covered),
};

static const dw_field valve_fields[] = {
  WORD ("opens-on", dw_valve, opens_on, stroke_words, DW_REBOUND),
  NUMBER ("hub-diameter-mm", dw_valve, hub_diameter, DW_LIMIT_HUB, -3, "mm"),
  NUMBER ("outer-diameter-mm", dw_valve, outer_diameter, DW_LIMIT_SHIM_OUTER, -3, "mm"),
  NUMBER ("hole-circle-mm", dw_valve, hole_circle, DW_LIMIT_HOLE_CIRCLE, -3, "mm"),
  NUMBER ("lift-limit-mm", dw_valve, lift_limit, DW_LIMIT_LIFT, -3, "mm"),
  NUMBER ("leaf-coupling", dw_valve, leaf_coupling, DW_LIMIT_COUPLING, 0, ""),
  NUMBER ("preload-kpa", dw_valve, preload, DW_LIMIT_PRELOAD, 3, "kPa"),
  NUMBER ("seat-gap-mm", dw_valve, seat_gap, DW_LIMIT_SEAT_GAP, -3, "mm"),
};

static const dw_field shim_fields[] = {
  NUMBER ("thickness-mm", dw_shim, thickness, DW_LIMIT_SHIM_THICKNESS, -3, "mm"),
  COUNT ("count", dw_shim, count, DW_LIMIT_SHIM_COUNT),
  NUMBER ("modulus-gpa", dw_shim, modulus, DW_LIMIT_MODULUS, 9, "GPa"),
  NUMBER ("poisson", dw_shim, poisson, DW_LIMIT_POISSON, 0, ""),
  NUMBER ("strength-mpa", dw_shim, strength, DW_LIMIT_STRENGTH, 6, "MPa"),
};

/* A bottle is an oil and how much of it: the same fields, seen from dw_oil or dw_bottle. */
#define NOMINAL_FIELDS(type, oil) \
  NUMBER ("viscosity-cst", type, oil viscosity, DW_LIMIT_VISCOSITY, -6, "cSt")

#define MEASURED_POINT(attribute, type, member, id, tens, word, where) \
  { .name = attribute, .kind = DW_FIELD_NUMBER, AT (type, member), .limit = id, .power = tens, \
    .unit = word, .path = where }
#define MEASURED_FIELDS(type, oil) \
  MEASURED_POINT ("t1-c", type, oil point_temperature[0], DW_LIMIT_POINT_TEMPERATURE, 0, \
                  "degC", "oil.point.temperature"), \
  MEASURED_POINT ("viscosity1-cst", type, oil point_viscosity[0], DW_LIMIT_VISCOSITY, -6, \
                  "cSt", "oil.point.viscosity"), \
  MEASURED_POINT ("t2-c", type, oil point_temperature[1], DW_LIMIT_POINT_TEMPERATURE, 0, \
                  "degC", "oil.point.temperature"), \
  MEASURED_POINT ("viscosity2-cst", type, oil point_viscosity[1], DW_LIMIT_VISCOSITY, -6, \
                  "cSt", "oil.point.viscosity"), \
  NUMBER ("density-kg-m3", type, oil density, DW_LIMIT_DENSITY, 0, "kg/m3")

#define THINNING_FIELDS(type, oil) \
  OPTIONAL ("thinning-rate-per-s", type, oil thinning_rate, oil has_thinning, \
            DW_LIMIT_THINNING_RATE, 0, "1/s"), \
  OPTIONAL ("thinning-exponent", type, oil thinning_exponent, oil has_thinning, \
            DW_LIMIT_THINNING_EXPONENT, 0, "")

#define VOLUME_FIELD \
  OPTIONAL ("volume-ml", dw_bottle, volume, has_volume, DW_LIMIT_BOTTLE_VOLUME, -6, "ml")

static const dw_field oil_nominal_fields[] = {
  NOMINAL_FIELDS (dw_oil, ),
  THINNING_FIELDS (dw_oil, ),
};
static const dw_field oil_measured_fields[] = {
  MEASURED_FIELDS (dw_oil, ),
  THINNING_FIELDS (dw_oil, ),
};
static const dw_field oil_blend_fields[] = {
  THINNING_FIELDS (dw_oil, ),
};
static const dw_field bottle_nominal_fields[] = {
  NOMINAL_FIELDS (dw_bottle, oil.),
  THINNING_FIELDS (dw_bottle, oil.),
  VOLUME_FIELD,
};
static const dw_field bottle_measured_fields[] = {
  MEASURED_FIELDS (dw_bottle, oil.),
  THINNING_FIELDS (dw_bottle, oil.),
  VOLUME_FIELD,
};
static const dw_field bottle_blend_fields[] = {
  THINNING_FIELDS (dw_bottle, oil.),
  VOLUME_FIELD,
};

static const dw_field oil_part_fields[] = {
  NUMBER ("viscosity-cst", dw_oil_part, viscosity, DW_LIMIT_VISCOSITY, -6, "cSt"),
  NUMBER ("share", dw_oil_part, share, DW_LIMIT_SHARE, 0, ""),
};

static const dw_field gas_sealed_fields[] = {
  WORD ("kind", dw_gas, kind, gas_words, DW_GAS_BLADDER),
  NUMBER ("pressure-kpa", dw_gas, pressure, DW_LIMIT_GAS_PRESSURE, 3, "kPa"),
  NUMBER ("volume-ml", dw_gas, volume, DW_LIMIT_GAS_VOLUME, -6, "ml"),
};
static const dw_field gas_vented_fields[] = {
  WORD ("kind", dw_gas, kind, gas_words, DW_GAS_BLADDER),
  NUMBER ("pressure-kpa", dw_gas, pressure, DW_LIMIT_AIR_PRESSURE, 3, "kPa"),
  NUMBER ("volume-ml", dw_gas, volume, DW_LIMIT_GAS_VOLUME, -6, "ml"),
};

static const dw_field seal_fields[] = {
  NUMBER ("friction-n", dw_damper, seal_friction, DW_LIMIT_SEAL_FRICTION, 0, "N"),
};

static const dw_field spring_fields[] = {
  NUMBER ("rate-n-per-mm", dw_spring, rate, DW_LIMIT_SPRING_RATE, 3, "N/mm"),
  NUMBER ("free-length-mm", dw_spring, free_length, DW_LIMIT_SPRING_LENGTH, -3, "mm"),
  NUMBER ("preload-mm", dw_spring, preload, DW_LIMIT_SPRING_PRELOAD, -3, "mm"),
};

static const dw_field linkage_fields[] = {
  NUMBER ("motion-ratio", dw_damper, motion_ratio, DW_LIMIT_MOTION_RATIO, 0, ""),
};

static const dw_field stance_fields[] = {
  OPTIONAL ("ride-height-mm", dw_stance, ride_height, has_ride_height, DW_LIMIT_RIDE_HEIGHT, -3,
            "mm"),
  OPTIONAL ("droop-mm", dw_stance, droop, has_droop, DW_LIMIT_DROOP, -3, "mm"),
};

static const dw_field drill_fields[] = {
  NUMBER ("diameter-mm", dw_drill, diameter, DW_LIMIT_HOLE_DIAMETER, -3, "mm"),
};

static const dw_field spare_piston_fields[] = {
  STRING ("name", dw_spare_piston, name, DW_FIELD_TEXT),
  PISTON_FIELDS (dw_spare_piston, piston.),
};

#define FORM(id, name, where, list) \
  [id] = { .element = name, .pattern = where, .fields = list, .n_fields = G_N_ELEMENTS (list) }

static const dw_form forms[DW_N_FORMS] = {
  FORM (DW_FORM_PROJECT, "project", "project", project_fields),
  FORM (DW_FORM_CONDITIONS, "conditions", "conditions", conditions_fields),
  FORM (DW_FORM_SPEEDS, "speeds", "speeds", speeds_fields),
  FORM (DW_FORM_CAR, "car", "car", car_fields),
  FORM (DW_FORM_MEETING, "meeting", "meeting", meeting_fields),
  [DW_FORM_NOTES] = { .element = "notes", .pattern = "notes" },
  FORM (DW_FORM_SETUP, "setup", "setup", setup_fields),
  FORM (DW_FORM_DAMPER, "damper", "damper", damper_fields),
  FORM (DW_FORM_BODY, "body", "body", body_fields),
  FORM (DW_FORM_PISTON, "piston", "piston", piston_fields),
  FORM (DW_FORM_HOLES, "holes", "holes", holes_fields),
  FORM (DW_FORM_VALVE, "valve", "valve", valve_fields),
  FORM (DW_FORM_SHIM, "shim", "shim", shim_fields),
  FORM (DW_FORM_OIL_NOMINAL, "oil", "oil-nominal", oil_nominal_fields),
  FORM (DW_FORM_OIL_MEASURED, "oil", "oil-measured", oil_measured_fields),
  FORM (DW_FORM_OIL_BLEND, "oil", "oil-blend", oil_blend_fields),
  FORM (DW_FORM_OIL_PART, "part", "oil-part", oil_part_fields),
  FORM (DW_FORM_GAS_SEALED, "gas", "gas-sealed", gas_sealed_fields),
  FORM (DW_FORM_GAS_VENTED, "gas", "gas-vented", gas_vented_fields),
  FORM (DW_FORM_SEAL, "seal", "seal", seal_fields),
  FORM (DW_FORM_SPRING, "spring", "spring", spring_fields),
  FORM (DW_FORM_LINKAGE, "linkage", "linkage", linkage_fields),
  FORM (DW_FORM_STANCE, "stance", "stance", stance_fields),
  [DW_FORM_PARTS] = { .element = "parts", .pattern = "parts" },
  FORM (DW_FORM_DRILL, "drill", "drill", drill_fields),
  FORM (DW_FORM_BOTTLE_NOMINAL, "oil", "bottle-nominal", bottle_nominal_fields),
  FORM (DW_FORM_BOTTLE_MEASURED, "oil", "bottle-measured", bottle_measured_fields),
  FORM (DW_FORM_BOTTLE_BLEND, "oil", "bottle-blend", bottle_blend_fields),
  FORM (DW_FORM_SPARE_PISTON, "piston", "spare-piston", spare_piston_fields),
};

/* clang-format on */

const dw_form *
dw_form_get (dw_form_id id)
{
  g_assert ((unsigned)id < DW_N_FORMS);
  return &forms[id];
}

const dw_field *
dw_form_find (const dw_form *form, const char *name)
{
  for (guint i = 0; i < form->n_fields; i++)
    if (g_str_equal (form->fields[i].name, name))
      return &form->fields[i];
  return NULL;
}

bool
dw_form_is_element (const char *name)
{
  for (int i = 0; i < DW_N_FORMS; i++)
    if (g_str_equal (forms[i].element, name))
      return true;
  return false;
}

bool
dw_field_set_default (const dw_field *field, void *values)
{
  void *at = (char *)values + field->offset;
  switch (field->kind)
    {
    case DW_FIELD_NUMBER:
    case DW_FIELD_COUNT:
      {
        const double fallback = dw_limit_get (field->limit)->fallback;
        if (field->optional)
          return true;
        if (isnan (fallback))
          return false;
        if (field->kind == DW_FIELD_NUMBER)
          *(double *)at = fallback;
        else
          *(int *)at = (int)fallback;
        return true;
      }
    case DW_FIELD_WORD:
      if (field->fallback < 0)
        return false;
      *(int *)at = field->fallback;
      return true;
    case DW_FIELD_FLAG:
      *(bool *)at = false;
      return true;
    case DW_FIELD_ID:
      return false;
    case DW_FIELD_TEXT:
    case DW_FIELD_REFERENCE:
    case DW_FIELD_VERSION:
      return true;
    }
  g_assert_not_reached ();
}

void
dw_form_set_defaults (dw_form_id id, void *values)
{
  const dw_form *form = dw_form_get (id);
  for (guint i = 0; i < form->n_fields; i++)
    dw_field_set_default (&form->fields[i], values);
}

const char *
dw_field_get_path (const dw_field *field)
{
  if (field->path != NULL)
    return field->path;
  if (field->kind == DW_FIELD_NUMBER || field->kind == DW_FIELD_COUNT)
    return dw_limit_get (field->limit)->path;
  return "";
}

char *
dw_field_range_text (const dw_field *field)
{
  if (field->words != NULL)
    {
      g_autofree char *list = g_strjoinv (", ", (char **)(guintptr)field->words);
      return g_strdup_printf ("one of %s", list);
    }

  const dw_limit *limit = dw_limit_get (field->limit);
  char low[DW_DECIMAL_SIZE];
  char high[DW_DECIMAL_SIZE];
  dw_decimal_format (limit->low, field->power, low);
  dw_decimal_format (limit->high, field->power, high);
  return g_strdup_printf ("%s to %s%s%s", low, high, *field->unit == '\0' ? "" : " ", field->unit);
}
