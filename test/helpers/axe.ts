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

/** One line a rule that is broken, with the first places. The page's context needs `bypassCSP`: the script is put in by the driver. */
export async function axeFindings(page: Page, within = "html"): Promise<readonly string[]> {
  await page.evaluate(SOURCE);
  return page.evaluate(
    async ([place, rules]) => {
      const { axe } = globalThis as unknown as {
        axe: { run(context: string, options: unknown): Promise<{ violations: readonly Violation[] }> };
      };
      // target-size is in axe, but not on by default
      const { violations } = await axe.run(place, { runOnly: rules, rules: { "target-size": { enabled: true } } });
      return violations.map(
        ({ id, nodes }) =>
          `${id} (${nodes.length}): ${nodes
            .slice(0, 2)
            .map((n) => `${n.target.join(" ")} ${n.failureSummary ?? ""}`)
            .join(" | ")}`,
      );
    },
    [within, RULES] as const,
  );
}
