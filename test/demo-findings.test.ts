/** What is found in the demo show: its deliberate mistakes, its gaps, and nothing else. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Finding } from "../src/core/finding.ts";
import { readDay } from "../src/ingest/read-day.ts";
import { readShow } from "../src/ingest/read-show.ts";
import { buildDay } from "../src/model/build-day.ts";
import { summariseDay } from "../src/summary/day.ts";
import { diskFolder } from "./helpers/disk-folder.ts";

const ROOT = join(import.meta.dirname, "..");

interface Mistake {
  readonly file: string;
  readonly line: number;
  readonly field: string;
}

/** What each mistake of scripts/demo/mistakes.json is found as, in the order of that list. */
const CODES = [
  "KIT508", // a calibration table that does not say its direction
  "NOTE303", // a distance without a unit
  "CHECK701", // another lens in the notes than in the log
  "CSV122", // a letter O for a nought
  "CHECK702", // another stop in the notes than in the log
  "MATCH405", // a take without a log
  "MATCH406", // take 1 twice
  "CHECK706", // a lens that the kit does not have
  "CHECK722", // feet noted as metres
  "LOG204", // one timecode with two readings
  "CHECK705", // wider than the lens opens
];

/** Logs with gaps that nobody made by mistake: the recorder lost the lens. */
const GAPS = [
  "MATCH413 days/2026-10-06/notes.csv:11",
  "MATCH413 days/2026-10-06/notes.csv:13",
  "MATCH413 days/2026-10-07/notes.csv:14",
];

function demoFindings(): readonly Finding[] {
  const folder = diskFolder(join(ROOT, "data"));
  const { input, findings } = readShow(folder);
  if (input === null) throw new Error("the demo cannot be read");
  const days = input.dates.flatMap((date) => {
    const read = readDay(folder, input, date);
    return summariseDay(buildDay(input, read.input, read.findings), input.kit).findings;
  });
  return [...findings, ...days];
}

describe("the demo show", () => {
  const mistakes = JSON.parse(readFileSync(join(ROOT, "scripts/demo/mistakes.json"), "utf8")) as readonly Mistake[];
  const serious = demoFindings().filter((f) => f.severity !== "remark");

  it("has its mistakes and its gaps found, where they are, and nothing else of severity error or check", () => {
    const expected = [...mistakes.map((m, i) => `${CODES[i]} ${m.file}:${m.line}`), ...GAPS].sort();
    expect(serious.map((f) => `${f.code} ${f.file}:${f.line}`).sort()).toEqual(expected);
  });

  it("has each of them at the cell that is wrong", () => {
    for (const mistake of mistakes) {
      const finding = serious.find((f) => f.file === mistake.file && f.line === mistake.line);
      // the take without a log is pointed at as a whole row
      const field = finding?.code === "MATCH405" ? null : mistake.field;
      expect(finding?.field, `${mistake.file}:${mistake.line}`).toBe(field);
    }
  });

  it("says of all of them where and how to mend it", () => {
    for (const finding of demoFindings()) {
      expect(finding.message, finding.code).toMatch(/[.!?:]$/);
      expect(finding.hint.length, finding.code).toBeGreaterThan(10);
    }
  });
});
