/** The site generator run by hand writes beside its pages what the command writes there. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, inject, it } from "vitest";
import { sha256 } from "../../src/core/hash.ts";
import { filesOf } from "../helpers/built-site.ts";

it("has the stills, the data of takes, what search reads and the tables, byte for byte", () => {
  const out = inject("demoOut");
  const files = inject("demoBeside");
  const beside = filesOf(out).filter((file) => /^days\/.*(\/stills\/|\.data\.js$)|^[^/.]+\.(csv|js)$|^search-rows\.js$/.test(file));
  expect(Object.keys(files).sort()).toEqual(beside);
  expect(beside.filter((file) => file.includes("/stills/")).length).toBeGreaterThan(5);
  for (const [path, hash] of Object.entries(files)) expect(hash, path).toBe(sha256(readFileSync(join(out, path))));
});
