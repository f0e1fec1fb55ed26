import { expect, it } from "vitest";
import { withWords } from "../../../src/client/search/result.ts";
import { AT, type SearchTake } from "../../../src/core/search-rows.ts";

function take(focalMm: number | null, focal: string): SearchTake {
  const row: (string | number | null)[] = new Array(AT.number + 1).fill("");
  row[AT.focalMinMm] = focalMm;
  row[AT.focal] = focal;
  row[AT.stop] = "T2.8";
  return row as unknown as SearchTake;
}

it("says the focal length of a take once, and of a zoom always, also at its long end", () => {
  expect(withWords(take(44, "44 mm"), ["K44", "Kelp 44"])).toEqual(["Kelp 44", "T2.8"]);
  expect(withWords(take(44, "44 mm"), ["K44", "K44, 44 mm"])).toEqual(["K44, 44 mm", "T2.8"]);
  expect(withWords(take(87, "87 mm"), ["KZ31-87", "Kelp 31-87"])).toEqual(["Kelp 31-87", "87 mm", "T2.8"]);
  expect(withWords(take(null, ""), ["K44", "Kelp 44"])).toEqual(["Kelp 44", "T2.8"]);
  expect(withWords(take(50, "50 mm"), undefined)).toEqual(["lens not recorded", "50 mm", "T2.8"]);
});
