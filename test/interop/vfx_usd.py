"""camera.usda of every take in the demo's packs, opened by OpenUSD: stage, camera and lens against lens.csv and day.json."""

import math
import sys

from helpers.pack import number, rows, take_of, vfx_folders
from pxr import Gf, Sdf, Tf, Usd, UsdGeom, UsdValidation
from report import Checks

FIRST = 1001
FRAMES = 10
VALIDATION = UsdValidation.ValidationContext(UsdValidation.ValidationRegistry().GetOrLoadAllValidators())
FLOAT = 1e-6  # relative: USD's camera attributes have single precision


def near(a, b, tolerance=FLOAT):
    return abs(a - b) <= tolerance * max(1.0, abs(b))


def degrees(camera, direction):
    return camera.GetFieldOfView(direction)


def focused(fov_deg, focal_mm, focus_m):
    """Thin lens: the angle shrinks by 1 + m, m = f / (s - f), s from the image-plane distance D by s = (D + sqrt(D^2 - 4 f D)) / 2."""
    if math.isinf(focus_m):
        return fov_deg
    distance = focus_m * 1000
    s = (distance + math.sqrt(distance**2 - 4 * focal_mm * distance)) / 2
    m = focal_mm / (s - focal_mm)
    return 2 * math.degrees(math.atan(math.tan(math.radians(fov_deg / 2)) / (1 + m)))


def main():
    checks = Checks()
    folders = [f for f in vfx_folders(sys.argv[1]) if (f / "camera.usda").exists()]
    checks.check("the demo has cameras", len(folders) >= 3, len(folders))
    for folder in folders:
        one(checks, folder)
    damaged(checks, folders[0])
    print(f"{len(folders)} cameras; usd-core {'.'.join(map(str, Usd.GetVersion()))}, Python {sys.version.split()[0]}")
    checks.end()


def one(checks, folder):
    name = folder.name
    table = rows(folder / "lens.csv")
    take = take_of(folder)
    path = str(folder / "camera.usda")
    stage = Usd.Stage.Open(path)
    checks.check(f"{name}: a unit is a centimetre", UsdGeom.GetStageMetersPerUnit(stage) == 0.01)
    checks.check(f"{name}: y is up", UsdGeom.GetStageUpAxis(stage) == UsdGeom.Tokens.y)
    rate = take["rate"]["num"] / take["rate"]["denom"]
    checks.check(f"{name}: time codes a second", near(stage.GetTimeCodesPerSecond(), rate), stage.GetTimeCodesPerSecond())
    span = (stage.GetStartTimeCode(), stage.GetEndTimeCode())
    checks.check(f"{name}: a time code a frame", span == (FIRST, FIRST + take["durationFrames"] - 1), span)
    root = stage.GetDefaultPrim()
    cameras = [UsdGeom.Camera(prim) for prim in stage.Traverse() if prim.IsA(UsdGeom.Camera)]
    checks.check(f"{name}: the default prim holds one camera", len(cameras) == 1 and cameras[0].GetPath().HasPrefix(root.GetPath()))
    camera = cameras[0]
    prim = camera.GetPrim()
    data = prim.GetCustomData()
    checks.check(f"{name}: its data name the take", (data["address"], data["slate"]) == (name, take["slate"]), dict(data))
    missing = [i for i, row in enumerate(table) if row["focus_m"] == "" and row["t"] == "" and row["focal_mm"] == ""]
    gaps = [i for a, b in zip(data["gapFirst"], data["gapLast"]) for i in range(a - FIRST, b - FIRST + 1)]
    checks.check(f"{name}: the gaps are those of lens.csv", gaps == missing, (gaps[:3], missing[:3]))
    logged = [i for i in range(len(table)) if i not in set(missing)]
    for i in [logged[(k * (len(logged) - 1)) // (FRAMES - 1)] for k in range(FRAMES)]:
        frame(checks, f"{name} frame {i}", camera, table[i], FIRST + i)
    if any(row["f"] for row in table):
        checks.check(f"{name}: fStop is written", camera.GetFStopAttr().HasAuthoredValue())
    else:
        checks.check(f"{name}: without an f-number no fStop", not camera.GetFStopAttr().HasAuthoredValue())
    middle = [i for i in logged][(len(logged) - 1) // 2]
    gf = camera.GetCamera(FIRST + middle)
    row = table[middle]
    for direction, key in ((Gf.Camera.FOVHorizontal, "horizontal"), (Gf.Camera.FOVVertical, "vertical")):
        angle = focused(degrees(gf, direction), number(row["focal_mm"]), number(row["focus_m"]))
        checks.check(f"{name}: day.json's {key} angle of view", near(angle, take["angleOfViewDeg"][key], 1e-5), angle)
    said = [error.GetMessage() for error in VALIDATION.Validate(stage)]
    checks.check(f"{name}: every rule of usdchecker passes", said == [], said)


def frame(checks, name, camera, row, time):
    gf = camera.GetCamera(time)
    focal = number(row["focal_mm"])
    focus = number(row["focus_m"])
    prim = camera.GetPrim()
    checks.check(f"{name}: focal length in mm", near(gf.focalLength, focal), (gf.focalLength, focal))
    checks.check(f"{name}: focus distance in cm", gf.focusDistance == focus * 100 or near(gf.focusDistance, focus * 100), gf.focusDistance)
    for direction, column, attribute in (
        (Gf.Camera.FOVHorizontal, "aov_h_deg", "lens:angleOfViewHorizontalDeg"),
        (Gf.Camera.FOVVertical, "aov_v_deg", "lens:angleOfViewVerticalDeg"),
    ):
        angle = focused(degrees(gf, direction), focal, focus)
        checks.check(f"{name}: {column} from GfCamera's field of view", near(angle, number(row[column]), 1e-5), (angle, row[column]))
        written = prim.GetAttribute(attribute).Get(time)
        checks.check(f"{name}: {attribute}", near(written, number(row[column]), 1e-9), written)
    for attribute, column in (("tStop", "t"), ("k1", "k1"), ("a1", "a1"), ("entrancePupilMm", "entrance_pupil_mm")):
        if row[column] != "":
            value = prim.GetAttribute(f"lens:{attribute}").Get(time)
            checks.check(f"{name}: lens:{attribute}", near(value, number(row[column]), 1e-9), value)
    dioptres = prim.GetAttribute("lens:focusDioptres").Get(time)
    checks.check(f"{name}: infinity is 0 dioptres", near(dioptres, 0 if math.isinf(focus) else 1 / focus, 1e-9), dioptres)


def damaged(checks, folder):
    """Checks that cannot fail are none: a layer cut short is refused, a stage without units and a length of another type are reported."""
    text = (folder / "camera.usda").read_text(encoding="utf-8")
    try:
        refused = not Sdf.Layer.CreateAnonymous(".usda").ImportFromString(text.rstrip().removesuffix("}"))
    except Tf.ErrorException:
        refused = True
    checks.check("a layer cut short is refused", refused)
    stage = Usd.Stage.CreateInMemory()
    stage.GetRootLayer().ImportFromString(text.replace("metersPerUnit = 0.01", "").replace("float focalLength", "double focalLength"))
    said = " ".join(error.GetMessage() for error in VALIDATION.Validate(stage))
    checks.check("a stage without units is reported", "metersPerUnit" in said, said)
    checks.check("a focal length of another type is reported", "focalLength" in said, said)


if __name__ == "__main__":
    main()
