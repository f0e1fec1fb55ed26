/** The plate sheet: everything about one plate set-up on one sheet of paper, with room to sketch the set. */
import { lensLookDrawing } from "../../chart/look/lens-look.ts";
import { focusRibbon } from "../../chart/ribbon/focus-ribbon.ts";
import { svg } from "../../chart/svg.ts";
import { brief } from "../../format/brief.ts";
import { listWords, plural, sentenceCase } from "../../format/words.ts";
import { fitsArea, middleLook } from "../../still/middle-look.ts";
import { type PlateSetup, plateSetups } from "../../summary/plate-setups.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { PageModel } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import { dayTitle } from "../day/day-page.ts";
import { dayPath, hrefTo, platePath, takePath } from "../links.ts";
import { dayShort, plateWords, sentence, takeName, tradeWords } from "../names.ts";
import { pageBase } from "../page.ts";
import type { TableModel } from "../table.ts";
import { cameraValues, lensValues } from "./plate-values.ts";

/** Cameras that have a column; a third would make the columns too narrow to read. */
const MOST_CAMERAS = 2;
const MOST_TAKES = 4;
/** Characters of a remark that the sheet holds, over all columns. */
const MOST_REMARK = 210;
const MOST_NAME = 24;
const RIBBON_WIDTH = 690;
/** Letter is 18 mm shorter than A4. */
const PLOT_HEIGHT = { A4: 108, Letter: 74 } as const;
const LOOK_WIDTH = 330;

export interface TakeLink {
  readonly label: string;
  readonly about: string;
  readonly href: string;
}

export interface PlatePage extends PageModel {
  readonly slate: string;
  readonly about: string;
  /** Which take the values are of. */
  readonly of: string;
  /** `on-a4` or `on-letter`. */
  readonly paperCls: string;
  /** `one` or `two`: how many cameras stand beside each other. */
  readonly cls: string;
  readonly camera: TableModel;
  readonly lens: TableModel;
  readonly ribbon: string;
  readonly ribbonOf: string;
  readonly hasLook: boolean;
  readonly look: { readonly svg: string };
  readonly hasStill: boolean;
  readonly still: { readonly src: string; readonly alt: string };
  readonly noLook: string;
  readonly lookCaption: string;
  readonly remarks: string;
  readonly hasRemarks: boolean;
  readonly takes: readonly TakeLink[];
  readonly takesMore: string;
  readonly vfxHref: string;
}

/** A sheet a plate set-up of the day, in order of its first take. */
export function platePages(day: DayContext): readonly PlatePage[] {
  return plateSetups(day.takes).map((setup) => platePage(setup, day));
}

function platePage(setup: PlateSetup, day: DayContext): PlatePage {
  const { summary, site } = day;
  const { date } = summary;
  const path = platePath(date, setup.slate);
  const ref = { date, day: summary.day.record.day };
  const system = site.show.distances;
  const shown = setup.chosen.slice(0, MOST_CAMERAS);
  const lead = setup.chosen[0] as TakeSummary;
  const ribbon = focusRibbon(lead, {
    ...{ width: RIBBON_WIDTH, scaleHeight: PLOT_HEIGHT[site.show.paper] },
    ...{ distances: system, cursor: lead.middleFrame },
  });
  const slate = brief(setup.slate, MOST_NAME, "cut");
  return {
    ...pageBase(
      {
        path,
        title: `Plate sheet ${setup.slate}, ${dayTitle(day.summary.day.record)}`,
        trail: [
          { label: dayShort(ref), path: dayPath(date) },
          { label: "VFX", path: dayPath(date, "vfx") },
          { label: `Plate sheet ${slate}`, path },
        ],
        styles: ["plate-sheet.css"],
      },
      site,
    ),
    slate,
    about: aboutSetup(setup, day),
    of: ofWords(setup, shown),
    paperCls: site.show.paper === "Letter" ? "on-letter" : "on-a4",
    cls: shown.length > 1 ? "two" : "one",
    camera: cameraValues(shown, system),
    lens: lensValues(shown, system),
    ribbon: svg(ribbon, { idPrefix: "ribbon" }),
    ribbonOf: takeName(lead.take),
    ...lookOf(lead, day, path),
    ...remarksOf(setup),
    takes: setup.takes.slice(0, MOST_TAKES).map((t) => ({
      label: brief(takeName(t.take), MOST_NAME, "cut"),
      about: takeWords(t),
      href: hrefTo(path, takePath(date, t.take.address)),
    })),
    takesMore: setup.takes.length > MOST_TAKES ? `and ${setup.takes.length - MOST_TAKES} more on the day's page` : "",
    vfxHref: hrefTo(path, dayPath(date, "vfx")),
  };
}

