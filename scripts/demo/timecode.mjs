/** Timecode of the demo: 24 frames a second, no drop frame. */

export const FPS = 24;
const FRAMES_A_DAY = FPS * 86400;

/**
 * @param {string} label `hh:mm:ss:ff`
 * @returns {number} frames since midnight
 */
export function frameOf(label) {
  const [h, m, s, f] = label.split(":").map(Number);
  return ((h * 60 + m) * 60 + s) * FPS + f;
}

/**
 * @param {number} frame frames since midnight of the day; wraps after 24 hours
 * @returns {string}
 */
export function labelOf(frame) {
  const n = ((frame % FRAMES_A_DAY) + FRAMES_A_DAY) % FRAMES_A_DAY;
  const two = (/** @type {number} */ value) => String(value).padStart(2, "0");
  const seconds = Math.floor(n / FPS);
  return `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}:${two(n % FPS)}`;
}
