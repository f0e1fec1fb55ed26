/**
 * One figure, every file: what a pack of the demo says in day.json is what its tables, its timelines and its edit lists say, and
 * what lens.csv says of a frame is what OpenTrackIO, USD and the maps say of it, each in its own unit.
 */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, inject, it } from "vitest";
import { numberOf, type Row, readEdl, readJson, readTable } from "../helpers/pack-files.ts";

const out = inject("demoOut");
const dates = readdirSync(join(out, "packs")).sort();
/** Tables are written to twelve significant digits, day.json to all of them. */
const NEAR = 1e-11;

// biome-ignore lint/suspicious/noExplicitAny: the shape is what is tested
type Take = any;

function same(cell: string | undefined, value: number | "inf" | null | undefined, what: string): void {
  if (value === null || value === undefined) {
    expect(cell, what).toBe("");
    return;
  }
  const [seen, wanted] = [numberOf(cell ?? ""), numberOf(String(value))];
  const holds = cell !== "" && (seen === wanted || Math.abs(seen - wanted) <= NEAR * Math.abs(wanted));
  expect(holds, `${what}: ${cell} where day.json has ${value}`).toBe(true);
}

const orEmpty = (value: unknown): string => (value === null ? "" : String(value));
const rateOf = ({ rate }: Take): string => (rate.denom === 1 ? String(rate.num) : `${rate.num}/${rate.denom}`);