function aboutSetup({ slate, takes }: PlateSetup, day: DayContext): string {
  const kinds = [...new Set(takes.flatMap((t) => plateWords(t.take) ?? []))].map((words) => brief(words, MOST_NAME, "cut"));
  const scenes = [...new Set(takes.flatMap((t) => t.take.scene ?? []))].map((scene) => brief(scene, MOST_NAME, "cut"));
  const scene = scenes.length === 0 ? "Scene not recorded" : `Scene ${listWords(scenes.slice(0, 3))}`;
  const made = day.takes.flatMap((t) => (t.take.plateOf === slate ? [t.take.slate] : []));
  const plates = [...new Set(made)].slice(0, 4);
  const others =
    plates.length === 0 ? "" : ` Plates made for it: ${listWords(plates.map((name) => brief(name, MOST_NAME, "cut")))}.`;
  return `${sentenceCase(listWords(kinds.slice(0, 3)))}. ${scene}.${others}`;
}

function ofWords({ chosen, takes }: PlateSetup, shown: readonly TakeSummary[]): string {
  const which = listWords(shown.map((t) => brief(takeName(t.take), MOST_NAME, "cut")));
  const more = chosen.length > shown.length ? ` ${plural(chosen.length - shown.length, "more camera")} on the take sheets.` : "";
  const why = shown.every((t) => t.take.circled) ? "the circled take" : "the last take";
  return takes.length === 1 ? `Values of ${which}.` : `Values of ${which}, ${why} of each camera.${more}`;
}

function takeWords({ take }: TakeSummary): string {
  const words = [
    take.circled ? "circled" : null,
    take.status === null ? null : tradeWords(take.status),
    take.plate === null ? "no plate" : null,
  ];
  return words.filter((word) => word !== null).join(", ");
}

function lookOf(t: TakeSummary, day: DayContext, path: string) {
  const look = middleLook(t);
  const still = day.site.stills?.get(t.take.address) ?? null;
  const under =
    look !== null && still !== null && still.size !== null && fitsArea(still.size, look) ? hrefTo(path, still.path) : null;
  const alone = look === null && still !== null && still.size !== null ? hrefTo(path, still.path) : "";
  return {
    hasLook: look !== null,
    look: {
      svg:
        look === null
          ? ""
          : svg(lensLookDrawing(look, { width: LOOK_WIDTH, side: "recorded" }), {
              idPrefix: "look",
              ...(under === null ? {} : { pictures: { shaded: under } }),
            }),
    },
    hasStill: alone !== "",
    still: { src: alone, alt: alone === "" ? "" : `Still of ${takeName(t.take)}` },
    noLook:
      t.calibration.kind === "none" ? `Lens look not calculated: ${brief(t.calibration.reason, 120, "see the take sheet")}.` : "",
    lookCaption:
      look === null
        ? ""
        : `C corner, S mid-side, T mid-top. Black grid: a square grid as the lens draws it; white dots: true.${look.shading === null ? "" : " Rings: shading in stops."}${under === null ? " No still." : ""}`,
  };
}

/** Remarks of the takes, the circled ones first, cut to what the sheet holds. */
function remarksOf({ takes }: PlateSetup): { readonly remarks: string; readonly hasRemarks: boolean } {
  const remarked = takes.filter((t) => t.remarks !== null);
  const inOrder = [...remarked.filter((t) => t.take.circled), ...remarked.filter((t) => !t.take.circled)];
  const all = inOrder.map((t) => `Take ${t.take.take} ${t.take.camera}: ${sentence(t.remarks ?? "")}`).join(" ");
  return { remarks: brief(all, MOST_REMARK, "goes on on the take sheet"), hasRemarks: all !== "" };
}
