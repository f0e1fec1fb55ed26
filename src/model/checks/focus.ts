/** The noted distances against the logged ones: frozen focus, units mixed up, and plain difference. */
import { CHECK } from "../../core/findings/check.ts";
import type { Cell } from "../../ingest/records.ts";
import type { FocusSpan } from "../../ingest/written/spans.ts";
import { logPlaceWords, type TakeContext } from "./context.ts";
import { metres, round, sortedValues } from "./words.ts";

/** Ratios between two distances of which one was written in another unit. */
const UNIT_RATIOS: readonly { readonly ratio: number; readonly words: string }[] = [
  { ratio: 3.2808, words: "feet and metres" },
  { ratio: 12, words: "inches and feet" },
  { ratio: 39.37, words: "inches and metres" },
  { ratio: 100, words: "centimetres and metres" },
  { ratio: 304.8, words: "millimetres and feet" },
  { ratio: 1000, words: "millimetres and metres" },
];
/** Below this share of a change of distance nobody sees whether focus stood. */
const SMALLEST_PULL = 0.15;
/** A log shorter than this says little about a whole take. */
const FEWEST_FRAMES = 12;

export function checkFocus(context: TakeContext): void {
  const { take, limits, logFile, tell } = context;
  const noted = take.note?.focus ?? null;
  const logged = sortedValues(take, "focus");
  if (noted === null || logged.length === 0 || logFile === null) return;
  const nearest = logged.at(-1) as number;
  const farthest = logged[0] as number;
  if (checkFrozen(context, noted, logged)) return;
  const allowed = limits.focusDifferenceFraction;
  const off = (dioptres: number): boolean =>
    dioptres > nearest / (1 - allowed) + 1e-9 || dioptres < farthest / (1 + allowed) - 1e-9;
  const { fromDioptres, toDioptres } = noted.value;
  if (!off(fromDioptres) && !off(toDioptres)) return;
  if (checkUnits(context, noted, nearest, farthest)) return;
  tell(CHECK.focusDiffers, {
    place: noted.place,
    field: "focus",
    message: `The note says ${noted.text}, the log ${metres(farthest)} to ${metres(nearest)}. The log's is shown.`,
    hint: `Correct the note, or look at ${logPlaceWords(context)}.`,
  });
}

/** The note says a pull, and the log has one distance from beginning to end. */
function checkFrozen(context: TakeContext, noted: Cell<FocusSpan>, logged: Float64Array): boolean {
  const { fromDioptres, toDioptres } = noted.value;
  const far = Math.min(fromDioptres, toDioptres);
  const near = Math.max(fromDioptres, toDioptres);
  const nearest = logged.at(-1) as number;
  const farthest = logged[0] as number;
  const moved = near > 0 && far / near < 1 - SMALLEST_PULL;
  if (!moved || logged.length < FEWEST_FRAMES || nearest - farthest > 1e-9) return false;
  context.tell(CHECK.focusFrozen, {
    place: noted.place,
    field: "focus",
    message: `The note says ${noted.text}, and all ${logged.length} logged frames say ${metres(nearest)}: the log's focus did not move.`,
    hint: `Look whether the encoder was connected (${logPlaceWords(context)} on). If focus was not pulled, write one distance in the note.`,
  });
  return true;
}

/** Both ends of the note are the log's times one factor between units. */
function checkUnits(context: TakeContext, noted: Cell<FocusSpan>, nearest: number, farthest: number): boolean {
  const { fromDioptres, toDioptres } = noted.value;
  const near = Math.max(fromDioptres, toDioptres);
  const far = Math.min(fromDioptres, toDioptres);
  if (!(far > 0) || !(farthest > 0)) return false;
  // a note of one distance may be any moment of the take; one of two is its start and its end
  const ratios = near === far ? [near / nearest, near / farthest] : [near / nearest];
  const fits = (r: number, ratio: number): boolean => Math.abs(r / ratio - 1) <= context.limits.unitRatioFraction;
  for (const { ratio, words } of UNIT_RATIOS) {
    for (const [wanted, noteIsLonger] of [
      [1 / ratio, true],
      [ratio, false],
    ] as const) {
      if (!ratios.some((r) => fits(r, wanted)) || (near !== far && !fits(far / farthest, wanted))) continue;
      context.tell(CHECK.unitsMixed, {
        place: noted.place,
        field: "focus",
        message: `The note says ${noted.text}, the log ${metres(farthest)} to ${metres(nearest)}: the ${noteIsLonger ? "note's" : "log's"} figures are ${round(ratio)} times the ${noteIsLonger ? "log's" : "note's"}, as between ${words}.`,
        hint: `${whoIsWrong(context, nearest, noteIsLonger)} The log is ${logPlaceWords(context)}.`,
      });
      return true;
    }
  }
  return false;
}

function whoIsWrong({ take, input, logFile }: TakeContext, nearest: number, noteIsLonger: boolean): string {
  const column = input.logs.find((log) => log.file === logFile)?.focusField ?? "focus";
  const closest = take.lens?.closeFocusM ?? null;
  if (noteIsLonger && closest !== null && nearest * closest > 1.02) {
    return `The log is nearer than lens ${take.lens?.id ?? ""} focuses, so its column ${column} is probably in another unit: write the unit that it has, such as focus_ft.`;
  }
  return `One of the two has another unit than it says: correct the unit in the note, or the name of the log's column ${column} (focus_m, focus_ft, focus_in, focus_mm).`;
}
