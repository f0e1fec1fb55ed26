/** What a screen reader is told of one whole search, read from the browser's accessibility tree; and that every kind of page has one. */
import type { Browser, CDPSession, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchChromium } from "../helpers/chromium.ts";
import { demoUrl, fullestOfEachKind } from "../helpers/demo-pages.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

interface Spoken {
  readonly role: string;
  readonly name: string;
  readonly value: string;
  readonly description: string;
  readonly states: Readonly<Record<string, unknown>>;
  /** The text below it. */
  readonly text: string;
}

/** Everything of the page that is not hidden from a screen reader, in order. */
async function spoken(session: CDPSession): Promise<readonly Spoken[]> {
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const textOf = (id: string): string => {
    const node = byId.get(id);
    if (node?.role?.value === "StaticText") return String(node.name?.value ?? "");
    return (node?.childIds ?? []).map(textOf).join("");
  };
  return nodes
    .filter((node) => !node.ignored)
    .map((node) => ({
      role: String(node.role?.value ?? ""),
      name: String(node.name?.value ?? ""),
      value: String(node.value?.value ?? ""),
      description: String(node.description?.value ?? ""),
      states: Object.fromEntries(
        (node.properties ?? []).map(({ name, value }) => [
          name,
          value.value ?? value.relatedNodes?.map(({ idref }) => idref).join(" "),
        ]),
      ),
      text: textOf(node.nodeId),
    }));
}

const first = (all: readonly Spoken[], role: string): Spoken | undefined => all.find((node) => node.role === role);
const every = (all: readonly Spoken[], role: string): readonly Spoken[] => all.filter((node) => node.role === role);

async function answered(page: Page, query: string, count: RegExp): Promise<void> {
  await page.locator("#find-box").fill(query);
  await page.locator("#find-count").filter({ hasText: count }).waitFor();
}

describe("one search, as a screen reader is told of it", () => {
  it("is a dialog with a box that owns a list; count, chosen take and the way out are said", async () => {
    const page = await browser.newPage();
    await page.goto(demoUrl("index.html"));
    const session = await page.context().newCDPSession(page);
    await session.send("Accessibility.enable");

    const opener = (await spoken(session)).find((node) => node.role === "button" && node.name.startsWith("Find a take"));
    expect(opener?.states.hasPopup).toBe("dialog");

    await page.locator("button.find-open").focus();
    await page.keyboard.press("Enter");
    await page.locator("#find-count").filter({ hasText: "days" }).waitFor();
    const open = await spoken(session);
    expect(first(open, "dialog")).toMatchObject({ name: "Find a take", states: { modal: true } });
    // the page below is out of reach while the dialog is open
    expect(every(open, "main")).toEqual([]);
    expect(first(open, "combobox")).toMatchObject({
      name: "Slate and take, clip, roll, timecode, lens, stop or a word of the remarks",
      states: { focused: true, expanded: false, hasPopup: "listbox", autocomplete: "list" },
    });
    expect(first(open, "combobox")?.description).toMatch(/^For example .*lens:.*note:/);
    expect(first(open, "status")).toMatchObject({ states: { live: "polite", atomic: true } });
    expect(first(open, "status")?.text).toBe("48 takes in 72 clips on 3 days.");

    await answered(page, "27 2", /^5 takes in 8 clips\.$/);
    const typed = await spoken(session);
    expect(first(typed, "combobox")).toMatchObject({ value: "27 2", states: { focused: true, expanded: true } });
    expect(first(typed, "combobox")?.states.activedescendant).toBe("find-0");
    expect(first(typed, "listbox")).toMatchObject({ name: "Takes found" });
    const options = every(typed, "option");
    expect(options.map((option) => option.states.selected)).toEqual([true, ...new Array(7).fill(false)]);
    // all that tells one take from another: slate, take, circled, camera, timecode, clip, lens, stop, day, status
    expect(options[0]?.name.replace(" ,", ",")).toBe(
      "27 take 2, circled, camera A 14:35:50:02 \u00b7 A021C013 Kelp 44 \u00b7 T2.8 Day 11, 6 October good",
    );

    await page.keyboard.press("ArrowDown");
    const down = await spoken(session);
    expect(first(down, "combobox")).toMatchObject({ states: { focused: true, activedescendant: "find-1" } });
    expect(every(down, "option").findIndex((option) => option.states.selected === true)).toBe(1);

    await answered(page, "A029C003", /^No take has/);
    await page.locator("#find-advice").waitFor();
    const none = await spoken(session);
    expect(first(none, "combobox")?.states).toMatchObject({ focused: true, expanded: false });
    expect(first(none, "combobox")?.states.activedescendant).toBeUndefined();
    expect(every(none, "listbox")).toEqual([]);
    expect(first(none, "status")?.text).toMatch(/^No take has \u201cA029C003\u201d\..*What to try instead stands below\.$/);
    expect(every(none, "group").map(({ name }) => name)).toContain("What to try instead");
    const ways = none.filter(({ role, name }) => (role === "button" || role === "link") && name !== "Close");
    expect(ways.map(({ name }) => name)).toEqual(["Nearest code: A021C003", "All takes, A to Z"]);

    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    const closed = await spoken(session);
    expect(every(closed, "dialog")).toEqual([]);
    expect(closed.find((node) => node.states.focused === true && node.role === "button")?.name).toMatch(/^Find a take/);
    await page.close();
  });
});

describe("search on every kind of page", () => {
  it("has its button in sight and opens with Ctrl and K, from the disk", async () => {
    const page = await browser.newPage();
    const without: string[] = [];
    for (const [kind, path] of fullestOfEachKind()) {
      await page.goto(demoUrl(path));
      const seen = await page.locator("button.find-open").isVisible();
      await page.keyboard.press("Control+k");
      await page.keyboard.type("33b 3");
      await page.locator("#find-list [role=option]").first().waitFor({ timeout: 20_000 });
      const href = await page
        .locator("#find-list [role=option]")
        .first()
        .evaluate((option) => (option as HTMLAnchorElement).href);
      if (!seen || href !== demoUrl("days/2026-10-07/takes/a-33b-3.html")) without.push(`${kind}: ${href}`);
    }
    expect(without).toEqual([]);
    await page.close();
  });
});
