/** How a report is laid out: names at their takes, what is shared said once, pages that are neither crowded nor half empty. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { DATE, writeShow } from "../../bench/show.mjs";
import { showFiles } from "../../src/build/show-files.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { buildDay } from "../../src/model/build-day.ts";
import { FORMULAS } from "../../src/optics/formulas.ts";
import { cameraReport } from "../../src/pdf/camera-report.ts";
import { linesHere } from "../../src/pdf/flow.ts";
import { formulaText } from "../../src/pdf/formula-text.ts";
import { readerReport } from "../../src/pdf/reader-report.ts";
import { SHOWN } from "../../src/pdf/sections/methods.ts";
import { summariseDay } from "../../src/summary/day.ts";
import type { DaySummary, TakeSummary } from "../../src/summary/types.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";
import { itWith, look, wordsOf } from "./tools.ts";

const OPTIONS = { tool: { name: "Lens Daybook", version: "0.1.0" }, buildId: "7c41e09a" } as const;

function textOf(report: Uint8Array): string {
  return look("pdftotext", report, ["-layout", "file", "-"]).replace(/[\s\u00a0\u202f]+/g, " ");
}

/** The words of each page as they are drawn. */
function drawn(report: Uint8Array): readonly string[] {
  return look("pdftotext", report, ["-raw", "file", "-"])
    .split("\f")
    .map((page) => page.replace(/[\s\u00a0]+/g, " "));
}

function withTakes(change: (t: TakeSummary, i: number) => Partial<TakeSummary["take"]>): DaySummary {
  const day = exampleDaySummary();
  return { ...day, takes: day.takes.map((t, i) => ({ ...t, take: { ...t.take, ...change(t, i) } })) };
}

describe("the head of a take", () => {
  itWith("pdftotext", "says slate, take and camera, circled or not, however wide the slate is", async () => {
    const day = withTakes(({ take }, i) => ({ circled: i % 2 === 0, slate: `1${take.slate}14B`, take: `${take.take} PU` }));
    const text = drawn(await cameraReport(day, OPTIONS)).join(" ");
    for (const { take } of day.takes) expect(text).toContain(`${take.slate} take ${take.take} ${take.camera} `);
  });

  itWith("qpdf", "comes below its slate's, in the bookmarks and on the pages that they lead to", async () => {
    const report = await cameraReport(exampleDaySummary(), OPTIONS);
    interface Item {
      readonly title: string;
      readonly destpageposfrom1: number;
      readonly kids: readonly Item[];
    }
    const { outlines } = JSON.parse(look("qpdf", report, ["--json", "--json-key=outlines", "file"])) as {
      outlines: readonly Item[];
    };
    const pages = drawn(report);
    const slates = (outlines[0]?.kids ?? []).filter((item) => item.title.includes("clip"));
    const marked = slates.flatMap((slate) => {
      const name = slate.title.replace(/,.*/, "");
      return [
        { words: `${name} Scene`, page: slate.destpageposfrom1 },
        ...slate.kids.map((take) => ({ words: `${name} ${take.title.replace("Take", "take")} `, page: take.destpageposfrom1 })),
      ];
    });
    // five slates and seven clips
    expect(marked).toHaveLength(5 + 7);
    let before = { page: 0, at: -1 };
    for (const { words, page } of marked) {
      const at = pages[page - 1]?.indexOf(words) ?? -1;
      expect(at, words).toBeGreaterThanOrEqual(0);
      expect(page > before.page || at > before.at, words).toBe(true);
      before = { page, at };
    }
  });
});

describe("what the takes of a set-up share", () => {
  const notes = [
    "slate,take,camera,clip,tc_in,tc_out,lens,stop,focus,ei,filters",
    "7,1,A,A001C001,10:00:00:00,10:00:02:00,P50,4,2 m,800,Mist 1/8",
    "7,1,B,B001C001,10:00:00:00,10:00:02:00,P35,4,2 m,800,",
    "7,2,A,A001C002,10:10:00:00,10:10:02:00,P50,4,2 m,800,Mist 1/4",
    "7,2,B,B001C002,10:10:00:00,10:10:02:00,P35,4,2 m,800,",
  ];
  const show = { ...SMALL_KIT, "days/2030-02-03/notes.csv": `${notes.join("\n")}\n` };

  itWith("pdftotext", "is said once, by camera where it is of one; what differs stays with each take", async () => {
    const text = textOf(await cameraReport(summarise(show, "2030-02-03").summary, OPTIONS));
    expect(text.match(/EI 800/g)).toHaveLength(1);
    expect(text).toMatch(/All clips .*Noted: EI 800\./);
    // the two lenses have other serials: a line a camera
    expect(text).toMatch(/Camera A [^.]*serial 501/);
    expect(text).toMatch(/Camera B [^.]*serial 351/);
    for (const filter of ["Filters Mist 1/8.", "Filters Mist 1/4."]) expect(text.split(filter)).toHaveLength(2);
  });

  itWith("pdftotext", "is not taken from one take for another", async () => {
    const one = { ...show, "days/2030-02-03/notes.csv": `${notes.slice(0, 2).join("\n")}\n` };
    const text = textOf(await cameraReport(summarise(one, "2030-02-03").summary, OPTIONS));
    expect(text).not.toContain("All takes");
    expect(text).toContain("Noted Filters Mist 1/8; EI 800.");
  });
});

