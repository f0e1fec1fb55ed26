/** How each mark is painted, as roles of the palette, so that screen, print and the PDF cannot drift apart. */
import type { Mark } from "./drawing.ts";

/** Custom property of the page (`--focus-band`) or key of a print palette. */
export type ColourRole =
  | "paper"
  | "sheet"
  /** The tint of a marked row, and of what is calibrated. */
  | "mark"
  | "ink"
  | "ink-3"
  | "edge"
  | "rule"
  | "focus"
  | "focus-limit"
  | "focus-band"
  | "stop"
  | "stop-band"
  /** A picture keeps its own colours whatever the page's: its ground, and ink, paper and plum on it. */
  | "plate"
  | "plate-ink"
  | "plate-paper"
  | "plate-stop";

export interface Paint {
  readonly fill: ColourRole | null;
  readonly stroke: ColourRole | null;
  /** CSS pixels; 0 without a stroke. */
  readonly width: number;
  /** Lengths of dash and gap; a `round` dash of length 0.1 is a row of dots. */
  readonly dash: readonly [number, number] | null;
  readonly cap: "butt" | "round";
}

/** Every mark of the grammar with its paint. */
export const PAINT: Readonly<Record<Mark, Paint>> = Object.freeze({
  "k-frame": fill("sheet"),
  "k-grid": stroke("rule", 1),
  // frame and grid of a row in one
  "k-row": both("sheet", "rule", 1),
  "k-infinity": stroke("edge", 1),
  "k-axis": stroke("ink", 1),
  "k-tick": stroke("edge", 1),
  "k-bar": fill("ink"),
  "k-bar-open": both("sheet", "ink", 0.75),
  "k-band": fill("focus-band"),
  // what a thin band is drawn with at least: under the line of a row, a pixel of it to either side
  "k-band-least": stroke("focus-band", 3),
  "k-limit": stroke("focus-limit", 1),
  "k-focus": stroke("focus", 2),
  "k-noted": dots("focus", 2),
  "k-off": fill("focus"),
  "k-stop": stroke("stop", 2),
  "k-stop-band": fill("stop-band"),
  "k-noted-stop": dots("stop", 2),
  "k-stop-off": fill("stop"),
  "k-stop-dot": fill("stop"),
  "k-focal": stroke("ink", 1.5),
  "k-gap": stroke("edge", 1),
  "k-bracket": stroke("ink", 1),
  "k-lead": { ...stroke("ink-3", 1), dash: [1, 3] },
  "k-cursor": stroke("ink", 1),
  "k-dot": both("sheet", "focus", 2),
  "k-clap": stroke("ink", 1),
  "k-roll": fill("ink"),
  "k-box": both("paper", "ink", 1),
  // used: frames of a lens in a focus x stop map, in three steps; calibrated: what its table holds
  "k-used-some": fill("focus-band"),
  "k-used-more": fill("focus-limit"),
  "k-used-most": fill("focus"),
  "k-used": stroke("focus", 0.75),
  "k-outside": { ...stroke("ink", 0.75), dash: [3, 2] },
  "k-calibrated": fill("mark"),
  // several lines in one plot differ by dash and end label: ink for distortion and focal length, plum for light
  "k-line-dash": { ...stroke("ink", 1.5), dash: [7, 3] },
  "k-line-dot": { ...stroke("ink", 1.5), dash: [2, 3] },
  "k-light-dash": { ...stroke("stop", 2), dash: [7, 3] },
  "k-light-dot": { ...stroke("stop", 2), dash: [2, 3] },
  "k-meal": { ...both("paper", "edge", 1), dash: [2, 3] },
  "k-plate": fill("plate"),
  "k-plate-under": stroke("plate-paper", 2),
  "k-plate-grid": stroke("plate-ink", 1),
  "k-plate-true": { ...stroke("plate-paper", 1.25), dash: [2, 4] },
  "k-plate-ring-under": stroke("plate-paper", 2.5),
  "k-plate-ring": { ...stroke("plate-stop", 1.25), dash: [7, 3] },
  "k-plate-edge": stroke("ink", 1.5),
  "k-plate-frame": { ...stroke("ink", 1), dash: [1, 3] },
  "k-plate-mark": both("plate-paper", "plate-ink", 1),
} as const);

/** Rules that texts need beside the look's own `t-` classes: halos of the ground they lie on, and the finer line of rows. */
const TONE_CSS = [
  "svg .halo { paint-order: stroke; stroke: var(--sheet); stroke-width: 3px; stroke-linejoin: round; }",
  "svg .halo-band { paint-order: stroke; stroke: var(--focus-band); stroke-width: 3px; }",
  "svg .halo-p { paint-order: stroke; stroke: var(--paper); stroke-width: 4px; }",
  "svg .t-ring { fill: var(--plate-stop); font-size: 12px; font-weight: 700; }",
  "svg .t-mark { fill: var(--plate-ink); font-size: 12px; font-weight: 700; }",
  "svg .halo-plate { paint-order: stroke; stroke: var(--plate-paper); stroke-width: 3.5px; stroke-linejoin: round; }",
  "svg .thin { stroke-width: 1.5; }",
];

/** Style rules of all marks for a page that defines the roles as custom properties. */
export function markCss(): string {
  const rules = Object.entries(PAINT).map(([mark, paint]) => {
    const parts = [`fill: ${paint.fill === null ? "none" : `var(--${paint.fill})`}`];
    parts.push(`stroke: ${paint.stroke === null ? "none" : `var(--${paint.stroke})`}`);
    if (paint.stroke !== null) parts.push(`stroke-width: ${paint.width}`);
    if (paint.dash !== null) parts.push(`stroke-dasharray: ${paint.dash.join(" ")}`);
    if (paint.cap === "round") parts.push("stroke-linecap: round");
    return `.${mark} { ${parts.join("; ")}; }`;
  });
  return `${[...rules, ...TONE_CSS].join("\n")}\n`;
}

function fill(role: ColourRole): Paint {
  return { fill: role, stroke: null, width: 0, dash: null, cap: "butt" };
}

function stroke(role: ColourRole, width: number): Paint {
  return { fill: null, stroke: role, width, dash: null, cap: "butt" };
}

function both(inside: ColourRole, outline: ColourRole, width: number): Paint {
  return { fill: inside, stroke: outline, width, dash: null, cap: "butt" };
}

function dots(role: ColourRole, width: number): Paint {
  return { fill: null, stroke: role, width, dash: [0.1, 5.9], cap: "round" };
}
