/** One number on every carrier: the page, the PDF and day.json of each take of the demo show the same figures. */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, inject, it } from "vitest";
import { distanceRange } from "../../src/format/length.ts";
import { stopRange } from "../../src/format/stop.ts";
import { pageText } from "../helpers/built-site.ts";

const out = inject("demoOut");
const dates = readdirSync(join(out, "packs")).sort();
const fold = (text: string): string => text.replace(/\s+/g, "");

function pdfText(date: string): string {
  const name = readdirSync(join(out, "packs", date)).find((file) => file.endsWith("-camera-report.pdf")) ?? "";
  return spawnSync("pdftotext", ["-layout", join(out, "packs", date, name), "-"], { encoding: "utf8", maxBuffer: 1 << 26 }).stdout;
}

const poppler = spawnSync("pdftotext", ["-v"]).error === undefined;

describe.each(dates)("the figures of %s", (date) => {
  const day = JSON.parse(readFileSync(join(out, "packs", date, "day.json"), "utf8"));
  const firstOfAddress = new Set<string>();
  const takes = day.takes.filter(
    (take: { address: string }) => !firstOfAddress.has(take.address) && firstOfAddress.add(take.address),
  );

  it("stand on every take's page as in day.json: timecodes, focus, stops", () => {
    for (const take of takes) {
      const text = fold(pageText(readFileSync(join(out, "days", date, "takes", `${take.address}.html`), "utf8")));
      const expected: string[] = [take.timecodeIn, take.timecodeOut].filter((value) => value !== null);
      if (take.focus !== null) expected.push(distanceRange(take.focus.nearestM, take.focus.farthestM, "metric"));
      if (take.tStop !== null) expected.push(stopRange(take.tStop.widest, take.tStop.deepest));
      for (const value of expected) expect(text.includes(fold(value)), `${take.address}: ${value}`).toBe(true);
    }
  });

  it.skipIf(!poppler && process.env.CI !== "true")("stand in the PDF as in day.json", () => {
    const text = fold(pdfText(date));
    for (const take of takes) {
      const expected: string[] = [take.timecodeIn].filter((value) => value !== null);
      if (take.focus !== null) expected.push(distanceRange(take.focus.nearestM, take.focus.farthestM, "metric"));
      if (take.tStop !== null) expected.push(stopRange(take.tStop.widest, take.tStop.deepest));
      for (const value of expected) expect(text.includes(fold(value)), `${take.address}: ${value}`).toBe(true);
    }
  });

  it("stand in takes.csv as in day.json", () => {
    const [header, ...rows] = readFileSync(join(out, "packs", date, "takes.csv"), "utf8")
      .trimEnd()
      .split("\n");
    const at = (name: string): number => (header ?? "").split(",").indexOf(name);
    expect(rows.length).toBe(day.takes.length);
    day.takes.forEach((take: { address: string; timecodeIn: string | null; durationFrames: number }, i: number) => {
      const row = rows[i]?.split(",") ?? [];
      expect(row[at("address")]).toBe(take.address);
      expect(row[at("timecode_in")], take.address).toBe(take.timecodeIn ?? "");
      expect(row[at("duration_frames")], take.address).toBe(String(take.durationFrames));
    });
  });
});
