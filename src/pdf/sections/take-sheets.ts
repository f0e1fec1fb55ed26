/** Set-up by set-up: a table of its takes, then take by take the focus, and the rest by where it comes from. */
import { plural } from "../../format/words.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { paragraph, sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import { drawHanging, type HangingLine, hangingHeight, MARGIN_WIDTH } from "../hanging.ts";
import { lineHeight, type TextStyle } from "../ink.ts";
import type { Bookmark } from "../outline.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, tableHeight } from "../table.ts";
import { artifact, element } from "../tags.ts";
import { type NumberedTake, plateSlates, plateTarget, type SlateTakes, slateTarget, takesBySlate } from "../totals.ts";
import { hasPlateSheet, isShort, isThick, largeRibbons } from "./ribbon-size.ts";
import { sharedFacts, type TakeFact } from "./take-facts.ts";
import { drawPulls, pullsHeight, shortNotes, takeNotes } from "./take-notes.ts";
import { drawRibbon, LOW_HEIGHT_PX, longestSeconds, type Ribbon, rowRibbonOf, wideRibbonOf } from "./take-ribbon.ts";
import { slateTable } from "./take-table.ts";

export const SETUPS_TITLE = "Set-up by set-up";
export const SETUPS_TARGET = "setups";

/** Points of the line with the slate. */
const SLATE_HEIGHT = 27;
/** Points of the line with a take's number. */
const TAKE_HEIGHT = 17;
/** Points of the same where the slate stands above it. */
const TWO_LINES = 28;
const AFTER_TAKE = 7;
const AFTER_SHARED = 5;
/** Share of a sheet that is not left empty before a ribbon. */
const MUCH = 0.3;
/** Points of the head and the first pulls of a table. */
const BEGINNING_OF_PULLS = 60;
/** Pulls that always stand below their ribbon. */
const FEW_PULLS = 5;

interface Block {
  readonly take: NumberedTake;
  readonly ribbon: Ribbon | null;
  readonly pulls: boolean;
  readonly notes: readonly HangingLine[];
  /** Points. */
  readonly height: number;
}

export function setupSections(report: Report): void {
  const { summary, flow } = report;
  const says = isThick(summary)
    ? "Circled takes in full, the others short; day.json has every figure."
    : "Every figure says where it comes from.";
  const section = sectionHead(
    report,
    SETUPS_TITLE,
    `${says} Out is the first frame after the take. Ribbons: height is 1 / distance, infinity on top, in ${summary.show.distances === "imperial" ? "feet" : "metres"}.`,
    { keep: 120 },
  );
  report.places.mark(SETUPS_TARGET, flow.y - 36);
  report.bookmark.add(SETUPS_TITLE, flow.y - 36);
  const slates = takesBySlate(summary);
  if (slates.length === 0)
    paragraph(report, section, `No takes: neither notes.csv nor a log with a take was found for ${summary.date}.`);
  const large = largeRibbons(summary);
  const longest = longestSeconds(summary);
  const sheets = new Map(plateSlates(summary).map(({ slate }, i) => [slate, plateTarget(i)]));
  const blockOf = (take: NumberedTake, facts: readonly TakeFact[]): Block => {
    const t = take.summary;
    const short = isShort(summary, t);
    const ribbon = large.has(take.target) ? wideRibbonOf(report, t) : rowRibbonOf(report, t, longest);
    const notes = [...plateLines(t, sheets), ...(short ? shortNotes(report, t, facts) : takeNotes(t, facts))];
    const pulls = !short && ribbon?.wide === true;
    const head = ribbon?.wide === false ? Math.max(TWO_LINES, ribbon.height) : TAKE_HEIGHT + (ribbon?.height ?? 0);
    const height = head + (pulls ? pullsHeight(report, t) : 0) + hangingHeight(report, notes) + AFTER_TAKE;
    return { take, ribbon, pulls, notes, height };
  };
  slates.forEach((slate, i) => {
    const { lines, own } = sharedFacts(slate.takes, summary.show.distances, (t) => isShort(summary, t));
    const blocks = slate.takes.map((take) => blockOf(take, own(take)));
    setup(report, section, { slate, target: slateTarget(i), shared: lines, blocks });
  });
}

