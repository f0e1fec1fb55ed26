/** Every `@example expression // result` in a doc comment of src is run, so that no example can go stale. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { rational } from "../src/core/rational.ts";

interface Example {
  readonly line: number;
  readonly expression: string;
  readonly result: string;
}

function examplesOf(source: string): Example[] {
  return source.split("\n").flatMap((text, index) => {
    const match = /@example (.+?) \/\/ (.+?)(?:\s*\*\/)?$/.exec(text);
    return match ? [{ line: index + 1, expression: match[1] as string, result: match[2] as string }] : [];
  });
}

/** Decimal numbers are compared to the digits that are printed; one followed by `...` is cut short, not rounded. */
function withTolerance(result: string): string {
  return result.replace(
    /"[^"]*"|`[^`]*`|-?\d+\.(\d+)(\.\.\.)?/g,
    (found, decimals: string | undefined, cut: string | undefined) => {
      if (decimals === undefined) return found;
      return `close(${found.replace("...", "")}, ${decimals.length - (cut ? 1 : 0)})`;
    },
  );
}

/** Examples are typed with plain spaces where the text has no-break ones. */
function plainSpaces(value: unknown): unknown {
  return typeof value === "string" ? value.replace(/[\u00a0\u202f]/g, " ") : value;
}

function evaluate(code: string, scope: Readonly<Record<string, unknown>>): unknown {
  return new Function(...Object.keys(scope), `"use strict"; return (${code});`)(...Object.values(scope));
}

const ROOT = new URL("..", import.meta.url);

const FILES = readdirSync(new URL("src/", ROOT), { recursive: true, encoding: "utf8" })
  .map((name) => `src/${name.replaceAll("\\", "/")}`)
  .filter((file) => file.endsWith(".ts") && !file.startsWith("src/client/"))
  .sort();

describe("examples in doc comments", () => {
  for (const file of FILES) {
    const examples = examplesOf(readFileSync(new URL(file, ROOT), "utf8"));
    for (const { line, expression, result } of examples) {
      test(`${file}:${line} ${expression}`, async () => {
        const module: Record<string, unknown> = await import(new URL(file, ROOT).href);
        const actual = plainSpaces(evaluate(expression, { rational, ...module }));
        expect(actual).toEqual(
          evaluate(withTolerance(result), { close: (n: number, digits: number) => expect.closeTo(n, digits) }),
        );
      });
    }
  }
});
