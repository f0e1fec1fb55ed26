/** camera.usda: the lens of a take as an animated camera without a pose, on a centimetre stage. */
import { lensLookFrames } from "../../summary/lens-look-frames.ts";
import type { DaySummary, TakeSummary } from "../../summary/types.ts";
import { lossOf, plainBrownConrady } from "./coefficients.ts";
import { METRES_PER_UNIT, sceneUnitsOfFocus, shutterFraction, tidy, usdTenthsOfMm } from "./units.ts";
import { indented, type UsdSeries, usdAttribute, usdDictionary, usdName, usdNumber, usdSeries, usdString } from "./usd-text.ts";

/** What the camera cannot hold. */
export const losses: readonly string[] = [
  "USD cameras have no T-stop, distortion, shading, squeeze and entrance pupil: they are custom attributes in the name space lens, which renderers ignore. Distortion is in them only as plain Brown-Conrady.",
  "camera.usda has fStop only where an f-number was logged, never a T-stop in its place; without it USD renders no depth of field.",
  "USD's field of view is that of focal length and aperture: it does not change with focus. lens:angleOfViewHorizontalDeg and lens:angleOfViewVerticalDeg do, as in lens.csv.",
  "USD's horizontalAperture is the active width times the squeeze: the picture it frames is the desqueezed one.",
  "USD measures focusDistance from the camera's own position; the value is from the image plane, as everywhere in the pack. camera.usda has no pose.",
  "USD bridges gaps of the log by linear interpolation; customData gapFirst and gapLast name them. Rates such as 24000/1001 are rounded; customData has the fraction.",
];

/** Time code of the take's first frame. */
const FIRST_TIME_CODE = 1001;

/** The layer; `null` when no frame has a focal length or the sensor mode is not known: USD would assume one. */
export function cameraUsda(day: DaySummary, summary: TakeSummary): string | null {
  const { take, perFrame } = summary;
  const mode = take.sensorMode;
  if (perFrame === null || mode === null || !perFrame.focalMm.some((mm) => mm > 0)) return null;
  const root = usdName(`take_${take.address}`);
  const fps = take.rate.num / take.rate.denom;
  const camera = [
    'def Camera "camera" (',
    ...indented(cameraData(day, summary)),
    ")",
    "{",
    ...indented([
      usdAttribute("float", "horizontalAperture", usdNumber(tidy(usdTenthsOfMm(mode.activeWidthMm * take.squeeze)))),
      usdAttribute("float", "verticalAperture", usdNumber(tidy(usdTenthsOfMm(mode.activeHeightMm)))),
      ...usdSeries("float", "focalLength", series(summary, perFrame.focalMm, usdTenthsOfMm)),
      ...usdSeries("float", "focusDistance", series(summary, perFrame.focusDioptres, sceneUnitsOfFocus)),
      ...usdSeries("float", "fStop", series(summary, perFrame.fStop)),
      ...shutter(summary),
      ...lensAttributes(summary),
    ]),
    "}",
  ];
  const layer = [
    "#usda 1.0",
    "(",
    ...indented([
      `defaultPrim = "${root}"`,
      `doc = ${usdString(`${day.show.title}, ${day.date}, camera ${take.camera}, slate ${take.slate}, take ${take.take}: the lens, no pose`)}`,
      `endTimeCode = ${FIRST_TIME_CODE + perFrame.frames - 1}`,
      `framesPerSecond = ${fps}`,
      `metersPerUnit = ${METRES_PER_UNIT}`,
      `startTimeCode = ${FIRST_TIME_CODE}`,
      `timeCodesPerSecond = ${fps}`,
      'upAxis = "Y"',
    ]),
    ")",
    "",
    `def Xform "${root}"`,
    "{",
    ...indented(camera),
    "}",
  ];
  return `${layer.join("\n")}\n`;
}

