/** All pages that belong to the whole show. */
import type { ShowInput } from "../ingest/records.ts";
import { calibrationCoverage } from "../summary/coverage.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import { progress } from "../summary/progress.ts";
import type { PageSet, SiteContext } from "./context.ts";
import { forReaders } from "./day-pages.ts";
import { findingsPage } from "./findings/findings-page.ts";
import { deepFreeze } from "./freeze.ts";
import { kitPage } from "./kit/kit-page.ts";
import { lensPage } from "./kit/lens-page.ts";
import { lensPaths } from "./links.ts";
import { productionPage } from "./readers/production-page.ts";
import { aboutPage } from "./show/about-page.ts";
import { clipsPage } from "./show/clips-page.ts";
import { homePage } from "./show/home-page.ts";
import { methodsPage } from "./show/methods-page.ts";
import { platesPage } from "./show/plates-page.ts";
import { scenesPage } from "./show/scenes-page.ts";
import { showProductionPage } from "./show/show-production-page.ts";
import { takesIndexPage } from "./show/takes-index-page.ts";
import { linkTableFiles } from "./table-files.ts";

/**
 * View models of the show-wide pages, made from what each day left behind: the first page, kit, a page a lens, all
 * findings with the glossary, all takes, words and methods, scenes, plates, clips, production of each day and to date, and about the report. Frozen; every text ready to print.
 */
export function showPages(digests: readonly DayDigest[], show: ShowInput, site: SiteContext): PageSet {
  const context = forReaders(site);
  const paths = lensPaths(show.kit);
  const coverages = calibrationCoverage(show.kit, digests);
  const first = show.kit.lenses.map((lens) => show.kit.lenses.findIndex((other) => other.id === lens.id));
  const lenses = show.kit.lenses.flatMap((lens, i) => {
    const coverage = coverages[i];
    // a row whose id an earlier row has gets no page of its own
    return first[i] !== i || coverage === undefined ? [] : [{ lens, coverage }];
  });
  const days = progress(digests);
  return deepFreeze(
    linkTableFiles({
      home: [homePage(digests, show, context)],
      kit: [
        kitPage(
          show,
          lenses.map(({ coverage }) => coverage),
          context,
        ),
      ],
      lens: lenses.map(({ lens, coverage }) =>
        lensPage(lens, paths.get(lens.id) ?? "lenses/lens.html", { digests, show, coverage }, context),
      ),
      findings: [findingsPage(digests, context)],
      "takes-index": [takesIndexPage(digests, show.kit, context)],
      methods: [methodsPage(context)],
      scenes: [scenesPage(digests, show.kit, context)],
      plates: [platesPage(digests, show.kit, context)],
      clips: [clipsPage(digests, show.kit, context)],
      production: digests.map((digest) => productionPage(digest, days, show.kit, context)),
      "show-production": [showProductionPage(digests, context)],
      about: [aboutPage(digests, show, context)],
    }),
  );
}
