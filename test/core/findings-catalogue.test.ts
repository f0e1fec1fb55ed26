import { describe, expect, it } from "vitest";
import { FINDING_KINDS, findingKind } from "../../src/core/findings/catalogue.ts";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { CSV } from "../../src/core/findings/csv.ts";

describe("the catalogue of findings", () => {
  it("has each code once, in its group's form", () => {
    const codes = FINDING_KINDS.map((kind) => kind.code);
    expect(new Set(codes).size).toBe(codes.length);
    for (const code of codes) expect(code).toMatch(/^(CSV1|LOG2|NOTE3|MATCH4|KIT5|SHOW6|CHECK7|OUT8)\d\d$/);
  });

  it("explains each kind in a paragraph", () => {
    for (const kind of FINDING_KINDS) {
      expect(kind.title, kind.code).toMatch(/^\p{Lu}.*[^.]$/u);
      expect(kind.explain.length, kind.code).toBeGreaterThan(40);
      expect(kind.explain, kind.code).toMatch(/\.$/);
    }
  });

  it("finds a kind by its code in any case", () => {
    expect(findingKind(" csv122 ")?.title).toBe("Not a number");
    expect(findingKind("CSV999")).toBeNull();
  });
});

describe("collectFindings", () => {
  const details = (line: number) => ({ place: { file: "a.csv", line, column: 1 }, message: "m", hint: "h" });

  it("lists twenty of a code in a file and says how many more there are", () => {
    const found = collectFindings();
    for (let line = 1; line <= 25; line++) found.add(CSV.notANumber, details(line));
    for (let line = 1; line <= 3; line++) found.add(CSV.outOfRange, details(line));
    const list = found.list();
    expect(list).toHaveLength(24);
    expect(list.at(-1)).toMatchObject({ code: "CSV122", file: "a.csv", line: null, message: "And 5 more CSV122 in this file." });
  });

  it("lists all of them with a limit of 0", () => {
    const found = collectFindings(0);
    for (let line = 1; line <= 25; line++) found.add(CSV.notANumber, details(line));
    expect(found.list()).toHaveLength(25);
  });

  it("makes no details of what it does not list", () => {
    const found = collectFindings(1);
    let made = 0;
    for (let line = 1; line <= 5; line++) {
      found.addIn("a.csv", CSV.notANumber, () => {
        made++;
        return details(line);
      });
    }
    expect(made).toBe(1);
  });
});
