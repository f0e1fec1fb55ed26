import { describe, expect, it } from "vitest";
import type { LensCoverage } from "../../src/summary/coverage.ts";
import type { SlateExposure, TakeExposure } from "../../src/summary/exposure.ts";
import { dayContext } from "../../src/view/day/day-context.ts";
import { exposureTable, notExposedSentence } from "../../src/view/day/exposure-table.ts";
import { kitPage } from "../../src/view/kit/kit-page.ts";
import { tradeWords, unitName } from "../../src/view/names.ts";
import { coverageView } from "../../src/view/readers/coverage-facts.ts";
import { exposureFacts } from "../../src/view/take/take-exposure.ts";
import { lookView } from "../../src/view/take/take-look.ts";
import { pullsView } from "../../src/view/take/take-pulls.ts";
import { subjectSentence } from "../../src/view/take/take-subject.ts";
import { exampleDaySummary, exampleTake } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";

const plain = (text: string) => text.replaceAll(/[\u00a0\u2009\u202f]/g, " ");
const facts = (list: readonly { readonly term: string; readonly value: string; readonly source: string }[]) =>
  list.map((f) => [f.term, plain(f.value), plain(f.source)]);

describe("words of the trade", () => {
  it("stand in capitals, and only they", () => {
    expect(["ng", "mos", "2 pu", "vfx supervisor", "false start", "spun"].map(tradeWords)).toEqual([
      ...["NG", "MOS", "2 PU", "VFX supervisor", "false start", "spun"],
    ]);
    expect(unitName("vfx")).toBe("VFX unit");
  });
});

describe("exposure of a take", () => {
  const exposure: TakeExposure = { tStop: 4, lightStops: -13.2, withEiStops: -10.2, beforeNdStops: -10.2, missing: [] };
  const spread = (spreadStops: number, darkest: number) => ({
    ...{ spreadStops, clips: 2, leftOut: 0 },
    brightest: { address: "a", stops: darkest + spreadStops },
    darkest: { address: "b", stops: darkest },
  });
  const slate = (spreadStops: number, darkest: number): SlateExposure => ({
    ...{ slate: "1", cameras: ["A"], clips: 2, beforeNd: null, colourTemperature: null },
    light: spread(spreadStops, darkest),
    withEi: spread(spreadStops, darkest + 3),
  });

  it("stands against the darkest of its slate", () => {
    expect(facts(exposureFacts(exposure, slate(0.5, -13.45)))).toEqual([
      ["Light on the sensor", "\u221213.20 stops", "calculated, +0.25 stop on the darkest of the slate"],
      ["Light with EI", "\u221210.20 stops", "calculated, +0.25 stop on the darkest of the slate"],
    ]);
    expect(facts(exposureFacts(exposure, slate(0.5, -13.2)))[0]?.[2]).toBe("calculated, the darkest of the slate");
    expect(facts(exposureFacts(exposure, slate(0.02, -13.2)))[0]?.[2]).toBe("calculated, as the others of the slate");
  });

  it("says what is not recorded, and never takes a blank ND for none", () => {
    const lacking: TakeExposure = { ...exposure, lightStops: null, withEiStops: null, missing: ["nd", "ei"] };
    expect(facts(exposureFacts(lacking, null))).toEqual([
      ["Light on the sensor", "not calculated: ND not recorded", ""],
      ["Light with EI", "not calculated: ND and EI not recorded", ""],
    ]);
  });

  it("is a row for each slate with more than one clip, its spread before ND where ND is missing", () => {
    const summary = exampleDaySummary();
    const entry = { ...slate(0.37, -13), slate: "12", cameras: ["A", "B"], clips: 3 };
    const colourTemperature = { shiftMired: 21, lowestK: 4300, highestK: 4730, clips: 2, leftOut: 1 };
    const slates = [
      { ...entry, colourTemperature },
      { ...entry, slate: "15", light: null, withEi: null, beforeNd: spread(0.1, -10) },
      { ...entry, slate: "16", clips: 1 },
    ];
    const day = dayContext({ ...summary, slateExposure: slates }, exampleContext(summary));
    const rows = exposureTable(day, "days/2031-05-06/index.html").rows;
    expect(rows.map((r) => [r.head.text, ...r.cells.map((c) => plain([c.text, c.note].filter(Boolean).join(" | ")))])).toEqual([
      ["12", "A and B", "3", "0.37", "0.37", "a", "b", "21 | 1 left out", "4300 to 4730 K"],
      ["15", "A and B", "3", "0.10 | before ND", "not all recorded", ...new Array(4).fill("not all recorded")],
    ]);
  });

  it("has no row for a slate of which nothing can be compared: a sentence names it", () => {
    const summary = exampleDaySummary();
    const nothing = { cameras: ["A"], clips: 2, light: null, withEi: null, beforeNd: null, colourTemperature: null };
    const known = { ...slate(0.37, -13), slate: "12", cameras: ["A"], clips: 2 };
    const sentence = (slates: readonly SlateExposure[]) => {
      const day = dayContext({ ...summary, slateExposure: slates }, exampleContext(summary));
      return [exposureTable(day, "days/2031-05-06/index.html").rows.length, notExposedSentence(day)];
    };
    expect(sentence([known, { ...nothing, slate: "15" }, { ...nothing, slate: "16" }])).toEqual([
      1,
      "Not calculated, neither stop, shutter and ND nor colour temperature recorded: slates 15 and 16.",
    ]);
    expect(sentence([{ ...nothing, slate: "15" }])[1]).toContain("no clip of a slate with more than one");
    // one clip has nothing to be compared with
    expect(sentence([known, { ...nothing, slate: "15", clips: 1 }])).toEqual([1, ""]);
  });
});

