/** Exit 70: a fault of the program. What happened goes into a file, and the user is told that it is not their mistake. */
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Tool } from "../build/pipeline.ts";
import { EXIT, type Io } from "./io.ts";

export interface FaultReport {
  readonly tool: Tool;
  readonly args: readonly string[];
  /** What was being done, such as "day 2026-10-06". */
  readonly during: string;
  readonly error: unknown;
}

/** Writes what is known about faults to a file, says so on standard error and gives back the exit code. */
export function reportFaults(faults: readonly FaultReport[], io: Io): number {
  const text = faults.map(faultText).join("\n");
  const [first] = faults;
  io.err.write("\nThis is a fault in the program, not a mistake in your data.\n");
  if (first !== undefined) io.err.write(`  ${first.during}: ${firstLine(first.error)}\n`);
  try {
    const file = join(mkdtempSync(join(tmpdir(), "daybook-fault-")), "fault.log");
    writeFileSync(file, text);
    io.err.write(
      `What happened is written down in ${file}\nPlease send that file. It holds file names and the text of the error.\n`,
    );
  } catch {
    io.err.write(`${text}\n`);
  }
  return EXIT.fault;
}

function faultText(report: FaultReport): string {
  return [
    `${report.tool.name} ${report.tool.version}, Node ${process.version}, ${process.platform} ${process.arch}`,
    `arguments: ${JSON.stringify(report.args)}`,
    `during: ${report.during}`,
    ...chain(report.error),
    "",
  ].join("\n");
}

function chain(error: unknown): readonly string[] {
  if (!(error instanceof Error)) return [String(error)];
  const inner = error.cause ?? ("originalError" in error ? error.originalError : undefined);
  const own = error.stack ?? `${error.name}: ${error.message}`;
  return inner === undefined || inner === error ? [own] : [own, "caused by:", ...chain(inner)];
}

function firstLine(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.split("\n")[0] ?? "";
}
