import { describe, expect, it } from "vitest";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { readNotes } from "../../src/ingest/notes.ts";

const NOTES = "slate,take,camera\n24B,1,A\n,2,A\n25,1,A\n,2,A\n";

describe("a blank slate in the notes", () => {
  it("is the slate above when day.yaml says so, and the cell keeps its own place and blank text", () => {
    const found = collectFindings();
    const rows = readNotes(NOTES, "notes.csv", { blankSlateRepeats: true }, found);
    expect(found.list()).toEqual([]);
    expect(rows.map((row) => `${row.slate.value}/${row.take.value}`)).toEqual(["24B/1", "24B/2", "25/1", "25/2"]);
    expect(rows[1]?.slate).toMatchObject({ text: "", place: { line: 3, column: 1 } });
  });

  it("is an error when not, and the hint proposes the line for day.yaml", () => {
    const found = collectFindings();
    const rows = readNotes(NOTES, "notes.csv", { blankSlateRepeats: false }, found);
    expect(rows).toHaveLength(2);
    expect(found.list().map((f) => [f.code, f.line])).toEqual([
      ["NOTE301", 3],
      ["NOTE301", 5],
    ]);
    expect(found.list()[0]?.hint).toContain("notes: {blank_slate_repeats: true}");
    expect(found.list()[0]?.hint).toContain("24B");
  });

  it("without one above is an error without a proposal", () => {
    const found = collectFindings();
    readNotes("slate,take,camera\n,1,A\n", "notes.csv", { blankSlateRepeats: false }, found);
    expect(found.list()[0]?.hint).not.toContain("day.yaml");
  });
});
