/** What a build says while it runs, on standard error: one moving line on a terminal, else a line a day. */
import type { BuildLog, DayReport } from "../build/effects.ts";
import { plural } from "../format/words.ts";
import type { Io } from "./io.ts";
import type { CommonOptions } from "./options.ts";

export interface ProgressLog extends BuildLog {
  /** Takes the moving line away. */
  clear(): void;
}

export function progressLog(io: Io, options: CommonOptions): ProgressLog {
  const moving = io.err.isTerminal && !options.quiet && io.env.TERM !== "dumb";
  const start = io.now();
  let shown = false;
  const clear = () => {
    if (shown) io.err.write("\r\u001b[2K");
    shown = false;
  };
  const line = (text: string) => {
    clear();
    io.err.write(`${text}\n`);
  };
  return {
    clear,
    progress(date, done, of, stage) {
      if (!moving) return;
      const text = `${date}  ${done} of ${plural(of, "day")} done  ${stage}  ${seconds(io.now() - start)}`;
      io.err.write(`\r\u001b[2K${text.slice(0, io.err.columns - 1)}`);
      shown = true;
    },
    day(report) {
      clear();
      if (options.quiet || options.json) return;
      if (report.state === "unchanged" && !options.verbose) return;
      line(dayText(report));
      if (options.verbose && report.stages.length > 0) line(stagesText(report));
    },
    say(text) {
      if (!options.quiet && !options.json) line(text);
    },
    detail(text) {
      if (options.verbose && !options.json) line(text);
    },
  };
}

function dayText(report: DayReport): string {
  const day = report.day === null ? "" : `  day ${report.day}`;
  const head = `${report.date}${day}  ${report.state}`;
  if (report.state === "removed") return `${head}  (${report.reason})`;
  return `${head}  ${plural(report.takes, "take")}  ${seconds(report.milliseconds)}  (${report.reason})`;
}

function stagesText(report: DayReport): string {
  return `  ${report.stages.map((s) => `${s.stage} ${Math.round(s.milliseconds)} ms`).join(", ")}`;
}

export function seconds(milliseconds: number): string {
  return `${(milliseconds / 1000).toFixed(1)} s`;
}
