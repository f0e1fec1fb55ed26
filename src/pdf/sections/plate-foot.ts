/** Foot of a plate sheet: the still and the lens look beside an empty field to sketch the set in. */
import { lensLookDrawing } from "../../chart/look/lens-look.ts";
import { middleLook } from "../../still/middle-look.ts";
import type { TakeSummary } from "../../summary/types.ts";
import { takeName } from "../../view/names.ts";
import type { Element } from "../document.ts";
import { drawDrawing } from "../drawing.ts";
import { lineHeight } from "../ink.ts";
import { PRINT } from "../palette.ts";
import { type Report, TYPE } from "../report.ts";
import { type PrintPicture, printPicture, type Still } from "../still-picture.ts";
import { artifact, element } from "../tags.ts";

/** Less than this is no room to draw in. */
const LEAST_HEIGHT = 120;
/** Less than this is no room for two pictures over each other. */
const LOW_HEIGHT = 210;
const MOST_HEIGHT = 420;
const GUTTER = 14;
const CAPTION = 12;
/** Of the words in place of a still. */
const STILL_LINES = 3;
/** Pixels that a lens look is drawn at: its labels print at 8 points and more. */
const LOOK_WIDTH_PX = 300;
const GRID_MM = 5;
const POINTS_A_MM = 72 / 25.4;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function plateFoot(report: Report, parent: Element, takes: readonly TakeSummary[]): void {
  const { flow } = report;
  flow.y += 8;
  flow.need(LEAST_HEIGHT);
  const { left, width } = flow.sheet;
  const height = Math.min(MOST_HEIGHT, flow.left()) - 2;
  const still = stillOf(report, takes);
  const looked = takes.find((t) => t.take.circled && middleLook(t) !== null) ?? takes.find((t) => middleLook(t) !== null);
  const pictures: ((box: Box) => number)[] = [
    ...(still === null ? [] : [(box: Box) => drawStill(report, parent, still, box)]),
    ...(looked === undefined ? [] : [(box: Box) => drawLook(report, parent, looked, box)]),
  ];
  const beside = height < LOW_HEIGHT;
  const column = width * (beside ? 0.26 : 0.4);
  let { y } = flow;
  let x = left;
  pictures.forEach((draw, i) => {
    const used = draw({ x, y, width: column, height: beside ? height : (flow.y + height - y) / (pictures.length - i) });
    if (beside) x += column + GUTTER;
    else y += used + 6;
  });
  if (!beside && pictures.length > 0) x += column + GUTTER;
  sketchField(report, parent, { x, y: flow.y, width: left + width - x, height });
  flow.y += height;
}

interface TakeStill {
  readonly take: TakeSummary;
  readonly still: Still;
  readonly picture: PrintPicture | null;
}

function stillOf(report: Report, takes: readonly TakeSummary[]): TakeStill | null {
  const found = takes.flatMap((take) => {
    const still = report.stills.get(take.take.address);
    return still === undefined ? [] : [{ take, still, picture: printPicture(still.bytes) }];
  });
  return found.find(({ picture }) => picture !== null) ?? found[0] ?? null;
}

/** The picture in its shape, as large as the box allows; returns the height used. */
function drawStill(report: Report, parent: Element, { take, still, picture }: TakeStill, box: Box): number {
  const { doc } = report;
  const name = takeName(take.take);
  if (picture === null) {
    caption(
      report,
      parent,
      `Still ${still.name} of ${name}: in the pages of the day. Printed here are PNG, and JPEG in RGB or grey of at most 1 MB.`,
      box,
      STILL_LINES,
    );
    return STILL_LINES * lineHeight(TYPE.label);
  }
  caption(report, parent, `Still ${still.name}, ${name}`, box);
  const scale = Math.min(box.width / picture.widthPx, (box.height - CAPTION) / picture.heightPx);
  const size = { width: picture.widthPx * scale, height: picture.heightPx * scale };
  const top = box.y + CAPTION;
  const bbox = [box.x, top, box.x + size.width, top + size.height] as const;
  const remark = take.remarks === null ? "" : ` Remark: ${take.remarks}`;
  element(
    doc,
    parent,
    "Figure",
    { alt: `Still ${still.name} of ${name}, a picture of the set.${remark}`, bbox, placement: "Block" },
    () => {
      doc.image(Buffer.from(picture.bytes), box.x, top, size);
    },
  );
  return CAPTION + size.height;
}

function drawLook(report: Report, parent: Element, t: TakeSummary, box: Box): number {
  const look = middleLook(t);
  if (look === null) return 0;
  caption(report, parent, `Lens look of ${takeName(t.take)}`, box);
  const drawing = lensLookDrawing(look, { width: LOOK_WIDTH_PX, side: "recorded" });
  const scale = Math.min(box.width / drawing.width, (box.height - CAPTION) / drawing.height);
  return (
    CAPTION +
    drawDrawing(report, parent, { ...drawing, title: `${takeName(t.take)}. ${drawing.title}` }, box.x, box.y + CAPTION, scale)
  );
}

/** A field with a faint grid of 5 mm. */
function sketchField(report: Report, parent: Element, box: Box): void {
  const { doc, ink } = report;
  const long = "Sketch of the set: camera, subject, plates, light; distances (grid of 5 mm)";
  caption(report, parent, ink.width(long, TYPE.label) <= box.width ? long : "Sketch of the set (grid of 5 mm)", box);
  const top = box.y + CAPTION;
  const bottom = box.y + box.height;
  const step = GRID_MM * POINTS_A_MM;
  artifact(doc, () => {
    doc
      .lineWidth(0.7)
      .lineCap("round")
      .dash(0.01, { space: step - 0.01 });
    for (let y = top + step; y < bottom - 2; y += step)
      doc
        .moveTo(box.x + step, y)
        .lineTo(box.x + box.width - 2, y)
        .stroke(PRINT.rule);
    doc.undash().lineCap("butt");
    ink.box(box.x, top, box.width, bottom - top, { stroke: PRINT.edge });
  });
}

/** Above a picture, in one line; what stands in place of one may take more. */
function caption(report: Report, parent: Element, text: string, box: Box, most = 1): void {
  const { doc, ink } = report;
  const lines = most === 1 ? [ink.fitted(text, TYPE.label, box.width)] : ink.lines(text, TYPE.label, box.width).slice(0, most);
  element(doc, parent, "P", {}, () => {
    lines.forEach((line, i) => {
      ink.text(`${line} `, box.x, box.y + 8 + i * lineHeight(TYPE.label), TYPE.label);
    });
  });
}