describe("lines at the end of a page", () => {
  it("never leave a first or a last line alone", () => {
    expect(linesHere(5, 9)).toBe(5);
    expect(linesHere(5, 4)).toBe(3);
    expect(linesHere(5, 3)).toBe(3);
    expect(linesHere(5, 1)).toBe(0);
    // two and one, or one and two: neither is right
    expect(linesHere(3, 2)).toBe(0);
    expect(linesHere(2, 1)).toBe(0);
    expect(linesHere(1, 0)).toBe(0);
  });
});

describe("formulas", () => {
  it("are all known by their names", () => {
    const known = FORMULAS.map(({ id }) => id);
    expect(SHOWN.filter((id) => !known.includes(id))).toEqual([]);
  });

  it("are set with powers, roots, Greek letters and true minus signs", () => {
    expect(formulaText("s = (D + sqrt(D^2 - 4 f D)) / 2")).toBe("s = (D + \u221a(D\u00b2 \u2212 4 f D)) / 2");
    expect(formulaText("tau = (N / T)^2; loss in stops -log2(tau)")).toBe(
      "\u03c4 = (N / T)\u00b2; loss in stops \u2212log\u2082(\u03c4)",
    );
    expect(formulaText("m = P (f m +- c N) / (P f -+ c N), mm^-4")).toBe(
      "m = P (f m \u00b1 c N) / (P f \u2213 c N), mm\u207b\u2074",
    );
    expect(formulaText("the one-sided depth of half-diagonal")).toBe("the one-sided depth of half-diagonal");
  });
});

describe("a day of 150 takes", () => {
  let report: Uint8Array;
  beforeAll(async () => {
    const folder = mkdtempSync(join(tmpdir(), "daybook-thick-"));
    try {
      writeShow(folder, 150);
      const files = showFiles(folder);
      const { input } = readShow(files);
      if (input === null) throw new Error("the show cannot be read");
      report = await cameraReport(summariseDay(buildDay(input, readDay(files, input, DATE).input, []), input.kit), OPTIONS);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }, 240_000);

  itWith("pdfinfo", "has at most 40 pages and less than 3 MB", () => {
    expect(Number(/Pages: +(\d+)/.exec(look("pdfinfo", report, ["file"]))?.[1])).toBeLessThanOrEqual(40);
    expect(report.length).toBeLessThan(3e6);
  });

  itWith("pdftotext", "leaves no page of its set-ups half empty", () => {
    const lowest = new Map<number, number>();
    // below 780 stands the foot of the page
    for (const word of wordsOf(report).filter(({ bottom }) => bottom < 780))
      lowest.set(word.page, Math.max(lowest.get(word.page) ?? 0, word.bottom));
    const pages = look("pdftotext", report, ["-layout", "file", "-"]).split("\f");
    const last = pages.findIndex((page) => page.includes("Lenses and kit changes") && !page.includes("Contents"));
    expect(last).toBeGreaterThan(20);
    const empty = [...lowest].filter(([page, bottom]) => page < last && bottom < 0.55 * 841.89);
    expect(empty).toEqual([]);
  });
});

describe("a take of many pulls", () => {
  itWith("pdftotext", "may have its table go on on the next page, which then says what it is of", async () => {
    // 2 s near, 2 s far, over and over: enough pulls for more than a page
    const frames = 24 * 400;
    const log = logText(["camera: A", "clip: A001C001"], "focus_m,t", "10:00:00:00", frames, (i) =>
      i % 96 < 44 ? "2.000,2.8" : i % 96 < 48 ? `${(2 + ((i % 96) - 43) * 0.5).toFixed(3)},2.8` : "4.500,2.8",
    );
    const notes = "slate,take,camera,clip,tc_in,tc_out,lens,circled\n7,1,A,A001C001,10:00:00:00,10:06:40:00,P50,y\n";
    const show = { ...SMALL_KIT, "days/2030-02-03/notes.csv": notes, "days/2030-02-03/logs/a.csv": log };
    const { summary } = summarise(show, "2030-02-03");
    expect(summary.takes[0]?.pulls?.length ?? 0).toBeGreaterThan(60);
    expect(textOf(await cameraReport(summary, OPTIONS))).toContain("7 take 1 A, continued Pull Start End");
  });
});

describe("the production report", () => {
  itWith("pdftotext", "names no section that it does not have", async () => {
    const day = exampleDaySummary();
    const [use] = day.lensUse.filter(({ takes }) => takes > 0);
    if (use === undefined) throw new Error("no lens was used");
    const lensUse = Array.from({ length: 9 }, (_, i) => ({ ...use, lens: `L${i}` }));
    const production = textOf(await readerReport({ ...day, lensUse }, "production", OPTIONS));
    expect(production).toContain("2 more, in the camera report");
    expect(textOf(await cameraReport({ ...day, lensUse }, OPTIONS))).toContain("2 more, see Lenses");
  });
});
