// The shows that are damaged: the small golden one, one with something of every form, and days of the demo show with a few logs each.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Each gives the files of a show, by name; the bytes are never changed in place. */
export function startingShows() {
  const tiny = filesBelow(join(root, "test/golden/tiny/in"));
  const demo = filesBelow(join(root, "data"));
  const forms = everyForm();
  return [() => tiny, () => forms, () => forms, (random) => someOf(demo, random)];
}

function filesBelow(folder, prefix = "") {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory()
      ? filesBelow(join(folder, entry.name), `${prefix}${entry.name}/`)
      : [[prefix + entry.name, new Uint8Array(readFileSync(join(folder, entry.name)))]],
  );
}

/** One day of the demo show, two of its logs, their first two hundred lines. */
function someOf(files, random) {
  const dates = [...new Set(files.flatMap(([name]) => /^days\/([^/]+)\//.exec(name)?.[1] ?? []))];
  const date = random.pick(dates);
  const logs = files.filter(([name]) => name.startsWith(`days/${date}/logs/`));
  const kept = new Set([random.pick(logs)[0], random.pick(logs)[0]]);
  return files
    .filter(([name]) => !name.startsWith("days/") || (name.startsWith(`days/${date}/`) && !name.includes("/stills/")))
    .filter(([name]) => !name.includes("/logs/") || kept.has(name))
    .map(([name, bytes]) => [name, name.includes("/logs/") ? firstLines(bytes, 200) : bytes]);
}

function firstLines(bytes, count) {
  let at = 0;
  for (let i = 0; i < count && at >= 0; i++) at = bytes.indexOf(10, at + 1);
  return at < 0 ? bytes : bytes.subarray(0, at + 1);
}

function everyForm() {
  const day = "days/2031-05-06";
  const label = (i) => `10:00:0${Math.floor(i / 30)}:${String(i % 30).padStart(2, "0")}`;
  const frames = Array.from({ length: 40 }, (_, i) => i);
  const sample = (i) =>
    JSON.stringify({
      static: { camera: { label: "A", anamorphicSqueeze: { num: 1, denom: 1 } }, lens: { serialNumber: "501" } },
      tracker: { slate: "2" },
      timing: {
        timecode: { hours: 10, minutes: 0, seconds: 4, frames: i, frameRate: { num: 30000, denom: 1001 }, dropFrame: true },
      },
      lens: {
        focusDistance: 2 + i / 10,
        tStop: 2.8,
        pinholeFocalLength: 50,
        distortion: [{ radial: [0.01, 0], tangential: [0.001, 0] }],
        encoders: { focus: 0.5 },
      },
    });
  const texts = {
    "show.yaml":
      "title: Forms\ncode: FORMS\nrate: 30000/1001\ndrop_frame: true\ndistances: both\ncircle_of_confusion_mm: {OPEN: 0.025}\ncheck: {log_coverage: 0.9}\n",
    "kit/cameras.csv": "camera,sensor_mode,active_width_mm,active_height_mm,squeeze\nA,OPEN,24.89,18.66,1\nB,WIDE,24.89,10.5,2\n",
    "kit/lenses.csv":
      "lens,serial,kind,focal_mm,focal_min_mm,focal_max_mm,widest_t,widest_f,close_focus_m,front_to_image_mm\nP50,501,prime,50,,,2,1.9,0.5,150\nZ28-80,,zoom,,28,80,2.8,,0.8,\n",
    "kit/columns.yaml":
      'unit-b:\n  when: {header_has: ["TC", "Dist [ft]"]}\n  decimal: ","\n  columns: {TC: timecode, "Dist [ft]": focus_ft, Iris: t}\n  set: {camera: B}\n',
    "kit/encoders/P50.csv": "encoder,focus_m\n0,0.5\n0.5,1\n1,inf\n",
    "kit/calibration/P50.csv":
      "# model: brown-conrady\n# direction: undistort\n# radius: half-width\n# area_mm: 24.89x18.66\n# shading_radius: half-diagonal\nfocal_mm,focus_m,t,k1,k2,p1,a1\n50,0.5,2,-0.02,0.001,0.0001,0.1\n50,inf,2,-0.01,0.001,0,0.1\n50,0.5,4,-0.02,0.001,0,0.05\n50,inf,4,-0.01,0,0,0.05\n",
    [`${day}/day.yaml`]:
      'day: 3\nof: 20\ndate: 2031-05-06\ncall: "08:00"\nmeals: [{out: "13:00", in: "13:45"}]\nwrap: "00:40+1"\nscheduled:\n  - {scene: "1", pages: "2 3/8", seconds: 90}\ncompleted: ["1"]\nclocks: {B: {offset_frames: -2, from: "09:00:00:00"}}\nnotes: {blank_slate_repeats: true}\n',
    [`${day}/notes.csv`]:
      'slate,take,camera,scene,clip,tc_in,tc_out,lens,focal,stop,focus,nd,shutter,circled,plate,plate_of,still,remarks\n1,1,A,1,A1,10:00:00;00,10:00:01;10,P50,,2.8 1/3,"6\' 2 1/2""",ND8,172.8,y,hero,,s.exr,"two\nlines"\n,2,A,1,A2,10:00:02;00,10:00:03;10,P50,50,T4½,3.2-1.6 m,0.6,1/48,,clean,1,,=1+1\n1,1,B,1,B1,10:00:00;00,10:00:01;10,Z28-80,35-60,4-5.6,inf,2 stops,,x,,,,\n2,1 PU,A,2,,10:00:04;00,10:00:05;00,P50,,,,,,,,,,\n',
    [`${day}/logs/a.csv`]: `# slate: 1\n# take: 1\n# camera: A\n# lens: P50\ntimecode,focus_m,t,focal_mm,k1,odd\n${frames.map((i) => `${label(i).replace(/:(\d\d)$/, ";$1")},${(2 + i / 20).toFixed(3)},2.84,50,,${i}\n`).join("")}`,
    [`${day}/logs/b.csv`]: `TC;Dist [ft];Iris\n${frames.map((i) => `${label(i)};${6 + i},0;4,0\n`).join("")}`,
    [`${day}/logs/c.csv`]: `# clip: A2\n# start_timecode: 10:00:02;00\n# distance_from: front\nframe,focus_mm,f,hyperfocal_m\n${frames.map((i) => `${i},${1500 + 10 * i},2.6,20\n`).join("")}`,
    [`${day}/logs/d.jsonl`]: `${frames.slice(0, 25).map(sample).join("\n")}\n`,
    [`${day}/logs/e.csv`]: `# camera: A\n# slate: 2\n# take: 1 PU\ntime_s,encoder_focus,t\n${frames.map((i) => `${(i / 29.97).toFixed(4)},${i / 40},2.8\n`).join("")}`,
  };
  const files = Object.entries(texts).map(([name, text]) => [name, new TextEncoder().encode(text)]);
  files.push([`${day}/stills/s.exr`, exr()]);
  return files;
}

/** The header of an OpenEXR picture with a few lens attributes. */
function exr() {
  const bytes = [0x76, 0x2f, 0x31, 0x01, 2, 0, 0, 0];
  const put = (name, type, value) => {
    for (const text of [name, type]) bytes.push(...Buffer.from(text), 0);
    bytes.push(...new Uint8Array(Uint32Array.of(value.length).buffer), ...value);
  };
  const float = (value) => [...new Uint8Array(Float32Array.of(value).buffer)];
  put("focus", "float", float(2.5));
  put("tStop", "float", float(2.8));
  put("displayWindow", "box2i", [...new Uint8Array(Int32Array.of(0, 0, 1919, 1079).buffer)]);
  put("timeCode", "timecode", [...new Uint8Array(Uint32Array.of(0x10030045, 0).buffer)]);
  put("lensSerialNumber", "string", [...Buffer.from("501")]);
  return Uint8Array.from([...bytes, 0]);
}
