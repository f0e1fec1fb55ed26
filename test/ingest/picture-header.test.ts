import { describe, expect, it } from "vitest";
import { pictureHeader } from "../../src/ingest/pictures/picture-header.ts";

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Signature, length and name of the header chunk, then 4608 = 0x1200 and 2592 = 0x0a20. */
const png = Uint8Array.from([...PNG, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0, 0, 0x12, 0x00, 0, 0, 0x0a, 0x20, 8, 2, 0, 0, 0]);
/** An application segment of four bytes, a fill byte, then a progressive frame of 1080 = 0x0438 lines of 1920 = 0x0780. */
const JPEG_FRAME = [0xff, 0xc2, 0, 17, 8, 0x04, 0x38, 0x07, 0x80, 3];
const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, ...JPEG_FRAME]);

describe("pictureHeader", () => {
  it("reads a PNG's header", () => {
    expect(pictureHeader(png)).toMatchObject({ kind: "png", widthPx: 4608, heightPx: 2592 });
  });

  it("finds a JPEG's frame behind other segments, width after height", () => {
    expect(pictureHeader(jpeg)).toMatchObject({ kind: "jpeg", widthPx: 1920, heightPx: 1080 });
  });

  it("does not take a table of codes (C4) for a frame", () => {
    const table = [0xff, 0xc4, 0, 9, 1, 2, 3, 4, 5, 6, 7];
    expect(pictureHeader(Uint8Array.from([0xff, 0xd8, ...table, ...JPEG_FRAME]))).toMatchObject({ widthPx: 1920 });
  });

  it("reads a view into a longer buffer", () => {
    const longer = new Uint8Array(100);
    longer.set(png, 40);
    expect(pictureHeader(longer.subarray(40))).toMatchObject({ widthPx: 4608 });
  });

  it.each([
    ["an EXR", Uint8Array.from([0x76, 0x2f, 0x31, 0x01, 2, 0, 0, 0])],
    ["nothing", new Uint8Array()],
    ["half a PNG header", png.subarray(0, 20)],
    ["a JPEG that ends before its frame", jpeg.subarray(0, 12)],
    ["a PNG without width", Uint8Array.from([...png.subarray(0, 16), 0, 0, 0, 0, ...png.subarray(20)])],
  ])("knows no size of %s", (_, bytes) => {
    expect(pictureHeader(bytes)).toBeNull();
  });
});
