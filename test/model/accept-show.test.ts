import { describe, expect, it } from "vitest";
import { countFindings } from "../../src/core/finding.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { memoryFolder, SMALL_KIT } from "../helpers/memory-show.ts";

/** Two lenses with one serial and two focal lengths: CHECK747 in kit/lenses.csv. */
const KIT = "lens,serial,kind,focal_mm\nP50,501,prime,50\nP35,501,prime,35\n";
const DAY = "days/2030-02-03/notes.csv";
const findings = (accepted: string) =>
  readShow(
    memoryFolder({
      ...SMALL_KIT,
      "show.yaml": `${SMALL_KIT["show.yaml"]}colour: red\n${accepted}`,
      "kit/lenses.csv": KIT,
      [DAY]: "slate,take,camera\n",
    }),
  ).findings;
const short = (accepted: string) => findings(accepted).map((f) => [f.code, f.file, f.line, f.accepted]);

describe("findings of show.yaml and the kit", () => {
  it("are accepted by code, and count no more", () => {
    expect(short("")).toEqual([
      ["SHOW605", "show.yaml", 5, null],
      ["CHECK747", "kit/lenses.csv", 3, null],
    ]);
    const accepted = "accepted:\n  - {code: check747, reason: both are engraved 501}\n  - {code: SHOW605, reason: ours}\n";
    expect(short(accepted)).toEqual([
      ["SHOW605", "show.yaml", 5, "ours"],
      ["CHECK747", "kit/lenses.csv", 3, "both are engraved 501"],
    ]);
    expect(countFindings(findings(accepted))).toEqual({ error: 0, check: 0, remark: 0 });
  });
  it("are accepted in the file named only; an entry that fits none is a remark at its place", () => {
    expect(short("accepted:\n  - {code: CHECK747, file: kit/cameras.csv, reason: seen}\n").slice(1)).toEqual([
      ["CHECK747", "kit/lenses.csv", 3, null],
      ["CHECK748", "show.yaml", 7, null],
    ]);
  });
  it("across days are not looked for before the days are read", () => {
    expect(short("accepted: [{code: CHECK749, reason: seen}]\n").map(([code]) => code)).not.toContain("CHECK748");
  });
  it("need a code and a reason, and a file that is a list accepts nothing", () => {
    const codes = short(
      "accepted:\n  - {code: CHECK747}\n  - {code: serial, reason: x}\n  - {code: CHECK747, file: [a], reason: x}\n",
    );
    expect(codes.filter(([code]) => code === "SHOW604").map(([, , line]) => line)).toEqual([7, 8]);
    expect(codes.filter(([code]) => code === "CHECK748").map(([, , line]) => line)).toEqual([9]);
    expect(codes.find(([code]) => code === "CHECK747")?.[3]).toBeNull();
  });
});
