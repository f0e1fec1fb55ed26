import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { lockOutput } from "../../src/build/lock.ts";
import { temporaryFolder } from "./fakes.ts";

let out: string;
const file = () => join(out, ".daybook/lock");
beforeEach(() => {
  out = temporaryFolder();
});
afterEach(() => rmSync(out, { recursive: true, force: true }));
const leave = (owner: object | string) => {
  mkdirSync(join(out, ".daybook"), { recursive: true });
  writeFileSync(file(), typeof owner === "string" ? owner : JSON.stringify(owner));
};
/** Number of a process that has ended. */
const ended = () => spawnSync(process.execPath, ["-e", ""]).pid;

describe("lockOutput", () => {
  it("keeps a second build away and says which one is at work, until it is released", () => {
    const first = lockOutput(out);
    expect(lockOutput(out)).toEqual({ by: `process ${process.pid} on ${hostname()}`, file: file() });
    if ("release" in first) first.release();
    expect(readdirSync(join(out, ".daybook"))).toEqual([]);
    expect(lockOutput(out)).toHaveProperty("release");
  });

  it.each([
    ["whose process has ended", () => ({ pid: ended(), host: hostname(), began: null })],
    ["that was cut short", () => '{"pid": 1'],
    ["that is empty", () => ""],
  ])("takes over a lock %s", (_, owner) => {
    leave(owner());
    expect(lockOutput(out)).toHaveProperty("release");
    expect(JSON.parse(readFileSync(file(), "utf8"))).toMatchObject({ pid: process.pid });
    expect(readdirSync(join(out, ".daybook"))).toEqual(["lock"]);
  });

  it.runIf(existsSync("/proc/self/stat"))("takes over a lock whose number was given to another process since", () => {
    leave({ pid: process.pid, host: hostname(), began: "1" });
    expect(lockOutput(out)).toHaveProperty("release");
  });

  it("leaves the lock of another computer alone: nobody here can know", () => {
    leave({ pid: ended(), host: `not-${hostname()}`, began: null });
    expect(lockOutput(out)).toMatchObject({ by: expect.stringContaining(`not-${hostname()}`) });
  });

  it("clears away what a process left that was killed while it took the lock", () => {
    leave({ pid: ended(), host: hostname(), began: null });
    writeFileSync(join(out, `.daybook/lock-${ended()}`), "half");
    lockOutput(out);
    expect(readdirSync(join(out, ".daybook"))).toEqual(["lock"]);
  });

  it("releases only its own lock", () => {
    const first = lockOutput(out);
    leave({ pid: 1, host: "elsewhere", began: null });
    if ("release" in first) first.release();
    expect(existsSync(file())).toBe(true);
  });
});
