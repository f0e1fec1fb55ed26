import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { readCsv } from "../../src/csv/read.ts";

const KNOWN = new Set(["a", "b", "c"]);

describe("readCsv", () => {
  it("gives cells with the line and column where they begin, quotes included", () => {
    const { header, rows } = readCsv('# k: v\na,b,c\n1,"two, ""2""",3\n', "x.csv", KNOWN);
    expect(header?.cells).toEqual(["a", "b", "c"]);
    expect(rows[0]?.cells).toEqual(["1", 'two, "2"', "3"]);
    expect(rows[0]?.place(1)).toEqual({ file: "x.csv", line: 3, column: 3, length: 12 });
    expect(rows[0]?.place(2)).toEqual({ file: "x.csv", line: 3, column: 16, length: 1 });
    // Beyond the last cell: the end of the row.
    expect(rows[0]?.place(3)).toEqual({ file: "x.csv", line: 3, column: 17 });
  });

  it.each([",", ";", "\t", "|"])("tells the delimiter %j from the known names of the header", (delimiter) => {
    const { delimiter: told, rows } = readCsv(`a${delimiter}b\n1,5${delimiter}2\n`, "x.csv", KNOWN);
    expect(told).toBe(delimiter);
    if (delimiter !== ",") expect(rows[0]?.cells).toEqual(["1,5", "2"]);
  });

  it("finds the place of a cell after a line break inside quotes", () => {
    const { rows } = readCsv('a,b,c\n1,"x\ny",3\n4,5,6\n', "x.csv", KNOWN);
    expect(rows[0]?.place(2)).toMatchObject({ line: 3, column: 4 });
    expect(rows[1]?.line).toBe(4);
  });

  it("takes an inch mark in a cell without quotes for text", () => {
    const { rows, findings } = readCsv(`a,b,c\n1,6' 2 1/2",3\n`, "x.csv", KNOWN);
    expect(rows[0]?.cells[1]).toBe(`6' 2 1/2"`);
    expect(findings).toEqual([]);
  });

  it("stops an open quote at the end of its line, even when a later quote would close it", () => {
    const { rows, findings } = readCsv(`a,b,c\n1,"8' 2"",3\n4,"9' 3""",6\n7,8,9\n`, "x.csv", KNOWN);
    expect(rows.map((row) => row.cells)).toEqual([
      ["1", `8' 2"`, "3"],
      ["4", `9' 3"`, "6"],
      ["7", "8", "9"],
    ]);
    expect(findings.map((f) => [f.code, f.line, f.column])).toEqual([["CSV112", 2, 3]]);
  });

  it("stays linear when every row has an open quote", () => {
    const text = `a,b,c\n${'1,"x,3\n'.repeat(5000)}`;
    const { rows } = readCsv(text, "x.csv", KNOWN);
    expect(rows).toHaveLength(5000);
  });

  it("reads what Papa Parse writes, cell by cell", () => {
    const cell = fc.string({ unit: fc.constantFrom("x", '"', ",", ";", "\n", " ", "é", "𝄞", "7") });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 5 }), (table) => {
        const rows = table.filter((row) => row.some((c) => c.trim() !== "") && !(row[0] as string).startsWith("#"));
        // Quoting every cell leaves no ambiguity between a blank line and an empty cell.
        const text = `a,b\n${Papa.unparse(rows, { quotes: true, newline: "\n" })}\n`;
        expect(readCsv(text, "x.csv", KNOWN).rows.map((row) => row.cells)).toEqual(rows);
      }),
    );
  });

  it("gives for every cell the place at which its text stands", () => {
    const cell = fc.string({ unit: fc.constantFrom("x", "é", "𝄞", "7", "'"), maxLength: 4 });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 6 }), (table) => {
        const lines = ["a,b,c", ...table.map((row) => row.join(","))];
        for (const row of readCsv(lines.join("\n"), "x.csv", KNOWN).rows) {
          row.cells.forEach((text, i) => {
            const { line, column } = row.place(i);
            const characters = [...(lines[(line as number) - 1] as string)];
            expect(
              characters
                .slice((column as number) - 1)
                .join("")
                .startsWith(text),
            ).toBe(true);
          });
        }
      }),
    );
  });
});
