/** The first page of the show: the shooting days, the totals, a door for each reader. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { fileSize } from "../../format/amounts.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { share } from "../../format/percent.ts";
import { dateLong, dateShort, minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { ShowInput } from "../../ingest/records.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import { weeksOf } from "../calendar.ts";
import type { PageModel, SiteContext } from "../context.ts";
import type { Door } from "../day/day-files.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import { fileLink } from "../files.ts";
import { type CountPart, countParts } from "../findings/findings.ts";
import {
  ABOUT_PATH,
  CLIPS_PATH,
  dayPath,
  FINDINGS_PATH,
  HOME_PATH,
  hrefTo,
  KIT_PATH,
  METHODS_PATH,
  PLATES_PATH,
  packPath,
  SCENES_PATH,
  SHOW_PRODUCTION_PATH,
} from "../links.ts";
import { dayHeading, dayShort, sentence, unitName } from "../names.ts";
import { packBytes } from "../pack-size.ts";
import { pageBase } from "../page.ts";
import { type LastChangeView, lastChangeView } from "./last-change.ts";

export interface CalendarDay {
  /** "6" or, on the first of a month or of the strip, "1 Oct". */
  readonly label: string;
  readonly shot: boolean;
  readonly href: string;
  readonly name: string;
  readonly words: string;
}

export interface DayEntry {
  readonly href: string;
  readonly heading: string;
  readonly date: string;
  readonly place: string;
  readonly placeCls: string;
  readonly slates: string;
  readonly takes: string;
  readonly circled: string;
  readonly media: string;
  readonly logged: string;
  readonly findingParts: readonly CountPart[];
  readonly hasFindings: boolean;
  readonly findingsHref: string;
  readonly doors: readonly { readonly label: string; readonly name: string; readonly href: string }[];
  readonly pdf: string;
  readonly hasPdf: boolean;
  readonly pdfHref: string;
  readonly pdfName: string;
  /** Size of the day's pack. */
  readonly pack: string;
  readonly packCls: string;
  /** To its README, which says what each file is. */
  readonly packHref: string;
  readonly hasPackHref: boolean;
  readonly packName: string;
}

export interface HomePage extends PageModel {
  readonly about: string;
  readonly strip: readonly Fact[];
  readonly weeks: readonly (readonly CalendarDay[])[];
  readonly weekdays: readonly string[];
  readonly days: readonly DayEntry[];
  readonly hasDays: boolean;
  readonly emptySentence: string;
  readonly doors: readonly Door[];
  readonly hasDoors: boolean;
  readonly change: LastChangeView;
  readonly hasChange: boolean;
  readonly more: readonly { readonly label: string; readonly href: string; readonly about: string }[];
}

export function homePage(digests: readonly DayDigest[], show: ShowInput, context: SiteContext): HomePage {
  const { title, production, unit } = show.show;
  const change = lastChangeView(digests, context);
  return {
    ...pageBase({ path: HOME_PATH, title, trail: [], styles: ["day.css", "home.css"] }, context),
    about: [production === null ? "Production not recorded." : sentence(production), sentence(unitName(unit))].join(" "),
    strip: totals(digests),
    weeks: weeks(digests),
    weekdays: ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"],
    days: digests.map(dayEntry),
    hasDays: digests.length > 0,
    emptySentence: "No shooting day yet. A day is a folder under days/ named by its date, with notes.csv or a log.",
    doors: homeDoors(digests),
    hasDoors: digests.length > 0,
    change: change ?? { sentence: "", lines: [], hasLines: false, more: "" },
    hasChange: change !== null,
    more: [
      { label: "Scenes", href: SCENES_PATH, about: "Every scene over all days: pages, set-ups, takes, lenses, exposure." },
      { label: "Plates", href: PLATES_PATH, about: "Every plate with its hero, how it was shot, and what is missing." },
      { label: "Clips", href: CLIPS_PATH, about: "Every clip by its name, with its timecodes; and as a table." },
      { label: "Production to date", href: SHOW_PRODUCTION_PATH, about: "Each day and all days so far, on one sheet." },
      { label: "Kit", href: KIT_PATH, about: "Cameras and lenses, how alike the set is, what is calibrated." },
      { label: "Findings", href: FINDINGS_PATH, about: "What was noticed on all days, and what each code means." },
      { label: "Words and methods", href: METHODS_PATH, about: "How every figure is computed, with its formula and source." },
      { label: "About this report", href: ABOUT_PATH, about: "What it was made from, what its files are, how to check a pack." },
    ],
  };
}

