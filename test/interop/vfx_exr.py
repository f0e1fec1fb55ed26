"""UV and shading maps of the demo's packs, read by OpenEXR: values against the coefficients, header, ranges, damage."""

import json
import math
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
import OpenEXR
from helpers.exr import Map
from helpers.pack import number, rows, take_of, version_of, vfx_folders
from report import Checks

MOVE = 0.1  # px at the recorded resolution: states that share a map
ROUNDING = 1 / 64 + 0.006  # px: what values are rounded to, and the interpolated map's own miss
STOP = 0.01
OIIOTOOL = str(Path(sys.executable).with_name("oiiotool"))


class Sensor:
    """The frame in mm and pixels, and each frame's coefficients in mm as OpenTrackIO has them, by plain numpy."""

    def __init__(self, folder):
        lines = (folder / "lens.opentrackio.jsonl").read_text(encoding="utf-8").splitlines()
        samples = [json.loads(line) for line in lines]
        camera = samples[0]["static"]["camera"]
        self.width = camera["activeSensorPhysicalDimensions"]["width"]
        self.height = camera["activeSensorPhysicalDimensions"]["height"]
        self.px = camera["activeSensorResolution"]["width"]
        self.py = camera["activeSensorResolution"]["height"]
        self.lenses = [sample.get("lens", {}) for sample in samples]
        models = {lens["distortion"][0]["model"] for lens in self.lenses if "distortion" in lens}
        self.direction = "undistort" if models == {"Brown-Conrady D-U"} else "distort" if models == {"Brown-Conrady U-D"} else None

    def frames_with(self, part):
        return [i for i, lens in enumerate(self.lenses) if part in lens]

    def equation(self, row, u, v):
        """The table's own equation (OpenLensIO eq. 16 and 17), in parts of the frame."""
        lens = self.lenses[int(row["frame"])]
        distortion = lens["distortion"][0]
        cx, cy = lens["distortionOffset"]["x"], lens["distortionOffset"]["y"]
        x, y = (u - 0.5) * self.width - cx, (v - 0.5) * self.height - cy
        k1, k4, k2, k5, k3, k6 = (distortion["radial"] + [0] * 6)[:6]
        p1, p2 = distortion.get("tangential", [0, 0])
        r2 = x * x + y * y
        factor = (1 + k1 * r2 + k2 * r2**2 + k3 * r2**3) / (1 + k4 * r2 + k5 * r2**2 + k6 * r2**3)
        a = x * factor + 2 * p1 * x * y + p2 * (r2 + 2 * x * x)
        b = y * factor + 2 * p2 * x * y + p1 * (r2 + 2 * y * y)
        return (a + cx) / self.width + 0.5, (b + cy) / self.height + 0.5

    def pixels(self, u, v):
        return np.hypot(u * self.px, v * self.py)

    def shading(self, row, u, v):
        cx, cy = number(row["cx_mm"]) or 0, number(row["cy_mm"]) or 0
        r2 = ((u - 0.5) * self.width - cx) ** 2 + ((v - 0.5) * self.height - cy) ** 2
        return 1 - (number(row["a1"]) * r2 + number(row["a2"]) * r2**2 + number(row["a3"]) * r2**3)


def main():
    checks = Checks()
    folders = [f for f in vfx_folders(sys.argv[1]) if (f / "maps.csv").exists()]
    checks.check("the demo has maps", len(folders) >= 3, len(folders))
    worst = {"undistort": 0.0, "redistort": 0.0, "shading": 0.0, "move": 0.0}
    count = 0
    for folder in folders:
        count += one(checks, folder, worst)
    damaged(checks, folders[0])
    print(f"{count} maps of {len(folders)} takes; against the coefficients: undistort {worst['undistort']:.4f} px, redistort {worst['redistort']:.4f} px, "
          f"shading {worst['shading']:.1e}; largest move within a map {worst['move']:.3f} px, at the recorded resolution")
    print(f"OpenEXR {OpenEXR.OPENEXR_VERSION if hasattr(OpenEXR, 'OPENEXR_VERSION') else ''}, oiiotool {version_of(OIIOTOOL, '--version')}, Python {sys.version.split()[0]}")
    checks.end()


