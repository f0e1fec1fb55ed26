import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { openTrackIo } from "../../../src/export/vfx/opentrackio.ts";
import { sampleId, uuidUrn } from "../../../src/export/vfx/sample-id.ts";
import type { DaySummary } from "../../../src/summary/types.ts";
import { DATE, dayOf, FOUR_FRAMES, firstTake } from "./fixture.ts";

const SCHEMAS = join(import.meta.dirname, "../../../../shared/standards/opentrackio");
// biome-ignore lint/suspicious/noExplicitAny: the shape is what is tested
type Json = { [key: string]: any };
const text = (day: DaySummary): string => openTrackIo(day.show.code, day.date, firstTake(day));
const samples = (day: DaySummary): Json[] =>
  text(day)
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as Json);

const DROP = {
  "show.yaml": "title: Drop\ncode: DROP\nrate: 30000/1001\ndrop_frame: true\n",
  [`days/${DATE}/notes.csv`]: "slate,take,camera,clip,tc_in,tc_out,plate\n1A,1,A,C1,10:00:59;28,10:01:00;03,hero\n",
  [`days/${DATE}/logs/a.csv`]: "# clip: C1\n# lens: P50\ntimecode,focus_m,t\n10:00:59;28,2,4\n10:00:59;29,2,4\n10:01:00;02,2,4\n",
};
const drop = () => dayOf({ rows: ["2,4"], files: DROP });

const LOGGED = ["lens: P50", "model: brown-conrady", "radius: mm"];
const CASES: readonly (readonly [string, () => DaySummary])[] = [
  ["four frames with a gap and infinity", () => dayOf({ rows: FOUR_FRAMES })],
  ["a zoom without a table", () => dayOf({ rows: ["2,4,50"], header: "focus_m,t,focal_mm", keys: ["lens: Z2880"] })],
  [
    "logged terms with a denominator",
    () => dayOf({ rows: ["2,4,0.001,0.0001,0.00002"], header: "focus_m,t,k1,k4,p1", keys: [...LOGGED, "direction: distort"] }),
  ],
  [
    "the division model",
    () =>
      dayOf({
        rows: ["2,4,-0.0001"],
        header: "focus_m,t,lambda",
        keys: ["lens: P50", "model: division", "direction: undistort", "radius: mm"],
      }),
  ],
  ["an anamorphic camera", () => dayOf({ rows: ["2,4"], camera: "B" })],
  [
    "names with quotes, emoji and 3,000 characters",
    () =>
      dayOf({
        rows: ["2,4"],
        files: {
          "kit/cameras.csv": `camera,body,sensor_mode,active_width_mm,active_height_mm\nA,"""${"ü🎬".repeat(1500)}""",OPEN,24,18\n`,
        },
      }),
  ],
];

