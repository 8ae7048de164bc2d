#!/usr/bin/env python3
"""Compares quell's standard step along a compound river section with an independent integration by SciPy.

A surveyed section with flood plains, the same all along on a constant slope: the energy equation de/ds = Sf - S0, with e the
specific energy and s the distance upstream, is integrated by DOP853 to 1e-12. The section is cut here part by part, from its points.
The step's difference must shrink with the square of the number of steps, and be small with many.

Usage: scipy_river.py --program build/quell      exit code 77: SciPy is not installed, nothing was compared
"""
import argparse
import json
import math
import subprocess
import sys

try:
    import numpy as np
    from scipy.integrate import solve_ivp
    from scipy.optimize import brentq
except ImportError as error:
    print(f"Skipped: {error}")
    sys.exit(77)

G = 9.81
X = [0.0, 20.0, 60.0, 70.0, 90.0, 100.0, 150.0, 170.0]
Z = [105.0, 103.0, 102.5, 99.0, 99.0, 102.6, 103.2, 105.0]
BANKS = (60.0, 100.0)
ROUGHNESS = (0.06, 0.035, 0.05)
STEPS = [50, 100, 200, 400, 800]
FINEST = 2e-5  # m, with the most steps

# name: discharge m3/s, slope, level at the downstream end m, length m
REACHES = {
    "backwater over the plains": (300.0, 0.0008, 104.5, 2000.0),
    "backwater that leaves the plains": (150.0, 0.0008, 103.6, 2500.0),
    "drawdown from the plains": (400.0, 0.0008, 103.2, 1500.0),
    "level bed": (120.0, 0.0, 102.0, 800.0),
}


def part(level, first, last, wall_left, wall_right):
    """Area and wetted perimeter between two stations."""
    stations = sorted({first, last, *(x for x in X if first <= x <= last)})
    area = perimeter = 0.0
    for x1, x2 in zip(stations[:-1], stations[1:]):
        d1, d2 = (level - np.interp(x, X, Z) for x in (x1, x2))
        if max(d1, d2) <= 0.0:
            continue
        share = 1.0 if min(d1, d2) >= 0.0 else max(d1, d2) / abs(d1 - d2)
        d1, d2 = max(d1, 0.0), max(d2, 0.0)
        area += share * (x2 - x1) * (d1 + d2) / 2.0
        perimeter += math.hypot(share * (x2 - x1), d2 - d1)
    if wall_left:
        perimeter += max(0.0, level - Z[0])
    if wall_right:
        perimeter += max(0.0, level - Z[-1])
    return area, perimeter


def water(level):
    """Conveyance and alpha/A^2 of the divided section."""
    edges = (X[0], *BANKS, X[-1])
    conveyance = energy = 0.0
    for i, n in enumerate(ROUGHNESS):
        area, perimeter = part(level, edges[i], edges[i + 1], i == 0, i == 2)
        if area > 0.0:
            k = area * (area / perimeter) ** (2.0 / 3.0) / n
            conveyance += k
            energy += k**3 / area**2
    return conveyance, energy / conveyance**3


def specific_energy(level, discharge):
    return level + discharge**2 / (2.0 * G) * water(level)[1]


def integrated(discharge, slope, start, length):
    lowest = brentq(lambda w: specific_energy(w + 1e-6, discharge) - specific_energy(w - 1e-6, discharge), 99.5, start)

    def level_of(energy):
        return brentq(lambda w: specific_energy(w, discharge) - energy, lowest, 110.0, xtol=1e-13)

    def rate(_, energy):
        return [(discharge / water(level_of(energy[0]))[0]) ** 2 - slope]

    done = solve_ivp(rate, (0.0, length), [specific_energy(start, discharge)], method="DOP853", rtol=1e-12, atol=1e-12)
    if not done.success:
        raise SystemExit(f"SciPy gave up: {done.message}")
    return level_of(done.y[0, -1]) + slope * length


def stepped(program, discharge, slope, start, length, steps):
    values = dict(Q=discharge, w1=start, S=slope, L=length, N=steps, xl=BANKS[0], xr=BANKS[1],
                  nl=ROUGHNESS[0], n=ROUGHNESS[1], nr=ROUGHNESS[2],
                  x=",".join(map(repr, X)), z=",".join(map(repr, Z)))
    done = subprocess.run([program, "calc", "river.level.surveyed", *(f"{k}={v}" for k, v in values.items()), "--json"],
                          capture_output=True, text=True, check=False, timeout=60)
    if done.returncode != 0:
        raise SystemExit(f"quell ended with {done.returncode}:\n{done.stdout}{done.stderr}")
    return json.loads(done.stdout)["outputs"]["w2"]["value"]


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True)
    program = parser.parse_args().program
    failures = []
    for name, reach in REACHES.items():
        exact = integrated(*reach)
        off = [abs(stepped(program, *reach, steps) - exact) for steps in STEPS]
        # The order over all the halvings: where the water crosses a point of the section, single ratios scatter.
        order = math.log2(off[0] / off[-1]) / (len(STEPS) - 1)
        print(f"{name}: SciPy {exact:.8f} m; with {STEPS} steps off by " + ", ".join(f"{d:.1e}" for d in off) + f" m; order {order:.2f}")
        if not 1.8 <= order <= 2.2:
            failures.append(f"{name}: order {order:.2f}")
        if not off[-1] <= FINEST:
            failures.append(f"{name}: off by {off[-1]:.1e} m")
    for failure in failures:
        print(f"  FAIL {failure}")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
