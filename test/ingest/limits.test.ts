import { describe, expect, it } from "vitest";
import type { Finding } from "../../src/core/finding.ts";
import { collectFindings } from "../../src/core/findings/collect.ts";
import type { ShowFolder } from "../../src/ingest/folder.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { readYaml } from "../../src/ingest/show/yaml-text.ts";
import { type Files, memoryFolder, SMALL_KIT } from "../helpers/memory-show.ts";

const DATE = "2031-05-06";
const DAY = `days/${DATE}`;

function read(files: Files, change: (folder: ShowFolder) => ShowFolder = (folder) => folder) {
  const folder = change(memoryFolder({ ...SMALL_KIT, [`${DAY}/day.yaml`]: `day: 1\ndate: ${DATE}\n`, ...files }));
  const show = readShow(folder);
  if (show.input === null) throw new Error("the show cannot be read");
  const day = readDay(folder, show.input, DATE);
  return { input: day.input, findings: [...show.findings, ...day.findings] };
}

const said = (findings: readonly Finding[]): readonly string[] =>
  findings.map((f) => `${f.severity} ${f.code} ${f.file}:${f.line ?? "-"}`);

describe("a file above the limits", () => {
  it("is never opened when it has more than a log may have, and the rest is read", () => {
    const big = `${DAY}/logs/big.csv`;
    const { input, findings } = read({ [big]: "", [`${DAY}/logs/a.csv`]: "timecode,t\n10:00:00:00,4\n" }, (folder) => ({
      ...folder,
      size: (file) => (file === big ? 17_000_000_000 : 10),
      read: (file) => {
        if (file === big) throw new Error("it was opened");
        return folder.read(file);
      },
    }));
    expect(said(findings)).toEqual([`error CSV118 ${big}:-`]);
    expect(findings[0]?.message).toContain("17000 MB, and such files are read up to 16000 MB");
    expect(input.logs).toHaveLength(1);
  });

  it("is read with a check when it has a line of more than a million bytes", () => {
    const long = "x".repeat(1_000_001);
    const { input, findings } = read({
      [`${DAY}/notes.csv`]: `slate,take,camera,remarks\n1,1,A,\n1,2,A,${long}\n`,
      [`${DAY}/logs/a.csv`]: `timecode,t,note\n10:00:00:00,4,${long}\n`,
    });
    expect(said(findings).filter((text) => text.includes("CSV117"))).toEqual([
      `check CSV117 ${DAY}/notes.csv:3`,
      `check CSV117 ${DAY}/logs/a.csv:2`,
    ]);
    expect([input.notes.length, input.logs[0]?.rows]).toEqual([2, 1]);
  });
});

