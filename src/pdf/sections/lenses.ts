/** Lenses: what each was used for today, and the facts of the kit with the cautions that belong to them. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { grams } from "../../format/amounts.ts";
import { distance, distanceRange, millimetres } from "../../format/length.ts";
import { thousands, trimmed } from "../../format/number.ts";
import { NBSP } from "../../format/space.ts";
import { stopRange, transmittanceText, tStop } from "../../format/stop.ts";
import { minutesSeconds } from "../../format/time.ts";
import { listWords, plural } from "../../format/words.ts";
import type { CalibrationTable, Lens } from "../../ingest/records.ts";
import { lensName, sentence, takeName } from "../../view/names.ts";
import { headLine, paragraph, sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import { type Report, TYPE } from "../report.ts";
import { type Cell, drawTable, type TableRow } from "../table.ts";
import { element } from "../tags.ts";
import { focalRange } from "../take-words.ts";
import { kitChanges, lensSeconds } from "../totals.ts";

export const MASS_CAUTION =
  "Mass and balance: rebalance with motors off and the lens secured and supported; keep within the rated limits of the rig and the lens support; follow local rules for overhead and vehicle rigs. The figures are not an engineering approval.";
export const FOCUS_CAUTION = "A focus distance is an optical reading, not a safety distance for stunts, vehicles or effects.";

export const LENSES_TITLE = "Lenses and kit changes";
export const LENSES_TARGET = "lenses";

/** The whole kit list, and what was changed when. */
export function lensSection(report: Report): void {
  const section = lensesHead(report, LENSES_TITLE);
  useTable(report, section);
  kitChangesTable(report, section);
  const { lenses } = report.summary.kit;
  const facts = lensFacts(report, section, lenses);
  report.flow.y += 6;
  if (lenses.some((lens) => lens.massG !== null)) paragraph(report, facts, MASS_CAUTION);
  paragraph(report, facts, FOCUS_CAUTION);
}

/** The lenses of the day alone; the cautions are with what the report says of itself. */
export function usedLensSection(report: Report): void {
  const section = lensesHead(report, "Lenses");
  useTable(report, section);
  const used = new Set(report.summary.lensUse.filter((use) => use.takes > 0).map((use) => use.lens));
  lensFacts(
    report,
    section,
    report.summary.kit.lenses.filter((lens) => used.has(lens.id)),
  );
}

function lensesHead(report: Report, title: string): Element {
  const { flow } = report;
  if (flow.left() < 300) flow.newPage();
  const section = sectionHead(report, title, "Today's use from logs, else notes; facts from the kit list.");
  report.places.mark(LENSES_TARGET, flow.y - 24);
  report.bookmark.add(title, flow.y - 24);
  return section;
}

function lensFacts(report: Report, section: Element, lenses: readonly Lens[]): Element {
  const { flow } = report;
  flow.y += 16;
  flow.need(110);
  const facts = element(report.doc, section, "Sect");
  flow.y = headLine(
    report,
    facts,
    "H3",
    "Lens facts",
    "From the kit; close focus and entrance pupil are from the image plane.",
    flow.sheet.left,
    flow.sheet.width,
    flow.y,
  );
  factsTable(report, facts, lenses);
  return facts;
}

function useTable(report: Report, parent: Element): void {
  const { summary, flow } = report;
  const { distances } = summary.show;
  const seconds = lensSeconds(summary);
  const byId = new Map(summary.kit.lenses.map((lens) => [lens.id, lens]));
  const width = flow.sheet.width - 3 * 40 - 70 - 6 * 7;
  const columns = [
    { head: "Lens", width: width * 0.34 },
    { head: "Clips", width: 40, align: "end" },
    { head: "min:s", width: 40, align: "end" },
    { head: "Frames", width: 40, align: "end" },
    { head: "Focal length", width: 70 },
    { head: "Stop", width: width * 0.28 },
    { head: "Focus", width: width * 0.38 },
  ] as const;
  const rows: TableRow[] = summary.lensUse.map((use) => {
    const name = lensName(byId.get(use.lens) ?? null, use.lens);
    if (use.takes === 0) return { cells: [name, "0", "0:00", "0", { text: "not used today", style: TYPE.source }, "", ""] };
    return {
      cells: [
        byId.has(use.lens) ? name : `${name}, not in the kit`,
        thousands(use.takes),
        minutesSeconds(seconds.get(use.lens) ?? 0),
        thousands(use.frames),
        use.focalMm === null ? absent() : focalRange(use.focalMm.min, use.focalMm.max),
        use.tStop === null ? absent() : stopRange(use.tStop.widest, use.tStop.deepest),
        use.focus === null ? absent() : distanceRange(use.focus.nearestM, use.focus.farthestM, distances),
      ],
    };
  });
  if (rows.length === 0) rows.push(noRow("No lens was recorded today."));
  drawTable(report, parent, { columns: columns.slice(), rows });
}

