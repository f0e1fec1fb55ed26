/** The files of a pack as others read them: tables by Papa Parse, the USD camera and the edit list by their published layout. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";

export type Row = Readonly<Record<string, string>>;

export function readTable(...path: readonly string[]): readonly Row[] {
  return Papa.parse<Row>(readFileSync(join(...path), "utf8"), { header: true, skipEmptyLines: true }).data;
}

// biome-ignore lint/suspicious/noExplicitAny: the shape is what is tested
export function readJson(...path: readonly string[]): any {
  return JSON.parse(readFileSync(join(...path), "utf8"));
}

export interface UsdCamera {
  /** Value of an attribute at a time code, as USD holds it: of all times, or that of the sample; `null` without one. */
  at(name: string, time: number): number | null;
  /** Whether any attribute has a sample of its own there. */
  hasSample(time: number): boolean;
}

/** Attributes and time samples of a layer that has one a line. */
export function readUsd(...path: readonly string[]): UsdCamera {
  const constants = new Map<string, number>();
  const samples = new Map<string, Map<number, number>>();
  let open: Map<number, number> | null = null;
  for (const line of readFileSync(join(...path), "utf8").split("\n")) {
    const series = /^\s*(?:custom )?(?:float|double) (\S+)\.timeSamples = \{$/.exec(line);
    const constant = /^\s*(?:custom )?(?:float|double) (\S+) = (\S+)$/.exec(line);
    const sample = /^\s*(\d+): (\S+),$/.exec(line);
    if (series !== null) {
      open = new Map();
      samples.set(series[1] as string, open);
    } else if (constant !== null) constants.set(constant[1] as string, numberOf(constant[2] as string));
    else if (sample !== null) open?.set(Number(sample[1]), numberOf(sample[2] as string));
    else open = null;
  }
  return {
    at: (name, time) => constants.get(name) ?? samples.get(name)?.get(time) ?? null,
    hasSample: (time) => [...samples.values()].some((series) => series.has(time)),
  };
}

/** A number as the text formats of a pack write it: `inf` is infinity. */
export function numberOf(text: string): number {
  return text === "inf" ? Number.POSITIVE_INFINITY : Number(text);
}

export interface EdlEvent {
  readonly source: readonly [string, string];
  readonly record: readonly [string, string];
  readonly clipName: string;
  readonly sourceFile: string | null;
  readonly circled: boolean;
  readonly locators: readonly string[];
}

/** Events of a CMX 3600 list: columns 30-40, 42-52, 54-64 and 66-76 hold the timecodes, comments belong to the event above. */
export function readEdl(...path: readonly string[]): readonly EdlEvent[] {
  const blocks = readFileSync(join(...path), "utf8").split(/^(?=\d{3} {2})/m);
  return blocks.slice(1).map((block) => {
    const [event = "", ...comments] = block.split("\n");
    const after = (start: string) =>
      comments
        .find((line) => line.startsWith(start))
        ?.slice(start.length)
        .trim() ?? null;
    return {
      source: [event.slice(29, 40), event.slice(41, 52)],
      record: [event.slice(53, 64), event.slice(65, 76)],
      clipName: after("* FROM CLIP NAME:") ?? "",
      sourceFile: after("* SOURCE FILE:"),
      circled: comments.includes("* CIRCLED"),
      locators: comments.filter((line) => line.startsWith("* LOC:")).map((line) => line.slice(7, 18)),
    };
  });
}
