/** What the report may weigh. Limits in thousands of bytes, of files as they lie on the disk. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { describe, expect, inject, it } from "vitest";
import { DATE, writeShow } from "../../bench/show.mjs";
import { filesOf } from "../helpers/built-site.ts";
import { DEMO_OUT } from "../helpers/demo-pages.ts";
import { buildReport } from "../helpers/run-command.ts";

const files = filesOf(DEMO_OUT);
const read = (path: string): Buffer => readFileSync(join(DEMO_OUT, path));
const largest = (sizes: readonly number[]): number => Math.max(...sizes);

/** A take of a minute at 24 frames a second. */
const MINUTE = 1440;

describe("budgets", () => {
  it("a take's page is below 90 KB, without its data script", () => {
    const sizes = (inject("demoPages").take ?? []).map((path) => read(path).length);
    console.log(`take page: ${largest(sizes)} bytes at most`);
    expect(largest(sizes)).toBeLessThan(90_000);
  });

  it("the data script of a take of 1,440 frames is below 60 KB", () => {
    const days = files.filter((path) => /^packs\/[^/]+\/day\.json$/.test(path)).map((path) => JSON.parse(String(read(path))));
    const sizes = days.flatMap((day: { date: string; takes: readonly { address: string; durationFrames: number }[] }) =>
      day.takes
        .map(({ address, durationFrames }) => ({ path: `days/${day.date}/takes/${address}.data.js`, frames: durationFrames }))
        .filter(({ path, frames }) => frames > 0 && files.includes(path))
        .map(({ path, frames }) => read(path).length * Math.max(1, MINUTE / frames)),
    );
    expect(sizes.length).toBeGreaterThan(20);
    console.log(`data script: ${Math.round(largest(sizes))} bytes at most for ${MINUTE} frames`);
    expect(largest(sizes)).toBeLessThan(60_000);
  });

  it("a day's page is below 400 KB with 150 takes as full as the demo's", () => {
    const sizes = (inject("demoPages").day ?? []).map((path) => {
      const html = String(read(path));
      const rows = html.match(/<tr\b[^>]*>[\s\S]*?<\/tr>/g)?.filter((row) => row.includes('href="takes/')) ?? [];
      expect(rows.length, path).toBeGreaterThan(20);
      const inRows = rows.reduce((sum, row) => sum + Buffer.byteLength(row), 0);
      return Buffer.byteLength(html) - inRows + (150 * inRows) / rows.length;
    });
    console.log(`day page with 150 takes: ${sizes.map((size) => Math.round(size / 1000)).join(", ")} KB`);
    expect(largest(sizes)).toBeLessThan(400_000);
  });

  it("a day's page is below 400 KB with 150 takes that have seven pulls and a finding each", async () => {
    const root = mkdtempSync(join(tmpdir(), "daybook-full-day-"));
    try {
      writeShow(join(root, "show"), 150);
      await buildReport(join(root, "show"), join(root, "out"));
      const html = readFileSync(join(root, "out", "days", DATE, "index.html"), "utf8");
      expect(html.match(/href="takes\/[^"]+"/g)?.length).toBe(150);
      console.log(`day page of 150 full takes: ${Buffer.byteLength(html)} bytes`);
      expect(Buffer.byteLength(html)).toBeLessThan(400_000);
    } finally {
      rmSync(root, { recursive: true, force: true });
    }
  });

  it("the scripts of a page are below 60 KB together, compressed", () => {
    const scripts = files.filter((path) => /^assets\/.*\.js$/.test(path));
    expect(scripts).toEqual(expect.arrayContaining(["assets/page.js", "assets/take.js"]));
    const bytes = scripts.reduce((sum, path) => sum + gzipSync(read(path)).length, 0);
    console.log(`client scripts: ${bytes} bytes compressed`);
    expect(bytes).toBeLessThan(60_000);
  });
});
