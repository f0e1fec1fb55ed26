import { describe, expect, test } from "vitest";
import { dioptreLabelStep, distanceScale, floorFor, footTicks, metreTicks } from "../../src/chart/scales.ts";

describe("the distance scale", () => {
  const scale = distanceScale(74, 398, 0.72);

  test("has infinity on top and the nearest distance at the floor", () => {
    expect(scale.y(0)).toBe(74);
    expect(scale.y(0.72)).toBeCloseTo(398, 9);
    expect(scale.y(1 / 2)).toBeGreaterThan(scale.y(1 / 5));
  });

  test("gives equal dioptres equal heights", () => {
    // 6 m to 3 m and 3 m to 2 m are a sixth of a dioptre each.
    expect(scale.y(1 / 3) - scale.y(1 / 6)).toBeCloseTo(scale.y(1 / 2) - scale.y(1 / 3), 9);
    // (398 - 74) / 0.72 = 450 pixels a dioptre, so that a tenth is 45.
    expect(scale.y(0.3) - scale.y(0.2)).toBeCloseTo(45, 9);
  });

  test("cuts what leaves it at infinity and at the floor", () => {
    expect(scale.y(-0.01)).toBe(74);
    expect(scale.y(3)).toBe(398);
  });

  test("ends at the shallowest floor of the list that holds the take", () => {
    expect(1 / floorFor(1 / 5)).toBeCloseTo(4, 9);
    expect(1 / floorFor(1 / 1.7)).toBeCloseTo(1.4, 9);
    expect(1 / floorFor(1 / 1.4)).toBeCloseTo(1.4, 9);
    expect(1 / floorFor(1 / 0.69)).toBeCloseTo(0.5, 9);
    expect(1 / floorFor(1 / 0.36)).toBeCloseTo(0.35, 9);
  });
});

describe("ticks of the distance scale", () => {
  const floors = [4, 2, 1.4, 1, 0.7, 0.5, 0.35, 0.12];

  test.each(floors)("stand at least 20 pixels apart with a floor at %s m, in metres and in feet", (floor) => {
    const scale = distanceScale(74, 398, 1 / floor);
    for (const ticks of [metreTicks(scale), footTicks(scale)]) {
      expect(ticks[0]?.text).toBe("∞");
      expect(ticks.length).toBeGreaterThan(4);
      for (let i = 1; i < ticks.length; i++) {
        expect(scale.y(ticks[i]!.dioptres) - scale.y(ticks[i - 1]!.dioptres)).toBeGreaterThanOrEqual(20 - 1e-9);
      }
    }
  });

  test("are round metres, and feet with their inches", () => {
    const scale = distanceScale(74, 398, 1 / 1.4);
    expect(metreTicks(scale).map((t) => t.text)).toEqual(["∞", "20", "10", "5", "4", "3", "2.5", "2", "1.75", "1.5"]);
    const near = footTicks(distanceScale(0, 324, 1 / 0.2)).map((t) => t.text);
    expect(near).toContain("1");
    expect(near).toContain('9"');
  });

  test("leave 20 pixels between the labels of the dioptre border too", () => {
    // A floor of 0.35 m is 2.857 dioptres: a tenth is 11.3 pixels of 324, two tenths 22.7.
    expect(dioptreLabelStep(distanceScale(0, 324, 1 / 0.35))).toBe(2);
    expect(dioptreLabelStep(distanceScale(0, 324, 1 / 1.4))).toBe(1);
  });
});
