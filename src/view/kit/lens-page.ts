/** The page of a lens: kit facts, calibration, where it was used. */

import { metresFromDioptres } from "../../core/quantity.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed, significant, thousands, trimmed } from "../../format/number.ts";
import { stopRange, tStop } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { CalibrationTable, Lens, ShowInput } from "../../ingest/records.ts";
import type { LensCoverage } from "../../summary/coverage.ts";
import type { DayDigest, TakeDigest } from "../../summary/digest-types.ts";
import { lensCurves } from "../../summary/lens-curves.ts";
import { lensMap } from "../../summary/lens-map.ts";
import { lensRemarks } from "../../summary/lens-remarks.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { distanceInColumn, distanceUnit, rangeInColumn, rangeWithUnit } from "../distances.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import { dayPath, hrefTo, KIT_PATH, takePath } from "../links.ts";
import { type Distances, dayShort, lensName, takeName } from "../names.ts";
import { pageBase } from "../page.ts";
import { type CoverageView, coverageView } from "../readers/coverage-facts.ts";
import { cell, column, num, numOr, type Row, row, type TableModel, table, textOr } from "../table.ts";
import { focalRange } from "../take/take-facts.ts";
import { type CalibrationView, calibrationView, lensFacts, lensFocal } from "./kit-facts.ts";
import { type LensFiguresView, lensFiguresView } from "./lens-figures.ts";
import { remarksTable } from "./lens-remarks-table.ts";
import { type LensUseView, lensUseView } from "./lens-use.ts";

/** Longer lists of takes are cut; the days' pages have them all. */
const MOST_TAKES = 500;
const MOST_POINTS = 200;

export interface LensPage extends PageModel {
  readonly name: string;
  readonly about: string;
  readonly used: readonly Fact[];
  readonly facts: readonly Fact[];
  readonly calibration: CalibrationView;
  readonly coverage: CoverageView;
  readonly use: LensUseView;
  readonly figures: LensFiguresView;
  readonly remarks: TableModel;
  readonly hasRemarks: boolean;
  readonly points: TableModel;
  readonly hasPoints: boolean;
  readonly pointsMore: string;
  readonly days: TableModel;
  readonly hasDays: boolean;
  readonly takes: TableModel;
  readonly hasTakes: boolean;
  readonly takesMore: string;
}

/** What a lens page is made from. */
export interface LensSource {
  readonly digests: readonly DayDigest[];
  readonly show: ShowInput;
  readonly coverage: LensCoverage;
}

export function lensPage(lens: Lens, path: string, source: LensSource, context: SiteContext): LensPage {
  const { digests, show, coverage } = source;
  const { distances } = context.show;
  const calibration = show.kit.calibration.get(lens.id);
  const days = digests.filter((d) => d.lensUse.some((use) => use.lens === lens.id && use.takes > 0));
  const takes = digests.flatMap((d) => d.takes.filter((t) => t.lens === lens.id).map((t) => ({ d, t })));
  const name = lensName(lens, lens.id);
  const remarks = lensRemarks(lens, digests);
  const states = digests.flatMap((d) => (d.lensStates ?? []).filter((entry) => entry.lens === lens.id));
  const modes = states.flatMap((entry) => entry.modes);
  const served = show.kit.modes.find((m) => modes.some((one) => one.camera === m.camera && one.sensorMode === m.sensorMode));
  const focuses = [...new Set((calibration?.points ?? []).map((p) => p.focusDioptres))].sort((a, b) => a - b);
  return {
    ...pageBase(
      {
        path,
        title: `Lens ${lens.id}`,
        trail: [
          { label: "Kit", path: KIT_PATH },
          { label: lens.id, path },
        ],
        styles: ["day.css", "wide.css", "kit.css", "lens.css", "long-text.css"],
      },
      context,
    ),
    name: lens.id,
    about: [name, lensFocal(lens), lens.serial === null ? null : `serial ${lens.serial}`]
      .filter((text) => text !== null)
      .join(", "),
    used: usedFacts(
      takes.map(({ t }) => t),
      days.length,
      distances,
    ),
    facts: lensFacts(lens, distances),
    calibration: calibrationView(lens, calibration, distances),
    coverage: coverageView(coverage, distances),
    use: lensUseView(lensMap(lens, calibration ?? null, states), show.show.rate, distances),
    figures: lensFiguresView(lensCurves(lens, calibration ?? null, served ?? show.kit.modes[0] ?? null), focuses, distances),
    remarks: remarksTable(remarks, path),
    hasRemarks: remarks.length > 0,
    points: pointsTable(lens, calibration, distances),
    hasPoints: calibration !== undefined && calibration.points.length > 0,
    pointsMore: more(calibration?.points.length ?? 0, MOST_POINTS, "more point", "in the table's file"),
    days: daysTable(lens, days, path, distances),
    hasDays: days.length > 0,
    takes: takesTable(takes.slice(0, MOST_TAKES), path, lens, distances),
    hasTakes: takes.length > 0,
    takesMore: more(takes.length, MOST_TAKES, "more take", "on the days' pages"),
  };
}

function more(count: number, most: number, what: string, where: string): string {
  return count <= most ? "" : `And ${plural(count - most, what)} ${where}.`;
}

