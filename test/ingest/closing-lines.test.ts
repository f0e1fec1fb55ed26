import { describe, expect, it } from "vitest";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { logSource, readLensLog } from "../../src/ingest/log/lens-log.ts";

/** Codes with lines, and the lines of the rows that are rejected. */
function reading(text: string): { readonly found: readonly string[]; readonly rejected: readonly number[]; readonly rows: number } {
  const found = collectFindings();
  const context = { rate: { num: 24, denom: 1 }, dropFrame: false, maps: [], date: "2031-05-06" };
  const log = readLensLog(logSource("logs/x.csv", new TextEncoder().encode(text)), context, found);
  if (log === null) throw new Error("the log cannot be read");
  const lines = Array.from({ length: log.rows }, (_, row) => (log.rejected[row] === 1 ? log.lineOf(row) : 0));
  return { found: found.list().map((f) => `${f.code}:${f.line}`), rejected: lines.filter((line) => line > 0), rows: log.rows };
}

const ROWS = "timecode,focus_m,t\n10:00:00:00,2,4\n10:00:00:01,2.1,4\n";

describe("lines in which a recorder sums up", () => {
  it.each([
    ["with a figure and fewer cells", "Total frames,1440\n"],
    ["with one cell", "End of log\n"],
    ["with as many cells as a row", "Average,2.05,4.0\n"],
    ["that begin with a figure", "2 frames\n"],
    ["with a long text", "Sum of all readings of this clip is 2\n"],
    ["with a quoted comma", '"Total, in frames",2\n'],
    ["in another alphabet", "Всего,2\n"],
  ])("%s are one remark, and a rejected row", (_, line) => {
    expect(reading(ROWS + line)).toEqual({ found: ["LOG231:4"], rejected: [4], rows: 3 });
  });

  it("that follow one another, with blank lines between, are one remark at the first", () => {
    expect(reading(`${ROWS}\nTotal frames,2\nMin,2,4\n\nEnd of log\n`)).toEqual({
      found: ["LOG231:5"],
      rejected: [5, 6, 8],
      rows: 5,
    });
  });

  it("are told of when the header comes again below them, too", () => {
    const again = "timecode,focus_m,t\n10:00:01:00,2,4\n";
    expect(reading(`${ROWS}Stopped by operator\n${again}`)).toEqual({ found: ["LOG230:5", "LOG231:4"], rejected: [4, 5], rows: 5 });
  });

  it("stand below frame counts and seconds as below timecodes", () => {
    expect(reading("frame,focus_m\n0,2\n1,2\nTotal,2\n").found).toEqual(["LOG231:4"]);
    expect(reading("time_s,focus_m\n0,2\n0.04,2\nTotal,2\n").found).toEqual(["LOG231:4"]);
  });

  it("are seen by the careful reader as well, which a line break in a cell calls", () => {
    const text = 'timecode,focus_m,remark\n10:00:00:00,2,"two\nlines"\nTotal,1,\n';
    expect(reading(text)).toEqual({ found: ["LOG209:1", "LOG231:4"], rejected: [4], rows: 2 });
  });
});

describe("lines that are no summary", () => {
  it("a row among the rows with words for its time is an error", () => {
    expect(reading("timecode,focus_m,t\n10:00:00:00,2,4\nnonsense,2,4\n10:00:00:02,2,4\n").found).toEqual(["LOG202:3"]);
  });

  it.each([
    ["NaN", "NaN,2,4\n"],
    ["what is left of a timecode", "10:00abc,2,4\n"],
    ["an impossible timecode", "10:00:00:99,2,4\n"],
  ])("a last row with %s for its time is an error", (_, line) => {
    expect(reading(ROWS + line)).toMatchObject({ found: ["LOG202:4"], rejected: [4] });
  });

  it("a last row that lost its timecode, and has the clip of the row above, is an error", () => {
    expect(reading("clip,timecode,t\nCAMA01,10:00:00:00,4\nCAMA01,,4\n").found).toEqual(["LOG202:3"]);
  });

  it("more than twenty lines are rows whose time was damaged, and words without a row above are no log's end", () => {
    const many = Array.from({ length: 21 }, (_, i) => `damaged ${i},2,4\n`).join("");
    expect(reading(ROWS + many).found).not.toContain("LOG231:4");
    expect(reading("timecode,focus_m,t\nsome words,2,4\nmore words,2,4\n").found).toEqual(["LOG202:2", "LOG202:3"]);
  });
});
