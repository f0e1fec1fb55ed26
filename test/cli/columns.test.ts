import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runCommand } from "../../src/cli/run-command.ts";
import { fakeIo } from "./fake-io.ts";

const UNIT_B = "TC;Dist [ft];Iris\n10:00:00:04;10,0;2,8\n10:00:00:05;near;2,8\n";

async function run(args: readonly string[], input?: string) {
  const folder = mkdtempSync(join(tmpdir(), "daybook-columns-"));
  writeFileSync(join(folder, "unit-b.csv"), UNIT_B);
  const io = fakeIo({ cwd: folder, ...(input === undefined ? {} : { input }) });
  return { exit: await runCommand(["columns", ...args], io), out: io.stdout(), err: io.stderr() };
}

describe("daybook columns FILE", () => {
  it("proposes a map with its reasons, the first rows as read, and what would not be read", async () => {
    const { exit, out } = await run(["unit-b.csv"]);
    expect(exit).toBe(0);
    expect(out).toContain("semicolons between cells, decimal comma (10,0)");
    expect(out).toMatch(/Dist \[ft\] +focus_ft +"dist" in the header; unit "ft"/);
    expect(out).toContain('    "Dist [ft]": focus_ft\n');
    expect(out).toMatch(/10:00:00:04 +3\.048 +2\.8/);
    expect(out).toContain('line 3: focus_ft is not a number: "near"');
  });

  it("writes one object a line with --json, of one type each", async () => {
    const { out } = await run(["unit-b.csv", "--json"]);
    const lines = out
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(lines.map((line) => line.type)).toEqual(["layout", "guess", "guess", "guess", "map", "row", "row", "finding"]);
    expect(lines[5]).toEqual({
      type: "row",
      schema: "lens-daybook/lines/1",
      timecode: "10:00:00:04",
      "focus (m)": "3.048",
      t: "2.8",
    });
  });

  it("takes a log that is piped in", async () => {
    expect((await run(["-"], UNIT_B)).out).toContain("focus_ft");
  });

  it("refuses a file that is not there, or is no table, in a sentence", async () => {
    expect(await run(["absent.csv"])).toMatchObject({ exit: 2, out: "" });
    const { exit, err } = await run(["-"], "");
    expect([exit, err]).toEqual([2, "error: -: it has no header row\n"]);
  });
});
