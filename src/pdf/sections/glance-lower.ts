/** Lower part of the first page: lens use beside what needs an answer, the day's notes, contents and lines to sign. */
import { openFindings } from "../../core/finding.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { thousands } from "../../format/number.ts";
import { stopRange } from "../../format/stop.ts";
import { dayMinutes, minutesSeconds } from "../../format/time.ts";
import { plural, sentenceCase } from "../../format/words.ts";
import { lensName } from "../../view/names.ts";
import { headLine, paragraph } from "../block.ts";
import type { Element } from "../document.ts";
import { findingTakeName, messageSentence, SEVERITY_WORDS, severityStyle, worstFirst } from "../finding-words.ts";
import { lineHeight } from "../ink.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { drawTable, type TableRow } from "../table.ts";
import { artifact, element } from "../tags.ts";
import { lensSeconds } from "../totals.ts";

const LENSES_SHOWN = 7;
const FINDINGS_SHOWN = 5;
const GUTTER = 24;

/** Two columns of equal top; the lower end of the longer one is where the page goes on. */
export function lensesAndFindings(report: Report, parent: Element, allLenses: string): void {
  const { flow } = report;
  const column = (flow.sheet.width - GUTTER) / 2;
  flow.need(150);
  const top = flow.y;
  lensColumn(report, parent, { x: flow.sheet.left, width: column }, allLenses);
  const lensEnd = flow.y;
  flow.y = top;
  findingColumn(report, parent, flow.sheet.left + column + GUTTER, column);
  flow.y = Math.max(flow.y, lensEnd);
}

function lensColumn(
  report: Report,
  parent: Element,
  { x, width }: { readonly x: number; readonly width: number },
  allLenses: string,
): void {
  const { doc, flow, summary } = report;
  const section = element(doc, parent, "Sect");
  flow.y = headLine(report, section, "H2", "Lens use", "Minutes of media, all cameras.", x, width, flow.y);
  const seconds = lensSeconds(summary);
  const used = summary.lensUse.filter((use) => use.takes > 0);
  const sorted = [...used].sort((a, b) => (seconds.get(b.lens) ?? 0) - (seconds.get(a.lens) ?? 0));
  const longest = Math.max(1, ...sorted.map((use) => seconds.get(use.lens) ?? 0));
  const byId = new Map(summary.kit.lenses.map((lens) => [lens.id, lens]));
  const bar = width - 68 - 28 - 24 - 50 - 4 * 6;
  const rows: TableRow[] = sorted.slice(0, LENSES_SHOWN).map((use) => {
    const length = seconds.get(use.lens) ?? 0;
    return {
      cells: [
        lensName(byId.get(use.lens) ?? null, use.lens),
        {
          text: "",
          art: (ink, area) => ink.box(area.x, area.baseline - 6.2, (area.width * length) / longest, 6.4, { fill: PRINT.ink }),
        },
        minutesSeconds(length),
        thousands(use.takes),
        use.tStop === null ? NOT_RECORDED : stopRange(use.tStop.widest, use.tStop.deepest),
      ],
    };
  });
  if (sorted.length > LENSES_SHOWN)
    rows.push({ group: true, cells: [{ text: `${sorted.length - LENSES_SHOWN} more, ${allLenses}`, style: TYPE.table }] });
  if (sorted.length === 0) rows.push({ cells: [NOT_RECORDED, "", "", "", ""] });
  const columns = [
    { head: "Lens", width: 68 },
    { head: " ", width: bar },
    { head: "min:s", width: 28, align: "end" },
    { head: "Clips", width: 24, align: "end" },
    { head: "Stop", width: 50 },
  ] as const;
  drawTable(report, section, { columns, rows, x, gap: 6, pad: 2 });
}

