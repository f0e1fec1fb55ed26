/** The kit: cameras, the lens set, how alike its lenses are. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { grams } from "../../format/amounts.ts";
import { fixed, thousands, trimmed } from "../../format/number.ts";
import { signedStops, transmittanceText, tStop } from "../../format/stop.ts";
import { listWords, plural } from "../../format/words.ts";
import type { Kit, Lens, ShowInput } from "../../ingest/records.ts";
import { stopsBetween } from "../../optics/exposure.ts";
import type { LensCoverage } from "../../summary/coverage.ts";
import { radialCurves } from "../../summary/lens-curves.ts";
import { setCautions } from "../../summary/set-cautions.ts";
import { setConsistency } from "../../summary/set-consistency.ts";
import type { SetConsistency } from "../../summary/types.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { distanceInColumn, distanceUnit } from "../distances.ts";
import type { Fact } from "../facts.ts";
import { hrefTo, KIT_PATH, lensPaths } from "../links.ts";
import { type Distances, lensName } from "../names.ts";
import { pageBase } from "../page.ts";
import { setupsTable } from "../readers/coverage-facts.ts";
import { cell, column, FIXED, num, numOr, row, type TableModel, table, textOr } from "../table.ts";
import { type DrawingView, distortionDrawing, type KitDrawings, kitDrawings } from "./kit-drawings.ts";
import { lensFocal } from "./kit-facts.ts";
import { type CautionLine, cautionLine } from "./set-caution-words.ts";
import { setFacts } from "./set-facts.ts";

export interface KitPage extends PageModel {
  readonly about: string;
  readonly lenses: TableModel;
  readonly hasLenses: boolean;
  readonly drawings: KitDrawings;
  readonly set: readonly Fact[];
  readonly setCautions: readonly CautionLine[];
  readonly distortion: DrawingView;
  readonly hasDistortion: boolean;
  readonly undrawn: string;
  readonly fronts: TableModel;
  readonly hasFronts: boolean;
  readonly mass: TableModel;
  readonly hasMass: boolean;
  readonly massSentence: string;
  readonly cautions: readonly string[];
  readonly setups: TableModel;
  readonly hasSetups: boolean;
  readonly setupsSentence: string;
  readonly cameras: TableModel;
  readonly hasCameras: boolean;
}

const MASS_CAUTION =
  "Bare lenses only: motors, rods, supports, matte box, filters and cables are not counted. Rebalance with motors off and the lens secured and supported, stay within the rated limits of the rig and of the lens support, and follow local rules for overhead and vehicle rigs. The figures are not an engineering approval.";

export function kitPage(show: ShowInput, coverages: readonly LensCoverage[], context: SiteContext): KitPage {
  const { kit } = show;
  const { distances } = context.show;
  const set = setConsistency(kit.lenses, kit.modes);
  const primesFirst = [...set.lenses.filter((l) => l.kind === "prime"), ...set.lenses.filter((l) => l.kind === "zoom")];
  const radial = primesFirst.flatMap((l) => radialCurves(l, kit.calibration.get(l.id) ?? null, kit.modes[0] ?? null) ?? []);
  const massed = kit.lenses.filter((l) => l.massG !== null);
  return {
    ...pageBase(
      {
        path: KIT_PATH,
        title: "Kit",
        trail: [{ label: "Kit", path: KIT_PATH }],
        styles: ["day.css", "wide.css", "kit.css"],
        landscape: true,
      },
      context,
    ),
    about: about(kit),
    lenses: lensTable(kit, distances),
    hasLenses: kit.lenses.length > 0,
    drawings: kitDrawings(set.lenses),
    set: setFacts(set, distances),
    setCautions: setCautions(set).map(cautionLine),
    distortion: distortionDrawing(radial),
    hasDistortion: radial.length > 0,
    undrawn: undrawnSentence(
      set.lenses,
      radial.map((one) => one.lens),
    ),
    fronts: frontsTable(set),
    hasFronts: set.fronts.length > 0,
    mass: massTable(massed),
    hasMass: massed.length > 0,
    massSentence: massSentence(set),
    cautions: [MASS_CAUTION],
    setups: setupsTable(coverages, distances, true),
    hasSetups: coverages.some((coverage) => coverage.setups.length > 0),
    setupsSentence: setupsSentence(coverages),
    cameras: cameraTable(kit),
    hasCameras: kit.modes.length > 0,
  };
}

function undrawnSentence(lenses: readonly Lens[], drawn: readonly string[]): string {
  if (lenses.length === 0) return "No lens in kit/lenses.csv.";
  const without = lenses.filter((l) => !drawn.includes(l.id)).map((l) => l.id);
  return without.length === 0 ? "" : `No calibration table that can be read: ${listWords(without)}.`;
}

function about(kit: Kit): string {
  const primes = kit.lenses.filter((l) => l.kind === "prime").length;
  const zooms = kit.lenses.length - primes;
  const lenses = [primes > 0 ? plural(primes, "prime") : null, zooms > 0 ? plural(zooms, "zoom") : null].filter((w) => w !== null);
  const cameras = [...new Set(kit.modes.map((m) => m.camera))];
  const set = lenses.length === 0 ? "No lens in kit/lenses.csv." : `${listWords(lenses)}.`;
  return cameras.length === 0
    ? `${set} No camera in kit/cameras.csv.`
    : `${set} ${cameras.length === 1 ? "Camera" : "Cameras"} ${listWords(cameras)}.`;
}

function lensTable(kit: Kit, distances: Distances): TableModel {
  const paths = lensPaths(kit);
  const fastest = kit.lenses.reduce<number | null>(
    (least, l) => (l.widestT === null ? least : Math.min(least ?? l.widestT, l.widestT)),
    null,
  );
  const rows = kit.lenses.map((lens) => {
    const calibration = kit.calibration.get(lens.id);
    return row(cell(lens.id, { nb: true, href: hrefTo(KIT_PATH, paths.get(lens.id) ?? KIT_PATH) }), [
      cell(lensName(lens, lens.id), { nb: true }),
      textOr(lens.serial, NOT_RECORDED, { nb: true }),
      textOr(lensFocal(lens), NOT_RECORDED, { nb: true }),
      numOr(lens.widestT === null ? null : tStop(lens.widestT), NOT_RECORDED),
      numOr(lens.widestT === null || fastest === null ? null : signedStops(stopsBetween(fastest, lens.widestT)), NOT_RECORDED),
      numOr(lens.transmittance === null ? null : transmittanceText(lens.transmittance), NOT_RECORDED),
      numOr(lens.closeFocusM === null ? null : distanceInColumn(lens.closeFocusM, distances), NOT_RECORDED),
      numOr(lens.frontDiameterMm === null ? null : trimmed(lens.frontDiameterMm, 1), NOT_RECORDED),
      numOr(lens.lengthMm === null ? null : trimmed(lens.lengthMm, 1), NOT_RECORDED),
      numOr(lens.massG === null ? null : thousands(lens.massG), NOT_RECORDED),
      numOr(lens.squeeze === null ? null : trimmed(lens.squeeze, 3), NOT_RECORDED),
      textOr(calibration === undefined ? null : plural(calibration.points.length, "point"), "no table", { nb: true }),
    ]);
  });
  return table(
    "lens-table",
    "Lenses of the kit",
    [
      column("Lens"),
      column("Name"),
      column("Serial"),
      column("Focal length"),
      column("Widest", { unit: "T", num: true }),
      column("Slower than", { unit: "the fastest by", num: true }),
      column("Transmittance", { num: true }),
      column("Close focus", { unit: distanceUnit(distances), num: true }),
      column("Front", { unit: "mm", num: true }),
      column("Length", { unit: "mm", num: true }),
      column("Mass", { unit: "g", num: true }),
      column("Squeeze", { num: true }),
      column("Calibration"),
    ],
    rows,
  );
}

function frontsTable(set: SetConsistency): TableModel {
  return table(
    "fronts-table",
    "Front diameters and the lenses that have them",
    [column("Front", { unit: "mm" }), column("Lenses", { num: true }), column("Which")],
    set.fronts.map((f) => row(cell(trimmed(f.diameterMm, 1)), [num(String(f.lenses.length)), cell(listWords(f.lenses))])),
  );
}

/** Grams when the lens in the row gives way to the lens in the column. */
function massTable(lenses: readonly Lens[]): TableModel {
  const mass = (lens: Lens) => lens.massG ?? 0;
  return table(
    "mass-table",
    "Change in grams when the lens in the row gives way to the lens in the column",
    [column("From"), ...lenses.map((l) => column(l.id, { num: true }))],
    lenses.map((from) =>
      row(
        cell(from.id, { nb: true }),
        lenses.map((to) => (from === to ? cell("same", { num: true, cls: "same" }) : num(stepText(mass(to) - mass(from))))),
      ),
    ),
    { showCaption: true, cls: FIXED },
  );
}

