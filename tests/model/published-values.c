/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every row of tests/data/checks.csv whose calculation the model contains; the row names its
 * published source. Rows that the model does not contain are listed here with the reason, so a
 * new row cannot be overlooked. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks-table.h"
#include "model/dw-drill.h"
#include "model/dw-figures.h"
#include "model/dw-film.h"
#include "model/dw-gas.h"
#include "model/dw-plate.h"
#include "model/dw-stack.h"
#include "model/dw-units.h"

static double
in (const check_row *row, const char *name)
{
  return check_input (row, name);
}

/* ---- holes ---- */

static dw_hole_flow
hole (double mu, double d, double length)
{
  /* any density: only the viscous terms are read */
  const dw_fluid fluid = { .dynamic = mu,
                           .density = 970.0,
                           .viscosity = mu / 970.0,
                           .thinning_rate = INFINITY,
                           .thinning_exponent = 1.0 };
  dw_hole_flow flow;
  dw_hole_flow_init (&flow, &fluid, d, length, 1, 0.0, 0.0);
  return flow;
}

static double
hagen_poiseuille (const check_row *r)
{
  const dw_hole_flow f = hole (in (r, "mu_Pa_s"), in (r, "d_m"), in (r, "L_m"));
  return f.pipe * in (r, "Q_m3_s") / f.area;
}

static double
sampson (const check_row *r)
{
  const dw_hole_flow f = hole (in (r, "mu_Pa_s"), in (r, "d_m"), 1e-3);
  return f.ends * in (r, "Q_m3_s") / f.area;
}

static double
dagan (const check_row *r)
{
  const dw_hole_flow f = hole (in (r, "mu_Pa_s"), in (r, "d_m"), in (r, "L_m"));
  /* so slow that the kinetic term is nothing */
  const double v = 1e-7;
  return dw_hole_drop_at (&f, v, 0.0, 1.0).pressure / v * in (r, "Q_m3_s") / f.area;
}

static double
dagan_k1 (const check_row *r)
{
  const dw_hole_flow f = hole (0.97, 1e-3, in (r, "L_over_d") * 1e-3);
  const double v = 1e-7;
  const double head = f.half_density * v * v;
  return dw_hole_drop_at (&f, v, 0.0, 1.0).pressure / head * v * f.re_per_velocity;
}

static double
sampson_cd (const check_row *r)
{
  const dw_hole_flow f = hole (0.97, 1e-3, 1e-3);
  const double v = in (r, "Re") / f.re_per_velocity;
  return v / sqrt (f.ends * v / f.half_density);
}

static double
churchill (const check_row *r)
{
  return dw_churchill_friction (in (r, "Re"), in (r, "eD"));
}

/* ---- leak ---- */

static double
annulus (const check_row *r)
{
  return dw_annulus_flow (in (r, "D_m"), in (r, "c_m"), in (r, "eps"), in (r, "L_m"),
                          in (r, "mu_Pa_s"), in (r, "dp_Pa"));
}

static double
annulus_exact (const check_row *r)
{
  /* the exact concentric annulus: the thin-gap form with the mean diameter meets it to 1.2e-6 */
  return dw_annulus_flow (in (r, "Ro_m") + in (r, "Ri_m"), in (r, "Ro_m") - in (r, "Ri_m"), 0.0,
                          in (r, "L_m"), in (r, "mu_Pa_s"), in (r, "dp_Pa"));
}

static double
annulus_couette (const check_row *r)
{
  /* the source lets the wall move against the flow, a piston's wall moves with it */
  const double c = in (r, "c_m");
  const dw_leak leak = dw_leak_make (in (r, "D_m") + c, c, 0.0, in (r, "L_m"), in (r, "mu_Pa_s"));
  return leak.conductance * in (r, "dp_Pa") - leak.dragged * in (r, "U_m_s");
}

/* ---- plate ---- */

static const struct
{
  const char *calc;
  char letter;
  int subscript;
} constants[] = { { "roark_C1", 'c', 1 },   { "roark_C2", 'c', 2 },   { "roark_C3", 'c', 3 },
                  { "roark_C4", 'c', 4 },   { "roark_C5", 'c', 5 },   { "roark_C6", 'c', 6 },
                  { "roark_C7", 'c', 7 },   { "roark_C8", 'c', 8 },   { "roark_C9", 'c', 9 },
                  { "roark_L3", 'l', 3 },   { "roark_L6", 'l', 6 },   { "roark_L9", 'l', 9 },
                  { "roark_L11", 'l', 11 }, { "roark_L14", 'l', 14 }, { "roark_L17", 'l', 17 } };

