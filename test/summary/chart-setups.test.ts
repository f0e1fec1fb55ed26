import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chooseSetups, isCovered, type MissingState } from "../../src/summary/chart-setups.ts";
import { plainReach, type Reach } from "../../src/summary/coverage-reach.ts";

function state(focusDioptres: number, more: Partial<MissingState> = {}): MissingState {
  return { focalMm: 50, focusDioptres, stops: 3, frames: 10, beyond: {}, ...more };
}

describe("the choice of chart set-ups", () => {
  it("takes the one that covers most first, and needs no more than the fewest on a line of states", () => {
    // half a dioptre between charts, so that each covers 0.25 to both sides: 0 to 1 in tenths needs ceil(11 / 5) = 3
    const line = Array.from({ length: 11 }, (_, i) => state(i / 10));
    const chosen = chooseSetups(line, plainReach());
    expect(chosen.map(({ frames }) => frames)).toEqual([50, 50, 10]);
  });

  it("counts frames, not states", () => {
    const [first] = chooseSetups([state(0), state(0.1), state(0.2), state(2, { frames: 1000 })], plainReach());
    expect(first?.state.focusDioptres).toBe(2);
  });

  it("asks for another chart at 10 % of focal length, half a dioptre or a whole stop, and not below half of that", () => {
    const reach = plainReach();
    const at = (change: Partial<MissingState>) => isCovered(state(1, change), state(1), reach);
    expect([at({ focalMm: 50 * 1.048 }), at({ focalMm: 50 * 1.05 })]).toEqual([true, false]); // sqrt(1.1) is 1.0488
    expect([at({ focusDioptres: 1.25 }), at({ focusDioptres: 1.26 })]).toEqual([true, false]);
    expect([at({ stops: 3.5 }), at({ stops: 3.6 })]).toEqual([true, false]);
    expect(at({ stops: null })).toBe(true);
  });

  it("trusts a chart less towards the outside, where nothing lies behind it", () => {
    const focus = { between: 1, below: 0.05, above: 0.1, tested: true };
    const reach: Reach = { ...plainReach(), focus };
    const chart = state(2, { beyond: { focus: 1 } });
    expect(isCovered(state(1.5, { beyond: { focus: 1 } }), chart, reach)).toBe(true);
    expect(isCovered(state(2.1, { beyond: { focus: 1 } }), chart, reach)).toBe(true);
    expect(isCovered(state(2.2, { beyond: { focus: 1 } }), chart, reach)).toBe(false);
    expect(isCovered(state(1.9, { beyond: { focus: -1 } }), chart, reach)).toBe(false);
  });

  it("covers every state, with fewer frames by each one chosen", () => {
    const states = fc.array(
      fc.record({
        focalMm: fc.integer({ min: 56, max: 160 }).map((n) => n / 2),
        focusDioptres: fc.integer({ min: 0, max: 100 }).map((n) => n / 50),
        stops: fc.integer({ min: 3, max: 15 }).map((n) => n / 3),
        frames: fc.integer({ min: 1, max: 500 }),
        beyond: fc.constant({}),
      }),
      { maxLength: 60 },
    );
    expect(() =>
      fc.assert(
        fc.property(states, (missing) => {
          const chosen = chooseSetups(missing, plainReach());
          const all = missing.every((one) => chosen.some((chart) => isCovered(one, chart.state, plainReach())));
          const falling = chosen.every(({ frames }, i) => frames > 0 && frames <= (chosen[i - 1]?.frames ?? frames));
          const frames = (list: readonly { readonly frames: number }[]) => list.reduce((sum, one) => sum + one.frames, 0);
          return all && falling && frames(chosen) === frames(missing);
        }),
      ),
    ).not.toThrow();
  });

  it("stays quick with thousands of states, and loses no frame", () => {
    const many = Array.from({ length: 6000 }, (_, i) =>
      state((i % 100) / 50, { focalMm: 28 + Math.floor(i / 100) / 2, frames: 1 }),
    );
    const chosen = chooseSetups(many, plainReach());
    expect(chosen.reduce((sum, { frames }) => sum + frames, 0)).toBe(6000);
  });
});
