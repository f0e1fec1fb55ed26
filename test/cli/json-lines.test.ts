/** Every line that any command writes with --json, against the schema that the package and each pack publish. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { jsonLine } from "../../src/cli/json-lines.ts";
import { runCommand } from "../../src/cli/run-command.ts";
import { filesOf } from "../helpers/built-site.ts";
import { fakeIo } from "./fake-io.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const DATE = "2026-03-14";
const seen = new Set<string>();
let root: string;
vi.setConfig({ testTimeout: 120_000, hookTimeout: 60_000 });

const ajv = new Ajv2020({ allErrors: true, allowUnionTypes: true, strictRequired: false });
for (const name of readdirSync(join(ROOT, "docs/schema")))
  ajv.addSchema(JSON.parse(readFileSync(join(ROOT, "docs/schema", name), "utf8")));
const isLine = ajv.getSchema("urn:lens-daybook:cli-line")!;

/** Runs a command with --json and checks each line; gives back what it wrote. */
async function lines(args: readonly string[], cwd = root): Promise<readonly Record<string, unknown>[]> {
  const io = fakeIo({ cwd });
  await runCommand([...args, "--json"], io);
  return io
    .stdout()
    .split("\n")
    .filter((line) => line !== "")
    .map((text) => {
      const line = JSON.parse(text) as Record<string, unknown>;
      expect(isLine(line), `${args.join(" ")}: ${text}\n${ajv.errorsText(isLine.errors)}`).toBe(true);
      seen.add(String(line.type));
      return line;
    });
}

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), "daybook-lines-"));
  await lines(["init", "ferry"]);
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe("the lines of --json", () => {
  it("of build, check, pack and verify are as the schema says, for a sound pack and a damaged one", async () => {
    await lines(["check", "ferry"]);
    await lines(["build", "ferry"]);
    await lines(["build", "ferry"]);
    expect((await lines(["pack", "ferry", "--day", DATE])).at(-1)).toMatchObject({ type: "pack", generation: 1, again: false });
    expect((await lines(["pack", "ferry", "--day", DATE, "--zip"])).at(-1)).toMatchObject({ type: "zip", again: true });
    const pack = join(root, "ferry-report/packs", DATE);
    await lines(["verify", pack]);
    expect((await lines(["verify", `FERRY-${DATE}.zip`])).at(-1)).toMatchObject({ intact: true, inZip: `packs/${DATE}` });
    rmSync(join(pack, "takes.csv"));
    writeFileSync(join(pack, "day.json"), "{}");
    writeFileSync(join(pack, "extra"), "");
    const list = join(pack, "ascmhl", readdirSync(join(pack, "ascmhl"))[0] as string);
    writeFileSync(list, readFileSync(list, "utf8").replace("FERRY", "OTHER"));
    const states = (await lines(["verify", pack])).map((line) => line.state ?? line.type);
    expect(states).toEqual(expect.arrayContaining(["same", "changed", "missing", "extra", "history", "summary"]));
  });

  it("of explain and columns are as the schema says", async () => {
    expect((await lines(["explain"])).length).toBeGreaterThan(100);
    await lines(["explain", "CSV122"]);
    expect((await lines(["columns"])).length).toBeGreaterThan(100);
  });

  it("of a proposal for a log of another layout are as the schema says, for every log of the demo and of the cases", async () => {
    const logs = ["data", "test/cases"].flatMap((folder) =>
      filesOf(join(ROOT, folder))
        .filter((file) => /(^|\/)logs\/[^/]+\.csv$/.test(file))
        .map((file) => join(folder, file)),
    );
    expect(logs.length).toBeGreaterThan(50);
    for (const log of logs) await lines(["columns", log], ROOT);
  });

  it("of findings are as the schema says, for every case of bad input", async () => {
    for (const name of readdirSync(join(ROOT, "test/cases"))) await lines(["check", join("test/cases", name)], ROOT);
    await lines(["check", "data"], ROOT);
  });

  it("of watch are as the schema says: what changed, and what the report that was kept does not know", () => {
    for (const type of ["changed", "kept"]) {
      const line = JSON.parse(jsonLine({ type, files: [`days/${DATE}/notes.csv`] }));
      expect(isLine(line), ajv.errorsText(isLine.errors)).toBe(true);
      expect(isLine({ ...line, files: "days" })).toBe(false);
      seen.add(type);
    }
  });

  it("have been seen of every type that the schema knows", () => {
    const schema = JSON.parse(readFileSync(join(ROOT, "docs/schema/cli-line.schema.json"), "utf8"));
    expect([...seen].sort()).toEqual([...schema.properties.type.enum].sort());
  });

  it("are refused where a key is missing or of another kind", async () => {
    const good = (await lines(["explain", "CSV122"]))[0]!;
    expect(isLine({ ...good, severity: "fatal" })).toBe(false);
    expect(isLine({ type: "file", schema: good.schema, state: "same" })).toBe(false);
    expect(isLine({ ...good, type: "unheard-of" })).toBe(false);
    expect(isLine({ ...good, schema: undefined })).toBe(false);
    expect(isLine({ type: "row", schema: good.schema, focus_m: 2 })).toBe(false);
  });
});
