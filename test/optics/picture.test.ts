/** The demo's chart stills as VFX would use them: the look is taken off, the chart is measured, and the look is put back. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { coefficientsAt } from "../../src/optics/calibration.ts";
import { canonicalDistortion } from "../../src/optics/distortion/canonical.ts";
import { equationRoom } from "../../src/optics/distortion/equation.ts";
import { fastMap } from "../../src/optics/distortion/fast-map.ts";
import { mapPoint } from "../../src/optics/distortion/map.ts";
import { type MapGrid, type MapUnits, pixelGrid } from "../../src/optics/distortion/map-grid.ts";
import { overscanOf } from "../../src/optics/distortion/overscan.ts";
import { canonicalShading, shadingFactor } from "../../src/optics/shading.ts";
import { exactStop } from "../../src/optics/stop-series.ts";
import { readCalibration } from "./example-logs.ts";
import { accepted } from "./lens-quantities.ts";
import { fitLine, lineMiddle, type Picture, psnr, readPng, warp } from "./warp.ts";

const DATA = join(import.meta.dirname, "../../data");
const AREA = { widthMm: 28.8, heightMm: 16.2 };
/** The chart: lines every 1.8 mm on a sensor without distortion, through its middle; every fourth is bold. */
const CHART_MM = 1.8;
/** Samples of the picture without the look for one of the recorded picture: what is put back is then hardly softened. */
const FINER = 3;
const STILLS = [
  { still: "days/2026-10-06/stills/14d-grid.png", lens: "K19", focalMm: 19, focusM: 1.5, stop: 5.6 },
  { still: "days/2026-10-08/stills/44c-grid.png", lens: "K34", focalMm: 34, focusM: 1.2, stop: 2.8 },
] as const;