function stepText(g: number): string {
  return g > 0 ? `+${fixed(g, 0)}` : fixed(g, 0);
}

function massSentence(set: SetConsistency): string {
  const step = set.massG?.largestStep ?? null;
  if (step === null) return "";
  return `Largest change between neighbours in focal length: ${step.from} to ${step.to}, ${grams(step.grams)}.`;
}

function setupsSentence(coverages: readonly LensCoverage[]): string {
  const onPlates = coverages.filter((coverage) => coverage.plates !== null);
  if (onPlates.length === 0) return "Nothing: no lens shot a plate that has a log.";
  const open = onPlates.filter((coverage) => coverage.setups.length > 0);
  if (open.length === 0) return "Nothing: the tables, and the grids shot on the days, serve every logged frame of every plate.";
  const setups = open.reduce((sum, coverage) => sum + coverage.setups.length, 0);
  const lenses = open.length === 1 ? `lens ${open[0]?.lens ?? ""}` : plural(open.length, "lens", "lenses");
  return `${plural(setups, "chart set-up")} on ${lenses} would serve every logged frame of a plate that no table serves. The rule is on each lens's page.`;
}

function cameraTable(kit: Kit): TableModel {
  return table(
    "camera-table",
    "Cameras and their sensor modes; the first of a camera is its default",
    [
      column("Camera"),
      column("Body"),
      column("Serial"),
      column("Sensor mode"),
      column("Active area", { unit: "mm", num: true }),
      column("Resolution", { unit: "pixels", num: true }),
      column("Squeeze", { num: true }),
    ],
    kit.modes.map((m) =>
      row(cell(m.camera), [
        textOr(m.body, NOT_RECORDED, { nb: true }),
        textOr(m.serial, NOT_RECORDED, { nb: true }),
        cell(m.sensorMode),
        num(`${fixed(m.activeWidthMm, 2)} × ${fixed(m.activeHeightMm, 2)}`, { nb: true }),
        textOr(m.resolutionX === null || m.resolutionY === null ? null : `${m.resolutionX} × ${m.resolutionY}`, NOT_RECORDED, {
          num: true,
          nb: true,
        }),
        numOr(m.squeeze === null ? null : trimmed(m.squeeze, 3), NOT_RECORDED),
      ]),
    ),
  );
}