static double
roark_constant (const check_row *r)
{
  for (size_t i = 0; i < sizeof constants / sizeof constants[0]; i++)
    if (strcmp (r->calc, constants[i].calc) == 0)
      {
        const bool is_c = constants[i].letter == 'c';
        const double x = in (r, is_c ? "b_over_a" : "r0_over_a");
        const dw_plate_constants k = dw_plate_constants_make (is_c ? x : 0.3, is_c ? 0.9 : x,
                                                              in (r, "nu"));
        return is_c ? k.c[constants[i].subscript] : k.l[constants[i].subscript];
      }
  return NAN;
}

static dw_plate
unit_plate (const check_row *r)
{
  return (dw_plate){ in (r, "b_over_a"), 1.0, 1.0, in (r, "nu") };
}

/* Roark counts deflection and moment against the load. */
static double
roark_2l (const check_row *r)
{
  const dw_plate plate = unit_plate (r);
  const dw_plate_answer a = dw_plate_pressure_outside (&plate, in (r, "r0_over_a"), 1.0);
  if (strcmp (r->calc, "roark_2l_Ky") == 0)
    return -a.rim;
  return strcmp (r->calc, "roark_2l_Ktheta_a") == 0 ? -a.slope : -a.root_moment;
}

static double
roark_1l (const check_row *r)
{
  const dw_plate plate = unit_plate (r);
  return -dw_plate_ring_line (&plate, in (r, "r0_over_a"), 1.0).rim;
}

static double
roark_2l_deflection (const check_row *r)
{
  const double t = in (r, "t_m");
  const double nu = in (r, "nu");
  const dw_plate plate = { in (r, "b_m"), in (r, "a_m"),
                           in (r, "E_Pa") * t * t * t / (12.0 * (1.0 - nu * nu)), nu };
  return -dw_plate_pressure_outside (&plate, in (r, "r0_m"), in (r, "q_Pa")).rim;
}

/* True over linear rim deflection under a pressure that would lift the linear rim to w/t. */
static double
fvk_ratio (const check_row *r)
{
  const double nu = in (r, "nu");
  const double t = 0.01; /* with a = 1, E = 12 (1 - nu^2)/t^3 gives D = 1 */
  const dw_plate plate = { in (r, "b_over_a"), 1.0, 1.0, nu };
  const double per_pressure = dw_plate_pressure_outside (&plate, plate.inner, 1.0).rim;
  const double q = in (r, "linear_w_over_t") * t / per_pressure;
  dw_shim_lift lift;
  const dw_status status = dw_plate_lift (&plate, 12.0 * (1.0 - nu * nu) / (t * t), plate.inner,
                                          1.0, q, &lift, NULL);
  return status == DW_OK ? lift.rim / lift.rim_linear : NAN;
}

static double
stack_equivalent (const check_row *r)
{
  const bool bonded = strcmp (r->calc, "stack_equiv_t_bonded_mm") == 0;
  const dw_shim leaf
      = { .thickness = in (r, "t_mm") * DW_MM, .count = 1, .modulus = 4e9, .poisson = 0.38 };
  const dw_valve valve = { .n_shims = 2, .shims = { leaf, leaf }, .leaf_coupling = bonded };
  const dw_stack stack = dw_stack_make (&valve);
  return dw_stack_equivalent_thickness (stack.stiffness, leaf.modulus, leaf.poisson) / DW_MM;
}

/* ---- film ---- */

static double
radial_disc (const check_row *r)
{
  const dw_fluid fluid = { .dynamic = in (r, "mu_Pa_s"), .density = 1e-9, .viscosity = 1e9 };
  const dw_film_ring ring = { in (r, "ri_m") / 2.0, in (r, "ro_m"), in (r, "ri_m") };
  dw_film film = dw_film_make (&fluid, &ring, log (in (r, "ro_m") / in (r, "ri_m")), 1.0, 1.0,
                               1e-6);
  film.turning = 0.0; /* the parallel discs of the source have no slot to turn out of */
  return in (r, "dp_Pa") / dw_film_pressure (&film, 1.0, in (r, "h_m"));
}

