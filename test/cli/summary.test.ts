import { describe, expect, it } from "vitest";
import { countsText, daysText, rowsText } from "../../src/cli/summary.ts";

const plain = (text: string) => text.replace(/[\u00a0\u202f\u2009]/g, " ");

describe("the last lines", () => {
  it("count the days by what became of them", () => {
    expect(plain(daysText(["built", "unchanged", "built"]))).toBe("3 days: 2 built, 1 unchanged");
    expect(plain(daysText(["failed"]))).toBe("1 day: 1 failed");
    expect(daysText([])).toBe("no days");
  });

  it("count the findings, and say when there are none", () => {
    expect(plain(countsText({ error: 2, check: 17, remark: 0 }, false))).toBe("2 errors, 17 to check");
    expect(plain(countsText({ error: 0, check: 0, remark: 1 }, false))).toBe("1 remark (--verbose shows them)");
    expect(countsText({ error: 0, check: 0, remark: 0 }, false)).toBe("nothing to check");
  });

  it("say what became of the rows of the logs", () => {
    expect(plain(rowsText({ read: 1500, used: 1440, unmatched: 58, rejected: 2 }))).toBe(
      "log rows: 1 500 read, 1 440 used, 58 unmatched, 2 rejected",
    );
    expect(plain(rowsText({ read: 10, used: 10, unmatched: 0, rejected: 0 }))).toBe("log rows: 10 read, all used");
    expect(rowsText({ read: 0, used: 0, unmatched: 0, rejected: 0 })).toBe("");
  });
});
