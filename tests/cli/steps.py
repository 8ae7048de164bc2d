"""Reading and running the blocks of a text test; the language is described at the top of run.py."""
import dataclasses
import os
import re
import shlex
import shutil
import subprocess

import json_lines

TIMEOUT_S = 300


@dataclasses.dataclass
class Step:
    """One line of a block. `content` holds the lines of a file to write."""
    line: int
    text: str
    content: list = dataclasses.field(default_factory=list)


@dataclasses.dataclass
class Block:
    file: str
    line: int
    title: str
    steps: list = dataclasses.field(default_factory=list)


@dataclasses.dataclass
class Output:
    code: int
    stdout: str
    stderr: str


KINDS = [
    ("run", re.compile(r"^\$ quell(?: (?P<arguments>.*))?$")),
    ("write", re.compile(r"^write (?P<name>\S+)$")),
    ("change", re.compile(r'^change (?P<name>\S+): "(?P<old>.*)" -> "(?P<new>.*)"$')),
    ("copy", re.compile(r"^copy (?P<name>\S+) to (?P<target>\S+)$")),
    ("exit", re.compile(r"^exit (?P<codes>\d+(?: or \d+)*)$")),
    ("line", re.compile(r"^(?P<stream>stdout|stderr): (?P<text>.+)$")),
    ("text", re.compile(r"^(?P<stream>stdout|stderr) (?P<verb>contains|lacks|~) (?P<text>.+)$")),
    ("empty", re.compile(r"^(?P<stream>stdout|stderr) empty$")),
    ("is_json", re.compile(r"^stdout is json$")),
    ("json", re.compile(r"^json (?P<rest>.+)$")),
    ("file", re.compile(r"^file (?P<name>\S+) (?P<verb>exists|absent)$")),
]
BEFORE_A_COMMAND = ("write", "change", "copy")


def kind_of(text):
    for name, pattern in KINDS:
        match = pattern.match(text)
        if match:
            return name, match
    return None, None


def read_blocks(text, file):
    """Returns the blocks of a file and what is wrong with how it is written."""
    blocks, errors = [], []
    for number, raw in enumerate(text.splitlines(), start=1):
        line = raw.rstrip()
        where = f"{file}:{number}"
        if line.startswith("| ") or line == "|":
            if blocks and blocks[-1].steps and kind_of(blocks[-1].steps[-1].text)[0] == "write":
                blocks[-1].steps[-1].content.append(line[2:])
            else:
                errors.append(f"{where}: a line of a file without a 'write' before it")
        elif not line or line.startswith("#"):
            continue
        elif line.startswith("== "):
            blocks.append(Block(file, number, line[3:]))
        elif not blocks:
            errors.append(f"{where}: a block begins with '== title'")
        elif kind_of(line)[0] is None:
            errors.append(f"{where}: not understood: {line}")
        else:
            blocks[-1].steps.append(Step(number, line))
    for block in blocks:
        errors += errors_of_order(block)
    return blocks, errors


def errors_of_order(block):
    """Every command has an exit line, every expectation a command before it, every block a command."""
    command, has_exit = None, True
    for step in block.steps + [None]:
        kind = kind_of(step.text)[0] if step else "run"
        if kind == "run" and command and not has_exit:
            yield f"{block.file}:{command.line}: the command has no 'exit' line"
        if step is None:
            break
        if kind == "run":
            command, has_exit = step, False
        elif kind == "exit":
            has_exit = True
        if command is None and kind not in BEFORE_A_COMMAND:
            yield f"{block.file}:{step.line}: an expectation without a command before it"
    if command is None:
        yield f"{block.file}:{block.line}: the block runs no command"


def run(block, program, folder):
    """Runs a block in `folder` and returns its failures as texts."""
    failures, output, command = [], None, None
    for step in block.steps:
        kind, match = kind_of(step.text)
        if kind == "run":
            command = step
            try:
                output = run_program(program, shlex.split(match["arguments"] or ""), folder)
            except (ValueError, subprocess.TimeoutExpired) as error:
                return failures + [f"line {step.line}: {step.text}: {error}"]
            continue
        if kind in BEFORE_A_COMMAND:
            failure = prepare(kind, match, step, folder)
            if failure:
                return failures + [f"line {step.line}: {failure}"]
            continue
        failure = check(kind, match, output, folder)
        if failure:
            failures.append(f"line {step.line}: {step.text}\n  after {command.text}\n  {failure}")
    return failures


def run_program(program, arguments, folder):
    environment = {key: value for key, value in os.environ.items() if not key.startswith("LC_")}
    environment.update(LC_ALL="C.UTF-8", NO_COLOR="1", TMPDIR=str(folder))
    command = [str(part) for part in (program if isinstance(program, list) else [program])]
    done = subprocess.run(command + arguments, cwd=folder, env=environment, stdin=subprocess.DEVNULL, capture_output=True,
                          timeout=TIMEOUT_S, check=False)
    return Output(done.returncode, done.stdout.decode("utf-8", "replace"), done.stderr.decode("utf-8", "replace"))


def prepare(kind, match, step, folder):
    path = folder / match["name"]
    if kind == "write":
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("".join(line + "\n" for line in step.content), encoding="utf-8")
        return None
    if not path.is_file():
        return f"there is no file {match['name']} to {kind}"
    if kind == "copy":
        shutil.copyfile(path, folder / match["target"])
        return None
    text = path.read_text(encoding="utf-8")
    if text.count(match["old"]) != 1:
        return f"{match['name']} holds {match['old']!r} {text.count(match['old'])} times; it must be there once"
    path.write_text(text.replace(match["old"], match["new"].replace("\\n", "\n")), encoding="utf-8")
    return None


def check(kind, match, output, folder):
    """Returns why an expectation does not hold, or None."""
    if kind == "exit":
        return None if str(output.code) in match["codes"].split(" or ") else f"it ended with {output.code}\n{shown(output.stderr)}"
    if kind == "file":
        there = (folder / match["name"]).exists()
        return None if there == (match["verb"] == "exists") else f"it is {'there' if there else 'not there'}"
    if kind == "is_json":
        return json_lines.read_object(output.stdout)[1]
    if kind == "json":
        value, error = json_lines.read_object(output.stdout)
        return error or json_lines.check(match["rest"], value)
    stream = getattr(output, match["stream"])
    if kind == "empty":
        return None if not stream else f"it holds: {shown(stream)}"
    if kind == "line":
        wanted = match["text"].strip()
        return None if any(line.strip() == wanted for line in stream.splitlines()) else f"no such line in: {shown(stream)}"
    return check_text(match["verb"], match["text"], stream)


def check_text(verb, wanted, stream):
    if verb == "~":
        return None if re.search(wanted, stream, re.MULTILINE) else f"no line matches in: {shown(stream)}"
    found = wanted in stream
    return None if found == (verb == "contains") else f"it {'does' if found else 'does not'} hold it: {shown(stream)}"


def shown(text, limit=1500):
    return (text if len(text) <= limit else text[:limit] + " …").rstrip() or "(nothing)"
