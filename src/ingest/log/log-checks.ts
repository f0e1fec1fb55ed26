import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import type { LogHead } from "./log-keys.ts";
import type { HeaderCell } from "./log-layout.ts";
import type { LogColumn } from "./log-record.ts";

const DISTORTION: readonly LogColumn[] = ["k1", "k2", "k3", "k4", "k5", "k6", "p1", "p2", "lambda"];
const SHADING: readonly LogColumn[] = ["a1", "a2", "a3"];

/** Coefficients in a log need the same words as in a calibration table. */
export function tellOfConvention(
  file: string,
  head: LogHead,
  columns: Readonly<Partial<Record<LogColumn, Float64Array>>>,
  header: readonly HeaderCell[],
  found: FindingCollector,
): void {
  const { model, direction, radius, shadingRadius, areaMm } = head.keys.convention;
  const used = (names: readonly LogColumn[]): LogColumn | undefined =>
    names.find((name) => columns[name]?.some((v) => !Number.isNaN(v)));
  const lacking: string[] = [];
  const distortion = used(DISTORTION);
  const shading = used(SHADING);
  if (distortion !== undefined) {
    if (model === null) lacking.push("model");
    if (direction === null) lacking.push("direction");
    if (radius === null) lacking.push("radius");
  }
  if (shading !== undefined && shadingRadius === null) lacking.push("shading_radius");
  const half = [distortion && radius, shading && shadingRadius].some((r) => typeof r === "string" && r.startsWith("half-"));
  if (half && areaMm === null) lacking.push("area_mm");
  if (lacking.length === 0) return;
  const field = distortion ?? shading ?? null;
  found.add(LOG.noConvention, {
    place: header.find((cell) => cell.text.trim() === field)?.place ?? { file, line: null, column: null },
    field,
    message: `the log has coefficients and does not say their ${lacking.join(", ")}: they are shown and never evaluated`,
    hint: `Add key lines before the header: ${lacking.map((key) => `"# ${key}: ..."`).join(", ")}.`,
  });
}

/** The folder decides the date; a log of the next date ran past midnight. */
export function tellOfDate(logDate: string | null, date: string, place: Place, found: FindingCollector): void {
  if (logDate === null || logDate === date || logDate === nextDate(date)) return;
  found.add(LOG.otherDate, {
    place,
    field: "date",
    message: `the log is of ${logDate}, its folder of ${date}`,
    hint: "If the log is of another day, move it to that day's folder; else mend its date. The folder's date is used.",
  });
}

function nextDate(date: string): string {
  const next = new Date(Date.parse(`${date}T00:00:00Z`) + 86_400_000);
  return Number.isNaN(next.getTime()) ? "" : next.toISOString().slice(0, 10);
}
