import { describe, expect, it } from "vitest";
import { cameraUsda } from "../../../src/export/vfx/camera-usda.ts";
import { usdName, usdSeries, usdString } from "../../../src/export/vfx/usd-text.ts";
import { dayOf, type FixtureOptions, FOUR_FRAMES, firstTake } from "./fixture.ts";

const layer = (options: FixtureOptions): string => {
  const day = dayOf(options);
  return cameraUsda(day, firstTake(day)) ?? "";
};

describe("camera.usda", () => {
  it("is an animated camera on a centimetre stage, byte for byte", () => {
    const text = layer({ rows: FOUR_FRAMES });
    const head = text.slice(0, text.indexOf("        custom double lens:angleOfView"));
    expect(head).toBe(`#usda 1.0
(
    defaultPrim = "take_a_1a_1"
    doc = "Small show, 2030-02-03, camera A, slate 1A, take 1: the lens, no pose"
    endTimeCode = 1004
    framesPerSecond = 24
    metersPerUnit = 0.01
    startTimeCode = 1001
    timeCodesPerSecond = 24
    upAxis = "Y"
)

def Xform "take_a_1a_1"
{
    def Camera "camera" (
        customData = {
            string show = "SMALL"
            string date = "2030-02-03"
            string address = "a-1a-1"
            string cameraLabel = "A"
            string slate = "1A"
            string take = "1"
            string lens = "P50"
            string lensSerial = "501"
            string sensorMode = "OPEN"
            string timecodeIn = "10:00:00:00"
            string rate = "24/1"
            double captureFps = 24
            double squeeze = 1
            double exposureIndex = 800
            string frameOfTimeCode = "frame of lens.csv + 1001"
            string focusDistanceFrom = "image plane; inf is infinity"
            int[] gapFirst = [1003]
            int[] gapLast = [1003]
        }
    )
    {
        float horizontalAperture = 24
        float verticalAperture = 18
        float focalLength = 50
        float focusDistance.timeSamples = {
            1001: 200,
            1002: 200,
            1004: inf,
        }
        double shutter:open = 0
        double shutter:close = 0.5
        custom double lens:tStop = 4
        custom double lens:focusDioptres.timeSamples = {
            1001: 0.5,
            1002: 0.5,
            1004: 0,
        }
`);
  });

  it("has the lens look as custom attributes with the units of lens.csv", () => {
    const text = layer({ rows: ["inf,4"] });
    expect(text).toContain("        custom double lens:k1 = 0.0001\n");
    expect(text).toContain("        custom double lens:a1 = 0.001\n");
    expect(text).toContain("        custom double lens:entrancePupilMm = 80\n");
    expect(text).toContain('        custom string lens:distortionDirection = "undistort"\n');
  });

  it("writes fStop only where an f-number was logged, never T", () => {
    expect(layer({ rows: ["2,4"] })).not.toContain("fStop");
    expect(layer({ rows: ["2,3.6"], header: "focus_m,f" })).toContain("        float fStop = 3.6\n");
  });

  it("frames the desqueezed picture and keeps the squeeze", () => {
    const text = layer({ rows: ["2,4,2"], header: "focus_m,t,squeeze", camera: "B" });
    // 24 mm wide, squeeze 2
    expect(text).toContain("        float horizontalAperture = 48\n        float verticalAperture = 20\n");
    expect(text).toContain("        custom double lens:squeeze = 2\n");
  });

  it("is not written where the focal length is not known: USD would take 50 mm", () => {
    expect(layer({ rows: ["2,4"], keys: ["lens: Z2880"] })).toBe("");
  });
});

describe("USD text", () => {
  it("escapes quotes, backslashes and line ends", () => {
    expect(usdString('a "b" \\ \n')).toBe('"a \\"b\\" \\\\ \\n"');
  });
  it("makes identifiers of addresses", () => {
    expect([usdName("take_a-12a-3"), usdName("12")]).toEqual(["take_a_12a_3", "_12"]);
  });
  it("writes a series whose samples are alike as one value, and nothing without samples", () => {
    expect(usdSeries("float", "x", { times: [1, 2], values: [3, 3] })).toEqual(["float x = 3"]);
    expect(usdSeries("float", "x", { times: [1, 2], values: [3, 4] })).toEqual([
      "float x.timeSamples = {",
      "    1: 3,",
      "    2: 4,",
      "}",
    ]);
    expect(usdSeries("float", "x", { times: [], values: [] })).toEqual([]);
  });
});
