import { readDistance } from "./distance.ts";
import { readNumber } from "./number.ts";
import { type Reading, read, refuse } from "./reading.ts";

/** Metres from the image plane in a column that says metres: a plain number, a distance with its unit, or `inf`. */
export function readMetres(text: string): Reading<number> {
  const number = readNumber(text);
  if (number.ok)
    return number.value >= 1e-6 && number.value <= 1e6
      ? read(number.value)
      : refuse(`${text} is no distance`, "Write metres from the image plane, or inf.");
  const distance = readDistance(text);
  return distance.ok ? distance : number;
}
