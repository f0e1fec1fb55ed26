import { describe, expect, it } from "vitest";
import { distance } from "../../src/format/length.ts";
import { dayContext } from "../../src/view/day/day-context.ts";
import { filterBar, takeFacets } from "../../src/view/filters.ts";
import { groupedTable } from "../../src/view/grouped-table.ts";
import { takeName } from "../../src/view/names.ts";
import { pageBase } from "../../src/view/page.ts";
import { editorialPage } from "../../src/view/readers/editorial-page.ts";
import { pairPlates } from "../../src/view/readers/plates.ts";
import { sceneGroups } from "../../src/view/readers/scene-groups.ts";
import { vfxPage } from "../../src/view/readers/vfx-page.ts";
import { cell, column, num, row, table } from "../../src/view/table.ts";
import { linkTableFiles, tableFiles } from "../../src/view/table-files.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { exampleContext } from "../fixtures/site-context.ts";

const summary = exampleDaySummary();
const site = exampleContext(summary);
const day = dayContext(summary, site);

function longTable(rows: number) {
  return table(
    "long",
    "Long",
    [column("Name"), column("Focus", { unit: "m", num: true })],
    Array.from({ length: rows }, (_, i) => row(cell(i === 1 ? '=a, "b"' : `r${i}`), [num(distance(2.4, "reader-metric"))])),
  );
}
const pageOf = (model: unknown) => ({
  ...pageBase({ path: "days/x/vfx.html", title: "x", trail: [] }, site),
  inner: { list: [model] },
});

describe("a table of a page", () => {
  it("prints 2,000 rows as they are, and of more the first 2,000, saying where the rest is", () => {
    const full = longTable(2000);
    expect([full.rows.length, full.more, full.overflow]).toEqual([2000, "", ""]);
    const cut = longTable(2001);
    expect(cut.rows).toHaveLength(2000);
    expect(cut.more.replace(/\s/g, " ")).toBe("The first 2 000 of 2 001 rows. All are in the file");
  });

  it("has every row in a file beside the page, in the show's units and with nothing that a spreadsheet would run", () => {
    const pages = linkTableFiles({ vfx: [pageOf(longTable(2001))] });
    const [file] = tableFiles(pages);
    expect(file?.path).toBe("days/x/vfx.long.csv");
    const lines = file?.text.split("\n") ?? [];
    expect(lines).toHaveLength(1 + 2001 + 1);
    expect(lines[0]).toBe("Name,Focus (m)");
    expect(lines[2]).toBe(`"'=a, ""b""",2.40\u00a0m`);
    const [page] = (pages as unknown as { vfx: { inner: { list: ReturnType<typeof longTable>[] } }[] }).vfx;
    expect(page?.inner.list[0]?.file).toEqual({
      label: "All rows as CSV",
      href: "vfx.long.csv",
      size: expect.stringContaining("KB"),
    });
  });

  it("leads to the file of the pack where there is one, and no other is written", () => {
    const file = { label: "takes.csv", href: "x.csv", size: "4 KB" };
    const rows = Array.from({ length: 2001 }, () => row(cell("a"), []));
    const long = table("t", "T", [column("A")], rows, { file });
    expect(long.file).toBe(file);
    const page = pageOf(long);
    expect(tableFiles({ vfx: [page] })).toEqual([]);
    expect(linkTableFiles({ vfx: [page] }).vfx?.[0]).toBe(page);
  });
});

