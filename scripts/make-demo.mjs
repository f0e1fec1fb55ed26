#!/usr/bin/env node
// Writes the demo show. Every byte comes from the schedule in scripts/demo and its own seeded generator: no clock, no chance.
// Use: node scripts/make-demo.mjs            writes data/ and scripts/demo/mistakes.json, after removing what was there
//      node scripts/make-demo.mjs --out DIR  writes the show and mistakes.json into an empty or absent folder
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { demo } from "./demo/write.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const at = process.argv.indexOf("--out");
const out = at < 0 ? join(root, "data") : process.argv[at + 1];
if (out === undefined) throw new Error("--out needs a folder");

const { files, mistakes } = demo();
if (at < 0) rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
if (readdirSync(out).length > 0) throw new Error(`${out} is not empty`);
let bytes = 0;
for (const [path, content] of files) {
  mkdirSync(dirname(join(out, path)), { recursive: true });
  writeFileSync(join(out, path), content);
  bytes += content.length;
}
const list = `${JSON.stringify(mistakes, null, 2)}\n`;
writeFileSync(at < 0 ? join(root, "scripts/demo/mistakes.json") : join(out, "mistakes.json"), list);
console.log(`${files.size} files, ${(bytes / 1e6).toFixed(2)} MB, ${mistakes.length} deliberate mistakes`);
