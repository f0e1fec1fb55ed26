import { describe, expect, it } from "vitest";
import { logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2030-02-03";

/** A second at 3 m and a second at 5 m, T3.1111 with tau 0.81: N 2.8. Frames 44 to 47 are not logged. */
function subject(cell: string, log = true) {
  const text = logText(
    ["clip: C1", "lens: P50"],
    "focus_m,t",
    "10:00:00:00",
    44,
    (i) => `${i < 24 ? "3.000" : "5.000"},3.11111111`,
  );
  const files = {
    ...SMALL_KIT,
    [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
    [`days/${DATE}/notes.csv`]: `slate,take,camera,clip,tc_in,tc_out,lens,subject_m\n1,1,A,C1,10:00:00:00,10:00:02:00,P50,${cell}\n`,
    ...(log ? { [`days/${DATE}/logs/a.csv`]: text } : {}),
  };
  return summarise(files, DATE).summary.takes[0]?.subject;
}

describe("the noted subject", () => {
  it("is outside where it lies beyond the depth of field (CV12: 2.779 to 3.261 m at 3 m), not-logged frames apart", () => {
    // at 5 m the near limit is about 4.40 m, so that 3.2 m is out of focus on the 20 logged frames there
    const found = subject("3.20");
    expect(found).toMatchObject({ distanceM: 3.2, framesInside: 24, framesOutside: 20, framesUnknown: 4 });
    expect(found?.secondsOutside).toBeCloseTo(20 / 24, 12);
  });

  it("is outside on both sides: 2.77 m is before the near limit, 3.27 m behind the far one", () => {
    expect(subject("2.77")).toMatchObject({ framesInside: 0, framesOutside: 44 });
    expect(subject("2.79")).toMatchObject({ framesInside: 24, framesOutside: 20 });
    expect(subject("3.25")).toMatchObject({ framesInside: 24, framesOutside: 20 });
    expect(subject("3.27")).toMatchObject({ framesInside: 0, framesOutside: 44 });
  });

  it("is not counted without a noted distance or without a log", () => {
    expect(subject("")).toBeNull();
    expect(subject("3.20", false)).toBeNull();
  });
});
