import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { detectMoves, detectPulls, type FocusPull } from "../../src/optics/focus-pull.ts";
import { normalNoise, pullSeries, seriesOf } from "./pull-series.ts";

/** f 50 mm, N 2.8, c 0.025 mm: N c / f^2 = 2.8 x 0.025 / 2500 per mm = 0.028 dpt. */
const DELTA = 0.028;

function pullsOf(dioptres: Float64Array, change: Partial<Parameters<typeof detectPulls>[0]> = {}): readonly FocusPull[] {
  return detectPulls({ dioptres, deltaDioptres: DELTA, quantisation: 0, fps: 24, perSecond: 24, ...change });
}

describe("pulls", () => {
  it("CV111: start at the last held frame and end at the first held frame", () => {
    const [first, second, ...rest] = pullsOf(pullSeries());
    expect(rest).toEqual([]);
    expect(first!.startFrame).toBeGreaterThanOrEqual(47);
    expect(first!.startFrame).toBeLessThanOrEqual(48);
    expect(first!.endFrame).toBeGreaterThanOrEqual(69);
    expect(first!.endFrame).toBeLessThanOrEqual(72);
    // Source: reference value 119 and 131 for the second pull; the series has its last held frame at index 119 and its end at 131.
    expect(second!.startFrame).toBe(119);
    expect(second!.endFrame).toBe(131);
  });

  it("CV111: two pulls in each of 200 noisy runs at 0.05 and 0.1 delta", () => {
    for (const deviation of [0.05, 0.1]) {
      const counts = Array.from({ length: 200 }, (_, seed) => {
        const noise = normalNoise(seed + 1);
        return pullsOf(pullSeries().map((x) => x + deviation * DELTA * noise())).length;
      });
      expect(counts.filter((count) => count === 2)).toHaveLength(200);
    }
  });

  it("keep their distances and frames under noise of 0.1 delta", () => {
    for (let seed = 1; seed <= 50; seed++) {
      const noise = normalNoise(seed);
      const [first, second] = pullsOf(pullSeries().map((x) => x + 0.1 * DELTA * noise()));
      expect(Math.abs(first!.fromDioptres - 1 / 3)).toBeLessThan(0.1 * DELTA);
      expect(Math.abs(first!.toDioptres - 1 / 1.5)).toBeLessThan(0.1 * DELTA);
      expect(Math.abs(second!.toDioptres - 1 / 6)).toBeLessThan(0.15 * DELTA);
      expect(Math.abs(first!.startFrame - 48)).toBeLessThanOrEqual(3);
      expect(Math.abs(second!.endFrame - 131)).toBeLessThanOrEqual(3);
    }
  });

  it("are none in a take that holds, is empty, or was not logged", () => {
    expect(pullsOf(new Float64Array(100).fill(0.4))).toEqual([]);
    expect(pullsOf(new Float64Array(0))).toEqual([]);
    expect(pullsOf(new Float64Array(100).fill(Number.NaN))).toEqual([]);
  });

  it("do not depend on the offset in dioptres, and mirror when time runs backwards", () => {
    const series = seriesOf(3, [
      { hold: 3, frames: 30 },
      { to: 1.5, frames: 20 },
      { hold: 1.5, frames: 30 },
    ]);
    const [forward] = pullsOf(series);
    const [backward] = pullsOf(series.slice().reverse());
    const [moved] = pullsOf(series.map((x) => x + 1));
    expect(moved!.startFrame).toBe(forward!.startFrame);
    expect(backward!.fromDioptres).toBeCloseTo(forward!.toDioptres, 12);
    expect(backward!.startFrame).toBe(series.length - 1 - forward!.endFrame);
    expect(backward!.peakDioptresPerSecond).toBeCloseTo(forward!.peakDioptresPerSecond, 12);
  });

  it("there and back without a hold are two, split at the extreme", () => {
    const there = seriesOf(3, [
      { hold: 3, frames: 40 },
      { to: 1.5, frames: 12 },
      { to: 3, frames: 12 },
      { hold: 3, frames: 40 },
    ]);
    const pulls = pullsOf(there);
    expect(pulls).toHaveLength(2);
    // The extreme is the last frame of the way there: index 40 + 12 - 1.
    expect(pulls[0]!.endFrame).toBe(51);
    expect(pulls[1]!.startFrame).toBe(51);
    expect(pulls[0]!.toDioptres).toBe(1 / 1.5);
    expect(pulls[1]!.fromDioptres).toBe(1 / 1.5);
    expect(pulls[1]!.toDioptres).toBeCloseTo(1 / 3, 12);
  });

  it("with a hold of half a second between are two, whichever way the second goes", () => {
    for (const last of [1.2, 4]) {
      const series = seriesOf(3, [
        { hold: 3, frames: 40 },
        { to: 2, frames: 10 },
        { hold: 2, frames: 12 },
        { to: last, frames: 10 },
        { hold: last, frames: 40 },
      ]);
      const pulls = pullsOf(series);
      expect(pulls.map((p) => [p.fromDioptres, p.toDioptres].map((x) => Math.round(1000 / x)))).toEqual([
        [3000, 2000],
        [2000, last * 1000],
      ]);
    }
  });

  it("to infinity end at exactly 0 dioptres", () => {
    const series = seriesOf(2, [
      { hold: 2, frames: 30 },
      { to: Number.POSITIVE_INFINITY, frames: 20 },
      { hold: Number.POSITIVE_INFINITY, frames: 30 },
    ]);
    expect(pullsOf(series)[0]!.toDioptres).toBe(0);
  });

  it("smaller than the one-sided depth are trims, counted beside the pulls", () => {
    const series = Float64Array.from({ length: 120 }, (_, i) => 0.4 + (i < 50 ? 0 : i > 60 ? 0.8 : (0.8 * (i - 50)) / 10) * DELTA);
    const moves = detectMoves({ dioptres: series, deltaDioptres: DELTA, quantisation: 0, fps: 24, perSecond: 24 });
    expect(moves).toEqual({ pulls: [], trims: 1 });
  });

  it("leave a twitch that comes back uncounted", () => {
    const twitch = new Float64Array(100).fill(0.4);
    twitch.fill(0.4 + 0.8 * DELTA, 50, 53);
    expect(detectMoves({ dioptres: twitch, deltaDioptres: DELTA, quantisation: 0, fps: 24, perSecond: 24 })).toEqual({
      pulls: [],
      trims: 0,
    });
  });

  it("start where focus left, from the distance it had crept to, after a long hold that crept by less than half a depth", () => {
    const crept = Float64Array.from(
      { length: 400 },
      (_, i) => 0.4 + DELTA * (i < 240 ? 0 : i < 300 ? (0.4 * (i - 240)) / 60 : i < 348 ? 0.4 : Math.min(10, 0.4 + i - 347)),
    );
    const [pull, ...rest] = pullsOf(crept);
    expect(rest).toEqual([]);
    expect(pull!.startFrame).toBe(347);
    expect(pull!.fromDioptres).toBeCloseTo(0.4 + 0.4 * DELTA, 9);
  });

  it("in metres mislead: 10 to 20 m is two depths, 1.0 to 1.1 m three and a quarter", () => {
    const far = pullsOf(
      seriesOf(10, [
        { hold: 10, frames: 30 },
        { to: 20, frames: 12 },
        { hold: 20, frames: 30 },
      ]),
    );
    const near = pullsOf(
      seriesOf(1, [
        { hold: 1, frames: 30 },
        { to: 1.1, frames: 12 },
        { hold: 1.1, frames: 30 },
      ]),
    );
    expect(Math.abs(far[0]!.toDioptres - far[0]!.fromDioptres)).toBeCloseTo(0.05, 9);
    expect(Math.abs(near[0]!.toDioptres - near[0]!.fromDioptres)).toBeCloseTo(1 - 1 / 1.1, 9);
  });
});

