"""Finds the files of the demo's packs and reads their tables."""

import csv
import json
import subprocess
from pathlib import Path

ROOT = Path(__file__).parents[3]


def vfx_folders(report):
    """Folders of all takes with files for VFX, in order."""
    return sorted(p for p in Path(report).glob("packs/*/vfx/*") if p.is_dir())


def rows(path):
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def number(cell):
    return None if cell == "" else float(cell)


def take_of(folder):
    """The take's object in the day.json of the same pack."""
    day = json.loads((folder.parents[1] / "day.json").read_text(encoding="utf-8"))
    return next(take for take in day["takes"] if take["address"] == folder.name)


def version_of(program, *arguments):
    run = subprocess.run([program, *arguments], capture_output=True, text=True, check=False)
    return (run.stdout + run.stderr).strip().splitlines()[0]
