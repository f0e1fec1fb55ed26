import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { packContents } from "../../src/build/pack.ts";
import { PACK_GUIDE, packGuide } from "../../src/export/pack-guide.ts";
import { DEFAULT_VFX } from "../../src/export/vfx/options.ts";
import { planVfx } from "../../src/export/vfx/take-files.ts";
import { dayOf, TOOL } from "./editorial/days.ts";

const day = (title = "Small show") =>
  dayOf(["1,1,A,1,A001,A001C001,01:00:00:00,01:00:01:00,,P50,2.8,2 m,y,,,hero,,"], {}, `rate: 24\ncode: SMALL\n`, title);
const VFX = ["lens.csv", "lens.opentrackio.jsonl", "camera.usda", "maps.csv", "datapackage.json"];
const MAPS = ["undistort-0001.exr", "redistort-0001.exr", "shading-0001.exr"];

describe("README.txt of a pack", () => {
  it("names every kind of file that is there, and none that is not", async () => {
    const summary = day();
    const pack = (await packContents(summary, [], TOOL, "id", DEFAULT_VFX)).map((file) => file.name);
    const vfx = planVfx(summary, DEFAULT_VFX).files.map((file) => file.name);
    expect(vfx.length).toBeGreaterThan(0);
    const text = packGuide(summary, [...pack, ...vfx], TOOL);
    for (const name of [...pack, ...vfx]) {
      const base = name.slice(name.lastIndexOf("/") + 1).replace(/^SMALL-.*?(-camera-report)?\.(\w+)$/, "*$1.$2");
      expect(text, name).toContain(name.startsWith("schema/") ? "  schema/\n" : base);
    }
    expect(text).not.toContain("undistort");
    const tables = packGuide(summary, ["day.json", "takes.csv"], TOOL);
    for (const name of [...VFX.filter((file) => file !== "datapackage.json"), ".otio", "vfx/", "schema/"]) {
      expect(tables).not.toContain(name);
    }
    const maps = packGuide(
      summary,
      [...VFX, ...MAPS].map((file) => `vfx/a-1-1/${file}`),
      TOOL,
    );
    for (const map of MAPS) expect(maps).toContain(map.replace("0001", "*"));
  });

  it("says how to verify, the units and the conventions, on a page of 80 columns", () => {
    const text = packGuide(day(), ["day.json"], TOOL);
    for (const words of ["daybook verify", "md5sum", "metres from the image plane", "never zero", "first frame after the take"]) {
      expect(text).toContain(words);
    }
    expect(text.split("\n").filter((line) => line.length > 80)).toEqual([]);
    expect(text.endsWith("vehicles or effects.\n")).toBe(true);
  });

  it("has the manual's commands for the maps, which are run on the demo in test/interop/vfx_warp.py, where there are maps", () => {
    const commands = (text: string) =>
      [...text.matchAll(/^ *(oiiotool .*)$/gm)].map(([, line]) => line?.replaceAll("4608x2592", "WxH") ?? "");
    const manual = commands(readFileSync(join(import.meta.dirname, "../../docs/vfx-files.md"), "utf8"));
    const told = commands(packGuide(day(), ["vfx/a-1-1/undistort-0001.exr"], TOOL));
    expect(told.length).toBeGreaterThan(4);
    // without the canvas, which the text tells in words
    const onFrame = manual.map((line) => line.replace("canvas.exr back-map", "flat.exr back-map").replace(" --crop WxH+0+0", ""));
    for (const line of told) expect(onFrame).toContain(line);
    expect(packGuide(day(), ["vfx/a-1-1/lens.csv"], TOOL)).not.toContain("oiiotool");
  });

  it("has the show's title in one line, whatever it holds", () => {
    expect(packGuide(day('"Odd & <show> 🎬 \\n\\u0007 שלום"'), [], TOOL).split("\n")[0]).toBe("Odd & <show> 🎬 שלום");
  });
});

describe("a pack", () => {
  it("holds the JSON Schemas of the package, byte for byte", async () => {
    const folder = join(import.meta.dirname, "../../docs/schema");
    const pack = await packContents(day(), [], TOOL, "id", DEFAULT_VFX);
    const schemas = pack.filter((file) => file.name.startsWith("schema/"));
    expect(schemas.map((file) => file.name)).toEqual(readdirSync(folder).map((name) => `schema/${name}`));
    for (const { name, bytes } of schemas) {
      expect(Buffer.from(bytes)).toEqual(readFileSync(join(folder, name.slice("schema/".length))));
    }
    expect(pack.map((file) => file.name)).not.toContain(PACK_GUIDE);
  });
});
