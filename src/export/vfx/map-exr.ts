/** UV maps and shading maps as OpenEXR. */
import { fastMap } from "../../optics/distortion/fast-map.ts";
import type { MapGrid } from "../../optics/distortion/map-grid.ts";
import { shadingFactor } from "../../optics/shading.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { exrBytes } from "../exr-writer.ts";
import { mapHeader } from "./map-header.ts";
import type { MapFile, MapPlan } from "./map-plan.ts";
import { frameWindow, type MapSize } from "./map-size.ts";

/** What the maps cannot hold. */
export const losses: readonly string[] = [
  "UV maps hold one lens state each: states whose corner lies within 0.1 px share a map, and frames that were not logged have none.",
  "UV maps say -1, -1 where the coefficients define nothing; values are rounded to under 1/64 px at the recorded resolution. The brightness of shading maps is rounded to 1/8192, which is less than 0.0004 stop down to two stops of fall-off.",
  "OpenEXR's focus cannot be told from not logged at infinity: focus is then left out, and focusDioptres is 0. timeCode is left out above 30 frames a second.",
  "Maps have no T-dependent part but shading, and shading maps no colour.",
];

/** How far a value may lie from the exact one, in pixels at the recorded resolution, before it is rounded. */
const TOLERANCE_PX = 0.005;
const UNDEFINED = -1;

/** The bytes of one map of a plan. */
export async function mapExr(summary: TakeSummary, plan: MapPlan, file: MapFile): Promise<Uint8Array> {
  const mode = summary.take.sensorMode;
  if (mode === null) throw new RangeError("a map needs a sensor mode");
  const area = { widthMm: mode.activeWidthMm, heightMm: mode.activeHeightMm };
  const [red, green, blue] = file.kind === "shading" ? factors(file, plan.size, area) : positions(file, plan.size, area);
  return exrBytes({
    dataWindow: file.window,
    displayWindow: frameWindow(plan.size),
    channels: [
      { name: "R", values: red },
      { name: "G", values: green },
      { name: "B", values: blue },
    ],
    compression: "zip",
    pixelAspectRatio: summary.take.squeeze,
    attributes: mapHeader(summary, file, plan.size),
  });
}

type Planes = readonly [Float32Array, Float32Array, Float32Array];
type Area = { readonly widthMm: number; readonly heightMm: number };

function positions({ kind, look, window }: MapFile, size: MapSize, area: Area): Planes {
  const grid = gridOf(window, size, area);
  const u = new Float32Array(grid.columns * grid.rows);
  const v = new Float32Array(u.length);
  if (look.distortion === null) throw new RangeError("a map needs distortion coefficients");
  // 0 to 1 over the frame, so that the middle of a pixel is (x + 0.5) / width
  const units = { xPerMm: 1 / area.widthMm, xAtMiddle: 0.5, yPerMm: 1 / area.heightMm, yAtMiddle: 0.5 };
  const tolerance = TOLERANCE_PX / Math.max(size.recordedWidth, size.recordedHeight);
  fastMap(look.distortion, kind === "undistort" ? "recorded" : "ideal", grid, units, u, v, tolerance);
  const steps = 1 / size.step;
  for (let i = 0; i < u.length; i++) {
    const x = Math.floor((u[i] as number) * steps + 0.5) * size.step;
    const y = Math.floor((v[i] as number) * steps + 0.5) * size.step;
    const defined = !Number.isNaN(x + y);
    u[i] = defined ? x : UNDEFINED;
    v[i] = defined ? y : UNDEFINED;
  }
  return [u, v, zeros(u.length)];
}

let blank = new Float32Array(0);

/** The blue channel of every UV map, of which one is enough. */
function zeros(length: number): Float32Array {
  if (blank.length < length) blank = new Float32Array(length);
  return blank.subarray(0, length);
}

/**
 * Half a step is log2(1 + 2^-14 / factor) stop: 0.0001 at full brightness, 0.0004 two stops down; maps merge at 0.01 stop.
 * A third of the size of what a finer step takes.
 */
const FACTOR_STEP = 2 ** -13;

function factors({ look, window }: MapFile, size: MapSize, area: Area): Planes {
  const { columns, rows, firstXMm, firstYMm, stepXMm, stepYMm } = gridOf(window, size, area);
  const factor = new Float32Array(columns * rows);
  if (look.shading === null) throw new RangeError("a map needs shading coefficients");
  for (let row = 0, i = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++, i++) {
      const value = shadingFactor(look.shading, firstXMm + column * stepXMm, firstYMm + row * stepYMm);
      factor[i] = Math.floor(value / FACTOR_STEP + 0.5) * FACTOR_STEP;
    }
  }
  return [factor, factor, factor];
}

/** Samples at the middles of the map's pixels; the data window may reach beyond the frame. */
function gridOf(window: MapFile["window"], size: MapSize, area: Area): MapGrid {
  const stepXMm = area.widthMm / size.width;
  const stepYMm = area.heightMm / size.height;
  return {
    columns: window.right - window.left + 1,
    rows: window.bottom - window.top + 1,
    firstXMm: (window.left + 0.5) * stepXMm - area.widthMm / 2,
    firstYMm: (window.top + 0.5) * stepYMm - area.heightMm / 2,
    stepXMm,
    stepYMm,
  };
}
