/** Day 11: the causeway at low water, then the tide office. */

const outside = { shutter: "172.8", ei: 800, wb: 5600, nd: "0.9", filters: "Haar 1/8" };
const office = { shutter: "172.8", ei: 800, wb: 4300 };
const horizon = { ...outside, lens: "K19", stop: "5.6", height: 1.55, tilt: -1.5, roll: 0.2 };

export const DAY_11 = {
  date: "2026-10-06",
  file: `day: 11
of: 26
date: 2026-10-06
unit: main
place: Causeway and tide office, Hask
call: 07:00
first_shot: 08:22
meals:
  - {out: "13:00", in: "13:45"}
first_after_meal: 14:22
wrap: 18:05
scheduled:
  - {scene: "14", pages: "1 6/8", seconds: 105}
  - {scene: "15", pages: "7/8", seconds: 45}
  - {scene: "27", pages: "2 3/8", seconds: 150}
  - {scene: "29", pages: "2/8", seconds: 15}
completed: ["14", "15"]
part: ["27"]
not_shot: ["29"]
contacts:
  camera: channel 3
  loader: camera truck, quay side
  script: channel 1
  vfx: channel 6, from the refuge hut
  tide watch: channel 8, on the causeway
sound_rolls: ["S011"]
remarks: Low water 10:52. Off the causeway by 12:40. Light rain from three, scene 29 moves to another day.
`,
  rolls: { A: "A021", B: "B014" },
  setups: [
    {
      slate: "14",
      scene: "14",
      A: {
        ...outside,
        lens: "K26",
        stop: "4",
        height: 1.62,
        start: 5.8,
        steps: [{ hold: 4.5 }, { to: 2.1, over: 1.5 }, { hold: 5 }, { to: 5.2, over: 1.9 }, { hold: 4 }, { to: 1.6, over: 1.1 }],
      },
      B: {
        ...outside,
        lens: "K73",
        stop: "4",
        start: 9.2,
        steps: [{ hold: 4 }, { to: 4.6, over: 1.3 }, { hold: 5 }, { to: 7.4, over: 1.4 }, { hold: 5 }, { to: 3.2, over: 1.2 }],
      },
      takes: [
        {
          take: "1",
          at: "08:22:10:03",
          s: 11,
          A: { status: "false start", remarks: "Gull in shot, cut before the mark" },
          B: { status: "false start" },
        },
        {
          take: "2",
          at: "08:31:42:17",
          s: 27,
          A: { noted: { focus: "5.8" }, mistake: ["focus", "a noted distance without a unit (5.8)"] },
          B: { remarks: "Second mark late" },
        },
        {
          take: "3",
          at: "08:40:05:00",
          s: 29,
          A: { circled: true, remarks: "Water just off the stones, will not match take 2" },
          B: { circled: true },
        },
      ],
    },
    {
      slate: "14A",
      scene: "14",
      A: {
        ...outside,
        lens: "K58",
        stop: "2.8",
        nd: "1.5",
        start: 8.5,
        steps: [{ hold: 3 }, { follow: 1.9, over: 8 }, { hold: 4 }, { to: 3.4, over: 0.9 }],
      },
      B: {
        ...outside,
        lens: "K96",
        stop: "2.8",
        nd: "1.5",
        start: 11.5,
        steps: [{ hold: 3 }, { follow: 4.2, over: 8 }, { hold: 4.5 }, { to: 6.5, over: 1 }],
      },
      takes: [
        {
          take: "1",
          at: "09:12:20:11",
          s: 22,
          A: { status: "ng", remarks: "Soft on the turn, walk was quicker than rehearsed" },
          B: { status: "ng" },
        },
        {
          take: "2",
          at: "09:19:58:08",
          s: 24,
          A: { circled: true, log: "clip", noted: { lens: "K44" }, mistake: ["lens", "the notes name lens K44, the log K58"] },
          B: { circled: true, gaps: [[13.2, 31]], remarks: "Recorder lost the lens for a second after the stop" },
        },
      ],
    },
    {
      slate: "14B",
      scene: "14",
      plate: "hero",
      A: { ...horizon, start: 1.5, steps: [{ hold: 6 }, { to: 8, over: 2.4 }], subject: 1.5, head: true },
      takes: [
        { take: "1", at: "10:04:31:06", s: 18, A: { remarks: "Boat drifted out of frame" } },
        {
          take: "2",
          at: "10:16:12:20",
          s: 26,
          A: {
            circled: true,
            still: "14b-causeway.png",
            gaps: [[10.4, 17]],
            picture: "causeway-boat",
            remarks: "Locked off, hut to be built up in VFX",
          },
        },
      ],
    },
    {
      slate: "14C",
      scene: "14",
      plate: "clean",
      plateOf: "14B",
      A: { ...horizon, start: 8, steps: [] },
      takes: [
        {
          take: "1",
          at: "10:29:40:00",
          s: 20,
          A: {
            circled: true,
            sound: "mos",
            still: "14c-clean.png",
            picture: "causeway",
            remarks: "Same lens state as the end of 14B take 2",
          },
        },
      ],
    },
    {
      slate: "14D",
      scene: "14",
      plate: "grid",
      plateOf: "14B",
      A: { ...horizon, start: 1.5, steps: [], height: 1.55, tilt: 0, roll: 0 },
      takes: [
        {
          take: "1",
          at: "10:38:02:12",
          s: 12,
          A: { sound: "mos", still: "14d-grid.png", picture: "grid", remarks: "Chart square to the lens, 1.5 m" },
        },
      ],
    },
    {
      slate: "15",
      scene: "15",
      A: {
        ...outside,
        lens: "K34",
        stop: "4 1/3",
        height: 1.2,
        start: 3.6,
        steps: [{ hold: 5 }, { to: 1.45, over: 1.4 }, { hold: 6 }, { to: 2.4, over: 1.1 }],
      },
      B: {
        ...outside,
        lens: "K73",
        stop: "4",
        start: 6.1,
        steps: [{ hold: 4 }, { to: 3.9, over: 1.3 }, { hold: 4 }, { to: 8.8, over: 1.7 }],
      },
      takes: [
        {
          take: "1",
          at: "11:42:18:09",
          s: 21,
          A: { spoil: { row: 171, number: true }, mistake: ["focus_m", "a focus cell that is no number, a letter O for a nought"] },
          B: {},
        },
        {
          take: "2",
          at: "11:52:33:15",
          s: 25,
          A: { circled: true, edges: [12, 9], remarks: "Out by the end board, water at the steps" },
          B: { circled: true },
        },
      ],
    },
    {
      slate: "27",
      scene: "27",
      A: {
        ...office,
        lens: "K44",
        stop: "2.8",
        height: 1.42,
        tilt: -2,
        start: 2.8,
        steps: [{ hold: 6 }, { to: 1.25, over: 1.1 }, { hold: 4 }, { to: 2.2, over: 1 }, { hold: 5 }, { to: 1.05, over: 0.8 }],
      },
      B: {
        ...office,
        lens: "K73",
        stop: "2.8",
        start: 3.3,
        steps: [{ hold: 5 }, { to: 2.1, over: 0.9 }, { hold: 6 }, { to: 2.9, over: 1.1 }],
      },
      takes: [
        { take: "1", at: "14:22:07:13", s: 31, A: { remarks: "Late on the ledger" }, B: {} },
        { take: "2", at: "14:35:50:02", s: 33, A: { circled: true }, B: { circled: true } },
        {
          take: "2 PU",
          at: "14:44:12:18",
          s: 16,
          A: { circled: true, remarks: "Pick up from the knock at the door" },
          B: { status: "incomplete", remarks: "Stopped down by mistake, cut" },
        },
      ],
    },
    {
      slate: "27A",
      scene: "27",
      A: {
        ...office,
        lens: "K58",
        stop: "2.8 1/2",
        height: 1.18,
        start: 1.9,
        steps: [{ hold: 4 }, { to: 1.1, over: 0.8 }, { hold: 3 }, { to: 0.82, over: 0.7 }, { hold: 4 }, { to: 1.6, over: 1 }],
      },
      takes: [
        { take: "1", at: "15:31:40:05", s: 19, A: { status: "ng", remarks: "Rain on the roof" } },
        { take: "2", at: "15:44:22:21", s: 24, A: { circled: true, extra: true } },
      ],
    },
  ],
};
