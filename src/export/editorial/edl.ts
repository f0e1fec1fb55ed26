/**
 * CMX 3600 edit list: the takes of one camera at one rate, one cut each, end to end from 01:00:00:00.
 *
 * @source Columns as two open readers take them: pycmx (parse_cmx_statements.py) and otio-cmx3600-adapter. Both read comments
 *   only after an event, so that the table of names stands at the end.
 */
import type { DaySummary } from "../../summary/types.ts";
import { type FrameRate, nominalRate } from "../../time/frame-rate.ts";
import { formatTimecode, parseTimecode } from "../../time/timecode.ts";
import type { FormatLosses } from "../losses.ts";
import { asciiLine } from "./ascii.ts";
import { lineNames, REEL_WIDTH, reelNames, type ShortName } from "./edl-names.ts";
import { takeMarks } from "./marks.ts";
import { clipName, type RateGroup, type TimedTake } from "./reels.ts";

/** Event numbers have three digits in the columns of both readers. */
const EVENTS_PER_LIST = 999;

export const EDL_LOSSES: FormatLosses = {
  format: "CMX 3600 edit list",
  files: "editorial/*.edl",
  losses: [
    "No rate stands in the list: it is the show's, or the one in the file's name. Whether timecode drops frames is said by the FCM line.",
    "Reels have eight capital letters and digits, clip names 32 characters, all texts are ASCII. What was changed stands in a table of " +
      "comments at the end of the list, with the take's address in `takes.csv`.",
    "Locators (LOC) have no length and stand in timecode of the source, with `:` before the frames also where the timecode drops frames: " +
      "some readers lose a locator with `;`. Lengths are in `markers.csv` and in the timeline.",
    "Of slate, scene, lens, stop and remarks only slate, take, roll and clip are there; circled takes have the comment CIRCLED.",
    "A list has at most 999 events; longer days go on in a second list.",
    "The out point of a take that runs past midnight is smaller than its in point; some readers refuse such an event.",
    "At rates above 100 frames a second the frames have three digits, which the columns do not hold: such takes are in the timeline only.",
  ],
};

/** Whether the columns can hold the timecode of a rate: two digits for the frames. */
export function fitsEditList(rate: FrameRate): boolean {
  return nominalRate(rate) <= 100;
}

/** Texts of the lists of a group, usually one; each has at most 999 events. */
export function edlTexts(summary: DaySummary, camera: string, group: RateGroup): readonly string[] {
  const lists: TimedTake[][] = [];
  for (let i = 0; i < group.takes.length; i += EVENTS_PER_LIST) lists.push(group.takes.slice(i, i + EVENTS_PER_LIST));
  return lists.map((takes, i) => {
    const part = lists.length === 1 ? "" : ` ${i + 1} OF ${lists.length}`;
    const title = asciiLine(`${summary.show.code} ${summary.date} CAM ${camera}`).toUpperCase().slice(0, 60) + part;
    return edlText(title, { ...group, takes }, summary.show.distances);
  });
}

function edlText(title: string, group: RateGroup, distances: DaySummary["show"]["distances"]): string {
  const { rate, dropFrame, takes } = group;
  const reel = reelNames();
  const name = lineNames();
  const label = (frame: number) => formatTimecode(frame, rate, dropFrame);
  const table = new Map<string, string>();
  const short = (kind: string, text: string, { name: written, whole }: ShortName, address: string) => {
    if (!whole && !table.has(`${kind} ${text}`)) table.set(`${kind} ${text}`, tableLine(kind, written, text, address));
    return written;
  };
  const lines = [`TITLE: ${title}`, `FCM: ${dropFrame ? "DROP FRAME" : "NON-DROP FRAME"}`];
  let record = firstRecordFrame(rate, dropFrame);
  for (const [index, { summary, inFrame }] of takes.entries()) {
    const { take } = summary;
    const source = take.roll ?? take.clip;
    const end = record + take.durationFrames;
    lines.push(
      eventLine({
        event: index + 1,
        reel: source === null ? "AX" : short("REEL", source, reel(source), take.address),
        times: [label(inFrame), label(inFrame + take.durationFrames), label(record), label(end)],
      }),
      `* FROM CLIP NAME:  ${short("NAME", clipName(summary), name(clipName(summary)), take.address)}`,
      ...(take.clip === null ? [] : [`* SOURCE FILE: ${asciiLine(take.clip)}`]),
      ...(take.circled ? ["* CIRCLED"] : []),
      ...takeMarks(summary, distances).map((mark) =>
        // the readers know locators with colons only; the FCM line says how they count
        locator(label(inFrame + mark.startFrame).replace(";", ":"), mark.colour, mark.text),
      ),
    );
    record = end;
  }
  return `${[...lines, ...table.values()].join("\n")}\n`;
}

/** The record side begins at the label 01:00:00:00, as cutting rooms expect. */
function firstRecordFrame(rate: FrameRate, dropFrame: boolean): number {
  const hour = parseTimecode("01:00:00:00", rate, dropFrame);
  return hour.ok ? hour.frame : 0;
}

interface EventCells {
  readonly event: number;
  readonly reel: string;
  /** Source in, source out, record in, record out; out points are the first frame after. */
  readonly times: readonly [string, string, string, string];
}

/** One cut of pictures: 76 characters, every column at its place. */
export function eventLine({ event, reel, times }: EventCells): string {
  const number = String(event).padStart(3, "0");
  return `${number}  ${reel.padEnd(REEL_WIDTH)} ${"V".padEnd(4)}  ${"C".padEnd(4)} ${"".padEnd(3)} ${times.join(" ")}`;
}

function locator(timecode: string, colour: string, text: string): string {
  return `* LOC: ${timecode} ${colour.padEnd(7)} ${asciiLine(text).toUpperCase()}`;
}

function tableLine(kind: string, written: string, text: string, address: string): string {
  return `* SHORT ${kind} ${written} = ${asciiLine(text)} (TAKE ${address})`;
}
