/**
 * OpenTimelineIO: the takes of one camera, end to end on one track, as Clip.2 with Marker.2 and missing media.
 *
 * @source OpenTimelineIO file format (docs/tutorials/otio-file-format-specification.md of its repository). Clip.2 and Marker.2
 *   are the versions that releases 0.15 to 0.18 write; newer readers take them too.
 */
import { stableJson } from "../../core/stable-json.ts";
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { dayObject, type Tool } from "../day-json.ts";
import type { FormatLosses } from "../losses.ts";
import { type Mark, takeMarks } from "./marks.ts";
import { type CameraReel, clipName, type TimedTake } from "./reels.ts";

/** Key that all our metadata stands under, as the format asks of every program. */
export const NAMESPACE = "lens-daybook";

export const OTIO_LOSSES: FormatLosses = {
  format: "OpenTimelineIO timeline",
  files: "editorial/*.otio",
  losses: [
    "Rates are decimal numbers there: 24000/1001 is 23.976023976023978. The exact fraction is in each clip's metadata.",
    "Whether timecode drops frames is no field of the format: it is in each clip's metadata, and the numbers are true frame counts.",
    "Media are named and not found: every clip has a missing reference with the clip's name. Relink by that name.",
    "Lens values inside a take are markers of pulls and gaps only; every frame is in `lens.csv`.",
    "A take without timecode cannot stand on a timeline; it is named in the timeline's metadata.",
  ],
};

/** Keys of day.json's take that travel in a clip's metadata, under the same names. */
const TAKE_KEYS = [
  ...["address", "slate", "take", "camera", "scene", "roll", "clip", "circled", "status", "plate", "plateOf"],
  ...["timecodeIn", "timecodeOut", "rate", "dropFrame", "durationFrames", "captureFps", "lens", "sensorMode", "focalMm", "tStop"],
  ...["focus", "depthOfField", "shutterDeg", "ei", "whiteBalanceK", "ndStops", "filters", "remarks"],
];

type Json = Readonly<Record<string, unknown>>;

/** Text of the timeline of one camera; rates and times are written as decimal numbers throughout. */
export function otioText(summary: DaySummary, reel: CameraReel, tool: Tool): string {
  return withDecimals(stableJson(timeline(summary, reel, tool)));
}

function timeline(summary: DaySummary, reel: CameraReel, tool: Tool): Json {
  const { show, date, day } = summary;
  const figures = new Map((dayObject(summary, tool).takes as readonly Json[]).map((take, i) => [summary.takes[i], take]));
  const clips = reel.takes.map((timed) => clip(timed, figures.get(timed.summary) ?? {}, show.distances));
  return {
    OTIO_SCHEMA: "Timeline.1",
    name: `${show.code} ${date} camera ${reel.camera}`,
    global_start_time: null,
    metadata: {
      [NAMESPACE]: {
        tool: { name: tool.name, version: tool.version },
        show: { title: show.title, code: show.code, unit: day.record.unit ?? show.unit },
        date,
        day: day.record.day,
        of: day.record.of,
        camera: reel.camera,
        withoutTimecode: reel.untimed.map((t) => t.take.address),
      },
    },
    tracks: {
      OTIO_SCHEMA: "Stack.1",
      name: "tracks",
      ...EMPTY_ITEM,
      children: [{ OTIO_SCHEMA: "Track.1", name: reel.camera, kind: "Video", ...EMPTY_ITEM, children: clips }],
    },
  };
}

const EMPTY_ITEM: Json = { enabled: true, source_range: null, effects: [], markers: [], metadata: {} };

function clip({ summary, inFrame }: TimedTake, figures: Json, distances: DaySummary["show"]["distances"]): Json {
  const { take } = summary;
  const range = (start: number, frames: number) => timeRange(inFrame + start, frames, take.rate.num / take.rate.denom);
  return {
    OTIO_SCHEMA: "Clip.2",
    name: clipName(summary),
    enabled: true,
    source_range: range(0, take.durationFrames),
    effects: [],
    markers: takeMarks(summary, distances).map((mark) => marker(mark, range(mark.startFrame, mark.frames))),
    metadata: { [NAMESPACE]: clipMetadata(summary, figures) },
    active_media_reference_key: "DEFAULT_MEDIA",
    media_references: {
      DEFAULT_MEDIA: {
        OTIO_SCHEMA: "MissingReference.1",
        name: take.clip ?? take.address,
        available_range: null,
        available_image_bounds: null,
        metadata: {},
      },
    },
  };
}

function clipMetadata(summary: TakeSummary, figures: Json): Json {
  return {
    ...Object.fromEntries(TAKE_KEYS.map((key) => [key, figures[key] ?? null])),
    sound: summary.take.sound,
    framesLogged: summary.framesLogged,
    framesMissing: summary.framesMissing,
  };
}

function marker(mark: Mark, range: Json): Json {
  const { kind, startFrame, frames, fromM, toM, peakDioptresPerSecond } = mark;
  return {
    OTIO_SCHEMA: "Marker.2",
    name: mark.name,
    color: mark.colour,
    marked_range: range,
    comment: mark.text,
    metadata: { [NAMESPACE]: { kind, startFrame, frames, fromM, toM, peakDioptresPerSecond } },
  };
}

function timeRange(start: number, frames: number, rate: number): Json {
  return {
    OTIO_SCHEMA: "TimeRange.1",
    start_time: { OTIO_SCHEMA: "RationalTime.1", rate, value: start },
    duration: { OTIO_SCHEMA: "RationalTime.1", rate, value: frames },
  };
}

/**
 * The format holds rates and times as decimal numbers: 24 is written 24.0. A line that begins with such a key is never
 * inside a text, because a text has no line ends in JSON.
 */
function withDecimals(json: string): string {
  return json.replace(/^( *"(?:rate|value)": -?\d+)(,?)$/gm, "$1.0$2");
}
