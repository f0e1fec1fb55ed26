/**
 * A focus puller's hand as a series of focus distances, a frame each, in dioptres (1/m, infinity = 0).
 * Holds carry small corrections, pulls follow a minimum-jerk curve with a little haste at the start and now and then a small overshoot,
 * a follow keeps up with somebody walking, and hunting swings round a mark that cannot be found.
 *
 * @typedef {{ hold: number } | { to: number, over: number } | { follow: number, over: number } | { hunt: number, swing: number }} Step
 *   seconds; distances in metres from the image plane (Infinity allowed for `to`); swing in one-sided depths of field
 */

/** @param {number} u 0 to 1 */
export const minimumJerk = (u) => u * u * u * (10 - 15 * u + 6 * u * u);

/** @param {number} metres */
export const dioptres = (metres) => (metres === Number.POSITIVE_INFINITY ? 0 : 1 / metres);

/** Walking pace: even in the middle, a quarter of the way to get going and to stop. */
function walk(u) {
  const ramp = 0.25;
  const whole = 1 - ramp;
  if (u < ramp) return (u * u) / (2 * ramp * whole);
  if (u > 1 - ramp) return 1 - ((1 - u) * (1 - u)) / (2 * ramp * whole);
  return (u - ramp / 2) / whole;
}

/**
 * @param {object} task
 * @param {number} task.start metres
 * @param {readonly Step[]} task.steps
 * @param {number} task.frames length of the series; what the steps leave over is held
 * @param {number} task.fps
 * @param {number} task.depth one-sided depth of field in dioptres: corrections are a few hundredths of it
 * @param {number} task.nearest close focus in metres
 * @param {import("./rng.mjs").Random} task.random
 * @returns {Float64Array} dioptres
 */
export function operate({ start, steps, frames, fps, depth, nearest, random }) {
  const series = new Float64Array(frames);
  let cursor = 0;
  let mark = dioptres(start);
  // a short lens forgives a lot, but no hand wanders by more than a few millimetres of ring
  const slack = Math.min(depth, 0.12);
  let offset = random.range(-0.04, 0.04) * slack;
  const put = (value) => {
    if (cursor < frames) series[cursor++] = Math.min(Math.max(value, 0), 1 / nearest);
  };

  const hold = (count) => {
    let wait = Math.abs(offset) > 0.08 * slack ? random.whole(3, 6) : random.whole(fps, 3 * fps);
    let from = offset;
    let to = offset;
    let step = 0;
    let length = 1;
    for (let i = 0; i < count; i++) {
      if (step < length && from !== to) {
        step += 1;
        offset = from + (to - from) * minimumJerk(step / length);
      } else if (wait-- <= 0) {
        from = offset;
        to = random.range(-0.07, 0.07) * slack;
        step = 0;
        length = random.whole(5, 9);
        wait = random.whole(fps, 3 * fps);
      }
      put(mark + offset);
    }
  };

  const pull = (target, count) => {
    const from = mark + offset;
    const overshoot = random.chance(0.5)
      ? random.range(0.1, 0.18) * slack * Math.sign(target - mark)
      : random.range(-0.05, 0.05) * slack;
    const haste = random.range(0, 0.35);
    for (let i = 1; i <= count; i++) {
      const u = i / count;
      put(from + (target + overshoot - from) * minimumJerk(u + haste * u * (1 - u)));
    }
    mark = target;
    offset = overshoot;
  };

  const follow = (metres, count) => {
    const from = 1 / mark;
    const rate = random.range(0.5, 0.8);
    const lead = random.range(0, 6.28);
    for (let i = 1; i <= count; i++) {
      const u = i / count;
      const late = Math.sin(lead + (i / fps) * rate * 6.28) * 0.3 * slack * 4 * u * (1 - u);
      put(1 / (from + (metres - from) * walk(u)) + late + offset * (1 - u));
    }
    mark = dioptres(metres);
    offset = 0;
  };

  const hunt = (swing, count) => {
    const rate = random.range(0.95, 1.25);
    for (let i = 1; i <= count; i++) {
      const u = i / count;
      const envelope = Math.min(1, u * 4) * (1 - u * u);
      put(mark + offset * (1 - u) + swing * depth * envelope * Math.sin(6.2832 * rate * (i / fps) * (1 + 0.25 * u)));
    }
    offset = 0;
  };

  for (const step of steps) {
    if ("hold" in step) hold(Math.round(step.hold * fps));
    else if ("to" in step) pull(dioptres(step.to), Math.round(step.over * fps));
    else if ("follow" in step) follow(step.follow, Math.round(step.over * fps));
    else hunt(step.swing, Math.round(step.hunt * fps));
  }
  hold(frames - cursor);
  return series;
}

/**
 * A value that moves from mark to mark: an iris or a zoom.
 * @param {number} start
 * @param {readonly (readonly [number, number, number])[]} moves `[second it begins, value, seconds it takes]`
 * @param {number} frames
 * @param {number} fps
 * @returns {Float64Array} even in the logarithm, as both rings are engraved
 */
export function ring(start, moves, frames, fps) {
  const series = new Float64Array(frames).fill(start);
  let value = start;
  for (const [at, to, over] of moves) {
    const first = Math.round(at * fps);
    const count = Math.max(1, Math.round(over * fps));
    for (let i = first; i < frames; i++) {
      const u = Math.min(1, (i - first) / count);
      series[i] = Math.exp(Math.log(value) + (Math.log(to) - Math.log(value)) * minimumJerk(u));
    }
    value = to;
  }
  return series;
}
