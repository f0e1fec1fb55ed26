/** Day 13: dusk on the slip, the lamp room, the causeway by night at the second low water. */

const dusk = { shutter: "180", ei: 1280, wb: 5000 };
const lamp = { shutter: "180", ei: 1280, wb: 3200 };
const night = { shutter: "180", ei: 1600, wb: 4000 };
const lantern = { ...night, lens: "K34", stop: "2.8", height: 1.6, tilt: -2.5, roll: 0 };

export const DAY_13 = {
  date: "2026-10-08",
  file: `day: 13
of: 26
date: 2026-10-08
unit: main
place: Slip, lamp room and causeway, Hask
call: 14:30
first_shot: 16:05
meals:
  - {out: "19:30", in: "20:15"}
first_after_meal: 20:58
wrap: 01:35+1
scheduled:
  - {scene: "40", pages: "1 2/8", seconds: 80}
  - {scene: "41", pages: "1 5/8", seconds: 95}
  - {scene: "44", pages: "2", seconds: 130}
  - {scene: "45", pages: "3/8", seconds: 25}
completed: ["40", "41", "44"]
part: ["45"]
contacts:
  camera: channel 3
  loader: camera truck, quay side
  script: channel 1
  vfx: channel 6
  tide watch: channel 8, on the causeway until 02:00
sound_rolls: ["S014"]
remarks: Second low water 00:20. Everybody off the causeway by 02:00.
`,
  rolls: { A: "A023", B: "B016" },
  setups: [
    {
      slate: "40",
      scene: "40",
      A: {
        ...dusk,
        lens: "K34",
        stop: "2.8",
        nd: "0.3",
        height: 1.5,
        start: 4.8,
        steps: [{ hold: 5 }, { to: 2.0, over: 1.4 }, { hold: 6 }, { to: 6.5, over: 1.8 }],
      },
      B: {
        ...dusk,
        lens: "K96",
        stop: "2.8",
        nd: "0.3",
        start: 8.4,
        steps: [{ hold: 4 }, { to: 5.2, over: 1.1 }, { hold: 5 }, { to: 9.6, over: 1.4 }],
      },
      takes: [
        { take: "1", at: "16:05:33:10", s: 22, A: { extra: true }, B: {} },
        {
          take: "2",
          at: "16:20:14:01",
          s: 27,
          A: { circled: true },
          B: { circled: true, noted: { lens: "K966" }, mistake: ["lens", "lens K966 is not in the kit, K96 is meant"] },
        },
      ],
    },
    {
      slate: "40A",
      scene: "40",
      A: {
        ...dusk,
        lens: "K73",
        stop: "2.1",
        height: 1.45,
        start: 2.8,
        steps: [{ hold: 6 }, { to: 1.5, over: 0.9 }, { hold: 4 }, { to: 2.2, over: 0.9 }],
      },
      takes: [
        {
          take: "1",
          at: "17:02:41:18",
          s: 20,
          A: { noted: { focus: "9.2-4.9 m" }, mistake: ["focus", "feet noted as metres: 9.2-4.9 m, the log says 2.8 to 1.5 m"] },
        },
        {
          take: "2",
          at: "17:14:29:09",
          s: 24,
          A: {
            circled: true,
            spoil: { row: 24, twice: true },
            mistake: ["timecode", "one timecode twice with two distances"],
            remarks: "Last of the light, T2.1 wide open",
          },
        },
      ],
    },
    {
      slate: "41",
      scene: "41",
      A: {
        ...lamp,
        lens: "K44",
        stop: "2.8",
        height: 1.38,
        tilt: 1.5,
        start: 2.3,
        steps: [{ hold: 5 }, { to: 1.2, over: 1 }, { hold: 5 }, { to: 1.8, over: 0.9 }, { hold: 4 }, { to: 0.85, over: 0.9 }],
        fStop: true,
      },
      B: {
        ...lamp,
        lens: "K58",
        stop: "2.8",
        start: 2.9,
        steps: [{ hold: 5 }, { to: 1.7, over: 1 }, { hold: 7 }, { to: 2.4, over: 1 }],
      },
      takes: [
        { take: "1", at: "20:58:20:16", s: 28, A: { status: "ng", remarks: "Lamp turned the wrong way" }, B: { status: "ng" } },
        { take: "2", at: "21:09:11:05", s: 31, A: { remarks: "Flare on the last line, nice" }, B: { gaps: [[8, 9]] } },
        { take: "3", at: "21:20:40:22", s: 30, A: { circled: true }, B: { circled: true } },
      ],
    },
    {
      slate: "41A",
      scene: "41",
      A: {
        ...lamp,
        lens: "K128",
        stop: "2.8",
        height: 1.38,
        start: 4.6,
        steps: [{ hold: 5 }, { to: 3.1, over: 1 }, { hold: 4 }, { to: 3.9, over: 0.9 }],
      },
      takes: [
        {
          take: "1",
          at: "21:58:31:02",
          s: 21,
          A: {
            tShift: -0.134,
            mistake: ["t", "T2.7 logged, the lens opens to T2.9"],
            remarks: "Iris motor learnt on another lens?",
          },
        },
        { take: "2", at: "22:07:19:13", s: 23, A: { circled: true, stop: "4" } },
      ],
    },
    {
      slate: "44",
      scene: "44",
      A: {
        ...night,
        lens: "K26",
        stop: "2.1",
        height: 1.6,
        start: 4.4,
        steps: [{ hold: 6 }, { to: 1.9, over: 1.5 }, { hold: 7 }, { to: 3.5, over: 1.6 }, { hold: 5 }, { to: 1.3, over: 1.2 }],
      },
      B: {
        ...night,
        lens: "K73",
        stop: "2.1",
        start: 7.6,
        steps: [{ hold: 5 }, { follow: 3.2, over: 9 }, { hold: 6 }, { to: 5.5, over: 1.3 }],
      },
      takes: [
        { take: "1", at: "23:41:03:17", s: 26, A: { status: "ng", remarks: "Torch missed its cue" }, B: {} },
        { take: "2", at: "23:59:41:06", s: 38, A: { circled: true, remarks: "Crosses midnight" }, B: { circled: true } },
      ],
    },
    {
      slate: "44A",
      scene: "44",
      plate: "hero",
      A: { ...lantern, start: 3.2, steps: [{ hold: 8 }, { to: 7, over: 2 }], subject: 3.2 },
      takes: [
        { take: "1", at: "00:18:22:00", s: 18, A: { status: "false start", steps: [], s: 6 } },
        {
          take: "2",
          at: "00:22:50:10",
          s: 25,
          A: {
            circled: true,
            still: "44a-night.png",
            picture: "night-boat",
            log: "frames",
            remarks: "Tide turning, one more at most",
          },
        },
      ],
    },
    {
      slate: "44B",
      scene: "44",
      plate: "clean",
      plateOf: "44A",
      A: { ...lantern, start: 7, steps: [] },
      takes: [
        { take: "1", at: "00:31:15:14", s: 22, A: { circled: true, sound: "mos", still: "44b-clean.png", picture: "night" } },
      ],
    },
    {
      slate: "44C",
      scene: "44",
      plate: "grid",
      plateOf: "44A",
      A: { ...lantern, start: 1.2, steps: [], tilt: 0 },
      takes: [
        {
          take: "1",
          at: "00:39:48:02",
          s: 12,
          A: { sound: "mos", still: "44c-grid.png", picture: "grid", remarks: "By lantern light, chart at 1.2 m" },
        },
      ],
    },
    {
      slate: "45",
      scene: "45",
      A: {
        ...night,
        lens: "K19",
        stop: "2.3",
        height: 0.6,
        start: 1.4,
        steps: [{ hold: 5 }, { to: 0.45, over: 1.1 }, { hold: 5 }, { to: 2.6, over: 1.6 }],
      },
      takes: [
        { take: "1", at: "01:02:37:20", s: 20, A: { status: "tail slate" } },
        { take: "2", at: "01:09:05:11", s: 23, A: { circled: true, remarks: "Lens right down on the water" } },
      ],
    },
  ],
};
