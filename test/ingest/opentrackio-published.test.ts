/** The four example samples that are published with the standard, every lens value of them, and members that no column is read from. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { type LogContext, logSource } from "../../src/ingest/log/lens-log.ts";
import { readOpenTrackIo } from "../../src/ingest/samples/opentrackio.ts";
import { SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const PUBLISHED = join(import.meta.dirname, "../../../shared/standards/opentrackio");
const SHOW: LogContext = { rate: { num: 24000, denom: 1001 }, dropFrame: false, maps: [], date: "2031-05-06" };

function readSamples(samples: readonly unknown[]) {
  const found = collectFindings();
  const text = samples.map((sample) => JSON.stringify(sample)).join("\n");
  const log = readOpenTrackIo(logSource("logs/x.jsonl", new TextEncoder().encode(text)), SHOW, found);
  if (log === null) throw new Error(found.list()[0]?.message);
  return { log, findings: found.list() };
}

const timing = (frames: number, hours = 1) => ({
  timecode: { hours, minutes: 0, seconds: 0, frames, frameRate: { num: 24000, denom: 1001 } },
});

describe.skipIf(!existsSync(PUBLISHED))("the published examples (need shared/standards)", () => {
  it.each(["complete_dynamic", "complete_static", "recommended_dynamic", "recommended_static"])("%s: every lens value", (name) => {
    const sample = JSON.parse(readFileSync(join(PUBLISHED, `${name}_example.json`), "utf8"));
    const { log, findings } = readSamples([sample]);
    expect(findings).toEqual([]);
    const { lens } = sample;
    const [served] = lens.distortion ?? [];
    const column = (values: Float64Array | undefined) => values?.[0];
    const { columns } = log;
    // Units of the standard: metres for focus and pupil, millimetres for offsets and focal length.
    if (lens.focusDistance !== undefined) expect(column(columns.focus)).toBe(1 / lens.focusDistance);
    expect(column(columns.t)).toBe(lens.tStop);
    expect(column(columns.f)).toBe(lens.fStop);
    expect(column(columns.focal_mm)).toBe(lens.pinholeFocalLength);
    if (lens.entrancePupilOffset !== undefined) expect(column(columns.entrance_pupil_mm)).toBe(lens.entrancePupilOffset * 1000);
    for (const term of ["a1", "a2", "a3"] as const) expect(column(columns[term])).toBe(lens.exposureFalloff?.[term]);
    // "radial": l1 to l6 alternate between numerator and denominator.
    const [l1, l2, l3, l4, l5, l6] = served?.radial ?? [];
    expect([columns.k1, columns.k4, columns.k2, columns.k5, columns.k3, columns.k6].map(column)).toEqual([l1, l2, l3, l4, l5, l6]);
    expect([columns.p1, columns.p2].map(column)).toEqual([served?.tangential?.[0], served?.tangential?.[1]]);
    if (served !== undefined)
      expect(log.keys.convention.direction).toBe(served.model === "Brown-Conrady U-D" ? "distort" : "undistort");
    const { distortionOffset: d = { x: 0, y: 0 }, projectionOffset: p = { x: 0, y: 0 } } = lens;
    if (lens.distortionOffset !== undefined) expect([column(columns.cx_mm), column(columns.cy_mm)]).toEqual([d.x + p.x, d.y + p.y]);
    const encoders = lens.encoders ?? lens.rawEncoders ?? {};
    expect([columns.encoder_focus, columns.encoder_iris, columns.encoder_zoom].map(column)).toEqual([
      encoders.focus,
      encoders.iris,
      encoders.zoom,
    ]);
    const kept = Object.fromEntries(log.unknown.map(({ name: path, text }) => [path, text(0)]));
    if (lens.encoders !== undefined && lens.rawEncoders !== undefined)
      expect(kept["lens.rawEncoders.focus"]).toBe(String(lens.rawEncoders.focus));
    lens.distortion?.forEach((entry: { overscan?: number }, i: number) => {
      if (entry.overscan !== undefined) expect(Number(kept[`lens.distortion.${i}.overscan`])).toBe(entry.overscan);
    });
    if (lens.custom !== undefined) expect(JSON.parse(kept["lens.custom"] ?? "")).toEqual(lens.custom);
    for (const [member, value] of Object.entries(sample.custom ?? {})) expect(kept[`custom.${member}`]).toBe(String(value));
  });
});

describe("members of samples that no column is read from", () => {
  it("are kept word for word by row, also where a name comes at two depths and a row lacks them", () => {
    const { log, findings } = readSamples([
      { timing: timing(0), lens: { custom: [1.5, 2], tStop: 4 }, custom: { pot1: 2435, label: 'left, "hot"' } },
      { timing: timing(1), lens: { tStop: 4 }, custom: { pot1: 2436 } },
    ]);
    expect(findings).toEqual([]);
    expect(log.unknown.map(({ name, text }) => [name, text(0), text(1)])).toEqual([
      ["custom.pot1", "2435", "2436"],
      ["custom.label", 'left, "hot"', ""],
      ["lens.custom", "[1.5,2]", ""],
    ]);
  });

  it("are told of once when the standard does not have them, at the first of them", () => {
    const { findings } = readSamples([
      { timing: timing(0), lens: { tStop: 4 } },
      { timing: timing(1), lens: { tStop: 4, breathing: 0.3 }, rig: "left" },
    ]);
    expect(findings.map((f) => `${f.severity} ${f.code} ${f.line} ${f.field}`)).toEqual(["remark LOG209 2 rig"]);
    expect(findings[0]?.message).toBe('The members "rig", "lens.breathing" are kept word for word.');
  });

  it("travel into the take's columns, as those of a table do", () => {
    const day = "days/2031-05-06";
    const lines = [0, 1, 2, 3].map((frames) =>
      JSON.stringify({
        timing: { timecode: { hours: 10, minutes: 0, seconds: 0, frames, frameRate: { num: 24, denom: 1 } } },
        static: { camera: { label: "A" } },
        lens: { tStop: 4, focusDistance: 2 },
        custom: { pot1: frames },
      }),
    );
    const files = {
      ...SMALL_KIT,
      [`${day}/day.yaml`]: "day: 1\ndate: 2031-05-06\n",
      [`${day}/notes.csv`]: "slate,take,camera,tc_in,tc_out\n1,1,A,10:00:00:00,10:00:00:04\n",
    };
    const take = summarise({ ...files, [`${day}/logs/a.jsonl`]: `${lines.join("\n")}\n` }, "2031-05-06").day.takes[0];
    expect(take?.track?.unknown.map(({ name, text }) => [name, text(0), text(3)])).toEqual([["custom.pot1", "0", "3"]]);
  });
});

describe("a stream of samples over many takes", () => {
  const day = "days/2031-05-06";
  const sample = (seconds: number, frames: number, slate: string | null) =>
    JSON.stringify({
      static: { camera: { label: "A" } },
      ...(slate === null ? {} : { tracker: { slate } }),
      timing: { timecode: { hours: 10, minutes: 0, seconds, frames, frameRate: { num: 24, denom: 1 } } },
      lens: { tStop: 4, focusDistance: 2 },
    });
  const notes =
    "slate,take,camera,tc_in,tc_out\n12A,1,A,10:00:00:00,10:00:00:04\n12A,2,A,10:00:10:00,10:00:10:04\n13,1,A,10:00:20:00,10:00:20:04\n";
  const read = (lines: readonly string[]) =>
    summarise(
      {
        ...SMALL_KIT,
        [`${day}/day.yaml`]: "day: 1\ndate: 2031-05-06\n",
        [`${day}/notes.csv`]: notes,
        [`${day}/logs/all.jsonl`]: `${lines.join("\n")}\n`,
      },
      "2031-05-06",
    ).day;
  const frames = [0, 1, 2, 3];

  it("is split by timecode where there are gaps and no slates; what lies between the takes is unmatched", () => {
    const lines = [0, 5, 10, 20].flatMap((seconds) => frames.map((frame) => sample(seconds, frame, null)));
    const { takes, rows } = read(lines);
    expect(takes.map((take) => [take.slate, take.take, take.track?.framesLogged])).toEqual([
      ["12A", "1", 4],
      ["12A", "2", 4],
      ["13", "1", 4],
    ]);
    expect(rows).toMatchObject({ read: 16, used: 12, unmatched: 4, rejected: 0 });
  });

  it("is split by tracker.slate where the samples say it, a take of a slate by its timecode", () => {
    const slates = [
      [0, "12A"],
      [10, "12A"],
      [20, "13"],
    ] as const;
    const lines = slates.flatMap(([seconds, slate]) => frames.map((frame) => sample(seconds, frame, slate)));
    const { takes, rows } = read(lines);
    expect(takes.map((take) => take.track?.framesLogged)).toEqual([4, 4, 4]);
    expect(rows).toMatchObject({ read: 12, used: 12, unmatched: 0, rejected: 0 });
  });
});
