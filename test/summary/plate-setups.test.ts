import { describe, expect, it } from "vitest";
import { plateSetups } from "../../src/summary/plate-setups.ts";
import type { TakeSummary } from "../../src/summary/types.ts";
import { exampleTake } from "../fixtures/day-summary.ts";

function plate(slate: string, take: string, camera: string, more: Partial<TakeSummary["take"]> = {}): TakeSummary {
  const base = exampleTake();
  const address = `${camera}-${slate}-${take}`.toLowerCase();
  return { ...base, take: { ...base.take, slate, take, camera, address, circled: false, status: null, plate: "hero", ...more } };
}

const chosen = (takes: readonly TakeSummary[]) => plateSetups(takes).map((s) => s.chosen.map((t) => t.take.address));

describe("plate set-ups", () => {
  it("are the slates with a plate, each with all its takes", () => {
    const found = plateSetups([plate("7", "1", "A", { plate: null }), plate("8", "1", "A", { plate: null }), plate("7", "2", "A")]);
    expect(found.map((s) => [s.address, s.slate, s.takes.map((t) => t.take.address)])).toEqual([["7", "7", ["a-7-1", "a-7-2"]]]);
  });

  it("are one where slates fold to one address", () => {
    expect(plateSetups([plate("24 B", "1", "A"), plate("24-b", "2", "A")]).map((s) => s.address)).toEqual(["24-b"]);
  });

  it("choose the last circled plate of each camera, else the last good one, else the last", () => {
    const a = [
      plate("7", "1", "A", { circled: true }),
      plate("7", "2", "A", { circled: true }),
      plate("7", "3", "A", { status: "good" }),
    ];
    const b = [plate("7", "1", "B", { status: "good" }), plate("7", "2", "B", { status: "ng" })];
    const c = [plate("7", "1", "C"), plate("7", "2", "C"), plate("7", "3", "C", { plate: null, circled: true })];
    expect(chosen([...b, ...c, ...a])).toEqual([["a-7-2", "b-7-1", "c-7-2"]]);
  });

  it("leave out rows whose address an earlier row has", () => {
    expect(chosen([plate("7", "1", "A"), plate("7", "1", "A", { duplicate: true, circled: true })])).toEqual([["a-7-1"]]);
  });
});
