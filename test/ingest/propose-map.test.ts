import { describe, expect, it } from "vitest";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { guessColumn } from "../../src/ingest/columns/guess-column.ts";
import { headerParts, meantColumn } from "../../src/ingest/columns/header-words.ts";
import { type MapProposal, proposeMap } from "../../src/ingest/columns/propose-map.ts";
import { readFieldMaps } from "../../src/ingest/log/field-map.ts";
import { logSource, readLensLog } from "../../src/ingest/log/lens-log.ts";

function propose(text: string): MapProposal {
  const proposal = proposeMap("x.csv", new TextEncoder().encode(text));
  if ("problem" in proposal) throw new Error(proposal.problem);
  return proposal;
}

const columnsOf = (proposal: MapProposal): readonly string[] =>
  proposal.columns.map(({ header, column }) => `${header}: ${column}`);

describe("the column that a header most likely means", () => {
  it.each([
    ["Timecode", "timecode"],
    ["TC", "timecode"],
    ["Focus (m)", "focus_m"],
    ["Focus Dist [ft]", "focus_ft"],
    ["t-stop", "t"],
    ["T Stop", "t"],
    ["Focal Length", "focal_mm"],
    ["focal mm", "focal_mm"],
    ["Entrance Pupil", "entrance_pupil_mm"],
    ["encoder focus", "encoder_focus"],
  ])("%s is %s", (header, column) => expect(meantColumn(header)).toBe(column));

  it.each(["temperature", "lens temp", "battery", "Near Limit", "operator", "n", "kk", "gyro_x", "status"])(
    "%s is none",
    (header) => expect(meantColumn(header)).toBeNull(),
  );
});

describe("the words and the unit of a header", () => {
  it.each([
    ["Dist [ft]", "dist", "ft"],
    ["FocusDistance(m)", "focus distance", "m"],
    ["focal_length_mm", "focal length", "mm"],
    ["Tilt (°)", "tilt", "deg"],
    ["T-Stop", "t stop", ""],
    ["m", "m", ""],
  ])("%s", (header, words, unit) => {
    expect(headerParts(header)).toEqual({ words, unit });
  });
});

describe("the column that a header may mean", () => {
  const guessed = (header: string, texts: readonly string[]): string | null =>
    guessColumn({ header, texts, numbers: texts.map(Number).filter((n) => !Number.isNaN(n)) }).column;

  it.each([
    ["Time Code", ["10:00:00:01"], "timecode"],
    ["Label", ["10:00:00;01"], "timecode"],
    ["Focus Dist (in)", ["96"], "focus_in"],
    ["Focus [dpt]", ["0.4"], "focus_dpt"],
    ["Focus", ["2400", "1800"], "focus_mm"],
    ["Focus", ["2.4", "1.8"], "focus_m"],
    ["Focus", ["31000", "52000"], "encoder_focus"],
    ["Focus motor", ["0.31"], "encoder_focus"],
    ["Iris", ["2.8"], "t"],
    ["Iris", ["20480"], "encoder_iris"],
    ["F-Number", ["2.8"], "f"],
    ["Zoom", ["35"], "focal_mm"],
    ["Zoom", ["0.25"], "encoder_zoom"],
    ["EFL", ["35"], "focal_mm"],
    ["Focal Length [in]", ["2"], null],
    ["Hyperfocal (m)", ["12"], "hyperfocal_m"],
    ["Near (m)", ["1.9"], null],
    ["Lens Model", ["P 50"], "lens"],
    ["Roll", ["A001"], null],
    ["Roll", ["-0.5"], "roll_deg"],
    ["Elapsed s", ["0", "0.04"], "time_s"],
    ["Time (ms)", ["0", "40"], null],
    ["TIMECODE", ["10:00:00:01"], "timecode"],
    ["Wind", ["3"], null],
  ])("%s with %j is %s", (header, texts, column) => {
    expect(guessed(header, texts)).toBe(column);
  });

  it("has its reasons, and a doubt where the unit is not said", () => {
    const bare = guessColumn({ header: "Focus", texts: ["2.4"], numbers: [2.4] });
    expect(bare.doubt).toContain("feet");
    const said = guessColumn({ header: "Focus [m]", texts: ["2.4"], numbers: [2.4] });
    expect(said.doubt).toBeNull();
    expect(said.reasons.join("; ")).toContain('unit "m"');
  });
});

const UNIT_B = "TC;Dist [ft];Iris;FL;Note\n10:00:00:04;10,0;2,8;35;a\n10:00:00:05;20,0;2,8;35;\n";