function totals(digests: readonly DayDigest[]): readonly Fact[] {
  const sum = (of: (d: DayDigest) => number) => digests.reduce((total, d) => total + of(d), 0);
  const media = sum((d) => d.totals.mediaSeconds);
  const circled = sum((d) => d.totals.circledSeconds);
  const expected = sum((d) => d.totals.framesExpected);
  const logged = sum((d) => d.totals.framesLogged);
  const loggedShare = expected === 0 ? null : share(logged, expected);
  return [
    fact("Shooting days", thousands(digests.length)),
    fact("Slates", thousands(sum((d) => d.totals.slates))),
    fact("Takes", thousands(sum((d) => d.totals.takes)), {
      source: `in ${plural(
        sum((d) => d.totals.clips),
        "clip",
      )}`,
    }),
    fact("Circled", thousands(sum((d) => d.totals.circled)), { source: `${minutesSeconds(circled)} min:s` }),
    fact("Media", minutesSeconds(media), { source: "min:s, all cameras" }),
    factOr("Shooting ratio", circled === 0 ? null : `${fixed(media / circled, 1)} : 1`, "no circled take", {
      source: "calculated",
    }),
    factOr("Frames logged", loggedShare, NOT_RECORDED, { source: `${thousands(logged)} of ${thousands(expected)}` }),
  ];
}

function weeks(digests: readonly DayDigest[]): readonly (readonly CalendarDay[])[] {
  const byDate = new Map(digests.map((d) => [d.date, d]));
  return weeksOf(digests.map((d) => d.date)).map((week) =>
    week.map((date, i): CalendarDay => {
      const digest = byDate.get(date);
      const month = i === 0 || date.endsWith("-01");
      const label = month ? dateShort(date) : String(Number(date.slice(8)));
      if (digest === undefined) return { label, shot: false, href: "", name: "", words: "" };
      return {
        label,
        shot: true,
        href: hrefTo(HOME_PATH, dayPath(date)),
        name: dayHeading(digest),
        words: plural(digest.totals.takes, "take"),
      };
    }),
  );
}

function dayEntry(d: DayDigest): DayEntry {
  const { framesExpected, framesLogged } = d.totals;
  const link = (name: "editorial" | "vfx" | "production") => hrefTo(HOME_PATH, dayPath(d.date, name));
  const pdf = d.packFiles.find((file) => file.name.endsWith("-camera-report.pdf"));
  const pdfLink = pdf === undefined ? null : fileLink(pdf, d.date, HOME_PATH);
  const guide = d.packFiles.find((file) => file.name === "README.txt");
  const name = dayShort(d);
  return {
    href: hrefTo(HOME_PATH, dayPath(d.date)),
    heading: dayHeading(d),
    date: dateLong(d.date),
    place: d.record.place ?? NOT_RECORDED,
    placeCls: d.record.place === null ? "absent" : "place",
    slates: thousands(d.totals.slates),
    takes: thousands(d.totals.takes),
    circled: thousands(d.totals.circled),
    media: minutesSeconds(d.totals.mediaSeconds),
    logged: framesExpected === 0 ? NOT_RECORDED : share(framesLogged, framesExpected),
    findingParts: countParts(d.findingCounts),
    hasFindings: d.findings.length > 0,
    findingsHref: hrefTo(HOME_PATH, dayPath(d.date, "findings")),
    doors: [
      { label: "Editorial", name, href: link("editorial") },
      { label: "VFX", name, href: link("vfx") },
      { label: "Production", name, href: link("production") },
    ],
    pdf: pdfLink === null ? "not written" : pdfLink.size,
    hasPdf: pdfLink !== null,
    pdfHref: pdfLink?.href ?? "",
    pdfName: `camera report, ${name}`,
    pack: d.packFiles.length === 0 ? "not written" : fileSize(packBytes(d)),
    packCls: d.packFiles.length === 0 ? "absent" : "nb",
    packHref: guide === undefined ? "" : hrefTo(HOME_PATH, packPath(d.date, guide.name)),
    hasPackHref: guide !== undefined,
    packName: `pack of ${name}: what is in it`,
  };
}

/** Doors of the show: the newest day first in mind, the way to every other day in the table below. */
function homeDoors(digests: readonly DayDigest[]): readonly Door[] {
  const latest = [...digests].reverse().slice(0, 3);
  const door = (
    id: string,
    title: string,
    name: "editorial" | "vfx" | "production",
    about: string,
    what: (d: DayDigest) => string,
  ): Door => {
    const first = latest[0];
    return {
      id,
      title,
      href: first === undefined ? "" : hrefTo(HOME_PATH, dayPath(first.date, name)),
      about,
      files: latest.map((d) => ({
        label: dayShort(d),
        href: hrefTo(HOME_PATH, dayPath(d.date, name)),
        size: what(d),
      })),
    };
  };
  return [
    door(
      "door-editorial",
      "Editorial",
      "editorial",
      "Circled takes with slate, clip and timecode, day by day; what changed inside a take.",
      (d) => `${thousands(d.totals.circled)} circled`,
    ),
    door(
      "door-vfx",
      "VFX",
      "vfx",
      "Plates with hero and clean side by side: lens, focus, stop, and the files that take distortion and shading off and put them back.",
      (d) => plural(d.takes.filter((t) => t.plate !== null).length, "plate"),
    ),
    door(
      "door-production",
      "Production",
      "production",
      "A day on one page: hours, scenes and pages, media, lens use, what needs an answer.",
      pagesWords,
    ),
  ];
}

function pagesWords({ totals }: DayDigest): string {
  return totals.eighthsCompleted === null ? `pages ${NOT_RECORDED}` : `${eighths(totals.eighthsCompleted)} pages completed`;
}
