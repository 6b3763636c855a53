/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-shim-material.h
 * What shims are usually made of, as starting values. Constant data: any thread.
 */
#pragma once

#include <glib.h>

#include "model/dw-damper.h"

G_BEGIN_DECLS

typedef enum
{
  DW_MATERIAL_POLYESTER, /**< polyester film */
  DW_MATERIAL_STEEL,     /**< hard rolled steel strip */
  DW_MATERIAL_OWN,       /**< anything else: values of its own */
  DW_N_MATERIALS
} dw_shim_material;

/** Give a shim the values of a material; DW_MATERIAL_OWN leaves it alone. */
void dw_shim_material_apply (dw_shim_material material, dw_shim *shim);

/** The material that has the values of a shim. */
dw_shim_material dw_shim_material_of (const dw_shim *shim);

/** Of a shim that is added where there is none: 0.15 mm of polyester film, one leaf. */
dw_shim dw_shim_material_first (void);

G_END_DECLS
