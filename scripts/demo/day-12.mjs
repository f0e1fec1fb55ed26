/** Day 12: the boathouse with its zoom plate, then the slip and the tide race. */

const inside = { shutter: "180", ei: 800, wb: 4300 };
const slip = { shutter: "180", ei: 800, wb: 5600, nd: "0.6" };
const doors = { ...inside, lens: "KZ31-87", height: 1.42, tilt: -3.5, roll: 0 };

export const DAY_12 = {
  date: "2026-10-07",
  file: `day: 12
of: 26
date: 2026-10-07
unit: main
place: Boathouse and slip, Hask
call: 07:30
first_shot: 08:48
meals:
  - {out: "13:15", in: "14:00"}
first_after_meal: 14:36
wrap: 18:30
scheduled:
  - {scene: "33", pages: "2 1/8", seconds: 140}
  - {scene: "34", pages: "1 1/8", seconds: 60}
  - {scene: "35", pages: "5/8", seconds: 35}
  - {scene: "36", pages: "4/8", seconds: 30}
completed: ["33", "34", "36"]
not_shot: ["35"]
clocks:
  B: {offset_frames: 2, from: "14:00:00:00"}
contacts:
  camera: channel 3
  loader: camera truck, boatyard gate
  script: channel 1
  vfx: channel 6
  safety boat: channel 9, and by hand lamp
sound_rolls: ["S012", "S013"]
remarks: Recorder B was restarted at lunch and ran two frames behind for the rest of the day.
`,
  rolls: { A: "A022", B: "B015" },
  setups: [
    {
      slate: "33",
      scene: "33",
      A: {
        ...inside,
        lens: "K34",
        stop: "2.8",
        height: 1.5,
        start: 4.2,
        steps: [{ hold: 5 }, { to: 1.7, over: 1.3 }, { hold: 6 }, { to: 3.2, over: 1.4 }, { hold: 3 }, { to: 1.1, over: 1 }],
      },
      B: {
        ...inside,
        lens: "K96",
        stop: "2.8",
        start: 5.6,
        steps: [{ hold: 4 }, { to: 3.8, over: 0.9 }, { hold: 6 }, { to: 4.9, over: 1 }, { hold: 4 }, { to: 3.4, over: 0.8 }],
      },
      takes: [
        { take: "1", at: "08:48:21:07", s: 24, A: {}, B: { noted: { focus: `12' 6"` } } },
        { take: "2", at: "09:01:09:16", s: 31, A: { edges: [24, 12], remarks: "Good for picture, lamp buzz on the track" }, B: {} },
        { take: "3", at: "09:12:55:03", s: 29, A: { circled: true }, B: { circled: true, noted: { focus: "18.4-11.2 ft" } } },
      ],
    },
    {
      slate: "33A",
      scene: "33",
      A: {
        ...inside,
        lens: "K73",
        stop: "2.8",
        height: 1.3,
        start: 2.6,
        steps: [{ hold: 5 }, { to: 1.35, over: 0.8 }, { hold: 5 }, { to: 1.9, over: 0.8 }],
      },
      B: {
        ...inside,
        lens: "K58",
        stop: "2.8",
        start: 2.1,
        steps: [{ hold: 6 }, { to: 1.3, over: 0.8 }, { hold: 5 }, { to: 1.75, over: 0.9 }],
      },
      takes: [
        {
          take: "1",
          at: "09:50:31:20",
          s: 23,
          A: {
            status: "ng",
            steps: [{ hold: 4 }, { to: 1.5, over: 0.7 }, { hunt: 4.2, swing: 2.1 }, { hold: 4 }, { to: 1.9, over: 0.9 }],
            remarks: "Lost the mark behind the mast, hunting",
          },
          B: {},
        },
        {
          take: "2",
          at: "10:02:44:12",
          s: 25,
          A: { circled: true, noted: { stop: "4" }, mistake: ["stop", "the notes say T4, the log T2.8"] },
          B: { circled: true },
        },
      ],
    },
    {
      slate: "33B",
      scene: "33",
      plate: "hero",
      A: {
        ...doors,
        stop: "4",
        noted: { stop: "4-5.6", focal: "62-45" },
        focal: 62,
        subject: 2.4,
        head: true,
        start: 2.4,
        steps: [
          { hold: 5.5 },
          { to: 6, over: 1.4 },
          { hold: 4 },
          { to: 1.8, over: 2.1 },
          { hold: 7 },
          { to: Number.POSITIVE_INFINITY, over: 2.6 },
        ],
        zoom: [[7.2, 45, 4.5]],
        iris: [[18.5, 5.6, 2.8]],
      },
      takes: [
        {
          take: "1",
          at: "11:04:12:08",
          s: 15,
          A: { status: "incomplete", noted: { stop: "4", focal: "62-45", focus: "6-1.8 m" }, remarks: "Door caught the wind" },
        },
        { take: "2", at: "11:18:40:14", s: 29, A: { remarks: "Iris late, tail usable" } },
        {
          take: "3",
          at: "11:31:07:11",
          s: 31,
          A: {
            circled: true,
            gaps: [[15.4, 17]],
            still: "33b-doors.png",
            picture: "boathouse-boat",
            remarks: "Reflection of the lamp in the left pane from the last pull",
          },
        },
      ],
    },
    {
      slate: "33C",
      scene: "33",
      plate: "clean",
      plateOf: "33B",
      A: { ...doors, stop: "5.6", focal: 45, start: 6, steps: [] },
      takes: [
        {
          take: "1",
          at: "11:49:33:05",
          s: 24,
          A: { circled: true, sound: "mos", still: "33c-clean.png", picture: "boathouse", remarks: "Boat and trestles out" },
        },
      ],
    },
    {
      slate: "33D",
      scene: "33",
      plate: "reference",
      plateOf: "33B",
      A: { ...doors, stop: "5.6", focal: 45, start: 2.4, steps: [{ hold: 7 }, { to: 4.2, over: 1.5 }] },
      takes: [
        {
          take: "1",
          at: "11:58:12:12",
          s: 16,
          A: { sound: "mos", still: "33d-balls.png", picture: "boathouse-balls", remarks: "Grey ball, chrome ball, chart" },
        },
      ],
    },
    {
      slate: "34",
      scene: "34",
      A: {
        ...slip,
        lens: "K26",
        stop: "5.6",
        height: 1.1,
        start: 3.4,
        steps: [{ hold: 5 }, { follow: 0.95, over: 6.5 }, { hold: 4 }, { to: 1.8, over: 1.1 }],
      },
      B: {
        ...slip,
        lens: "K73",
        stop: "5.6",
        start: 7.2,
        steps: [{ hold: 5 }, { follow: 3.1, over: 7 }, { hold: 3 }, { to: 4.8, over: 1 }],
      },
      takes: [
        {
          take: "1",
          at: "14:36:50:19",
          s: 22,
          A: { log: "none", mistake: ["slate", "a take without a log"], remarks: "Lens motor cable out, put back after the cut" },
          B: {},
        },
        { take: "2", at: "14:47:15:02", s: 26, A: { circled: true }, B: { circled: true } },
      ],
    },
    {
      slate: "36",
      scene: "36",
      A: {
        ...slip,
        lens: "K128",
        stop: "4",
        nd: "2 stops",
        mode: "CROP38",
        fps: 48,
        sound: "mos",
        start: 38,
        steps: [{ hold: 3 }, { to: 16, over: 2.2 }, { hold: 5 }, { to: 60, over: 3 }],
      },
      takes: [
        { take: "1", at: "15:40:02:00", s: 26, A: { remarks: "48 frames, tide race from the wall" } },
        { take: "2", at: "15:49:37:10", s: 34, A: { circled: true, log: "clip" } },
      ],
    },
    {
      slate: "36A",
      scene: "36",
      A: {
        ...slip,
        lens: "K44",
        stop: "4",
        height: 0.35,
        sound: "mos",
        start: 0.62,
        steps: [{ hold: 4 }, { to: 0.45, over: 1.2 }, { hold: 4 }, { to: 0.58, over: 1 }],
      },
      takes: [
        { take: "1", at: "16:22:11:14", s: 18, A: { log: "clip", remarks: "Rope through the ring" } },
        {
          take: "1",
          at: "16:29:48:07",
          s: 20,
          A: { log: "clip", circled: true, mistake: ["take", "slate 36A, take 1, camera A twice; this row should say take 2"] },
        },
      ],
    },
  ],
};
