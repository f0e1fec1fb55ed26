/** Tables and fact lists as the templates print them: every text ready, every flag set. */
import { csvRows, tsvRows } from "../core/sheet-text.ts";
import { folded } from "../format/brief.ts";
import { thousands } from "../format/number.ts";
import { settled } from "../format/units.ts";
import type { FileLink } from "./files.ts";

export interface Cell {
  readonly text: string;
  /** Class list, such as `num` or `absent`; may be empty. */
  readonly cls: string;
  readonly linked: boolean;
  readonly href: string;
  /** Small second text, such as a source word; may be empty. */
  readonly note: string;
  /** Inline SVG before the text; may be empty. */
  readonly svg: string;
  readonly mono: boolean;
  /** What follows a beginning that a long text is folded to; the text has both. Empty when the text stands whole. */
  readonly beginning: string;
  readonly rest: string;
  readonly hasRest: boolean;
  /** The text in pieces between which a line may break; empty where it may break anywhere or nowhere. */
  readonly pieces: readonly string[];
  readonly hasPieces: boolean;
  /** Several links in one cell, after the text. */
  readonly links: readonly CellLink[];
  /** What the page sorts by where the text's own order is another; may be empty. */
  readonly value: string;
  readonly hasValue: boolean;
}

export interface CellLink {
  /** What stands before the link, such as ", "; may be empty. */
  readonly before: string;
  readonly label: string;
  readonly href: string;
}

export interface Column {
  readonly label: string;
  /** Unit or second line of the head; may be empty. */
  readonly unit: string;
  readonly cls: string;
}

/** What a row can be filtered by, as `data-<name>`: a lens, a camera; a flag such as `circled` has an empty value. */
export interface Facet {
  readonly name: string;
  readonly value: string;
}

export interface Row {
  readonly id: string;
  readonly hasId: boolean;
  readonly facets: readonly Facet[];
  /** Cells that a copy of the row has in place of those shown, with tabs between; may be empty. */
  readonly copy: string;
  readonly hasCopy: boolean;
  readonly head: Cell;
  readonly cells: readonly Cell[];
}

/** Rows under a heading of their own, such as a scene's. All groups of a table are one table to sort, to filter and to copy. */
export interface RowGroup {
  readonly id: string;
  readonly heading: string;
  readonly about: string;
  /** What counts all its rows: untrue as soon as some are filtered away. */
  readonly count: string;
  readonly rows: readonly Row[];
}

export interface TableModel {
  readonly id: string;
  readonly caption: string;
  /** `vh` when the heading above says the same. */
  readonly captionCls: string;
  readonly cls: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** The same rows in groups; empty for a table without headings among its rows. */
  readonly groups: readonly RowGroup[];
  readonly hasGroups: boolean;
  /** Columns that a group's heading goes over. */
  readonly span: string;
  /** Links to the groups, called so: "Scenes of the circled takes". */
  readonly linksLabel: string;
  readonly hasLinks: boolean;
  readonly foot: readonly Row[];
  readonly hasFoot: boolean;
  /** Names of the columns of a copy, where rows have cells of their own for it. */
  readonly copyHead: string;
  readonly hasCopyHead: boolean;
  /** The order of the page, as readers call it: "shooting order". */
  readonly order: string;
  /** The same rows as a file; without one the page makes it of the rows shown. */
  readonly file: FileLink;
  readonly hasFile: boolean;
  /** Said when the file has more rows than the page; may be empty. */
  readonly more: string;
  /** CSV of all rows, when the page has not room for all and no other file holds them; else empty. */
  readonly overflow: string;
}

/** Class of the cells of a column with `ofGroup`. */
export const OF_GROUP = "of-group";

/** Class of a table whose rows belong in their order: fields of one thing, a matrix, points along an axis. It offers no sorting. */
export const FIXED = "plain fixed";

/** A page prints no more rows than this: beyond it browsers take seconds to open a page. */
export const MOST_ROWS = 2000;

export interface CellOptions {
  readonly num?: boolean;
  readonly nb?: boolean;
  readonly absent?: boolean;
  readonly href?: string;
  readonly note?: string;
  readonly svg?: string;
  readonly mono?: boolean;
  readonly cls?: string;
  readonly links?: readonly CellLink[];
  readonly value?: number | string;
  /** Folds a long text, such as a remark. */
  readonly fold?: boolean;
  /** Joined they are the text. */
  readonly pieces?: readonly string[];
}

