/** The lens look panel: takes distortion and shading off the take's still at the scrubber's frame, and puts them back. */
import type { OpenTake } from "../../format/take-record.ts";
import { takeOff } from "../../still/take-off.ts";
import { looksOf } from "./look-at.ts";
import { fillPoints, overscanWords, pointRows } from "./look-numbers.ts";
import { cornerOn } from "./look-overlay.ts";
import { type PanelState, painter } from "./look-painter.ts";
import { CARD, canvasOf, ownPicture, type PanelPicture, saveCanvas, stillFromScript } from "./look-pictures.ts";
import type { View } from "./look-pixels.ts";
import { viewOf } from "./look-view.ts";
import { type Scrubber, tieRange } from "./scrubber.ts";

/** Pixels of the canvas across the magnified part. */
const MAGNIFIED = 60;
/** For browsers that do not say when they are idle. */
const IDLE_MS = 500;

export function startLook(page: Document, take: OpenTake, scrub: Scrubber): void {
  const box = page.querySelector<HTMLElement>(".look");
  const live = box?.querySelector<HTMLElement>(".live") ?? null;
  const { look: record } = take.record;
  if (box === null || live === null || record === null) return;
  const part = <T extends HTMLElement>(selector: string): T => live.querySelector(selector) as T;
  const canvas = part<HTMLCanvasElement>("#look-canvas");
  const lens = part<HTMLCanvasElement>("#look-lens");
  const split = part<HTMLInputElement>("#look-split");
  const grid = part<HTMLInputElement>("#look-grid");
  const corner = part<HTMLSelectElement>("#look-corner");
  const said = part("#look-said");
  const back = part<HTMLButtonElement>("#look-back");
  const table = page.querySelector("#look-table");
  const head = page.querySelector("#look ~ p");

  const lookAt = looksOf(record, take.record.frames);
  let drawing: { readonly view: View; readonly paint: ReturnType<typeof painter> } | null = null;
  /** Worked out with the first drawing: the page itself is painted before. */
  const drawingTools = () => {
    if (drawing !== null) return drawing;
    const view = viewOf(record, take.record.frames, lookAt);
    drawing = { view, paint: painter(canvas, view) };
    return drawing;
  };
  let still: PanelPicture | null = null;
  let own: PanelPicture | null = null;
  let asked: Promise<void> | null = null;
  let seen = false;
  let waiting = false;

  const isOff = (what: string): boolean => page.querySelector<HTMLInputElement>(`#${what}-off`)?.checked ?? false;
  const state = (): PanelState => {
    const picture = own ?? still;
    return {
      picture: picture?.light ?? CARD,
      isCard: picture === null,
      distortionOff: isOff("distortion"),
      shadingOff: isOff("shading"),
      split: Number(split.value) / 100,
      grid: grid.checked,
    };
  };
  const draw = (): void => {
    waiting = false;
    const { view, paint } = drawingTools();
    const frame = scrub.frame();
    const look = lookAt(frame);
    const now = state();
    const values = take.valuesAt(frame);
    const side = now.distortionOff && look?.distortion != null ? "ideal" : "recorded";
    const [sx = 0, sy = 0] = corner.value.split(" ").map(Number);
    box.classList.add("is-live");
    live.hidden = false;
    if (seen) box.classList.add("is-painted");
    paint(look, now, () => magnify(lens, canvas, cornerOn(view, look, side, sx, sy)));
    const timecode = take.timecodeAt(frame) ?? `frame ${frame + 1}`;
    part("#look-tc").textContent = timecode;
    part("#look-words").textContent = words(now, look === null, take.logged[frame] === 1);
    part("#look-overscan").textContent = overscanWords(look, record.pixels);
    const rows = pointRows(values, look, record.pixels);
    if (table !== null) fillPoints(table, rows);
    if (head !== null)
      head.textContent = `At ${timecode}${frame === take.record.middle ? ", the middle logged frame" : ""}. Negative distortion is barrel, negative shading is darker than the centre.`;
    canvas.setAttribute(
      "aria-label",
      `Lens look at ${timecode}: ${spoken(now)}. Corner: distortion ${rows[0]?.[0]} %, shading ${rows[0]?.at(-2)} stops.`,
    );
  };
  /** At most once a screen refresh, and not while nobody sees it. */
  const redraw = (): void => {
    if (waiting || !seen) return;
    waiting = true;
    requestAnimationFrame(draw);
  };

  scrub.onMove(redraw);
  // what was painted once stands on paper with the figures of the same frame
  page.defaultView?.addEventListener("beforeprint", () => {
    if (box.classList.contains("is-painted")) draw();
  });
  tieRange(part<HTMLInputElement>("#look-frame"), take, scrub);
  box.addEventListener("input", redraw);
  tieSplit(canvas, split, redraw);
  const use = async (file: Blob | undefined): Promise<void> => {
    if (file === undefined) return;
    const read = await ownPicture(page, file, record);
    said.textContent = read.ok ? "Your picture is read here and goes nowhere." : read.problem;
    if (!read.ok) return;
    own = read.picture;
    back.hidden = false;
    redraw();
  };
  const field = part<HTMLInputElement>("#look-file");
  field.addEventListener("change", () => void use(field.files?.[0]));
  live.addEventListener("dragover", (event) => event.preventDefault());
  live.addEventListener("drop", (event) => {
    event.preventDefault();
    void use(event.dataTransfer?.files[0]);
  });
  back.addEventListener("click", () => {
    own = null;
    back.hidden = true;
    field.value = "";
    said.textContent = "";
    field.focus();
    redraw();
  });
  part("#look-save").addEventListener("click", async () => {
    said.textContent = "";
    const now = state();
    const look = lookAt(scrub.frame());
    const picture = own ?? still;
    const parts = { distortion: now.distortionOff && look?.distortion != null, shading: now.shadingOff && look?.shading != null };
    if (picture !== null && !parts.distortion && !parts.shading) {
      said.textContent = "Nothing is taken off at this frame: there is nothing to save.";
      return;
    }
    const made = picture === null || look === null ? null : takeOff(picture.full(), look, parts);
    if (picture !== null && made === null) said.textContent = "The picture spreads too far to be saved.";
    else if (await saveCanvas(page, made === null ? canvas : canvasOf(page, made), fileName(take, scrub.frame(), parts)))
      said.textContent = "Saved as PNG";
  });

  const readStill = (href: string): Promise<void> =>
    stillFromScript(page, href).then(
      (picture) => {
        still = picture;
      },
      () => {
        said.textContent = "The still could not be read; the grid is drawn on a plain card.";
      },
    );
  const ready = (): Promise<void> => {
    asked ??= take.record.still === null ? Promise.resolve() : readStill(take.record.still);
    return asked;
  };
  new IntersectionObserver((entries) => {
    seen = entries.some((entry) => entry.isIntersecting);
    redraw();
    if (seen) void ready().then(redraw);
  }).observe(box);
  // once without being seen, so that a picture of the whole page is not blank; until then the builder's drawing stands
  whenIdle(page, () => {
    void ready().then(() => {
      if (!box.classList.contains("is-live")) draw();
    });
  });
}

