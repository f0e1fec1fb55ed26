/** The demo with a mistake put into every kind of file: each is found where it stands, and everything else is as before. */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Finding } from "../src/core/finding.ts";
import { dayObject } from "../src/export/day-json.ts";
import type { ShowFolder } from "../src/ingest/folder.ts";
import { readDay } from "../src/ingest/read-day.ts";
import { readShow } from "../src/ingest/read-show.ts";
import { buildDay } from "../src/model/build-day.ts";
import { summariseDay } from "../src/summary/day.ts";
import { runIn } from "./cli/fake-io.ts";
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
  { file: "show.yaml", breakIt: (lines) => change(lines, 14, "0.15", "much") },
  { file: "kit/cameras.csv", breakIt: (lines) => change(lines, 5, "2160", "21x60") },
  { file: "kit/calibration/K58.csv", breakIt: (lines) => change(lines, 10, "1.50", "near") },
  { file: "kit/columns.yaml", breakIt: (lines) => change(lines, 6, "image-plane", "image-plan") },
];

/** Files of kinds that the demo does not have, and a still of which a copy was interrupted. */
const ADDED: Readonly<Record<string, Uint8Array>> = {
  "kit/encoders/K26.csv": new TextEncoder().encode("encoder,focus_m\n0,0.3\nhalf,1\n1,inf\n"),
  [`${DAY}/logs/spare.jsonl`]: new TextEncoder().encode('{"lens": {"focusDistance": 2}\n'),
  [`${DAY}/stills/14d-grid.png`]: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0),
};

/** Columns by counting: 24 characters stand before tc_in in line 5 of the notes, 12 before focus_m in a log row. */
const EXPECTED: readonly (Partial<Finding> & { readonly file: string })[] = [
  { file: `${DAY}/notes.csv`, line: 5, column: 25, field: "tc_in", severity: "error" },
  { file: `${DAY}/logs/a-14-1.csv`, line: 9, column: 13, field: "focus_m", severity: "error", take: "a-14-1" },
  { file: `${DAY}/logs/a-14-2.csv`, line: 649, severity: "error", take: "a-14-2" },
  { file: `${DAY}/logs/a-14a-1.csv`, line: 20, column: 1, field: "timecode", severity: "error", take: "a-14a-1" },
  { file: "kit/lenses.csv", line: 3, field: "mass_g", severity: "error" },
  { file: `${DAY}/day.yaml`, line: 11, field: "wrap" },
  // "  stop_difference: " is 19 characters
  { file: "show.yaml", line: 14, column: 20, field: "check.stop_difference", severity: "error" },
  // "B,Sandling 46,S46-122,CROP38,24.00,13.50,3840," is 46 characters
  { file: "kit/cameras.csv", line: 5, column: 47, field: "resolution_y", severity: "error" },
  { file: "kit/calibration/K58.csv", line: 10, column: 4, field: "focus_m", severity: "error" },
  { file: "kit/columns.yaml", line: 6, severity: "error" },
  { file: "kit/encoders/K26.csv", line: 3, column: 1, field: "encoder", severity: "error" },
  { file: `${DAY}/logs/spare.jsonl`, line: 1, severity: "error" },
  { file: `${DAY}/stills/14d-grid.png`, line: null, severity: "check" },
];

function change(lines: string[], line: number, from: string | RegExp, to: string): void {
  const before = lines[line - 1] ?? "";
  const after = before.replace(from, to);
  if (after === before) throw new Error(`line ${line} has no ${from}: ${before}`);
  lines[line - 1] = after;
}

function broken(): ShowFolder {
  const names = Object.keys(ADDED);
  return {
    list(folder) {
      const below = names.filter((name) => name.startsWith(`${folder}/`)).map((name) => name.slice(folder.length + 1));
      const there = demo.list(folder) ?? (below.length > 0 ? [] : null);
      const fresh = new Map(
        below.map((name) => [name.split("/")[0] as string, name.includes("/") ? ("folder" as const) : ("file" as const)]),
      );
      return there === null
        ? null
        : [
            ...there,
            ...[...fresh].map(([name, kind]) => ({ name, kind })).filter(({ name }) => !there.some((one) => one.name === name)),
          ];
    },
    read(file) {
      if (ADDED[file] !== undefined) return ADDED[file];
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

describe("the demo with a mistake in every kind of file", () => {
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

  it("is built by the command: the broken day and a sound one, their pages and packs, with exit code 1", async () => {
    const root = mkdtempSync(join(tmpdir(), "daybook-broken-"));
    try {
      const show = join(root, "show");
      cpSync(fileURLToPath(new URL("../data", import.meta.url)), show, { recursive: true });
      // one sound day is enough to see that the broken one stops no other
      const [dropped, ...dates] = [...before.byDate.keys()].sort().reverse();
      expect(dates).toHaveLength(2);
      rmSync(join(show, "days", dropped ?? ""), { recursive: true });
      const folder = broken();
      for (const file of [...BREAKAGES.map((one) => one.file), ...Object.keys(ADDED)]) {
        const content = folder.read(file);
        if ("problem" in content) throw new Error(content.problem);
        mkdirSync(dirname(join(show, file)), { recursive: true });
        writeFileSync(join(show, file), content);
      }
      const out = join(root, "report");
      const { status, stderr } = await runIn(root, ["build", show, "--out", out, "--maps", "none", "--quiet"]);
      expect(stderr).toBe("");
      expect(status).toBe(1);
      for (const date of dates) {
        const pages = readdirSync(join(out, "days", date, "takes")).filter((name) => name.endsWith(".html"));
        const takes = takesOf(after.byDate.get(date)).map((take) => `${take.address}.html`);
        expect(pages.sort(), date).toEqual([...new Set(takes)].sort());
        expect(readdirSync(join(out, "packs", date))).toContain(`LWM-${date}-camera-report.pdf`);
      }
    } finally {
      rmSync(root, { recursive: true, force: true });
    }
  }, 300_000);

  it("counts every log row once", () => {
    expect(after.byDate.size).toBeGreaterThan(0);
    for (const day of after.byDate.values()) {
      const rows = day.rows as Record<"read" | "used" | "unmatched" | "rejected", number>;
      expect(rows.read).toBe(rows.used + rows.unmatched + rows.rejected);
    }
  });
});