/** What the camera assistants had to change, when, and for which take. */
function kitChangesTable(report: Report, parent: Element): void {
  const { flow, doc, summary } = report;
  flow.y += 16;
  flow.need(80);
  const section = element(doc, parent, "Sect");
  const { left, width } = flow.sheet;
  const says = "From one take of a camera to its next, where both say it.";
  flow.y = headLine(report, section, "H3", "Kit changes", says, left, width, flow.y);
  const changes = kitChanges(summary);
  if (changes.length === 0) {
    paragraph(report, section, "No change of lens, sensor mode or filters is recorded.");
    return;
  }
  const columns = [
    { head: "Camera", width: 40 },
    { head: "By timecode", width: 56 },
    { head: "For take", width: 110 },
    { head: "What", width: 62 },
    { head: "Change", width: width - 40 - 56 - 110 - 62 - 4 * 7 },
  ] as const;
  const rows = changes.map(({ take, what, from, to }): TableRow => {
    return {
      cells: [take.take.camera, take.timecodeIn ?? absent(), takeName(take.take), what, `${from} to ${to}`],
    };
  });
  drawTable(report, section, { columns: columns.slice(), rows, pad: 1.6 });
}

function factsTable(report: Report, parent: Element, lenses: readonly Lens[]): void {
  const { summary, flow } = report;
  const { distances } = summary.show;
  const fixed = 40 + 56 + 32 + 54 + 48 + 38 + 40 + 8 * 6;
  const rest = flow.sheet.width - fixed;
  const columns = [
    { head: "Lens", width: rest * 0.5 },
    { head: "Serial", width: 40 },
    { head: "Focal length", width: 56 },
    { head: "Widest", width: 32 },
    { head: "Transmittance", width: 54 },
    { head: "Close focus", width: 48 },
    { head: "Front", width: 38 },
    { head: "Mass", width: 40, align: "end" },
    { head: "Mount, squeeze", width: rest * 0.5 },
  ] as const;
  const rows = lenses.map((lens): TableRow => {
    const table = summary.kit.calibration.get(lens.id) ?? null;
    return {
      cells: [
        lensName(lens, lens.id),
        lens.serial ?? absent(),
        focalOf(lens),
        orAbsent(lens.widestT, tStop),
        orAbsent(lens.transmittance, transmittanceText),
        orAbsent(lens.closeFocusM, (m) => distance(m, distances)),
        orAbsent(lens.frontDiameterMm, millimetres),
        orAbsent(lens.massG, grams),
        [lens.mount ?? NOT_RECORDED, lens.squeeze === null || lens.squeeze === 1 ? "" : `×${NBSP}${trimmed(lens.squeeze, 2)}`]
          .filter((s) => s !== "")
          .join(", "),
      ],
      below: [`${lens.id}.`, tableWords(table), lens.remarks === null ? "" : sentence(lens.remarks)]
        .filter((text) => text !== "")
        .join(" "),
    };
  });
  if (rows.length === 0)
    rows.push(noRow(summary.kit.lenses.length === 0 ? "The kit lists no lens." : "No lens of the kit was used."));
  drawTable(report, parent, { columns: columns.slice(), rows, gap: 6 });
}

function focalOf(lens: Lens): string | Cell {
  if (lens.focalMm !== null) return millimetres(lens.focalMm);
  if (lens.focalMinMm === null || lens.focalMaxMm === null) return absent();
  return `${trimmed(lens.focalMinMm, 1)} to ${millimetres(lens.focalMaxMm)}`;
}

function tableWords(table: CalibrationTable | null): string {
  if (table === null) return "No calibration table.";
  const { model, direction, radius } = table.convention;
  const made = table.madeOn === null ? "" : `, made ${table.madeOn}`;
  if (model === null || direction === null || radius === null) {
    const unsaid = Object.entries({ model, direction, radius }).flatMap(([name, value]) => (value === null ? [name] : []));
    return `Calibration table of ${plural(table.points.length, "point")}, not used: it does not say its ${listWords(unsaid)}.`;
  }
  return `Calibration: ${model}, direction ${direction}, radius ${radius}, ${plural(table.points.length, "point")}${made}.`;
}

function orAbsent<T>(value: T | null, write: (value: T) => string): string | Cell {
  return value === null ? absent() : write(value);
}

/** In place of the rows of a table without any. */
function noRow(text: string): TableRow {
  return { group: true, cells: [{ text, style: TYPE.table }] };
}

function absent(): Cell {
  return { text: NOT_RECORDED, style: TYPE.source };
}
