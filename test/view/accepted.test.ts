import { describe, expect, it } from "vitest";
import { countFindings, finding, openFindings } from "../../src/core/finding.ts";
import { findingView, worstFirst } from "../../src/view/findings/findings.ts";

const open = finding({ code: "CHECK702", severity: "check", message: "Open", hint: "Mend it" });
const error = finding({ code: "MATCH406", severity: "error", message: "Wrong", hint: "Mend it" });
const accepted = { ...error, accepted: "pulled by hand on purpose" };

describe("an accepted finding on the pages", () => {
  it("stays in the list, last, with the word Accepted and its reason", () => {
    expect(worstFirst([accepted, open])).toEqual([open, accepted]);
    const view = findingView(accepted, { path: "findings.html", date: "2030-02-03", takes: new Map() });
    expect(view.word).toBe("Accepted");
    expect(view.hint).toContain("pulled by hand on purpose");
  });
  it("asks for nothing and is not counted", () => {
    expect(openFindings([accepted, open, error])).toEqual([open, error]);
    expect(countFindings([accepted, open])).toEqual({ error: 0, check: 1, remark: 0 });
  });
});
