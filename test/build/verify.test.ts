import { appendFileSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { outFiles } from "../../src/build/out-files.ts";
import { issuePack, writePackHistory } from "../../src/build/pack-history.ts";
import { type Verification, verifyPack } from "../../src/build/verify.ts";
import { readFiles, temporaryFolder, writeFiles } from "./fakes.ts";

const DATE = "2031-05-06";
const SETTINGS = {
  created: "2031-05-06T17:30:00Z",
  host: "SMALL",
  tool: { name: "Lens Daybook", version: "1.0.0" },
  folder: DATE,
};
/** In order of their paths. */
const FILES = {
  "day.json": "{}\n",
  "editorial/a.edl": "TITLE: A\n",
  "takes.csv": "address\na-1-1\n",
  "vfx/a-1-1/lens.csv": "frame\n0\n",
};

let root: string;
const pack = () => join(root, "packs", DATE);
beforeEach(() => {
  root = temporaryFolder();
  writeFiles(pack(), FILES);
  writePackHistory(outFiles(root), ".", DATE, SETTINGS);
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const verified = (): Verification => {
  const result = verifyPack(pack());
  if ("problem" in result) throw new Error(result.problem);
  return result;
};
const states = () => Object.fromEntries(verified().files.flatMap((f) => (f.state === "same" ? [] : [[f.path, f.state]])));

describe("verifyPack", () => {
  it("finds an intact pack intact and names every file with size and hash", () => {
    const { files, counts, intact, generation, created, host } = verified();
    expect({ intact, generation, created, host }).toEqual({
      intact: true,
      generation: 1,
      created: "2031-05-06T17:30:00+00:00",
      host: "SMALL",
    });
    expect(counts).toEqual({ same: 4, changed: 0, missing: 0, extra: 0, unchecked: 0 });
    expect(files.map((file) => [file.path, file.bytes])).toEqual(Object.entries(FILES).map(([path, text]) => [path, text.length]));
    for (const file of files) expect(file.hash).toMatch(/^c4[1-9A-HJ-NP-Za-km-z]{88}$/);
  });

  it("tells a flipped bit, a longer file, a missing file and an extra one apart", () => {
    const day = readFileSync(join(pack(), "day.json"));
    day[0] = (day[0] as number) ^ 1;
    writeFileSync(join(pack(), "day.json"), day);
    appendFileSync(join(pack(), "takes.csv"), "\n");
    rmSync(join(pack(), "editorial/a.edl"));
    writeFiles(pack(), { "vfx/a-1-1/mine.txt": "mine", ".DS_Store": "left by a file manager" });
    expect(states()).toEqual({
      "day.json": "changed",
      "takes.csv": "changed",
      "editorial/a.edl": "missing",
      "vfx/a-1-1/mine.txt": "extra",
    });
    expect(verified().intact).toBe(false);
  });

  it("sees a renamed file as one missing and one extra, and says which is which", () => {
    renameSync(join(pack(), "day.json"), join(pack(), "Day.json"));
    expect(states()).toEqual({ "day.json": "missing", "Day.json": "extra" });
    expect(verified().files.find((f) => f.path === "Day.json")?.detail).toBe("holds what is missing as day.json");
  });

  it("says of what a file manager left that it is that, and still counts it as extra", () => {
    writeFiles(pack(), { "Thumbs.db": "x", "vfx/._lens.csv": "x", "mine.db": "x" });
    expect(Object.keys(states())).toEqual(["Thumbs.db", "mine.db", "vfx/._lens.csv"]);
    expect(verified().files.flatMap((f) => (f.detail === "" ? [] : [f.path]))).toEqual(["Thumbs.db", "vfx/._lens.csv"]);
  });

  it("works wherever the pack was moved, and needs to write nothing", () => {
    const moved = join(root, "elsewhere é");
    renameSync(pack(), moved);
    const before = readFiles(moved);
    expect(verifyPack(moved)).toMatchObject({ intact: true });
    expect(readFiles(moved)).toEqual(before);
  });

  it("follows no link: one in the place of a file is a change", () => {
    renameSync(join(pack(), "day.json"), join(root, "elsewhere.json"));
    symlinkSync("../../elsewhere.json", join(pack(), "day.json"));
    expect(verified().files.find((f) => f.path === "day.json")).toMatchObject({ state: "changed", detail: "is no plain file" });
  });

  it("compares with the newest list, and an unchanged pack stays at its number", () => {
    writeFileSync(join(pack(), "day.json"), "{ }\n");
    rmSync(join(pack(), "takes.csv"));
    const before = readFileSync(join(pack(), "ascmhl", `0001_${DATE}_${DATE}_173000Z.mhl`));
    issuePack(outFiles(root), DATE);
    issueAgain();
    expect(verified()).toMatchObject({ generation: 2, intact: true });
    expect(readFileSync(join(pack(), "ascmhl", `0001_${DATE}_${DATE}_173000Z.mhl`))).toEqual(before);
    issueAgain();
    expect(verified()).toMatchObject({ generation: 2, intact: true });
  });

  it("finds a forged list: the chain does not vouch for it", () => {
    const list = join(pack(), "ascmhl", `0001_${DATE}_${DATE}_173000Z.mhl`);
    writeFileSync(list, readFileSync(list, "utf8").replace("SMALL", "OTHER"));
    const { intact, problems, counts } = verified();
    expect({ intact, problems, same: counts.same }).toEqual({
      intact: false,
      problems: [`0001_${DATE}_${DATE}_173000Z.mhl is not what ascmhl_chain.xml vouches for.`],
      same: 4,
    });
  });

  it("says why there is nothing to compare with", () => {
    expect(verifyPack(join(root, "nowhere"))).toEqual({ problem: `there is no folder "${join(root, "nowhere")}".` });
    expect(verifyPack(root)).toEqual({
      problem: `"${root}" has no hash list (no folder ascmhl in it). Name one of its packs, such as ${pack()}.`,
    });
    const about = (path: string) => (verifyPack(join(root, path)) as { problem: string }).problem;
    expect(about("packs")).toContain(`Name one of its packs, such as ${pack()}.`);
    for (const part of ["day.json", "ascmhl", "vfx", "ascmhl/ascmhl_chain.xml"]) {
      expect(about(`packs/${DATE}/${part}`)).toBe(`"${join(pack(), part)}" is a part of the pack "${pack()}". Name the pack.`);
    }
    writeFiles(root, { "a.zip": "", "notes.txt": "", "show/show.yaml": "", "ferry/show.yaml": "" });
    writeFiles(root, { "ferry-report/packs/2031-05-07/day.json": "" });
    expect(about("a.zip")).toBe(`"${join(root, "a.zip")}" has no end: it is not a whole zip.`);
    expect(about("notes.txt/packs")).toContain("there is no folder");
    expect(about("notes.txt")).toContain("is a file. Name the folder of a pack.");
    expect(about("show")).toContain("It is a show folder");
    expect(about("ferry")).toContain(`such as ${join(root, "ferry-report/packs/2031-05-07")}`);
    rmSync(join(pack(), "ascmhl"), { recursive: true });
    mkdirSync(join(pack(), "ascmhl"));
    expect(verifyPack(pack())).toHaveProperty("problem");
  });
});

/** As a build does it: the pack made anew in a temporary folder, with the history of the one in place. */
function issueAgain(): void {
  const out = outFiles(root);
  const files = out.files(`packs/${DATE}`).filter((file) => !file.includes("/ascmhl/"));
  for (const file of files) out.write(`.tmp-${DATE}/${file}`, out.read(file) as Uint8Array);
  writePackHistory(out, `.tmp-${DATE}`, DATE, SETTINGS);
  for (const file of out.files(`.tmp-${DATE}`)) out.move(file, file.slice(`.tmp-${DATE}/`.length));
}
