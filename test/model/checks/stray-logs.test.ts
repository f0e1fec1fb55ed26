import { describe, expect, it } from "vitest";
import { clipLog, found, logFile } from "../../helpers/one-day.ts";

const NOTES = ["14,1,A,C1,10:00:00:00,10:00:01:00,P50,2.8,", "14,3,A,C3,10:05:00:00,10:05:01:00,P50,2.8,"];
const log = (clip: string) => clipLog(clip, "t", 24, () => "2.83");

describe("a log that cannot serve", () => {
  it("and is another's copy is said to be one file twice", () => {
    const [finding] = found({ notes: NOTES, logs: { "a.csv": log("C1"), "b.csv": log("C1") } }, "MATCH404");
    expect(finding).toMatchObject({ severity: "check", file: logFile("b.csv"), hint: "Delete one of the two files." });
    expect(finding?.message).toContain("are one file twice");
    const other = log("C1").replace("2.83", "2.84");
    expect(found({ notes: NOTES, logs: { "a.csv": log("C1"), "b.csv": other } }, "MATCH404")[0]?.message).not.toContain("twice");
  });

  it("and names a take that its slate does not have hears of those that it has", () => {
    const named = log("C1").replace("# clip: C1", "# slate: 14\n# take: 2");
    const [finding] = found({ notes: NOTES, logs: { "a.csv": named } }, "MATCH401");
    expect(finding?.hint).toContain("Slate 14 has takes 1, 3 in the notes.");
    expect(finding?.hint).not.toContain("Did you mean");
  });
});