describe("a settings file that nests", () => {
  const values = (text: string) => {
    const found = collectFindings();
    return { file: readYaml(text, "x.yaml", found), found: found.list() };
  };

  it.each([
    ["brackets", `a: ${"[".repeat(50_000)}`],
    ["dashes", `a:\n  ${"- ".repeat(50_000)}x\n`],
    ["keys", Array.from({ length: 2000 }, (_, i) => `${" ".repeat(i)}a:`).join("\n")],
  ])("in thousands of %s is refused at once, with a place", (_, text) => {
    const start = performance.now();
    const { file, found } = values(text);
    expect(performance.now() - start).toBeLessThan(10_000);
    expect(file).toBeNull();
    expect(found.map((f) => f.code)).toEqual(["SHOW620"]);
    expect(found[0]?.line).not.toBeNull();
  });

  it("through aliases of aliases costs no more than its limit, and the rest is read", () => {
    const lines = Array.from({ length: 9 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(",")}]`);
    const start = performance.now();
    const { file, found } = values(`title: Small\na0: &a0 [x]\n${lines.join("\n")}\n`);
    expect(performance.now() - start).toBeLessThan(10_000);
    expect(file?.values.get("title")).toBe("Small");
    expect(found.map((f) => f.code)).toEqual(["SHOW620"]);
  });

  it("through an alias of itself has an end", () => {
    expect(values("a: &a [*a]\nb: 1\n").file?.values.get("b")).toBe("1");
  });

  it("as deep as a day file does is read", () => {
    expect(values("scheduled:\n  - {scene: '12', pages: '1/8'}\n- x: [[[[1]]]]\n").found.every((f) => f.code !== "SHOW620")).toBe(
      true,
    );
  });
});

describe("a sample that nests thousands of levels deep", () => {
  it("is a rejected row or a lost field, never an exception", () => {
    const deep = `${"[".repeat(20_000)}${"]".repeat(20_000)}`;
    const timing = '"timing":{"timecode":{"hours":1,"minutes":0,"seconds":0,"frames":1,"frameRate":{"num":24,"denom":1}}}';
    const { input, findings } = read({ [`${DAY}/logs/a.jsonl`]: `{${timing},"lens":{"tStop":${deep}}}\n{"a":${deep}\n` });
    expect(input.logs[0]?.rows).toBe(2);
    expect(said(findings)).toEqual([`error LOG214 ${DAY}/logs/a.jsonl:1`, `error LOG212 ${DAY}/logs/a.jsonl:2`]);
  });
});

describe("names that would lead out of the show folder", () => {
  it("open nothing there", () => {
    const asked: string[] = [];
    const { findings } = read(
      {
        "kit/lenses.csv": "lens,kind,focal_mm\n../../P50,prime,50\n",
        "kit/cameras.csv": "camera,sensor_mode,active_width_mm,active_height_mm\n../A,OPEN,24,18\n",
        [`${DAY}/notes.csv`]: "slate,take,camera,clip,lens,still\n../1,../1,../A,../../clip,../../P50,../../x.png\n",
        [`${DAY}/logs/a.csv`]: "# clip: ../../clip\n# lens: ../../P50\ntimecode,t\n10:00:00:00,4\n",
      },
      (folder) => ({
        list: (name) => {
          asked.push(name);
          return folder.list(name);
        },
        read: (file) => {
          asked.push(file);
          return folder.read(file);
        },
      }),
    );
    expect(asked.filter((name) => name.includes("..") || name.startsWith("/"))).toEqual([]);
    expect(findings.map((f) => f.code)).toContain("NOTE315");
  });
});

describe("numbers that no figure can be worked out from", () => {
  const log = (cells: string) => read({ [`${DAY}/logs/a.csv`]: `timecode,focus_m,t,focal_mm,k1\n10:00:00:00,${cells}\n` });

  it.each([
    ["2,1e-320,50,0", "t"],
    ["2,2.8,1e308,0", "focal_mm"],
    ["2,2.8,50,-1e300", "k1"],
    ["1e-300,2.8,50,0", "focus_m"],
  ])("in a log lose their cell: %s", (cells, field) => {
    const { findings } = log(cells);
    expect(findings.map((f) => `${f.severity} ${f.code} ${f.line} ${f.field}`).filter((text) => !text.includes("LOG218"))).toEqual([
      `error CSV123 2 ${field}`,
    ]);
  });

  it("in a sample lose their field, and a frame rate that no timecode has rejects the row", () => {
    const sample = (rate: number, stop: string): string =>
      `{"timing":{"timecode":{"hours":1,"minutes":0,"seconds":0,"frames":1,"frameRate":{"num":${rate},"denom":1}}},"lens":{"tStop":${stop}}}`;
    const { input, findings } = read({ [`${DAY}/logs/a.jsonl`]: `${sample(24, "1e400")}\n${sample(1_000_000_000, "2.8")}\n` });
    expect(said(findings).map((text) => text.slice(0, 12))).toEqual(["error LOG214", "error LOG213"]);
    expect([...(input.logs[0]?.rejected ?? [])]).toEqual([0, 1]);
  });

  it("in the key lines of a table count as not said", () => {
    const table = `# area_mm: ${"9".repeat(400)}x18\nfocal_mm,focus_m\n50,1\n50,inf\n`;
    expect(said(read({ "kit/calibration/P50.csv": table, [`${DAY}/notes.csv`]: "slate,take,camera\n1,1,A\n" }).findings)).toEqual([
      "error KIT510 kit/calibration/P50.csv:1",
    ]);
  });

  it("in notes and kit lose their cell", () => {
    const { findings } = read({
      "kit/lenses.csv": `lens,kind,focal_mm,close_focus_m\nP50,prime,${"9".repeat(400)},1e300\n`,
      [`${DAY}/notes.csv`]: `slate,take,camera,focal,focus,wb,ei,height_m,capture_fps\n1,1,A,1e9,${"9".repeat(400)} m,1e-320,1e300,1e300,1e300\n`,
    });
    expect(
      findings
        .filter((f) => f.severity === "error")
        .map((f) => `${f.code} ${f.field}`)
        .sort(),
    ).toEqual([
      "CSV122 capture_fps",
      "CSV122 ei",
      "CSV122 focal_mm",
      "CSV122 height_m",
      "CSV122 wb",
      "CSV123 close_focus_m",
      "KIT503 focal_mm",
      "NOTE304 focus",
      "NOTE307 focal",
    ]);
  });
});
