import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readXml, xmlText } from "../../../src/export/mhl/xml.ts";

describe("readXml", () => {
  it("reads elements, attributes in either quotes, text, entities, CDATA; prefixes fall off", () => {
    const root = readXml(
      `<?xml version="1.0"?>\n<!-- list -->\n<m:a x='1 &lt; 2' y="&#233;"><b/>one<![CDATA[<two>]]>&amp;</m:a>\n`,
    );
    expect(root).toMatchObject({ name: "a", attributes: { x: "1 < 2", y: "é" }, text: "one<two>&" });
    expect(root?.children.map((child) => child.name)).toEqual(["b"]);
  });

  it.each([
    ["an element left open", "<a><b></a>"],
    ["two roots", "<a/><b/>"],
    ["text outside", "<a/>x"],
    ["an unknown entity", "<a>&secret;</a>"],
    ["a document type", '<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/passwd">]><a>&e;</a>'],
    ["an attribute twice", '<a x="1" x="2"/>'],
    ["no element", "plain text"],
    ["nothing", ""],
    ["nesting without end", "<a>".repeat(100) + "</a>".repeat(100)],
  ])("refuses %s", (_, text) => {
    expect(readXml(text)).toBeNull();
  });

  it("gives back every text that was written", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        const plain = text.replace(/\p{Cc}/gu, "");
        expect(readXml(`<a b="${xmlText(plain)}">${xmlText(plain)}</a>`)).toMatchObject({ text: plain, attributes: { b: plain } });
      }),
    );
  });

  it("never throws, whatever the text", () => {
    expect(() => fc.assert(fc.property(fc.string(), (text) => void readXml(`<a>${text}</a>`)))).not.toThrow();
  });
});
