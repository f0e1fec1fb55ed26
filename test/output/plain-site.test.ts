/** The site generator run by hand writes beside its pages what the command writes there. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, inject, it } from "vitest";
import { wholeSite } from "../../src/build/page-set.ts";
import { sha256 } from "../../src/core/hash.ts";
import { filesOf } from "../helpers/built-site.ts";

const DATA = fileURLToPath(new URL("../../data", import.meta.url));

it("has the stills, the data of takes, what search reads and the tables, byte for byte", async () => {
  const out = inject("demoOut");
  const { files } = await wholeSite(DATA);
  const beside = filesOf(out).filter((file) => /^days\/.*(\/stills\/|\.data\.js$)|^[^/.]+\.(csv|js)$|^search-rows\.js$/.test(file));
  expect(files.map((file) => file.path).sort()).toEqual(beside);
  expect(beside.filter((file) => file.includes("/stills/")).length).toBeGreaterThan(5);
  for (const { path, bytes } of files) expect(sha256(bytes), path).toBe(sha256(readFileSync(join(out, path))));
});
