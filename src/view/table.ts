/** Tables and fact lists as the templates print them: every text ready, every flag set. */

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
  /** Several links in one cell, after the text. */
  readonly links: readonly CellLink[];
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

export interface Row {
  readonly id: string;
  readonly hasId: boolean;
  readonly head: Cell;
  readonly cells: readonly Cell[];
}

export interface TableModel {
  readonly id: string;
  readonly caption: string;
  /** `vh` when the heading above says the same. */
  readonly captionCls: string;
  readonly cls: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly foot: readonly Row[];
  readonly hasFoot: boolean;
}

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
}

export function cell(text: string, options: CellOptions = {}): Cell {
  return {
    text,
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
  };
}

/** A figure, right-aligned. */
export function num(text: string): Cell {
  return cell(text, { num: true });
}

/** The text, or the word for what is absent. */
export function textOr(text: string | null, absentWord: string, options: CellOptions = {}): Cell {
  return text === null ? cell(absentWord, { ...options, absent: true }) : cell(text, options);
}

/** A right-aligned figure, or the word for what is absent. */
export function numOr(text: string | null, absentWord: string): Cell {
  return textOr(text, absentWord, { num: true });
}

export function column(label: string, options: { readonly unit?: string; readonly num?: boolean } = {}): Column {
  return { label, unit: options.unit ?? "", cls: options.num === true ? "num" : "" };
}

export function row(head: Cell, cells: readonly Cell[], id = ""): Row {
  return { id, hasId: id !== "", head, cells };
}

export function table(
  id: string,
  caption: string,
  columns: readonly Column[],
  rows: readonly Row[],
  options: { readonly foot?: readonly Row[]; readonly showCaption?: boolean; readonly cls?: string } = {},
): TableModel {
  const foot = options.foot ?? [];
  return {
    id,
    caption,
    captionCls: options.showCaption === true ? "shown" : "vh",
    cls: options.cls ?? "plain",
    columns,
    rows,
    foot,
    hasFoot: foot.length > 0,
  };
}

/** Joins the class names that are text. */
export function classes(names: readonly (string | false)[]): string {
  return names.filter((name) => name !== false && name !== "").join(" ");
}
