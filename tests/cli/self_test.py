"""Proves that each kind of line of a text test can pass and can fail, with a made-up program in the place of quell."""
import pathlib
import sys
import tempfile

import steps

# Prints its arguments to stderr, a JSON object or a text to stdout, ends with the code asked for, and can write a file.
FAKE = """
import sys, pathlib
words = sys.argv[1:]
if "json" in words:
    print('{"a": {"b": 2.5, "t": true, "s": "x"}, "list": [{"id": "p", "n": 1}, {"id": "q", "n": 2}]}')
if "noise" in words:
    print("noise")
if "nan" in words:
    print('{"a": NaN}')
if "lines" in words:
    print("first line\\n  second line")
if "cat" in words:
    print(pathlib.Path(words[1]).read_text(), end="")
if "make" in words:
    pathlib.Path("made.txt").write_text("made")
print("words:", *words, file=sys.stderr)
sys.exit(int(words[0]))
"""

# (must pass, lines of a block)
CASES = [
    (True, ["$ quell 0", "exit 0"]),
    (False, ["$ quell 1", "exit 0"]),
    (True, ["$ quell 2", "exit 2", "$ quell 3", "exit 3"]),
    (False, ["$ quell 2", "exit 2", "$ quell 3", "exit 2"]),
    (True, ["$ quell 1", "exit 0 or 1"]),
    (False, ["$ quell 2", "exit 0 or 1"]),
    (False, ["$ quell 10", "exit 0 or 1"]),
    (True, ["$ quell 0 lines", "exit 0", "stdout: second line"]),
    (False, ["$ quell 0 lines", "exit 0", "stdout: second"]),
    (True, ["$ quell 0 lines", "exit 0", "stdout contains cond li"]),
    (False, ["$ quell 0 lines", "exit 0", "stdout contains third"]),
    (True, ["$ quell 0 lines", "exit 0", "stdout lacks third"]),
    (False, ["$ quell 0 lines", "exit 0", "stdout lacks second"]),
    (True, ["$ quell 0 lines", "exit 0", r"stdout ~ ^f\w+ line$"]),
    (False, ["$ quell 0 lines", "exit 0", r"stdout ~ ^f\w+$"]),
    (True, ["$ quell 0", "exit 0", "stdout empty"]),
    (False, ["$ quell 0 lines", "exit 0", "stdout empty"]),
    (False, ["$ quell 0", "exit 0", "stderr empty"]),
    (True, ["$ quell 0 'two words'", "exit 0", "stderr: words: 0 two words"]),
    (True, ["$ quell 0 json", "exit 0", "stdout is json"]),
    (False, ["$ quell 0 lines", "exit 0", "stdout is json"]),
    (False, ["$ quell 0 json noise", "exit 0", "stdout is json"]),
    (False, ["$ quell 0 nan", "exit 0", "stdout is json"]),
    (True, ["$ quell 0 json", "exit 0", "json a.b = 2.4 ± 0.1", "json a.b = 2.4 +- 5 %", "json a.b = 2.5"]),
    (False, ["$ quell 0 json", "exit 0", "json a.b = 2.4 ± 0.09"]),
    (False, ["$ quell 0 json", "exit 0", "json a.b = 2.4 ± 4 %"]),
    (False, ["$ quell 0 json", "exit 0", "json a.b = 2.4"]),
    (False, ["$ quell 0 json", "exit 0", "json a.c = 2.5 ± 1"]),
    (False, ["$ quell 0 json noise", "exit 0", "json a.b = 2.5 ± 1"]),
    (True, ["$ quell 0 json", "exit 0", "json a.t = true", 'json a.s = "x"', "json a.b > 2", "json a.b <= 2.5"]),
    (False, ["$ quell 0 json", "exit 0", "json a.t = false"]),
    (False, ["$ quell 0 json", "exit 0", "json a.t = 1"]),
    (False, ["$ quell 0 json", "exit 0", "json list[0].n = true"]),
    (False, ["$ quell 0 json", "exit 0", "json a.t = true ± 1"]),
    (False, ["$ quell 0 json", "exit 0", 'json a.s = "y"']),
    (False, ["$ quell 0 json", "exit 0", "json a.b > 2.5"]),
    (True, ["$ quell 0 json", "exit 0", "json list has 2 items", "json list has > 1 items", "json list[1].n = 2"]),
    (False, ["$ quell 0 json", "exit 0", "json list has 3 items"]),
    (False, ["$ quell 0 json", "exit 0", "json a has 2 items"]),
    (True, ["$ quell 0 json", "exit 0", "json list[id=q].n = 2", "json list[*].n > 0", "json list[id=r] absent"]),
    (False, ["$ quell 0 json", "exit 0", "json list[id=q].n = 1"]),
    (False, ["$ quell 0 json", "exit 0", "json list[*].n > 1"]),
    (False, ["$ quell 0 json", "exit 0", "json list[id=r] exists"]),
    (False, ["$ quell 0 json", "exit 0", "json a absent"]),
    (True, ["$ quell 0 make", "exit 0", "file made.txt exists", "file other.txt absent"]),
    (False, ["$ quell 0 make", "exit 0", "file made.txt absent"]),
    (False, ["$ quell 0", "exit 0", "file made.txt exists"]),
    (True, ["write f.txt", "| one", "| two", 'change f.txt: "two" -> "2"', "copy f.txt to g.txt", "$ quell 0 g.txt cat",
            "exit 0", "stdout: one", "stdout: 2"]),
    (False, ["write f.txt", "| one one", 'change f.txt: "one" -> "2"', "$ quell 0", "exit 0"]),
    (False, ["write f.txt", "| one", 'change f.txt: "two" -> "2"', "$ quell 0", "exit 0"]),
    (False, ["copy none.txt to g.txt", "$ quell 0", "exit 0"]),
    (False, ["$ quell 0 'open", "exit 0"]),
]

# Files that are written wrongly and must be refused.
REFUSED = [
    "$ quell 0\nexit 0\n",
    "== t\nexit 0\n",
    "== t\n$ quell 0\n",
    "== t\n$ quell 0\n$ quell 1\nexit 1\n",
    "== t\n$ quell 0\nexit 0\nstdout holds x\n",
    "== t\n| a line\n$ quell 0\nexit 0\n",
    "== empty\n",
]


def run(run_block):
    """Returns what is wrong with the runner; nothing is good."""
    wrong = []
    with tempfile.TemporaryDirectory() as folder:
        fake = pathlib.Path(folder) / "fake.py"
        fake.write_text(FAKE, encoding="utf-8")
        for must_pass, lines in CASES:
            blocks, errors = steps.read_blocks("\n".join(["== case"] + lines), "case")
            failures = errors or run_block(blocks[0], [sys.executable, fake], [])
            if must_pass == bool(failures):
                wrong.append(f"{lines} {'failed: ' + str(failures) if must_pass else 'passed and must fail'}")
    for text in REFUSED:
        if not steps.read_blocks(text, "case")[1]:
            wrong.append(f"{text!r} was accepted and must be refused")
    return wrong
