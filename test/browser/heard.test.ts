/** Pages as a screen reader gets them: the browser's own accessibility tree, in order. */

import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { DEMO_OUT } from "../helpers/demo-pages.ts";

const DAY = "days/2026-10-06/index.html";
/** A plate with a gap, a calibrated lens and a clean plate beside it. */
const TAKE = "days/2026-10-06/takes/a-14b-2.html";

interface Heard {
  readonly role: string;
  readonly name: string;
  readonly description: string;
  readonly inside: readonly Heard[];
}

let browser: Browser;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  page = await context.newPage();
});
afterAll(async () => {
  await browser?.close();
});

/** The tree of a page, without what the browser leaves out. */
async function heard(path: string): Promise<Heard> {
  await page.goto("about:blank");
  await page.goto(pathToFileURL(join(DEMO_OUT, path)).href);
  const session = await context.newCDPSession(page);
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const read = (id: string): readonly Heard[] => {
    const node = byId.get(id);
    if (node === undefined) return [];
    const inside = (node.childIds ?? []).flatMap(read);
    if (node.ignored) return inside;
    const text = (value: { value?: unknown } | undefined): string =>
      String(value?.value ?? "")
        .replace(/\s+/g, " ")
        .trim();
    return [{ role: text(node.role), name: text(node.name), description: text(node.description), inside }];
  };
  const [root] = read(nodes[0]?.nodeId ?? "");
  if (root === undefined) throw new Error(`nothing is heard of ${path}`);
  return root;
}

function all(from: Heard, wanted: (node: Heard) => boolean): readonly Heard[] {
  return [...(wanted(from) ? [from] : []), ...from.inside.flatMap((node) => all(node, wanted))];
}

const isRole =
  (...roles: readonly string[]) =>
  ({ role }: Heard): boolean =>
    roles.includes(role);

const NAMED = ["button", "link", "radio", "checkbox", "slider", "textbox", "searchbox", "combobox", "table", "image", "navigation"];

describe("what is heard", () => {
  it.each([DAY, TAKE, "kit.html", "lenses/KZ31-87.html"])(
    "of %s: everything to act on and every picture has a name, once, and not a long one",
    async (path) => {
      const root = await heard(path);
      const named = all(root, isRole(...NAMED));
      expect(named.length).toBeGreaterThan(20);
      for (const node of named) {
        expect(node.name, node.role).not.toBe("");
        expect(node.name.length, node.name).toBeLessThan(160);
        expect(node.description.length, node.description).toBeLessThan(600);
      }
      const same = all(root, (node) => isRole("image", "table")(node)).map(({ role, name }) => `${role} ${name}`);
      expect(new Set(same).size).toBe(same.length);
    },
  );

  it.each([DAY, TAKE, "kit.html", "lenses/KZ31-87.html"])(
    "of the drawings on %s: title and description, no label of an axis",
    async (path) => {
      const images = all(await heard(path), isRole("image"));
      expect(images.length).toBeGreaterThan(0);
      for (const image of images) expect(all(image, isRole("StaticText")), image.name).toEqual([]);
    },
  );

  it.each([1280, 360])(
    "of the takes of a day, %i wide: rows with a head that says slate, take and camera, cells under named columns",
    async (width) => {
      await page.setViewportSize({ width, height: 900 });
      const root = await heard(DAY);
      await page.setViewportSize({ width: 1280, height: 900 });
      const [takes] = all(root, (node) => node.role === "table" && node.name.startsWith("Takes of"));
      const rows = takes === undefined ? [] : all(takes, isRole("row")).filter((row) => all(row, isRole("cell")).length > 0);
      expect(rows).toHaveLength(26);
      for (const row of rows) {
        const heads = all(row, isRole("rowheader"));
        expect(heads).toHaveLength(1);
        expect(heads[0]?.name).toMatch(/^\d+[A-Z]? take \d( PU)? ?, camera [AB]( ?, circled)?$/);
        // the cell for remarks is left out of a narrow row that has none
        expect(all(row, isRole("cell")).length).toBeGreaterThanOrEqual(width < 400 ? 7 : 8);
      }
      const columns = takes === undefined ? [] : all(takes, isRole("columnheader"));
      expect(columns.length).toBeGreaterThan(7);
      for (const column of columns) expect(column.name).not.toBe("");
    },
  );

  it("of the head of a take is one sentence, and its headings go down one step at a time", async () => {
    const headings = all(await heard(TAKE), isRole("heading"));
    expect(headings[0]?.name.replaceAll(" ,", ",")).toBe("Slate 14B take 2, circled camera A");
    expect(headings.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["Focus through the take", "Focus pulls", "Lens look"]),
    );
  });

  it("of a chip is what it counts", async () => {
    const root = await heard(DAY);
    const chips = all(root, (node) => node.role === "button" && /^(Scene|Camera) /.test(node.name)).map(({ name }) =>
      name.replaceAll(" ,", ","),
    );
    expect(chips).toContain("Scene 14, count: 14");
  });

  it("of the scrubber is a timecode, not a count", async () => {
    await heard(TAKE);
    expect(await page.locator("#scrub").getAttribute("aria-valuetext")).toBe("10:16:26:02");
  });
});
