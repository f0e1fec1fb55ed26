/** What the steps of one build share. */
import type { Finding } from "../core/finding.ts";
import type { VfxOptions } from "../export/vfx/options.ts";
import type { ShowInput } from "../ingest/records.ts";
import type { Reader } from "../pdf/readers.ts";
import type { BuildEffects } from "./effects.ts";
import type { Pipeline, Tool } from "./pipeline.ts";

export interface BuildOptions {
  /** Dates to build; empty: all days of the show. The others keep what they have. */
  readonly dates: readonly string[];
  /** Builds every day, whatever the last build left. Also takes over an output folder that holds other files. */
  readonly force: boolean;
  readonly tool: Tool;
  /** Hash over the program's own files. */
  readonly programHash: string;
  /** Which takes get files for VFX, and how large their maps are; plates with maps of the default size when absent. */
  readonly vfx?: VfxOptions;
  /** Readers that get a PDF of their own; none when absent. */
  readonly pdf?: readonly Reader[];
}

/** A fault of the program on one day, or on the show-wide pages (`date: null`). */
export interface Fault {
  readonly date: string | null;
  readonly error: unknown;
}

export interface Session {
  readonly options: BuildOptions;
  readonly effects: BuildEffects;
  readonly pipeline: Pipeline;
  readonly show: ShowInput;
  /** What was found in show.yaml and the kit. */
  readonly showFindings: readonly Finding[];
}
