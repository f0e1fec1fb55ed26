import { describe, expect, it } from "vitest";
import { foldName, takeAddress } from "../../src/model/address.ts";

describe("the address of a take", () => {
  it("is camera, slate and take in lower case (the contract's example: a-24b-3)", () => {
    expect(takeAddress("A", "24B", "3")).toBe("a-24b-3");
  });
  it("drops accents and folds each run of other characters to one hyphen, none at the ends", () => {
    expect(takeAddress("A", "99", "3 Übung")).toBe("a-99-3-ubung");
    expect(takeAddress("A", "99", "2 (PU)")).toBe("a-99-2-pu");
    expect(foldName("  ...7//8  ")).toBe("7-8");
  });
  it("never leaves the folder or becomes empty, whatever was written", () => {
    expect(takeAddress("A", "../../etc", "1")).toBe("a-etc-1");
    expect(foldName("///")).toBe("x");
    expect(foldName("a".repeat(500)).length).toBeLessThanOrEqual(80);
  });
});
