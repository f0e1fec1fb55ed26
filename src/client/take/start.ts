/** Puts the scrubber to work on a take sheet. */
import { furtherReadout, readout } from "../../format/readout.ts";
import type { OpenTake } from "../../format/take-record.ts";
import { readerMayChoose } from "../../format/units.ts";
import { copyText } from "../parts/copy.ts";
import { unitsOf } from "../parts/units.ts";
import { frameOf, hashOfTimecode, timecodeOfHash } from "./address.ts";
import { cursorOf, keepInView, readPlot } from "./cursor.ts";
import { frameAsText, frameAsTsv, frameWords } from "./frame-text.ts";
import { startLook } from "./look-panel.ts";
import { tieLookState } from "./look-state.ts";
import { fillReadout, readoutList } from "./readout-cells.ts";
import { type Scrubber, scrubber, tiePlot, tieSlider, tieSteps, tieTimecode } from "./scrubber.ts";

/** The address follows when the reader has come to rest: browsers bar pages that rewrite it without pause. */
const REST_MS = 250;

export function startTake(page: Document, take: OpenTake): void {
  const moves = page.querySelector<HTMLElement>(".moves");
  const drawing = page.querySelector<SVGSVGElement>(".ribbon > svg");
  const slide = page.querySelector<HTMLElement>(".slide");
  const slider = slide?.querySelector("input") ?? null;
  const list = page.querySelector(".readout");
  if (moves === null || drawing === null || slide === null || slider === null || list === null) return;
  const plot = readPlot(moves.dataset.plot ?? "", take.record.frames);
  const scrub = scrubber(take);
  tieSlider(slider, slide, plot, take, scrub);
  tiePlot(drawing, plot, scrub);
  tieSteps(moves, take, scrub);
  const form = moves.querySelector("form");
  if (form !== null) tieTimecode(form, take, scrub);
  tieCopies(page, moves, take, scrub);

  const moveCursor = cursorOf(drawing, plot, take.record.middle);
  const timecode = page.querySelector(".at-tc");
  const words = page.querySelector(".at-frame");
  const further = readoutList(page, furtherReadout(take.valuesAt(scrub.frame())));
  list.after(further);
  const box = drawing.parentElement;
  scrub.onMove((frame) => {
    const values = take.valuesAt(frame);
    moveCursor(frame, values.focusDioptres);
    if (box !== null) keepInView(box, drawing, plot, frame);
    if (timecode !== null) timecode.textContent = take.timecodeAt(frame) ?? `frame ${frame + 1}`;
    if (words !== null) {
      const middle = frame === take.record.middle ? ", the middle logged frame" : "";
      words.textContent = frameWords(take, frame) + middle;
    }
    fillReadout(list, readout(values, take.record.sources, readerMayChoose(take.record.distances)));
    fillReadout(further, furtherReadout(values));
  });
  slide.hidden = false;
  moves.hidden = false;
  startLook(page, take, scrub);
  tieLookState(page, take, scrub);
  scrub.go(take.record.middle, "start");
  tieAddress(page, take, scrub);
}

/** Reads the frame from the address now and when it changes, and writes it there when the reader has moved. */
function tieAddress(page: Document, take: OpenTake, scrub: Scrubber): void {
  const view = page.defaultView;
  if (view === null) return;
  const follow = (): void => {
    const written = timecodeOfHash(view.location.hash);
    const found = written === null ? null : frameOf(written, take.record);
    if (found === null || !found.ok) return;
    scrub.go(found.frame, "address");
    page.querySelector("#focus")?.scrollIntoView();
  };
  let timer = 0;
  scrub.onMove((frame, by) => {
    view.clearTimeout(timer);
    if (by !== "reader") return;
    timer = view.setTimeout(() => {
      const timecode = take.timecodeAt(frame);
      if (timecode !== null) view.history.replaceState(view.history.state, "", hashOfTimecode(timecode));
    }, REST_MS);
  });
  view.addEventListener("hashchange", follow);
  follow();
}

function tieCopies(page: Document, moves: Element, take: OpenTake, scrub: Scrubber): void {
  const said = moves.querySelector("#copy-said");
  const texts: Readonly<Record<string, (frame: number) => string>> = {
    text: (frame) => frameAsText(take, frame, unitsOf(page)),
    tsv: (frame) => frameAsTsv(take, frame),
    link: (frame) => {
      const [address = ""] = page.location.href.split("#");
      const timecode = take.timecodeAt(frame);
      return timecode === null ? address : address + hashOfTimecode(timecode);
    },
  };
  for (const button of moves.querySelectorAll<HTMLElement>("[data-take]")) {
    button.addEventListener("click", async () => {
      const text = texts[button.dataset.take ?? ""]?.(scrub.frame()) ?? "";
      // emptied first, so that a second copy is said again
      if (said !== null) said.textContent = "";
      const done = await copyText(page, text);
      if (said !== null) said.textContent = done ? "Copied" : "This browser does not let a page copy.";
    });
  }
}
