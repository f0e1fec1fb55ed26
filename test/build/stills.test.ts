import { describe, expect, it } from "vitest";
import { dayStills } from "../../src/build/stills.ts";
import { readPng, writePng } from "../../src/still/picture.ts";
import type { TakeSummary } from "../../src/summary/types.ts";
import { exampleTake } from "../fixtures/day-summary.ts";
import { memoryFolder } from "../helpers/memory-show.ts";

const DATE = "2031-05-06";
const PICTURE = { widthPx: 160, heightPx: 90, rgba: new Uint8Array(4 * 160 * 90).fill(200) };
const PNG = writePng({ ...PICTURE, rgba: PICTURE.rgba.map((byte, i) => (i % 4 === 3 ? 255 : byte)) });
/** A JPEG as far as its frame header says: 160 by 90. */
const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xc0, 0, 17, 8, 0, 90, 0, 160, 3]);

function withStill(address: string, name: string): TakeSummary {
  const summary = exampleTake("a-12-2");
  const still = { file: `days/${DATE}/stills/${name}`, name, sha256: "", bytes: 0 };
  return { ...summary, take: { ...summary.take, address, still } };
}

function made(files: Readonly<Record<string, Uint8Array>>, takes: readonly TakeSummary[]) {
  const folder = memoryFolder(
    Object.fromEntries(Object.entries(files).map(([name, bytes]) => [`days/${DATE}/stills/${name}`, bytes])),
  );
  return dayStills(DATE, takes, folder);
}

/** Names of the pictures; the scripts that carry stills to the page are not pictures. */
const paths = (result: ReturnType<typeof made>) =>
  result.files.map((file) => file.path.replace(`days/${DATE}/stills/`, "")).filter((name) => !name.endsWith(".js"));

describe("stills in the report", () => {
  it("are copied byte for byte, with a picture for each part of the look taken off", () => {
    const result = made({ "12 Hafen (Ü).PNG": PNG }, [withStill("a-12-2", "12 Hafen (Ü).PNG")]);
    expect(paths(result)).toEqual(["12-hafen-u.png", "a-12-2-shading-off.png", "a-12-2-distortion-off.png", "a-12-2-look-off.png"]);
    expect(result.files[0]?.bytes).toEqual(PNG);
    const still = result.byTake.get("a-12-2");
    expect(still).toMatchObject({ name: "12 Hafen (Ü).PNG", size: { widthPx: 160, heightPx: 90 }, bytes: PNG.length, whyNone: "" });
    expect(still?.bothOff).toBe(`days/${DATE}/stills/a-12-2-look-off.png`);
    expect(readPng(result.files[1]?.bytes ?? new Uint8Array())).toMatchObject({ widthPx: 160, heightPx: 90 });
  });

  it("are copied once when two takes name one, and keep their names apart when they fold alike", () => {
    const result = made({ "A 1.png": PNG, "a-1.png": PNG }, [
      withStill("a-1-1", "A 1.png"),
      withStill("a-1-2", "a-1.png"),
      withStill("a-1-3", "A 1.png"),
    ]);
    expect(paths(result).filter((path) => !path.includes("off"))).toEqual(["a-1.png", "a-1-2.png"]);
    expect(result.byTake.get("a-1-3")?.path).toBe(`days/${DATE}/stills/a-1.png`);
    expect(new Set(result.files.map((file) => file.path)).size).toBe(result.files.length);
  });

  it("never put a made picture in the place of a still with its name", () => {
    const result = made({ "a-12-2-look-off.png": PNG }, [withStill("a-12-2", "a-12-2-look-off.png")]);
    expect(result.byTake.get("a-12-2")?.bothOff).toBe(`days/${DATE}/stills/a-12-2-look-off-2.png`);
  });

  it("that are JPEG are shown, and say that the look is not taken off them", () => {
    const still = made({ "x.jpg": JPEG }, [withStill("a-12-2", "x.jpg")]).byTake.get("a-12-2");
    expect(still).toMatchObject({ size: { widthPx: 160, heightPx: 90 }, shadingOff: null, distortionOff: null, bothOff: null });
    expect(still?.whyNone).toContain("PNG stills only");
  });

  it("that browsers cannot show are copied without a size", () => {
    const exr = Uint8Array.from([0x76, 0x2f, 0x31, 0x01, 2, 0, 0, 0]);
    const result = made({ "plate.exr": exr }, [withStill("a-12-2", "plate.exr")]);
    expect(paths(result)).toEqual(["plate.exr"]);
    expect(result.byTake.get("a-12-2")).toMatchObject({ size: null, bothOff: null });
  });

  it("of another shape than the sensor mode have nothing taken off", () => {
    const square = writePng({ widthPx: 4, heightPx: 4, rgba: new Uint8Array(64).fill(255) });
    expect(made({ "x.png": square }, [withStill("a-12-2", "x.png")]).byTake.get("a-12-2")?.whyNone).toContain("shape");
  });

  it("that are broken inside are copied and say so", () => {
    const broken = PNG.slice(0, 60);
    expect(made({ "x.png": broken }, [withStill("a-12-2", "x.png")]).byTake.get("a-12-2")?.whyNone).toContain("cannot be read");
  });

  it("that cannot be read, and takes without one, are left out", () => {
    expect(made({}, [withStill("a-12-2", "gone.png"), exampleTake("a-12-1")]).files).toEqual([]);
  });
});
