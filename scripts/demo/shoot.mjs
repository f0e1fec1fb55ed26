/** Plays one take on one camera: the frames of its log and what the assistant writes down about it. */
import { lensOf, MODES } from "./kit.mjs";
import { lensState } from "./lens-model.mjs";
import { operate, ring } from "./operator.mjs";
import { random } from "./rng.mjs";
import { FPS, frameOf } from "./timecode.mjs";

/** Stops as said on set, and the exact value of each. */
const EXACT = {
  2.1: 2.1,
  2.3: 2.3,
  2.8: Math.sqrt(8),
  "2.8 1/2": Math.sqrt(8 * Math.SQRT2),
  4: 4,
  "4 1/3": 4 * Math.exp(Math.LN2 / 6),
  5.6: Math.sqrt(32),
};

/** How far from its start a hand reaches on the same marks from take to take. */
const vary = (value, amount, stream) => value * stream.range(1 - amount, 1 + amount);

/**
 * @typedef {object} Played
 * @property {number} first frame of the day of the take's first frame
 * @property {number} frames
 * @property {number} before frames logged before the take
 * @property {Float64Array} focus dioptres, a frame each, what lies before and after the take included
 * @property {Float64Array} t
 * @property {Float64Array | null} focal
 * @property {number} transmittance of the lens, 1 if the kit does not say
 */

/**
 * @param {string} key names the take: the same key gives the same frames
 * @param {object} shot a camera's shot with the take's changes
 * @param {string} at timecode of the first frame
 * @param {number} seconds
 * @param {"A" | "B"} camera
 * @returns {Played}
 */
export function play(key, shot, at, seconds, camera) {
  const stream = random(key);
  const lens = lensOf(shot.lens);
  const mode = MODES.find((m) => m.mode === (shot.mode ?? MODES[0].mode));
  // camera B is started by its own hand, a few frames after A, and stopped a little sooner
  const late = camera === "B" ? stream.whole(2, 13) : 0;
  const frames = Math.round(seconds * FPS) - late - stream.whole(0, 9);
  const [before, after] = camera === "B" ? [stream.whole(60, 150), stream.whole(45, 110)] : (shot.edges ?? [0, 0]);
  const total = before + frames + after;

  const exact = EXACT[shot.stop];
  const focal = lens.focal ?? shot.focal;
  const transmittance = lens.tau ?? (lens.f ? (lens.f / lens.t) ** 2 : 1);
  const depth = (1000 * exact * Math.sqrt(transmittance) * mode.coc) / (focal * focal);
  const steps = [{ hold: before / FPS }, ...shot.steps].map((step, i) => {
    if ("hold" in step) return { hold: i === 0 ? step.hold : vary(step.hold, 0.12, stream) };
    if ("to" in step) return { to: vary(step.to, 0.015, stream), over: vary(step.over, 0.15, stream) };
    if ("follow" in step) return { follow: vary(step.follow, 0.015, stream), over: vary(step.over, 0.1, stream) };
    return step;
  });
  const start = vary(shot.start, 0.012, stream);
  const focus = operate({ start, steps, frames: total, fps: FPS, depth, nearest: lens.close, random: stream });

  const off = Math.exp((Math.LN2 / 2) * (shot.tShift ?? stream.range(-0.02, 0.02)));
  const shifted = (moves) => moves.map(([second, value, over]) => [second + before / FPS, value, over]);
  const iris = ring(
    exact,
    (shot.iris ?? []).map(([second, value, over]) => [second + before / FPS, EXACT[value], over]),
    total,
    FPS,
  );
  const t = iris.map((value) => Math.max(value * off, shot.tShift === undefined ? lens.t : 0));
  return {
    first: frameOf(at) + late,
    frames,
    before,
    focus,
    t,
    focal: lens.zoom ? ring(shot.focal, shifted(shot.zoom ?? []), total, FPS) : null,
    transmittance,
  };
}

/** Distance to the precision of a tape and a pencil. */
function tape(metres) {
  if (metres >= 10) return String(Math.round(metres * 2) / 2);
  if (metres >= 3) return String(Math.round(metres * 10) / 10);
  if (metres >= 1) return String(Math.round(metres * 20) / 20);
  return String(Math.round(metres * 100) / 100);
}

/**
 * The focus cell of the notes: where it began and the mark that lies farthest from there in dioptres.
 * @param {Played} played
 */
export function focusNote(played) {
  const inside = played.focus.subarray(played.before, played.before + played.frames);
  const start = inside[0];
  let end = start;
  for (const value of inside) if (Math.abs(value - start) > Math.abs(end - start)) end = value;
  if (end < 0.002) return `${tape(1 / start)} m to inf`;
  const [from, to] = [tape(1 / start), tape(1 / end)];
  return Math.abs(end - start) < 0.06 * start ? `${from} m` : `${from}-${to} m`;
}

/**
 * The state of the lens in the middle logged frame: what a still of the take shows.
 * @param {Played} played
 * @param {object} shot
 * @param {readonly number[]} rows indices of the logged frames inside the take
 */
export function middleState(played, shot, rows) {
  const i = rows[Math.floor((rows.length - 1) / 2)];
  const focal = played.focal?.[i] ?? lensOf(shot.lens).focal;
  return { focal, ...lensState(shot.lens, focal, played.focus[i], played.t[i]) };
}
