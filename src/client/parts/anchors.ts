/** The link beside a section's head: a press also copies its address below the report's folder, to be sent to somebody. */
import { copyText } from "./copy.ts";

export function offerAnchors(page: Document): void {
  const path = page.documentElement.dataset.path;
  if (path === undefined) return;
  for (const link of page.querySelectorAll<HTMLAnchorElement>("a.anchor")) {
    const said = page.createElement("span");
    said.className = "small said";
    said.setAttribute("role", "status");
    link.after(said);
    link.addEventListener("click", async () => {
      // what the rows are filtered by is a part of what the reader sees
      const address = `${path}${page.location.search}${link.getAttribute("href") ?? ""}`;
      for (const other of page.querySelectorAll(".anchor + .said")) other.textContent = "";
      said.textContent = (await copyText(page, address)) ? `Copied ${address}` : "";
    });
  }
}
