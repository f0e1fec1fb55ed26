/** The derivatives that Newton's method steps by, against differences of the equation itself. */
import { describe, expect, it } from "vitest";
import { completeCanonical } from "../../src/optics/distortion/canonical.ts";
import { equationRoom, evaluateEquation } from "../../src/optics/distortion/equation.ts";

const MODELS = [
  completeCanonical(
    "brown-conrady",
    { k1: -2e-4, k2: 3e-7, k3: -1e-10, k4: 1e-4, k5: 2e-7, k6: 1e-10, p1: 4e-5, p2: -7e-5 },
    { direction: "undistort" },
  ),
  completeCanonical("division", { lambda: -1.5e-4 }, { direction: "undistort" }),
  completeCanonical(
    "anamorphic-even",
    { ax2: -1e-4, ax4: 2e-7, ay2: 5e-5, ay4: -1e-7, bx2: 4e-5, bx4: 1e-7, by2: -9e-5, by4: 3e-7 },
    { direction: "undistort" },
  ),
] as const;
const POINTS: readonly (readonly [number, number])[] = [
  [0, 0],
  [3, 0],
  [0, -4],
  [7, 5],
  [-9, 2],
  [-6, -8],
];
const STEP = 1e-5;

describe("the derivatives of the distortion equation", () => {
  it.each(MODELS)("equal central differences of $model at points of every quadrant, to 1e-8", (model) => {
    const [at, plus, minus] = [equationRoom(), equationRoom(), equationRoom()];
    for (const [x, y] of POINTS) {
      evaluateEquation(model, x, y, at);
      for (const [axis, dx, dy] of [
        [0, STEP, 0],
        [1, 0, STEP],
      ] as const) {
        evaluateEquation(model, x + dx, y + dy, plus);
        evaluateEquation(model, x - dx, y - dy, minus);
        for (const part of [0, 1] as const) {
          const slope = ((plus[part] as number) - (minus[part] as number)) / (2 * STEP);
          expect(
            Math.abs((at[2 + 2 * part + axis] as number) - slope),
            `d${"xy"[part]}'/d${"xy"[axis]} at ${x}, ${y}`,
          ).toBeLessThan(1e-8);
        }
      }
    }
  });
});
