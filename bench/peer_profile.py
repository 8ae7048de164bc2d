#!/usr/bin/env python3
"""The chute profile of bench/peers.cpp once more in Python with SciPy: the time of one profile and the ratio to quell and to the GNU
Scientific Library, all in processor time.

20 m3/s a metre down 150 m at 30 degrees from a depth of 2 m; Darcy-Weisbach with Colebrook's factor; solve_ivp (DOP853) for the depth
at a tolerance of 1e-6 m.

    peer_profile.py --quell build/bench/quell.json
"""
import argparse
import json
import math
import pathlib
import statistics
import time

from scipy.integrate import solve_ivp

G, NU = 9.81, 1.004e-6
UNIT_DISCHARGE, WIDTH, KS, LENGTH, ANGLE = 20.0, 10.0, 0.0005, 150.0, math.radians(30.0)
RUNS = 9


def friction_slope(depth):
    radius = WIDTH * depth / (WIDTH + 2.0 * depth)
    velocity = UNIT_DISCHARGE / depth
    u = 9.0
    for _ in range(6):
        u = -2.0 * math.log10(KS / (14.84 * radius) + 2.51 * NU * u / (4.0 * radius * velocity))
    return velocity * velocity / (8.0 * G * radius * u * u)


def slope_of_depth(_, depth):
    d = depth[0]
    return [(math.sin(ANGLE) - friction_slope(d)) / (math.cos(ANGLE) - UNIT_DISCHARGE**2 / (G * d**3))]


def median_of(rows, name):
    for row in rows:
        if row["run_name"] == name and row.get("aggregate_name") == "median":
            return row["cpu_time"] * {"ns": 1e-9, "us": 1e-6, "ms": 1e-3, "s": 1.0}[row["time_unit"]]
    raise SystemExit(f"no median of {name}")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--quell", type=pathlib.Path, required=True)
    rows = json.loads(parser.parse_args().quell.read_text(encoding="utf-8"))["benchmarks"]
    times = []
    for _ in range(RUNS):
        start = time.process_time()
        solution = solve_ivp(slope_of_depth, (0.0, LENGTH), [2.0], method="DOP853", rtol=1e-9, atol=1e-6)
        times.append(time.process_time() - start)
    scipy = statistics.median(times)
    quell, gsl = median_of(rows, "chute_profile"), median_of(rows, "chute_profile_gsl")
    print(f"chute profile, depth at the end {solution.y[0][-1]:.6f} m by SciPy")
    print(f"quell {quell * 1e6:9.1f} us   GSL {gsl * 1e6:9.1f} us ({gsl / quell:.1f} times)   SciPy {scipy * 1e6:9.1f} us "
          f"({scipy / quell:.0f} times)")


if __name__ == "__main__":
    main()
