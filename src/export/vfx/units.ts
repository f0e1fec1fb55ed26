/**
 * From this project's units to those of each standard. One function a difference, so that no exporter multiplies by itself.
 *
 * @source OpenTrackIO 1.0.1 schema; OpenEXR ImfStandardAttributes.h; OpenUSD UsdGeomCamera
 */

/** The stage that cameras are written on: a scene unit is a centimetre, so that a tenth of it is a millimetre. */
export const METRES_PER_UNIT = 0.01;

/** Metres of a focus in dioptres; `Infinity` for 0, NaN for not logged. OpenTrackIO `focusDistance` and OpenEXR `focus` are in metres. */
export function metresOfFocus(dioptres: number): number {
  return dioptres <= 1e-12 ? Number.POSITIVE_INFINITY : 1 / dioptres;
}

/** Scene units of a focus in dioptres. USD `focusDistance` is in scene units. */
export function sceneUnitsOfFocus(dioptres: number): number {
  return metresOfFocus(dioptres) / METRES_PER_UNIT;
}

/** Tenths of a scene unit of a length in mm. USD `focalLength` and the apertures are in tenths of a scene unit. */
export function usdTenthsOfMm(mm: number): number {
  return (10 * (mm / 1000)) / METRES_PER_UNIT;
}

/** Metres of a length in mm. OpenTrackIO `entrancePupilOffset` is in metres, OpenEXR's of the same name in mm. */
export function metresOfMm(mm: number): number {
  return mm / 1000;
}

/** Seconds that a frame is exposed. OpenEXR `expTime`. */
export function exposureSeconds(shutterDeg: number, captureFps: number): number {
  return shutterDeg / 360 / captureFps;
}

/** Part of a frame that the shutter is open. USD `shutter:close` is in time codes, here one a frame. */
export function shutterFraction(shutterDeg: number): number {
  return shutterDeg / 360;
}

/** Twelve significant digits: what lies beyond is rounding of the arithmetic and differs between machines. */
export function tidy(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(12)) : value;
}
