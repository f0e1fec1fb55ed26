import { describe, expect, it } from "vitest";
import { brief } from "../../src/format/brief.ts";

describe("brief", () => {
  it("leaves what fits as it is", () => {
    expect(brief("Boat drifted", 12, "cut")).toBe("Boat drifted");
  });
  it("cuts at the last whole word and says so", () => {
    // twelve characters end with the second word; thirteen would reach into the third
    expect(brief("Boat drifted out of frame", 12, "cut")).toBe("Boat drifted (cut)");
    expect(brief("Boat drifted, then sank", 14, "rest in the notes")).toBe("Boat drifted (rest in the notes)");
  });
  it("cuts a word that is longer than the place, by characters and not by halves of them", () => {
    expect(brief("A009C002_310506_R7KQ", 8, "cut")).toBe("A009C002 (cut)");
    expect(brief("😀😀😀😀😀😀", 4, "cut")).toBe("😀😀😀😀 (cut)");
  });
});
