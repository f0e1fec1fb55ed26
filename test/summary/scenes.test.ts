import { describe, expect, it } from "vitest";
import { clipsByName } from "../../src/summary/clips.ts";
import { sceneFigures } from "../../src/summary/scenes.ts";
import { digestOf, scheduled, takeOf } from "../fixtures/show-digests.ts";

/** Scene 27 is begun on day 1 and ends on day 2; scene 9 is scheduled and not shot; one take names no scene. */
const DAY_1 = digestOf("2031-05-06", 1, {
  record: { scheduled: [scheduled("27", 19), scheduled("9", 2)], completed: [], part: ["27"], notShot: ["9"] },
  takes: [
    takeOf("27 1 A", { lens: "P35", lightStops: -10 }),
    takeOf("27 1 B", { lens: "P75", lightStops: -12, circled: true }),
    takeOf("27A 1 A", { lens: "P35", lightStops: -9.5, circled: true }),
    takeOf("X1 1 A", { scene: null }),
  ],
});
const DAY_2 = digestOf("2031-05-07", 2, {
  record: { scheduled: [scheduled("27", 8)], completed: ["27"], part: [], notShot: [] },
  takes: [takeOf("27A 1 A", { lens: "P50", circled: true }), takeOf("27b 1 A", { scene: " 27 " })],
});
const scenes = sceneFigures([DAY_1, DAY_2]);
const scene27 = scenes.find((s) => s.scene === "27");

describe("scenes of a show", () => {
  it("stand in the order of an index, takes without a scene last", () => {
    expect(scenes.map((s) => s.scene)).toEqual(["9", "27", null]);
  });

  it("count a set-up once a day, a take once whatever the cameras, a take circled by any camera once", () => {
    // set-ups: 27 and 27A on day 1, 27A and 27b on day 2; takes: 27/1 (two cameras), 27A/1, then 27A/1 and 27b/1 of day 2
    expect(scene27).toMatchObject({ setups: 4, takes: 4, clips: 5, circled: 3, mediaSeconds: 50, lenses: ["P35", "P50", "P75"] });
  });

  it("count the pages of a scene once: the most that one day scheduled of it, completed on the day that says so", () => {
    expect(scene27).toMatchObject({ eighths: 19, completedOn: "2031-05-07", result: "completed" });
    expect(scenes[0]).toMatchObject({ eighths: 2, completedOn: null, result: "not shot", setups: 0 });
  });

  it("name the slates of each day, and days on which nothing was shot", () => {
    expect(scene27?.days.map((d) => [d.date, d.slates, d.eighths, d.result])).toEqual([
      ["2031-05-06", ["27", "27A"], 19, "part"],
      ["2031-05-07", ["27A", "27b"], 8, "completed"],
    ]);
    expect(scenes[0]?.days).toEqual([{ date: "2031-05-06", day: 1, slates: [], eighths: 2, result: "not shot" }]);
  });

  it("set the darkest set-up against the brightest, each by its lower middle clip", () => {
    // slate 27 has -12 and -10: the lower middle is -12; 27A has -9.5; 27b has no exposure. 12 - 9.5 = 2.5
    expect(scene27?.exposure).toEqual({ spreadStops: 2.5, of: "light", darkest: "27", brightest: "27A", setups: 2, leftOut: 1 });
  });

  it("fall back to the exposure before ND, and have none with fewer than two known set-ups", () => {
    const beforeNd = (slates: readonly (readonly [string, number | null])[]) =>
      sceneFigures([
        digestOf("2031-05-06", 1, { takes: slates.map(([slate, stops]) => takeOf(`${slate} 1 A`, { beforeNdStops: stops })) }),
      ])[0]?.exposure;
    expect(
      beforeNd([
        ["5", -8],
        ["5A", -7.25],
      ]),
    ).toMatchObject({ spreadStops: 0.75, of: "before ND" });
    expect(
      beforeNd([
        ["5", -8],
        ["5A", null],
      ]),
    ).toBeNull();
  });
});

describe("clips by name", () => {
  it("count numbers by their value, keep two of one name by date, and put those without a name last", () => {
    const day = (date: string, clips: readonly (string | null)[]) =>
      digestOf(date, null, { takes: clips.map((clip, i) => takeOf(`1 ${i + 1} A`, { clip })) });
    const clips = clipsByName([day("2031-05-06", ["A10C1", null, "A2C9"]), day("2031-05-07", ["A2C9", "a2c10"])]);
    expect(clips.map(({ date, take }) => [date.slice(8), take.clip])).toEqual([
      ["06", "A2C9"],
      ["07", "A2C9"],
      ["07", "a2c10"],
      ["06", "A10C1"],
      ["06", null],
    ]);
  });
});
