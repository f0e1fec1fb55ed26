/** The readout of one frame of a take: twelve figures with unit and source. The builder and the page in the browser share it. */
import { metresFromDioptres } from "../core/quantity.ts";
import { NOT_CALCULATED, NOT_LOGGED, NOT_RECORDED } from "./absent.ts";
import { degrees, tilt } from "./degrees.ts";
import { distance } from "./length.ts";
import { fixed } from "./number.ts";
import { percent } from "./percent.ts";
import { withUnit } from "./space.ts";
import { stops } from "./stop.ts";
import type { PageDistances } from "./units.ts";

/** Values of one frame; NaN = there is none. */
export interface FrameValues {
  readonly logged: boolean;
  readonly focusDioptres: number;
  readonly nearDioptres: number;
  readonly farDioptres: number;
  readonly tStop: number;
  readonly focalMm: number;
  readonly hyperfocalM: number;
  readonly acrossDeg: number;
  readonly upDeg: number;
  /** Percent and stops at corner, mid-side, mid-top. */
  readonly distortion: readonly [number, number, number];
  readonly shading: readonly [number, number, number];
  readonly pupilMm: number;
  readonly heightM: number;
  readonly tiltDeg: number;
  /** Source word of the lens look, such as "kit, between points"; empty without one. */
  readonly lookSource: string;
  /** Whether the calibration served, in words. */
  readonly calibration: string;
}

/** Source words that hold for the whole take. */
export interface ReadoutSources {
  readonly focus: string;
  readonly tStop: string;
  readonly focal: string;
  readonly pupil: string;
  readonly height: string;
  readonly tilt: string;
}

export interface ReadoutEntry {
  readonly term: string;
  readonly value: string;
  readonly source: string;
  /** `absent`, `v-focus`, `v-stop` or empty. */
  readonly cls: string;
}

/** The twelve figures of the take sheet. On a frame that was not logged each says so. */
export function readout(v: FrameValues, sources: ReadoutSources, system: PageDistances): readonly ReadoutEntry[] {
  const far = (dioptres: number) => distance(metresFromDioptres(dioptres), system);
  const all = [
    entry("Focus distance", v.focusDioptres, far, NOT_LOGGED, sources.focus, "v-focus"),
    entry("Sharp from", v.nearDioptres, far, NOT_CALCULATED, "calculated"),
    entry("Sharp to", v.farDioptres, far, NOT_CALCULATED, "calculated"),
    entry("Stop", v.tStop, (t) => `T${fixed(t, 2)}`, NOT_LOGGED, sources.tStop, "v-stop"),
    entry("Focal length", v.focalMm, (mm) => withUnit(fixed(mm, 1), "mm"), NOT_LOGGED, sources.focal),
    entry("Hyperfocal", v.hyperfocalM, (m) => distance(m, system), NOT_CALCULATED, "calculated"),
    entry("Angle of view, across", v.acrossDeg, degrees, NOT_CALCULATED, "calculated"),
    entry("Distortion at corner", v.distortion[0], percent, NOT_CALCULATED, v.lookSource),
    entry("Shading at corner", v.shading[0], stops, NOT_CALCULATED, v.lookSource),
    entry("Entrance pupil", v.pupilMm, (mm) => withUnit(fixed(mm, 0), "mm"), NOT_RECORDED, sources.pupil),
    entry("Lens height", v.heightM, (m) => distance(m, system), NOT_RECORDED, sources.height),
    entry("Tilt", v.tiltDeg, tilt, NOT_RECORDED, sources.tilt),
  ];
  return v.logged ? all : all.map(unlogged);
}

/** What the page adds at the frame: the other angle, distortion and shading at the other two points, the calibration. */
export function furtherReadout(v: FrameValues): readonly ReadoutEntry[] {
  const all = [
    entry("Angle of view, up and down", v.upDeg, degrees, NOT_CALCULATED, "calculated"),
    two("Distortion at side and top", v.distortion, "%", v.lookSource),
    two("Shading at side and top", v.shading, "stops", v.lookSource),
    { term: "Calibration", value: v.calibration, source: "", cls: "" },
  ];
  return v.logged ? all : all.map(unlogged);
}

function entry(
  term: string,
  value: number,
  write: (value: number) => string,
  absentWord: string,
  source: string,
  cls = "",
): ReadoutEntry {
  return Number.isNaN(value) ? absent(term, absentWord) : { term, value: write(value), source, cls };
}

function two(term: string, [, ...values]: readonly [number, number, number], unit: string, source: string): ReadoutEntry {
  if (values.some(Number.isNaN)) return absent(term, NOT_CALCULATED);
  return { term, value: withUnit(values.map((value) => fixed(value, 2)).join(", "), unit), source, cls: "" };
}

function unlogged(e: ReadoutEntry): ReadoutEntry {
  return absent(e.term, NOT_LOGGED);
}

function absent(term: string, word: string): ReadoutEntry {
  return { term, value: word, source: "", cls: "absent" };
}
