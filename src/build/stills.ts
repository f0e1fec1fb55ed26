/** The day's stills in the report: the pictures as they are, and with the lens look taken off. */
import type { ShowFolder } from "../ingest/folder.ts";
import { type PictureHeader, pictureHeader } from "../ingest/pictures/picture-header.ts";
import { fitsArea, type LookOnArea, middleLook } from "../still/middle-look.ts";
import { type Picture, readPng, reduced, writePng } from "../still/picture.ts";
import { stillScript } from "../still/script.ts";
import { type Parts, takeOff } from "../still/take-off.ts";
import type { TakeSummary } from "../summary/types.ts";
import type { StillFiles } from "../view/context.ts";
import { foldName, stillPath } from "../view/links.ts";

export interface DayStills {
  /** Files to write, below the output folder. */
  readonly files: readonly { readonly path: string; readonly bytes: Uint8Array }[];
  /** By the address of the take. */
  readonly byTake: ReadonlyMap<string, StillFiles>;
}

/** Pictures that are made here are no wider; a still that is copied keeps every pixel. */
const MOST_WIDTH_PX = 960;
/** Larger stills are copied and not worked on: they would take the memory of many days. */
const MOST_PIXELS = 64_000_000;
const NAME_ROOM = 80;

/** Copies and pictures of all stills that notes name. A still that cannot be read is left out: the reader has said so. */
export function dayStills(date: string, takes: readonly TakeSummary[], folder: ShowFolder): DayStills {
  const files = new Map<string, Uint8Array>();
  const copies = new Map<string, { readonly path: string; readonly bytes: Uint8Array }>();
  const taken = new Set<string>();
  const withStill = takes.filter(({ take }) => take.still !== null && !take.duplicate);
  for (const { take } of withStill) {
    const still = take.still;
    if (still === null || copies.has(still.file)) continue;
    const bytes = folder.read(still.file);
    if (!(bytes instanceof Uint8Array)) continue;
    const path = stillPath(date, freeName(still.name, taken));
    copies.set(still.file, { path, bytes });
    files.set(path, bytes);
  }
  const byTake = new Map<string, StillFiles>();
  const scripts = new Map<string, string | null>();
  const scriptOf = (file: string, bytes: Uint8Array, size: PictureHeader): string | null => {
    const known = scripts.get(file);
    if (known !== undefined) return known;
    const text = stillScript(bytes, size);
    const path = text === null ? null : stillPath(date, freeName(`${copies.get(file)?.path.split("/").at(-1) ?? ""}.js`, taken));
    if (text !== null && path !== null) files.set(path, Buffer.from(text));
    scripts.set(file, path);
    return path;
  };
  for (const summary of withStill) {
    const { still, address } = summary.take;
    const copy = still === null ? undefined : copies.get(still.file);
    if (still === null || copy === undefined) continue;
    const size = pictureHeader(copy.bytes);
    const look = middleLook(summary);
    const made = withoutLook(copy.bytes, size, look);
    const write = (picture: Picture | null, what: string): string | null => {
      if (picture === null) return null;
      const path = stillPath(date, freeName(`${address}-${what}-off.png`, taken));
      files.set(path, writePng(picture));
      return path;
    };
    byTake.set(address, {
      name: still.name,
      path: copy.path,
      bytes: copy.bytes.length,
      size: size === null ? null : { widthPx: size.widthPx, heightPx: size.heightPx },
      shadingOff: write(made.shadingOff, "shading"),
      distortionOff: write(made.distortionOff, "distortion"),
      bothOff: write(made.bothOff, "look"),
      whyNone: made.whyNone,
      script: size !== null && look !== null && fitsArea(size, look) ? scriptOf(still.file, copy.bytes, size) : null,
    });
  }
  return { files: [...files].map(([path, bytes]) => ({ path, bytes })), byTake };
}

interface Made {
  readonly shadingOff: Picture | null;
  readonly distortionOff: Picture | null;
  readonly bothOff: Picture | null;
  readonly whyNone: string;
}

function withoutLook(bytes: Uint8Array, size: PictureHeader | null, look: LookOnArea | null): Made {
  const none = (whyNone: string): Made => ({ shadingOff: null, distortionOff: null, bothOff: null, whyNone });
  if (size === null || look === null) return none("");
  if (!fitsArea(size, look))
    return none("The still has not the shape of the sensor mode, so nothing is drawn over it or taken off it.");
  if (size.kind !== "png") return none("The look is taken off PNG stills only: with it off, the drawing stands without the still.");
  if (size.widthPx * size.heightPx > MOST_PIXELS) return none("The still is too large for the look to be taken off it here.");
  const full = readPng(bytes);
  if (full === null) return none("The still cannot be read as a PNG, so the look is not taken off it.");
  const still = reduced(full, MOST_WIDTH_PX);
  const off = (parts: Parts): Picture | null => {
    const has = (!parts.distortion || look.distortion !== null) && (!parts.shading || look.shading !== null);
    return has ? takeOff(still, look, parts) : null;
  };
  return {
    shadingOff: off({ distortion: false, shading: true }),
    distortionOff: off({ distortion: true, shading: false }),
    bothOff: off({ distortion: true, shading: true }),
    whyNone: "",
  };
}

/** The name folded to `a-z 0-9 -` with its ending; later ones that fold alike get `-2`, `-3`. */
function freeName(name: string, taken: Set<string>): string {
  const dot = name.lastIndexOf(".");
  const stem = foldName(dot > 0 ? name.slice(0, dot) : name).slice(0, NAME_ROOM);
  const ending = dot > 0 ? `.${foldName(name.slice(dot + 1)).slice(0, 8)}` : "";
  let free = `${stem}${ending}`;
  for (let n = 2; taken.has(free); n++) free = `${stem}-${n}${ending}`;
  taken.add(free);
  return free;
}
