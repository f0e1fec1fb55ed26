// Finds the programs that some tests need, and installs those that are missing where that is possible.
import { spawnSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";

/** Path of the first of these programs that is in PATH; null when none is. */
export function findProgram(names) {
  for (const name of names) {
    for (const folder of (process.env.PATH ?? "").split(delimiter)) {
      const path = join(folder, process.platform === "win32" ? `${name}.exe` : name);
      try {
        accessSync(path, constants.X_OK);
        return path;
      } catch {}
    }
  }
  return null;
}

/** Runs a program quietly; true when it ended well. */
export function succeeds(program, args) {
  return spawnSync(program, args, { stdio: "ignore", shell: process.platform === "win32" }).status === 0;
}

/** True where packages of the system can be installed: root on Debian or a relative. */
function canAptGet() {
  return process.getuid?.() === 0 && findProgram(["apt-get"]) !== null;
}

let updated = false;
function aptInstall(name) {
  if (!canAptGet()) return false;
  if (!updated) succeeds("apt-get", ["update"]);
  updated = true;
  return succeeds("apt-get", ["install", "-y", "--no-install-recommends", name]);
}

const CHROMIUM_NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge"];

/** A browser that draws the pages: CHROMIUM in the environment, one in PATH, else one that is installed now. */
export async function findChromium() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  const found = findProgram(CHROMIUM_NAMES) ?? (await bundledChromium());
  if (found !== null) return found;
  console.log("no Chromium found; installing one");
  if (succeeds("npx", ["playwright-core", "install", "chromium"])) {
    const path = await bundledChromium();
    if (path !== null) return path;
  }
  return aptInstall("chromium") ? findProgram(CHROMIUM_NAMES) : null;
}

async function bundledChromium() {
  try {
    const { chromium } = await import("playwright-core");
    accessSync(chromium.executablePath(), constants.X_OK);
    return chromium.executablePath();
  } catch {
    return null;
  }
}

/** The programs beside the browser: what they are called, the Debian package, and what is skipped without them. */
export const PROGRAMS = [
  { program: "qpdf", package: "qpdf", tests: "the structure check of the PDF" },
  { program: "pdftotext", package: "poppler-utils", tests: "text, fonts and tags of the PDF" },
  { program: "xmllint", package: "libxml2-utils", tests: "well-formed MathML and SVG, hash lists against their schema" },
  {
    program: "oiiotool",
    package: "openimageio-tools",
    tests: "stills and maps in OpenEXR, written and warped by an outside program",
  },
  { program: "exrheader", package: "openexr", tests: "OpenEXR headers read by an outside program" },
  {
    program: "lensfun data",
    folder: "/usr/share/lensfun",
    package: "liblensfun-data-v1",
    tests: "the lens model on a public database of real lenses",
  },
];

/** Path of a program (or of a folder of data), installed now when it is missing and that is possible; null otherwise. */
export function findOrInstall({ program, folder, package: name }) {
  const find = () => (folder === undefined ? findProgram([program]) : existsSync(folder) ? folder : null);
  return find() ?? (aptInstall(name) ? find() : null);
}
