/** The program about itself: its name, its version and a hash over the files it consists of. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { compareText } from "../core/finding.ts";
import { sha256 } from "../core/hash.ts";
import type { Tool } from "./pipeline.ts";

/** Folder of the package: this file lies two folders below it, compiled or not. */
const PACKAGE = fileURLToPath(new URL("../../", import.meta.url));

/** Name as people read it, and the package's version. */
export function thisTool(): Tool {
  const text = readFileSync(join(PACKAGE, "package.json"), "utf8");
  const { version } = JSON.parse(text) as { version: string };
  return { name: "Lens Daybook", version };
}

const SCHEMAS = "docs/schema";

/** The JSON Schemas of the package, in order of their names. */
export function schemaFiles(): readonly { readonly name: string; readonly bytes: Uint8Array }[] {
  return filesBelow(SCHEMAS).map((file) => ({
    name: file.slice(SCHEMAS.length + 1),
    bytes: readFileSync(join(PACKAGE, file)),
  }));
}

/**
 * One hash over templates, client assets, schemas and compiled code: any change of the program makes every day anew, so that a
 * report never holds pages of two programs. About ten milliseconds.
 */
export function programHash(): string {
  const files = ["dist", "templates", SCHEMAS]
    .flatMap((folder) => filesBelow(folder))
    .filter((file) => !/\.(d\.ts|map)$/.test(file));
  return sha256(files.map((file) => `${file} ${sha256(readFileSync(join(PACKAGE, file)))}`).join("\n"));
}

function filesBelow(folder: string): string[] {
  try {
    return readdirSync(join(PACKAGE, folder), { withFileTypes: true })
      .flatMap((entry) => (entry.isDirectory() ? filesBelow(`${folder}/${entry.name}`) : [`${folder}/${entry.name}`]))
      .sort(compareText);
  } catch {
    return [];
  }
}
