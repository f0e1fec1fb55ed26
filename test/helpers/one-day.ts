/** One shooting day given as notes, logs and a day file, and what is found in it. */
import type { Finding } from "../../src/core/finding.ts";
import { type Files, logText, SMALL_KIT, summarise } from "./memory-show.ts";

export const DATE = "2030-02-03";
export const NOTES = `days/${DATE}/notes.csv`;
export const DAY = `days/${DATE}/day.yaml`;

export function logFile(name: string): string {
  return `days/${DATE}/logs/${name}`;
}

export interface OneDay {
  /** Header of notes.csv. */
  readonly header?: string;
  readonly notes: readonly string[];
  readonly logs?: Readonly<Record<string, string>>;
  /** Lines of day.yaml after day and date. */
  readonly day?: string;
  /** Files beside the small kit, or in its place. */
  readonly files?: Files;
}

const HEADER = "slate,take,camera,clip,tc_in,tc_out,lens,stop,focus";

export function oneDay({ header = HEADER, notes, logs = {}, day = "", files = {} }: OneDay) {
  return summarise(
    {
      ...SMALL_KIT,
      [DAY]: `day: 1\ndate: ${DATE}\n${day}`,
      [NOTES]: `${header}\n${notes.map((line) => `${line}\n`).join("")}`,
      ...Object.fromEntries(Object.entries(logs).map(([name, text]) => [logFile(name), text])),
      ...files,
    },
    DATE,
  );
}

/** Findings of a code, or of all of severity error and check without one. */
export function found(day: OneDay, code?: string): readonly Finding[] {
  const { findings } = oneDay(day);
  return code === undefined ? findings.filter((f) => f.severity !== "remark") : findings.filter((f) => f.code === code);
}

/** A log of one clip at 24 frames a second from 10:00:00:00 on; its first row is line 4. */
export function clipLog(clip: string, header: string, frames: number, cells: (i: number) => string, start = "10:00:00:00"): string {
  return logText([`clip: ${clip}`, "lens: P50"], header, start, frames, cells);
}

/** Focus that stands, moves evenly and stands again: `from` until frame `a`, `to` from frame `b` on, in metres with three digits. */
export function pull(from: number, to: number, a: number, b: number): (i: number) => string {
  return (i) => (from + (to - from) * Math.min(1, Math.max(0, (i - a) / (b - a)))).toFixed(3);
}
