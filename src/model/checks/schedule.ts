/** The scenes of the day sheet: against the takes, and in its own lists. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";

const LISTS = [
  { key: "completed", word: "completed", of: "completed", shot: true },
  { key: "part", word: "part", of: "part", shot: true },
  { key: "not_shot", word: "not shot", of: "notShot", shot: false },
] as const;

export function checkSchedule(context: DayContext): void {
  listsAgainstTakes(context);
  scenesTwice(context);
  scheduledScenes(context);
}

/** Only where takes name their scenes: a running slate number says nothing of the scene. */
function listsAgainstTakes({ takes, input, tell }: DayContext): void {
  if (!takes.some((take) => take.scene !== null)) return;
  for (const { key, word, of, shot } of LISTS) {
    for (const [i, scene] of input.record[of].entries()) {
      const take = takes.find((one) => isOfScene(one, scene));
      if ((take !== undefined) === shot) continue;
      tell(CHECK.completedWithoutTake, {
        place: input.keyPlace(`${key}.${i}`),
        field: key,
        message:
          take === undefined
            ? `Scene ${scene} is in ${key}, and no take of this day is of scene ${scene}.`
            : `Scene ${scene} is in ${key}, and ${take.address} is a take of it.`,
        hint:
          take === undefined
            ? `Take the scene out of ${key}, or look for the takes that were noted under another scene.`
            : `Put the scene into part or completed, or correct the scene of the take (line ${take.note?.place.line ?? "?"} of the notes): ${word} means that nothing of it was shot.`,
      });
    }
  }
}

function isOfScene(take: Take, scene: string): boolean {
  const wanted = sameName(scene);
  if (take.scene !== null) return sameName(take.scene) === wanted;
  const slate = sameName(take.slate);
  return slate.startsWith(wanted) && /^[a-z]*$/.test(slate.slice(wanted.length));
}

function scenesTwice({ input, tell }: DayContext): void {
  const { record } = input;
  const scheduled = new Set<string>();
  for (const [i, { scene }] of record.scheduled.entries()) {
    if (!scheduled.has(sameName(scene))) {
      scheduled.add(sameName(scene));
      continue;
    }
    tell(CHECK.sceneInTwoLists, {
      place: input.keyPlace(`scheduled.${i}`),
      field: "scheduled",
      message: `Scene ${scene} is scheduled twice; its pages are counted twice.`,
      hint: "Take one of the two away, or give parts of a scene names of their own, such as 27 pt 1.",
    });
  }
  const first = new Map<string, string>();
  for (const { key, of } of LISTS) {
    for (const [i, scene] of record[of].entries()) {
      const other = first.get(sameName(scene));
      if (other === undefined) first.set(sameName(scene), key);
      else {
        tell(CHECK.sceneInTwoLists, {
          place: input.keyPlace(`${key}.${i}`),
          field: key,
          message: other === key ? `Scene ${scene} is twice in ${key}.` : `Scene ${scene} is in ${other} and in ${key}.`,
          hint: "Leave it in one of the lists.",
        });
      }
    }
  }
}

function scheduledScenes({ input, tell }: DayContext): void {
  const { record } = input;
  const listed = new Set(LISTS.flatMap(({ of }) => record[of]).map(sameName));
  if (listed.size === 0 || record.scheduled.length === 0) return;
  const scheduled = new Set(record.scheduled.map(({ scene }) => sameName(scene)));
  for (const [i, { scene }] of record.scheduled.entries()) {
    if (listed.has(sameName(scene))) continue;
    tell(CHECK.sceneLeftOpen, {
      place: input.keyPlace(`scheduled.${i}`),
      field: "scheduled",
      message: `Scene ${scene} is scheduled, and in none of completed, part and not_shot.`,
      hint: "Write it into the list that it belongs to; until then it counts as not completed.",
    });
  }
  for (const [i, scene] of record.completed.entries()) {
    if (scheduled.has(sameName(scene))) continue;
    tell(CHECK.completedNotScheduled, {
      place: input.keyPlace(`completed.${i}`),
      field: "completed",
      message: `Scene ${scene} is completed and not in scheduled, so that its pages are not counted.`,
      hint: "Add it to scheduled with its pages in eighths, or correct the scene.",
    });
  }
}
