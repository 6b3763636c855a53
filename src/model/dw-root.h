/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file dw-root.h
 * Root of a function of one variable between two points of opposite sign.
 */
#pragma once

/** A function to find the root of; @p data is the caller's. Argument [any unit], value [any unit]. */
typedef double (*dw_root_function) (double x, void *data);

/**
 * Root by Chandrupatla's method (Adv. Eng. Softw. 28:145, 1997): bisection, or inverse
 * quadratic interpolation where that is safe. Goes on until the bracket cannot be halved.
 *
 * @param low   [1] one end
 * @param high  [1] the other; f(low) and f(high) of opposite sign, or one of them 0
 * @return      [1] the root; the end with the smaller value when the signs are equal
 */
double dw_root_bracketed (dw_root_function f, void *data, double low, double high);
