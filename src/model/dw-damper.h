/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-damper.h
 * One damper as it is built: the parts, nothing computed.
 *
 * Plain values: copy by assignment, nothing to free. All numbers are SI,
 * temperatures are in degrees Celsius. Ranges and defaults: dw-limits.h.
 * Shaft speed > 0 is compression (shaft going in), < 0 rebound; where a
 * stroke is named, speeds and forces are positive magnitudes.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "model/dw-status.h"

#define DW_MAX_HOLE_GROUPS 16 /**< groups of equal holes in one piston */
#define DW_MAX_SHIMS       16 /**< entries (thickness, count) in one stack */
#define DW_MAX_OIL_PARTS   2  /**< oils in one blend */

/** [1] Most of the ring area that holes may take; past it the kinetic loss is not known. */
#define DW_LARGEST_HOLE_SHARE 0.5

typedef enum
{
  DW_COMPRESSION, /**< shaft going in */
  DW_REBOUND,     /**< shaft coming out */
  DW_N_STROKES
} dw_stroke;

/** What fills the space that the rod needs. */
typedef enum
{
  DW_GAS_BLADDER, /**< sealed volume behind a bladder */
  DW_GAS_VENTED,  /**< open to the air */
  DW_GAS_EMULSION /**< gas mixed into the oil */
} dw_gas_kind;

/** How the oil's viscosity is known. */
typedef enum
{
  DW_OIL_NOMINAL,  /**< silicone, by its nominal viscosity at 25 degC */
  DW_OIL_MEASURED, /**< two measured points */
  DW_OIL_BLEND     /**< two silicone oils mixed by volume */
} dw_oil_kind;

/** Cylinder and shaft. */
typedef struct
{
  double bore;   /**< [m] cylinder's inner diameter */
  double rod;    /**< [m] shaft diameter, < bore */
  double stroke; /**< [m] longest travel */
  bool has_filling;
  double filling; /**< [m3] oil that one damper takes, measured; only if has_filling, else 0 */
} dw_body;

/** Equal holes through the piston. */
typedef struct
{
  int count;       /**< 1..64 */
  double diameter; /**< [m] */
  bool covered;    /**< under the shim: flows only in the stroke that lifts it */
} dw_holes;

typedef struct
{
  double thickness;    /**< [m] length of the holes */
  double clearance;    /**< [m] radial gap to the bore; 0 = no leak */
  double eccentricity; /**< [1] offset of the piston / clearance, 0..1 */
  int n_holes;         /**< groups in use */
  dw_holes holes[DW_MAX_HOLE_GROUPS];
} dw_piston;

/** Equal leaves of the stack. */
typedef struct
{
  double thickness; /**< [m] of one leaf */
  int count;        /**< leaves, 1..64 */
  double modulus;   /**< [Pa] Young's modulus */
  double poisson;   /**< [1] Poisson's ratio */
  double strength;  /**< [Pa] stress up to which the material stays elastic */
} dw_shim;

/** Shim stack over the covered holes. With no shims the covered holes are open. */
typedef struct
{
  dw_stroke opens_on;    /**< stroke that lifts the shim */
  double hub_diameter;   /**< [m] clamped inside this */
  double outer_diameter; /**< [m] of the shim */
  double hole_circle;    /**< [m] diameter through the covered holes' centres */
  double lift_limit;     /**< [m] stop washer: most lift of the rim */
  double leaf_coupling;  /**< [1] 0 = leaves slide freely, 1 = stuck together */
  double preload;        /**< [Pa] pressure under the shim that just opens it */
  double seat_gap;       /**< [m] even gap that leaks when shut, from a measurement; 0 = tight */
  int n_shims;           /**< entries in use */
  dw_shim shims[DW_MAX_SHIMS]; /**< from the piston outwards */
} dw_valve;