describe.each(dates)("the pack of %s", (date) => {
  const pack = join(out, "packs", date);
  const day = readJson(pack, "day.json");
  const takes: readonly Take[] = day.takes;
  const cameras = [...new Set(takes.map((take) => take.camera))];

  it("has in takes.csv what day.json has, cell by cell", () => {
    const rows = readTable(pack, "takes.csv");
    expect(rows.map((row) => row.address)).toEqual(takes.map((take) => take.address));
    for (const [i, take] of takes.entries()) {
      const row = rows[i] as Row;
      for (const key of ["slate", "take", "camera", "scene", "roll", "clip", "circled", "status", "plate", "remarks"]) {
        expect(row[key], `${take.address} ${key}`).toBe(orEmpty(take[key]));
      }
      expect([row.timecode_in, row.timecode_out, row.rate]).toEqual([
        orEmpty(take.timecodeIn),
        orEmpty(take.timecodeOut),
        rateOf(take),
      ]);
      expect([row.lens, row.lens_serial]).toEqual([orEmpty(take.lens?.id ?? null), orEmpty(take.lens?.serial ?? null)]);
      const figures = {
        duration_frames: take.durationFrames,
        focal_min_mm: take.focalMm?.min,
        focal_max_mm: take.focalMm?.max,
        t_widest: take.tStop?.widest,
        t_deepest: take.tStop?.deepest,
        focus_near_m: take.focus?.nearestM,
        focus_far_m: take.focus?.farthestM,
        pulls: take.pulls?.length,
        frames_missing: take.log.framesMissing,
      };
      for (const [name, value] of Object.entries(figures)) same(row[name], value, `${take.address} ${name}`);
    }
  });

  it("has in findings.csv the findings of day.json", () => {
    const keys = ["code", "severity", "file", "line", "column", "field", "message", "hint", "take"];
    const rows = readTable(pack, "findings.csv").map((row) => keys.map((key) => row[key]));
    expect(rows).toEqual(day.findings.map((finding: Take) => keys.map((key) => orEmpty(finding[key]))));
  });

  it("has in bins.csv a row a take with its timecodes, length and circle", () => {
    const rows = readTable(pack, "editorial", "bins.csv").map((row) =>
      [row.address, row.clip, row.timecode_in, row.timecode_out, row.rate, row.duration_frames, row.circled].join(" "),
    );
    const expected = takes.map((t) =>
      [t.address, orEmpty(t.clip), orEmpty(t.timecodeIn), orEmpty(t.timecodeOut), rateOf(t), t.durationFrames, t.circled].join(" "),
    );
    expect([...rows].sort()).toEqual([...expected].sort());
  });

  it("has in markers.csv the pulls and gaps of day.json, and a plate for each", () => {
    const rows = readTable(pack, "editorial", "markers.csv");
    const of = (kind: string) => rows.filter((row) => row.kind === kind);
    const pulls = takes.flatMap((take) => (take.pulls ?? []).map((pull: Take) => ({ take, pull })));
    expect(of("focus-pull")).toHaveLength(pulls.length);
    for (const [i, { take, pull }] of pulls.entries()) {
      const row = of("focus-pull")[i] as Row;
      expect([row.address, row.timecode_from, row.timecode_to]).toEqual([take.address, pull.startTimecode, pull.endTimecode]);
      same(row.frame, pull.startFrame, "frame");
      same(row.frames, pull.frames, "frames");
      same(row.from_m, pull.fromM, "from_m");
      same(row.to_m, pull.toM, "to_m");
      same(row.peak_dioptres_per_second, pull.peakDioptresPerSecond, "peak");
    }
    expect(of("log-gap").map((row) => [row.timecode_from, row.frames])).toEqual(
      takes.flatMap((take) => take.log.gaps.map((gap: Take) => [gap.from, String(gap.frames)])),
    );
    expect(of("plate").map((row) => row.address)).toEqual(takes.filter((take) => take.plate !== null).map((take) => take.address));
  });

  it.each(cameras)("has in the timeline of camera %s the figures of day.json, and its edit list tells the same", (camera) => {
    const mine = takes.filter((take) => take.camera === camera && take.timecodeIn !== null);
    const timeline = readJson(pack, "editorial", `${day.show.code}-${date}-${camera}.otio`);
    const clips: readonly Take[] = timeline.tracks.children[0].children;
    expect(clips).toHaveLength(mine.length);
    const names = readdirSync(join(pack, "editorial")).filter((name) => name.startsWith(`${day.show.code}-${date}-${camera}`));
    const events = names.filter((name) => name.endsWith(".edl")).flatMap((name) => readEdl(pack, "editorial", name));
    expect(events).toHaveLength(mine.length);
    for (const [i, take] of mine.entries()) {
      const { metadata, source_range, markers, media_references } = clips[i];
      const told = metadata["lens-daybook"];
      for (const key of Object.keys(told).filter((name) => Object.hasOwn(take, name))) {
        expect(told[key], `${take.address} ${key}`).toEqual(take[key]);
      }
      expect([told.framesLogged, told.framesMissing]).toEqual([take.log.framesLogged, take.log.framesMissing]);
      expect(source_range.duration.value).toBe(take.durationFrames);
      const event = events.find((e) => e.source[0].replaceAll(";", ":") === take.timecodeIn.replaceAll(";", ":"));
      expect(event, take.address).toMatchObject({
        source: [take.timecodeIn, take.timecodeOut],
        circled: take.circled,
        sourceFile: media_references.DEFAULT_MEDIA.name,
      });
      expect(event?.locators).toHaveLength(markers.length);
      const pulls = markers.filter((m: Take) => m.metadata["lens-daybook"].kind === "focus-pull");
      expect(pulls.map((m: Take) => m.metadata["lens-daybook"])).toMatchObject(
        (take.pulls ?? []).map(({ startFrame, frames, fromM, toM, peakDioptresPerSecond }: Take) => {
          return { startFrame, frames, fromM, toM, peakDioptresPerSecond };
        }),
      );
    }
  });

  it("lists in its hash list every file with the size that it has", () => {
    const list = readdirSync(join(pack, "ascmhl"))
      .filter((name) => name.endsWith(".mhl"))
      .sort()
      .at(-1) as string;
    const listed = [...readFileSync(join(pack, "ascmhl", list), "utf8").matchAll(/<path size="(\d+)">([^<]+)<\/path>/g)];
    const files = readdirSync(pack, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.parentPath.endsWith("ascmhl"))
      .map((entry) => join(entry.parentPath, entry.name).slice(pack.length + 1));
    expect(listed.map(([, , path]) => path).sort()).toEqual(files.sort());
    for (const [, size, path] of listed) expect([path, statSync(join(pack, path as string)).size]).toEqual([path, Number(size)]);
  });
});
