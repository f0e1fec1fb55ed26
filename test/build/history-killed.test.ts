/** A pack with its hash list, stopped at every step of a build: the next build gives what an undisturbed one gives. */
import { cpSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { OutFolder } from "../../src/build/effects.ts";
import { outFiles } from "../../src/build/out-files.ts";
import { issuePack, writePackHistory } from "../../src/build/pack-history.ts";
import type { DayRequest, Pipeline } from "../../src/build/pipeline.ts";
import { buildShow } from "../../src/build/run.ts";
import { showFiles } from "../../src/build/show-files.ts";
import { verifyPack } from "../../src/build/verify.ts";
import { fakePipeline, readFiles, temporaryFolder, writeFiles } from "./fakes.ts";

const DATE = "2026-03-14";
const SETTINGS = { created: `${DATE}T18:30:00Z`, host: "T", tool: { name: "Lens Daybook", version: "1.0.0" }, folder: DATE };

/** Like the fake one, with a pack of one file a take. */
function pipeline(): Pipeline {
  const plain = fakePipeline();
  return {
    ...plain,
    async makeDay(request: DayRequest) {
      const work = await plain.makeDay(request);
      for (const take of work.digest.takes) {
        request.out.write(`${request.into}/packs/${DATE}/vfx/${take.address}.csv`, `${take.address}\n`);
      }
      request.out.write(`${request.into}/packs/${DATE}/day.json`, `${work.digest.takes.length}\n`);
      const history = writePackHistory(request.out, request.into, DATE, SETTINGS);
      return { ...work, findings: [...work.findings, ...history] };
    },
  };
}

let root: string;
const notes = (text: string) => writeFiles(join(root, "show"), { [`days/${DATE}/notes.csv`]: text });
beforeAll(async () => {
  root = temporaryFolder();
  writeFiles(join(root, "show"), { "show.yaml": "title: T" });
  notes("take a-1-1\ntake a-1-2");
  await build(outFiles(join(root, "worked-on")));
  cpSync(join(root, "worked-on"), join(root, "issued"), { recursive: true });
  issuePack(outFiles(join(root, "issued")), DATE);
  notes("take a-1-2\ntake a-1-3\ntake a-1-4");
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

function build(out: OutFolder) {
  const show = showFiles(join(root, "show"));
  const log = { progress() {}, day() {}, detail() {} };
  const options = { dates: [], force: false, tool: { name: "Lens Daybook", version: "1.0.0" }, programHash: "p" };
  return buildShow(options, { show, linksLeftOut: () => [], out, log, now: () => 0 }, pipeline());
}

/** Stops with the nth change of the output folder; whether it came to that. */
async function killAt(step: number, out: OutFolder): Promise<boolean> {
  let steps = 0;
  const counted = <A extends unknown[]>(action: (...args: A) => void) => {
    return (...args: A) => {
      if (++steps > step) throw new Error("killed");
      action(...args);
    };
  };
  const { write, move, removeFile, removeFolder } = out;
  const dying = {
    ...out,
    write: counted(write),
    move: counted(move),
    removeFile: counted(removeFile),
    removeFolder: counted(removeFolder),
  };
  try {
    await build(dying);
  } catch {}
  return steps > step;
}

describe.each([
  ["worked-on", 1],
  ["issued", 2],
])("a pack with its history that is %s, killed at any step", (first, generation) => {
  const copyOf = (name: string, to: string) => {
    rmSync(join(root, to), { recursive: true, force: true });
    cpSync(join(root, name), join(root, to), { recursive: true });
    return join(root, to);
  };

  const isNewList = (path: string) => {
    const files = readFiles(join(path, "packs", DATE, "ascmhl"));
    return Object.entries(files).some(([name, text]) => name.startsWith(`000${generation}_`) && text.includes("a-1-4.csv"));
  };
  const issuedList = () => {
    const files = readFiles(join(root, "issued/packs", DATE, "ascmhl"));
    return Object.fromEntries(Object.entries(files).filter(([name]) => name.endsWith(".mhl")));
  };

  interface Killed {
    readonly step: number;
    /** False for the last one, that came to its end. */
    readonly wasKilled: boolean;
    /** What our own check says of the pack as it was left, and the texts of its lists. */
    readonly left: ReturnType<typeof verifyPack>;
    readonly lists: ReturnType<typeof readFiles>;
    readonly isNewList: boolean;
    /** Every file after the next build, and what our own check says of the pack then. */
    readonly mended: ReturnType<typeof readFiles>;
    readonly verified: ReturnType<typeof verifyPack>;
  }
  let walk: readonly Killed[];
  beforeAll(async () => {
    const steps: Killed[] = [];
    for (let step = 0; steps.at(-1)?.wasKilled !== false && step < 100; step++) {
      const out = outFiles(copyOf(first, "killed"));
      const pack = join(out.path, "packs", DATE);
      const wasKilled = await killAt(step, out);
      const left = { left: verifyPack(pack), lists: readFiles(join(pack, "ascmhl")), isNewList: isNewList(out.path) };
      await build(out);
      steps.push({ step, wasKilled, ...left, mended: readFiles(out.path), verified: verifyPack(pack) });
    }
    walk = steps;
  });

  it("is stopped at every step, up to one that is not there any more", () => {
    expect(walk.length).toBeGreaterThan(5);
    expect(walk.at(-1)?.wasKilled).toBe(false);
  });

  it("has the same files, lists and chain after the next build as without the kill", async () => {
    const undisturbed = copyOf(first, "undisturbed");
    await build(outFiles(undisturbed));
    const expected = readFiles(undisturbed);
    expect(Object.keys(expected).filter((name) => name.endsWith(".mhl"))).toHaveLength(generation);
    for (const { step, mended, verified } of walk) {
      expect(mended, `killed at step ${step}`).toEqual(expected);
      expect(verified).toMatchObject({ intact: true, generation });
    }
  });

  it("never vouches for a file that is not in place: while a new list is there, its pack is whole", () => {
    const withNewList = walk.filter(({ left, isNewList }) => isNewList && "counts" in left && left.problems.length === 0);
    expect(withNewList.length).toBeGreaterThan(0);
    // what the new pack no longer holds is removed last
    for (const { step, left } of withNewList)
      expect(left, `killed at step ${step}`).toMatchObject({ counts: { changed: 0, missing: 0 } });
    // an issued list is in its place at every moment
    for (const { lists } of generation === 2 ? walk : []) expect(lists).toMatchObject(issuedList());
  });
});
