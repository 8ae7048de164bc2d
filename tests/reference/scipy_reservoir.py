#!/usr/bin/env python3
"""Compares quell's routing of a flood through a reservoir with an independent integration by SciPy.

Each reservoir below is invented. The same level-pool equation is integrated here by DOP853 at a relative tolerance of 1e-11, piece by
piece between the times of the inflow and, for tables, between their points, so that no piece holds a kink; highest level, largest
outflow, level at the end and volume out are compared to 1e-6 relative.

Usage: scipy_reservoir.py --program build/quell      exit code 77: SciPy is not installed, nothing was compared
"""
import argparse
import json
import math
import subprocess
import sys

try:
    import numpy as np
    from scipy.integrate import solve_ivp
except ImportError as error:
    print(f"Skipped: {error}")
    sys.exit(77)

TOLERANCE = 1e-6  # relative; levels relative to the depth of water above the crest or above the lowest point of the table


def gamma_flood(peak, rise, exponent, base, times):
    share = [0.0 if t <= 0.0 else math.exp(exponent * (math.log(t / rise) + 1.0 - t / rise)) for t in times]
    return [base + (peak - base) * s for s in share]


def integrate(area, outflow, breaks, level, times, inflow):
    """Level and volume out, in pieces that end at the times, at every break of the level and at the peaks."""
    level_now, volume, highest, largest = level, 0.0, level, outflow(level)
    for i in range(1, len(times)):
        start, end = times[i - 1], times[i]
        slope = (inflow[i] - inflow[i - 1]) / (end - start)

        def flow_in(t, start=start, first=inflow[i - 1], slope=slope):
            return first + slope * (t - start)

        now = start
        while now < end:
            def rates(t, y):
                out = outflow(y[0])
                return [(flow_in(t) - out) / area(y[0]), out]

            def at_peak(t, y):
                return flow_in(t) - outflow(y[0])

            at_peak.terminal, at_peak.direction = False, -1
            events = [at_peak]
            for height in breaks:
                if abs(height - level_now) < 1e-12:
                    continue

                def at_break(t, y, height=height):
                    return y[0] - height

                at_break.terminal = True
                events.append(at_break)
            piece = solve_ivp(rates, (now, end), [level_now, volume], method="DOP853", rtol=1e-11, atol=1e-11, events=events)
            if piece.status < 0:
                raise SystemExit(piece.message)
            states = list(piece.y.T) + [y for y in piece.y_events[0]]
            highest = max(highest, max(y[0] for y in states))
            largest = max(largest, max(outflow(y[0]) for y in states))
            now, level_now, volume = piece.t[-1], piece.y[0, -1], piece.y[1, -1]
            if piece.status == 1:
                level_now = min(breaks, key=lambda height: abs(height - level_now))
    return {"Hm": highest, "Om": largest, "He": level_now, "V": volume}


def table(x, y):
    """Straight between the points and on beyond the last of them; the first value below the first."""
    x, y = np.asarray(x, float), np.asarray(y, float)

    def at(value):
        k = min(max(int(np.searchsorted(x, value, side="right")) - 1, 0), len(x) - 2)
        return float(y[0] if value < x[0] else y[k] + (y[k + 1] - y[k]) / (x[k + 1] - x[k]) * (value - x[k]))
    return at


def crest_reservoir(name, a0, a1, c, length, start, times, inflow):
    values = {"A0": a0, "A1": a1, "C": c, "L": length, "H0": start, "t": times, "I": inflow}
    return {"name": name, "method": "reservoir.flood.free_crest", "values": values, "datum": 0.0,
            "area": lambda h: a0 + a1 * h, "outflow": lambda h: c * length * max(h, 0.0) ** 1.5, "breaks": [],
            "start": start, "times": times, "inflow": inflow}


def table_reservoir(name, levels, areas, outflows, start, step, inflow):
    values = {"H0": start, "dt": step, "level": levels, "area": areas, "O": outflows, "I": inflow}
    return {"name": name, "method": "reservoir.flood.tabulated", "values": values, "datum": levels[0],
            "area": table(levels, areas), "outflow": table(levels, outflows), "breaks": list(levels),
            "start": start, "times": [step * i for i in range(len(inflow))], "inflow": inflow}


def reservoirs():
    hours = [3600.0 * k for k in range(49)]
    yield crest_reservoir("wide lake, gamma flood", 2.0e6, 2.0e5, 2.1, 40.0, 0.0, hours,
                          gamma_flood(500.0, 21600.0, 3.7, 0.0, hours))
    yield crest_reservoir("small pond, sharp flood", 2.0e4, 5.0e3, 1.9, 12.0, 0.3, hours[:25],
                          gamma_flood(80.0, 7200.0, 5.0, 2.0, hours[:25]))
    yield crest_reservoir("draining lake", 1.0e6, 0.0, 2.0, 50.0, 2.0, [0.0, 40000.0, 90000.0], [0.0, 0.0, 0.0])
    yield crest_reservoir("two floods, uneven times", 8.0e5, 1.5e5, 2.0, 25.0, 0.1,
                          [0.0, 2000.0, 9000.0, 15000.0, 30000.0, 41000.0, 50000.0, 80000.0],
                          [5.0, 60.0, 320.0, 90.0, 40.0, 410.0, 150.0, 5.0])
    count = 21
    levels = [90.0 + k for k in range(count)]
    areas = [2.0e5 + 1.5e4 * k ** 1.4 for k in range(count)]
    steps = [5400.0 * k for k in range(count)]
    gated = [0.0 if z <= 96.0 else 35.0 * (z - 96.0) ** 0.5 + (120.0 * (z - 102.0) ** 1.5 if z > 102.0 else 0.0) for z in levels]
    yield table_reservoir("bottom outlet and crest by tables", levels, areas, gated, 94.5, 5400.0,
                          gamma_flood(650.0, 16200.0, 3.0, 12.0, steps))
    yield table_reservoir("above its table", levels, [a / 8.0 for a in areas], [g / 3.0 for g in gated], 101.0, 5400.0,
                          gamma_flood(900.0, 21600.0, 2.2, 12.0, steps))


def run_program(program, reservoir):
    def text(value):
        return ",".join(repr(float(v)) for v in value) if isinstance(value, list) else repr(float(value))
    arguments = [f"{name}={text(value)}" for name, value in reservoir["values"].items()]
    done = subprocess.run([program, "calc", reservoir["method"], *arguments, "--json"], capture_output=True, text=True, check=False,
                          timeout=60)
    if done.returncode != 0:
        raise SystemExit(f"quell ended with {done.returncode}:\n{done.stderr}")
    return {name: entry["value"] for name, entry in json.loads(done.stdout)["outputs"].items()}


def compare(program, reservoir):
    ours = run_program(program, reservoir)
    theirs = integrate(reservoir["area"], reservoir["outflow"], reservoir["breaks"], reservoir["start"], reservoir["times"],
                       reservoir["inflow"])
    good = True
    for name, value in theirs.items():
        scale = abs(value - reservoir["datum"]) if name in ("Hm", "He") else abs(value)
        off = abs(ours[name] - value) / scale
        fits = off <= TOLERANCE
        good = good and fits
        print(f"{'  ok  ' if fits else 'FAILS '}{reservoir['name']}: {name} quell {ours[name]!r}, SciPy {value!r}, off by {off:.1e}")
    return good


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True)
    program = parser.parse_args().program
    good = [compare(program, reservoir) for reservoir in reservoirs()]
    return 0 if all(good) else 1


if __name__ == "__main__":
    sys.exit(main())