/** After the page has loaded and has nothing else to do. */
function whenIdle(page: Document, then: () => void): void {
  const view = page.defaultView;
  if (view === null) return;
  const wait = (): void => {
    // not in every browser
    if (typeof view.requestIdleCallback === "function") view.requestIdleCallback(() => then());
    else view.setTimeout(then, IDLE_MS);
  };
  if (page.readyState === "complete") wait();
  else view.addEventListener("load", wait, { once: true });
}

function magnify(to: HTMLCanvasElement, from: HTMLCanvasElement, [x, y]: readonly [number, number]): void {
  const context = to.getContext("2d");
  if (context === null) return;
  const height = (MAGNIFIED * to.height) / to.width;
  context.imageSmoothingEnabled = false;
  context.clearRect(0, 0, to.width, to.height);
  context.drawImage(from, x - MAGNIFIED / 2, y - height / 2, MAGNIFIED, height, 0, 0, to.width, to.height);
}

/** The split line follows a press or a drag on the picture; the slider does the same from the keyboard. */
function tieSplit(canvas: HTMLCanvasElement, split: HTMLInputElement, redraw: () => void): void {
  const move = (event: PointerEvent): void => {
    const box = canvas.getBoundingClientRect();
    split.value = String(Math.round((100 * (event.clientX - box.left)) / box.width));
    redraw();
  };
  canvas.addEventListener("pointerdown", (event) => {
    if (event.pointerType === "touch" || event.button !== 0) return;
    canvas.setPointerCapture(event.pointerId);
    move(event);
  });
  canvas.addEventListener("pointermove", (event) => {
    if (canvas.hasPointerCapture(event.pointerId)) move(event);
  });
}

function spoken(state: PanelState): string {
  const how = (off: boolean): string => (off ? "taken off" : "as recorded");
  return `distortion ${how(state.distortionOff)}, shading ${how(state.shadingOff)}`;
}

function words(state: PanelState, none: boolean, logged: boolean): string {
  if (none) return logged ? "No lens look at this frame: nothing is taken off." : "Not logged at this frame: nothing is taken off.";
  const on = state.isCard ? "A plain card stands for the picture. " : "";
  const lines = state.distortionOff
    ? "Distortion taken off: straight lines are straight, the edge shows how far the picture has spread; dots, the recorded frame; dashes, the overscan frame."
    : "As recorded: the black grid is a square grid as this lens draws it, white dots the same grid, true.";
  return `${on}${lines}${state.split > 0 ? " Left of the line: as recorded." : ""}`;
}

function fileName(take: OpenTake, frame: number, parts: { readonly distortion: boolean; readonly shading: boolean }): string {
  const timecode = (take.timecodeAt(frame) ?? String(frame + 1)).replace(/[:;]/g, "-");
  const off = [parts.distortion ? "distortion" : null, parts.shading ? "shading" : null].filter((part) => part !== null);
  return `${take.record.address}-${timecode}-${off.length === 0 ? "grid" : `${off.join("-")}-off`}.png`;
}
