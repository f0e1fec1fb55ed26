/** README.txt of a pack, for whoever opens the folder without the program: what each file is, how to verify, how to read figures. */
import { dateLong } from "../format/time.ts";
import type { DaySummary } from "../summary/types.ts";
import type { Tool } from "./day-json.ts";

export const PACK_GUIDE = "README.txt";

interface Described {
  /** Name as the reader sees it in the folder. */
  readonly shown: string;
  readonly isOf: (name: string) => boolean;
  readonly about: string;
}

const ending = (end: string) => (name: string) => name.endsWith(end);
const among = (folder: string, end: string) => (name: string) => name.startsWith(folder) && name.endsWith(end);

const ROOT: readonly Described[] = [
  {
    shown: "*-camera-report.pdf",
    isOf: ending("-camera-report.pdf"),
    about: "The day to read, print and sign. day.json and the tables are attached in it.",
  },
  { shown: "*-editorial.pdf", isOf: ending("-editorial.pdf"), about: "The day for the cutting room alone." },
  { shown: "*-vfx.pdf", isOf: ending("-vfx.pdf"), about: "Plate sheets, lenses and formulas for VFX alone." },
  {
    shown: "*-production.pdf",
    isOf: ending("-production.pdf"),
    about: "The page to sign and a row a set-up, for production alone.",
  },
  { shown: "day.json", isOf: (name) => name === "day.json", about: "Every figure of the day, for programs." },
  { shown: "takes.csv", isOf: (name) => name === "takes.csv", about: "A row per take and camera." },
  {
    shown: "findings.csv",
    isOf: (name) => name === "findings.csv",
    about: "What did not agree in notes and logs: where, and what to do.",
  },
  {
    shown: "datapackage.json",
    isOf: ending("datapackage.json"),
    about: "Types, units and meaning of the columns of the tables beside it, in every folder with tables.",
  },
  { shown: "LOSSES.md", isOf: (name) => name === "LOSSES.md", about: "What each format cannot hold, and what was left out today." },
  {
    shown: "schema/",
    isOf: (name) => name.startsWith("schema/"),
    about: "JSON Schemas of day.json, of a finding, and of what the command writes with --json.",
  },
];

const EDITORIAL: readonly Described[] = [
  {
    shown: "editorial/*.otio",
    isOf: among("editorial/", ".otio"),
    about: "A timeline per camera (OpenTimelineIO): each take a clip, with markers.",
  },
  {
    shown: "editorial/*.edl",
    isOf: among("editorial/", ".edl"),
    about: "The same as edit lists (CMX 3600), per camera and timecode rate.",
  },
  { shown: "editorial/markers.csv", isOf: ending("markers.csv"), about: "Focus pulls, gaps of the log and plates inside takes." },
  { shown: "editorial/bins.csv", isOf: ending("bins.csv"), about: "A row per take, by scene." },
];

const VFX: readonly Described[] = [
  {
    shown: "vfx/<take>/lens.csv",
    isOf: among("vfx/", "lens.csv"),
    about: "A row per frame: focus, stop, focal length, depth of field, distortion, shading. Attached in the camera report too.",
  },
  {
    shown: "vfx/<take>/lens.opentrackio.jsonl",
    isOf: ending(".opentrackio.jsonl"),
    about: "The same as OpenTrackIO samples, one a line.",
  },
  {
    shown: "vfx/<take>/camera.usda",
    isOf: ending(".usda"),
    about: "An animated camera (OpenUSD) on a centimetre stage; no pose. Time code 1001 is frame 0.",
  },
  {
    shown: "vfx/<take>/undistort-*.exr",
    isOf: (name) => /\/undistort-\d+\.exr$/.test(name),
    about: "UV maps that take the lens off the recorded picture.",
  },
  {
    shown: "vfx/<take>/redistort-*.exr",
    isOf: (name) => /\/redistort-\d+\.exr$/.test(name),
    about: "UV maps that put it on again.",
  },
  {
    shown: "vfx/<take>/shading-*.exr",
    isOf: (name) => /\/shading-\d+\.exr$/.test(name),
    about: "Brightness of the lens: divide linear light by it to take shading off.",
  },
  { shown: "vfx/<take>/maps.csv", isOf: ending("maps.csv"), about: "Which map serves which frames." },
];

