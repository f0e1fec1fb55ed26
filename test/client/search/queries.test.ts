/** Searches of the demo show with the take that must come first, worked out by hand from its notes.csv files. */
import { describe, expect, it } from "vitest";
import { finderOf } from "../../../src/client/search/finder.ts";
import { describeFound } from "../../../src/client/search/said.ts";
import { packRows, unpackRows } from "../../../src/core/packed-rows.ts";
import type { SearchRows, SearchTake } from "../../../src/core/search-rows.ts";
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
    // what is pasted: a file of a clip, its path, the address of a page
    ["A021C003.mxf", "a-14-3"],
    ["A021C003_261006_AB12.mov", "a-14-3"],
    ["A021C003.0001042.exr", "a-14-3"],
    ["/vol/day 11/A021/A021C003.mxf", "a-14-3"],
    ["D:\\rolls\\A021\\A021C003.mxf", "a-14-3"],
    ["file:///show/days/2026-10-06/takes/a-14b-2.html#tc=09:15:00:00", "a-14b-2"],
    // each field word alone, with quotes, with a decimal comma, all together
    ["lens:kelp day:12", "a-33-1"],
    ['lens:"Kelp 44"', "a-27-1"],
    ['note:"wide open"', "a-40a-2"],
    ["day:12", "a-33-1"],
    ["t2,8 44mm", "a-27-1"],
    ["roll:a22 clip:9", "a-33c-1"],
    ["plate:grid", "a-14d-1"],
    ["lens:K44 day:11 t:2.8 roll:A021 note:ledger", "a-27-1"],
  ])("for %s is %s", (query, address) => {
    expect(addresses(query)[0]).toBe(address);
  });
});

describe("search", () => {
  it("never takes one number for another: 35 finds no 50, and neither is offered for the other", () => {
    for (const query of ["35", "50", "35mm", "35 mm", "lens:35", "3.5", "T3.5", "t:3.5"]) {
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

  it("looks for nothing after a field word that has nothing after it yet", () => {
    for (const field of ["lens:", "day:", "t:", "roll:", "note:", "plate:", 'note:""']) {
      expect(finder.find(field)).toMatchObject({ terms: [], places: [] });
      expect(addresses(`14b 2 ${field}`)).toEqual(addresses("14b 2"));
    }
  });

  it("finds nothing for a stop that is none, and says which word is no field", () => {
    expect(addresses("t:wide")).toEqual([]);
    expect(finder.find("t:wide").terms).toMatchObject([{ text: "t:wide" }]);
    const said = describeFound(finder.find("colour:red 14b"), finder.table, 0);
    expect(said).toContain("No take has \u201ccolour\u201d, \u201cred\u201d and \u201c14b\u201d together.");
    expect(said).toContain("\u201ccolour:\u201d is not one of the words for a field: lens:, day:, t:, roll:, note:, plate:");
    expect(describeFound(finder.find("lens:999"), finder.table, 0)).not.toContain("is not one of");
  });

  it("reads a number with T, without it and with a field word alike", () => {
    const stopped = addresses("T2.8");
    expect(stopped.length).toBeGreaterThan(0);
    for (const query of ["2.8", "t2.8", "T 2.8", "T2,8", "T 2,8", "t:2.8", "t:2,8", "t:T2.8"])
      expect(addresses(query)).toEqual(stopped);
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

  it("takes the words of a note: in quotes one by one where they are not there together", () => {
    // "ledger" is in the remark of take 27 1 of camera A and in no other
    const { terms, advice } = finder.find('note:"ledger qqqq"');
    expect(terms.map(({ text }) => text)).toEqual(["note:ledger", "note:qqqq"]);
    expect(advice).toEqual([
      { label: "Without \u201cnote:qqqq\u201d", query: "note:ledger", takes: addresses("note:ledger").length },
    ]);
    expect(finder.find('note:"ledger"').terms.map(({ text }) => text)).toEqual(['note:"ledger"']);
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

describe("names of any kind", () => {
  const clip = (address: string, slate: string, clipName: string, timecode: string, remarks: string): SearchTake => [
    ...([0, address, slate, "1", "A", "", "A001", clipName, timecode, "10:00:09;00", -1, null, null, null, null, "", ""] as const),
    ...([0, "", "", "", remarks, 0] as const),
  ];
  const odd = finderIn({
    path: "",
    days: [["2031-01-01", "Day 1", 1]],
    lenses: [],
    takes: [
      clip("a-r-d-1", "R&D", "A001C001", "10:00:01;02", "Großaufnahme der Tür, Łódź"),
      clip("a-7-1", "7", "A001C002", "10:00:05;00", "\u05e9\u05dc\u05d5\u05dd \u05e2\u05d5\u05dc\u05dd"),
      clip("a-8-1", "8", "A001C003_310101_R1AB", "", "don't cut; 50/50"),
    ],
  });
  it.each([
    ["R&D", "a-r-d-1"],
    ["r&d 1", "a-r-d-1"],
    ["slate:R&D", "a-r-d-1"],
    ["10:00:01;02", "a-r-d-1"],
    ["10:00:01:02", "a-r-d-1"],
    ["tur", "a-r-d-1"],
    ["TÜR", "a-r-d-1"],
    ["Tu\u0308r", "a-r-d-1"],
    ["lodz", "a-r-d-1"],
    ["\u05e2\u05d5\u05dc\u05dd", "a-7-1"],
    ["\u05e9\u05c1\u05b8\u05dc\u05d5\u05b9\u05dd", "a-7-1"],
    ["A001C003", "a-8-1"],
    ["A001C003_310101_R1AB.mxf", "a-8-1"],
    ["dont", "a-8-1"],
    ["50/50", "a-8-1"],
  ])("%s", (query, address) => {
    expect(odd.find(query).places.map((place) => odd.table.row(place)[1])[0]).toBe(address);
  });
});

describe("a show without takes", () => {
  it("is searched like any other", () => {
    const empty = finderIn({ path: "", days: [], lenses: [], takes: [] });
    expect(empty.find("14b 2")).toMatchObject({ places: [], advice: [] });
  });
});
