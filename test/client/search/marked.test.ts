import { describe, expect, it } from "vitest";
import { markedRemark } from "../../../src/client/search/marked.ts";

const text = (remark: string, marks: readonly string[], room?: number) =>
  markedRemark(remark, new Set(marks), room)
    .map((piece) => (piece.marked ? `[${piece.text}]` : piece.text))
    .join("");

describe("a remark in a result", () => {
  it("is whole with its marks when it is short", () => {
    expect(text("Late on the ledger", ["ledger"])).toBe("Late on the [ledger]");
    expect(text("Ledger, ledger", ["ledger"])).toBe("[Ledger], [ledger]");
    expect(text("Late on the ledger", [])).toBe("Late on the ledger");
    expect(text("", ["x"])).toBe("");
  });

  it("is cut between words around the first mark when it is long", () => {
    const long = `${"one two three four five six seven eight nine ten ".repeat(3)}ledger ${"and so on ".repeat(20)}`.trim();
    const shown = text(long, ["ledger"], 60);
    expect(shown).toMatch(/^… \S.*\[ledger\].* …$/);
    expect(shown.length).toBeLessThan(70);
  });

  it("is cut inside a word where it has no spaces, and never inside a sign", () => {
    expect(text(`雨 ${"撮影".repeat(40)}`, [], 20)).toBe(`雨 ${"撮影".repeat(9)} …`);
    const long = `ab ${"x".repeat(60)}`;
    expect(text(long, ["x".repeat(60)], 20)).toBe(`… ${"x".repeat(20)} …`);
    // each of these signs is two units
    expect(text("🎬".repeat(40), [], 21)).toBe(`${"🎬".repeat(10)} …`);
  });

  it("marks a run that signs cut once", () => {
    expect(text("a half-speed shot", ["halfspeed", "half", "speed"])).toBe("a [half-speed] shot");
    expect(text("a half-speed shot", ["speed"])).toBe("a half-[speed] shot");
  });
});
