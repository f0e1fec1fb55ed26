/** All pages of one day. */
import { readerMayChoose, showsWish } from "../format/units.ts";
import type { DaySummary } from "../summary/types.ts";
import type { PageSet, SiteContext } from "./context.ts";
import { dayContext } from "./day/day-context.ts";
import { dayPage } from "./day/day-page.ts";
import { dayFindingsPage } from "./findings/day-findings-page.ts";
import { deepFreeze } from "./freeze.ts";
import { platePages } from "./plate/plate-page.ts";
import { editorialPage } from "./readers/editorial-page.ts";
import { vfxPage } from "./readers/vfx-page.ts";
import { linkTableFiles } from "./table-files.ts";
import { takePage } from "./take/take-page.ts";

/** The context of pages whose reader may choose between metric and imperial. */
export function forReaders(context: SiteContext): SiteContext {
  return { ...context, show: { ...context.show, distances: readerMayChoose(showsWish(context.show.distances)) } };
}

/**
 * View models of a day: its page, a sheet a take (not for a row whose address an earlier row has), the pages for
 * editorial and VFX, a sheet a plate set-up, and its findings. Frozen; every text ready to print.
 */
export function dayPages(summary: DaySummary, context: SiteContext): PageSet {
  const day = dayContext(summary, forReaders(context));
  return deepFreeze(
    linkTableFiles({
      day: [dayPage(day)],
      take: day.takes.map((t) => takePage(t, day)),
      editorial: [editorialPage(day)],
      vfx: [vfxPage(day)],
      plate: platePages(day),
      "day-findings": [dayFindingsPage(day)],
    }),
  );
}
