import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { CalibrationResult } from "../../src/optics/calibration.ts";
import { coefficientsAt } from "../../src/optics/calibration.ts";
import { COEFFICIENTS } from "../../src/optics/convention.ts";
import { fNumberFor } from "../../src/optics/depth-of-field.ts";
import { canonicalDistortion } from "../../src/optics/distortion/canonical.ts";
import { distortionPercentAt } from "../../src/optics/distortion/percent.ts";
import { detectPulls } from "../../src/optics/focus-pull.ts";
import { isRefused } from "../../src/optics/refused.ts";
import { canonicalShading, shadingStopsAt } from "../../src/optics/shading.ts";
import {
  EXAMPLES,
  EXAMPLES_PRESENT,
  type ExampleCheck,
  type ExampleTake,
  readCalibration,
  readConvention,
  readExpected,
  readTable,
  readTakes,
} from "./example-logs.ts";

/** Figures in `*.expected.json` were computed independently of this project, from the folders and the formulas. */
const AREAS: Readonly<Record<string, { widthMm: number; heightMm: number }>> = {
  FULL: { widthMm: 28.16, heightMm: 15.84 },
  OPEN: { widthMm: 26.1, heightMm: 17.4 },
  SQZ: { widthMm: 20.88, heightMm: 17.4 },
};
const COC_MM: Readonly<Record<string, number>> = { FULL: 0.023, OPEN: 0.0205, SQZ: 0.0235 };

describe.skipIf(!EXAMPLES_PRESENT).each(["basic", "wide"] as const)(
  "the example show %s (skipped where it is not beside the project)",
  (show) => {
    const lenses = EXAMPLES_PRESENT ? readTable(join(EXAMPLES, show, "kit/lenses.csv")).rows : [];
    const takes = EXAMPLES_PRESENT ? readTakes(show).filter((take) => lenses.some((row) => row.get("lens") === take.lens)) : [];
    const lensOf = (take: ExampleTake) => lenses.find((row) => row.get("lens") === take.lens)!;
    const focalOf = (take: ExampleTake, frame: number) =>
      take.columns.get("focal_mm")?.[frame] ?? Number(lensOf(take).get("focal_mm"));

    const pullsOf = (take: ExampleTake) => {
      const lens = lensOf(take);
      const t = take.columns.get("t");
      const f = take.columns.get("f");
      const widest = (column: Float64Array | undefined) => (column ? Math.min(...column.filter((v) => v > 0)) : null);
      const used = fNumberFor({
        fStop: widest(f),
        tStop: widest(t),
        transmittance: lens.get("transmittance") ? Number(lens.get("transmittance")) : null,
      })!;
      const focal = Math.max(...Array.from(take.dioptres, (_, i) => focalOf(take, i)).filter((v) => v > 0));
      return detectPulls({
        dioptres: take.dioptres,
        deltaDioptres: (1000 * used.fNumber * COC_MM[take.mode]!) / focal ** 2,
        quantisation: 0,
        fps: take.rate.num / take.rate.denom,
        perSecond: take.captureFps,
      });
    };

    it("has takes to check", () => {
      expect(takes.length).toBeGreaterThan(10);
    });

    it.each(takes.map((take) => [take.path, take] as const))("finds the pulls of %s", (path, take) => {
      const pulls = pullsOf(take).map((p) => {
        const from = p.fromDioptres === 0 ? "inf" : 1 / p.fromDioptres;
        const to = p.toDioptres === 0 ? "inf" : 1 / p.toDioptres;
        return {
          startFrame: p.startFrame,
          frames: p.endFrame - p.startFrame,
          fromM: from,
          toM: to,
          extentDioptres: Math.abs(p.toDioptres - p.fromDioptres),
          peakDioptresPerSecond: p.peakDioptresPerSecond,
        };
      });
      const checks = readExpected(show, "pulls").filter((c) => c.path.startsWith(`${path}.pulls`));
      expect(checks.length).toBeGreaterThan(0);
      for (const check of checks) {
        if (/extentM|extentDepths/.test(check.path)) continue;
        const hit = /\.pulls(?:\[(\d+)\]\.(\w+))?$/.exec(check.path)!;
        const value = hit[1] === undefined ? pulls : (pulls[Number(hit[1])] as Record<string, unknown> | undefined)?.[hit[2]!];
        expectCheck(value, check);
      }
    });

    const middleOf = (take: ExampleTake) => {
      const logged = Array.from(take.dioptres.keys()).filter((i) => [...take.columns.values()].some((c) => !Number.isNaN(c[i]!)));
      return logged[Math.floor((logged.length - 1) / 2)]!;
    };

    const lookOf = (take: ExampleTake) => {
      const middle = middleOf(take);
      const area = AREAS[take.mode]!;
      const focalMm = focalOf(take, middle);
      const logged = Object.fromEntries(
        COEFFICIENTS.flatMap((name) => (take.columns.has(name) ? [[name, take.columns.get(name)![middle]!]] : [])),
      );
      const file = join(EXAMPLES, show, "kit/calibration", `${take.lens}.csv`);
      let convention = readConvention(take.keys);
      let result: CalibrationResult | null =
        Object.keys(logged).length > 0 ? { coefficients: logged, focalMm, state: { kind: "inside" }, missingCells: [] } : null;
      if (result === null && existsSync(file)) {
        const table = readCalibration(file);
        const tau = lensOf(take).get("transmittance");
        const tStop = take.columns.get("t")?.[middle] ?? (tau ? take.columns.get("f")![middle]! / Math.sqrt(Number(tau)) : null);
        const found = coefficientsAt(table, { focalMm, focusDioptres: take.dioptres[middle]!, tStop });
        convention = table.convention;
        result = isRefused(found) ? null : found;
      }
      if (result === null) return { distortionPercent: null, shadingStops: null, state: null };
      const d = canonicalDistortion(convention, result.coefficients, result.focalMm);
      const s = canonicalShading(convention, result.coefficients, result.focalMm);
      return {
        distortionPercent: isRefused(d) ? null : distortionPercentAt(d, area),
        shadingStops: isRefused(s) ? null : shadingStopsAt(s, area),
        state: result.state,
      };
    };

    it.each(takes.map((take) => [take.path, take] as const))("gives the distortion and shading of %s", (path, take) => {
      const look = lookOf(take);
      for (const [topic, key] of [
        ["distortion", "distortionPercent"],
        ["shading", "shadingStops"],
      ] as const) {
        for (const check of readExpected(show, topic).filter((c) => c.path.startsWith(`${path}.${key}`))) {
          const place = check.path.split(".")[2] as "corner" | "midSide" | "midTop" | undefined;
          expectCheck(place === undefined ? look[key] : look[key]?.[place], check, 1e-6);
        }
      }
    });
  },
);

/** `share`: the part of the check's own tolerance that must be enough; the formulas are exact, so far less than all of it is. */
function expectCheck(value: unknown, check: ExampleCheck, share = 1): void {
  if (check.near !== undefined)
    expect(Math.abs((value as number) - check.near), check.path).toBeLessThanOrEqual((check.tol ?? 0) * share + 1e-9);
  else if (check.from !== undefined) {
    expect(value, check.path).toBeGreaterThanOrEqual(check.from);
    expect(value, check.path).toBeLessThanOrEqual(check.to!);
  } else if (check.length !== undefined) expect(value, check.path).toHaveLength(check.length);
  else expect(value, check.path).toEqual(check.equal);
}
