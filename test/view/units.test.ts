import { describe, expect, it } from "vitest";
import { focusRibbon } from "../../src/chart/ribbon/focus-ribbon.ts";
import { rowRibbon } from "../../src/chart/ribbon/row-ribbon.ts";
import { type DistanceSystem, type PageDistances, readerMayChoose, settled } from "../../src/format/units.ts";
import { dayContext } from "../../src/view/day/day-context.ts";
import { dayPage } from "../../src/view/day/day-page.ts";
import { dayPages } from "../../src/view/day-pages.ts";
import { editorialPage } from "../../src/view/readers/editorial-page.ts";
import { vfxPage } from "../../src/view/readers/vfx-page.ts";
import { takePage } from "../../src/view/take/take-page.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";

const summary = exampleDaySummary();
const SYSTEMS = ["metric", "imperial", "both"] as const;

function pagesFor(distances: PageDistances): unknown {
  const site = exampleContext(summary);
  const day = dayContext(summary, { ...site, show: { ...site.show, distances } });
  return [dayPage(day), editorialPage(day), vfxPage(day), ...day.takes.map((t) => takePage(t, day))];
}

/** Every text of a model by its place, drawings left out: their labels find room by the wider wording. */
function texts(model: unknown, place = "", into = new Map<string, string>()): Map<string, string> {
  if (typeof model === "string" && !model.startsWith("<svg") && !place.endsWith(".units")) into.set(place, model);
  else if (model !== null && typeof model === "object")
    for (const [key, value] of Object.entries(model)) texts(value, `${place}.${key}`, into);
  return into;
}

describe("pages whose reader may choose units", () => {
  it.each(SYSTEMS)("say in every text what the pages of a show in %s say", (system) => {
    const written = texts(pagesFor(system));
    for (const show of SYSTEMS) {
      const open = texts(pagesFor(readerMayChoose(show)));
      expect([...open.keys()]).toEqual([...written.keys()]);
      // a reader cannot ask for both where the show does not
      if (system === "both" && show !== "both") continue;
      for (const [place, text] of open) expect(settled(text, system), place).toBe(written.get(place));
    }
  });

  it("begin with the show's units and are made so by the day's set of pages", () => {
    const [sheet] = dayPages(summary, exampleContext(summary)).take ?? [];
    expect(sheet?.units).toBe("metric");
    expect([...texts(sheet).values()].some((text) => text !== settled(text))).toBe(true);
  });
});

describe("drawings whose reader may choose units", () => {
  const take = summary.takes.find((t) => t.perFrame !== null);
  if (take === undefined) throw new Error("no take with a log");
  const words = (drawing: ReturnType<typeof rowRibbon>, system: DistanceSystem) =>
    drawing.items.flatMap((item) =>
      item.type === "text" && (item.units ?? SYSTEMS).includes(system)
        ? [`${settled(item.text, system)} at ${item.x} ${item.y}`]
        : [],
    );

  it.each(["metric", "imperial"] as const)("have the axis and grid of %s for who wants them", (system) => {
    const axis = (distances: PageDistances) => focusRibbon(take, { width: 1180, distances }).leftAxis;
    expect(words(axis("reader-metric"), system).sort()).toEqual(words(axis(system), system).sort());
    const row = (distances: PageDistances) =>
      rowRibbon(take, { pixelsPerSecond: 3, height: 57, firstRow: true, distances, width: 400 });
    expect(words(row("reader-imperial"), system)).toEqual(words(row(system), system));
  });
});
