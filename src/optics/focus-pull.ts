/** Focus pulls: changes of focus from one held distance to another, found in dioptres. */
import { findHolds, type Hold, type HoldRules, stoodStill } from "./focus-holds.ts";
import { commonestStep, type FocusSeries, noiseOf, splitAtGaps } from "./focus-series.ts";

export interface PullRequest {
  /** Per frame of the take, 1/m from the image plane, infinity = 0; NaN where it was not logged. */
  readonly dioptres: Float64Array;
  /** One-sided depth of field N c / f^2 in dioptres at the take's widest stop. */
  readonly deltaDioptres: number;
  /** Step of the log in dioptres, 0 when it is fine or not known. */
  readonly quantisation: number;
  /** Frames a second of the timecode: a hold is a quarter of a second. */
  readonly fps: number;
  /** Frames a second of the camera: speeds are at this rate. */
  readonly perSecond: number;
}

export interface FocusPull {
  /** The last held frame before the pull and the first held frame after it. */
  readonly startFrame: number;
  readonly endFrame: number;
  /** Medians of the two holds; the extreme itself where focus turned without a hold. */
  readonly fromDioptres: number;
  readonly toDioptres: number;
  /** Largest central difference over three frames, unsigned. */
  readonly peakDioptresPerSecond: number;
  readonly meanDioptresPerSecond: number;
  /** Longer than three seconds without a hold: following something rather than pulling to it. */
  readonly follow: boolean;
}

export interface FocusMoves {
  readonly pulls: readonly FocusPull[];
  /** Moves smaller than the one-sided depth of field: a trim of the hand, not a pull. */
  readonly trims: number;
}

const HOLD_SECONDS = 0.25;
const FEWEST_SAMPLES = 3;
const FOLLOW_SECONDS = 3;
const STEPS_OF_QUANTISATION = 4;
/** With less than this many standard deviations of noise to the depth of field, noise alone would make moves. */
const DEVIATIONS_OF_NOISE = 8;

/**
 * The pulls of a take, in order; empty when focus stood or was not logged. A move counts when its ends are at least one delta
 * apart; there and back without a hold is two pulls, split at the extreme; a gap in the log ends what is before it, and a take
 * that begins or ends moving has a pull from its first or to its last sample. delta is raised to 4 steps of a coarse log.
 *
 * @source Salvucci and Goldberg, ETRA 2000 (dispersion and velocity thresholds), Schmitt trigger; the limits are this project's choice
 */
export function detectPulls(request: PullRequest): readonly FocusPull[] {
  return detectMoves(request).pulls;
}

/** As {@link detectPulls}, with the number of small moves beside them. */
export function detectMoves(request: PullRequest): FocusMoves {
  const whole = splitAtGaps(request.dioptres, Number.POSITIVE_INFINITY);
  const delta = Math.max(
    positive(request.deltaDioptres),
    STEPS_OF_QUANTISATION * positive(request.quantisation),
    DEVIATIONS_OF_NOISE * noiseOf(whole),
    1e-9,
  );
  const step = commonestStep(whole.flatMap((series) => [...series.frames]));
  const rules: HoldRules = {
    delta,
    shortest: Math.max(FEWEST_SAMPLES, Math.round((HOLD_SECONDS * request.fps) / step)),
    samplesPerSecond: request.fps / step,
  };
  const pulls: FocusPull[] = [];
  let trims = 0;
  for (const series of splitAtGaps(request.dioptres, delta)) {
    for (const leg of legsOf(series, rules)) {
      const change = Math.abs(leg.to - leg.from);
      if (change >= delta) pulls.push(pullOf(leg, series, request.perSecond));
      else if (change > 0.5 * delta) trims++;
    }
  }
  return { pulls, trims };
}

/** A one-way move; `start` and `end` are indices into the series. */
interface Leg {
  readonly start: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
}

function legsOf(series: FocusSeries, rules: HoldRules): Leg[] {
  const stops = stopsOf(series.dioptres, rules);
  const legs: Leg[] = [];
  for (let i = 1; i < stops.length; i++) {
    const a = stops[i - 1];
    const b = stops[i];
    if (a !== undefined && b !== undefined) legs.push(...legsBetween(series.dioptres, a, b, rules.delta));
  }
  return legs;
}

