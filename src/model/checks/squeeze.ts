/** Squeeze is said in up to three places and is one number. */
import { CHECK } from "../../core/findings/check.ts";
import type { TakeContext } from "./context.ts";

export function checkSqueeze({ take, logFile, input, tell }: TakeContext): void {
  const said: { value: number; where: string }[] = [];
  const logged = take.track?.columns.squeeze?.find((value) => Number.isFinite(value));
  if (logged !== undefined && logFile !== null) said.push({ value: logged, where: logFile });
  if (take.lens?.squeeze != null) said.push({ value: take.lens.squeeze, where: `${take.lens.place.file} (lens ${take.lens.id})` });
  if (take.sensorMode?.squeeze != null)
    said.push({ value: take.sensorMode.squeeze, where: `${take.sensorMode.place.file} (mode ${take.sensorMode.sensorMode})` });
  const [first, ...others] = said;
  if (first === undefined || others.every((other) => Math.abs(other.value - first.value) < 0.005)) return;
  const log = input.logs.find((l) => l.file === logFile);
  const row = take.track?.row.find((r) => r >= 0);
  tell(CHECK.squeezeDiffers, {
    place:
      logged !== undefined && log !== undefined && row !== undefined ? log.cell(row, "squeeze").place : (take.note?.place ?? null),
    field: "squeeze",
    message: `The squeeze is said differently: ${said.map((s) => `${s.value} in ${s.where}`).join(", ")}. ${first.value} is used, once.`,
    hint: "Correct the ones that are wrong. The log's squeeze holds, else the lens's, else the sensor mode's.",
  });
}
