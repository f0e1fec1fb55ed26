/** Days with less than a day usually has, through the whole build: every file is there, says what is absent, and verifies. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { verifyPack } from "../../src/build/verify.ts";
import { runCommand } from "../../src/cli/run-command.ts";
import { fakeIo } from "../cli/fake-io.ts";
import { filesOf } from "../helpers/built-site.ts";
import { SMALL_KIT } from "../helpers/memory-show.ts";
import { writeFiles } from "./fakes.ts";

const DATE = "2030-02-03";
const HEAD = "slate,take,camera,roll,clip,tc_in,tc_out,lens,stop,circled,plate\n";
const LOG = "# camera: A\n# clip: C1\n# lens: P50\ntimecode,focus_m,t\n10:00:00:00,2,2.8\n";
let root: string;
vi.setConfig({ testTimeout: 120_000 });

const ajv = new Ajv2020({ allowUnionTypes: true, strictRequired: false });
const SCHEMAS = join(import.meta.dirname, "../../docs/schema");
for (const name of readdirSync(SCHEMAS)) ajv.addSchema(JSON.parse(readFileSync(join(SCHEMAS, name), "utf8")));

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), "daybook-thin-"));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** Builds a day of these files; gives back its day.json and the names and texts of the pack. */
async function built(name: string, day: Record<string, string>) {
  const show = join(root, name);
  writeFiles(show, { ...SMALL_KIT, ...Object.fromEntries(Object.entries(day).map(([f, text]) => [`days/${DATE}/${f}`, text])) });
  const io = fakeIo({ cwd: root });
  const exit = await runCommand(["build", show, "--out", `${show}-report`, "--quiet"], io);
  expect(exit, io.stdout() + io.stderr()).toBe(0);
  const pack = join(`${show}-report`, "packs", DATE);
  // alone, as it travels
  cpSync(pack, join(root, `${name}-pack`), { recursive: true });
  expect(verifyPack(join(root, `${name}-pack`))).toMatchObject({ intact: true });
  const json = JSON.parse(readFileSync(join(pack, "day.json"), "utf8"));
  const isDay = ajv.getSchema("urn:lens-daybook:day")!;
  expect(isDay(json), ajv.errorsText(isDay.errors)).toBe(true);
  for (const file of filesOf(`${show}-report`).filter((f) =>
    /^(days|packs)\/.*\.(html|csv|json|jsonl|otio|edl|usda|txt)$/.test(f),
  )) {
    const text = readFileSync(join(`${show}-report`, file), "utf8");
    expect(
      /\b(NaN|undefined|Infinity|\[object Object\])\b/.exec(text.replace(/<style[\s\S]*?<\/style>/g, ""))?.[0],
      file,
    ).toBeUndefined();
  }
  const read = (file: string) => readFileSync(join(pack, file), "utf8");
  return { json, names: filesOf(pack), read, pack };
}

describe("a thin day", () => {
  it("without plates has no folder for VFX, and README.txt names none", async () => {
    const { json, names, read } = await built("no-plates", {
      "notes.csv": `${HEAD}1,1,A,A001,C1,10:00:00:00,10:00:01:00,P50,2.8,y,\n`,
      "logs/a.csv": LOG,
    });
    expect(json.takes).toHaveLength(1);
    expect(names.filter((name) => name.startsWith("vfx/"))).toEqual([]);
    expect(read("README.txt")).not.toContain("vfx/");
    expect(read("LOSSES.md")).toContain("Left out on this day");
    expect(read("LOSSES.md")).not.toContain("`vfx/*");
  });

  it("without logs has no lens figures and no pulls, and the plate's folder still holds what the notes say", async () => {
    const { json, names, read } = await built("no-logs", {
      "notes.csv": `${HEAD}1,1,A,A001,C1,10:00:00:00,10:00:01:00,P50,2.8,y,hero\n`,
    });
    expect(json.takes[0]).toMatchObject({ pulls: null, log: { files: [], framesLogged: 0, framesExpected: 24 } });
    expect(json.rows).toEqual({ read: 0, used: 0, unmatched: 0, rejected: 0 });
    expect(names.filter((name) => name.endsWith(".exr"))).toEqual([]);
    expect(names).toContain("vfx/a-1-1/lens.csv");
    expect(read("LOSSES.md")).toContain("`vfx/*/lens.csv`");
  });

  it("without notes has no take, and its rows count as unmatched", async () => {
    const { json, names } = await built("no-notes", { "logs/a.csv": LOG });
    expect(json.rows.read).toBe(json.rows.used + json.rows.unmatched + json.rows.rejected);
    expect(names).toContain("takes.csv");
  });

  it("of one take of one frame has one row, one sample, one event and one time code", async () => {
    const { json, read } = await built("one-frame", {
      "notes.csv": `${HEAD}1,1,A,A001,C1,10:00:00:00,10:00:00:01,P50,2.8,y,hero\n`,
      "logs/a.csv": LOG,
    });
    expect(json.takes[0]).toMatchObject({ durationFrames: 1, pulls: [], log: { framesLogged: 1 } });
    expect(read("vfx/a-1-1/lens.csv").trim().split("\n")).toHaveLength(2);
    expect(read("vfx/a-1-1/lens.opentrackio.jsonl").trim().split("\n")).toHaveLength(1);
    expect(read("vfx/a-1-1/camera.usda")).toMatch(/endTimeCode = 1001\n[\s\S]*startTimeCode = 1001\n/);
    expect(read(`editorial/SMALL-${DATE}-A.edl`)).toMatch(/^001 .* 10:00:00:00 10:00:00:01 /m);
    const clip = JSON.parse(read(`editorial/SMALL-${DATE}-A.otio`)).tracks.children[0].children.find(
      (child: { OTIO_SCHEMA: string }) => child.OTIO_SCHEMA === "Clip.2",
    );
    expect(clip.source_range.duration.value).toBe(1);
  });
});
