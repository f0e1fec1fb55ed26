/** Takes under their scenes, as a cutting room keeps them: by scene, by slate, then in shooting order. */
import { compareCodes } from "../../core/code-order.ts";
import { minutesSeconds } from "../../format/time.ts";
import { listWords, plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { foldName, freeName } from "../links.ts";
import type { RowGroup } from "../table.ts";

/** A scene's heading with its takes. */
export interface SceneGroup extends Omit<RowGroup, "rows"> {
  readonly takes: readonly TakeSummary[];
}

/** A take of two scenes stands under a heading of its own, as its note names them; takes without a scene come last. Ids begin with the prefix. */
export function sceneGroups(takes: readonly TakeSummary[], prefix: string): readonly SceneGroup[] {
  const scenes = [...new Set(takes.map((t) => t.take.scene))].sort((a, b) =>
    a === null || b === null ? Number(a === null) - Number(b === null) : compareCodes(a, b),
  );
  const ids = new Set<string>();
  return scenes.map((scene) => {
    const own = takes.filter((t) => t.take.scene === scene).sort((a, b) => compareCodes(a.take.slate, b.take.slate));
    const slates = [...new Set(own.map((t) => t.take.slate))];
    return {
      id: freeName(scene === null ? `${prefix}-no-scene` : `${prefix}-scene-${foldName(scene)}`, ids),
      heading: scene === null ? "Scene not recorded" : `Scene ${scene}`,
      about: `${slates.length === 1 ? "slate" : "slates"} ${listWords(slates)}`,
      count: `; ${plural(own.length, "clip")}, ${minutesSeconds(own.reduce((sum, t) => sum + t.durationSeconds, 0))}`,
      takes: own,
    };
  });
}
