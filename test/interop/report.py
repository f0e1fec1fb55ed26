"""Counts checks and prints them the way scripts/test-interop.mjs adds them up."""

import sys


class Checks:
    def __init__(self):
        self.passed = 0
        self.failed = 0

    def check(self, name, holds, seen=""):
        if holds:
            self.passed += 1
        else:
            self.failed += 1
            print(f"failed: {name}{': ' + str(seen) if seen != '' else ''}")

    def end(self):
        print(f"{self.passed} passed, {self.failed} failed")
        sys.exit(1 if self.failed else 0)
