/** Which takes get files for VFX, and how large their maps are. */
import type { Take } from "../../model/types.ts";

export type TakeChoice = "none" | "plates" | "all";

export interface VfxOptions {
  /** Takes that get a folder. */
  readonly takes: TakeChoice;
  /** Takes whose folder has maps. */
  readonly maps: TakeChoice;
  /** Width of the maps in pixels, `full` for the recorded width, `null` for the default (see map-size.ts). */
  readonly mapWidth: number | "full" | null;
}

export const DEFAULT_VFX: VfxOptions = Object.freeze({ takes: "plates", maps: "plates", mapWidth: null });

/** Whether a choice takes in a take. A duplicate address has no folder: the first take of that address has it. */
export function isChosen(take: Take, choice: TakeChoice): boolean {
  if (take.duplicate || take.durationFrames === 0) return false;
  return choice === "all" || (choice === "plates" && take.plate !== null);
}
