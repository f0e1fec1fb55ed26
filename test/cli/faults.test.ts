/** Builds that are killed, that meet, or that a disk refuses. Needs the compiled command (`npm run prepare`). */
import { spawn, spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { filesOf } from "../helpers/built-site.ts";
import { runIn } from "./fake-io.ts";

const MAIN = resolve(import.meta.dirname, "../../dist/cli/main.js");
const DATE = "2026-03-14";
/** A few each time, all of them while it works; KILLS=100 npx vitest run test/cli/faults.test.ts for a long run. */
const ROUNDS = Number(process.env.KILLS ?? 5);
let root: string;
vi.setConfig({ testTimeout: 300_000 + 30_000 * ROUNDS, hookTimeout: 60_000 });
/** The builds that are not disturbed themselves run in this process. */
const run = (...args: string[]) => runIn(root, args);
const path = (name: string) => join(root, name);
const wait = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));

/** The command as a process; `atWork` when it has taken the output folder for itself, which it does before it writes. */
function building(out: string) {
  const child = spawn(process.execPath, [MAIN, "build", "ferry", "--out", out, "--quiet"], { cwd: root, stdio: "ignore" });
  const ended = new Promise<number | null>((done) => child.on("exit", done));
  const atWork = (async () => {
    while (!existsSync(path(`${out}/.daybook/lock`)) && child.exitCode === null) await wait(2);
  })();
  return { child, atWork, ended };
}

/** Every file with its bytes, records of the build too. */
const content = (folder: string) =>
  Object.fromEntries(filesOf(folder).map((file) => [file, readFileSync(join(folder, file)).toString("latin1")]));

function remark(words: string): void {
  const notes = path(`ferry/days/${DATE}/notes.csv`);
  writeFileSync(notes, readFileSync(notes, "utf8").replace(/\w+ pull to the rope/, `${words} pull to the rope`));
}

/** `first`: a report of the notes as they were. The notes are others by now, and the next build has work to do. */
beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), "daybook-faults-"));
  await run("init", "ferry");
  expect((await run("build", "ferry", "--out", "first")).status).toBe(0);
  remark("Nicer");
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe("a build that is killed", () => {
  it(`leaves nothing that the next one does not mend: ${ROUNDS} times, the same bytes as an undisturbed build`, async () => {
    cpSync(path("first"), path("undisturbed"), { recursive: true });
    const undisturbed = building("undisturbed");
    await undisturbed.atWork;
    const start = performance.now();
    expect(await undisturbed.ended).toBe(0);
    const whole = performance.now() - start;
    const expected = content(path("undisturbed"));
    let kills = 0;
    for (let round = 0; round < ROUNDS; round++) {
      rmSync(path("killed"), { recursive: true, force: true });
      cpSync(path("first"), path("killed"), { recursive: true });
      const { child, atWork, ended } = building("killed");
      // from the start of the work to its end, in even steps
      await atWork;
      await wait((whole * round) / ROUNDS);
      child.kill("SIGKILL");
      // no status: it was not done yet
      if ((await ended) === null) kills++;
      expect((await run("build", "ferry", "--out", "killed")).status, `round ${round}`).toBe(0);
      expect(content(path("killed")), `round ${round}`).toEqual(expected);
    }
    expect(kills).toBeGreaterThan(ROUNDS / 2);
  });
});

describe("two builds on one output folder", () => {
  it("never mix: the second says which process is at work, ends with 2, and is done when called again", async () => {
    const { child, atWork, ended } = building("both");
    await atWork;
    const second = await run("build", "ferry", "--out", "both");
    expect(second.status).toBe(2);
    expect(second.stdout).toContain(`OUT807  ${path("both")} is in use by process ${child.pid}`);
    expect(await ended).toBe(0);
    expect((await run("build", "ferry", "--out", "both")).status).toBe(0);
  });
});

/** A small disk in memory; `null` where this user may not mount one. */
function smallDisk(name: string, size: string): { readonly folder: string; remount(how: string): void; unmount(): void } | null {
  const folder = path(name);
  mkdirSync(folder);
  const mount = (...args: string[]) => spawnSync("mount", args).status === 0;
  if (!mount("-t", "tmpfs", "-o", `size=${size}`, "tmpfs", folder)) return null;
  return {
    folder,
    remount: (how) => expect(mount("-o", `remount,${how}`, folder)).toBe(true),
    unmount: () => void spawnSync("umount", [folder]),
  };
}

const isRoot = process.getuid?.() === 0;
const canMount = isRoot && process.platform === "linux" && mountWorks();
function mountWorks(): boolean {
  const folder = mkdtempSync(join(tmpdir(), "daybook-mount-"));
  const works = spawnSync("mount", ["-t", "tmpfs", "-o", "size=4k", "tmpfs", folder]).status === 0;
  if (works) spawnSync("umount", [folder]);
  rmSync(folder, { recursive: true, force: true });
  return works;
}
const why = canMount ? "" : " (skipped: only root on Linux may mount a small disk)";

describe("a disk that refuses", () => {
  it.skipIf(!canMount)(`is full: a clear error, exit 2, the earlier report untouched, and room again${why}`, async () => {
    const disk = smallDisk("disk", "4m");
    try {
      const out = join(disk!.folder, "report");
      cpSync(path("first"), out, { recursive: true });
      const before = content(out);
      spawnSync("dd", ["if=/dev/zero", `of=${join(disk!.folder, "fill")}`, "bs=1k"]);
      for (const room of [0, 60, 200]) {
        const fill = join(disk!.folder, "fill");
        const size = readFileSync(fill).length;
        spawnSync("truncate", ["-s", String(Math.max(0, size - room * 1024)), fill]);
        const { status, stdout } = await run("build", "ferry", "--out", out);
        expect(status).toBe(2);
        expect(stdout).toContain("OUT801");
        expect(stdout).toContain("does not fit: the disk is full");
        expect(content(out)).toEqual(before);
      }
      rmSync(join(disk!.folder, "fill"));
      expect((await run("build", "ferry", "--out", out)).status).toBe(0);
    } finally {
      disk?.unmount();
    }
  });

  // root writes where it may not; a disk mounted for reading stops it too
  it.skipIf(isRoot && !canMount)(
    `may only be read: a clear error, exit 2, the earlier report untouched${isRoot ? why : ""}`,
    async () => {
      const disk = isRoot ? smallDisk("locked", "8m") : null;
      const out = join(disk?.folder ?? root, "readable");
      try {
        cpSync(path("first"), out, { recursive: true });
        const before = content(out);
        if (disk === null) for (const folder of [out, join(out, ".daybook")]) chmodSync(folder, 0o555);
        else disk.remount("ro");
        const { status, stdout, stderr } = await run("build", "ferry", "--out", out);
        expect(status).toBe(2);
        expect(stdout).toMatch(/OUT801 {2}.*(permission denied|disk that cannot be written)/);
        expect(stderr).not.toContain("fault");
        expect(content(out)).toEqual(before);
      } finally {
        if (disk === null) for (const folder of [out, join(out, ".daybook")]) chmodSync(folder, 0o755);
        disk?.unmount();
      }
    },
  );
});
