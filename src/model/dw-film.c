/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model/dw-film.h"

#include <assert.h>
#include <math.h>

static const double PI = 3.14159265358979323846;

/* Fit of the film's losses, symbols as in the equation of dw-film.h. */
static const double C_EVEN = 14.4;
static const double C_WIDE = 4.3;
static const double C_POWER = 2.24;
static const double RIM_LOSS = 1.97;
static const double SLOT_LOSS = 2.15;
static const double S_HALF = 77.0;
static const double S_RATIO = 0.143;

/* Fit of the bent film: the oil spreads from 0.676 of a hole's radius outside its centre, over
 * a width that starts at 1.95 diameters and grows by 0.95 of the way. */
static const double SPREAD_START = 0.676;
static const double SPREAD_WIDTH = 1.948;
static const double SPREAD_GROWTH = 0.950;

/* Fit of the load per hole: pi/4 d^2 + these times d l, d m, l m, l^2, m^2, where l and m are
 * the widths of the ring inside and outside the hole circle. */
static const double LOAD_DL = 0.970;
static const double LOAD_DM = -0.105;
static const double LOAD_LM = 0.958;
static const double LOAD_LL = 0.100;
static const double LOAD_MM = 0.050;

dw_film
dw_film_make (const dw_fluid *fluid, const dw_film_ring *ring, double resistance, double shape,
              double hole_area)
{
  assert (resistance > 0.0 && shape > 0.0 && hole_area > 0.0);

  const double rim = 2.0 * PI * ring->rim;
  const double slot = hole_area / (2.0 * PI * ring->hole_circle);
  return (dw_film){
    .viscous = 12.0 * fluid->dynamic * resistance / (2.0 * PI),
    .turning = fluid->dynamic / (rim * shape * shape),
    .ratio = shape / slot,
    .rim_head = fluid->density / 2.0 * RIM_LOSS / (rim * rim),
    .slot_head = fluid->density / 2.0 * SLOT_LOSS / (hole_area * hole_area),
    .half_flow = S_HALF * rim * fluid->viscosity,
  };
}

/* Coefficients of p = a q + b q^3/(q + q0) at a lift, with their slopes in the lift. */
typedef struct
{
  double a, b, q0;
  double a_slope, b_slope, q0_slope;
} film_terms;

static inline film_terms
terms_at (const dw_film *film, double lift)
{
  const double w = lift;
  const double x = film->ratio * w;
  const bool wide = x > DW_FILM_RESOLVED_RATIO;
  const double y = wide ? DW_FILM_RESOLVED_RATIO : x;
  const double c_wide = C_WIDE * pow (y, C_POWER);
  const double c = C_EVEN + c_wide;
  /* past the resolved width the slot's loss fades: the jets then feel the shim no more */
  const double fade = wide ? (y / x) * (y / x) : 1.0;
  const double w2 = w * w;
  const double w3 = w2 * w;

  return (film_terms){
    .a = film->viscous / w3 + film->turning * c / w2,
    .b = film->rim_head / w2 + film->slot_head * fade,
    .q0 = film->half_flow * (1.0 - S_RATIO * y),
    .a_slope = -3.0 * film->viscous / (w3 * w)
               + film->turning * ((wide ? 0.0 : C_POWER * c_wide) - 2.0 * c) / w3,
    .b_slope = -2.0 * film->rim_head / w3 - (wide ? 2.0 * film->slot_head * fade / w : 0.0),
    .q0_slope = wide ? 0.0 : -film->half_flow * S_RATIO * film->ratio,
  };
}

double
dw_film_pressure (const dw_film *film, double flow, double lift)
{
  const film_terms t = terms_at (film, lift);
  return t.a * flow + t.b * flow * flow * (flow / (flow + t.q0));
}

dw_film_flow
dw_film_flow_at (const dw_film *film, double pressure, double lift, double lift_by_pressure)
{
  enum
  {
    MOST_STEPS = 60
  };

  if (lift <= 0.0 || pressure <= 0.0)
    return (dw_film_flow){ 0.0, 0.0 };

  const film_terms t = terms_at (film, lift);
  /* p(q) is convex: from the right Newton comes down monotonically. Two bounds on the right,
   * with the inertia left out and (q + q0 >= q) with the friction left out, below q0 doubled. */
  double q = pressure / t.a;
  const double by_inertia = sqrt (pressure / t.b);
  if (by_inertia > t.q0)
    q = fmin (q, by_inertia * M_SQRT2);
  double slope = t.a;
  for (int i = 0; i < MOST_STEPS; i++)
    {
      const double share = q / (q + t.q0);
      const double p = t.a * q + t.b * q * q * share;
      slope = t.a + t.b * q * share * (3.0 - share);
      const double step = (p - pressure) / slope;
      q -= step;
      if (fabs (step) <= 1e-9 * q)
        break;
    }

  const double share = q / (q + t.q0);
  const double by_lift = t.a_slope * q + t.b_slope * q * q * share
                         - t.b * q * share * share * t.q0_slope;
  slope = t.a + t.b * q * share * (3.0 - share);
  return (dw_film_flow){ q, (1.0 - by_lift * lift_by_pressure) / slope };
}

double
dw_film_even_resistance (const dw_film_ring *ring, double diameter, int n_holes)
{
  const double n = n_holes;
  const double rp = ring->hole_circle;
  const double ro = ring->rim;
  /* ln[(ro^2n - rp^2n)/(n (d/2) rp^(n-1) ro^n)] with the large powers divided out */
  const double u = pow (rp / ro, n);
  const double form = log ((1.0 / u - u) * rp / (n * diameter / 2.0)) / n;
  const double slot = log (ro / (rp + diameter / 2.0));
  return fmax (form, slot);
}

double
dw_film_bent_resistance (const dw_film_ring *ring, const dw_plate *plate, double diameter)
{
  /* Gauss-Legendre, 8 points: the integrand is smooth between hole and rim; 1e-6 */
  static const double node[4] = { 0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                  0.9602898564975363 };
  static const double weight[4] = { 0.3626837833783620, 0.3137066458778873, 0.2223810344533745,
                                    0.1012285362903763 };
  const double start = ring->hole_circle + SPREAD_START * diameter / 2.0;
  const double middle = (start + ring->rim) / 2.0;
  const double half = (ring->rim - start) / 2.0;
  const double rim_lift = dw_plate_deflection (plate, ring->hole_circle, 1.0, ring->rim);
  double sum = 0.0;

  for (int i = 0; i < 8; i++)
    {
      const double r = middle + (i < 4 ? -node[i] : node[i - 4]) * half;
      const double s = dw_plate_deflection (plate, ring->hole_circle, 1.0, r) / rim_lift;
      const double width = SPREAD_WIDTH * diameter + SPREAD_GROWTH * (r - start);
      sum += weight[i < 4 ? i : i - 4] * half / (s * s * s * width);
    }
  return 2.0 * PI * sum;
}

double
dw_film_load_area (const dw_film_ring *ring, double diameter)
{
  const double d = diameter;
  const double l = ring->hole_circle - ring->hub;
  const double m = ring->rim - ring->hole_circle;
  return PI / 4.0 * d * d + LOAD_DL * d * l + LOAD_DM * d * m + LOAD_LM * l * m + LOAD_LL * l * l
         + LOAD_MM * m * m;
}
