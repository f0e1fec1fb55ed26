/** The page of a day: facts, doors, the day by the clock, the takes by slate. */
import { dayClock } from "../../chart/day/day-clock.ts";
import { dayClockDown } from "../../chart/day/day-clock-down.ts";
import { rowTimeScale } from "../../chart/ribbon/row-ribbon.ts";
import { svg } from "../../chart/svg.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { thousands } from "../../format/number.ts";
import { dateLong, dayMinutes } from "../../format/time.ts";
import { plural, sentenceCase } from "../../format/words.ts";
import type { DayRecord } from "../../ingest/records.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import { type FileLink, packFileLink } from "../files.ts";
import { type FilterBar, filterBar } from "../filters.ts";
import { type CountPart, countParts } from "../findings/findings.ts";
import { dayPath, hrefTo, INPUTS_TABLE_PATH, METHODS_PATH, TAKES_PATH } from "../links.ts";
import { dayHeading, dayShort, sentence, tradeWords, unitName } from "../names.ts";
import { pageBase } from "../page.ts";
import { stopScale } from "../stop-scale.ts";
import type { TableModel } from "../table.ts";
import { timeScale } from "../time-scale.ts";
import { type DayContext, shownSlates } from "./day-context.ts";
import { type Door, doors, packLinks } from "./day-files.ts";
import { focusColumnUnit, type SlateRows, slateRows, takesCaption } from "./day-rows.ts";
import { lensUseTable, loggedShare, rowsSentence, rowsTable, totalFacts } from "./day-tables.ts";
import { exposureTable, notExposedSentence } from "./exposure-table.ts";

const CLOCK_WIDTH = 1216;
const NARROW_CLOCK_WIDTH = 900;
/** A screen 320 wide less the page's margins. */
const PHONE_CLOCK_WIDTH = 288;

export interface DayTurn {
  readonly label: string;
  readonly name: string;
  readonly href: string;
  readonly rel: string;
}

export interface DayPage extends PageModel {
  readonly heading: string;
  readonly of: string;
  readonly dateLong: string;
  readonly about: string;
  readonly turns: readonly DayTurn[];
  readonly strip: readonly Fact[];
  readonly findingParts: readonly CountPart[];
  readonly hasFindings: boolean;
  readonly findingsHref: string;
  readonly doors: readonly Door[];
  readonly clock: string;
  /** The same for paper and narrow screens. */
  readonly clockNarrow: string;
  /** The same down the page, for phones. */
  readonly phone: { readonly clock: string };
  readonly timeScale: string;
  readonly stopUnit: string;
  readonly focusUnit: string;
  readonly takesCaption: string;
  readonly filters: FilterBar;
  /** The same rows as a file of the pack. */
  readonly takesFile: FileLink;
  readonly hasTakesFile: boolean;
  readonly slates: readonly SlateRows[];
  readonly hasTakes: boolean;
  /** How many clips the page leaves to the file and to the page of all takes; empty when it has all. */
  readonly more: string;
  readonly allTakesHref: string;
  readonly emptySentence: string;
  readonly totals: readonly Fact[];
  readonly lensUse: TableModel;
  readonly hasLensUse: boolean;
  readonly exposure: TableModel;
  readonly hasExposure: boolean;
  readonly hasExposureRows: boolean;
  /** The slates that have no row; empty when all have. */
  readonly notExposed: string;
  readonly exposureHref: string;
  readonly rows: TableModel;
  readonly hasRows: boolean;
  readonly rowsSentence: string;
  readonly inputsHref: string;
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
  readonly remarks: readonly Fact[];
}

