"""The demo's stills and a drawn chart through the maps: oiiotool --st_warp, cv2.remap and our own result, straight lines, there and back."""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

import cv2
import numpy as np
import OpenEXR
from helpers.exr import Map
from helpers.pack import ROOT, rows, version_of
from report import Checks
from vfx_exr import Sensor

TAKES = (("2026-10-06", "a-14d-1"), ("2026-10-07", "a-33c-1"), ("2026-10-08", "a-44c-1"))
BORDER = 12  # pixels: inside it filters reach out of the picture
OIIOTOOL = str(Path(sys.executable).with_name("oiiotool"))
FILTER = "triangle"  # straight lines between pixels, as we read stills


def linear(picture):
    p = picture.astype(np.float64) / 255
    return np.where(p <= 0.04045, p / 12.92, ((p + 0.055) / 1.055) ** 2.4)


def encoded(light):
    light = np.clip(light, 0, 1)
    return np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)


def psnr(a, b):
    inside = (slice(BORDER, -BORDER), slice(BORDER, -BORDER))
    return float(-10 * np.log10(max(np.mean((a[inside] - b[inside]) ** 2), 1e-12)))


def write_exr(path, plane):
    header = {"compression": OpenEXR.ZIP_COMPRESSION, "type": OpenEXR.scanlineimage}
    with OpenEXR.File(header, {name: plane.astype(np.float32) for name in "RGB"}) as file:
        file.write(str(path))


def st_warp(picture, map_path, place):
    """oiiotool's answer on the frame of the picture."""
    write_exr(place / "in.exr", picture)
    run = [OIIOTOOL, str(place / "in.exr"), str(map_path), f"--st_warp:filter={FILTER}", "-o", str(place / "out.exr")]
    subprocess.run(run, check=True, capture_output=True)
    with OpenEXR.File(str(place / "out.exr"), separate_channels=True) as file:
        plane = file.channels()["R"].pixels.astype(float)
        (left, top), _ = file.header()["dataWindow"]
    return plane[-top : -top + picture.shape[0], -left : -left + picture.shape[1]]


def remap(picture, u, v, left=0, top=0, width=None, height=None, kind=cv2.INTER_LINEAR):
    """OpenCV's answer; the picture's frame begins at (left, top) of its array. OpenCV counts the middle of the first pixel as 0."""
    width, height = width or picture.shape[1], height or picture.shape[0]
    x = (u * width - 0.5 + left).astype(np.float32)
    y = (v * height - 0.5 + top).astype(np.float32)
    return cv2.remap(picture.astype(np.float32), x, y, kind, borderMode=cv2.BORDER_REPLICATE).astype(float)


def main():
    checks = Checks()
    for date, address in TAKES:
        with tempfile.TemporaryDirectory() as work:
            one(checks, Path(work), date, address)
    for date, address in (TAKES[0], ("2026-10-06", "a-14b-2"), ("2026-10-07", "a-33b-3")):
        enlarged(checks, Path(sys.argv[1]) / "packs" / date / "vfx" / address)
    date, address = TAKES[0]
    recipe(checks, Path(sys.argv[1]) / "packs" / date / "vfx" / address, ROOT / "data/days" / date / "stills/14d-grid.png")
    print(f"oiiotool {version_of(OIIOTOOL, '--version')}, OpenCV {cv2.__version__}, Python {sys.version.split()[0]}")
    checks.end()


def one(checks, work, date, address):
    helper = ["node", str(ROOT / "test/interop/vfx-still.mjs"), date, address, str(work)]
    answer = json.loads(subprocess.run(helper, check=True, capture_output=True, text=True).stdout)
    undistort, redistort = Map(work / "undistort-0001.exr"), Map(work / "redistort-0001.exr")
    still = linear(cv2.imread(answer["still"], cv2.IMREAD_COLOR)[..., 1])
    ours = cv2.imread(str(work / "ours.png"), cv2.IMREAD_COLOR)[..., 1]
    checks.check(f"{address}: maps have the still's size", (undistort.width, undistort.height) == (still.shape[1], still.shape[0]))

    warped = st_warp(still, work / "undistort-0001.exr", work)
    with_oiio = psnr(encoded(warped), ours / 255)
    checks.check(f"{address}: oiiotool --st_warp is our own result to 40 dB", with_oiio > 40, with_oiio)
    mapped = remap(still, undistort.frame(undistort.u), undistort.frame(undistort.v))
    with_cv = psnr(encoded(mapped), ours / 255)
    checks.check(f"{address}: cv2.remap is our own result to 40 dB", with_cv > 40, with_cv)
    untouched = psnr(encoded(still), ours / 255)
    checks.check(f"{address}: the map is needed: without it the pictures differ", untouched < with_oiio - 6, untouched)
    for plane, axis, what in ((undistort.u, 1, "u grows to the right"), (undistort.v, 0, "v grows downwards")):
        checks.check(f"{address}: {what}", (np.diff(plane, axis=axis) > 0).all())

    back = there_and_back(still, undistort, redistort)
    checks.check(f"{address}: off and on again is the plate to 40 dB", back > 40, back)
    bent, straight = lines(undistort, redistort)
    checks.check(f"{address}: drawn lines are bent by the lens", bent > 3 * straight, (bent, straight))
    checks.check(f"{address}: and straight with the map", straight < 0.05, straight)
    print(f"{date} {address}: st_warp {with_oiio:.1f} dB, remap {with_cv:.1f} dB (no map {untouched:.1f} dB), there and back {back:.1f} dB, "
          f"lines {bent:.2f} px bent, {straight:.3f} px after; filter {FILTER}, linear light")