def one(checks, folder, worst):
    name = folder.name
    table, ranges, sensor = rows(folder / "lens.csv"), rows(folder / "maps.csv"), Sensor(folder)
    files = {p.name for p in folder.glob("*.exr")}
    checks.check(f"{name}: maps.csv names every map and no other", {r["map"] for r in ranges} == files)
    serving = {kind: {} for kind in ("undistort", "redistort", "shading")}
    twice = []
    for r in ranges:
        kind = r["map"].split("-")[0]
        for i in range(int(r["frame_from"]), int(r["frame_to"]) + 1):
            if i in serving[kind]:
                twice.append(i)
            serving[kind][i] = r["map"]
    checks.check(f"{name}: no frame has two maps of a kind", twice == [], twice[:3])
    known = sensor.frames_with("distortion")
    same = [i for i, row in enumerate(table) if row["k1"] != "" and float(row["k1"]) != sensor.lenses[i]["distortion"][0]["radial"][0]]
    checks.check(f"{name}: lens.csv has the same k1", same == [], same[:3])
    for kind in ("undistort", "redistort"):
        checks.check(f"{name}: each frame with coefficients has its {kind} map", sorted(serving[kind]) == known)
    shaded = [i for i, row in enumerate(table) if row["a1"] != ""]
    checks.check(f"{name}: each frame with shading has its map", sorted(serving["shading"]) == shaded)
    seen = {}
    for file in sorted(files):
        picture = Map(folder / file)
        seen[file] = int(picture.header["mapFrame"])
        of_map(checks, folder, file, picture, table, sensor, worst, [r for r in ranges if r["map"] == file])
    merged(checks, name, table, sensor, serving, seen, worst)
    for file in ("undistort-0001.exr", "redistort-0001.exr", "shading-0001.exr"):
        if file in files:
            by_other_programs(checks, folder / file, Map(folder / file))
    return len(files)


def of_map(checks, folder, file, picture, table, sensor, worst, ranges):
    name = f"{folder.name} {file}"
    kind = file.split("-")[0]
    row = table[int(picture.header["mapFrame"])]
    checks.check(f"{name}: R G B, single precision", sorted(picture.planes) == ["B", "G", "R"]
                 and all(p.dtype == np.float32 for p in picture.planes.values()))
    checks.check(f"{name}: no NaN and no infinity", all(np.isfinite(p).all() for p in picture.planes.values()))
    ratio = (picture.width / picture.height) / (sensor.px / sensor.py)
    checks.check(f"{name}: has the frame's shape", abs(ratio - 1) < 1 / picture.height, ratio)
    checks.check(f"{name}: maps.csv says its overscan", all(abs(float(r["overscan"]) - picture.overscan()) < 1e-9 for r in ranges))
    header_of(checks, name, picture.header, row, take_of(folder), kind)
    u, v = picture.places()
    if kind == "shading":
        off = np.abs(picture.u - sensor.shading(row, u, v)).max()
        worst[kind] = max(worst[kind], off)
        checks.check(f"{name}: brightness factor, rounded to 1/8192", off < 2**-14 + 1e-7, off)
        checks.check(f"{name}: grey", (picture.planes["R"] == picture.planes["B"]).all() and (picture.planes["R"] == picture.planes["G"]).all())
        return
    checks.check(f"{name}: B is 0", not picture.planes["B"].any())
    # the table's equation takes in what the map puts out, or the other way about
    closed = (sensor.direction == "undistort") == (kind == "redistort")
    if closed:
        a, b = sensor.equation(row, u, v)
        off = sensor.pixels(picture.u - a, picture.v - b).max()
    else:
        a, b = sensor.equation(row, picture.u, picture.v)
        off = sensor.pixels(a - u, b - v).max()
    worst[kind] = max(worst[kind], off)
    checks.check(f"{name}: agrees with the coefficients of the samples", off < ROUNDING * math.sqrt(2), off)


