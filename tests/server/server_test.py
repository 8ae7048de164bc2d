#!/usr/bin/env python3
"""Tests of `quell serve`, from outside: a real server, asked over HTTP and over bare sockets. Standard library only.

    tests/server/server_test.py --program build/quell --root . [names of tests, as unittest takes them]
"""
import argparse
import pathlib
import sys
import unittest

import running


def main():
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--program", required=True, type=pathlib.Path)
    arguments.add_argument("--root", required=True, type=pathlib.Path)
    known, rest = arguments.parse_known_args()
    running.PROGRAM, running.ROOT = str(known.program.resolve()), known.root.resolve()
    import answers_test
    import document_test
    import hostile_test
    for module in (answers_test, document_test, hostile_test):
        for name in dir(module):
            if isinstance(getattr(module, name), type):
                globals()[name] = getattr(module, name)
    unittest.main(argv=[sys.argv[0], *rest])


if __name__ == "__main__":
    main()
