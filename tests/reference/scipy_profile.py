#!/usr/bin/env python3
"""Compares quell's chute flow, toe flow and apron level with an independent integration by SciPy (plain_hydraulics.py).

Each site below is invented. It is written to a temporary folder, designed by the program, and computed again here: reservoir
level, y1, V1 and y2 at several discharges to 1e-5 relative, the apron level to its rounding step.

Usage: scipy_profile.py --program build/quell      exit code 77: SciPy is not installed, nothing was compared
"""
import argparse
import json
import math
import pathlib
import subprocess
import sys
import tempfile

try:
    import numpy as np

    import plain_hydraulics as plain
    import plain_site
except ImportError as error:
    print(f"Skipped: {error}")
    sys.exit(77)

TOLERANCE = 1e-5        # relative, of depths and velocities
LEVEL_TOLERANCE = 1e-5  # m: how near to a rounding step the choice between two steps is left open
DISCHARGES_COMPARED = 7
APRON_SAMPLES = 60

SITES = {
    "steep face, thick flow": """
        units = "SI"
        [project]
        name = "Invented site of the tests: gravity dam"
        [crest]
        level = "100 m"
        design_head = "6 m"
        net_width = "36 m"
        approach_depth = "30 m"
        piers = 2
        pier_nose = "round"
        abutment = "rounded"
        [chute]
        slope = "0.75H:1V"
        width = "40 m"
        roughness_height = "0.6 mm"
        [river]
        bed_level = "55 m"
        bed_degradation = "0.4 m"
        [river.rating]
        discharge = [20, 100, 300, 600, 900, 1300]
        low = [56.2, 58.0, 60.9, 63.6, 65.6, 67.8]
        expected = [56.5, 58.4, 61.4, 64.2, 66.3, 68.6]
        high = [56.8, 58.8, 61.9, 64.8, 67.0, 69.4]
        [discharges]
        design_flood = 900
        check_flood = 1200
        smallest = 40
        [basin]
        types = ["type_2", "type_3"]
    """,
    "long chute of two slopes, layer reaches the surface": """
        units = "SI"
        [project]
        name = "Invented site of the tests: long chute"
        [crest]
        level = 250
        design_head = 2
        net_width = 20
        approach_depth = 1.5
        abutment_contraction = 0.05
        [chute]
        width = 20
        roughness_height = "2 mm"
        [[chute.reaches]]
        slope = "3H:1V"
        end_level = "225 m"
        [[chute.reaches]]
        slope = "1.4H:1V"
        [river]
        bed_level = 195
        [river.section]
        bottom_width = 22
        side_slope = "2H:1V"
        bed_slope = 0.0012
        manning_n = { low = 0.030, expected = 0.035, high = 0.042 }
        [discharges]
        design_flood = 110
        smallest = 12
        steps = 31
        [basin]
        types = ["type_2", "type_3"]
        tailwater_margin = "0.25 m"
        apron_step = "0.05 m"
    """,
    "converging chute": """
        units = "SI"
        [project]
        name = "Invented site of the tests: converging chute"
        [crest]
        level = "320 m"
        design_head = "3 m"
        net_width = "24 m"
        approach_depth = "6 m"
        abutment = "guided"
        [chute]
        slope = "1.5H:1V"
        width = "24 m"
        end_width = "20 m"
        end_width_level = "296 m"
        roughness_height = "1 mm"
        [river]
        bed_level = "284 m"
        [river.rating]
        discharge = [10, 60, 120, 200, 320]
        level = [285.0, 286.3, 287.4, 289.3, 292.4]
        [discharges]
        design_flood = 240
        check_flood = 300
        smallest = 15
        [basin]
        types = ["type_2"]
    """,
}


def run_program(program, folder, text):
    path = folder / "site.toml"
    path.write_text("\n".join(line.strip() for line in text.splitlines()) + "\n", encoding="utf-8")
    done = subprocess.run([program, "design", path, "--json"], capture_output=True, text=True, check=False, timeout=300)
    if done.returncode not in (0, 1):
        raise SystemExit(f"quell ended with {done.returncode}:\n{done.stderr}")
    return json.loads(done.stdout), plain_site.read_site(path)