def header_of(checks, name, header, row, take, kind):
    def same(key, value, scale=1.0):
        if value is None:
            checks.check(f"{name}: no {key}", key not in header)
        else:
            checks.check(f"{name}: {key}", key in header and abs(header[key] - value * scale) <= 1e-6 * abs(value * scale), header.get(key))

    focus = number(row["focus_m"])
    same("focus", None if focus is None or math.isinf(focus) else focus)  # metres
    same("pinholeFocalLength", number(row["focal_mm"]))  # mm
    same("entrancePupilOffset", number(row["entrance_pupil_mm"]))  # mm
    same("tStop", number(row["t"]))
    same("aperture", number(row["f"]))
    same("nominalFocalLength", take["lens"]["focalMm"])
    same("shutterAngle", take["shutterDeg"])
    same("expTime", None if take["shutterDeg"] is None else take["shutterDeg"] / 360 / take["captureFps"])  # seconds
    same("isoSpeed", take["ei"])
    checks.check(f"{name}: mapKind", header["mapKind"] == kind)
    rate = header["framesPerSecond"]
    checks.check(f"{name}: framesPerSecond", (rate.numerator, rate.denominator) == (take["rate"]["num"], take["rate"]["denom"]), rate)
    code = header["timeCode"]
    label = f"{code.hours:02d}:{code.minutes:02d}:{code.seconds:02d}:{code.frame:02d}"
    checks.check(f"{name}: timeCode", label == row["timecode"].replace(";", ":"), label)


def merged(checks, name, table, sensor, serving, seen, worst):
    """The corner of every frame lies within 0.1 px of that of the frame its map was made of."""
    place = [(0, 0), (1, 0), (0, 1), (1, 1)]
    u, v = np.array(place, float).T
    if sensor.direction == "undistort":
        largest = 0.0
        for i, file in serving["undistort"].items():
            a = sensor.equation(table[i], u, v)
            b = sensor.equation(table[seen[file]], u, v)
            largest = max(largest, sensor.pixels(a[0] - b[0], a[1] - b[1]).max())
        worst["move"] = max(worst["move"], largest)
        checks.check(f"{name}: states that share a map differ by less than 0.1 px", largest < MOVE, largest)
    change = [abs(math.log2(sensor.shading(table[i], 0, 0)) - math.log2(sensor.shading(table[seen[f]], 0, 0))) for i, f in serving["shading"].items()]
    checks.check(f"{name}: states that share a shading map differ by less than 0.01 stop", not change or max(change) < STOP, change and max(change))


def by_other_programs(checks, path, picture):
    run = subprocess.run([OIIOTOOL, "--info", "--stats", str(path)], capture_output=True, text=True, check=False)
    said = {line.strip().split(":")[0]: line.split(":")[1].split("(")[0].split() for line in run.stdout.splitlines() if "Stats M" in line}
    checks.check(f"{path.parent.name} {path.name}: oiiotool reads it", run.returncode == 0 and f"{picture.columns} x" in run.stdout, run.stderr)
    for key, of in (("Stats Min", np.min), ("Stats Max", np.max)):
        wanted = [f"{of(picture.planes[c]):.6f}" for c in "RGB"]
        checks.check(f"{path.parent.name} {path.name}: oiiotool's {key}", said.get(key) == wanted, (said.get(key), wanted))
    exrheader = shutil.which("exrheader")
    if exrheader is not None:
        run = subprocess.run([exrheader, str(path)], capture_output=True, text=True, check=False)
        checks.check(f"{path.parent.name} {path.name}: exrheader", run.returncode == 0 and "zip, multi-scanline blocks" in run.stdout, run.stderr)


def damaged(checks, folder):
    """Checks that cannot fail are none: a map cut short and one with a changed byte are refused."""
    whole = (folder / "undistort-0001.exr").read_bytes()
    changed = bytearray(whole)
    changed[len(whole) // 2] ^= 0xFF
    with tempfile.TemporaryDirectory() as place:
        for what, content in (("cut short", whole[: len(whole) // 2]), ("with a changed byte", bytes(changed))):
            path = Path(place) / "damaged.exr"
            path.write_bytes(content)
            try:
                refused = not np.array_equal(Map(path).planes["R"], Map(folder / "undistort-0001.exr").planes["R"])
            except Exception:
                refused = True
            checks.check(f"a map {what} is noticed", refused)
    if shutil.which("exrheader") is None:
        print("skipped: exrheader (package openexr) is not installed")


if __name__ == "__main__":
    main()
