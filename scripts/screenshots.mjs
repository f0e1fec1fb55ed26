// Makes docs/take-sheet.png and docs/day-page.png from the demo in site/ (or the folder named). Run `npm run demo` first.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { findChromium } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const site = resolve(root, process.argv[2] ?? "site");
const WIDTH = 1200;
const TALLEST = 1500;

const { date, address } = showpiece();
const executablePath = await findChromium();
if (executablePath === null) throw new Error("no Chromium; set CHROMIUM to its path");
const browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
await shoot(`days/${date}/takes/${address}.html`, "docs/take-sheet.png");
await shoot(`days/${date}/index.html`, "docs/day-page.png");
await browser.close();

async function shoot(page, file) {
  const tab = await browser.newPage({ viewport: { width: WIDTH, height: 900 }, colorScheme: "light", reducedMotion: "reduce" });
  await tab.goto(pathToFileURL(join(site, page)).href);
  const height = Math.min(TALLEST, await tab.evaluate(() => document.documentElement.scrollHeight));
  await tab.setViewportSize({ width: WIDTH, height });
  await tab.screenshot({ path: join(root, file) });
  await tab.close();
  console.log(`${file}  ${page}`);
}

/** The take with the most to show: pulls, distortion and a full log. */
function showpiece() {
  const packs = join(site, "packs");
  if (!existsSync(packs)) throw new Error("there is no demo in site/; run npm run demo first");
  const takes = readdirSync(packs)
    .sort()
    .flatMap((date) =>
      JSON.parse(readFileSync(join(packs, date, "day.json"), "utf8")).takes.map((take) => ({
        date,
        address: take.address,
        score: score(take),
      })),
    );
  const best = takes.sort((a, b) => b.score - a.score)[0];
  if (best === undefined) throw new Error("the demo has no take");
  return best;
}

function score(take) {
  const full = take.log !== null && take.log.framesLogged > 0 && take.log.framesMissing === 0;
  return (
    Math.min(4, take.pulls?.length ?? 0) +
    (take.distortionPercent === null ? 0 : 3) +
    (take.depthOfField === null ? 0 : 2) +
    (full ? 2 : 0) +
    (take.circled ? 1 : 0)
  );
}