describe("subject", () => {
  const take = exampleTake();
  const subject = { distanceM: 1.78, framesInside: 700, framesOutside: 36, framesUnknown: 18, secondsOutside: 1.5 };

  it("is said to have been outside the band for so long", () => {
    expect(plain(subjectSentence({ ...take, subject }, "metric"))).toBe(
      "Subject noted at 1.78 m: outside the sharp band for 1.5 s (36 of 754 frames). On 18 frames it is not known.",
    );
  });

  it("is silent without a noted distance, and says when the limits are not known", () => {
    expect(subjectSentence({ ...take, subject: null }, "metric")).toBe("");
    const unknown = { ...subject, framesInside: 0, framesOutside: 0, framesUnknown: 754 };
    expect(subjectSentence({ ...take, subject: unknown }, "metric")).toMatch(/not calculated\.$/);
  });
});

describe("breathing", () => {
  it("carries its label in the head when all pulls have one, and in the rows when they differ", () => {
    const take = exampleTake();
    const [first, second, ...rest] = take.pulls ?? [];
    if (first === undefined || second === undefined) throw new Error("the example has four pulls");
    const view = (from: "logged" | "unit-focus estimate") =>
      pullsView(
        {
          ...take,
          pulls: [
            { ...first, breathingPercent: 1.24, breathingFrom: "unit-focus estimate" },
            { ...second, breathingPercent: -0.96, breathingFrom: from },
            ...rest.map((p) => ({ ...p, breathingPercent: null, breathingFrom: null })),
          ],
        },
        "metric",
      );
    const alike = view("unit-focus estimate");
    expect(alike.table.columns.at(-1)).toMatchObject({ label: "Breathing", unit: "%, unit-focus estimate" });
    expect(alike.table.rows.map((r) => r.cells.at(-1)?.text)).toEqual(["+1.2", "\u22121.0", "not calculated", "not calculated"]);
    expect(alike.breathing).toContain("An estimate, as if the whole lens moved");
    const mixed = view("logged");
    expect(mixed.table.rows.slice(0, 2).map((r) => r.cells.at(-1)?.note)).toEqual(["unit-focus estimate", "logged"]);
  });
});

