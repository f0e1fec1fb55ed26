import { describe, expect, it } from "vitest";
import { detectPulls, type FocusPull } from "../../src/optics/focus-pull.ts";
import { seriesOf } from "./pull-series.ts";

/** f 50 mm, N 2.8, c 0.025 mm: N c / f^2 = 2.8 x 0.025 / 2500 per mm = 0.028 dpt. */
const DELTA = 0.028;

function pullsOf(dioptres: Float64Array, change: Partial<Parameters<typeof detectPulls>[0]> = {}): readonly FocusPull[] {
  return detectPulls({ dioptres, deltaDioptres: DELTA, quantisation: 0, fps: 24, perSecond: 24, ...change });
}

describe("a follow", () => {
  it("is one pull when focus moves for longer than three seconds without a hold", () => {
    // 20 delta in 6 s: 3.3 delta a second, which is never within 0.3 delta for a quarter of a second.
    const series = Float64Array.from(
      { length: 48 + 144 + 48 },
      (_, i) => 0.2 + 20 * DELTA * Math.min(1, Math.max(0, (i - 47) / 144)),
    );
    const pulls = pullsOf(series);
    expect(pulls).toHaveLength(1);
    expect(pulls[0]!.follow).toBe(true);
    expect(pulls[0]!.meanDioptresPerSecond).toBeCloseTo((20 * DELTA) / 6, 1);
  });

  it("is one pull also when it creeps slowly enough to look held for a quarter of a second", () => {
    // 8 delta in 10 s: 0.8 delta a second, 0.2 delta in a quarter of a second.
    const series = Float64Array.from(
      { length: 48 + 240 + 48 },
      (_, i) => 0.2 + 8 * DELTA * Math.min(1, Math.max(0, (i - 47) / 240)),
    );
    const pulls = pullsOf(series);
    expect(pulls).toHaveLength(1);
    expect(pulls[0]!.follow).toBe(true);
    expect(pulls[0]!.toDioptres - pulls[0]!.fromDioptres).toBeCloseTo(8 * DELTA, 6);
  });

  it("that fills the whole take goes from the first to the last sample", () => {
    const series = Float64Array.from({ length: 200 }, (_, i) => 0.2 + (10 * DELTA * i) / 199);
    const [pull, ...rest] = pullsOf(series);
    expect(rest).toEqual([]);
    expect([pull!.startFrame, pull!.endFrame]).toEqual([0, 199]);
    expect(pull!.toDioptres - pull!.fromDioptres).toBeCloseTo(10 * DELTA, 9);
  });

  it("is not a pull of two seconds", () => {
    expect(
      pullsOf(
        seriesOf(3, [
          { hold: 3, frames: 40 },
          { to: 1, frames: 48 },
          { hold: 1, frames: 40 },
        ]),
      )[0]!.follow,
    ).toBe(false);
  });
});

describe("speeds", () => {
  const series = seriesOf(3, [
    { hold: 3, frames: 40 },
    { to: 1.5, frames: 24 },
    { hold: 1.5, frames: 40 },
  ]);

  it("CV113: peak is the largest central difference over three frames", () => {
    expect(pullsOf(series)[0]!.peakDioptresPerSecond).toBeCloseTo(0.4988, 3);
  });

  it("are at the capture rate, and double when the camera ran at twice the rate", () => {
    const [slow] = pullsOf(series);
    const [fast] = pullsOf(series, { perSecond: 48 });
    expect(fast!.peakDioptresPerSecond).toBeCloseTo(2 * slow!.peakDioptresPerSecond, 12);
    expect(fast!.meanDioptresPerSecond).toBeCloseTo(2 * slow!.meanDioptresPerSecond, 12);
    expect(fast!.startFrame).toBe(slow!.startFrame);
  });

  it("of a jump from one frame to the next are half the jump a frame", () => {
    const jump = Float64Array.from({ length: 60 }, (_, i) => (i < 30 ? 0.3 : 0.5));
    const [pull] = pullsOf(jump);
    expect([pull!.startFrame, pull!.endFrame]).toEqual([29, 30]);
    expect(pull!.peakDioptresPerSecond).toBeCloseTo((0.2 / 2) * 24, 9);
    expect(pull!.meanDioptresPerSecond).toBeCloseTo(0.2 * 24, 9);
  });
});

describe("the log", () => {
  const series = seriesOf(3, [
    { hold: 3, frames: 48 },
    { to: 1.5, frames: 24 },
    { hold: 1.5, frames: 48 },
  ]);

  it("splits at a gap: a gap in a hold changes nothing, a pull into a gap ends at its last sample", () => {
    const inHold = series.slice();
    inHold.fill(Number.NaN, 10, 20);
    expect(pullsOf(inHold)).toHaveLength(1);
    const inPull = series.slice();
    inPull.fill(Number.NaN, 58, 62);
    const pulls = pullsOf(inPull);
    expect(pulls.map((p) => [p.startFrame, p.endFrame])).toEqual([
      [48, 57],
      [62, expect.any(Number)],
    ]);
    expect(pulls[0]!.toDioptres).toBe(inPull[57]);
  });

  it("with a gap over a whole pull has no pull: nobody saw it", () => {
    const gap = series.slice();
    gap.fill(Number.NaN, 45, 75);
    expect(pullsOf(gap)).toEqual([]);
  });

  it("of every third frame finds the same pull, at frames of the take", () => {
    const sparse = series.map((x, i) => (i % 3 === 0 ? x : Number.NaN));
    const [pull, ...rest] = pullsOf(sparse);
    expect(rest).toEqual([]);
    expect(Math.abs(pull!.startFrame - 48)).toBeLessThanOrEqual(3);
    expect(pull!.startFrame % 3).toBe(0);
    expect(pull!.toDioptres).toBeCloseTo(1 / 1.5, 12);
    expect(Math.abs(pull!.peakDioptresPerSecond - 0.4988)).toBeLessThan(0.02);
  });

  it("of a coarse encoder makes no pulls of its steps", () => {
    const step = 0.02;
    const wander = Float64Array.from({ length: 240 }, (_, i) => step * Math.round((0.4 + 0.02 * Math.sin(i / 20)) / step));
    expect(pullsOf(wander, { deltaDioptres: 0.015, quantisation: 0 }).length).toBeGreaterThan(0);
    expect(pullsOf(wander, { deltaDioptres: 0.015, quantisation: step })).toEqual([]);
  });

  it("with one wild sample makes no pull of it", () => {
    const wild = new Float64Array(100).fill(0.4);
    wild[50] = 3;
    expect(pullsOf(wild)).toEqual([]);
  });

  it("without a depth of field to measure by still gives a pull", () => {
    expect(pullsOf(series, { deltaDioptres: Number.NaN })).toHaveLength(1);
  });
});
