/** Names of one thing in two spellings, and T-stops mixed with f-stops. */
import { CHECK } from "../../core/findings/check.ts";
import type { Cell, NoteRow } from "../../ingest/records.ts";
import type { DayContext } from "./day.ts";
import { looseName } from "./words.ts";

const COLUMNS = [
  ["slate", (note: NoteRow) => note.slate],
  ["camera", (note: NoteRow) => note.camera],
  ["scene", (note: NoteRow) => note.scene],
  ["roll", (note: NoteRow) => note.roll],
  ["lens", (note: NoteRow) => note.lens],
  ["sensor_mode", (note: NoteRow) => note.sensorMode],
] as const;

export function checkNames(context: DayContext): void {
  for (const [field, cellOf] of COLUMNS) {
    const cells = context.input.notes.flatMap((note) => cellOf(note) ?? []);
    tellOfSpellings(field, cells, context);
  }
  tellOfStopLetters(context);
}

/** Forms that differ by case and spaces only, those of lenses and modes by hyphens and dots too; the kit's form is right, else the commonest. */
function tellOfSpellings(field: string, cells: readonly Cell<string>[], { kit, tell }: DayContext): void {
  // slate 1-1 is another than 11, lens K-34 is K34
  const marks = field === "lens" || field === "sensor_mode" ? "do not count" : "count";
  const forms = new Map<string, Map<string, Cell<string>[]>>();
  for (const cell of cells) {
    const loose = looseName(cell.value, marks);
    const known = forms.get(loose) ?? new Map<string, Cell<string>[]>();
    const uses = known.get(cell.value);
    if (uses === undefined) known.set(cell.value, [cell]);
    else uses.push(cell);
    forms.set(loose, known);
  }
  const ofKit =
    field === "lens" ? kit.lenses.map((lens) => lens.id) : field === "camera" ? kit.modes.map((mode) => mode.camera) : [];
  for (const [loose, written] of forms) {
    const inKit = ofKit.find((name) => looseName(name, marks) === loose);
    const byCount = [...written].sort(([, a], [, b]) => b.length - a.length);
    const right = inKit ?? byCount[0]?.[0];
    for (const [form, uses] of written) {
      const [first] = uses;
      if (right === undefined || form === right || first === undefined) continue;
      tell(CHECK.twoSpellings, {
        place: first.place,
        field,
        message: `"${form}" and "${right}" differ by case, spaces or marks only, and may be one ${field.replace("_", " ")} in two spellings${uses.length > 1 ? ` (${uses.length} rows)` : ""}.`,
        hint: `Write "${right}"${inKit === undefined ? ", as the other rows do" : ", as the kit does"}, or give the two names that cannot be taken for one another.`,
      });
    }
  }
}

/** One column with T-stops and f-stops: they differ by what the glass takes. */
function tellOfStopLetters({ input, tell }: DayContext): void {
  const stops = input.notes.flatMap((note) => note.stop ?? []);
  const t = stops.filter((stop) => stop.value.kind === "t");
  const f = stops.filter((stop) => stop.value.kind === "f");
  const [odd] = f.length <= t.length ? f : t;
  if (t.length === 0 || odd === undefined) return;
  tell(CHECK.stopLettersMixed, {
    place: odd.place,
    field: "stop",
    message: `${odd.text} is ${odd.value.kind === "f" ? "an f-stop" : "a T-stop"}, and other rows have ${odd.value.kind === "f" ? "T-stops" : "f-stops"} (${t.length} T, ${f.length} f).`,
    hint: "Write T-stops throughout. An f-stop is used with the lens's transmittance, a T-stop as it is.",
  });
}
