/** Pictures of pages as they should look, small enough to keep, drawn with fonts of our own so that every machine draws the same letters. */
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { PNG } from "pngjs";

export const PICTURES = fileURLToPath(new URL("../golden/pictures", import.meta.url));

export interface View {
  /** Name of the picture without its ending. */
  readonly name: string;
  readonly url: string;
  readonly dark: boolean;
  readonly widthPx: number;
}

/** Pixels of the page that become one pixel of the picture, across and down. */
const SHRINK = 2;
/** Tallest part of a page that is kept, in its pixels. */
const TALLEST = 1200;

const FONTS = pathToFileURL(join(dirname(createRequire(import.meta.url).resolve("dejavu-fonts-ttf/package.json")), "ttf/")).href;
const faces = (family: string, file: string, bold: string, italic: string): string =>
  [
    ["400", "normal", file],
    ["700", "normal", bold],
    ["400", "italic", italic],
  ]
    .map(
      ([weight, style, name]) =>
        `@font-face { font-family: "${family}"; font-weight: ${weight}; font-style: ${style}; src: url("${FONTS}${name}.ttf") }`,
    )
    .join("\n");
const STYLE = `
${faces("Picture Sans", "DejaVuSans", "DejaVuSans-Bold", "DejaVuSans-Oblique")}
${faces("Picture Serif", "DejaVuSerif", "DejaVuSerif-Bold", "DejaVuSerif-Italic")}
${faces("Picture Mono", "DejaVuSansMono", "DejaVuSansMono-Bold", "DejaVuSansMono-Oblique")}
:root { --sans: "Picture Sans" !important; --serif: "Picture Serif" !important; --mono: "Picture Mono" !important }
* { caret-color: transparent !important; scrollbar-width: none !important }
.foot { visibility: hidden !important }`;

/**
 * The page as a small PNG: its top, without the footer, whose build id changes with every change of the code. `css` is laid over
 * it, to try what the comparison sees.
 */
export async function pictureOf(browser: Browser, { url, dark, widthPx }: View, css = ""): Promise<PNG> {
  const context = await browser.newContext({
    viewport: { width: widthPx, height: 900 },
    colorScheme: dark ? "dark" : "light",
    reducedMotion: "reduce",
    bypassCSP: true,
  });
  const page = await context.newPage();
  await page.goto(url);
  await page.addStyleTag({ content: STYLE + css });
  await page.evaluate(() => document.fonts.ready);
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  const clip = { x: 0, y: 0, width: widthPx, height: Math.min(TALLEST, height - (height % SHRINK)) };
  const shot = PNG.sync.read(await page.screenshot({ clip, fullPage: true, animations: "disabled" }));
  await context.close();
  return shrunk(shot);
}

/** Each pixel the mean of a square of pixels, its light in 32 steps: fine enough to see, small to keep. */
function shrunk(shot: PNG): PNG {
  const small = new PNG({ width: Math.floor(shot.width / SHRINK), height: Math.floor(shot.height / SHRINK) });
  const { data, width } = shot;
  // of a square of two by two: the four values, added up by their place
  const places = [0, 4, 4 * width, 4 * width + 4];
  for (let y = 0; y < small.height; y++) {
    for (let x = 0; x < small.width; x++) {
      const to = 4 * (y * small.width + x);
      const from = 4 * (SHRINK * y * width + SHRINK * x);
      for (let channel = 0; channel < 3; channel++) {
        let sum = 0;
        for (const place of places) sum += data[from + place + channel] as number;
        small.data[to + channel] = Math.min(255, 8 * Math.round(sum / 4 / 8));
      }
      small.data[to + 3] = 255;
    }
  }
  return small;
}

/** Mean of one channel over a square of pixels, cut at the picture's edges. */
function meanOf({ data, width, height }: PNG, channel: number, left: number, top: number, side: number): number {
  let sum = 0;
  let count = 0;
  for (let y = top; y < Math.min(height, top + side); y++) {
    for (let x = left; x < Math.min(width, left + side); x++) {
      sum += data[4 * (y * width + x) + channel] ?? 0;
      count++;
    }
  }
  return sum / count;
}

/** Side of the squares that are compared, in pixels of the picture. */
const BLOCK = 8;
/** Difference of two means of a square, in steps of 255, that smoothing of letters alone does not make. */
const STEP = 10;
/** Rows that a page may be longer or shorter, in pixels of the picture. */
const LENGTH = 4;

/**
 * What is different between two pictures of a page, in words; `null` when nothing is. Squares of 8 x 8 pixels are compared by
 * their mean colour, so that a letter drawn a little differently is no difference and a moved line or a changed colour is.
 */
export function differenceOf(want: PNG, got: PNG): string | null {
  if (want.width !== got.width || Math.abs(want.height - got.height) > LENGTH)
    return `is ${got.width} x ${got.height} pixels, not ${want.width} x ${want.height}`;
  let squares = 0;
  let first = "";
  for (let y = 0; y < Math.min(want.height, got.height) - BLOCK; y += BLOCK) {
    for (let x = 0; x < want.width; x += BLOCK) {
      const off = [0, 1, 2].map((c) => Math.abs(meanOf(want, c, x, y, BLOCK) - meanOf(got, c, x, y, BLOCK)));
      if (Math.max(...off) <= STEP) continue;
      squares++;
      if (first === "") first = `the first at ${x * SHRINK}, ${y * SHRINK} of the page`;
    }
  }
  return squares === 0 ? null : `differs in ${squares} squares, ${first}`;
}

export function written(picture: PNG): Buffer {
  return PNG.sync.write(picture, { colorType: 2, deflateLevel: 9, filterType: -1 });
}