export function dayPage(day: DayContext): DayPage {
  const { summary, site } = day;
  const path = dayPath(summary.date);
  const { record } = summary.day;
  const ref = { date: summary.date, day: record.day };
  const longest = day.takes.reduce((max, t) => Math.max(max, t.durationSeconds), 0);
  const scale = timeScale(longest);
  const stopsShown = stopScale(day.takes);
  const files = packLinks(day, path);
  const exposure = exposureTable(day, path);
  const notExposed = notExposedSentence(day);
  const shown = shownSlates(day).flatMap(({ takes }) => takes);
  const takesFile = packFileLink(site, summary.date, path, "takes.csv");
  return {
    ...pageBase(
      { path, title: dayTitle(record), trail: [{ label: dayShort(ref), path }], styles: ["day.css", "long-text.css"] },
      site,
    ),
    ...dayHead(record, site),
    turns: dayTurns(day, path),
    strip: [
      ...hourFacts(record).slice(0, 3),
      fact("Slates", thousands(summary.totals.slates)),
      fact("Takes", thousands(summary.totals.takes), { source: `in ${plural(summary.totals.clips, "clip")}` }),
      fact("Circled", thousands(summary.totals.circled), { source: summary.totals.circled === 1 ? "take" : "takes" }),
      factOr("Frames logged", loggedShare(day), NOT_RECORDED),
    ],
    findingParts: countParts(summary.findingCounts),
    hasFindings: summary.findings.length > 0,
    findingsHref: hrefTo(path, dayPath(summary.date, "findings")),
    doors: doors(day, path),
    clock: svg(dayClock(summary, { width: CLOCK_WIDTH }), { idPrefix: "clock" }),
    clockNarrow: svg(dayClock(summary, { width: NARROW_CLOCK_WIDTH }), { idPrefix: "clock-narrow", decorative: true }),
    phone: { clock: svg(dayClockDown(summary, { width: PHONE_CLOCK_WIDTH }), { idPrefix: "clock-phone", decorative: true }) },
    timeScale: svg(rowTimeScale(scale), { idPrefix: "scale", decorative: true }),
    stopUnit: `T${stopsShown.widest} to T${stopsShown.deepest}`,
    focusUnit: focusColumnUnit(day),
    takesCaption: takesCaption(dayHeading(ref)),
    filters: filterBar(shown, day),
    takesFile: takesFile ?? { label: "", href: "", size: "" },
    hasTakesFile: takesFile !== undefined,
    slates: slateRows(day, path, { pixelsPerSecond: scale.pixelsPerSecond, stops: stopsShown }),
    hasTakes: day.takes.length > 0,
    more: shown.length === day.takes.length ? "" : moreWords(shown.length, day),
    allTakesHref: hrefTo(path, TAKES_PATH),
    emptySentence: `No takes. Neither notes.csv nor a log with a take was found in days/${summary.date}/.`,
    totals: totalFacts(day),
    lensUse: lensUseTable(day, path),
    hasLensUse: summary.lensUse.length > 0,
    exposure,
    hasExposure: exposure.rows.length > 0 || notExposed !== "",
    hasExposureRows: exposure.rows.length > 0,
    notExposed,
    exposureHref: hrefTo(path, METHODS_PATH, "relative-exposure"),
    rows: rowsTable(day),
    hasRows: summary.day.logs.length > 0,
    rowsSentence: rowsSentence(day),
    inputsHref: hrefTo(path, INPUTS_TABLE_PATH),
    files,
    hasFiles: files.length > 0,
    remarks: remarkFacts(day),
  };
}

/** Said over the takes when there are more than one page has room for. */
function moreWords(clips: number, day: DayContext): string {
  const slates = shownSlates(day).length;
  return `The first ${plural(clips, "clip")} of ${thousands(day.takes.length)} stand here: ${plural(slates, "slate")} of ${thousands(day.slates.length)}. The filters look through these.`;
}

/** "Day 9, 6 October 2026": the year makes it unique in a show that runs over one. */
export function dayTitle(record: DayRecord): string {
  return `${dayShort(record)} ${record.date.slice(0, 4)}`;
}

export interface DayHead {
  readonly heading: string;
  readonly of: string;
  readonly dateLong: string;
  readonly about: string;
}

export function dayHead(record: DayRecord, site: SiteContext): DayHead {
  const place = record.place === null ? "Place not recorded." : sentence(record.place);
  const unit = sentence(unitName(record.unit ?? site.show.unit));
  return {
    heading: dayHeading(record),
    of: record.of === null || record.day === null ? "" : `of ${record.of}`,
    dateLong: dateLong(record.date),
    about: `${place} ${unit}`,
  };
}

/** Call, first shot, wrap, meals: as written in the day's notes. */
export function hourFacts(r: DayRecord): readonly Fact[] {
  const hour = (term: string, minutes: number | null) =>
    factOr(term, minutes === null ? null : dayMinutes(minutes), NOT_RECORDED, { cls: "nb" });
  const meals = r.meals.map((m) => `${dayMinutes(m.out)} to ${m.in === null ? NOT_RECORDED : dayMinutes(m.in)}`);
  return [
    hour("Call", r.call),
    hour("First shot", r.firstShot),
    hour("Wrap", r.wrap),
    factOr(meals.length > 1 ? "Meals" : "Meal", meals.length === 0 ? null : meals.join(", "), NOT_RECORDED),
    hour("First after meal", r.firstAfterMeal),
  ];
}

function dayTurns(day: DayContext, path: string): readonly DayTurn[] {
  const { days } = day.site;
  const here = days.findIndex((d) => d.date === day.summary.date);
  const before = here > 0 ? days[here - 1] : undefined;
  const after = here >= 0 ? days[here + 1] : undefined;
  const turns: DayTurn[] = [];
  if (before !== undefined) {
    turns.push({
      label: `← ${lowerFirst(dayHeading(before))}`,
      name: `Previous day: ${dayShort(before)}`,
      href: hrefTo(path, dayPath(before.date)),
      rel: "prev",
    });
  }
  if (after !== undefined) {
    turns.push({
      label: `${lowerFirst(dayHeading(after))} →`,
      name: `Next day: ${dayShort(after)}`,
      href: hrefTo(path, dayPath(after.date)),
      rel: "next",
    });
  }
  return turns;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function remarkFacts(day: DayContext): readonly Fact[] {
  const r = day.summary.day.record;
  return [
    factOr("Remarks", r.remarks, NOT_RECORDED),
    factOr("Sound rolls", r.soundRolls.length === 0 ? null : r.soundRolls.join(", "), NOT_RECORDED),
    ...r.contacts.map((c) => fact(sentenceCase(tradeWords(c.role)), c.text)),
    ...r.clocks.map((c) =>
      fact(
        `Clock of camera ${c.camera}`,
        `log ${c.offsetFrames < 0 ? "minus" : "plus"} ${plural(Math.abs(c.offsetFrames), "frame")}${c.from === null ? "" : `, from ${c.from} on`}`,
      ),
    ),
  ];
}
