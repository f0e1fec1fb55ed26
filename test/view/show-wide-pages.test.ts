/** Pages of the whole show: scenes, plates, clips, production to date, about the report, and what the last change made anew. */
import { describe, expect, it } from "vitest";
import { clipsCsv } from "../../src/export/editorial/clips-csv.ts";
import { inputsCsv } from "../../src/export/inputs-csv.ts";
import type { DayRecord, ShowInput } from "../../src/ingest/records.ts";
import { digestDay } from "../../src/summary/digest.ts";
import type { DayDigest, PlateState } from "../../src/summary/digest-types.ts";
import { progress } from "../../src/summary/progress.ts";
import type { CalibrationState } from "../../src/summary/types.ts";
import type { LastChange, PageModel } from "../../src/view/context.ts";
import { productionPage } from "../../src/view/readers/production-page.ts";
import { aboutPage, MOST_INPUTS } from "../../src/view/show/about-page.ts";
import { clipsPage, MOST_CLIPS } from "../../src/view/show/clips-page.ts";
import { homePage } from "../../src/view/show/home-page.ts";
import { coverageWords } from "../../src/view/show/plate-row.ts";
import { platesPage } from "../../src/view/show/plates-page.ts";
import { scenesPage } from "../../src/view/show/scenes-page.ts";
import { showProductionPage } from "../../src/view/show/show-production-page.ts";
import { showPages } from "../../src/view/show-pages.ts";
import type { TableModel } from "../../src/view/table.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { digestOf, scheduled, takeOf } from "../fixtures/show-digests.ts";
import { exampleContext } from "../fixtures/site-context.ts";

const summary = exampleDaySummary();
const { kit } = summary;
const context = exampleContext(summary);
const show: ShowInput = {
  show: summary.show,
  kit,
  dates: [summary.date],
  files: [{ file: "show.yaml", sha256: "ab".repeat(32), bytes: 1234 }],
};
const example = digestDay(summary, context.packFiles);
const plain = (text: string) => text.replaceAll(/[\u00a0\u2009\u202f]/g, " ");
const ADDED = ["scenes.html", "plates.html", "clips.html", "production.html", "about.html"];
/** Each row as texts: text, links and note of each cell. */
const rowsOf = (model: TableModel) =>
  model.rows.map((r) =>
    [r.head, ...r.cells].map((c) =>
      plain([c.text + c.links.map((l) => l.before + l.label).join(""), c.note].filter((t) => t !== "").join(" | ")),
    ),
  );

