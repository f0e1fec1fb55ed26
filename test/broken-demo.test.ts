/** The demo with more mistakes put in: each is found where it stands, and everything else is as before. */
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Finding } from "../src/core/finding.ts";
import { dayObject } from "../src/export/day-json.ts";
import type { ShowFolder } from "../src/ingest/folder.ts";
import { readDay } from "../src/ingest/read-day.ts";
import { readShow } from "../src/ingest/read-show.ts";
import { buildDay } from "../src/model/build-day.ts";
import { summariseDay } from "../src/summary/day.ts";
import { diskFolder } from "./helpers/disk-folder.ts";

const DAY = "days/2026-10-06";
const demo = diskFolder(fileURLToPath(new URL("../data", import.meta.url)));

/** What is broken in each file, on which line, and how. `lines` is 1-based like the findings. */
const BREAKAGES: readonly { readonly file: string; readonly breakIt: (lines: string[]) => void }[] = [
  { file: `${DAY}/notes.csv`, breakIt: (lines) => change(lines, 5, "08:31:43:06", "25:31:43:06") },
  { file: `${DAY}/logs/a-14-1.csv`, breakIt: (lines) => change(lines, 9, "5.661", "five") },
  { file: `${DAY}/logs/a-14-2.csv`, breakIt: (lines) => change(lines, 649, ",1.591,4.01", ",1.5") },
  { file: `${DAY}/logs/a-14a-1.csv`, breakIt: (lines) => change(lines, 20, /^\d\d:\d\d/, "99:99") },
  { file: "kit/lenses.csv", breakIt: (lines) => change(lines, 3, ",1210,", ",heavy,") },
  { file: `${DAY}/day.yaml`, breakIt: (lines) => change(lines, 11, "18:05", "99:99") },
];

/** Columns by counting: 24 characters stand before tc_in in line 5 of the notes, 12 before focus_m in a log row. */
const EXPECTED: readonly (Partial<Finding> & { readonly file: string })[] = [
  { file: `${DAY}/notes.csv`, line: 5, column: 25, field: "tc_in", severity: "error" },
  { file: `${DAY}/logs/a-14-1.csv`, line: 9, column: 13, field: "focus_m", severity: "error", take: "a-14-1" },
  { file: `${DAY}/logs/a-14-2.csv`, line: 649, severity: "error", take: "a-14-2" },
  { file: `${DAY}/logs/a-14a-1.csv`, line: 20, column: 1, field: "timecode", severity: "error", take: "a-14a-1" },
  { file: "kit/lenses.csv", line: 3, field: "mass_g", severity: "error" },
  { file: `${DAY}/day.yaml`, line: 11, field: "wrap" },
];

function change(lines: string[], line: number, from: string | RegExp, to: string): void {
  const before = lines[line - 1] ?? "";
  const after = before.replace(from, to);
  if (after === before) throw new Error(`line ${line} has no ${from}: ${before}`);
  lines[line - 1] = after;
}

function broken(): ShowFolder {
  return {
    list: demo.list,
    read(file) {
      const content = demo.read(file);
      const breakage = BREAKAGES.find((one) => one.file === file);
      if (breakage === undefined || "problem" in content) return content;
      const lines = new TextDecoder().decode(content).split("\n");
      breakage.breakIt(lines);
      return new TextEncoder().encode(lines.join("\n"));
    },
  };
}

function days(folder: ShowFolder): {
  readonly findings: readonly Finding[];
  readonly byDate: ReadonlyMap<string, Record<string, unknown>>;
} {
  const { input, findings } = readShow(folder);
  if (input === null) throw new Error("the show cannot be read");
  const all = [...findings];
  const byDate = new Map<string, Record<string, unknown>>();
  for (const date of input.dates) {
    const read = readDay(folder, input, date);
    const summary = summariseDay(buildDay(input, read.input, read.findings), input.kit);
    all.push(...summary.findings);
    byDate.set(date, dayObject(summary, { name: "lens-daybook", version: "0" }));
  }
  return { findings: all, byDate };
}

type TakeObject = { readonly address: string } & Record<string, unknown>;
const takesOf = (day: Record<string, unknown> | undefined): readonly TakeObject[] => (day?.takes ?? []) as TakeObject[];

describe("the demo with six more mistakes", () => {
  const before = days(demo);
  const after = days(broken());
  const key = (f: Finding): string => `${f.code} ${f.file}:${f.line}:${f.column} ${f.message}`;
  const known = new Set(before.findings.map(key));
  const added = after.findings.filter((finding) => !known.has(key(finding)) && finding.severity !== "remark");

  it.each(EXPECTED)("has a finding at $file line $line", (wanted) => {
    expect(after.findings.some((f) => Object.entries(wanted).every(([name, value]) => f[name as keyof Finding] === value))).toBe(
      true,
    );
  });

  it("has no new finding anywhere else but about the take whose timecode cannot be read", () => {
    const places = new Set(EXPECTED.map((wanted) => `${wanted.file}:${wanted.line}`));
    const others = added.filter(
      (f) => !places.has(`${f.file}:${f.line}`) && f.take !== "b-14-2" && !f.file?.endsWith("dial-b.csv"),
    );
    expect(others.map(key)).toEqual([]);
  });

  it("keeps every figure of the other days and of the takes that were not touched", () => {
    for (const date of ["2026-10-07", "2026-10-08"])
      expect(takesOf(after.byDate.get(date))).toEqual(takesOf(before.byDate.get(date)));
    const touched = new Set(["a-14-1", "b-14-2", "a-14-2", "a-14a-1"]);
    const untouched = (takes: readonly TakeObject[]) => takes.filter((take) => !touched.has(take.address));
    const was = untouched(takesOf(before.byDate.get("2026-10-06")));
    expect(was.length).toBeGreaterThan(20);
    expect(untouched(takesOf(after.byDate.get("2026-10-06")))).toEqual(was);
  });

  it("counts every log row once", () => {
    for (const day of after.byDate.values()) {
      const rows = day.rows as Record<"read" | "used" | "unmatched" | "rejected", number>;
      expect(rows.read).toBe(rows.used + rows.unmatched + rows.rejected);
    }
  });
});
