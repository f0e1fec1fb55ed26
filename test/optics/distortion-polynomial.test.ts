import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluatePolynomial, firstNonPositive, multiplyPolynomials } from "../../src/optics/distortion/polynomial.ts";

describe("the first place where a polynomial is no longer positive", () => {
  it("is the smallest positive root, whatever lies further out", () => {
    // (1 - x/2)(1 - x/3)(1 - x/5)
    const c = [2, 3, 5].reduce<number[]>((p, root) => multiplyPolynomials(p, [1, -1 / root]), [1]);
    expect(firstNonPositive(c)).toBeCloseTo(2, 12);
  });

  it("is found between two roots that lie close together", () => {
    const c = multiplyPolynomials([1, -1 / 7], [1, -1 / 7.0001]);
    expect(firstNonPositive(c)).toBeCloseTo(7, 3);
  });

  it("is Infinity for a polynomial without positive roots", () => {
    expect(firstNonPositive([1])).toBe(Number.POSITIVE_INFINITY);
    expect(firstNonPositive([1, 2, 3])).toBe(Number.POSITIVE_INFINITY);
    expect(firstNonPositive([1, -1, 1])).toBe(Number.POSITIVE_INFINITY);
    expect(firstNonPositive([1, 0, 0, 0])).toBe(Number.POSITIVE_INFINITY);
  });

  it("keeps its precision when powers differ by many decades, as coefficients in mm do", () => {
    // 1 - (x / 400)^3
    expect(firstNonPositive([1, 0, 0, -1 / 400 ** 3])).toBeCloseTo(400, 9);
  });

  it("has no sign change before it for any polynomial", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 1, maxLength: 7 }), (rest) => {
        const c = [1, ...rest];
        const root = firstNonPositive(c);
        const end = Math.min(root * (1 - 1e-9), 50);
        const values = Array.from({ length: 201 }, (_, i) => evaluatePolynomial(c, (end * i) / 200));
        expect(Math.min(...values)).toBeGreaterThan(-1e-9);
        if (root < 1e6)
          expect(Math.abs(evaluatePolynomial(c, root))).toBeLessThan(
            1e-6 * c.reduce((sum, v, i) => sum + Math.abs(v) * root ** i, 0),
          );
      }),
      { numRuns: 500, seed: 3 },
    );
  });
});