function plateLines(t: TakeSummary, sheets: ReadonlyMap<string, string>): readonly HangingLine[] {
  const target = hasPlateSheet(t) ? sheets.get(t.take.slate) : undefined;
  if (target === undefined) return [];
  const text = "All camera and lens values are on the plate sheet, page";
  return [{ label: "Plate", text, link: { target, label: `Plate sheet of slate ${t.take.slate}` } }];
}

interface Setup {
  readonly slate: SlateTakes;
  readonly target: string;
  /** What all its takes have in common. */
  readonly shared: readonly HangingLine[];
  readonly blocks: readonly Block[];
}

function setup(report: Report, parent: Element, { slate, target, shared, blocks }: Setup): void {
  const { doc, flow } = report;
  const table = slateTable(report, slate);
  const sharedRoom = shared.length === 0 ? 0 : hangingHeight(report, shared) + AFTER_SHARED;
  const tableRoom = tableHeight(report, table) + 4 + sharedRoom;
  const sheetHeight = flow.sheet.bottom - flow.sheet.top;
  const first = tableRoom + (blocks[0]?.height ?? 0);
  // A table alone at the foot of a page is better than half a page left empty.
  flow.need(SLATE_HEIGHT + ([first, tableRoom].find((height) => height <= sheetHeight / 4) ?? 90));
  const section = element(doc, parent, "Sect");
  report.places.mark(target, flow.y);
  const mark = report.bookmark.add(`${slate.slate}, ${plural(slate.takes.length, "clip")}`, flow.y);
  slateHead(report, section, slate);
  drawTable(report, section, table);
  flow.y += 4;
  if (shared.length > 0) {
    if (flow.need(Math.min(sharedRoom, sheetHeight / 2))) continuedLine(report, slate.slate);
    drawHanging(report, section, shared);
    flow.y += AFTER_SHARED;
  }
  for (const block of blocks) takeBlock(report, section, block, mark);
}

function continuedLine({ doc, ink, flow }: Report, slate: string): void {
  const line = `${ink.fitted(`Slate ${slate}`, TYPE.label, flow.sheet.width * 0.8)}, continued`;
  artifact(doc, () => ink.text(line, flow.sheet.left, flow.y + 9, TYPE.label));
  flow.y += 15;
}

/** "24B", as it is said on set, with its scenes and clips. */
function slateHead(report: Report, parent: Element, { slate, takes }: SlateTakes): void {
  const { doc, ink, flow } = report;
  const { left, right } = flow.sheet;
  const top = flow.y;
  const baseline = top + 19;
  if (top > flow.sheet.top) artifact(doc, () => ink.line(left, top, right, top, PRINT.ink, 0.75));
  let x = left;
  element(doc, parent, "H3", {}, () => {
    const name = ink.fitted(slate, TYPE.address, 200);
    x += ink.text(`${name} `, x, baseline, TYPE.address) + 6;
  });
  const scenes = [...new Set(takes.map(({ summary }) => summary.take.scene).filter((scene) => scene !== null))];
  const circled = takes.filter(({ summary }) => summary.take.circled).length;
  const scene = scenes.length === 0 ? "Scene not recorded." : `Scene ${scenes.join(", ")}.`;
  const words = `${scene} ${plural(takes.length, "clip")}, ${circled === 0 ? "none" : circled} circled.`;
  const lines = ink.lines(words, TYPE.body, right - x).slice(0, 2);
  const first = lines.length > 1 ? baseline - 9 : baseline;
  element(doc, parent, "P", {}, () => {
    lines.forEach((line, i) => {
      ink.text(`${line} `, x, first + i * lineHeight(TYPE.body), TYPE.body);
    });
  });
  flow.y = top + SLATE_HEIGHT;
}

