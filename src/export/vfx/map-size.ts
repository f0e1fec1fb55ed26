/** How large the maps of a take are. */
import type { OverscanCanvas } from "../../summary/overscan.ts";
import type { ExrBox } from "../exr-writer.ts";
import type { VfxOptions } from "./options.ts";

export interface MapSize {
  /** Pixels of the frame (the display window). */
  readonly width: number;
  readonly height: number;
  readonly recordedWidth: number;
  readonly recordedHeight: number;
  /** Why this width, in words. */
  readonly reason: string;
  /** What values are rounded to: a power of 2, at most 1/32 px at the recorded resolution, so that rounding is under 1/64 px. */
  readonly step: number;
}

/**
 * Of the recorded width, where nobody asks for another. Distortion is smooth: a straight line between the samples of a quarter is
 * right to a few thousandths of a recorded pixel (docs/vfx-files.md).
 */
const DEFAULT_PART = 4;
/** A canvas is never more than this many times the frame. */
const MOST_OVERSCAN = 2;

/** The size of maps at a recorded resolution. */
export function mapSize(recorded: { readonly width: number; readonly height: number }, mapWidth: VfxOptions["mapWidth"]): MapSize {
  const sized = (wanted: number, reason: string): MapSize => {
    const width = Math.max(2, Math.min(recorded.width, Math.round(wanted)));
    const height = Math.max(2, Math.round((recorded.height * width) / recorded.width));
    const step = 2 ** -(Math.ceil(Math.log2(Math.max(recorded.width, recorded.height))) + 5);
    return { width, height, recordedWidth: recorded.width, recordedHeight: recorded.height, reason, step };
  };
  if (mapWidth === "full") return sized(recorded.width, "the recorded width, as asked for");
  if (mapWidth !== null) return sized(mapWidth, "as asked for, at most the recorded width");
  return sized(recorded.width / DEFAULT_PART, "a quarter of the recorded width");
}

/**
 * Data window of UV maps that must hold a canvas about the frame; the frame where the canvas is smaller or not known. A map that
 * is narrower than the picture will be enlarged: it has a margin of one pixel, so that nothing is missing up to the border.
 */
export function dataWindow(size: MapSize, canvas: OverscanCanvas | null): ExrBox {
  const margin = (canvasPx: number, recordedPx: number, mapPx: number): number =>
    Math.max(0, Math.ceil(((Math.min(canvasPx, MOST_OVERSCAN * recordedPx) - recordedPx) / 2) * (mapPx / recordedPx)));
  const spare = size.width < size.recordedWidth ? 1 : 0;
  const x = spare + (canvas === null ? 0 : margin(canvas.widthPx, size.recordedWidth, size.width));
  const y = spare + (canvas === null ? 0 : margin(canvas.heightPx, size.recordedHeight, size.height));
  return { left: 0 - x, top: 0 - y, right: size.width - 1 + x, bottom: size.height - 1 + y };
}

/** The data window over the display window, the larger of both sides; 1 without overscan. */
export function overscanFactor(size: MapSize, window: ExrBox): number {
  return Math.max((window.right - window.left + 1) / size.width, (window.bottom - window.top + 1) / size.height);
}

/** The display window: the frame, which 0 to 1 of the values stand for. */
export function frameWindow(size: MapSize): ExrBox {
  return { left: 0, top: 0, right: size.width - 1, bottom: size.height - 1 };
}
