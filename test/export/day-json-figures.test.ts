import { describe, expect, it } from "vitest";
import { dayJson } from "../../src/export/day-json.ts";
import { type Files, logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2030-02-03";

const FILES: Files = {
  ...SMALL_KIT,
  [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
  [`days/${DATE}/notes.csv`]:
    "slate,take,camera,clip,tc_in,tc_out,lens,shutter,nd,ei,subject_m\n1,1,A,C1,10:00:00:00,10:00:04:00,P50,180,none,800,3\n",
  [`days/${DATE}/logs/a.csv`]: logText(["clip: C1", "lens: P50"], "focus_m,t", "10:00:00:00", 96, (i) => {
    const close = Math.min(1, Math.max(0, (i - 23) / 24));
    return `${close === 0 ? "inf" : (1 / close).toFixed(6)},4`;
  }),
};

describe("day.json", () => {
  it("carries exposure, breathing, subject and overscan after the contract's keys", () => {
    const json = JSON.parse(dayJson(summarise(FILES, DATE).summary, { name: "lens-daybook", version: "0" }));
    expect(Object.keys(json).slice(-2)).toEqual(["rows", "slateExposure"]);
    const [take] = json.takes;
    const keys = Object.keys(take);
    expect(keys.slice(keys.indexOf("remarks") + 1)).toEqual([
      "calibration",
      "exposure",
      "subject",
      "calibrationArea",
      "overscan",
      "overscanReason",
    ]);
    // -2 log2 4 + log2(180 / 360 / 24) = -4 - 5.585, and 3 stops for EI 800
    expect(take.exposure.lightStops).toBeCloseTo(-9.585, 3);
    expect(take.exposure.withEiStops).toBeCloseTo(-6.585, 3);
    expect(take.subject.framesInside + take.subject.framesOutside + take.subject.framesUnknown).toBe(96);
    expect(take).toMatchObject({
      calibrationArea: null,
      overscan: null,
      overscanReason: "the kit does not say the recorded resolution",
    });
    expect(Object.keys(take.pulls[0]).slice(-3)).toEqual(["peakDioptresPerSecond", "breathingPercent", "breathingFrom"]);
    expect(json.slateExposure[0].light.spreadStops).toBe(0);
  });
});
