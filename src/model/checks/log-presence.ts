/** Whether a take has its log, whole and in distances that can be used. */
import type { FindingInput } from "../../core/finding.ts";
import type { TakeContext } from "./context.ts";

export function checkLogPresence({ take, limits, input, logFile }: TakeContext): FindingInput[] {
  const place = take.note?.place ?? null;
  if (take.track === null) {
    if (take.durationFrames === 0) return [];
    return [
      {
        code: "MATCH405",
        severity: "check",
        place,
        message: `No log rows belong to this take${take.clip === null ? "" : ` (clip ${take.clip})`}; the figures come from the notes.`,
        hint: `Put its log into ${input.folder}/logs, with "# clip: ${take.clip ?? "..."}" or "# slate: ${take.slate}" and "# take: ${take.take}" above its header row.`,
      },
    ];
  }
  const covered = take.track.framesLogged / take.durationFrames;
  if (covered >= limits.logCoverage) return [];
  return [
    {
      code: "MATCH413",
      severity: "check",
      place,
      message: `${take.durationFrames - take.track.framesLogged} of ${take.durationFrames} frames are not logged (${(100 * covered).toFixed(1)} % are; the show asks for ${100 * limits.logCoverage} %).`,
      hint: `Look for the missing rows of ${logFile ?? "the log"}, or correct tc_in and tc_out. The limit is check.log_coverage in show.yaml.`,
    },
  ];
}

export function checkFront({ take, logFile }: TakeContext): FindingInput[] {
  if (take.track?.focusUnconverted !== true || logFile === null) return [];
  return [
    {
      code: "MATCH412",
      severity: "check",
      place: { file: logFile, line: 1, column: 1 },
      field: "distance_from",
      message: `Distances are from the front of the lens, and lens ${take.lensId ?? "(not known)"} has no front_to_image_mm in the kit, so nothing is calculated from them.`,
      hint: 'Write front_to_image_mm for the lens in kit/lenses.csv, or "# distance_from: image-plane" if the log means the image plane.',
    },
  ];
}
