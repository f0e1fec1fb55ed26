/** What is marked inside a take: focus pulls, gaps of the log, plates. One list for all editorial formats. */
import type { DistanceM } from "../../core/quantity.ts";
import { type DistanceSystem, distance } from "../../format/length.ts";
import { fixed } from "../../format/number.ts";
import { plural } from "../../format/words.ts";
import type { PullFigures, TakeSummary } from "../../summary/types.ts";

export type MarkKind = "focus-pull" | "log-gap" | "plate";

export interface Mark {
  readonly kind: MarkKind;
  /** 0-based from the take's first frame. */
  readonly startFrame: number;
  readonly frames: number;
  /** A colour that timelines and edit lists both know. */
  readonly colour: "CYAN" | "RED" | "MAGENTA";
  readonly name: string;
  /** One line for people. */
  readonly text: string;
  readonly fromM: DistanceM | null;
  readonly toM: DistanceM | null;
  readonly peakDioptresPerSecond: number | null;
}

const NO_FIGURES = { fromM: null, toM: null, peakDioptresPerSecond: null } as const;

/** Marks of a take in order of time; what begins together: plate, pull, gap. */
export function takeMarks(t: TakeSummary, distances: DistanceSystem): readonly Mark[] {
  const marks = [...plateMarks(t), ...(t.pulls ?? []).map((pull) => pullMark(pull, distances)), ...gapMarks(t)];
  return marks.sort((a, b) => a.startFrame - b.startFrame).map((mark) => ({ ...mark, text: plainSpaces(mark.text) }));
}

/** Pages keep a figure and its unit on one line with spaces that nobody types and no program searches for. */
function plainSpaces(text: string): string {
  return text.replace(/[\u00a0\u202f]/g, " ");
}

function pullMark(pull: PullFigures, distances: DistanceSystem): Mark {
  const name = pull.follow ? "focus follow" : "focus pull";
  const way = `${distance(pull.fromM, distances)} to ${distance(pull.toM, distances)}`;
  return {
    kind: "focus-pull",
    startFrame: pull.startFrame,
    frames: pull.frames,
    colour: "CYAN",
    name,
    text: `${name} ${way}, peak ${fixed(pull.peakDioptresPerSecond, 2)} dioptres/s`,
    fromM: pull.fromM,
    toM: pull.toM,
    peakDioptresPerSecond: pull.peakDioptresPerSecond,
  };
}

function gapMarks(t: TakeSummary): readonly Mark[] {
  return t.gaps.map((gap) => ({
    kind: "log-gap",
    startFrame: gap.first,
    frames: gap.frames,
    colour: "RED",
    name: "log gap",
    text: `log gap, ${plural(gap.frames, "frame")} not logged`,
    ...NO_FIGURES,
  }));
}

/** A plate is marked on its first frame: the mark speaks of the take as a whole. */
function plateMarks(t: TakeSummary): readonly Mark[] {
  const { plate, plateOf } = t.take;
  if (plate === null) return [];
  const text = `${plate} plate${plateOf === null ? "" : ` of ${plateOf}`}`;
  return [{ kind: "plate", startFrame: 0, frames: 1, colour: "MAGENTA", name: "plate", text, ...NO_FIGURES }];
}
