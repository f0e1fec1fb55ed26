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
 * A take's maps are made narrower while they come to more than this many of a quarter of the recorded width. Distortion is
 * smooth: with 4 % of it at the corner, a straight line between the samples of a thirty-second is right to 0.011 px at 4608
 * (docs/vfx-files.md).
 */
const MOST_QUARTERS = 4;
/** Parts of the recorded width, the default first. */
const PARTS = [4, 8, 16, 32] as const;
const PART_WORDS = { 4: "a quarter", 8: "an eighth", 16: "a sixteenth", 32: "a thirty-second" } as const;
/** A canvas is never more than this many times the frame. */
const MOST_OVERSCAN = 2;

/** The size for a number of maps at a recorded resolution. */
export function mapSize(
  recorded: { readonly width: number; readonly height: number },
  maps: number,
  mapWidth: VfxOptions["mapWidth"],
): MapSize {
  const sized = (wanted: number, reason: string): MapSize => {
    const width = Math.max(2, Math.min(recorded.width, Math.round(wanted)));
    const height = Math.max(2, Math.round((recorded.height * width) / recorded.width));
    const step = 2 ** -(Math.ceil(Math.log2(Math.max(recorded.width, recorded.height))) + 5);
    return { width, height, recordedWidth: recorded.width, recordedHeight: recorded.height, reason, step };
  };
  if (mapWidth === "full") return sized(recorded.width, "the recorded width, as asked for");
  if (mapWidth !== null) return sized(mapWidth, "as asked for, at most the recorded width");
  const fits = (part: number): boolean => maps * (4 / part) ** 2 <= MOST_QUARTERS;
  const part = PARTS.find(fits) ?? 32;
  const many = part === 4 ? "" : `, since the take has ${maps} maps; ask for another with --map-width`;
  return sized(recorded.width / part, `${PART_WORDS[part]} of the recorded width${many}`);
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