describe("for any series of holds and moves of at least two depths", () => {
  it("there are as many pulls as moves, in order, each from hold to hold", () => {
    const move = fc.record({
      depths: fc.integer({ min: 2, max: 30 }),
      up: fc.boolean(),
      frames: fc.integer({ min: 4, max: 40 }),
      hold: fc.integer({ min: 12, max: 60 }),
    });
    fc.assert(
      fc.property(fc.array(move, { minLength: 1, maxLength: 6 }), (moves) => {
        let at = 10;
        const levels = [at];
        const values: number[] = new Array<number>(30).fill(at);
        for (const m of moves) {
          const to = at + (m.up ? 1 : -1) * m.depths * DELTA;
          for (let i = 1; i <= m.frames; i++) values.push(at + ((to - at) * i) / m.frames);
          for (let i = 0; i < m.hold; i++) values.push(to);
          at = to;
          levels.push(at);
        }
        const pulls = pullsOf(Float64Array.from(values));
        expect(pulls).toHaveLength(moves.length);
        pulls.forEach((p, i) => {
          expect(p.fromDioptres).toBeCloseTo(levels[i]!, 9);
          expect(p.toDioptres).toBeCloseTo(levels[i + 1]!, 9);
        });
      }),
      { numRuns: 200, seed: 20310506 },
    );
  });
});
