/** The part of a page model that all pages share: title, trail, style sheets, foot. */
import { showsWish } from "../format/units.ts";
import type { Crumb, PageModel, SiteContext } from "./context.ts";
import {
  ABOUT_PATH,
  CLIPS_PATH,
  FINDINGS_PATH,
  HOME_PATH,
  hrefTo,
  KIT_PATH,
  METHODS_PATH,
  PLATES_PATH,
  rootPrefix,
  SCENES_PATH,
  SHOW_PRODUCTION_PATH,
  TAKES_PATH,
} from "./links.ts";

export interface PageInput {
  readonly path: string;
  /** Title of the page without the show's; unique in the site. */
  readonly title: string;
  /** Trail below "All days": label and path; the last one is the page itself. */
  readonly trail: readonly { readonly label: string; readonly path: string; readonly fragment?: string }[];
  /** Names of style sheets in `assets/`, after the shared ones. */
  readonly styles?: readonly string[];
  /** Prints across the paper; along it without. */
  readonly landscape?: boolean;
}

/** One sheet that all pages load, joined from the parts in this order: each file more is one more that the first paint waits for. */
export const SHARED_SHEET = {
  name: "page.css",
  parts: ["tokens.css", "base.css", "marks.css", "search.css", "units.css", "tables.css"],
} as const;

export function pageBase(input: PageInput, context: SiteContext): PageModel {
  const root = rootPrefix(input.path);
  const link = (path: string) => hrefTo(input.path, path);
  const trail = input.path === HOME_PATH ? [] : [{ label: "All days", path: HOME_PATH }, ...input.trail];
  return {
    path: input.path,
    root,
    title: input.path === HOME_PATH ? input.title : `${input.title}, ${context.show.title}`,
    showTitle: context.show.title,
    homeHref: link(HOME_PATH),
    takesHref: link(TAKES_PATH),
    crumbs: trail.map((step, i): Crumb => {
      const linked = i < trail.length - 1;
      return { label: step.label, linked, href: linked ? hrefTo(input.path, step.path, fragmentOf(step)) : "" };
    }),
    styles: [SHARED_SHEET.name, ...(input.styles ?? []), paperStyle(input, context)].map((name) => link(`assets/${name}`)),
    script: link("assets/page.js"),
    storeKey: `lens-daybook.${context.show.code}`,
    units: showsWish(context.show.distances),
    tool: `${context.tool.name} ${context.tool.version}`,
    buildId: context.buildId,
    zone: context.show.timeZone === null ? "Time zone not recorded" : `Times are ${context.show.timeZone}`,
    footLinks: [
      { label: "Kit", href: link(KIT_PATH) },
      { label: "Words and methods", href: link(METHODS_PATH) },
      { label: "All findings", href: link(FINDINGS_PATH) },
      { label: "All takes", href: link(TAKES_PATH) },
      { label: "Scenes", href: link(SCENES_PATH) },
      { label: "Plates", href: link(PLATES_PATH) },
      { label: "Clips", href: link(CLIPS_PATH) },
      { label: "Production to date", href: link(SHOW_PRODUCTION_PATH) },
      { label: "About this report", href: link(ABOUT_PATH) },
    ],
  };
}

/** One style sheet a paper, because a page size cannot depend on a class. */
function paperStyle(input: PageInput, context: SiteContext): string {
  const paper = context.show.paper === "Letter" ? "letter" : "a4";
  return input.landscape === true ? `paper-${paper}-landscape.css` : `paper-${paper}.css`;
}

function fragmentOf(step: { readonly fragment?: string }): string {
  return step.fragment ?? "";
}
