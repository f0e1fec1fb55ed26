/** Cameras and lenses of the demo. Makers, bodies, lenses and figures are invented. */
import { calibrationCsv, TABLES } from "./lens-model.mjs";

/**
 * @typedef {object} Lens
 * @property {string} lens
 * @property {number} [focal] of a prime
 * @property {readonly [number, number]} [zoom]
 * @property {number} t widest
 * @property {number} [f] widest
 * @property {number} [tau]
 * @property {number} close metres
 * @property {number} front millimetres
 * @property {number} mass grams
 * @property {number} length millimetres
 * @property {number} [pupil]
 * @property {number} [toImage]
 * @property {string} serial
 * @property {string} [remarks]
 */

/** @type {readonly Lens[]} */
export const LENSES = [
  {
    lens: "K19",
    focal: 19,
    t: 2.3,
    f: 2.1,
    close: 0.28,
    front: 110,
    mass: 1540,
    length: 131,
    pupil: 101,
    toImage: 183,
    serial: "1904",
    remarks: "wider front than the rest",
  },
  { lens: "K26", focal: 26, t: 2.1, tau: 0.84, close: 0.3, front: 94, mass: 1210, length: 116, serial: "2607" },
  {
    lens: "K34",
    focal: 34,
    t: 2.1,
    f: 1.9,
    close: 0.34,
    front: 94,
    mass: 1150,
    length: 112,
    pupil: 88,
    toImage: 164,
    serial: "3403",
  },
  { lens: "K44", focal: 44, t: 2.1, f: 1.92, close: 0.4, front: 94, mass: 1120, length: 112, toImage: 164, serial: "4411" },
  {
    lens: "K58",
    focal: 58,
    t: 2.1,
    close: 0.52,
    front: 94,
    mass: 1140,
    length: 112,
    serial: "5802",
    remarks: "focus scale re-marked in August",
  },
  { lens: "K73", focal: 73, t: 2.1, tau: 0.8, close: 0.65, front: 94, mass: 1260, length: 120, pupil: 96, serial: "7306" },
  {
    lens: "K96",
    focal: 96,
    t: 2.1,
    f: 1.9,
    close: 0.85,
    front: 94,
    mass: 1680,
    length: 141,
    pupil: 118,
    toImage: 193,
    serial: "9601",
  },
  {
    lens: "K128",
    focal: 128,
    t: 2.9,
    close: 1.25,
    front: 94,
    mass: 2140,
    length: 176,
    serial: "1285",
    remarks: "heavy, needs the long rods",
  },
  {
    lens: "KZ31-87",
    zoom: [31, 87],
    t: 2.9,
    tau: 0.76,
    close: 0.75,
    front: 110,
    mass: 2720,
    length: 232,
    toImage: 284,
    serial: "8702",
    remarks: "back focus checked every morning",
  },
];

/** Sensor modes: the first of a camera is its default. Both have the same pixel pitch, 6.25 micrometres. */
export const MODES = [
  { mode: "FULL46", width: 28.8, height: 16.2, x: 4608, y: 2592, coc: 0.022 },
  { mode: "CROP38", width: 24, height: 13.5, x: 3840, y: 2160, coc: 0.0185 },
];

/** @param {string} id */
export function lensOf(id) {
  const found = LENSES.find((lens) => lens.lens === id);
  if (!found) throw new Error(`the demo's kit has no lens ${id}`);
  return found;
}

function camerasCsv() {
  const rows = ["camera,body,serial,sensor_mode,active_width_mm,active_height_mm,resolution_x,resolution_y,squeeze"];
  for (const [camera, serial] of [
    ["A", "S46-117"],
    ["B", "S46-122"],
  ])
    for (const m of MODES)
      rows.push(`${camera},Sandling 46,${serial},${m.mode},${m.width.toFixed(2)},${m.height.toFixed(2)},${m.x},${m.y},1`);
  return `${rows.join("\n")}\n`;
}

function lensesCsv() {
  const names =
    "lens,maker,series,serial,kind,focal_mm,focal_min_mm,focal_max_mm,widest_t,widest_f,transmittance,close_focus_m,front_diameter_mm,mass_g,length_mm,mount,squeeze,entrance_pupil_mm,front_to_image_mm,image_circle_mm,remarks";
  const rows = LENSES.map((l) =>
    [
      l.lens,
      "Dunmarrow",
      "Kelp",
      l.serial,
      l.zoom ? "zoom" : "prime",
      l.focal ?? "",
      l.zoom?.[0] ?? "",
      l.zoom?.[1] ?? "",
      l.t,
      l.f ?? "",
      l.tau ?? "",
      l.close.toFixed(2),
      l.front,
      l.mass,
      l.length,
      "SK",
      1,
      l.pupil ?? "",
      l.toImage ?? "",
      l.zoom ? 33.6 : 34.8,
      l.remarks?.includes(",") ? `"${l.remarks}"` : (l.remarks ?? ""),
    ].join(","),
  );
  return `${[names, ...rows].join("\n")}\n`;
}

/** What the recorder on camera B writes, in our column names. */
const COLUMNS_YAML = `# The dial recorder on camera B writes its own headers, centimetres and decimal commas.
dial-b:
  when: {header_has: ["TC", "Dist [cm]", "Iris"]}
  decimal: ","
  columns: {TC: timecode, "Dist [cm]": focus_cm, Iris: t, "FL [mm]": focal_mm}
  set: {camera: B, distance_from: image-plane}
`;

/** @returns {Map<string, string>} the files of kit/ by path */
export function kitFiles() {
  const files = new Map([
    ["kit/cameras.csv", camerasCsv()],
    ["kit/lenses.csv", lensesCsv()],
    ["kit/columns.yaml", COLUMNS_YAML],
  ]);
  for (const lens of Object.keys(TABLES)) files.set(`kit/calibration/${lens}.csv`, calibrationCsv(lens));
  return files;
}
