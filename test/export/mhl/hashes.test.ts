import { describe, expect, it } from "vitest";
import { c4Of, fileHashes } from "../../../src/export/mhl/hashes.ts";

/** ascmitc/mhl, tests/test_hasher.py: hashes of the data "media-hash-list". */
const PUBLISHED = {
  md5: "9db0fc9f30f5ee70041a7538809e2858",
  c4: "c456LycWwpMMS7VDZEKvYv2L1uJS6s4qAFnaJdnQiy5JVbBFZMA8aLDS6SPaJjLqxXH4qZdnbuktopMt9frtC2qL1R",
};

describe("fileHashes", () => {
  it("gives the published values", () => {
    expect(fileHashes(Buffer.from("media-hash-list"))).toEqual(PUBLISHED);
  });

  it("gives 90 characters for every content, also where the number is small", () => {
    // the C4 of nothing, as several implementations print it
    expect(c4Of("")).toBe("c459dsjfscH38cYeXXYogktxf4Cd9ibshE3BHUo6a58hBXmRQdZrAkZzsWcbWtDg5oQstpDuni4Hirj75GEmTc1sFT");
    for (let i = 0; i < 200; i++) expect(c4Of(String(i))).toHaveLength(90);
  });
});
