/** Circles of one take on several cameras. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";

/** Share of the day's circled takes with several cameras that are circled on all of them, from which it is the day's habit. */
const HABIT = 0.8;
const FEWEST_ALIKE = 5;

/** Where a day circles its takes on all cameras, one that is circled on some of them only is remarked on. */
export function checkCircles({ takes, tell }: DayContext): void {
  const together = new Map<string, Take[]>();
  for (const take of takes) {
    if (take.note === null) continue;
    const key = `${sameName(take.slate)}\n${sameName(take.take)}`;
    together.set(key, [...(together.get(key) ?? []), take]);
  }
  const circled = [...together.values()].filter((group) => group.length > 1 && group.some((take) => take.circled));
  const alike = circled.filter((group) => group.every((take) => take.circled));
  if (alike.length < FEWEST_ALIKE || alike.length < HABIT * circled.length) return;
  for (const group of circled) {
    const bare = group.find((take) => !take.circled && take.status !== "ng" && take.status !== "false start");
    const other = group.find((take) => take.circled);
    if (bare === undefined || other === undefined) continue;
    tell(CHECK.circledOnOneCamera, {
      place: bare.note?.place ?? null,
      field: "circled",
      message: `Take ${bare.take} of slate ${bare.slate} is circled on camera ${other.camera} and not on camera ${bare.camera}; ${alike.length} of the day's ${circled.length} such takes are circled on all cameras.`,
      hint: `Circle it here too if it was printed (the other row is line ${other.note?.place.line ?? "?"}). The take counts as circled either way.`,
      take: bare.address,
    });
  }
}
