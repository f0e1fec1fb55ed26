/** Rules across notes, logs and kit for one take: what a person should look at. Each says where and how to mend it. */
import { type Finding, type FindingInput, finding } from "../core/finding.ts";
import { dioptresFromMetres } from "../core/quantity.ts";
import type { CheckLimits, DayInput, Kit, ShowRecord } from "../ingest/records.ts";
import { stopsBetween } from "../optics/exposure.ts";
import { sameName } from "./address.ts";
import type { Take } from "./types.ts";

interface TakeContext {
  readonly take: Take;
  readonly limits: CheckLimits;
  readonly input: DayInput;
  readonly kit: Kit;
  readonly logFile: string | null;
}

/** All findings about one take that need more than one cell to see. */
export function checkTake(take: Take, show: ShowRecord, input: DayInput, kit: Kit): Finding[] {
  const context: TakeContext = { take, limits: show.limits, input, kit, logFile: take.logFiles[0] ?? null };
  return [
    ...checkLogPresence(context),
    ...checkFront(context),
    ...checkStop(context),
    ...checkFocus(context),
    ...checkFocal(context),
    ...checkLoggedLimits(context),
    ...checkSqueeze(context),
    ...checkHandover(context),
  ].map((input_) => finding({ ...input_, take: take.address }));
}

function checkLogPresence({ take, limits, input, logFile }: TakeContext): FindingInput[] {
  const place = take.note?.place ?? null;
  if (take.track === null) {
    if (take.durationFrames === 0) return [];
    return [
      {
        code: "MATCH405",
        severity: "check",
        place,
        message: `No log rows belong to this take${take.clip === null ? "" : ` (clip ${take.clip})`}; the figures come from the notes.`,
        hint: `Put its log into ${input.folder}/logs, with "# clip: ${take.clip ?? "..."}" or "# slate: ${take.slate}" and "# take: ${take.take}" above its header row.`,
      },
    ];
  }
  const covered = take.track.framesLogged / take.durationFrames;
  if (covered >= limits.logCoverage) return [];
  return [
    {
      code: "MATCH413",
      severity: "check",
      place,
      message: `${take.durationFrames - take.track.framesLogged} of ${take.durationFrames} frames are not logged (${(100 * covered).toFixed(1)} % are; the show asks for ${100 * limits.logCoverage} %).`,
      hint: `Look for the missing rows of ${logFile ?? "the log"}, or correct tc_in and tc_out. The limit is check.log_coverage in show.yaml.`,
    },
  ];
}

function checkFront({ take, logFile }: TakeContext): FindingInput[] {
  if (take.track?.focusUnconverted !== true || logFile === null) return [];
  return [
    {
      code: "MATCH412",
      severity: "check",
      place: { file: logFile, line: 1, column: 1 },
      field: "distance_from",
      message: `Distances are from the front of the lens, and lens ${take.lensId ?? "(not known)"} has no front_to_image_mm in the kit, so nothing is calculated from them.`,
      hint: 'Write front_to_image_mm for the lens in kit/lenses.csv, or "# distance_from: image-plane" if the log means the image plane.',
    },
  ];
}

function checkStop({ take, limits, logFile }: TakeContext): FindingInput[] {
  const noted = take.note?.stop ?? null;
  const logged = sortedValues(take, noted?.value.kind === "f" ? "f" : "t");
  if (noted === null || logged.length === 0 || logFile === null) return [];
  // one frame of noise is not a stop pull: the range that holds nine frames of ten
  const widest = logged[Math.floor(0.05 * (logged.length - 1))] as number;
  const deepest = logged[Math.ceil(0.95 * (logged.length - 1))] as number;
  const from = Math.min(noted.value.from, noted.value.to);
  const to = Math.max(noted.value.from, noted.value.to);
  const wider = stopsBetween(widest, from);
  const deeper = stopsBetween(to, deepest);
  if (Math.max(wider, deeper) <= limits.stopDifference) return [];
  const range = widest === deepest ? `T${round(widest)}` : `T${round(widest)} to T${round(deepest)}`;
  return [
    {
      code: "CHECK702",
      severity: "check",
      place: noted.place,
      field: "stop",
      message: `The note says ${noted.text}, the log ${range} (${round(Math.max(wider, deeper))} stop apart). The log's is shown.`,
      hint: `Correct the note, or look at ${logFile}. A pull is written 4-5.6.`,
    },
  ];
}

function checkFocus({ take, limits, logFile }: TakeContext): FindingInput[] {
  const noted = take.note?.focus ?? null;
  const logged = sortedValues(take, "focus");
  if (noted === null || logged.length === 0 || logFile === null) return [];
  const nearest = logged.at(-1) as number;
  const farthest = logged[0] as number;
  const allowed = limits.focusDifferenceFraction;
  const off = (dioptres: number): boolean =>
    dioptres > nearest / (1 - allowed) + 1e-9 || dioptres < farthest / (1 + allowed) - 1e-9;
  const { fromDioptres, toDioptres } = noted.value;
  if (!off(fromDioptres) && !off(toDioptres)) return [];
  const wrong = off(fromDioptres) ? fromDioptres : toDioptres;
  const ratio = wrong / (wrong > nearest ? nearest : farthest);
  const feet = Math.abs(ratio - 3.2808) < 0.35 || Math.abs(1 / ratio - 3.2808) < 0.35;
  return [
    {
      code: "CHECK703",
      severity: "check",
      place: noted.place,
      field: "focus",
      message: `The note says ${noted.text}, the log ${metres(farthest)} to ${metres(nearest)}. The log's is shown.`,
      hint: `${feet ? "The two differ by about 3.28: feet and metres may have been mixed. " : ""}Correct the note, or look at ${logFile}.`,
    },
  ];
}

