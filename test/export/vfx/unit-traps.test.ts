/**
 * The table of unit traps across the standards, a test a cell: one lens state with known values, read in each format. The cells of
 * what is read and not written are in test/ingest: EXIF (mm, m, f-number) in stills.test.ts, OpenEXR headers in exr-header.test.ts,
 * OpenTrackIO samples in opentrackio.test.ts. FDL and XMP are neither read nor written.
 */
import { beforeAll, describe, expect, it } from "vitest";
import { editorialFiles } from "../../../src/export/editorial/editorial-files.ts";
import { cameraUsda } from "../../../src/export/vfx/camera-usda.ts";
import { packedTimeCode } from "../../../src/export/vfx/map-header.ts";
import { openTrackIoSample } from "../../../src/export/vfx/opentrackio.ts";
import { DEFAULT_VFX } from "../../../src/export/vfx/options.ts";
import { planVfx } from "../../../src/export/vfx/take-files.ts";
import type { DaySummary } from "../../../src/summary/types.ts";
import { readExr } from "./exr-bytes.ts";
import { dayOf, firstTake } from "./fixture.ts";

// focus 2.5 m, f/3.2, T4, entrance pupil 85 mm, shutter 172.8 degrees, EI 800, squeeze 2, centre 0.1 mm right and 0.2 mm up
const ROW = {
  rows: ["2.5,3.2,4,85,2"],
  header: "focus_m,f,t,entrance_pupil_mm,squeeze",
  camera: "B",
  note: "172.8,800,hero",
} as const;
let day: DaySummary;
// biome-ignore lint/suspicious/noExplicitAny: the shape is what is tested
let track: any;
let usd: string;
let exr: Awaited<ReturnType<typeof readMap>>;

async function readMap(name: string) {
  const file = planVfx(day, { takes: "all", maps: "all", mapWidth: 64 }).files.find((f) => f.name.endsWith(name));
  return readExr(await file!.bytes());
}

beforeAll(async () => {
  day = dayOf(ROW);
  track = openTrackIoSample(day.show.code, day.date, firstTake(day), 0);
  usd = cameraUsda(day, firstTake(day)) ?? "";
  exr = await readMap("undistort-0001.exr");
});

const float = (name: string) => exr.attributes.get(name)?.bytes.readFloatLE(0);
const usdValue = (name: string) => Number(new RegExp(`\\b${name} = ([^\\n]+)`).exec(usd)?.[1]);

describe("focal length, 50 mm", () => {
  it("OpenTrackIO: mm; nominal in static only", () => {
    expect([track.lens.pinholeFocalLength, track.static.lens.nominalFocalLength]).toEqual([50, 50]);
    expect(track.lens).not.toHaveProperty("nominalFocalLength");
  });
  it("OpenTrackIO: a zoom has no nominal focal length", () => {
    const zoom = dayOf({ rows: ["2,4,50"], header: "focus_m,t,focal_mm", keys: ["lens: Z2880"] });
    const sample = openTrackIoSample("S", "2030-02-03", firstTake(zoom), 0);
    expect(JSON.stringify(sample)).not.toContain("nominalFocalLength");
  });
  it("OpenEXR: mm, and no effective focal length", () => {
    expect([float("pinholeFocalLength"), float("nominalFocalLength")]).toEqual([50, 50]);
    expect(exr.attributes.has("effectiveFocalLength")).toBe(false);
  });
  it("USD: tenths of a unit, which is mm on a centimetre stage", () => {
    expect([usdValue("focalLength"), usdValue("metersPerUnit")]).toEqual([50, 0.01]);
  });
});

describe("focus distance, 2.5 m", () => {
  it("OpenTrackIO: metres", () => expect(track.lens.focusDistance).toBe(2.5));
  it("OpenEXR: metres", () => expect(float("focus")).toBe(2.5));
  it("USD: scene units, which is 250 cm", () => expect(usdValue("focusDistance")).toBe(250));
});

describe("entrance pupil, 85 mm", () => {
  it("OpenTrackIO: metres", () => expect(track.lens.entrancePupilOffset).toBe(0.085));
  it("OpenEXR: mm", () => expect(float("entrancePupilOffset")).toBe(85));
  it("USD: none; a custom attribute with its unit in the name", () => {
    expect(usdValue("lens:entrancePupilMm")).toBe(85);
    expect(usd).not.toContain("xformOp");
  });
});

describe("sensor size, 24 x 20 mm", () => {
  it("OpenTrackIO: mm, height and width", () => {
    expect(track.static.camera.activeSensorPhysicalDimensions).toEqual({ height: 20, width: 24 });
  });
  it("OpenEXR: the active area is not the whole sensor's, and photosites are not known: neither attribute is written", () => {
    expect(exr.attributes.has("sensorOverallDimensions")).toBe(false);
    expect(exr.attributes.has("sensorPhotositePitch")).toBe(false);
  });
  it("USD: apertures in mm, the width desqueezed", () => {
    expect([usdValue("horizontalAperture"), usdValue("verticalAperture")]).toEqual([48, 20]);
  });
});

describe("shift of the distortion centre, 0.1 mm right and 0.2 mm up", () => {
  it("OpenTrackIO: mm, y down; it is no shift of the projection", () => {
    expect(track.lens.distortionOffset).toEqual({ x: 0.1, y: -0.2 });
    expect(track.lens).not.toHaveProperty("projectionOffset");
  });
  it("OpenEXR: no sensorCenterOffset (micrometres), which would be the sensor's", () => {
    expect(exr.attributes.has("sensorCenterOffset")).toBe(false);
  });
  it("USD: no aperture offset, which would move the picture; the centre as in lens.csv", () => {
    expect(usd).not.toContain("ApertureOffset");
    expect([usdValue("lens:centreXMm"), usdValue("lens:centreYMm")]).toEqual([0.1, -0.2]);
  });
});

