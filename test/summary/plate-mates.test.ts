import { describe, expect, it } from "vitest";
import { plateMates } from "../../src/summary/plate-mates.ts";
import { clipLog, oneDay } from "../helpers/one-day.ts";

const HEADER = "slate,take,camera,clip,tc_in,tc_out,lens,height_m,tilt_deg,circled,plate,plate_of,filters";
const LIMIT = 0.15;

/** Two takes of a hero on a 50 at 3 m and T2.83, a clean plate with another focus, a grid; the hero's second camera. */
function setUp(cleanFocus = "3.000", cleanStop = "2.83") {
  const { summary } = oneDay({
    header: HEADER,
    notes: [
      "7,1,A,C1,10:00:00:00,10:00:02:00,P50,1.50,-2.0,,hero,,Mist 1",
      "7,2,A,C2,10:05:00:00,10:05:02:00,P50,1.50,-2.0,y,hero,,Mist 1",
      "7,2,B,D2,10:05:00:00,10:05:02:00,P35,,,y,,,",
      "7A,1,A,C3,10:10:00:00,10:10:02:00,P50,1.38,-2.0,y,clean,7,",
      "7B,1,A,C4,10:20:00:00,10:20:02:00,P50,,,,grid,7,",
      "8,1,A,C5,10:30:00:00,10:30:02:00,P50,,,,,,",
      "9A,1,A,C6,10:40:00:00,10:40:02:00,P50,,,,clean,9,",
    ],
    logs: {
      "a.csv": clipLog("C1", "focus_m,t", 48, () => "3.000,2.83"),
      "b.csv": clipLog("C2", "focus_m,t", 48, () => "3.000,2.83", "10:05:00:00"),
      "c.csv": clipLog("C3", "focus_m,t", 48, () => `${cleanFocus},${cleanStop}`, "10:10:00:00"),
    },
  });
  const take = (address: string) => {
    const found = summary.takes.find((t) => t.take.address === address);
    if (found === undefined) throw new Error(address);
    return found;
  };
  const mates = (address: string) => plateMates(take(address), summary.takes, LIMIT);
  return { take, mates };
}

describe("plates and heroes of a set-up", () => {
  it("stand for each other, the circled hero on the same camera first", () => {
    const { mates } = setUp();
    expect(mates("a-7a-1")).toMatchObject({ role: "plate", slate: "7" });
    expect(mates("a-7a-1")?.against?.take.address).toBe("a-7-2");
    expect(mates("a-7-2")).toMatchObject({ role: "hero", slate: "7" });
    expect(mates("a-7-2")?.against?.take.address).toBe("a-7a-1");
    expect(mates("a-7-1")?.against?.take.address).toBe("a-7a-1");
    expect(mates("a-7b-1")?.against?.take.address).toBe("a-7-2");
  });

  it("name the other plates of the set-up", () => {
    const { mates } = setUp();
    expect(mates("a-7-2")?.others.map((t) => t.take.address)).toEqual(["a-7-1", "a-7b-1"]);
    expect(mates("a-7a-1")?.others.map((t) => t.take.address)).toEqual(["a-7-1", "b-7-2", "a-7b-1"]);
  });

  it("are none for a take that is no plate, and say when the hero is not of this day", () => {
    const { mates } = setUp();
    expect(mates("a-8-1")).toBeNull();
    expect(mates("a-9a-1")).toMatchObject({ role: "plate", slate: "9", against: null, difference: null, others: [] });
    // camera B has no clean plate, but its slate has plates
    expect(mates("b-7-2")?.against).toBeNull();
  });
});

describe("the difference between a plate and its hero", () => {
  // 50 mm, T2.83 with tau 0.81: N = 2.547, H0 = 2500 / (2.547 x 0.025) = 39.26 m. D = 3 m: s = (3000 + sqrt(3000^2 - 4 x 50 x 3000)) / 2
  // = 2949.1 mm. Half the depth before the lens (1 / 39.26)(1 - 50 / 2949.1) = 0.02504, times s^2 / D^2 = 0.9663 from the image plane:
  // 0.0242 (1/m)
  it("is plate less hero, and 0 or less inside what the hero did", () => {
    const d = setUp().mates("a-7a-1")?.difference;
    expect(d?.heightM).toBeCloseTo(-0.12, 9);
    expect(d?.tiltDeg).toBe(0);
    expect(d?.rollDeg).toBeNull();
    expect(d?.sameFilters).toBeNull();
    expect(d?.match).toMatchObject({ sameLens: true, focalDiffers: false, stopsApart: 0, dioptresApart: 0 });
    expect(d?.match.dioptresAllowed).toBeCloseTo(0.0242, 4);
  });

  it("is the same from either side", () => {
    const { mates } = setUp("2.500");
    expect(mates("a-7-2")?.difference).toEqual(mates("a-7a-1")?.difference);
  });

  it("tells focus within the depth of field from focus beyond it, in dioptres", () => {
    // 1/2.85 - 1/3 = 0.0175, 1/2.5 - 1/3 = 0.0667
    expect(setUp("2.850").mates("a-7a-1")?.difference?.match.dioptresApart).toBeCloseTo(0.0175, 4);
    expect(setUp("2.500").mates("a-7a-1")?.difference?.match.dioptresApart).toBeCloseTo(0.0667, 4);
  });

  it("counts stops outside what the hero used", () => {
    // 2 log2(4 / 2.83) = 0.9985
    expect(setUp("3.000", "4").mates("a-7a-1")?.difference?.match.stopsApart).toBeCloseTo(0.9985, 3);
  });
});