function checkFocal({ take, logFile }: TakeContext): FindingInput[] {
  const found: FindingInput[] = [];
  const noted = take.note?.focalMm ?? null;
  const logged = sortedValues(take, "focal_mm");
  const lens = take.lens;
  if (noted !== null && logged.length > 0 && logFile !== null) {
    const low = Math.min(noted.value.from, noted.value.to);
    const high = Math.max(noted.value.from, noted.value.to);
    if (low < (logged[0] as number) * 0.95 || high > (logged.at(-1) as number) * 1.05) {
      found.push({
        code: "CHECK704",
        severity: "check",
        place: noted.place,
        field: "focal",
        message: `The note says ${noted.text} mm, the log ${round(logged[0] as number)} to ${round(logged.at(-1) as number)} mm. The log's is shown.`,
        hint: `Correct the note, or look at ${logFile}.`,
      });
    }
  }
  if (noted !== null && lens !== null) {
    const low = lens.focalMm ?? lens.focalMinMm;
    const high = lens.focalMm ?? lens.focalMaxMm;
    if (
      low !== null &&
      high !== null &&
      (Math.min(noted.value.from, noted.value.to) < low * 0.97 || Math.max(noted.value.from, noted.value.to) > high * 1.03)
    ) {
      found.push({
        code: "CHECK714",
        severity: "check",
        place: noted.place,
        field: "focal",
        message: `The note says ${noted.text} mm, but lens ${lens.id} is ${low === high ? `${low} mm` : `${low} to ${high} mm`}.`,
        hint: "Correct the focal length or the lens in the note.",
      });
    }
  }
  return found;
}

/** Values that the lens cannot have: wider than it opens, nearer than it focuses. */
function checkLoggedLimits({ take, limits, input, logFile }: TakeContext): FindingInput[] {
  const track = take.track;
  const lens = take.lens;
  if (track === null || lens === null || logFile === null) return [];
  const log = input.logs.find((l) => l.file === logFile);
  if (log === undefined) return [];
  const found: FindingInput[] = [];
  const report = (
    column: "t" | "f" | "focus",
    wrong: (value: number) => boolean,
    make: (value: number, text: string, count: number) => Omit<FindingInput, "place" | "field">,
  ): void => {
    const values = track.columns[column];
    if (values === undefined) return;
    let first = -1;
    let count = 0;
    for (let i = 0; i < values.length; i++) {
      const value = values[i] as number;
      if (Number.isNaN(value) || !wrong(value)) continue;
      if (first < 0) first = i;
      count++;
    }
    if (first < 0) return;
    const cell = log.cell(track.row[first] as number, column);
    found.push({
      ...make(values[first] as number, cell.text, count),
      place: cell.place,
      field: column === "focus" ? log.focusField : column,
    });
  };
  for (const [column, widest] of [
    ["t", lens.widestT],
    ["f", lens.widestF],
  ] as const) {
    if (widest === null) continue;
    report(
      column,
      (value) => stopsBetween(value, widest) > limits.widerThanLensStops,
      (value, text, count) => ({
        code: "CHECK705",
        severity: "check",
        message: `${column.toUpperCase()}${text} is ${stopsBetween(value, widest).toFixed(1)} stop wider than lens ${lens.id} opens (${column.toUpperCase()}${round(widest)})${also(count)}.`,
        hint: "Look whether the log has another lens, or the kit another widest stop. The value is used as logged.",
      }),
    );
  }
  if (lens.closeFocusM !== null) {
    const closest = dioptresFromMetres(lens.closeFocusM);
    report(
      "focus",
      (value) => value > closest * 1.02,
      (value, text, count) => ({
        code: "CHECK710",
        severity: "check",
        message: `${text} (${metres(value)} from the image plane) is nearer than the close focus of lens ${lens.id}, ${lens.closeFocusM} m${also(count)}.`,
        hint: 'Look at the unit of the distance column, at "# distance_from", and at close_focus_m in the kit.',
      }),
    );
  }
  if (lens.transmittance !== null || track.columns.f !== undefined) {
    const t = track.columns.t;
    const f = track.columns.f;
    if (t !== undefined && f !== undefined) {
      const at = t.findIndex((value, i) => stopsBetween(f[i] as number, value) < -0.02);
      if (at >= 0) {
        const cell = log.cell(track.row[at] as number, "t");
        found.push({
          code: "CHECK716",
          severity: "check",
          place: cell.place,
          field: "t",
          message: `T${cell.text} is wider than the f-number ${round(f[at] as number)} of the same row; a lens cannot pass more light than it takes in.`,
          hint: "The columns t and f may be swapped.",
        });
      }
    }
  }
  return found;
}

