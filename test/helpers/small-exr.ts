/** OpenEXR files made by hand, one grey pixel each, after "File Layout" of openexr.com. */

export type Attribute = readonly [name: string, type: string, value: Uint8Array];

const text = (value: string): Uint8Array => new TextEncoder().encode(value);

export function ints(...values: readonly number[]): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(4 * values.length));
  values.forEach((value, i) => {
    bytes.setUint32(4 * i, value >>> 0, true);
  });
  return new Uint8Array(bytes.buffer);
}

export function floats(...values: readonly number[]): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(4 * values.length));
  values.forEach((value, i) => {
    bytes.setFloat32(4 * i, value, true);
  });
  return new Uint8Array(bytes.buffer);
}

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}

/** The attributes that every part must have, for a picture of one pixel. */
export const REQUIRED: readonly Attribute[] = [
  ["channels", "chlist", joined(text("Y\0"), ints(2, 0, 1, 1), Uint8Array.of(0))],
  ["compression", "compression", Uint8Array.of(0)],
  ["dataWindow", "box2i", ints(0, 0, 0, 0)],
  ["displayWindow", "box2i", ints(0, 0, 1919, 1079)],
  ["lineOrder", "lineOrder", Uint8Array.of(0)],
  ["pixelAspectRatio", "float", floats(1)],
  ["screenWindowCenter", "v2f", floats(0, 0)],
  ["screenWindowWidth", "float", floats(1)],
];

function header(attributes: readonly Attribute[]): Uint8Array {
  const parts = attributes.map(([name, type, value]) => joined(text(`${name}\0${type}\0`), ints(value.length), value));
  return joined(...parts, Uint8Array.of(0));
}

/** A single-part file with its pixel. `flags` go into the version, such as 0x400 for long names. */
export function smallExr(attributes: readonly Attribute[], flags = 0): Uint8Array {
  const head = joined(ints(20_000_630, 2 | flags), header([...REQUIRED, ...attributes]));
  const block = joined(ints(0, 4), floats(0.5));
  return joined(head, ints(head.length + 8, 0), block);
}

/** The headers of a file with several parts, without pixels. */
export function multiPartHeader(parts: readonly (readonly Attribute[])[]): Uint8Array {
  const heads = parts.map((attributes) => header([...REQUIRED, ...attributes]));
  return joined(ints(20_000_630, 2 | 0x1000), ...heads, Uint8Array.of(0));
}

export const string = (value: string): Uint8Array => text(value);
