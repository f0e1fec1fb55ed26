/** What kind of picture a file is and how large, from its first bytes alone. */

export interface PictureSize {
  /** `exr` is never shown: browsers cannot read it. */
  readonly kind: "png" | "jpeg";
  readonly widthPx: number;
  readonly heightPx: number;
}

const PNG_MARK = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Start-of-frame markers; C4, C8 and CC mean something else. */
const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
/** Markers without a length: restart and temporary. */
const isBare = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);

/**
 * Kind and size in pixels; `null` for bytes that are neither PNG nor JPEG, or end too early.
 *
 * @source W3C Portable Network Graphics, 5.2 and 11.2.2; ITU-T T.81 B.1.1 and B.2.2
 */
export function pictureSize(bytes: Uint8Array): PictureSize | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (PNG_MARK.every((byte, i) => bytes[i] === byte)) {
    return view.byteLength < 24 ? null : sized("png", view.getUint32(16), view.getUint32(20));
  }
  return bytes[0] === 0xff && bytes[1] === 0xd8 ? jpegSize(view) : null;
}

function jpegSize(view: DataView): PictureSize | null {
  let at = 2;
  while (at + 4 <= view.byteLength) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff)
      at++; // a fill byte
    else if (isBare(marker)) at += 2;
    else if (isFrame(marker)) {
      return at + 9 > view.byteLength ? null : sized("jpeg", view.getUint16(at + 7), view.getUint16(at + 5));
    } else at += 2 + view.getUint16(at + 2);
  }
  return null;
}

function sized(kind: PictureSize["kind"], widthPx: number, heightPx: number): PictureSize | null {
  return widthPx > 0 && heightPx > 0 ? { kind, widthPx, heightPx } : null;
}
