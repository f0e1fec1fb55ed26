/** All pages that belong to the whole show. */
import type { ShowInput } from "../ingest/records.ts";
import type { DayDigest } from "../summary/types.ts";
import type { PageSet, SiteContext } from "./context.ts";
import { findingsPage } from "./findings-page.ts";
import { deepFreeze } from "./freeze.ts";
import { homePage } from "./home-page.ts";
import { kitPage } from "./kit-page.ts";
import { lensPage } from "./lens-page.ts";
import { lensPaths } from "./links.ts";
import { methodsPage } from "./methods-page.ts";

/**
 * View models of the show-wide pages, made from what each day left behind: the first page, kit, a page a lens, all
 * findings with the glossary, words and methods. Frozen; every text ready to print.
 */
export function showPages(digests: readonly DayDigest[], show: ShowInput, context: SiteContext): PageSet {
  const paths = lensPaths(show.kit);
  const lenses = show.kit.lenses.filter((lens, i, all) => all.findIndex((other) => other.id === lens.id) === i);
  return deepFreeze({
    home: [homePage(digests, show, context)],
    kit: [kitPage(show, context)],
    lens: lenses.map((lens) => lensPage(lens, paths.get(lens.id) ?? "lenses/lens.html", digests, show, context)),
    findings: [findingsPage(digests, context)],
    methods: [methodsPage(context)],
  });
}
