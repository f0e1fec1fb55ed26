/** Findings across days in a build: said by the command, given to the show-wide pages, and the same when one day only is made again. */
import { afterEach, describe, expect, it } from "vitest";
import type { Pipeline } from "../../src/build/pipeline.ts";
import { finding } from "../../src/core/finding.ts";
import { type FakeBuild, fakeBuild, fakePipeline, writeFiles } from "./fakes.ts";

const FIRST = "2026-03-14";
const SECOND = "2026-03-15";
let show: FakeBuild;
afterEach(() => show.clean());

/** Takes with one name on two days are a finding at the later day; what the show-wide pages are given is kept in `given`. */
function pipeline(given: string[][]): Pipeline {
  const fake = fakePipeline(show.calls);
  return {
    ...fake,
    checkDays: (_, digests) => {
      const [a, b] = [...digests].sort((x, y) => (x.date < y.date ? -1 : 1));
      const names = new Set(a?.takes.map((take) => take.address));
      return (b?.takes ?? [])
        .filter((take) => names.has(take.address))
        .map((take) =>
          finding({
            code: "CHECK749",
            severity: "check",
            place: { file: `days/${b?.date}/notes.csv`, line: 1, column: 1 },
            message: take.address,
            hint: "Mend it.",
          }),
        );
    },
    makeShow: async (request) => {
      given.push(request.showFindings.map((f) => f.code));
      await fake.makeShow(request);
    },
  };
}

const notes = (date: string, text: string) => ({ [`days/${date}/notes.csv`]: text });

describe("findings across days", () => {
  it("are said, counted and given to the show-wide pages, and stay when one day is made again", async () => {
    show = fakeBuild({ "show.yaml": "title: T", ...notes(FIRST, "take a-1-1"), ...notes(SECOND, "take a-1-1") });
    const given: string[][] = [];
    const first = await show.build({ pipeline: pipeline(given) });
    expect(first.findings.map((f) => [f.code, f.file])).toEqual([["CHECK749", `days/${SECOND}/notes.csv`]]);
    expect(first.counts.check).toBe(1);
    expect(given).toEqual([["CHECK749"]]);

    writeFiles(show.show, notes(FIRST, "take a-1-1\ntake a-1-2"));
    const second = await show.build({ pipeline: pipeline(given) });
    expect(show.calls).toEqual([FIRST, "show"]);
    expect(second.findings).toEqual(first.findings);
    expect(given[1]).toEqual(["CHECK749"]);

    const unchanged = await show.build({ pipeline: pipeline(given) });
    expect(show.calls).toEqual([]);
    expect(unchanged.findings).toEqual(first.findings);
  });

  it("go away, and the show-wide pages are made anew, when the other day is mended", async () => {
    show = fakeBuild({ "show.yaml": "title: T", ...notes(FIRST, "take a-1-1"), ...notes(SECOND, "take a-1-1") });
    const given: string[][] = [];
    await show.build({ pipeline: pipeline(given) });
    writeFiles(show.show, notes(FIRST, "take a-1-2"));
    const mended = await show.build({ pipeline: pipeline(given) });
    expect(mended.findings).toEqual([]);
    expect(given).toEqual([["CHECK749"], []]);
  });

  it("are said for the day asked for only", async () => {
    show = fakeBuild({ "show.yaml": "title: T", ...notes(FIRST, "take a-1-1"), ...notes(SECOND, "take a-1-1") });
    await show.build({ pipeline: pipeline([]) });
    const codes = async (date: string) => (await show.build({ dates: [date], pipeline: pipeline([]) })).findings.map((f) => f.code);
    expect(await codes(FIRST)).toEqual([]);
    expect(await codes(SECOND)).toEqual(["CHECK749"]);
  });
});
