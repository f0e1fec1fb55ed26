import { describe, expect, it } from "vitest";
import { dayDataPackage } from "../../src/export/datapackage.ts";
import { FINDINGS_COLUMNS } from "../../src/export/findings-csv.ts";
import { TAKES_COLUMNS } from "../../src/export/takes-csv.ts";
import { dayOf } from "./editorial/days.ts";

describe("the data package of a day", () => {
  const [takes, findings] = JSON.parse(dayDataPackage(dayOf([]))).resources as {
    schema: { fields: { name: string; type: string; unit?: string; description?: string }[] };
  }[];

  it("has a field a column, in order", () => {
    expect(takes?.schema.fields.map((field) => field.name)).toEqual(TAKES_COLUMNS);
    expect(findings?.schema.fields.map((field) => field.name)).toEqual(FINDINGS_COLUMNS);
  });

  it("says what every column means, and the unit of every number; a distance, which may be inf, says metres in words", () => {
    for (const { name, type, unit, description } of [...takes!.schema.fields, ...findings!.schema.fields]) {
      expect(description, name).toMatch(/\w/);
      if (type === "number") expect(unit, name).toMatch(name.endsWith("_mm") ? /^mm$/ : /^1$/);
      if (name.endsWith("_m")) expect(description, name).toContain("metres");
    }
  });
});
