/** What editorial and VFX will ask for. */
import { CHECK } from "../../core/findings/check.ts";
import type { TakeContext } from "./context.ts";

export function checkHandover({ take, tell }: TakeContext): void {
  const note = take.note;
  if (note === null) return;
  if (take.circled && (take.status === "ng" || take.status === "false start")) {
    tell(CHECK.circledNotGood, {
      place: note.status?.place ?? note.place,
      field: "status",
      message: `The take is circled, and its status is "${note.status?.text ?? take.status}".`,
      hint: "Take away the circle or correct the status: editorial receives circled takes first.",
    });
  }
  if (take.plate === null || take.plate === "grid") return;
  const has = (column: "height_m" | "tilt_deg"): boolean =>
    take.track?.columns[column]?.some((value) => Number.isFinite(value)) ?? false;
  const lacks = [
    ...(note.heightM === null && !has("height_m") ? ["height_m"] : []),
    ...(note.tiltDeg === null && !has("tilt_deg") ? ["tilt_deg"] : []),
    ...(take.lens !== null && take.lens.serial === null ? ["the lens's serial"] : []),
  ];
  if (lacks.length === 0) return;
  tell(CHECK.plateLacks, {
    place: note.plate?.place ?? note.place,
    field: "plate",
    message: `A ${take.plate} plate without ${lacks.join(", ")}.`,
    hint: "VFX asks for height to the lens centre, tilt and lens serial of every plate. Write them in the notes or the kit.",
  });
}
