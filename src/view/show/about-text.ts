/** What the page about the report says of its files, and of what it does not do. */
import type { Named } from "./methods-page.ts";

export const OUTPUTS: readonly Named[] = [
  {
    id: "output-pages",
    term: "index.html, days/, lenses/ and the other pages",
    text: "The report to read. Every page is complete without scripts; scripts add search, the scrubber and the lens look on a picture of your own.",
  },
  {
    id: "output-pdf",
    term: "packs/DATE/…-camera-report.pdf",
    text: "The day's camera report to print and sign. day.json, takes.csv and findings.csv are attached inside it, so that it can travel alone.",
  },
  {
    id: "output-json",
    term: "packs/DATE/day.json",
    text: "Every figure of the day for programs, unrounded.",
  },
  {
    id: "output-tables",
    term: "packs/DATE/takes.csv, findings.csv, datapackage.json",
    text: "A row a take, a row a finding, and what each column means.",
  },
  {
    id: "output-editorial",
    term: "packs/DATE/editorial/",
    text: "For the cutting room: a timeline and an edit list for each camera, markers inside takes, takes by scene.",
  },
  {
    id: "output-vfx",
    term: "packs/DATE/vfx/TAKE/",
    text: "For VFX, a folder for each plate: the lens frame by frame (CSV), the same as OpenTrackIO samples, a camera (USD), and maps that take distortion and shading off and put them back.",
  },
  { id: "output-losses", term: "packs/DATE/LOSSES.md", text: "What each of these formats cannot hold." },
  {
    id: "output-history",
    term: "packs/DATE/ascmhl/",
    text: "The pack's own hash list. A pack that changes gets a new list beside the earlier ones, which are never rewritten.",
  },
  { id: "output-clips", term: "clips.csv", text: "Every clip of the show by clip name, the whole of the page Clips." },
  {
    id: "output-findings",
    term: "findings.all.csv",
    text: "Every finding of the show, a row each, where there is one: the whole of the page Findings.",
  },
  { id: "output-inputs", term: "inputs.csv", text: "Every file that the report was made from, with its size and its SHA-256." },
  { id: "output-search", term: "search-rows.js", text: "What \u201cFind a take\u201d searches; the pages load it by themselves." },
];

export const NOT_DONE: readonly string[] = [
  "It changes nothing in the show folder: the input is only read.",
  "It guesses nothing. A value that could be read in two ways is refused, and the finding names both.",
  "It makes up no figure for what was not written down: such a place says “not recorded” or “not logged”.",
  "It smooths no log and joins no gap.",
  "It measures no lens. Distortion and shading are as good as the log or the calibration table that they come from.",
  "It is no engineering approval of a rig, no safety distance and no legal finding on hours.",
  "It controls no camera or motor, and it looks at no picture but the stills of the notes.",
];

export const NO_NETWORK =
  "The pages and the packs need no network, no server and no account, now or in ten years. The pages ask for nothing from outside: their content policy forbids it. Copy the folder anywhere and open index.html.";
