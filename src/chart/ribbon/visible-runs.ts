/** Curves that are seen in parts: sampled, and cut where they leave what is seen. */
import type { PointMm } from "../../optics/distortion/map.ts";

/** Halvings of the step in which a curve leaves: to a thousandth of it. */
const HALVINGS = 10;

/**
 * The seen parts of the curve `at(0..1)`, each as points in order. `at` gives `null` where the curve is not seen; a part that
 * begins or ends between two samples is cut where it does.
 */
export function visibleRuns(at: (share: number) => PointMm | null, steps: number): readonly (readonly PointMm[])[] {
  const runs: PointMm[][] = [];
  let run: PointMm[] | null = null;
  for (let i = 0; i <= steps; i++) {
    const here = at(i / steps);
    if (here !== null) {
      if (run === null) {
        run = i === 0 ? [] : [edge(at, i / steps, (i - 1) / steps)];
        runs.push(run);
      }
      run.push(here);
    } else if (run !== null) {
      run.push(edge(at, (i - 1) / steps, i / steps));
      run = null;
    }
  }
  return runs.filter((points) => points.length > 1);
}

/** The last seen point on the way from a seen share to an unseen one. */
function edge(at: (share: number) => PointMm | null, seen: number, unseen: number): PointMm {
  let best = at(seen) ?? { xMm: 0, yMm: 0 };
  let inside = seen;
  let outside = unseen;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (inside + outside) / 2;
    const point = at(middle);
    if (point === null) outside = middle;
    else {
      inside = middle;
      best = point;
    }
  }
  return best;
}
