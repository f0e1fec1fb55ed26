/** Logged values that the lens cannot have: wider than it opens, nearer than it focuses, T under f, another focal length. */
import { CHECK } from "../../core/findings/check.ts";
import type { FindingDetails, FindingKind } from "../../core/findings/kind.ts";
import { dioptresFromMetres } from "../../core/quantity.ts";
import { stopsBetween } from "../../optics/exposure.ts";
import { loggedTrack, type TakeContext } from "./context.ts";
import { also, metres, round } from "./words.ts";

type LimitedColumn = "t" | "f" | "focus" | "focal_mm";

export function checkLoggedLimits(context: TakeContext): void {
  const logged = loggedTrack(context);
  const { take, limits, tell } = context;
  const lens = take.lens;
  if (logged === null || lens === null) return;
  const { track, log } = logged;
  /** One finding for all frames of a column that are wrong, at the first of them. */
  const report = (
    kind: FindingKind,
    column: LimitedColumn,
    wrong: (value: number) => boolean,
    say: (value: number, text: string, count: number) => Pick<FindingDetails, "message" | "hint">,
  ): void => {
    const values = track.columns[column];
    if (values === undefined) return;
    let first = -1;
    let count = 0;
    for (let i = 0; i < values.length; i++) {
      if (!wrong(values[i] as number)) continue;
      if (first < 0) first = i;
      count++;
    }
    if (first < 0) return;
    const cell = log.cell(track.row[first] as number, column);
    tell(kind, {
      ...say(values[first] as number, cell.text, count),
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
      CHECK.widerThanLens,
      column,
      (value) => stopsBetween(value, widest) > limits.widerThanLensStops,
      (value, text, count) => ({
        message: `${column.toUpperCase()}${text} is ${stopsBetween(value, widest).toFixed(1)} stop wider than lens ${lens.id} opens (${column.toUpperCase()}${round(widest)})${also(count)}.`,
        hint: "Look whether the log has another lens, or the kit another widest stop. The value is used as logged.",
      }),
    );
  }
  if (lens.closeFocusM !== null) {
    const closest = dioptresFromMetres(lens.closeFocusM);
    report(
      CHECK.nearerThanLens,
      "focus",
      (value) => value > closest * (1 + limits.closeFocusFraction),
      (value, text, count) => ({
        message: `${text} (${metres(value)} from the image plane) is nearer than the close focus of lens ${lens.id}, ${lens.closeFocusM} m${also(count)}.`,
        hint: 'Look at the unit of the distance column, at "# distance_from", and at close_focus_m in the kit.',
      }),
    );
  }
  checkStopUnderF(context);
  const shortest = lens.focalMm ?? lens.focalMinMm;
  const longest = lens.focalMm ?? lens.focalMaxMm;
  if (shortest === null || longest === null) return;
  const allowed = limits.focalDifferenceFraction;
  const focals = track.columns.focal_mm;
  const first = focals?.find((value) => Number.isFinite(value));
  if (lens.kind === "prime" && focals !== undefined && first !== undefined) {
    const moving = focals.some((value) => Math.abs(value / first - 1) > allowed);
    if (moving) {
      report(
        CHECK.primeZooms,
        "focal_mm",
        (value) => Math.abs(value / first - 1) > allowed,
        (_, text, count) => ({
          message: `The log's focal length goes from ${round(first)} mm to ${text} mm${also(count)}, and ${lens.id} is a prime of ${round(shortest)} mm.`,
          hint: "Look whether another lens was on, or whether the column is an encoder and no focal length. The values are used as logged.",
        }),
      );
      return;
    }
  }
  report(
    CHECK.loggedFocalNotOfLens,
    "focal_mm",
    (value) => value < shortest * (1 - allowed) || value > longest * (1 + allowed),
    (_, text, count) => ({
      message: `The log says ${text} mm${also(count)}, but lens ${lens.id} is ${shortest === longest ? `${round(shortest)} mm` : `${round(shortest)} to ${round(longest)} mm`}.`,
      hint: "Look whether another lens was on, or correct the lens in the log or the kit. The value is used as logged.",
    }),
  );
}

/** The T-stop is the f-number and the loss in the glass, so it is never the smaller of the two. */
function checkStopUnderF(context: TakeContext): void {
  const logged = loggedTrack(context);
  const t = logged?.track.columns.t;
  const f = logged?.track.columns.f;
  if (logged === null || t === undefined || f === undefined) return;
  const at = t.findIndex((value, i) => stopsBetween(f[i] as number, value) < -context.limits.stopUnderFStops);
  if (at < 0) return;
  const cell = logged.log.cell(logged.track.row[at] as number, "t");
  context.tell(CHECK.stopUnderF, {
    place: cell.place,
    field: "t",
    message: `T${cell.text} is wider than the f-number ${round(f[at] as number)} of the same row; a lens cannot pass more light than it takes in.`,
    hint: "The columns t and f may be swapped.",
  });
}
