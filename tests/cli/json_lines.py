"""The 'json …' lines of a text test: paths, comparisons, tolerances."""
import json
import math
import operator
import re

COMPARE = {"=": operator.eq, ">": operator.gt, "<": operator.lt, ">=": operator.ge, "<=": operator.le}
PATH = r"(?P<path>(?:\[[^\]]*\]|[^\s\[])+)"  # blanks only inside brackets
EXISTS = re.compile(rf"^{PATH} (?P<verb>exists|absent)$")
ITEMS = re.compile(rf"^{PATH} has (?:(?P<sign>[<>]=?) )?(?P<count>\d+) items$")
VALUE = re.compile(rf"^{PATH} (?P<sign>=|[<>]=?) (?P<value>.+?)(?: (?:±|\+-) (?P<tolerance>[0-9.eE+-]+)(?P<percent> ?%)?)?$")
PART = re.compile(r"([^.\[\]]+)|\[(\d+|\*)\]|\[([^=\]]+)=([^\]]*)\]")


def read_object(text):
    """Returns the one JSON object of a text and None, or None and why there is none."""
    def refuse(word):
        raise ValueError(f"{word} is not JSON")

    def no_doubles(pairs):
        keys = [key for key, _ in pairs]
        if len(set(keys)) != len(keys):
            raise ValueError(f"a key occurs twice among {keys}")
        return dict(pairs)

    try:
        value = json.loads(text, parse_constant=refuse, object_pairs_hook=no_doubles)
    except ValueError as error:
        return None, f"stdout is not one JSON object: {error}; it begins with {text[:200]!r}"
    return (value, None) if isinstance(value, dict) else (None, "stdout is JSON, but not an object")


def find(value, path):
    """All values that a path leads to; none where it leads nowhere."""
    found, position = [value], 0
    while position < len(path):
        if path[position] == ".":
            position += 1
        match = PART.match(path, position)
        if not match:
            raise ValueError(f"the path {path!r} is not understood at {path[position:]!r}")
        found = [inner for item in found for inner in step_into(item, match)]
        position = match.end()
    return found


def step_into(item, match):
    name, place, key, wanted = match.groups()
    if name is not None:
        return [item[name]] if isinstance(item, dict) and name in item else []
    if not isinstance(item, list):
        return []
    if place == "*":
        return item
    if place is not None:
        return [item[int(place)]] if int(place) < len(item) else []
    return [inner for inner in item if isinstance(inner, dict) and str(inner.get(key)) == wanted]


def check(text, value):
    """Returns why the line does not hold, or None."""
    for pattern, judge in ((EXISTS, check_exists), (ITEMS, check_items), (VALUE, check_value)):
        match = pattern.match(text)
        if match:
            try:
                return judge(match, find(value, match["path"]))
            except ValueError as error:
                return str(error)
    return "this json line is not understood"


def check_exists(match, found):
    return None if bool(found) == (match["verb"] == "exists") else f"it leads to {found[:3]}"


def check_items(match, found):
    if not found:
        return "the path leads nowhere"
    for item in found:
        if not isinstance(item, list):
            return f"not a list: {str(item)[:100]}"
        if not COMPARE[match["sign"] or "="](len(item), int(match["count"])):
            return f"it has {len(item)} items"
    return None


def check_value(match, found):
    if not found:
        return "the path leads nowhere"
    try:
        wanted = json.loads(match["value"])
    except ValueError:
        return f"the expected value {match['value']} is not a number, true, false, null or a text in quotes"
    for item in found:
        failure = compare(match, item, wanted)
        if failure:
            return failure
    return None


def compare(match, item, wanted):
    is_number = isinstance(item, (int, float)) and not isinstance(item, bool)
    if match["tolerance"] is None:
        if match["sign"] != "=" and not is_number:
            return f"it is {item!r}, not a number"
        same_type = type(item) is type(wanted) or (is_number and type(wanted) in (int, float))
        return None if same_type and COMPARE[match["sign"]](item, wanted) else f"it is {item!r}"
    if match["sign"] != "=" or not is_number or type(wanted) not in (int, float):
        return f"a tolerance needs '=' and numbers; it is {item!r}"
    tolerance = float(match["tolerance"]) * (abs(wanted) / 100 if match["percent"] else 1)
    if not tolerance > 0:
        return "the tolerance must be above zero"
    off = abs(item - wanted)
    # The digits typed are decimal: allow the rounding of the two numbers themselves.
    return None if off <= tolerance + 4e-16 * max(1.0, abs(wanted)) and math.isfinite(item) else f"it is {item!r}, off by {off:.3g}"
