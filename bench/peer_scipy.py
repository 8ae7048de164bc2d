#!/usr/bin/env python3
"""The work of the benchmark whole_design once more in Python with SciPy, timed, and the ratio to quell.

The same site, discharges, tailwater cases and types; the same steps: reservoir level and chute flow of every discharge once,
the apron level of each type over all discharges and refined between them, then toe flow, sequent depth and margin for each
discharge and tailwater case. SciPy does what it is there for: solve_ivp (DOP853), brentq, minimize_scalar. Quell does more in its
time (structures, findings), so the ratio flatters Python.

A case is one discharge in one tailwater case for one type.

    peer_scipy.py --site examples/01-gravity-dam/site.toml --quell build/bench/quell.json [--program build/quell]
"""
import argparse
import json
import os
import pathlib
import statistics
import subprocess
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "tests" / "reference"))
import numpy as np  # noqa: E402

import plain_hydraulics as plain  # noqa: E402
import plain_site  # noqa: E402

DISCHARGES = 40
# For type_1 the tailwater factor at Froude numbers up to 9; a factor changes the level found, not the work.
FACTORS = {"type_1": 1.05, **plain.TAILWATER_FACTOR}
RUNS = 3


def design_type(site, flows, factor):
    """Apron level over the range, then every case: (level, cases)."""
    level, _ = plain.apron_level(site, flows, factor)
    step = site["apron_step"]
    apron = np.floor(level / step + 1e-9) * step
    cases = []
    for flow in flows:
        y1, v1, y2 = plain.toe(flow, site["basin_width"], apron)
        for tailwater_case in ("low", "expected", "high"):
            available = site["tailwater"](flow.discharge, tailwater_case) - apron
            cases.append((flow.discharge, tailwater_case, y1, v1, y2, available - factor * y2))
    return apron, cases


def design(site):
    bed = plain.Bed(site, site["lowest_level"])
    flows = [plain.flow_of(site, bed, q) for q in np.linspace(site["smallest"], site["largest"], DISCHARGES)]
    return {kind: design_type(site, flows, factor) for kind, factor in FACTORS.items()}


def median_of_quell(path):
    """(seconds, cases) of whole_design from Google Benchmark's JSON."""
    for row in json.loads(path.read_text(encoding="utf-8"))["benchmarks"]:
        if row["run_name"] == "whole_design" and row.get("aggregate_name") == "median":
            return row["real_time"] * {"ns": 1e-9, "us": 1e-6, "ms": 1e-3, "s": 1.0}[row["time_unit"]], round(row["cases"])
    raise SystemExit(f"{path} holds no median of whole_design")


def aprons_of_quell(program, site_path):
    done = subprocess.run([program, "design", site_path, "--all-types", "--json"], capture_output=True, text=True, check=False)
    if done.returncode not in (0, 1):
        raise SystemExit(f"quell ended with {done.returncode}:\n{done.stderr}")
    return {option["type"]: option["apron_level"] for option in json.loads(done.stdout)["options"]}


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--site", type=pathlib.Path, required=True)
    parser.add_argument("--quell", type=pathlib.Path, required=True)
    parser.add_argument("--program", type=pathlib.Path, default=pathlib.Path("build/quell"))
    options = parser.parse_args()
    site = plain_site.read_site(options.site)
    site["basin_width"] = site["chute"]["end_width"]
    site["lowest_level"] = site["tailwater"](site["smallest"], "low") - 15.0
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        result = design(site)
        times.append(time.perf_counter() - start)
    cases = sum(len(found) for _, found in result.values())
    theirs, ours = aprons_of_quell(options.program, options.site), result
    if not site["width_is_free"]:
        for kind in plain.TAILWATER_FACTOR:
            print(f"apron of {kind}: quell {theirs[kind]:.3f} m, SciPy {ours[kind][0]:.3f} m")
    seconds, quell_cases = median_of_quell(options.quell)
    python = statistics.median(times)
    print(f"quell:  {seconds * 1e3:10.3f} ms for {quell_cases} cases, {seconds / quell_cases * 1e6:10.2f} us a case")
    print(f"Python: {python * 1e3:10.3f} ms for {cases} cases, {python / cases * 1e6:10.2f} us a case (median of {RUNS} runs)")
    print(f"ratio:  {(python / cases) / (seconds / quell_cases):.0f} times per case")
    print(f"Load of the machine in the last minute: {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors; times hold for a quiet one.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