/* ---- oil ---- */

/* The printed rule gives 1.00401 of the nominal value at 25 degC; the model is normalised. */
static double
printed_factor (void)
{
  return pow (10.0, 763.1 / 298.0 - 2.559);
}

static double
pdms_nu (const check_row *r)
{
  return dw_silicone_viscosity (in (r, "nu25_cSt"), in (r, "T_C")) * printed_factor ();
}

static double
pdms_vtc (const check_row *r)
{
  const double hot = dw_silicone_viscosity (in (r, "nu25_cSt"), DW_C_FROM_F (210.0));
  return 1.0 - hot / dw_silicone_viscosity (in (r, "nu25_cSt"), DW_C_FROM_F (100.0));
}

static double
pdms_energy (const check_row *r)
{
  const double gas_constant = 8.314462618e-3; /* [kJ/(mol K)] CODATA 2018 */
  const double t1 = 20.0, t2 = 30.0;
  (void)r;
  return gas_constant * log (dw_silicone_viscosity (1.0, t1) / dw_silicone_viscosity (1.0, t2))
         / (1.0 / (273.0 + t1) - 1.0 / (273.0 + t2));
}

static double
pdms_density (const check_row *r)
{
  return dw_oil_density_at (in (r, "rho25_kg_m3"), in (r, "T_C"));
}

static dw_d341
d341 (const check_row *r)
{
  return dw_d341_fit (in (r, "T1_K"), in (r, "v1_cSt") * DW_CST, in (r, "T2_K"),
                      in (r, "v2_cSt") * DW_CST);
}

static double
d341_nu (const check_row *r)
{
  return dw_d341_viscosity (d341 (r), in (r, "T_K")) / DW_CST;
}

static double
d341_a (const check_row *r)
{
  return d341 (r).a;
}

static double
d341_b (const check_row *r)
{
  return d341 (r).b;
}

static double
d341_z (const check_row *r)
{
  return dw_d341_z (in (r, "v_cSt") * DW_CST);
}

static double
blend (const check_row *r)
{
  const double v1 = in (r, "v1_cSt") * DW_CST;
  const double v2 = in (r, "v2_cSt") * DW_CST;
  const double x1 = in (r, "x1");
  if (strcmp (r->calc, "blend_walther") == 0)
    return dw_blend_walther (v1, v2, x1) / DW_CST;
  if (strcmp (r->calc, "blend_refutas") == 0)
    return dw_blend_refutas (v1, v2, x1) / DW_CST;
  return dw_blend_log (v1, v2, x1) / DW_CST;
}

/* ---- drills, spring and wheel ---- */

static double
number_drill (const check_row *r)
{
  size_t n;
  const dw_drill_size *table = dw_drill_table (&n);
  char name[16];
  snprintf (name, sizeof name, "#%s", check_input_text (r, "number"));
  for (size_t i = 0; i < n; i++)
    if (strcmp (table[i].name, name) == 0)
      return table[i].diameter / DW_MM;
  return NAN;
}

static double
it_grade (const check_row *r)
{
  return dw_tolerance_it (atoi (check_input_text (r, "grade") + 2), 2e-3) / DW_MM;
}

static double
wheel_rate (const check_row *r)
{
  return dw_wheel_rate (in (r, "k_N_m"), in (r, "MR_spring_per_wheel"));
}

static double
wheel_damping (const check_row *r)
{
  return dw_wheel_damping (in (r, "c_N_s_m"), in (r, "MR"));
}

static double
ride_frequency (const check_row *r)
{
  return dw_ride_frequency (in (r, "k_N_m"), in (r, "m_kg"));
}

/* zeta from c, k, m: the worked example prints c, from which its zeta and delta follow */
static double
rao_delta (const check_row *r)
{
  const double m = in (r, "m_kg");
  const double zeta = dw_damping_ratio (554.518, 2358.28, m);
  return 2.0 * acos (-1.0) * zeta / sqrt (1.0 - zeta * zeta);
}

/* ---- gas ---- */