function usedFacts(takes: readonly TakeDigest[], days: number, distances: Distances): readonly Fact[] {
  const focals = takes.flatMap((t) => (t.focalMm === null ? [] : [t.focalMm.min, t.focalMm.max]));
  const stops = takes.flatMap((t) => (t.tStop === null ? [] : [t.tStop.widest, t.tStop.deepest]));
  const near = takes.flatMap((t) => (t.focus === null ? [] : [metres(t.focus.nearestM)]));
  const far = takes.flatMap((t) => (t.focus === null ? [] : [metres(t.focus.farthestM)]));
  return [
    fact("Used on", plural(days, "day")),
    fact("Clips", thousands(takes.length)),
    fact("Media", minutesSeconds(takes.reduce((sum, t) => sum + t.durationSeconds, 0)), { source: "min:s" }),
    factOr("Focal length", focals.length === 0 ? null : focalRange(Math.min(...focals), Math.max(...focals)), NOT_RECORDED),
    factOr("Stop", stops.length === 0 ? null : stopRange(Math.min(...stops), Math.max(...stops)), NOT_RECORDED),
    factOr("Focus", near.length === 0 ? null : rangeWithUnit(Math.min(...near), Math.max(...far), distances), NOT_RECORDED),
  ];
}

function metres(m: number | "inf"): number {
  return m === "inf" ? Number.POSITIVE_INFINITY : m;
}

function daysTable(lens: Lens, days: readonly DayDigest[], path: string, distances: Distances): TableModel {
  const rows = days.map((d): Row => {
    const use = d.lensUse.find((u) => u.lens === lens.id);
    const seconds = d.takes.reduce((sum, t) => (t.lens === lens.id ? sum + t.durationSeconds : sum), 0);
    return row(cell(dayShort(d), { nb: true, href: hrefTo(path, dayPath(d.date)) }), [
      num(thousands(use?.takes ?? 0)),
      num(minutesSeconds(seconds)),
      textOr(use?.focalMm == null ? null : focalRange(use.focalMm.min, use.focalMm.max), NOT_RECORDED, { nb: true }),
      textOr(use?.tStop == null ? null : stopRange(use.tStop.widest, use.tStop.deepest), NOT_RECORDED, { nb: true }),
      textOr(use?.focus == null ? null : rangeInColumn(use.focus.nearestM, use.focus.farthestM, distances), NOT_RECORDED, {
        nb: true,
      }),
    ]);
  });
  return table(
    "days-table",
    `Days on which ${lens.id} was used`,
    [
      column("Day"),
      column("Clips", { num: true }),
      column("Media", { unit: "min:s", num: true }),
      column("Focal length"),
      column("Stop"),
      column("Focus", { unit: distanceUnit(distances) }),
    ],
    rows,
  );
}

function takesTable(takes: readonly { d: DayDigest; t: TakeDigest }[], path: string, lens: Lens, distances: Distances): TableModel {
  return table(
    "takes-table",
    `Takes on which ${lens.id} served`,
    [
      column("Take"),
      column("Day"),
      column("Clip"),
      column("Length", { unit: "min:s", num: true }),
      column("Focal length"),
      column("Stop"),
      column("Focus", { unit: distanceUnit(distances) }),
      column("Pulls", { num: true }),
      column("Distortion", { unit: "% at corner", num: true }),
    ],
    takes.map(({ d, t }) =>
      row(cell(takeName(t), { nb: true, href: hrefTo(path, takePath(d.date, t.address)) }), [
        cell(dayShort(d), { nb: true }),
        textOr(t.clip, NOT_RECORDED, { nb: true }),
        t.durationFrames === 0 ? cell(NOT_RECORDED, { num: true, absent: true }) : num(minutesSeconds(t.durationSeconds)),
        textOr(t.focalMm === null ? null : focalRange(t.focalMm.min, t.focalMm.max), NOT_RECORDED, { nb: true }),
        textOr(t.tStop === null ? null : stopRange(t.tStop.widest, t.tStop.deepest), NOT_RECORDED, { nb: true }),
        textOr(t.focus === null ? null : rangeInColumn(t.focus.nearestM, t.focus.farthestM, distances), NOT_RECORDED, { nb: true }),
        numOr(t.pulls === null ? null : String(t.pulls), "not logged"),
        numOr(t.distortionCornerPercent === null ? null : fixed(t.distortionCornerPercent, 2), "not calculated"),
      ]),
    ),
  );
}

/** The calibration points as the table gives them: nothing is converted but the focus into the show's distances. */
function pointsTable(lens: Lens, calibration: CalibrationTable | undefined, distances: Distances): TableModel {
  const points = (calibration?.points ?? []).slice(0, MOST_POINTS);
  const names = [
    ...new Set(points.flatMap((p) => Object.keys(p.coefficients))),
  ] as (keyof (typeof points)[number]["coefficients"])[];
  return table(
    "points-table",
    `Calibration points of ${lens.id}`,
    [
      column("Focal length", { unit: "mm" }),
      column("Focus", { unit: distanceUnit(distances), num: true }),
      column("Stop", { num: true }),
      ...names.map((name) => column(name, { num: true })),
    ],
    points.map((p) =>
      row(cell(trimmed(p.focalMm, 2)), [
        num(distanceInColumn(metresFromDioptres(p.focusDioptres), distances)),
        p.tStop === null ? cell("any", { num: true, absent: true }) : num(tStop(p.tStop)),
        ...names.map((name) => numOr(coefficient(p.coefficients[name]), "not given")),
      ]),
    ),
  );
}

function coefficient(value: number | undefined): string | null {
  return value === undefined
    ? null
    : significant(value, 7)
        .replace(/(\.\d*?)0+$/, "$1")
        .replace(/\.$/, "");
}
