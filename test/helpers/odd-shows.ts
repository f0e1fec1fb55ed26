/** Show folders at the edges of what happens: a day without a take, a take of one frame, very many takes, very long and right-to-left texts. */
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Files } from "./memory-show.ts";

/** Sixty characters each, the longest that people write on a slate or on a case. */
export const LONG_SLATE = "101-B pick-up second unit harbour steps insert of the letter";
export const LONG_LENS = "Kelp 44 mm set two with the scratched front and the 95 clamp";
/** One word without a place to break it. */
export const LONG_WORD = "unbreakable".repeat(9);
export const RIGHT_TO_LEFT = "צילום שני ליד המזח, דלת נטרקה (T2.8) عند الميناء";
/** Five thousand characters. */
export const LONG_REMARK =
  `${"The wind took the door and the boat drifted, so that the pull came late. ".repeat(68)}${LONG_WORD}`.slice(0, 5000);

const KIT: Files = {
  "kit/cameras.csv":
    "camera,body,sensor_mode,active_width_mm,active_height_mm,resolution_x,resolution_y\n" +
    "A,Body one,OPEN,24.89,18.66,4096,3072\nB,Body two,OPEN,24.89,18.66,4096,3072\n",
  "kit/lenses.csv":
    "lens,maker,serial,kind,focal_mm,widest_t,close_focus_m\n" +
    `P50,Kelp,501,prime,50,2,0.5\n"${LONG_LENS}",Kelp,${"7".repeat(40)},prime,44,2,0.4\n`,
};
const HEADER = "slate,take,camera,scene,roll,clip,tc_in,tc_out,lens,stop,focus,circled,status,plate,remarks";

/** A show whose only day has no take yet. */
export const NO_TAKES: Files = {
  ...KIT,
  "show.yaml": "title: Nothing yet\ncode: NONE\nrate: 24\n",
  "days/2030-02-03/day.yaml": "day: 1\ndate: 2030-02-03\n",
  "days/2030-02-03/notes.csv": `${HEADER}\n`,
};

/** Day 1: one take of one frame. Day 2: 400 takes. Day 3: long and right-to-left texts. On Letter paper. */
export const ODD_DAYS: Files = {
  ...KIT,
  "show.yaml": `title: "${LONG_SLATE}, ${RIGHT_TO_LEFT}"\ncode: ODD\nrate: 24\npaper: Letter\ndistances: both\n`,
  "days/2030-02-03/day.yaml": "day: 1\ndate: 2030-02-03\n",
  "days/2030-02-03/notes.csv": `${HEADER}\n1,1,A,1,A001,A001C001,10:00:00:00,10:00:00:01,P50,2.8,3 m,y,good,,\n`,
  "days/2030-02-03/logs/a.csv": "# clip: A001C001\n# lens: P50\ntimecode,focus_m,t,focal_mm\n10:00:00:00,3,2.8,50\n",
  "days/2030-02-04/day.yaml": "day: 2\ndate: 2030-02-04\ncall: '07:00'\nfirst_shot: '07:40'\nwrap: '19:00'\n",
  "days/2030-02-04/notes.csv": `${HEADER}\n${Array.from({ length: 400 }, (_, i) => manyTakesRow(i)).join("")}`,
  "days/2030-02-05/day.yaml":
    `day: 3\ndate: 2030-02-05\nplace: "${LONG_WORD}"\nremarks: "${LONG_REMARK}"\n` +
    `scheduled:\n  - {scene: "101", pages: "2 3/8"}\n  - {scene: "${LONG_SLATE}", pages: "1/8"}\nnot_shot: ["101"]\n`,
  "days/2030-02-05/notes.csv":
    `${HEADER}\n` +
    row(LONG_SLATE, "1", "A002C001", "10:00:00:00", "10:00:20:00", LONG_LENS, "y,good,hero", LONG_REMARK) +
    row(
      LONG_SLATE,
      "2 pick-up after the second reset",
      "A002C002",
      "10:10:00:00",
      "10:10:20:00",
      LONG_LENS,
      ",ng,clean",
      RIGHT_TO_LEFT,
    ) +
    row("צילום 7", "1", "A002C003", "10:20:00:00", "10:20:20:00", "P50", "y,good,", `${RIGHT_TO_LEFT} ${LONG_WORD}`),
  "days/2030-02-05/logs/a.csv":
    `# clip: A002C001\n# lens: ${LONG_LENS}\ntimecode,focus_m,t,focal_mm\n` +
    Array.from({ length: 48 }, (_, i) => `10:00:0${Math.floor(i / 24)}:${two(i % 24)},${(3 + i / 40).toFixed(3)},2.8,44\n`).join(
      "",
    ),
};

/** Writes a show into a folder that need not exist. */
export function writeShow(files: Files, folder: string): void {
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
}

function manyTakesRow(i: number): string {
  const [slate, take] = [String(1 + Math.floor(i / 5)), String(1 + (i % 5))];
  const minute = 7 * 60 + i;
  const at = (second: number): string => `${two(Math.floor(minute / 60))}:${two(minute % 60)}:${two(second)}:00`;
  return row(slate, take, `A003C${String(i + 1).padStart(3, "0")}`, at(4), at(40), "P50", i % 5 === 4 ? "y,good," : ",good,", "");
}

function row(
  slate: string,
  take: string,
  clip: string,
  tcIn: string,
  tcOut: string,
  lens: string,
  standing: string,
  remarks: string,
): string {
  const scene = /^\d+/.exec(slate)?.[0] ?? "7";
  return `"${slate}",${take},A,${scene},${clip.slice(0, 4)},${clip},${tcIn},${tcOut},"${lens}",2.8,3 m,${standing},"${remarks}"\n`;
}

function two(n: number): string {
  return String(n).padStart(2, "0");
}
