/** A plate beside its hero on the take sheet: every value of both, and what differs in words. */
import { NOT_CALCULATED, NOT_RECORDED } from "../../format/absent.ts";
import { dioptres } from "../../format/amounts.ts";
import { roll, shutter, tilt } from "../../format/degrees.ts";
import { distance, distanceRange } from "../../format/length.ts";
import { fixed, trimmed } from "../../format/number.ts";
import { signedPercent } from "../../format/percent.ts";
import { NBSP } from "../../format/space.ts";
import { stopRange, stops } from "../../format/stop.ts";
import { sentenceCase } from "../../format/words.ts";
import { type PlateDifference, type PlateMates, plateMates } from "../../summary/plate-mates.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { DayContext } from "../day/day-context.ts";
import { hrefTo, platePath, takePath } from "../links.ts";
import { type Distances, lensName, plateWords, takeName } from "../names.ts";
import { cell, column, FIXED, type Row, row, type TableModel, table, textOr } from "../table.ts";
import { focalRange } from "./take-facts.ts";
import { calibrationWords } from "./take-readout.ts";

export interface MateLink {
  readonly label: string;
  readonly about: string;
  readonly href: string;
}

export interface MatesView {
  readonly has: boolean;
  readonly title: string;
  readonly sentence: string;
  readonly hasTable: boolean;
  readonly table: TableModel;
  readonly hasLinks: boolean;
  /** The take that it is set against, then the other plates and heroes of the set-up. */
  readonly links: readonly MateLink[];
  readonly hasSheet: boolean;
  readonly sheet: MateLink;
}

const NO_MATES: MatesView = {
  has: false,
  title: "",
  sentence: "",
  hasTable: false,
  table: table("mates-table", "", [], []),
  hasLinks: false,
  links: [],
  hasSheet: false,
  sheet: { label: "", about: "", href: "" },
};

export function matesView(t: TakeSummary, day: DayContext, path: string): MatesView {
  const stopLimit = day.site.show.limits.stopDifference;
  const mates = plateMates(t, day.takes, stopLimit);
  const system = day.site.show.distances;
  if (mates === null) return NO_MATES;
  const link = (other: TakeSummary): MateLink => ({
    label: takeName(other.take),
    about: plateWords(other.take) ?? "not marked as a plate",
    href: hrefTo(path, takePath(day.summary.date, other.take.address)),
  });
  const { against, difference } = mates;
  const kind = mates.role === "plate" ? (t.take.plate ?? "plate") : "clean";
  return {
    has: true,
    title: mates.role === "plate" ? `${sentenceCase(kind)} plate against its hero` : "Hero against its clean plate",
    sentence: sentenceOf(mates, t, difference, stopLimit),
    hasTable: against !== null,
    table: mateTable(t, mates, stopLimit, system, (other) => link(other).href),
    hasLinks: against !== null || mates.others.length > 0,
    links: [...(against === null ? [] : [against]), ...mates.others].map(link),
    hasSheet: t.take.plate !== null,
    sheet: {
      label: `Plate sheet ${t.take.slate}`,
      about: "a page to print",
      href: t.take.plate === null ? "" : hrefTo(path, platePath(day.summary.date, t.take.slate)),
    },
  };
}

function sentenceOf(mates: PlateMates, t: TakeSummary, difference: PlateDifference | null, stopLimit: number): string {
  if (mates.against === null || difference === null) {
    if (mates.role === "hero") return `No clean plate of ${mates.slate} on camera ${t.take.camera} is marked in this day's notes.`;
    return `No take of slate ${mates.slate} on camera ${t.take.camera} on this day: the hero may have been shot on another one.`;
  }
  const apart = differing(difference, stopLimit);
  return apart === 0
    ? "Nothing differs beyond what a clean plate may, as far as both are recorded."
    : `${apart === 1 ? "One line differs" : `${apart} lines differ`}; each says by how much.`;
}

/** Below these two figures read alike: a centimetre, a tenth of a degree, a twentieth of a stop, a tenth of a degree of shutter. */
const ALIKE = { heightM: 0.01, degrees: 0.1, stops: 0.05, shutterDeg: 0.1, percent: 0.05 } as const;

type Words = readonly [words: string, state: "same" | "differs" | "unknown"];

const UNKNOWN: Words = ["cannot be compared", "unknown"];

function differing(d: PlateDifference, stopLimit: number): number {
  return Object.values(wordsOf(d, stopLimit, "metric")).filter(([, state]) => state === "differs").length;
}

