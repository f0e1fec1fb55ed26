import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { frameAsText, frameAsTsv } from "../../src/client/take/frame-text.ts";
import { furtherReadout, readout } from "../../src/format/readout.ts";
import { openTake, type TakeRecord } from "../../src/format/take-record.ts";
import type { TakeSummary } from "../../src/summary/types.ts";
import { frameValues, readoutSources } from "../../src/view/frame-values.ts";
import { takeDataScript, takeRecord } from "../../src/view/take/take-data.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { lensTake } from "../summary/lens-show.ts";

const summary = exampleDaySummary();
const logged = summary.takes.filter((t) => t.middleFrame !== null);
const zoom = summary.takes.find((t) => t.take.address === "a-12-2") as TakeSummary;

/** What the page in the browser gets: the script is run with a receiver, as the browser does. */
function received(t: TakeSummary, distances: "metric" | "imperial" | "both" = "metric") {
  const script = takeDataScript("2031-05-06", t, distances);
  let record: unknown = null;
  runInNewContext(script?.text ?? "", { lensDaybookTake: (given: unknown) => (record = given) });
  return openTake(record as TakeRecord);
}

/** A lens that is never at rest: focus, stop and zoom move on every frame, with a jitter that no curve foretells. */
function restless(frames: number): TakeSummary {
  const jitter = (i: number) => ((i * 7919) % 17) / 1000;
  return lensTake({
    frames,
    keys: [
      "model: brown-conrady",
      "direction: undistort",
      "radius: half-diagonal",
      "area_mm: 24.89 x 18.66",
      "shading_radius: half-diagonal",
    ],
    table: {
      header: "focal_mm,focus_m,t,k1,k2,a1,a2,entrance_pupil_mm",
      rows: [30, 60].flatMap((focal) =>
        [0.9, 3, 12].map(
          (m) => `${focal},${m},2.8,${(-0.9 / focal - 0.004 * m).toFixed(5)},${(0.1 / focal).toFixed(5)},0.3,0.05,${80 + m}`,
        ),
      ),
    },
    logHeader: "focus_m,t,focal_mm",
    cells: (i) =>
      [
        (3 + 2 * Math.sin(i / 90) + jitter(i)).toFixed(3),
        (4 + Math.sin(i / 140) + jitter(i + 3)).toFixed(2),
        (45 + 12 * Math.sin(i / 200) + jitter(i + 5)).toFixed(2),
      ].join(","),
  });
}

describe("the data script of a take", () => {
  it("prints the readout as the builder does, on every frame of every take", () => {
    for (const distances of ["metric", "imperial", "both"] as const) {
      for (const t of logged) {
        const open = received(t, distances);
        for (let i = 0; i < open.record.frames; i++) {
          const values = frameValues(t, i);
          if (values === null) throw new Error("no values");
          const name = `${t.take.address} frame ${i}`;
          expect(readout(open.valuesAt(i), open.record.sources, distances), name).toEqual(
            readout(values, readoutSources(t), distances),
          );
          expect(furtherReadout(open.valuesAt(i)), name).toEqual(furtherReadout(values));
        }
      }
    }
  });

  it("prints alike while focus, stop and zoom move on every frame", () => {
    const t = restless(1440);
    const open = received(t);
    for (let i = 0; i < 1440; i++) {
      const values = frameValues(t, i);
      if (values === null) throw new Error("no values");
      expect(readout(open.valuesAt(i), open.record.sources, "both"), `frame ${i}`).toEqual(
        readout(values, readoutSources(t), "both"),
      );
      expect(furtherReadout(open.valuesAt(i)), `frame ${i}`).toEqual(furtherReadout(values));
    }
  });

  it("stays under 60 KB for 1,440 frames, even when nothing is ever held", () => {
    const bytes = Buffer.byteLength(takeDataScript("2030-02-03", restless(1440), "both")?.text ?? "");
    expect(bytes).toBeLessThan(60_000);
    expect(bytes).toBeGreaterThan(1000);
  });

  it("gives the focus back to the last bit", () => {
    const t = restless(200);
    expect(Array.from(received(t).focusDioptres)).toEqual(Array.from(t.perFrame?.focusDioptres ?? []));
  });

  it("says on a frame of a gap that each of the twelve figures is not logged", () => {
    const open = received(zoom);
    const entries = readout(open.valuesAt(340), open.record.sources, "metric");
    expect(entries).toHaveLength(12);
    expect([...entries, ...furtherReadout(open.valuesAt(340))].map((e) => e.value)).toEqual(new Array(16).fill("not logged"));
    expect(open.valuesAt(333).logged && open.valuesAt(351).logged).toBe(true);
  });

  it("is not made for a take without a logged frame", () => {
    const withoutLog = summary.takes.filter((t) => t.middleFrame === null);
    expect(withoutLog).not.toEqual([]);
    for (const t of withoutLog) {
      expect(takeRecord(t, "metric"), t.take.address).toBeNull();
    }
  });

  it("is one call with plain data", () => {
    const script = takeDataScript("2031-05-06", zoom, "metric");
    expect(script?.path).toBe("days/2031-05-06/takes/a-12-2.data.js");
    expect(script?.text).toMatch(/^lensDaybookTake\(\{.*\}\);\n$/s);
    expect(JSON.parse((script?.text ?? "").slice("lensDaybookTake(".length, -3))).toEqual(takeRecord(zoom, "metric"));
  });

  it("carries what notes say without ending the script, whatever they say", () => {
    const nasty = { ...zoom, take: { ...zoom.take, clip: '</script><!-- "\u2028' } };
    expect(received(nasty).record.clip).toBe('</script><!-- "\u2028');
  });
});

describe("a frame as text", () => {
  const open = received(zoom);

  it("names take, timecode and frame, then a line a figure with unit and source", () => {
    const lines = frameAsText(open, 0, "metric").split("\n");
    expect(lines[0]).toContain("12 take 2 A, clip A009C002");
    expect(lines[1]).toBe("14:22:07:11, frame 1 of 754");
    expect(lines).toHaveLength(2 + 12 + 4);
    expect(lines[2]).toBe("Focus distance: 2.40\u00a0m (logged)");
  });

  it("gives distances in the units that the page shows", () => {
    // 2.40 m is 94.488 in: 7 ft and 10.488 in, to a quarter 10 1/2 in
    expect(frameAsText(open, 0, "imperial").split("\n")[2]).toBe("Focus distance: 7'\u00a010\u00a01/2\" (logged)");
  });

  it("as TSV has a row of names with units and a row of plain numbers", () => {
    const rows = frameAsTsv(open, 0).split("\n");
    expect(rows).toHaveLength(2);
    const [names = [], values = []] = rows.map((row) => row.split("\t"));
    expect(names).toHaveLength(values.length);
    const value = (name: string) => values[names.indexOf(name)];
    expect(value("timecode")).toBe("14:22:07:11");
    expect(value("focus_m")).toBe("2.400");
    expect(value("frame")).toBe("1");
    expect(Number(value("t_stop"))).toBe(4);
    expect(values.every((cell) => cell !== "" && !cell.includes("\u2212"))).toBe(true);
  });

  it("writes infinity and absence as words in TSV", () => {
    const at = (frame: number, name: string) => {
      const [names = [], values = []] = frameAsTsv(open, frame)
        .split("\n")
        .map((row) => row.split("\t"));
      return values[names.indexOf(name)];
    };
    expect(at(700, "focus_m")).toBe("inf");
    expect(at(340, "focus_m")).toBe("not logged");
    expect(at(340, "calibration")).toBe("not logged");
  });
});