function takeBlock(report: Report, parent: Element, wanted: Block, mark: Bookmark): void {
  const { doc, flow } = report;
  const block = fitted(report, wanted);
  const { take, ribbon, notes } = block;
  const t = take.summary;
  flow.need(roomFor(report, block));
  const section = element(doc, parent, "Sect");
  report.places.mark(take.target, flow.y);
  mark.add(`Take ${t.take.take} ${t.take.camera}`, flow.y);
  const top = flow.y;
  takeHead(report, section, take, ribbon?.wide === false ? MARGIN_WIDTH : flow.sheet.width);
  if (ribbon !== null) drawRibbon(report, section, ribbon, ribbon.wide ? flow.y : top);
  if (block.pulls) drawPulls(report, section, t);
  drawHanging(report, section, notes);
  flow.y += AFTER_TAKE;
}

/** At the end of a page a wide ribbon is drawn lower, if the take has room there then and not before. */
function fitted(report: Report, block: Block): Block {
  const { ribbon, height } = block;
  const left = report.flow.left();
  if (ribbon?.wide !== true || left >= height) return block;
  const low = wideRibbonOf(report, block.take.summary, LOW_HEIGHT_PX);
  const saved = low === null ? 0 : ribbon.height - low.height;
  return left < height - saved ? block : { ...block, ribbon: low, height: height - saved };
}

/** What must stand together: the whole, unless that leaves much of a page empty; then many pulls may go on on the next one. */
function roomFor({ flow }: Report, { take, height, ribbon, pulls }: Block): number {
  const sheetHeight = flow.sheet.bottom - flow.sheet.top;
  const few = take.summary.pulls === null || take.summary.pulls.length <= FEW_PULLS;
  if (flow.left() >= height) return height;
  if (!pulls || ribbon === null || few || flow.left() < sheetHeight * MUCH) return Math.min(height, sheetHeight);
  return TAKE_HEIGHT + ribbon.height + BEGINNING_OF_PULLS;
}

/**
 * "24B take 3 A" with the ring of a circled take. Where that is wider than `width`, the slate has a line of its own above; only
 * names that no line holds are cut.
 */
function takeHead(report: Report, parent: Element, { summary: t }: NumberedTake, width: number): void {
  const { doc, ink, flow } = report;
  const { left } = flow.sheet;
  const ringed = t.take.circled ? 3.5 : 0;
  const room = (style: TextStyle) => width - ink.width(t.take.camera, style) - 9 - 2 * ringed;
  const style = ink.width(t.take.take, TYPE.head) <= room(TYPE.head) ? TYPE.head : TYPE.strong;
  const camera = width - room(style);
  const number = ink.fitted(t.take.take, style, Math.max(10, width - camera));
  const words = `${t.take.slate} take `;
  const beside = ink.width(words, TYPE.label) + ink.width(number, style) + camera <= width;
  const baseline = flow.y + (beside ? 13 : 24);
  let x = left;
  let ring = { x: 0, width: 0 };
  element(doc, parent, "H4", {}, () => {
    const shown = beside ? words : ink.fitted(words, TYPE.label, width);
    const used = ink.text(shown.endsWith(" ") ? shown : `${shown} `, x, beside ? baseline : flow.y + 9, TYPE.label);
    x += (beside ? used + 1 : 0) + ringed;
    ring = { x, width: ink.width(number, style) };
    x += ink.text(`${number} `, x, baseline, style) + ringed;
    ink.text(`${t.take.camera} `, x, baseline, style);
  });
  if (t.take.circled) {
    const { x: from, width: wide } = ring;
    artifact(doc, () =>
      ink.doc
        .lineWidth(0.8)
        .roundedRect(from - 3.6, baseline - 12, wide + 7.2, 15, 7.5)
        .stroke(PRINT.ink),
    );
  }
  flow.y = baseline + TAKE_HEIGHT - 13;
}
