/** Clips and rolls: one clip for one take, a clip on its own roll and camera, rolls in sequence. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";

/** Share of the day's clips that must follow a habit before the others are remarked on. */
const HABIT = 0.8;
const FEWEST_CLIPS = 4;

export function checkClips(context: DayContext): void {
  clipsTwice(context);
  clipsOfOtherRolls(context);
  clipsOfOtherCameras(context);
  rollsSkipped(context);
}

function clipsTwice({ takes, tell }: DayContext): void {
  const first = new Map<string, Take>();
  for (const take of takes) {
    if (take.clip === null) continue;
    const key = sameName(take.clip);
    const other = first.get(key);
    if (other === undefined) {
      first.set(key, take);
      continue;
    }
    const rolls = [other.roll, take.roll].filter((roll) => roll !== null);
    const twoRolls = rolls.length === 2 && sameName(rolls[0] as string) !== sameName(rolls[1] as string);
    tell(CHECK.clipTwice, {
      place: take.note?.clip?.place ?? take.note?.place ?? null,
      field: "clip",
      message: `Clip ${take.clip} is noted for two takes: ${other.address} and ${take.address}${twoRolls ? `, on rolls ${rolls.join(" and ")}` : ""}.`,
      hint: "One clip belongs to one take and one roll. Correct the clip of one of them.",
      take: take.address,
    });
  }
}

/** Where clips are named by their roll (A021C003 on roll A021), one that names another roll. */
function clipsOfOtherRolls({ takes, tell }: DayContext): void {
  const named = takes.flatMap((take) => {
    const roll = /^(.+?)_?C\d{2,4}(?:_.*)?$/i.exec(take.clip ?? "")?.[1];
    return roll === undefined || take.roll === null ? [] : [{ take, fits: sameName(roll) === sameName(take.roll), roll }];
  });
  if (!isHabit(named)) return;
  for (const { take, roll } of named.filter(({ fits }) => !fits)) {
    tell(CHECK.clipOfOtherRoll, {
      place: take.note?.clip?.place ?? null,
      field: "clip",
      message: `Clip ${take.clip} is named by roll ${roll} and noted on roll ${take.roll}.`,
      hint: "Correct the clip or the roll; the other clips of the day are named by their roll.",
      take: take.address,
    });
  }
}

/** Where clips begin with their camera's letter, one that begins with another camera's. */
function clipsOfOtherCameras({ takes, tell }: DayContext): void {
  const cameras = new Set(takes.map((take) => sameName(take.camera)));
  const clips = takes
    .filter((take) => take.clip !== null && take.note !== null)
    .map((take) => ({ take, fits: sameName(take.clip as string).startsWith(sameName(take.camera)) }));
  if (!isHabit(clips)) return;
  for (const { take, fits } of clips) {
    const other = fits ? undefined : [...cameras].find((camera) => sameName(take.clip as string).startsWith(camera));
    if (other === undefined) continue;
    tell(CHECK.clipOfOtherCamera, {
      place: take.note?.clip?.place ?? null,
      field: "clip",
      message: `Clip ${take.clip} is noted for camera ${take.camera}, and begins with the letter of camera ${other.toUpperCase()}.`,
      hint: "Correct the clip or the camera: two rows may have been swapped.",
      take: take.address,
    });
  }
}

function isHabit(clips: readonly { readonly fits: boolean }[]): boolean {
  const fitting = clips.filter(({ fits }) => fits).length;
  return clips.length >= FEWEST_CLIPS && fitting < clips.length && fitting >= HABIT * clips.length;
}

/** A021 is followed by A022. */
function rollsSkipped({ takes, tell }: DayContext): void {
  const last = new Map<string, { readonly roll: string; readonly number: number }>();
  for (const take of takes) {
    const parts = /^(.*?)(\d+)$/.exec(take.roll?.trim() ?? "");
    if (take.roll === null || parts === null) continue;
    const series = `${sameName(take.camera)} ${sameName(parts[1] as string)}`;
    const number = Number(parts[2]);
    const before = last.get(series);
    if (before !== undefined && number > before.number + 1) {
      tell(CHECK.rollSkipped, {
        place: take.note?.roll?.place ?? null,
        field: "roll",
        message: `Roll ${take.roll} follows ${before.roll} on camera ${take.camera}; ${number === before.number + 2 ? "one roll is" : `${number - before.number - 1} rolls are`} left out.`,
        hint: "Look whether a roll was not noted. If its number was never used, nothing needs to be done.",
        take: take.address,
      });
    }
    if (before === undefined || number > before.number) last.set(series, { roll: take.roll, number });
  }
}
