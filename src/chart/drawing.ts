import type { DistanceSystem } from "../format/units.ts";

/**
 * A drawing as data: one geometry that the page prints as SVG and the PDF draws with the same paths.
 * Coordinates are CSS pixels, x to the right, y down. `k` names a mark of the ribbon grammar (see the look): the
 * page styles it with CSS, the PDF with the print palette. How each mark is painted is data in `paint.ts`.
 */
export type Mark =
  | "k-frame"
  | "k-grid"
  | "k-row"
  | "k-axis"
  | "k-bar"
  | "k-bar-open"
  | "k-band"
  | "k-band-least"
  | "k-limit"
  | "k-focus"
  | "k-stop"
  | "k-stop-band"
  | "k-focal"
  | "k-gap"
  | "k-bracket"
  | "k-lead"
  | "k-cursor"
  | "k-dot"
  | "k-noted"
  | "k-clap"
  | "k-roll"
  | "k-box"
  | "k-infinity"
  | "k-noted-stop"
  | "k-off"
  | "k-stop-off"
  | "k-tick"
  | "k-stop-dot"
  | "k-used-some"
  | "k-used-more"
  | "k-used-most"
  | "k-used"
  | "k-outside"
  | "k-calibrated"
  | "k-line-dash"
  | "k-line-dot"
  | "k-light-dash"
  | "k-light-dot"
  | "k-meal"
  | "k-plate"
  | "k-plate-under"
  | "k-plate-grid"
  | "k-plate-true"
  | "k-plate-ring"
  | "k-plate-ring-under"
  | "k-plate-edge"
  | "k-plate-frame"
  | "k-plate-mark";

/** Readers' choices of units that an item is for; every reader's without it. */
export interface ForUnits {
  readonly units?: readonly DistanceSystem[];
}

export type DrawItem = DrawnItem & ForUnits;

type DrawnItem =
  /** SVG path data; integers or one decimal; only the commands M m L l H h V v Z z. */
  | {
      readonly type: "path";
      readonly k: Mark;
      readonly d: string;
      /** A finer line than the mark's own, for rows: class `thin`. */
      readonly thin?: true;
    }
  | { readonly type: "line"; readonly k: Mark; readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }
  | {
      readonly type: "rect";
      readonly k: Mark;
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
    }
  | { readonly type: "circle"; readonly k: Mark; readonly x: number; readonly y: number; readonly r: number }
  /** Room for a picture that whoever prints the drawing may put in; nothing is drawn without one. */
  | {
      readonly type: "picture";
      readonly slot: PictureSlot;
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
    }
  | {
      readonly type: "text";
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly anchor: "start" | "middle" | "end";
      /** Space-separated text classes of the look: `t-ink t-b t-focus t-stop t-fine t-inf t-cam t-ring t-mark halo halo-band halo-p halo-plate`. */
      readonly tone: string;
    };

/** A still with its shading, and the same without. */
export type PictureSlot = "shaded" | "unshaded";

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** States the finding: "Focus from 6.0 m to 1.8 m, then to infinity; four pulls". */
  readonly title: string;
  /** What is drawn, with units and scales, for people who do not see it. */
  readonly description: string;
  readonly items: readonly DrawItem[];
}
