import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { limitProblem } from "../../src/csv/column-spec.ts";
import { CALIBRATION_COLUMNS, ENCODER_COLUMNS, LENS_COLUMNS, LOG_FILE_COLUMNS, NOTE_COLUMNS } from "../../src/csv/columns.ts";
import { columnsMarkdown } from "../../src/csv/columns-markdown.ts";
import { LOG_COLUMNS } from "../../src/ingest/log/log-record.ts";
import { COEFFICIENTS } from "../../src/optics/convention.ts";

describe("the column specifications", () => {
  it("have every numeric column of a log and every coefficient of a table", () => {
    const logNames = new Set(LOG_FILE_COLUMNS.map((spec) => spec.name));
    for (const name of LOG_COLUMNS) if (name !== "focus") expect(logNames, name).toContain(name);
    const tableNames = new Set(CALIBRATION_COLUMNS.map((spec) => spec.name));
    for (const name of COEFFICIENTS) expect(tableNames, name).toContain(name);
  });

  it("have no name twice in a table", () => {
    for (const specs of [NOTE_COLUMNS, LENS_COLUMNS, CALIBRATION_COLUMNS, ENCODER_COLUMNS, LOG_FILE_COLUMNS]) {
      const names = specs.map((spec) => spec.name);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  it("say what is wrong with a number outside their limits", () => {
    expect(limitProblem({ name: "x", holds: "number", above: 0, upTo: 1, about: "" }, 0)).toBe("must be greater than 0");
    expect(limitProblem({ name: "x", holds: "number", above: 0, upTo: 1, about: "" }, 1)).toBeNull();
    expect(limitProblem({ name: "x", holds: "number", above: 0, upTo: 1, about: "" }, 1.5)).toBe("must be at most 1");
  });

  it("become a reference that names every column of every table", () => {
    const text = columnsMarkdown();
    for (const spec of [...NOTE_COLUMNS, ...LENS_COLUMNS, ...CALIBRATION_COLUMNS, ...LOG_FILE_COLUMNS]) {
      expect(text).toContain(`| \`${spec.name}\``);
    }
  });

  it("are the published reference as they stand: run `npm run docs` after a change", () => {
    expect(readFileSync(new URL("../../docs/columns.md", import.meta.url), "utf8")).toBe(columnsMarkdown());
  });
});
