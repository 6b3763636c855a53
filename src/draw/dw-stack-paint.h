/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-stack-paint.h
 * Painting a shim stack that has been laid out.
 */
#pragma once

#include <cairo.h>

#include "draw/dw-stack-layout.h"

/** Paint it. No line is thinner than half a point, whatever the style: a copier would lose it. */
void dw_stack_paint (const dw_stack_layout *layout, const dw_chart_style *style, cairo_t *cr);