describe("f-number 3.2 and T4", () => {
  it("OpenTrackIO: fStop and tStop", () => expect([track.lens.fStop, track.lens.tStop]).toEqual([3.2, 4]));
  it("OpenEXR: aperture is the f-number", () => {
    expect([float("aperture"), float("tStop")]).toEqual([Math.fround(3.2), 4]);
  });
  it("USD: fStop is the f-number, T a custom attribute", () => {
    expect([usdValue("float fStop"), usdValue("lens:tStop")]).toEqual([3.2, 4]);
  });
  it("every format leaves the f-number out where only T was logged", async () => {
    const only = dayOf({ rows: ["2.5,4"] });
    const map = planVfx(only, { takes: "all", maps: "all", mapWidth: 64 }).files.find((f) => f.name.endsWith("undistort-0001.exr"));
    expect(readExr(await map!.bytes()).attributes.has("aperture")).toBe(false);
    expect(JSON.stringify(openTrackIoSample("S", "2030-02-03", firstTake(only), 0))).not.toContain("fStop");
    expect(cameraUsda(only, firstTake(only))).not.toContain("fStop");
  });
});

describe("shutter, 172.8 degrees at 24", () => {
  it("OpenTrackIO: degrees", () => expect(track.static.camera.shutterAngle).toBe(172.8));
  it("OpenEXR: degrees, and 0.02 s", () => {
    expect([float("shutterAngle"), float("expTime")]).toEqual([Math.fround(172.8), Math.fround(0.02)]);
  });
  it("USD: time codes, 172.8 / 360", () => expect([usdValue("shutter:open"), usdValue("shutter:close")]).toEqual([0, 0.48]));
});

describe("rate", () => {
  const slow = { "show.yaml": "title: Slow\ncode: SLOW\nrate: 24000/1001\n" };
  it("OpenTrackIO: a fraction", () => {
    const sample = openTrackIoSample("S", "2030-02-03", firstTake(dayOf({ ...ROW, files: slow })), 0) as typeof track;
    expect(sample.timing.sampleRate).toEqual({ num: 24000, denom: 1001 });
    expect(sample.static.camera.captureFrameRate).toEqual({ num: 24000, denom: 1001 });
  });
  it("OpenEXR: rationals, the capture rate and that of playing", () => {
    const at = (name: string) => [0, 4].map((i) => exr.attributes.get(name)?.bytes.readInt32LE(i));
    expect([at("captureRate"), at("framesPerSecond")]).toEqual([
      [24, 1],
      [24, 1],
    ]);
  });
  it("USD: a rounded number, and the fraction beside it", () => {
    const other = dayOf({ ...ROW, files: slow });
    const text = cameraUsda(other, firstTake(other)) ?? "";
    expect(text).toContain("timeCodesPerSecond = 23.976023976023978\n");
    expect(text).toContain('string rate = "24000/1001"\n');
  });
});

describe("ISO, 800", () => {
  it("OpenTrackIO: a whole number in static", () => expect(track.static.camera.isoSpeed).toBe(800));
  it("OpenEXR: a float", () => expect([exr.attributes.get("isoSpeed")?.type, float("isoSpeed")]).toEqual(["float", 800]));
  it("USD: not exposure:iso, which would make the picture brighter", () => {
    expect(usd).not.toContain("exposure:");
    expect(usdValue("exposureIndex")).toBe(800);
  });
});

describe("squeeze, 2", () => {
  it("OpenTrackIO: a fraction", () => expect(track.static.camera.anamorphicSqueeze).toEqual({ num: 2, denom: 1 }));
  it("OpenEXR: pixelAspectRatio", () => expect(float("pixelAspectRatio")).toBe(2));
  it("USD: none; a custom attribute", () => expect(usdValue("lens:squeeze")).toBe(2));
});

describe("focus at infinity", () => {
  const far = () => dayOf({ rows: ["inf,4"] });
  it("OpenTrackIO: JSON has no infinity; the distance is left out and the dioptres say 0", () => {
    const sample = openTrackIoSample("S", "2030-02-03", firstTake(far()), 0) as typeof track;
    expect(sample.lens).not.toHaveProperty("focusDistance");
    expect(sample.custom.focusDioptres).toBe(0);
  });
  it("OpenEXR: left out, and the dioptres say 0", async () => {
    const map = planVfx(far(), { takes: "all", maps: "all", mapWidth: 64 }).files.find((f) =>
      f.name.endsWith("undistort-0001.exr"),
    );
    const { attributes } = readExr(await map!.bytes());
    expect(attributes.has("focus")).toBe(false);
    expect(attributes.get("focusDioptres")?.bytes.readFloatLE(0)).toBe(0);
  });
  it("USD: inf", () => expect(cameraUsda(far(), firstTake(far()))).toMatch(/focusDistance = inf\n/));
});

describe("FDL and XMP", () => {
  it("no file of a pack is one, so that no squeeze, sensor size or rate can be wrong in it", () => {
    const names = [...planVfx(day, DEFAULT_VFX).files, ...editorialFiles(day, { name: "x", version: "0" }).files].map(
      (f) => f.name,
    );
    expect(names.length).toBeGreaterThan(5);
    expect(names.filter((name) => /\.(fdl|xmp)$/i.test(name))).toEqual([]);
  });
});

describe("time code", () => {
  it("OpenEXR: packed as ImfTimeCode.h says, 10:03:00:05 drop-frame is 0x10030045", () => {
    expect(packedTimeCode("10:03:00;05")).toBe(0x10030045);
    expect(packedTimeCode("23:59:59:29")).toBe(0x23595929);
  });
});