function checkSqueeze({ take, logFile, input }: TakeContext): FindingInput[] {
  const said: { value: number; where: string }[] = [];
  const logged = take.track?.columns.squeeze?.find((value) => Number.isFinite(value));
  if (logged !== undefined && logFile !== null) said.push({ value: logged, where: logFile });
  if (take.lens?.squeeze != null) said.push({ value: take.lens.squeeze, where: `${take.lens.place.file} (lens ${take.lens.id})` });
  if (take.sensorMode?.squeeze != null)
    said.push({ value: take.sensorMode.squeeze, where: `${take.sensorMode.place.file} (mode ${take.sensorMode.sensorMode})` });
  const [first, ...others] = said;
  if (first === undefined || others.every((other) => Math.abs(other.value - first.value) < 0.005)) return [];
  const log = input.logs.find((l) => l.file === logFile);
  const row = take.track?.row.find((r) => r >= 0);
  return [
    {
      code: "CHECK708",
      severity: "check",
      place:
        logged !== undefined && log !== undefined && row !== undefined
          ? log.cell(row, "squeeze").place
          : (take.note?.place ?? null),
      field: "squeeze",
      message: `The squeeze is said differently: ${said.map((s) => `${s.value} in ${s.where}`).join(", ")}. ${first.value} is used, once.`,
      hint: "Correct the ones that are wrong. The log's squeeze holds, else the lens's, else the sensor mode's.",
    },
  ];
}

/** What editorial and VFX will ask for. */
function checkHandover({ take }: TakeContext): FindingInput[] {
  const note = take.note;
  if (note === null) return [];
  const found: FindingInput[] = [];
  if (take.circled && (take.status === "ng" || take.status === "false start")) {
    found.push({
      code: "CHECK712",
      severity: "check",
      place: note.status?.place ?? note.place,
      field: "status",
      message: `The take is circled, and its status is "${note.status?.text ?? take.status}".`,
      hint: "Take away the circle or correct the status: editorial receives circled takes first.",
    });
  }
  if (take.plate !== null && take.plate !== "grid") {
    const has = (column: "height_m" | "tilt_deg"): boolean =>
      take.track?.columns[column]?.some((value) => Number.isFinite(value)) ?? false;
    const lacks = [
      ...(note.heightM === null && !has("height_m") ? ["height_m"] : []),
      ...(note.tiltDeg === null && !has("tilt_deg") ? ["tilt_deg"] : []),
      ...(take.lens !== null && take.lens.serial === null ? ["the lens's serial"] : []),
    ];
    if (lacks.length > 0) {
      found.push({
        code: "CHECK713",
        severity: "check",
        place: note.plate?.place ?? note.place,
        field: "plate",
        message: `A ${take.plate} plate without ${lacks.join(", ")}.`,
        hint: "VFX asks for height to the lens centre, tilt and lens serial of every plate. Write them in the notes or the kit.",
      });
    }
  }
  return found;
}

/** Logged values of a column in ascending order. */
function sortedValues(take: Take, column: "t" | "f" | "focus" | "focal_mm"): Float64Array {
  const values = take.track?.columns[column];
  return values === undefined ? new Float64Array() : values.filter((value) => !Number.isNaN(value)).sort();
}

function also(count: number): string {
  return count === 1 ? "" : ` (and ${count - 1} more rows)`;
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function metres(dioptres: number): string {
  return dioptres <= 0 ? "infinity" : `${round(1 / dioptres)} m`;
}

/** Rules that need the whole day: set-ups and clips. */
export function checkDay(takes: readonly Take[]): Finding[] {
  return [...clipsTwice(takes), ...plateOfNobody(takes)];
}

function clipsTwice(takes: readonly Take[]): Finding[] {
  const first = new Map<string, Take>();
  const found: Finding[] = [];
  for (const take of takes) {
    if (take.clip === null) continue;
    const key = sameName(take.clip);
    const other = first.get(key);
    if (other === undefined) first.set(key, take);
    else {
      found.push(
        finding({
          code: "CHECK717",
          severity: "check",
          place: take.note?.clip?.place ?? take.note?.place ?? null,
          field: "clip",
          message: `Clip ${take.clip} is noted for two takes: ${other.address} and ${take.address}.`,
          hint: "One clip belongs to one take. Correct the clip of one of them.",
          take: take.address,
        }),
      );
    }
  }
  return found;
}

function plateOfNobody(takes: readonly Take[]): Finding[] {
  const slates = new Set(takes.map((take) => sameName(take.slate)));
  return takes
    .filter((take) => take.plateOf !== null && !slates.has(sameName(take.plateOf)))
    .map((take) =>
      finding({
        code: "CHECK718",
        severity: "remark",
        place: take.note?.plateOf?.place ?? null,
        field: "plate_of",
        message: `No take of this day has slate ${take.plateOf}, which this plate belongs to.`,
        hint: "Correct plate_of if the slate is wrong; if its hero was shot on another day, nothing needs to be done.",
        take: take.address,
      }),
    );
}
