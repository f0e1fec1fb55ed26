import { describe, expect, it } from "vitest";
import { readDay } from "../../../src/ingest/read-day.ts";
import { readShow } from "../../../src/ingest/read-show.ts";
import { buildDay } from "../../../src/model/build-day.ts";
import { checkAcrossDays } from "../../../src/model/checks/across-days.ts";
import { notedDay } from "../../../src/summary/digest.ts";
import { memoryFolder, SMALL_KIT } from "../../helpers/memory-show.ts";

const HEADER = "slate,take,camera,roll,clip";
interface DayText {
  readonly notes: readonly string[];
  readonly unit?: string;
}

function days(all: Readonly<Record<string, DayText>>, show = "") {
  const texts = Object.entries(all).flatMap(([date, { notes, unit }], i) => [
    [`days/${date}/day.yaml`, `day: ${i + 1}\ndate: ${date}\n${unit === undefined ? "" : `unit: ${unit}\n`}`],
    [`days/${date}/notes.csv`, `${[HEADER, ...notes].join("\n")}\n`],
  ]);
  const folder = memoryFolder({ ...SMALL_KIT, "show.yaml": `${SMALL_KIT["show.yaml"]}${show}`, ...Object.fromEntries(texts) });
  const { input } = readShow(folder);
  if (input === null) throw new Error("the show cannot be read");
  const noted = input.dates.map((date) => {
    const read = readDay(folder, input, date);
    return notedDay(buildDay(input, read.input, read.findings));
  });
  return { noted, accepted: input.show.accepted };
}
const found = (...args: Parameters<typeof days>) => {
  const { noted, accepted } = days(...args);
  return checkAcrossDays(noted, accepted);
};
const MONDAY = "2030-02-04";
const TUESDAY = "2030-02-05";
const notes = (date: string) => `days/${date}/notes.csv`;

describe("a slate on two days", () => {
  it("with a take number twice is a check at the later day, once a slate, and names the other place", () => {
    const findings = found({
      [MONDAY]: { notes: ["14,1,A,,", "14,2,A,,"] },
      [TUESDAY]: { notes: ["15,1,A,,", "14,1,A,,", "14,2,A,,"] },
    });
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code: "CHECK749",
      severity: "check",
      file: notes(TUESDAY),
      line: 3,
      column: 4,
      field: "take",
      take: "a-14-1",
    });
    expect(findings[0]?.message).toContain(`day 1 (${MONDAY})`);
    expect(findings[0]?.hint).toContain(`${notes(MONDAY)}, line 2`);
  });
  it("that goes on with the next take, or is of another camera or unit, is none", () => {
    expect(found({ [MONDAY]: { notes: ["14,1,A,,"] }, [TUESDAY]: { notes: ["14,2,A,,", "14,1,B,,"] } })).toEqual([]);
    expect(found({ [MONDAY]: { notes: ["14,1,A,,"] }, [TUESDAY]: { notes: ["14,1,A,,"], unit: "second" } })).toEqual([]);
  });
});

describe("clips and rolls over the nights", () => {
  it("a clip on two days is a check", () => {
    const [finding] = found({ [MONDAY]: { notes: ["14,1,A,A021,A021C001"] }, [TUESDAY]: { notes: ["15,1,A,A021,A021C001"] } });
    expect(finding).toMatchObject({
      code: "CHECK750",
      severity: "check",
      file: notes(TUESDAY),
      line: 2,
      column: 13,
      field: "clip",
    });
  });
  it("a roll left out is a remark, a lower one a check, the same or the next one none", () => {
    const rolls = (second: string) =>
      found({
        [MONDAY]: { notes: ["14,1,A,A021,", "14,2,A,A022,"] },
        [TUESDAY]: { notes: [`15,1,A,${second},`, `15,2,A,${second},`] },
      }).map((f) => [f.code, f.severity, f.file, f.line, f.column, f.field]);
    expect(rolls("A022")).toEqual([]);
    expect(rolls("A023")).toEqual([]);
    expect(rolls("A025")).toEqual([["CHECK751", "remark", notes(TUESDAY), 2, 8, "roll"]]);
    expect(rolls("A012")).toEqual([["CHECK752", "check", notes(TUESDAY), 2, 8, "roll"]]);
    expect(rolls("B015")).toEqual([]);
  });
  it("a hole within a day is left to the day's own rule", () => {
    expect(found({ [MONDAY]: { notes: ["14,1,A,A021,"] }, [TUESDAY]: { notes: ["15,1,A,A022,", "15,2,A,A024,"] } })).toEqual([]);
  });
});

describe("findings across days", () => {
  const show = { [MONDAY]: { notes: ["14,1,A,,"] }, [TUESDAY]: { notes: ["14,1,A,,"] } };
  it("are the same in whatever order the days were read", () => {
    const { noted, accepted } = days(show);
    expect(checkAcrossDays([...noted].reverse(), accepted)).toEqual(checkAcrossDays(noted, accepted));
  });
  it("are accepted in show.yaml, by file where it names one, and an entry that fits none is a remark at its line", () => {
    const accept = (entries: string) => found(show, `accepted:\n${entries}`).map((f) => [f.code, f.file, f.line, f.accepted]);
    expect(accept("  - {code: CHECK749, reason: slate was used again on purpose}\n")).toEqual([
      ["CHECK749", notes(TUESDAY), 2, "slate was used again on purpose"],
    ]);
    // the small kit's show.yaml has four lines, then `accepted:`
    expect(accept(`  - {code: CHECK749, file: ${notes(MONDAY)}, reason: seen}\n`)).toEqual([
      ["CHECK749", notes(TUESDAY), 2, null],
      ["CHECK748", "show.yaml", 6, null],
    ]);
  });
});
