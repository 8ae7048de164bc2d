#!/usr/bin/env python3
"""Reads every include in src/quell and fails on an arrow that the house does not allow.

A floor (folder of src/quell) may include itself and the floors in ARROWS. Paths to our own headers start at "quell/". Also
checked: headers have #pragma once, no file is longer than 450 lines, and the engine (base to output) keeps away from
headers outside the project's language subset.

    tools/lint_includes.py            checks the tree this file stands in
    tools/lint_includes.py --self-test  proves on made-up files that each rule can fail
"""
import pathlib
import re
import sys
import tempfile

# Closest first. `output` and `io` read results; they never reach hydraulics.
ARROWS = {
    "base": [],
    "hydraulics": ["base"],
    "site": ["hydraulics", "base"],
    "dissipators": ["site", "hydraulics", "base"],
    "checks": ["dissipators", "site", "hydraulics", "base"],
    "design": ["checks", "dissipators", "site", "base"],
    "transient": ["hydraulics", "base"],
    "output": ["design", "checks", "dissipators", "site", "base"],
    "io": ["design", "checks", "dissipators", "site", "base"],
    "app": ["base", "hydraulics", "site", "dissipators", "checks", "design", "transient", "output", "io"],
}
ENGINE = [floor for floor in ARROWS if floor != "app"]
OUTSIDE_SUBSET = {"ranges", "source_location", "format", "expected", "print", "iostream"}
PURE = ["base", "hydraulics", "site", "dissipators", "checks", "design", "transient"]
IMPURE_HEADERS = {"chrono", "ctime", "random", "fstream", "filesystem", "iostream"}
LONGEST_FILE = 450

# std::locale::classic() is how to stay free of the user's locale; any other use brings it in.
USER_LOCALE = re.compile(r"\bsetlocale\s*\(|std::locale\s*[({]")
INCLUDE = re.compile(r'^\s*#\s*include\s*(?P<open>["<])(?P<path>[^">]+)[">]')


def problems_of(path, floor):
    text = path.read_text(encoding="utf-8")
    lines = text.splitlines()
    if path.suffix == ".h" and "#pragma once" not in text:
        yield 1, "a header without #pragma once"
    if len(lines) > LONGEST_FILE:
        yield len(lines), f"{len(lines)} lines; a file is read in one sitting, at most {LONGEST_FILE}"
    for number, line in enumerate(lines, start=1):
        if floor in ENGINE and USER_LOCALE.search(line):
            yield number, "the engine must not read or set the user's locale"
        match = INCLUDE.match(line)
        if match:
            for message in problems_of_include(match["open"], match["path"], floor):
                yield number, message


def problems_of_include(opening, included, floor):
    if opening == '"':
        parts = included.split("/")
        if parts[0] != "quell" or len(parts) < 3:
            yield f'"{included}": own headers are included by their path from "quell/"'
        elif parts[1] not in ARROWS:
            yield f'"{included}": there is no floor "{parts[1]}"'
        elif parts[1] != floor and parts[1] not in ARROWS[floor]:
            yield f'"{included}": {floor} may include {", ".join(ARROWS[floor]) or "nothing"}, not {parts[1]}'
        return
    if floor in ENGINE and included in OUTSIDE_SUBSET:
        yield f"<{included}> lies outside the language subset of the engine"
    if floor in PURE and included in IMPURE_HEADERS:
        yield f"<{included}>: no clock, locale, file or random seed from base to transient"


def check_tree(root):
    """Returns the problems of root/src/quell as lines of text, and the number of files read."""
    found, count = [], 0
    for path in sorted((root / "src" / "quell").rglob("*")):
        if path.suffix not in (".h", ".cpp"):
            continue
        floor = path.relative_to(root / "src" / "quell").parts[0]
        count += 1
        where = path.relative_to(root)
        if floor not in ARROWS:
            found.append(f"{where}:1: there is no floor \"{floor}\" in the floor plan")
            continue
        found += [f"{where}:{number}: {message}" for number, message in problems_of(path, floor)]
    return found, count


def self_test():
    cases = [
        ("base/a.h", '#pragma once\n#include <vector>\n#include "quell/base/b.h"\n', 0),
        ("base/a.h", '#pragma once\n#include "quell/site/site.h"\n', 1),
        ("output/report/a.cpp", '#include "quell/hydraulics/jump.h"\n', 1),
        ("output/report/a.cpp", '#include "quell/design/result.h"\n', 0),
        ("hydraulics/a.cpp", '#include "jump.h"\n', 1),
        ("hydraulics/a.cpp", "#include <ranges>\n", 1),
        ("site/a.cpp", "#include <chrono>\n", 1),
        ("io/a.cpp", "#include <fstream>\n", 0),
        ("io/a.cpp", "s.imbue(std::locale::classic());\n", 0),
        ("io/a.cpp", 's.imbue(std::locale(""));\n', 1),
        ("app/a.cpp", '#include "quell/hydraulics/jump.h"\n', 0),
        ("cellar/a.cpp", "\n", 1),
        ("base/a.h", "#include <vector>\n", 1),
        ("base/a.cpp", "\n" * 451, 1),
    ]
    wrong = 0
    for name, text, expected in cases:
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "src" / "quell" / name
            path.parent.mkdir(parents=True)
            path.write_text(text, encoding="utf-8")
            found, _ = check_tree(pathlib.Path(folder))
            if len(found) != expected:
                wrong += 1
                print(f"self-test: {name} with {text[:60]!r}: expected {expected} problem(s), found {found}")
    return wrong


def main():
    if sys.argv[1:] not in ([], ["--self-test"]):
        print(__doc__)
        return 2
    if self_test():
        return 1
    if sys.argv[1:]:
        print("The self-test passed.")
        return 0
    found, count = check_tree(pathlib.Path(__file__).resolve().parent.parent)
    print("\n".join(found) if found else f"{count} files, every arrow is allowed.")
    return 1 if found or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
