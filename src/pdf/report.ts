/** What every section of the report works with. */
import type { Finding } from "../core/finding.ts";
import type { DaySummary } from "../summary/types.ts";
import type { Doc, Element } from "./document.ts";
import type { Flow } from "./flow.ts";
import type { Ink, TextStyle } from "./ink.ts";
import type { Bookmark } from "./outline.ts";
import { PRINT } from "./palette.ts";
import type { Places } from "./places.ts";
import type { Still } from "./still-picture.ts";

export interface Report {
  readonly doc: Doc;
  readonly ink: Ink;
  readonly flow: Flow;
  /** The Document element. */
  readonly root: Element;
  /** The day's bookmark. */
  readonly bookmark: Bookmark;
  /** Places that links, contents and page numbers lead to. */
  readonly places: Places;
  readonly summary: DaySummary;
  /** Of show.yaml and the kit. */
  readonly showFindings: readonly Finding[];
  readonly program: string;
  /** What the report is, such as "Camera report". */
  readonly title: string;
  /** Stills of takes by their address. */
  readonly stills: ReadonlyMap<string, Still>;
}

/** The type scale in points. Nothing is smaller than 8. */
export const TYPE = {
  day: { face: "serif", size: 34, color: PRINT.ink },
  address: { face: "serif", size: 17, color: PRINT.ink },
  head: { face: "serif", size: 13, color: PRINT.ink },
  figure: { face: "serif", size: 18, color: PRINT.ink },
  date: { face: "serifItalic", size: 12, color: PRINT.ink },
  sub: { face: "bold", size: 8.5, color: PRINT.ink },
  body: { face: "sans", size: 8.5, color: PRINT.ink },
  table: { face: "sans", size: 8, color: PRINT.ink },
  strong: { face: "bold", size: 8, color: PRINT.ink },
  label: { face: "sans", size: 8, color: PRINT.ink2 },
  source: { face: "slant", size: 8, color: PRINT.ink3 },
} as const satisfies Record<string, TextStyle>;
