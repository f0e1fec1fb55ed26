/** What the pages need beside the summaries, and what a set of pages is. */
import type { Finding } from "../core/finding.ts";
import type { DistanceSystem, PageDistances } from "../format/units.ts";
import type { ShowRecord } from "../ingest/records.ts";

/** A shooting day as the other days' pages know it. */
export interface DayRef {
  readonly date: string;
  readonly day: number | null;
}

/** A file of a day's pack; `name` is relative to `packs/<date>/`, with `/`. */
export interface PackFile {
  readonly name: string;
  readonly bytes: number;
}

/** A take's still as the report holds it. Paths are below the output folder. */
export interface StillFiles {
  /** Name in the day's `stills/` folder. */
  readonly name: string;
  readonly path: string;
  readonly bytes: number;
  /** `null` for a picture that browsers do not show, such as an EXR. */
  readonly size: { readonly widthPx: number; readonly heightPx: number } | null;
  /** The still with parts of the lens look taken off; `null` where that picture was not made. */
  readonly shadingOff: string | null;
  readonly distortionOff: string | null;
  readonly bothOff: string | null;
  /** Why no such picture was made, in a sentence; empty when they were, or when there is no look to take off. */
  readonly whyNone: string;
  /** Script that carries the still as data, for the canvas of the take's page; `null` or absent without one. */
  readonly script?: string | null;
}

/** A day that the last change of the input touched. */
export interface ChangedDay extends DayRef {
  readonly what: "new" | "changed" | "gone";
  /** Such as "notes.csv changed"; empty for a new day. */
  readonly reason: string;
}

/** Which days differ from what was built before, by the content of their input. */
export interface LastChange {
  /** Nothing was built here before. */
  readonly first: boolean;
  readonly days: readonly ChangedDay[];
}

/** A day's pack as it lies in the report. */
export interface DayPack {
  readonly date: string;
  /** As in its PDF. */
  readonly id: string;
  /** Lists of its hash list so far; 0 without one. */
  readonly generation: number;
}

export interface SiteContext {
  readonly tool: { readonly name: string; readonly version: string };
  /** Id made from content, never from the clock. */
  readonly buildId: string;
  /** With how the pages write distances: as the show wants, or so that the reader may choose. */
  readonly show: Omit<ShowRecord, "distances"> & { readonly distances: PageDistances };
  /** All days of the show, in order of date. */
  readonly days: readonly DayRef[];
  /** Files of the pack of the day that is rendered; empty for show-wide pages. */
  readonly packFiles: readonly PackFile[];
  /** Stills of the day that is rendered, by the address of their take. */
  readonly stills?: ReadonlyMap<string, StillFiles>;
  /** Whether the data scripts of takes are written beside the pages. */
  readonly dataScripts?: boolean;
  /** Lines of the input around each finding of the day, as the command prints them, carets last. */
  readonly frames?: ReadonlyMap<Finding, readonly string[]>;
  /** Findings of `show.yaml` and `kit/`, for the show-wide findings page. */
  readonly showFindings?: readonly Finding[];
  /** Tables beside the show-wide pages; absent where none are written. */
  readonly showTables?: readonly PackFile[];
  /** Absent where no build has compared. */
  readonly lastChange?: LastChange;
  /** Absent where no packs are written. */
  readonly packs?: readonly DayPack[];
}

/** Kinds of pages; each names `templates/pages/<kind>.njk`. */
export const PAGE_KINDS = [
  "home",
  "day",
  "take",
  "day-findings",
  "editorial",
  "vfx",
  "plate",
  "production",
  "findings",
  "takes-index",
  "lens",
  "kit",
  "methods",
  "scenes",
  "plates",
  "clips",
  "show-production",
  "about",
] as const;
export type PageKind = (typeof PAGE_KINDS)[number];

/** A link of the trail above the page; the last one is the page itself and has no link. */
export interface Crumb {
  readonly label: string;
  readonly linked: boolean;
  readonly href: string;
}

export interface FootLink {
  readonly label: string;
  readonly href: string;
}

/** What every page has. All texts are ready to print; all hrefs are relative to the page. */
export interface PageModel {
  /** File below the output folder, such as `days/2026-10-06/index.html`. */
  readonly path: string;
  /** Prefix from the page to the output folder: empty, `../` or `../../../`. */
  readonly root: string;
  /** Title of the document, unique in the site. */
  readonly title: string;
  readonly showTitle: string;
  readonly homeHref: string;
  /** The list of all takes, for readers whose browser runs no script. */
  readonly takesHref: string;
  readonly crumbs: readonly Crumb[];
  readonly styles: readonly string[];
  readonly script: string;
  /** Prefix of what the page remembers in the reader's browser. */
  readonly storeKey: string;
  /** How the show wants distances: what stands until the reader chooses. */
  readonly units: DistanceSystem;
  readonly tool: string;
  readonly buildId: string;
  readonly zone: string;
  readonly footLinks: readonly FootLink[];
}

export type PageSet = Readonly<Partial<Record<PageKind, readonly PageModel[]>>>;
