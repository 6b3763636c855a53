#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Oil film under a shim that the film's own pressure bends: the truth behind dw-film's fits.

Reynolds' equation, div (h^3 grad p) = 0, by finite volumes on a wedge from one hole's middle to
halfway to the next; the lift h is that of a Kirchhoff plate clamped at the hub and free at the
rim, by Ritz's method for each Fourier mode round the shim. The two are solved in turn until they
agree. Everything scales with the pressure, so one solution serves a geometry.

usage: film-coupled.py                make tests/data/film_coupled.csv again, to standard output
       film-coupled.py --check DIR    compare the solver with the independent tables in DIR
                                      (heleshaw.csv, shim_3d.csv) and with rows of its own table
"""
import csv
import sys

import numpy as np
import scipy.sparse as sp
import scipy.sparse.linalg as sl
from numpy.polynomial import Polynomial
from numpy.polynomial.legendre import Legendre, leggauss

BASIS = 10          # Ritz functions a mode
SMALLEST_LIFT = 2e-3  # of the mean: between few holes the linear rim would dip below the piston


def plate_mode(hub, rim, poisson, mode):
    """Stiffness matrix for D = 1 and the functions' values at any radius."""
    points, weights = leggauss(60)
    r = (hub + rim) / 2 + (rim - hub) / 2 * points
    weights = weights * (rim - hub) / 2
    width = rim - hub
    functions = []
    for j in range(BASIS):
        shape = Legendre.basis(j, domain=[0, 1]).convert(kind=Polynomial, domain=[-1, 1])
        functions.append(Polynomial(shape.coef) * Polynomial([0, 0, 1]))
    s = (r - hub) / width
    f = np.array([p(s) for p in functions])
    f1 = np.array([p.deriv()(s) for p in functions]) / width
    f2 = np.array([p.deriv(2)(s) for p in functions]) / width**2
    along, round_, twist = f2, f1 / r - mode**2 * f / r**2, mode * (f1 / r - f / r**2)

    def product(a, b):
        return np.einsum('iq,jq,q->ij', a, b, weights * r)

    stiffness = product(along + round_, along + round_) - (1 - poisson) * (
        product(along, round_) + product(round_, along) - 2 * product(twist, twist))
    return stiffness, lambda x: np.array([p((np.asarray(x) - hub) / width) for p in functions])


class Film:
    """Pressure and flow in a wedge, hole at unit pressure, rim at none, no flow at the hub."""

    def __init__(self, hub, rim, circle, hole, n, rows):
        self.n, self.rows = n, rows
        self.columns = max(48, int(rows * (np.pi / n) * circle / (rim - hub)))
        self.dr = (rim - hub) / rows
        self.dt = (np.pi / n) / self.columns
        self.faces = hub + np.arange(rows + 1) * self.dr
        self.r = hub + (np.arange(rows) + .5) * self.dr
        self.t = (np.arange(self.columns) + .5) * self.dt
        self.grid, angle = np.meshgrid(self.r, self.t, indexing='ij')
        self.inside = np.hypot(self.grid * np.cos(angle) - circle,
                               self.grid * np.sin(angle)) < hole / 2

    def solve(self, lift, rim_lift):
        h3 = lift**3
        radial = .5 * (h3[1:] + h3[:-1]) * (self.faces[1:-1] * self.dt / self.dr)[:, None]
        round_ = .5 * (h3[:, 1:] + h3[:, :-1]) * (self.dr / (self.r * self.dt))[:, None]
        out = rim_lift**3 * self.faces[-1] * self.dt / (self.dr / 2)
        index = np.arange(self.grid.size).reshape(self.grid.shape)
        diagonal = np.zeros(self.grid.shape)
        diagonal[:-1] += radial
        diagonal[1:] += radial
        diagonal[:, :-1] += round_
        diagonal[:, 1:] += round_
        diagonal[-1] += out
        fixed = 1e6 * diagonal.max() * self.inside
        diagonal += fixed + 1e-14 * diagonal.max()
        low = np.concatenate([index[:-1].ravel(), index[:, :-1].ravel()])
        high = np.concatenate([index[1:].ravel(), index[:, 1:].ravel()])
        links = -np.concatenate([radial.ravel(), round_.ravel()])
        matrix = sp.csc_matrix((np.concatenate([links, links, diagonal.ravel()]),
                                (np.concatenate([low, high, index.ravel()]),
                                 np.concatenate([high, low, index.ravel()]))))
        p = sl.spsolve(matrix, fixed.ravel()).reshape(self.grid.shape)
        return p, (out * p[-1]).sum() * 2 * self.n

    def load(self, p):
        return (p * self.grid).sum() * self.dr * self.dt * 2 * self.n


