/**
 * docs/mistakes.md shows files with a mistake and what the command says of them. Each is read here, and what is said must be what stands
 * there, letter by letter. After a change of words: UPDATE_MISTAKES=1 npx vitest run test/mistakes.test.ts, and read the difference.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { createColors } from "picocolors";
import { describe, expect, it } from "vitest";
import { findingsText } from "../src/cli/report.ts";
import { readShow } from "../src/ingest/read-show.ts";
import { type Files, memoryFolder, SMALL_KIT, summarise } from "./helpers/memory-show.ts";

const PAGE = new URL("../docs/mistakes.md", import.meta.url);
const DATE = "2031-05-06";
const DAY = `days/${DATE}`;
/** Heading, file, its text, and what is said. */
const MISTAKE = /^## (.+)\n\n`(.+?)`:\n\n```\n([\s\S]*?)```\n\nThe command says:\n\n```\n([\s\S]*?)```$/gm;

const WITHOUT_FAULT: Files = {
  ...SMALL_KIT,
  "kit/lenses.csv": "lens,kind,focal_mm\nP35,prime,35\nP50,prime,50\n",
  [`${DAY}/day.yaml`]: `day: 1\ndate: ${DATE}\n`,
  [`${DAY}/notes.csv`]: "slate,take,camera,tc_in,tc_out,lens\n24B,1,A,10:00:00:00,10:00:00:02,P50\n",
  [`${DAY}/logs/a.csv`]: "# camera: A\ntimecode,focus_m,t\n10:00:00:00,2,4\n10:00:00:01,2,4\n",
};

function saidOf(file: string, text: string): string {
  const files = { ...WITHOUT_FAULT, [file]: text };
  const folder = memoryFolder(files);
  const show = readShow(folder);
  const findings = show.input === null ? show.findings : summarise(files, DATE).findings;
  const own = findings.filter((f) => f.file === file && f.line !== null);
  const options = { root: "/show", cwd: "/show", limit: 20, severities: ["error", "check"] as const, colours: createColors(false) };
  return findingsText(own, folder, options)
    .replace(/ {2}run: daybook explain .*\n/g, "")
    .trimEnd()
    .concat("\n");
}

describe("docs/mistakes.md", () => {
  const page = readFileSync(PAGE, "utf8");
  const mistakes = [...page.matchAll(MISTAKE)].map(([, title = "", file = "", text = "", said = ""]) => ({
    title,
    file,
    text,
    said,
  }));

  it("has at least ten mistakes, each in the form that is read here", () => {
    expect(mistakes.length).toBeGreaterThanOrEqual(10);
    expect(mistakes.length).toBe(page.match(/^## /gm)?.length);
  });

  it("has a day without a fault to put them into", () => {
    expect(summarise(WITHOUT_FAULT, DATE).findings.filter(({ severity }) => severity !== "remark")).toEqual([]);
  });

  it.each(mistakes)("$title: says what the command says", ({ file, text, said }) => {
    if (process.env.UPDATE_MISTAKES !== undefined && process.env.CI === undefined) {
      writeFileSync(
        PAGE,
        readFileSync(PAGE, "utf8").replace(
          `${text}\`\`\`\n\nThe command says:\n\n\`\`\`\n${said}`,
          () => `${text}\`\`\`\n\nThe command says:\n\n\`\`\`\n${saidOf(file, text)}`,
        ),
      );
      return;
    }
    expect(saidOf(file, text)).toBe(said);
    expect(said.length).toBeGreaterThan(20);
  });
});
