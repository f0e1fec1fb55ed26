import { mkdirSync, rmSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { isWithin, showFiles } from "../../src/build/show-files.ts";
import { temporaryFolder, writeFiles } from "./fakes.ts";

let root: string;
beforeEach(() => {
  root = temporaryFolder();
  writeFiles(root, { "show/show.yaml": "title: T", "show/days/2026-03-14/notes.csv": "slate", "outside/secret.csv": "secret" });
});
afterEach(() => rmSync(root, { recursive: true, force: true }));
const text = (bytes: Uint8Array | { problem: string }) => (bytes instanceof Uint8Array ? new TextDecoder().decode(bytes) : bytes);

describe("showFiles", () => {
  it("lists entries in name order with their kind", () => {
    writeFiles(root, { "show/Z.txt": "", "show/a.txt": "" });
    expect(showFiles(join(root, "show")).list("")).toEqual([
      { name: "Z.txt", kind: "file" },
      { name: "a.txt", kind: "file" },
      { name: "days", kind: "folder" },
      { name: "show.yaml", kind: "file" },
    ]);
  });

  it("says in words why a file cannot be read", () => {
    const show = showFiles(join(root, "show"));
    expect(show.read("days")).toEqual({ problem: "is a folder" });
    expect(show.read("none.csv")).toEqual({ problem: "is not there" });
    expect(show.read("show.yaml/none.csv")).toEqual({ problem: "lies under something that is no folder" });
    expect(show.list("none")).toBeNull();
    expect(show.list("show.yaml")).toBeNull();
  });

  it("follows a link that stays in the show folder", () => {
    symlinkSync("notes.csv", join(root, "show/days/2026-03-14/again.csv"));
    expect(text(showFiles(join(root, "show")).read("days/2026-03-14/again.csv"))).toBe("slate");
  });

  it("does not follow links that lead out, and names them", () => {
    symlinkSync(join(root, "outside"), join(root, "show/days/2026-03-14/logs"));
    symlinkSync("../outside/secret.csv", join(root, "show/secret.csv"));
    const show = showFiles(join(root, "show"));
    expect(show.list("days/2026-03-14")).toContainEqual({ name: "logs", kind: "other" });
    expect(show.list("days/2026-03-14/logs")).toBeNull();
    expect(show.read("days/2026-03-14/logs/secret.csv")).toHaveProperty("problem");
    expect(show.read("secret.csv")).toEqual({ problem: expect.stringContaining("leads out of the show folder") });
    expect(show.linksLeftOut()).toContain("secret.csv");
    expect(show.linksLeftOut()).toContain("days/2026-03-14/logs");
  });

  it("never reads above the folder, even when a name asks for it", () => {
    expect(showFiles(join(root, "show")).read("../outside/secret.csv")).toHaveProperty("problem");
  });

  it("opens a file a stretch at a time, with the problems of reading it, and not when it is written to meanwhile", () => {
    const show = showFiles(join(root, "show"));
    const source = show.open("days/2026-03-14/notes.csv");
    if ("problem" in source) throw new Error(source.problem);
    expect(source.size).toBe(5);
    expect(text(source.read(1, 3))).toBe("lat");
    expect(text(source.read(3, 100))).toBe("te");
    expect(show.open("days")).toEqual({ problem: "is a folder" });
    expect(show.open("none.csv")).toEqual({ problem: "is not there" });
    expect(show.open("../outside/secret.csv")).toHaveProperty("problem");
    writeFiles(root, { "show/days/2026-03-14/notes.csv": "slate,take" });
    expect(() => source.read(0, 3)).toThrow("was written to while it was being read");
  });

  it("takes a show folder that is itself reached through a link", () => {
    symlinkSync(join(root, "show"), join(root, "link"));
    expect(text(showFiles(join(root, "link")).read("show.yaml"))).toBe("title: T");
  });
});

describe("isWithin", () => {
  it("knows a folder in a folder, through links and before it exists", () => {
    mkdirSync(join(root, "show-report"));
    symlinkSync(join(root, "show"), join(root, "link"));
    expect(isWithin(join(root, "show"), join(root, "show"))).toBe(true);
    expect(isWithin(join(root, "show/report/new"), join(root, "show"))).toBe(true);
    expect(isWithin(join(root, "link/report"), join(root, "show"))).toBe(true);
    expect(isWithin(join(root, "show-report"), join(root, "show"))).toBe(false);
    expect(isWithin(join(root, "..report"), root)).toBe(true);
    expect(isWithin(root, join(root, "show"))).toBe(false);
  });
});
