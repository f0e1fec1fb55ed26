/** The left axis of a focus ribbon alone: it stays in place when the ribbon is scrolled on a narrow screen. */
import type { Drawing } from "../chart/drawing.ts";
import type { FocusRibbon } from "../chart/ribbon/focus-ribbon.ts";

/** Texts and ticks that lie left of the plot, on the same scale and of the same height. */
export function ribbonAxis(ribbon: FocusRibbon): Drawing {
  const { left } = ribbon.plot;
  return {
    width: left,
    height: ribbon.height,
    title: "Axis of the ribbon",
    description: "",
    items: ribbon.items.filter((item) => item.type === "text" && (item.anchor === "end" ? item.x <= left : item.x < left / 2)),
  };
}
