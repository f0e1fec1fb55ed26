/** Cuts a per-frame focus log into series without gaps, and says how fine the log is. */
import { median } from "./focus-holds.ts";

/** Samples that follow each other without a gap: their frames and dioptres. */
export interface FocusSeries {
  readonly frames: Int32Array;
  readonly dioptres: Float64Array;
}

/**
 * Splits at gaps (NaN). A log that has only every second or third frame has no gaps at its own rate: the commonest step
 * between logged frames is no gap. A single sample that jumps away and back at once is an encoder's fault and is left out.
 */
export function splitAtGaps(dioptres: Float64Array, spikeLimit: number): FocusSeries[] {
  const logged: number[] = [];
  for (let i = 0; i < dioptres.length; i++) if (Number.isFinite(dioptres[i])) logged.push(i);
  const step = commonestStep(logged);
  const series: FocusSeries[] = [];
  let from = 0;
  for (let i = 1; i <= logged.length; i++) {
    if (i < logged.length && (logged[i] ?? 0) - (logged[i - 1] ?? 0) <= step) continue;
    if (i > from) series.push(withoutSpikes(logged.slice(from, i), dioptres, spikeLimit));
    from = i;
  }
  return series;
}

/** Frames from one logged frame to the next, as most of the log has it; 1 for a log of one frame. */
export function commonestStep(logged: readonly number[]): number {
  const steps: number[] = [];
  for (let i = 1; i < logged.length; i++) steps.push((logged[i] ?? 0) - (logged[i - 1] ?? 0));
  return steps.length === 0 ? 1 : Math.max(1, Math.floor(median(steps)));
}

function withoutSpikes(frames: readonly number[], dioptres: Float64Array, limit: number): FocusSeries {
  const value = (i: number) => dioptres[frames[i] ?? -1] ?? Number.NaN;
  const kept = frames.filter((_, i) => {
    if (i === 0 || i === frames.length - 1) return true;
    const away = Math.min(Math.abs(value(i) - value(i - 1)), Math.abs(value(i) - value(i + 1)));
    return !(away > limit && Math.abs(value(i + 1) - value(i - 1)) < 0.3 * limit);
  });
  return { frames: Int32Array.from(kept), dioptres: Float64Array.from(kept, (frame) => dioptres[frame] ?? Number.NaN) };
}

/**
 * Standard deviation of the log's noise in dioptres, from second differences (which smooth movement hardly has): their median
 * over 0.6745 sqrt(6). 0 for a clean or a coarsely stepped log.
 */
export function noiseOf(series: readonly FocusSeries[]): number {
  const differences: number[] = [];
  for (const { dioptres: x } of series) {
    for (let i = 1; i + 1 < x.length; i++) differences.push(Math.abs((x[i - 1] ?? 0) - 2 * (x[i] ?? 0) + (x[i + 1] ?? 0)));
  }
  return differences.length === 0 ? 0 : median(differences) / (0.6745 * Math.sqrt(6));
}
