import * as z from "zod";
import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { SHOW } from "../../core/findings/show.ts";
import type { NotesSettings } from "../notes.ts";
import type { DayRecord } from "../records.ts";
import { readClock, readDate } from "../written/clock.ts";
import { readPages } from "../written/pages.ts";
import { numberWithin, readBoolean, readText, readWhole } from "../written/setting.ts";
import { acceptedPlace, narrowing, readFindingCode } from "./accepted-entry.ts";
import { listOf, type Settings, takeSettings, textOr, written } from "./settings.ts";
import { readYaml, type YamlFile } from "./yaml-text.ts";

const text = written(readText);
const clock = written(readClock);
const count = written((value) => {
  const whole = readWhole(value);
  return whole.ok ? numberWithin({ from: 1, upTo: 9999 })(value) : whole;
});
const clockSetting = z.strictObject({ offset_frames: written(readWhole), from: text.nullish() });

const linesOf = (between: string): z.ZodType<string> => listOf(text).transform((lines) => lines.join(between));

const DAY_SHAPE = {
  day: count,
  of: count,
  date: written(readDate),
  unit: text,
  place: text,
  call: clock,
  first_shot: clock,
  meals: listOf(z.strictObject({ out: clock, in: clock.nullish() })),
  first_after_meal: clock,
  wrap: clock,
  scheduled: listOf(
    z.strictObject({ scene: text, pages: written(readPages).nullish(), seconds: written(numberWithin({ from: 0 })).nullish() }),
  ),
  completed: listOf(text),
  part: listOf(text),
  not_shot: listOf(text),
  contacts: z.record(z.string(), textOr(text, linesOf(", "))),
  remarks: textOr(text, linesOf("\n")),
  sound_rolls: listOf(text),
  clocks: z.record(z.string(), listOf(clockSetting)),
  accepted: listOf(z.strictObject({ code: written(readFindingCode), take: narrowing, reason: text })),
  notes: z.strictObject({ blank_slate_repeats: written(readBoolean).nullish() }),
} as const;

/** day.yaml as read, and where its keys stand. */
export interface DayFile {
  readonly record: DayRecord;
  /** How notes.csv is to be read. */
  readonly notes: NotesSettings;
  keyPlace(key: string): Place;
}

/** The day of a folder without day.yaml: everything not recorded but the date. */
export function dayWithoutFile(date: string, file: string): DayFile {
  return {
    record: recordOf({}, date, null),
    notes: { blankSlateRepeats: false },
    keyPlace: () => ({ file, line: null, column: null }),
  };
}

/** Reads day.yaml. A refused key counts as not recorded, a file that cannot be read at all as absent; the folder's date holds. */
export function readDayFile(content: string, file: string, date: string, found: FindingCollector): DayFile {
  const yaml = readYaml(content, file, found);
  if (yaml === null) return dayWithoutFile(date, file);
  const taken = takeSettings(yaml, DAY_SHAPE, found);
  for (const key of ["day", "date"] as const) {
    if (yaml.values.has(key)) continue;
    found.add(SHOW.missingKey, {
      place: { file, line: null, column: null },
      field: key,
      message: `${file} has no ${key}`,
      hint: `Add a line ${key === "date" ? `date: ${date}` : "day: 1 (the number of the shooting day)"}.`,
    });
  }
  if (taken.date !== undefined && taken.date !== date) {
    found.add(SHOW.otherDate, {
      place: yaml.place("date"),
      field: "date",
      message: `day.yaml is of ${taken.date}, its folder of ${date}`,
      hint: `Write date: ${date}, or rename the folder. The folder's date is used.`,
    });
  }
  const record = recordOf(taken, date, yaml);
  tellOfClockOrder(record, yaml, found);
  return { record, notes: { blankSlateRepeats: taken.notes?.blank_slate_repeats ?? false }, keyPlace: (key) => yaml.place(key) };
}

function recordOf(taken: Settings<typeof DAY_SHAPE>, date: string, yaml: YamlFile | null): DayRecord {
  return {
    date,
    day: taken.day ?? null,
    of: taken.of ?? null,
    unit: taken.unit ?? null,
    place: taken.place ?? null,
    call: taken.call ?? null,
    firstShot: taken.first_shot ?? null,
    meals: (taken.meals ?? []).map((meal) => ({ out: meal.out, in: meal.in ?? null })),
    firstAfterMeal: taken.first_after_meal ?? null,
    wrap: taken.wrap ?? null,
    scheduled: (taken.scheduled ?? []).map((s) => ({ scene: s.scene, eighths: s.pages ?? null, seconds: s.seconds ?? null })),
    completed: taken.completed ?? [],
    part: taken.part ?? [],
    notShot: taken.not_shot ?? [],
    contacts: Object.entries(taken.contacts ?? {}).map(([role, value]) => ({ role, text: value })),
    remarks: taken.remarks ?? null,
    soundRolls: taken.sound_rolls ?? [],
    clocks: Object.entries(taken.clocks ?? {}).flatMap(([camera, settings]) =>
      settings.map((setting) => ({
        camera,
        offsetFrames: setting.offset_frames,
        from: setting.from ?? null,
        place: yaml?.place(`clocks.${camera}`) ?? { file: "", line: null, column: null },
      })),
    ),
    accepted: (taken.accepted ?? []).map((entry) => ({
      code: entry.code,
      take: entry.take?.trim().toLowerCase() ?? null,
      reason: entry.reason,
      place: yaml === null ? { file: "", line: null, column: null } : acceptedPlace(yaml, "take", entry),
    })),
  };
}

/** Call, first shot, meals and wrap follow one another; a night that forgot its `+1` does not. */
function tellOfClockOrder(record: DayRecord, yaml: YamlFile, found: FindingCollector): void {
  const times: { key: string; minutes: number | null }[] = [
    { key: "call", minutes: record.call },
    { key: "first_shot", minutes: record.firstShot },
    ...record.meals.flatMap((meal, i) => [
      { key: `meals.${i}.out`, minutes: meal.out as number | null },
      { key: `meals.${i}.in`, minutes: meal.in },
    ]),
    { key: "wrap", minutes: record.wrap },
  ];
  let last: { key: string; minutes: number } | null = null;
  for (const { key, minutes } of times) {
    if (minutes === null) continue;
    if (last !== null && minutes < last.minutes) {
      found.add(SHOW.clockOrder, {
        place: yaml.place(key),
        field: key,
        message: `${key} is before ${last.key}`,
        hint: "Mend the time. Past midnight it is written with +1, such as 00:40+1.",
      });
    }
    last = { key, minutes };
  }
}
