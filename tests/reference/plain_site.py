"""Reads a site file into a plain dict for plain_hydraulics.py, with Python's own TOML reader: no code of quell.

Understands what the checks need and refuses the rest: SI units m, mm, m3/s; vertical-faced ogee; roughness height; slopes "0.7H:1V",
"35 deg", "25 %" or a number; a tailwater rating (inline or CSV) or a trapezoidal river section.
"""
import csv
import math
import re
import tomllib

import numpy as np
from scipy.optimize import brentq

UNITS = {"m": 1.0, "mm": 1e-3, "m3/s": 1.0, "m^3/s": 1.0, "m³/s": 1.0, "": 1.0}
PIER_NOSES = {"round": 0.01, "pointed": 0.0, "square_rounded": 0.02, "square": 0.1}
ABUTMENTS = {"square": 0.20, "rounded": 0.10, "guided": 0.0}


def number(value):
    """"412.5 m" to 412.5; thousands may be grouped by blanks."""
    if isinstance(value, (int, float)):
        return float(value)
    match = re.fullmatch(r"\s*(-?[0-9][0-9 _]*(?:\.[0-9]+)?(?:e-?[0-9]+)?)\s*([a-zA-Zµ³^0-9/]*)\s*", value)
    if not match or match[2] not in UNITS:
        raise ValueError(f"{value!r} is not a quantity that this reader knows")
    return float(re.sub("[ _]", "", match[1])) * UNITS[match[2]]


def slope(value):
    """tan(theta) of a slope."""
    if isinstance(value, (int, float)):
        return float(value)
    match = re.fullmatch(r"\s*([0-9.]+)\s*H\s*:\s*([0-9.]+)\s*V\s*", value)
    if match:
        return float(match[2]) / float(match[1])
    match = re.fullmatch(r"\s*([0-9.]+)\s*V\s*:\s*([0-9.]+)\s*H\s*", value)
    if match:
        return float(match[1]) / float(match[2])
    if value.strip().endswith("deg"):
        return math.tan(math.radians(float(value.strip()[:-3])))
    if value.strip().endswith("%"):
        return float(value.strip()[:-1]) / 100
    return number(value)


def read_crest(section):
    if section.get("upstream_face", "vertical") != "vertical":
        raise ValueError("this reader knows vertical upstream faces only")
    pier = section.get("pier_contraction", PIER_NOSES[section.get("pier_nose", "round")])
    abutment = section.get("abutment_contraction", ABUTMENTS[section.get("abutment", "rounded")])
    return {"crest_level": number(section["level"]), "design_head": number(section["design_head"]),
            "net_width": number(section["net_width"]), "approach_depth": number(section["approach_depth"]),
            "piers": section.get("piers", 0), "pier_contraction": pier, "abutment_contraction": abutment}


def read_chute(section):
    if "manning_n" in section:
        raise ValueError("this reader knows roughness heights only")
    reaches = section.get("reaches") or [{"slope": section["slope"]}]
    width = number(section["width"])
    return {"slopes": [slope(reach["slope"]) for reach in reaches],
            "end_levels": [number(reach["end_level"]) for reach in reaches[:-1]],
            "width": width, "end_width": number(section.get("end_width", width)),
            "end_width_level": number(section.get("end_width_level", 0.0)),
            "roughness_height": number(section["roughness_height"])}


def read_rating(section, folder):
    if "file" not in section:
        expected = section.get("expected", section.get("level"))
        columns = {"discharge": section["discharge"], "expected": expected, "low": section.get("low", expected),
                   "high": section.get("high", expected)}
        return {name: [number(v) for v in column] for name, column in columns.items()}
    with open(folder / section["file"], encoding="utf-8-sig", newline="") as file:
        lines = [line for line in file if line.strip() and not line.lstrip().startswith("#")]
    rows = list(csv.reader(lines))
    heads = [re.sub(r"\s*\(.*\)", "", head).strip().lower() for head in rows[0]]
    columns = {name: [float(row[i]) for row in rows[1:]] for i, name in enumerate(heads)}
    columns.setdefault("expected", columns.get("level"))
    return {"low": columns["expected"], "high": columns["expected"], **columns}


def read_river(section, folder):
    """A function (discharge, "low" | "expected" | "high") -> tailwater level."""
    lowering = {"low": number(section.get("bed_degradation", 0.0))}
    if "rating" in section:
        rating = read_rating(section["rating"], folder)
        return lambda q, case: float(np.interp(q, rating["discharge"], rating[case])) - lowering.get(case, 0.0)
    reach, bed = section["section"], number(section["bed_level"])
    b, m, s = number(reach["bottom_width"]), 1 / slope(reach["side_slope"]), slope(reach["bed_slope"])
    n = reach["manning_n"] if isinstance(reach["manning_n"], dict) else dict.fromkeys(("low", "expected", "high"), reach["manning_n"])

    def manning(y, case):
        area, perimeter = (b + m * y) * y, b + 2 * y * math.hypot(1, m)
        return area ** (5 / 3) / perimeter ** (2 / 3) * math.sqrt(s) / n[case]

    return lambda q, case: bed + brentq(lambda y: manning(y, case) - q, 1e-9, 200, xtol=1e-12) - lowering.get(case, 0.0)


def read_site(path):
    """The dict of a site file."""
    raw = tomllib.loads(path.read_text(encoding="utf-8"))
    if raw.get("units", "SI") != "SI":
        raise ValueError("this reader knows SI site files only")
    chute, floods, basin = read_chute(raw["chute"]), raw["discharges"], raw.get("basin", {})
    design_flood = number(floods["design_flood"])
    width = basin.get("width", chute["end_width"])
    return {"crest": read_crest(raw["crest"]), "chute": chute, "tailwater": read_river(raw["river"], path.parent),
            "smallest": number(floods.get("smallest", 0.05 * design_flood)),
            "largest": number(floods.get("check_flood", design_flood)), "steps": floods.get("steps", 40),
            "basin_width": chute["end_width"] if width == "free" else number(width),
            "width_is_free": width == "free",
            "tailwater_margin": number(basin.get("tailwater_margin", 0.0)), "apron_step": number(basin.get("apron_step", 0.01))}
