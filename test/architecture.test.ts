/** Rules of the code base that a compiler does not know. Each failure names the file, so that it can be opened. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = resolve(import.meta.dirname, "..");
/** A folder imports only from itself and from folders earlier in this list. */
const ORDER = "core time optics stats csv ingest model summary still format chart view site pdf export build cli".split(" ");
const PURE = "core time optics stats csv ingest model summary still format chart view".split(" ");
const CLIENT_MAY_IMPORT = ["client", "core", "time", "optics", "format", "still"];

interface Source {
  /** Relative to the repository, with `/`. */
  readonly file: string;
  readonly folder: string;
  readonly text: string;
  /** Text without comments, strings kept. */
  readonly code: string;
}

function filesBelow(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesBelow(`${folder}/${entry.name}`) : [`${folder}/${entry.name}`],
  );
}

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, (c) => c.replace(/[^\n]/g, " ")).replace(/(^|[\s;{}(),])\/\/[^\n]*/g, "$1");
}

const sources: readonly Source[] = filesBelow("src")
  .filter((file) => file.endsWith(".ts"))
  .map((file) => {
    const text = readFileSync(join(ROOT, file), "utf8");
    return { file, folder: file.split("/")[1] ?? "", text, code: withoutComments(text) };
  });
const pure = sources.filter((s) => PURE.includes(s.folder));

