/**
 * The print palette: always white paper, darker inks than the screen. A grey copy still reads, because the focus line is
 * darker than its limits and the limits are darker than the band. All sRGB.
 */
import type { Mark } from "../chart/drawing.ts";

export const PRINT = {
  paper: "#FFFFFF",
  mark: "#EFE7D2",
  ink: "#111311",
  ink2: "#3C403A",
  ink3: "#565A50",
  edge: "#6F6A5C",
  rule: "#B9B3A4",
  focus: "#084954",
  focusLimit: "#3F7F88",
  focusBand: "#C9DFDE",
  stop: "#6C2256",
  stopBand: "#E9D3DF",
  error: "#8E1C15",
  check: "#6A4600",
} as const;

/** How a mark of the drawing grammar is painted. Widths and dashes are in the drawing's pixels. */
export interface MarkStyle {
  readonly fill: string | null;
  readonly stroke: string | null;
  readonly width: number;
  readonly dash: readonly [number, number] | null;
}

export const MARK_STYLES: Readonly<Record<Mark, MarkStyle>> = {
  "k-frame": filled(PRINT.paper),
  "k-grid": line(PRINT.rule, 0.75),
  "k-axis": line(PRINT.ink, 1),
  "k-bar": filled(PRINT.ink),
  "k-bar-open": { fill: PRINT.paper, stroke: PRINT.ink, width: 0.75, dash: null },
  "k-band": filled(PRINT.focusBand),
  "k-limit": line(PRINT.focusLimit, 1),
  "k-focus": line(PRINT.focus, 2),
  "k-stop": line(PRINT.stop, 2),
  "k-stop-band": filled(PRINT.stopBand),
  "k-focal": line(PRINT.ink, 1.5),
  "k-gap": line(PRINT.edge, 1),
  "k-bracket": line(PRINT.ink, 1),
  "k-lead": line(PRINT.ink3, 1, [1, 3]),
  "k-cursor": line(PRINT.ink, 1),
  "k-dot": { fill: PRINT.paper, stroke: PRINT.focus, width: 2, dash: null },
  "k-noted": line(PRINT.focus, 1.5, [2, 3]),
  "k-clap": line(PRINT.ink, 1),
  "k-roll": line(PRINT.ink2, 1),
  "k-box": line(PRINT.ink, 1),
};

function filled(fill: string): MarkStyle {
  return { fill, stroke: null, width: 0, dash: null };
}

function line(stroke: string, width: number, dash: readonly [number, number] | null = null): MarkStyle {
  return { fill: null, stroke, width, dash };
}
