/** Focus series for the pull tests, in dioptres at 24 frames a second. */

export type Part = { readonly hold: number; readonly frames: number } | { readonly to: number; readonly frames: number };

/** Smoothstep, as a hand moves: slow, fast, slow. */
export function smoothstep(share: number): number {
  return share * share * (3 - 2 * share);
}

/** Holds and moves after each other; distances in metres. A move's last frame is at its end. */
export function seriesOf(start: number, parts: readonly Part[]): Float64Array {
  const values: number[] = [];
  let at = 1 / start;
  for (const part of parts) {
    if ("hold" in part) {
      for (let i = 0; i < part.frames; i++) values.push(at);
    } else {
      const to = 1 / part.to;
      for (let i = 1; i <= part.frames; i++) values.push(at + (to - at) * smoothstep(i / part.frames));
      at = to;
    }
  }
  return Float64Array.from(values);
}

/** The series of check value CV111: 216 frames. */
export function pullSeries(): Float64Array {
  return seriesOf(3, [
    { hold: 3, frames: 48 },
    { to: 1.5, frames: 24 },
    { hold: 1.5, frames: 48 },
    { to: 6, frames: 12 },
    { hold: 6, frames: 36 },
    { to: 5.8, frames: 24 },
    { hold: 5.8, frames: 24 },
  ]);
}

/** Seeded normal deviates (mulberry32 and Box-Muller), so that noisy runs are the same everywhere. */
export function normalNoise(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform() || 1e-12)) * Math.cos(2 * Math.PI * uniform());
}
