/** Logged values that the lens cannot have: wider than it opens, nearer than it focuses, T under f. */
import type { FindingInput } from "../../core/finding.ts";
import { dioptresFromMetres } from "../../core/quantity.ts";
import { stopsBetween } from "../../optics/exposure.ts";
import type { TakeContext } from "./context.ts";
import { also, metres, round } from "./words.ts";

/** Values that the lens cannot have: wider than it opens, nearer than it focuses. */
export function checkLoggedLimits({ take, limits, input, logFile }: TakeContext): FindingInput[] {
  const track = take.track;
  const lens = take.lens;
  if (track === null || lens === null || logFile === null) return [];
  const log = input.logs.find((l) => l.file === logFile);
  if (log === undefined) return [];
  const found: FindingInput[] = [];
  const report = (
    column: "t" | "f" | "focus",
    wrong: (value: number) => boolean,
    make: (value: number, text: string, count: number) => Omit<FindingInput, "place" | "field">,
  ): void => {
    const values = track.columns[column];
    if (values === undefined) return;
    let first = -1;
    let count = 0;
    for (let i = 0; i < values.length; i++) {
      const value = values[i] as number;
      if (Number.isNaN(value) || !wrong(value)) continue;
      if (first < 0) first = i;
      count++;
    }
    if (first < 0) return;
    const cell = log.cell(track.row[first] as number, column);
    found.push({
      ...make(values[first] as number, cell.text, count),
      place: cell.place,
      field: column === "focus" ? log.focusField : column,
    });
  };
  for (const [column, widest] of [
    ["t", lens.widestT],
    ["f", lens.widestF],
  ] as const) {
    if (widest === null) continue;
    report(
      column,
      (value) => stopsBetween(value, widest) > limits.widerThanLensStops,
      (value, text, count) => ({
        code: "CHECK705",
        severity: "check",
        message: `${column.toUpperCase()}${text} is ${stopsBetween(value, widest).toFixed(1)} stop wider than lens ${lens.id} opens (${column.toUpperCase()}${round(widest)})${also(count)}.`,
        hint: "Look whether the log has another lens, or the kit another widest stop. The value is used as logged.",
      }),
    );
  }
  if (lens.closeFocusM !== null) {
    const closest = dioptresFromMetres(lens.closeFocusM);
    report(
      "focus",
      (value) => value > closest * 1.02,
      (value, text, count) => ({
        code: "CHECK710",
        severity: "check",
        message: `${text} (${metres(value)} from the image plane) is nearer than the close focus of lens ${lens.id}, ${lens.closeFocusM} m${also(count)}.`,
        hint: 'Look at the unit of the distance column, at "# distance_from", and at close_focus_m in the kit.',
      }),
    );
  }
  if (lens.transmittance !== null || track.columns.f !== undefined) {
    const t = track.columns.t;
    const f = track.columns.f;
    if (t !== undefined && f !== undefined) {
      const at = t.findIndex((value, i) => stopsBetween(f[i] as number, value) < -0.02);
      if (at >= 0) {
        const cell = log.cell(track.row[at] as number, "t");
        found.push({
          code: "CHECK716",
          severity: "check",
          place: cell.place,
          field: "t",
          message: `T${cell.text} is wider than the f-number ${round(f[at] as number)} of the same row; a lens cannot pass more light than it takes in.`,
          hint: "The columns t and f may be swapped.",
        });
      }
    }
  }
  return found;
}