describe("lens.opentrackio.jsonl", () => {
  it.skipIf(!existsSync(SCHEMAS)).each(CASES)(
    "is valid against both published schemas: %s (needs shared/standards)",
    (_what, day) => {
      for (const version of ["1.0.0", "1.0.1"]) {
        const schema = JSON.parse(readFileSync(join(SCHEMAS, `schema-${version}.json`), "utf8")) as object;
        const validate = new Ajv2020({ strict: false }).compile(schema);
        for (const sample of samples(day())) expect([validate(sample), validate.errors]).toEqual([true, null]);
      }
    },
  );

  it.skipIf(!existsSync(SCHEMAS))(
    "with drop-frame is valid against 1.0.1 only, which has the flag (needs shared/standards)",
    () => {
      const valid = ["1.0.0", "1.0.1"].map((version) => {
        const schema = JSON.parse(readFileSync(join(SCHEMAS, `schema-${version}.json`), "utf8")) as object;
        return samples(drop()).every((sample) => new Ajv2020({ strict: false }).compile(schema)(sample));
      });
      expect(valid).toEqual([false, true]);
    },
  );

  it("says the drop flag only where labels are dropped, and skips the labels that are not there", () => {
    const codes = samples(drop()).map((sample) => sample.timing.timecode);
    expect(codes.map((c) => [c.minutes, c.seconds, c.frames, c.dropFrame])).toEqual([
      [0, 59, 28, true],
      [0, 59, 29, true],
      [1, 0, 2, true],
    ]);
    expect(codes[0].frameRate).toEqual({ num: 30000, denom: 1001 });
    expect(samples(dayOf({ rows: ["2,4"] }))[0]!.timing.timecode).not.toHaveProperty("dropFrame");
  });

  it("has only keys that the standard knows, besides custom at the root (restated)", () => {
    const known = {
      root: ["protocol", "sampleId", "sourceId", "static", "tracker", "timing", "lens", "custom"],
      lens: [
        "pinholeFocalLength",
        "focusDistance",
        "fStop",
        "tStop",
        "entrancePupilOffset",
        "distortion",
        "distortionOffset",
        "exposureFalloff",
        "encoders",
      ],
      timing: ["sampleRate", "sequenceNumber", "timecode"],
    };
    for (const [, day] of CASES) {
      for (const sample of samples(day())) {
        expect(known.root).toEqual(expect.arrayContaining(Object.keys(sample)));
        expect(known.lens).toEqual(expect.arrayContaining(Object.keys(sample.lens ?? {})));
        expect(known.timing).toEqual(expect.arrayContaining(Object.keys(sample.timing)));
        expect(sample.protocol).toEqual({ name: "OpenTrackIO", version: [1, 0, 1] });
        expect(sample.sampleId).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
      }
    }
  });

  it("has one sample a frame, static in the first, no lens where nothing was logged", () => {
    const all = samples(dayOf({ rows: FOUR_FRAMES }));
    expect(all.map((sample) => sample.timing.sequenceNumber)).toEqual([0, 1, 2, 3]);
    expect(all.map((sample) => "static" in sample)).toEqual([true, false, false, false]);
    expect(all.map((sample) => sample.custom)).toEqual([
      { logged: true, focusDioptres: 0.5 },
      { logged: true, focusDioptres: 0.5 },
      { logged: false },
      { logged: true, focusDioptres: 0 },
    ]);
    expect(all[2]).not.toHaveProperty("lens");
  });

  it("leaves focusDistance out at infinity, and never writes a stand-in", () => {
    const [, , , last] = samples(dayOf({ rows: FOUR_FRAMES }));
    expect(last!.lens).not.toHaveProperty("focusDistance");
    expect(last!.lens.pinholeFocalLength).toBe(50);
  });

  it("alternates numerator and denominator in radial (OpenLensIO eq. 16) and names the direction", () => {
    const keys = [...LOGGED, "direction: distort"];
    const header = "focus_m,t,k1,k2,k3,k4,k5,k6,p1,p2";
    const cells = "2,4,1e-4,2e-7,3e-10,4e-5,5e-8,6e-11,7e-5,8e-5";
    const [sample] = samples(dayOf({ rows: [cells], header, keys }));
    expect(sample!.lens.distortion).toEqual([
      { model: "Brown-Conrady U-D", radial: [1e-4, 4e-5, 2e-7, 5e-8, 3e-10, 6e-11], tangential: [7e-5, 8e-5] },
    ]);
    const [table] = samples(dayOf({ rows: ["inf,4"] }));
    expect(table!.lens.distortion).toEqual([{ model: "Brown-Conrady D-U", radial: [1e-4] }]);
  });

  it("writes the division model as a denominator: x / (1 + lambda r^2)", () => {
    const keys = ["lens: P50", "model: division", "direction: undistort", "radius: mm"];
    const [sample] = samples(dayOf({ rows: ["2,4,-0.0001"], header: "focus_m,t,lambda", keys }));
    expect(sample!.lens.distortion).toEqual([{ model: "Brown-Conrady D-U", radial: [0, -0.0001] }]);
  });

  it("read back by our own reader gives the log again, infinity apart", () => {
    const day = dayOf({ rows: ["2.5,4,8.5", "1.25,5.6,8.5", null, "inf,4,8.5"], header: "focus_m,t,entrance_pupil_mm" });
    const again = dayOf({
      rows: ["2,4"],
      files: {
        [`days/${DATE}/logs/a.csv`]: "",
        [`days/${DATE}/logs/b.jsonl`]: text(day),
        [`days/${DATE}/notes.csv`]: "slate,take,camera,clip,tc_in,tc_out,plate\n1A,1,A,C1,10:00:00:00,10:00:00:04,hero\n",
      },
    });
    const [before, after] = [firstTake(day), firstTake(again)];
    expect(after.take.lensId).toBe("P50");
    expect(Array.from(after.perFrame!.focusDioptres)).toEqual([0.4, 0.8, Number.NaN, Number.NaN]);
    expect(Array.from(after.take.track!.columns.entrance_pupil_mm!).slice(0, 2)).toEqual([8.5, 8.5]);
    expect(Array.from(after.perFrame!.tStop).slice(0, 2)).toEqual([4, 5.6]);
    expect(after.distortionPercent?.corner).toBeCloseTo(before.distortionPercent!.corner, 9);
  });
});

describe("ids", () => {
  it("are name-based UUIDs (RFC 9562 A.4: www.example.com in the DNS name space)", () => {
    expect(uuidUrn("6ba7b810-9dad-11d1-80b4-00c04fd430c8", "www.example.com")).toBe(
      "urn:uuid:2ed6657d-e927-568b-95e1-2665a8aea6a2",
    );
  });

  it("differ by show, day, take and frame, and are the same on every build", () => {
    const ids = [
      sampleId("A", "2030-02-03", "a-1-1", 0),
      sampleId("B", "2030-02-03", "a-1-1", 0),
      sampleId("A", "2030-02-04", "a-1-1", 0),
      sampleId("A", "2030-02-03", "a-1-2", 0),
      sampleId("A", "2030-02-03", "a-1-1", 1),
    ];
    expect(new Set(ids).size).toBe(5);
    expect(text(dayOf({ rows: FOUR_FRAMES }))).toBe(text(dayOf({ rows: FOUR_FRAMES })));
  });
});
