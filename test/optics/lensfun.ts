/**
 * Reads the lens database of Debian's liblensfun-data-v1 where it is installed; nothing of it is kept here. Entries are taken
 * by their position. Its formulas (r = 1 at half the height of the sensor that was calibrated, ideal to recorded):
 * poly3 rd = ru (1 - k1 + k1 ru^2), poly5 rd = ru (1 + k1 ru^2 + k2 ru^4), ptlens rd = ru (a ru^3 + b ru^2 + c ru + 1 - a - b - c);
 * pa, the gain over the half diagonal, 1 + k1 r^2 + k2 r^4 + k3 r^6.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { SaxesParser } from "saxes";

const FOLDERS = ["/usr/share/lensfun/version_2", "/usr/share/lensfun/version_1", "/usr/share/lensfun"];

export interface Distortion {
  /** rd / ru - scale as a sum of terms: power of ru and coefficient. */
  readonly scale: number;
  readonly terms: readonly (readonly [power: number, coefficient: number])[];
}

export interface LensEntry {
  readonly areaMm: { readonly width: number; readonly height: number };
  readonly distortions: readonly Distortion[];
  /** k1, k2, k3 of each place in focal length, stop and distance. */
  readonly shadings: readonly (readonly [number, number, number])[];
}

/** Folder of the database, or `null` when it is not installed. */
export function lensfunFolder(): string | null {
  return FOLDERS.find((folder) => existsSync(folder) && readdirSync(folder).some((name) => name.endsWith(".xml"))) ?? null;
}

/** All lenses, in the order of the files' names and of the lenses in them. */
export function readLensfun(folder: string): readonly LensEntry[] {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith(".xml"))
    .sort();
  return files.flatMap((name) => readFile(readFileSync(`${folder}/${name}`, "utf8")));
}

interface Draft {
  crop: number;
  aspect: number;
  distortions: Distortion[];
  shadings: [number, number, number][];
}

function readFile(xml: string): LensEntry[] {
  const lenses: LensEntry[] = [];
  let draft: Draft | null = null;
  let text = "";
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("text", (more) => {
    text += more;
  });
  parser.on("opentag", ({ name, attributes }) => {
    text = "";
    const value = (key: string) => Number(attributes[key] ?? 0);
    if (name === "lens") draft = { crop: 1, aspect: 1.5, distortions: [], shadings: [] };
    if (draft === null) return;
    if (name === "distortion") draft.distortions.push(distortionOf(attributes.model ?? "", value));
    if (name === "vignetting") draft.shadings.push([value("k1"), value("k2"), value("k3")]);
  });
  parser.on("closetag", ({ name }) => {
    if (draft === null) return;
    if (name === "cropfactor") draft.crop = Number(text);
    if (name === "aspect-ratio") draft.aspect = aspectOf(text);
    if (name === "lens") {
      lenses.push(finished(draft));
      draft = null;
    }
  });
  parser.write(xml).close();
  return lenses;
}

function distortionOf(model: string, value: (key: string) => number): Distortion {
  if (model === "poly3") return { scale: 1 - value("k1"), terms: [[2, value("k1")]] };
  if (model === "poly5") {
    return {
      scale: 1,
      terms: [
        [2, value("k1")],
        [4, value("k2")],
      ],
    };
  }
  if (model !== "ptlens") throw new Error(`the model ${model} is not known`);
  const [a, b, c] = [value("a"), value("b"), value("c")];
  return {
    scale: 1 - a - b - c,
    terms: [
      [3, a],
      [2, b],
      [1, c],
    ],
  };
}

function aspectOf(text: string): number {
  const [width, height] = text.split(":").map(Number);
  return height === undefined ? width! : width! / height;
}

/** The area from the crop factor, which is that of diagonals against 36 x 24 mm. */
function finished({ crop, aspect, distortions, shadings }: Draft): LensEntry {
  const height = Math.hypot(36, 24) / crop / Math.hypot(aspect, 1);
  return { areaMm: { width: height * aspect, height }, distortions, shadings };
}
