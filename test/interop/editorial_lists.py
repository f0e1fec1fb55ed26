"""Every edit list as two readers take it, the CMX 3600 adapter of OpenTimelineIO and pycmx: events, times, names, locators."""

import sys
import warnings
from importlib.metadata import version
from pathlib import Path

import opentimelineio as otio
import pycmx

from report import Checks

sys.path.insert(0, str(Path(__file__).parent / "helpers"))
import odd_show


def main(folder):
    checks = Checks()
    warnings.simplefilter("error")
    holder, odd = odd_show.build()
    for report in (folder, odd):
        for day, pack in odd_show.days(report):
            look(checks, day, pack)
    damaged(checks, next(Path(folder).glob("packs/*/editorial/*.edl")))
    holder.cleanup()
    print(f"otio-cmx3600-adapter {version('otio-cmx3600-adapter')}, pycmx {version('pycmx')}")
    checks.end()


def label(take):
    num, denom = take["rate"]["num"], take["rate"]["denom"]
    return f"{num / denom:.3f}".rstrip("0").rstrip(".") + ("-df" if take["dropFrame"] else "")


def look(checks, day, pack):
    timed = [t for t in day["takes"] if t["timecodeIn"] and t["durationFrames"] > 0]
    covered = []
    for path in sorted(pack.glob("editorial/*.edl")):
        text = path.read_text(encoding="ascii")
        with open(path, encoding="ascii") as file:
            edits = [edit for event in pycmx.parse_cmx3600(file).events for edit in event.edits]
        takes = takes_of(path, timed, edits)
        checks.check(f"{path.name}: pycmx sees an event a take", len(takes) == len(edits), f"{len(takes)} {len(edits)}")
        covered += [t["address"] for t in takes]
        drop = takes[0]["dropFrame"]
        checks.check(f"{path.name}: FCM", text.splitlines()[1] == f"FCM: {'DROP' if drop else 'NON-DROP'} FRAME")
        for edit, take in zip(edits, takes):
            name = f"{path.name} {take['address'][:40]}"
            checks.check(f"{name}: source times", (edit.source_in, edit.source_out) == (take["timecodeIn"], take["timecodeOut"]), edit.source_in)
            checks.check(f"{name}: a cut of pictures", edit.transition.cut and edit.channels.video and not edit.channels.audio)
            plain = (take["clip"] or "").isascii()
            checks.check(f"{name}: source file", not plain or (edit.source_file or "") == (take["clip"] or ""), edit.source_file)
        adapter(checks, path, text, takes)
    fits = [t["address"] for t in timed if t["rate"]["num"] / t["rate"]["denom"] <= 100]
    checks.check(f"{day['date']}: every take is in one list", sorted(covered) == sorted(fits))


def takes_of(path, timed, edits):
    """Takes that the list ought to hold: by its camera, and by the first timecode that it has in common with a rate's takes."""
    camera = path.stem.split("-")[4]
    own = [t for t in timed if t["camera"] == camera]
    first = next(t for t in own if t["timecodeIn"] == edits[0].source_in)
    return [t for t in own if label(t) == label(first)]


def adapter(checks, path, text, takes):
    rate = takes[0]["rate"]["num"] / takes[0]["rate"]["denom"]
    midnight = [t for t in takes if t["timecodeOut"] < t["timecodeIn"]]
    if midnight:  # the adapter refuses an event whose out point is smaller; LOSSES.md says so
        return
    timeline = otio.adapters.read_from_string(text, "cmx_3600", rate=rate)
    clips = list(timeline.find_clips())
    checks.check(f"{path.name}: the adapter sees a clip a take", len(clips) == len(takes), len(clips))
    for clip, take in zip(clips, takes):
        name = f"{path.name} {take['address'][:40]}"
        checks.check(f"{name}: length", clip.source_range.duration.value == take["durationFrames"], clip.source_range.duration)
        start = otio.opentime.to_timecode(clip.source_range.start_time, rate, take["dropFrame"])
        checks.check(f"{name}: begins at its timecode", start == take["timecodeIn"], start)
        whole = f"{take['slate']}-{take['take']}"
        if whole.isascii() and len(whole) <= 32:
            checks.check(f"{name}: name", clip.name == whole, clip.name)
        marks = len(take["pulls"] or []) + len(take["log"]["gaps"]) + (take["plate"] is not None)
        checks.check(f"{name}: no locator is lost", len(clip.markers) == marks, len(clip.markers))
        colours = {m.metadata["cmx_3600"]["color"] for m in clip.markers}
        checks.check(f"{name}: colours are known", all(m.color == m.metadata["cmx_3600"]["color"] for m in clip.markers), colours)
    track = timeline.tracks[0]
    checks.check(f"{path.name}: no gap between events", all(isinstance(c, otio.schema.Clip) for c in track))


def damaged(checks, path):
    """One frame less on the source side of an event is noticed."""
    lines = path.read_text(encoding="ascii").splitlines()
    at = next(i for i, line in enumerate(lines) if line.startswith("001"))
    lines[at] = lines[at][:29] + "00:00:00:00" + lines[at][40:]
    try:
        otio.adapters.read_from_string("\n".join(lines), "cmx_3600", rate=24)
        refused = False
    except Exception:  # noqa: BLE001
        refused = True
    checks.check("an event whose two sides differ in length is refused", refused)


if __name__ == "__main__":
    main(sys.argv[1])
