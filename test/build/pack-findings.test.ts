import { describe, expect, it } from "vitest";
import { packContents } from "../../src/build/pack.ts";
import { finding } from "../../src/core/finding.ts";
import { DEFAULT_VFX } from "../../src/export/vfx/options.ts";
import { SMALL_KIT, summarise } from "../helpers/memory-show.ts";

describe("the machine files of a pack", () => {
  it("say what is wrong with the kit too, since the pack travels without it", async () => {
    const kit = finding({
      code: "KIT508",
      severity: "check",
      place: { file: "kit/calibration/P50.csv", line: 3, column: 1 },
      message: "No direction",
      hint: "Ask",
    });
    const notes = "slate,take,camera,tc_in,tc_out,lens\n1,1,A,10:00:00:00,10:00:02:00,P50\n";
    const { summary } = summarise({ ...SMALL_KIT, "days/2030-02-03/notes.csv": notes }, "2030-02-03");
    const pack = await packContents(summary, [kit], { name: "lens-daybook", version: "0" }, "id", DEFAULT_VFX);
    const text = (name: string): string => new TextDecoder().decode(pack.find((file) => file.name === name)?.bytes);
    const { findings } = JSON.parse(text("day.json")) as { findings: { code: string; file: string | null }[] };
    expect(findings).toHaveLength(summary.findings.length + 1);
    expect(findings.some((f) => f.code === "KIT508" && f.file === "kit/calibration/P50.csv")).toBe(true);
    expect(text("findings.csv")).toContain("kit/calibration/P50.csv");
  });
});
