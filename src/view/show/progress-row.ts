/** A day of the show's production page as a row: its own figures, then those of all days so far. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { dateShort, dayMinutes, minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import { type DayProgress, type ProgressFigures, sumOfDays } from "../../summary/progress.ts";
import { dayPath, hrefTo, SHOW_PRODUCTION_PATH } from "../links.ts";
import { dayHeading, dayInSentence } from "../names.ts";
import { type Cell, type Column, cell, column, num, numOr, type Row, row, textOr } from "../table.ts";

/** Cameras with a column of their own; the rest share one. */
const MOST_CAMERAS = 3;
const TO_DATE = "to date";

export function progressColumns(cameras: readonly string[]): readonly Column[] {
  return [
    column("Day"),
    column("First shot", { num: true }),
    column("Wrap", { num: true }),
    column("Pages", { unit: "scheduled", num: true }),
    column("Pages", { unit: "completed", num: true }),
    column("Completed", { unit: TO_DATE, num: true }),
    column("Remaining", { unit: TO_DATE, num: true }),
    column("Set-ups", { num: true }),
    column("Set-ups", { unit: TO_DATE, num: true }),
    column("Takes", { num: true }),
    column("Takes", { unit: TO_DATE, num: true }),
    column("Circled", { num: true }),
    column("Circled", { unit: TO_DATE, num: true }),
    ...cameras.slice(0, MOST_CAMERAS).map((camera) => column(`Camera ${camera}`, { unit: "min:s", num: true })),
    ...(cameras.length > MOST_CAMERAS ? [column("Other cameras", { unit: "min:s", num: true })] : []),
    column("Media", { unit: `min:s, ${TO_DATE}`, num: true }),
    column("Ratio", { unit: "to 1", num: true }),
    column("Ratio", { unit: TO_DATE, num: true }),
    column("Findings", { unit: "to answer", num: true }),
  ];
}

export function progressRow(day: DayProgress, cameras: readonly string[]): Row {
  const { own, toDate, record, date, open } = day;
  const asked = open.error + open.check;
  const name = { nb: true, href: hrefTo(SHOW_PRODUCTION_PATH, dayPath(date, "production")) };
  return row(cell(dayHeading(day), day.day === null ? name : { ...name, note: dateShort(date) }), [
    numOr(record.firstShot === null ? null : dayMinutes(record.firstShot), NOT_RECORDED),
    numOr(record.wrap === null ? null : dayMinutes(record.wrap), NOT_RECORDED),
    ...figureCells(own, toDate, day.eighthsRemaining, cameras),
    asked === 0 ? num("0") : cell(thousands(asked), { num: true, href: hrefTo(SHOW_PRODUCTION_PATH, dayPath(date, "findings")) }),
  ]);
}

/** Days that have no room on the sheet, as one row. */
export function sumRow(days: readonly DayProgress[], cameras: readonly string[]): Row {
  const own = sumOfDays(days);
  const last = days.at(-1);
  const toDate = last?.toDate ?? own;
  const open = days.reduce((sum, day) => sum + day.open.error + day.open.check, 0);
  const name = last === undefined ? "" : `${plural(days.length, "day")} until ${dayInSentence(last)}`;
  return row(cell(name), [
    cell("below", { num: true }),
    cell("below", { num: true }),
    ...figureCells(own, toDate, last?.eighthsRemaining ?? null, cameras),
    num(thousands(open)),
  ]);
}

/** The cells from the pages to the ratios, alike for a day and for the days that are summed. */
function figureCells(
  own: ProgressFigures,
  toDate: ProgressFigures,
  eighthsRemaining: number | null,
  cameras: readonly string[],
): readonly Cell[] {
  return [
    pagesCell(own.eighthsScheduled),
    pagesCell(own.eighthsCompleted),
    pagesCell(toDate.eighthsCompleted),
    pagesCell(eighthsRemaining),
    ...pair(own.setups, toDate.setups),
    ...pair(own.takes, toDate.takes),
    ...pair(own.circled, toDate.circled),
    ...cameraCells(own, cameras),
    num(minutesSeconds(toDate.mediaSeconds)),
    ratioCell(own),
    ratioCell(toDate),
  ];
}

function pair(own: number, toDate: number): readonly Cell[] {
  return [num(thousands(own)), num(thousands(toDate))];
}

function pagesCell(count: number | null): Cell {
  return numOr(count === null ? null : eighths(count), NOT_RECORDED);
}

function ratioCell({ shootingRatio }: ProgressFigures): Cell {
  return textOr(shootingRatio === null ? null : fixed(shootingRatio, 1), "none circled", { num: true });
}

/** A camera that did not roll on the day says so. */
function cameraCells({ cameraSeconds }: ProgressFigures, cameras: readonly string[]): readonly Cell[] {
  const of = (letters: readonly string[]) => {
    const known = letters.flatMap((letter) => cameraSeconds[letter] ?? []);
    return known.length === 0 ? null : minutesSeconds(known.reduce((sum, seconds) => sum + seconds, 0));
  };
  const rest = cameras.slice(MOST_CAMERAS);
  const cells = cameras.slice(0, MOST_CAMERAS).map((camera) => numOr(of([camera]), "none"));
  return rest.length === 0 ? cells : [...cells, numOr(of(rest), "none")];
}
