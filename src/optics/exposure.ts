/** Stops, shutters, neutral density, mired and exposure. Stops are counted so that positive means less light. */
export { exactStop, FULL_STOPS, inBetweenStop, isStopLabel, splitStop, stopValue, THIRD_STOPS } from "./stop-series.ts";

/**
 * Stops from one stop number to another, 2 log2(b / a); positive is closing down. Give exact numbers (see `exactStop`).
 *
 * @source W. Fulton, "Camera Math of photography settings and EV" (scantips.com).
 * @example stopsBetween(2.1, 2.9) // 0.9313
 */
export function stopsBetween(a: number, b: number): number {
  return 2 * Math.log2(b / a);
}

/** How many times more light passes at stop number a than at b: (b / a)^2. */
export function lightRatio(a: number, b: number): number {
  return (b / a) ** 2;
}

/** T-number of an f-number and a transmittance (0 to 1): T = N / sqrt(tau). @source Wikipedia "f-number", section T-stop. */
export function tFromF(fNumber: number, transmittance: number): number {
  return fNumber / Math.sqrt(transmittance);
}

/** Transmittance from a lens's f-number and T-number at one mark: tau = (f / T)^2. Above 1 means that the two were swapped. */
export function transmittanceFrom(fNumber: number, tNumber: number): number {
  return (fNumber / tNumber) ** 2;
}

/** Stops lost in the glass: -log2(tau). */
export function transmittanceStops(transmittance: number): number {
  return -Math.log2(transmittance);
}

/** Shutter angle in degrees of an exposure time: 360 t fps. @source Wikipedia "Shutter speed", citing B. Brown, Cinematography (2002) p. 125. */
export function shutterDegrees(seconds: number, fps: number): number {
  return 360 * seconds * fps;
}

/** Exposure time in seconds of a shutter angle: angle / 360 / fps. */
export function shutterSeconds(degrees: number, fps: number): number {
  return degrees / (360 * fps);
}

/** Stops of light lost from one angle to another at one frame rate: log2(a / b). */
export function shutterStops(fromDegrees: number, toDegrees: number): number {
  return Math.log2(fromDegrees / toDegrees);
}

/** Stops of a density: D / log10(2), so that 0.3 is one stop. @source camera-wiki "Neutral density filter". */
export function ndStopsFromDensity(density: number): number {
  return density / Math.log10(2);
}

/** Stops of a filter factor: log2(factor), so that ND8 is three stops. */
export function ndStopsFromFactor(factor: number): number {
  return Math.log2(factor);
}

/** Filter factor of a density: 10^D. Stacked densities add. */
export function ndFactorFromDensity(density: number): number {
  return 10 ** density;
}

/** Mired of a colour temperature in kelvin: 1,000,000 / K. @source Wikipedia "Mired". */
export function miredFromKelvin(kelvin: number): number {
  return 1e6 / kelvin;
}

/** Kelvin of a mired value. */
export function kelvinFromMired(mired: number): number {
  return 1e6 / mired;
}

/** Mired of the filter that takes light from one temperature to another; positive is warmer. */
export function miredShift(fromKelvin: number, toKelvin: number): number {
  return miredFromKelvin(toKelvin) - miredFromKelvin(fromKelvin);
}

/** Aperture value of APEX: 2 log2(N). @source Exif 2.x annex C. */
export function apertureValue(fNumber: number): number {
  return 2 * Math.log2(fNumber);
}

/** Exposure time in seconds of an APEX time value: 2^-Tv. */
export function secondsFromTimeValue(timeValue: number): number {
  return 2 ** -timeValue;
}

/** Exposure value: log2(N^2 / t). @source W. Fulton; Wikipedia "APEX system". */
export function exposureValue(fNumber: number, seconds: number): number {
  return Math.log2(fNumber ** 2 / seconds);
}

/**
 * Factor of exposure time that close focus costs by itself: (1 + m / P)^2; two stops at 1:1. A focus scale in T does not show it.
 *
 * @source Ne = N (1 + m / P): D. Jacobson, "Photographic Lenses FAQ", symbol list.
 */
export function closeFocusFactor(magnification: number, pupilMagnification = 1): number {
  return (1 + magnification / pupilMagnification) ** 2;
}

export interface ExposureSetup {
  readonly tStop: number;
  readonly shutterDeg: number;
  readonly fps: number;
  readonly ei: number;
  /** 0 for no filter. */
  readonly ndStops: number;
}

/**
 * Relative exposure in stops, for comparing two set-ups: `light` is what falls on the sensor, `withEi` also counts the exposure
 * index, which a digital log may only carry as a remark. Larger is brighter; only differences mean anything.
 *
 * @source Derived: -2 log2 T + log2(angle / 360 / fps) - ND stops, and + log2(EI / 100).
 */
export function relativeExposure(setup: ExposureSetup): { readonly light: number; readonly withEi: number } {
  const light = -2 * Math.log2(setup.tStop) + Math.log2(shutterSeconds(setup.shutterDeg, setup.fps)) - setup.ndStops;
  return { light, withEi: light + Math.log2(setup.ei / 100) };
}
