/** The show that `daybook init` writes: one day, two takes of one camera, one lens log. Names are invented. */
export interface ExampleFile {
  readonly name: string;
  readonly text: string;
}

/** Files of the example in the order in which a reader should open them. */
export function exampleShow(): readonly ExampleFile[] {
  return [
    { name: "show.yaml", text: SHOW },
    { name: "kit/cameras.csv", text: CAMERAS },
    { name: "kit/lenses.csv", text: LENSES },
    { name: "days/2026-03-14/day.yaml", text: DAY },
    { name: "days/2026-03-14/notes.csv", text: NOTES },
    { name: "days/2026-03-14/logs/a001c001.csv", text: lensLog() },
  ];
}

const SHOW = `# One production, one folder. Only title, code and rate are required.
title: The Ferry Keeper
code: FERRY            # short; used in file names
production: Nettle Yard
unit: main
rate: 24               # 24, 25, 24000/1001, 30000/1001 ...
drop_frame: false
distances: metric      # metric, imperial or both
paper: A4              # A4 or Letter
# time_zone: Europe/Lisbon
# timecode_out: exclusive   # how tc_out in the notes is meant
# check:                    # limits for what is reported
#   stop_difference: 0.15
#   log_coverage: 0.98
`;

const CAMERAS = `camera,body,serial,sensor_mode,active_width_mm,active_height_mm,resolution_x,resolution_y
A,Body one,101,OPEN,27.84,18.56,4440,2960
A,Body one,101,WIDE,27.84,15.66,4440,2498
`;

const LENSES = `lens,maker,series,serial,kind,focal_mm,focal_min_mm,focal_max_mm,widest_t,transmittance,close_focus_m,front_diameter_mm,mass_g
P25,,Nettle,2501,prime,25,,,2,0.85,0.25,95,1100
P50,,Nettle,5001,prime,50,,,2,0.85,0.6,95,1150
Z30-90,,Nettle,3901,zoom,,30,90,2.8,0.8,0.7,114,2400
`;

const DAY = `day: 1
of: 20
date: 2026-03-14       # the same as the folder's name
place: Landing stage
call: "08:00"
first_shot: "09:05"
meals:
  - {out: "13:00", in: "13:45"}
wrap: "18:30"
scheduled:
  - {scene: "12", pages: "1 3/8", seconds: 70}
completed: ["12"]
`;

const NOTES = `slate,take,camera,scene,roll,clip,tc_in,tc_out,lens,focal,stop,focus,filters,nd,shutter,ei,wb,circled,status,remarks
12A,1,A,12,A001,A001C001,09:05:10:00,09:05:15:00,P50,,2.8,3.2-1.6 m,,0.6,180,800,5600,y,good,Nice pull to the rope
12A,2,A,12,A001,A001C002,09:09:40:12,09:09:48:00,P50,,2.8 1/3,3.2 m,,0.6,180,800,5600,,ng,Boat in the background
`;

/** Five seconds at 24: held at 3.2 m for two, a pull of one second to 1.6 m, held again. */
function lensLog(): string {
  const rows = Array.from({ length: 120 }, (_, frame) => {
    const way = Math.min(1, Math.max(0, (frame - 48) / 24));
    const eased = way * way * (3 - 2 * way);
    const dioptres = 1 / 3.2 + eased * (1 / 1.6 - 1 / 3.2);
    const timecode = `09:05:${two(10 + Math.floor(frame / 24))}:${two(frame % 24)}`;
    return `${timecode},${(1 / dioptres).toFixed(3)},2.8,50`;
  });
  return `# camera: A\n# clip: A001C001\n# lens: P50\n# distance_from: image-plane\ntimecode,focus_m,t,focal_mm\n${rows.join("\n")}\n`;
}

function two(number: number): string {
  return String(number).padStart(2, "0");
}
