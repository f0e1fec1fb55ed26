/** Logs that did not notice what happened: the same readings over a change of lens, or one recording for two takes. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import { loggedTrack } from "./context.ts";
import type { DayContext } from "./day.ts";

const READINGS = ["focus", "t", "f", "focal_mm"] as const;
/** Shorter logs may be alike by chance. */
const FEWEST_FRAMES = 24;

export function checkStaleLogs({ takes, input, tell }: DayContext): void {
  const last = new Map<string, Take>();
  for (const take of takes) {
    if (take.track === null || take.track.framesLogged < FEWEST_FRAMES) continue;
    const before = last.get(sameName(take.camera));
    last.set(sameName(take.camera), take);
    if (before === undefined) continue;
    const held = heldReadings(take);
    const heldBefore = heldReadings(before);
    const changed = notedLens(take) !== null && notedLens(before) !== null && notedLens(take) !== notedLens(before);
    const stale = changed && held !== null && held === heldBefore;
    const copied = moves(take) && sameRecording(take, before);
    if (!stale && !copied) continue;
    const logged = loggedTrack({ take, input, logFile: take.logFiles[0] ?? null });
    const row = take.track.row.find((r) => r >= 0) ?? 0;
    tell(CHECK.staleLog, {
      place: logged?.log.cell(row, "focus").place ?? null,
      field: logged?.log.focusField ?? null,
      message: stale
        ? `All frames of ${take.address} and of ${before.address} have the same readings, and between the two takes the lens changed from ${before.note?.lens?.value} to ${take.note?.lens?.value}.`
        : `The readings of ${take.address} are those of ${before.address}, frame by frame.`,
      hint: stale
        ? "The recorder probably went on sending its last reading. Look whether it was connected after the lens change; the figures of this take are doubtful."
        : "One recording was probably copied for two takes. Look for the take's own log.",
      take: take.address,
    });
  }
}

function notedLens(take: Take): string | null {
  const lens = take.note?.lens?.value ?? null;
  return lens === null ? null : sameName(lens);
}

/** The readings of a take in which nothing moved, as one text; `null` when something moved, focus is at infinity, or there is none. */
function heldReadings(take: Take): string | null {
  const columns = take.track?.columns ?? {};
  if (columns.focus === undefined) return null;
  const parts: string[] = [];
  for (const name of READINGS) {
    const values = columns[name]?.filter((value) => !Number.isNaN(value));
    const first = values?.[0];
    if (values === undefined || first === undefined) continue;
    // lenses are often left at infinity, whichever is on
    if (values.some((value) => value !== first) || (name === "focus" && first === 0)) return null;
    parts.push(`${name} ${first}`);
  }
  return parts.join(" ");
}

function moves(take: Take): boolean {
  const focus = loggedFocus(take);
  return focus.some((value) => value !== focus[0]);
}

/** Whether the logged frames of two takes, in order, have equal focus from beginning to end of the shorter one. */
function sameRecording(a: Take, b: Take): boolean {
  const one = loggedFocus(a);
  const other = loggedFocus(b);
  const length = Math.min(one.length, other.length);
  if (length < FEWEST_FRAMES || Math.abs(one.length - other.length) > 1) return false;
  for (let i = 0; i < length; i++) if (one[i] !== other[i]) return false;
  return true;
}

function loggedFocus(take: Take): Float64Array {
  return take.track?.columns.focus?.filter((value) => !Number.isNaN(value)) ?? new Float64Array();
}
