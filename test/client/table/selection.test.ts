import { describe, expect, it } from "vitest";
import {
  countFor,
  type FilterRow,
  fromQuery,
  isNothing,
  NOTHING,
  passes,
  shownWords,
  toggled,
  toQuery,
} from "../../../src/client/table/selection.ts";
import { OF_TAKES } from "../../../src/view/filters.ts";

function row(facets: Readonly<Record<string, string>>, words = ""): FilterRow {
  return { facet: (name) => facets[name], words };
}

const TAKE_FACETS = OF_TAKES.names.split(" ");
const ROWS = [
  row({ lens: "P35", camera: "A", circled: "" }, "24b take 1 camera a rain"),
  row({ lens: "P35", camera: "B" }, "24b take 1 camera b"),
  row({ lens: "P50", camera: "A", findings: "" }, "25 take 2 camera a"),
];
const shown = (query: string) => ROWS.filter((r) => passes(r, fromQuery(query, TAKE_FACETS))).map((r) => ROWS.indexOf(r));

describe("a selection of rows", () => {
  it("takes any of one facet and all of several, and every word", () => {
    expect(shown("")).toEqual([0, 1, 2]);
    expect(shown("?lens=P35")).toEqual([0, 1]);
    expect(shown("?lens=P35&lens=P50&camera=A")).toEqual([0, 2]);
    expect(shown("?circled")).toEqual([0]);
    expect(shown("?camera=A&has=TAKE+rain")).toEqual([0]);
    expect(shown("?has=24X")).toEqual([]);
  });

  it("keeps a value that no row has, rather than show all as if it had not been asked for", () => {
    expect(shown("?lens=P99")).toEqual([]);
  });

  it("reads a flag whatever stands behind it", () => {
    expect(shown("?circled=1")).toEqual([0]);
  });

  it("goes into the address and comes back the same, leaving what else is there", () => {
    let selection = toggled(toggled(NOTHING, "lens", "P 35/2"), "circled", "");
    selection = { ...toggled(selection, "camera", "A"), words: "rain & wind" };
    const query = toQuery(selection, "?q=find", TAKE_FACETS);
    expect(query).toBe("?lens=P%2035%2F2&camera=A&circled&has=rain%20%26%20wind&q=find");
    expect(fromQuery(query, TAKE_FACETS)).toEqual(selection);
    expect(toQuery(NOTHING, query, TAKE_FACETS)).toBe("?q=find");
    expect(toQuery(NOTHING, "?circled", TAKE_FACETS)).toBe("");
  });

  it("lets go of a chip that is pressed again", () => {
    const once = toggled(NOTHING, "lens", "P35");
    expect(isNothing(once)).toBe(false);
    expect(isNothing(toggled(once, "lens", "P35"))).toBe(true);
  });

  it("counts what a chip would show beside the other facets", () => {
    const circled = fromQuery("?circled", TAKE_FACETS);
    expect(countFor(ROWS, circled, "camera", "A")).toBe(1);
    expect(countFor(ROWS, circled, "camera", "B")).toBe(0);
    // a chip of the same facet adds to the pressed ones: its count is its own
    expect(countFor(ROWS, fromQuery("?lens=P35", TAKE_FACETS), "lens", "P50")).toBe(1);
  });
});

describe("what is said of a selection", () => {
  it("is the count and what it is by, and for none what was looked for and the way out", () => {
    const by = (query: string) => fromQuery(query, TAKE_FACETS);
    expect(shownWords(3, 3, NOTHING, [], OF_TAKES)).toBe("All 3 clips shown.");
    expect(shownWords(1, 28, by("?camera=A"), ["Camera A"], OF_TAKES)).toBe("1 of 28 clips shown: Camera A.");
    expect(shownWords(0, 28, by("?camera=A&has=24X"), ["Camera A"], OF_TAKES)).toMatch(
      /^No clip has \u201824X\u2019 with these filters: Camera A\. /,
    );
    expect(shownWords(0, 28, by("?has=24X"), [], OF_TAKES)).toMatch(/^No clip has \u201824X\u2019\. Take a filter off/);
    expect(shownWords(0, 28, by("?camera=A&circled"), ["Camera A", "Circled"], OF_TAKES)).toMatch(
      /^No clip has these filters together/,
    );
  });
});
