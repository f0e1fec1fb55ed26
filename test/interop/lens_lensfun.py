"""Distortion and shading of fifty lenses of lensfun's own database, over whole pictures: its answers beside ours, as a table.

Lenses are taken by their position in the database that lensfunpy brings with it, and never named. Its pictures reach from the
middle of the first pixel to the middle of the last: millimetres a pixel are the diagonal over hypot(width - 1, height - 1).
Points are asked one at a time: four at once take the vector code of lensfun 0.3.4, which mixes them up.
"""

import sys
from pathlib import Path
from xml.etree import ElementTree

import lensfunpy
import numpy as np
from lensfunpy import ModifyFlags

from helpers.answers import ask
from report import Checks

ENTRIES = 50
SIZE = (1500, 1000)
ACROSS, DOWN = 21, 15
PIXELS = 5e-4  # lensfun counts in single precision, some 1e-4 px here
TAKEN_OFF = 1e-2  # lensfun's inverse stops at 1e-5 half heights, 5e-3 px here
FACTOR = 2e-5
SHADED = (120, 80)


def main():
    checks = Checks()
    lenses = database()
    curves = [(i, lens, d) for i, lens in enumerate(lenses) for d in lens.findall("./calibration/distortion")]
    held = {}
    for i, lens, d in curves:
        if scaled_polynomial(d) is not None and any(number(d, k) != 0 for k in ("k1", "k2", "b")):
            held.setdefault(i, []).append((lens, d))
    shaded = {i: lens.findall("./calibration/vignetting") for i, lens in enumerate(lenses)}
    shaded = {i: entries for i, entries in shaded.items() if entries}
    total = sum(len(entries) for entries in held.values())
    odd = sum(1 for _, _, d in curves if scaled_polynomial(d) is None)
    print(f"{len(lenses)} lenses; {total} of {len(curves)} distortions have even powers of the radius only and are held exactly, "
          f"{odd} (ptlens with a or c) are not expressible and {len(curves) - total - odd} are zero: left out; {len(shaded)} lenses have shading")
    checks.check("enough lenses to choose from", len(held) >= 300 and len(shaded) >= 300, (len(held), len(shaded)))
    distortion(checks, [(i, *held[i][len(held[i]) // 2]) for i in chosen(held)])
    shading(checks, [(i, lenses[i], shaded[i][len(shaded[i]) // 2]) for i in chosen(shaded)])
    version = ".".join(map(str, lensfunpy.lensfun_version))
    print(f"lensfunpy {lensfunpy.__version__}, lensfun {version}, numpy {np.__version__}, Python {sys.version.split()[0]}")
    checks.end()


def database():
    """All lens elements, files by name, lenses by place."""
    folder = Path(lensfunpy.__file__).parent / "db_files"
    return [lens for path in sorted(folder.glob("*.xml")) for lens in ElementTree.parse(path).getroot().iter("lens")]


def chosen(lenses):
    keys = sorted(lenses)
    return [keys[i * len(keys) // ENTRIES] for i in range(ENTRIES)]


def number(element, key):
    return float(element.get(key, 0))


def scaled_polynomial(d):
    """(scale, k1, k2): with u = scale x ideal radius, recorded = u (1 + k1 u^2 + k2 u^4). None where odd powers are in it."""
    model = d.get("model")
    if model == "poly5":
        return 1.0, number(d, "k1"), number(d, "k2")
    if model == "ptlens" and (number(d, "a") != 0 or number(d, "c") != 0):
        return None
    cubic = number(d, "k1") if model == "poly3" else number(d, "b")
    scale = 1 - cubic
    return scale, cubic / scale**3, 0.0


def sensor(lens):
    """Crop factor, and width and height in mm of the sensor that the calibration was made on."""
    crop = float(lens.findtext("cropfactor", "1"))
    text = lens.findtext("aspect-ratio", "3:2")
    aspect = float(text.split(":")[0]) / float(text.split(":")[1]) if ":" in text else float(text)
    height = np.hypot(36, 24) / crop / np.hypot(aspect, 1)
    return crop, {"width": float(height * aspect), "height": float(height)}


def only(lens):
    """The one lens as lensfun reads it."""
    text = ElementTree.tostring(lens, encoding="unicode")
    found = lensfunpy.Database(xml=f'<lensdatabase version="1">{text}</lensdatabase>', load_common=False, load_bundled=False)
    return found.lenses[0]


def pitch(crop, size):
    return float(np.hypot(36, 24) / crop / np.hypot(size[0] - 1, size[1] - 1))


def distortion(checks, entries):
    pixels = np.array([[x, y] for y in np.linspace(0, SIZE[1] - 1, DOWN) for x in np.linspace(0, SIZE[0] - 1, ACROSS)])
    middle = (np.array(SIZE) - 1) / 2
    requests, settings = [], []
    for row, (_, lens, d) in enumerate(entries):
        scale, k1, k2 = scaled_polynomial(d)
        crop, area = sensor(lens)
        # Every second one on a smaller sensor than it was calibrated on.
        used = crop * (1.25 if row % 2 else 1)
        mm = (pixels - middle) * pitch(used, SIZE)
        common = {
            "kind": "distortion", "coefficients": {"k1": k1, "k2": k2}, "focalMm": number(d, "focal"),
            "convention": {"model": "brown-conrady", "direction": "distort", "radius": "half-height", "areaMm": area},
        }
        requests += [{**common, "side": "recorded", "points": (mm * scale).tolist()}, {**common, "side": "ideal", "points": mm.tolist()}]
        settings.append((scale, used))
    # The same numbers in the opposite direction must be seen to be another lens.
    requests.append({**requests[0], "convention": {**requests[0]["convention"], "direction": "undistort"}})
    *answers, turned = ask(requests)
    wrong = np.hypot(*(np.array(turned) - np.array(answers[0])).T).max() / pitch(settings[0][1], SIZE)
    checks.check("a turned direction would be noticed", wrong > 100 * PIXELS, wrong)
    print("distortion, largest differences in px of 1500 x 1000\n   lens model  sensor   corner moves   put on    taken off   off by us, on by lensfun   points")
    worst = [0.0, 0.0, 0.0]
    for row, ((position, lens, d), (scale, used)) in enumerate(zip(entries, settings)):
        name = f"lens {position}"
        ours = [np.array([[np.nan, np.nan] if p is None else p for p in a]) / pitch(used, SIZE) for a in answers[2 * row : 2 * row + 2]]
        ours[1] /= scale
        theirs = [asked(only(lens), used, number(d, "focal"), pixels, back) for back in (False, True)]
        off = [np.hypot(*(mine + middle - their).T) for mine, their in zip(ours, theirs)]
        # Our inverse put on again by lensfun, whose inverse is the looser one.
        off.append(np.hypot(*(asked(only(lens), used, number(d, "focal"), ours[1] + middle, False) - pixels).T))
        both = [~np.isnan(values) for values in off]
        moves = np.nanmax(np.hypot(*(theirs[0] - pixels).T))
        largest = [float(values[ok].max()) for values, ok in zip(off, both)]
        print(f"{position:7d} {d.get('model'):6s} {'same' if row % 2 == 0 else 'smaller':8s} {moves:9.2f}      {largest[0]:.1e}   {largest[1]:.1e}     {largest[2]:.1e}                    "
              f"{sum(ok.sum() for ok in both)}")
        checks.check(f"{name}: nearly every point is compared", min(ok.mean() for ok in both) > 0.95, [ok.mean() for ok in both])
        checks.check(f"{name}: distortion put on agrees", largest[0] < PIXELS, largest[0])
        checks.check(f"{name}: distortion taken off agrees", largest[1] < TAKEN_OFF, largest[1])
        checks.check(f"{name}: taken off by us and put on by lensfun is the point", largest[2] < PIXELS, largest[2])
        worst = [max(a, b) for a, b in zip(worst, largest)]
    print(f"largest of all: put on {worst[0]:.1e} px, taken off {worst[1]:.1e} px, off by us and on by lensfun {worst[2]:.1e} px")


def asked(lens, crop, focal, pixels, back):
    modifier = lensfunpy.Modifier(lens, crop, *SIZE)
    modifier.initialize(focal, 8, distance=1000, scale=1, flags=ModifyFlags.DISTORTION, reverse=back)
    return np.array([modifier.apply_geometry_distortion(x, y, 1, 1)[0, 0] for x, y in pixels], float)


def shading(checks, entries):
    width, height = SHADED
    rows, columns = np.mgrid[0:height, 0:width]
    places = np.column_stack([columns.ravel() - (width - 1) / 2, rows.ravel() - (height - 1) / 2])
    requests = []
    for _, lens, v in entries:
        crop, area = sensor(lens)
        requests.append({
            "kind": "shading", "focalMm": number(v, "focal"), "points": (places * pitch(crop, SHADED)).tolist(),
            "coefficients": {"a1": number(v, "k1"), "a2": number(v, "k2"), "a3": number(v, "k3")},
            "convention": {"shadingRadius": "half-diagonal", "shadingValues": "gain", "areaMm": area},
        })
    answers = ask(requests)
    print(f"shading, largest differences of the factor over {width} x {height}\n   lens   corner   difference")
    worst = 0.0
    for (position, lens, v), answer in zip(entries, answers):
        ours = np.array(answer).reshape(height, width)
        picture = np.ones((height, width, 3), np.float32)
        modifier = lensfunpy.Modifier(only(lens), sensor(lens)[0], width, height)
        modifier.initialize(number(v, "focal"), number(v, "aperture"), distance=number(v, "distance"), scale=1,
                            flags=ModifyFlags.VIGNETTING, pixel_format=np.float32, reverse=True)
        put_on = modifier.apply_color_modification(picture)
        # What is 0 or less is no light; lensfun cuts it off.
        off = float(np.abs(np.maximum(ours, 0) - picture[:, :, 1]).max())
        print(f"{position:7d}   {ours[0, 0]:.4f}   {off:.1e}")
        checks.check(f"lens {position}: shading agrees", put_on and off < FACTOR, off)
        worst = max(worst, off)
    print(f"largest of all: {worst:.1e}")


if __name__ == "__main__":
    main()
