import { describe, expect, it } from "vitest";
import { progress, sumOfDays } from "../../src/summary/progress.ts";
import type { DayTotals } from "../../src/summary/types.ts";
import { digestOf, scheduled } from "../fixtures/show-digests.ts";

const totals = (parts: Partial<DayTotals>): DayTotals => ({
  ...{ slates: 0, takes: 0, clips: 0, circled: 0, eighthsScheduled: null, eighthsCompleted: null, mediaFrames: {} },
  ...{ mediaSeconds: 0, circledSeconds: 0, shootingRatio: null, framesExpected: 0, framesLogged: 0 },
  ...parts,
});

/** Scene 1 has 8 eighths and is completed on day 1; scene 2 has 19, is begun on day 1 and ends on day 3; day 2 has no day file. */
const DAYS = [
  digestOf("2031-05-06", 1, {
    record: { scheduled: [scheduled("1", 8), scheduled("2", 19)], completed: ["1"], part: ["2"], notShot: [] },
    totals: totals({
      slates: 4,
      takes: 9,
      circled: 3,
      eighthsScheduled: 27,
      eighthsCompleted: 8,
      mediaSeconds: 300,
      circledSeconds: 100,
      shootingRatio: 3,
    }),
    cameraSeconds: { A: 200, B: 100 },
    findingCounts: { error: 1, check: 2, remark: 9 },
  }),
  digestOf("2031-05-07", 2, {
    totals: totals({ slates: 2, takes: 3, circled: 0, mediaSeconds: 60 }),
    cameraSeconds: { C: 60 },
  }),
  digestOf("2031-05-08", 3, {
    record: { scheduled: [scheduled("2", 10)], completed: ["2"], part: [], notShot: [] },
    totals: totals({
      slates: 3,
      takes: 5,
      circled: 2,
      eighthsScheduled: 10,
      eighthsCompleted: 10,
      mediaSeconds: 240,
      circledSeconds: 200,
      shootingRatio: 1.2,
    }),
    cameraSeconds: { A: 240 },
  }),
];
const days = progress(DAYS);

describe("progress of a show", () => {
  it("adds set-ups, takes, circled takes and each camera's media day by day", () => {
    expect(days.map((d) => [d.toDate.setups, d.toDate.takes, d.toDate.circled, d.toDate.mediaSeconds])).toEqual([
      [4, 9, 3, 300],
      [6, 12, 3, 360],
      [9, 17, 5, 600],
    ]);
    expect(days[2]?.toDate.cameraSeconds).toEqual({ A: 440, B: 100, C: 60 });
  });

  it("counts pages by scene: one that goes on another day once, with the most that one day scheduled of it", () => {
    // day 1: 27 scheduled, 8 completed, 19 remain; day 3: scene 2 is completed with its 19, nothing remains
    expect(days.map((d) => [d.toDate.eighthsScheduled, d.toDate.eighthsCompleted, d.eighthsRemaining])).toEqual([
      [27, 8, 19],
      [27, 8, 19],
      [27, 27, 0],
    ]);
  });

  it("leaves a day's own pages as the day has them", () => {
    expect(days.map((d) => [d.own.eighthsScheduled, d.own.eighthsCompleted])).toEqual([
      [27, 8],
      [null, null],
      [10, 10],
    ]);
  });

  it("makes the ratio to date from the sums, not from the ratios of the days", () => {
    // 300 / 100, 360 / 100, 600 / 300
    expect(days.map((d) => d.toDate.shootingRatio)).toEqual([3, 3.6, 2]);
  });

  it("knows no pages while no day file schedules any", () => {
    const [only] = progress([DAYS[1] as (typeof DAYS)[number]]);
    expect([only?.toDate.eighthsScheduled, only?.eighthsRemaining, only?.toDate.shootingRatio]).toEqual([null, null, null]);
  });

  it("adds several days to one", () => {
    expect(sumOfDays(days.slice(0, 2))).toMatchObject({ setups: 6, takes: 12, mediaSeconds: 360, shootingRatio: 3.6 });
  });
});
