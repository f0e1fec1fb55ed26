/** The cursor of the focus ribbon: a line through all strips, a ring on the focus line. The builder has drawn both. */

/** Where frames and dioptres lie in the drawing, and how wide it is. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly infinityY: number;
  readonly pixelsPerDioptre: number;
  readonly width: number;
  readonly frames: number;
}

/** The plot from its attribute: left, right, infinity, pixels a dioptre, width. */
export function readPlot(text: string, frames: number): Plot {
  const [left = 0, right = 0, infinityY = 0, pixelsPerDioptre = 0, width = 1] = text.split(" ").map(Number);
  return { left, right, infinityY, pixelsPerDioptre, width, frames };
}

export function xOfFrame(plot: Plot, frame: number): number {
  return plot.left + (frame * (plot.right - plot.left)) / plot.frames;
}

/** The frame whose place is nearest to an x of the drawing, inside the take. */
function frameOfX(plot: Plot, x: number): number {
  const frame = Math.round(((x - plot.left) * plot.frames) / (plot.right - plot.left));
  return Math.min(plot.frames - 1, Math.max(0, frame));
}

/** Moves the cursor of a drawing; the ring goes where there is no focus. */
export function cursorOf(drawing: SVGSVGElement, plot: Plot, drawnAt: number): (frame: number, dioptres: number) => void {
  const line = drawing.querySelector<SVGPathElement>(".k-cursor");
  const ring = drawing.querySelector<SVGCircleElement>(".k-dot") ?? ringIn(drawing);
  return (frame, dioptres) => {
    line?.setAttribute("transform", `translate(${(xOfFrame(plot, frame) - xOfFrame(plot, drawnAt)).toFixed(2)} 0)`);
    ring.setAttribute("visibility", Number.isNaN(dioptres) ? "hidden" : "visible");
    if (Number.isNaN(dioptres)) return;
    ring.setAttribute("cx", xOfFrame(plot, frame).toFixed(2));
    ring.setAttribute("cy", (plot.infinityY + Math.max(0, dioptres) * plot.pixelsPerDioptre).toFixed(2));
  };
}

/** Scrolls the plot in its box so that the cursor is seen, with a little of what comes. Nothing glides. */
export function keepInView(box: Element, drawing: SVGSVGElement, plot: Plot, frame: number): void {
  const scale = drawing.getBoundingClientRect().width / plot.width;
  const x = xOfFrame(plot, frame) * scale;
  const room = Math.min(60, box.clientWidth / 4);
  const left = plot.left * scale;
  if (x - left < box.scrollLeft + room) box.scrollLeft = x - left - room;
  else if (x > box.scrollLeft + box.clientWidth - room) box.scrollLeft = x - box.clientWidth + room;
}

function ringIn(drawing: SVGSVGElement): SVGCircleElement {
  const ring = drawing.ownerDocument.createElementNS("http://www.w3.org/2000/svg", "circle");
  ring.setAttribute("class", "k-dot");
  ring.setAttribute("r", "5");
  drawing.append(ring);
  return ring;
}

/** A press or a drag with mouse or pen on the plot; a finger scrolls the plot, and its tap counts. */
export function onPlotPress(drawing: SVGSVGElement, plot: Plot, moved: (frame: number) => void): void {
  const at = (event: MouseEvent): void => {
    const box = drawing.getBoundingClientRect();
    moved(frameOfX(plot, ((event.clientX - box.left) * plot.width) / box.width));
  };
  let held = false;
  drawing.addEventListener("pointerdown", (event) => {
    if (event.pointerType === "touch" || event.button !== 0) return;
    held = true;
    drawing.setPointerCapture(event.pointerId);
    at(event);
  });
  drawing.addEventListener("pointermove", (event) => {
    if (held) at(event);
  });
  for (const end of ["pointerup", "pointercancel"] as const) {
    drawing.addEventListener(end, () => {
      held = false;
    });
  }
  drawing.addEventListener("click", at);
}
