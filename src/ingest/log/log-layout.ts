import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { CSV } from "../../core/findings/csv.ts";
import { LOG } from "../../core/findings/log.ts";
import { type ColumnSpec, namesOf } from "../../csv/column-spec.ts";
import { FOCUS_COLUMNS, IDENTITY_COLUMNS, LOG_FILE_COLUMNS, READING_COLUMNS, TIMING_COLUMNS } from "../../csv/columns.ts";
import type { PlanKind } from "../../csv/log-table.ts";
import { meantColumn } from "../columns/header-words.ts";
import type { FieldMap } from "./field-map.ts";

/** A header cell of a log. */
export interface HeaderCell {
  readonly text: string;
  readonly place: Place;
}

/** What the columns of a log are, by position. */
export interface LogLayout {
  readonly kinds: readonly PlanKind[];
  readonly timing: { readonly name: "timecode" | "frame" | "time_s"; readonly column: number } | null;
  readonly focus: { readonly spec: ColumnSpec; readonly column: number } | null;
  readonly readings: readonly { readonly spec: ColumnSpec; readonly column: number }[];
  readonly identities: readonly { readonly name: string; readonly column: number }[];
  /** Columns that nobody knows, with their headers as written. */
  readonly unknown: readonly { readonly name: string; readonly column: number }[];
  /** Position by canonical name. */
  readonly columnOf: ReadonlyMap<string, number>;
}

const KNOWN = namesOf(LOG_FILE_COLUMNS);
const TIMING = TIMING_COLUMNS.map((spec) => spec.name);

/**
 * Tells the columns of a log from its header, through a field map where one fits. A log has one timing column (timecode before frame
 * before time_s) and one focus column (the first); what else is known twice or not at all is kept word for word.
 */
export function logLayout(header: readonly HeaderCell[], file: string, map: FieldMap | null, found: FindingCollector): LogLayout {
  const columnOf = new Map<string, number>();
  const unknown: { name: string; column: number }[] = [];
  header.forEach((cell, column) => {
    const written = cell.text.trim();
    if (written === "") return;
    const name = map?.columns.get(written) ?? written;
    const first = columnOf.get(name);
    if (first === undefined && KNOWN.has(name)) columnOf.set(name, column);
    else if (first === undefined && !unknown.some((other) => other.name === written)) unknown.push({ name: written, column });
    else tellOfTwice(cell, header[first ?? 0], name, found);
  });
  const timingName = TIMING.find((name) => columnOf.has(name)) ?? null;
  for (const name of TIMING) if (name !== timingName) setAside(name, columnOf, header, unknown);
  const focusNames = FOCUS_COLUMNS.filter((spec) => columnOf.has(spec.name)).sort(
    (a, b) => (columnOf.get(a.name) ?? 0) - (columnOf.get(b.name) ?? 0),
  );
  const [focusSpec, ...others] = focusNames;
  for (const other of others) {
    tellOfSeveral(header[columnOf.get(other.name) ?? 0], focusSpec?.name ?? "", other.name, found);
    setAside(other.name, columnOf, header, unknown);
  }
  tellOfUnknown(unknown, header, file, columnOf, found);
  const kinds = header.map((): PlanKind => "text");
  const readings = READING_COLUMNS.flatMap((spec) => {
    const column = columnOf.get(spec.name);
    return column === undefined ? [] : [{ spec, column }];
  });
  const focusColumn = focusSpec === undefined ? undefined : columnOf.get(focusSpec.name);
  for (const { column } of readings) kinds[column] = "number";
  if (focusColumn !== undefined) kinds[focusColumn] = "number";
  const timingColumn = timingName === null ? undefined : columnOf.get(timingName);
  if (timingColumn !== undefined) kinds[timingColumn] = timingName === "timecode" ? "timecode" : "number";
  return {
    kinds,
    timing: timingName === null || timingColumn === undefined ? null : { name: timingName, column: timingColumn },
    focus: focusSpec === undefined || focusColumn === undefined ? null : { spec: focusSpec, column: focusColumn },
    readings,
    identities: IDENTITY_COLUMNS.flatMap(({ name }) => {
      const column = columnOf.get(name);
      return column === undefined ? [] : [{ name, column }];
    }),
    unknown,
    columnOf,
  };
}

/** Names by which the delimiter of a log is told: the known ones and those of the field maps. */
export function headerNames(maps: readonly FieldMap[]): ReadonlySet<string> {
  return new Set([...KNOWN, ...maps.flatMap((map) => [...map.headerHas, ...map.columns.keys()])]);
}

function setAside(
  name: string,
  columnOf: Map<string, number>,
  header: readonly HeaderCell[],
  unknown: { name: string; column: number }[],
): void {
  const column = columnOf.get(name);
  if (column === undefined) return;
  columnOf.delete(name);
  unknown.push({ name: header[column]?.text.trim() ?? name, column });
  unknown.sort((a, b) => a.column - b.column);
}

function tellOfTwice(cell: HeaderCell, first: HeaderCell | undefined, name: string, found: FindingCollector): void {
  found.add(CSV.duplicateColumn, {
    place: cell.place,
    field: name,
    message: `the column "${name}" comes twice, first in column ${first?.place.column ?? 1}`,
    hint: "Rename or delete one of them. The first is read.",
  });
}

function tellOfSeveral(cell: HeaderCell | undefined, read: string, other: string, found: FindingCollector): void {
  found.add(LOG.severalColumns, {
    place: cell?.place ?? null,
    field: other,
    message: `the log gives the focus in ${read} and in ${other}`,
    hint: `${read} is read, ${other} is kept as it is. Delete the one that is not wanted.`,
  });
}

function tellOfUnknown(
  unknown: readonly { readonly name: string; readonly column: number }[],
  header: readonly HeaderCell[],
  file: string,
  columnOf: ReadonlyMap<string, number>,
  found: FindingCollector,
): void {
  const strange = unknown.filter(({ name }) => !KNOWN.has(name));
  const others = strange.filter(({ name, column }) => {
    const meant = meantColumn(name);
    // words with a colon are a key line that lost its #
    if (meant === null || /^\w+\s*:/.test(name) || columnOf.has(meant) || hasFocus(meant, columnOf)) return true;
    found.addIn(file, LOG.nearColumn, () => ({
      place: header[column]?.place ?? { file, line: null, column: null },
      field: name,
      message: `the column "${name}" is not read, and may be meant as "${meant}"`,
      hint: `Rename it to ${meant} if that is what it holds, or run \`daybook columns\` with this file: it proposes a map for all such logs.`,
    }));
    return false;
  });
  const [first] = others;
  if (first === undefined) return;
  const names = others.map(({ name }) => `"${name}"`).join(", ");
  found.add(LOG.unknownColumn, {
    place: header[first.column]?.place ?? { file, line: null, column: null },
    field: first.name,
    message: `${others.length === 1 ? "the column" : "the columns"} ${names} ${others.length === 1 ? "is" : "are"} kept word for word`,
    hint: "Nothing to do; if it is a known figure, name its column in kit/columns.yaml.",
  });
}

/** A log has one focus, in whatever unit. */
function hasFocus(name: string, columnOf: ReadonlyMap<string, number>): boolean {
  return name.startsWith("focus_") && FOCUS_COLUMNS.some((spec) => columnOf.has(spec.name));
}
