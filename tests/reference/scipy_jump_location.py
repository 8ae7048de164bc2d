#!/usr/bin/env python3
"""Compares where quell puts the toe of the jump with an independent computation by SciPy.

Every case below is invented. Here both water surfaces come from solve_ivp (DOP853, depth as a function of the distance) and the
toe from brentq on the momentum of the two; the tailwater that drowns the control is found by following the surface downstream
from the sequent depth. quell follows the arc of the curve instead. Toe to 1e-6 m, depths to 1e-7 relative.

Usage: scipy_jump_location.py --program build/quell      exit code 77: SciPy is not installed, nothing was compared
"""
import argparse
import json
import math
import subprocess
import sys

try:
    import numpy as np
    from scipy.integrate import quad, solve_ivp
    from scipy.optimize import brentq
except ImportError as error:
    print(f"Skipped: {error}")
    sys.exit(77)

G = 9.81
TOE_TOLERANCE = 1e-6    # m
DEPTH_TOLERANCE = 1e-7  # relative
SAMPLES = 2000          # of the reach, in which the sign of the momentum difference is looked for

# b, m, Q, S0, n, y0, L, TW; "wide": the friction of the bed alone, quell's level apron (b = 1, m = 0, S0 = 0).
CASES = {
    "level apron, toe in the first third": dict(wide=True, Q=10, n=0.014, y0=0.6, L=60, TW=5.3),
    "level apron, toe near its end": dict(wide=True, Q=10, n=0.014, y0=0.6, L=60, TW=4.95),
    "level apron, tailwater too low": dict(wide=True, Q=10, n=0.014, y0=0.6, L=60, TW=4.8),
    "level apron, tailwater too high": dict(wide=True, Q=10, n=0.014, y0=0.6, L=60, TW=5.6),
    "level apron, thick flow": dict(wide=True, Q=60, n=0.016, y0=2.1, L=220, TW=16.3),
    "level apron, thin flow on a rough bed": dict(wide=True, Q=1.2, n=0.03, y0=0.15, L=25, TW=1.0),
    "level apron so long that the flow would turn critical": dict(wide=True, Q=2, n=0.03, y0=0.2, L=60, TW=0.9),
    "flume with walls": dict(b=0.5, m=0, Q=0.06, S0=0, n=0.009, y0=0.045, L=12, TW=0.22),
    "mild rectangular channel": dict(b=7, m=0, Q=30, S0=0.0012, n=0.016, y0=0.5, L=400, TW=1.9),
    "mild trapezoidal channel": dict(b=4, m=1.5, Q=25, S0=0.0008, n=0.02, y0=0.55, L=300, TW=2.05),
    "adverse trapezoidal channel": dict(b=5, m=1, Q=40, S0=-0.004, n=0.015, y0=0.7, L=50, TW=2.85),
    "steep channel, pool at its end": dict(b=6, m=0, Q=30, S0=0.02, n=0.015, y0=0.9, L=150, TW=4.0),
    "steep trapezoid, below normal depth at the start": dict(b=3, m=2, Q=20, S0=0.015, n=0.014, y0=0.4, L=120, TW=2.9),
    "free overfall at the end of a long mild channel": dict(b=8, m=0, Q=16, S0=0.0005, n=0.025, y0=0.25, L=250, TW=0.1),
    "triangle": dict(b=0, m=1.2, Q=6, S0=0.001, n=0.015, y0=0.75, L=80, TW=2.05),
}


class Channel:
    def __init__(self, case):
        self.wide = case.get("wide", False)
        self.b, self.m, self.S0 = case.get("b", 1.0), case.get("m", 0.0), case.get("S0", 0.0)
        self.Q, self.n, self.y0, self.L, self.TW = (case[name] for name in ("Q", "n", "y0", "L", "TW"))
        self.critical = brentq(lambda y: self.froude_squared(y) - 1.0, 1e-4, 1e3, xtol=1e-15, rtol=1e-14)

    def area(self, y):
        return (self.b + self.m * y) * y

    def top(self, y):
        return self.b + 2.0 * self.m * y

    def froude_squared(self, y):
        return self.Q**2 * self.top(y) / (G * self.area(y)**3)

    def friction_slope(self, y):
        wetted = self.b if self.wide else self.b + 2.0 * y * math.hypot(1.0, self.m)
        return (self.n * self.Q / self.area(y))**2 / (self.area(y) / wetted)**(4.0 / 3.0)

    def momentum(self, y):
        return self.Q**2 / (G * self.area(y)) + self.b * y**2 / 2.0 + self.m * y**3 / 3.0

    def slope(self, _x, state):
        y = float(state[0])
        return [(self.S0 - self.friction_slope(y)) / (1.0 - self.froude_squared(y))]

    def surface(self, start, end, depth, part_of_critical):
        """Depth as a function of x; held where it comes within a part in a thousand of critical depth."""
        def near_critical(_x, state):
            return state[0] - part_of_critical * self.critical
        near_critical.terminal = True
        done = solve_ivp(self.slope, (start, end), [depth], method="DOP853", rtol=1e-12, atol=1e-13, dense_output=True,
                         events=near_critical)
        low, high = min(start, done.t[-1]), max(start, done.t[-1])
        return (lambda x: float(done.sol(min(max(x, low), high))[0])), low, high

    def sequent(self, y):
        target = self.momentum(y)
        return brentq(lambda z: self.momentum(z) - target, self.critical, 1e3, xtol=1e-14, rtol=1e-13)