describe.each(STILLS)("the chart still of lens $lens at $focusM m", ({ still, lens, focalMm, focusM, stop }) => {
  const recorded = readPng(join(DATA, still));
  const table = readCalibration(join(DATA, "kit/calibration", `${lens}.csv`));
  const request = { focalMm, focusDioptres: 1 / focusM, tStop: exactStop(stop) };
  const { coefficients, state } = accepted(coefficientsAt(table, request));
  const d = accepted(canonicalDistortion(table.convention, coefficients, focalMm));
  const shading = accepted(canonicalShading(table.convention, coefficients, focalMm));
  const inRecorded = pixelGrid(AREA, { widthPx: recorded.width, heightPx: recorded.height });
  const ideal = idealCanvas();

  /** The picture without the look: as large as all of the recorded frame needs, in finer samples. */
  function idealCanvas(): { readonly grid: MapGrid; readonly units: MapUnits; readonly picture: Picture } {
    const overscan = 1.02 * overscanOf(d, AREA, "ideal")!;
    const size = {
      widthPx: Math.ceil(recorded.width * FINER * overscan),
      heightPx: Math.ceil(recorded.height * FINER * overscan),
    };
    const pitch = AREA.widthMm / recorded.width / FINER;
    const { grid, units } = pixelGrid({ widthMm: size.widthPx * pitch, heightMm: size.heightPx * pitch }, size);
    const x = new Float64Array(grid.columns * grid.rows);
    const y = new Float64Array(grid.columns * grid.rows);
    fastMap(d, "recorded", grid, inRecorded.units, x, y);
    return { grid, units, picture: warp(recorded, x, y, grid.columns, grid.rows) };
  }

  /**
   * Every line of the chart that a picture has, measured between crossings, in pixels of the recorded picture. `reach` is how
   * far to look on both sides, as a part of the spacing: far for bent lines, near for straight ones, where a single code of the
   * ground would else outweigh a thin line.
   */
  function lines(picture: Picture, pixels: MapUnits, finer: number, reach: number) {
    const spacing = CHART_MM * pixels.xPerMm;
    const found = [];
    for (const upright of [false, true]) {
      const [acrossMiddle, alongMiddle] = upright ? [pixels.xAtMiddle, pixels.yAtMiddle] : [pixels.yAtMiddle, pixels.xAtMiddle];
      for (let n = -7; n <= 7; n++) {
        const points: [number, number][] = [];
        for (let segment = -8; segment < 8; segment++) {
          const place = (segment + 0.5) * CHART_MM;
          if (upright ? nearFigure(n * CHART_MM, place) : nearFigure(place, n * CHART_MM)) continue;
          const middle = segmentMiddle(
            picture,
            upright,
            alongMiddle + (segment + 0.5) * spacing,
            acrossMiddle + n * spacing,
            spacing,
            reach,
          );
          if (middle !== null) points.push([(segment + 0.5) * spacing, middle - acrossMiddle - n * spacing]);
        }
        if (points.length < 5) continue;
        const fit = fitLine(points);
        found.push({ largest: fit.largest / finer, middle: fit.middle / finer, slope: fit.slope, points: fit.points });
      }
    }
    return found;
  }

  it("is within the calibration that the still was made with", () => {
    expect(state).toEqual({ kind: "inside" });
  });

  it("has bent lines as recorded, and straight ones without the look: to 0.2 px, and where the chart has them", () => {
    const bent = lines(recorded, inRecorded.units, 1, 0.3);
    const straight = lines(ideal.picture, ideal.units, FINER, 0.15);
    expect(straight.length).toBeGreaterThanOrEqual(20);
    const worst = (of: readonly { readonly largest: number }[]) => Math.max(...of.map((line) => line.largest));
    console.log(
      `chart ${lens}: ${straight.length} lines, largest residual ${worst(straight).toFixed(3)} px, as recorded ${worst(bent).toFixed(2)} px; ` +
        `off place by ${Math.max(...straight.map((line) => Math.abs(line.middle))).toFixed(3)} px`,
    );
    expect(worst(bent)).toBeGreaterThan(0.5);
    for (const line of straight) {
      expect(line.largest).toBeLessThan(0.2);
      expect(Math.abs(line.middle)).toBeLessThan(0.2);
      expect(Math.abs(line.slope) * recorded.width).toBeLessThan(0.2);
    }
  });

  it("has even light once shading is taken off", () => {
    const fields: number[] = [];
    const room = equationRoom();
    const middles = (n: number) => Array.from({ length: n }, (_, i) => (i - n / 2 + 0.5) * CHART_MM);
    for (const yMm of middles(8)) {
      for (const xMm of middles(14)) {
        if (nearFigure(xMm, yMm)) continue;
        expect(mapPoint(d, "recorded", xMm, yMm, room)).toBe(true);
        const [rx, ry] = [room[0]!, room[1]!];
        const { xPerMm, xAtMiddle, yPerMm, yAtMiddle } = inRecorded.units;
        const [column, row] = [Math.round(rx * xPerMm + xAtMiddle), Math.round(ry * yPerMm + yAtMiddle)];
        if (column < 0 || row < 0 || column >= recorded.width || row >= recorded.height) continue;
        fields.push(linear(recorded.values[row * recorded.width + column]!) / shadingFactor(shading, rx, ry));
      }
    }
    expect(fields.length).toBeGreaterThan(60);
    // The chart is 0.8; one code is up to 1 % of the light in the dark corners.
    for (const field of fields) expect(Math.abs(field / 0.8 - 1)).toBeLessThan(0.012);
  });

  it("is the recorded picture again when the look is put back: 40 dB or better away from the border", () => {
    const { grid } = inRecorded;
    const x = new Float64Array(grid.columns * grid.rows);
    const y = new Float64Array(grid.columns * grid.rows);
    fastMap(d, "ideal", grid, ideal.units, x, y);
    const again = warp(ideal.picture, x, y, grid.columns, grid.rows);
    const decibels = psnr(recorded, again, 6);
    console.log(`chart ${lens}: put back at ${decibels.toFixed(1)} dB`);
    expect(decibels).toBeGreaterThan(40);
    // Without the lens the same way there and back would be far off.
    expect(psnr(recorded, warp(ideal.picture, ...plain(), grid.columns, grid.rows), 24)).toBeLessThan(25);

    function plain(): [Float64Array, Float64Array] {
      const at = (n: number, middle: number, idealMiddle: number) => (n - middle) * FINER + idealMiddle;
      return [
        x.map((_, i) => at(i % grid.columns, inRecorded.units.xAtMiddle, ideal.units.xAtMiddle)),
        y.map((_, i) => at(Math.floor(i / grid.columns), inRecorded.units.yAtMiddle, ideal.units.yAtMiddle)),
      ];
    }
  });
});

/** Mean middle of the line between two crossings, the crossings left out: single codes of eight bits even out. */
function segmentMiddle(
  picture: Picture,
  upright: boolean,
  along: number,
  near: number,
  spacing: number,
  reach: number,
): number | null {
  let sum = 0;
  let count = 0;
  const first = Math.round(along - 0.25 * spacing);
  const last = Math.round(along + 0.25 * spacing);
  if (first < 0 || last >= (upright ? picture.height : picture.width)) return null;
  for (let at = first; at <= last; at++) {
    const middle = lineMiddle(picture, upright, at, near, reach * spacing);
    if (middle === null || Number.isNaN(middle)) return null;
    sum += middle;
    count++;
  }
  return sum / count;
}

/** The chart has a ring in the middle and a dark square in each corner field; measurements keep away from them. */
function nearFigure(xMm: number, yMm: number): boolean {
  const onRing = Math.abs(Math.hypot(xMm, yMm) - 3.6) < 0.7;
  return onRing || (Math.abs(Math.abs(xMm) - 11.7) < 1.1 && Math.abs(Math.abs(yMm) - 6.3) < 1.1);
}

/** Light of a code value. @source IEC 61966-2-1 */
function linear(code: number): number {
  const v = code / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}
