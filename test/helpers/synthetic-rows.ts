/** Rows of a long show, made by arithmetic alone: the same at every run. */
import type { SearchDay, SearchLens, SearchRows, SearchTake } from "../../src/core/search-rows.ts";

const SYLLABLES = "ba ke lo mi nu ra se ti vo wa dro fle gri sho tra cle bro pli".split(" ");
const FOCALS = [18, 25, 35, 50, 75, 100];

/** `count` clips of two cameras, each with a remark of twelve words out of 4,000; 80 slates a day and three takes a slate. */
export function syntheticRows(count: number): SearchRows {
  const next = randomNumbers(20_261_006);
  const vocabulary = Array.from({ length: 4000 }, () =>
    Array.from({ length: 2 + (next() % 3) }, () => SYLLABLES[next() % SYLLABLES.length]).join(""),
  );
  const perDay = 480;
  const days = Array.from({ length: Math.ceil(count / perDay) }, (_, i): SearchDay => {
    const date = new Date(Date.UTC(2031, 0, 1 + i)).toISOString().slice(0, 10);
    return [date, `Day ${i + 1}, ${date}`, i + 1];
  });
  const lenses = FOCALS.map((mm): SearchLens => [`L${mm}`, `Heron ${mm}`]);
  const takes = Array.from({ length: count }, (_, i): SearchTake => {
    const day = Math.floor(i / perDay);
    const set = Math.floor(i / 6);
    const slate = `${1 + Math.floor(set / 8)}${["", "A", "B", "C", "D", "E", "F", "G"][set % 8]}`;
    const take = String(1 + (Math.floor(i / 2) % 3));
    const camera = i % 2 === 0 ? "A" : "B";
    const roll = `${camera}${String(1 + Math.floor(i / 60)).padStart(3, "0")}`;
    const clip = `${roll}C${String(1 + (Math.floor(i / 2) % 30)).padStart(3, "0")}`;
    const minute = 6 * 60 + (Math.floor(i / 2) % 240) * 3;
    const at = (second: number) => `${two(Math.floor(minute / 60) % 24)}:${two(minute % 60)}:${two(second)}:00`;
    const mm = FOCALS[next() % FOCALS.length] as number;
    const t = [2, 2.8, 4, 5.6][next() % 4] as number;
    const remark = Array.from({ length: 12 }, () => vocabulary[next() % vocabulary.length]).join(" ");
    return [
      ...([
        day,
        `${camera}-${slate}-${take}`.toLowerCase(),
        slate,
        take,
        camera,
        /^\d+/.exec(slate)?.[0] ?? "",
        roll,
        clip,
      ] as const),
      ...([at(5), at(47), FOCALS.indexOf(mm), mm, mm, t, t, `${mm} mm`, `T${t}`] as const),
      ...([take === "3" ? 1 : 0, "good", "", "", remark, Math.floor(i / 2)] as const),
    ];
  });
  return { path: "days/{date}/takes/{address}.html", days, lenses, takes };
}

/** A linear congruential generator with the constants of Numerical Recipes; its upper bits. */
function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state >>> 8;
  };
}

function two(n: number): string {
  return String(n).padStart(2, "0");
}
