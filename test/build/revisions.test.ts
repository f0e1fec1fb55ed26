import { rmSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import type { ShowRequest } from "../../src/build/pipeline.ts";
import type { DayFacts } from "../../src/build/plan.ts";
import { contentOf, lastChange, reasonOf } from "../../src/build/revisions.ts";
import { type FakeBuild, fakeBuild, fakePipeline, readFiles, writeFiles } from "./fakes.ts";

const FACTS: DayFacts = {
  ...{ toolVersion: "1.0.0", programHash: "p", previous: null, next: null },
  showFiles: [{ file: "show.yaml", sha256: "1" }],
  dayFiles: [{ file: "days/2031-05-06/notes.csv", sha256: "2" }],
};
const CHANGED: DayFacts = { ...FACTS, dayFiles: [{ file: "days/2031-05-06/notes.csv", sha256: "3" }] };

describe("content of a day", () => {
  it("is not that of the program's files nor of the neighbouring days", () => {
    const other = { ...FACTS, programHash: "q", previous: { date: "2031-05-05", day: 1 } };
    expect(contentOf(other)).toBe(contentOf(FACTS));
    expect(contentOf(CHANGED)).not.toBe(contentOf(FACTS));
    expect(contentOf({ ...FACTS, toolVersion: "1.0.1" })).not.toBe(contentOf(FACTS));
  });

  it("keeps the reason it had while it stays the same", () => {
    expect(reasonOf(FACTS, null)).toBe("new");
    expect(reasonOf(CHANGED, { facts: FACTS, reason: "new" })).toBe("notes.csv changed");
    expect(reasonOf({ ...CHANGED, programHash: "q" }, { facts: CHANGED, reason: "notes.csv changed" })).toBe("notes.csv changed");
  });
});

describe("last change", () => {
  const day = (date: string, content: string, reason = "notes.csv changed") => ({
    date,
    day: null,
    content,
    packId: content,
    reason,
  });

  it("is the first build where nothing was compared before", () => {
    expect(lastChange(null, [day("2031-05-06", "a")])).toEqual({ first: true, days: [] });
  });

  it("names days that are new, made anew and gone, in order of date", () => {
    const before = {
      days: [day("2031-05-05", "a"), day("2031-05-06", "b"), day("2031-05-07", "c")],
      lastChange: { first: true, days: [] },
    };
    const change = lastChange(before, [day("2031-05-06", "b"), day("2031-05-07", "d"), day("2031-05-08", "e", "new")]);
    expect(change.days.map((d) => [d.date, d.what, d.reason])).toEqual([
      ["2031-05-05", "gone", "no longer in the show"],
      ["2031-05-07", "changed", "notes.csv changed"],
      ["2031-05-08", "new", ""],
    ]);
  });

  it("stays what it was while nothing differs", () => {
    const stored = { first: false, days: [{ date: "2031-05-06", day: null, what: "new", reason: "" }] } as const;
    expect(lastChange({ days: [day("2031-05-06", "a")], lastChange: stored }, [day("2031-05-06", "a")])).toBe(stored);
  });
});

describe("a build after a build", () => {
  let show: FakeBuild;
  afterEach(() => show.clean());
  /** Like the fake one, with a page that says what the show-wide pages are told. */
  const pipeline = (programHash = "") => {
    const plain = fakePipeline();
    return {
      ...plain,
      async makeShow(request: ShowRequest) {
        await plain.makeShow(request);
        request.out.write(`${request.into}/change.txt`, `${JSON.stringify([request.lastChange, request.packs])}${programHash}`);
      },
    };
  };
  const build = (force = false) => show.build({ force, pipeline: pipeline() });
  const said = () =>
    (
      JSON.parse(readFiles(show.out)["change.txt"] ?? "[]") as {
        first: boolean;
        days: { date: string; what: string; reason: string }[];
      }[]
    )[0];
  const open = async () => {
    show = fakeBuild({
      "show.yaml": "title: T",
      "days/2026-03-14/notes.csv": "take a-1-1",
      "days/2026-03-15/notes.csv": "take a-2-1",
    });
    await build();
  };
  const change = () =>
    writeFiles(show.show, { "days/2026-03-14/notes.csv": "take a-1-2", "days/2026-03-16/notes.csv": "take a-3-1" });

  it("says which days differ, and why", async () => {
    await open();
    expect(said()).toEqual({ first: true, days: [] });
    change();
    rmSync(join(show.show, "days/2026-03-15"), { recursive: true });
    await build();
    expect(said()?.days.map((d) => [d.date, d.what, d.reason])).toEqual([
      ["2026-03-14", "changed", "notes.csv changed"],
      ["2026-03-15", "gone", "no longer in the show"],
      ["2026-03-16", "new", ""],
    ]);
  });

  it("gives the same bytes for the same input, forced or not, and from an empty folder twice", async () => {
    await open();
    change();
    await build();
    const once = readFiles(show.out);
    await build();
    expect(readFiles(show.out)).toEqual(once);
    await build(true);
    expect(readFiles(show.out)).toEqual(once);
    rmSync(show.out, { recursive: true });
    await build();
    const fresh = readFiles(show.out);
    rmSync(show.out, { recursive: true });
    await build();
    expect(readFiles(show.out)).toEqual(fresh);
  });
});
