import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { memoryFolder, SMALL_KIT } from "../helpers/memory-show.ts";

const DAY = "days/2031-05-06";
const SAMPLE =
  '{"timing":{"timecode":{"hours":10,"minutes":0,"seconds":0,"frames":1,"frameRate":{"num":24,"denom":1}}},"lens":{"tStop":2.8,"distortion":[{"radial":[0.1]}]}}';

/** A show with something of everything. */
const WHOLE: Readonly<Record<string, string>> = {
  ...SMALL_KIT,
  "kit/columns.yaml": 'm:\n  when: {header_has: ["TC"]}\n  columns: {TC: timecode, D: focus_ft}\n  set: {camera: B}\n',
  "kit/calibration/P50.csv":
    "# model: brown-conrady\n# direction: undistort\n# radius: half-width\n# area_mm: 24.89x18.66\nfocal_mm,focus_m,t,k1\n50,1,,0.01\n50,inf,,0.02\n",
  [`${DAY}/day.yaml`]:
    'day: 1\ndate: 2031-05-06\ncall: 08:30\nmeals: [{out: "13:00", in: "13:45"}]\nclocks: {A: {offset_frames: 2}}\n',
  [`${DAY}/notes.csv`]: 'slate,take,camera,stop,focus,remarks\n1,1,A,2.8 1/3,"6\' 2""","two\nlines"\n',
  [`${DAY}/logs/a.csv`]: "# camera: A\ntimecode,focus_m,t\n10:00:00:00,2.4,2.8\n10:00:00:01,inf,\n",
  [`${DAY}/logs/b.csv`]: "TC;D;x\n10:00:00:00;8;1\n",
  [`${DAY}/logs/c.jsonl`]: `${SAMPLE}\n${SAMPLE}\n`,
};

describe("a damaged show folder", () => {
  const damage = fc.record({
    file: fc.constantFrom(...Object.keys(WHOLE)),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.nat(12),
    put: fc.oneof(
      fc.uint8Array({ maxLength: 6 }),
      fc
        .constantFrom('"', "\r", "\n", ",", "{", "[", "#", "&a", "*a", ": ", "\t", "\0", "é")
        .map((text) => new TextEncoder().encode(text)),
    ),
  });

  it("is read without an exception, whichever bytes are lost or strange; findings have a message and a hint", () => {
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 4 }), (damages) => {
        const files: Record<string, Uint8Array> = Object.fromEntries(
          Object.entries(WHOLE).map(([name, text]) => [name, new TextEncoder().encode(text)]),
        );
        for (const { file, at, cut, put } of damages) {
          const bytes = files[file] as Uint8Array;
          const start = Math.floor(at * bytes.length);
          files[file] = Uint8Array.from([...bytes.slice(0, start), ...put, ...bytes.slice(start + cut)]);
        }
        const folder = memoryFolder(files);
        const show = readShow(folder);
        const findings = [...show.findings];
        if (show.input !== null) findings.push(...readDay(folder, show.input, "2031-05-06").findings);
        for (const f of findings) {
          expect(f.message.length * f.hint.length).toBeGreaterThan(0);
          expect(f.line === null || f.line >= 1).toBe(true);
          expect(f.column === null || f.column >= 1).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("has no finding before it is damaged", () => {
    const folder = memoryFolder(WHOLE);
    const { input, findings } = readShow(folder);
    expect(findings).toEqual([]);
    if (input === null) throw new Error("the show cannot be read");
    // The sample comes twice with the same values, the log has a column that nobody knows.
    expect(readDay(folder, input, "2031-05-06").findings.map((f) => f.code)).toEqual(["LOG209", "LOG205"]);
  });
});
