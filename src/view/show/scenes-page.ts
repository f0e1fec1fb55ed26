/** Every scene of the show over all days: what was scheduled, what was shot, on which days and slates, with which lenses. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { fixed, thousands } from "../../format/number.ts";
import { eighths } from "../../format/pages.ts";
import { minutesSeconds } from "../../format/time.ts";
import { listWords, plural } from "../../format/words.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import { progress } from "../../summary/progress.ts";
import { type SceneFigures, sceneFigures } from "../../summary/scenes.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { slatesShown } from "../day/slates-shown.ts";
import { type Fact, fact, factOr } from "../facts.ts";
import { dayPath, foldName, freeName, hrefTo, lensPaths, SCENES_PATH, slateAnchors, takePath } from "../links.ts";
import { dayHeading, dayInSentence } from "../names.ts";
import { pageBase } from "../page.ts";
import { type Cell, type CellLink, cell, column, num, numOr, type Row, row, type TableModel, table, textOr } from "../table.ts";

export interface ScenesPage extends PageModel {
  readonly strip: readonly Fact[];
  readonly scenes: TableModel;
  readonly hasScenes: boolean;
}

export function scenesPage(digests: readonly DayDigest[], kit: Kit, context: SiteContext): ScenesPage {
  const scenes = sceneFigures(digests);
  const places = {
    days: new Map(digests.map((d) => [d.date, d])),
    lenses: lensPaths(kit),
    slates: new Map(digests.map((d) => [d.date, slateHrefs(d)])),
  };
  const ids = new Set<string>();
  return {
    ...pageBase(
      {
        path: SCENES_PATH,
        title: "Scenes",
        trail: [{ label: "Scenes", path: SCENES_PATH }],
        styles: ["home.css", "wide.css", "show.css"],
        landscape: true,
      },
      context,
    ),
    strip: strip(scenes, digests),
    scenes: table(
      "scenes-table",
      "Scenes of the show over all days",
      [
        column("Scene"),
        column("Set-ups", { num: true }),
        column("Takes", { num: true }),
        column("Circled", { num: true }),
        column("Media", { unit: "min:s", num: true }),
        column("Scheduled", { unit: "pages", num: true }),
        column("Completed", { unit: "pages", num: true }),
        column("Status"),
        column("Days and slates"),
        column("Lenses"),
        column("Exposure", { unit: "spread in stops, darkest to brightest" }),
      ],
      scenes.map((scene) => sceneRow(scene, places, ids)),
      { cls: "plain scene-table" },
    ),
    hasScenes: scenes.length > 0,
  };
}

interface Places {
  readonly days: ReadonlyMap<string, DayDigest>;
  readonly lenses: ReadonlyMap<string, string>;
  /** Href of each slate of each day. */
  readonly slates: ReadonlyMap<string, ReadonlyMap<string, string>>;
}

/** The rows of a slate on its day page; its first take where that page has no room for it. */
function slateHrefs({ date, takes }: DayDigest): ReadonlyMap<string, string> {
  const slates = takes.map((take) => take.slate);
  const shown = slatesShown(slates);
  const firsts = new Map([...takes].reverse().map((take) => [take.slate, take.address]));
  return new Map(
    [...slateAnchors(slates)].map(([slate, anchor]) => [
      slate,
      shown.has(slate) ? hrefTo(SCENES_PATH, dayPath(date), anchor) : hrefTo(SCENES_PATH, takePath(date, firsts.get(slate) ?? "")),
    ]),
  );
}

function strip(scenes: readonly SceneFigures[], digests: readonly DayDigest[]): readonly Fact[] {
  const named = scenes.filter((scene) => scene.scene !== null);
  const last = progress(digests).at(-1);
  const pages = (count: number | null | undefined) => (count == null ? null : eighths(count));
  const without = scenes.find((scene) => scene.scene === null)?.takes ?? 0;
  return [
    fact("Scenes", thousands(named.length), { source: `${named.filter((s) => s.setups > 0).length} shot, whole or in part` }),
    fact("Completed", thousands(named.filter((s) => s.completedOn !== null).length), { source: "as the day files say" }),
    factOr("Pages scheduled so far", pages(last?.toDate.eighthsScheduled), NOT_RECORDED, { source: "each scene once" }),
    factOr("Pages completed", pages(last?.toDate.eighthsCompleted), NOT_RECORDED, { source: "completed scenes only" }),
    factOr("Pages remaining", pages(last?.eighthsRemaining), NOT_RECORDED, { source: "of what was scheduled so far" }),
    fact("Without a scene", plural(without, "take"), {
      source: without === 0 ? "every take names its scene" : "their notes name none",
    }),
  ];
}