def toe_of(channel):
    """State, toe, y1 and y2."""
    supercritical, _, fast_end = channel.surface(0.0, channel.L, channel.y0, 0.999)
    start, depth = channel.L, channel.TW
    if depth < channel.critical:  # leaves through critical depth, where dy/dx has no value but dx/dy has: 0
        depth = channel.critical * 1.0011
        start += quad(lambda y: 1.0 / channel.slope(0.0, [y])[0], channel.critical, depth, epsabs=1e-13)[0]
    subcritical, slow_start, _ = channel.surface(start, 0.0, depth, 1.001)

    def excess(x):
        return channel.momentum(supercritical(x)) - channel.momentum(subcritical(x))

    if slow_start == 0.0 and excess(0.0) < 0.0:
        return "drowns", 0.0, channel.y0, channel.sequent(channel.y0)
    places = np.linspace(slow_start, fast_end, SAMPLES)
    values = [excess(x) for x in places]
    for left, right, before, after in zip(places[:-1], places[1:], values[:-1], values[1:]):
        if before >= 0.0 >= after:
            x = brentq(excess, left, right, xtol=1e-12)
            return "on the reach", x, supercritical(x), subcritical(x)
    return "swept out", channel.L, supercritical(channel.L), channel.sequent(supercritical(channel.L))


def limits_of(channel):
    """Tailwater depths that sweep the jump out and that drown the control."""
    supercritical, _, fast_end = channel.surface(0.0, channel.L, channel.y0, 0.999)
    drowning, _, slow_end = channel.surface(0.0, channel.L, channel.sequent(channel.y0), 1.001)
    sweeping = channel.sequent(supercritical(channel.L)) if fast_end == channel.L else None
    return sweeping, drowning(channel.L) if slow_end == channel.L else None


class Program:
    def __init__(self, path):
        self.path = path

    def calc(self, method, **inputs):
        """Outputs by name, or the reason why there are none."""
        words = [f"{name}={value!r}" for name, value in inputs.items()]
        done = subprocess.run([self.path, "calc", method, *words, "--json"], capture_output=True, text=True, check=False,
                              timeout=60)
        if done.returncode != 0:
            return done.stderr
        return {name: entry["value"] for name, entry in json.loads(done.stdout)["outputs"].items()}

    def toe(self, channel):
        if channel.wide:
            return self.calc("jump.location.horizontal_apron", q=channel.Q, n=channel.n, y0=channel.y0, La=channel.L,
                             TW=channel.TW)
        return self.calc("jump.location.channel", b=channel.b, m=channel.m, Q=channel.Q, S0=channel.S0, n=channel.n,
                         y0=channel.y0, L=channel.L, TW=channel.TW)

    def limit(self, method, channel):
        return self.calc(method, q=channel.Q, n=channel.n, y0=channel.y0, La=channel.L)


def compare_case(name, case, program):
    channel = Channel(case)
    failures = []

    def near(what, ours, theirs, tolerance):
        if not abs(ours - theirs) <= tolerance:
            failures.append(f"{what}: quell {ours!r}, SciPy {theirs!r}")

    state, x, y1, y2 = toe_of(channel)
    ours = program.toe(channel)
    if state != "on the reach":
        if not (isinstance(ours, str) and state in ours):
            failures.append(f"SciPy finds that the jump is {state}, quell says {ours!r}")
    elif isinstance(ours, str):
        failures.append(f"SciPy finds the toe at {x!r} m, quell says {ours!r}")
    else:
        near("toe", ours["xtoe"], x, TOE_TOLERANCE)
        near("y1", ours["y1"], y1, DEPTH_TOLERANCE * y1)
        near("y2", ours["y2"], y2, DEPTH_TOLERANCE * y2)
    if channel.wide:
        for what, method, theirs in zip(("sweep-out", "drowning"),
                                        ("jump.sweep_out_depth.friction", "jump.drowning_depth.friction"), limits_of(channel)):
            ours = program.limit(method, channel)
            if isinstance(ours, str) or theirs is None:
                if not (isinstance(ours, str) and theirs is None):
                    failures.append(f"{what} tailwater: quell {ours!r}, SciPy {theirs!r}")
            else:
                near(f"{what} tailwater", ours["TW"], theirs, DEPTH_TOLERANCE * theirs)
    print(f"{name}: {state}, x = {x:.6f} m, y1 = {y1:.6f} m, y2 = {y2:.6f} m")
    for failure in failures:
        print(f"  FAIL {failure}")
    return state, not failures


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True)
    program = Program(parser.parse_args().program)
    found = [compare_case(name, case, program) for name, case in CASES.items()]
    for state in ("on the reach", "drowns", "swept out"):
        if state not in {one for one, _ in found}:
            print(f"  FAIL no case in which the jump is {state}")
            return 1
    return 0 if all(good for _, good in found) else 1


if __name__ == "__main__":
    sys.exit(main())