class Shim:
    """Lift under a pressure on the film's grid, D = 1."""

    def __init__(self, film, hub, rim, circle, poisson, top):
        self.film = film
        self.modes = [k * film.n for k in range(top + 1)]
        self.parts = [plate_mode(hub, rim, poisson, m) for m in self.modes]
        self.at_film = [at(film.r) for _, at in self.parts]
        self.at_rim = [at([rim])[:, 0] for _, at in self.parts]
        stiffness, at = self.parts[0]
        c = np.linalg.solve(stiffness, at([circle])[:, 0] / (2 * np.pi))
        self.ring = self.at_rim[0] @ c          # rim lift per unit force on the hole circle
        self.shape = (at([circle])[:, 0] @ c) / self.ring

    def bend(self, p):
        film = self.film
        lift = np.zeros(film.grid.shape)
        rim = np.zeros(film.columns)
        for k, mode in enumerate(self.modes):
            wave = np.cos(mode * film.t)
            pressure = (p * wave).mean(1) * (1 if mode == 0 else 2)
            c = np.linalg.solve(self.parts[k][0], self.at_film[k] @ (pressure * film.r) * film.dr)
            lift += (self.at_film[k].T @ c)[:, None] * wave
            rim += (self.at_rim[k] @ c) * wave
            if mode == 0:
                mean = self.at_rim[0] @ c
        return lift, rim, mean


