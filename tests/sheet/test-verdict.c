/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "test-support.h"
#include "sheet/dw-verdict.h"

static const struct
{
  double compression[DW_N_SPEEDS], rebound[DW_N_SPEEDS];
  const char *text;
} cases[] = {
  { { 0.0, 0.4, -0.4 }, { 0.1, 0.0, 0.0 }, "Compression the same. Rebound the same." },
  { { 0.0, 0.0, 0.0 },
    { 0.0, -2.61, -10.6 },
    "Compression the same. Rebound the same at low speed, 2.6 % softer at middle speed, 11 % "
    "softer "
    "at high speed." },
  { { 12.4, 3.0, 0.0 },
    { 0.0, 0.0, 0.0 },
    "Compression 12 % firmer at low speed, 3.0 % firmer at middle speed, the same at high speed. "
    "Rebound the same." },
  { { NAN, 0.0, 0.0 },
    { 0.0, 0.0, 0.0 },
    "Compression not to be compared at low speed, the same at middle speed, the same at high "
    "speed. "
    "Rebound the same." },
};

START_TEST (strokes_are_judged_apart)
{
  dw_comparison c = { 0 };
  memcpy (c.force[DW_COMPRESSION], cases[_i].compression, sizeof cases[_i].compression);
  memcpy (c.force[DW_REBOUND], cases[_i].rebound, sizeof cases[_i].rebound);
  g_autofree char *text = dw_verdict_text (&c);
  ck_assert_str_eq (text, cases[_i].text);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("window/verdict");
  TCase *tc = tcase_create ("verdict");
  tcase_add_loop_test (tc, strokes_are_judged_apart, 0, N_ENTRIES (cases));
  suite_add_tcase (s, tc);
  return run_suite (s);
}
