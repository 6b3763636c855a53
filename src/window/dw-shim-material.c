/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/dw-shim-material.h"

typedef struct
{
  double modulus;  /* [Pa] */
  double poisson;  /* [1] */
  double strength; /* [Pa] */
} properties;

/* Handbook values, from memory: biaxially drawn polyester film 4 GPa, 0.38, straight up to about
 * 100 MPa, the defaults of the project file too; hard rolled carbon steel strip 200 GPa, 0.3,
 * straight up to about 1000 MPa. */
static const properties materials[] = {
  [DW_MATERIAL_POLYESTER] = { 4.0e9, 0.38, 100e6 },
  [DW_MATERIAL_STEEL] = { 200e9, 0.3, 1000e6 },
};

void
dw_shim_material_apply (dw_shim_material material, dw_shim *shim)
{
  if ((unsigned)material >= G_N_ELEMENTS (materials))
    return;
  shim->modulus = materials[material].modulus;
  shim->poisson = materials[material].poisson;
  shim->strength = materials[material].strength;
}

dw_shim_material
dw_shim_material_of (const dw_shim *shim)
{
  for (unsigned i = 0; i < G_N_ELEMENTS (materials); i++)
    if (shim->modulus == materials[i].modulus && shim->poisson == materials[i].poisson
        && shim->strength == materials[i].strength)
      return (dw_shim_material)i;
  return DW_MATERIAL_OWN;
}

dw_shim
dw_shim_material_first (void)
{
  dw_shim shim = { .thickness = 0.15e-3, .count = 1 };
  dw_shim_material_apply (DW_MATERIAL_POLYESTER, &shim);
  return shim;
}
