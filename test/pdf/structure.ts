/** What stands in a PDF file, read by qpdf: the structure tree with the place of each element, links, and the colours of its pages. */
import { look } from "./tools.ts";

type Value = string | number | boolean | null | readonly Value[] | { readonly [key: string]: Value };
type Dict = { readonly [key: string]: Value };

interface Stored {
  readonly value?: Dict;
  readonly stream?: { readonly dict: Dict; readonly data?: string };
}

/** Points from the top left corner of a page (1 is the first). */
export interface Place {
  readonly page: number;
  readonly left: number;
  readonly top: number;
}

export interface Placed extends Place {
  readonly tag: string;
}

export interface PdfLink extends Place {
  readonly right: number;
  readonly bottom: number;
  /** What it says to people who do not see it. */
  readonly label: string;
  /** Where it leads to. */
  readonly to: { readonly page: number; readonly top: number };
}

export interface PdfParts {
  /** In the order of the tree; a table or a list where its first text stands. */
  readonly elements: readonly Placed[];
  readonly links: readonly PdfLink[];
  /** Colours that text, lines and areas are painted with, as #RRGGBB. */
  readonly colours: ReadonlySet<string>;
}

export function pdfParts(bytes: Uint8Array): PdfParts {
  const args = ["--json=2", "--json-stream-data=inline", "--decode-level=generalized", "file"];
  const json = JSON.parse(look("qpdf", bytes, args)) as {
    readonly qpdf: readonly [Dict, Readonly<Record<string, Stored>>];
    readonly pages: readonly { readonly object: string; readonly contents: readonly string[] }[];
  };
  const objects = json.qpdf[1];
  const resolved = (value: Value | undefined): Value => {
    if (typeof value !== "string" || !/^\d+ 0 R$/.test(value)) return value ?? null;
    return objects[`obj:${value}`]?.value ?? null;
  };
  const dict = (value: Value | undefined): Dict => (resolved(value) ?? {}) as Dict;
  const list = (value: Value | undefined): readonly Value[] => {
    const found = resolved(value);
    return found === null ? [] : Array.isArray(found) ? found : [found];
  };
  const root = dict(dict((objects as unknown as { readonly trailer: Stored }).trailer.value)["/Root"]);
  const heights = json.pages.map(({ object }) => Number(list(dict(object)["/MediaBox"])[3]));
  const streams = json.pages.map(({ contents }) =>
    contents.map((name) => Buffer.from(objects[`obj:${name}`]?.stream?.data ?? "", "base64").toString("latin1")).join("\n"),
  );
  const texts = streams.map((stream, i) => textPlaces(stream, heights[i] ?? 0));
  const pageOf = (ref: Value | undefined) => json.pages.findIndex(({ object }) => object === ref);

  const elements: Placed[] = [];
  const firstPlace = (value: Value, page: number): Place | null => {
    if (typeof value === "number") {
      const at = texts[page]?.get(value);
      return at === undefined ? null : { page: page + 1, ...at };
    }
    const node = dict(value);
    const own = node["/Pg"] === undefined ? page : pageOf(node["/Pg"]);
    if (node["/Type"] === "/MCR") return firstPlace(node["/MCID"] ?? null, own);
    const box = list(dict(node["/A"])["/BBox"]).map(Number);
    if (node["/S"] === "/Figure" && box.length === 4)
      return { page: own + 1, left: box[0] as number, top: (heights[own] ?? 0) - (box[3] as number) };
    for (const kid of list(node["/K"])) {
      const found = firstPlace(kid, own);
      if (found !== null) return found;
    }
    return null;
  };
  const walk = (value: Value, page: number) => {
    if (typeof value === "number") return;
    const node = dict(value);
    const own = node["/Pg"] === undefined ? page : pageOf(node["/Pg"]);
    const tag = String(node["/S"] ?? "").slice(1);
    const place = tag === "" ? null : firstPlace(value, own);
    if (place !== null) elements.push({ tag, ...place });
    for (const kid of list(node["/K"])) walk(kid, own);
  };
  for (const kid of list(dict(root["/StructTreeRoot"])["/K"])) walk(kid, -1);

  const names = list(dict(dict(root["/Names"])["/Dests"])["/Names"]);
  const places = new Map<Value, PdfLink["to"]>();
  for (let i = 0; i < names.length; i += 2) {
    const [ref, , , y] = list(names[i + 1]);
    const page = pageOf(ref);
    places.set(names[i] ?? null, { page: page + 1, top: (heights[page] ?? 0) - Number(y) });
  }
  const links = json.pages.flatMap(({ object }, i) =>
    list(dict(object)["/Annots"]).flatMap((annotation): readonly PdfLink[] => {
      const link = dict(annotation);
      const to = places.get(dict(link["/A"])["/D"] ?? null);
      if (link["/Subtype"] !== "/Link" || to === undefined) return [];
      const [left = 0, low = 0, right = 0, high = 0] = list(link["/Rect"]).map(Number);
      const height = heights[i] ?? 0;
      const [top, bottom] = [height - Math.max(low, high), height - Math.min(low, high)];
      return [{ page: i + 1, left, right, top, bottom, label: String(link["/Contents"]).replace(/^u:/, ""), to }];
    }),
  );
  const painted = streams.join("\n").matchAll(/(?<![\d.])([\d.]+) ([\d.]+) ([\d.]+) (?:scn|SCN)\b/g);
  const hex = (part: string | undefined) =>
    Math.round(Number(part) * 255)
      .toString(16)
      .padStart(2, "0");
  const colours = new Set([...painted].map(([, r, g, b]) => `#${hex(r)}${hex(g)}${hex(b)}`.toUpperCase()));
  return { elements, links, colours };
}

/** Where the first text of each marked content of a page stands. */
function textPlaces(stream: string, height: number): ReadonlyMap<number, { readonly left: number; readonly top: number }> {
  const places = new Map<number, { left: number; top: number }>();
  for (const [, id, content = ""] of stream.matchAll(/\/MCID (\d+)\s*>>\s*BDC([\s\S]*?)EMC/g)) {
    const found = /1 0 0 1 ([\d.]+) ([\d.]+) Tm\s+\/\S+ ([\d.]+) Tf/.exec(content);
    if (found === null) continue;
    const [left, y] = [Number(found[1]), Number(found[2])];
    places.set(Number(id), { left, top: height - y });
  }
  return places;
}
