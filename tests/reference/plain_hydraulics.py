"""The hydraulics from reservoir to apron once more, plainly, in Python with SciPy.

No code of quell is used: formulas and tables are typed from the publications that the records of quell name too. Shared by
scipy_profile.py (which compares results) and by bench/peer_scipy.py (which compares times). SI throughout, levels end in
_level. A site is the plain dict that plain_site.py makes of a site file.

Assumptions, the same as quell states: energy coefficient 1, clear water, hydrostatic pressure on the slope (cos theta kept), no
loss in the curve between chute and apron.
"""
import math

import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq, minimize_scalar

G = 9.81
NU = 1.004e-6

# Discharge coefficient of a vertical-faced ogee at design head over P/Hd, m^0.5/s. From memory: reading of the chart in Design of
# Small Dams, 3rd ed. 1987, fig. 9-23; the end value 1.704 at P = 0 is exact theory.
CO_P = [0, 0.05, 0.10, 0.15, 0.20, 0.25, 0.30, 0.40, 0.50, 0.60, 0.80, 1.00, 1.25, 1.50, 2.0, 2.5, 3.0]
CO = [1.704, 1.789, 1.866, 1.927, 1.971, 2.004, 2.037, 2.079, 2.098, 2.112, 2.131, 2.142, 2.153, 2.161, 2.172, 2.178, 2.181]


# --- crest -------------------------------------------------------------------------------------------------------------------

def crest_discharge(site, head):
    """Q = C Le He^1.5; C with the smooth head factor of Castro-Orgaz and Hager (from memory); vertical upstream face."""
    crest = site["crest"]
    chi = head / crest["design_head"]
    head_factor = (1 + 4 * chi / (9 + 5 * chi)) / (9 / 7)
    coefficient = np.interp(crest["approach_depth"] / crest["design_head"], CO_P, CO) * head_factor
    length = crest["net_width"] - 2 * (crest["piers"] * crest["pier_contraction"] + crest["abutment_contraction"]) * head
    return coefficient * length * head**1.5


def reservoir_level(site, discharge):
    """The level whose head gives the discharge. The effective length shrinks with the head, so the search stays below its maximum."""
    high = 0.01
    while crest_discharge(site, high) < discharge:
        high *= 1.3
    head = brentq(lambda h: crest_discharge(site, h) - discharge, 0.0, high, xtol=1e-13, rtol=1e-14)
    return site["crest"]["crest_level"] + head


# --- geometry ----------------------------------------------------------------------------------------------------------------

class Bed:
    """Bed of the chute from the tangent point of x^1.85 = 2 Hd^0.85 y down to `lowest_level`, by distance along the bed from the start
    of the crest's curvature (upstream quadrant 0.3342 Hd, then the arc to the tangent point)."""

    def __init__(self, site, lowest_level):
        self.site = site
        head = site["crest"]["design_head"]
        slopes = site["chute"]["slopes"]
        x = head * (2.0 * slopes[0] / 1.85) ** (1 / 0.85)
        y = x**1.85 / (2.0 * head**0.85)
        arc = quad(lambda t: math.hypot(1.0, 1.85 * t**0.85 / (2.0 * head**0.85)), 0.0, x, epsabs=1e-12, epsrel=1e-12)[0]
        self.tangent_path = 0.3342 * head + arc
        self.tangent_level = site["crest"]["crest_level"] - y
        # Reaches: (path at the start, level at the start, angle); the last one goes on.
        self.reaches = []
        path, level = self.tangent_path, self.tangent_level
        for slope, end in zip(slopes, list(site["chute"]["end_levels"]) + [lowest_level]):
            angle = math.atan(slope)
            self.reaches.append((path, level, angle))
            path, level = path + (level - end) / math.sin(angle), end
        self.lowest_path, self.lowest_level = path, lowest_level

    def reach(self, path):
        chosen = self.reaches[0]
        for candidate in self.reaches[1:]:
            if path >= candidate[0]:
                chosen = candidate
        return chosen

    def level(self, path):
        start, level, angle = self.reach(path)
        return level - (path - start) * math.sin(angle)

    def path_at(self, level):
        """Where the last reach meets a level."""
        start, start_level, angle = self.reaches[-1]
        return start + (start_level - level) / math.sin(angle)

    def width(self, level):
        chute = self.site["chute"]
        if chute["width"] == chute["end_width"]:
            return chute["width"]
        share = (self.tangent_level - level) / (self.tangent_level - chute["end_width_level"])
        return chute["width"] + (chute["end_width"] - chute["width"]) * min(1.0, max(0.0, share))

    def breaks(self):
        """Paths at which slope or taper change, so that nothing is integrated across a kink."""
        found = [start for start, _, _ in self.reaches[1:]]
        chute = self.site["chute"]
        if chute["width"] != chute["end_width"]:
            level = chute["end_width_level"]
            for (start, top, angle), following in zip(self.reaches, self.reaches[1:] + [None]):
                path = start + (top - level) / math.sin(angle)
                if start <= path and (following is None or path <= following[0]):
                    found.append(path)
        return sorted(found)


