/** The rows come as a script that calls a function of the page: the only way to data beside a page on the disk. */
import { type PackedRows, type SearchTable, unpackRows } from "../../core/packed-rows.ts";
import { SEARCH_GLOBAL } from "../../core/search-rows.ts";

/** Loads `search-rows.js` into the page; refuses when the file is missing or does not call back. */
export function loadRows(page: Document, src: string): Promise<SearchTable> {
  return new Promise((resolve, reject) => {
    const receiver = globalThis as unknown as Record<string, unknown>;
    receiver[SEARCH_GLOBAL] = (rows: PackedRows) => resolve(unpackRows(rows));
    const script = page.createElement("script");
    script.src = src;
    script.onerror = () => reject(new Error(`${src} cannot be loaded`));
    script.onload = () => {
      // Without a call by now there will be none; a promise that was kept is not broken by this.
      reject(new Error(`${src} holds no rows`));
      script.remove();
    };
    page.head.append(script);
  });
}
