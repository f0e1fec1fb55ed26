// Takes distortion off the still of a take of the demo with the compiled library, on the frame of the still itself (ours.png), and
// writes the take's first UV maps as the pack has them, in the size of the still. Arguments: date, address, output folder.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { showFiles } from "../../dist/build/show-files.js";
import { DEFAULT_VFX } from "../../dist/export/vfx/options.js";
import { planVfx } from "../../dist/export/vfx/take-files.js";
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
writeFileSync(`${output}/ours.png`, writePng(takeOff(still, { ...look, idealBox: frame }, { distortion: true, shading: false })));
const { files } = planVfx(summary, { ...DEFAULT_VFX, mapWidth: still.widthPx });
for (const name of ["undistort-0001.exr", "redistort-0001.exr"])
  writeFileSync(`${output}/${name}`, await files.find((file) => file.name === `vfx/${address}/${name}`).bytes());
process.stdout.write(
  JSON.stringify({ still: `${root}/${take.take.still.file}`, widthPx: still.widthPx, heightPx: still.heightPx }),
);
