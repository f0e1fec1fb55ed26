/** Options that every command takes. */
import type { Severity } from "../core/finding.ts";

export interface CommonOptions {
  readonly json: boolean;
  readonly quiet: boolean;
  readonly verbose: boolean;
  /** False with `--no-color`. */
  readonly color: boolean;
}

/** A mistake in the use of the command: printed with how to do it right, exit 2. */
export interface UsageProblem {
  readonly usage: string;
}

/** Severities that are printed: `--quiet` only errors, `--verbose` the remarks too. */
export function shownSeverities(options: CommonOptions): readonly Severity[] {
  if (options.quiet) return ["error"];
  return options.verbose ? ["error", "check", "remark"] : ["error", "check"];
}
