/** All pages of one day. */
import type { DaySummary } from "../summary/types.ts";
import type { PageSet, SiteContext } from "./context.ts";
import { dayContext } from "./day-context.ts";
import { dayFindingsPage } from "./day-findings-page.ts";
import { dayPage } from "./day-page.ts";
import { editorialPage } from "./editorial-page.ts";
import { deepFreeze } from "./freeze.ts";
import { productionPage } from "./production-page.ts";
import { takePage } from "./take-page.ts";
import { vfxPage } from "./vfx-page.ts";

/**
 * View models of a day: its page, a sheet a take (not for a row whose address an earlier row has), the pages for
 * editorial, VFX and production, and its findings. Frozen; every text ready to print.
 */
export function dayPages(summary: DaySummary, context: SiteContext): PageSet {
  const day = dayContext(summary, context);
  return deepFreeze({
    day: [dayPage(day)],
    take: day.takes.map((t) => takePage(t, day)),
    editorial: [editorialPage(day)],
    vfx: [vfxPage(day)],
    production: [productionPage(day)],
    "day-findings": [dayFindingsPage(day)],
  });
}
