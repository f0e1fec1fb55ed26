import { describe, expect, it } from "vitest";
import { decodeText } from "../../src/csv/decode.ts";

describe("decodeText", () => {
  it("takes the byte order mark away and makes every line end LF", () => {
    expect(decodeText(new TextEncoder().encode("\ufeffa\r\nb\rc\nd"), "x").text).toBe("a\nb\nc\nd");
  });
  it("converts UTF-16 in both byte orders, with and without a mark", () => {
    const little = Buffer.from("timecode,t\n", "utf16le");
    const big = Buffer.from(little).swap16();
    for (const bytes of [little, big, Buffer.concat([Buffer.from([0xff, 0xfe]), little])]) {
      const { text, findings } = decodeText(bytes, "x");
      expect(text).toBe("timecode,t\n");
      expect(findings.map((f) => f.code)).toEqual(["CSV104"]);
    }
  });
  it("gives no text for bytes that text never holds", () => {
    const { text, findings } = decodeText(Uint8Array.from([65, 10, 66, 0, 67]), "x");
    expect(text).toBeNull();
    expect(findings[0]).toMatchObject({ code: "CSV103", severity: "error", line: 2 });
  });
  it("names the first byte that is not UTF-8", () => {
    const bytes = Buffer.concat([Buffer.from("é\nü"), Buffer.from([0xfc])]);
    const { text, findings } = decodeText(bytes, "x");
    expect(text).toContain("ü");
    expect(findings[0]).toMatchObject({ code: "CSV105", line: 2, message: expect.stringContaining("Byte 6 (0xfc)") });
  });
});
