import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { LOG } from "../../core/findings/log.ts";
import { didYouMean } from "../../core/nearest-name.ts";
import { namesOf } from "../../csv/column-spec.ts";
import { LOG_KEYS } from "../../csv/columns.ts";
import type { KeyLine } from "../../csv/key-lines.ts";
import { type FrameRate, rateLabel, supportsDropFrame } from "../../time/frame-rate.ts";
import { parseTimecode } from "../../time/timecode.ts";
import { readConvention, takeKey } from "../kit/convention-keys.ts";
import { readDate } from "../written/clock.ts";
import { oneOf } from "../written/marks.ts";
import { type Reading, read, refuse } from "../written/reading.ts";
import { readBoolean, readRate, readWhole } from "../written/setting.ts";
import type { LogKeys } from "./log-record.ts";

/** The key lines of a log, with those of a field map behind them. */
export interface LogHead {
  readonly keys: LogKeys;
  readonly decimal: "." | ",";
  /** The rate and the drop flag that the log's labels are counted with. */
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  /** Frame of the day of `start_timecode`. */
  readonly start: number | null;
  place(key: string): Place;
}

/** What a log is read with where it does not say it itself. */
export interface LogDefaults {
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  readonly decimal: "." | ",";
  /** `set` of the field map. */
  readonly set: readonly KeyLine[];
}

/** Reads the keys of a log; a refused value is an error and counts as not said. The log's own keys win over the field map's. */
export function readLogHead(lines: readonly KeyLine[], file: string, defaults: LogDefaults, found: FindingCollector): LogHead {
  tellOfUnknown(lines, found);
  const keys = new Map([...defaults.set, ...lines].map((key) => [key.key, key]));
  const tell = (key: KeyLine, problem: string, hint: string): void =>
    found.add(LOG.badKey, { place: key.place, field: key.key, message: `${key.key}: ${problem}`, hint });
  const take = <T>(name: string, reader: (text: string) => Reading<T>): T | null => takeKey(keys, name, reader, tell);
  const text = (name: string): string | null => keys.get(name)?.value || null;
  const rate = take("rate", readRate);
  const dropSaid = take("drop_frame", readBoolean);
  const readRateOf = rate ?? defaults.rate;
  const dropFrame = dropFrameOf(dropSaid, readRateOf, defaults.dropFrame, keys.get("drop_frame"), found);
  const startText = text("start_timecode");
  const start = take("start_timecode", (written) => frameOf(written, readRateOf, dropFrame));
  return {
    keys: {
      camera: text("camera"),
      clip: text("clip"),
      slate: text("slate"),
      take: text("take"),
      lens: text("lens"),
      lensSerial: null,
      date: take("date", readDate),
      rate,
      dropFrame: dropSaid === null ? null : dropFrame,
      distanceFrom: take("distance_from", (written) => oneOf(written, ["image-plane", "front"] as const)) ?? "image-plane",
      convention: readConvention(keys, tell),
      clockOffsetFrames: take("clock_offset_frames", readWhole) ?? 0,
      startTimecode: start === null ? null : startText,
    },
    decimal: take("decimal", readDecimal) ?? defaults.decimal,
    rate: readRateOf,
    dropFrame,
    start,
    place: (key) => keys.get(key)?.place ?? { file, line: null, column: null },
  };
}

/**
 * Drop-frame where the log says so; where it does not, as the show counts. At a rate that has none it is an error if said,
 * and simply not so if only the show says it: a log at 25 of a show at 29.97.
 */
function dropFrameOf(
  said: boolean | null,
  rate: FrameRate,
  showDropFrame: boolean,
  key: KeyLine | undefined,
  found: FindingCollector,
): boolean {
  if (supportsDropFrame(rate)) return said ?? showDropFrame;
  if (said === true && key !== undefined) {
    found.add(LOG.dropRate, {
      place: key.place,
      field: "drop_frame",
      message: `drop_frame is true, and there is no drop-frame timecode at ${rateLabel(rate)}`,
      hint: 'Write "# drop_frame: false", or mend the rate.',
    });
  }
  return false;
}

function frameOf(text: string, rate: FrameRate, dropFrame: boolean): Reading<number> {
  const result = parseTimecode(text, rate, dropFrame);
  return result.ok ? read(result.frame) : refuse(result.problem, "Write hours:minutes:seconds:frames at the log's rate.");
}

function readDecimal(text: string): Reading<"." | ","> {
  const word = text.trim().toLowerCase();
  if (word === "," || word === "comma") return read(",");
  if (word === "." || word === "point") return read(".");
  return refuse(`no decimal sign: "${text}"`, 'Write "." or ",".');
}

function tellOfUnknown(lines: readonly KeyLine[], found: FindingCollector): void {
  const known = namesOf(LOG_KEYS);
  for (const key of lines) {
    if (known.has(key.key)) continue;
    found.add(CSV.unknownKey, {
      place: key.place,
      field: key.key,
      message: `the key ${key.key} is not known and not read`,
      hint: didYouMean(key.key, known).trim() || "Leave it, or see `daybook columns` for the keys.",
    });
  }
}