function imports(source: Source): readonly { readonly spec: string; readonly folder: string | null }[] {
  const specs = [...source.code.matchAll(/(?:from\s+|import\s*\(\s*|import\s+)"([^"]+)"/g)].map((m) => m[1] ?? "");
  return specs.map((spec) => {
    if (!spec.startsWith(".")) return { spec, folder: null };
    const path = relative(ROOT, resolve(ROOT, dirname(source.file), spec))
      .split("\\")
      .join("/");
    return { spec, folder: path.split("/").length > 2 ? (path.split("/")[1] ?? null) : "src" };
  });
}

const breaches = (list: readonly Source[], pattern: RegExp) =>
  list.flatMap((s) => s.code.split("\n").flatMap((line, i) => (pattern.test(line) ? [`${s.file}:${i + 1}: ${line.trim()}`] : [])));

describe("import directions", () => {
  it("go one way only", () => {
    const wrong = sources
      .filter((s) => ORDER.includes(s.folder))
      .flatMap((s) =>
        imports(s)
          .filter(
            ({ folder }) => folder !== null && !(ORDER.indexOf(folder) >= 0 && ORDER.indexOf(folder) <= ORDER.indexOf(s.folder)),
          )
          .map(({ spec }) => `${s.file} imports ${spec}`),
      );
    expect(wrong).toEqual([]);
  });

  it("of the browser's scripts end at core, time, optics, and the formats and stills they share with the builder", () => {
    const wrong = sources
      .filter((s) => s.folder === "client")
      .flatMap((s) =>
        imports(s)
          .filter(({ folder }) => folder !== null && !CLIENT_MAY_IMPORT.includes(folder))
          .map(({ spec }) => `${s.file} imports ${spec}`),
      );
    expect(wrong).toEqual([]);
  });

  it("name files with their ending", () => {
    const wrong = sources.flatMap((s) =>
      imports(s)
        .filter(({ spec }) => spec.startsWith(".") && !spec.endsWith(".ts"))
        .map(({ spec }) => `${s.file}: ${spec}`),
    );
    expect(wrong).toEqual([]);
  });

  it.each([
    ["@11ty/eleventy", "site"],
    ["nunjucks", "site"],
    ["pdfkit", "pdf"],
    ["commander", "cli"],
    ["picocolors", "cli"],
    ["zod", "ingest"],
    ["yaml", "ingest"],
    ["papaparse", "csv"],
    ["pngjs", "still"],
    ["minisearch", "client"],
  ])("keep %s in %s/", (library, home) => {
    const users = sources.filter((s) => imports(s).some(({ spec }) => spec === library || spec.startsWith(`${library}/`)));
    expect(users.filter((s) => s.folder !== home).map((s) => s.file)).toEqual([]);
  });

  it("keep d3 in chart/, stats/ and view/", () => {
    const users = sources.filter((s) => imports(s).some(({ spec }) => spec.startsWith("d3-")));
    expect(users.filter((s) => !["chart", "stats", "view"].includes(s.folder)).map((s) => s.file)).toEqual([]);
  });
});

describe("pure folders", () => {
  it("touch no file system, process or network", () => {
    const wrong = pure.flatMap((s) =>
      imports(s)
        .filter(({ spec }) => /^node:(?!crypto$|buffer$|path$)|^(fs|process|os|http|https|child_process)$/.test(spec))
        .map(({ spec }) => `${s.file} imports ${spec}`),
    );
    expect(wrong).toEqual([]);
  });

  it("know no clock", () => {
    expect(
      breaches(pure, /\bDate\.now\b|\bDate\(\s*\)|\bnew Date(?!\()|\bperformance\.now\b|\.get(Hours|Date|Day|Month|FullYear)\(/),
    ).toEqual([]);
  });

  it("know no chance and no environment", () => {
    expect(breaches(pure, /\bMath\.random\b|\bprocess\.|\brandomUUID\b/)).toEqual([]);
  });

  it("know no locale", () => {
    expect(breaches(pure, /\.toLocale\w+\(|\bIntl\.|\.localeCompare\(/)).toEqual([]);
  });
});

describe("every source file", () => {
  it("has at most 300 lines", () => {
    expect(
      sources.filter((s) => s.text.split("\n").length > 301).map((s) => `${s.file}: ${s.text.split("\n").length - 1} lines`),
    ).toEqual([]);
  });

  it("exports by name", () => {
    expect(
      breaches(
        sources.filter((s) => !s.file.endsWith(".d.ts")),
        /\bexport default\b/,
      ),
    ).toEqual([]);
  });

  it("has a name in lower case with hyphens", () => {
    expect(sources.map((s) => s.file).filter((file) => !/^src(\/[a-z0-9-]+)+(\.d)?\.ts$/.test(file))).toEqual([]);
  });

  it("is free of what cannot be erased: enums, namespaces, any", () => {
    expect(breaches(sources, /^\s*(export\s+)?(const\s+)?enum\s|^\s*(export\s+)?namespace\s|:\s*any\b|\bas any\b/)).toEqual([]);
  });

  it("imports no barrel of its own project", () => {
    const wrong = sources
      .filter((s) => !/^src\/(index|optics\/index|time\/index)\.ts$/.test(s.file))
      .flatMap((s) =>
        imports(s)
          .filter(({ spec }) => spec.startsWith(".") && spec.endsWith("/index.ts"))
          .map(({ spec }) => `${s.file}: ${spec}`),
      );
    expect(wrong).toEqual([]);
  });
});

/** Modules that the library exports from `lens-daybook/optics` and `lens-daybook/time`. */
const published = ["optics", "time"].flatMap((folder) => {
  const index = readFileSync(join(ROOT, "src", folder, "index.ts"), "utf8");
  const files = [...index.matchAll(/^export (?!type).*from "\.\/([^"]+)"/gm)].map((m) => `src/${folder}/${m[1]}`);
  return sources.filter((s) => files.includes(s.file));
});
/** Published modules without a formula. */
const NO_FORMULA = ["src/optics/refused.ts", "src/optics/formulas.ts"];

describe("published formulas", () => {
  it("say in a doc comment of their file where they are from", () => {
    const wrong = published
      .filter((s) => /^export function /m.test(s.code) && !NO_FORMULA.includes(s.file))
      .filter((s) => ![...s.text.matchAll(/\/\*\*[\s\S]*?\*\//g)].some(([comment]) => /@source|definition/i.test(comment)))
      .map((s) => s.file);
    expect(wrong).toEqual([]);
  });

  it("have a doc comment on every exported function", () => {
    const wrong = published.flatMap((s) =>
      [...s.text.matchAll(/(\*\/\n)?^export (?:async )?function (\w+)/gm)]
        .filter((m) => m[1] === undefined)
        .map((m) => `${s.file}: ${m[2]}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe("templates", () => {
  it("compute, compare, sort and format nothing", () => {
    const templates = filesBelow("templates").filter((file) => file.endsWith(".njk"));
    const wrong = templates.flatMap((file) =>
      readFileSync(join(ROOT, file), "utf8")
        .split("\n")
        .flatMap((line, i) =>
          [...line.matchAll(/\{\{(.*?)\}\}|\{%(.*?)%\}/g)]
            .map((m) => (m[1] ?? m[2] ?? "").replace(/"[^"]*"|'[^']*'/g, '""'))
            .filter((code) => /[<>]|[=!]=|\s[-+*/%]\s|\|\s*(?!safe\b)\w+|^-?\s*set\s|\b(and|or)\b/.test(code))
            .map((code) => `${file}:${i + 1}: ${code.trim()}`),
        ),
    );
    expect(wrong).toEqual([]);
  });
});
