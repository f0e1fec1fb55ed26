/**
 * One folder a case: files of a show with something wrong in them, and the findings that must come of it, no more and no fewer.
 * A finding is written `severity code file:line:column field`, with `-` for what has none. Files that a case does not have are
 * those of a small show without a fault. Places were counted by hand in the files.
 */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/core/finding.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { type Files, memoryFolder, SMALL_KIT } from "../helpers/memory-show.ts";

const CASES = fileURLToPath(new URL("../cases", import.meta.url));
const DATE = "2031-05-06";

interface Expected {
  readonly about: string;
  readonly findings: readonly string[];
  readonly notes?: number;
  readonly rows?: number;
  readonly rejected?: number;
}

function filesBelow(folder: string, prefix = ""): Record<string, Uint8Array> {
  const files: Record<string, Uint8Array> = {};
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) Object.assign(files, filesBelow(path, `${prefix}${name}/`));
    else if (prefix + name !== "expected.json") files[prefix + name] = readFileSync(path);
  }
  return files;
}

/** The small show's files, without those whose place the case gives to a folder. */
function overlay(own: Files): Files {
  const base: Record<string, string> = { ...SMALL_KIT, [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n` };
  for (const name of Object.keys(base)) {
    if (Object.keys(own).some((other) => other.startsWith(`${name}/`))) delete base[name];
  }
  return { ...base, ...own };
}

function inWords(f: Finding): string {
  return `${f.severity} ${f.code} ${f.file ?? "-"}:${f.line ?? "-"}:${f.column ?? "-"} ${f.field ?? "-"}`;
}

describe("the case folders", () => {
  for (const name of readdirSync(CASES).sort()) {
    const expected = JSON.parse(readFileSync(join(CASES, name, "expected.json"), "utf8")) as Expected;
    it(`${name}: ${expected.about}`, () => {
      const folder = memoryFolder(overlay(filesBelow(join(CASES, name))));
      const show = readShow(folder);
      if (show.input === null) throw new Error("the show of the case cannot be read");
      const { input, findings } = readDay(folder, show.input, DATE);
      const all = [...show.findings, ...findings];
      expect(all.map(inWords).sort()).toEqual([...expected.findings].sort());
      for (const f of all) expect(f.message !== "" && f.hint !== "", `${f.code} has a message and a hint`).toBe(true);
      const count = {
        notes: input.notes.length,
        rows: input.logs.reduce((sum, log) => sum + log.rows, 0),
        rejected: input.logs.reduce((sum, log) => sum + log.rejected.reduce((a, b) => a + b, 0), 0),
      };
      expect(count).toMatchObject(Object.fromEntries(Object.entries(expected).filter(([key]) => key in count)));
    });
  }
});
