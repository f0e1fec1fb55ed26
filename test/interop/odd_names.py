"""Names that no format is made for (markup, quotes, emoji, right-to-left letters, 300 characters) through every file of a pack,
each read by somebody else's reader and compared with what was typed."""

import csv
import io
import json
import re
import subprocess
import sys
import tempfile
import unicodedata
import xml.etree.ElementTree as ElementTree
from importlib.metadata import version
from pathlib import Path

import frictionless
import OpenEXR
import opentimelineio as otio
import pycmx
from pxr import Usd
from report import Checks

ROOT = Path(__file__).resolve().parents[2]
DATE = "2031-05-06"
LONG = "n" * 300
#          slate, roll, clip, lens, maker, serial, remarks
NAMES = [
    ("1 & <2>", "R&<1>", "C&<1>", "P&<50>", "Glass & <Sons>", "S&<1>", "a & b < c > d"),
    ('2 "B" \'c\'', 'R"2"', 'C"2"', 'P"35"', 'The "Glass" \'Works\'', 'S"2"', 'he said "no", \\ and \'yes\''),
    ("🎬 3 👩‍🚀", "🎞️ 3", "📹 3", "🔭 3", "🏭 3", "🔢 3", "👍🏽 é e\u0301"),
    ("سلايت 4", "بكرة 4", "لقطة 4", "עדשה 4", "מפעל 4", "٤٤", "مرحبا (שלום) 4"),
    (f"5 {LONG}", f"R5 {LONG}", f"C5 {LONG}", f"L5 {LONG}", f"M5 {LONG}", f"S5 {LONG}", f"remark {LONG}"),
    ("=6+1", "@6", "-6C", "+6", "=SUM(A1)", "-6S", "=HYPERLINK(1)"),
]
TITLE = '& <Title> "🎬" שלום'


def row(*cells):
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerow(cells)
    return text.getvalue()


def show(root):
    notes = [row("slate", "take", "camera", "scene", "roll", "clip", "tc_in", "tc_out", "lens", "circled", "plate", "remarks")]
    lenses = [row("lens", "maker", "series", "serial", "kind", "focal_mm", "widest_t", "close_focus_m")]
    files = {
        "show.yaml": f"title: {json.dumps(TITLE, ensure_ascii=False)}\ncode: ODD\nrate: 24\n",
        "kit/cameras.csv": "camera,body,serial,sensor_mode,active_width_mm,active_height_mm,resolution_x,resolution_y\n"
        + row("A", 'Body & "🎥" <1>', "סריאל", "OPEN", "24", "18", "640", "480"),
    }
    for i, (slate, roll, clip, lens, maker, serial, remarks) in enumerate(NAMES):
        hour = f"{i + 1:02d}:00:00"
        notes.append(row(slate, "1", "A", slate, roll, clip, f"{hour}:00", f"{hour}:04", lens, "y", "hero", remarks))
        lenses.append(row(lens, maker, "Set", serial, "prime", "50", "2", "0.5"))
        head = f"# model: brown-conrady\n# direction: undistort\n# radius: mm\n# start_timecode: {hour}:00\n"
        frames = "".join(f"{frame},{2 + frame / 10:.1f},2.8,0.0001\n" for frame in range(4))
        files[f"days/{DATE}/logs/{i}.csv"] = f"# camera: A\n# slate: {slate}\n# take: 1\n{head}frame,focus_m,t,k1\n{frames}"
    files[f"days/{DATE}/notes.csv"] = "".join(notes)
    files["kit/lenses.csv"] = "".join(lenses)
    for name, text in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


def main():
    checks = Checks()
    with tempfile.TemporaryDirectory(prefix="daybook-names-") as work:
        show(Path(work) / "show")
        report = Path(work) / "report"
        built = subprocess.run(
            ["node", "dist/cli/main.js", "build", str(Path(work) / "show"), "--out", str(report), "--quiet"],
            cwd=ROOT, capture_output=True, text=True,
        )
        checks.check("the show builds", built.returncode in (0, 1), built.stdout + built.stderr)
        pack = report / "packs" / DATE
        takes = json.loads((pack / "day.json").read_text(encoding="utf-8"))["takes"]
        checks.check("day.json has every name as typed", sorted(t["slate"] for t in takes) == sorted(n[0] for n in NAMES))
        by_slate = {take["slate"]: take for take in takes}
        for names in NAMES:
            take = by_slate.get(names[0])
            if take is not None:
                one(checks, pack / "vfx" / take["address"], take, names)
        tables(checks, pack)
        editorial(checks, pack)
        hash_list(checks, pack)
        guide = (pack / "README.txt").read_text(encoding="utf-8")
        checks.check("README.txt begins with the title", guide.startswith(TITLE + "\n"))
    print(f"OpenEXR {version('OpenEXR')}, usd-core {version('usd-core')}, frictionless {version('frictionless')}, opentimelineio {version('opentimelineio')}")
    checks.end()


