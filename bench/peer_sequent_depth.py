#!/usr/bin/env python3
"""The batches of bench/sequent_depth.cpp once more in Python with SciPy: processor time per depth, and the ratio to
quell.

The same sections and flows. Rectangle in closed form; trapezoid and circle by brentq on the momentum function between critical
depth, found by brentq too, and a depth beyond.

    peer_sequent_depth.py --quell build/bench/quell.json
"""
import argparse
import json
import math
import pathlib
import time

from scipy.optimize import brentq

G = 9.81
FLOWS = 1000
STEPS = ((1 + math.sqrt(5)) / 2, math.sqrt(2), math.sqrt(3), math.e)


def spread(i, kind, low, high):
    turns = (i + 1) * STEPS[kind]
    return low * (high / low) ** (turns - math.floor(turns))


class Trapezoid:
    def __init__(self, b, m):
        self.b, self.m, self.crown = b, m, math.inf

    def area(self, y):
        return (self.b + self.m * y) * y

    def width(self, y):
        return self.b + 2 * self.m * y

    def first_moment(self, y):
        return self.b * y * y / 2 + self.m * y**3 / 3


class Circle:
    def __init__(self, diameter):
        self.crown = diameter

    def half(self, y):
        return math.acos(1 - 2 * y / self.crown)

    def area(self, y):
        phi = self.half(y)
        return self.crown**2 * (phi - math.sin(phi) * math.cos(phi)) / 4

    def width(self, y):
        return self.crown * math.sin(self.half(y))

    def first_moment(self, y):
        phi = self.half(y)
        return self.crown**3 / 24 * (3 * math.sin(phi) - math.sin(phi) ** 3 - 3 * phi * math.cos(phi))


def critical_depth(section, discharge):
    high = section.crown * (1 - 1e-12) if section.crown < math.inf else 1.0
    excess = lambda y: discharge**2 * section.width(y) - G * section.area(y) ** 3  # noqa: E731
    while excess(high) > 0:
        high *= 2
    return brentq(excess, 1e-6 * high, high, xtol=1e-14)


def momentum(section, discharge, y):
    return discharge**2 / (G * section.area(y)) + section.first_moment(y)


def sequent_depth(section, discharge, y1):
    critical = critical_depth(section, discharge)
    target = momentum(section, discharge, y1)
    if section.crown < math.inf:
        full = math.pi * section.crown**2 / 4
        if target > discharge**2 / (G * full) + full * section.crown / 2:
            return section.crown / 2 + (target - discharge**2 / (G * full)) / full
    high = min(2 * critical, section.crown)
    while momentum(section, discharge, high) < target and high < section.crown:
        high = min(2 * high, section.crown)
    return brentq(lambda y: momentum(section, discharge, y) - target, critical, high, xtol=1e-14)


def rectangular(y1, v1):
    return y1 / 2 * (math.sqrt(1 + 8 * v1 * v1 / (G * y1)) - 1)


def batches():
    """Name, function and its arguments for every flow."""
    depths = [spread(i, 0, 0.05, 3.0) for i in range(FLOWS)]
    yield "rectangular", rectangular, [(y, spread(i, 1, 1.1, 15.0) * math.sqrt(G * y)) for i, y in enumerate(depths)]
    for name in ("trapezoidal", "circular"):
        cases = []
        for i in range(FLOWS):
            if name == "trapezoidal":
                section = Trapezoid(spread(i, 0, 0.5, 100.0), spread(i, 1, 0.05, 4.0))
                discharge = spread(i, 2, 0.5, 3000.0)
            else:
                section = Circle(spread(i, 0, 0.5, 10.0))
                discharge = spread(i, 1, 0.02, 0.7) * math.sqrt(G * section.crown**5)
            cases.append((section, discharge, critical_depth(section, discharge) * spread(i, 3, 0.08, 0.95)))
        yield name, sequent_depth, cases


def seconds_of_quell(path):
    """Seconds per depth by name, from Google Benchmark's JSON: the median, or the only run."""
    found = {}
    for row in json.loads(path.read_text(encoding="utf-8"))["benchmarks"]:
        name = row["run_name"].removeprefix("sequent_depths_")
        if name != row["run_name"] and row.get("aggregate_name", "median") == "median":
            found[name] = row["cpu_time"] * {"ns": 1e-9, "us": 1e-6, "ms": 1e-3, "s": 1.0}[row["time_unit"]] / FLOWS
    return found


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--quell", type=pathlib.Path, required=True)
    ours = seconds_of_quell(parser.parse_args().quell)
    for name, solve, cases in batches():
        start = time.process_time()
        for case in cases:
            solve(*case)
        theirs = (time.process_time() - start) / FLOWS
        print(f"{name:12} quell {ours[name] * 1e9:9.1f} ns   Python {theirs * 1e9:9.0f} ns   ratio {theirs / ours[name]:.0f}")


if __name__ == "__main__":
    main()
