// A damaged show through the whole build on a real disk: pages, PDF, every export. Looks for faults of the program, files outside the
// output folder, text from outside the show folder, sums of rows that do not hold, and files that their formats' readers refuse.

import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { Script } from "node:vm";
import { HtmlValidate } from "html-validate";
import Papa from "papaparse";
import { SaxesParser } from "saxes";

/** Stands in a file outside the show folder that links lead to. */
const SECRET = "heron-under-the-ninth-bridge";
/** The show and the report lie so deep that a path with a few `../` still ends where it is looked for. */
const DEEP = "a/b/c/d/e";

const html = new HtmlValidate({
  elements: ["html5"],
  rules: {
    "close-attr": "error",
    "close-order": "error",
    "no-dup-attr": "error",
    "no-dup-id": "error",
    "no-raw-characters": "error",
    "element-permitted-content": "error",
    "unrecognized-char-ref": "error",
    "no-inline-style": "off",
  },
});

export async function loadBuild() {
  const names = ["build/run", "build/make", "build/show-files", "build/out-files"];
  const [run, make, show, out] = await Promise.all(names.map((name) => import(`../../dist/${name}.js`)));
  return {
    buildShow: run.buildShow,
    pipeline: await make.loadPipeline(),
    showFiles: show.showFiles,
    outFiles: out.outFiles,
  };
}

/** Builds the show and checks what came of it; throws where something is not as it must be. Gives back the number of files written. */
export async function buildThrough(program, files, random) {
  const root = mkdtempSync(join(tmpdir(), "daybook-fuzz-"));
  try {
    const show = join(root, DEEP, "show");
    const out = join(root, DEEP, "report");
    const outside = join(root, DEEP, "outside");
    place(outside, "secret.csv", `slate,take,camera,remarks\n${SECRET},1,A,${SECRET}\n`);
    mkdirSync(show, { recursive: true });
    for (const [name, bytes] of files) if (canBeAFile(name)) place(show, name, bytes);
    const link = random.chance(0.3) ? linkOut(show, outside, [...files.keys()], random) : null;
    const before = listing(root, join(DEEP, "report"));

    const input = program.showFiles(show);
    const log = { progress() {}, day() {}, detail() {} };
    const effects = { show: input, linksLeftOut: input.linksLeftOut, out: program.outFiles(out), log, now: () => 0 };
    const vfx = { takes: "all", maps: random.chance(0.3) ? "all" : "none", mapWidth: 48 };
    const options = { dates: [], force: false, tool: { name: "Lens Daybook", version: "0.0.0" }, programHash: "fuzz", vfx };
    const result = await program.buildShow(options, effects, program.pipeline);

    for (const { date, error } of result.faults) throw new Error(`fault on ${date ?? "the show's pages"}: ${error.stack ?? error}`);
    const { read, used, unmatched, rejected } = result.rows;
    must(read === used + unmatched + rejected, `rows do not add up: ${JSON.stringify(result.rows)}`);
    const after = listing(root, join(DEEP, "report"));
    must(after === before, `something outside the report was written or changed:\n${after}`);
    const written = filesBelow(out);
    for (const name of written) checkFile(name, readFileSync(join(out, name)), link !== null);
    return written.length;
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

function place(root, name, content) {
  mkdirSync(dirname(join(root, name)), { recursive: true });
  writeFileSync(join(root, name), content);
}

/** Names that no disk takes are left out, and so is a folder in the place of a file. */
function canBeAFile(name) {
  return (
    !name.includes("\0") &&
    name.split("/").every((part) => part !== "" && part !== "." && part !== ".." && Buffer.byteLength(part) < 250)
  );
}

/** Puts a link to a file or folder outside in the place of a file or folder of the show. */
function linkOut(show, outside, names, random) {
  const name = random.pick(names.filter((one) => canBeAFile(one) && one !== "show.yaml"));
  if (name === undefined) return null;
  const folder = random.chance(0.3) && name.includes("/");
  const target = folder ? dirname(name) : name;
  rmSync(join(show, target), { recursive: true, force: true });
  mkdirSync(dirname(join(show, target)), { recursive: true });
  symlinkSync(folder ? outside : join(outside, "secret.csv"), join(show, target));
  return target;
}

/** Every file and link below a folder with its hash, but those of one folder. */
function listing(root, except, folder = "") {
  return readdirSync(join(root, folder), { withFileTypes: true })
    .flatMap((entry) => {
      const name = join(folder, entry.name);
      if (name === except) return [];
      if (entry.isDirectory()) return [name, listing(root, except, name)];
      const hash = entry.isSymbolicLink()
        ? "link"
        : createHash("sha256")
            .update(readFileSync(join(root, name)))
            .digest("hex");
      return [`${name} ${hash}`];
    })
    .join("\n");
}

function filesBelow(root, folder = "") {
  try {
    return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
      const name = folder === "" ? entry.name : `${folder}/${entry.name}`;
      must(!entry.isSymbolicLink(), `${name} is a link`);
      return entry.isDirectory() ? filesBelow(root, name) : [name];
    });
  } catch (error) {
    if (error.code === "ENOENT") return [];
    throw error;
  }
}

const CHECKS = {
  html: checkHtml,
  json: (text) => JSON.parse(text),
  otio: (text) => JSON.parse(text),
  jsonl: (text) => {
    for (const line of text.split("\n")) if (line !== "") JSON.parse(line);
  },
  csv: checkCsv,
  js: (text) => new Script(text),
  mhl: checkXml,
  xml: checkXml,
  edl: (text) => must(/^[\x20-\x7e\r\n]*$/.test(text), "it has characters beyond ASCII"),
  usda: (text) => must(text.startsWith("#usda 1.0\n"), "it does not begin as a USD file"),
  pdf: (text, bytes) => must(bytes.subarray(0, 5).toString() === "%PDF-" && text.trimEnd().endsWith("%%EOF"), "it is no whole PDF"),
  exr: (_, bytes) => must(bytes.readUInt32LE(0) === 20000630, "it does not begin as an OpenEXR file"),
};

function checkFile(name, bytes, linked) {
  const kind = name.slice(name.lastIndexOf(".") + 1);
  const text = bytes.toString(kind === "pdf" || kind === "exr" || kind === "png" ? "latin1" : "utf8");
  must(!linked || !text.includes(SECRET), `${name} has text from outside the show folder`);
  // stills are copied as they came, broken ones too
  if (name.includes("/stills/")) return;
  try {
    CHECKS[kind]?.(text, bytes);
  } catch (error) {
    throw new Error(`${name}: ${error.message}`);
  }
}

function checkHtml(text) {
  const [result] = html.validateStringSync(text).results;
  const [problem] = result?.messages ?? [];
  if (problem !== undefined) throw new Error(`line ${problem.line}: ${problem.ruleId}: ${problem.message}`);
  must(!text.includes("[object Object]"), "it says [object Object]");
  must(/<\/html>\s*$/.test(text), "it does not end");
}

function checkCsv(text) {
  const { data, errors } = Papa.parse(text, { skipEmptyLines: true });
  must(errors.length === 0 || errors[0].code === "UndetectableDelimiter", `row ${errors[0]?.row}: ${errors[0]?.message}`);
  const width = data[0]?.length;
  const odd = data.findIndex((row) => row.length !== width);
  must(odd < 0, `row ${odd} has ${data[odd]?.length} cells of ${width}`);
}

function checkXml(text) {
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.write(text).close();
}

function must(holds, text) {
  if (!holds) throw new Error(text);
}