function findingColumn(report: Report, parent: Element, x: number, width: number): void {
  const { doc, ink, flow, summary } = report;
  const { error, check, remark } = summary.findingCounts;
  const section = element(doc, parent, "Sect");
  const says = `${plural(error, "error")}, ${check} to check, ${plural(remark, "remark")}.`;
  flow.y = headLine(report, section, "H2", "Things to check", says, x, width, flow.y);
  const findings = worstFirst(openFindings(summary.findings)).filter((f) => f.severity !== "remark");
  if (findings.length === 0) {
    paragraph(report, section, "Nothing needs an answer.", { x, width });
    return;
  }
  const list = element(doc, section, "L");
  for (const finding of findings.slice(0, FINDINGS_SHOWN)) {
    const textX = x + 38;
    const room = width - 38;
    const all = ink.lines(messageSentence(finding), TYPE.table, room);
    const lines = all.length > 4 ? [...all.slice(0, 3), "in full under Findings"] : all;
    const name = findingTakeName(summary, finding);
    const who = name === null ? [] : ink.lines(name, TYPE.source, room).slice(0, 2);
    const top = flow.y;
    const item = element(doc, list, "LI");
    element(doc, item, "Lbl", {}, () => {
      ink.text(`${SEVERITY_WORDS[finding.severity]} `, x, top + 9, severityStyle(finding.severity));
    });
    element(doc, item, "LBody", {}, () => {
      lines.forEach((line, i) => {
        ink.text(`${line} `, textX, top + 9 + i * lineHeight(TYPE.table), TYPE.table);
      });
      who.forEach((line, i) => {
        ink.text(line, textX, top + 9 + (lines.length + i) * lineHeight(TYPE.table), TYPE.source);
      });
    });
    flow.y = top + (lines.length + who.length) * lineHeight(TYPE.table) + 4;
    const rule = flow.y;
    artifact(doc, () => ink.line(x, rule, x + width, rule, PRINT.rule, 0.4));
  }
  const more = findings.length - FINDINGS_SHOWN;
  if (more > 0) {
    flow.y += 2;
    paragraph(report, section, `${more} more under Findings.`, { x, width, style: TYPE.label });
  }
}

/** Hours that are not in the drawing, sound, people to ask, remarks; and what the hours are not. */
export function dayNotes(report: Report, parent: Element): void {
  const { record } = report.summary.day;
  const meals = record.meals.map((m) => `${dayMinutes(m.out)} to ${m.in === null ? NOT_RECORDED : dayMinutes(m.in)}`);
  const hour = (value: number | null) => (value === null ? NOT_RECORDED : dayMinutes(value));
  const hours = [
    `call ${hour(record.call)}`,
    `first shot ${hour(record.firstShot)}`,
    `${meals.length > 1 ? "meals" : "meal"} ${meals.length === 0 ? NOT_RECORDED : meals.join(", ")}`,
    `first after meal ${hour(record.firstAfterMeal)}`,
    `wrap ${hour(record.wrap)}`,
  ];
  const parts = [
    `Hours: ${hours.join("; ")}.`,
    record.soundRolls.length > 0 ? `Sound rolls: ${record.soundRolls.join(", ")}.` : "",
    record.contacts.length > 0 ? `Who to ask: ${record.contacts.map((c) => `${c.role}: ${c.text}`).join("; ")}.` : "",
  ].filter((part) => part !== "");
  report.flow.y += 8;
  paragraph(report, parent, parts.map(sentenceCase).join(" "), { after: 2 });
  if (record.remarks !== null) paragraph(report, parent, `Remarks: ${record.remarks}`, { after: 2 });
  const caution = "Hours are a record of the day's notes, not a legal finding: agreements and local law decide.";
  paragraph(report, parent, caution, { style: TYPE.label, after: 4 });
}

const SIGNERS = ["First assistant camera", "Director of photography", "Production manager"] as const;

/** Room to sign, at the foot of the page. */
export function signatureLines(report: Report, parent: Element): void {
  const { doc, ink, flow } = report;
  flow.need(44);
  const baseline = Math.max(flow.y + 34, flow.sheet.bottom - 14);
  const width = (flow.sheet.width - 2 * GUTTER) / SIGNERS.length;
  SIGNERS.forEach((signer, i) => {
    const x = flow.sheet.left + i * (width + GUTTER);
    artifact(doc, () => ink.line(x, baseline, x + width, baseline, PRINT.ink, 0.75));
    element(doc, parent, "P", {}, () => {
      ink.text(`${signer} `, x, baseline + 11, TYPE.label);
      ink.text("date", x + width, baseline + 11, TYPE.label, "end");
    });
  });
  flow.y = baseline + 14;
}
