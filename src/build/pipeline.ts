/** The work on one day and on the show-wide pages, as the build calls it. Tests pass a small one of their own. */
import type { Finding } from "../core/finding.ts";
import type { VfxOptions } from "../export/vfx/options.ts";
import type { ShowFolder } from "../ingest/folder.ts";
import type { ShowInput } from "../ingest/records.ts";
import type { Reader } from "../pdf/readers.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import type { DayPack, LastChange } from "../view/context.ts";
import type { OutFolder } from "./effects.ts";
import type { DayId, InputFile } from "./plan.ts";

export interface Tool {
  readonly name: string;
  readonly version: string;
}

export interface DayRequest {
  readonly folder: ShowFolder;
  readonly show: ShowInput;
  /** What was found in show.yaml and the kit: it goes into the pack, which travels without them. */
  readonly showFindings: readonly Finding[];
  readonly date: string;
  /** This day with the one before and the one after, in order: a day's pages know no others. */
  readonly days: readonly DayId[];
  readonly tool: Tool;
  readonly buildId: string;
  /** Id of the day's pack: like `buildId`, but the same whatever the neighbouring days are, which the pack does not name. */
  readonly packId: string;
  /** Which takes get files for VFX, and how large their maps are. */
  readonly vfx: VfxOptions;
  /** Readers that get a PDF of their own. */
  readonly pdf: readonly Reader[];
  readonly out: OutFolder;
  /** Folder of `out` that everything is written into, under its final name. */
  readonly into: string;
  /** Says which stage begins. */
  stage(name: string): void;
  /** Says what people wait for, such as how long the maps will take. */
  say(text: string): void;
  /** Milliseconds from any start, for what is said. No output depends on it. */
  now(): number;
}

export interface DayWork {
  readonly digest: DayDigest;
  readonly findings: readonly Finding[];
  /** The input files as they were read. */
  readonly files: readonly InputFile[];
}

export interface ShowRequest {
  readonly show: ShowInput;
  readonly digests: readonly DayDigest[];
  readonly showFindings: readonly Finding[];
  readonly tool: Tool;
  readonly buildId: string;
  readonly out: OutFolder;
  readonly into: string;
  readonly lastChange: LastChange;
  /** A pack for each digest. */
  readonly packs: readonly DayPack[];
}

export interface Pipeline {
  readShow(folder: ShowFolder): { readonly input: ShowInput | null; readonly findings: readonly Finding[] };
  /** Number of a day as its day file says it; `null` when it does not. */
  dayNumber(folder: ShowFolder, date: string): number | null;
  /** Reads the day and writes its pages and its pack. */
  makeDay(request: DayRequest): Promise<DayWork>;
  /** What only shows when all days are laid side by side, from what each left behind; same days, same findings. */
  checkDays(show: ShowInput, digests: readonly DayDigest[]): readonly Finding[];
  /** Writes the show-wide pages and the assets. */
  makeShow(request: ShowRequest): Promise<void>;
}
