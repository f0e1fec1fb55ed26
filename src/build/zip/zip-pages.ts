/** Pages of a report as they travel without the rest of it: what is not there is not linked. */

/** Attributes that name another file. */
const LINK = /<(a|area|link|script|img|source)\b([^>]*?)\s(href|src)="([^"]*)"([^>]*)>/gi;

/** Files that a page needs to look and work as it should: scripts, styles, pictures. Paths below the report. */
export function neededFiles(page: string, html: string): readonly string[] {
  const needed = [...html.matchAll(LINK)].flatMap(([, tag = "", , , href = ""]) => {
    const target = /^(a|area)$/i.test(tag) ? null : targetOf(page, href);
    return target === null ? [] : [target];
  });
  return [...new Set(needed)];
}

/** The page without links to files that `isThere` does not know: their words stay. */
export function withoutDeadLinks(page: string, html: string, isThere: (file: string) => boolean): string {
  return html.replace(LINK, (whole, tag: string, before: string, _name, href: string, after: string) => {
    const target = targetOf(page, href);
    if (target === null || isThere(target)) return whole;
    if (!/^(a|area)$/i.test(tag)) return "";
    return `<${tag}${before}${after}>`.replace(/\s(?:rel|download)(?:="[^"]*")?/gi, "");
  });
}

/** File that an address of a page names, below the report; `null` for a place in the page itself and for any other address. */
function targetOf(page: string, href: string): string | null {
  const path = href.replaceAll("&amp;", "&").replace(/[?#].*$/, "");
  if (path === "" || /^[a-z][a-z0-9+.-]*:|^\//i.test(path)) return null;
  const parts = page.split("/").slice(0, -1);
  for (const part of path.split("/")) {
    if (part === "..") parts.pop();
    else if (part !== ".") parts.push(part);
  }
  try {
    return decodeURIComponent(parts.join("/"));
  } catch {
    return null;
  }
}
