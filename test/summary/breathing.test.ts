import { describe, expect, it } from "vitest";
import { pullBreathing } from "../../src/summary/breathing.ts";
import { exampleTake } from "../fixtures/day-summary.ts";
import { logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2030-02-03";
const FRAMES = 96;

/** A second at infinity, a pull of a second to `metres`, two seconds there. */
function pull(
  metres: number,
  keys: readonly string[],
  more: { readonly header: string; readonly cell: (close: number) => string },
) {
  const text = logText(["clip: C1", ...keys], `focus_m,t${more.header}`, "10:00:00:00", FRAMES, (i) => {
    const close = Math.min(1, Math.max(0, (i - 23) / 24));
    const dioptres = close / metres;
    return `${dioptres === 0 ? "inf" : (1 / dioptres).toFixed(6)},2.80${more.cell(close)}`;
  });
  const files = {
    ...SMALL_KIT,
    [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
    [`days/${DATE}/notes.csv`]: "slate,take,camera,clip,tc_in,tc_out\n1,1,A,C1,10:00:00:00,10:00:04:00\n",
    [`days/${DATE}/logs/a.csv`]: text,
  };
  const pulls = summarise(files, DATE).summary.takes[0]?.pulls ?? [];
  expect(pulls).toHaveLength(1);
  return pulls[0];
}

const NOTHING = { header: "", cell: () => "" };

describe("breathing over a pull", () => {
  it("is CV25's -5.087 % from infinity to 1 m and -1.631 % to 3 m, 50 mm on 24.89 mm, as an estimate", () => {
    const near = pull(1, ["lens: P50"], NOTHING);
    expect(near?.breathingPercent).toBeCloseTo(-5.087, 2);
    expect(near?.breathingFrom).toBe("unit-focus estimate");
    expect(pull(3, ["lens: P50"], NOTHING)?.breathingPercent).toBeCloseTo(-1.631, 2);
  });

  it("comes from the log where a prime's focal length moves with focus, and may have the other sign", () => {
    // 2 atan(24.89 / 96) = 29.071 deg over 2 atan(24.89 / 100) = 27.954 deg: +3.993 %
    const found = pull(1, ["lens: P50"], { header: ",focal_mm", cell: (close) => `,${(50 - 2 * close).toFixed(4)}` });
    expect(found?.breathingFrom).toBe("logged");
    expect(found?.breathingPercent).toBeCloseTo(3.993, 3);
  });

  it("agrees between log and estimate where the log has the image distance of a thin lens (CV13: 52.786 mm at 1 m)", () => {
    const found = pull(1, ["lens: P50"], { header: ",focal_mm", cell: (close) => `,${(50 + 2.786 * close).toFixed(4)}` });
    expect(found?.breathingFrom).toBe("logged");
    expect(found?.breathingPercent).toBeCloseTo(-5.087, 2);
  });

  it("stays an estimate where a prime's logged focal length stands still", () => {
    expect(pull(1, ["lens: P50"], { header: ",focal_mm", cell: () => ",50" })?.breathingFrom).toBe("unit-focus estimate");
  });

  it("does not take a zoom move for breathing: the estimate holds the focal length of the start", () => {
    const found = pull(1, ["lens: Z2880"], { header: ",focal_mm", cell: (close) => `,${(50 + 20 * close).toFixed(4)}` });
    expect(found?.breathingFrom).toBe("unit-focus estimate");
    expect(found?.breathingPercent).toBeCloseTo(-5.087, 2);
  });

  it("takes the pinhole focal lengths of OpenTrackIO samples as they are", () => {
    const { take, perFrame } = exampleTake("a-12-2");
    if (perFrame === null || take.track === null) throw new Error("the example take has a log");
    const focal_mm = Float64Array.from({ length: perFrame.frames }, (_, i) => (i < 100 ? 50 : 48));
    const track = { ...take.track, columns: { ...take.track.columns, focal_mm } };
    const ends = { startFrame: 90, endFrame: 130, fromDioptres: 0, toDioptres: 1 };
    const samples = pullBreathing({ ...take, logFiles: ["days/x/logs/a.jsonl"], track }, perFrame, ends);
    expect(samples.breathingFrom).toBe("logged");
    // 2 atan(28.8 / 96) over 2 atan(28.8 / 100): 33.398 over 32.131 deg
    expect(samples.breathingPercent).toBeCloseTo((100 * 33.398) / 32.131 - 100, 1);
    expect(pullBreathing({ ...take, track }, perFrame, ends).breathingFrom).toBe("unit-focus estimate");
  });

  it("is not known without a sensor mode, or nearer than four focal lengths", () => {
    const { take, perFrame } = exampleTake("a-12-2");
    if (perFrame === null) throw new Error("the example take has a log");
    const none = { breathingPercent: null, breathingFrom: null };
    const ends = { startFrame: 90, endFrame: 130, fromDioptres: 0, toDioptres: 1 };
    expect(pullBreathing({ ...take, sensorMode: null }, perFrame, ends)).toEqual(none);
    expect(pullBreathing(take, perFrame, { ...ends, toDioptres: 8 })).toEqual(none); // 125 mm with a 50 mm lens
  });
});
