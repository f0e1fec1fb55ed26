import { describe, expect, it } from "vitest";
import { type Files, logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2030-02-03";

function oneTake(log: string | null, note = "P50,2.8,3 m"): Files {
  return {
    ...SMALL_KIT,
    [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
    [`days/${DATE}/notes.csv`]: `slate,take,camera,clip,tc_in,tc_out,lens,stop,focus\n1,1,A,C1,10:00:00:00,10:00:02:00,${note}\n`,
    ...(log === null ? {} : { [`days/${DATE}/logs/a.csv`]: log }),
  };
}

function take(files: Files) {
  const [first] = summarise(files, DATE).summary.takes;
  if (first === undefined) throw new Error("no take");
  return first;
}

describe("a take's figures", () => {
  it("come from the log before the notes, and say so", () => {
    const found = take(oneTake(logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 48, () => "2.000,4.00")));
    expect(found.focus).toMatchObject({ nearestM: 2, farthestM: 2, source: "logged" });
    expect(found.tStop).toMatchObject({ widest: 4, deepest: 4, typical: 4, rangeStops: 0, source: "logged" });
    expect(found.focal).toEqual({ minMm: 50, maxMm: 50, source: "kit" });
  });

  it("come from the notes where there is no log, and there are then no pulls", () => {
    const found = take(oneTake(null));
    expect(found.focus).toMatchObject({ startM: 3, source: "noted" });
    expect(found.tStop?.widest).toBeCloseTo(2 ** 1.5, 12); // a label counts as its exact series value: 2.8 is 2^(3/2)
    expect(found.tStop?.source).toBe("noted");
    expect(found.pulls).toBeNull();
  });

  it("have the published depth of field of 50 mm at 2.8 and 3 m (reference CV12: 2778.58 to 3260.55 mm from the image plane)", () => {
    // tau 0.81: N = T sqrt(tau) = T 0.9, so that T 3.1111 is N 2.8
    const found = take(oneTake(logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 48, () => "3.000,3.11111111")));
    expect(found.depthOfField?.stopUsed).toBe("t-times-root-tau");
    expect(found.depthOfField?.shallowest?.nearM).toBeCloseTo(2.77858, 4);
    expect(Number(found.depthOfField?.shallowest?.farM)).toBeCloseTo(3.26055, 4);
  });

  it("take the lower middle of an even number of logged stops as typical", () => {
    const found = take(
      oneTake(logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 48, (i) => `3.000,${i < 24 ? "2.80" : "4.00"}`)),
    );
    expect(found.tStop?.typical).toBe(2.8);
    expect(found.tStop?.rangeStops).toBeCloseTo(2 * Math.log2(4 / 2.8), 12);
  });

  it("take single figures at frame floor((n-1)/2) of the n logged frames", () => {
    expect(take(oneTake(logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 48, () => "3.000,2.8"))).middleFrame).toBe(
      23,
    );
    expect(take(oneTake(logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:01:00", 5, () => "3.000,2.8"))).middleFrame).toBe(
      26,
    );
  });

  it("turn distances from the front of the lens into distances from the image plane, and refuse where the kit lacks the length", () => {
    const log = (lens: string) =>
      logText(["clip: C1", `lens: ${lens}`, "distance_from: front"], "focus_m,t", "10:00:00:00", 48, () => "2.850,2.8");
    expect(take(oneTake(log("P50"))).focus?.nearestM).toBeCloseTo(3, 9); // 2.850 m + 150 mm
    const refused = take(oneTake(log("P35"), "P35,2.8,3 m"));
    expect(refused.focus).toBeNull();
    expect(refused.depthOfField).toBeNull();
    expect(refused.take.track?.unknown.map((column) => [column.name, column.text(0)])).toEqual([["focus_m_from_front", "2.850"]]);
    expect(refused.findings.map((finding) => finding.code)).toContain("MATCH412");
  });

  it("reach infinity as the word inf, with no dioptres", () => {
    const found = take(
      oneTake(logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 48, (i) => `${i < 30 ? "4.000" : "inf"},2.8`)),
    );
    expect(found.focus).toMatchObject({ nearestM: 4, farthestM: "inf", reachesInfinity: true, extentDioptres: 0.25 });
  });

  it("count a logged value that is wider than the lens opens as a finding at its cell", () => {
    const text = logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 48, (i) => `3.000,${i === 9 ? "1.4" : "2.83"}`);
    const found = take(oneTake(text));
    // two key lines and the header stand before row 0, so that frame 9 is line 13; "10:00:00:09,3.000," is 18 characters
    expect(found.findings.find((finding) => finding.code === "CHECK705")).toMatchObject({ line: 13, column: 19, field: "t" });
  });
});
