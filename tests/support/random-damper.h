/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file random-damper.h
 * Dampers of every accepted kind, far wider than any car has: the laws must hold for all.
 */
#pragma once

#include "model/dw-damper.h"
#include "model/dw-limits.h"
#include "test-support.h"

/**
 * A damper that dw_damper_check() finds good.
 *
 * Oils from 2 to 20 000 cSt, some thinning; stacks from none to far too stiff; preload, leaking
 * seats, no clearance, all gas spaces.
 */
dw_damper random_damper (test_random *random);

/**
 * A damper with inputs at the ends of their accepted ranges, or anywhere between: absurd, but
 * dw_damper_check() finds it good.
 */
dw_damper extreme_damper (test_random *random);

/** A value at an end of a limit's range or anywhere between [unit of the input]. */
double extreme_value (test_random *random, dw_limit_id id);

/** A temperature for it [degC], -10 to 60. */
double random_temperature (test_random *random);