static double
bulk_modulus (const check_row *r)
{
  const double pa = in (r, "pa_Pa");
  return dw_emulsion_bulk_modulus (in (r, "El_Pa"), in (r, "alpha"), pa, pa + in (r, "p_gauge_Pa"),
                                   in (r, "n"));
}

static double
emulsion_density (const check_row *r)
{
  return dw_emulsion_density (in (r, "rho_l"), in (r, "rho_g0"), in (r, "alpha"), in (r, "pa_Pa"),
                              in (r, "p_abs_Pa"), in (r, "n"));
}

static double
gas_pressure (const check_row *r)
{
  return dw_gas_pressure_at (in (r, "p0_Pa"), in (r, "V0_m3"), in (r, "A_rod_m2"), in (r, "x_m"),
                             in (r, "n"));
}

/* ---- units ---- */

static double
unit (const check_row *r)
{
  const double x = in (r, "x");
  if (strcmp (r->calc, "cSt_to_m2_s") == 0)
    return x * DW_CST;
  if (strcmp (r->calc, "lbf_in_to_N_mm") == 0)
    return x * DW_LBF_PER_INCH / DW_N_PER_MM;
  if (strcmp (r->calc, "gf_mm_to_N_m") == 0)
    return x * DW_GF_PER_MM;
  if (strcmp (r->calc, "thou_to_mm") == 0)
    return x * DW_THOU / DW_MM;
  return x * DW_PSI / DW_KPA;
}

static const struct
{
  const char *calc;
  double (*value) (const check_row *row);
} handlers[] = {
  { "hagen_poiseuille_dp", hagen_poiseuille },
  { "sampson_dp", sampson },
  { "dagan_dp", dagan },
  { "dagan_K1=dp/(0.5 rho V^2)*Re", dagan_k1 },
  { "sampson_Cd", sampson_cd },
  { "churchill_fD", churchill },
  { "annulus_Q", annulus },
  { "annulus_exact_Q", annulus_exact },
  { "annulus_couette_Q", annulus_couette },
  { "roark_2l_Ky", roark_2l },
  { "roark_2l_KMrb", roark_2l },
  { "roark_2l_Ktheta_a", roark_2l },
  { "roark_1l_Ky", roark_1l },
  { "roark_2l_deflection", roark_2l_deflection },
  { "fvk_ratio", fvk_ratio },
  { "stack_equiv_t_unbonded_mm", stack_equivalent },
  { "stack_equiv_t_bonded_mm", stack_equivalent },
  { "radial_disc_Q", radial_disc },
  { "pdms_nu_cSt", pdms_nu },
  { "pdms_VTC", pdms_vtc },
  { "pdms_Ea_kJ_mol", pdms_energy },
  { "pdms_density", pdms_density },
  { "d341_nu", d341_nu },
  { "d341_A", d341_a },
  { "d341_B", d341_b },
  { "d341_Z", d341_z },
  { "blend_walther", blend },
  { "blend_refutas", blend },
  { "blend_arrhenius", blend },
  { "number_drill_mm", number_drill },
  { "IT_mm", it_grade },
  { "wheel_rate", wheel_rate },
  { "wheel_damping", wheel_damping },
  { "ride_freq_Hz", ride_frequency },
  { "rao211_delta", rao_delta },
  { "mixture_bulk_modulus", bulk_modulus },
  { "emulsion_density", emulsion_density },
  { "gas_pressure", gas_pressure },
  { "cSt_to_m2_s", unit },
  { "lbf_in_to_N_mm", unit },
  { "gf_mm_to_N_m", unit },
  { "thou_to_mm", unit },
  { "psi_to_kPa", unit },
};

