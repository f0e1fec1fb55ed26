/** The frame that the page stands on, and the ways to change it: slider, keys, buttons, typed timecode, the plot itself. */
import type { OpenTake } from "../../format/take-record.ts";
import { nominalRate } from "../../time/frame-rate.ts";
import { frameOf } from "./address.ts";
import { onPlotPress, type Plot, xOfFrame } from "./cursor.ts";

export interface Scrubber {
  readonly frame: () => number;
  /** Goes to a frame, cut at the ends of the take. `by` tells listeners whether the reader or the address moved it. */
  go(frame: number, by: Mover): void;
  onMove(listener: (frame: number, by: Mover) => void): void;
}

/** `start` and `address` are not written into the address again. */
export type Mover = "reader" | "address" | "start";

export function scrubber(take: OpenTake): Scrubber {
  const listeners: ((frame: number, by: Mover) => void)[] = [];
  let current = take.record.middle;
  return {
    frame: () => current,
    go(frame, by) {
      const next = Math.min(take.record.frames - 1, Math.max(0, Math.round(frame)));
      if (next === current && by === "reader") return;
      current = next;
      for (const listener of listeners) listener(next, by);
    },
    onMove: (listener) => {
      listeners.push(listener);
    },
  };
}

/** Ties the slider: its thumb stands under the cursor at every frame; Shift with an arrow moves a second. */
export function tieSlider(slider: HTMLInputElement, box: HTMLElement, plot: Plot, take: OpenTake, scrub: Scrubber): void {
  const percent = (x: number): string => `${((100 * x) / plot.width).toFixed(4)}%`;
  box.style.setProperty("--from", percent(plot.left));
  box.style.setProperty("--span", percent(xOfFrame(plot, plot.frames - 1) - plot.left));
  tieRange(slider, take, scrub);
}

/** Ties a range of frames: arrows go a frame, with Shift a second. */
export function tieRange(slider: HTMLInputElement, take: OpenTake, scrub: Scrubber): void {
  slider.addEventListener("input", () => scrub.go(Number(slider.value), "reader"));
  slider.addEventListener("keydown", (event) => {
    const way = ["ArrowRight", "ArrowUp"].includes(event.key) ? 1 : ["ArrowLeft", "ArrowDown"].includes(event.key) ? -1 : 0;
    if (way === 0 || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    scrub.go(scrub.frame() + way * (event.shiftKey ? second(take) : 1), "reader");
  });
  scrub.onMove((frame) => {
    slider.value = String(frame);
    slider.setAttribute("aria-valuetext", take.timecodeAt(frame) ?? `frame ${frame + 1}`);
  });
}

export function tiePlot(drawing: SVGSVGElement, plot: Plot, scrub: Scrubber): void {
  onPlotPress(drawing, plot, (frame) => scrub.go(frame, "reader"));
}

export function tieSteps(box: Element, take: OpenTake, scrub: Scrubber): void {
  for (const button of box.querySelectorAll<HTMLElement>("[data-step]")) {
    const step = button.dataset.step ?? "";
    const by = (step.startsWith("-") ? -1 : 1) * (step.endsWith("second") ? second(take) : 1);
    button.addEventListener("click", () => scrub.go(scrub.frame() + by, "reader"));
  }
}

/** The field for a timecode: says under itself what it could not use. */
export function tieTimecode(form: HTMLFormElement, take: OpenTake, scrub: Scrubber): void {
  const field = form.querySelector("input");
  const said = form.querySelector("[role=status]");
  if (field === null || said === null) return;
  // What is typed replaces the timecode that stands there: the first press chooses it whole, the next sets the cursor.
  let fresh = false;
  field.addEventListener("focus", () => {
    fresh = true;
    field.select();
  });
  field.addEventListener("click", () => {
    if (fresh) field.select();
    fresh = false;
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const found = frameOf(field.value, take.record);
    if (found.ok) scrub.go(found.frame, "reader");
    field.setAttribute("aria-invalid", String(!found.ok));
    said.textContent = found.ok ? "" : `${found.problem} ${span(take)}`;
  });
  scrub.onMove((frame) => {
    if (field.ownerDocument.activeElement !== field) field.value = take.timecodeAt(frame) ?? String(frame + 1);
  });
}

function span(take: OpenTake): string {
  const last = take.record.frames - 1;
  const from = take.timecodeAt(0);
  return from === null ? `It has frames 1 to ${last + 1}.` : `It runs from ${from} to ${take.timecodeAt(last)}.`;
}

function second(take: OpenTake): number {
  return nominalRate(take.record.rate);
}
