import { describe, expect, it } from "vitest";
import { pairPlates } from "../../src/view/readers/plates.ts";
import { exampleTake } from "../fixtures/day-summary.ts";

describe("pairPlates", () => {
  const hero = exampleTake("a-12-2");
  const clean = exampleTake("a-12b-1");

  it("puts a clean plate with the hero it was made for, the hero first", () => {
    const pairs = pairPlates([clean, hero]);
    expect(pairs.map((pair) => pair.heading)).toEqual(["12: hero and clean"]);
    expect(pairs[0]?.takes.map((t) => t.take.address)).toEqual(["a-12-2", "a-12b-1"]);
  });

  it("says what differs between the two", () => {
    // The hero goes from T4 to T5.6 and the clean plate has T5.6: a stop that the hero used. A hero held at T4 did not.
    const stop = hero.tStop;
    if (stop === null) throw new Error("no stop");
    const held = { ...hero, tStop: { ...stop, widest: stop.typical ?? 4, deepest: stop.typical ?? 4 } };
    expect(pairPlates([hero, clean])[0]?.sentence).not.toContain("another stop");
    expect(pairPlates([held, clean])[0]?.sentence).toContain("another stop");
    const same = { ...clean, tStop: hero.tStop, focal: hero.focal, cameraHeightM: hero.cameraHeightM };
    expect(pairPlates([hero, same])[0]?.sentence).toContain("same lens");
  });

  it("says when a partner is missing", () => {
    expect(pairPlates([hero])[0]?.sentence).toContain("No clean plate");
    expect(pairPlates([clean])[0]?.sentence).toContain("No hero");
  });
});