const PROOF = `IS IT ALL HERE, AND UNCHANGED?

  ascmhl/ holds a list with size and hashes (C4 and MD5) of every file,
  after the ASC MHL standard. The list with the highest number is the newest.

  With the program that wrote this folder:   daybook verify <this folder>
  (or the zip that it came in, before it is unpacked)
  With the standard's reference program:     ascmhl-debug verify <this folder>
  (it prints nothing when all is as listed)
  By hand, file by file:                     md5sum takes.csv
  and compare with the md5 of that file in the newest list.
  Do not save into this folder: a changed file is reported as changed.`;

/** The commands of docs/vfx-files.md, for whoever has the pack and no manual. */
const MAPS = `HOW TO APPLY THE MAPS

  With oiiotool of OpenImageIO, on a frame in linear light. maps.csv names the
  map of a frame (frame 0 is timecode_in); WxH is the size of the recorded
  picture, as in recordedResolution of the map's header.

  Take the lens off, and put it on again:
    oiiotool undistort-0001.exr --resize:filter=triangle WxH -o map.exr
    oiiotool plate.exr map.exr --st_warp:filter=triangle -o flat.exr
    oiiotool redistort-0001.exr --resize:filter=triangle WxH -o back-map.exr
    oiiotool flat.exr back-map.exr --st_warp:filter=triangle -o back.exr
  This loses what lies outside the frame. To keep it, put
  --crop <size of map.exr><origin of map.exr>, such as 4696x2648-44-28, after
  plate.exr (oiiotool --info -v map.exr prints both), and cut the last picture
  to the frame with --crop WxH+0+0.
  Take shading off:
    oiiotool shading-0001.exr --resize:filter=triangle WxH -o factor.exr
    oiiotool plate.exr factor.exr --div -o even.exr
  A program that counts v from the bottom needs 1 - v.`;

const CONVENTIONS = `HOW TO READ THE FIGURES

  Empty, or null in JSON: not recorded. It is never zero.
  Distances are in metres from the image plane, as focus scales read them;
  "inf" is infinity. Dioptres are 1 / metres, 0 at infinity.
  T-stops and f-stops are kept apart: t is T, f is f.
  Focal lengths, the sensor and the entrance pupil are in millimetres; the
  entrance pupil counts from the image plane toward the object.
  Depth of field, angle of view and the like are calculated, for a thin lens.
  Distortion in percent: negative is barrel. Shading in stops: negative is
  darker.
  Timecode out is the first frame after the take. ";" before the frames: the
  timecode drops frames. Rates are fractions, such as 24000/1001.
  Frames of a take count from 0.
  UV maps: R = u from the left, G = v from the top, 0 to 1 over the frame.
  Pages are in eighths, as whole numbers.
  A take is named camera-slate-take, such as a-24b-3; the name never changes.
  Tables have twelve digits, day.json all that were calculated.
  Text is UTF-8. Tables have commas and a header row; an apostrophe in front of
  a cell that begins with = + - or @ keeps spreadsheets from running it.

  A focus distance is an optical reading, not a safety distance for stunts,
  vehicles or effects.`;

/**
 * Text of README.txt, LF at the end, lines of 80 characters at most. It names the files that are there and no others.
 * @param names files of the pack, relative to it
 */
export function packGuide(summary: DaySummary, names: readonly string[], tool: Tool): string {
  const { show, day, date } = summary;
  const number =
    day.record.day === null ? "" : `, shooting day ${day.record.day}${day.record.of === null ? "" : ` of ${day.record.of}`}`;
  const there = (entries: readonly Described[]) => entries.filter(({ isOf }) => names.some(isOf)).map(describe);
  return `${[
    `${oneLine(show.title)}\n${dateLong(date)}${number}, unit ${oneLine(show.unit)}`,
    `Camera report and lens data of one shooting day. Everything here opens without\nthe program that wrote it (${tool.name} ${tool.version}).`,
    `WHAT EACH FILE IS\n\n${[...there(ROOT), ...there(EDITORIAL), ...there(VFX)].join("\n")}`,
    PROOF,
    ...(names.some((name) => /\/undistort-\d+\.exr$/.test(name)) ? [MAPS] : []),
    CONVENTIONS,
  ].join("\n\n")}\n`;
}

const WIDTH = 80;

/** The name, and what it is below it, wrapped and indented. */
function describe({ shown, about }: Described): string {
  const lines: string[] = [];
  for (const word of about.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= WIDTH - 6) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return [`  ${shown}`, ...lines.map((line) => `      ${line}`)].join("\n");
}

function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}]+/gu, " ").trim();
}
