/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-piston-face.h
 * The piston's face to scale: where the holes are, how large, and how much land is left.
 *
 * The project file gives covered holes a circle (valve.hole_circle) but says nothing of where
 * open holes sit and at which angle any hole is. The rule here: covered holes stand evenly on
 * their circle, the first at the top. Open holes stand evenly on a circle of their own, turned by
 * half a step against the covered ones: in the middle of the ring between shim and edge when they
 * fit there with a fifth of a diameter of land on both sides; else evenly in the gaps between the
 * covered ones, on their circle. Without a shim nothing is covered, and all holes share a circle in
 * the middle between shaft and edge. A circle that is not the file's and too small for its holes
 * grows towards the edge as far as the land allows. Sizes of one kind take turns.
 *
 * Geometry in metres has its origin in the middle, y up. Pure functions.
 */
#pragma once

#include "model/dw-damper.h"

/**
 * [1] Least land, in diameters of the larger hole: a drill wanders into what is thinner (common
 * practice, no source).
 */
#define DW_FACE_LEAST_LAND 0.2

/** [m] Land that lacks no more than this is enough. */
#define DW_FACE_SAME 1e-9

#define DW_MAX_FACE_HOLES 512
#define DW_MAX_LIGAMENTS  64

/** One hole. */
typedef struct
{
  int group; /**< of the piston's holes */
  bool covered;
  double x;        /**< [m] centre */
  double y;        /**< [m] upwards */
  double diameter; /**< [m] */
} dw_face_hole;

/** What is too close to what. */
typedef enum
{
  DW_LIGAMENT_HOLES, /**< two holes are closer than a fifth of the larger diameter */
  DW_LIGAMENT_EDGE,  /**< a hole cuts the piston's edge */
  DW_LIGAMENT_SHAFT, /**< a hole cuts the shaft */
  DW_LIGAMENT_HUB    /**< a covered hole cuts the clamped hub of the shim */
} dw_ligament_kind;

/** One finding; of equal ones between two groups only the worst. */
typedef struct
{
  dw_ligament_kind kind;
  int hole;       /**< index of a hole */
  int other;      /**< index of the other hole; -1 = not a hole */
  double land;    /**< [m] that is left; < 0 = cut into */
  double advised; /**< [m] that there should be at least */
} dw_ligament;

/** The face. Plain value. */
typedef struct
{
  double bore_radius;   /**< [m] */
  double piston_radius; /**< [m] bore without clearance */
  double shaft_radius;  /**< [m] */
  bool has_shim;
  double hub_radius;  /**< [m] only if has_shim */
  double shim_radius; /**< [m] only if has_shim */
  int n_holes;        /**< holes that are placed */
  dw_face_hole holes[DW_MAX_FACE_HOLES];
  int n_ligaments;
  dw_ligament ligaments[DW_MAX_LIGAMENTS];
} dw_piston_face;

/** Place the holes of a damper and check the land between them. */
void dw_piston_face_make (const dw_damper *damper, dw_piston_face *face);

/** A finding in words, in millimetres, English: "holes 1.4 mm and 1.4 mm: 0.12 mm of land ..." */
void dw_ligament_text (const dw_piston_face *face, const dw_ligament *ligament, char *text,
                       size_t room);