# --- flow on the chute -------------------------------------------------------------------------------------------------------

def depth_from_energy(q, energy, cosine):
    """Supercritical root of d cos(theta) + q^2/(2 g d^2) = E."""
    critical = (q * q / (G * cosine)) ** (1 / 3)
    if energy <= 1.5 * critical * cosine:
        raise ValueError("the energy does not carry the flow")
    thin = 0.999 * q / math.sqrt(2 * G * energy)
    return brentq(lambda d: d * cosine + q * q / (2 * G * d * d) - energy, thin, critical, xtol=1e-15, rtol=1e-14)


def layer_thickness(path, ks):
    """delta = 0.08 L (L/ks)^-0.233: Campbell, Cox and Boyd 1965 (from memory)."""
    return 0.08 * path * (path / ks) ** -0.233


def friction_factor(ks, radius, velocity):
    """Colebrook: 1/sqrt f = -2 log10(ks/(14.84 R) + 2.51/(Re sqrt f)), Re = 4 R V/nu."""
    reynolds = 4 * radius * velocity / NU
    root = brentq(lambda s: s + 2 * math.log10(ks / (14.84 * radius) + 2.51 * s / reynolds), 1.0, 40.0, xtol=1e-13, rtol=1e-14)
    return 1 / root**2


class ChuteFlow:
    """Energy level along the bed for one discharge.

    While the layer is thinner than the flow: potential depth dp, head loss 0.22 delta u^3/(2 g q), kept from falling again. From
    delta = dp + 0.18 delta on: dH/dx = -Sf.
    """

    def __init__(self, site, bed, discharge, level):
        self.site, self.bed, self.discharge, self.level = site, bed, discharge, level
        self.ks = site["chute"]["roughness_height"]
        self.samples = np.linspace(self.start_of_chute_flow(), bed.lowest_path, 120)
        excess = [self.layer_excess(path) for path in self.samples]
        self.critical_path = None
        for i, value in enumerate(excess):
            if value >= 0:
                self.critical_path = self.samples[0] if i == 0 else brentq(self.layer_excess, self.samples[i - 1], self.samples[i],
                                                                           xtol=1e-12, rtol=1e-14)
                break
        end = self.critical_path if self.critical_path is not None else bed.lowest_path
        breaks = [path for path in bed.breaks() if self.samples[0] < path < end]
        paths = np.unique(np.concatenate([self.samples[self.samples < end], breaks, [end]]))
        self.layer_paths = paths
        self.layer_loss = np.maximum.accumulate([self.loss(path) for path in paths])
        self.pieces = self.integrate_friction() if self.critical_path is not None else []

    def start_of_chute_flow(self):
        """On a flat face the crest's curved flow goes on below the tangent point: chute flow starts where the energy head above the bed
        is 1.3 times the least."""
        def excess(path):
            cosine = math.cos(self.bed.reach(path)[2])
            least = 1.5 * (self.unit_discharge(path) ** 2 / (G * cosine)) ** (1 / 3) * cosine
            return self.level - self.bed.level(path) - 1.3 * least

        first, last = self.bed.tangent_path, self.bed.lowest_path
        return first if excess(first) >= 0 else brentq(excess, first, last, xtol=1e-12)

    def unit_discharge(self, path):
        return self.discharge / self.bed.width(self.bed.level(path))

    def potential(self, path):
        q = self.unit_discharge(path)
        depth = depth_from_energy(q, self.level - self.bed.level(path), math.cos(self.bed.reach(path)[2]))
        return q, depth

    def layer_excess(self, path):
        return 0.82 * layer_thickness(path, self.ks) - self.potential(path)[1]

    def loss(self, path):
        """The layer cannot be thicker than the flow: matters where it has reached the surface by the tangent point."""
        q, depth = self.potential(path)
        delta = min(layer_thickness(path, self.ks), depth / 0.82)
        return 0.22 * delta * (q / depth) ** 3 / (2 * G * q)

    def friction_slope(self, path, energy_level, angle):
        bed_level = self.bed.level(path)
        width = self.bed.width(bed_level)
        q = self.discharge / width
        depth = depth_from_energy(q, energy_level - bed_level, math.cos(angle))
        radius = width * depth / (width + 2 * depth)
        velocity = q / depth
        return friction_factor(self.ks, radius, velocity) * velocity**2 / (8 * G * radius)

    def integrate_friction(self):
        start, end = self.critical_path, self.bed.lowest_path
        energy = self.level - self.layer_loss[-1]
        stops = [start] + [p for p in self.bed.breaks() if start < p < end] + [end]
        pieces = []
        for a, b in zip(stops, stops[1:]):
            angle = self.bed.reach(0.5 * (a + b))[2]
            answer = solve_ivp(lambda x, h, angle=angle: [-self.friction_slope(x, h[0], angle)], (a, b), [energy],
                               method="DOP853", rtol=1e-10, atol=1e-12, dense_output=True)
            if not answer.success:
                raise ValueError(answer.message)
            pieces.append((a, b, answer.sol))
            energy = answer.y[0][-1]
        return pieces

    def energy_level(self, path):
        for a, b, solution in self.pieces:
            if a <= path <= b:
                return float(solution(path)[0])
        before = self.layer_loss[self.layer_paths <= path]
        return self.level - max(self.loss(path), before[-1] if len(before) else 0.0)


