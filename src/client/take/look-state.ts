/** Keeps the sentence on the calibration at the frame that the page stands on. */
import { calibrationSentence } from "../../format/calibration-sentence.ts";
import type { OpenTake } from "../../format/take-record.ts";
import type { Scrubber } from "./scrubber.ts";

/** At the middle logged frame the builder's own, fuller sentence stands. */
export function tieLookState(page: Document, take: OpenTake, scrub: Scrubber): void {
  const words = page.querySelector<HTMLElement>("#look-state");
  const block = words?.parentElement ?? null;
  if (words === null || block === null) return;
  const own = words.textContent ?? "";
  const ownClass = block.className;
  scrub.onMove((frame) => {
    if (frame === take.record.middle) {
      words.textContent = own;
      block.className = ownClass;
      return;
    }
    const values = take.valuesAt(frame);
    const { text, warns } = calibrationSentence(values.logged ? values.calibration : "");
    words.textContent = `At ${take.timecodeAt(frame) ?? `frame ${frame + 1}`}: ${text}`;
    block.className = warns ? "box" : "small prose";
  });
}
