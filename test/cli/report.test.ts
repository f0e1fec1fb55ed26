import picocolors from "picocolors";
import { describe, expect, it } from "vitest";
import { findingsText, type ReportOptions } from "../../src/cli/report.ts";
import { codeFrame } from "../../src/core/code-frame.ts";
import { type Finding, finding } from "../../src/core/finding.ts";
import { lineIndex } from "../../src/core/text-position.ts";

const FILE = "days/2026-03-14/logs/A012C003.csv";
const LOG = 'timecode,clip,focus_m,t\n10:21:05:11,A012C003,2.40,2.8\n10:21:05:12,A012C003,"2,41 m",2.8\n';
const BAD_FOCUS = finding({
  code: "CSV122",
  severity: "error",
  place: { file: FILE, line: 3, column: 22, length: 8 },
  field: "focus_m",
  message: 'focus distance is not a number: "2,41 m"',
  hint: 'Write 2.41. A decimal comma is accepted when the log says "# decimal: ,".',
});
const source = (text = LOG) => ({ list: () => null, read: () => new TextEncoder().encode(text) });
const options = (change: Partial<ReportOptions> = {}): ReportOptions => ({
  root: "/shows/ferry",
  cwd: "/shows",
  limit: 20,
  severities: ["error", "check"],
  colours: picocolors.createColors(false),
  ...change,
});
const at = (line: number, change: Partial<Finding> = {}) => ({ ...BAD_FOCUS, line, ...change });

describe("findingsText", () => {
  it("prints place, code and message on one line, then the frame with carets, the hint and where to read more", () => {
    expect(findingsText([BAD_FOCUS], source(), options())).toBe(
      [
        'ferry/days/2026-03-14/logs/A012C003.csv:3:22  error CSV122  Focus distance is not a number: "2,41 m".',
        "  2 | 10:21:05:11,A012C003,2.40,2.8",
        '  3 | 10:21:05:12,A012C003,"2,41 m",2.8',
        "    |                      ^^^^^^^^",
        '  Write 2.41. A decimal comma is accepted when the log says "# decimal: ,".',
        "  run: daybook explain CSV122",
        "",
        "",
      ].join("\n"),
    );
  });

  it("says where to read more once per code", () => {
    const text = findingsText([BAD_FOCUS, at(2)], source(), options());
    expect(text.match(/run: daybook explain/g)).toHaveLength(1);
  });

  it("shows at most so many of a code and file and counts the rest; 0 shows all", () => {
    const many = Array.from({ length: 25 }, (_, i) => at(i + 1));
    const text = findingsText(many, source(), options());
    expect(text.match(/error CSV122/g)).toHaveLength(20);
    expect(text).toContain("and 5 more CSV122 (check --max-findings 0 shows all)");
    expect(findingsText(many, source(), options({ limit: 0 })).match(/error CSV122/g)).toHaveLength(25);
  });

  it("leaves out severities that are not wanted", () => {
    expect(findingsText([at(1, { severity: "remark" })], source(), options())).toBe("");
  });

  it("prints the file alone for a finding about a whole file, and neither for one without a place", () => {
    const whole = findingsText([at(1, { line: null, column: null })], source(), options());
    expect(whole.split("\n")[0]).toMatch(/^ferry\/days\/2026-03-14\/logs\/A012C003\.csv {2}error/);
    expect(findingsText([at(1, { file: null, line: null, column: null })], source(), options())).toMatch(/^error CSV122/);
  });

  it("prints the absolute path of a show outside the working directory", () => {
    expect(findingsText([BAD_FOCUS], source(), options({ cwd: "/home" }))).toMatch(/^\/shows\/ferry\/days/);
  });
});

describe("codeFrame", () => {
  it("counts characters, not bytes: letters outside ASCII do not move the caret", () => {
    const frame = codeFrame({ ...BAD_FOCUS, line: 1, column: 4, length: 1 }, lineIndex("äö𝄞x,y"));
    expect(frame).toEqual(["  1 | äö𝄞x,y", "    |    ^"]);
  });

  it("cuts a long line around the place and keeps the caret below it", () => {
    const [line = "", carets = ""] = codeFrame(
      { ...BAD_FOCUS, line: 1, column: 301, length: 3 },
      lineIndex(`${"a".repeat(300)}BAD${"z".repeat(300)}`),
    );
    expect(line.length).toBeLessThan(110);
    expect(line.slice(carets.indexOf("^"), carets.indexOf("^") + 3)).toBe("BAD");
    expect(carets.match(/\^+/)?.[0]).toBe("^^^");
  });

  it("shows a tab as one character, so that the caret fits", () => {
    expect(codeFrame({ ...BAD_FOCUS, line: 1, column: 3, length: 1 }, lineIndex("a\tb"))).toEqual(["  1 | a b", "    |   ^"]);
  });

  it("marks the end of a line where something is missing", () => {
    expect(codeFrame({ ...BAD_FOCUS, line: 1, column: 4, length: 0 }, lineIndex("a,b"))).toEqual(["  1 | a,b", "    |    ^"]);
  });

  it("is empty without a line, and for a line the file does not have", () => {
    expect(codeFrame({ ...BAD_FOCUS, line: null }, lineIndex(LOG))).toEqual([]);
    expect(codeFrame({ ...BAD_FOCUS, line: 99 }, lineIndex(LOG))).toEqual([]);
  });
});
