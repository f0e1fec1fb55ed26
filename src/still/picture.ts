/** A picture as pixels: read from PNG, made smaller, written as PNG. Bytes in, bytes out. */
import { PNG } from "pngjs";

/** Rows from the top, four bytes a pixel: red, green, blue, opacity. */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rgba: Uint8Array;
}

/** The picture of a PNG with 8 or 16 bits a channel (brought to 8); `null` when the bytes cannot be read. */
export function readPng(bytes: Uint8Array): Picture | null {
  try {
    const { width, height, data } = PNG.sync.read(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
    return { widthPx: width, heightPx: height, rgba: data };
  } catch {
    return null;
  }
}

/** A PNG of 8 bits a channel; grey pictures and opaque ones take fewer channels. */
export function writePng(picture: Picture): Uint8Array {
  const { widthPx, heightPx, rgba } = picture;
  const { grey, opaque } = channels(rgba);
  const png = new PNG({ width: widthPx, height: heightPx });
  png.data = Buffer.from(rgba.buffer, rgba.byteOffset, rgba.byteLength);
  const colorType = grey ? (opaque ? 0 : 4) : opaque ? 2 : 6;
  return PNG.sync.write(png, { colorType, inputColorType: 6, inputHasAlpha: true, deflateLevel: 6 });
}

function channels(rgba: Uint8Array): { readonly grey: boolean; readonly opaque: boolean } {
  let grey = true;
  let opaque = true;
  for (let i = 0; i < rgba.length && (grey || opaque); i += 4) {
    if (rgba[i] !== rgba[i + 1] || rgba[i] !== rgba[i + 2]) grey = false;
    if (rgba[i + 3] !== 255) opaque = false;
  }
  return { grey, opaque };
}

/** The picture no wider than `mostPx`: each pixel the mean of a square of the first, so that nothing flickers. */
export function reduced(picture: Picture, mostPx: number): Picture {
  const factor = Math.ceil(picture.widthPx / mostPx);
  if (factor <= 1) return picture;
  const widthPx = Math.max(1, Math.floor(picture.widthPx / factor));
  const heightPx = Math.max(1, Math.floor(picture.heightPx / factor));
  const rgba = new Uint8Array(4 * widthPx * heightPx);
  const rows = Math.min(factor, picture.heightPx);
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      for (let channel = 0; channel < 4; channel++) {
        let sum = 0;
        for (let j = 0; j < rows; j++) {
          const from = 4 * ((y * factor + j) * picture.widthPx + x * factor) + channel;
          for (let i = 0; i < factor; i++) sum += picture.rgba[from + 4 * i] ?? 0;
        }
        rgba[4 * (y * widthPx + x) + channel] = Math.round(sum / (factor * rows));
      }
    }
  }
  return { widthPx, heightPx, rgba };
}
