/** The demo's own seeded generator: one stream a key, so that a change to one take leaves the others as they were. */

/**
 * @param {string} key
 * @returns {number} 32-bit FNV-1a hash
 */
function hash(key) {
  let h = 0x811c9dc5;
  for (let i = 0; i < key.length; i++) h = Math.imul(h ^ key.charCodeAt(i), 0x01000193);
  return h >>> 0;
}

/**
 * @typedef {object} Random
 * @property {() => number} next 0 to 1, 1 left out
 * @property {(from: number, to: number) => number} range
 * @property {(from: number, to: number) => number} whole whole number, both ends possible
 * @property {(chance: number) => boolean} chance
 */

/**
 * A stream of numbers that depends on its key alone (generator: mulberry32, public domain).
 * @param {string} key
 * @returns {Random}
 */
export function random(key) {
  let state = hash(key);
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const range = (/** @type {number} */ from, /** @type {number} */ to) => from + (to - from) * next();
  return {
    next,
    range,
    whole: (from, to) => Math.floor(range(from, to + 1)),
    chance: (chance) => next() < chance,
  };
}
