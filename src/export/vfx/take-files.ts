/** The VFX folder of a take: its files, one after the other, so that no more than one map is held in memory. */
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import type { FormatLosses } from "../losses.ts";
import { cameraUsda, losses as usdLosses } from "./camera-usda.ts";
import { lensCsv, losses as lensLosses } from "./lens-csv.ts";
import { lensDataPackage, losses as packageLosses } from "./lens-datapackage.ts";
import { mapExr, losses as mapLosses } from "./map-exr.ts";
import { type MapFile, type MapPlan, planMaps, samplesOf } from "./map-plan.ts";
import { mapsCsv } from "./maps-csv.ts";
import { openTrackIo, losses as trackLosses } from "./opentrackio.ts";
import { isChosen, type VfxOptions } from "./options.ts";

/** What each format of the folder cannot hold. */
export const VFX_LOSSES: readonly FormatLosses[] = [
  { format: "Lens table", files: "vfx/*/lens.csv", losses: lensLosses },
  { format: "OpenTrackIO", files: "vfx/*/lens.opentrackio.jsonl", losses: trackLosses },
  { format: "OpenUSD camera", files: "vfx/*/camera.usda", losses: usdLosses },
  { format: "OpenEXR maps", files: "vfx/*/*.exr", losses: mapLosses },
  { format: "Frictionless data package", files: "vfx/*/datapackage.json", losses: packageLosses },
];

export interface VfxFile {
  /** Relative to the pack: `vfx/<address>/<name>`. */
  readonly name: string;
  bytes(): Promise<Uint8Array>;
}

export interface VfxPlan {
  readonly files: readonly VfxFile[];
  readonly takes: number;
  /** The maps among the files. */
  readonly maps: {
    readonly files: number;
    readonly takes: number;
    readonly samples: number;
    readonly bytesAbout: number;
    /** Where there are many: a map of each take that tells how large the take's others are. */
    readonly typical: readonly TypicalMap[];
  };
}

export interface TypicalMap {
  readonly file: VfxFile;
  readonly samples: number;
  /** Of all maps that it stands for, itself among them. */
  readonly allSamples: number;
  readonly allBytesAbout: number;
}

/** A take with fewer maps is guessed. */
const MANY_MAPS = 20;

/** What a day's VFX folders will hold. Nothing large is made before `bytes()` is asked for. */
export function planVfx(day: DaySummary, options: VfxOptions): VfxPlan {
  const chosen = day.takes.filter(({ take }) => isChosen(take, options.takes));
  const planned = chosen.map((summary) => {
    const maps = isChosen(summary.take, options.maps)
      ? planMaps(summary, options.mapWidth)
      : {
          none: options.maps === "none" ? "not asked for (--maps)" : "made for plates only (--maps all makes them for every take)",
        };
    return { summary, maps };
  });
  const withMaps = planned.flatMap(({ maps }) => ("none" in maps ? [] : [maps]));
  const sum = (of: (plan: MapPlan) => number): number => withMaps.reduce((total, plan) => total + of(plan), 0);
  return {
    files: planned.flatMap(({ summary, maps }) => takeFiles(day, summary, maps)),
    takes: chosen.length,
    maps: {
      files: sum((plan) => plan.files.length),
      takes: withMaps.length,
      samples: sum((plan) => plan.samples),
      bytesAbout: sum((plan) => plan.bytesAbout),
      typical: planned.flatMap(({ summary, maps }) => ("none" in maps ? [] : typicalMap(summary, maps))),
    },
  };
}

function takeFiles(day: DaySummary, summary: TakeSummary, maps: MapPlan | { readonly none: string }): readonly VfxFile[] {
  const { address } = summary.take;
  const plan = "none" in maps ? null : maps;
  const none = "none" in maps ? maps.none : null;
  const text = (name: string, make: () => string): VfxFile => ({
    name: `vfx/${address}/${name}`,
    bytes: async () => Buffer.from(make(), "utf8"),
  });
  const camera = cameraUsda(day, summary);
  return [
    text("lens.csv", () => lensCsv(summary)),
    text("lens.opentrackio.jsonl", () => openTrackIo(day.show.code, day.date, summary)),
    ...(camera === null ? [] : [text("camera.usda", () => camera)]),
    text("datapackage.json", () => lensDataPackage(day, summary, plan, none)),
    ...(plan === null ? [] : [text("maps.csv", () => mapsCsv(plan))]),
    ...(plan?.files ?? []).map((file) => mapFile(summary, plan as MapPlan, file)),
  ];
}

function mapFile(summary: TakeSummary, plan: MapPlan, file: MapFile): VfxFile {
  return { name: `vfx/${summary.take.address}/${file.name}`, bytes: () => mapExr(summary, plan, file) };
}

function typicalMap(summary: TakeSummary, plan: MapPlan): readonly TypicalMap[] {
  const undistort = plan.files.filter(({ kind }) => kind === "undistort");
  const middle = undistort[Math.floor(undistort.length / 2)];
  if (plan.files.length < MANY_MAPS || middle === undefined) return [];
  return [
    {
      file: mapFile(summary, plan, middle),
      samples: samplesOf(middle),
      allSamples: plan.samples,
      allBytesAbout: plan.bytesAbout,
    },
  ];
}

/** Makes the files one after the other, the next while the last is deflated and written; never more than a few in memory. */
export async function makeVfx(plan: VfxPlan, write: (name: string, bytes: Uint8Array) => void): Promise<number> {
  let total = 0;
  let before: Promise<void> = Promise.resolve();
  for (const file of plan.files) {
    const bytes = file.bytes();
    await before;
    before = bytes.then((done) => {
      total += done.length;
      write(file.name, done);
    });
  }
  await before;
  return total;
}
