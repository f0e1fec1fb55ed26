import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { LOG } from "../../core/findings/log.ts";
import { isObject, type JsonObject } from "./sample-fields.ts";

/** A member of the samples that no column is read from. It is kept word for word, as the unknown columns of a table are. */
export interface OtherMember {
  /** Its path with points: `custom.pot1`, `lens.rawEncoders.focus`. */
  readonly name: string;
  readonly path: readonly string[];
  /** Whether the standard has it. */
  readonly standard: boolean;
  readonly firstRow: number;
}

/** Members of a sample that are not about the lens, or that columns are read from. */
const SAMPLE: ReadonlySet<string> = new Set([
  "static",
  "tracker",
  "timing",
  "lens",
  "protocol",
  "sampleId",
  "sourceId",
  "sourceNumber",
  "relatedSampleIds",
  "globalStage",
  "transforms",
  "custom",
]);
const LENS: ReadonlySet<string> = new Set([
  "custom",
  "distortion",
  "distortionOffset",
  "encoders",
  "entrancePupilOffset",
  "exposureFalloff",
  "fStop",
  "pinholeFocalLength",
  "focusDistance",
  "projectionOffset",
  "rawEncoders",
  "tStop",
]);
/** More columns than anybody looks at; a file that names a new member in each line must not make a column of each. */
const MOST = 100;

/** Gathers the members of samples that are looked at one after the other. */
export function otherMembers(): { look(sample: JsonObject, row: number): void; found(): readonly OtherMember[] } {
  const members = new Map<string, OtherMember>();
  const add = (path: readonly string[], standard: boolean, row: number): void => {
    const name = path.join(".");
    if (!members.has(name) && members.size < MOST) members.set(name, { name, path, standard, firstRow: row });
  };
  const addEach = (parent: unknown, path: readonly string[], row: number): void => {
    if (isObject(parent)) for (const name of Object.keys(parent)) add([...path, name], true, row);
    else if (parent !== undefined && parent !== null) add(path, true, row);
  };
  return {
    look(sample, row) {
      for (const name of Object.keys(sample)) if (!SAMPLE.has(name)) add([name], false, row);
      addEach(sample.custom, ["custom"], row);
      const { lens } = sample;
      if (!isObject(lens)) return;
      for (const name of Object.keys(lens)) if (!LENS.has(name)) add(["lens", name], false, row);
      addEach(lens.custom, ["lens", "custom"], row);
      if (lens.encoders !== undefined) addEach(lens.rawEncoders, ["lens", "rawEncoders"], row);
      addEach(lens.projectionOffset, ["lens", "projectionOffset"], row);
      if (Array.isArray(lens.distortion)) for (const [i, entry] of lens.distortion.entries()) lookAtDistortion(entry, i, row, add);
    },
    found: () => [...members.values()],
  };
}

/** The overscan of each distortion; of the second and later ones, which no column is read from, all there is. */
function lookAtDistortion(
  entry: unknown,
  index: number,
  row: number,
  add: (path: string[], standard: boolean, row: number) => void,
): void {
  if (!isObject(entry)) return;
  for (const name of Object.keys(entry)) {
    if (index > 0 || name === "overscan") add(["lens", "distortion", String(index), name], true, row);
  }
}

/** A remark on members that the standard does not have. */
export function tellOfOthers(
  members: readonly OtherMember[],
  placeOf: (row: number, path: readonly string[]) => Place,
  found: FindingCollector,
): void {
  const strange = members.filter(({ standard }) => !standard);
  const [first] = strange;
  if (first === undefined) return;
  const one = strange.length === 1;
  found.add(LOG.unknownColumn, {
    place: placeOf(first.firstRow, first.path),
    field: first.name,
    message: `the ${one ? "member" : "members"} ${strange.map(({ name }) => `"${name}"`).join(", ")} ${one ? "is" : "are"} kept word for word`,
    hint: "Nothing to do. Members of a maker's own belong into `custom`.",
  });
}
