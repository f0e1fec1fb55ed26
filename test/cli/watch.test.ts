/** `daybook watch` as a process over a real folder. Needs the compiled command (`npm run prepare`). */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { runIn } from "./fake-io.ts";

const MAIN = resolve(import.meta.dirname, "../../dist/cli/main.js");
const STRIP = "Built before the last change to notes.csv.";
const FIRST = "2026-03-14";
const SECOND = "2026-03-15";

let root: string;
let child: ChildProcess | undefined;
beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), "daybook-watch-"));
  await runIn(root, ["init", "ferry"]);
  const days = join(root, "ferry/days");
  cpSync(join(days, FIRST), join(days, SECOND), { recursive: true });
  edit(SECOND, "day.yaml", (text) => text.replace("day: 1", "day: 2").replace(FIRST, SECOND));
  edit(SECOND, "notes.csv", (text) => text.replaceAll("A001", "A002").replaceAll("12A,", "12B,"));
  edit(SECOND, "logs/a001c001.csv", (text) => text.replaceAll("A001", "A002"));
});
afterEach(() => {
  child?.kill("SIGKILL");
  rmSync(root, { recursive: true, force: true });
});

function edit(date: string, file: string, change: (text: string) => string): void {
  const path = join(root, "ferry/days", date, file);
  writeFileSync(path, change(readFileSync(path, "utf8")));
}

/** Starts the command; `until` waits for a text after the ones that were waited for before. */
function start(...options: string[]) {
  const started = spawn(process.execPath, [MAIN, "watch", "ferry", ...options], { cwd: root });
  child = started;
  let text = "";
  let from = 0;
  for (const stream of [started.stdout, started.stderr])
    stream?.on("data", (data) => {
      text += String(data);
    });
  const ended = new Promise<number | null>((done) => started.on("exit", (code) => done(code)));
  const until = async (wanted: string): Promise<string> => {
    for (;;) {
      const at = text.indexOf(wanted, from);
      if (at >= 0) {
        const part = text.slice(from, at + wanted.length);
        from = at + wanted.length;
        return part;
      }
      if (started.exitCode !== null) throw new Error(`ended with ${started.exitCode}:\n${text}`);
      await new Promise((tick) => setTimeout(tick, 20));
    }
  };
  return { until, ended, text: () => text, kill: () => started.kill("SIGINT") };
}

const page = (date: string, name = "index") => readFileSync(join(root, "ferry-report/days", date, `${name}.html`), "utf8");
/** Name, size and time of everything made for a day alone; its production page speaks of all days to date. */
const stamps = (date: string) =>
  madeFor(date).map((name) => {
    const { size, mtimeMs } = statSync(join(root, "ferry-report/days", date, name));
    return `${name} ${size} ${mtimeMs}`;
  });

function madeFor(date: string): readonly string[] {
  const names = readdirSync(join(root, "ferry-report/days", date), { recursive: true }).map(String);
  return names.filter((name) => name !== "production.html");
}

describe("daybook watch", () => {
  it("builds the day that changed and no other, keeps the good pages while there are errors, and ends with 130", async () => {
    const watch = start();
    await watch.until("watching ");
    const before = stamps(SECOND);

    edit(FIRST, "notes.csv", (text) => text.replace("Nice pull to the rope", "The one with the gull"));
    await watch.until(`changed: days/${FIRST}/notes.csv`);
    const said = await watch.until("open ferry-report/index.html");
    expect(said).toMatch(new RegExp(`${FIRST}  day 1  built .*\\(notes\\.csv changed\\)`));
    expect(said).not.toContain(`${SECOND}  day 2`);
    expect(page(FIRST)).toContain("The one with the gull");
    expect(stamps(SECOND)).toEqual(before);

    edit(FIRST, "notes.csv", (text) => text.replace(",2.8,3.2-1.6 m", ",2.8,3.2-1.6"));
    const kept = await watch.until("not built: the change has new errors");
    expect(kept).toContain("NOTE303");
    expect(page(FIRST)).toContain("The one with the gull");
    expect(page(FIRST)).toContain(STRIP);
    expect(page(FIRST, "production")).toContain(STRIP);
    expect(page(SECOND, "production")).not.toContain(STRIP);
    expect(stamps(SECOND)).toEqual(before);

    edit(FIRST, "notes.csv", (text) => text.replace(",2.8,3.2-1.6,", ",2.8,3.2-1.6 m,"));
    await watch.until("open ferry-report/index.html");
    expect(page(FIRST)).not.toContain(STRIP);
    expect(page(FIRST, "production")).not.toContain(STRIP);

    watch.kill();
    expect(await watch.ended).toBe(130);
    // neither the whole screen nor what is above the cursor
    const esc = String.fromCharCode(27);
    for (const clearing of ["[2J", "[3J", "[H", "c"]) expect(watch.text()).not.toContain(esc + clearing);
  }, 240_000);

  it("sees changes with --poll too, and keeps the report when show.yaml cannot be used", async () => {
    const watch = start("--poll");
    await watch.until("watching ");
    const path = join(root, "ferry/show.yaml");
    const good = readFileSync(path, "utf8");
    writeFileSync(path, good.replace("rate: 24", "rate: fast"));
    await watch.until("changed: show.yaml");
    await watch.until("not built");
    expect(page(SECOND)).toContain("Built before the last change to show.yaml.");
    writeFileSync(path, good.replace("title: The Ferry Keeper", "title: The Ferry"));
    await watch.until("open ferry-report/index.html");
    expect(page(SECOND)).toContain("The Ferry</a>");
    expect(page(SECOND)).not.toContain('class="stale"');
    watch.kill();
    expect(await watch.ended).toBe(130);
  }, 240_000);

  it("refuses a folder that is no show", () => {
    const { status, stderr } = spawnSync(process.execPath, [MAIN, "watch", "nowhere"], { cwd: root, encoding: "utf8" });
    expect(status).toBe(2);
    expect(stderr).toContain('there is no folder "nowhere"');
  });
});