describe("the editorial page", () => {
  const page = editorialPage(day);

  it("has a heading a scene, by scene and slate, then in shooting order; together its groups are the whole table", () => {
    for (const [model, takes] of [
      [page.circled, day.takes.filter((t) => t.take.circled)],
      [page.others, day.takes.filter((t) => !t.take.circled)],
    ] as const) {
      expect(model.groups.flatMap((group) => group.rows)).toEqual(model.rows);
      expect(model.rows).toHaveLength(takes.length);
      const named = [...new Set(takes.flatMap((t) => t.take.scene ?? []))].sort(
        (a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10),
      );
      const scenes: readonly (string | null)[] = takes.some((t) => t.take.scene === null) ? [...named, null] : named;
      expect(model.groups.map((group) => group.heading)).toEqual(scenes.map((scene) => `Scene ${scene ?? "not recorded"}`));
      for (const [i, group] of model.groups.entries()) {
        const own = takes.filter((t) => t.take.scene === scenes[i]);
        expect(group.rows.map((r) => r.head.text).sort()).toEqual(own.map((t) => takeName(t.take)).sort());
        const slates = group.rows.map((r) => r.head.text.split(" take ")[0] ?? "");
        // no slate comes back after another: 14 before 14A
        expect([...new Set(slates)]).toEqual(slates.filter((slate, at) => slate !== slates[at - 1]));
        expect(group.count.replace(/\s/g, " ")).toContain(`; ${own.length} clip`);
      }
    }
  });

  it("gives its groups ids of their own, and a copied row its scene", () => {
    const ids = [...page.circled.groups, ...page.others.groups].map((group) => group.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const model of [page.circled, page.others]) {
      expect(model.copyHead.split("\t")[0]).toBe("Scene");
      for (const group of model.groups) for (const r of group.rows) expect(`Scene ${r.copy.split("\t")[0]}`).toBe(group.heading);
    }
  });

  it("puts takes without a scene last, and keeps apart scenes that fold to one name", () => {
    const [first] = day.takes;
    if (first === undefined) throw new Error("the example has takes");
    const of = (scene: string | null) => ({ ...first, take: { ...first.take, scene } });
    const groups = sceneGroups([null, "24/25", "9", "24 25", "24"].map(of), "circled");
    expect(groups.map((group) => [group.heading, group.id])).toEqual([
      ["Scene 9", "circled-scene-9"],
      ["Scene 24", "circled-scene-24"],
      ["Scene 24 25", "circled-scene-24-25"],
      ["Scene 24/25", "circled-scene-24-25-2"],
      ["Scene not recorded", "circled-no-scene"],
    ]);
  });

  it("of a table that is cut loses the last rows of the last groups", () => {
    const rows = (from: number, count: number) => Array.from({ length: count }, (_, i) => row(cell(`r${from + i}`), []));
    const group = (id: string, from: number, count: number) => ({ id, heading: id, about: "", count: "", rows: rows(from, count) });
    const model = groupedTable(
      "g",
      "G",
      [column("Name")],
      [group("a", 0, 1500), group("b", 1500, 600), group("c", 2100, 5)],
      "Groups",
    );
    expect(model.groups.map(({ id, rows: own }) => [id, own.length])).toEqual([
      ["a", 1500],
      ["b", 500],
    ]);
    expect(model.overflow.trimEnd().split("\n")).toHaveLength(1 + 2105);
  });
});

describe("filters of a day", () => {
  it("have a chip for each lens, camera and kind of take, with the number of clips", () => {
    const bar = filterBar(day.takes, day);
    const chips = bar.groups.flatMap((group) => group.chips);
    for (const chip of chips) {
      const having = day.takes.filter((t) => takeFacets(t).some(({ name, value }) => name === chip.name && value === chip.value));
      expect(chip.count, chip.label).toBe(String(having.length));
      expect(having.length).toBeGreaterThan(0);
    }
    expect(chips.filter(({ name }) => name === "camera").map(({ label }) => label)).toEqual(["Camera A", "Camera B"]);
    expect(bar.all).toBe(`All ${day.takes.length} clips shown.`);
  });
});

describe("the editor's copy of a row", () => {
  it("has the columns of an editor's list in their order", () => {
    const { circled, others } = editorialPage(day);
    expect(circled.copyHead.split("\t")).toEqual([
      ...["Scene", "Slate", "Take", "Camera", "Clip", "Roll", "TC in", "TC out", "Duration, frames", "Circled", "Remarks"],
    ]);
    for (const r of [...circled.rows, ...others.rows]) expect(r.copy.split("\t")).toHaveLength(11);
    const t = day.takes.find((other) => other.take.circled);
    expect(circled.rows[0]?.copy.split("\t").slice(0, 10)).toEqual([
      ...[t?.take.scene, t?.take.slate, t?.take.take, t?.take.camera, t?.take.clip, t?.take.roll],
      ...[t?.timecodeIn, t?.timecodeOut, String(t?.take.durationFrames), "yes"],
    ]);
  });
});

describe("addresses of plates", () => {
  it("are made of the slate, not of a place in the list", () => {
    const groups = vfxPage(day).groups;
    const plates = day.takes.filter((t) => t.take.plate !== null);
    expect(groups.map(({ id }) => id)).toEqual(pairPlates(plates).map(({ slate }) => `plate-${slate.toLowerCase()}`));
    expect(groups.length).toBeGreaterThan(0);
  });
});
