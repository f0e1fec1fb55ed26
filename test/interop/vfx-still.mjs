// Takes distortion off the still of a take of the demo with the compiled library, on the frame of the still itself.
// Arguments: date, address, output PNG.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { showFiles } from "../../dist/build/show-files.js";
import { readDay } from "../../dist/ingest/read-day.js";
import { readShow } from "../../dist/ingest/read-show.js";
import { buildDay } from "../../dist/model/build-day.js";
import { middleLook } from "../../dist/still/middle-look.js";
import { readPng, writePng } from "../../dist/still/picture.js";
import { takeOff } from "../../dist/still/take-off.js";
import { summariseDay } from "../../dist/summary/day.js";

const [date, address, output] = process.argv.slice(2);
const root = fileURLToPath(new URL("../../data", import.meta.url));
const folder = showFiles(root);
const { input: show } = readShow(folder);
const { input, findings } = readDay(folder, show, date);
const summary = summariseDay(buildDay(show, input, findings), show.kit);
const take = summary.takes.find((t) => t.take.address === address);
const look = middleLook(take);
const frame = { leftMm: -look.widthMm / 2, topMm: -look.heightMm / 2, rightMm: look.widthMm / 2, bottomMm: look.heightMm / 2 };
const still = readPng(readFileSync(`${root}/${take.take.still.file}`));
writeFileSync(output, writePng(takeOff(still, { ...look, idealBox: frame }, { distortion: true, shading: false })));
process.stdout.write(
  JSON.stringify({ still: `${root}/${take.take.still.file}`, widthPx: still.widthPx, heightPx: still.heightPx }),
);
