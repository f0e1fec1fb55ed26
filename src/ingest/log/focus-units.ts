/** Metres in one unit of each distance column of a log; `focus_dpt` is 1/m and has none. 1 ft = 0.3048 m, 1 in = 0.0254 m exactly. */
export const METRES_PER_FOCUS_UNIT: Readonly<Record<string, number>> = {
  focus_m: 1,
  focus_mm: 1e-3,
  focus_cm: 1e-2,
  focus_ft: 0.3048,
  focus_in: 0.0254,
};