/** Holds in which focus stood, with the series' ends where it began or ended moving. */
function stopsOf(x: Float64Array, rules: HoldRules): Hold[] {
  if (x.length < 2) return [];
  const holds = findHolds(x, rules);
  const stops: Hold[] = [];
  const begin: Hold = { first: 0, last: 0, levelIn: x[0] ?? 0, levelOut: x[0] ?? 0 };
  const end = x[x.length - 1] ?? 0;
  const finish: Hold = { first: x.length - 1, last: x.length - 1, levelIn: end, levelOut: end };
  holds.forEach((hold, i) => {
    const still = stoodStill(x, hold, rules);
    if (i === 0 && (!still || Math.abs(begin.levelOut - hold.levelIn) > 0.5 * rules.delta)) stops.push(begin);
    const before = stops.at(-1);
    const after = holds[i + 1] ?? finish;
    const passing = before !== undefined && (hold.levelIn - before.levelOut) * (after.levelIn - hold.levelOut) > 0;
    if (still || (before !== undefined && !passing && i < holds.length - 1)) stops.push(hold);
    if (i === holds.length - 1 && (!still || Math.abs(finish.levelIn - hold.levelOut) > 0.5 * rules.delta)) stops.push(finish);
  });
  return holds.length === 0 ? [begin, finish] : stops;
}

/** Splits the way from one stop to the next where focus turned back by at least one delta. */
function legsBetween(x: Float64Array, a: Hold, b: Hold, delta: number): Leg[] {
  const turns: number[] = [];
  let direction = 0;
  let highest = a.last;
  let lowest = a.last;
  for (let i = a.last; i <= b.first; i++) {
    const value = x[i] ?? 0;
    if (value > (x[highest] ?? 0)) highest = i;
    if (value < (x[lowest] ?? 0)) lowest = i;
    const fell = direction >= 0 && (x[highest] ?? 0) - value >= delta;
    const rose = direction <= 0 && value - (x[lowest] ?? 0) >= delta;
    if (!fell && !rose) continue;
    const turn = fell ? highest : lowest;
    if (direction !== 0) turns.push(middleOfLevel(x, turn, b.first));
    direction = fell ? -1 : 1;
    highest = i;
    lowest = i;
  }
  const legs: Leg[] = [];
  let start = a.last;
  let from = a.levelOut;
  for (const turn of turns) {
    legs.push({ start, end: turn, from, to: x[turn] ?? 0 });
    start = turn;
    from = x[turn] ?? 0;
  }
  if (b.first > start) legs.push({ start, end: b.first, from, to: b.levelIn });
  return legs;
}

/** The middle of a flat extreme that begins at `i`. */
function middleOfLevel(x: Float64Array, i: number, last: number): number {
  let end = i;
  while (end < last && x[end + 1] === x[i]) end++;
  return (i + end) >> 1;
}

function pullOf(leg: Leg, series: FocusSeries, perSecond: number): FocusPull {
  const { frames, dioptres: x } = series;
  const startFrame = frames[leg.start] ?? 0;
  const endFrame = frames[leg.end] ?? 0;
  let peak = 0;
  for (let i = Math.max(1, leg.start); i <= leg.end && i + 1 < x.length; i++) {
    const seconds = ((frames[i + 1] ?? 0) - (frames[i - 1] ?? 0)) / perSecond;
    peak = Math.max(peak, Math.abs((x[i + 1] ?? 0) - (x[i - 1] ?? 0)) / seconds);
  }
  const seconds = (endFrame - startFrame) / perSecond;
  const mean = Math.abs(leg.to - leg.from) / seconds;
  return {
    startFrame,
    endFrame,
    fromDioptres: leg.from,
    toDioptres: leg.to,
    peakDioptresPerSecond: peak > 0 ? peak : mean,
    meanDioptresPerSecond: mean,
    follow: seconds > FOLLOW_SECONDS,
  };
}

function positive(value: number): number {
  return Number.isFinite(value) ? Math.max(value, 0) : 0;
}