function sceneRow(figures: SceneFigures, places: Places, ids: Set<string>): Row {
  const { scene } = figures;
  const id = scene === null ? "no-scene" : `scene-${foldName(scene)}`;
  return row(
    textOr(scene, "no scene noted"),
    [
      num(thousands(figures.setups)),
      num(thousands(figures.takes)),
      num(thousands(figures.circled)),
      num(minutesSeconds(figures.mediaSeconds)),
      numOr(figures.eighths === null ? null : eighths(figures.eighths), NOT_RECORDED),
      completedCell(figures),
      statusCell(figures, places),
      daysCell(figures, places),
      lensesCell(figures, places),
      exposureCell(figures),
    ],
    freeName(id, ids),
  );
}

function completedCell({ completedOn, eighths: pages, result }: SceneFigures): Cell {
  if (completedOn === null) return result === null ? numOr(null, NOT_RECORDED) : num("0");
  return numOr(pages === null ? null : eighths(pages), NOT_RECORDED);
}

function statusCell({ completedOn, result }: SceneFigures, places: Places): Cell {
  const day = completedOn === null ? undefined : places.days.get(completedOn);
  if (day !== undefined) return cell("completed", { note: dayInSentence(day) });
  return textOr(result, NOT_RECORDED);
}

/** "Day 11: 14, 14A; Day 12: nothing shot", each part a link. */
function daysCell({ days }: SceneFigures, places: Places): Cell {
  const links = days.flatMap((day, i): readonly CellLink[] => {
    const path = dayPath(day.date);
    const hrefs = places.slates.get(day.date);
    return [
      { before: i === 0 ? "" : "; ", label: dayHeading(day), href: hrefTo(SCENES_PATH, path) },
      ...day.slates.map((slate, n) => ({
        before: n === 0 ? ": " : ", ",
        label: slate,
        href: hrefs?.get(slate) ?? hrefTo(SCENES_PATH, path),
      })),
    ];
  });
  return cell("", { links, note: nothingShot(days) });
}

function nothingShot(days: SceneFigures["days"]): string {
  const empty = days.filter((day) => day.slates.length === 0);
  if (empty.length === 0) return "";
  return empty.length === days.length ? "nothing shot" : `nothing shot on ${listWords(empty.map(dayInSentence))}`;
}

function lensesCell({ lenses, takes }: SceneFigures, places: Places): Cell {
  if (lenses.length === 0) return takes === 0 ? cell("none") : cell(NOT_RECORDED, { absent: true });
  const links = lenses.flatMap((lens, i): readonly CellLink[] => {
    const path = places.lenses.get(lens);
    return path === undefined ? [] : [{ before: i === 0 ? "" : ", ", label: lens, href: hrefTo(SCENES_PATH, path) }];
  });
  if (links.length === lenses.length) return cell("", { links });
  return cell(lenses.filter((lens) => !places.lenses.has(lens)).join(", "), {
    links: links.map((link, i) => ({ ...link, before: i === 0 ? ", " : link.before })),
  });
}

function exposureCell({ exposure, setups }: SceneFigures): Cell {
  if (exposure === null) {
    return cell(setups < 2 ? "fewer than two set-ups" : "not all recorded", { absent: true });
  }
  const apart = exposure.spreadStops >= 0.005;
  const note = [
    apart ? `${exposure.darkest} to ${exposure.brightest}` : "all alike",
    exposure.of === "light" ? "" : exposure.of,
    exposure.leftOut === 0 ? "" : `${exposure.leftOut} left out`,
  ];
  return cell(fixed(exposure.spreadStops, 2), { note: note.filter((words) => words !== "").join(", ") });
}
