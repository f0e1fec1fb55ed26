/** Numbers that look random and are the same for the same seed. */
export function generator(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit) => Math.floor(next() * limit);
  return { next, below, pick: (list) => list[below(list.length)], chance: (part) => next() < part };
}
