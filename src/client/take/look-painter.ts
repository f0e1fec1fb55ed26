/** Paints the panel: the picture with parts of the look taken off, split against the picture as recorded, and the lines over it. */
import type { LookOnArea } from "../../still/middle-look.ts";
import { drawLines, drawMarks, type Sheet } from "./look-overlay.ts";
import { type LightPicture, paintPixels, placesFor, roomFor, type Tone, type View } from "./look-pixels.ts";

export interface PanelState {
  readonly picture: LightPicture;
  /** A plain card never had the lens's shading: it is put on to be seen. */
  readonly isCard: boolean;
  readonly distortionOff: boolean;
  readonly shadingOff: boolean;
  /** Part of the canvas, from the left, that stays as recorded: 0 to 1. */
  readonly split: number;
  readonly grid: boolean;
}

/**
 * Paints a canvas over and over. `beforeMarks` is called when all but the letters stands. The milliseconds that the last
 * painting took are kept on the canvas as `data-ms`.
 */
export function painter(
  canvas: HTMLCanvasElement,
  view: View,
): (look: LookOnArea | null, state: PanelState, beforeMarks: () => void) => void {
  canvas.width = view.columns;
  canvas.height = view.rows;
  const to = canvas.getContext("2d", { willReadFrequently: true });
  const image = new ImageData(view.columns, view.rows);
  const out = new Uint32Array(image.data.buffer);
  const recorded = roomFor(view);
  const ideal = roomFor(view);
  let recordedFor: LightPicture | null = null;
  let idealFor = "";
  return (look, state, beforeMarks) => {
    if (to === null) return;
    const start = performance.now();
    const { picture } = state;
    const off = state.distortionOff && look !== null && look.distortion !== null;
    if (recordedFor !== picture) {
      placesFor(view, picture, null, recorded);
      recordedFor = picture;
      idealFor = "";
    }
    if (off && look !== null) {
      const key = Object.values(look.distortion ?? {}).join(" ");
      if (key !== idealFor) placesFor(view, picture, look.distortion, ideal);
      idealFor = key;
    }
    const edge = Math.round(state.split * view.columns);
    const shading = look?.shading ?? null;
    const left: Tone = state.isCard ? "put on" : "as it is";
    const right: Tone = state.isCard ? (state.shadingOff ? "as it is" : "put on") : state.shadingOff ? "taken off" : "as it is";
    if (edge > 0) paintPixels(view, picture, recorded, shading, left, out, 0, edge);
    if (edge < view.columns) paintPixels(view, picture, off ? ideal : recorded, shading, right, out, edge, view.columns);
    to.putImageData(image, 0, 0);
    // drawn in pixels of the screen, whatever width the canvas is shown at
    const sheet: Sheet = { to, view, unit: Math.min(4, Math.max(1, view.columns / Math.max(1, canvas.clientWidth))) };
    const bothSides = (draw: (side: "recorded" | "ideal") => void): void => {
      clipped(to, 0, edge, view.rows, () => draw("recorded"));
      clipped(to, edge, view.columns, view.rows, () => draw(off ? "ideal" : "recorded"));
    };
    if (look !== null) bothSides((side) => drawLines(sheet, look, side, state.grid));
    beforeMarks();
    if (look !== null) bothSides((side) => drawMarks(sheet, look, side));
    if (edge > 0 && edge < view.columns) drawSplit(sheet, edge);
    canvas.dataset.ms = (performance.now() - start).toFixed(1);
  };
}

function clipped(to: CanvasRenderingContext2D, from: number, end: number, rows: number, draw: () => void): void {
  if (end <= from) return;
  to.save();
  to.beginPath();
  to.rect(from, 0, end - from, rows);
  to.clip();
  draw();
  to.restore();
}

function drawSplit({ to, view, unit }: Sheet, x: number): void {
  for (const [width, colour] of [
    [4, "#fbf8f1"],
    [1.5, "#14160f"],
  ] as const) {
    to.fillStyle = colour;
    to.fillRect(x - (width * unit) / 2, 0, width * unit, view.rows);
  }
}
