#!/usr/bin/env python3
"""Runs the text tests of the command line: tests/cli/*.txt.

HOW TO WRITE ONE (no programming needed). A file holds blocks; each block begins with a title and runs in its own temporary folder
that holds a copy of the project's examples/ and of tests/cli/sites/ (as sites/), and nothing else.

    == the sequent depth of a rectangular jump
    # A line that begins with # is a comment: put the source of the expected number here.
    $ quell calc jump.sequent_depth.rectangular y1=0.8 V1=7 --json
    exit 0
    json outputs.y2.value = 2.455144 ± 0.000001

A line that begins with "$ quell" runs the program; quotes work as in a shell. A block may run several commands, one after the
other, in the same folder. After each command:

    exit 0                          the exit code; every command needs this line; "exit 0 or 1" takes either
    stdout: some text               a whole line of the output, blanks at both ends ignored (stderr: the same)
    stdout contains some text       the output holds this text                             (stderr contains …)
    stdout lacks some text          the output does not hold it                            (stderr lacks …)
    stdout ~ y2 +2\\.45              a line of the output matches this regular expression   (stderr ~ …)
    stdout empty                    nothing was printed                                    (stderr empty)
    stdout is json                  the output is one JSON object and nothing else
    json PATH = 2.4551 ± 0.0006     a number in that object, with an absolute tolerance (+- may be written for ±)
    json PATH = 8 ± 0.5 %           the same with a relative tolerance
    json PATH = true                also false, null, "text", or a number that must be equal
    json PATH > 0                   also <, >=, <=
    json PATH has 3 items           the length of a list; "has > 0 items" also works
    json PATH exists                the path leads somewhere; "json PATH absent" is the contrary
    file out/result.json exists     a file or folder is there afterwards
    file out absent                 it is not

A PATH is names and list places joined by dots: outputs.y2.value, options[0].type, options[type=type_2].apron_level,
options[*].type (every one must fulfil the line). Blanks may stand inside brackets.

Before a command, files can be made or changed:

    write short.toml                makes a file of the lines that follow and begin with "| "
    | [project]
    | name = "short"
    change examples/01-gravity-dam/site.toml: "smallest = 5" -> "smallest = -5"
                                    replaces a text, which must be there exactly once
    copy examples/01-gravity-dam/site.toml to mine.toml

Usage: run.py --program build/quell [--root FOLDER] [--only TEXT] [FILE…]; --only runs the blocks whose title holds TEXT.
run.py --self-test proves that each kind of line can fail; that also happens at the start of every run.
"""
import argparse
import concurrent.futures
import os
import pathlib
import shutil
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
import steps  # noqa: E402  (beside this file)


def run_block(block, program, inputs):
    """Returns the failures of one block as texts; an empty list is a pass. `inputs` are folders to copy."""
    with tempfile.TemporaryDirectory(prefix="quell-cli-") as folder:
        folder = pathlib.Path(folder)
        for source in inputs:
            if source.is_dir():
                shutil.copytree(source, folder / source.name)
        return steps.run(block, program, folder)


def run_files(files, program, root, only):
    blocks = []
    for path in files:
        found, errors = steps.read_blocks(path.read_text(encoding="utf-8"), path.name)
        for error in errors:
            print(f"FAIL  {error}")
        if errors:
            return 1
        blocks += [block for block in found if only in block.title]
    if not blocks:
        print("FAIL  there is no block to run")
        return 1
    inputs = [root / "examples", pathlib.Path(__file__).resolve().parent / "sites"]
    with concurrent.futures.ThreadPoolExecutor(max_workers=min(8, os.cpu_count() or 1)) as pool:
        results = list(pool.map(lambda block: run_block(block, program, inputs), blocks))
    failed = 0
    for block, failures in zip(blocks, results):
        if failures:
            failed += 1
            print(f"FAIL  {block.file}:{block.line}: {block.title}")
            for failure in failures:
                print("      " + failure.replace("\n", "\n      "))
    print(f"{len(blocks) - failed} of {len(blocks)} blocks passed.")
    return 1 if failed else 0


def main():
    here = pathlib.Path(__file__).resolve().parent
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", type=pathlib.Path)
    parser.add_argument("--root", type=pathlib.Path, default=here.parent.parent)
    parser.add_argument("--only", default="")
    parser.add_argument("--self-test", action="store_true")
    parser.add_argument("files", nargs="*", type=pathlib.Path)
    options = parser.parse_args()
    import self_test
    wrong = self_test.run(run_block)
    if wrong:
        print("\n".join(f"FAIL  self-test: {text}" for text in wrong))
        return 1
    if options.self_test:
        print("The self-test passed.")
        return 0
    if not options.program or not options.program.is_file():
        print(f"FAIL  there is no program {options.program}; say --program build/quell")
        return 1
    files = options.files or sorted(here.glob("*.txt"))
    return run_files(files, options.program.resolve(), options.root.resolve(), options.only)


if __name__ == "__main__":
    sys.exit(main())
