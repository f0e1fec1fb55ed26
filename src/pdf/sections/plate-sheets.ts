/** A sheet a set-up with plates: all camera and lens values, focus, lens look, the still, and room to sketch the set. */
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { takeName } from "../../view/names.ts";
import { type PlatePair, pairPlates } from "../../view/readers/plates.ts";
import { paragraph, sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, type TableOptions, tableHeight } from "../table.ts";
import { plateSlates, plateTarget } from "../totals.ts";
import { plateFoot } from "./plate-foot.ts";
import { plateRows } from "./plate-rows.ts";
import { drawRibbon, wideRibbonOf } from "./take-ribbon.ts";

export const PLATES_TITLE = "Plate sheets";

/** Takes beside each other on one sheet; more of a set-up go on a sheet of their own. */
const TAKES_A_SHEET = 3;
const RIBBON_HEIGHT_PX = 110;
const TERM_WIDTH = 76;
const GAP = 8;
const GUTTER = 16;
const TIGHT = { gap: GAP, pad: 0.9 } as const;
const REMARK = { term: "Remark", text: (t: TakeSummary) => t.remarks ?? "none" };

export function plateSheets(report: Report): void {
  const slates = plateSlates(report.summary);
  if (slates.length === 0) return;
  const pairs = pairPlates(slates.flatMap(({ takes }) => takes.map(({ summary }) => summary)));
  const title = report.bookmark.add(PLATES_TITLE, -1);
  slates.forEach(({ slate, takes }, i) => {
    const all = takes.map(({ summary }) => summary);
    const sentence = pairingWords(
      pairs.find((pair) => pair.takes.some((t) => all.includes(t))),
      all,
    );
    for (let from = 0; from < all.length; from += TAKES_A_SHEET) {
      report.flow.newPage();
      if (from === 0) {
        report.places.mark(plateTarget(i), report.flow.y);
        title.add(slate, report.flow.y);
      }
      plateSheet(report, slate, all.slice(from, from + TAKES_A_SHEET), sentence);
    }
  });
}

/** How the clean plate stands against its hero, on the sheets of these two; a grid or a reference is no part of that. */
function pairingWords(pair: PlatePair | undefined, takes: readonly TakeSummary[]): string {
  if (pair === undefined) return "";
  const isNamed = ({ take }: TakeSummary) => take.plate === "hero" || take.plate === "clean";
  return takes.some(isNamed) || !pair.takes.some(({ take }) => take.plate === "hero") ? pair.sentence : "";
}

function plateSheet(report: Report, slate: string, takes: readonly TakeSummary[], pairing: string): void {
  const { flow } = report;
  const scenes = [...new Set(takes.map((t) => t.take.scene).filter((scene) => scene !== null))];
  const where = `${scenes.length === 0 ? "Scene not recorded" : `Scene ${scenes.join(", ")}`}; ${plural(takes.length, "clip")}.`;
  const says = `${where} C is the corner, S mid-side, T mid-top; negative is barrel and darker.`;
  const section = sectionHead(report, `Plate sheet ${slate}`, says);
  if (pairing !== "") paragraph(report, section, pairing, { style: TYPE.label });
  const main = takes.find((t) => t.take.circled) ?? takes.at(-1);
  const ribbon = main === undefined ? null : wideRibbonOf(report, main, RIBBON_HEIGHT_PX);
  if (main !== undefined && ribbon !== null) {
    paragraph(report, section, focusLine(report, main), { style: TYPE.strong, after: 0 });
    drawRibbon(report, section, ribbon, flow.y);
  }
  valueTables(report, section, takes);
  plateFoot(report, section, takes);
}

/** In one line: without the slate, which the head of the sheet says, where the name is too long. */
function focusLine({ ink, flow }: Report, { take }: TakeSummary): string {
  const whole = `Focus of ${takeName(take)}`;
  const { width } = flow.sheet;
  return ink.width(whole, TYPE.strong) <= width
    ? whole
    : ink.fitted(`Focus of take ${take.take} ${take.camera}`, TYPE.strong, width);
}

/** What all takes have in common in two columns, what differs in a column a take. */
function valueTables(report: Report, parent: Element, takes: readonly TakeSummary[]): void {
  const { flow, summary } = report;
  const rows = [...plateRows(summary.show.distances), REMARK].map(({ term, text }) => ({ term, texts: takes.map(text) }));
  const same = rows.filter(({ texts }) => texts.every((text) => text === texts[0]));
  const differing = rows.filter((row) => !same.includes(row));
  if (differing.length > 0) {
    const width = (flow.sheet.width - TERM_WIDTH - takes.length * GAP) / takes.length;
    const columns = [{ head: "Value", width: TERM_WIDTH }, ...takes.map((t) => ({ head: takeHead(report, t, width), width }))];
    drawTable(report, parent, { columns, rows: differing.map(({ term, texts }) => ({ cells: [term, ...texts] })), ...TIGHT });
    flow.y += 6;
  }
  const [one] = takes;
  const width = flow.sheet.width / 2 - TERM_WIDTH - GUTTER;
  const head = takes.length > 1 || one === undefined ? "all takes" : takeHead(report, one, width);
  sideBySide(report, parent, same, head);
}

function takeHead({ ink }: Report, { take }: TakeSummary, width: number): string {
  return ink.lines(`take ${take.take} ${take.camera}`, TYPE.label, width).join("\n");
}

interface ValueRow {
  readonly term: string;
  readonly texts: readonly string[];
}

function sideBySide(report: Report, parent: Element, rows: readonly ValueRow[], head: string): void {
  const { flow } = report;
  const column = (flow.sheet.width - GUTTER) / 2;
  const columns = [
    { head: "Value", width: TERM_WIDTH },
    { head, width: column - TERM_WIDTH - GAP },
  ];
  const half = (part: readonly ValueRow[], x: number): TableOptions => {
    return { columns, rows: part.map(({ term, texts }) => ({ cells: [term, texts[0] ?? ""] })), x, ...TIGHT };
  };
  const middle = Math.ceil(rows.length / 2);
  const halves = [half(rows.slice(0, middle), flow.sheet.left), half(rows.slice(middle), flow.sheet.left + column + GUTTER)].filter(
    (table) => table.rows.length > 0,
  );
  flow.need(Math.max(0, ...halves.map((table) => tableHeight(report, table))));
  const top = flow.y;
  let bottom = top;
  for (const table of halves) {
    flow.y = top;
    drawTable(report, parent, table);
    bottom = Math.max(bottom, flow.y);
  }
  flow.y = bottom;
}
