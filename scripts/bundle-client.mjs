// Bundles the browser scripts to classic scripts: modules do not load from file://.
import { mkdirSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const source = fileURLToPath(new URL("../src/client/", import.meta.url));
const target = fileURLToPath(new URL("../dist/client/", import.meta.url));

mkdirSync(target, { recursive: true });
await build({
  // Entry points lie at the top of src/client; what they share lies in folders below it.
  entryPoints: readdirSync(source)
    .filter((name) => name.endsWith(".ts"))
    .map((name) => source + name),
  outdir: target,
  bundle: true,
  format: "iife",
  target: ["es2020"],
  minify: true,
  legalComments: "none",
  logLevel: "warning",
});
