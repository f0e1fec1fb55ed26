/** The query in the page's address, so that a search can be sent and the way back from a take leads to it. */

const PARAMETER = "q";
/** Browsers refuse an address that changes with every key for long. */
const WAIT_MS = 250;

export interface QueryAddress {
  read(): string;
  /** Writes soon; `now` writes at once, before the page is left. */
  write(query: string): void;
  now(query: string): void;
}

export function queryAddress(page: Window): QueryAddress {
  let timer = 0;
  function now(query: string): void {
    page.clearTimeout(timer);
    try {
      const url = new URL(page.location.href);
      if ((url.searchParams.get(PARAMETER) ?? "") === query) return;
      if (query === "") url.searchParams.delete(PARAMETER);
      else url.searchParams.set(PARAMETER, query);
      page.history.replaceState(page.history.state, "", url.href);
    } catch {
      // A browser may refuse it to local files: the search works, it just cannot be sent.
    }
  }
  return {
    read: () => new URL(page.location.href).searchParams.get(PARAMETER) ?? "",
    write(query) {
      page.clearTimeout(timer);
      timer = page.setTimeout(() => now(query), WAIT_MS);
    },
    now,
  };
}
