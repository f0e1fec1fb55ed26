/** How the figures were computed: what they rest on, the formulas, the input files, and what this document is. */
import { areaMm } from "../../format/length.ts";
import { significant } from "../../format/number.ts";
import { listWords, plural } from "../../format/words.ts";
import { FORMULAS } from "../../optics/formulas.ts";
import type { DaySummary, StopUsed } from "../../summary/types.ts";
import { headLine, paragraph, sectionHead } from "../block.ts";
import type { Element } from "../document.ts";
import { formulaText } from "../formula-text.ts";
import { lineHeight, type TextStyle } from "../ink.ts";
import { type Report, TYPE } from "../report.ts";
import { MISSING_SIGN } from "../runs.ts";
import { element } from "../tags.ts";
import { inputFiles } from "./input-files.ts";
import { FOCUS_CAUTION, MASS_CAUTION } from "./lenses.ts";

/** Formulas that stand behind figures of this report, in its order. */
export const SHOWN: readonly string[] = [
  "object-distance",
  "hyperfocal",
  "depth-of-field",
  "transmittance",
  "angle-of-view",
  "stops-between",
  "focus-pull",
  "distortion-percent",
  "shading-stops",
  "calibration-between-points",
  "overscan",
  "shooting-ratio",
  "pages-in-eighths",
];

/** Those that are no matter of lenses. */
const OF_THE_DAY = ["shooting-ratio", "pages-in-eighths"];

export const METHODS_TITLE = "How it was computed";
export const METHODS_TARGET = "methods";

export const CLAIM = "written to PDF/A-3b, not certified";

/** All of it: every formula and input file. */
export function methodsSection(report: Report): void {
  const section = computed(report);
  formulas(report, section, SHOWN);
  inputFiles(report, section);
  // the cautions stand with the figures: hours on the first page, focus and mass with the lenses
  about(report, section, "H3", []);
}

/** What stands behind lens figures alone. */
export function lensMethodsSection(report: Report): void {
  const section = computed(report);
  formulas(
    report,
    section,
    SHOWN.filter((id) => !OF_THE_DAY.includes(id)),
  );
  paragraph(report, section, "The camera report lists the input files with their hashes.");
  about(report, section, "H3", [FOCUS_CAUTION, MASS_CAUTION]);
}

function computed(report: Report): Element {
  const { flow, summary } = report;
  if (flow.left() < 260) flow.newPage();
  const section = sectionHead(
    report,
    METHODS_TITLE,
    "Distances are from the image plane. Inside: dioptres, exact stops, whole frames.",
  );
  report.places.mark(METHODS_TARGET, flow.y - 24);
  report.bookmark.add(METHODS_TITLE, flow.y - 24);
  paragraph(report, section, confusionWords(summary));
  paragraph(report, section, stopWords(summary));
  paragraph(
    report,
    section,
    "Sources: logged, read from a lens log; noted, written by a person; kit, from the kit list or a lens table; calculated, worked out here by the formulas below. Where two disagree, log comes before note and note before kit, and a finding says so.",
  );
  return section;
}

/** What the document is, and the cautions that belong to its figures, for a report without the formulas. */
export function aboutSection(report: Report, cautions: readonly string[]): void {
  report.flow.y += 8;
  about(report, report.root, "H2", cautions);
}

function confusionWords(summary: DaySummary): string {
  const modes = new Map<string, string>();
  for (const { take } of summary.takes) {
    const { circleOfConfusionMm: mm, sensorMode: mode } = take;
    if (mm === null || mode === null) continue;
    const name = `${mode.sensorMode}, ${areaMm(mode.activeWidthMm, mode.activeHeightMm)}`;
    modes.set(name, `${significant(mm, 3)} mm for ${name}`);
  }
  if (modes.size === 0) return "Circle of confusion: no take has a known sensor mode, so no depth of field was calculated.";
  const list = [...modes.values()];
  const from = summary.show.circleOfConfusionMm === null ? "active diagonal of the sensor mode / 1500" : "set in show.yaml";
  return `Circle of confusion: ${listWords(list)} (${from}).`;
}

const STOP_WORDS: Readonly<Record<StopUsed, string>> = {
  f: "the logged f-number",
  "t-times-root-tau": "T times the root of the lens's transmittance",
  t: "T in place of the f-number, where the transmittance is not known (the depth shown is then a little too deep)",
};

function stopWords(summary: DaySummary): string {
  const uses = (["f", "t-times-root-tau", "t"] as const)
    .map((used) => ({ used, count: summary.takes.filter((t) => t.depthOfField?.stopUsed === used).length }))
    .filter(({ count }) => count > 0)
    .map(({ used, count }) => `${STOP_WORDS[used]} in ${plural(count, "clip")}`);
  return uses.length === 0
    ? "Depth of field was calculated for no clip."
    : `Depth of field was calculated with ${listWords(uses)}.`;
}

function formulas(report: Report, parent: Element, ids: readonly string[]): void {
  const { flow, doc, ink } = report;
  const byId = new Map(FORMULAS.map((formula) => [formula.id, formula]));
  const shown = ids.flatMap((id) => byId.get(id) ?? []);
  if (shown.length === 0) return;
  flow.y += 10;
  flow.need(90);
  const section = element(doc, parent, "Sect");
  flow.y = headLine(report, section, "H3", "Formulas", "", flow.sheet.left, flow.sheet.width, flow.y);
  for (const formula of shown) {
    const parts = formulaParts(formula);
    flow.need(parts.reduce((sum, { text, style }) => sum + ink.lines(text, style, flow.sheet.width).length * lineHeight(style), 0));
    parts.forEach(({ text, style }, i) => {
      paragraph(report, section, text, { style, after: i === parts.length - 1 ? 5 : 0 });
    });
  }
}

function formulaParts(formula: (typeof FORMULAS)[number]): readonly { readonly text: string; readonly style: TextStyle }[] {
  const symbols = formula.symbols.map((s) => `${s.symbol} ${s.meaning}${s.unit === "" ? "" : `, ${s.unit}`}`).join("; ");
  const about = [symbols === "" ? "" : `${symbols}.`, formula.validity].filter((t) => t !== "").join(" ");
  return [
    { text: formula.title, style: TYPE.sub },
    { text: formulaText(formula.expression), style: TYPE.body },
    { text: formulaText(about), style: TYPE.label },
    { text: `Source: ${formula.source}`, style: TYPE.source },
  ];
}

function about(report: Report, parent: Element, tag: "H2" | "H3", cautions: readonly string[]): void {
  const { flow, ink, doc } = report;
  flow.y += 10;
  flow.need(100);
  const section = element(doc, parent, "Sect");
  flow.y = headLine(report, section, tag, "What this report is", "", flow.sheet.left, flow.sheet.width, flow.y);
  paragraph(
    report,
    section,
    `Made by ${report.program} from the show folder alone; its dates are the shooting date, not the time of printing. This file is ${CLAIM}. It is written to PDF/UA-1 too: headings, tables, figures and links can be read aloud in their order. Reports of this program are validated against both in its tests; this file itself was not.`,
  );
  for (const caution of cautions) paragraph(report, section, caution);
  if (ink.missing()) {
    paragraph(
      report,
      section,
      `${MISSING_SIGN} stands for a character that the typefaces of this file do not have; takes.csv and day.json have the text as written.`,
    );
  }
}
