/** What a ribbon says: its title states the finding, its description says what is drawn and in which units. */
import type { DistanceM } from "../../core/quantity.ts";
import { dioptresFromMetres, numberFromDistance } from "../../core/quantity.ts";
import { distance, millimetresRange } from "../../format/length.ts";
import { significant } from "../../format/number.ts";
import { withUnit } from "../../format/space.ts";
import { stopRange } from "../../format/stop.ts";
import { inUnits, oneSystem, type PageDistances } from "../../format/units.ts";
import { countWords, plural } from "../../format/words.ts";
import type { PullFigures, TakeSummary } from "../../summary/types.ts";

/** A distance in as few figures as serve: two, or three where two would be more than 2 percent off. */
export function shortDistance(m: DistanceM, distances: PageDistances): string {
  return inUnits(oneSystem(distances), (system) => {
    const metres = numberFromDistance(m);
    if (!Number.isFinite(metres) || system === "imperial") return distance(m, "imperial");
    const short = significant(metres, 2);
    return withUnit(Math.abs(Number(short) - metres) > 0.02 * metres ? significant(metres, 3) : short, "m");
  });
}

/** "6.0 m to 1.8 m"; ends that read alike in short are written in full. */
export function shortMove(from: DistanceM, to: DistanceM, distances: PageDistances): string {
  return inUnits(oneSystem(distances), (system) => {
    const a = shortDistance(from, system);
    const b = shortDistance(to, system);
    return a === b ? `${distance(from, system)} to ${distance(to, system)}` : `${a} to ${b}`;
  });
}

function inWords(m: DistanceM, system: PageDistances): string {
  return numberFromDistance(m) === Number.POSITIVE_INFINITY ? "infinity" : shortDistance(m, system);
}

function moveWords(from: DistanceM, to: DistanceM, system: PageDistances): string {
  const a = inWords(from, system);
  const b = inWords(to, system);
  return a === b ? `from ${shortMove(from, to, system)}` : `from ${a} to ${b}`;
}

/** The move of a take in one clause: up to three pulls one after the other, else the largest and where it ended. */
function focusClause(summary: TakeSummary, system: PageDistances): string {
  const { focus, pulls } = summary;
  if (focus === null) return summary.perFrame === null ? "No log for this clip, no focus noted" : "No focus logged or noted";
  if (focus.source === "noted") {
    const same = inWords(focus.startM, system) === inWords(focus.endM, system);
    return `Focus noted ${same ? `at ${inWords(focus.startM, system)}` : moveWords(focus.startM, focus.endM, system)}, not logged`;
  }
  if (pulls === null || pulls.length === 0) return heldClause(summary, system);
  if (pulls.length <= 3) return chain(pulls, system);
  const largest = pulls.reduce((best, p) => (p.extentDioptres > best.extentDioptres ? p : best));
  const last = pulls[pulls.length - 1] ?? largest;
  const ends = inWords(last.toM, system);
  const then = ends === inWords(largest.toM, system) ? "" : `, then to ${ends}`;
  return `Focus ${moveWords(largest.fromM, largest.toM, system)}${then}`;
}

function heldClause(summary: TakeSummary, system: PageDistances): string {
  const focus = summary.focus;
  if (focus === null) return "";
  const near = dioptresFromMetres(focus.nearestM);
  if (near === 0) return "Focus at infinity throughout";
  const still = focus.extentDioptres < 0.02 || inWords(focus.nearestM, system) === inWords(focus.farthestM, system);
  return still ? `Focus held at ${inWords(focus.startM, system)}` : `Focus ${moveWords(focus.nearestM, focus.farthestM, system)}`;
}

function chain(pulls: readonly PullFigures[], system: PageDistances): string {
  const [first, ...rest] = pulls;
  if (first === undefined) return "";
  let words = `Focus ${moveWords(first.fromM, first.toM, system)}`;
  let before = inWords(first.toM, system);
  for (const pull of rest) {
    const to = inWords(pull.toM, system);
    if (to !== before) words += `, then to ${to}`;
    before = to;
  }
  return words;
}

/** The whole title: focus and pulls, then stop and focal length where they change, then what is missing. */
export function ribbonTitle(summary: TakeSummary, system: PageDistances): string {
  const parts = [focusClause(summary, system)];
  if (summary.pulls !== null && summary.focus?.source !== "noted") parts.push(countWords(summary.pulls.length, "pull"));
  const { tStop: stop, focal, perFrame } = summary;
  if (stop !== null && perFrame !== null) parts.push(`stop ${stopWords(summary)}`);
  const stopless = stop === null && perFrame?.fStop.every(Number.isNaN) === true;
  if (stopless) parts.push("no stop logged or noted");
  if (focal !== null && focal.minMm !== focal.maxMm) {
    parts.push(`focal length ${millimetresRange(focal.minMm, focal.maxMm)}`);
  }
  if (perFrame !== null && summary.framesMissing > 0) parts.push(`${plural(summary.framesMissing, "frame")} not logged`);
  return parts.join("; ");
}

/** "T4" or "T4 to T5.6" with the word for where it comes from, when that is not the log. */
export function stopWords(summary: TakeSummary): string {
  const stop = summary.tStop;
  if (stop === null) return "no stop";
  return `${stopRange(stop.widest, stop.deepest)}${stop.source === "logged" ? "" : `, ${stop.source}`}`;
}
