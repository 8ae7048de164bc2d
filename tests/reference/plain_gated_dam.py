#!/usr/bin/env python3
"""Independent numbers for examples/05-gated-dam, without any code of quell: the law of the yearly floods by SciPy, the volume of the
measured inflow, and the water surface through the surveyed sections by the standard step with SciPy's brentq.

Usage: /usr/bin/python3 tests/reference/plain_gated_dam.py; prints what tests/cli/site_data.txt expects.
"""
import csv
import pathlib
import re
import tomllib

import numpy as np
from scipy.optimize import brentq
from scipy.stats import pearson3

FOLDER = pathlib.Path(__file__).resolve().parents[2] / "examples/05-gated-dam"
G = 9.81


def table(name):
    rows = [r for r in csv.reader(open(FOLDER / name)) if r and not r[0].startswith("#")]
    return np.array([[float(v) for v in r] for r in rows[1:]])


def number(text):
    return float(re.match(r"[-0-9.]+", text).group()) if isinstance(text, str) else float(text)


def yearly_flood(period, regional, regional_error=0.302):
    logs = np.log10(table("yearly-floods.csv")[:, 1])
    n, s = len(logs), logs.std(ddof=1)
    skew = n * ((logs - logs.mean()) ** 3).sum() / ((n - 1) * (n - 2) * s**3)
    a = -0.33 + 0.08 * abs(skew)
    b = 0.94 - 0.26 * abs(skew)
    own = 10 ** (a - b * np.log10(n / 10))
    weighted = (regional_error * skew + own * regional) / (regional_error + own)
    return 10 ** (logs.mean() + s * pearson3.ppf(1 - 1 / period, weighted))


class Section:
    def __init__(self, data, left, right, n):
        self.x, self.z = data[:, 0], data[:, 1]
        self.left, self.right, self.n = left, right, n

    def parts(self, w):
        """Area, perimeter and width of left plain, channel, right plain, by fine cutting."""
        bounds = [self.x[0], self.left, self.right, self.x[-1]]
        result = []
        for low, high in zip(bounds, bounds[1:]):
            xs = np.unique(np.concatenate([np.linspace(low, high, 4001), self.x[(self.x > low) & (self.x < high)]]))
            depth = w - np.interp(xs, self.x, self.z)
            dx = np.diff(xs)
            wet = np.maximum(depth, 0.0)
            area = (0.5 * (wet[1:] + wet[:-1]) * dx).sum()
            under = (depth[1:] > 0) & (depth[:-1] > 0)
            perimeter = np.hypot(dx, np.diff(depth))[under].sum()
            result.append((area, perimeter))
        return result

    def conveyance(self, w):
        K = [a * (a / p) ** (2 / 3) / n if a > 1e-9 else 0.0 for (a, p), n in zip(self.parts(w), self.n)]
        area = sum(a for a, _ in self.parts(w))
        total = sum(K)
        alpha = sum(k**3 / a**2 for k, (a, _) in zip(K, self.parts(w)) if k > 0) * area**2 / total**3
        return K, total, area, alpha


def tailwater(site, discharge):
    survey = site["river"]["survey"]
    sections = [(number(s["distance"]), Section(table(s["file"]), number(s["left_bank"]), number(s["right_bank"]),
                                                [s["n_left"], s["n_channel"], s["n_right"]])) for s in survey["sections"]]
    slope = survey["control_slope"]
    last = sections[-1][1]
    w = brentq(lambda v: last.conveyance(v)[1] * slope**0.5 - discharge, last.z.min() + 0.5, last.z.min() + 20)
    for (x2, upper), (x1, lower) in zip(sections[-2::-1], sections[:0:-1]):
        _, k1, a1, alpha1 = lower.conveyance(w)
        head1 = alpha1 * (discharge / a1) ** 2 / (2 * G)
        start = w

        def balance(v):
            _, k2, a2, alpha2 = upper.conveyance(v)
            head2 = alpha2 * (discharge / a2) ** 2 / (2 * G)
            loss = (0.1 if head1 > head2 else 0.3) * abs(head1 - head2)
            return v + head2 - start - head1 - (x1 - x2) * (2 * discharge / (k1 + k2)) ** 2 - loss

        w = brentq(balance, start - 0.3, start + 3)
    return w


def main():
    site = tomllib.loads((FOLDER / "site.toml").read_text())
    inflow = table("check-inflow.csv")
    factor = site["floods"]["climate_factor"]
    print("peak of the 20-year inflow", factor * yearly_flood(20, 0.1))
    print("peak of the 100-year inflow", factor * yearly_flood(100, 0.1))
    print("volume of the check inflow", factor * np.trapezoid(inflow[:, 1], inflow[:, 0] * 3600)
          if hasattr(np, "trapezoid") else factor * np.trapz(inflow[:, 1], inflow[:, 0] * 3600))
    for discharge in (300.0, 1000.0, 2000.0):
        print("expected tailwater at", discharge, tailwater(site, discharge))


main()
