/** How fast search in a long show is. */
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { searchRowsScript } from "../../src/view/show/search-rows.ts";
import { launchChromium } from "../helpers/chromium.ts";
import { DEMO_OUT, demoUrl } from "../helpers/demo-pages.ts";
import { syntheticRows } from "../helpers/synthetic-rows.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
});

describe("search in a long show", () => {
  const RUNS = 7;
  /** From the key that opens the box until the count of takes stands in it: any query can be answered then. */
  const READY_MS = 150;
  const ANSWER_MS = 16;
  /** The machine may be busy with other things. */
  const PATIENCE = 3;
  const QUERIES = [
    "1",
    "12",
    "a012c003",
    "12c3",
    "24b 3",
    "10:21:05:12",
    "50mm t2.8",
    "lens:35 day:4",
    "note:ba",
    "24z 99",
    "x999c999",
    "zzzzz",
  ];

  it("is ready soon and answers at once, with 12,000 clips", async () => {
    const folder = mkdtempSync(join(tmpdir(), "daybook long "));
    cpSync(DEMO_OUT, folder, { recursive: true });
    const rows = syntheticRows(12_000);
    const script = searchRowsScript(rows);
    writeFileSync(join(folder, "search-rows.js"), script);
    const word = rows.takes[5000]?.[21].split(" ").find((text) => text.length > 6) ?? "";
    const queries = [...QUERIES, word, word.slice(0, 3) + word.slice(4)];
    const ready: number[] = [];
    const work: number[] = [];
    const answers = new Map<string, number[]>();
    for (let run = 0; run < RUNS; run++) {
      const page = await browser.newPage();
      const worked = await threadClock(page);
      await page.goto(demoUrl("index.html", folder));
      const before = await worked();
      ready.push(await page.evaluate(readyAfter));
      work.push((await worked()) - before);
      for (const query of queries) {
        const ms = await page.evaluate(answerAfter, query);
        answers.set(query, [...(answers.get(query) ?? []), ms]);
      }
      await page.close();
    }
    rmSync(folder, { recursive: true });
    // what the machine is busy with besides only ever adds: the least is the nearest to what search costs
    const slowest = Math.max(...[...answers.values()].map((list) => Math.min(...list)));
    const figures = [...answers].map(([query, list]) => `${query} ${median(list).toFixed(1)}`).join(", ");
    console.log(
      `search, 12,000 clips, ${Math.round(script.length / 1024)} KB, machine load ${loadavg()[0]?.toFixed(1)}, medians of ${RUNS}: ready in ${median(ready).toFixed(0)} ms (least ${Math.min(...ready).toFixed(0)}), of these at work ${median(work).toFixed(0)} (least ${Math.min(...work).toFixed(0)}); the budget is ${READY_MS} ms on a quiet machine. Answers: ${figures} ms; the budget is ${ANSWER_MS} ms`,
    );
    expect(Math.min(...work)).toBeLessThan(READY_MS);
    expect(slowest).toBeLessThan(ANSWER_MS * PATIENCE);
  });
});

/** Median; of an even number of values the upper of the two. */
function median(list: readonly number[]): number {
  return [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;
}

/** Gives the milliseconds that the page's thread has worked so far: waiting for a busy machine is not among them. */
async function threadClock(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  return async () => {
    const { metrics } = await session.send("Performance.getMetrics");
    return 1000 * (metrics.find(({ name }) => name === "TaskDuration")?.value ?? 0);
  };
}

/** In the page: opens the box and waits until the count of takes stands in it, rows loaded and index made. */
function readyAfter(): Promise<number> {
  return new Promise((resolve) => {
    const count = document.querySelector("#find-count") as HTMLElement;
    const start = performance.now();
    new MutationObserver(() => {
      if (/\d (takes|clips)/.test(count.textContent ?? "")) resolve(performance.now() - start);
    }).observe(count, { childList: true, characterData: true, subtree: true });
    document.dispatchEvent(new KeyboardEvent("keydown", { key: "k", ctrlKey: true, bubbles: true }));
  });
}

/** In the page: types the query at once; the answer stands in the page when the event has been dealt with. */
function answerAfter(query: string): number {
  const box = document.querySelector("#find-box") as HTMLInputElement;
  box.value = query;
  const start = performance.now();
  box.dispatchEvent(new Event("input"));
  return performance.now() - start;
}
