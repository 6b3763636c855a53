/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test-support.h"

#include <errno.h>
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

struct test_table
{
  size_t n_columns;
  size_t n_rows; /* the header is row 0 of fields and not counted here */
  size_t n_fields;
  char **fields; /* owned, row by row */
};

/* Tests without memory are over; saying so keeps the callers short. */
static void *
get_memory (void *old, size_t size)
{
  void *memory = realloc (old, size);
  if (memory == NULL)
    ck_abort_msg ("out of memory for %zu bytes", size);
  return memory;
}

void
test_assert_close (const char *file, int line, const char *expression, double actual,
                   double expected, double rel, double abs, const char *why)
{
  /* A part of infinity is infinity and would allow everything. */
  const double allowed = isinf (expected) ? 0.0 : fmax (abs, rel * fabs (expected));
  if (actual == expected || fabs (actual - expected) <= allowed)
    return;

  ck_abort_msg ("%s:%d: %s is %.17g, not %.17g: off by %.3g, allowed %.3g; %s (DW_SEED=%llu)", file,
                line, expression, actual, expected, actual - expected, allowed, why,
                (unsigned long long)test_seed ());
}

uint64_t
test_seed (void)
{
  const char *text = getenv ("DW_SEED");
  if (text == NULL || *text == '\0')
    return 1;

  char *end = NULL;
  errno = 0;
  const unsigned long long seed = strtoull (text, &end, 10);
  if (errno != 0 || *end != '\0' || *text == '-')
    ck_abort_msg ("DW_SEED is '%s', not a whole number", text);
  return seed;
}

