/** What the takes of one set-up have in common: filters, white balance, tilt, and which camera has which lens. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";
import { round } from "./words.ts";

/** Share of a scene's set-ups with a filter from which one without is remarked on. */
const SCENE_HABIT = 0.5;
const SMALLEST_TILT = 1;
const SAME_ANGLE = 0.05;
/** Conversion filters by their common numbers, and the white balance that they make daylight or lamp light fit for. */
const CONVERSIONS = [
  { name: /(?:^|[^a-z\d])85[bc]?(?=$|[^a-z\d])/i, number: "85", for: 3200, instead: 5600 },
  { name: /(?:^|[^a-z\d])80a?(?=$|[^a-z\d])/i, number: "80A", for: 5600, instead: 3200 },
] as const;
/** A white balance this near, in mired, is the one that the filter makes unnecessary. */
const NEAR_MIRED = 30;

export function checkSetUpsAlike(context: DayContext): void {
  const noted = context.takes.filter((take) => take.note !== null);
  for (const takes of groups(noted, (take) => sameName(take.slate))) {
    camerasSwapped(takes, context);
    whiteBalances(takes, context);
    for (const own of groups(takes, (take) => sameName(take.camera))) {
      filtersOfSetUp(own, context);
      tiltSigns(own, context);
    }
  }
  for (const takes of groups(noted, (take) => sameName(take.scene ?? ""))) filtersOfScene(takes, context);
  for (const take of noted) conversion(take, context);
  logsOfOtherCameras(context);
}

function groups(takes: readonly Take[], keyOf: (take: Take) => string): readonly (readonly Take[])[] {
  const found = new Map<string, Take[]>();
  for (const take of takes) {
    const group = found.get(keyOf(take));
    if (group === undefined) found.set(keyOf(take), [take]);
    else group.push(take);
  }
  return [...found.values()];
}

/** In one take two cameras have each other's lens: the one that the other has in most takes of the slate. */
function camerasSwapped(takes: readonly Take[], { tell }: DayContext): void {
  const usual = new Map<string, string>();
  for (const own of groups(takes, (take) => sameName(take.camera))) {
    const byLens = [...groups(own.filter(hasLens), lensOf)].sort((a, b) => b.length - a.length);
    const [first, second] = byLens;
    const most = first?.[0];
    if (most !== undefined && (first?.length ?? 0) >= 2 && (first?.length ?? 0) > (second?.length ?? 0)) {
      usual.set(sameName(most.camera), lensOf(most));
    }
  }
  for (const together of groups(takes.filter(hasLens), (take) => sameName(take.take))) {
    for (const [i, one] of together.entries()) {
      const ones = usual.get(sameName(one.camera));
      if (ones === undefined || lensOf(one) === ones) continue;
      const other = together.slice(i + 1).find((two) => {
        const twos = usual.get(sameName(two.camera));
        return twos !== undefined && twos !== ones && lensOf(one) === twos && lensOf(two) === ones;
      });
      if (other === undefined) continue;
      tell(CHECK.camerasSwapped, {
        place: one.note?.lens?.place ?? one.note?.place ?? null,
        field: "lens",
        message: `In take ${one.take} of slate ${one.slate} camera ${one.camera} has ${one.lensId} and camera ${other.camera} has ${other.lensId}; in the other takes it is the other way round.`,
        hint: `Look whether the two rows were swapped (the other is line ${other.note?.place.line ?? "?"}).`,
        take: one.address,
      });
    }
  }
}

function hasLens(take: Take): boolean {
  return take.lensId !== null;
}

function lensOf(take: Take): string {
  return sameName(take.lensId ?? "");
}

/** A log that is matched by its clip and names another camera than the clip's note. */
function logsOfOtherCameras({ takes, input, tell }: DayContext): void {
  for (const take of takes) {
    const log = input.logs.find((one) => one.file === take.logFiles[0]);
    const camera = log?.keys.camera ?? null;
    if (log === undefined || camera === null || take.note === null || sameName(camera) === sameName(take.camera)) continue;
    tell(CHECK.camerasSwapped, {
      place: take.note.camera.place,
      field: "camera",
      message: `The note says camera ${take.camera}, the log of clip ${take.clip ?? "of this take"} camera ${camera}.`,
      hint: `Correct the camera in the note, or "# camera" in ${log.file}: two rows, or two recorders, may have been swapped.`,
      take: take.address,
    });
  }
}

/** One finding a set-up, at its first take without a filter. */
function filtersOfSetUp(takes: readonly Take[], { tell }: DayContext): void {
  const filtered = takes.find((take) => take.note?.filters != null);
  const bare = takes.find((take) => take.note?.filters === null);
  if (filtered?.note?.filters == null || bare === undefined) return;
  tell(CHECK.filterAbsent, {
    place: bare.note?.place ?? null,
    field: "filters",
    message: `Take ${bare.take} of slate ${bare.slate} on camera ${bare.camera} has no filter in the notes, and take ${filtered.take} has ${filtered.note.filters.text}.`,
    hint: `Write the filter if it was on (the other take is line ${filtered.note.place.line ?? "?"}). If it was taken off, write none, or accept the finding in day.yaml.`,
    take: bare.address,
  });
}