/** One oil of a blend. */
typedef struct
{
  double viscosity; /**< [m2/s] nominal at 25 degC */
  double share;     /**< [1] by volume; the shares of a blend add to 1 */
} dw_oil_part;

typedef struct
{
  dw_oil_kind kind;
  double viscosity;            /**< [m2/s] nominal at 25 degC; DW_OIL_NOMINAL only */
  double point_temperature[2]; /**< [degC] rising; DW_OIL_MEASURED only */
  double point_viscosity[2];   /**< [m2/s] falling; DW_OIL_MEASURED only */
  double density;              /**< [kg/m3] at 25 degC; DW_OIL_MEASURED only */
  int n_parts;                 /**< 2 for DW_OIL_BLEND, else 0 */
  dw_oil_part parts[DW_MAX_OIL_PARTS];
  bool has_thinning;        /**< the oil thins at high shear rate (Carreau) */
  double thinning_rate;     /**< [1/s] critical shear rate; only if has_thinning */
  double thinning_exponent; /**< [1] power-law exponent n, 0 < n <= 1; only if has_thinning */
} dw_oil;

typedef struct
{
  dw_gas_kind kind;
  double pressure; /**< [Pa] absolute; of the outside air when vented */
  double volume;   /**< [m3] of the gas at that pressure; without meaning when vented */
} dw_gas;

typedef struct
{
  double rate;        /**< [N/m] */
  double free_length; /**< [m] */
  double preload;     /**< [m] compression at full droop */
} dw_spring;

/** How the car stands on this axle; told on the sheet, no part of the force. */
typedef struct
{
  bool has_ride_height;
  double ride_height; /**< [m] chassis above the ground, ready to run; only if has_ride_height,
                           else 0 */
  bool has_droop;
  double droop; /**< [m] wheel travel from there down to the stop; only if has_droop, else 0 */
} dw_stance;

/** A damper with its spring and linkage; stands for left and right alike. */
typedef struct
{
  dw_body body;
  dw_piston piston;
  dw_valve valve;
  dw_oil oil;
  dw_gas gas;
  double seal_friction; /**< [N] constant, against the motion */
  dw_spring spring;
  double motion_ratio; /**< [1] damper travel per wheel travel */
  dw_stance stance;
} dw_damper;

/** A usable damper: plain piston with 6 holes of 1.3 mm, 450 cSt. Every call gives the same. */
dw_damper dw_damper_defaults (void);

/** Field by field, used entries and given values only; no NaN is equal to anything. */
bool dw_damper_equal (const dw_damper *a, const dw_damper *b);

/** The same for an oil. */
bool dw_oil_equal (const dw_oil *a, const dw_oil *b);

/** The same for a piston. */
bool dw_piston_equal (const dw_piston *a, const dw_piston *b);

/** Whether any of its holes is covered. */
bool dw_piston_has_covered (const dw_piston *piston);

/**
 * Everything that is wrong with a damper: ranges first, then how the parts fit.
 *
 * Paths are "body.bore", "piston.holes.diameter" (index = group),
 * "valve.shim.thickness" (index = shim), "oil.part.share" (index = part) and
 * the like, as in dw-limits.h; texts give value and allowed range in trade
 * units (mm, kPa, cSt).
 *
 * @param findings  filled up to @p capacity; may be NULL when capacity is 0
 * @return          how many there are (may exceed capacity); 0 = good
 */
size_t dw_damper_check (const dw_damper *damper, dw_error *findings, size_t capacity);

/** [m2] ring area on the rod side, pi/4 (bore^2 - rod^2). */
double dw_damper_ring_area (const dw_damper *damper);

/** [m2] area of the shaft, pi/4 rod^2. */
double dw_damper_rod_area (const dw_damper *damper);

/** How many leaves the stack has; 0 without shims. */
int dw_valve_leaf_count (const dw_valve *valve);

/** "compression" or "rebound". */
const char *dw_stroke_name (dw_stroke stroke);
