/** Search in the built report, from the disk: by keyboard, by address, without scripts, for all eyes. */
import { cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { searchRowsScript } from "../../src/view/show/search-rows.ts";
import { axeFindings } from "../helpers/axe.ts";
import { launchChromium } from "../helpers/chromium.ts";
import { syntheticRows } from "../helpers/synthetic-rows.ts";

const out = inject("demoOut");
const url = (path: string, folder = out): string => pathToFileURL(join(folder, path)).href;

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

async function opened(path: string, options: BrowserContextOptions = {}, rest = ""): Promise<Page> {
  const page = await (await browser.newContext(options)).newPage();
  await page.goto(url(path) + rest);
  return page;
}

/** Opens the box with the keyboard and types. */
async function searched(page: Page, query: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await page.keyboard.type(query);
  await page.locator("#find-count").filter({ hasText: /take/ }).waitFor();
}

describe("finding a take", () => {
  it("goes from any page to the take by keyboard alone, and back to the search", async () => {
    const page = await opened("days/2026-10-06/takes/a-14-1.html");
    const said: string[] = [];
    page.on("console", (message) => said.push(message.text()));
    page.on("pageerror", (error) => said.push(error.message));
    await searched(page, "33b 3");
    await page.keyboard.press("Enter");
    await page.waitForURL(/2026-10-07\/takes\/a-33b-3\.html$/);
    expect(await page.locator("h1").textContent()).toContain("33B");
    await page.goBack();
    expect(new URL(page.url()).searchParams.get("q")).toBe("33b 3");
    await page.locator("#find-list [role=option]").first().waitFor();
    expect(await page.locator("#find-box").inputValue()).toBe("33b 3");
    expect(said).toEqual([]);
    await page.context().close();
  });

  it("chooses with the arrows, and says so to a screen reader", async () => {
    const page = await opened("index.html");
    await searched(page, "27 2");
    const box = page.locator("#find-box");
    const chosen = async () => page.locator(`#${await box.getAttribute("aria-activedescendant")}`).getAttribute("href");
    expect(await box.getAttribute("aria-expanded")).toBe("true");
    expect(await page.locator("#find-list [aria-selected=true]").count()).toBe(1);
    expect(await chosen()).toMatch(/a-27-2\.html$/);
    await page.keyboard.press("ArrowDown");
    expect(await chosen()).toMatch(/b-27-2\.html$/);
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    expect(await chosen()).toBe(await page.locator("#find-list [role=option]").last().getAttribute("href"));
    expect(await page.locator("#find-count").getAttribute("role")).toBe("status");
    await page.context().close();
  });

  it("clears with Escape, then leaves, and gives the focus back", async () => {
    const page = await opened("index.html");
    await page.locator("button.find-open").focus();
    await page.keyboard.press("Enter");
    await page.keyboard.type("14b");
    await page.locator("#find-list [role=option]").first().waitFor();
    await page.keyboard.press("Escape");
    expect(await page.locator("#find-box").inputValue()).toBe("");
    expect(await page.locator("dialog.find").evaluate((d) => (d as HTMLDialogElement).open)).toBe(true);
    await page.keyboard.press("Escape");
    expect(await page.locator("dialog.find").evaluate((d) => (d as HTMLDialogElement).open)).toBe(false);
    expect(await page.evaluate(() => document.activeElement?.className)).toContain("find-open");
    expect(page.url()).not.toContain("q=");
    await page.context().close();
  });

  it("opens a tab with Ctrl and Enter and stays where it was", async () => {
    const page = await opened("index.html");
    await searched(page, "14c 1");
    const [tab] = await Promise.all([page.context().waitForEvent("page"), page.keyboard.press("Control+Enter")]);
    await tab.waitForURL(/a-14c-1\.html$/);
    expect(page.url()).toMatch(/index\.html\?q=14c/);
    await page.context().close();
  });

  it("opens with the query that stands in the address, and keeps the rest of the address", async () => {
    const page = await opened("index.html", {}, "?lens=K44&q=ledger#days");
    await page.locator("#find-list [role=option]").first().waitFor();
    expect(await page.locator("#find-list mark").textContent()).toBe("ledger");
    await page.reload();
    await page.locator("#find-list [role=option]").first().waitFor();
    expect(await page.locator("#find-box").inputValue()).toBe("ledger");
    await page.locator(".find-close").click();
    await page.waitForURL(/index\.html\?lens=K44#days$/); // the address follows a moment after the box closes
    await page.context().close();
  });

  it("leads to the frame of a whole timecode", async () => {
    const page = await opened("index.html");
    await searched(page, "14:36:01:05");
    expect(await page.locator("#find-list [role=option]").first().getAttribute("href")).toMatch(/a-27-2\.html#tc=14:36:01:05$/);
    await page.context().close();
  });

  it("says what was searched when nothing is found, and searches for the nearest code at a click", async () => {
    const page = await opened("index.html");
    await searched(page, "A029C003");
    expect(await page.locator("#find-count").textContent()).toContain("No take has \u201cA029C003\u201d");
    await page.locator("#find-advice button").first().click();
    expect(await page.locator("#find-list [role=option]").first().getAttribute("href")).toMatch(/a-14-3\.html$/);
    await page.context().close();
  });

  it("loads no list of takes before the box is opened, and shows a remark as text whatever it holds", async () => {
    const folder = mkdtempSync(join(tmpdir(), "daybook find "));
    cpSync(out, folder, { recursive: true });
    const rows = syntheticRows(2);
    const [first, second] = rows.takes.map((take) => [...take.slice(0, 21), "<img src=x onerror=alert(1)> tide", take[22]]);
    writeFileSync(
      join(folder, "search-rows.js"),
      searchRowsScript({ ...rows, takes: [first, second] as unknown as typeof rows.takes }),
    );
    const page = await browser.newPage();
    await page.goto(url("index.html", folder));
    expect(await page.locator("script[src*=search-rows]").count()).toBe(0);
    await searched(page, "tide");
    expect(await page.locator("#find-list .find-note").first().textContent()).toContain("<img src=x onerror=alert(1)> tide");
    expect(await page.locator("#find-list img").count()).toBe(0);
    rmSync(join(folder, "search-rows.js"));
    await page.goto(url("index.html", folder));
    await page.keyboard.press("Control+k");
    await page.locator("#find-count").filter({ hasText: "search-rows.js is missing" }).waitFor();
    await page.close();
    rmSync(folder, { recursive: true });
  });

  it("is a link to the index of all takes without scripts, and every take is there", async () => {
    const page = await opened("days/2026-10-06/index.html", { javaScriptEnabled: false });
    expect(await page.locator("button.find-open").isVisible()).toBe(false);
    await page.locator("a.find-link").click();
    expect(page.url()).toMatch(/takes\.html$/);
    const written = ["2026-10-06", "2026-10-07", "2026-10-08"].flatMap((date) =>
      readdirSync(join(out, "days", date, "takes"))
        .filter((name) => name.endsWith(".html"))
        .map((name) => `days/${date}/takes/${name}`),
    );
    const linked = await page
      .locator("#all-takes-table th a")
      .evaluateAll((links) => links.map((link) => link.getAttribute("href")));
    expect([...linked].sort()).toEqual(written.sort());
    await page.context().close();
  });
});

describe("the search box", () => {
  for (const options of [
    { colorScheme: "light" },
    { colorScheme: "dark" },
    { forcedColors: "active" },
    { colorScheme: "dark", viewport: { width: 320, height: 640 } },
  ] as const satisfies readonly BrowserContextOptions[]) {
    it(`has no accessibility violation that axe finds: ${JSON.stringify(options)}`, async () => {
      const page = await opened("index.html", { ...options, bypassCSP: true });
      const wrong: string[] = [];
      for (const query of ["late", "A029C003"]) {
        await page.keyboard.press("Control+k");
        await page.locator("#find-box").fill(query);
        await page.locator("#find-count").filter({ hasText: /take/ }).waitFor();
        wrong.push(...(await axeFindings(page, "dialog.find")));
      }
      expect(wrong).toEqual([]);
      await page.context().close();
    });
  }

  it("fits 320 pixels without a sideways scroll, and shows the chosen take in forced colours", async () => {
    const narrow = await opened("index.html", { viewport: { width: 320, height: 640 } });
    await searched(narrow, "t2.8");
    const box = await narrow.locator(".find-sheet").boundingBox();
    expect(box?.width).toBeLessThanOrEqual(320);
    expect(box?.height).toBeLessThanOrEqual(640);
    expect(await narrow.locator(".find-sheet").evaluate((sheet) => sheet.scrollWidth - sheet.clientWidth)).toBe(0);
    expect(await narrow.locator("#find-list").evaluate((list) => list.scrollWidth - list.clientWidth)).toBe(0);
    await narrow.context().close();
    const forced = await opened("index.html", { forcedColors: "active" });
    await searched(forced, "t2.8");
    const outline = (selected: boolean) =>
      forced
        .locator(`#find-list [aria-selected=${selected}]`)
        .first()
        .evaluate((option) => getComputedStyle(option).outlineStyle);
    expect(await outline(true)).toBe("solid");
    expect(await outline(false)).toBe("none");
    // in forced colours a ring without its take circled would be drawn, had it no colour of its own
    const ring = (circled: boolean) =>
      forced
        .locator(circled ? "#find-list .ring.on" : "#find-list .ring:not(.on)")
        .first()
        .evaluate((element) => getComputedStyle(element).borderTopColor);
    expect(await ring(true)).not.toBe(await ring(false));
    await forced.context().close();
  });

  it("keeps the focus in it and does not print", async () => {
    const page = await opened("index.html");
    await searched(page, "14b");
    for (let i = 0; i < 6; i++) {
      await page.keyboard.press("Tab");
      expect(
        await page.evaluate(() => document.activeElement === document.body || document.activeElement?.closest("dialog") !== null),
      ).toBe(true);
    }
    await page.emulateMedia({ media: "print" });
    expect(await page.locator("dialog.find").isVisible()).toBe(false);
    await page.context().close();
  });
});
