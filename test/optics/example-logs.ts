/** Reads the two example shows just enough for the optics tests: takes, their lens, and focus and stop per frame. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { CalibrationPointValues, CoefficientConvention, CoefficientName } from "../../src/optics/convention.ts";
import { COEFFICIENTS } from "../../src/optics/convention.ts";
import { exactStop } from "../../src/optics/stop-series.ts";
import type { FrameRate } from "../../src/time/frame-rate.ts";
import { parseTimecode } from "../../src/time/timecode.ts";

export const EXAMPLES = join(import.meta.dirname, "../../../shared/example");
export const EXAMPLES_PRESENT = existsSync(EXAMPLES);

export interface ExampleTake {
  readonly path: string;
  readonly lens: string;
  readonly mode: string;
  readonly captureFps: number;
  readonly rate: FrameRate;
  readonly dioptres: Float64Array;
  readonly columns: ReadonlyMap<string, Float64Array>;
  readonly keys: ReadonlyMap<string, string>;
}

export type Row = ReadonlyMap<string, string>;

/** A CSV with `# key: value` lines; comma, semicolon or tab; quotes as in the examples. */
export function readTable(file: string): { readonly keys: Map<string, string>; readonly header: string[]; readonly rows: Row[] } {
  const keys = new Map<string, string>();
  const lines = readFileSync(file, "utf8")
    .replace(/^\uFEFF/, "")
    .split(/\r?\n/);
  const table = lines.filter((line) => {
    const key = /^# ([a-z_]+): (.*)$/.exec(line);
    if (key) keys.set(key[1]!, key[2]!.trim());
    return line !== "" && !line.startsWith("#");
  });
  const mark = [";", "\t", ","].find((m) => table[0]!.includes(m))!;
  const split = (line: string) => {
    const cells: string[] = [];
    for (const part of line.matchAll(new RegExp(`(?:^|${mark})(?:"((?:[^"]|"")*)"|([^${mark}]*))`, "g")))
      cells.push(part[1] ?? part[2]!);
    return cells;
  };
  const header = split(table[0]!).map((h) => h.trim());
  return {
    keys,
    header,
    rows: table.slice(1).map((line) => new Map(split(line).map((cell, i) => [header[i] ?? "", cell.trim()]))),
  };
}

/** OpenTrackIO samples as rows: radial terms alternate between numerator and denominator, lengths of shading are mm. */
function readSamples(file: string): ReturnType<typeof readTable> {
  const rows = readFileSync(file, "utf8")
    .trim()
    .split("\n")
    .map((text): Row => {
      const { lens, timing } = JSON.parse(text);
      const two = (n: number) => String(n).padStart(2, "0");
      const { hours, minutes, seconds, frames } = timing.timecode;
      return new Map([
        ["timecode", `${two(hours)}:${two(minutes)}:${two(seconds)};${two(frames)}`],
        ["focus_m", String(lens.focusDistance ?? "")],
        ["t", String(lens.tStop)],
        ["f", String(lens.fStop)],
        ["focal_mm", String(lens.pinholeFocalLength)],
        ["k1", String(lens.distortion[0].radial[0])],
        ["k4", String(lens.distortion[0].radial[1])],
        ["k2", String(lens.distortion[0].radial[2])],
        ["a1", String(lens.exposureFalloff.a1)],
        ["a2", String(lens.exposureFalloff.a2)],
      ]);
    });
  const keys = new Map(
    Object.entries({
      camera: "A",
      slate: "85",
      take: "2",
      lens: "L55",
      model: "brown-conrady",
      direction: "distort",
      radius: "mm",
      shading_radius: "mm",
    }),
  );
  return { keys, header: ["timecode"], rows };
}

const WHEEL: Readonly<Record<string, string>> = {
  "Time code": "timecode",
  "Distance (cm)": "focus_cm",
  Opening: "t",
  "Zoom (mm)": "focal_mm",
};
const METRES: Readonly<Record<string, number>> = {
  focus_m: 1,
  focus_mm: 0.001,
  focus_cm: 0.01,
  focus_ft: 0.3048,
  focus_in: 0.0254,
};
const FRONT_TO_IMAGE_M: Readonly<Record<string, number>> = { L27: 0.1515 };
/** wide: the second camera's clock is three frames behind from here on. */
const CLOCK = { camera: "B", frames: 3, from: "10:15:30;00" };

export function readTakes(show: "basic" | "wide"): ExampleTake[] {
  const days = join(EXAMPLES, show, "days");
  return readdirSync(days).flatMap((date) => readDay(show, join(days, date), date));
}

