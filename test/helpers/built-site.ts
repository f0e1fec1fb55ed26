/** Walks a built site: pages, ids, links. */
import { readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";

export interface BuiltPage {
  /** Relative to the site, with `/`. */
  readonly path: string;
  readonly html: string;
}

/** Every file of a folder, relative, with `/`, in name order. */
export function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => posix.join(entry.parentPath.slice(folder.length).replaceAll("\\", "/").replace(/^\//, ""), entry.name))
    .sort();
}

export function pagesOf(folder: string): BuiltPage[] {
  return filesOf(folder)
    .filter((path) => path.endsWith(".html"))
    .map((path) => ({ path, html: readFileSync(join(folder, path), "utf8") }));
}

/** Values of an attribute anywhere in a page. */
export function attributeValues(html: string, name: string): string[] {
  return [...html.matchAll(new RegExp(`\\s${name}="([^"]*)"`, "g"))].map((match) => unescapeHtml(match[1] ?? ""));
}

/** Text of a page without tags, styles and scripts, spaces of every kind folded to one. */
export function pageText(html: string): string {
  return unescapeHtml(html.replace(/<(script|style)\b[^>]*>[\s\S]*?<\/\1>/g, " ").replace(/<[^>]+>/g, " ")).replace(/\s+/g, " ");
}

export function unescapeHtml(text: string): string {
  return text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&nbsp;", " ")
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replaceAll("&amp;", "&");
}
