#!/usr/bin/env node
import { fileURLToPath } from "node:url";
// Damages show folders at random and reads, joins and summarises them. Looks for exceptions, runs over two seconds, a broken sum of
// rows, reads outside the folder, and findings without a place that exists. Each so many of the runs (--through 10; 0: none) goes on through
// the whole build on a real disk. Needs the compiled program in dist/.
// Use: npm run fuzz -- --runs 20000 [--seed 1] [--from 0] [--through 10]
// A failure names its run: --seed S --from N --runs 1 --through T does it again.
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { mutations } from "./fuzz/mutate.mjs";
import { generator } from "./fuzz/random.mjs";
import { startingShows } from "./fuzz/shows.mjs";

const SLOWEST_MS = 2000;
/** A run that does not end at all is given up after this time. */
const HANGS_MS = 120_000;
const HANGS_THROUGH_MS = 300_000;

if (isMainThread) await watch(options(process.argv.slice(2)));
else await work(workerData);

function options(args) {
  const found = { runs: 1000, seed: 1, from: 0, through: 0 };
  for (let i = 0; i < args.length; i += 2) {
    const name = args[i].replace(/^--/, "");
    const value = Number(args[i + 1]);
    if (!(name in found) || !Number.isSafeInteger(value) || value < 0) {
      console.error("use: node scripts/fuzz.mjs [--runs N] [--seed N] [--from N] [--through N]");
      process.exit(2);
    }
    found[name] = value;
  }
  return found;
}

/** Runs the work in a thread of its own, so that one that hangs can be named. */
async function watch(settings) {
  const start = Date.now();
  const worker = new Worker(fileURLToPath(import.meta.url), { workerData: settings });
  let last = settings.from - 1;
  let failed = false;
  const fail = (text) => {
    failed = true;
    console.log(text);
  };
  let timer;
  const restart = (after = HANGS_MS) => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      fail(`run ${last + 1}: no end after ${after / 1000} s   (${again(settings, last + 1)})`);
      worker.terminate();
    }, after);
  };
  restart();
  let summary = null;
  worker.on("message", (message) => {
    restart(message.through === undefined ? HANGS_MS : HANGS_THROUGH_MS);
    if (message.done !== undefined) last = message.done;
    if (message.failure !== undefined) fail(message.failure);
    if (message.summary !== undefined) summary = message.summary;
  });
  worker.on("error", (error) => fail(`run ${last + 1}: ${error.stack ?? error}   (${again(settings, last + 1)})`));
  for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => worker.terminate());
  await new Promise((resolve) => worker.on("exit", resolve));
  clearTimeout(timer);
  const seconds = ((Date.now() - start) / 1000).toFixed(1);
  const counted =
    summary === null
      ? ""
      : `, ${summary.findings} findings, ${summary.rows} log rows, slowest run ${summary.slowest} ms${summary.through === 0 ? "" : `, ${summary.through} through everything (${summary.files} files, slowest ${summary.slowestThrough} ms)`}`;
  console.log(`${last - settings.from + 1} runs, seed ${settings.seed}, ${seconds} s${counted}: ${failed ? "FAILED" : "no fault"}`);
  process.exitCode = failed ? 1 : 0;
}

function again({ seed, through }, run) {
  return `--seed ${seed} --from ${run} --runs 1${through === 0 ? "" : ` --through ${through}`}`;
}

