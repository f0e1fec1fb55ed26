/** A disk that is full from the nth writing on: what was there stays whole, and the next build mends the rest. */
import { afterEach, describe, expect, it } from "vitest";
import { outFiles } from "../../src/build/out-files.ts";
import { buildShow } from "../../src/build/run.ts";
import { showFiles } from "../../src/build/show-files.ts";
import { type FakeBuild, fakeBuild, fakePipeline, readFiles, writeFiles } from "./fakes.ts";

const BEFORE = { "show.yaml": "title: T", "days/2026-03-14/notes.csv": "take a-1-1\ntake a-1-2" };
let show: FakeBuild;
afterEach(() => show.clean());

/** Error of the file system as Node makes it, or as a library wraps it. */
function full(path: string, wrapped: boolean): Error {
  const error = Object.assign(new Error("ENOSPC: no space left on device, write"), { code: "ENOSPC", syscall: "write", path });
  return wrapped ? Object.assign(new Error("Having trouble writing"), { originalError: error }) : error;
}

async function buildOnFullDisk(writes: number, wrapped: boolean): Promise<Awaited<ReturnType<typeof buildShow>>> {
  const real = outFiles(show.out);
  let count = 0;
  const out = {
    ...real,
    write(file: string, content: Uint8Array | string) {
      if (++count > writes) throw full(real.absolute(file), wrapped);
      real.write(file, content);
    },
  };
  const files = showFiles(show.show);
  const log = { progress() {}, day() {}, detail() {} };
  const options = { dates: [], force: false, tool: { name: "Lens Daybook", version: "1.0.0" }, programHash: "p" };
  return buildShow(options, { show: files, linksLeftOut: () => [], out, log, now: () => 0 }, fakePipeline());
}

const withoutTemporary = (files: Record<string, string>) =>
  Object.fromEntries(Object.entries(files).filter(([name]) => !name.startsWith(".tmp")));

describe.each([
  ["as the system says it", false],
  ["as a library wraps it", true],
])("a full disk, %s", (_, wrapped) => {
  it("gives a finding at every step, never a mixture of two builds, and no fault", async () => {
    for (let writes = 0; ; writes++) {
      show = fakeBuild(BEFORE);
      await show.build();
      const before = readFiles(show.out);
      writeFiles(show.show, { "days/2026-03-14/notes.csv": "take a-1-2\ntake a-1-3\ntake a-1-4" });
      const result = await buildOnFullDisk(writes, wrapped);
      expect(result.faults, `after ${writes} writings`).toEqual([]);
      const refused = result.status === "refused";
      expect(result.findings.map((f) => f.code)).toEqual(refused ? ["OUT801"] : []);
      const after = readFiles(show.out);
      expect(Object.keys(after).filter((name) => name.startsWith(".tmp"))).toEqual([]);
      const ofTheDay = (files: Record<string, string>) =>
        JSON.stringify(Object.entries(withoutTemporary(files)).filter(([name]) => name.startsWith("days/")));
      await show.build();
      const mended = readFiles(show.out);
      expect([ofTheDay(before), ofTheDay(mended)], `after ${writes} writings`).toContain(ofTheDay(after));
      expect(mended["index.html"]).toBe("2026-03-14: 3");
      if (!refused) break;
      expect(writes).toBeLessThan(50);
      show.clean();
    }
  });
});
