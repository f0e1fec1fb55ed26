import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = join(import.meta.dirname, "../..");
const out = join(mkdtempSync(join(tmpdir(), "demo-")), "data");

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => name.replaceAll("\\", "/"))
    .filter((name) => statSync(join(folder, name)).isFile())
    .sort();
}

interface Mistake {
  readonly day: string | null;
  readonly file: string;
  readonly line: number;
}

describe("the demo show", () => {
  beforeAll(() => {
    execFileSync(process.execPath, [join(root, "scripts/make-demo.mjs"), "--out", out]);
  }, 30_000);
  afterAll(() => rmSync(join(out, ".."), { recursive: true, force: true }));

  it("is what the script writes, byte for byte", () => {
    const written = filesOf(out).filter((name) => name !== "mistakes.json");
    expect(written).toEqual(filesOf(join(root, "data")));
    const different = written.filter((name) => !readFileSync(join(out, name)).equals(readFileSync(join(root, "data", name))));
    expect(different).toEqual([]);
  });

  it("has its deliberate mistakes listed where they stand", () => {
    const listed = readFileSync(join(root, "scripts/demo/mistakes.json"), "utf8");
    expect(listed).toBe(readFileSync(join(out, "mistakes.json"), "utf8"));
    for (const mistake of JSON.parse(listed) as Mistake[]) {
      const file = join(root, "data", mistake.file);
      expect(existsSync(file), mistake.file).toBe(true);
      expect(mistake.line, mistake.file).toBeLessThan(readFileSync(file, "utf8").split(/\r?\n/).length);
    }
  });

  it("stays under 8 MB", () => {
    const bytes = filesOf(out).reduce((sum, name) => sum + statSync(join(out, name)).size, 0);
    expect(bytes).toBeLessThan(8_000_000);
  });
});
