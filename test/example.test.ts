/**
 * Two example shows whose figures were computed independently of this program, from the folders and the formulas of the
 * contract (../shared/example). Skipped by name in a clone without that folder, or without Python 3.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { dayJson } from "../src/export/day-json.ts";
import { readDay } from "../src/ingest/read-day.ts";
import { readShow } from "../src/ingest/read-show.ts";
import { buildDay } from "../src/model/build-day.ts";
import { summariseDay } from "../src/summary/day.ts";
import { diskFolder } from "./helpers/disk-folder.ts";

const EXAMPLE = fileURLToPath(new URL("../../shared/example", import.meta.url));
const python = spawnSync("python3", ["--version"]).status === 0;

function writeDays(show: string): string {
  const out = mkdtempSync(join(tmpdir(), "daybook-example-"));
  const folder = diskFolder(join(EXAMPLE, show));
  const { input, findings } = readShow(folder);
  if (input === null) throw new Error(findings.map((finding) => finding.message).join("; "));
  for (const date of input.dates) {
    const read = readDay(folder, input, date);
    const summary = summariseDay(buildDay(input, read.input, [...findings, ...read.findings]), input.kit);
    mkdirSync(join(out, "packs", date), { recursive: true });
    writeFileSync(join(out, "packs", date, "day.json"), dayJson(summary, { name: "lens-daybook", version: "0" }));
  }
  return out;
}

describe.skipIf(!existsSync(EXAMPLE) || !python)("the example shows with independently computed figures", () => {
  for (const show of ["basic", "wide"]) {
    it(`${show}: day.json has every figure, row count, finding place and key`, () => {
      const checked = spawnSync("python3", [join(EXAMPLE, "check.py"), show, writeDays(show)], { encoding: "utf8" });
      expect(checked.stdout.trim().split("\n").at(-1)).toMatch(/, 0 failed$/);
    });
  }
});
