"""Every timeline as OpenTimelineIO reads it: clips, ranges, rates and markers are those of day.json."""

import json
import sys
import warnings
from pathlib import Path

import opentimelineio as otio

from report import Checks

sys.path.insert(0, str(Path(__file__).parent / "helpers"))
import odd_show

NAMESPACE = "lens-daybook"


def main(folder):
    checks = Checks()
    warnings.simplefilter("error")
    holder, odd = odd_show.build()
    for report in (folder, odd):
        for day, pack in odd_show.days(report):
            look(checks, day, pack)
    damaged(checks, next(Path(folder).glob("packs/*/editorial/*.otio")))
    holder.cleanup()
    print(f"opentimelineio {otio.__version__}, Python {sys.version.split()[0]}")
    checks.end()


def look(checks, day, pack):
    name = f"{day['show']['code']} {day['date']}"
    timed = [t for t in day["takes"] if t["timecodeIn"] and t["durationFrames"] > 0]
    seen = []
    for path in sorted(pack.glob("editorial/*.otio")):
        timeline = otio.adapters.read_from_file(str(path))
        schemas = set(schema_names(json.loads(path.read_text(encoding="utf-8"))))
        known = {"Timeline.1", "Stack.1", "Track.1", "Clip.2", "Marker.2", "TimeRange.1", "RationalTime.1", "MissingReference.1"}
        checks.check(f"{path.name}: only schemas that releases 0.15 to 0.18 write", schemas <= known, schemas - known)
        checks.check(f"{path.name}: one picture track", [t.kind for t in timeline.tracks] == ["Video"])
        clips = list(timeline.find_clips())
        expected = [t for t in timed if t["camera"] == timeline.metadata[NAMESPACE]["camera"]]
        checks.check(f"{path.name}: a clip a take, in order", [address(c) for c in clips] == [t["address"] for t in expected])
        for clip, take in zip(clips, expected):
            seen.append(take["address"])
            compare(checks, f"{path.name} {take['address'][:40]}", clip, take)
        if clips:
            total = sum(t["durationFrames"] * t["rate"]["denom"] / t["rate"]["num"] for t in expected)
            rates = {(t["rate"]["num"], t["rate"]["denom"]) for t in expected}
            if len(rates) == 1:
                checks.check(f"{path.name}: as long as its takes", abs(timeline.duration().to_seconds() - total) < 1e-6)
        again = otio.adapters.read_from_string(otio.adapters.write_to_string(timeline, "otio_json"), "otio_json")
        checks.check(f"{path.name}: is the same when written and read again", again.is_equivalent_to(timeline))
    checks.check(f"{name}: no take with a timecode is left out", sorted(seen) == sorted(t["address"] for t in timed))


def address(clip):
    return clip.metadata[NAMESPACE]["address"]


def compare(checks, name, clip, take):
    rate = take["rate"]["num"] / take["rate"]["denom"]
    start = clip.source_range.start_time
    checks.check(f"{name}: rate to the last bit", start.rate == rate and clip.source_range.duration.rate == rate, start.rate)
    label = otio.opentime.to_timecode(start, rate, take["dropFrame"])
    checks.check(f"{name}: begins at its timecode", label == take["timecodeIn"], label)
    end = otio.opentime.to_timecode(clip.source_range.end_time_exclusive(), rate, take["dropFrame"])
    past_midnight = take["timecodeOut"] < take["timecodeIn"]
    checks.check(f"{name}: ends at its timecode", past_midnight or end == take["timecodeOut"], end)
    checks.check(f"{name}: length", clip.source_range.duration.value == take["durationFrames"])
    checks.check(f"{name}: name", clip.name == f"{take['slate']}-{take['take']}", clip.name)
    media = clip.media_reference
    checks.check(f"{name}: media are missing, under the clip's name", isinstance(media, otio.schema.MissingReference))
    checks.check(f"{name}: media name", media.name == (take["clip"] or take["address"]), media.name)
    kept = clip.metadata[NAMESPACE]
    for key in ("slate", "scene", "circled", "plate", "remarks", "timecodeIn", "dropFrame"):
        checks.check(f"{name}: metadata {key}", kept[key] == take[key], kept[key])
    first = start.value
    marks = {}
    for marker in clip.markers:
        at = marker.marked_range
        checks.check(f"{name}: marker inside the clip", first <= at.start_time.value and at.end_time_exclusive() <= clip.source_range.end_time_exclusive())
        marks.setdefault(marker.metadata[NAMESPACE]["kind"], []).append((at.start_time.value - first, at.duration.value))
    pulls = [(p["startFrame"], p["frames"]) for p in take["pulls"] or []]
    checks.check(f"{name}: a marker a pull", marks.get("focus-pull", []) == pulls, marks.get("focus-pull"))
    gaps = [gap["frames"] for gap in take["log"]["gaps"]]
    checks.check(f"{name}: a marker a gap", [frames for _, frames in marks.get("log-gap", [])] == gaps, marks.get("log-gap"))
    for (at, _), gap in zip(marks.get("log-gap", []), take["log"]["gaps"]):
        label = otio.opentime.to_timecode(otio.opentime.RationalTime(first + at, rate), rate, take["dropFrame"])
        checks.check(f"{name}: gap begins at its timecode", past_midnight or label == gap["from"], label)
    checks.check(f"{name}: a plate is marked", len(marks.get("plate", [])) == (take["plate"] is not None))


def schema_names(value):
    if isinstance(value, dict):
        if "OTIO_SCHEMA" in value:
            yield value["OTIO_SCHEMA"]
        for inner in value.values():
            yield from schema_names(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from schema_names(inner)


def damaged(checks, path):
    """A reader that accepts anything proves nothing."""
    text = path.read_text(encoding="utf-8")
    for name, broken in (("cut short", text[: len(text) // 2]), ("with a wrong field", text.replace('"rate": ', '"rat": ', 1))):
        try:
            otio.adapters.read_from_string(broken, "otio_json")
            refused = False
        except Exception:  # noqa: BLE001 (the library raises several kinds)
            refused = True
        checks.check(f"a timeline {name} is refused", refused)


if __name__ == "__main__":
    main(sys.argv[1])
