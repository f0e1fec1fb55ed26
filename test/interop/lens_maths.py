"""Our distortion against OpenCV: projectPoints evaluates the equation, undistortPoints (with tight criteria) turns it round."""

import json
import subprocess
import sys
from pathlib import Path

import cv2
import numpy as np

from report import Checks

HERE = Path(__file__).parent
TOLERANCE_MM = 1e-7  # a ten-thousandth of a micron; pixels are some 5 microns wide
CRITERIA = (cv2.TERM_CRITERIA_COUNT | cv2.TERM_CRITERIA_EPS, 500, 1e-14)


def coefficients(terms):
    names = ["k1", "k2", "p1", "p2", "k3", "k4", "k5", "k6"]
    return np.array([terms.get(name, 0.0) for name in names])


def evaluate(points, focal, dist):
    """Applies the equation to points in mm from the distortion centre."""
    rays = np.column_stack([points / focal, np.ones(len(points))])
    projected, _ = cv2.projectPoints(rays, np.zeros(3), np.zeros(3), np.eye(3), dist)
    return projected.reshape(-1, 2) * focal


def invert(points, focal, dist):
    """Finds the points that the equation takes to these."""
    found = cv2.undistortPoints((points / focal).reshape(-1, 1, 2), np.eye(3), dist, None, None, None, CRITERIA)
    return found.reshape(-1, 2) * focal


def main():
    checks = Checks()
    output = subprocess.run(["node", str(HERE / "lens-cases.mjs")], check=True, capture_output=True, text=True).stdout
    cases = json.loads(output)
    checks.check("there are twelve cameras", len(cases) == 12, len(cases))
    for case in cases:
        terms, focal = case["terms"], case["focalMm"]
        centre = np.array([terms.get("cx_mm", 0.0), terms.get("cy_mm", 0.0)])
        at = np.array([[p["x"], p["y"]] for p in case["points"]]) - centre
        forward = evaluate(at, focal, coefficients(terms)) + centre
        backward = invert(at, focal, coefficients(terms)) + centre
        names = ("recorded", "ideal") if case["direction"] == "distort" else ("ideal", "recorded")
        label = f"{case['name']}, {case['direction']}"
        compare(checks, f"{label}: equation", [p[names[0]] for p in case["points"]], forward)
        again = evaluate(backward - centre, focal, coefficients(terms)) + centre
        settled = np.hypot(*(again - (at + centre)).T) < 1e-10
        ours = [p[names[1]] if ok else None for p, ok in zip(case["points"], settled)]
        compare(checks, f"{label}: inverse", ours, backward, least=len(at) // 2)
    print(f"OpenCV {cv2.__version__}, numpy {np.__version__}, Python {sys.version.split()[0]}")
    checks.end()


def compare(checks, name, ours, theirs, least=None):
    """Points that either side leaves out (not defined, or not settled) are not compared, but most must be there."""
    pairs = [(o, t) for o, t in zip(ours, theirs) if o is not None]
    enough = len(pairs) >= (len(ours) * 0.9 if least is None else least)
    checks.check(f"{name}: most points are defined", enough, f"{len(pairs)} of {len(ours)}")
    if pairs:
        worst = max(float(np.hypot(o[0] - t[0], o[1] - t[1])) for o, t in pairs)
        checks.check(f"{name}: agrees within {TOLERANCE_MM} mm", worst <= TOLERANCE_MM, f"{worst} mm apart")


if __name__ == "__main__":
    main()
