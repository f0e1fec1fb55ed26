/** Time across a drawing: frames edge to edge, whole timecode seconds, the black and white border. */

import { type FrameRate, nominalRate } from "../time/frame-rate.ts";
import { formatTimecode } from "../time/timecode.ts";

/** A frame whose label begins a second, with the second of the day and its `HH:MM:SS`. */
export interface SecondMark {
  readonly frame: number;
  readonly second: number;
  readonly label: string;
}

/** Seconds that a labelled tick may stand for. */
const LABEL_STEPS = [1, 5, 10, 15, 30, 60, 120, 300, 600, 1800, 3600] as const;
/** Seconds that one block of the border may stand for. */
const BLOCK_STEPS = [1, 5, 10, 30, 60, 300, 600] as const;
const LABEL_GAP = 84;
const BLOCK_GAP = 4;

/**
 * Frames at which a timecode second begins, from the first frame up to the end of the take. Seconds that drop frame
 * shortens begin at their first label that exists.
 */
export function secondMarks(inFrame: number, frames: number, rate: FrameRate, dropFrame: boolean): readonly SecondMark[] {
  const base = nominalRate(rate);
  const marks: SecondMark[] = [];
  let frame = 0;
  while (frame < frames) {
    const label = formatTimecode(inFrame + frame, rate, dropFrame);
    const before = frame === 0 ? null : formatTimecode(inFrame + frame - 1, rate, dropFrame);
    const clock = label.slice(0, 8);
    const past = Number(label.slice(9));
    if (past === 0 || (before !== null && before.slice(0, 8) !== clock))
      marks.push({ frame, second: secondOfDay(clock), label: clock });
    frame += base - past;
  }
  return marks;
}

function secondOfDay(clock: string): number {
  const [h = 0, m = 0, s = 0] = clock.split(":").map(Number);
  return (h * 60 + m) * 60 + s;
}

export interface TimeAxis {
  /** x of the left edge of a frame; `frames` is the right edge of the last. */
  x(frame: number): number;
  readonly left: number;
  readonly right: number;
  /** Seconds that one block of the border stands for. */
  readonly blockSeconds: number;
  /** Black blocks of the border, as x and width. */
  readonly blocks: readonly { readonly x: number; readonly width: number }[];
  readonly ticks: readonly { readonly x: number; readonly label: string }[];
}

/** The time axis of a take between two x. A take that lasts no frame has neither ticks nor blocks. */
export function timeAxis(
  take: { readonly inFrame: number | null; readonly durationFrames: number; readonly rate: FrameRate; readonly dropFrame: boolean },
  left: number,
  right: number,
): TimeAxis {
  const frames = Math.max(1, take.durationFrames);
  const x = (frame: number) => left + ((right - left) * frame) / frames;
  const secondWidth = ((right - left) * nominalRate(take.rate)) / frames;
  const step = LABEL_STEPS.find((s) => s * secondWidth >= LABEL_GAP) ?? 7200;
  const blockSeconds = BLOCK_STEPS.find((s) => s * secondWidth >= BLOCK_GAP) ?? 3600;
  if (take.inFrame === null || take.durationFrames === 0) return { x, left, right, blockSeconds, blocks: [], ticks: [] };
  const marks = secondMarks(take.inFrame, frames, take.rate, take.dropFrame);
  const firstSecond = marks[0] === undefined ? 0 : marks[0].second - (marks[0].frame > 0 ? 1 : 0);
  const ticks = marks.filter((m) => m.second % step === 0).map((m) => ({ x: x(m.frame), label: m.label }));
  const edges = marks.filter((m) => m.second % blockSeconds === 0);
  const blocks: { x: number; width: number }[] = [];
  const dark = (second: number) => Math.floor(second / blockSeconds) % 2 === 0;
  let from: number | null = dark(firstSecond) ? left : null;
  for (const edge of edges) {
    const at = x(edge.frame);
    if (from !== null && !dark(edge.second)) {
      if (at > from) blocks.push({ x: from, width: at - from });
      from = null;
    } else if (from === null && dark(edge.second)) from = at;
  }
  if (from !== null) blocks.push({ x: from, width: right - from });
  return { x, left, right, blockSeconds, blocks, ticks };
}
