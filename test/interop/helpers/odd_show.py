"""A show that tests the editorial formats: drop-frame and slow rates, takes of other rates, names that no format is made for."""

import json
import subprocess
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
DATE = "2031-05-06"

SHOW = "title: Odd & <show>\ncode: ODD\nrate: 30000/1001\ndrop_frame: true\n"
CAMERAS = "camera,sensor_mode,active_width_mm,active_height_mm\nA,OPEN,24.89,18.66\nB,OPEN,24.89,18.66\n"
LENSES = "lens,serial,kind,focal_mm,widest_t,transmittance,close_focus_m\nP50,501,prime,50,2,0.81,0.5\n"
HEAD = "slate,take,camera,scene,roll,clip,tc_in,tc_out,rate,lens,circled,plate,plate_of,remarks"
LONG = "y" * 300
ROWS = [
    '"1 & ""A""",1,A,12,A012 R2LO long name,A&<C>,10:03:00;05,10:03:00;06,,P50,y,,,"one, ""frame"""',
    "2A,1,A,12,A012,A012C002,00:09:59;29,00:10:10;00,,P50,,hero,,",
    "2A,1,B,12,B012,B012C001,00:59:58;00,01:01:02;02,,P50,y,clean,2A,",
    f"{LONG},1,A,13,{LONG},{LONG},02:00:00;00,02:00:01;00,,P50,,,,{LONG}",
    "🎬 شوت,3,A,مشهد,🎞️,📹 7,04:00:00;00,04:00:01;00,,P50,,,,👍",
    "לקח,4,A,,BL,,05:00:00;00,05:00:01;00,,P50,,,,",
    "7,1,A,7,A013,A013C001,06:00:00:00,06:00:10:23,24000/1001,P50,,,,",
    "7,2,A,7,A013,A013C002,06:10:00:00,06:10:01:47,48,P50,,,,",
    "7,3,A,7,A013,A013C003,,,,P50,,,,",
]


def log():
    """Twenty seconds of clip B012C001 from 00:59:58;00 on: held, pulled from 4 m to 2 m in a second, held; a gap of three frames."""
    lines = ["# camera: B", "# clip: B012C001", "# lens: P50", "# rate: 30000/1001", "# drop_frame: true", "frame,focus_m,t,focal_mm"]
    for frame in range(600):
        if frame in (400, 401, 402):
            continue
        way = min(1, max(0, (frame - 150) / 30))
        lines.append(f"{frame},{1 / (0.25 + 0.25 * way * way * (3 - 2 * way)):.4f},2.8,50")
    return "\n".join(lines) + "\n"


def build():
    """Folder of the built report of that show; the caller keeps the TemporaryDirectory it comes with."""
    holder = tempfile.TemporaryDirectory(prefix="daybook-odd-")
    root = Path(holder.name)
    files = {
        "show.yaml": SHOW,
        "kit/cameras.csv": CAMERAS,
        "kit/lenses.csv": LENSES,
        f"days/{DATE}/notes.csv": "\n".join([HEAD, *ROWS]) + "\n",
        f"days/{DATE}/logs/b.csv": log(),
    }
    for name, text in files.items():
        path = root / "show" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    report = root / "report"
    run(root / "show", report)
    return holder, report


def run(show, report):
    """Builds; errors in the data (exit 1) are no failure here."""
    command = ["node", "dist/cli/main.js", "build", str(show), "--out", str(report), "--quiet"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    if done.returncode not in (0, 1):
        raise RuntimeError(done.stdout + done.stderr)


def days(report):
    """Each day.json of a report with the folder of its pack."""
    for path in sorted(Path(report).glob("packs/*/day.json")):
        yield json.loads(path.read_text(encoding="utf-8")), path.parent
