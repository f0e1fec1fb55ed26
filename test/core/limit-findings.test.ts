import { describe, expect, it } from "vitest";
import { countFindings, type Finding, finding, sortFindings } from "../../src/core/finding.ts";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { CSV } from "../../src/core/findings/csv.ts";
import { limitFindings } from "../../src/core/findings/limit.ts";
import { oneDay } from "../helpers/one-day.ts";

const check = (file: string, line: number): Finding =>
  finding({ code: "CHECK702", severity: "check", place: { file, line, column: 1 }, message: "m", hint: "h" });
const many = (file: string, count: number) => Array.from({ length: count }, (_, i) => check(file, i + 1));

describe("limitFindings", () => {
  it("lists twenty of a code and file in order, then says how many more, and none is lost from the counts", () => {
    const limited = limitFindings([...many("a.csv", 232), ...many("b.csv", 3)]);
    expect(limited).toHaveLength(20 + 3 + 1);
    expect(limited.at(-1)).toMatchObject({
      code: "CHECK702",
      file: "a.csv",
      line: null,
      more: 212,
      message: "And 212 more CHECK702 in this file.",
    });
    expect(countFindings(limited)).toEqual({ error: 0, check: 235, remark: 0 });
    expect(
      sortFindings(limited)
        .map((f) => f.more)
        .indexOf(212),
    ).toBe(20);
  });
  it("lists all with 0, and as they are where they are few", () => {
    expect(limitFindings(many("a.csv", 30), 0)).toHaveLength(30);
    const few = many("a.csv", 20);
    expect(limitFindings(few)).toEqual(few);
  });
  it("takes in what was left out while a file was read", () => {
    const found = collectFindings(20);
    for (let line = 1; line <= 25; line++)
      found.add(CSV.notANumber, { place: { file: "a.csv", line, column: 1 }, message: "m", hint: "h" });
    const limited = limitFindings(found.list());
    expect(limited).toHaveLength(21);
    expect(limited.at(-1)).toMatchObject({ more: 5 });
    expect(countFindings(limited).error).toBe(25);
  });
  it("lists what was accepted apart", () => {
    const accepted = { ...check("a.csv", 500), accepted: "seen" };
    const limited = limitFindings([...many("a.csv", 25), accepted]);
    expect(limited).toContainEqual(accepted);
    expect(countFindings(limited).check).toBe(25);
  });
});

describe("a day with many findings of the joining", () => {
  it("lists twenty of a code and says how many more", () => {
    const notes = Array.from({ length: 30 }, (_, i) => `${i + 1},1,A,C${i},10:00:00:00,10:00:02:00,K99,4,3 m`);
    const { summary } = oneDay({ notes });
    const listed = summary.findings.filter((f) => f.code === "CHECK706");
    expect(listed).toHaveLength(21);
    expect(listed.at(-1)).toMatchObject({ more: 10, line: null });
    expect(countFindings(listed).check).toBe(30);
    expect(summary.takes.every((take) => take.findings.some((f) => f.code === "CHECK706"))).toBe(true);
  });
});
