/** Set-ups: letters, scenes, circles and lenses of a slate. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";

export function checkSetUps(context: DayContext): void {
  const slates = new Map<string, Take[]>();
  for (const take of context.takes) {
    if (take.note === null) continue;
    slates.set(sameName(take.slate), [...(slates.get(sameName(take.slate)) ?? []), take]);
  }
  for (const takes of slates.values()) {
    lettersLikeDigits(takes, context);
    otherScene(takes, context);
    lensWithinSetUp(takes, context);
    if (context.takes.some((take) => take.circled)) noCircle(takes, context);
  }
  scenesNotScheduled(context);
}

/** I and O are left out when set-ups are lettered, because they read as 1 and 0. */
function lettersLikeDigits(takes: readonly Take[], { tell }: DayContext): void {
  const [take] = takes;
  const letter = /^\d+[A-Za-z]*?([IOio])[A-Za-z]*$/.exec(take?.slate.trim() ?? "")?.[1];
  if (take === undefined || letter === undefined) return;
  const digit = letter.toUpperCase() === "I" ? "1" : "0";
  tell(CHECK.letterLikeDigit, {
    place: take.note?.slate.place ?? null,
    field: "slate",
    message: `Slate ${take.slate} has the letter ${letter.toUpperCase()}, which set-ups do not use because it reads as ${digit}.`,
    hint: `Write ${take.slate.trim().replace(/[IOio]/, digit)} if the digit was meant. If the slate really has the letter, accept the finding in day.yaml.`,
    take: take.address,
  });
}

function otherScene(takes: readonly Take[], { tell }: DayContext): void {
  const first = takes.find((take) => take.scene !== null);
  if (first?.scene == null) return;
  const seen = new Set([sameName(first.scene)]);
  for (const take of takes) {
    if (take.scene === null || seen.has(sameName(take.scene))) continue;
    seen.add(sameName(take.scene));
    tell(CHECK.slateOnTwoScenes, {
      place: take.note?.scene?.place ?? null,
      field: "scene",
      message: `Slate ${take.slate} is noted for scene ${first.scene} (line ${first.note?.place.line ?? "?"}) and for scene ${take.scene}.`,
      hint: "A slate belongs to one scene: correct the scene or the slate.",
      take: take.address,
    });
  }
}

function lensWithinSetUp(takes: readonly Take[], { tell }: DayContext): void {
  for (const camera of new Set(takes.map((take) => sameName(take.camera)))) {
    // a lens that the kit does not have is said already, and is often a slip for the one before
    const own = takes.filter((take) => sameName(take.camera) === camera && take.lens !== null);
    const [first] = own;
    const other = own.find((take) => first?.lens != null && take.lens?.id !== first.lens.id);
    if (first === undefined || other === undefined) continue;
    tell(CHECK.lensWithinSetUp, {
      place: other.note?.lens?.place ?? other.note?.place ?? null,
      field: "lens",
      message: `Camera ${other.camera} has lens ${first.lensId} in take ${first.take} of slate ${first.slate} and ${other.lensId} in take ${other.take}.`,
      hint: "A new lens is usually a new set-up with a letter of its own. Look whether the lens or the slate is wrong.",
      take: other.address,
    });
  }
}

/** Grids, references, clean plates and the like are shot to be measured or laid under others, and often not circled. */
function noCircle(takes: readonly Take[], { input, tell }: DayContext): void {
  const last = takes.filter((take) => take.plate === null || take.plate === "hero").at(-1);
  if (last === undefined) return;
  if (input.notes.some((note) => note.circled && sameName(note.slate.value) === sameName(last.slate))) return;
  tell(CHECK.noCircle, {
    place: last.note?.slate.place ?? null,
    field: "circled",
    message: `No take of slate ${last.slate} is circled.`,
    hint: "If the set-up was finished, mark the takes that were printed. Editorial receives circled takes first.",
    take: last.address,
  });
}

function scenesNotScheduled({ takes, input, tell }: DayContext): void {
  const { scheduled, completed, part, notShot } = input.record;
  if (scheduled.length === 0) return;
  const known = new Set([...scheduled.map((s) => s.scene), ...completed, ...part, ...notShot].map(sameName));
  for (const take of takes) {
    if (take.scene === null || known.has(sameName(take.scene))) continue;
    known.add(sameName(take.scene));
    tell(CHECK.sceneNotScheduled, {
      place: take.note?.scene?.place ?? null,
      field: "scene",
      message: `Scene ${take.scene} is not in the day's schedule.`,
      hint: "Correct the scene, or add it to scheduled in day.yaml if it was taken in.",
      take: take.address,
    });
  }
}
