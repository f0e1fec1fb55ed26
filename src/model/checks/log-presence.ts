/** Whether a take has its log, whole and in distances that can be used. */
import { MATCH } from "../../core/findings/match.ts";
import type { TakeContext } from "./context.ts";
import { plainPerSecond, round } from "./words.ts";

export function checkLogPresence({ take, limits, input, logFile, tell }: TakeContext): void {
  const place = take.note?.place ?? null;
  if (take.track === null) {
    if (take.durationFrames === 0) return;
    tell(MATCH.noLog, {
      place,
      message: `No log rows belong to this take${take.clip === null ? "" : ` (clip ${take.clip})`}; the figures come from the notes.`,
      hint: `Put its log into ${input.folder}/logs, with "# clip: ${take.clip ?? "..."}" or "# slate: ${take.slate}" and "# take: ${take.take}" above its header row.`,
    });
    return;
  }
  const { late, early } = edges(take.track.logged);
  const covered = take.track.framesLogged / take.durationFrames;
  if (covered < limits.logCoverage) {
    const where = [...(late > 0 ? [`the first ${late}`] : []), ...(early > 0 ? [`the last ${early}`] : [])].join(" and ");
    tell(MATCH.framesMissing, {
      place,
      message: `${take.durationFrames - take.track.framesLogged} of ${take.durationFrames} frames are not logged${where === "" ? "" : `, among them ${where}`} (${(100 * covered).toFixed(1)} % are; the show asks for ${100 * limits.logCoverage} %).`,
      hint: `Look for the missing rows of ${logFile ?? "the log"}, or correct tc_in and tc_out. The limit is check.log_coverage in show.yaml.`,
    });
    return;
  }
  const perSecond = plainPerSecond(take);
  const edge = limits.logEdgeSeconds * perSecond;
  if (late > edge || early > edge) {
    const said = [
      ...(late > edge ? [`begins ${round(late / perSecond)} s (${late} frames) after tc_in`] : []),
      ...(early > edge ? [`ends ${round(early / perSecond)} s (${early} frames) before tc_out`] : []),
    ].join(" and ");
    const cell = late > edge ? take.note?.tcIn : take.note?.tcOut;
    tell(MATCH.lateOrEarly, {
      place: cell?.place ?? place,
      field: late > edge ? "tc_in" : "tc_out",
      message: `The log ${said}.`,
      hint: `Look whether the recorder was started late or stopped early (${logFile ?? "the log"}), or whether its clock is off. The limit is check.log_edge_seconds in show.yaml.`,
    });
  }
}

/** Frames without a row before the first one that has one, and after the last. */
function edges(logged: Uint8Array): { readonly late: number; readonly early: number } {
  const first = logged.indexOf(1);
  return first < 0 ? { late: 0, early: 0 } : { late: first, early: logged.length - 1 - logged.lastIndexOf(1) };
}

export function checkFront({ take, logFile, tell }: TakeContext): void {
  if (take.track?.focusUnconverted !== true || logFile === null) return;
  tell(MATCH.fromFront, {
    place: { file: logFile, line: 1, column: 1 },
    field: "distance_from",
    message: `Distances are from the front of the lens, and lens ${take.lensId ?? "(not known)"} has no front_to_image_mm in the kit, so nothing is calculated from them.`,
    hint: 'Write front_to_image_mm for the lens in kit/lenses.csv, or "# distance_from: image-plane" if the log means the image plane.',
  });
}