class Comparison:
    def __init__(self, name):
        self.name, self.failures, self.count, self.largest = name, [], 0, 0.0

    def near(self, what, ours, theirs):
        off = abs(ours - theirs) / abs(theirs)
        self.count += 1
        self.largest = max(self.largest, off)
        if not off <= TOLERANCE:
            self.failures.append(f"{what}: quell {ours!r}, SciPy {theirs!r}, relative difference {off:.2e}")

    def holds(self, what, truth):
        self.count += 1
        if not truth:
            self.failures.append(what)


def compare_reservoir(result, site, comparison):
    for case in result["cases"]:
        level = plain.reservoir_level(site, case["discharge"])
        head = site["crest"]["crest_level"]
        comparison.near(f"reservoir head at {case['discharge']:.6g} m3/s", case["reservoir_level"] - head, level - head)


def compare_toe(option, site, bed, comparison):
    """Every discharge occurs once for each tailwater case; the flow at the toe is the same in all."""
    cases = [case for case in option["cases"] if case["tailwater_case"] == "low"]
    step = max(1, (len(cases) - 1) // (DISCHARGES_COMPARED - 1))
    reached = 0
    for case in cases[::step]:
        flow = plain.flow_of(site, bed, case["discharge"])
        reached += flow.critical_path is not None and flow.critical_path < bed.path_at(option["apron_level"])
        y1, v1, y2 = plain.toe(flow, site["basin_width"], option["apron_level"])
        where = f"{option['type']} at {case['discharge']:.6g} m3/s"
        comparison.near(f"y1 of {where}", case["y1"], y1)
        comparison.near(f"V1 of {where}", case["V1"], v1)
        comparison.near(f"F1 of {where}", case["F1"], v1 / math.sqrt(plain.G * y1))
        comparison.near(f"y2 of {where}", case["y2"], y2)
        available = site["tailwater"](case["discharge"], "low") - option["apron_level"]
        comparison.near(f"available depth of {where}", case["available_depth"], available)
    return reached


def compare_apron(option, site, bed, comparison):
    discharges = np.linspace(site["smallest"], site["largest"], APRON_SAMPLES)
    flows = [plain.flow_of(site, bed, discharge) for discharge in discharges]
    level, discharge = plain.apron_level(site, flows, plain.TAILWATER_FACTOR[option["type"]])
    step = site["apron_step"]
    allowed = {math.floor((level + shift) / step + 1e-9) for shift in (-LEVEL_TOLERANCE, LEVEL_TOLERANCE)}
    ours = option["apron_level"] / step
    comparison.holds(f"apron of {option['type']}: quell {option['apron_level']!r} m, SciPy {level:.6f} m (at {discharge:.5g} m3/s)"
                     f" rounded down to {step:g} m", abs(ours - round(ours)) < 1e-6 and round(ours) in allowed)
    return level, discharge


def compare_site(name, text, program):
    comparison = Comparison(name)
    with tempfile.TemporaryDirectory(prefix="quell-scipy-") as folder:
        result, site = run_program(program, pathlib.Path(folder), text)
    comparison.holds("no option came back", bool(result["options"]))
    compare_reservoir(result, site, comparison)
    for option in result["options"]:
        bed = plain.Bed(site, option["apron_level"] - 5.0)
        reached = compare_toe(option, site, bed, comparison)
        level, discharge = compare_apron(option, site, bed, comparison)
        print(f"{name}: {option['type']} apron {option['apron_level']:.3f} m (SciPy {level:.5f} m, governed by {discharge:.4g} m3/s); "
              f"the layer reached the surface at {reached} of the discharges compared")
    print(f"{name}: {comparison.count} values compared, {len(comparison.failures)} differ, largest relative difference "
          f"{comparison.largest:.1e}")
    for failure in comparison.failures:
        print(f"  FAIL {failure}")
    return not comparison.failures


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True)
    program = parser.parse_args().program
    good = [compare_site(name, text, program) for name, text in SITES.items()]
    return 0 if all(good) else 1


if __name__ == "__main__":
    sys.exit(main())