uint64_t
test_random_next (test_random *random)
{
  /* splitmix64: every seed, 0 too, gives a full period. */
  random->state += UINT64_C (0x9e3779b97f4a7c15);
  uint64_t z = random->state;
  z = (z ^ (z >> 30)) * UINT64_C (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * UINT64_C (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

test_random
test_random_new (uint64_t salt)
{
  /* The salt goes through one step first: neighbours must not give shifted copies. */
  test_random mix = { salt };
  return (test_random){ test_seed () ^ test_random_next (&mix) };
}

double
test_random_uniform (test_random *random, double low, double high)
{
  const double unit = (double)(test_random_next (random) >> 11) * 0x1p-53;
  const double value = low + (high - low) * unit;
  return value < high ? value : low; /* rounding may reach high */
}

double
test_random_log_uniform (test_random *random, double low, double high)
{
  const double value = exp (test_random_uniform (random, log (low), log (high)));
  return fmin (fmax (value, low), nextafter (high, low));
}

int
test_random_int (test_random *random, int low, int high)
{
  const uint64_t n = (uint64_t)((int64_t)high - low) + 1;
  return (int)(low + (int64_t)(test_random_next (random) % n));
}

static char *
join_path (const char *folder, const char *name)
{
  const size_t size = strlen (folder) + strlen (name) + 2;
  char *path = get_memory (NULL, size);
  snprintf (path, size, "%s/%s", folder, name);
  return path;
}

char *
test_source_path (const char *name)
{
  return join_path (TEST_SOURCE_DIR, name);
}

char *
test_data_path (const char *name)
{
  const char *folder = getenv ("DW_TEST_DATA");
  return join_path (folder != NULL ? folder : TEST_SOURCE_DIR "/tests/data", name);
}

char *
test_file_read (const char *path, size_t *length)
{
  FILE *file = fopen (path, "rb");
  if (file == NULL)
    ck_abort_msg ("cannot open %s: %s", path, strerror (errno));

  char *text = NULL;
  size_t used = 0, room = 0;
  do
    {
      room += 65536;
      text = get_memory (text, room + 1);
      used += fread (text + used, 1, room - used, file);
    }
  while (used == room);
  const bool broken = ferror (file) != 0;
  fclose (file);
  if (broken)
    ck_abort_msg ("cannot read %s", path);

  text[used] = '\0';
  if (length != NULL)
    *length = used;
  return text;
}

static void
add_field (test_table *table, char *field)
{
  table->fields = get_memory (table->fields, (table->n_fields + 1) * sizeof table->fields[0]);
  table->fields[table->n_fields++] = field;
}

/* One field from *text, which is left on the delimiter behind it. */
static char *
read_field (const char **text)
{
  const char *p = *text;
  const bool quoted = *p == '"';
  char *field = get_memory (NULL, (quoted ? strlen (p) : strcspn (p, ",\r\n")) + 1);
  size_t n = 0;

  if (quoted)
    p++;
  while (*p != '\0')
    {
      if (quoted && p[0] == '"' && p[1] == '"')
        p++; /* "" inside quotes is one quote */
      else if (quoted ? *p == '"' : (*p == ',' || *p == '\n' || *p == '\r'))
        break;
      field[n++] = *p++;
    }
  if (quoted && *p++ != '"')
    ck_abort_msg ("quote without end: %s", field);
  field[n] = '\0';
  *text = p;
  return get_memory (field, n + 1);
}

static size_t
read_row (test_table *table, const char **text)
{
  size_t n = 0;
  bool more = true;
  while (more)
    {
      add_field (table, read_field (text));
      n++;
      more = **text == ',';
      if (more)
        ++*text;
    }
  *text += strspn (*text, "\r");
  if (**text != '\n' && **text != '\0')
    ck_abort_msg ("text behind a quoted field: %.20s", *text);
  return n;
}

test_table *
test_table_parse (const char *text)
{
  test_table *table = get_memory (NULL, sizeof *table);
  *table = (test_table){ 0 };

  while (*text != '\0')
    {
      if (*text == '#' || *text == '\n')
        {
          text += strcspn (text, "\n");
          text += *text == '\n';
          continue;
        }
      const size_t n = read_row (table, &text);
      text += *text == '\n';
      if (table->n_columns == 0)
        table->n_columns = n;
      else if (n != table->n_columns)
        ck_abort_msg ("row %zu has %zu fields, the header %zu", table->n_rows + 1, n,
                      table->n_columns);
      else
        table->n_rows++;
    }
  return table;
}

test_table *
test_table_read (const char *name)
{
  char *path = test_data_path (name);
  char *text = test_file_read (path, NULL);
  test_table *table = test_table_parse (text);
  free (text);
  free (path);
  return table;
}

void
test_table_free (test_table *table)
{
  if (table == NULL)
    return;
  for (size_t i = 0; i < table->n_fields; i++)
    free (table->fields[i]);
  free (table->fields);
  free (table);
}

size_t
test_table_n_rows (const test_table *table)
{
  return table->n_rows;
}

const char *
test_table_text (const test_table *table, size_t row, const char *column)
{
  if (row >= table->n_rows)
    ck_abort_msg ("row %zu of %zu", row, table->n_rows);
  for (size_t i = 0; i < table->n_columns; i++)
    if (strcmp (table->fields[i], column) == 0)
      return table->fields[(row + 1) * table->n_columns + i];
  ck_abort_msg ("no column '%s'", column);
  return "";
}

double
test_table_number (const test_table *table, size_t row, const char *column)
{
  const char *text = test_table_text (table, row, column);
  char *end = NULL;

  /* The test that reads may have switched to a locale with a decimal comma. */
  const locale_t c_locale = newlocale (LC_ALL_MASK, "C", (locale_t)0);
  const locale_t old = uselocale (c_locale);
  const double value = strtod (text, &end);
  uselocale (old);
  freelocale (c_locale);

  if (end == text || *end != '\0')
    ck_abort_msg ("row %zu, column '%s': '%s' is not a number", row, column, text);
  return value;
}

bool
test_use_locale (const char *name)
{
  if (setlocale (LC_ALL, name) != NULL)
    return true;
  if (getenv ("DW_REQUIRE_LOCALES") != NULL)
    ck_abort_msg ("no locale %s", name);
  return false;
}

double
test_now (void)
{
  struct timespec t;
  clock_gettime (CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static int
compare_numbers (const void *a, const void *b)
{
  const double x = *(const double *)a;
  const double y = *(const double *)b;
  return (x > y) - (x < y);
}

void
test_sort (double *values, size_t n)
{
  qsort (values, n, sizeof *values, compare_numbers);
}

int
run_suite (Suite *suite)
{
  SRunner *runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);
  const int n_failed = srunner_ntests_failed (runner);
  const int n_run = srunner_ntests_run (runner);
  srunner_free (runner);

  if (n_run == 0)
    printf ("no test was run\n");
  if (n_failed != 0)
    printf ("random numbers of this run: DW_SEED=%llu\n", (unsigned long long)test_seed ());
  return n_failed == 0 && n_run > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
