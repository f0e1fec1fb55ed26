/** Lens states that share a map: what a map would show of them is the same within a tolerance. */

export interface MergedStates {
  /** Group of each state, in order of the first state; -1 for a state without a vector. */
  readonly groupOf: Int32Array;
  /** The state that stands for each group. */
  readonly reference: readonly number[];
}

/**
 * Puts states into groups so that each lies within `tolerance` of the state that stands for its group. Distances are between
 * points (x, y, x, y, ...) with `dimensions` 2, between numbers with 1; the largest of them counts. A group grows from its
 * first state to the farthest within reach and takes in what lies within reach of that: half as many maps as from the first
 * alone.
 */
export function mergeStates(vectors: readonly (Float64Array | null)[], tolerance: number, dimensions: 1 | 2): MergedStates {
  const groupOf = new Int32Array(vectors.length).fill(-1);
  const reference: number[] = [];
  const near = (a: number, b: number): boolean => distance(vectors[a], vectors[b], dimensions) < tolerance;
  for (let first = 0; first < vectors.length; first++) {
    if (groupOf[first] !== -1 || vectors[first] === null) continue;
    let chosen = first;
    let farthest = 0;
    for (let state = first + 1; state < vectors.length; state++) {
      if (groupOf[state] !== -1) continue;
      const away = distance(vectors[first], vectors[state], dimensions);
      if (away < tolerance && away > farthest) {
        farthest = away;
        chosen = state;
      }
    }
    for (let state = first; state < vectors.length; state++) {
      if (groupOf[state] === -1 && vectors[state] !== null && near(chosen, state)) groupOf[state] = reference.length;
    }
    reference.push(chosen);
  }
  return { groupOf, reference };
}

function distance(a: Float64Array | null | undefined, b: Float64Array | null | undefined, dimensions: 1 | 2): number {
  if (a == null || b == null) return Number.POSITIVE_INFINITY;
  let largest = 0;
  for (let i = 0; i < a.length; i += dimensions) {
    const x = (a[i] as number) - (b[i] as number);
    const away = dimensions === 1 ? Math.abs(x) : Math.hypot(x, (a[i + 1] as number) - (b[i + 1] as number));
    largest = Math.max(largest, away);
  }
  return largest;
}