def coupled(hub, rim, circle, hole, n, poisson, rows=150):
    film = Film(hub, rim, circle, hole, n, rows)
    shim = Shim(film, hub, rim, circle, poisson, max(4, 24 // n))
    p = film.inside.astype(float)
    last = None
    for turn in range(10):
        lift, rim_lift, mean = shim.bend(p)
        floor = SMALLEST_LIFT * ((film.r - hub) / (rim - hub))[:, None]
        new, flow = film.solve(np.maximum(lift / mean, floor),
                               np.maximum(rim_lift / mean, SMALLEST_LIFT))
        r2 = 2 * np.pi / flow
        load = film.load(new) / n
        if last is not None and abs(r2 / last - 1) < 2e-4:
            break
        last = r2
        p = new if turn == 0 else .5 * (p + new)
    return {'shape': shim.shape, 'r2': r2, 'load_mm2': load,
            'load_area_mm2': mean / shim.ring / n, 'hole': rim_lift[0] / mean,
            'between': rim_lift[-1] / mean}


def geometries():
    for hub in (2.2, 2.7, 3.1, 3.35):
        for n, d in ((2, 1.0), (3, 1.0), (4, 0.7), (4, 1.0), (6, 0.7), (6, 1.0), (8, 0.8)):
            yield hub, 4.75, 3.75 if hub < 3.3 else 3.95, d, n, .38
    for n, d in ((2, 0.6), (2, 1.2), (3, 1.2), (4, 1.2), (4, .5), (6, 1.2), (8, .6)):
        yield 3.1, 4.75, 3.8, d, n, .38
    for circle, n, d in ((3.6, 4, .8), (4.0, 4, .8), (4.15, 4, .8), (4.0, 2, .8), (4.0, 6, .8),
                         (4.1, 3, 1.0), (3.6, 3, .8)):
        yield 3.0, 4.75, circle, d, n, .38
    yield from ((3.1, 4.7, 3.8, 1.0, 4, .30), (2.2, 4.75, 3.75, 1.0, 4, .30),
                (3.5, 6.5, 5.0, 1.5, 4, .30), (3.5, 6.5, 5.0, 1.2, 6, .3),
                (3.0, 5.75, 4.2, 1.2, 4, .38), (2.0, 6.0, 4.0, 1.2, 4, .38),
                (3.0, 4.3, 3.65, .8, 4, .38), (2.5, 4.0, 3.25, 0.8, 3, .38))


def read(path):
    with open(path, encoding='utf-8') as file:
        return list(csv.DictReader(line for line in file if not line.startswith('#')))


def numbers(row, *names):
    return [float(row[name]) for name in names]


def check(directory):
    bad = 0

    def compare(what, value, truth, allowed):
        nonlocal bad
        error = value / truth - 1
        print(f'{what}: {value:.4f} against {truth:.4f}, {100 * error:+.2f} %')
        bad += not abs(error) <= allowed

    # Reynolds' equation with a given gap, by another program's finite elements: even and tapered
    for row in read(directory + '/heleshaw.csv')[8:19:2]:
        hub, rim, circle, d, n, power = numbers(row, 'r_hub_mm', 'r_out_mm', 'r_pitch_mm',
                                                'd_hole_mm', 'n_holes', 'h_exponent')
        film = Film(hub, rim, circle, d, int(n), 160)
        gap = np.maximum(((film.grid - hub) / (rim - hub)), 1e-4)**power
        p, flow = film.solve(gap, np.ones(film.columns))
        name = f'{n:.0f} x {d} mm, rim {rim}, gap exponent {power}'
        compare(f'resistance, {name}', 2 * np.pi / flow, float(row['R_2pi']), .03)
        compare(f'load, {name}', film.load(p) / (n * np.pi / 4 * d * d),
                float(row['load_over_holearea_p']), .02)
    # shape of a shim pressed at four holes, by another program's shells, small load
    for row in read(directory + '/shim_3d.csv'):
        if row['kind'] != 'lin' or row['mode'] != 'patch' or row['dh_mm'] != '1.0':
            continue
        hub, nu = numbers(row, 'b_mm', 'nu')
        n = int(row['n_holes'])
        film = Film(hub, 4.75, 3.8, 1.0, n, 160)
        _, rim, mean = Shim(film, hub, 4.75, 3.8, nu, 24 // n).bend(film.inside.astype(float))
        compare(f'rim at a hole over its mean, {n} holes, hub {hub}', rim[0] / mean,
                float(row['w_edge_hole']) / float(row['w_edge_mean']), .05)
    # the table is what this program makes
    for row in read(directory + '/film_coupled.csv')[::17]:
        geometry = numbers(row, 'r_hub_mm', 'r_out_mm', 'r_pitch_mm', 'd_hole_mm', 'n_holes',
                           'poisson')
        geometry[4] = int(geometry[4])
        answer = coupled(*geometry)
        for key in ('r2', 'load_area_mm2', 'hole'):
            compare(f'{key} of {geometry}', answer[key], float(row[key]), 1e-3)
    return bad


def main():
    if len(sys.argv) == 3 and sys.argv[1] == '--check':
        bad = check(sys.argv[2])
        print(f'{bad} out of tolerance')
        return bad > 0
    keys = ('shape', 'r2', 'load_mm2', 'load_area_mm2', 'hole', 'between')
    print('r_hub_mm,r_out_mm,r_pitch_mm,d_hole_mm,n_holes,poisson,' + ','.join(keys))
    for geometry in geometries():
        answer = coupled(*geometry)
        print(','.join([f'{x:g}' for x in geometry] + [f'{answer[key]:.5f}' for key in keys]),
              flush=True)
    return 0


if __name__ == '__main__':
    sys.exit(main())
