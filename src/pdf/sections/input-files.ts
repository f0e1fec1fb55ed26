/** The input files of the day with their hashes, in two columns, so that a day of many logs stays a page or two. */
import { thousands } from "../../format/number.ts";
import { plural } from "../../format/words.ts";
import type { DaySummary } from "../../summary/types.ts";
import { headLine, paragraph } from "../block.ts";
import type { Element } from "../document.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, type TableOptions, type TableRow, tableHeight } from "../table.ts";
import { element } from "../tags.ts";

/** More are in the manifest of the build. */
const MOST_FILES = 200;
const GUTTER = 20;
/** Points of a head with some lines below it. */
const BEGINNING = 110;
/** Of a table's height, for what rounding adds up to. */
const SLACK = 2;

export function inputFiles(report: Report, parent: Element): void {
  const { flow, summary, doc } = report;
  const { files, logs } = summary.day;
  if (logs.length === 0 && files.length === 0) return;
  flow.y += 10;
  flow.need(BEGINNING);
  const section = element(doc, parent, "Sect");
  const { read, used, unmatched, rejected } = summary.rows;
  const says = `${plural(read, "log row")} read: ${thousands(used)} used, ${thousands(unmatched)} unmatched, ${thousands(rejected)} rejected.`;
  flow.y = headLine(report, section, "H3", "Input files", says, flow.sheet.left, flow.sheet.width, flow.y);
  const folder = `days/${summary.date}/`;
  paragraph(report, section, `In ${folder} of the show folder; a file is the same when its SHA-256 is.`, {
    style: TYPE.label,
    after: 2,
  });
  let rows = fileRows(summary, folder);
  const more = files.length - rows.length;
  while (rows.length > 0) {
    const [left, right] = nextColumns(report, rows);
    const { y: top } = flow;
    drawTable(report, section, column(report, left, 0));
    const bottom = flow.y;
    flow.y = top;
    if (right.length > 0) drawTable(report, section, column(report, right, 1));
    flow.y = Math.max(bottom, flow.y);
    rows = rows.slice(left.length + right.length);
    if (rows.length > 0) flow.newPage();
  }
  if (more > 0)
    paragraph(report, section, `${plural(more, "more file")}: all are in the manifest of the build.`, { style: TYPE.label });
}

function fileRows({ day }: DaySummary, folder: string): readonly TableRow[] {
  const logs = new Map(day.logs.map((log) => [log.file, log]));
  return day.files.slice(0, MOST_FILES).map((file) => {
    const log = logs.get(file.file);
    const name = file.file.startsWith(folder) ? file.file.slice(folder.length) : file.file;
    const left = log === undefined ? [] : [count(log.unmatched, "unmatched"), count(log.rejected, "rejected")];
    return {
      cells: [
        { text: name, style: TYPE.table },
        log === undefined ? "" : thousands(log.read),
        log === undefined ? "" : thousands(log.used),
        file.sha256.slice(0, 12),
      ],
      below: left.some((words) => words !== "") ? `${left.filter((words) => words !== "").join(", ")}.` : null,
    };
  });
}

function count(rows: number, word: string): string {
  return rows === 0 ? "" : `${thousands(rows)} ${word}`;
}

function column(report: Report, rows: readonly TableRow[], place: 0 | 1): TableOptions {
  const { left, width } = report.flow.sheet;
  const half = (width - GUTTER) / 2;
  const columns = [
    { head: "File", width: half - 2 * 36 - 62 - 3 * 6 },
    { head: "Rows", width: 36, align: "end" },
    { head: "Used", width: 36, align: "end" },
    { head: "SHA-256 begins", width: 62 },
  ] as const;
  return { columns: columns.slice(), rows, x: left + place * (half + GUTTER), gap: 6, pad: 1, belowColumn: 0 };
}

/** The rows of both columns of this page: halves if they fit, else as many as do. */
function nextColumns(report: Report, rows: readonly TableRow[]): readonly [readonly TableRow[], readonly TableRow[]] {
  const head = tableHeight(report, column(report, [], 0));
  const heights = rows.map((row) => tableHeight(report, column(report, [row], 0)) - head);
  const all = heights.reduce((sum, height) => sum + height, 0);
  const room = report.flow.left() - head - SLACK;
  // half of the rows may be more than half of the height
  const tallest = Math.max(...heights);
  const first = taken(heights, Math.min(room, all / 2 + tallest / 2));
  const second = taken(heights.slice(first), room);
  return [rows.slice(0, first), rows.slice(first, first + second)];
}

/** How many of the first fit; at least one. */
function taken(heights: readonly number[], room: number): number {
  let used = 0;
  let i = 0;
  for (; i < heights.length; i++) {
    used += heights[i] ?? 0;
    if (used > room && i > 0) break;
  }
  return i;
}
