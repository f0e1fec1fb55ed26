import { describe, expect, it } from "vitest";
import { choicePieces, inUnits } from "../../src/format/units.ts";
import { printUnits } from "../../src/site/units-markup.ts";

describe("a choice in a page", () => {
  const choice = inUnits("reader-metric", (system) => (system === "metric" ? "2 m" : "6&#39; 7&quot;"));

  it("is elements in the text, SVG ones in a drawing, and the show's wording in attributes, titles and scripts", () => {
    const html = [
      `<p title="${choice}">at ${choice}</p>`,
      `<svg><title>${choice}</title><text>${choice}</text></svg>`,
      `<script>x = "${choice} <b>"</script>`,
      `<p>${choice}</p>`,
    ];
    const print = (name: string) => `<${name} class="dm">2 m</${name}><${name} class="oi">6' 7"</${name}>`;
    expect(printUnits(html.join(""))).toBe(
      [
        `<p title="2 m">at ${print("span")}</p>`,
        `<svg><title>2 m</title><text>${print("tspan")}</text></svg>`,
        `<script>x = "2 m <b>"</script>`,
        `<p>${print("span")}</p>`,
      ].join(""),
    );
  });

  it("has brackets of its own for a show that wants both", () => {
    expect(
      choicePieces({ metric: "2 m", imperial: "7'", first: "both" })
        .map(([, text]) => text)
        .join(""),
    ).toBe("2 m (7')");
  });

  it("leaves a stray sign of the same kind in somebody's text alone", () => {
    expect(printUnits("<p>\ufdd0 and \ufdd3</p>")).toBe("<p>\ufdd0 and \ufdd3</p>");
  });
});
