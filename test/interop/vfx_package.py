"""The data package of every take's VFX folder, validated by Frictionless: types, missing values, keys, every row."""

import json
import shutil
import sys
import tempfile
from pathlib import Path

import frictionless
from frictionless import Package, validate
from helpers.pack import rows, vfx_folders
from report import Checks


def main():
    checks = Checks()
    folders = vfx_folders(sys.argv[1])
    checks.check("the demo has VFX folders", len(folders) >= 3, len(folders))
    tables = 0
    for folder in folders:
        report = validate(str(folder / "datapackage.json"))
        checks.check(f"{folder.name}: valid", report.valid, report.flatten(["type", "note", "rowNumber", "fieldName"])[:5])
        warnings = report.warnings + [warning for task in report.tasks for warning in task.warnings]
        checks.check(f"{folder.name}: no warning", warnings == [], warnings)
        package = Package(str(folder / "datapackage.json"))
        tables += len(package.resources)
        described = {resource.path for resource in package.resources}
        checks.check(f"{folder.name}: every table is described", described == {p.name for p in folder.glob("*.csv")}, described)
        fields = package.get_resource("lens").schema.fields
        columns = list(rows(folder / "lens.csv")[0])
        checks.check(f"{folder.name}: a field a column", [f.name for f in fields] == columns, [f.name for f in fields])
        raw = json.loads((folder / "datapackage.json").read_text(encoding="utf-8"))
        words = raw["resources"][0]["schema"]["fields"]
        checks.check(f"{folder.name}: every column says where it is from", all(f["provenance"] for f in words))
        checks.check(f"{folder.name}: every number has a unit", all("unit" in f for f in words if f["type"] == "number"))
    damaged(checks, folders[0])
    print(f"{tables} tables in {len(folders)} packages; frictionless {frictionless.__version__}, Python {sys.version.split()[0]}")
    checks.end()


def damaged(checks, folder):
    """A check that cannot fail is none: a letter in a number is reported at its row."""
    with tempfile.TemporaryDirectory() as copy:
        for name in ("datapackage.json", "lens.csv", "maps.csv"):
            if (folder / name).exists():
                shutil.copy(folder / name, copy)
        table = Path(copy) / "lens.csv"
        lines = table.read_text(encoding="utf-8").splitlines(keepends=True)
        cells = lines[1].split(",")
        cells[2] = "near"
        table.write_text("".join([lines[0], ",".join(cells), *lines[2:]]), encoding="utf-8")
        report = validate(str(Path(copy) / "datapackage.json"))
        found = report.flatten(["type", "rowNumber", "fieldName"])
        checks.check("a word in focus_m is reported", ["type-error", 2, "focus_m"] in found, found[:3])


if __name__ == "__main__":
    main()
