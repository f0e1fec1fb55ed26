// The show of the benches and of the page budgets: one day, one camera, takes of a minute, seven pulls and a finding each.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** Logged frames of a take. */
export const FRAMES = 1440;
export const DATE = "2026-03-14";
const RATE = 24;
const LENSES = [21, 29, 43, 65];

/** Writes the show into a folder and gives back how many bytes its logs have. */
export function writeShow(show, takes) {
  const files = new Map();
  files.set("show.yaml", "title: Bench\ncode: BENCH\nrate: 24\n");
  files.set("kit/cameras.csv", "camera,sensor_mode,active_width_mm,active_height_mm\nA,FULL,28.16,15.84\nB,FULL,28.16,15.84\n");
  files.set(
    "kit/lenses.csv",
    `lens,kind,focal_mm,widest_t,transmittance,close_focus_m\n${LENSES.map((f) => `L${f},prime,${f},2.3,0.85,0.4`).join("\n")}\n`,
  );
  for (const focal of LENSES) files.set(`kit/calibration/L${focal}.csv`, calibration(focal));
  files.set(`days/${DATE}/day.yaml`, `day: 1\ndate: ${DATE}\ncall: "07:00"\n`);
  const notes = ["slate,take,camera,scene,roll,clip,tc_in,tc_out,lens,stop,circled,status,remarks"];
  let bytes = 0;
  for (let i = 0; i < takes; i++) {
    const take = takeAt(i);
    const end = timecode(take.start + FRAMES);
    notes.push(
      `${take.slate},${take.number},A,${take.scene},A001,${take.clip},${timecode(take.start)},${end},L${take.focal},2.8,${i % 3 === 0 ? "y" : ""},good,Take ${i + 1} of the bench`,
    );
    const log = lensLog(take);
    bytes += log.length;
    files.set(`days/${DATE}/logs/${take.clip.toLowerCase()}.csv`, log);
  }
  files.set(`days/${DATE}/notes.csv`, `${notes.join("\n")}\n`);
  for (const [name, text] of files) {
    mkdirSync(join(show, name, ".."), { recursive: true });
    writeFileSync(join(show, name), text);
  }
  return bytes;
}

function takeAt(i) {
  const scene = 10 + Math.floor(i / 15);
  return {
    slate: `${scene}${"ABCDE"[Math.floor(i / 3) % 5]}`,
    scene,
    number: (i % 3) + 1,
    focal: LENSES[Math.floor(i / 3) % LENSES.length],
    clip: `A001C${String(i + 1).padStart(3, "0")}`,
    start: (8 * 3600 + i * 180) * RATE,
  };
}

function lensLog(take) {
  const rows = [`# camera: A\n# clip: ${take.clip}\n# lens: L${take.focal}\ntimecode,focus_m,t,focal_mm,tilt_deg,height_m`];
  for (let frame = 0; frame < FRAMES; frame++) {
    // held, pulled nearer, held, pulled back: four seconds each, over and over
    const phase = (frame / (RATE * 4)) % 4;
    const way = phase < 1 ? 0 : phase < 2 ? phase - 1 : phase < 3 ? 1 : 4 - phase;
    const dioptres = 0.25 + 0.35 * way * way * (3 - 2 * way);
    rows.push(
      `${timecode(take.start + frame)},${(1 / dioptres).toFixed(3)},2.8,${take.focal},${(-2 + frame / FRAMES).toFixed(2)},1.45`,
    );
  }
  return `${rows.join("\n")}\n`;
}

function calibration(focal) {
  const rows = [0.5, 1.5, "inf"].map(
    (distance, i) => `${focal},${distance},,${(-0.02 + i * 0.002).toFixed(4)},0.0012,${(0.2 - i * 0.02).toFixed(3)},${80 - i}`,
  );
  const keys = [
    "model: brown-conrady",
    "direction: undistort",
    "radius: half-diagonal",
    "area_mm: 28.16x15.84",
    "shading_radius: half-diagonal",
  ];
  return `${keys.map((k) => `# ${k}`).join("\n")}\nfocal_mm,focus_m,t,k1,k2,a1,entrance_pupil_mm\n${rows.join("\n")}\n`;
}

function timecode(frame) {
  const two = (n) => String(n).padStart(2, "0");
  const seconds = Math.floor(frame / RATE);
  return `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}:${two(frame % RATE)}`;
}
