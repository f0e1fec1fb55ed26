/** The plate set-ups of a day: a slate with the takes that are marked as plates, and the take that stands for each camera. */
import { foldName } from "../model/address.ts";
import type { TakeSummary } from "./types.ts";

export interface PlateSetup {
  /** The slate folded as in a take's address: slates that fold alike are one set-up. */
  readonly address: string;
  readonly slate: string;
  /** In shooting order; all takes of the slate of which one is a plate. */
  readonly takes: readonly TakeSummary[];
  /** A take a camera, in order of the camera's letter: the last circled plate, else the last good one, else the last. */
  readonly chosen: readonly TakeSummary[];
}

/** In order of each slate's first take. Duplicate addresses are left out. */
export function plateSetups(takes: readonly TakeSummary[]): readonly PlateSetup[] {
  const slates = new Map<string, TakeSummary[]>();
  for (const t of takes) {
    if (t.take.duplicate) continue;
    const address = foldName(t.take.slate);
    slates.set(address, [...(slates.get(address) ?? []), t]);
  }
  return [...slates].flatMap(([address, members]) => {
    const plates = members.filter((t) => t.take.plate !== null);
    const [first] = plates;
    if (first === undefined) return [];
    const cameras = [...new Set(plates.map((t) => t.take.camera))].sort();
    return [
      {
        address,
        slate: first.take.slate,
        takes: members,
        chosen: cameras.flatMap((camera) => chosenOf(plates.filter((t) => t.take.camera === camera)) ?? []),
      },
    ];
  });
}

function chosenOf(plates: readonly TakeSummary[]): TakeSummary | undefined {
  const last = (found: readonly TakeSummary[]): TakeSummary | undefined => found[found.length - 1];
  return last(plates.filter((t) => t.take.circled)) ?? last(plates.filter((t) => t.take.status === "good")) ?? last(plates);
}