export function cell(text: string, options: CellOptions = {}): Cell {
  const { beginning, rest } = options.fold === true ? folded(text) : { beginning: text, rest: "" };
  const pieces = options.pieces ?? [];
  return {
    text,
    beginning,
    rest,
    hasRest: rest !== "",
    pieces,
    hasPieces: pieces.length > 0,
    cls: classes([
      options.num === true && "num",
      options.nb === true && "nb",
      options.absent === true && "absent",
      options.mono === true && "mono",
      options.cls ?? false,
    ]),
    linked: options.href !== undefined,
    href: options.href ?? "",
    note: options.note ?? "",
    svg: options.svg ?? "",
    mono: options.mono === true,
    links: options.links ?? [],
    value: String(options.value ?? ""),
    hasValue: options.value !== undefined,
  };
}

/** A figure, right-aligned. */
export function num(text: string, options: CellOptions = {}): Cell {
  return cell(text, { ...options, num: true });
}

/** The text, or the word for what is absent. */
export function textOr(text: string | null, absentWord: string, options: CellOptions = {}): Cell {
  return text === null ? cell(absentWord, { ...options, absent: true }) : cell(text, options);
}

/** A right-aligned figure, or the word for what is absent. */
export function numOr(text: string | null, absentWord: string): Cell {
  return textOr(text, absentWord, { num: true });
}

export interface ColumnOptions {
  readonly unit?: string;
  readonly num?: boolean;
  /** Says what the headings of the groups say: shown once the rows are sorted and have left them. */
  readonly ofGroup?: boolean;
}

export function column(label: string, options: ColumnOptions = {}): Column {
  return { label, unit: options.unit ?? "", cls: classes([options.num === true && "num", options.ofGroup === true && OF_GROUP]) };
}

export interface RowOptions {
  readonly facets?: readonly Facet[];
  readonly copy?: readonly string[];
}

export function row(head: Cell, cells: readonly Cell[], id = "", options: RowOptions = {}): Row {
  const copy = tsvRows([options.copy ?? []]);
  return { id, hasId: id !== "", head, cells, facets: options.facets ?? [], copy, hasCopy: copy !== "" };
}

export interface TableOptions {
  readonly foot?: readonly Row[];
  readonly showCaption?: boolean;
  readonly cls?: string;
  readonly copyHead?: readonly string[];
  readonly order?: string;
  /** A file of the pack with the same rows; `undefined` when it was not written. */
  readonly file?: FileLink | undefined;
}

export const NO_FILE: FileLink = { label: "", href: "", size: "" };

export function table(
  id: string,
  caption: string,
  columns: readonly Column[],
  rows: readonly Row[],
  options: TableOptions = {},
): TableModel {
  const foot = options.foot ?? [];
  const copyHead = tsvRows([options.copyHead ?? []]);
  const { file } = options;
  const cut = rows.length > MOST_ROWS;
  return {
    id,
    caption,
    captionCls: options.showCaption === true ? "shown" : "vh",
    cls: options.cls ?? "plain",
    columns,
    rows: cut ? rows.slice(0, MOST_ROWS) : rows,
    groups: [],
    hasGroups: false,
    span: "",
    linksLabel: "",
    hasLinks: false,
    foot,
    hasFoot: foot.length > 0,
    copyHead,
    hasCopyHead: copyHead !== "",
    order: options.order ?? "the page's own order",
    file: file ?? NO_FILE,
    hasFile: file !== undefined,
    more: cut ? `The first ${thousands(MOST_ROWS)} of ${thousands(rows.length)} rows. All are in the file` : "",
    overflow: cut && file === undefined ? csvOf(columns, rows) : "",
  };
}

/** A table as CSV: heads with their units, texts as the show wants them. */
function csvOf(columns: readonly Column[], rows: readonly Row[]): string {
  const lines = [
    columns.map(({ label, unit }) => (unit === "" ? label : `${label} (${unit})`)),
    ...rows.map((r) => [r.head, ...r.cells].map(({ text, note }) => (note === "" ? text : `${text} (${note})`))),
  ];
  return csvRows(lines.map((cells) => cells.map((text) => settled(text))));
}

/** Joins the class names that are text. */
export function classes(names: readonly (string | false)[]): string {
  return names.filter((name) => name !== false && name !== "").join(" ");
}
