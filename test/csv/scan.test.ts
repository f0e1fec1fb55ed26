import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeText } from "../../src/csv/decode.ts";
import type { LogPlan, LogTable, PlanKind } from "../../src/csv/log-table.ts";
import { textOfBytes } from "../../src/csv/paged-text.ts";
import { parseLogTable } from "../../src/csv/parse-log.ts";
import { readCsv } from "../../src/csv/read.ts";
import { scanTable } from "../../src/csv/scan.ts";

const HEADER = ["timecode", "focus_m", "t", "note"];
const KINDS: PlanKind[] = ["timecode", "number", "number", "text"];

function plan(delimiter: string, decimal: "." | ",", dropFrame = false): LogPlan {
  const rate = dropFrame ? { num: 30000, denom: 1001 } : { num: 24, denom: 1 };
  return { file: "x.csv", delimiter, decimal, columns: KINDS, rate, dropFrame };
}

/** Both ways to a table of the same rows. */
function both(rows: string, p: LogPlan): { scanned: LogTable | null; parsed: LogTable } {
  const head = `${HEADER.join(p.delimiter)}\n`;
  const bytes = new TextEncoder().encode(head + rows);
  const text = decodeText(bytes, "x.csv").text ?? "";
  const document = readCsv(text, "x.csv", new Set(HEADER));
  // The smallest pages that hold a line each: what stands at their borders must not matter.
  const pages = textOfBytes(bytes, 7);
  const start = { page: 0, offset: head.length, line: 2 };
  const whole = scanTable(textOfBytes(bytes), start, p);
  const page = pages.survey.pages.findIndex(({ end }) => head.length < end);
  const offset = head.length - (pages.survey.pages[page]?.start ?? 0);
  const scanned = scanTable(pages, page < 0 ? { ...start, page: pages.survey.pages.length } : { ...start, page, offset }, p);
  expect(scanned && contents(scanned)).toEqual(whole && contents(whole));
  return { scanned, parsed: parseLogTable(document.rows, p) };
}

function contents(table: LogTable): unknown {
  return {
    rows: table.rows,
    numbers: table.numbers.map((values) => values && [...values]),
    labels: table.labels && [...table.labels],
    odd: [...table.odd],
    widths: [...table.widths],
    lines: Array.from({ length: table.rows }, (_, row) => table.line(row)),
    cells: Array.from({ length: table.rows }, (_, row) => KINDS.map((_kind, column) => table.cell(row, column))),
  };
}

describe("scanTable", () => {
  it("reads plain numbers and timecodes, and lists what is neither", () => {
    const { scanned } = both('00:00:01:00,2.40,2.8,x\r\n\r\n# a comment\r\n00:00:01:01,,-0.5,"y, z"\r\n,far,1e3', plan(",", "."));
    expect(scanned?.rows).toBe(3);
    expect([...(scanned?.labels ?? [])]).toEqual([24, 25, -1]);
    expect([...(scanned?.numbers[1] ?? [])]).toEqual([2.4, Number.NaN, Number.NaN]);
    expect([...(scanned?.numbers[2] ?? [])]).toEqual([2.8, -0.5, Number.NaN]);
    expect([...(scanned?.odd ?? [])]).toEqual([
      { row: 2, column: 1 },
      { row: 2, column: 2 },
    ]);
    expect([...(scanned?.widths ?? [])]).toEqual([{ row: 2, cells: 3 }]);
    expect(scanned?.cell(1, 3)).toEqual({ text: "y, z", place: { file: "x.csv", line: 5, column: 19, length: 6 } });
  });

  it("reads every decimal as Number does, bit for bit", () => {
    const decimal = fc
      .tuple(fc.nat(99_999_999), fc.nat(9_999_999), fc.boolean())
      .map(([a, b, minus]) => `${minus ? "-" : ""}${a}.${b}`);
    fc.assert(
      fc.property(fc.array(decimal, { minLength: 1, maxLength: 20 }), (texts) => {
        const { scanned } = both(texts.map((text) => `00:00:01:00,${text},,`).join("\n"), plan(",", "."));
        expect([...(scanned?.numbers[1] ?? [])]).toEqual(texts.map(Number));
      }),
    );
  });

  it("leaves the file to the careful reader when a quote spans lines or never closes", () => {
    expect(both('00:00:01:00,1,2,"a\nb"\n', plan(",", ".")).scanned).toBeNull();
    expect(both('00:00:01:00,1,2,"a\n', plan(",", ".")).scanned).toBeNull();
  });

  it("takes a lone CR for the end of a line", () => {
    const { scanned } = both("00:00:01:00,1,2,a\r00:00:01:01,1,2,b\r", plan(",", "."));
    expect([...(scanned?.labels ?? [])]).toEqual([24, 25]);
  });

  const cell = fc.oneof(
    fc.constantFrom(
      "",
      " ",
      "2.4",
      "-2.40",
      " 7 ",
      "2,41",
      '"2,41"',
      '"3.5"',
      "inf",
      "1e3",
      "12345678901234567",
      "-",
      ".",
      '""',
      "x",
      "é",
    ),
    fc.constantFrom("10:00:59;29", '"10:01:00;02"', "10:01:00;00", "10:00:00:24", "23:59:59.23", "10:00:00", "00:00:00:00 "),
  );
  const row = fc.array(cell, { minLength: 1, maxLength: 6 });

  it.each([
    [",", ".", false],
    [";", ",", false],
    [";", ",", true],
    ["\t", ",", true],
    ["|", ".", true],
  ] as const)("gives what the careful reader gives: delimiter %j, decimal %j, drop-frame %s", (delimiter, decimal, dropFrame) => {
    const p = plan(delimiter, decimal, dropFrame);
    fc.assert(
      fc.property(fc.array(row, { maxLength: 8 }), fc.constantFrom("\n", "\r\n", "\r"), (table, end) => {
        const { scanned, parsed } = both(table.map((cells) => cells.join(delimiter)).join(end), p);
        if (scanned !== null) expect(contents(scanned)).toEqual(contents(parsed));
      }),
      { numRuns: 300 },
    );
  });
});
