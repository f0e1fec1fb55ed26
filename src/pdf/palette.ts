/**
 * The print palette: always white paper, darker inks than the screen. A grey copy still reads, because the focus line is
 * darker than its limits and the limits are darker than the band. All sRGB.
 */
import type { ColourRole } from "../chart/paint.ts";

export const PRINT = {
  paper: "#FFFFFF",
  ink: "#111311",
  ink2: "#3C403A",
  ink3: "#565A50",
  edge: "#6F6A5C",
  rule: "#B9B3A4",
  mark: "#EFE7D2",
  focus: "#084954",
  focusLimit: "#3F7F88",
  focusBand: "#C9DFDE",
  stop: "#6C2256",
  stopBand: "#E9D3DF",
  error: "#8E1C15",
  check: "#6A4600",
  plate: "#BDB7A8",
  plateInk: "#14160F",
  platePaper: "#FBF8F1",
  plateStop: "#5E1A49",
} as const;

/** The roles that drawings paint with, as print colours. */
export const PRINT_ROLES: Readonly<Record<ColourRole, string>> = {
  paper: PRINT.paper,
  sheet: PRINT.paper,
  mark: PRINT.mark,
  ink: PRINT.ink,
  "ink-3": PRINT.ink3,
  edge: PRINT.edge,
  rule: PRINT.rule,
  focus: PRINT.focus,
  "focus-limit": PRINT.focusLimit,
  "focus-band": PRINT.focusBand,
  stop: PRINT.stop,
  "stop-band": PRINT.stopBand,
  plate: PRINT.plate,
  "plate-ink": PRINT.plateInk,
  "plate-paper": PRINT.platePaper,
  "plate-stop": PRINT.plateStop,
};
