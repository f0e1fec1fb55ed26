/**
 * A log that is read a few bytes at a time is the log that is read as a whole: the same columns, texts, places and findings, for every
 * case folder and for every encoding and line end that a log comes in.
 */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { memorySource } from "../../src/csv/byte-source.ts";
import type { ShowFolder } from "../../src/ingest/folder.ts";
import type { LensLog } from "../../src/ingest/log/log-record.ts";
import { readDay } from "../../src/ingest/read-day.ts";
import { readShow } from "../../src/ingest/read-show.ts";
import { type Files, memoryFolder, SMALL_KIT } from "../helpers/memory-show.ts";

const CASES = fileURLToPath(new URL("../cases", import.meta.url));
const DATE = "2031-05-06";
const IS_LOG = /\/logs\/[^/]+\.(csv|jsonl)$/;

function filesBelow(folder: string, prefix = ""): Record<string, Uint8Array> {
  return Object.assign(
    {},
    ...readdirSync(folder).map((name) => {
      const path = join(folder, name);
      if (statSync(path).isDirectory()) return filesBelow(path, `${prefix}${name}/`);
      return name === "expected.json" ? {} : { [prefix + name]: new Uint8Array(readFileSync(path)) };
    }),
  );
}

function contents(log: LensLog): unknown {
  const rows = Array.from({ length: log.rows }, (_, row) => row);
  const names = ["timecode", "focus", "t", ...Object.keys(log.columns), ...log.unknown.map(({ name }) => name)];
  return {
    ...log,
    columns: Object.fromEntries(Object.entries(log.columns).map(([name, values]) => [name, [...values]])),
    timing: log.timing.kind === "time" ? [...log.timing.seconds] : [...log.timing.frames],
    rowKeys: Object.entries(log.rowKeys).map(([name, text]) => [name, rows.map((row) => text?.(row))]),
    unknown: log.unknown.map(({ name, text }) => [name, rows.map(text)]),
    lines: rows.map(log.lineOf),
    // Backwards, so that every page is left and read again.
    cells: rows.reverse().map((row) => names.map((name) => log.cell(row, name))),
    keyPlace: ["camera", "rate", "lens"].map(log.keyPlace),
    lineOf: null,
    cell: null,
  };
}

function reading(files: Files, stretch: number | null): unknown {
  const folder: ShowFolder = memoryFolder({ ...SMALL_KIT, [`days/${DATE}/day.yaml`]: `day: 1\ndate: ${DATE}\n`, ...files });
  const open = (file: string) => {
    const content = folder.read(file);
    return content instanceof Uint8Array ? memorySource(content, stretch ?? content.length + 1) : content;
  };
  const show = readShow(folder);
  if (show.input === null) throw new Error("the show of the case cannot be read");
  const { input, findings } = readDay({ ...folder, open }, show.input, DATE);
  return { logs: input.logs.map(contents), files: input.files, findings };
}

const utf16 = (text: string, swapped: boolean): Uint8Array => {
  const bytes = Buffer.from(`\ufeff${text}`, "utf16le");
  return new Uint8Array(swapped ? bytes.swap16() : bytes);
};

/** The ways in which the text of a log reaches a card. */
const WAYS: Readonly<Record<string, (text: string) => Uint8Array>> = {
  "CRLF ends": (text) => new TextEncoder().encode(text.replace(/\n/g, "\r\n")),
  "CR ends": (text) => new TextEncoder().encode(text.replace(/\n/g, "\r")),
  "UTF-16, little end first": (text) => utf16(text, false),
  "UTF-16, big end first, with CRLF": (text) => utf16(text.replace(/\n/g, "\r\n"), true),
  "UTF-16 with CR ends": (text) => utf16(text.replace(/\n/g, "\r"), false),
  "Windows-1252": (text) => new Uint8Array(Buffer.from(`${text}# caf\u00e9\n`, "latin1")),
  "a byte order mark": (text) => new TextEncoder().encode(`\ufeff${text}`),
};

describe("a log that is read seven bytes at a time", () => {
  for (const name of readdirSync(CASES).sort()) {
    const own = filesBelow(join(CASES, name));
    const logs = Object.keys(own).filter((file) => IS_LOG.test(file));
    const isFolder = (file: string) => Object.keys(own).some((other) => other.startsWith(`${file}/`));
    if (logs.length === 0 || isFolder(`days/${DATE}/day.yaml`)) continue;
    it(`is the whole one: ${name}`, () => {
      const whole = reading(own, null);
      for (const stretch of [1, 7, 64]) expect(reading(own, stretch)).toEqual(whole);
      for (const [way, bytesOf] of Object.entries(WAYS)) {
        const turned = { ...own };
        for (const log of logs)
          turned[log] = bytesOf(
            Buffer.from(own[log] ?? [])
              .toString("utf8")
              .replace(/\r\n?/g, "\n"),
          );
        expect(reading(turned, 7), way).toEqual(reading(turned, null));
      }
    });
  }
});
