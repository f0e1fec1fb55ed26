import { existsSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = resolve(import.meta.dirname, "..");
const json = (file: string) => JSON.parse(readFileSync(join(ROOT, file), "utf8"));
const pack = json("package.json");
const lock = json("package-lock.json");

interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly link?: boolean;
}

/** Licences that ask for no more than a notice. The fonts' terms are those of Bitstream Vera, with public-domain additions. */
const PERMISSIVE =
  /^\(?(MIT|ISC|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|0BSD|BlueOak-1\.0\.0|CC0-1\.0|Unlicense|Python-2\.0|MIT-0|Zlib|CC-BY-4\.0|OFL-1\.1)\b/;
const FONT_TERMS = ["dejavu-fonts-ttf"];

describe("package.json", () => {
  it.each(["dependencies", "devDependencies"])("pins %s exactly", (group) => {
    const loose = Object.entries<string>(pack[group] ?? {}).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.-]+)?$/.test(version));
    expect(loose).toEqual([]);
  });

  it("asks for the Node that its dependencies need", () => {
    expect(pack.engines).toEqual({ node: ">=20.19" });
  });

  it("names the command and the library's entry points, types first", () => {
    expect(pack.bin).toEqual({ daybook: "dist/cli/main.js" });
    for (const entry of Object.values<unknown>(pack.exports)) {
      if (typeof entry === "object" && entry !== null) expect(Object.keys(entry)[0]).toBe("types");
    }
    expect(pack.type).toBe("module");
  });

  it("publishes what the command needs: code and templates", () => {
    expect(pack.files).toEqual(expect.arrayContaining(["dist", "templates"]));
  });

  it("is under the licence that the file states", () => {
    expect(pack.license).toBe("MIT");
    expect(readFileSync(join(ROOT, "LICENSE"), "utf8")).toMatch(/^MIT License/);
  });
});

describe("the lock file", () => {
  it("agrees with package.json", () => {
    expect(lock.packages[""].dependencies).toEqual(pack.dependencies);
    expect(lock.packages[""].devDependencies).toEqual(pack.devDependencies);
  });

  it("takes packages from the public registry only", () => {
    const urls = Object.values<{ resolved?: string }>(lock.packages).flatMap((p) => (p.resolved === undefined ? [] : [p.resolved]));
    expect(urls.filter((url) => !url.startsWith("https://registry.npmjs.org/"))).toEqual([]);
  });

  it("holds run-time packages with permissive licences only", () => {
    const wrong = Object.entries<LockedPackage>(lock.packages)
      .filter(
        ([name, p]) => name !== "" && p.dev !== true && p.link !== true && !FONT_TERMS.some((font) => name.endsWith(`/${font}`)),
      )
      .map(([name, p]) => [name, p.license ?? licenceOf(name)] as const)
      .filter(([, licence]) => !PERMISSIVE.test(licence));
    expect(wrong).toEqual([]);
  });
});

/** Older packages say their licence in the package only, and some as an object. */
function licenceOf(path: string): string {
  const file = join(ROOT, path, "package.json");
  if (!existsSync(file)) return "not installed";
  const { license, licenses } = JSON.parse(readFileSync(file, "utf8"));
  const said = typeof license === "string" ? license : (license?.type ?? licenses?.[0]?.type);
  return said ?? licenceFile(path);
}

/** What the first line of the licence file calls itself, when package.json is silent. */
function licenceFile(path: string): string {
  const names = ["LICENSE", "LICENCE", "LICENSE.md", "LICENSE.txt"].map((name) => join(ROOT, path, name));
  const file = names.find((name) => existsSync(name));
  const text = file === undefined ? "" : readFileSync(file, "utf8");
  return /^\W*(The )?MIT License/i.test(text) || text.includes("Permission is hereby granted, free of charge")
    ? "MIT"
    : "not stated";
}
