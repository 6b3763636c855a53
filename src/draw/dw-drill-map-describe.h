/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-drill-map-describe.h
 * A map of drill sizes in words, for screen readers and for the description of an exported file.
 */
#pragma once

#include "draw/dw-drill-map.h"

/**
 * What is shaded and over which sizes, how many choices there are, what is now, and the chosen sizes
 * with their values. The sentences are those of the map's labels.
 *
 * @return  caller frees with g_free()
 */
char *dw_drill_map_describe (const dw_drill_map *map);
