import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/core/finding.ts";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { type LogContext, logSource } from "../../src/ingest/log/lens-log.ts";
import type { LensLog } from "../../src/ingest/log/log-record.ts";
import { jsonErrorAt, memberAt } from "../../src/ingest/samples/json-position.ts";
import { readOpenTrackIo } from "../../src/ingest/samples/opentrackio.ts";

const SHOW: LogContext = { rate: { num: 30000, denom: 1001 }, dropFrame: true, maps: [], date: "2031-05-06" };

function readSamples(samples: readonly unknown[], context = SHOW): { log: LensLog; findings: readonly Finding[] } {
  const found = collectFindings();
  const text = samples.map((sample) => (typeof sample === "string" ? sample : JSON.stringify(sample))).join("\n");
  const log = readOpenTrackIo(logSource("logs/x.jsonl", new TextEncoder().encode(text)), context, found);
  if (log === null) throw new Error(found.list()[0]?.message);
  return { log, findings: found.list() };
}

function sample(frames: number, lens: object, more: object = {}): object {
  const frameRate = { num: 30000, denom: 1001 };
  return { timing: { timecode: { hours: 0, minutes: 1, seconds: 0, frames, frameRate, dropFrame: true } }, lens, ...more };
}

/** The figures of the standard's published complete static example. */
const PUBLISHED = {
  static: {
    camera: { captureFrameRate: { num: 24000, denom: 1001 }, anamorphicSqueeze: { num: 1, denom: 1 }, label: "A" },
    lens: { serialNumber: "123456789", nominalFocalLength: 14 },
  },
  tracker: { slate: "A101_A_4" },
  timing: { timecode: { hours: 1, minutes: 2, seconds: 3, frames: 4, frameRate: { num: 24000, denom: 1001 } } },
  lens: {
    distortion: [
      { radial: [1, 2, 3, 4, 5, 6], tangential: [1, 2], overscan: 3, model: "Brown-Conrady U-D" },
      { radial: [1, 2, 3, 4, 5, 6], tangential: [1, 2], overscan: 2 },
    ],
    distortionOffset: { x: 1, y: 2 },
    encoders: { focus: 0.1, iris: 0.2, zoom: 0.3 },
    entrancePupilOffset: 0.123,
    exposureFalloff: { a1: 1, a2: 2, a3: 3 },
    fStop: 4,
    pinholeFocalLength: 24.305,
    focusDistance: 10,
    projectionOffset: { x: 0.1, y: 0.2 },
    rawEncoders: { focus: 1000, iris: 2000, zoom: 3000 },
    tStop: 4.1,
  },
  protocol: { name: "OpenTrackIO", version: [1, 0, 0] },
};

