/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/dw-swap.h"

#include "test-support.h"

/* Sizes are in tenths of a millimetre and stand for the kind, negative ones are the other side. */
typedef struct
{
  int n_a;
  int a[4][2]; /* count, size */
  int n_b;
  int b[4][2];
  int n;
  int steps[4][4]; /* how many of which size go, how many of which come */
  const char *why;
} swap_row;

static const swap_row rows[] = {
  { 0, { { 0 } }, 0, { { 0 } }, 0, { { 0 } }, "nothing" },
  { 2, { { 4, 15 }, { 2, 12 } }, 2, { { 2, 12 }, { 4, 15 } }, 0, { { 0 } }, "another order" },
  { 1, { { 4, 15 } }, 1, { { 4, 16 } }, 1, { { 4, 15, 4, 16 } }, "all drilled" },
  { 1, { { 4, 15 } }, 2, { { 2, 15 }, { 2, 16 } }, 1, { { 2, 15, 2, 16 } }, "two of four drilled" },
  { 2, { { 4, 15 }, { 2, 12 } }, 1, { { 6, 15 } }, 1, { { 2, 12, 2, 15 } }, "made one size" },
  { 1,
    { { 4, 12 } },
    2,
    { { 2, 13 }, { 2, 15 } },
    2,
    { { 2, 12, 2, 13 }, { 2, 12, 2, 15 } },
    "one size becomes two" },
  { 2,
    { { 4, 12 }, { 2, 10 } },
    2,
    { { 2, 11 }, { 4, 13 } },
    2,
    { { 2, 10, 2, 11 }, { 4, 12, 4, 13 } },
    "small for small, large for large" },
  { 2,
    { { 4, 15 }, { 2, 12 } },
    2,
    { { 4, 13 }, { 2, 16 } },
    2,
    { { 2, 12, 2, 16 }, { 4, 15, 4, 13 } },
    "as many for as many" },
  { 1, { { 4, 15 } }, 1, { { 6, 15 } }, 1, { { 0, 0, 2, 15 } }, "two added" },
  { 1, { { 4, 15 } }, 0, { { 0 } }, 1, { { 4, 15, 0, 0 } }, "all taken out" },
  { 1, { { 4, 15 } }, 1, { { 6, 10 } }, 1, { { 4, 15, 6, 10 } }, "another piston" },
  { 2,
    { { 4, 15 }, { 1, 10 } },
    1,
    { { 1, 11 } },
    2,
    { { 1, 10, 1, 11 }, { 4, 15, 0, 0 } },
    "one swapped, four taken out" },
  { 2,
    { { 4, 15 }, { 2, 12 } },
    2,
    { { 4, 15 }, { 2, -12 } },
    1,
    { { 2, 12, 2, -12 } },
    "put on the other side" },
  { 1,
    { { 4, 15 } },
    1,
    { { 4, -16 } },
    2,
    { { 4, 15, 0, 0 }, { 0, 0, 4, -16 } },
    "nothing in common with what is on the other side" },
};

static void
fill (dw_part *parts, int n, const int list[4][2])
{
  for (int i = 0; i < n; i++)
    {
      const int size = list[i][1];
      parts[i] = (dw_part){ size, size < 0, (size < 0 ? -size : size) * 1e-4, list[i][0] };
    }
}

START_TEST (the_steps_are_those_of_a_builder)
{
  const swap_row *row = &rows[_i];
  dw_part a[4];
  dw_part b[4];
  dw_swap out[8];
  fill (a, row->n_a, row->a);
  fill (b, row->n_b, row->b);
  const size_t n = dw_swap_find (a, row->n_a, b, row->n_b, out);
  ck_assert_msg (n == (size_t)row->n, "%zu steps: %s", n, row->why);
  for (size_t i = 0; i < n; i++)
    {
      const int from = out[i].from < 0 ? 0 : a[out[i].from].kind;
      const int to = out[i].to < 0 ? 0 : b[out[i].to].kind;
      ck_assert_msg (out[i].n_from == row->steps[i][0] && from == row->steps[i][1]
                         && out[i].n_to == row->steps[i][2] && to == row->steps[i][3],
                     "step %zu: %d of %d to %d of %d: %s", i, out[i].n_from, from, out[i].n_to, to,
                     row->why);
    }
}
END_TEST

/* Whatever the lots: what a has, less what goes, more what comes, is what b has. */
START_TEST (the_steps_lead_from_a_to_b)
{
  test_random random = test_random_new ((uint64_t)_i);
  enum
  {
    KINDS = 24
  };
  int balance[KINDS] = { 0 };
  dw_part lots[2][DW_SWAP_MAX_PARTS];
  int n[2];
  for (int l = 0; l < 2; l++)
    {
      bool used[KINDS] = { false };
      n[l] = test_random_int (&random, 0, DW_SWAP_MAX_PARTS);
      for (int i = 0; i < n[l]; i++)
        {
          int kind = test_random_int (&random, 0, KINDS - 1);
          while (used[kind])
            kind = (kind + 1) % KINDS;
          used[kind] = true;
          const int count = test_random_int (&random, 1, 5);
          lots[l][i] = (dw_part){ kind, kind % 2, (1 + kind / 2) * 1e-4, count };
          balance[kind] += l == 0 ? count : -count;
        }
    }
  dw_swap out[2 * DW_SWAP_MAX_PARTS];
  const size_t n_steps = dw_swap_find (lots[0], n[0], lots[1], n[1], out);
  ck_assert_uint_le (n_steps, (size_t)(n[0] + n[1]));
  for (size_t i = 0; i < n_steps; i++)
    {
      ck_assert (out[i].from >= 0 || out[i].to >= 0);
      if (out[i].from >= 0)
        balance[lots[0][out[i].from].kind] -= out[i].n_from;
      if (out[i].to >= 0)
        balance[lots[1][out[i].to].kind] += out[i].n_to;
    }
  for (int k = 0; k < KINDS; k++)
    ck_assert_msg (balance[k] == 0, "kind %d is off by %d (DW_SEED=%llu)", k, balance[k],
                   (unsigned long long)test_seed ());
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("study/dw-swap");
  TCase *tc = tcase_create ("swap");
  tcase_add_loop_test (tc, the_steps_are_those_of_a_builder, 0, N_ENTRIES (rows));
  tcase_add_loop_test (tc, the_steps_lead_from_a_to_b, 0, 200);
  suite_add_tcase (suite, tc);
  return run_suite (suite);
}
