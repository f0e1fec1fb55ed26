/** Every plate of the show by scene and slate, the hero with what was made for it, and what is missing. */
import { compareCodes } from "../../core/code-order.ts";
import { plural } from "../../format/words.ts";
import type { Kit } from "../../ingest/records.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { lensPaths, PLATES_PATH } from "../links.ts";
import { pageBase } from "../page.ts";
import { type PlatePair, pairPlates } from "../readers/plates.ts";
import { type TableModel, table } from "../table.ts";
import { missingWords, plateColumns, plateRow, type ShowPlate } from "./plate-row.ts";

export interface ShowPlateGroup {
  readonly id: string;
  readonly heading: string;
  readonly sentence: string;
  readonly table: TableModel;
}

export interface PlateScene {
  readonly id: string;
  readonly heading: string;
  readonly note: string;
  readonly groups: readonly ShowPlateGroup[];
}

export interface PlatesPage extends PageModel {
  readonly about: string;
  readonly scenes: readonly PlateScene[];
  readonly hasPlates: boolean;
}

export function platesPage(digests: readonly DayDigest[], kit: Kit, context: SiteContext): PlatesPage {
  const plates = showPlates(digests, kit);
  const lacking = plates.filter((plate) => missingWords(plate) !== "").length;
  return {
    ...pageBase(
      {
        path: PLATES_PATH,
        title: "Plates",
        trail: [{ label: "Plates", path: PLATES_PATH }],
        styles: ["home.css", "wide.css", "show.css", "broad.css"],
        landscape: true,
      },
      context,
    ),
    about:
      plates.length === 0
        ? `No plate on ${plural(digests.length, "day")}.`
        : `${plural(plates.length, "plate")} of ${plural(digests.length, "day")}; something is missing for ${lacking === 0 ? "none" : lacking} of them.`,
    scenes: scenesOf(pairPlates(plates), kit, context),
    hasPlates: plates.length > 0,
  };
}

function showPlates(digests: readonly DayDigest[], kit: Kit): readonly ShowPlate[] {
  const lenses = new Map(kit.lenses.map((lens) => [lens.id, lens]));
  return digests.flatMap((digest) =>
    digest.takes.flatMap((own): readonly ShowPlate[] => {
      const state = own.plateState;
      if (state === null) return [];
      return [
        {
          ...{ digest, own, state, lens: own.lens === null ? null : (lenses.get(own.lens) ?? null) },
          take: {
            ...own,
            lensId: own.lens,
            sensorMode: state.sensorMode === null ? null : { sensorMode: state.sensorMode },
          },
          focal: own.focalMm === null ? null : { minMm: own.focalMm.min },
          tStop: own.tStop === null ? null : { ...own.tStop, typical: state.typicalStop },
          cameraHeightM: state.heightM === null ? null : { value: state.heightM },
        },
      ];
    }),
  );
}

function scenesOf(pairs: readonly PlatePair<ShowPlate>[], kit: Kit, context: SiteContext): readonly PlateScene[] {
  const bySlate = [...pairs].sort((a, b) => compareCodes(a.slate, b.slate));
  const scenes = new Map<string | null, PlatePair<ShowPlate>[]>();
  for (const pair of bySlate) {
    const scene = pair.takes.find(({ own }) => own.scene !== null)?.own.scene ?? null;
    const known = scenes.get(scene);
    if (known === undefined) scenes.set(scene, [pair]);
    else known.push(pair);
  }
  const inOrder = [...scenes].sort(([a], [b]) => {
    if (a === null || b === null) return Number(a === null) - Number(b === null);
    return compareCodes(a, b);
  });
  const paths = lensPaths(kit);
  const { distances } = context.show;
  let count = 0;
  return inOrder.map(([scene, members], i) => ({
    id: `plates-${i + 1}`,
    heading: scene === null ? "No scene noted" : `Scene ${scene}`,
    note: plural(
      members.reduce((sum, pair) => sum + pair.takes.length, 0),
      "plate",
    ),
    groups: members.map((pair): ShowPlateGroup => {
      count++;
      return {
        id: `plate-${count}`,
        heading: pair.heading,
        sentence: pair.sentence,
        table: table(
          `plate-table-${count}`,
          `Plates of ${pair.heading}`,
          plateColumns(distances),
          pair.takes.map((plate) => plateRow(plate, paths, distances)),
          { cls: "plain plate-table" },
        ),
      };
    }),
  }));
}
