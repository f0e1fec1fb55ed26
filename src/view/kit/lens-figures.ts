/** Distortion, shading and breathing of a lens over focus: three plots and the table beside them. */
import { focusCurvesDrawing } from "../../chart/kit/focus-curves.ts";
import { svg } from "../../chart/svg.ts";
import { metresFromDioptres } from "../../core/quantity.ts";
import { areaMm } from "../../format/length.ts";
import { fixed, signed, trimmed } from "../../format/number.ts";
import { withUnit } from "../../format/space.ts";
import { tStop } from "../../format/stop.ts";
import type { FocusCurve, LensCurves } from "../../summary/lens-curves.ts";
import { distanceInColumn, distanceUnit } from "../distances.ts";
import type { Distances } from "../names.ts";
import { cell, column, FIXED, numOr, row, type TableModel, table } from "../table.ts";
import type { DrawingView } from "./kit-drawings.ts";

const SIZE = { width: 390, height: 236 } as const;
const SAME = 1e-6;

export interface CurvePlot {
  readonly title: string;
  readonly drawing: DrawingView;
}

export interface LensFiguresView {
  readonly has: boolean;
  readonly plots: readonly CurvePlot[];
  readonly table: TableModel;
  /** Without calibration points there are no distances to list figures at. */
  readonly hasTable: boolean;
  readonly sentence: string;
}

const NONE: LensFiguresView = { has: false, plots: [], table: table("curves-table", "", [], []), hasTable: false, sentence: "" };

/** `focuses`: dioptres at which the table lists the lines, far first. */
export function lensFiguresView(curves: LensCurves | null, focuses: readonly number[], distances: Distances): LensFiguresView {
  if (curves === null) return NONE;
  const severalFocals = new Set(curves.distortion.map((c) => c.focalMm)).size > 1;
  const kinds = [
    {
      ...{ name: "Distortion", unit: "%", role: "ink" as const, curves: curves.distortion, digits: 2 },
      ...{ label: focalLabel, about: "at the corner; negative is barrel", write: fixed },
    },
    {
      ...{ name: "Shading", unit: "stops", role: "light" as const, curves: curves.shading, digits: 2 },
      ...{
        label: severalFocals ? focalLabel : stopLabel,
        about: "at the corner; negative is darker than the centre",
        write: fixed,
      },
    },
    {
      ...{ name: "Breathing", unit: "%", role: "ink" as const, curves: curves.breathing, digits: 1 },
      ...{ label: focalLabel, about: "of the view, against infinity; an estimate, as if the whole lens moved", write: signed },
    },
  ] as const;
  const shown = kinds.filter((kind) => kind.curves.length > 0);
  if (shown.length === 0) return NONE;
  const plots = shown.flatMap((kind): readonly CurvePlot[] => {
    const drawing = focusCurvesDrawing(kind.curves, {
      ...{ ...SIZE, distances, role: kind.role, unit: kind.unit, label: kind.label },
      title: `${kind.name} ${rangeWords(kind.curves, kind.digits, kind.unit)}`,
      description: `${kind.name} ${kind.about}, over focus from infinity on the left to near, equal widths are equal amounts of focus.`,
    });
    if (drawing === null) return [];
    const label = `${kind.name} over focus, drawn`;
    return [{ title: `${kind.name}, ${kind.about}`, drawing: { svg: svg(drawing, { idPrefix: kind.name.toLowerCase() }), label } }];
  });
  const lines = shown.flatMap((kind) => kind.curves.map((curve) => ({ kind, curve })));
  return {
    has: true,
    plots,
    table: table(
      "curves-table",
      "The same figures at the table's focus distances",
      [
        column("Focus", { unit: distanceUnit(distances) }),
        ...lines.map(({ kind, curve }) => column(kind.name, { unit: `${kind.unit}, ${kind.label(curve)}`, num: true })),
      ],
      focuses.map((d) =>
        row(
          cell(distanceInColumn(metresFromDioptres(d), distances)),
          lines.map(({ kind, curve }) => {
            const point = curve.points.find((p) => Math.abs(p.focusDioptres - d) < SAME);
            return numOr(point === undefined ? null : kind.write(point.value, kind.digits), "not in reach");
          }),
        ),
      ),
      { showCaption: true, cls: FIXED },
    ),
    hasTable: focuses.length > 0,
    sentence: focuses.length > 0 ? sentenceOf(curves, severalFocals) : "",
  };
}

function sentenceOf(curves: LensCurves, severalFocals: boolean): string {
  const whose = curves.areaFrom === "table" ? "the table's own area" : "the first sensor mode";
  const corner = `The corner is that of ${areaMm(curves.area.widthMm, curves.area.heightMm)}, ${whose}.`;
  const stop = curves.distortion[0]?.tStop ?? null;
  if (stop === null) return corner;
  const shading = severalFocals ? " and shading are" : " is";
  return `${corner} Distortion${shading} read at ${tStop(stop)}, the table's widest stop.`;
}

function focalLabel(curve: FocusCurve): string {
  return withUnit(trimmed(curve.focalMm, 1), "mm");
}

function stopLabel(curve: FocusCurve): string {
  return curve.tStop === null ? "any stop" : tStop(curve.tStop);
}

function rangeWords(curves: readonly FocusCurve[], digits: number, unit: string): string {
  const values = curves.flatMap((c) => c.points.map((p) => p.value));
  const [low, high] = [fixed(Math.min(...values), digits), fixed(Math.max(...values), digits)];
  return low === high ? withUnit(low, unit) : `${low} to ${withUnit(high, unit)}`;
}
