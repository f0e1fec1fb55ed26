import { describe, expect, test } from "vitest";
import type { Drawing } from "../../src/chart/drawing.ts";
import { markCss, PAINT } from "../../src/chart/paint.ts";
import { svg } from "../../src/chart/svg.ts";

const DRAWING: Drawing = {
  width: 100,
  height: 20.5,
  title: 'Slate "7&8" <late>',
  description: "One block is a second.",
  items: [
    { type: "rect", k: "k-frame", x: 0, y: 0, width: 100, height: 20 },
    { type: "path", k: "k-focus", d: "M0 5h10", thin: true },
    { type: "circle", k: "k-dot", x: 5, y: 5, r: 2.5 },
    { type: "text", x: 3, y: 9, text: `6' 2" & <more>`, anchor: "end", tone: "t-b" },
    { type: "text", x: 3, y: 19, text: "end", anchor: "end", tone: "" },
    { type: "line", k: "k-cursor", x1: 7, y1: 0, x2: 7, y2: 20 },
  ],
};

describe("a drawing as SVG", () => {
  test("is an image with title and description, a class for each mark and escaped text", () => {
    expect(svg(DRAWING, { idPrefix: "rib" })).toBe(
      '<svg width="100" height="20.5" viewBox="0 0 100 20.5" role="img" aria-labelledby="rib-t" aria-describedby="rib-d">' +
        '<title id="rib-t">Slate &quot;7&amp;8&quot; &lt;late&gt;</title><desc id="rib-d">One block is a second.</desc>' +
        '<g aria-hidden="true"><path class="k-frame" d="M0 0h100v20h-100z"/><path class="k-focus thin" d="M0 5h10"/>' +
        '<circle class="k-dot" cx="5" cy="5" r="2.5"/>' +
        '<g text-anchor="end"><text class="t-b" x="3" y="9">6\' 2&quot; &amp; &lt;more&gt;</text><text x="3" y="19">end</text></g>' +
        '<path class="k-cursor" d="M7 0v20"/></g></svg>',
    );
  });

  test("is hidden from screen readers, without title, when it is decorative", () => {
    const hidden = svg(DRAWING, { idPrefix: "rib", decorative: true });
    expect(hidden).toContain('aria-hidden="true"');
    expect(hidden).not.toContain("<title");
    expect(hidden).not.toContain('role="img"');
  });
});

describe("the paint of marks", () => {
  test("has a rule for every mark, made of roles of the palette", () => {
    const css = markCss();
    for (const mark of Object.keys(PAINT)) expect(css).toContain(`.${mark} {`);
    expect(css).toContain(".k-focus { fill: none; stroke: var(--focus); stroke-width: 2; }");
  });
});
