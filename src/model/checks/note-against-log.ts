/** Where notes and log disagree. The log is shown, the note is pointed at. */
import type { FindingInput } from "../../core/finding.ts";
import { stopsBetween } from "../../optics/exposure.ts";
import type { TakeContext } from "./context.ts";
import { metres, round, sortedValues } from "./words.ts";

export function checkStop({ take, limits, logFile }: TakeContext): FindingInput[] {
  const noted = take.note?.stop ?? null;
  const logged = sortedValues(take, noted?.value.kind === "f" ? "f" : "t");
  if (noted === null || logged.length === 0 || logFile === null) return [];
  // one frame of noise is not a stop pull: the range that holds nine frames of ten
  const widest = logged[Math.floor(0.05 * (logged.length - 1))] as number;
  const deepest = logged[Math.ceil(0.95 * (logged.length - 1))] as number;
  const from = Math.min(noted.value.from, noted.value.to);
  const to = Math.max(noted.value.from, noted.value.to);
  const wider = stopsBetween(widest, from);
  const deeper = stopsBetween(to, deepest);
  if (Math.max(wider, deeper) <= limits.stopDifference) return [];
  const range = widest === deepest ? `T${round(widest)}` : `T${round(widest)} to T${round(deepest)}`;
  return [
    {
      code: "CHECK702",
      severity: "check",
      place: noted.place,
      field: "stop",
      message: `The note says ${noted.text}, the log ${range} (${round(Math.max(wider, deeper))} stop apart). The log's is shown.`,
      hint: `Correct the note, or look at ${logFile}. A pull is written 4-5.6.`,
    },
  ];
}

export function checkFocus({ take, limits, logFile }: TakeContext): FindingInput[] {
  const noted = take.note?.focus ?? null;
  const logged = sortedValues(take, "focus");
  if (noted === null || logged.length === 0 || logFile === null) return [];
  const nearest = logged.at(-1) as number;
  const farthest = logged[0] as number;
  const allowed = limits.focusDifferenceFraction;
  const off = (dioptres: number): boolean =>
    dioptres > nearest / (1 - allowed) + 1e-9 || dioptres < farthest / (1 + allowed) - 1e-9;
  const { fromDioptres, toDioptres } = noted.value;
  if (!off(fromDioptres) && !off(toDioptres)) return [];
  const wrong = off(fromDioptres) ? fromDioptres : toDioptres;
  const ratio = wrong / (wrong > nearest ? nearest : farthest);
  const feet = Math.abs(ratio - 3.2808) < 0.35 || Math.abs(1 / ratio - 3.2808) < 0.35;
  return [
    {
      code: "CHECK703",
      severity: "check",
      place: noted.place,
      field: "focus",
      message: `The note says ${noted.text}, the log ${metres(farthest)} to ${metres(nearest)}. The log's is shown.`,
      hint: `${feet ? "The two differ by about 3.28: feet and metres may have been mixed. " : ""}Correct the note, or look at ${logFile}.`,
    },
  ];
}

export function checkFocal({ take, logFile }: TakeContext): FindingInput[] {
  const found: FindingInput[] = [];
  const noted = take.note?.focalMm ?? null;
  const logged = sortedValues(take, "focal_mm");
  const lens = take.lens;
  if (noted !== null && logged.length > 0 && logFile !== null) {
    const low = Math.min(noted.value.from, noted.value.to);
    const high = Math.max(noted.value.from, noted.value.to);
    if (low < (logged[0] as number) * 0.95 || high > (logged.at(-1) as number) * 1.05) {
      found.push({
        code: "CHECK704",
        severity: "check",
        place: noted.place,
        field: "focal",
        message: `The note says ${noted.text} mm, the log ${round(logged[0] as number)} to ${round(logged.at(-1) as number)} mm. The log's is shown.`,
        hint: `Correct the note, or look at ${logFile}.`,
      });
    }
  }
  if (noted !== null && lens !== null) {
    const low = lens.focalMm ?? lens.focalMinMm;
    const high = lens.focalMm ?? lens.focalMaxMm;
    if (
      low !== null &&
      high !== null &&
      (Math.min(noted.value.from, noted.value.to) < low * 0.97 || Math.max(noted.value.from, noted.value.to) > high * 1.03)
    ) {
      found.push({
        code: "CHECK714",
        severity: "check",
        place: noted.place,
        field: "focal",
        message: `The note says ${noted.text} mm, but lens ${lens.id} is ${low === high ? `${low} mm` : `${low} to ${high} mm`}.`,
        hint: "Correct the focal length or the lens in the note.",
      });
    }
  }
  return found;
}
