/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-filling.h
 * Oil and gas space: describing them in another way, so that they stay good.
 *
 * Pure functions: any thread.
 */
#pragma once

#include <stdbool.h>

#include "model/dw-damper.h"

/**
 * Describe an oil in another way. The viscosity at 25 degC stays what it was, to three digits:
 * two points are put on its line, and a blend starts with two equal oils.
 */
void dw_filling_set_oil_kind (dw_oil *oil, dw_oil_kind kind);

/** Let an oil thin or not. Values that it does not have yet start at 1e5 1/s and 0.8. */
void dw_filling_set_thinning (dw_oil *oil, bool thins);

/** Another gas space; a pressure or volume that it could not have gets the usual one. */
void dw_filling_set_gas_kind (dw_gas *gas, dw_gas_kind kind);