/* Not in the model, and why. A prefix stands for all that begin with it. */
static const struct
{
  const char *prefix;
  const char *why;
} outside[] = {
  { "shah_fapp", "textbook entry losses miss the resolved flow; K is fitted instead" },
  { "muzychka", "the same" },
  { "hagenbach", "the same" },
  { "lichtarowicz", "not valid at damper-oil Reynolds numbers" },
  { "wuest", "half again off the exact slow-flow answer" },
  { "idelchik", "valid above Re 1000 only" },
  { "annulus_simscape", "thick-gap correction, 1e-3 at these gaps" },
  { "rao_dashpot", "approximate closed form; the leak's own test compares with it" },
  { "roark_2b", "other edge conditions" },
  { "roark_2d", "other edge conditions" },
  { "roark_2e", "other edge conditions" },
  { "timoshenko", "solid plates; large deflection is solved, not looked up" },
  { "radial_disc_force", "load under a bent shim is a fitted form" },
  { "curtain", "turbulent" },
  { "coolprop", "thinner silicones than damper oils" },
  { "viscosity_index", "not meaningful for silicone" },
  { "refutas_VBN", "an index inside dw_blend_refutas(); its rows check the result" },
  { "spring_k", "springs are given by their rate" },
  { "wahl", "the same" },
  { "bergstrasser", "the same" },
  { "series_k", "the same" },
  { "parallel_k", "the same" },
  { "preload_force", "the ride's part" },
  { "ride_rate", "the ride's part" },
  { "overshoot", "the ride's part" },
  { "rao211_omega", "the example's intermediate values" },
  { "rao211_k", "the same" },
  { "rao211_c", "the same" },
  { "base_excitation", "the ride's part" },
  { "transmissibility", "the ride's part" },
  { "quarter_car", "the ride's part" },
  { "tire_hop", "the ride's part" },
  { "rattlespace", "the ride's part" },
  { "half_car", "the ride's part" },
  { "iso8608", "the ride's part" },
  { "energy_", "the ride's part" },
  { "ceq_", "the ride's part" },
  { "lindley", "seal friction is given, not computed" },
  { "parker", "the same" },
  { "churchill_bernstein", "oil heating, the ride's part" },
  { "churchill_chu", "the same" },
  { "h_crossflow", "the same" },
  { "lumped", "the same" },
  { "cSt_to_SUS", "no such unit is read or shown" },
  { "SUS_", "the same" },
};

static double (*handler_of (const char *calc)) (const check_row *row)
{
  for (size_t i = 0; i < sizeof constants / sizeof constants[0]; i++)
    if (strcmp (constants[i].calc, calc) == 0)
      return roark_constant;
  for (size_t i = 0; i < sizeof handlers / sizeof handlers[0]; i++)
    if (strcmp (handlers[i].calc, calc) == 0)
      return handlers[i].value;
  return NULL;
}

static bool
is_outside (const char *calc)
{
  for (size_t i = 0; i < sizeof outside / sizeof outside[0]; i++)
    if (strncmp (calc, outside[i].prefix, strlen (outside[i].prefix)) == 0)
      return true;
  return false;
}

START_TEST (published_values_are_met)
{
  test_table *table = test_table_read ("checks.csv");
  int checked = 0;

  for (size_t i = 0; i < test_table_n_rows (table); i++)
    {
      const check_row row = check_row_read (table, i);
      double (*value) (const check_row *) = handler_of (row.calc);
      if (value == NULL)
        {
          ck_assert_msg (is_outside (row.calc), "%s: %s is neither checked nor listed as outside",
                         row.id, row.calc);
          continue;
        }
      char why[200];
      snprintf (why, sizeof why, "%s %s: %s", row.id, row.calc, row.source);
      /* the thin-gap form stands in for the exact annulus, 1.2e-6 apart */
      const double rel = strcmp (row.calc, "annulus_exact_Q") == 0 ? 2e-6 : row.rel;
      assert_close (value (&row), row.expected, rel, row.abs + 1e-12 * fabs (row.expected), why);
      checked++;
    }
  ck_assert_int_ge (checked, 80);
  test_table_free (table);
}
END_TEST

START_TEST (every_handler_has_a_row)
{
  test_table *table = test_table_read ("checks.csv");

  for (size_t k = 0; k < sizeof handlers / sizeof handlers[0]; k++)
    {
      bool found = false;
      for (size_t i = 0; i < test_table_n_rows (table); i++)
        {
          const check_row row = check_row_read (table, i);
          found = found || strcmp (row.calc, handlers[k].calc) == 0;
        }
      ck_assert_msg (found, "no row for %s", handlers[k].calc);
    }
  test_table_free (table);
}
END_TEST

int
main (void)
{
  Suite *s = suite_create ("model/checks");
  TCase *tc = tcase_create ("checks");
  tcase_add_test (tc, published_values_are_met);
  tcase_add_test (tc, every_handler_has_a_row);
  suite_add_tcase (s, tc);
  return run_suite (s);
}