/** Every line's difference, the plate's against the hero's. */
function wordsOf(d: PlateDifference, stopLimit: number, system: Distances) {
  const { match } = d;
  const amount = (by: number | null, alike: number, write: (by: number) => string, more: string, less: string): Words => {
    if (by === null) return UNKNOWN;
    return Math.abs(by) < alike ? ["same", "same"] : [`${write(Math.abs(by))} ${by > 0 ? more : less}`, "differs"];
  };
  const alike = (same: boolean | null, other: string): Words =>
    same === null ? UNKNOWN : same ? ["same", "same"] : [other, "differs"];
  const angle = (by: number): string => `${fixed(by, 1)}°`;
  return {
    lens: alike(match.sameLens, "another lens"),
    serial: alike(d.sameSerial, "another serial number"),
    mode: alike(d.sameMode, "another sensor mode"),
    focal: alike(
      match.focalDiffers === null ? null : !match.focalDiffers,
      "another focal length, more than 2 % outside the hero's",
    ),
    stop: stopWords(match.stopsApart, stopLimit),
    focus: focusWords(match.dioptresApart, match.dioptresAllowed),
    height: amount(d.heightM, ALIKE.heightM, (by) => distance(by, system), "higher", "lower"),
    tilt: amount(d.tiltDeg, ALIKE.degrees, angle, "further up", "further down"),
    roll: amount(d.rollDeg, ALIKE.degrees, angle, "further clockwise", "further anticlockwise"),
    filters: alike(d.sameFilters, "other filters"),
    nd: amount(d.ndStops, ALIKE.stops, stops, "more", "less"),
    shutter: amount(d.shutterDeg, ALIKE.shutterDeg, angle, "wider", "narrower"),
    look:
      d.cornerPercent === null
        ? UNKNOWN
        : Math.abs(d.cornerPercent) < ALIKE.percent
          ? (["same to 0.05 %", "same"] as const)
          : ([`${fixed(Math.abs(d.cornerPercent), 2)}${NBSP}% apart: each with its own lens file`, "differs"] as const),
  } satisfies Readonly<Record<string, Words>>;
}

function stopWords(apart: number | null, limit: number): Words {
  if (apart === null) return UNKNOWN;
  if (apart <= 0) return ["inside what the hero used", "same"];
  return apart <= limit ? [`within ${trimmed(limit, 2)} stop`, "same"] : [`${stops(apart)} outside what the hero used`, "differs"];
}

function focusWords(apart: number | null, allowed: number | null): Words {
  if (apart === null) return UNKNOWN;
  if (apart <= 0) return ["inside what the hero used", "same"];
  const by = `${dioptres(apart)} dioptre`;
  if (allowed === null) return [`${by} outside what the hero used; depth of field not calculated`, "differs"];
  return apart <= allowed
    ? [`${by} outside, within the depth of field (${dioptres(allowed)})`, "same"]
    : [`${by} outside, beyond the depth of field (${dioptres(allowed)})`, "differs"];
}

function mateTable(
  t: TakeSummary,
  { against, difference, role }: PlateMates,
  stopLimit: number,
  system: Distances,
  href: (other: TakeSummary) => string,
): TableModel {
  if (against === null || difference === null) return table("mates-table", "", [], []);
  const [hero, plate] = role === "plate" ? [against, t] : [t, against];
  const words = wordsOf(difference, stopLimit, system);
  const line = (term: string, value: (one: TakeSummary) => string | null, absent: string, [said, state]: Words): Row =>
    row(cell(term), [
      textOr(value(hero), absent),
      textOr(value(plate), absent),
      cell(said, { absent: state === "unknown", cls: state === "differs" ? "differs" : "" }),
    ]);
  const takeCell = (one: TakeSummary) =>
    one === t ? cell(`${takeName(one.take)}, this take`) : cell(takeName(one.take), { href: href(one) });
  const kind = plate.take.plate ?? "plate";
  return table(
    "mates-table",
    `${takeName(hero.take)}, hero, against ${takeName(plate.take)}, ${kind}`,
    [column("Setting"), column("Hero"), column(sentenceCase(kind)), column("Difference", { unit: `${kind} against hero` })],
    [
      row(cell("Take"), [takeCell(hero), takeCell(plate), cell("")]),
      line("Lens", (o) => (o.take.lensId === null ? null : lensName(o.take.lens, o.take.lensId)), NOT_RECORDED, words.lens),
      line("Lens serial", (o) => o.take.lens?.serial ?? null, NOT_RECORDED, words.serial),
      line("Sensor mode", (o) => o.take.sensorMode?.sensorMode ?? null, NOT_RECORDED, words.mode),
      line("Focal length", (o) => (o.focal === null ? null : focalRange(o.focal.minMm, o.focal.maxMm)), NOT_RECORDED, words.focal),
      line("Stop", (o) => (o.tStop === null ? null : stopRange(o.tStop.widest, o.tStop.deepest)), NOT_RECORDED, words.stop),
      line(
        "Focus",
        (o) => (o.focus === null ? null : distanceRange(o.focus.nearestM, o.focus.farthestM, system)),
        NOT_RECORDED,
        words.focus,
      ),
      line(
        "Lens height",
        (o) => (o.cameraHeightM === null ? null : distance(o.cameraHeightM.value, system)),
        NOT_RECORDED,
        words.height,
      ),
      line("Tilt", (o) => (o.tiltDeg === null ? null : tilt(o.tiltDeg.value)), NOT_RECORDED, words.tilt),
      line("Roll", (o) => (o.rollDeg === null ? null : roll(o.rollDeg.value)), NOT_RECORDED, words.roll),
      line("Filters", (o) => o.filters, NOT_RECORDED, words.filters),
      line("ND", (o) => (o.ndStops === null ? null : stops(o.ndStops)), NOT_RECORDED, words.nd),
      line(
        "Shutter",
        (o) => (o.shutterDeg === null ? null : shutter(o.shutterDeg, o.take.captureFps)),
        NOT_RECORDED,
        words.shutter,
      ),
      line("Distortion at corner", lookState, NOT_CALCULATED, words.look),
    ],
    { cls: FIXED },
  );
}

/** "−2.60 %, kit, between points". */
function lookState(one: TakeSummary): string | null {
  if (one.distortionPercent === null) return null;
  const from = calibrationWords(one.calibration);
  return [signedPercent(one.distortionPercent.corner), from].filter((text) => text !== "").join(", ");
}
