/** Pictures for the panel: the take's still from its script, or one that the reader gives. Nothing is ever sent. */
import { fitsArea } from "../../still/middle-look.ts";
import type { Picture } from "../../still/picture.ts";
import { type LightPicture, lightOf, plainCard } from "./look-pixels.ts";
import { COLUMNS } from "./look-view.ts";

export interface PanelPicture {
  /** Small enough to be painted while scrubbing. */
  readonly light: LightPicture;
  /** The pixels as they came, for saving. */
  full(): Picture;
}

/** A plain card, for a take without a still. */
export const CARD: LightPicture = plainCard([0.48, 0.46, 0.4]);

/** Loads a still's script and gives the picture; fails when the script does not call. */
export function stillFromScript(page: Document, href: string): Promise<PanelPicture> {
  return new Promise((done, failed) => {
    Object.assign(globalThis, {
      lensDaybookStill: (address: string) => {
        const image = new Image();
        image.onload = () => done(panelPicture(page, image, image.naturalWidth, image.naturalHeight));
        image.onerror = failed;
        image.src = address;
      },
    });
    const script = page.createElement("script");
    script.onerror = failed;
    script.src = href;
    page.body.append(script);
  });
}

export type OwnPicture = { readonly ok: true; readonly picture: PanelPicture } | { readonly ok: false; readonly problem: string };

const MOST_PIXELS = 40_000_000;

/** Reads a picture file of the reader. Refused in a sentence: what is no picture, too large, or not of the sensor's shape. */
export async function ownPicture(
  page: Document,
  file: Blob,
  area: { readonly widthMm: number; readonly heightMm: number; readonly squeeze: number },
): Promise<OwnPicture> {
  let image: ImageBitmap;
  try {
    image = await createImageBitmap(file);
  } catch {
    return { ok: false, problem: "This browser cannot read that file as a picture." };
  }
  const { width, height } = image;
  if (width * height > MOST_PIXELS)
    return { ok: false, problem: `The picture has ${width} × ${height} pixels; that is too large for a page.` };
  if (!fitsArea({ widthPx: width, heightPx: height }, area)) {
    const shape = (area.widthMm / area.heightMm).toFixed(2);
    return {
      ok: false,
      problem: `The picture is ${(width / height).toFixed(2)} to 1 and the sensor mode ${shape} to 1: a crop cannot be laid over the lens. Give the whole frame.`,
    };
  }
  return { ok: true, picture: panelPicture(page, image, width, height) };
}

function panelPicture(page: Document, image: CanvasImageSource, width: number, height: number): PanelPicture {
  const factor = Math.max(1, Math.ceil(width / COLUMNS));
  const small = pixelsOf(page, image, Math.round(width / factor), Math.round(height / factor));
  return { light: lightOf(small), full: () => pixelsOf(page, image, width, height) };
}

function pixelsOf(page: Document, image: CanvasImageSource, widthPx: number, heightPx: number): Picture {
  const canvas = page.createElement("canvas");
  canvas.width = widthPx;
  canvas.height = heightPx;
  const to = canvas.getContext("2d", { willReadFrequently: true });
  if (to === null) return { widthPx, heightPx, rgba: new Uint8Array(4 * widthPx * heightPx) };
  to.imageSmoothingQuality = "high";
  to.drawImage(image, 0, 0, widthPx, heightPx);
  return { widthPx, heightPx, rgba: new Uint8Array(to.getImageData(0, 0, widthPx, heightPx).data.buffer) };
}

/** Offers a canvas for saving under a name. */
export function saveCanvas(page: Document, canvas: HTMLCanvasElement, name: string): Promise<boolean> {
  return new Promise((done) => {
    canvas.toBlob((blob) => {
      if (blob === null) return done(false);
      const address = URL.createObjectURL(blob);
      const link = page.createElement("a");
      link.href = address;
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(address), 10_000);
      done(true);
    }, "image/png");
  });
}

export function canvasOf(page: Document, { widthPx, heightPx, rgba }: Picture): HTMLCanvasElement {
  const canvas = page.createElement("canvas");
  canvas.width = widthPx;
  canvas.height = heightPx;
  const image = new ImageData(new Uint8ClampedArray(rgba), widthPx, heightPx);
  canvas.getContext("2d")?.putImageData(image, 0, 0);
  return canvas;
}
