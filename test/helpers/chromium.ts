/** The Chromium-family browser of this machine, driven from file://. */
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { type Browser, chromium } from "playwright-core";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge"];

/** Path of the browser: the variable CHROMIUM, else one on the PATH, else the one that playwright-core installed; `null` without any. */
export function chromiumPath(): string | null {
  const named = process.env.CHROMIUM;
  if (named !== undefined && existsSync(named)) return named;
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    for (const name of NAMES) if (existsSync(join(folder, name))) return join(folder, name);
  }
  const own = chromium.executablePath();
  return existsSync(own) ? own : null;
}

let shared: Promise<Browser> | null = null;

/** The one browser of this worker. A test file closes it as if it were its own: its pages go, the program stays for the next file. */
export function launchChromium(): Promise<Browser> {
  shared ??= started();
  return shared;
}

async function started(): Promise<Browser> {
  const executablePath = chromiumPath();
  if (executablePath === null) throw new Error("no Chromium-family browser was found; set CHROMIUM to its path");
  const browser = await chromium.launch({
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
  });
  browser.close = async () => {
    await Promise.all(browser.contexts().map((context) => context.close()));
  };
  return browser;
}
