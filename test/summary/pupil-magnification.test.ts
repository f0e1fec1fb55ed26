/** The depth of field of a lens whose pupil magnification the kit gives, by hand from the published formula. */
import { describe, expect, it } from "vitest";
import { lensFields } from "../../src/export/vfx/lens-fields.ts";
import { depthBasis } from "../../src/view/take/take-setup.ts";
import { logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2031-05-06";
const DAY = `days/${DATE}`;

function takeWith(pupil: string) {
  const files = {
    ...SMALL_KIT,
    "kit/lenses.csv": `lens,kind,focal_mm,pupil_magnification\nP50,prime,50,${pupil}\n`,
    [`${DAY}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
    [`${DAY}/notes.csv`]: "slate,take,camera,tc_in,tc_out,lens\n1,1,A,10:00:00:00,10:00:00:04,P50\n",
    [`${DAY}/logs/a.csv`]: logText(["slate: 1", "take: 1", "camera: A"], "focus_m,f,focal_mm", "10:00:00:00", 4, () => "0.4,4,50"),
  };
  const { summary, findings } = summarise(files, DATE);
  const [take] = summary.takes;
  if (take === undefined) throw new Error("there is no take");
  return { take, findings };
}

describe("a lens with a pupil magnification", () => {
  // P. van Walree, "Derivation of the DOF equations": m_near = P (f m + c N) / (P f - c N), m_far = P (f m - c N) / (P f + c N).
  // f 50, D 400, N 4, c 0.025, P 2: s = (400 + sqrt(400 x 200)) / 2 = 341.42136, v = 58.57864, m = 50 / 291.42136 = 0.1715729,
  // f m = 8.578644, c N = 0.1. m_near = 2 x 8.678644 / 99.9 = 0.1737466, x = 50 (1 + 1 / m_near) = 337.7760, near = x + v = 396.3546.
  // m_far = 2 x 8.478644 / 100.1 = 0.1694035, x = 345.1534, far = 403.7320.
  it("has the limits of the published formula, for the take and for each frame", () => {
    const { take } = takeWith("2");
    expect(take.depthOfField?.shallowest?.nearM).toBeCloseTo(0.396355, 5);
    expect(take.depthOfField?.shallowest?.farM).toBeCloseTo(0.403732, 5);
  });

  it("of one has those of a thin lens: 1/near, 1/far = 1/s + and - (1/H0)(1 - f/s)", () => {
    // H0 = 2500 / 0.1 = 25000; 1 - f/s = 0.8535534; 1/s = 0.002928932; the difference 0.00003414214.
    // x = 337.4871 and 345.4478; + v = 396.0657 and 404.0265.
    for (const pupil of ["1", ""]) {
      const { take } = takeWith(pupil);
      expect(take.depthOfField?.shallowest?.nearM).toBeCloseTo(0.396066, 5);
      expect(take.depthOfField?.shallowest?.farM).toBeCloseTo(0.404026, 5);
    }
  });

  it("is named where the depth's sources are: on the take page and in the description of lens.csv", () => {
    const { take } = takeWith("2");
    expect(depthBasis(take, true)).toContain("Pupil magnification 2.00 (kit).");
    const near = lensFields(take).find(({ name }) => name === "near_m");
    expect(near?.provenance).toContain("pupil magnification 2 from the kit");
    expect(depthBasis(takeWith("").take, true)).not.toContain("Pupil");
  });

  it("that no lens has is an error, and counts as not given", () => {
    for (const pupil of ["0", "-1", "200"]) {
      const { take, findings } = takeWith(pupil);
      expect(findings.map((f) => `${f.code} ${f.field}`)).toContain("CSV123 pupil_magnification");
      expect(take.depthOfField?.shallowest?.nearM).toBeCloseTo(0.396066, 5);
    }
  });
});
