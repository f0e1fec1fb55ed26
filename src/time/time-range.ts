/** Half-open spans of whole frames: `start` is inside, `start + frames` is the first frame after. All of them by definition. */

export interface FrameRange {
  readonly start: number;
  readonly frames: number;
}

/** Range from the first frame to the first frame after; empty when the end does not lie behind the start. */
export function rangeFromEndExclusive(start: number, endExclusive: number): FrameRange {
  return { start, frames: Math.max(0, endExclusive - start) };
}

/** Range with its last frame inside: from 10 to 15 inclusive is six frames. */
export function rangeFromEndInclusive(start: number, last: number): FrameRange {
  return rangeFromEndExclusive(start, last + 1);
}

/** The first frame after the range: 10 with 5 frames ends at 15. */
export function endExclusive(range: FrameRange): number {
  return range.start + range.frames;
}

/** The last frame of the range, or `null` for an empty one. */
export function endInclusive(range: FrameRange): number | null {
  return range.frames > 0 ? range.start + range.frames - 1 : null;
}

/** Whether the frame lies in the range; the first frame after does not. */
export function rangeContains(range: FrameRange, frame: number): boolean {
  return frame >= range.start && frame < endExclusive(range);
}

/** The frames both have, or `null`. Ranges that only touch have none. */
export function rangeIntersection(a: FrameRange, b: FrameRange): FrameRange | null {
  const start = Math.max(a.start, b.start);
  const end = Math.min(endExclusive(a), endExclusive(b));
  return end > start ? { start, frames: end - start } : null;
}
