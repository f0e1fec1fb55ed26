/** Coefficients as the open files write them: Brown-Conrady, radius in mm on the recorded sensor. */
import type { BrownConradyTerms, CanonicalDistortion } from "../../optics/distortion/canonical.ts";
import type { CanonicalShading } from "../../optics/shading.ts";

/**
 * The same equation as Brown-Conrady, exactly; `null` when it is none. The division model is one with k4 = lambda and nothing
 * else. Even anamorphic terms are none, and neither are coefficients of the desqueezed picture.
 */
export function brownConrady(d: CanonicalDistortion): BrownConradyTerms | null {
  if (d.squeeze !== 1) return null;
  const none = { k1: 0, k2: 0, k3: 0, k4: 0, k5: 0, k6: 0, p1: 0, p2: 0 };
  if (d.model === "division") return { ...none, k4: d.lambda };
  if (d.model !== "brown-conrady") return null;
  const { k1, k2, k3, k4, k5, k6, p1, p2 } = d;
  return { k1, k2, k3, k4, k5, k6, p1, p2 };
}

/** As {@link brownConrady} without denominator; `null` when there is one: `lens.csv` has columns for k1 k2 k3 only. */
export function plainBrownConrady(d: CanonicalDistortion): BrownConradyTerms | null {
  const terms = brownConrady(d);
  return terms === null || terms.k4 !== 0 || terms.k5 !== 0 || terms.k6 !== 0 ? null : terms;
}

/** Light lost, brightness = 1 - (a1 r^2 + a2 r^4 + a3 r^6), r in mm; `null` for values of the desqueezed picture. */
export function lossOf(s: CanonicalShading): { readonly a1: number; readonly a2: number; readonly a3: number } | null {
  return s.squeeze === 1 ? { a1: 0 - s.b1, a2: 0 - s.b2, a3: 0 - s.b3 } : null;
}