describe("a proposal for an unknown log", () => {
  it("has a map that the reader of kit/columns.yaml takes, and the rows as they are read with it", () => {
    const proposal = propose(UNIT_B);
    expect(proposal).toMatchObject({ delimiter: ";", decimal: ",", decimalFrom: "10,0", rows: 2, findings: [{ code: "LOG209" }] });
    expect(columnsOf(proposal)).toEqual(["TC: timecode", "Dist [ft]: focus_ft", "Iris: t", "FL: focal_mm", "Note: null"]);
    const found = collectFindings();
    const [map] = readFieldMaps(proposal.yaml ?? "", "kit/columns.yaml", found);
    expect(found.list()).toEqual([]);
    expect(map).toMatchObject({ decimal: ",", headerHas: ["TC", "Dist [ft]", "Iris", "FL"] });
    // 10 ft = 3.048 m, 20 ft = 6.096 m.
    expect(proposal.preview).toEqual({
      columns: ["timecode", "focus (m)", "t", "focal_mm"],
      rows: [
        ["10:00:00:04", "3.048", "2.8", "35"],
        ["10:00:00:05", "6.096", "2.8", "35"],
      ],
    });
  });

  const timecode = (i: number): string => `10:00:00:${String(i).padStart(2, "0")}`;
  it.each([
    [
      "semicolons, a decimal comma and German words",
      "TC;Entfernung [m];Blende;Brennweite",
      (i: number) => `${timecode(i)};2,${i};2,8;35,0`,
      ["focal_mm", "focus", "t"],
    ],
    ["tabs and feet", "Timecode\tFocus (ft)\tT-Stop\tTemp", (i: number) => `${timecode(i)}\t6.${i}\t2.8\t21`, ["focus", "t"]],
    [
      "readings of encoders",
      "tc,raw_focus,raw_iris,raw_zoom",
      (i: number) => `${timecode(i)},${30_000 + i},${i},500`,
      ["encoder_focus", "encoder_iris", "encoder_zoom"],
    ],
    ["two figures in one cell", "TC,FL/T,Focus (m)", (i: number) => `${timecode(i)},35/2.8,2.${i}`, ["focus"]],
    ["bars", "TC|Focus Distance (m)|Iris", (i: number) => `${timecode(i)}|2.${i}|4`, ["focus", "t"]],
    ["an elapsed time", "Elapsed (s),Focus mm,F-Stop", (i: number) => `${i / 24},${2000 + i},4`, ["f", "focus"]],
  ])("has a map with which the log is read without an error: %s", (_, header, row, columns) => {
    const text = `${header}\n${Array.from({ length: 10 }, (_none, i) => row(i)).join("\n")}\n`;
    const found = collectFindings();
    const maps = readFieldMaps(propose(text).yaml ?? "", "kit/columns.yaml", found);
    const context = { rate: { num: 24, denom: 1 }, dropFrame: false, maps, date: "2031-05-06" };
    const log = readLensLog(logSource("logs/a.csv", new TextEncoder().encode(text)), context, found);
    expect(found.list().filter(({ severity }) => severity === "error")).toEqual([]);
    expect(Object.keys(log?.columns ?? {}).sort()).toEqual(columns);
    expect(log?.rejected.includes(1)).toBe(false);
  });

  it.each([
    ["Time", "10:00:00.040", "has no frames"],
    ["Time", "10:00:00", "has no frames"],
    ["FL/T", "35/2.8", "two figures in one cell"],
    ["Focus", "6' 2\"", "decimal feet"],
  ])("says why %s with %s is not read, and what to log", (header, text, reason) => {
    expect(guessColumn({ header, texts: [text], numbers: [] }).reasons.join()).toContain(reason);
  });

  it("quotes headers so that YAML takes them as they are", () => {
    const proposal = propose('"Focus: ""A"" [m]",TC\n2.5,10:00:00:00\n');
    const [map] = readFieldMaps(proposal.yaml ?? "", "kit/columns.yaml", collectFindings());
    expect(map?.columns.get('Focus: "A" [m]')).toBe("focus_m");
  });

  it("needs no map where the names are known already", () => {
    expect(propose("timecode,focus_m,other\n10:00:00:00,2.5,x\n").yaml).toBeNull();
  });

  it("maps the first of two columns for one figure", () => {
    const proposal = propose("TC,Focus [m],Focus [ft]\n10:00:00:00,2.5,8.2\n");
    expect(columnsOf(proposal)).toEqual(["TC: timecode", "Focus [m]: focus_m", "Focus [ft]: null"]);
    expect(proposal.columns[2]?.reasons[0]).toContain("Focus [m]");
  });

  it("says what would not be read", () => {
    expect(
      propose("TC,Focus [m]\n10:00:00:00,2.5\n10:00:00:01,near\n").findings.map((f) => `${f.code} ${f.line}:${f.column}`),
    ).toEqual(["CSV122 3:13"]);
  });

  it.each([
    ["", "no header row"],
    ["10:00:00:00,2.5\n10:00:00:01,2.4\n", "holds values"],
    ['{"timing":{}}\n', "JSON"],
    ["PK\u0003\u0004\0\0", "text"],
  ])("is refused in words for %j", (text, problem) => {
    const proposal = proposeMap("x.csv", new TextEncoder().encode(text));
    expect("problem" in proposal ? proposal.problem : "").toContain(problem);
  });
});