# --- toe and apron -----------------------------------------------------------------------------------------------------------

def sequent_depth(y1, v1):
    return 0.5 * y1 * (math.sqrt(1 + 8 * v1 * v1 / (G * y1)) - 1)


def toe(flow, width, apron_level):
    """(y1, V1, y2) on the apron, with the width of the basin."""
    energy = flow.energy_level(flow.bed.path_at(apron_level)) - apron_level
    q = flow.discharge / width
    y1 = depth_from_energy(q, energy, 1.0)
    return y1, q / y1, sequent_depth(y1, q / y1)


# Tailwater that a type asks for over the sequent depth: Type II 1.05 (full sequent depth and 5 % on top), Type III 1.0 (both
# Engineering Monograph 25, Peterka 1984, from memory).
TAILWATER_FACTOR = {"type_2": 1.05, "type_3": 1.0}


def highest_apron(site, flow, factor):
    """z of TW - z = k y2(z) + margin in the low tailwater, for one discharge: the surplus falls as z rises."""
    low_level = site["tailwater"](flow.discharge, "low")

    def surplus(z):
        _, _, y2 = toe(flow, site["basin_width"], z)
        return low_level - z - factor * y2 - site["tailwater_margin"]

    low, high = flow.bed.lowest_level, min(low_level, flow.bed.reaches[-1][1])
    # Close below the tailwater a thick flow is not supercritical: come down until it is.
    while True:
        try:
            surplus(high)
            break
        except ValueError:
            high -= 0.1
    return brentq(surplus, low, high, xtol=1e-10, rtol=1e-14)


def flow_of(site, bed, discharge):
    return ChuteFlow(site, bed, discharge, reservoir_level(site, discharge))


def apron_level(site, flows, factor):
    """The lowest of those levels over the range of discharges (`flows` in order), refined between them: (level, governing
    discharge)."""
    levels = [highest_apron(site, flow, factor) for flow in flows]
    i = int(np.argmin(levels))
    bounds = (flows[max(0, i - 1)].discharge, flows[min(len(flows) - 1, i + 1)].discharge)
    refined = minimize_scalar(lambda q: highest_apron(site, flow_of(site, flows[0].bed, q), factor), bounds=bounds,
                              method="bounded", options={"xatol": 1e-6 * flows[-1].discharge})
    return min((levels[i], flows[i].discharge), (refined.fun, refined.x))
