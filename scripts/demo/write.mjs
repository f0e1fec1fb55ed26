/** Puts the demo together: every file of the show folder by path, and the list of its deliberate mistakes. */
import { DAYS, SHOW_YAML } from "./days.mjs";
import { kitFiles, lensOf } from "./kit.mjs";
import { dayLog, insideRows, takeLog } from "./logs.mjs";
import { focusNote, middleState, play } from "./shoot.mjs";
import { still } from "./stills.mjs";
import { frameOf, labelOf } from "./timecode.mjs";

const NOTE_COLUMNS = [
  "slate",
  "take",
  "camera",
  "scene",
  "roll",
  "clip",
  "tc_in",
  "tc_out",
  "rate",
  "capture_fps",
  "lens",
  "focal",
  "stop",
  "focus",
  "filters",
  "nd",
  "shutter",
  "ei",
  "wb",
  "sensor_mode",
  "height_m",
  "tilt_deg",
  "roll_deg",
  "subject_m",
  "circled",
  "status",
  "sound",
  "plate",
  "plate_of",
  "still",
  "remarks",
];

/** @typedef {{ day: string | null, file: string, line: number, field: string, what: string }} Mistake */

const quoted = (text) => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

function noteRow({ setup, take, camera, shot, played, clip, roll }) {
  const cells = {
    slate: setup.slate,
    take: take.take,
    camera,
    scene: setup.scene,
    roll,
    clip,
    tc_in: labelOf(played.first),
    tc_out: labelOf(played.first + played.frames),
    capture_fps: shot.fps ?? "",
    lens: shot.lens,
    focal: shot.focal ?? "",
    stop: shot.stop,
    focus: focusNote(played),
    filters: shot.filters ?? "",
    nd: shot.nd ?? "",
    shutter: shot.shutter,
    ei: shot.ei,
    wb: shot.wb,
    sensor_mode: shot.mode ?? "FULL46",
    height_m: shot.height?.toFixed(2) ?? "",
    tilt_deg: shot.tilt?.toFixed(1) ?? "",
    roll_deg: shot.roll?.toFixed(1) ?? "",
    subject_m: shot.subject?.toFixed(2) ?? "",
    circled: shot.circled ? "y" : "",
    status: shot.status ?? "good",
    sound: shot.sound ?? "sync",
    plate: setup.plate ?? "",
    plate_of: setup.plateOf ?? "",
    still: shot.still ?? "",
    remarks: shot.remarks ?? "",
    ...shot.noted,
  };
  return NOTE_COLUMNS.map((name) => quoted(String(cells[name] ?? ""))).join(",");
}

/**
 * @param {(typeof DAYS)[number]} day
 * @param {Map<string, string | Uint8Array>} files
 * @param {Mistake[]} mistakes
 */
function writeDay(day, files, mistakes) {
  const folder = `days/${day.date}`;
  const notes = [NOTE_COLUMNS.join(",")];
  const clips = { A: 0, B: 0 };
  const onB = [];
  for (const setup of day.setups) {
    for (const take of setup.takes) {
      for (const camera of /** @type {const} */ (["A", "B"])) {
        const base = setup[camera];
        if (base === undefined || take[camera] === undefined) continue;
        const noted = { ...base.noted, ...take[camera].noted };
        const shot = { ...base, ...take[camera], noted };
        const key = `${day.date} ${setup.slate} ${take.take} ${take.at} ${camera}`;
        const played = play(key, shot, take.at, shot.s ?? take.s, camera);
        clips[camera] += 1;
        const roll = day.rolls[camera];
        const clip = `${roll}C${String(clips[camera]).padStart(3, "0")}`;
        notes.push(noteRow({ setup, take, camera, shot, played, clip, roll }));
        let spoilt = null;
        if (camera === "B") onB.push({ shot, played, focal: lensOf(shot.lens).focal });
        else if (shot.log !== "none") {
          const log = takeLog({ key, date: day.date, slate: setup.slate, take: take.take, clip, shot, played });
          files.set(`${folder}/logs/${log.name}`, log.text);
          spoilt = log.spoiltLine === null ? null : { file: `${folder}/logs/${log.name}`, line: log.spoiltLine };
        }
        if (shot.mistake) {
          const place = spoilt ?? { file: `${folder}/notes.csv`, line: notes.length };
          mistakes.push({ day: day.date, ...place, field: shot.mistake[0], what: shot.mistake[1] });
        }
        if (shot.picture)
          files.set(`${folder}/stills/${shot.still}`, still(shot, middleState(played, shot, insideRows(played, shot))));
      }
    }
  }
  // the day file's clock of camera B, if it has one, is what makes good the two frames
  const restart = /B: \{offset_frames: (\d+), from: "([^"]+)"\}/.exec(day.file);
  files.set(
    `${folder}/logs/dial-b.csv`,
    dayLog(onB, restart ? Number(restart[1]) : 0, restart ? frameOf(restart[2]) : Number.POSITIVE_INFINITY),
  );
  files.set(`${folder}/day.yaml`, day.file);
  files.set(`${folder}/notes.csv`, `${notes.join("\n")}\n`);
}

/** @returns {{ files: Map<string, string | Uint8Array>, mistakes: readonly Mistake[] }} */
export function demo() {
  /** @type {Map<string, string | Uint8Array>} */
  const files = new Map([["show.yaml", SHOW_YAML], ...kitFiles()]);
  const undirected = "kit/calibration/K58.csv";
  /** @type {Mistake[]} */
  const mistakes = [
    {
      day: null,
      file: undirected,
      // the table's header row: the missing key belongs above it
      line:
        String(files.get(undirected))
          .split("\n")
          .findIndex((line) => !line.startsWith("#")) + 1,
      field: "direction",
      what: "a calibration table that does not say its direction",
    },
  ];
  for (const day of DAYS) writeDay(day, files, mistakes);
  return { files, mistakes };
}
