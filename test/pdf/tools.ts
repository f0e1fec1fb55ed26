/** The outside tools that look into a PDF. A test that needs one is skipped by name where it is missing; in CI it fails instead. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { it } from "vitest";

export type Tool = "qpdf" | "pdffonts" | "pdfinfo" | "pdftotext" | "pdfdetach" | "xmllint";

function present(tool: Tool): boolean {
  try {
    execFileSync(tool, ["--version"], { stdio: "ignore" });
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== "ENOENT";
  }
}

/** A test that needs a tool. */
export function itWith(tool: Tool, title: string, body: () => void | Promise<void>): void {
  const skip = !present(tool) && process.env.CI === undefined;
  it.skipIf(skip)(skip ? `${title} (skipped: ${tool} is not installed)` : title, body);
}

/** Runs a tool on the bytes of a PDF; `file` in the arguments stands for its path. */
export function look(tool: Tool, bytes: Uint8Array, args: readonly string[]): string {
  const folder = mkdtempSync(join(tmpdir(), "daybook-pdf-"));
  try {
    const file = join(folder, "report.pdf");
    writeFileSync(file, bytes);
    const given = args.map((arg) => (arg === "file" ? file : arg));
    return execFileSync(tool, given, { encoding: "utf8", maxBuffer: 1 << 28 });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export interface Word {
  readonly page: number;
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Every word with its place in points from the top left of its page. */
export function wordsOf(bytes: Uint8Array): readonly Word[] {
  const words: Word[] = [];
  let page = 0;
  for (const line of look("pdftotext", bytes, ["-bbox", "file", "-"]).split("\n")) {
    if (line.includes("<page ")) page++;
    const match = /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*)<\/word>/.exec(line);
    if (match === null) continue;
    const [left, top, right, bottom] = match.slice(1, 5).map(Number) as [number, number, number, number];
    words.push({ page, text: match[5] as string, left, top, right, bottom });
  }
  return words;
}

/** Pairs of words that lie over each other by more than a third of the smaller one's width and half its height. */
export function overlaps(words: readonly Word[]): readonly string[] {
  const found: string[] = [];
  const pages = new Map<number, Word[]>();
  for (const word of words) pages.set(word.page, [...(pages.get(word.page) ?? []), word]);
  for (const list of pages.values()) {
    const sorted = [...list].sort((a, b) => a.top - b.top);
    sorted.forEach((a, i) => {
      for (let j = i + 1; j < sorted.length && (sorted[j] as Word).top < a.bottom; j++) {
        const b = sorted[j] as Word;
        const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const high = Math.min(a.bottom, b.bottom) - b.top;
        const small = Math.min(a.right - a.left, b.right - b.left);
        if (wide > 1 && wide > small / 3 && high > Math.min(a.bottom - a.top, b.bottom - b.top) / 2) {
          found.push(`page ${a.page}: "${a.text}" and "${b.text}"`);
        }
      }
    });
  }
  return found;
}

/** Alternative texts of the structure tree, in the order of the file. */
export function alternativeTexts(bytes: Uint8Array): readonly string[] {
  const file = Buffer.from(bytes).toString("latin1");
  return [...file.matchAll(/\/Alt \(((?:\\[\s\S]|[^\\)])*)\)/g)].map(([, written = ""]) => {
    const plain = written.replace(
      /\\([\s\S])/g,
      (_, sign: string) => ({ n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" })[sign] ?? sign,
    );
    if (!plain.startsWith("\u00fe\u00ff")) return plain;
    return Buffer.from(plain.slice(2), "latin1").swap16().toString("utf16le");
  });
}
