/** The commands verify and pack on a built report. Needs the compiled command (`npm run prepare`). */
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { attributeValues, filesOf, pagesOf } from "../helpers/built-site.ts";

const MAIN = resolve(import.meta.dirname, "../../dist/cli/main.js");
const DATE = "2026-03-14";
let root: string;
// a build takes about a second, several when other tests share the machine
vi.setConfig({ testTimeout: 120_000, hookTimeout: 60_000 });
const run = (...args: string[]) => spawnSync(process.execPath, [MAIN, ...args], { cwd: root, encoding: "utf8" });
const lines = (text: string) =>
  text
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as Record<string, unknown>);

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), "daybook-handover-"));
  run("init", "ferry");
  expect(run("build", "ferry").status).toBe(0);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** A copy of the pack alone, far from its show. */
function packAlone(): string {
  const alone = join(mkdtempSync(join(root, "alone-")), "pack");
  cpSync(join(root, "ferry-report/packs", DATE), alone, { recursive: true });
  return alone;
}

describe("daybook verify", () => {
  it("passes a pack alone, without the show, and names every file", () => {
    const pack = packAlone();
    const { status, stdout } = run("verify", pack);
    expect(status).toBe(0);
    const names = filesOf(pack).filter((file) => !file.startsWith("ascmhl/"));
    for (const name of names) expect(stdout).toMatch(new RegExp(`^same +${name} `, "m"));
    expect(stdout).toContain(
      `intact: ${names.length} files: ${names.length} same   (hash list: issue 1 of 2026-03-14 18:30:00 UTC`,
    );
  });

  it("ends with 1 for a changed, a missing and an extra file, and prints those alone with --quiet", () => {
    const pack = packAlone();
    const day = readFileSync(join(pack, "day.json"));
    day[10] = (day[10] as number) ^ 4;
    writeFileSync(join(pack, "day.json"), day);
    rmSync(join(pack, "takes.csv"));
    writeFileSync(join(pack, "extra.txt"), "");
    const { status, stdout } = run("verify", pack, "--quiet");
    expect(status).toBe(1);
    expect(
      stdout
        .trimEnd()
        .split("\n")
        .map((line) => line.split(/ +/).slice(0, 2)),
    ).toEqual([
      ["changed", "day.json"],
      ["extra", "extra.txt"],
      ["missing", "takes.csv"],
    ]);
  });

  it("says all of it as one object a line with --json", () => {
    const { stdout } = run("verify", packAlone(), "--json");
    const found = lines(stdout);
    const summary = found.pop();
    expect(summary).toMatchObject({ type: "summary", command: "verify", exit: 0, intact: true, generation: 1 });
    for (const line of found) expect(line).toMatchObject({ type: "file", state: "same", algorithm: "c4" });
  });

  it.each(["nowhere", "ferry-report", "ferry"])("ends with 2 where there is no list: %s", (name) => {
    const { status, stdout, stderr } = run("verify", name);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(/^error: /);
  });
});

describe("a pack that is issued again", () => {
  it("gets a new generation when it differs, none when not, and the first stays as it was", () => {
    const show = join(root, "again");
    run("init", "again");
    run("build", "again");
    const history = join(root, "again-report/packs", DATE, "ascmhl");
    const first = readFileSync(join(history, readdirSync(history)[0] as string));
    const notes = join(show, `days/${DATE}/notes.csv`);
    const text = readFileSync(notes, "utf8");
    writeFileSync(notes, text.replace("Nice pull", "Fine pull"));
    expect(run("build", "again").status).toBe(0);
    expect(run("build", "again", "--force").status).toBe(0);
    const names = readdirSync(history).sort();
    expect(names.map((name) => name.slice(0, 4))).toEqual(["0001", "0002", "ascm"]);
    expect(readFileSync(join(history, names[0] as string))).toEqual(first);
    expect(run("verify", `again-report/packs/${DATE}`).status).toBe(0);
  });

  it("gets none when only another day is added to the show", () => {
    run("init", "more");
    run("build", "more");
    const second = join(root, "more/days/2026-03-15");
    cpSync(join(root, `more/days/${DATE}`), second, { recursive: true });
    const day = readFileSync(join(second, "day.yaml"), "utf8");
    writeFileSync(join(second, "day.yaml"), day.replace("day: 1", "day: 2").replace(DATE, "2026-03-15"));
    expect(run("build", "more").status).toBe(0);
    expect(readdirSync(join(root, "more-report/packs", DATE, "ascmhl"))).toHaveLength(2);
  });
});

describe("daybook pack", () => {
  const zipFiles = (file: string) => unzipSync(readFileSync(join(root, file)));

  it("makes one zip that opens from any folder: every link of every page leads to a file in it", () => {
    const { status, stdout } = run("pack", "ferry", "--day", DATE, "--zip");
    expect(status).toBe(0);
    expect(stdout).toContain(`zip FERRY-${DATE}.zip`);
    const folder = join(root, "some where/else");
    for (const [name, bytes] of Object.entries(zipFiles(`FERRY-${DATE}.zip`))) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), bytes);
    }
    expect(existsSync(join(folder, "index.html"))).toBe(true);
    expect(existsSync(join(folder, "days", DATE, "index.html"))).toBe(true);
    for (const page of pagesOf(folder)) {
      for (const href of [...attributeValues(page.html, "href"), ...attributeValues(page.html, "src")]) {
        const path = decodeURIComponent(href.replace(/[?#].*$/, ""));
        if (path === "" || /^[a-z]+:/.test(path)) continue;
        expect(existsSync(join(folder, dirname(page.path), path)), `${page.path}: ${href}`).toBe(true);
      }
    }
    expect(run("verify", join(folder, "packs", DATE)).status).toBe(0);
  });

  it("gives the same bytes again, wherever it is written, and nothing is left beside it", () => {
    run("pack", "ferry", "--day", DATE, "--zip", "--out", "zips/one.zip");
    run("pack", "ferry", "--day", DATE, "--zip", "--out", "zips/two.zip");
    expect(readFileSync(join(root, "zips/one.zip")).equals(readFileSync(join(root, "zips/two.zip")))).toBe(true);
    expect(readdirSync(join(root, "zips"))).toEqual(["one.zip", "two.zip"]);
    const names = Object.keys(zipFiles("zips/one.zip"));
    expect(names).toEqual([...names].sort());
  });

  it("says the folder without --zip, and all of it as one object a line with --json", () => {
    expect(run("pack", "ferry", "--day", DATE).stdout).toContain(`pack ferry-report/packs/${DATE}\n`);
    const last = lines(run("pack", "ferry", "--day", DATE, "--zip", "--json").stdout).pop();
    expect(last).toMatchObject({ type: "zip", file: join(root, `FERRY-${DATE}.zip`) });
  });

  it.each([
    ["no day", ["pack", "ferry", "--zip"], "pack needs the day"],
    ["a day that the show does not have", ["pack", "ferry", "--day", "2026-03-15", "--zip"], 'no day "2026-03-15"'],
    ["a file without --zip", ["pack", "ferry", "--day", DATE, "--out", "a.zip"], "add --zip"],
    ["a zip in the show folder", ["pack", "ferry", "--day", DATE, "--zip", "--out", "ferry/a.zip"], "into the show folder"],
  ])("ends with 2 for %s", (_, args, words) => {
    const { status, stderr } = run(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });
});