function filtersOfScene(takes: readonly Take[], { tell }: DayContext): void {
  if (takes[0]?.scene == null) return;
  const shots = takes.filter((take) => take.plate !== "grid" && take.plate !== "reference");
  const setUps = groups(shots, (take) => `${sameName(take.slate)}\n${sameName(take.camera)}`);
  const filtered = setUps.filter((own) => own.some((take) => take.note?.filters != null));
  if (filtered.length === 0 || filtered.length < SCENE_HABIT * setUps.length) return;
  for (const own of setUps.filter((one) => one.every((take) => take.note?.filters === null))) {
    const take = own[0] as Take;
    const other = (filtered[0] as readonly Take[]).find((one) => one.note?.filters != null) as Take;
    tell(CHECK.filterAbsentInScene, {
      place: take.note?.place ?? null,
      field: "filters",
      message: `Slate ${take.slate} on camera ${take.camera} has no filter in the notes, and ${filtered.length} of ${setUps.length} set-ups of scene ${take.scene} have one (slate ${other.slate}: ${other.note?.filters?.text ?? ""}).`,
      hint: "If the filter was on here too, write it; shots of one scene are cut into one another.",
      take: take.address,
    });
  }
}

/** One finding a slate: the first take whose white balance is far from the one before. */
function whiteBalances(takes: readonly Take[], { show, tell }: DayContext): void {
  const balanced = takes.filter((take) => take.note?.whiteBalanceK != null);
  const first = balanced[0];
  const cell = first?.note?.whiteBalanceK;
  if (first === undefined || cell == null) return;
  for (const take of balanced) {
    const own = take.note?.whiteBalanceK;
    if (own == null || sameName(filterText(take)) !== sameName(filterText(first))) continue;
    const apart = Math.abs(mired(own.value) - mired(cell.value));
    if (apart <= show.limits.whiteBalanceMired) continue;
    tell(CHECK.whiteBalance, {
      place: own.place,
      field: "wb",
      message: `White balance ${own.text} here and ${cell.text} in ${first.address} of the same slate are ${Math.round(apart)} mired apart, and no filter in the notes tells them apart.`,
      hint: `Correct the white balance (the other is line ${first.note?.place.line ?? "?"}), or write the filter that was on. The limit is check.white_balance_mired in show.yaml.`,
      take: take.address,
    });
    return;
  }
}

/** The filter and the camera's white balance do the same work twice. */
function conversion(take: Take, { tell }: DayContext): void {
  const own = take.note?.whiteBalanceK;
  if (own == null) return;
  for (const { name, number, for: wanted, instead } of CONVERSIONS) {
    if (!name.test(filterText(take)) || Math.abs(mired(own.value) - mired(instead)) > NEAR_MIRED) continue;
    tell(CHECK.whiteBalance, {
      place: own.place,
      field: "wb",
      message: `White balance ${own.text} together with filter ${filterText(take)}: an ${number} makes the light fit for about ${wanted} K.`,
      hint: `With the filter on, the camera is usually set to ${wanted}. Correct the white balance or the filter; mired shifts have a sign.`,
      take: take.address,
    });
  }
}

function filterText(take: Take): string {
  return take.note?.filters?.value ?? "";
}

function mired(kelvins: number): number {
  return 1e6 / kelvins;
}

/** Two takes of a set-up with the same tilt and the other sign; where the log has the tilt, the take's own rule looks. */
function tiltSigns(takes: readonly Take[], { tell }: DayContext): void {
  const tilted = takes.filter(
    (take) => Math.abs(take.note?.tiltDeg?.value ?? 0) >= SMALLEST_TILT && take.track?.columns.tilt_deg === undefined,
  );
  const first = tilted[0]?.note?.tiltDeg ?? null;
  const other = tilted.find((take) => Math.abs((take.note?.tiltDeg?.value ?? 0) + (first?.value ?? 0)) <= SAME_ANGLE);
  const own = other?.note?.tiltDeg ?? null;
  if (first === null || own === null || other === undefined) return;
  tell(CHECK.tiltSign, {
    place: own.place,
    field: "tilt_deg",
    message: `The tilt is ${own.text} degrees here and ${round(first.value)} in take ${tilted[0]?.take ?? ""} of the same set-up: the same with the other sign.`,
    hint: `Tilt up is positive. Correct one of them (the other is line ${first.place.line ?? "?"}), or accept the finding in day.yaml.`,
    take: other.address,
  });
}
