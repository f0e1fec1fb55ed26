import { describe, expect, it } from "vitest";
import { zipIndex } from "../../src/build/zip/zip-index.ts";
import type { ShowRecord } from "../../src/ingest/records.ts";

const FILES = [
  "LOSSES.md",
  "S-2031-05-06-camera-report.pdf",
  "day.json",
  "editorial/bins.csv",
  "mine/odd & name.txt",
  "vfx/a-1-1/lens.csv",
  ...Array.from({ length: 90 }, (_, i) => `vfx/a-1-1/undistort-${i}.exr`),
  "vfx/a-2-1/shading-1.exr",
];

describe("the first page of a zip", () => {
  const show = { title: "Salt & <tide>" } as ShowRecord;
  const packFiles = FILES.map((name) => ({ name, bytes: 1000 }));
  const html = zipIndex({ show, date: "2031-05-06", day: 2, packFiles, isThere: (file) => file === "days/2031-05-06/index.html" });
  const links = [...html.matchAll(/href="([^"]+)"/g)].map(([, href]) => href);

  it("links each file once, in groups, and tells maps by number and size", () => {
    const files = FILES.filter((name) => !name.endsWith(".exr")).map((name) => `packs/2031-05-06/${name}`);
    expect(links.filter((href) => href?.startsWith("packs/")).sort()).toEqual(
      files.map((name) => name.replace("odd & name", "odd%20%26%20name")).sort(),
    );
    expect([...html.matchAll(/<h3>([^<]+)/g)].map(([, title]) => title)).toEqual([
      "To read",
      "The day for programs",
      "Editorial",
      "VFX",
      "Also there",
    ]);
    const text = html.replace(/[\u00a0\u202f]/g, " ");
    expect(text).toContain('vfx/a-1-1/*.exr: 90 maps <span class="unit">90 KB</span>');
    expect(text).toContain('vfx/a-2-1/*.exr: 1 map <span class="unit">1 KB</span>');
  });

  it("links the pages that are there and no others, and shows names as they are", () => {
    expect(links.filter((href) => href?.startsWith("days/"))).toEqual(["days/2031-05-06/index.html"]);
    expect(html).toContain("<h1>Salt &amp; &lt;tide&gt;, day 2, Tuesday 6 May 2031</h1>");
  });
});
