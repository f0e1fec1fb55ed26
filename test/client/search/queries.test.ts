/** Searches of the demo show with the take that must come first, worked out by hand from its notes.csv files. */
import { describe, expect, it } from "vitest";
import { finderOf } from "../../../src/client/search/finder.ts";
import { packRows, unpackRows } from "../../../src/core/packed-rows.ts";
import type { SearchRows } from "../../../src/core/search-rows.ts";
import { searchRows } from "../../../src/view/show/search-rows.ts";
import { demoDigests } from "../../helpers/demo-digests.ts";

const { show, digests } = demoDigests();
/** By the way that the rows take to the browser. */
const finderIn = (rows: SearchRows) => finderOf(unpackRows(JSON.parse(JSON.stringify(packRows(rows)))));
const finder = finderIn(searchRows(digests, show.kit));
const found = (query: string) => finder.find(query).places.map(finder.table.row);
const addresses = (query: string) => found(query).map((take) => take[1]);

describe("the first take found", () => {
  it.each([
    // clips: whole, in any case, with signs, without zeros, without the camera's letter, by their end and their roll
    ["A021C003", "a-14-3"],
    ["a021c003", "a-14-3"],
    ["A021_C003", "a-14-3"],
    ["A021 C003", "a-14-3"],
    ["a21c7", "a-14b-2"],
    ["21c7", "a-14b-2"],
    ["16c7", "b-44-2"],
    ["B016C007", "b-44-2"],
    ["A022C01", "a-33-1"],
    ["a022c", "a-33-1"],
    ["roll:A022 clip:c009", "a-33c-1"],
    ["roll 23 c10", "a-44-1"],
    // slate and take in the ways that people write them
    ["14b 2", "a-14b-2"],
    ["14B2", "a-14b-2"],
    ["14b-2", "a-14b-2"],
    ["14 B 2", "a-14b-2"],
    ["14b/2", "a-14b-2"],
    ["a-14b-2", "a-14b-2"],
    ["14 3 b", "b-14-3"],
    ["14c1", "a-14c-1"],
    ["33A take 2 camera B", "b-33a-2"],
    ["slate 41 take 3", "a-41-3"],
    ["27 2 PU", "a-27-2-pu"],
    ["27 2pu b", "b-27-2-pu"],
    ["33", "a-33-1"],
    ["44a", "a-44a-1"],
    ["scene:36 2", "a-36-2"],
    // timecode: a first frame, a frame inside, the beginning of one, across midnight, with other signs
    ["08:31:42:17", "a-14-2"],
    ["14:36:01:05", "a-27-2"],
    ["14:36:01;05", "a-27-2"],
    ["11:31:20.03", "a-33b-3"],
    ["15:31", "a-27a-1"],
    ["16:20:1", "a-40-2"],
    ["00:00:05:00", "a-44-2"],
    ["day:13 00:31", "a-44b-1"],
    // lens, focal length and stop
    ["44mm T2.8", "a-27-1"],
    ["44 mm t2.8 circled", "a-27-2"],
    ["K128 T4", "a-36-1"],
    ["lens:44 t:4", "a-36a-1"],
    ["kz31-87 5.6", "a-33c-1"],
    ["kelp 19 2.3", "a-45-1"],
    ["50mm T4.5", "a-33b-2"],
    ["t2.1 day:13 44", "a-44-1"],
    // words of the remarks, with and without a slip
    ["ledger", "a-27-1"],
    ["leger", "a-27-1"],
    ["midnigth", "a-44-2"],
    ["lanp buzz", "a-33-2"],
    ["reflexion", "a-33b-3"],
    ["hunting mast", "a-33a-1"],
    ["note:rain", "a-27a-1"],
    ["note:gull day:11", "a-14-1"],
    ["wide open", "a-40a-2"],
    ["48 frames", "a-36-1"],
    ["water at the steps", "a-15-2"],
    // plates and standing
    ["plate:clean", "a-14c-1"],
    ["plate:33b circled", "a-33b-3"],
    ["plate:grid day:2026-10-08", "a-44c-1"],
    ["tail slate", "a-45-1"],
    ["ng 41 b", "b-41-1"],
  ])("for %s is %s", (query, address) => {
    expect(addresses(query)[0]).toBe(address);
  });
});

describe("search", () => {
  it("never takes one number for another: 35 finds no 50, and neither is offered for the other", () => {
    for (const query of ["35", "50", "35mm", "lens:35", "t:3.5"]) {
      expect(addresses(query)).toEqual([]);
      expect(finder.find(query).advice).toEqual([]);
    }
    expect([...new Set(found("34mm").map((take) => take[11]))]).toEqual([34]);
    expect(addresses("44")).not.toContain("a-45-1");
  });

  it("asks for every term", () => {
    expect(addresses("ledger 27a")).toEqual([]);
    expect(addresses("note:rain lens:K58")).toEqual(["a-27a-1"]);
    // 14B take 2 stands in a remark of 14C as well; the take itself comes first
    expect(addresses("14b 2").slice(0, 2)).toEqual(["a-14b-2", "a-14c-1"]);
  });

  it("looks for note: in remarks only", () => {
    expect(addresses("note:14b")).toEqual(["a-14c-1"]);
    expect(addresses("note:kelp")).toEqual([]);
  });

  it("keeps the order of shooting among takes that fit alike", () => {
    expect(addresses("slate:14")).toEqual(
      ["a-14-1", "b-14-1", "a-14-2", "b-14-2", "a-14-3", "b-14-3"].concat(addresses("slate:14").slice(6)),
    );
    expect(addresses("slate:14").slice(6, 8)).toEqual(["a-14a-1", "b-14a-1"]);
  });

  it("names the words to mark, as they stand in the remark", () => {
    expect([...finder.find("leger").marks]).toEqual(["ledger"]);
    expect([...finder.find("44mm").marks]).toEqual([]);
  });

  it("offers the nearest code, and the query without the term that stands in the way", () => {
    expect(finder.find("A029C003").advice).toEqual([{ label: "Nearest code", query: "A021C003", takes: 0 }]);
    expect(finder.find("K45").advice[0]?.query).toBe("K44");
    expect(finder.find("14b 9").advice).toEqual([{ label: "Without \u201c9\u201d", query: "14b", takes: 4 }]);
    expect(finder.find("qqqq").advice).toEqual([]);
  });

  it("finds nothing for nothing, and stands any sign", () => {
    expect(addresses("")).toEqual([]);
    for (const query of [
      "*",
      "^",
      "~ ~",
      "x~",
      "(",
      "\\",
      "day:",
      "t:",
      ":",
      "-",
      "\u201c\u201d",
      "note:*",
      "__proto__",
      "constructor",
    ]) {
      expect(() => finder.find(query)).not.toThrow();
    }
    expect(addresses("note:constructor")).toEqual([]);
  });
});

describe("a show without takes", () => {
  it("is searched like any other", () => {
    const empty = finderIn({ path: "", days: [], lenses: [], takes: [] });
    expect(empty.find("14b 2")).toMatchObject({ places: [], advice: [] });
  });
});