describe("canvas", () => {
  const box = { leftPx: -65, topPx: -37, rightPx: 4673, bottomPx: 2629 };
  const larger = { widthPx: 4738, heightPx: 2666, percent: 2.82, box };

  it("keeps every recorded pixel once distortion is off; the other way is said only when it is larger", () => {
    const take = exampleTake();
    const view = (redistort: typeof larger) =>
      plain(lookView({ ...take, overscan: { undistort: larger, redistort }, overscanReason: null }, "x.html", null).canvas);
    expect(view({ ...larger, percent: -0.9 })).toBe(
      "Canvas that keeps every recorded pixel of the take once distortion is off: 4 738 × 2 666 pixels (+2.8 %).",
    );
    expect(view(larger)).toContain("To fill a frame of the recorded size once distortion is put on: 4 738 × 2 666 pixels");
  });

  it("says why there is none", () => {
    const lacking = { ...exampleTake(), overscan: null, overscanReason: "the kit does not say the recorded resolution" };
    expect(lookView(lacking, "x.html", null).canvas).toBe("No canvas is given: the kit does not say the recorded resolution.");
  });
});

describe("calibration coverage", () => {
  const region = {
    focalMm: { min: 34, max: 34 },
    focusDioptres: { min: 0, max: 2 },
    tStop: { widest: 2 * Math.SQRT2, deepest: 8 },
  };
  const plates = {
    ...{ ...region, focusDioptres: { min: 0.25, max: 2.5 } },
    ...{ frames: 200, framesUnknown: 0, framesInside: 150, framesBeyond: 50, fractionInside: 0.75 },
    beyond: [{ axis: "focus" as const, side: "above" as const, frames: 50, asked: 2.5, used: 2, by: 0.5 }],
  };
  const coverage: LensCoverage = {
    lens: "P35",
    table: { file: "kit/calibration/P35.csv", region, refused: null },
    plates,
    all: plates,
    framesMissing: 50,
    framesOnGrids: 0,
    setups: [{ lens: "P35", focalMm: 34, focusDioptres: 2.5, focusM: 0.4, tStop: 4, frames: 50 }],
    rule: { kind: "steps", reason: "its resolution is not known", focalRatio: 1.1, focusDioptres: 0.5, stops: 1 },
  };

  it("sets what was shot against what is calibrated", () => {
    expect(facts(coverageView(coverage, "metric").facts)).toEqual([
      ["Calibrated", "34 mm, 0.50 m to \u221e, T2.8 to T8", "kit"],
      ["Shot on plates", "34 mm, 0.40 m to 4.00 m, T2.8 to T8", "200 frames logged"],
      ["Shot on all takes", "34 mm, 0.40 m to 4.00 m, T2.8 to T8", "200 frames logged"],
      ["Plates inside the table", "75.0 %", "150 of 200 frames"],
      ["Plates beyond it", "focused to 0.40 m on 50 frames", ""],
      ["Plates not served", "50 frames", "by the rule below"],
    ]);
  });

  it("lists the charts that are still worth shooting, and by which rule", () => {
    const view = coverageView(coverage, "metric");
    expect(view.setups.rows.map((r) => r.cells.map((c) => c.text))).toEqual([["34", "0.40", "T4", "50"]]);
    expect(plain(view.sentence)).toBe("1 chart set-up would serve the 50 frames of plates that the table does not.");
    expect(plain(view.rule)).toBe(
      "Neighbouring points may lie 10 % of focal length, 0.5 dioptre and 1 stop apart, plain steps because its resolution is not known.",
    );
  });

  it("says that nothing is left when all plates are served", () => {
    expect(coverageView({ ...coverage, framesMissing: 0, setups: [] }, "metric").sentence).toMatch(/^Nothing is left to measure/);
    expect(coverageView({ ...coverage, plates: null, framesMissing: 0, setups: [] }, "metric").sentence).toMatch(
      /^Nothing is worth/,
    );
  });

  it("stands on the kit page with the lens, beside the stop that the whole set can hold", () => {
    const summary = exampleDaySummary();
    const show = { show: summary.show, kit: summary.kit, dates: [summary.date], files: [] };
    const page = kitPage(show, [coverage], exampleContext(summary));
    expect(page.setups.rows.map((r) => r.head.text)).toEqual(["P35"]);
    expect(plain(page.setupsSentence)).toMatch(/^1 chart set-up on lens P35 would serve/);
    const slowest = Math.max(...summary.kit.lenses.flatMap((lens) => lens.widestT ?? []));
    expect(Number(page.set.find((f) => f.term === "The set can hold")?.value.slice(1))).toBeCloseTo(slowest, 1);
    expect(page.drawings.widest.svg).toContain("the set can hold");
  });
});
