// The report from the disk in Firefox: pages, search, scrubber, lens look, print. Use: node --experimental-websocket walk.mjs REPORT FIREFOX
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { KEY, launch, openTab } from "./bidi.mjs";

const [, , report, program] = process.argv;
const url = (path) => pathToFileURL(join(report, path)).href;
const DAY = "days/2026-10-06";
const TAKE = `${DAY}/takes/a-14b-2.html`;

const browser = await launch(program);
const said = [];
browser.onEvent((method, params) => {
  if (method === "log.entryAdded") said.push(`${params.source?.realm ?? ""} ${params.level}: ${params.text}`);
  const asked = params.request?.url ?? "";
  if (method === "network.beforeRequestSent" && !/^(file|data|blob|about|moz-extension|resource|chrome):/.test(asked))
    said.push(`asked for ${asked}`);
});
const tab = await openTab(browser);
const totals = { passed: 0, failed: 0 };

/** Runs one check; a page that says anything on the console or asks for anything beyond the folder has failed it. */
async function check(name, run) {
  said.length = 0;
  try {
    await run();
    assert.deepEqual(said, []);
    totals.passed++;
    console.log(`ok    ${name}`);
  } catch (error) {
    totals.failed++;
    console.log(`FAIL  ${name}: ${error.message}`);
  }
}

await check("a page of every kind opens, laid out, without a word on the console", async () => {
  const lens = readdirSync(join(report, "lenses"))[0];
  const pages = readdirSync(report).filter((name) => name.endsWith(".html"));
  const dayPages = readdirSync(join(report, DAY)).filter((name) => name.endsWith(".html"));
  for (const path of [...pages, ...dayPages.map((name) => `${DAY}/${name}`), `lenses/${lens}`, TAKE]) {
    await tab.goto(url(path));
    assert.equal(await tab.evaluate("document.querySelectorAll('h1').length"), 1, path);
    assert.equal(await tab.evaluate("getComputedStyle(document.body).marginTop"), "0px", `${path} has no styles`);
    const wide = await tab.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assert.equal(wide, 0, `${path} scrolls sideways`);
  }
});

await check("search answers from the keyboard and leads to the take", async () => {
  await tab.goto(url("index.html"));
  await tab.chord(KEY.control, "k");
  await tab.until("document.querySelector('dialog.find').open");
  await tab.type("33b 3");
  await tab.until("document.querySelector('#find-list [role=option]')?.getAttribute('href').endsWith('a-33b-3.html')");
  await tab.type(KEY.enter);
  await tab.until("location.href.endsWith('a-33b-3.html') && document.readyState === 'complete'");
});

await check("the scrubber moves, and the address follows", async () => {
  await tab.goto(url(TAKE));
  await tab.until("!document.querySelector('.moves').hidden");
  const before = await tab.evaluate("document.querySelector('.at-tc').textContent");
  await tab.evaluate("document.querySelector('#scrub').focus()");
  await tab.type(KEY.right);
  const after = await tab.evaluate("document.querySelector('.at-tc').textContent");
  assert.notEqual(after, before);
  await tab.until(`location.hash === '#tc=${after}'`);
});

await check("a typed timecode replaces the one in the field", async () => {
  await tab.goto(url(TAKE));
  await tab.until("!document.querySelector('.moves').hidden");
  await tab.evaluate("document.querySelector('#go-tc').focus()");
  await tab.type("10:16:20:00");
  await tab.type(KEY.enter);
  await tab.until("document.querySelector('.at-tc').textContent === '10:16:20:00'");
});

await check("the lens look is painted, and its canvas may be read", async () => {
  await tab.goto(url(TAKE));
  await tab.until("document.querySelector('#look-words')?.textContent.startsWith('As recorded')");
  // it is painted once unseen, and again whenever it is in sight
  await tab.evaluate("document.querySelector('#look-canvas').scrollIntoView()");
  const painted =
    "(() => { const c = document.querySelector('#look-canvas'); return [...c.getContext('2d').getImageData(c.width / 4 | 0, c.height / 4 | 0, 64, 64).data].reduce((a, b) => a + b, 0); })()";
  const recorded = await tab.evaluate(painted);
  await tab.evaluate("document.querySelector('#distortion-off').click()");
  await tab.evaluate("document.querySelector('#shading-off').click()");
  await tab.until(`${painted} !== ${recorded}`);
  assert.equal(await tab.evaluate("document.querySelector('#look-canvas').toDataURL().startsWith('data:image/png')"), true);
});

await check("the production page prints on one sheet", async () => {
  await tab.goto(url(`${DAY}/production.html`));
  const pdf = await tab.print();
  assert.equal(pdf.subarray(0, 5).toString(), "%PDF-");
  const { error, stdout } = spawnSync("pdfinfo", ["-"], { input: pdf, encoding: "utf8" });
  // Firefox packs the list of pages, so that counting takes a program
  if (error !== undefined) console.log("      pdfinfo is missing (package poppler-utils): the sheets are not counted");
  else assert.equal(/^Pages:\s*(\d+)/m.exec(stdout)?.[1], "1");
});

await check("every script and style that the pages name is there", async () => {
  const html = readFileSync(join(report, TAKE), "utf8");
  for (const [, href] of html.matchAll(/<(?:script src|link rel="stylesheet" href)="([^"]+)"/g))
    assert.ok(existsSync(join(report, DAY, "takes", href)), href);
});

await browser.close();
console.log(`${totals.passed} passed, ${totals.failed} failed`);
process.exitCode = totals.failed === 0 ? 0 : 1;
