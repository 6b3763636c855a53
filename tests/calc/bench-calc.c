/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long dampcalc takes from start to end; a line "name value unit" for each measurement. */

#include <glib.h>
#include <stdio.h>
#include <stdlib.h>

#include "test-support.h"

#define N_RUNS 20

static const struct
{
  const char *name;
  const char *arguments;
} rows[] = {
  { "calc-version", "--version" },
  { "calc-force", "force club-final.dampwright" },
  { "calc-force-2000-csv", "force club-final.dampwright --to 5 --count 2000 --format csv" },
};

/* Milliseconds of one run, less than 0 when it failed. */
static double
run (const char *arguments)
{
  g_autofree char *program = g_shell_quote (TEST_CALC_PROGRAM);
  g_autofree char *line = g_strdup_printf ("%s %s", program, arguments);
  g_auto (GStrv) argv = NULL;
  int status = 0;
  if (!g_shell_parse_argv (line, NULL, &argv, NULL))
    return -1.0;
  const gint64 start = g_get_monotonic_time ();
  if (!g_spawn_sync (TEST_SOURCE_DIR "/demo", argv, NULL, G_SPAWN_STDOUT_TO_DEV_NULL, NULL, NULL,
                     NULL, NULL, &status, NULL)
      || status != 0)
    return -1.0;
  return (double)(g_get_monotonic_time () - start) / 1e3;
}

int
main (void)
{
  for (size_t i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double times[N_RUNS];
      for (int k = 0; k < N_RUNS; k++)
        {
          times[k] = run (rows[i].arguments);
          if (times[k] < 0.0)
            {
              fprintf (stderr, "bench-calc: dampcalc %s failed\n", rows[i].arguments);
              return EXIT_FAILURE;
            }
        }
      test_sort (times, N_RUNS);
      printf ("%s %.2f ms\n", rows[i].name, (times[N_RUNS / 2 - 1] + times[N_RUNS / 2]) / 2.0);
    }
  return EXIT_SUCCESS;
}
