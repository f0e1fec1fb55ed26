/** All pages of a show at once, for the site generator run by hand; the command goes day by day instead. */
import { sha256 } from "../core/hash.ts";
import { canonicalJson } from "../core/stable-json.ts";
import { readDay } from "../ingest/read-day.ts";
import { readShow } from "../ingest/read-show.ts";
import { buildDay } from "../model/build-day.ts";
import { checkAcrossDays } from "../model/checks/across-days.ts";
import { summariseDay } from "../summary/day.ts";
import { digestDay } from "../summary/digest.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import type { PageKind, PageModel, PageSet, SiteContext } from "../view/context.ts";
import { dayPages } from "../view/day-pages.ts";
import { showPages } from "../view/show-pages.ts";
import { dayNumber } from "./day-number.ts";
import { thisTool } from "./program.ts";
import { showFiles } from "./show-files.ts";
import { showTexts } from "./show-texts.ts";
import { dayStills } from "./stills.ts";
import { takeDataFiles } from "./take-data-files.ts";

export interface WholeSite {
  readonly pages: PageSet;
  /** What the pages need beside them, by its path below the output folder: stills, data of takes, what search reads, tables. */
  readonly files: readonly { readonly path: string; readonly bytes: Uint8Array }[];
}

/**
 * Reads the show folder at `path` and makes the view models of every page, show-wide ones included, and the files beside
 * them. No pack is written, so the pages offer no files of one. Throws when `show.yaml` cannot be used.
 */
export async function wholeSite(path: string): Promise<WholeSite> {
  const folder = showFiles(path);
  const { input: show, findings: showFindings } = readShow(folder);
  if (show === null) throw new Error(`${path}: ${showFindings[0]?.message ?? "show.yaml cannot be used"}`);
  const days = show.dates.map((date) => ({ date, day: dayNumber(folder, date) }));
  const site: SiteContext = { tool: thisTool(), buildId: "", show: show.show, days, packFiles: [], showFindings };
  const sets: PageSet[] = [];
  const digests: DayDigest[] = [];
  const beside: { readonly path: string; readonly bytes: Uint8Array }[] = [];
  const hashes = show.files.map(({ file, sha256: hash }) => ({ file, hash }));
  for (const date of show.dates) {
    const { input, findings } = readDay(folder, show, date);
    const summary = summariseDay(buildDay(show, input, findings), show.kit);
    const files = input.files.map(({ file, sha256: hash }) => ({ file, hash }));
    hashes.push(...files);
    const stills = dayStills(date, summary.takes, folder);
    const buildId = contentId({ tool: site.tool, files });
    sets.push(dayPages(summary, { ...site, buildId, stills: stills.byTake, dataScripts: true }));
    beside.push(...stills.files, ...takeDataFiles(summary, show.show.distances, stills.byTake));
    digests.push(digestDay(summary, []));
  }
  const across = checkAcrossDays(digests, show.show.accepted);
  const texts = showTexts(digests, show).map(({ path: name, text }) => ({ path: name, bytes: Buffer.from(text) }));
  beside.push(...texts);
  const showTables = texts.map(({ path: name, bytes }) => ({ name, bytes: bytes.length }));
  sets.push(
    showPages(digests, show, {
      ...site,
      showFindings: [...showFindings, ...across],
      buildId: contentId({ tool: site.tool, files: hashes }),
      showTables,
    }),
  );
  return { pages: join(sets), files: beside };
}

function contentId(content: unknown): string {
  return sha256(canonicalJson(content)).slice(0, 12);
}

function join(sets: readonly PageSet[]): PageSet {
  const joined: Partial<Record<PageKind, PageModel[]>> = {};
  for (const set of sets) {
    for (const [kind, pages] of Object.entries(set) as [PageKind, readonly PageModel[]][]) {
      joined[kind] = [...(joined[kind] ?? []), ...pages];
    }
  }
  for (const pages of Object.values(joined)) Object.freeze(pages);
  return Object.freeze(joined);
}