def recipe(checks, folder, still):
    """The commands of docs/vfx-files.md on the still, enlarged: off on the overscan canvas and on again, by oiiotool alone."""
    size = "1920x1080"
    with tempfile.TemporaryDirectory() as place:
        def oiiotool(*arguments):
            run = subprocess.run([OIIOTOOL, *map(str, arguments)], cwd=place, capture_output=True, text=True, check=True)
            return run.stdout

        oiiotool(still, "--ch", "R=Y,G=Y,B=Y", "--resize", size, "-d", "float", "-o", "plate.exr")
        oiiotool(folder / "undistort-0001.exr", "--resize:filter=triangle", size, "-o", "map.exr")
        picture = Map(Path(place) / "map.exr")
        window = f"{picture.columns}x{picture.rows}{picture.left:+d}{picture.top:+d}"
        checks.check(f"{folder.name}: the canvas is larger than the frame", picture.columns > 1920, window)
        oiiotool("plate.exr", "--crop", window, "map.exr", "--st_warp:filter=triangle", "-o", "canvas.exr")
        oiiotool(folder / "redistort-0001.exr", "--resize:filter=triangle", size, "-o", "back-map.exr")
        oiiotool("canvas.exr", "back-map.exr", "--st_warp:filter=triangle", "--crop", f"{size}+0+0", "-o", "back.exr")
        planes = [Map(Path(place) / name).planes["R"].astype(float) for name in ("plate.exr", "back.exr")]
        back = psnr(*planes)
        checks.check(f"{folder.name}: the manual's commands give the plate back to 40 dB", planes[0].shape == planes[1].shape and back > 40, back)
        oiiotool(folder / "shading-0001.exr", "--resize:filter=triangle", size, "-o", "factor.exr")
        oiiotool("plate.exr", "factor.exr", "--div", "-o", "even.exr")
        checks.check(f"{folder.name}: the plate is a picture", planes[0].std() > 0.01, planes[0].std())
        even = Map(Path(place) / "even.exr").planes["R"][0, 0] / planes[0][0, 0]
        checks.check(f"{folder.name}: shading off brightens the corner", even > 1.2, even)
    print(f"{folder.name}: the manual's commands, there and back {back:.1f} dB")


def there_and_back(still, undistort, redistort):
    """The still, softened a little so that reading between pixels twice costs nothing, onto the overscan canvas and back."""
    soft = cv2.GaussianBlur(still, (0, 0), 1.5)
    ideal = remap(soft, undistort.u, undistort.v, kind=cv2.INTER_CUBIC)
    u, v = redistort.frame(redistort.u), redistort.frame(redistort.v)
    plate = remap(ideal, u, v, -undistort.left, -undistort.top, undistort.width, undistort.height, cv2.INTER_CUBIC)
    return psnr(encoded(plate), encoded(soft))


def lines(undistort, redistort):
    """Largest departure from a straight line, in pixels, of drawn lines as the lens records them and after the map."""
    height, width = undistort.height, undistort.width
    scale = 1.06  # the ideal canvas is larger than the frame, so that the recorded one is filled
    u, v = redistort.frame(redistort.u), redistort.frame(redistort.v)
    x = u * width - 0.5
    recorded = np.zeros((height, width))
    for at in np.linspace(-(scale - 1) / 2, 1 + (scale - 1) / 2, 9) * width:
        recorded += np.exp(-0.5 * ((x - at) / 2.0) ** 2)
    ideal = remap(recorded, undistort.frame(undistort.u), undistort.frame(undistort.v), kind=cv2.INTER_CUBIC)
    return departure(recorded), departure(ideal)


def departure(picture):
    """Follows the second line from the left by its centre of brightness in each row and fits a straight line to it."""
    height, width = picture.shape
    start = int(np.argmax(picture[height // 2, BORDER : width // 4])) + BORDER
    centres = []
    for row in range(BORDER, height - BORDER):
        part = slice(start - 10, start + 11)
        weight = picture[row, part]
        centres.append(float((np.arange(start - 10, start + 11) * weight).sum() / weight.sum()))
    rows = np.arange(BORDER, height - BORDER)
    fit = np.polyfit(rows, centres, 1)
    return float(np.abs(np.polyval(fit, rows) - centres).max())


def enlarged(checks, folder):
    """The recipe of the manual: a narrow map enlarged by straight lines, against the coefficients at every 7th recorded pixel."""
    narrow = Map(folder / "redistort-0001.exr")
    sensor = Sensor(folder)
    row = rows(folder / "lens.csv")[int(narrow.header["mapFrame"])]
    u, v = np.meshgrid((np.arange(0, sensor.px, 7) + 0.5) / sensor.px, (np.arange(0, sensor.py, 7) + 0.5) / sensor.py)
    a, b = sensor.equation(row, u, v)
    off = float(sensor.pixels(between(narrow, narrow.u, u, v) - a, between(narrow, narrow.v, u, v) - b).max())
    checks.check("a narrow map enlarged is the exact one to 0.03 px, up to the border", off < 0.03, off)
    print(f"a map of 1/{sensor.px / narrow.width:.0f} of the width, enlarged: largest difference {off:.4f} px of {sensor.px}")


def between(picture, plane, u, v):
    x, y = u * picture.width - 0.5 - picture.left, v * picture.height - 0.5 - picture.top
    i, j = np.floor(x).astype(int), np.floor(y).astype(int)
    s, t = x - i, y - j
    upper = plane[j, i] * (1 - s) + plane[j, i + 1] * s
    return upper * (1 - t) + (plane[j + 1, i] * (1 - s) + plane[j + 1, i + 1] * s) * t


if __name__ == "__main__":
    main()
