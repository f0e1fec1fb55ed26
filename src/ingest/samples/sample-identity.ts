import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import { isObject, type JsonObject } from "./sample-fields.ts";

/** What the samples of a log say about camera, lens and slate. */
export interface SampleIdentity {
  readonly camera: string | null;
  readonly slate: string | null;
  readonly lensSerial: string | null;
  /** Per row, for what changes within the log. */
  readonly rowKeys: Readonly<Partial<Record<"camera" | "slate", (row: number) => string>>>;
  place(key: string): Place;
}

const PATHS = {
  camera: ["static", "camera", "label"],
  slate: ["tracker", "slate"],
  lensSerial: ["static", "lens", "serialNumber"],
} as const;
type Key = keyof typeof PATHS;

/** What one sample says of camera, slate and lens. */
export type Said = Readonly<Record<Key, string | null>>;

const NOTHING: Said = Object.freeze({ camera: null, slate: null, lensSerial: null });

/** What a sample says, without keeping the sample; the object of the row before where it says the same. */
export function saidIn(sample: JsonObject | null, before: Said = NOTHING): Said {
  if (sample === null) return NOTHING;
  const said = {
    camera: textAt(sample, PATHS.camera),
    slate: textAt(sample, PATHS.slate),
    lensSerial: textAt(sample, PATHS.lensSerial),
  };
  const same = (other: Said): boolean =>
    said.camera === other.camera && said.slate === other.slate && said.lensSerial === other.lensSerial;
  return same(NOTHING) ? NOTHING : same(before) ? before : said;
}

/** The identity of each row: what a row does not say holds from the rows before, and what the first rows lack from the first that says it. */
export function identityOf(
  samples: readonly Said[],
  placeOf: (row: number, path: readonly string[]) => Place,
  found: FindingCollector,
): SampleIdentity {
  const camera = series(samples, "camera");
  const slate = series(samples, "slate");
  const lens = series(samples, "lensSerial");
  for (const [key, said] of [
    ["camera", camera],
    ["slate", slate],
    ["lensSerial", lens],
  ] as const) {
    const change = said.changes[0];
    if (change === undefined) continue;
    found.add(LOG.staticChanges, {
      place: placeOf(change, PATHS[key]),
      field: PATHS[key].join("."),
      message: `${PATHS[key].join(".")} changes from "${said.values[0]}" to "${said.values[change]}"`,
      hint: "One log for each camera and lens is easier to follow. If it is a slip, mend the samples.",
    });
  }
  return {
    camera: camera.changes.length === 0 ? (camera.values[0] ?? null) : null,
    slate: slate.changes.length === 0 ? (slate.values[0] ?? null) : null,
    lensSerial: lens.values[0] ?? null,
    rowKeys: {
      ...(camera.changes.length === 0 ? {} : { camera: (row: number) => camera.values[row] ?? "" }),
      ...(slate.changes.length === 0 ? {} : { slate: (row: number) => slate.values[row] ?? "" }),
    },
    place(key) {
      const name: Key | null =
        key === "lens" || key === "lensSerial" ? "lensSerial" : key === "camera" || key === "slate" ? key : null;
      const said = { camera, slate, lensSerial: lens };
      return name === null ? placeOf(0, []) : placeOf(said[name].firstRow, PATHS[name]);
    },
  };
}

interface Series {
  readonly values: readonly (string | null)[];
  /** Rows whose value differs from the row before. */
  readonly changes: readonly number[];
  readonly firstRow: number;
}

function series(samples: readonly Said[], key: Key): Series {
  const said = samples.map((sample) => sample[key]);
  const firstRow = Math.max(
    0,
    said.findIndex((text) => text !== null),
  );
  let last = said[firstRow] ?? null;
  const values = said.map((text) => {
    last = text ?? last;
    return last;
  });
  const changes = values.flatMap((value, row) => (row > 0 && value !== values[row - 1] ? [row] : []));
  return { values, changes, firstRow };
}

function textAt(sample: JsonObject | null, path: readonly string[]): string | null {
  let value: unknown = sample;
  for (const name of path) value = isObject(value) ? value[name] : undefined;
  return typeof value === "string" && value.trim() !== "" ? value.trim() : null;
}
