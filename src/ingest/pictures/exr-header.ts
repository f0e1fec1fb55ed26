/**
 * The header attributes of an OpenEXR file, without its pixels: single part and multi-part, scan lines and tiles, long names.
 *
 * @source OpenEXR, "File Layout" (openexr.com) and ImfStandardAttributes.h
 */

/** Numbers, one or several; text; `null` for a type that is not read. */
export type ExrValue = number | string | readonly number[] | null;

export interface ExrAttribute {
  readonly name: string;
  /** Type as the file names it, such as `float` or `rational`. */
  readonly type: string;
  /** A rational is numerator and denominator, a time code its two words, a box its four edges. */
  readonly value: ExrValue;
}

export type ExrPart = ReadonlyMap<string, ExrAttribute>;

export type ExrReading =
  | { readonly ok: true; readonly parts: readonly ExrPart[] }
  | { readonly ok: false; readonly problem: string };

const MAGIC = 20_000_630;
const MULTI_PART = 0x1000;
/** Names are up to 31 bytes, with the flag for long ones up to 255. */
const LONGEST_NAME = 255;
const MOST_PARTS = 1000;
/** No header comes near: what has more is damaged. */
const MOST_ATTRIBUTES = 10_000;

/** Reads the header. Refused, with the reason: no OpenEXR file, a version that is not 2, a header that ends early or is damaged. */
export function readExrHeader(bytes: Uint8Array): ExrReading {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 8) return refused(`it has ${bytes.length} bytes, fewer than the shortest header`);
  if (view.getUint32(0, true) !== MAGIC) return refused("it does not begin as an OpenEXR file does");
  const version = view.getUint32(4, true);
  if ((version & 0xff) !== 2) return refused(`it has version ${version & 0xff} of the format, and only 2 is known`);
  const multiPart = (version & MULTI_PART) !== 0;
  const parts: ExrPart[] = [];
  let at = 8;
  for (;;) {
    const part = readPart(bytes, view, at);
    if ("problem" in part) return refused(part.problem);
    at = part.end;
    // The list of parts ends with an empty one.
    if (multiPart && part.attributes.size === 0 && parts.length > 0) return { ok: true, parts };
    parts.push(part.attributes);
    if (!multiPart) return { ok: true, parts };
    if (parts.length > MOST_PARTS) return refused(`it has more than ${MOST_PARTS} parts`);
  }
}

type PartReading = { readonly attributes: Map<string, ExrAttribute>; readonly end: number } | { readonly problem: string };

function readPart(bytes: Uint8Array, view: DataView, from: number): PartReading {
  const attributes = new Map<string, ExrAttribute>();
  let at = from;
  for (let count = 0; count <= MOST_ATTRIBUTES; count++) {
    if (at >= bytes.length) return { problem: `its header ends after ${bytes.length} bytes${after(attributes)}` };
    if (bytes[at] === 0) return { attributes, end: at + 1 };
    const name = nameAt(bytes, at);
    const type = name === null ? null : nameAt(bytes, name.end);
    if (name === null || type === null || type.end + 4 > bytes.length) {
      const cut = bytes.length - at <= LONGEST_NAME;
      return {
        problem: cut ? `its header ends after ${bytes.length} bytes${after(attributes)}` : `its header is damaged at byte ${at}`,
      };
    }
    const size = view.getInt32(type.end, true);
    const start = type.end + 4;
    if (size < 0) return { problem: `its attribute ${name.text} has a size below zero` };
    if (start + size > bytes.length) return { problem: `it ends after ${bytes.length} bytes, in its attribute ${name.text}` };
    const value = readValue(bytes, view, type.text, start, size);
    if (!attributes.has(name.text)) attributes.set(name.text, { name: name.text, type: type.text, value });
    at = start + size;
  }
  return { problem: `its header has more than ${MOST_ATTRIBUTES} attributes` };
}

function after(attributes: ReadonlyMap<string, ExrAttribute>): string {
  const last = [...attributes.keys()].at(-1);
  return last === undefined ? "" : `, behind its attribute ${last}`;
}

function nameAt(bytes: Uint8Array, at: number): { readonly text: string; readonly end: number } | null {
  const end = bytes.indexOf(0, at);
  if (end <= at || end - at > LONGEST_NAME) return null;
  return { text: new TextDecoder().decode(bytes.subarray(at, end)), end: end + 1 };
}

type Reader = (view: DataView, at: number) => number;
const int: Reader = (view, at) => view.getInt32(at, true);
const uint: Reader = (view, at) => view.getUint32(at, true);
const float: Reader = (view, at) => view.getFloat32(at, true);
const double: Reader = (view, at) => view.getFloat64(at, true);
const byte: Reader = (view, at) => view.getUint8(at);

/** Types of fixed size: how each number is read, its bytes, how many there are. A single number is a number, several are a list. */
const NUMBERS: Readonly<Record<string, readonly [Reader, number, number]>> = {
  int: [int, 4, 1],
  float: [float, 4, 1],
  double: [double, 8, 1],
  compression: [byte, 1, 1],
  lineOrder: [byte, 1, 1],
  envmap: [byte, 1, 1],
  v2i: [int, 4, 2],
  v2f: [float, 4, 2],
  v2d: [double, 8, 2],
  v3i: [int, 4, 3],
  v3f: [float, 4, 3],
  v3d: [double, 8, 3],
  box2i: [int, 4, 4],
  box2f: [float, 4, 4],
  m33f: [float, 4, 9],
  m44f: [float, 4, 16],
  m33d: [double, 8, 9],
  m44d: [double, 8, 16],
  chromaticities: [float, 4, 8],
  keycode: [int, 4, 7],
  timecode: [uint, 4, 2],
};

function readValue(bytes: Uint8Array, view: DataView, type: string, start: number, size: number): ExrValue {
  if (type === "string") return new TextDecoder().decode(bytes.subarray(start, start + size));
  if (type === "rational") return size === 8 ? [int(view, start), uint(view, start + 4)] : null;
  const form = Object.hasOwn(NUMBERS, type) ? NUMBERS[type] : undefined;
  if (form === undefined) return null;
  const [reader, width, count] = form;
  if (size !== width * count) return null;
  if (count === 1) return reader(view, start);
  return Array.from({ length: count }, (_, i) => reader(view, start + i * width));
}

function refused(problem: string): { readonly ok: false; readonly problem: string } {
  return { ok: false, problem };
}
