import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { compareCodes } from "../../src/core/code-order.ts";
import { type PackedRows, type SearchTable, unpackRows } from "../../src/core/packed-rows.ts";
import { AT, SEARCH_GLOBAL } from "../../src/core/search-rows.ts";
import { digestDay } from "../../src/summary/digest.ts";
import type { DayDigest, TakeDigest } from "../../src/summary/digest-types.ts";
import { searchRows, searchRowsScript } from "../../src/view/show/search-rows.ts";
import { takesIndexPage } from "../../src/view/show/takes-index-page.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";

const summary = exampleDaySummary();
const digest = digestDay(summary, []);
const rows = searchRows([digest], summary.kit);

/** What a browser gets from the script. */
function run(script: string): SearchTable {
  let received: PackedRows | null = null;
  runInNewContext(script, {
    [SEARCH_GLOBAL]: (given: PackedRows) => {
      received = given;
    },
  });
  if (received === null) throw new Error("the script called nothing");
  return unpackRows(JSON.parse(JSON.stringify(received)) as PackedRows);
}

function takesOf(table: SearchTable): readonly unknown[] {
  return Array.from({ length: table.count }, (_, place) => table.row(place));
}

function withRemark(remarks: string): DayDigest {
  return { ...digest, takes: digest.takes.slice(0, 1).map((take) => ({ ...take, remarks })) };
}

describe("search rows", () => {
  it("hold every clip of every day in order, with the path of its page", () => {
    expect(rows.takes.map((take) => take[1])).toEqual(digest.takes.map((take) => take.address));
    expect(rows.path).toBe("days/{date}/takes/{address}.html");
    expect(rows.days.map(([date]) => date)).toEqual([summary.date]);
  });

  it("give the clips of one take the same number", () => {
    const numbers = new Map<string, Set<number>>();
    for (const take of rows.takes) {
      const name = `${take[2]} ${take[3]}`;
      numbers.set(name, (numbers.get(name) ?? new Set()).add(take[AT.number]));
    }
    expect([...numbers.values()].every((set) => set.size === 1)).toBe(true);
    expect(new Set([...numbers.values()].flatMap((set) => [...set])).size).toBe(numbers.size);
  });

  it("count the clips of one take once, however its cameras' rows write it, as the totals of the day do", () => {
    const [take] = digest.takes as [TakeDigest];
    const written = (camera: string, slate: string, name: string) => ({ ...take, camera, slate, take: name });
    const takes = [written("A", "14", "2 PU"), written("B", "14", "2  pu"), written("A", "14 2", "PU")];
    expect(searchRows([{ ...digest, takes }], summary.kit).takes.map((row) => row[AT.number])).toEqual([0, 0, 1]);
  });

  it("come through the script as they are", () => {
    const table = run(searchRowsScript(rows));
    expect({ path: table.path, days: table.days, lenses: table.lenses, takes: takesOf(table) }).toEqual(rows);
  });

  it("come with where each word of the remarks stands, cut as the tokenizer cuts them", () => {
    const three = ["Rain, rain again", "", "half-speed rain"].map((remarks) => withRemark(remarks).takes[0] as TakeDigest);
    const { remarkWords } = run(searchRowsScript(searchRows([{ ...digest, takes: three }], summary.kit)));
    expect(remarkWords.words).toEqual(["again", "half", "halfspeed", "rain", "speed"]);
    expect(["rain", "again", "halfspeed", "rai", "zebra", "constructor"].map((word) => remarkWords.places(word))).toEqual([
      [0, 2],
      [0],
      [2],
      [],
      [],
      [],
    ]);
  });

  it("stand any text: quotes, ends of scripts, line separators, right-to-left", () => {
    const remark = `"'\`\\ </script><!-- \u2028\u2029 שלום \${x}`;
    const script = searchRowsScript(searchRows([withRemark(remark)], summary.kit));
    expect(script).not.toMatch(/<|\u2028|\u2029/);
    expect(run(script).row(0)[21]).toBe(remark.replace(/\s+/g, " "));
  });

  it("are a script for a show without a day", () => {
    expect(run(searchRowsScript(searchRows([], { modes: [], lenses: [], calibration: new Map() }))).count).toBe(0);
  });
});

describe("the index of all takes", () => {
  const page = takesIndexPage([digest], summary.kit, exampleContext(summary));

  it("has every clip once, under its slate", () => {
    const hrefs = page.groups.flatMap((group) => group.slates.flatMap((slate) => slate.takes.map((take) => take.href)));
    expect([...hrefs].sort()).toEqual(digest.takes.map((take) => `days/${summary.date}/takes/${take.address}.html`).sort());
    for (const group of page.groups) for (const { slate } of group.slates) expect(slate.startsWith(group.heading)).toBe(true);
  });

  it("is one table of the same takes, under the same headings, in the same order", () => {
    expect([page.hasTable, page.hasList]).toEqual([true, false]);
    expect(page.table.groups.map((group) => [group.id, group.heading])).toEqual(
      page.groups.map((group) => [group.id, group.heading]),
    );
    const listed = page.groups.flatMap((group) => group.slates.flatMap((slate) => slate.takes.map((take) => take.href)));
    expect(page.table.rows.map((r) => r.head.href)).toEqual(listed);
  });

  it("sorts by day as the takes were shot, also over midnight", () => {
    const at = page.table.columns.findIndex((c) => c.label === "Day") - 1;
    const places = new Map(page.table.rows.map((r) => [r.head.href, r.cells[at]?.value]));
    expect(digest.takes.map((take) => places.get(`days/${summary.date}/takes/${take.address}.html`))).toEqual(
      digest.takes.map((_, i) => `${summary.date} ${i}`),
    );
  });

  it("has chips that count the rows they show", () => {
    for (const chip of page.filters.groups.flatMap((group) => group.chips)) {
      const rows = page.table.rows.filter((r) => r.facets.some(({ name, value }) => name === chip.name && value === chip.value));
      expect(chip.count, chip.label).toBe(String(rows.length));
    }
  });

  it("of more than 2,000 clips is the list alone, with none left out", () => {
    const [first] = digest.takes;
    if (first === undefined) throw new Error("the example has takes");
    const takes = Array.from({ length: 2001 }, (_, i) => ({ ...first, slate: String(i), address: `a-${i}-1` }));
    const long = takesIndexPage([{ ...digest, takes }], summary.kit, exampleContext(summary));
    expect([long.hasTable, long.hasList, long.table.rows.length]).toEqual([false, true, 0]);
    expect(long.groups.flatMap((group) => group.slates)).toHaveLength(2001);
  });

  it("orders slates by number, then letter", () => {
    expect(["14A", "2", "B2", "14", "A10", "100", "A9", "14B"].sort(compareCodes)).toEqual([
      "2",
      "14",
      "14A",
      "14B",
      "100",
      "A9",
      "A10",
      "B2",
    ]);
  });

  it("says so when there is no take", () => {
    expect(takesIndexPage([], summary.kit, exampleContext(summary))).toMatchObject({ hasTakes: false, groups: [] });
  });
});
