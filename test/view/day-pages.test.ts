import { describe, expect, it } from "vitest";
import type { PageModel } from "../../src/view/context.ts";
import type { DayPage } from "../../src/view/day/day-page.ts";
import { dayPages } from "../../src/view/day-pages.ts";
import type { TakePage } from "../../src/view/take/take-page.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";
import { emptyDay, exampleContext } from "../fixtures/site-context.ts";

const summary = exampleDaySummary();
const pages = dayPages(summary, exampleContext(summary));
const all: readonly PageModel[] = Object.values(pages).flat();
const takes = pages.take as readonly TakePage[];
const sheet = (address: string) => takes.find((page) => page.path.endsWith(`/${address}.html`)) as TakePage;

/** Every value in a model with its place. */
function* leaves(value: unknown, place = ""): Generator<readonly [string, unknown]> {
  if (value !== null && typeof value === "object") {
    for (const [key, inner] of Object.entries(value)) yield* leaves(inner, `${place}.${key}`);
  } else yield [place, value];
}

describe("pages of a day", () => {
  it("are the day, a sheet a take, a sheet a plate set-up, two doors and the findings", () => {
    expect(all.map((page) => page.path).sort()).toEqual(
      [
        ...["index", "editorial", "vfx", "findings"].map((name) => `days/2031-05-06/${name}.html`),
        // 12 take 2 A is the hero, 12B its clean plate
        ...["plate-12", "plate-12b"].map((name) => `days/2031-05-06/${name}.html`),
        ...summary.takes.map((t) => `days/2031-05-06/takes/${t.take.address}.html`),
      ].sort(),
    );
  });

  it("hold texts and flags only: no number, no null, nothing undefined, no NaN in a text", () => {
    for (const [place, value] of leaves(pages)) {
      expect(["string", "boolean"], place).toContain(typeof value);
      if (typeof value === "string") expect(value, place).not.toMatch(/NaN|undefined|\bnull\b|\[object/);
    }
  });

  it("are frozen to the last cell", () => {
    const frozen = (value: unknown): boolean =>
      value === null || typeof value !== "object" || (Object.isFrozen(value) && Object.values(value).every(frozen));
    expect(frozen(pages)).toBe(true);
  });

  it("have titles that differ", () => {
    expect(new Set(all.map((page) => page.title)).size).toBe(all.length);
  });

  it("leave out a row whose address an earlier row has", () => {
    const first = summary.takes[0];
    if (first === undefined) throw new Error("no take");
    const twice = { ...summary, takes: [...summary.takes, { ...first, take: { ...first.take, duplicate: true } }] };
    expect(dayPages(twice, exampleContext(twice)).take).toHaveLength(summary.takes.length);
  });
});

describe("take sheet", () => {
  it("says where each figure comes from, by word", () => {
    const page = sheet("a-12-2");
    const source = (term: string) => [...page.strip, ...page.readout].find((f) => f.term === term)?.source;
    expect(source("Timecode in")).toBe("noted");
    expect(source("Focus distance")).toBe("logged");
    expect(source("Sharp from")).toBe("calculated");
    expect(source("Distortion at corner")).toBe("kit, between points");
  });

  it("writes shading as the table and day.json do: negative where it is darker", () => {
    const shown = sheet("a-12-2").readout.find((f) => f.term === "Shading at corner")?.value;
    const corner = summary.takes.find((t) => t.take.address === "a-12-2")?.shadingStops?.corner ?? 0;
    expect(corner).toBeLessThan(0);
    expect(shown?.startsWith("\u2212")).toBe(true);
  });

  it("has the drawing of the lens look with a switch for each part, and the shift in recorded pixels", () => {
    const { look } = sheet("a-12-2");
    expect([look.picture.hasDrawing, look.picture.hasDistortion, look.picture.hasShading]).toEqual([true, true, true]);
    expect(look.table.columns.map((c) => c.label)).toEqual(["Point", "Distortion", "Shift at 4608 wide", "Shading", "Brightness"]);
    expect(look.table.rows[0]?.cells[1]?.text).toMatch(/^\d+\u00a0(in|out)ward$/);
  });

  it("says what a table lacks and where to write it, without a drawing", () => {
    const without = sheet("b-12-2").look;
    expect(without.picture.hasDrawing).toBe(false);
    expect(without.state).toMatch(/^Lens look not calculated: \S.*\.$/);
    expect(without.sentence).toMatch(/^Put the take's lens log/);
  });

  it("says the light on the sensor, or what is not recorded for it", () => {
    for (const page of takes) {
      const light = page.setup.find((f) => f.term === "Light on the sensor");
      const exposure = summary.takes.find((t) => page.path.endsWith(`/${t.take.address}.html`))?.exposure;
      if (exposure?.lightStops == null) expect(light?.value).toMatch(/^not calculated: .* not recorded$/);
      else expect(light?.source).toMatch(/^calculated/);
    }
  });

  it("writes what is absent as words", () => {
    const page = sheet("a-15-1");
    const value = (term: string) => page.strip.find((f) => f.term === term)?.value;
    expect(value("Timecode in")).toBe("not recorded");
    expect(value("Clip")).toBe("not recorded");
    expect(value("Stop")).toBe("not recorded");
    expect(sheet("a-12a-1").strip.find((f) => f.term === "Stop")?.value).toBe("not logged");
    expect(page.pulls.sentence).toContain("No log");
    expect(page.look.state).toMatch(/^Lens look not calculated: \S/);
  });

  it("links to its neighbours on the same camera and to the other camera of the same take", () => {
    const turns = sheet("a-12-2").turns.map((turn) => [turn.rel, turn.href]);
    expect(turns).toEqual([
      ["prev", "a-12-1.html"],
      ["alternate", "b-12-2.html"],
      ["next", "a-12a-1.html"],
    ]);
  });

  it("offers the files that its folder of the pack holds", () => {
    expect(sheet("a-12-2").files.map((file) => file.href)).toEqual(["../../../packs/2031-05-06/vfx/a-12-2/lens.csv"]);
    expect(sheet("a-12-1").hasFiles).toBe(false);
  });
});

describe("day page", () => {
  const page = pages.day?.[0] as DayPage;

  it("shows the sum of the log rows as an identity", () => {
    expect(page.rowsSentence.replaceAll("\u202f", "")).toBe("4371 rows read = 4337 used + 30 unmatched + 4 rejected.");
  });

  it("names the worst finding of a take first and counts the others", () => {
    const row = page.slates.flatMap((slate) => slate.rows).find((r) => r.id === "a-12-2");
    expect(row?.findingWord).toBe("Check");
    expect(row?.findingText).toMatch(/^17 of 754 frames .* And 2 more\.$/);
  });

  it("has one door for each reader", () => {
    expect(page.doors.map((door) => door.href)).toEqual(["editorial.html", "vfx.html", "production.html"]);
  });

  it("says what was looked for when there is no take", () => {
    const empty = emptyDay(summary);
    const emptyPage = dayPages(empty, exampleContext(empty, { packFiles: [] })).day?.[0] as DayPage;
    expect(emptyPage.hasTakes).toBe(false);
    expect(emptyPage.emptySentence).toContain("notes.csv");
    expect(emptyPage.strip.find((f) => f.term === "Call")?.value).toBe("not recorded");
  });
});
