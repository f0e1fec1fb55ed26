/** The JSON Schemas that the package ships, on everything that the demo show produces. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { dayLine, findingLine } from "../src/cli/json-lines.ts";
import { runCommand } from "../src/cli/run-command.ts";
import { FINDING_KINDS } from "../src/core/findings/catalogue.ts";
import { dayObject } from "../src/export/day-json.ts";
import { readDay } from "../src/ingest/read-day.ts";
import { readShow } from "../src/ingest/read-show.ts";
import { buildDay } from "../src/model/build-day.ts";
import { summariseDay } from "../src/summary/day.ts";
import { fakeIo } from "./cli/fake-io.ts";
import { diskFolder } from "./helpers/disk-folder.ts";

const ROOT = join(import.meta.dirname, "..");
const SCHEMAS = join(ROOT, "docs/schema");
const ajv = new Ajv2020({ allErrors: true, allowUnionTypes: true, strictRequired: false });
for (const name of readdirSync(SCHEMAS)) ajv.addSchema(JSON.parse(readFileSync(join(SCHEMAS, name), "utf8")));

function problems(schema: "finding" | "cli-line" | "day", value: unknown): readonly string[] {
  const validate = ajv.getSchema(`urn:lens-daybook:${schema}`);
  if (validate === undefined) throw new Error(`no schema ${schema}`);
  return validate(value) ? [] : (validate.errors ?? []).map((e) => `${e.instancePath} ${e.message}`);
}

const folder = diskFolder(join(ROOT, "data"));
const { input: show, findings: showFindings } = readShow(folder);
if (show === null) throw new Error("the demo cannot be read");
const days = show.dates.map((date) => {
  const read = readDay(folder, show, date);
  return summariseDay(buildDay(show, read.input, read.findings), show.kit);
});

describe("the JSON Schemas of the package", () => {
  it("hold for day.json of every day of the demo", () => {
    for (const day of days)
      expect(problems("day", JSON.parse(JSON.stringify(dayObject(day, { name: "x", version: "0" }))))).toEqual([]);
  });
  it("hold for every line that daybook check --json writes about the demo", async () => {
    const io = fakeIo({ cwd: ROOT });
    await runCommand(["check", "data", "--json"], io);
    const lines = io.stdout().trim().split("\n");
    expect(lines.length).toBeGreaterThan(days.flatMap((day) => day.findings).length);
    for (const line of lines) expect(problems("cli-line", JSON.parse(line)), line).toEqual([]);
  });
  it("hold for the line of a day, and for a finding without a place", () => {
    const report = {
      date: "2030-02-03",
      day: null,
      state: "built",
      reason: "new",
      takes: 3,
      milliseconds: 12.4,
      stages: [],
    } as const;
    expect(problems("cli-line", JSON.parse(dayLine(report)))).toEqual([]);
    for (const finding of showFindings) expect(problems("finding", finding)).toEqual([]);
  });
  it("know every code of the catalogue", () => {
    const [first] = showFindings;
    for (const { code } of FINDING_KINDS) expect(problems("finding", { ...first, code }), code).toEqual([]);
  });
  it("refuse what is not so", () => {
    const [finding] = days.flatMap((day) => day.findings);
    if (finding === undefined) throw new Error("the demo has findings");
    expect(problems("finding", { ...finding, severity: "warning" })).not.toEqual([]);
    expect(problems("finding", { ...finding, hint: "" })).not.toEqual([]);
    expect(problems("finding", { ...finding, line: 0 })).not.toEqual([]);
    expect(problems("cli-line", { ...JSON.parse(findingLine(finding)), schema: "other" })).not.toEqual([]);
    expect(problems("cli-line", { type: "summary", command: "check", exit: 0 })).not.toEqual([]);
    const day = JSON.parse(JSON.stringify(dayObject(days[0] as (typeof days)[0], { name: "x", version: "0" })));
    expect(problems("day", { ...day, takes: [{ ...day.takes[0], address: "A 14" }] })).not.toEqual([]);
    expect(
      problems("day", { ...day, takes: [{ ...day.takes[0], focus: { ...day.takes[0].focus, nearestM: "infinity" } }] }),
    ).not.toEqual([]);
  });
});
