import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { slateExposures, takeExposure } from "../../src/summary/exposure.ts";
import { exampleTake } from "../fixtures/day-summary.ts";
import { type Files, logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2030-02-03";

/** Takes 1, 2, ... of slate 1, two seconds each; a log for those that have a logged T. */
function slate(rows: readonly { readonly t?: string; readonly cells: string; readonly camera?: string }[]): Files {
  const files: Record<string, string> = {
    ...SMALL_KIT,
    [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
  };
  const notes = rows.map(({ t, cells, camera = "A" }, i) => {
    if (t !== undefined) {
      const log = logText([`clip: C${i}`, "lens: P50"], "focus_m,t", `10:0${i}:00:00`, 48, () => `3.000,${t}`);
      files[`days/${DATE}/logs/${i}.csv`] = log;
    }
    return `1,${i + 1},${camera},C${i},10:0${i}:00:00,10:0${i}:02:00,P50,${cells}\n`;
  });
  const header = "slate,take,camera,clip,tc_in,tc_out,lens,stop,shutter,nd,ei,wb\n";
  return { ...files, [`days/${DATE}/notes.csv`]: header + notes.join("") };
}

function exposureOf(files: Files) {
  const { summary } = summarise(files, DATE);
  return { takes: summary.takes, slates: summary.slateExposure };
}

describe("the exposure of a slate", () => {
  it("is 0.770 stop apart with EI for CV63's two set-ups, T2.8 180 EI800 ND.6 and T4 172.8 EI500 ND.3 (numbers raw)", () => {
    const { slates } = exposureOf(
      slate([
        { t: "2.80", cells: ",180,0.6,800,5600" },
        { t: "4.00", cells: ",172.8,0.3,500,5600" },
      ]),
    );
    const [found] = slates;
    expect(found?.withEi?.spreadStops).toBeCloseTo(0.77, 3);
    expect(2 ** -(found?.withEi?.spreadStops ?? 0)).toBeCloseTo(0.587, 3);
    expect(found?.withEi?.brightest.address).toBe("a-1-1");
    expect(found?.withEi?.darkest.address).toBe("a-1-2");
    // without EI: -2 log2(4/2.8) = -1.0291, log2(172.8/180) = -0.0589, 0.3 less density is +0.9966; together -0.0915
    expect(found?.light?.spreadStops).toBeCloseTo(0.0915, 3);
    // and without the filters: 1.0291 + 0.0589
    expect(found?.beforeNd?.spreadStops).toBeCloseTo(1.088, 3);
    expect(found).toMatchObject({ slate: "1", cameras: ["A"], clips: 2, light: { clips: 2, leftOut: 0 } });
  });

  it("counts cameras together, and leaves out what is not recorded instead of taking it for none", () => {
    const { takes, slates } = exposureOf(
      slate([
        { cells: "4,180,none,800,5600" },
        { cells: "5.6,180,none,800,5600", camera: "B" },
        { cells: "8,180,,800,5600" },
        { cells: "8,180,none,,5600" },
      ]),
    );
    expect(takes.map((take) => take.exposure.missing)).toEqual([[], [], ["nd"], ["ei"]]);
    expect(takes[2]?.exposure).toMatchObject({ lightStops: null, withEiStops: null });
    expect(takes[3]?.exposure.withEiStops).toBeNull();
    // labels are exact: T4 to T5.6 is one stop, T4 to T8 two
    expect(slates[0]?.cameras).toEqual(["A", "B"]);
    expect(slates[0]?.withEi).toMatchObject({ clips: 2, leftOut: 2 });
    expect(slates[0]?.withEi?.spreadStops).toBeCloseTo(1, 12);
    expect(slates[0]?.light).toMatchObject({ clips: 3, leftOut: 1 });
    expect(slates[0]?.light?.spreadStops).toBeCloseTo(2, 12);
    expect(slates[0]?.beforeNd).toMatchObject({ clips: 4, leftOut: 0 });
  });

  it("has no spread where no take has all parts, and a noted range of stops is not one stop", () => {
    const { takes, slates } = exposureOf(slate([{ cells: "4-5.6,180,none,800," }, { cells: ",,,," }]));
    expect(takes[0]?.exposure.missing).toEqual(["stop"]);
    expect(takes[1]?.exposure.missing).toEqual(["stop", "shutter", "nd", "ei"]);
    expect(slates[0]).toMatchObject({ light: null, withEi: null, beforeNd: null, colourTemperature: null, clips: 2 });
  });

  it("has the colour-temperature shift in mired (CV60: 3092 K to 5600 K is 144.8 mired)", () => {
    const { slates } = exposureOf(slate([{ cells: "4,,,,5600" }, { cells: "4,,,,3092" }, { cells: "4,,,," }]));
    expect(slates[0]?.colourTemperature).toMatchObject({ lowestK: 3092, highestK: 5600, clips: 2, leftOut: 1 });
    expect(slates[0]?.colourTemperature?.shiftMired).toBeCloseTo(144.84, 2);
  });

  it("counts an off-speed take's shutter at the capture rate: 180 degrees at 48 frames is one stop less", () => {
    const at = (captureFps: number) =>
      takeExposure({
        tStop: { widest: 4, deepest: 4, typical: 4, rangeStops: 0, source: "logged" },
        shutterDeg: 180,
        ndStops: 0,
        ei: 800,
        take: { captureFps },
      }).lightStops ?? Number.NaN;
    expect(at(24) - at(48)).toBeCloseTo(1, 12);
  });

  it("is 0 over one take, whatever it is", () => {
    const positive = fc.double({ min: 0.1, max: 4000, noNaN: true });
    expect(() =>
      fc.assert(
        fc.property(
          positive,
          positive,
          fc.double({ min: 0, max: 12, noNaN: true }),
          positive,
          positive,
          (t, shutterDeg, nd, ei, k) => {
            const take = exampleTake("a-12-2");
            const tStop = { widest: t, deepest: t, typical: t, rangeStops: 0, source: "noted" as const };
            const exposure = takeExposure({ tStop, shutterDeg, ndStops: nd, ei, take: take.take });
            const [found] = slateExposures([{ ...take, exposure, whiteBalanceK: k }]);
            const spreads = [found?.light, found?.withEi, found?.beforeNd].map((spread) => spread?.spreadStops);
            return [...spreads, found?.colourTemperature?.shiftMired].every((spread) => spread === 0);
          },
        ),
      ),
    ).not.toThrow();
  });
});