function readDay(show: "basic" | "wide", folder: string, date: string): ExampleTake[] {
  const wide = show === "wide";
  const logs = readdirSync(join(folder, "logs"))
    .filter((name) => !name.includes("second"))
    .sort((a, b) => Number(a.startsWith("b-day")) - Number(b.startsWith("b-day")))
    .map((name) => (name.endsWith(".jsonl") ? readSamples : readTable)(join(folder, "logs", name)));
  return readTable(join(folder, "notes.csv")).rows.flatMap((note): ExampleTake[] => {
    const pal = note.get("rate") === "25";
    const rate = pal ? { num: 25, denom: 1 } : wide ? { num: 30000, denom: 1001 } : { num: 24, denom: 1 };
    const frameOf = (text: string) => {
      const read = parseTimecode(text, rate, wide && !pal);
      return read.ok ? read.frame : Number.NaN;
    };
    const start = frameOf(note.get("tc_in")!);
    const day = wide && !pal ? 2589408 : 86400 * Math.round(rate.num / rate.denom);
    const frames = ((frameOf(note.get("tc_out")!) - start + day) % day) + (wide ? 1 : 0);
    const log = logs.find(({ keys, header }) => {
      if (keys.has("clip")) return keys.get("clip") === note.get("clip");
      if (keys.has("slate"))
        return (
          keys.get("slate") === note.get("slate") &&
          keys.get("take") === note.get("take") &&
          keys.get("camera") === note.get("camera")
        );
      return keys.has("camera")
        ? keys.get("camera") === note.get("camera")
        : note.get("slate") === "82A" && note.get("take") === "1" && header[0] === "Time code";
    });
    if (log === undefined) return [];
    const lens = log.keys.get("lens") ?? note.get("lens")!;
    const columns = new Map<string, Float64Array>();
    const put = (name: string, frame: number, value: number) => {
      if (!columns.has(name)) columns.set(name, new Float64Array(frames).fill(Number.NaN));
      const column = columns.get(name)!;
      if (Number.isNaN(column[frame]!)) column[frame] = value;
    };
    const offset = Number(log.keys.get("clock_offset_frames") ?? 0);
    for (const row of log.rows) {
      let frame: number;
      if (row.has("frame")) frame = Number(row.get("frame"));
      else if (row.has("time_s")) {
        const from = log.keys.has("start_timecode") ? frameOf(log.keys.get("start_timecode")!) - start : 0;
        frame = from + Math.round((Number(row.get("time_s")) * rate.num) / rate.denom);
      } else {
        let label = frameOf(row.get("timecode") ?? row.get("Time code") ?? "") + offset;
        if (wide && note.get("camera") === CLOCK.camera && date === "2032-09-14" && label >= frameOf(CLOCK.from))
          label += CLOCK.frames;
        frame = (label - start + day) % day;
      }
      if (!(frame >= 0 && frame < frames)) continue;
      for (const [header, text] of row) {
        const name = WHEEL[header] ?? header;
        const value = text === "inf" ? Number.POSITIVE_INFINITY : Number(text === "" ? Number.NaN : text.replace(",", "."));
        if (name === "focus_dpt") put("dioptres", frame, value);
        else if (METRES[name] !== undefined) {
          const front = log.keys.get("distance_from") === "front" ? FRONT_TO_IMAGE_M[lens]! : 0;
          put("dioptres", frame, 1 / (value * METRES[name] + front));
        } else if (!Number.isNaN(value)) put(name, frame, value);
      }
    }
    if (!columns.has("dioptres")) return [];
    const address = [note.get("camera"), note.get("slate"), note.get("take")]
      .join("-")
      .normalize("NFD")
      .replace(/[\u0300-\u036f]/g, "")
      .toLowerCase();
    const clip = note.get("slate") === "11B" ? `takes[clip=${note.get("clip")}]` : null;
    return [
      {
        path: clip ?? `takes[address=${address.replace(/[^a-z0-9]+/g, "-").replace(/-$/, "")}]`,
        lens,
        mode: note.get("sensor_mode") || (wide ? "OPEN" : "FULL"),
        captureFps: Number(note.get("capture_fps") || rate.num / rate.denom),
        rate,
        dioptres: columns.get("dioptres")!,
        columns,
        keys: log.keys,
      },
    ];
  });
}

/** Convention words of a table's or a log's key lines. */
export function readConvention(keys: ReadonlyMap<string, string>): CoefficientConvention {
  const area = keys.get("area_mm")?.split("x").map(Number);
  return {
    model: (keys.get("model") ?? null) as CoefficientConvention["model"],
    direction: (keys.get("direction") ?? null) as CoefficientConvention["direction"],
    radius: (keys.get("radius") ?? null) as CoefficientConvention["radius"],
    areaMm: area ? { width: area[0]!, height: area[1]! } : null,
    squeezeState: null,
    shadingRadius: (keys.get("shading_radius") ?? null) as CoefficientConvention["shadingRadius"],
    shadingValues: (keys.get("shading_values") ?? "loss") as CoefficientConvention["shadingValues"],
  };
}

export function readCalibration(file: string): { convention: CoefficientConvention; points: CalibrationPointValues[] } {
  const table = readTable(file);
  return {
    convention: readConvention(table.keys),
    points: table.rows.map((row) => ({
      focalMm: Number(row.get("focal_mm")),
      focusDioptres: row.get("focus_m") === "inf" ? 0 : 1 / Number(row.get("focus_m")),
      tStop: row.get("t") ? exactStop(Number(row.get("t"))) : null,
      coefficients: Object.fromEntries(
        COEFFICIENTS.filter((name: CoefficientName) => row.get(name)).map((name) => [name, Number(row.get(name))]),
      ),
    })),
  };
}

export interface ExampleCheck {
  readonly path: string;
  readonly near?: number;
  readonly tol?: number;
  readonly from?: number;
  readonly to?: number;
  readonly length?: number;
  readonly equal?: unknown;
}

export function readExpected(show: "basic" | "wide", topic: string): ExampleCheck[] {
  const expected = JSON.parse(readFileSync(join(EXAMPLES, `${show}.expected.json`), "utf8"));
  return Object.values(expected.days as Record<string, Record<string, ExampleCheck[]>>).flatMap((day) => day[topic] ?? []);
}
