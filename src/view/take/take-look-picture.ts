/** The drawing of the lens look, over the take's still where there is one, as recorded and taken off. */
import { lensLookDrawing } from "../../chart/look/lens-look.ts";
import { shadingRings } from "../../chart/look/shading-rings.ts";
import { svg } from "../../chart/svg.ts";
import { fileSize } from "../../format/amounts.ts";
import { fixed } from "../../format/number.ts";
import { fitsArea, type LookOnArea } from "../../still/middle-look.ts";
import type { StillFiles } from "../context.ts";
import { hrefTo } from "../links.ts";

/** Width the drawing is made at; the page scales it to its column. */
const WIDTH = 680;

export interface LookPicture {
  readonly hasDrawing: boolean;
  readonly recorded: { readonly svg: string };
  readonly off: { readonly svg: string };
  /** Whether there is something to switch. */
  readonly hasDistortion: boolean;
  readonly hasShading: boolean;
  /** Caption of the rings: which stops they stand at. */
  readonly rings: string;
  /** What happens to the still when something is taken off, or why nothing does; may be empty. */
  readonly stillNote: string;
  /** The still beside the drawing, when it cannot lie under it. */
  readonly hasPlain: boolean;
  readonly plain: { readonly src: string; readonly width: string; readonly height: string; readonly alt: string };
  readonly hasFile: boolean;
  readonly file: { readonly href: string; readonly label: string; readonly size: string };
}

export function lookPicture(
  look: LookOnArea | null,
  still: StillFiles | null,
  page: { readonly path: string; readonly name: string },
): LookPicture {
  const href = (path: string): string => hrefTo(page.path, path);
  const under = look !== null && still !== null && still.size !== null && fitsArea(still.size, look) ? still : null;
  const size = still?.size ?? null;
  const plain = still !== null && size !== null && under === null;
  return {
    hasDrawing: look !== null,
    recorded: { svg: look === null ? "" : drawn(look, "recorded", under?.path ?? null, under?.shadingOff ?? null, href) },
    off: { svg: look?.distortion == null ? "" : drawn(look, "ideal", under?.distortionOff ?? null, under?.bothOff ?? null, href) },
    hasDistortion: look !== null && look.distortion !== null,
    hasShading: look !== null && look.shading !== null,
    rings: look === null ? "" : ringWords(look),
    stillNote: still === null ? "" : stillNote(still, under !== null),
    hasPlain: plain,
    plain: {
      src: plain ? href(still.path) : "",
      width: String(size?.widthPx ?? ""),
      height: String(size?.heightPx ?? ""),
      alt: plain ? `Still ${still.name} of ${page.name}` : "",
    },
    hasFile: still !== null,
    file: {
      href: still === null ? "" : href(still.path),
      label: still?.name ?? "",
      size:
        still === null
          ? ""
          : [size === null ? null : `${size.widthPx} × ${size.heightPx}`, fileSize(still.bytes)]
              .filter((w) => w !== null)
              .join(", "),
    },
  };
}

function drawn(
  look: LookOnArea,
  side: "recorded" | "ideal",
  shaded: string | null,
  unshaded: string | null,
  href: (path: string) => string,
): string {
  const pictures = {
    ...(shaded === null ? {} : { shaded: href(shaded) }),
    ...(unshaded === null ? {} : { unshaded: href(unshaded) }),
  };
  return svg(lensLookDrawing(look, { width: WIDTH, side }), { idPrefix: `look-${side}`, pictures });
}

function ringWords(look: LookOnArea): string {
  if (look.shading === null) return "";
  const rings = shadingRings(look.shading, Math.hypot((look.widthMm / 2) * look.shading.squeeze, look.heightMm / 2));
  const first = rings[0];
  const last = rings[rings.length - 1];
  if (first === undefined || last === undefined) return "Shading stays below a twentieth of a stop: no ring is drawn.";
  const from = fixed(first.stops, 2);
  const to = fixed(last.stops, 2);
  return `Dashed rings: shading in stops against the centre, ${from === to ? from : `from the middle ${from} to ${to}`}.`;
}

function stillNote(still: StillFiles, under: boolean): string {
  if (still.size === null) return "A picture of this kind is not shown by browsers; the file is in the report.";
  if (still.whyNone !== "") return still.whyNone;
  const made = still.shadingOff ?? still.distortionOff ?? still.bothOff;
  return under && made !== null
    ? "The still is taken for one of the middle logged frame. The look is taken off in linear light, the still read as sRGB."
    : "";
}
