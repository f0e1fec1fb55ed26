/** The example day with text that people really type, and worse: it must be set or marked, never break the report. */
import { finding } from "../../src/core/finding.ts";
import type { DaySummary, TakeSummary } from "../../src/summary/types.ts";
import { exampleDaySummary } from "../fixtures/day-summary.ts";

export const LONG_WORD = "Unbroken".repeat(38);
export const HEBREW = "\u05e9\u05dc\u05d5\u05dd \u05e2\u05d5\u05dc\u05dd";
export const EMOJI = "\u{1f3ac}\u{1f469}\u200d\u{1f3a5}";

export function oddDay(): DaySummary {
  const day = exampleDaySummary();
  const odd: readonly ((take: TakeSummary) => TakeSummary)[] = [
    (t) => ({
      ...t,
      remarks: `Family ${EMOJI} and ${HEBREW} 12 and \u0645\u0631\u062d\u0628\u0627 mixed.`,
      filters: "Café ½ CTO \u00ad soft",
    }),
    (t) => ({ ...t, remarks: LONG_WORD, take: { ...t.take, slate: LONG_WORD, take: "3 PU AFS again and again", circled: true } }),
    (t) => ({ ...t, remarks: "word ".repeat(1200), take: { ...t.take, clip: LONG_WORD, scene: LONG_WORD } }),
    (t) => ({ ...t, remarks: "line one\r\nline two\u0000\u0007\ttab \ud800 half a pair", filters: LONG_WORD }),
    (t) => ({ ...t, remarks: "\u4e2d\u6587 \u6f22\u5b57 <b>&amp;</b> (brackets) \\ back" }),
  ];
  const takes = day.takes.map((t, i) => (odd[i] ?? ((same: TakeSummary) => same))(t));
  const findings = [
    finding({ code: "LOG299", severity: "error", message: `${LONG_WORD} ${EMOJI}`, hint: "word ".repeat(400), take: "a-12-2" }),
    ...day.findings,
  ];
  return {
    ...day,
    takes,
    findings,
    show: { ...day.show, title: `Tide & <Tin> ${EMOJI} "${HEBREW}"\u0001`, production: LONG_WORD },
    day: {
      ...day.day,
      record: {
        ...day.day.record,
        place: LONG_WORD,
        remarks: "word ".repeat(300),
        contacts: Array.from({ length: 12 }, (_, i) => ({ role: `Role ${i} ${LONG_WORD.slice(0, 60)}`, text: HEBREW })),
        scheduled: Array.from({ length: 30 }, (_, i) => ({ scene: `${i}${LONG_WORD.slice(0, 30)}`, eighths: i * 3, seconds: i })),
      },
    },
  };
}

/** A day of which nothing is known but its date. */
export function emptyDay(): DaySummary {
  const day = exampleDaySummary();
  const nothing = {
    eighthsScheduled: null,
    eighthsCompleted: null,
    mediaFrames: {},
    mediaSeconds: 0,
    shootingRatio: null,
  } as const;
  return {
    ...day,
    takes: [],
    lensUse: [],
    findings: [],
    findingCounts: { error: 0, check: 0, remark: 0 },
    kit: { modes: [], lenses: [], calibration: new Map() },
    totals: {
      ...day.totals,
      ...nothing,
      slates: 0,
      takes: 0,
      clips: 0,
      circled: 0,
      circledSeconds: 0,
      framesExpected: 0,
      framesLogged: 0,
    },
    rows: { read: 0, used: 0, unmatched: 0, rejected: 0 },
    day: {
      ...day.day,
      takes: [],
      logs: [],
      files: [],
      findings: [],
      record: {
        ...day.day.record,
        ...{
          day: null,
          of: null,
          unit: null,
          place: null,
          call: null,
          firstShot: null,
          meals: [],
          firstAfterMeal: null,
          wrap: null,
        },
        ...{ scheduled: [], completed: [], part: [], notShot: [], contacts: [], remarks: null, soundRolls: [], clocks: [] },
      },
    },
  };
}
