import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { runCommand } from "../../src/cli/run-command.ts";
import { fakeIo } from "./fake-io.ts";

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "daybook-cli-"));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));
const run = async (args: string[], options: Parameters<typeof fakeIo>[0] = {}) => {
  const io = fakeIo({ cwd: root, ...options });
  const exit = await runCommand(args, io);
  return { exit, out: io.stdout(), err: io.stderr() };
};

describe("daybook", () => {
  it("prints help with examples first and exits 0", async () => {
    const { exit, out } = await run(["--help"]);
    expect(exit).toBe(0);
    expect(out).toMatch(/^Examples:\n {2}daybook init/);
    expect(out).toContain("Exit code: 0 fine, 1 errors in the data");
  });

  it("prints its version", async () => {
    const { exit, out } = await run(["--version"]);
    expect(exit).toBe(0);
    expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it.each<[string, string[], RegExp]>([
    ["no command", [], /Usage: daybook/],
    ["an unknown command", ["biuld", "."], /Did you mean build\?/],
    ["an unknown option", ["build", ".", "--ouput", "x"], /Did you mean --out\?|unknown option '--ouput'/],
    ["a missing argument", ["build"], /missing required argument 'show'/],
    ["a day that is no date", ["build", ".", "--day", "yesterday"], /year-month-day/],
    ["a show that is not there", ["build", "nowhere"], /there is no folder "nowhere"/],
    ["a code that nobody knows", ["explain", "CSV12"], /Did you mean CSV1\d\d/],
  ])("exits 2 for %s and says how to do it right", async (_what, args, message) => {
    const { exit, err, out } = await run(args);
    expect(exit).toBe(2);
    expect(err).toMatch(message);
    expect(out).toBe("");
  });

  it("refuses to write the report into the show folder", async () => {
    await run(["init", "ferry"]);
    const { exit, err } = await run(["build", "ferry", "--out", "ferry/report"]);
    expect(exit).toBe(2);
    expect(err).toContain("cannot be written into the show folder");
    expect(readdirSync(join(root, "ferry"))).not.toContain("report");
  });
});

describe("daybook init", () => {
  it("writes a show with notes, a log and a kit, and says what to do next", async () => {
    const { exit, out } = await run(["init", "ferry"]);
    expect(exit).toBe(0);
    expect(readdirSync(join(root, "ferry"), { recursive: true }).map(String)).toEqual(
      expect.arrayContaining(["show.yaml", "kit/lenses.csv", "days/2026-03-14/notes.csv", "days/2026-03-14/logs/a001c001.csv"]),
    );
    expect(out).toContain("daybook build ferry");
  });

  it("refuses a folder that is not empty and leaves it as it is", async () => {
    writeFileSync(join(root, "mine.txt"), "mine");
    const { exit, err } = await run(["init", "."]);
    expect(exit).toBe(2);
    expect(err).toContain("is not empty (mine.txt); nothing was written");
    expect(readdirSync(root)).toEqual(["mine.txt"]);
  });
});

describe("daybook check", () => {
  it("finds no error in the show that init writes, and exits 0", async () => {
    await run(["init", "ferry"]);
    const { exit, out } = await run(["check", "ferry"]);
    expect(out).not.toContain("error");
    expect(exit).toBe(0);
    expect(readdirSync(root)).toEqual(["ferry"]);
  });

  it("exits 1 with --strict when there is something to check", async () => {
    await run(["init", "ferry"]);
    expect((await run(["check", "ferry", "--strict"])).exit).toBe(1);
  });

  it("prints one JSON object a line with --json, the summary last", async () => {
    await run(["init", "ferry"]);
    const { out } = await run(["check", "ferry", "--json"]);
    const lines = out
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(lines.at(-1)).toMatchObject({ type: "summary", exit: 0, days: 1, takes: 2, rows: { read: 120, used: 120 } });
    expect(lines.slice(0, -1).every((line) => line.type === "finding")).toBe(true);
  });

  it("checks one file of a show with the show's settings", async () => {
    await run(["init", "ferry"]);
    writeFileSync(join(root, "ferry/days/2026-03-14/logs/b.csv"), "timecode,focus_m\n09:05:10:00,near\n");
    const { exit, out } = await run(["check", "ferry/days/2026-03-14/logs/b.csv"]);
    expect(exit).toBe(1);
    expect(out).toMatch(/^ferry\/days\/2026-03-14\/logs\/b\.csv:2:13 {2}error CSV\d+/m);
    expect(out).not.toContain("notes.csv");
    expect(out).toContain("log rows: 1 read, 0 used, 1 unmatched, 0 rejected".replaceAll(" ", " "));
  });

  it("checks a file without a show, and what is piped in", async () => {
    const log = "timecode,focus_m\n09:05:10:24,near\n";
    writeFileSync(join(root, "loose.csv"), log);
    const alone = await run(["check", "loose.csv"]);
    expect(alone.exit).toBe(1);
    expect(alone.out).toMatch(/^loose\.csv:2:13 {2}error CSV\d+/);
    expect(alone.err).toContain("at 25 frames a second");
    const piped = await run(["check", "-"], { input: log });
    expect(piped.exit).toBe(1);
    expect(piped.out).toMatch(/^standard-input\.csv:2:13/);
  });

  it("exits 2 for a folder without show.yaml", async () => {
    const { exit, out } = await run(["check", "."]);
    expect(exit).toBe(2);
    expect(out).toContain("SHOW601");
  });

  it("uses colour on a terminal, and none with --no-color, NO_COLOR or TERM=dumb", async () => {
    await run(["init", "ferry"]);
    const colour = "\u001b[";
    expect((await run(["check", "ferry"], { terminal: true })).out).toContain(colour);
    expect((await run(["check", "ferry", "--no-color"], { terminal: true })).out).not.toContain(colour);
    expect((await run(["check", "ferry"], { terminal: true, env: { NO_COLOR: "1" } })).out).not.toContain(colour);
    expect((await run(["check", "ferry"], { terminal: true, env: { TERM: "dumb" } })).out).not.toContain(colour);
  });

  it("prints errors only with --quiet", async () => {
    await run(["init", "ferry"]);
    expect((await run(["check", "ferry", "--quiet"])).out).toBe("");
  });
});

describe("daybook explain", () => {
  it("explains a finding code in any case", async () => {
    const { exit, out } = await run(["explain", "out801"]);
    expect(exit).toBe(0);
    expect(out).toMatch(/^OUT801 {2}error {2}The report cannot be written\n\n {2}A file or folder/);
  });

  it("explains a formula with its symbols and source", async () => {
    const { exit, out } = await run(["explain", "hyperfocal"]);
    expect(exit).toBe(0);
    expect(out).toMatch(/^hyperfocal/);
    expect(out).toContain("Source: ");
  });

  it("lists all codes and formulas when none is named", async () => {
    const { out } = await run(["explain"]);
    expect(out).toMatch(/^CSV101 /m);
    expect(out).toMatch(/^depth-of-field /m);
  });
});

describe("daybook columns", () => {
  it("prints the reference as Markdown, and with --json one object a column", async () => {
    expect((await run(["columns"])).out).toContain("focus_m");
    const lines = (await run(["columns", "--json"])).out
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(lines).toContainEqual(
      expect.objectContaining({ type: "column", file: "days/<date>/logs/*.csv", name: "focus_m", unit: "m" }),
    );
  });
});
