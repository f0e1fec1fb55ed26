// A browser driven by WebDriver BiDi, the W3C's protocol, over one WebSocket: no driver program and no package between.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Settings of a fresh profile: no questions, no first-run pages, nothing sent anywhere. */
const PROFILE = {
  "browser.shell.checkDefaultBrowser": false,
  "browser.aboutwelcome.enabled": false,
  "datareporting.policy.dataSubmissionEnabled": false,
  "toolkit.telemetry.enabled": false,
  "app.normandy.enabled": false,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "remote.active-protocols": 1,
};

/** Starts the browser without a window. `close` ends it and removes its profile. */
export async function launch(program) {
  const profile = mkdtempSync(join(tmpdir(), "daybook-firefox-"));
  const lines = Object.entries(PROFILE).map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`);
  writeFileSync(join(profile, "user.js"), lines.join(""));
  const child = spawn(program, ["--headless", "--no-remote", "--profile", profile, "--remote-debugging-port", "0"]);
  const socket = await opened(`${await address(child)}/session`);
  const { send, onEvent } = protocol(socket);
  await send("session.new", { capabilities: {} });
  await send("session.subscribe", { events: ["log.entryAdded", "network.beforeRequestSent"] });
  return {
    send,
    onEvent,
    async close() {
      await send("browser.close", {}).catch(() => {});
      await new Promise((done) => {
        if (child.exitCode !== null) done();
        child.on("exit", done);
        setTimeout(() => child.kill(), 10_000).unref();
      });
      rmSync(profile, { recursive: true, force: true });
    },
  };
}

/** The address of the protocol, which the browser says when it is ready. */
function address(child) {
  return new Promise((resolve, reject) => {
    let said = "";
    child.stderr.on("data", (text) => {
      said += text;
      const match = /WebDriver BiDi listening on (ws:\/\/\S+)/.exec(said);
      if (match !== null) resolve(match[1]);
    });
    child.on("exit", (code) => reject(new Error(`the browser ended (${code}): ${said}`)));
    child.on("error", reject);
  });
}

function opened(url) {
  const socket = new WebSocket(url);
  return new Promise((resolve, reject) => {
    socket.addEventListener("open", () => resolve(socket));
    socket.addEventListener("error", () => reject(new Error(`no connection to ${url}`)));
  });
}

function protocol(socket) {
  const waiting = new Map();
  const listeners = [];
  let last = 0;
  socket.addEventListener("message", ({ data }) => {
    const message = JSON.parse(data);
    if (message.type === "event") {
      for (const listener of listeners) listener(message.method, message.params);
      return;
    }
    const { resolve, reject } = waiting.get(message.id);
    waiting.delete(message.id);
    if (message.type === "success") resolve(message.result);
    else reject(new Error(`${message.error}: ${message.message}`));
  });
  return {
    onEvent: (listener) => listeners.push(listener),
    send(method, params) {
      const id = ++last;
      socket.send(JSON.stringify({ id, method, params }));
      return new Promise((resolve, reject) => waiting.set(id, { resolve, reject }));
    },
  };
}

/** A tab: what a test does with it. */
export async function openTab({ send }, width = 1280, height = 900) {
  const { context } = await send("browsingContext.create", { type: "tab" });
  await send("browsingContext.setViewport", { context, viewport: { width, height } });
  const evaluate = async (expression) => {
    const params = { expression, target: { context }, awaitPromise: true, serializationOptions: { maxObjectDepth: 3 } };
    const { type, result, exceptionDetails } = await send("script.evaluate", params);
    if (type === "exception") throw new Error(`${exceptionDetails.text}: ${expression}`);
    return result.value;
  };
  const keys = (actions) => send("input.performActions", { context, actions: [{ type: "key", id: "keyboard", actions }] });
  return {
    context,
    evaluate,
    goto: (url) => send("browsingContext.navigate", { context, url, wait: "complete" }),
    /** Types a text, a key after the other. */
    type: (text) =>
      keys(
        [...text].flatMap((value) => [
          { type: "keyDown", value },
          { type: "keyUp", value },
        ]),
      ),
    /** Presses one key while another is held; both as WebDriver names them. */
    chord: (held, key) =>
      keys([
        { type: "keyDown", value: held },
        { type: "keyDown", value: key },
        { type: "keyUp", value: key },
        { type: "keyUp", value: held },
      ]),
    /** Waits until an expression in the page is true; says it when it never is. */
    async until(expression, seconds = 20) {
      const end = Date.now() + 1000 * seconds;
      while (!(await evaluate(`Boolean(${expression})`))) {
        if (Date.now() > end) throw new Error(`never true: ${expression}`);
        await new Promise((done) => setTimeout(done, 50));
      }
    },
    /** The page on paper as the bytes of a PDF. */
    async print() {
      const { data } = await send("browsingContext.print", { context, background: true });
      return Buffer.from(data, "base64");
    },
    async screenshot() {
      const { data } = await send("browsingContext.captureScreenshot", { context });
      return Buffer.from(data, "base64");
    },
  };
}

/** Keys as WebDriver names them. */
export const KEY = { control: "\uE009", enter: "\uE007", right: "\uE014" };
