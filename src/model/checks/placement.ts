/** Where the camera stood: noted height, tilt and roll against the log, and what no camera can have. */
import { CHECK } from "../../core/findings/check.ts";
import type { Cell } from "../../ingest/records.ts";
import { type Range, rangeOf } from "../range.ts";
import { logPlaceWords, type TakeContext } from "./context.ts";
import { round } from "./words.ts";

/** Between a base plate and the lens centre it is a hand's breadth or two, in metres. */
const PLATE_TO_LENS: readonly [number, number] = [0.03, 0.35];
/** A smaller tilt may as well be read from the other side of the level. */
const SMALLEST_TILT = 1;
const SMALLEST_PERCENT = 2;

export function checkPlacement(context: TakeContext): void {
  const { take, limits, tell } = context;
  const note = take.note;
  if (note === null) return;
  if (note.heightM !== null && !heightImplausible(note.heightM, context)) {
    const logged = rangeOf(take.track?.columns.height_m);
    if (logged !== null && isOutside(note.heightM.value, logged, limits.heightDifferenceM))
      heightDiffers(note.heightM, logged, context);
  }
  for (const [field, word, cell] of [
    ["tilt_deg", "tilt", note.tiltDeg],
    ["roll_deg", "roll", note.rollDeg],
  ] as const) {
    const logged = rangeOf(take.track?.columns[field]);
    if (cell === null || logged === null || !isOutside(cell.value, logged, limits.angleDifferenceDeg)) continue;
    const fits = (value: number): boolean => !isOutside(value, logged, limits.angleDifferenceDeg);
    const says = `The note says a ${word} of ${cell.text} degrees, the log ${rangeText(logged)}`;
    const place = { place: cell.place, field } as const;
    if (field === "tilt_deg" && Math.abs(cell.value) >= SMALLEST_TILT && fits(-cell.value)) {
      tell(CHECK.tiltSign, {
        ...place,
        message: `${says}: the same with the other sign.`,
        hint: `Tilt up is positive. Correct the note, or look at ${logPlaceWords(context)}.`,
      });
    } else if (field === "roll_deg" && Math.abs(cell.value) >= SMALLEST_PERCENT && fits(degreesOfPercent(cell.value))) {
      tell(CHECK.rollInPercent, {
        ...place,
        message: `${says}; ${cell.text} percent is ${round(degreesOfPercent(cell.value))} degrees.`,
        hint: `Write the roll in degrees: ${round(degreesOfPercent(cell.value))}. The log is ${logPlaceWords(context)}.`,
      });
    } else {
      tell(CHECK.placementDiffers, {
        ...place,
        message: `${says}. The log's is shown.`,
        hint: `Correct the note, or look at ${logPlaceWords(context)}. The limit is check.angle_difference_deg in show.yaml.`,
      });
    }
  }
}

function heightDiffers(cell: Cell<number>, logged: Range, context: TakeContext): void {
  const lower = logged.low - cell.value;
  const plate = lower >= PLATE_TO_LENS[0] && lower <= PLATE_TO_LENS[1];
  context.tell(CHECK.placementDiffers, {
    place: cell.place,
    field: "height_m",
    message: `The note says a height of ${cell.text}, the log ${rangeText(logged)} m. The log's is shown.`,
    hint: `${plate ? "The note may be the height of the base plate: the height of the lens centre is asked for" : "Correct the note"}, or look at ${logPlaceWords(context)}. The limit is check.height_difference_m in show.yaml.`,
  });
}

function heightImplausible(cell: Cell<number>, { take, limits, tell }: TakeContext): boolean {
  const halfFront = (take.lens?.frontDiameterMm ?? 0) / 2000;
  const { value } = cell;
  const problem =
    value > limits.highestHeightM
      ? `Metres are asked for: ${value <= 1000 ? `${round(value / 100)} m if it is centimetres` : `${round(value / 1000)} m if it is millimetres`}.`
      : value <= 0 || value < halfFront
        ? `The lens centre is asked for, and ${halfFront > 0 ? `half of the front of lens ${take.lens?.id ?? ""} is ${round(halfFront)} m` : "it lies above the ground"}. It may be the height of a base plate.`
        : null;
  if (problem === null) return false;
  tell(CHECK.heightImplausible, {
    place: cell.place,
    field: "height_m",
    message: `A height of ${cell.text} can hardly be that of the lens centre.`,
    hint: `${problem} If the camera really was there, accept the finding in day.yaml.`,
  });
  return true;
}

function degreesOfPercent(percent: number): number {
  return (Math.atan(percent / 100) * 180) / Math.PI;
}

function isOutside(value: number, { low, high }: Range, by: number): boolean {
  return value < low - by - 1e-9 || value > high + by + 1e-9;
}

function rangeText({ low, high }: Range): string {
  return round(low) === round(high) ? round(low) : `${round(low)} to ${round(high)}`;
}