function cameraData(day: DaySummary, summary: TakeSummary): readonly string[] {
  const { take } = summary;
  return usdDictionary("customData", {
    show: day.show.code,
    date: day.date,
    address: take.address,
    cameraLabel: take.camera,
    slate: take.slate,
    take: take.take,
    lens: take.lensId,
    lensSerial: take.lens?.serial ?? null,
    sensorMode: take.sensorMode?.sensorMode ?? null,
    timecodeIn: summary.timecodeIn,
    rate: `${take.rate.num}/${take.rate.denom}`,
    captureFps: take.captureFps,
    squeeze: take.squeeze,
    exposureIndex: summary.ei,
    frameOfTimeCode: `frame of lens.csv + ${FIRST_TIME_CODE}`,
    focusDistanceFrom: "image plane; inf is infinity",
    // time codes, both ends included
    gapFirst: take.gaps.map((gap) => gap.first + FIRST_TIME_CODE),
    gapLast: take.gaps.map((gap) => gap.last + FIRST_TIME_CODE),
  });
}

/** The shutter from the frame's own time on: which way it lies about that is not known. */
function shutter({ shutterDeg }: TakeSummary): readonly string[] {
  if (shutterDeg === null || !(shutterDeg > 0 && shutterDeg <= 360)) return [];
  return [
    usdAttribute("double", "shutter:open", "0"),
    usdAttribute("double", "shutter:close", usdNumber(tidy(shutterFraction(shutterDeg)))),
  ];
}

/** What USD has no attribute for, with the units of lens.csv. */
function lensAttributes(summary: TakeSummary): readonly string[] {
  const { perFrame: f, take } = summary;
  const look = lensLookFrames(summary);
  if (f === null || look === null) return [];
  const put = (name: string, values: ArrayLike<number>): readonly string[] =>
    usdSeries("custom double", `lens:${name}`, series(summary, values));
  const distortion = Array.from({ length: f.frames }, (_, i) => {
    const found = look.look(i)?.distortion ?? null;
    const terms = found === null ? null : plainBrownConrady(found);
    return terms === null || found === null
      ? null
      : { ...terms, centreXMm: found.centreXMm, centreYMm: found.centreYMm, direction: found.direction };
  });
  const loss = Array.from({ length: f.frames }, (_, i) => {
    const found = look.look(i)?.shading ?? null;
    return found === null ? null : lossOf(found);
  });
  const terms = (["k1", "k2", "k3", "p1", "p2"] as const).flatMap((name) =>
    put(
      name,
      distortion.map((d) => d?.[name] ?? Number.NaN),
    ),
  );
  const direction = distortion.find((d) => d !== null)?.direction;
  return [
    ...put("tStop", f.tStop),
    ...put("focusDioptres", f.focusDioptres),
    ...put("angleOfViewHorizontalDeg", f.angleHorizontalDeg),
    ...put("angleOfViewVerticalDeg", f.angleVerticalDeg),
    ...put("entrancePupilMm", look.entrancePupilMm),
    ...(take.lens?.transmittance == null
      ? []
      : [usdAttribute("custom double", "lens:transmittance", usdNumber(take.lens.transmittance))]),
    usdAttribute("custom double", "lens:squeeze", usdNumber(take.squeeze)),
    ...(direction === undefined ? [] : [usdAttribute("custom string", "lens:distortionDirection", usdString(direction))]),
    ...terms,
    ...put(
      "centreXMm",
      distortion.map((d) => d?.centreXMm ?? Number.NaN),
    ),
    ...put(
      "centreYMm",
      distortion.map((d) => d?.centreYMm ?? Number.NaN),
    ),
    ...put("distortionCornerPercent", look.distortionPercent.corner),
    ...(["a1", "a2", "a3"] as const).flatMap((name) =>
      put(
        name,
        loss.map((l) => l?.[name] ?? Number.NaN),
      ),
    ),
    ...put("shadingCornerStops", look.shadingStops.corner),
  ];
}

/** Every logged frame that has a value. */
function series(summary: TakeSummary, values: ArrayLike<number>, convert: (value: number) => number = (value) => value): UsdSeries {
  const times: number[] = [];
  const found: number[] = [];
  for (let i = 0; i < (summary.perFrame?.frames ?? 0); i++) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value) || summary.perFrame?.logged[i] !== 1) continue;
    times.push(i + FIRST_TIME_CODE);
    found.push(tidy(convert(value)) + 0);
  }
  return { times, values: found };
}
