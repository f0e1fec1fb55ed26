/** The command as a process: pipes, signals and time. Needs the compiled command (`npm run prepare`). */
import { execFileSync, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { runIn } from "./fake-io.ts";

const MAIN = resolve(import.meta.dirname, "../../dist/cli/main.js");
let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "daybook-process-"));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));
const run = (args: string[], env: Record<string, string> = {}) =>
  spawnSync(process.execPath, [MAIN, ...args], { cwd: root, encoding: "utf8", env: { ...process.env, ...env } });

describe("daybook as a process", () => {
  it("builds the show that init writes, beside it, and says where to open it", async () => {
    expect(run(["init", "ferry"]).status).toBe(0);
    const built = run(["build", "ferry"]);
    expect(built.stderr).not.toContain("fault");
    expect(built.status).toBe(0);
    expect(built.stdout).toContain("open ferry-report/index.html");
    expect(existsSync(join(root, "ferry-report/index.html"))).toBe(true);
    expect(readdirSync(join(root, "ferry-report/packs/2026-03-14")).sort()).toEqual(
      expect.arrayContaining(["FERRY-2026-03-14-camera-report.pdf", "datapackage.json", "day.json", "findings.csv", "takes.csv"]),
    );
    const again = await runIn(root, ["build", "ferry", "--verbose"]);
    expect(again.stderr).toContain("unchanged");
  });

  it("ends with 130 when interrupted, and the next build makes the report whole", async () => {
    await runIn(root, ["init", "ferry"]);
    const child = spawn(process.execPath, [MAIN, "build", "ferry"], { cwd: root });
    const ended = new Promise<{ code: number | null; signal: string | null }>((done) => {
      child.on("exit", (code, signal) => done({ code, signal }));
    });
    while (!existsSync(join(root, "ferry-report/.daybook")) && child.exitCode === null)
      await new Promise((tick) => setTimeout(tick, 2));
    child.kill("SIGINT");
    const { code } = await ended;
    expect([130, 0]).toContain(code);
    expect((await runIn(root, ["build", "ferry"])).status).toBe(0);
    expect(readdirSync(join(root, "ferry-report")).filter((name) => name.startsWith(".tmp"))).toEqual([]);
    expect(existsSync(join(root, "ferry-report/index.html"))).toBe(true);
  });

  it.runIf(process.platform !== "win32")("survives a reader that closes the pipe early", () => {
    const out = execFileSync("sh", ["-c", `"${process.execPath}" "${MAIN}" columns | head -n 1; echo done`], { encoding: "utf8" });
    expect(out).toMatch(/done\n$/);
  });

  it("explains a code without loading what builds reports", () => {
    const script = `const {runCommand}=await import(${JSON.stringify(MAIN.replace("main.js", "run-command.js"))});
      const io={out:{write(){},isTerminal:false,columns:80},err:{write(){},isTerminal:false,columns:80},env:{},cwd:"/",now:()=>0};
      await runCommand(["explain","CSV101"],io);
      const {createRequire}=await import("node:module");
      console.log(Object.keys(createRequire(import.meta.url).cache).filter((f)=>/eleventy|pdfkit|nunjucks|fontkit/.test(f)).length);`;
    const { stdout } = spawnSync(process.execPath, ["--input-type=module", "-e", script], { encoding: "utf8" });
    expect(Number(stdout.split(" ")[0])).toBe(0);
  });

  it("writes what happened into a file when the program fails, and says so", async () => {
    await runIn(root, ["init", "ferry"]);
    const broken = join(root, "broken.mjs");
    writeFileSync(broken, `String.prototype.padStart = () => { throw new TypeError("a fault made by the test"); };`);
    const result = run(["build", "ferry"], { NODE_OPTIONS: `--import=${JSON.stringify(broken)}`, TMPDIR: root });
    expect(result.status).toBe(70);
    expect(result.stderr).toContain("This is a fault in the program, not a mistake in your data.");
    const path = /written down in (\S+)/.exec(result.stderr)?.[1] ?? "";
    expect(readFileSync(path, "utf8")).toContain("a fault made by the test");
  });
});