def one(checks, folder, take, names):
    slate, roll, clip, lens, maker, serial, remarks = names
    label = slate[:12]
    shown = {key: take[key] for key in ("roll", "clip", "remarks")}
    checks.check(f"{label}: day.json", shown == {"roll": roll, "clip": clip, "remarks": remarks} and take["lens"]["id"] == lens, shown)
    maps = sorted(folder.glob("*.exr"))
    checks.check(f"{label}: has maps", len(maps) >= 2, list(folder.glob("*")))
    for path in maps[:2]:
        with OpenEXR.File(str(path)) as file:
            header = dict(file.header())
        wanted = {"reelName": roll, "lensMake": maker, "lensModel": f"Set {lens}", "lensSerialNumber": serial, "cameraSerialNumber": "סריאל"}
        seen = {key: header.get(key) for key in wanted}
        checks.check(f"{label}: {path.name}, header", seen == {k: unicodedata.normalize("NFC", v) for k, v in wanted.items()}, seen)
    stage = Usd.Stage.Open(str(folder / "camera.usda"))
    camera = next(prim for prim in stage.Traverse() if prim.GetTypeName() == "Camera")
    data = camera.GetCustomData()
    checks.check(f"{label}: USD", (data["slate"], data["lens"], data["lensSerial"]) == (slate, lens, serial), dict(data))
    sample = json.loads((folder / "lens.opentrackio.jsonl").read_text(encoding="utf-8").splitlines()[0])
    static = sample["static"]["lens"]
    checks.check(f"{label}: OpenTrackIO", (static["make"], static["serialNumber"], sample["tracker"]["slate"]) == (maker, serial, slate), static)
    valid = frictionless.validate(str(folder / "datapackage.json"))
    checks.check(f"{label}: data package", valid.valid, "" if valid.valid else valid.flatten(["type", "note"]))


def plain(cell):
    """A cell without the apostrophe that keeps spreadsheets from running it."""
    return cell[1:] if re.match(r"'[=+\-@\t\r]", cell) else cell


def tables(checks, pack):
    for name, column in (("takes.csv", "slate"), ("editorial/bins.csv", "slate")):
        with open(pack / name, encoding="utf-8", newline="") as file:
            rows = list(csv.DictReader(file))
        seen = sorted(plain(r[column]) for r in rows)
        checks.check(f"{name}: slates as typed", seen == sorted(n[0] for n in NAMES), seen)
        unsafe = [cell for r in rows for cell in r.values() if re.match(r"[=+\-@]", cell or "") and not re.fullmatch(r"[+-]?[\d.]+", cell)]
        checks.check(f"{name}: no cell that a spreadsheet would run", unsafe == [], unsafe)
    for description in ("datapackage.json", "editorial/datapackage.json"):
        valid = frictionless.validate(str(pack / description))
        checks.check(f"{description}: valid", valid.valid, "" if valid.valid else valid.flatten(["type", "note"]))


def editorial(checks, pack):
    timeline = otio.adapters.read_from_file(str(next(pack.glob("editorial/*.otio"))))
    clips = [clip.media_reference.name for clip in timeline.find_clips()]
    checks.check("OTIO: clips as typed", sorted(clips) == sorted(n[2] for n in NAMES), clips)
    with open(next(pack.glob("editorial/*.edl")), encoding="utf-8") as file:
        text = file.read()
    events = list(pycmx.parse_cmx3600(io.StringIO(text)).events)
    checks.check("EDL: an event a take", len(events) == len(NAMES), len(events))
    checks.check("EDL: ASCII only", text.isascii())
    reels = [edit.source for event in events for edit in event.edits]
    checks.check("EDL: reels of at most eight letters and digits, all different", all(re.fullmatch(r"[A-Z0-9]{1,8}", r.strip()) for r in reels) and len(set(reels)) == len(reels), reels)


def hash_list(checks, pack):
    manifest = next(pack.glob("ascmhl/*.mhl"))
    paths = [e.text for e in ElementTree.parse(manifest).iter() if e.tag.endswith("}path")]
    files = sorted(p.relative_to(pack).as_posix() for p in pack.rglob("*") if p.is_file() and "ascmhl" not in p.relative_to(pack).parts)
    checks.check("MHL: every file, by an XML reader", sorted(paths) == files)
    done = subprocess.run([str(Path(sys.executable).parent / "ascmhl-debug"), "verify", str(pack)], capture_output=True, text=True)
    checks.check("MHL: the reference program passes the pack", done.returncode == 0, done.stdout + done.stderr)


if __name__ == "__main__":
    main()
