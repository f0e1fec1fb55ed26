/** A build with a small pipeline of its own: a day's "report" says its notes, and nothing heavy is loaded. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { BuildEffects, DayReport } from "../../src/build/effects.ts";
import { inputHashes } from "../../src/build/input-hashes.ts";
import { outFiles } from "../../src/build/out-files.ts";
import type { DayRequest, Pipeline, ShowRequest } from "../../src/build/pipeline.ts";
import { buildShow } from "../../src/build/run.ts";
import { showFiles } from "../../src/build/show-files.ts";
import { type Finding, finding } from "../../src/core/finding.ts";
import type { ShowInput } from "../../src/ingest/records.ts";
import type { DayDigest } from "../../src/summary/digest-types.ts";

export type Files = Readonly<Record<string, string>>;

export function temporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), "daybook-test-"));
}

export function writeFiles(root: string, files: Files): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  }
}

/** All files below a folder with their text; the records of the build are left out. */
export function readFiles(root: string, folder = ""): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const name = folder === "" ? entry.name : `${folder}/${entry.name}`;
    if (name === ".daybook") continue;
    if (entry.isDirectory()) Object.assign(found, readFiles(root, name));
    else found[name] = readFileSync(join(root, name), "utf8");
  }
  return found;
}

const decode = (bytes: Uint8Array | { problem: string }) =>
  bytes instanceof Uint8Array ? new TextDecoder().decode(bytes) : bytes.problem;

/** A line `take X` in notes.csv is a take with a page; a line `bad` is an error; a line `crash` throws. */
export function fakePipeline(calls: string[] = []): Pipeline {
  return {
    readShow(folder) {
      if (!(folder.read("show.yaml") instanceof Uint8Array)) {
        const absent = finding({ code: "SHOW601", severity: "error", message: "no show.yaml", hint: "Make one." });
        return { input: null, findings: [absent] };
      }
      const dates = (folder.list("days") ?? []).map((entry) => entry.name);
      const files = [{ file: "show.yaml", sha256: decode(folder.read("show.yaml")), bytes: 0 }];
      return { input: { dates, files } as unknown as ShowInput, findings: [] };
    },
    dayNumber: () => null,
    async makeDay(request: DayRequest) {
      calls.push(request.date);
      request.stage("pages");
      const lines = decode(request.folder.read(`days/${request.date}/notes.csv`)).split("\n");
      if (lines.includes("crash")) throw new TypeError("a fault");
      const takes = lines.filter((line) => line.startsWith("take "));
      for (const take of takes) request.out.write(`${request.into}/days/${request.date}/takes/${take.slice(5)}.html`, take);
      request.out.write(`${request.into}/days/${request.date}/index.html`, `${takes.length} takes`);
      const place = { file: `days/${request.date}/notes.csv`, line: 1, column: 1 };
      const bad = finding({ code: "NOTE301", severity: "error", place, message: "bad", hint: "Mend it." });
      const findings: readonly Finding[] = lines.includes("bad") ? [bad] : [];
      const digest = {
        date: request.date,
        day: null,
        takes: takes.map((t) => ({ address: t })),
        rows: { read: 3, used: 2, unmatched: 1, rejected: 0 },
      };
      return { digest: digest as unknown as DayDigest, findings, files: inputHashes(request.folder, `days/${request.date}`) };
    },
    checkDays: () => [],
    async makeShow(request: ShowRequest) {
      calls.push("show");
      request.out.write(`${request.into}/index.html`, request.digests.map((d) => `${d.date}: ${d.takes.length}`).join("\n"));
    },
  };
}

export interface FakeBuild {
  readonly show: string;
  readonly out: string;
  readonly reports: DayReport[];
  readonly calls: string[];
  build(options?: {
    dates?: readonly string[];
    force?: boolean;
    pipeline?: Pipeline;
    programHash?: string;
  }): ReturnType<typeof buildShow>;
  clean(): void;
}

/** A show in a temporary folder with an output folder beside it. */
export function fakeBuild(files: Files): FakeBuild {
  const root = temporaryFolder();
  const show = join(root, "show");
  const out = join(root, "out");
  writeFiles(show, files);
  const reports: DayReport[] = [];
  const calls: string[] = [];
  return {
    show,
    out,
    reports,
    calls,
    build(options = {}) {
      const log = { progress() {}, day: (report: DayReport) => reports.push(report), detail() {} };
      const files = showFiles(show);
      const effects: BuildEffects = { show: files, linksLeftOut: files.linksLeftOut, out: outFiles(out), log, now: () => 0 };
      const tool = { name: "Lens Daybook", version: "1.0.0" };
      reports.length = 0;
      calls.length = 0;
      const build = { dates: options.dates ?? [], force: options.force ?? false, tool, programHash: options.programHash ?? "p" };
      return buildShow(build, effects, options.pipeline ?? fakePipeline(calls));
    },
    clean: () => rmSync(root, { recursive: true, force: true }),
  };
}
