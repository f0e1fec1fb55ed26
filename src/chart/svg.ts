/** A drawing as inline SVG. */
import { escapeMarkup } from "../core/markup.ts";
import type { DrawItem, Drawing, ForUnits, PictureSlot } from "./drawing.ts";
import { bar, coordinate, segment } from "./path.ts";

export interface SvgOptions {
  /** Begins the ids of title and description; unique on the page. */
  readonly idPrefix: string;
  /** Hidden from screen readers, without title and description: something beside it says the same. */
  readonly decorative?: boolean;
  /** Addresses of the pictures for the drawing's slots, relative to the page. A slot without one stays empty. */
  readonly pictures?: Readonly<Partial<Record<PictureSlot, string>>>;
}

/**
 * A complete `<svg>` element in one line: `role="img"` with title and description, a class for each mark, all text escaped.
 * Labels of axes are kept from screen readers, which would say them one by one after the title.
 * Colours and fonts come from the page's style sheet.
 */
export function svg(drawing: Drawing, options: SvgOptions): string {
  const width = coordinate(drawing.width);
  const height = coordinate(drawing.height);
  const id = escapeMarkup(options.idPrefix);
  const size = `width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"`;
  const body = elements(drawing.items, options.pictures ?? {});
  if (options.decorative === true) return `<svg ${size} aria-hidden="true">${body}</svg>`;
  const title = `<title id="${id}-t">${escapeMarkup(drawing.title)}</title><desc id="${id}-d">${escapeMarkup(drawing.description)}</desc>`;
  return `<svg ${size} role="img" aria-labelledby="${id}-t" aria-describedby="${id}-d">${title}<g aria-hidden="true">${body}</g></svg>`;
}

/** Texts of one anchor that follow each other share a group that says it. */
function elements(items: readonly DrawItem[], pictures: NonNullable<SvgOptions["pictures"]>): string {
  let body = "";
  let open = "start";
  for (const item of items) {
    const anchor = item.type === "text" ? item.anchor : "start";
    if (anchor !== open) {
      if (open !== "start") body += "</g>";
      if (anchor !== "start") body += `<g text-anchor="${anchor}">`;
      open = anchor;
    }
    body += item.type === "picture" ? picture(item, pictures[item.slot]) : element(item);
  }
  return open === "start" ? body : `${body}</g>`;
}

function picture(item: Extract<DrawItem, { readonly type: "picture" }>, href: string | undefined): string {
  if (href === undefined) return "";
  const at = `x="${coordinate(item.x)}" y="${coordinate(item.y)}" width="${coordinate(item.width)}" height="${coordinate(item.height)}"`;
  return `<image class="${item.slot}" href="${escapeMarkup(href)}" ${at} preserveAspectRatio="none"/>`;
}

function element(item: Exclude<DrawItem, { readonly type: "picture" }>): string {
  switch (item.type) {
    case "path":
      return path(marked(item.thin === true ? `${item.k} thin` : item.k, item), item.d);
    case "line":
      return path(marked(item.k, item), segment(item.x1, item.y1, item.x2, item.y2));
    case "rect":
      return path(marked(item.k, item), bar(item.x, item.y, item.width, item.height));
    case "circle":
      return `<circle class="${item.k}" cx="${coordinate(item.x)}" cy="${coordinate(item.y)}" r="${coordinate(item.r)}"/>`;
    case "text": {
      const classes = marked(item.tone, item);
      const tone = classes === "" ? "" : ` class="${escapeMarkup(classes)}"`;
      return `<text${tone} x="${coordinate(item.x)}" y="${coordinate(item.y)}">${escapeMarkup(item.text)}</text>`;
    }
  }
}

/** Classes by which the page shows what is for its reader's units. */
const UNIT_CLASS: Readonly<Record<string, string>> = { metric: "om", imperial: "oi", both: "ob", "metric both": "dm" };

function marked(classes: string, { units }: ForUnits): string {
  return units === undefined ? classes : `${classes} ${UNIT_CLASS[units.join(" ")] ?? ""}`.trim();
}

function path(mark: string, d: string): string {
  return `<path class="${mark}" d="${d}"/>`;
}
