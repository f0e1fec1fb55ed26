import { describe, expect, it } from "vitest";
import { packVfx } from "../../src/build/pack.ts";
import { DEFAULT_VFX } from "../../src/export/vfx/options.ts";
import { dayOf } from "../export/vfx/fixture.ts";

/** Bytes of "1.2 MB"; the space may be one that nobody types. */
function bytesOf(text: string): number {
  const [, number = "", unit = ""] = /([\d.]+)\s(bytes|KB|MB|GB)/.exec(text.replace(/[\u00a0\u202f]/g, " ")) ?? [];
  return Number(number) * ({ bytes: 1, KB: 1e3, MB: 1e6, GB: 1e9 }[unit] ?? Number.NaN);
}

async function told(rows: readonly string[]) {
  const said: string[] = [];
  let bytes = 0;
  let clock = 0;
  await packVfx(
    dayOf({ rows: [...rows] }),
    { ...DEFAULT_VFX, takes: "all", maps: "all", mapWidth: 160 },
    {
      write: (name, { length }) => {
        if (name.endsWith(".exr")) bytes += length;
      },
      say: (text) => said.push(text),
      now: () => (clock += 1000),
    },
  );
  return { said, bytes };
}

describe("what is said of a day's maps", () => {
  it("before they are made is within a fifth of what they come to, where a take has many", async () => {
    const pull = Array.from({ length: 60 }, (_, i) => `${(0.5 * 1.05 ** i).toFixed(4)},4`);
    const { said, bytes } = await told(pull);
    expect(said).toHaveLength(2);
    expect(Number(/(\d+) files/.exec(said[0]?.replace(/[\u00a0\u202f]/g, " ") ?? "")?.[1])).toBeGreaterThan(20);
    expect(bytesOf(said[0] ?? "") / bytes).toBeGreaterThan(0.8);
    expect(bytesOf(said[0] ?? "") / bytes).toBeLessThan(1.2);
    expect(bytesOf(said[1] ?? "") / bytes).toBeCloseTo(1, 1);
  });

  it("is nothing where there are none", async () => {
    expect(await told([])).toEqual({ said: [], bytes: 0 });
  });
});
