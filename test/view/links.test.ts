import { describe, expect, it } from "vitest";
import type { Kit, Lens } from "../../src/ingest/records.ts";
import { dayPath, foldName, hrefTo, lensPaths, rootPrefix, takePath } from "../../src/view/links.ts";
import { KIT } from "../fixtures/day-summary-kit.ts";

describe("hrefTo", () => {
  it("climbs from a page to the folder that both share", () => {
    expect(hrefTo("days/2026-10-06/takes/a-24b-3.html", "kit.html")).toBe("../../../kit.html");
    expect(hrefTo("days/2026-10-06/takes/a-24b-3.html", "days/2026-10-06/index.html")).toBe("../index.html");
    expect(hrefTo("index.html", "lenses/L35.html")).toBe("lenses/L35.html");
  });

  it("is the bare name for a neighbour and the bare fragment for the page itself", () => {
    expect(hrefTo("days/2026-10-06/index.html", "days/2026-10-06/vfx.html", "plates")).toBe("vfx.html#plates");
    expect(hrefTo("findings.html", "findings.html", "csv122")).toBe("#csv122");
  });

  it("encodes what a browser would read as something else", () => {
    expect(hrefTo("index.html", "packs/2026-10-06/a b#1.csv")).toBe("packs/2026-10-06/a%20b%231.csv");
  });
});

describe("paths", () => {
  it("follow the contract of the output folder", () => {
    expect(dayPath("2026-10-06")).toBe("days/2026-10-06/index.html");
    expect(dayPath("2026-10-06", "findings")).toBe("days/2026-10-06/findings.html");
    expect(takePath("2026-10-06", "a-24b-3")).toBe("days/2026-10-06/takes/a-24b-3.html");
    expect(rootPrefix("days/2026-10-06/takes/a-24b-3.html")).toBe("../../../");
  });

  it("keep a plain lens id and fold any other, without two lenses sharing a file on a disk that ignores case", () => {
    const lens = KIT.lenses[0] as Lens;
    const kit: Kit = { ...KIT, lenses: ["L35", "l35", "Zoom 28/80 #2", "con", "über"].map((id) => ({ ...lens, id })) };
    expect([...lensPaths(kit).values()]).toEqual([
      "lenses/L35.html",
      "lenses/l35-2.html",
      "lenses/zoom-28-80-2.html",
      "lenses/con-lens.html",
      "lenses/uber.html",
    ]);
  });

  it("fold a name to letters, digits and single hyphens, never to nothing", () => {
    expect(foldName("24B – Übung")).toBe("24b-ubung");
    expect(foldName("…")).toBe("x");
  });
});
