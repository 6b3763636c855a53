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

/* Fits to the coupled solutions; u = d/m, t = l/m, g = hub/rim, k = crowding, where l and m are
 * the widths of the ring inside and outside the hole circle.
 * ln R = sum of these times 1, ln u, ln t, ln g, u, ln u ln t, k, ln^2 t */
static const double BENT[8] = { 3.8393, 0.3014, -0.5807, 0.1761, -2.1514, 0.5803, -0.2857, 0.0240 };

/* load area = (pi/4 d^2 + these times d l, d m, l m, l^2, m^2) exp(LOAD_CROWD k) */
static const double LOAD[5] = { -0.4892, 2.3154, -0.5504, 0.6836, 0.2667 };
static const double LOAD_CROWD = -0.6627;

/* lobe = (1 + (B/n)^POWER)^(1/POWER), B = these times 1, rim/(rim - hub), d/(rim - hub): as many
 * holes as would lift the rim evenly */
static const double LOBE[3] = { 0.3656, 2.6800, -0.6518 };
static const double LOBE_POWER = 6.737;

/* Newton on a flow is stopped after a relative step this small; its square is left. */
static const double LAST_STEP = 1e-6;

dw_film
dw_film_make (const dw_fluid *fluid, const dw_film_ring *ring, double resistance, double shape,
              double lobe, double hole_area)
{
  assert (resistance > 0.0 && shape > 0.0 && lobe >= 1.0 && hole_area > 0.0);

  const double rim = 2.0 * PI * ring->rim / lobe;
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

/* Flow at a pressure and a fixed lift; @p by_pressure and @p by_lift are dp/dq and dp/dw there. */
typedef struct
{
  double q, by_flow, by_lift;
} film_answer;

static inline film_answer
answer_at (const dw_film *film, double pressure, double lift, double guess)
{
  enum
  {
    MOST_STEPS = 60
  };
  const film_terms t = terms_at (film, lift);
  /* p(q) is convex: from the right Newton comes down monotonically, and from anywhere it is on
   * the right after one step. Two bounds on the right: with the inertia left out, and, where
   * q >= q0 and so the share at least 1/2, with the friction left out. */
  double q = pressure / t.a;
  const double by_inertia = sqrt (pressure / t.b);
  if (by_inertia > t.q0)
    q = fmin (q, by_inertia * M_SQRT2);
  if (guess > 0.5 * q && guess < q)
    q = guess;
  double share = 0.0;
  double slope = t.a;
  for (int i = 0; i < MOST_STEPS; i++)
    {
      share = q / (q + t.q0);
      slope = t.a + t.b * q * share * (3.0 - share);
      const double step = (t.a * q + t.b * q * q * share - pressure) / slope;
      q -= step;
      if (fabs (step) <= LAST_STEP * q)
        break;
    }
  /* share and slope are those before the last step: they serve the derivatives only */
  return (film_answer){
    q, slope, t.a_slope * q + t.b_slope * q * q * share - t.b * q * share * share * t.q0_slope
  };
}

/* The lift below @p high at which the flow at a pressure is largest: there dp/dw changes sign. */
static film_answer
best_below (const dw_film *film, double pressure, double high)
{
  double low = 0.0;
  film_answer best = answer_at (film, pressure, high, 0.0);

  for (int i = 0; i < 100 && high - low > 1e-15 * high; i++)
    {
      const double w = (low + high) / 2.0;
      best = answer_at (film, pressure, w, 0.0);
      if (best.by_lift > 0.0)
        high = w;
      else
        low = w;
    }
  return best;
}

dw_film_flow
dw_film_flow_at (const dw_film *film, double pressure, double lift, double lift_by_pressure,
                 double guess)
{
  if (lift <= 0.0 || pressure <= 0.0)
    return (dw_film_flow){ 0.0, 0.0 };

  /* The fit lets the slot's loss grow with the gap. Where that outweighs the rest, with wide gaps
   * and quick flow, a larger lift would pass less oil than a smaller one: nobody measured that, and
   * it would give one damper two answers. The flow then stays at its best until it is passed. */
  const double resolved = DW_FILM_RESOLVED_RATIO / film->ratio;
  const film_answer f = answer_at (film, pressure, lift, guess);
  if (f.by_lift > 0.0)
    {
      const film_answer best = best_below (film, pressure, lift);
      return (dw_film_flow){ best.q, 1.0 / best.by_flow };
    }
  if (lift > resolved && answer_at (film, pressure, resolved * (1.0 - 1e-12), f.q).by_lift > 0.0)
    {
      const film_answer best = best_below (film, pressure, resolved * (1.0 - 1e-12));
      if (best.q > f.q)
        return (dw_film_flow){ best.q, 1.0 / best.by_flow };
    }
  return (dw_film_flow){ f.q, (1.0 - f.by_lift * lift_by_pressure) / f.by_flow };
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
dw_film_bent_resistance (const dw_film_ring *ring, double diameter, double crowding)
{
  const double m = ring->rim - ring->hole_circle;
  const double u = diameter / m;
  const double ln_u = log (u);
  const double ln_t = log ((ring->hole_circle - ring->hub) / m);
  const double ln_g = log (ring->hub / ring->rim);

  return exp (BENT[0] + BENT[1] * ln_u + BENT[2] * ln_t + BENT[3] * ln_g + BENT[4] * u
              + BENT[5] * ln_u * ln_t + BENT[6] * crowding + BENT[7] * ln_t * ln_t);
}

double
dw_film_load_area (const dw_film_ring *ring, double diameter, double crowding)
{
  const double d = diameter;
  const double hole = PI / 4.0 * d * d;
  const double l = ring->hole_circle - ring->hub;
  const double m = ring->rim - ring->hole_circle;
  const double area = hole + LOAD[0] * d * l + LOAD[1] * d * m + LOAD[2] * l * m + LOAD[3] * l * l
                      + LOAD[4] * m * m;

  return fmax (hole, area * exp (LOAD_CROWD * crowding));
}

double
dw_film_lobe (const dw_film_ring *ring, double diameter, int n_holes)
{
  const double width = ring->rim - ring->hub;
  const double even = LOBE[0] + LOBE[1] * ring->rim / width + LOBE[2] * diameter / width;
  return pow (1.0 + pow (even / n_holes, LOBE_POWER), 1.0 / LOBE_POWER);
}
