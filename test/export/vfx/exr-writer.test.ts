import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { exrBytes } from "../../../src/export/exr-writer.ts";
import { readExr } from "./exr-bytes.ts";

const box = (right: number, bottom: number) => ({ left: 0, top: 0, right, bottom });

/** From the bytes printed in OpenEXRFileLayout.rst, "Predefined Example". */
function floats(hex: string): Float32Array {
  const bytes = Buffer.from(hex.replaceAll(" ", ""), "hex");
  return Float32Array.from({ length: bytes.length / 4 }, (_, i) => bytes.readFloatLE(4 * i));
}
function halves(hex: string): Uint16Array {
  const bytes = Buffer.from(hex.replaceAll(" ", ""), "hex");
  return Uint16Array.from({ length: bytes.length / 2 }, (_, i) => bytes.readUInt16LE(2 * i));
}

describe("exrBytes", () => {
  it("writes the format's published sample byte for byte (OpenEXRFileLayout.rst, website/downloads/sample.exr)", async () => {
    const file = await exrBytes({
      dataWindow: box(3, 2),
      displayWindow: box(3, 2),
      channels: [
        {
          name: "Z",
          values: floats(
            "5c28813a cfe1343e 8b0bbb3d 8974f93e 7fabe83e 8acf543f 5b6c113f 2035503d 38f39a3c 4dad983e 1c14083f 4cf3033f",
          ),
        },
        { name: "G", values: halves("0000 5429 d535 e82d 3738 7633 743b 7338 233a 0a34 023b 5d3b") },
      ],
      compression: "none",
    });
    expect(file.length).toBe(415);
    expect(createHash("sha256").update(file).digest("hex")).toBe(
      "6bc7d6095f50d30f08ec03c9689de11bbfd91776782de7cee4aa9a367c32f3f6",
    );
  });

  it("gives back every value after ZIP, blocks of 16 lines and a rest, and a data window that begins outside the frame", async () => {
    const window = { left: -3, top: -2, right: 33, bottom: 17 };
    const values = Float32Array.from({ length: 37 * 20 }, (_, i) => Math.fround(i / 740 - 0.1));
    const file = await exrBytes({
      dataWindow: window,
      displayWindow: box(30, 15),
      channels: [
        { name: "R", values },
        { name: "B", values: new Float32Array(values.length) },
      ],
      compression: "zip",
    });
    const read = readExr(file);
    expect(read.window).toEqual(window);
    expect([...read.planes.keys()]).toEqual(["B", "R"]);
    expect(read.planes.get("R")).toEqual(values);
    expect(file.length).toBeLessThan(values.length * 8);
  });

  it("stores a block as it is where deflating would make it larger", async () => {
    const noise = Float32Array.from({ length: 7 }, (_, i) => Math.fround(Math.sin(i * 12.9898) * 43758.5453));
    const file = await exrBytes({
      dataWindow: box(6, 0),
      displayWindow: box(6, 0),
      channels: [{ name: "R", values: noise }],
      compression: "zip",
    });
    expect(readExr(file).planes.get("R")).toEqual(noise);
  });

  it.each([1, 2, 3, 4, 5, 7, 8])("gives back blocks of whole pairs of words and others: %i wide, 37 high", async (width) => {
    const values = Float32Array.from({ length: width * 37 }, (_, i) => Math.fround(Math.cos(i / 50) * (i % 5 === 0 ? -1e4 : 1)));
    const file = await exrBytes({
      dataWindow: box(width - 1, 36),
      displayWindow: box(width - 1, 36),
      channels: [{ name: "Y", values }],
      compression: "zip",
    });
    expect(readExr(file).planes.get("Y")).toEqual(values);
  });

  it("gives the same bytes again", async () => {
    const picture = {
      dataWindow: box(40, 40),
      displayWindow: box(40, 40),
      channels: [{ name: "R", values: Float32Array.from({ length: 41 * 41 }, (_, i) => i / 7) }],
      compression: "zip",
    } as const;
    expect(await exrBytes(picture)).toEqual(await exrBytes(picture));
  });

  it("writes each type of attribute in its own size, text without an end mark", async () => {
    const { attributes } = readExr(
      await exrBytes({
        dataWindow: box(0, 0),
        displayWindow: box(0, 0),
        channels: [{ name: "R", values: Float32Array.of(1) }],
        compression: "zip",
        pixelAspectRatio: 2,
        attributes: {
          lensModel: { type: "string", value: "Kü" },
          focus: { type: "float", value: 2.5 },
          imageCounter: { type: "int", value: -7 },
          captureRate: { type: "rational", value: { num: 24000, denom: 1001 } },
          timeCode: { type: "timecode", value: [0x10030045, 0] },
          sensorCenterOffset: { type: "v2f", value: [1, -1] },
        },
      }),
    );
    const hex = (name: string) => [attributes.get(name)?.type, attributes.get(name)?.bytes.toString("hex")];
    expect(hex("lensModel")).toEqual(["string", "4bc3bc"]);
    expect(hex("focus")).toEqual(["float", "00002040"]);
    expect(hex("imageCounter")).toEqual(["int", "f9ffffff"]);
    expect(hex("captureRate")).toEqual(["rational", "c05d0000e9030000"]);
    expect(hex("timeCode")).toEqual(["timecode", "4500031000000000"]);
    expect(hex("sensorCenterOffset")).toEqual(["v2f", "0000803f000080bf"]);
    expect(hex("pixelAspectRatio")).toEqual(["float", "00000040"]);
  });

  it("refuses a name longer than the format allows", async () => {
    const attributes = { ["x".repeat(32)]: { type: "int", value: 1 } } as const;
    const picture = { dataWindow: box(0, 0), displayWindow: box(0, 0), channels: [], compression: "none", attributes } as const;
    await expect(exrBytes(picture)).rejects.toThrow(RangeError);
  });
});
