import { describe, expect, it } from "vitest";
import { decodeText } from "../../src/csv/decode.ts";
import { overlongLine } from "../../src/csv/limits.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe("a line that is too long", () => {
  it.each([
    ["ab\nabcdef\nabc", { line: 2, bytes: 6 }],
    ["abcdef", { line: 1, bytes: 6 }],
    ["ab\r\nabcdef\r\n", { line: 2, bytes: 6 }],
    ["ab\rab\rabcdef\rab", { line: 3, bytes: 6 }],
    ["ab\rab\nab\rabcdef", { line: 4, bytes: 6 }],
  ])("%j is found with its number", (text, line) => {
    expect(overlongLine(bytes(text), 5)).toEqual(line);
  });

  it.each(["", "abcde", "abcde\nabcde\r\nabcde", "abcde\rabcde\rabcde"])("is not there in %j", (text) => {
    expect(overlongLine(bytes(text), 6)).toBeNull();
  });
});

describe("a text that is too large", () => {
  it("is left out with a finding that says both sizes", () => {
    const { text, findings } = decodeText(new Uint8Array(3_000_001).fill(97), "notes.csv", 2_000_000);
    expect(text).toBeNull();
    expect(findings.map((f) => `${f.severity} ${f.code} ${f.file} ${f.message}`)).toEqual([
      "error CSV118 notes.csv The file has 3 MB, and such files are read up to 2 MB.",
    ]);
  });
});
