/** What axe finds wrong with an open page, by the rules of WCAG 2.2 A and AA and its best practices. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const SOURCE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary?: string }[];
}

/** Rules whose answer changes with the colours alone; all others ask for the elements and where they lie. */
const OF_COLOURS = ["color-contrast", "link-in-text-block"];

/** One line a rule that is broken, with the first places. The page's context needs `bypassCSP`: the script is put in by the driver. */
export function axeFindings(page: Page, within = "html"): Promise<readonly string[]> {
  return findings(page, within, { type: "tag", values: RULES });
}

/** The same for the rules of colours, where a page was seen by all rules in other colours. */
export function axeColourFindings(page: Page): Promise<readonly string[]> {
  return findings(page, "html", { type: "rule", values: OF_COLOURS });
}

async function findings(
  page: Page,
  within: string,
  only: { readonly type: "tag" | "rule"; readonly values: readonly string[] },
): Promise<readonly string[]> {
  await page.evaluate(SOURCE);
  return page.evaluate(
    async ([place, runOnly]) => {
      const { axe } = globalThis as unknown as {
        axe: { run(context: string, options: unknown): Promise<{ violations: readonly Violation[] }> };
      };
      // target-size is in axe, but not on by default; what passes is not told element by element
      const rules = runOnly.type === "tag" ? { "target-size": { enabled: true } } : {};
      const { violations } = await axe.run(place, { runOnly, rules, resultTypes: ["violations"] });
      return violations.map(
        ({ id, nodes }) =>
          `${id} (${nodes.length}): ${nodes
            .slice(0, 2)
            .map((n) => `${n.target.join(" ")} ${n.failureSummary ?? ""}`)
            .join(" | ")}`,
      );
    },
    [within, only] as const,
  );
}
