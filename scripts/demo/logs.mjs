/** The two shapes of log: a file a take for camera A in our own columns, a file a day for camera B as its recorder writes it. */
import { random } from "./rng.mjs";
import { labelOf } from "./timecode.mjs";

/** Beyond this a distance scale only says infinity. */
const FAR_DIOPTRES = 1 / 400;

/** Rows of a take's series that were logged: all but its gaps. Seconds count from the take's first frame. */
function logged(played, shot) {
  const gaps = (shot.gaps ?? []).map(([second, frames]) => [Math.round(second * 24), Math.round(second * 24) + frames]);
  return [...played.focus.keys()].filter((i) => !gaps.some(([from, to]) => i - played.before >= from && i - played.before < to));
}

/** Indices of the logged frames that lie inside the take. */
export function insideRows(played, shot) {
  return logged(played, shot).filter((i) => i >= played.before && i < played.before + played.frames);
}

const distance = (dioptres, unit, digits) => (dioptres < FAR_DIOPTRES ? "inf" : (unit / dioptres).toFixed(digits));

/**
 * Log of one take of camera A.
 * @param {object} take
 * @param {string} take.key
 * @param {string} take.date
 * @param {string} take.slate
 * @param {string} take.take
 * @param {string} take.clip
 * @param {object} take.shot
 * @param {import("./shoot.mjs").Played} take.played
 * @returns {{ name: string, text: string, spoiltLine: number | null }} the line that a deliberate mistake stands on
 */
export function takeLog({ key, date, slate, take, clip, shot, played }) {
  const byClip = shot.log === "clip";
  const byFrame = shot.log === "frames";
  const head = [
    "# camera: A",
    ...(byClip ? [`# clip: ${clip}`] : [`# slate: ${slate}`, `# take: ${take}`]),
    `# lens: ${shot.lens}`,
    `# date: ${date}`,
    "# rate: 24",
  ];
  if (byFrame) head.push(`# start_timecode: ${labelOf(played.first)}`);
  const columns = [byFrame ? "frame" : "timecode", "focus_m", "t"];
  if (shot.fStop) columns.push("f");
  if (played.focal) columns.push("focal_mm");
  if (shot.head) columns.push("tilt_deg", "roll_deg", "height_m");
  if (shot.extra) columns.push("motor_c");
  head.push(columns.join(","));

  const stream = random(`${key} sensors`);
  const rows = logged(played, shot);
  const cells = rows.map((i) => {
    const row = [
      byFrame ? i - played.before : labelOf(played.first - played.before + i),
      distance(played.focus[i], 1, 3),
      played.t[i].toFixed(2),
    ];
    if (shot.fStop) row.push((played.t[i] * Math.sqrt(played.transmittance)).toFixed(2));
    if (played.focal) row.push(played.focal[i].toFixed(2));
    if (shot.head) row.push((shot.tilt + stream.whole(-1, 1) * 0.01).toFixed(2), shot.roll.toFixed(2), shot.height.toFixed(3));
    if (shot.extra) row.push((31.5 + Math.floor(i / 160) * 0.1).toFixed(1));
    return row;
  });
  const spoilt = spoil(cells, shot.spoil);
  const name = byClip ? clip.toLowerCase() : `a-${slate}-${take}`.toLowerCase().replace(/ /g, "");
  const line = shot.tShift === undefined ? spoilt : 0;
  return {
    name: `${name}.csv`,
    text: `${[...head, ...cells.map((row) => row.join(","))].join("\n")}\n`,
    spoiltLine: line === null ? null : head.length + 1 + line,
  };
}

/** Spoils one row on purpose; returns its index. */
function spoil(cells, how) {
  if (how === undefined) return null;
  if (how.number) {
    const at = cells.findIndex((row, i) => i >= how.row && row[1].includes("0"));
    cells[at][1] = cells[at][1].replace("0", "O");
    return at;
  }
  const at = cells.findIndex((row, i) => i >= how.row && row[1] !== cells[i - 1][1]);
  cells[at][0] = cells[at - 1][0];
  return at;
}

const comma = (text) => text.replace(".", ",");

/**
 * The day's log of camera B: it runs from a few seconds before each take to a few seconds after it.
 * @param {readonly { shot: object, played: import("./shoot.mjs").Played, focal: number }[]} takes in order of time
 * @param {number} clock frames to add to a row's timecode to get the picture's, after the restart
 * @param {number} restart frame of the day from which `clock` holds
 */
export function dayLog(takes, clock, restart) {
  const lines = ["TC;Dist [cm];Iris;FL [mm];Rail [V]"];
  takes.forEach(({ shot, played, focal }, n) => {
    const rail = comma((14.9 - n * 0.06).toFixed(1));
    for (const i of logged(played, shot)) {
      const frame = played.first - played.before + i;
      const label = labelOf(frame >= restart ? frame - clock : frame);
      lines.push(`${label};${comma(distance(played.focus[i], 100, 1))};${comma(played.t[i].toFixed(2))};${focal};${rail}`);
    }
  });
  return `${lines.join("\r\n")}\r\n`;
}
