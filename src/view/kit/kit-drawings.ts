/** The kit's lenses as drawings: widest stops, fronts, masses. Each has a table beside it with the same figures. */

import type { Drawing } from "../../chart/drawing.ts";
import { distortionMultiples } from "../../chart/kit/distortion-multiples.ts";
import { frontsDrawing } from "../../chart/kit/kit-fronts.ts";
import { massDrawing } from "../../chart/kit/kit-mass.ts";
import { widestStopsDrawing } from "../../chart/kit/kit-widest.ts";
import { svg } from "../../chart/svg.ts";
import type { Lens } from "../../ingest/records.ts";
import type { RadialCurves } from "../../summary/lens-curves.ts";

const WIDTH = 820;

export interface DrawingView {
  readonly svg: string;
  /** Name of the box that scrolls it. */
  readonly label: string;
}

export interface KitDrawings {
  readonly widest: DrawingView;
  readonly fronts: DrawingView;
  readonly mass: DrawingView;
}

/** Empty texts where the kit does not say what is drawn. Widest stops and fronts: primes by focal length, then zooms. */
export function kitDrawings(lenses: readonly Lens[]): KitDrawings {
  const byFocal = [...lenses.filter(({ kind }) => kind === "prime"), ...lenses.filter(({ kind }) => kind === "zoom")];
  const named = (drawing: Drawing | null, label: string): DrawingView => ({
    svg: drawing === null ? "" : svg(drawing, { idPrefix: label.toLowerCase().replaceAll(" ", "-") }),
    label,
  });
  const stops = byFocal.flatMap(({ id, kind, widestT }) => (widestT === null ? [] : [{ name: id, kind, widestT }]));
  const fronts = byFocal.flatMap(({ id, frontDiameterMm: mm }) => (mm === null ? [] : [{ name: id, frontMm: mm }]));
  const masses = byFocal.flatMap(({ id, massG }) => (massG === null ? [] : [{ name: id, massG }]));
  return {
    widest: named(widestStopsDrawing(stops, WIDTH), "Widest stops drawn"),
    fronts: named(frontsDrawing(fronts, WIDTH), "Front diameters drawn"),
    mass: named(massDrawing(masses, WIDTH), "Masses drawn"),
  };
}

/** Distortion of every lens with a table that can be read, small plots on one scale. */
export function distortionDrawing(lenses: readonly RadialCurves[]): DrawingView {
  const drawing = distortionMultiples(lenses, WIDTH);
  return { svg: drawing === null ? "" : svg(drawing, { idPrefix: "distortion" }), label: "Distortion of the lenses drawn" };
}
