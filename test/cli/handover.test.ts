/** The commands verify and pack on a built report. */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { attributeValues, filesOf, pagesOf } from "../helpers/built-site.ts";
import { runIn } from "./fake-io.ts";

const DATE = "2026-03-14";
let root: string;
// a build takes about a second, several when other tests share the machine
vi.setConfig({ testTimeout: 120_000, hookTimeout: 60_000 });
const run = (...args: string[]) => runIn(root, args);
const lines = (text: string) =>
  text
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as Record<string, unknown>);

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), "daybook-handover-"));
  await run("init", "ferry");
  expect((await run("build", "ferry")).status).toBe(0);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** A copy of the pack alone, far from its show. */
function packAlone(): string {
  const alone = join(mkdtempSync(join(root, "alone-")), "pack");
  cpSync(join(root, "ferry-report/packs", DATE), alone, { recursive: true });
  return alone;
}

describe("daybook verify", () => {
  it("passes a pack alone, without the show, and names every file", async () => {
    const pack = packAlone();
    const { status, stdout } = await run("verify", pack);
    expect(status).toBe(0);
    const names = filesOf(pack).filter((file) => !file.startsWith("ascmhl/"));
    for (const name of names) expect(stdout).toMatch(new RegExp(`^same +${name} `, "m"));
    expect(stdout).toContain(
      `intact: ${names.length} files: ${names.length} same   (hash list: generation 1 of 2026-03-14 18:30:00 UTC`,
    );
  });

  it("ends with 1 for a changed, a missing and an extra file, and prints those alone with --quiet", async () => {
    const pack = packAlone();
    const day = readFileSync(join(pack, "day.json"));
    day[10] = (day[10] as number) ^ 4;
    writeFileSync(join(pack, "day.json"), day);
    rmSync(join(pack, "takes.csv"));
    writeFileSync(join(pack, "extra.txt"), "");
    const { status, stdout } = await run("verify", pack, "--quiet");
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

  it("says all of it as one object a line with --json", async () => {
    const { stdout } = await run("verify", packAlone(), "--json");
    const found = lines(stdout);
    const summary = found.pop();
    expect(summary).toMatchObject({ type: "summary", command: "verify", exit: 0, intact: true, generation: 1 });
    for (const line of found) expect(line).toMatchObject({ type: "file", state: "same", algorithm: "c4" });
  });

  it.each(["nowhere", "ferry-report", "ferry"])("ends with 2 where there is no list: %s", async (name) => {
    const { status, stdout, stderr } = await run("verify", name);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(/^error: /);
  });
});

describe("a pack's hash lists", () => {
  const remark = (show: string, words: string) => {
    const notes = join(root, show, `days/${DATE}/notes.csv`);
    writeFileSync(notes, readFileSync(notes, "utf8").replace(/\w+ pull to the rope/, `${words} pull to the rope`));
  };
  const history = (show: string) => join(root, `${show}-report/packs`, DATE, "ascmhl");
  const lists = (show: string) =>
    readdirSync(history(show))
      .filter((name) => name.endsWith(".mhl"))
      .sort();
  const list = (show: string, n: number) => readFileSync(join(history(show), lists(show)[n] as string));

  it("do not pile up while people work: before it is issued a pack has one list, always of what it is", async () => {
    await run("init", "work");
    for (const words of ["Nice", "Fine", "Slow"]) {
      remark("work", words);
      expect((await run("build", "work")).status).toBe(0);
      expect(lists("work")).toHaveLength(1);
      expect((await run("verify", `work-report/packs/${DATE}`)).status).toBe(0);
    }
    await run("init", "fresh");
    remark("fresh", "Slow");
    await run("build", "fresh");
    expect(list("work", 0)).toEqual(list("fresh", 0));
  });

  it("are kept from the moment that the pack is issued: a pack that differs gets one more, and that one is open again", async () => {
    await run("init", "again");
    expect((await run("pack", "again", "--day", DATE)).stdout).toContain("hash list 1, issued now");
    expect((await run("pack", "again", "--day", DATE)).stdout).toContain("hash list 1, issued before");
    const first = list("again", 0);
    for (const words of ["Fine", "Slow"]) {
      remark("again", words);
      expect((await run("build", "again")).status).toBe(0);
      expect((await run("build", "again", "--force")).status).toBe(0);
      expect(lists("again")).toHaveLength(2);
      expect(list("again", 0)).toEqual(first);
      expect((await run("verify", `again-report/packs/${DATE}`)).status).toBe(0);
    }
    expect((await run("pack", "again", "--day", DATE)).stdout).toContain("hash list 2, issued now");
    const second = list("again", 1);
    remark("again", "Quick");
    await run("build", "again");
    expect(lists("again").map((name) => name.slice(0, 4))).toEqual(["0001", "0002", "0003"]);
    expect([list("again", 0), list("again", 1)]).toEqual([first, second]);
    // back as it was issued: the open list goes, nothing else
    remark("again", "Slow");
    await run("build", "again");
    expect(lists("again")).toHaveLength(2);
    expect([list("again", 0), list("again", 1)]).toEqual([first, second]);
    expect((await run("verify", `again-report/packs/${DATE}`)).status).toBe(0);
  });

  it("count as issued where the record of the last build is lost: none is ever replaced that somebody may hold", async () => {
    await run("init", "lost");
    await run("build", "lost");
    const first = list("lost", 0);
    rmSync(join(root, "lost-report/.daybook"), { recursive: true });
    remark("lost", "Fine");
    expect((await run("build", "lost", "--force")).status).toBe(0);
    expect(lists("lost")).toHaveLength(2);
    expect(list("lost", 0)).toEqual(first);
  });

  it("stay as they are when only another day is added to the show", async () => {
    await run("init", "more");
    await run("pack", "more", "--day", DATE);
    const second = join(root, "more/days/2026-03-15");
    cpSync(join(root, `more/days/${DATE}`), second, { recursive: true });
    const day = readFileSync(join(second, "day.yaml"), "utf8");
    writeFileSync(join(second, "day.yaml"), day.replace("day: 1", "day: 2").replace(DATE, "2026-03-15"));
    expect((await run("build", "more")).status).toBe(0);
    expect(lists("more")).toHaveLength(1);
  });
});

describe("daybook pack", () => {
  const zipFiles = (file: string) => unzipSync(readFileSync(join(root, file)));

  it("makes one zip that opens from any folder: every link of every page leads to a file in it", async () => {
    const { status, stdout } = await run("pack", "ferry", "--day", DATE, "--zip");
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
    expect((await run("verify", join(folder, "packs", DATE))).status).toBe(0);
    const inZip = await run("verify", `FERRY-${DATE}.zip`, "--quiet");
    expect([inZip.status, inZip.stdout]).toEqual([0, ""]);
    expect((await run("verify", `FERRY-${DATE}.zip`)).stdout).toContain(`compared in the zip: its folder packs/${DATE}; `);
  });

  it("gives the same bytes again, wherever it is written, and nothing is left beside it", async () => {
    await run("pack", "ferry", "--day", DATE, "--zip", "--out", "zips/one.zip");
    await run("pack", "ferry", "--day", DATE, "--zip", "--out", "zips/two.zip");
    expect(readFileSync(join(root, "zips/one.zip")).equals(readFileSync(join(root, "zips/two.zip")))).toBe(true);
    expect(readdirSync(join(root, "zips"))).toEqual(["one.zip", "two.zip"]);
    const names = Object.keys(zipFiles("zips/one.zip"));
    expect(names).toEqual([...names].sort());
  });

  it("says which files somebody else put into the pack, since no hash list has them", async () => {
    const mine = join(root, "ferry-report/packs", DATE, "mine.mov");
    writeFileSync(mine, "mine");
    try {
      expect((await run("pack", "ferry", "--day", DATE)).stdout).toContain("in no hash list: mine.mov. ");
      expect(lines((await run("pack", "ferry", "--day", DATE, "--json")).stdout).pop()).toMatchObject({ unlisted: ["mine.mov"] });
      writeFileSync(`${mine}.txt`, "mine too");
      expect((await run("pack", "ferry", "--day", DATE)).stdout).toContain(
        "in no hash list: mine.mov and 1 more. The build did not make them: verify will report them as extra.",
      );
    } finally {
      rmSync(mine);
      rmSync(`${mine}.txt`, { force: true });
    }
    expect((await run("pack", "ferry", "--day", DATE)).stdout).not.toContain("in no hash list");
  });

  it("says the folder without --zip, and all of it as one object a line with --json", async () => {
    expect((await run("pack", "ferry", "--day", DATE)).stdout).toContain(`pack ferry-report/packs/${DATE}   hash list 1, `);
    const last = lines((await run("pack", "ferry", "--day", DATE, "--zip", "--json")).stdout).pop();
    expect(last).toMatchObject({ type: "zip", file: join(root, `FERRY-${DATE}.zip`) });
  });

  it.each([
    ["no day", ["pack", "ferry", "--zip"], "pack needs the day"],
    ["a day that the show does not have", ["pack", "ferry", "--day", "2026-03-15", "--zip"], 'no day "2026-03-15"'],
    ["a file without --zip", ["pack", "ferry", "--day", DATE, "--out", "a.zip"], "add --zip"],
    ["a zip in the show folder", ["pack", "ferry", "--day", DATE, "--zip", "--out", "ferry/a.zip"], "into the show folder"],
  ])("ends with 2 for %s", async (_, args, words) => {
    const { status, stderr } = await run(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });
});
