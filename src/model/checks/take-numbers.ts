/** Take numbers of a slate in sequence: none left out, none written in two ways. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";

interface Numbered {
  readonly take: Take;
  readonly number: number;
  /** What follows the number, such as `pu`. */
  readonly rest: string;
}

export function checkTakeNumbers({ takes, tell }: DayContext): void {
  const slates = new Map<string, Numbered[]>();
  for (const take of takes) {
    const parts = /^(\d+)\s*(.*)$/.exec(take.take.trim());
    if (parts === null || take.note === null) continue;
    const numbered = { take, number: Number(parts[1]), rest: sameName(parts[2] as string) };
    slates.set(sameName(take.slate), [...(slates.get(sameName(take.slate)) ?? []), numbered]);
  }
  for (const all of slates.values()) {
    tellOfMissing(all, tell);
    tellOfTwoForms(all, tell);
  }
}

/** Cameras share their take numbers: a number that one camera has is not missing. */
function tellOfMissing(all: readonly Numbered[], tell: DayContext["tell"]): void {
  const numbers = [...new Set(all.map(({ number }) => number))].sort((a, b) => a - b);
  for (const [i, number] of numbers.entries()) {
    const before = numbers[i - 1] ?? 0;
    const { take } = all.find((one) => one.number === number) as Numbered;
    const missing = number - before - 1;
    if (missing <= 0 || number === 0) continue;
    const which = missing === 1 ? `take ${before + 1}` : `takes ${before + 1} to ${number - 1}`;
    tell(before === 0 ? CHECK.firstTakeElsewhere : CHECK.takeMissing, {
      place: take.note?.take.place ?? null,
      field: "take",
      message:
        before === 0
          ? `Slate ${take.slate} begins with take ${number} on this day.`
          : `Slate ${take.slate} goes from take ${before} to take ${number}; ${which} ${missing === 1 ? "is" : "are"} not in the notes.`,
      hint:
        before === 0
          ? "If the slate was begun on another day nothing needs to be done; else add the missing takes."
          : "Add the missing row, or correct the take number. A number that was skipped on the slate can be accepted in day.yaml.",
      take: take.address,
    });
  }
}

/** `3` and `03` are one take on a slate and two addresses here. */
function tellOfTwoForms(all: readonly Numbered[], tell: DayContext["tell"]): void {
  const first = new Map<string, Take>();
  for (const { take, number, rest } of all) {
    const key = `${sameName(take.camera)} ${number} ${rest}`;
    const other = first.get(key);
    if (other === undefined) first.set(key, take);
    else if (other.address !== take.address) {
      tell(CHECK.takeTwice, {
        place: take.note?.take.place ?? null,
        field: "take",
        message: `Slate ${take.slate}, take ${number}, camera ${take.camera} stands twice in the notes, as "${other.take}" (line ${other.note?.place.line ?? "?"}) and "${take.take}".`,
        hint: "Give one of them its own number, or take the second row away.",
        take: take.address,
      });
    }
  }
}
