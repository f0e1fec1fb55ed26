import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { renderPages } from "../../src/site/render.ts";
import { dayPages } from "../../src/view/day-pages.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

/** Renders a day and keeps nothing of it but a reference that does not hold it. */
async function renderedDay(out: string): Promise<WeakRef<object>> {
  const summary = exampleDaySummary();
  const pages = dayPages(summary, exampleContext(summary));
  await renderPages(pages, out);
  return new WeakRef(pages.take?.[0] ?? pages);
}

describe("the pages of a day", () => {
  it("are let go once they are written, so that a show's days do not add up in memory", async () => {
    const out = mkdtempSync(join(tmpdir(), "daybook-memory-"));
    const earlier = [await renderedDay(out), await renderedDay(out)];
    // the generator may hold on to its last run
    await renderedDay(out);
    await new Promise((resolve) => setTimeout(resolve, 50));
    collect();
    expect(earlier.map((day) => day.deref() === undefined)).toEqual([true, true]);
    rmSync(out, { recursive: true, force: true });
  }, 60_000);
});
