/* SPDX-License-Identifier: GPL-3.0-or-later */
/**
 * @file test-support.h
 * What the tests of every layer share: tolerances, random numbers, reference
 * tables, the way to the test data and the main function's body.
 *
 * C library and Check only, so that the model's tests can use it. Everything
 * that cannot go on ends the running test with a message; nothing returns an
 * error. For one thread.
 */
#pragma once

#include <check.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/** Number of entries of an array, as an int for tcase_add_loop_test(). */
#define N_ENTRIES(array) ((int)(sizeof (array) / sizeof (array)[0]))

/**
 * Fail the test unless |actual - expected| <= max (abs, rel |expected|).
 *
 * A NaN on either side fails; equal infinities are equal. The message has
 * both numbers in full, the difference, what was allowed, and @p why.
 *
 * @param why  what the number is and why this tolerance
 */
#define assert_close(actual, expected, rel, abs, why)                                              \
  test_assert_close (__FILE__, __LINE__, #actual, (actual), (expected), (rel), (abs), (why))

void test_assert_close (const char *file, int line, const char *expression, double actual,
                        double expected, double rel, double abs, const char *why);

/** Random numbers that are the same on every machine (splitmix64). Plain value. */
typedef struct
{
  uint64_t state;
} test_random;

/** The seed of this run: the environment's DW_SEED, else 1. */
uint64_t test_seed (void);

/**
 * A generator for this run's seed. When a test fails, the message or the end
 * of the run names the seed.
 *
 * @param salt  makes different tests see different numbers; _i of a loop test is fine
 */
test_random test_random_new (uint64_t salt);

/** All 64 bits. */
uint64_t test_random_next (test_random *random);

/** Even in [low, high). */
double test_random_uniform (test_random *random, double low, double high);

/** Even in the logarithm, in [low, high); both > 0. */
double test_random_log_uniform (test_random *random, double low, double high);

/** One of low, low + 1, ..., high. */
int test_random_int (test_random *random, int low, int high);

/** Absolute path of a file of the source tree, "demo/x.dampwright"; caller frees. */
char *test_source_path (const char *name);

/** Absolute path of a file in tests/data (or in $DW_TEST_DATA when set); caller frees. */
char *test_data_path (const char *name);

/** The bytes of a file, with a NUL behind them; caller frees. @p length may be NULL. */
char *test_file_read (const char *path, size_t *length);

/** A reference table in CSV: one header line, quoted fields, lines with # in front are skipped. */
typedef struct test_table test_table;

/** Read a table of tests/data. Free with test_table_free(). */
test_table *test_table_read (const char *name);

/** Read a table that is already in memory. Free with test_table_free(). */
test_table *test_table_parse (const char *text);

/** NULL is allowed. */
void test_table_free (test_table *table);

/** Rows without the header. */
size_t test_table_n_rows (const test_table *table);

/** A field by its column's name; borrowed. A column that does not exist ends the test. */
const char *test_table_text (const test_table *table, size_t row, const char *column);

/** The same as a number with a decimal point, whatever the locale. Other text ends the test. */
double test_table_number (const test_table *table, size_t row, const char *column);

/**
 * Switch this process to a locale such as "de_DE.UTF-8".
 *
 * tests/run.sh makes de_DE, es_ES and fr_FR and sets DW_REQUIRE_LOCALES; then
 * one that is not there ends the test.
 *
 * @return  false: not there, nothing was switched, the test has nothing to show
 */
bool test_use_locale (const char *name);

/** [s] On a clock that only goes forward, for benchmarks. */
double test_now (void);

/** Put numbers in order, least first, for medians. */
void test_sort (double *values, size_t n);

/** Run under the environment's CK_* settings; frees @p suite. Returns what main() returns. */
int run_suite (Suite *suite);