async function work(settings) {
  const { runs, seed, from, through } = settings;
  const shows = startingShows();
  const program = await loadProgram();
  const whole = through === 0 ? null : await import("./fuzz/through.mjs");
  const build = await whole?.loadBuild();
  const totals = { findings: 0, rows: 0, slowest: 0, through: 0, files: 0, slowestThrough: 0 };
  for (let run = from; run < from + runs; run++) {
    const random = generator(seed * 1_000_003 + run);
    const files = new Map(random.pick(shows)(random));
    const steps = Array.from({ length: 1 + random.below(4) }, () => random.pick(mutations)(files, random));
    const start = process.cpuUsage();
    try {
      const seen = readThrough(program, files);
      totals.findings += seen.findings;
      totals.rows += seen.rows;
    } catch (error) {
      fail(run, settings, steps, error.stack ?? String(error));
    }
    // Time of the processor: another program that is busy is no fault.
    const { user, system } = process.cpuUsage(start);
    const took = Math.round((user + system) / 1000);
    totals.slowest = Math.max(totals.slowest, took);
    if (took > SLOWEST_MS) fail(run, settings, steps, `it took ${took} ms`);
    if (whole !== null && run % through === 0) {
      parentPort.postMessage({ through: run, done: run - 1 });
      const begin = Date.now();
      try {
        totals.files += await whole.buildThrough(build, files, random);
        totals.through++;
      } catch (error) {
        fail(run, settings, steps, error.stack ?? String(error));
      }
      totals.slowestThrough = Math.max(totals.slowestThrough, Date.now() - begin);
      parentPort.postMessage({ done: run });
    }
    if (run % 20 === 0 || run === from + runs - 1) parentPort.postMessage({ done: run });
  }
  parentPort.postMessage({ summary: totals });
}

function fail(run, settings, steps, text) {
  parentPort.postMessage({
    failure: `run ${run}: ${text}\n  after ${steps.join("; ")}\n  again: ${again(settings, run)}`,
  });
}

async function loadProgram() {
  const [show, day, build, summary, json] = await Promise.all(
    ["ingest/read-show", "ingest/read-day", "model/build-day", "summary/day", "export/day-json"].map(
      (name) => import(`../dist/${name}.js`),
    ),
  );
  return {
    readShow: show.readShow,
    readDay: day.readDay,
    buildDay: build.buildDay,
    summariseDay: summary.summariseDay,
    dayJson: json.dayJson,
  };
}

/** The way of the build from a folder in memory to day.json. Throws where something is not as it must be. */
function readThrough(program, files) {
  const folder = memoryFolder(files);
  const show = program.readShow(folder);
  const seen = { findings: show.findings.length, rows: 0 };
  checkFindings(show.findings);
  if (show.input === null) return seen;
  for (const date of show.input.dates) {
    const read = program.readDay(folder, show.input, date);
    const day = program.buildDay(show.input, read.input, [...show.findings, ...read.findings]);
    const summary = program.summariseDay(day, show.input.kit);
    const json = JSON.parse(program.dayJson(summary, { name: "lens-daybook", version: "0" }));
    for (const rows of [json.rows, day.rows, ...day.logs]) {
      must(rows.read === rows.used + rows.unmatched + rows.rejected, `rows do not add up: ${JSON.stringify(rows)}`);
    }
    const inLogs = read.input.logs.reduce((sum, log) => sum + log.rows, 0);
    must(day.rows.read === inLogs, `${inLogs} rows in the logs, ${day.rows.read} counted`);
    checkFindings(summary.findings);
    seen.findings += summary.findings.length;
    seen.rows += inLogs;
  }
  return seen;
}

function checkFindings(findings) {
  for (const finding of findings) {
    must(finding.message !== "" && finding.hint !== "", `${finding.code} has no message or hint`);
    must(finding.line === null || finding.line >= 1, `${finding.code} is in line ${finding.line}`);
    must(finding.column === null || finding.column >= 1, `${finding.code} is in column ${finding.column}`);
  }
}

function must(holds, text) {
  if (!holds) throw new Error(text);
}

/** A show folder over bytes in memory, which takes no name that leads out of it. */
function memoryFolder(files) {
  const names = [...files.keys()].sort();
  const inside = (name) => must(!name.split("/").includes("..") && !name.startsWith("/"), `"${name}" was asked for`);
  return {
    list(folder) {
      inside(folder);
      const prefix = folder === "" ? "" : `${folder}/`;
      const entries = new Map();
      for (const name of names) {
        if (!name.startsWith(prefix)) continue;
        const [first, ...rest] = name.slice(prefix.length).split("/");
        if (first !== "") entries.set(first, { name: first, kind: rest.length > 0 ? "folder" : "file" });
      }
      return entries.size === 0 && folder !== "" ? null : [...entries.values()];
    },
    read(file) {
      inside(file);
      return files.get(file) ?? { problem: "is not there" };
    },
  };
}
