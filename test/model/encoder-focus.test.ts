import { describe, expect, it } from "vitest";
import { lensFields } from "../../src/export/vfx/lens-fields.ts";
import { dioptresOfReading } from "../../src/model/encoder-focus.ts";
import { readoutSources } from "../../src/view/frame-values.ts";
import { logText, SMALL_KIT, summarise } from "../helpers/memory-show.ts";

const DATE = "2031-05-06";
const DAY = `days/${DATE}`;
const NOTES = "slate,take,camera,tc_in,tc_out,lens\n1,1,A,10:00:00:00,10:00:00:04,P50\n";
/** 1000 counts at 0.5 m (2 dioptres), 3000 at 1 m, 5000 at infinity. */
const TABLE = "encoder,focus_m\n1000,0.5\n5000,inf\n3000,1\n";

function files(readings: readonly string[], table: string | null = TABLE, header = "encoder_focus"): Record<string, string> {
  return {
    ...SMALL_KIT,
    [`${DAY}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
    [`${DAY}/notes.csv`]: NOTES,
    [`${DAY}/logs/a.csv`]: logText(["slate: 1", "take: 1", "camera: A"], header, "10:00:00:00", 4, (i) => readings[i] ?? ""),
    ...(table === null ? {} : { "kit/encoders/P50.csv": table }),
  };
}

function codes(all: readonly { code: string; file: string | null; line: number | null; column: number | null }[]): string[] {
  return all.filter((f) => /LOG22[78]|KIT52\d/.test(f.code)).map((f) => `${f.code} ${f.file}:${f.line}:${f.column}`);
}

function oneTake(cells: readonly string[], header = "encoder_focus") {
  const [summary] = summarise(files(cells, TABLE, header), DATE).summary.takes;
  if (summary === undefined) throw new Error("there is no take");
  return { summary };
}

describe("the focus of a log with encoder readings only", () => {
  it("is linear in 1/distance between the marks of the lens, whatever their order in the table", () => {
    // 1000: 2 dioptres. 2000: half way from 2 to 1. 4000: half way from 1 to 0. 5000: infinity.
    const { day, findings } = summarise(files(["1000", "2000", "4000", "5000"]), DATE);
    expect([...(day.takes[0]?.track?.columns.focus ?? [])]).toEqual([2, 1.5, 0.5, 0]);
    // One count is at most 1 dioptre / 2000.
    expect(day.takes[0]?.track?.focusQuantisation).toBeCloseTo(1 / 2000, 12);
    expect(codes(findings)).toEqual([]);
  });

  it("says that it is calculated from the encoder table: in the figures, the readout and the description of lens.csv", () => {
    const { summary } = oneTake(["1000", "2000", "4000", "5000"]);
    expect(summary.focus).toMatchObject({ nearestM: 0.5, farthestM: "inf", source: "calculated" });
    expect(readoutSources(summary).focus).toBe("calculated from the encoder table");
    const field = lensFields(summary).find(({ name }) => name === "focus_m");
    expect(field?.provenance).toBe("calculated: the logged encoder readings through kit/encoders/P50.csv, linear in 1/distance");
    const measured = oneTake(["2", "2", "2", "2"], "focus_m").summary;
    expect([measured.focus?.source, readoutSources(measured).focus]).toEqual(["logged", "logged"]);
  });

  it("is the nearest mark's beyond the marks, with a finding at the first such row", () => {
    const { day, findings } = summarise(files(["1000", "900", "5600", ""]), DATE);
    expect([...(day.takes[0]?.track?.columns.focus ?? [])]).toEqual([2, 2, 0, Number.NaN]);
    expect(codes(findings)).toEqual([`LOG227 ${DAY}/logs/a.csv:6:13`]);
    expect(findings.find((f) => f.code === "LOG227")).toMatchObject({ severity: "check", field: "encoder_focus", take: "a-1-1" });
    expect(findings.find((f) => f.code === "LOG227")?.message).toContain("2 frames");
  });

  it("is absent without a table, and the finding says which file to write", () => {
    const { day, findings } = summarise(files(["1000", "2000"], null), DATE);
    expect(day.takes[0]?.track?.columns.focus).toBeUndefined();
    expect(codes(findings)).toEqual([`LOG228 ${DAY}/logs/a.csv:5:13`]);
    expect(findings.find((f) => f.code === "LOG228")?.hint).toContain("kit/encoders/P50.csv");
  });

  it("stays the logged one where the log has a focus column, also an empty one", () => {
    const { day, findings } = summarise(files(["2,1000", ",2000", "4,9999", "4,1"], TABLE, "focus_m,encoder_focus"), DATE);
    expect([...(day.takes[0]?.track?.columns.focus ?? [])]).toEqual([0.5, Number.NaN, 0.25, 0.25]);
    expect(codes(findings)).toEqual([]);
  });

  it.each([
    ["encoder,focus_m\n1000,0.5\n", ["KIT523 kit/encoders/P50.csv:1:1"]],
    ["encoder,focus_m\n1000,0.5\n1000,1\n5000,inf\n", ["KIT524 kit/encoders/P50.csv:3:1"]],
    ["encoder,focus_m\n1000,0.5\n2000,2\n3000,1\n5000,inf\n", ["KIT525 kit/encoders/P50.csv:4:1"]],
  ])("has a table whose mistakes are found where they stand: %j", (table, expected) => {
    const { findings } = summarise(files(["1000", "1000", "1000", "1000"], table), DATE);
    expect(codes(findings).filter((c) => c.startsWith("KIT"))).toEqual(expected);
  });

  it("has tables for lenses of the kit only, with the name that is near", () => {
    const { findings } = summarise({ ...files(["1000"]), "kit/encoders/P-50.csv": TABLE, "kit/encoders/read me.txt": "" }, DATE);
    expect(codes(findings)).toEqual(["KIT521 kit/encoders/P-50.csv:null:null", "KIT522 kit/encoders/read me.txt:null:null"]);
    expect(findings.find((f) => f.code === "KIT521")?.hint).toContain("P50");
  });
});

describe("a reading of an encoder", () => {
  it("gives the same distance with a table that falls as with one that rises", () => {
    const rising = [
      { encoder: 0, focusDioptres: 0 },
      { encoder: 100, focusDioptres: 2 },
    ];
    const falling = [
      { encoder: -100, focusDioptres: 2 },
      { encoder: 0, focusDioptres: 0 },
    ];
    for (const reading of [-5, 0, 12.5, 50, 100, 200]) {
      expect(dioptresOfReading(rising, reading)).toBeCloseTo(dioptresOfReading(falling, -reading), 12);
    }
    expect(dioptresOfReading(rising, Number.NaN)).toBeNaN();
  });
});
