import { existsSync, mkdirSync, readFileSync, rmSync, statSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { type FakeBuild, fakeBuild, fakePipeline, readFiles, writeFiles } from "./fakes.ts";

const SHOW = {
  "show.yaml": "title: T",
  "days/2026-03-14/notes.csv": "take a-1-1\ntake a-1-2",
  "days/2026-03-15/notes.csv": "take a-2-1\nbad",
};
const DAY_1 = {
  "days/2026-03-14/index.html": "2 takes",
  "days/2026-03-14/takes/a-1-1.html": "take a-1-1",
  "days/2026-03-14/takes/a-1-2.html": "take a-1-2",
};
const DAY_2 = { "days/2026-03-15/index.html": "1 takes", "days/2026-03-15/takes/a-2-1.html": "take a-2-1" };
const ALL = { "index.html": "2026-03-14: 2\n2026-03-15: 1", ...DAY_1, ...DAY_2 };

let show: FakeBuild;
const open = (files: Record<string, string> = SHOW) => {
  show = fakeBuild(files);
  return show;
};
afterEach(() => show.clean());
const states = () => show.reports.map((r) => `${r.date} ${r.state} (${r.reason})`);
const setNotes = (date: string, text: string) => writeFiles(show.show, { [`days/${date}/notes.csv`]: text });

describe("buildShow", () => {
  it("builds every day and the show-wide pages, and says why", async () => {
    const result = await open().build();
    expect(readFiles(show.out)).toEqual(ALL);
    expect(states()).toEqual(["2026-03-14 built (new)", "2026-03-15 built (new)"]);
    expect(result.takes).toBe(3);
    expect(result.rows).toEqual({ read: 6, used: 4, unmatched: 2, rejected: 0 });
    expect(result.counts).toEqual({ error: 1, check: 0, remark: 0 });
  });

  it("builds nothing the second time and says the stored findings again", async () => {
    const first = await open().build();
    const second = await show.build();
    expect(show.calls).toEqual([]);
    expect(second.findings).toEqual(first.findings);
    expect(second.days.map((d) => d.state)).toEqual(["unchanged", "unchanged"]);
  });

  it("builds only the day that changed, and the show-wide pages", async () => {
    await open().build();
    setNotes("2026-03-14", "take a-1-1\ntake a-1-2\n\n");
    await show.build();
    expect(show.calls).toEqual(["2026-03-14", "show"]);
    expect(states()[0]).toBe("2026-03-14 built (notes.csv changed)");
  });

  it("leaves a file untouched whose content is the same", async () => {
    await open().build();
    const page = join(show.out, "days/2026-03-14/takes/a-1-1.html");
    utimesSync(page, 1000, 1000);
    setNotes("2026-03-14", "take a-1-1\ntake a-1-3");
    await show.build();
    expect(statSync(page).mtimeMs).toBe(1_000_000);
  });

  it("deletes pages of takes that are gone, and nothing that it did not write", async () => {
    await open().build();
    writeFiles(show.out, { "days/2026-03-14/takes/mine.html": "mine", "notes-of-mine.txt": "mine" });
    setNotes("2026-03-14", "take a-1-2");
    await show.build();
    const files = readFiles(show.out);
    expect(files["days/2026-03-14/takes/a-1-1.html"]).toBeUndefined();
    expect(files["days/2026-03-14/takes/mine.html"]).toBe("mine");
    expect(files["notes-of-mine.txt"]).toBe("mine");
  });

  it("takes a day out of the report whose folder is gone, with its empty folders", async () => {
    await open().build();
    rmSync(join(show.show, "days/2026-03-15"), { recursive: true });
    const result = await show.build();
    expect(readFiles(show.out)).toEqual({ "index.html": "2026-03-14: 2", ...DAY_1 });
    expect(existsSync(join(show.out, "days/2026-03-15"))).toBe(false);
    expect(result.findings.map((f) => f.code)).toContain("OUT805");
  });

  it("writes an output again that somebody deleted", async () => {
    await open().build();
    rmSync(join(show.out, "days/2026-03-15/takes/a-2-1.html"));
    await show.build();
    expect(states()[1]).toBe("2026-03-15 built (output missing: days/2026-03-15/takes/a-2-1.html)");
    expect(readFiles(show.out)).toEqual(ALL);
  });

  it("builds all days when forced", async () => {
    await open().build();
    await show.build({ force: true });
    expect(show.calls).toEqual(["2026-03-14", "2026-03-15", "show"]);
  });

  it("builds one day when asked and keeps the others in the show-wide pages", async () => {
    await open().build();
    setNotes("2026-03-14", "take a-9-1");
    setNotes("2026-03-15", "take a-9-2\ntake a-9-3");
    const result = await show.build({ dates: ["2026-03-15"] });
    expect(result.days.map((d) => d.date)).toEqual(["2026-03-15"]);
    expect(readFiles(show.out)["index.html"]).toBe("2026-03-14: 2\n2026-03-15: 2");
  });

  it("makes a day that another program made anew, although it was not asked for", async () => {
    await open().build();
    await show.build({ dates: ["2026-03-15"], programHash: "another" });
    expect(show.calls).toEqual(["2026-03-14", "2026-03-15", "show"]);
    await show.build({ dates: ["2026-03-15"], programHash: "another" });
    expect(show.calls).toEqual([]);
  });

  it("refuses a day that the show does not have, and says which it may be", async () => {
    const result = await open().build({ dates: ["2026-03-41"] });
    expect(result.status).toBe("refused");
    expect(result.problem).toBe('no day "2026-03-41" in the show. Did you mean 2026-03-14 or 2026-03-15?');
    expect(existsSync(show.out)).toBe(false);
  });

  it("refuses a show without show.yaml and writes nothing", async () => {
    const result = await open({ "days/2026-03-14/notes.csv": "" }).build();
    expect(result.status).toBe("refused");
    expect(result.findings.map((f) => f.code)).toEqual(["SHOW601"]);
    expect(existsSync(show.out)).toBe(false);
  });

  it("refuses an output folder with other files, unless forced, and deletes none of them", async () => {
    open();
    writeFiles(show.out, { "holiday.txt": "mine", "index.html": "mine" });
    const refused = await show.build();
    expect(refused.problem).toContain("holds other files (holiday.txt, index.html)");
    expect(readFiles(show.out)).toEqual({ "holiday.txt": "mine", "index.html": "mine" });
    await show.build({ force: true });
    expect(readFiles(show.out)).toEqual({ ...ALL, "holiday.txt": "mine" });
  });
});

describe("a link that leads out of the show folder", () => {
  it("is a finding, and what it leads to is not read", async () => {
    open();
    writeFiles(join(show.show, ".."), { "elsewhere/notes.csv": "take a-7-1" });
    symlinkSync("../../elsewhere", join(show.show, "days/2026-03-16"));
    const result = await show.build();
    expect(result.findings.filter((f) => f.code === "OUT802").map((f) => f.file)).toContain("days/2026-03-16");
    expect(Object.keys(readFiles(show.out)).join()).not.toContain("a-7-1");
  });
});

describe("a fault of the program", () => {
  it("costs one day: the others are built, and the day keeps its last good pages", async () => {
    await open().build();
    setNotes("2026-03-14", "crash");
    setNotes("2026-03-15", "take a-2-2");
    const result = await show.build();
    expect(result.faults.map((f) => f.date)).toEqual(["2026-03-14"]);
    expect(result.findings.map((f) => f.code)).toEqual(["OUT804"]);
    expect(readFiles(show.out)).toMatchObject({ ...DAY_1, "days/2026-03-15/takes/a-2-2.html": "take a-2-2" });
    expect(readFiles(show.out)["index.html"]).toBe("2026-03-14: 2\n2026-03-15: 1");
  });

  it("leaves out of the show-wide pages what another program left of the day, whose shape may be another", async () => {
    await open().build();
    setNotes("2026-03-14", "crash");
    const result = await show.build({ programHash: "another" });
    expect(result.faults.map((f) => f.date)).toEqual(["2026-03-14"]);
    expect(readFiles(show.out)).toMatchObject(DAY_1);
    expect(readFiles(show.out)["index.html"]).toBe("2026-03-15: 1");
  });
});

describe("an interrupted build", () => {
  /** Stops the build at the nth change of the output folder, as a killed process would. */
  async function killAt(step: number): Promise<boolean> {
    const { outFiles } = await import("../../src/build/out-files.ts");
    const { showFiles } = await import("../../src/build/show-files.ts");
    const { buildShow } = await import("../../src/build/run.ts");
    const real = outFiles(show.out);
    let steps = 0;
    const counted = <A extends unknown[]>(action: (...args: A) => void) => {
      return (...args: A) => {
        if (++steps > step) throw new Error("killed");
        action(...args);
      };
    };
    const out = {
      ...real,
      write: counted(real.write),
      move: counted(real.move),
      removeFile: counted(real.removeFile),
      removeFolder: counted(real.removeFolder),
    };
    const log = { progress() {}, day() {}, detail() {} };
    const options = { dates: [], force: false, tool: { name: "Lens Daybook", version: "1.0.0" }, programHash: "p" };
    try {
      const result = await buildShow(
        options,
        { show: showFiles(show.show), linksLeftOut: () => [], out, log, now: () => 0 },
        fakePipeline(),
      );
      return result.faults.length > 0;
    } catch {
      return true;
    }
  }

  it("is mended by the next run, whatever step it was killed at", async () => {
    for (let step = 0; ; step++) {
      open();
      await show.build();
      setNotes("2026-03-14", "take a-1-2\ntake a-1-3");
      const wasKilled = await killAt(step);
      setNotes("2026-03-14", "take a-1-1\ntake a-1-2");
      await show.build();
      expect(readFiles(show.out), `killed at step ${step}`).toEqual(ALL);
      if (!wasKilled) break;
      show.clean();
      expect(step).toBeLessThan(100);
    }
  });
});

describe("a disk that refuses", () => {
  it("gives a finding that names the file, and no fault", async () => {
    open();
    mkdirSync(join(show.out, ".daybook"), { recursive: true });
    mkdirSync(join(show.out, "days/2026-03-14/index.html/in-the-way"), { recursive: true });
    const result = await show.build();
    expect(result.status).toBe("refused");
    expect(result.faults).toEqual([]);
    const [found] = result.findings.filter((f) => f.code === "OUT801");
    expect(found?.message).toContain(join(show.out, "days/2026-03-14/index.html"));
  });
});

describe("records", () => {
  it("that are broken cost one build and nothing else", async () => {
    await open().build();
    writeFileSync(join(show.out, ".daybook/days/2026-03-14.json"), "{ half");
    await show.build();
    expect(show.calls).toContain("2026-03-14");
    expect(readFiles(show.out)).toEqual(ALL);
  });

  it("that name files outside the output folder are not believed", async () => {
    await open().build();
    const record = join(show.out, ".daybook/days/2026-03-14.json");
    const stored = JSON.parse(readFileSync(record, "utf8"));
    stored.outputs.push({ file: "../show/show.yaml", bytes: 1, sha256: "x" });
    writeFileSync(record, JSON.stringify(stored));
    await show.build();
    expect(existsSync(join(show.show, "show.yaml"))).toBe(true);
  });

  it("are the same bytes for the same input", async () => {
    await open().build();
    const record = () => readFileSync(join(show.out, ".daybook/days/2026-03-14.json"), "utf8");
    const first = record();
    await show.build({ force: true });
    expect(record()).toBe(first);
  });
});