describe("pages of the show", () => {
  const pages: readonly PageModel[] = Object.values(showPages([example], show, context)).flat();

  it("have titles and paths of their own, and the new ones are linked from the first page and from every foot", () => {
    expect(new Set(pages.map((p) => p.title)).size).toBe(pages.length);
    const paths = pages.map((p) => p.path);
    for (const path of ADDED) expect(paths).toContain(path);
    const home = homePage([example], show, context);
    expect(home.more.map((m) => m.href)).toEqual(expect.arrayContaining(ADDED));
    for (const page of pages)
      expect(
        page.footLinks.map((l) => l.href.replace(/^(\.\.\/)+/, "")),
        page.path,
      ).toEqual(expect.arrayContaining(ADDED));
  });

  it("lead from the size of a day's pack to the file that says what is in it", () => {
    const files = ["README.txt", "day.json"].map((name) => ({ name, bytes: 500 }));
    const days = homePage(
      [digestOf("2031-05-06", 1, { packFiles: files }), digestOf("2031-05-07", 2, { packFiles: [] })],
      show,
      context,
    ).days;
    expect(days.map((d) => [plain(d.pack), d.packHref])).toEqual([
      ["1 KB", "packs/2031-05-06/README.txt"],
      ["not written", ""],
    ]);
  });

  it("hold texts and flags only", () => {
    const leaves = (value: unknown): unknown[] =>
      value !== null && typeof value === "object" ? Object.values(value).flatMap(leaves) : [value];
    for (const leaf of leaves(pages.filter((p) => ADDED.includes(p.path)))) {
      expect(["string", "boolean"]).toContain(typeof leaf);
      if (typeof leaf === "string") expect(leaf).not.toMatch(/NaN|undefined|\bnull\b|\[object/);
    }
  });

  it("stand a show without a day", () => {
    const none = showPages([], show, { ...context, days: [], lastChange: { first: true, days: [] } });
    expect(Object.values(none).flat().length).toBeGreaterThan(5);
  });
});

describe("scenes", () => {
  const digests = [
    digestOf("2031-05-06", 8, {
      record: { scheduled: [scheduled("27", 19), scheduled("9", 2)], completed: [], part: ["27"], notShot: ["9"] },
      takes: [
        takeOf("27 1 A", { lens: "P35", lightStops: -10 }),
        takeOf("27A 1 A", { lens: "NONE", lightStops: -9.5, circled: true }),
      ],
    }),
    digestOf("2031-05-07", 9, { record: { scheduled: [], completed: ["27"], part: [], notShot: [] }, takes: [] }),
  ];
  const page = scenesPage(digests, kit, context);

  it("have a row each with pages, status, days and slates, lenses and exposure", () => {
    expect(rowsOf(page.scenes)).toEqual([
      ["9", "0", "0", "0", "0:00", "2/8", "0", "not shot", "Day 8 | nothing shot", "none", "fewer than two set-ups"],
      [
        ...["27", "2", "2", "1", "0:20", "2 3/8", "2 3/8", "completed | day 9", "Day 8: 27, 27A; Day 9 | nothing shot on day 9"],
        ...["NONE, P35", "0.50 | 27 to 27A"],
      ],
    ]);
    expect(page.scenes.rows.map((r) => r.id)).toEqual(["scene-9", "scene-27"]);
  });

  it("lead to the days, to the slates on them and to the lenses of the kit", () => {
    expect(page.scenes.rows[1]?.cells.flatMap((c) => c.links.map((l) => l.href))).toEqual([
      ...["days/2031-05-06/index.html", "days/2031-05-06/index.html#slate-27", "days/2031-05-06/index.html#slate-27a"],
      ...["days/2031-05-07/index.html", "lenses/P35.html"],
    ]);
  });

  it("say the pages to date above", () => {
    const value = (term: string) => plain(page.strip.find((f) => f.term === term)?.value ?? "");
    // 19 + 2 eighths are scheduled, 19 completed
    expect([value("Pages scheduled so far"), value("Pages completed"), value("Pages remaining")]).toEqual([
      "2 5/8",
      "2 3/8",
      "2/8",
    ]);
  });
});

describe("plates", () => {
  const state: PlateState = {
    ...{ sensorMode: "OG", typicalStop: 4, heightM: 1.5, tiltDeg: -2, rollDeg: 0, filters: "none" },
    ...{ calibration: { kind: "inside" }, hasLog: true, framesMissing: 0 },
  };
  const full = {
    clip: "A1",
    timecodeIn: "10:00:00:00",
    lens: "P35",
    focalMm: { min: 35, max: 35 },
    tStop: { widest: 4, deepest: 4 },
  };
  const focus = { nearestM: 2, farthestM: 3 };
  const hero = takeOf("24B 1 A", { ...full, focus, plate: "hero", plateState: state });
  const clean = takeOf("24C 1 A", {
    ...{ ...full, clip: null, focus: null, lens: "X9", plate: "clean", plateOf: "24B" },
    plateState: { ...state, tiltDeg: null, framesMissing: 17, calibration: { kind: "none", reason: "the kit has no table" } },
  });
  const packFiles = ["lens.csv", "camera.usda", "undistort-0001.exr", "redistort-0001.exr"].map((name) => ({
    name: `vfx/a-24b-1/${name}`,
    bytes: 500,
  }));
  const digests = [
    digestOf("2031-05-06", 8, { takes: [clean, takeOf("2 1 A", { ...full, focus, plate: "element", plateState: state })] }),
    digestOf("2031-05-07", 9, { takes: [hero, takeOf("24B 2 A")], packFiles }),
  ];
  const page = platesPage(digests, kit, context);

  it("stand by scene and slate, the hero before the clean plate that was shot a day earlier", () => {
    expect(page.scenes.map((s) => [s.heading, s.groups.map((g) => g.heading)])).toEqual([
      ["Scene 2", ["2: element"]],
      ["Scene 24", ["24B: hero and clean"]],
    ]);
    expect(rowsOf(page.scenes[1]?.groups[0]?.table as TableModel).map((r) => r[0])).toEqual(["24B take 1 A", "24C take 1 A"]);
    expect(page.scenes[1]?.groups[0]?.sentence).toContain("another lens");
  });

  it("say what is missing in words, and nothing where nothing is", () => {
    const missing = page.scenes.flatMap((s) => s.groups.flatMap((g) => rowsOf(g.table).map((r) => r[12])));
    expect(missing).toEqual([
      "nothing",
      "nothing",
      "17 frames not logged. Lens X9 is not in the kit. No calibration. Clip, focus and tilt not recorded.",
    ]);
    expect(page.about).toContain("something is missing for 1 of them");
  });

  it("lead to the take sheet and to the files of the pack, maps counted", () => {
    const [row] = page.scenes[1]?.groups[0]?.table.rows ?? [];
    expect(row?.head.href).toBe("days/2031-05-07/takes/a-24b-1.html");
    const files = row?.cells.at(-1);
    expect(files?.links.map((l) => l.href)).toEqual([
      "packs/2031-05-07/vfx/a-24b-1/lens.csv",
      "packs/2031-05-07/vfx/a-24b-1/camera.usda",
    ]);
    expect(plain(files?.note ?? "")).toBe("2 maps, 1 KB");
  });

  it("say whether the calibration served, and if not, why", () => {
    const words = (calibration: CalibrationState) => plain(coverageWords(calibration, "metric"));
    expect(words({ kind: "none", reason: "the take has no log" })).toBe("none: the take has no log");
    // 2.5 dioptres are 0.40 m, 2 dioptres are 0.50 m
    expect(words({ kind: "nearest", axes: [{ axis: "focus", asked: 2.5, used: 2 }] })).toBe(
      "nearest point: focus 0.40 m, table to 0.50 m",
    );
    expect(words({ kind: "nearest", axes: [] })).toBe("nearest point: the table lacks a cell here");
  });
});

describe("clips", () => {
  const many = digestOf("2031-05-06", 8, {
    takes: Array.from({ length: MOST_CLIPS + 3 }, (_, i) =>
      takeOf(`1 ${i + 1} A`, { clip: `A001C${String(MOST_CLIPS + 3 - i).padStart(4, "0")}` }),
    ),
  });

  it("stop at their limit and leave the rest to the table beside the page", () => {
    const page = clipsPage([many], kit, { ...context, showTables: [{ name: "clips.csv", bytes: 90_000 }] });
    expect(page.clips.rows).toHaveLength(MOST_CLIPS);
    expect(page.clips.rows[0]?.head.text).toBe("A001C0001");
    expect(plain(page.more)).toBe("The first 2 000 clips of 2 003 are here; clips.csv has them all.");
    expect(page.files.map((f) => f.href)).toEqual(["clips.csv"]);
    expect(clipsCsv([many]).trimEnd().split("\n")).toHaveLength(MOST_CLIPS + 4);
  });

  it("without a table beside it offer none", () => {
    const page = clipsPage([example], kit, context);
    expect([page.hasFiles, page.more]).toEqual([false, ""]);
  });

  it("say what the table says, in the same order", () => {
    const page = clipsPage([example], kit, context);
    const [header = "", ...lines] = clipsCsv([example]).trimEnd().split("\n");
    const at = (name: string) => header.split(",").indexOf(name);
    expect(lines.map((l) => l.split(",")[at("timecode_in")] || "not recorded")).toEqual(
      page.clips.rows.map((r) => r.cells[5]?.text),
    );
    expect(lines.map((l) => l.split(",")[at("circled")])).toEqual(
      page.clips.rows.map((r) => String(r.cells[4]?.text === "circled")),
    );
  });

  it("without a name are known by their take, at the end", () => {
    const last = clipsPage([example], kit, context).clips.rows.at(-1);
    expect([last?.head.text, last?.head.note]).toEqual(["15 take 1 A", "clip not recorded"]);
  });
});

describe("production of a day", () => {
  const day = (i: number, record: Partial<DayRecord>, overrides: Partial<DayDigest>) =>
    digestOf(`2031-05-${String(i + 6).padStart(2, "0")}`, i, { record, ...overrides });
  // scene 1 of 8 eighths is done on the first day; scene 2 of 19 is begun there, scheduled again with 10 of them, and done on the third
  const digests = [
    day(1, { scheduled: [scheduled("1", 8), scheduled("2", 19)], completed: ["1"], part: ["2"] }, totalsOf(2, 4, 1, 27, 8)),
    day(2, {}, totalsOf(1, 3, 0, null, null)),
    day(
      3,
      { scheduled: [scheduled("2", 10)], completed: ["2"] },
      {
        ...totalsOf(3, 5, 2, 10, 10),
        takes: [
          takeOf("2 1 A", { lens: "P35", roll: "A003", durationSeconds: 61 }),
          takeOf("2 1 B", { lens: "P75", roll: "B002", durationSeconds: 50 }),
          takeOf("2A 1 A", { lens: "P35", roll: "A004", durationSeconds: 59 }),
        ],
        cameraSeconds: { A: 120, B: 50 },
      },
    ),
  ];
  const page = (i: number) => {
    const [digest] = digests.slice(i);
    if (digest === undefined) throw new Error("no such day");
    return productionPage(digest, progress(digests), kit, context);
  };

  it("stands beside all days so far, a scene's pages counted once", () => {
    // scheduled 8 + 19; completed 8 on day 1, 27 on day 3; set-ups 2, 2 + 1, 2 + 1 + 3; takes 4, 7, 12; circled 1, 1, 3
    expect(rowsOf(page(0).toDate).map((r) => r.slice(0, 7))).toEqual([
      ["Day 1", "3 3/8", "1 0/8", "2 3/8", "2", "4", "1"],
      ["To date, this day", "3 3/8", "1 0/8", "2 3/8", "2", "4", "1"],
    ]);
    expect(rowsOf(page(1).toDate).map((r) => r.slice(0, 7))).toEqual([
      ["Day 2", "not recorded", "not recorded", "not recorded", "1", "3", "0"],
      ["To date, 2 days", "3 3/8", "1 0/8", "2 3/8", "3", "7", "1"],
    ]);
    expect(rowsOf(page(2).toDate).map((r) => r.slice(0, 7))).toEqual([
      ["Day 3", "1 2/8", "1 2/8", "0", "3", "5", "2"],
      ["To date, 3 days", "3 3/8", "3 3/8", "0", "6", "12", "3"],
    ]);
  });

  it("says what of each scene remains", () => {
    expect(rowsOf(page(0).scenes).map((r) => [r[0], ...r.slice(2, 5), r[6]])).toEqual([
      ["1", "1 0/8", "1 0/8", "0", "completed"],
      ["2", "2 3/8", "0", "2 3/8", "part"],
    ]);
  });

  it("says how long each camera rolled, with how many lenses, on which rolls", () => {
    expect(rowsOf(page(2).cameraUse)).toEqual([
      ["A", "2:00", "2", "1", "A003, A004"],
      ["B", "0:50", "1", "1", "B002"],
    ]);
  });

  function totalsOf(slates: number, takes: number, circled: number, scheduledEighths: number | null, completed: number | null) {
    const counts = { slates, takes, circled, eighthsScheduled: scheduledEighths, eighthsCompleted: completed };
    return { totals: { ...example.totals, ...counts } };
  }
});

describe("production to date", () => {
  const day = (i: number) =>
    digestOf(`2031-05-${String(i + 1).padStart(2, "0")}`, i + 1, {
      totals: { ...example.totals, slates: 2, takes: 5, circled: 1, eighthsScheduled: null, eighthsCompleted: null },
      cameraSeconds: { A: 60, ...(i === 0 ? { B: 30 } : {}) },
      record: { call: 420, firstShot: 500, wrap: 1480 },
    });

  it("has each day and all days so far, and the hours as they are written", () => {
    const page = showProductionPage([day(0), day(1)], context);
    const rows = rowsOf(page.days);
    expect(rows[1]?.slice(0, 3)).toEqual(["Day 2 | 2 May", "08:20", "00:40+1"]);
    // set-ups 2 a day, takes 5, circled 1; camera B did not roll on the second day
    expect(rows.map((r) => r.slice(7, 15))).toEqual([
      ["2", "2", "5", "5", "1", "1", "1:00", "0:30"],
      ["2", "4", "5", "10", "1", "2", "1:00", "none"],
    ]);
    expect(page.hasEarlier).toBe(false);
  });

  it("puts the days that do not fit the sheet into one row, and below", () => {
    const page = showProductionPage(
      Array.from({ length: 25 }, (_, i) => day(i)),
      context,
    );
    expect(page.days.rows).toHaveLength(15);
    expect(plain(page.days.rows[0]?.head.text ?? "")).toBe("11 days until day 11");
    expect(rowsOf(page.days)[0]?.slice(7, 9)).toEqual(["22", "22"]);
    expect(page.earlier.rows).toHaveLength(11);
    expect(rowsOf(page.days).at(-1)?.[8]).toBe("50");
  });
});

describe("about the report", () => {
  const inputs = Array.from({ length: MOST_INPUTS + 2 }, (_, i) => ({
    file: `days/2031-05-06/logs/${i}.csv`,
    sha256: "cd".repeat(32),
    bytes: 10,
  }));

  it("lists every input with size and hash, to a limit, and all of them in the table beside it", () => {
    const digest = digestOf("2031-05-06", 8, { inputs });
    const page = aboutPage([digest], show, { ...context, showTables: [{ name: "inputs.csv", bytes: 9 }] });
    expect(rowsOf(page.showInputs)).toEqual([["show.yaml", "all", "1 234", "ab".repeat(32)]]);
    expect(page.dayInputs.rows).toHaveLength(MOST_INPUTS);
    expect(page.more).toBe("2 more are in inputs.csv.");
    const lines = inputsCsv(show.files, [digest]).trimEnd().split("\n");
    expect(lines).toHaveLength(MOST_INPUTS + 4);
    expect(lines.slice(0, 3)).toEqual([
      "file,bytes,sha256,date",
      `show.yaml,1234,${"ab".repeat(32)},`,
      `days/2031-05-06/logs/0.csv,10,${"cd".repeat(32)},2031-05-06`,
    ]);
  });

  it("names the tool, the build and each pack by content", () => {
    const page = aboutPage([example], show, { ...context, packs: [{ date: summary.date, id: "fedcba987654", generation: 2 }] });
    expect(page.facts.map((f) => f.value)).toEqual(expect.arrayContaining(["Lens Daybook 0.0.0", "0123456789ab"]));
    expect(rowsOf(page.days)[0]?.slice(-2)).toEqual(["fedcba987654", "2"]);
    expect(page.verifyCommand).toBe(`daybook verify packs/${summary.date}`);
  });
});

describe("the last change on the first page", () => {
  const other = digestOf("2031-05-07", 10);
  const change = (lastChange: LastChange) =>
    homePage([example, other], show, { ...context, lastChange, packs: [{ date: summary.date, id: "x", generation: 2 }] }).change;

  it("is the first build, with nothing to list", () => {
    expect(plain(change({ first: true, days: [] }).sentence)).toBe("First build into this folder: 2 days, all new.");
  });

  it("says what was made anew and why, with the size of the pack and its list", () => {
    const view = change({
      first: false,
      days: [
        { date: "2031-05-05", day: 8, what: "gone", reason: "no longer in the show" },
        { date: summary.date, day: 9, what: "changed", reason: "notes.csv changed" },
      ],
    });
    expect(plain(view.sentence)).toBe("1 day made anew, 1 day gone and 1 day as before.");
    // 184320 + 21000 + 3120 + 1100 + 96000 + 4000 bytes
    expect(view.lines.map((l) => [l.day, l.linked, l.what, plain(l.pack)])).toEqual([
      ["Day 8, 5 May", false, "gone: no longer in the show", ""],
      ["Day 9, 6 May", true, "made anew: notes.csv changed", "pack 310 KB, hash list 2"],
    ]);
  });

  it("is left out where no build has compared", () => {
    expect(homePage([example], show, context).hasChange).toBe(false);
  });
});