describe("readOpenTrackIo", () => {
  it("reads the standard's published example in this project's units", () => {
    const { log, findings } = readSamples([PUBLISHED]);
    expect(findings).toEqual([]);
    // 01:02:03:04 at a base of 24: 3723 s x 24 + 4.
    expect(log.timing).toEqual({ kind: "timecode", frames: Int32Array.of(89_356) });
    expect(log.rate).toEqual({ num: 24000, denom: 1001 });
    const first = Object.fromEntries(Object.entries(log.columns).map(([name, values]) => [name, values[0]]));
    expect(first).toMatchObject({
      focus: 0.1,
      t: 4.1,
      f: 4,
      focal_mm: 24.305,
      entrance_pupil_mm: 123,
      squeeze: 1,
      a1: 1,
      a2: 2,
      a3: 3,
      encoder_focus: 0.1,
      encoder_iris: 0.2,
      encoder_zoom: 0.3,
    });
    // The radial list alternates numerator and denominator: l1 l3 l5 over l2 l4 l6.
    expect(first).toMatchObject({ k1: 1, k4: 2, k2: 3, k5: 4, k3: 5, k6: 6, p1: 1, p2: 2 });
    // The distortion centre is the distortion offset from the projection's.
    expect(first.cx_mm).toBeCloseTo(1.1, 12);
    expect(first.cy_mm).toBeCloseTo(2.2, 12);
    expect(log.keys).toMatchObject({
      camera: "A",
      slate: "A101_A_4",
      lensSerial: "123456789",
      rate: { num: 24000, denom: 1001 },
      convention: { model: "brown-conrady", direction: "distort", radius: "mm", shadingRadius: "mm", shadingValues: "loss" },
    });
  });

  it("evaluates undistortion directly where no model is named, as the standard's default says", () => {
    const { log } = readSamples([sample(2, { distortion: [{ radial: [0.1] }] })]);
    expect(log.keys.convention.direction).toBe("undistort");
  });

  it("holds the show's drop flag for schema 1.0.0, and takes an absent one for false from 1.0.1 on", () => {
    const at = (version: readonly number[]): object => ({
      timing: { timecode: { hours: 0, minutes: 1, seconds: 0, frames: 2, frameRate: { num: 30000, denom: 1001 } } },
      protocol: { name: "OpenTrackIO", version },
    });
    // 00:01:00;02 is frame 1800 in drop-frame; counted plainly it is 60 x 30 + 2.
    expect(readSamples([at([1, 0, 0])]).log.timing).toMatchObject({ frames: Int32Array.of(1800) });
    expect(readSamples([at([1, 0, 1])]).log.timing).toMatchObject({ frames: Int32Array.of(1802) });
  });

  it("keeps what the first line's static block says for the lines after it", () => {
    const block = { camera: { label: "B", anamorphicSqueeze: { num: 9, denom: 5 } }, lens: { serialNumber: "E-1" } };
    const { log } = readSamples([sample(2, {}, { static: block }), sample(3, { tStop: 2.9 })]);
    expect([...(log.columns.squeeze ?? [])]).toEqual([1.8, 1.8]);
    expect(log.keys).toMatchObject({ camera: "B", lensSerial: "E-1" });
    expect(log.columns.t?.[0]).toBeNaN();
    expect(log.columns.focus).toBeUndefined();
  });

  it("gives camera and slate row by row where they change, with a check", () => {
    const { log, findings } = readSamples([
      sample(2, {}, { tracker: { slate: "24B" } }),
      sample(3, {}),
      sample(4, {}, { tracker: { slate: "24C" } }),
    ]);
    expect(log.keys.slate).toBeNull();
    expect([0, 1, 2].map((row) => log.rowKeys.slate?.(row))).toEqual(["24B", "24B", "24C"]);
    expect(findings.map((f) => [f.code, f.line])).toEqual([["LOG215", 3]]);
  });

  it("uses the frame's own sample and rejects those between frames", () => {
    const between = sample(2, { tStop: 4 }) as { timing: { timecode: object } };
    const { log, findings } = readSamples([
      sample(2, { tStop: 4 }),
      { ...between, timing: { timecode: { ...between.timing.timecode, subFrame: 1 } } },
    ]);
    expect([...log.rejected]).toEqual([0, 1]);
    expect(findings.map((f) => f.code)).toEqual(["LOG224"]);
  });

  it("rejects a sample at another rate, and a label that drop-frame skips", () => {
    const other = { timing: { timecode: { hours: 0, minutes: 1, seconds: 0, frames: 5, frameRate: { num: 25, denom: 1 } } } };
    const { log, findings } = readSamples([sample(2, {}), other, sample(0, {})]);
    expect([...log.rejected]).toEqual([0, 1, 1]);
    expect(findings.map((f) => [f.code, f.line])).toEqual([
      ["LOG213", 2],
      ["LOG203", 3],
    ]);
  });

  it("leaves out coefficients of a model that is not the standard's", () => {
    const { log, findings } = readSamples([sample(2, { distortion: [{ model: "spline", radial: [1] }] })]);
    expect(log.columns.k1).toBeUndefined();
    expect(findings).toEqual([expect.objectContaining({ code: "LOG223", message: expect.stringContaining('"spline"') })]);
  });

  it("finds the cell of a figure in its line", () => {
    const { log } = readSamples([sample(2, { fStop: 3.5, tStop: 4.1 })]);
    const { place, text } = log.cell(0, "t");
    expect(text).toBe("4.1");
    expect(JSON.stringify(sample(2, { fStop: 3.5, tStop: 4.1 })).indexOf("4.1") + 1).toBe(place.column);
  });
});

describe("jsonErrorAt", () => {
  it.each([
    ['{"a": 1}', null],
    ['[1, -2.5e3, "x\\u00e9", true, null, {}]', null],
    ['{"a": }', 6],
    ['{"a": 1,}', 8],
    ["[1 2]", 3],
    ['{"a": "x', 8],
    ['{"a": 01}', 7],
    ["", 0],
    ['{"a": 1} x', 9],
    ["{a: 1}", 1],
  ])("of %s is %s", (text, offset) => {
    expect(jsonErrorAt(text)).toBe(offset);
  });

  it("finds a member within its parents only", () => {
    expect(memberAt('{"x":{"t":1},"lens":{"t":2}}', ["lens", "t"])).toEqual({ start: 25, end: 26 });
    expect(memberAt('{"lens":{"f":1},"t":2}', ["lens", "t"])).toBeNull();
  });
});
