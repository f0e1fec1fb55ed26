import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { c4Of, fileHashes } from "../../../src/export/mhl/hashes.ts";
import { expectedFiles, type NamedBytes, nextHistory, readHistory } from "../../../src/export/mhl/history.ts";
import { CHAIN_NAME, type HistorySettings, type ListedFile, readChain, readManifest } from "../../../src/export/mhl/manifest.ts";
import { historySettings } from "../../../src/export/mhl/settings.ts";
import { dayOf } from "../editorial/days.ts";

const SETTINGS: HistorySettings = {
  created: "2031-05-06T17:30:00Z",
  host: "SMALL & SONS",
  tool: { name: "Lens Daybook", version: "1.0.0" },
  folder: "2031-05-06",
};
const FIRST = "0001_2031-05-06_2031-05-06_173000Z.mhl";
const SECOND = "0002_2031-05-06_2031-05-06_173000Z.mhl";

const listed = (files: Record<string, string>): readonly ListedFile[] =>
  Object.entries(files).map(([path, text]) => ({ path, bytes: Buffer.byteLength(text), hashes: fileHashes(Buffer.from(text)) }));
const names = (files: readonly NamedBytes[]) => files.map((file) => file.name).sort();
const textOf = (files: readonly NamedBytes[], name: string) => Buffer.from(files.find((f) => f.name === name)!.bytes).toString();

const PACK = { "day.json": "{}", "takes.csv": "a,b\n", "editorial/bins.csv": "é & <>" };

describe("nextHistory", () => {
  it("begins with generation 1 and a chain that vouches for it", () => {
    const { files, generation, open } = nextHistory([], listed(PACK), SETTINGS);
    expect({ names: names(files), generation, open }).toEqual({
      names: [FIRST, CHAIN_NAME],
      generation: 1,
      open: c4Of(textOf(files, FIRST)),
    });
    expect(readChain(textOf(files, CHAIN_NAME))).toEqual([{ generation: 1, name: FIRST, c4: c4Of(textOf(files, FIRST)) }]);
    const manifest = readManifest(textOf(files, FIRST));
    expect(manifest).toMatchObject({ created: "2031-05-06T17:30:00+00:00", host: "SMALL & SONS", tool: "Lens Daybook" });
    expect(manifest?.files.map((file) => [file.path, file.bytes])).toEqual([
      ["day.json", 2],
      // é is two bytes in UTF-8
      ["editorial/bins.csv", 7],
      ["takes.csv", 4],
    ]);
  });

  it("keeps the history of a pack that did not change, byte for byte", () => {
    const first = nextHistory([], listed(PACK), SETTINGS);
    const again = nextHistory(first.files, listed(PACK), { ...SETTINGS, created: "2040-01-01T00:00:00Z" });
    expect(again).toMatchObject({ generation: 1, open: null, problems: [] });
    expect(again.files).toEqual(first.files);
  });

  it.each([
    ["a changed file", { ...PACK, "day.json": "{ }" }],
    ["a new file", { ...PACK, "LOSSES.md": "" }],
    ["a file less", { "day.json": "{}", "takes.csv": "a,b\n" }],
  ])("gives %s a new generation and leaves the first as it is", (_, pack) => {
    const first = nextHistory([], listed(PACK), SETTINGS);
    const second = nextHistory(first.files, listed(pack), SETTINGS);
    expect(second).toMatchObject({ generation: 2, open: expect.any(String), problems: [] });
    expect(names(second.files)).toEqual([FIRST, SECOND, CHAIN_NAME]);
    expect(textOf(second.files, FIRST)).toBe(textOf(first.files, FIRST));
    expect(readChain(textOf(second.files, CHAIN_NAME))?.map((link) => link.generation)).toEqual([1, 2]);
    const expected = expectedFiles(readHistory(second.files), "Lens Daybook");
    expect([...expected.keys()].sort()).toEqual(Object.keys(pack).sort());
    expect(nextHistory(second.files, listed(pack), SETTINGS).open).toBeNull();
  });

  it("gives a pack that went back to an earlier state a third generation", () => {
    const first = nextHistory([], listed(PACK), SETTINGS);
    const second = nextHistory(first.files, listed({ ...PACK, "day.json": "2" }), SETTINGS);
    expect(nextHistory(second.files, listed(PACK), SETTINGS)).toMatchObject({ generation: 3, open: expect.any(String) });
  });

  it("makes a manifest anew that a killed build left without a link in the chain", () => {
    const first = nextHistory([], listed(PACK), SETTINGS);
    const changed = listed({ ...PACK, "day.json": "2" });
    const whole = nextHistory(first.files, changed, SETTINGS);
    const half = [...first.files, ...whole.files.filter((file) => file.name === SECOND)];
    expect(nextHistory(half, changed, SETTINGS)).toEqual(whole);
    expect(names(nextHistory(half, listed(PACK), SETTINGS).files)).toEqual([FIRST, CHAIN_NAME]);
  });

  it("says that a manifest was changed, and still keeps it", () => {
    const { files } = nextHistory([], listed(PACK), SETTINGS);
    const forged = files.map((file) =>
      file.name === FIRST ? { ...file, bytes: Buffer.from(textOf(files, FIRST).replace("SMALL", "LARGE")) } : file,
    );
    const next = nextHistory(forged, listed({ ...PACK, "day.json": "2" }), SETTINGS);
    expect(next.problems).toEqual([`${FIRST} is not what ${CHAIN_NAME} vouches for.`]);
    expect(textOf(next.files, FIRST)).toContain("LARGE");
    expect(next.generation).toBe(2);
  });

  it.each([
    ["gone", null],
    ["no XML", "half a li"],
  ])("goes on after the last manifest when the chain is %s", (_, chain) => {
    const { files } = nextHistory([], listed(PACK), SETTINGS);
    const rest = files.filter((file) => file.name !== CHAIN_NAME);
    const broken = chain === null ? rest : [...rest, { name: CHAIN_NAME, bytes: Buffer.from(chain) }];
    const next = nextHistory(broken, listed({ ...PACK, "day.json": "2" }), SETTINGS);
    expect(next.problems).toHaveLength(1);
    expect(names(next.files)).toEqual([FIRST, SECOND, CHAIN_NAME]);
    expect(textOf(next.files, FIRST)).toBe(textOf(files, FIRST));
  });

  describe("with lists that were not issued", () => {
    const first = nextHistory([], listed(PACK), SETTINGS);
    const OTHER = { ...PACK, "day.json": "2" };
    const openLists = new Set([first.open ?? ""]);

    it("replaces such a list: the pack has one generation however often it was built", () => {
      const second = nextHistory(first.files, listed(OTHER), SETTINGS, openLists);
      expect(second).toEqual(nextHistory([], listed(OTHER), SETTINGS));
      expect(second.generation).toBe(1);
      // unchanged, it is written anew with the same bytes
      expect(nextHistory(first.files, listed(PACK), SETTINGS, openLists)).toEqual(first);
    });

    it("never touches an issued one below it, and leaves the pack with that one when it is as it was", () => {
      const second = nextHistory(first.files, listed(OTHER), SETTINGS);
      const third = nextHistory(second.files, listed({ ...PACK, "day.json": "3" }), SETTINGS, new Set([second.open ?? ""]));
      expect(third.generation).toBe(2);
      expect(textOf(third.files, FIRST)).toBe(textOf(first.files, FIRST));
      expect(textOf(third.files, SECOND)).not.toBe(textOf(second.files, SECOND));
      const back = nextHistory(third.files, listed(PACK), SETTINGS, new Set([third.open ?? ""]));
      expect({ ...back, files: names(back.files) }).toEqual({ files: names(first.files), generation: 1, open: null, problems: [] });
      expect(readHistory(back.files).problems).toEqual([]);
    });

    it("keeps one that stands below a list of somebody else: they have the pack", () => {
      const check = `<hashlist version="2.0" xmlns="urn:ASC:MHL:v2.0"><creatorinfo><creationdate>2031-05-08T09:00:00+02:00</creationdate>
        <hostname>cart</hostname><tool version="1">other</tool></creatorinfo><processinfo><process>in-place</process></processinfo></hashlist>`;
      const link = `<hashlist sequencenr="2"><path>0002_x.mhl</path><c4>${c4Of(check)}</c4></hashlist>`;
      const chain = textOf(first.files, CHAIN_NAME).replace("</ascmhldirectory>", `${link}</ascmhldirectory>`);
      const files = [
        ...first.files.filter((file) => file.name !== CHAIN_NAME),
        { name: "0002_x.mhl", bytes: Buffer.from(check) },
        { name: CHAIN_NAME, bytes: Buffer.from(chain) },
      ];
      const next = nextHistory(files, listed(OTHER), SETTINGS, openLists);
      expect(next.generation).toBe(3);
      expect(textOf(next.files, FIRST)).toBe(textOf(first.files, FIRST));
    });

    it("makes a list anew that a killed build left without its chain, or whose chain is gone", () => {
      const whole = nextHistory(first.files, listed(OTHER), SETTINGS, openLists);
      // the manifest is replaced, the chain is still the old one
      const half = [...whole.files.filter((f) => f.name === FIRST), ...first.files.filter((f) => f.name === CHAIN_NAME)];
      const both = new Set([...openLists, whole.open ?? ""]);
      expect(nextHistory(half, listed(OTHER), SETTINGS, both)).toEqual(whole);
      const chainless = whole.files.filter((f) => f.name === FIRST);
      expect(nextHistory(chainless, listed(OTHER), SETTINGS, both)).toEqual(whole);
    });
  });

  it("takes the hashes of another program's generation for what they are: a check, no new list", () => {
    const first = nextHistory([], listed(PACK), SETTINGS);
    const check = `<hashlist version="2.0" xmlns="urn:ASC:MHL:v2.0"><creatorinfo><creationdate>2031-05-08T09:00:00+02:00</creationdate>
      <hostname>cart</hostname><tool version="1">other</tool></creatorinfo><processinfo><process>in-place</process></processinfo><hashes>
      <hash><path size="2">day.json</path><xxh64 action="verified">0123456789abcdef</xxh64></hash>
      <hash><path size="4">takes.csv</path><md5 action="failed">00000000000000000000000000000000</md5></hash></hashes></hashlist>`;
    const chain = textOf(first.files, CHAIN_NAME).replace(
      "</ascmhldirectory>",
      `<hashlist sequencenr="2"><path>0002_x.mhl</path><c4>${c4Of(check)}</c4></hashlist></ascmhldirectory>`,
    );
    const files = [
      ...first.files.filter((file) => file.name !== CHAIN_NAME),
      { name: "0002_x.mhl", bytes: Buffer.from(check) },
      { name: CHAIN_NAME, bytes: Buffer.from(chain) },
    ];
    expect(nextHistory(files, listed(PACK), SETTINGS)).toMatchObject({ generation: 2, open: null, problems: [] });
    expect(nextHistory(files, listed({ ...PACK, "day.json": "3" }), SETTINGS)).toMatchObject({
      generation: 3,
      open: expect.any(String),
    });
  });
});

describe("readManifest and readChain", () => {
  it.each(["../../etc/passwd", "/etc/passwd", "a/../../b", "C:\\x", ""])("refuse the path %j", (path) => {
    const entry = `<hash><path>${path}</path><md5>x</md5></hash>`;
    expect(readManifest(`<hashlist><creatorinfo/><hashes>${entry}</hashes></hashlist>`)).toBeNull();
    expect(
      readChain(`<ascmhldirectory><hashlist sequencenr="1"><path>${path}</path><c4>c4</c4></hashlist></ascmhldirectory>`),
    ).toBeNull();
  });
});

describe("historySettings", () => {
  const made = (zone: string, wrap: string) => {
    const files = { "days/2031-05-06/day.yaml": `day: 1\ndate: 2031-05-06\n${wrap}` };
    return historySettings(dayOf([], files, `rate: 24\ncode: SMALL\n${zone}`), SETTINGS.tool);
  };

  it.each([
    ["the wrap in UTC where the show has no time zone", "", "wrap: 19:15\n", "2031-05-06T19:15:00Z"],
    ["noon where no wrap is noted", "", "", "2031-05-06T12:00:00Z"],
    // British Summer Time is an hour ahead of UTC, Norfolk Island 11 hours, Newfoundland in summer two and a half behind
    ["the wrap in London", "time_zone: Europe/London\n", "wrap: 19:15\n", "2031-05-06T18:15:00Z"],
    ["the wrap half a day from here", "time_zone: Pacific/Norfolk\n", "wrap: 08:00\n", "2031-05-05T21:00:00Z"],
    ["the wrap in half hours", "time_zone: America/St_Johns\n", "wrap: 19:15\n", "2031-05-06T21:45:00Z"],
    ["a wrap past midnight", "time_zone: Europe/London\n", "wrap: 01:35+1\n", "2031-05-07T00:35:00Z"],
    ["UTC for a zone that nobody knows", "time_zone: Nowhere/Land\n", "wrap: 19:15\n", "2031-05-06T19:15:00Z"],
  ])("dates the list at %s", (_, zone, wrap, created) => {
    expect(made(zone, wrap)).toMatchObject({ created, host: "SMALL", folder: "2031-05-06" });
  });
});

const SCHEMAS = join(import.meta.dirname, "../../../../shared/standards/ascmhl");
const hasLint = spawnSync("xmllint", ["--version"]).error === undefined;
const missing = !existsSync(SCHEMAS)
  ? "the schemas of ../shared/standards"
  : !hasLint && process.env.CI !== "true"
    ? "xmllint"
    : null;

describe("the published schemas", () => {
  it.skipIf(missing !== null)(`accept manifests and chain${missing === null ? "" : ` (skipped: no ${missing})`}`, () => {
    const work = mkdtempSync(join(tmpdir(), "daybook-mhl-"));
    try {
      const first = nextHistory([], listed(PACK), SETTINGS);
      const { files } = nextHistory(first.files, listed({}), { ...SETTINGS, host: 'a "<&>" \u0007 é' });
      for (const { name, bytes } of files) writeFileSync(join(work, name), bytes);
      // the chain's schema names the other one by an address of the network; here it is the file beside it
      for (const name of ["ASCMHL.xsd", "ASCMHLDirectory.xsd"]) {
        const schema = readFileSync(join(SCHEMAS, name), "utf8");
        writeFileSync(join(work, name), schema.replace(/schemaLocation="[^"]*ASCMHL\.xsd"/, 'schemaLocation="ASCMHL.xsd"'));
      }
      const validate = (schema: string, name: string) =>
        execFileSync("xmllint", ["--nonet", "--noout", "--schema", schema, name], { cwd: work, stdio: "pipe" });
      for (const name of [FIRST, SECOND]) validate("ASCMHL.xsd", name);
      validate("ASCMHLDirectory.xsd", CHAIN_NAME);
      const broken = textOf(files, FIRST).replace("<processinfo>", "<processinfo><process>by hand</process>");
      writeFileSync(join(work, "broken.mhl"), broken);
      expect(() => validate("ASCMHL.xsd", "broken.mhl")).toThrow();
    } finally {
      rmSync(work, { recursive: true, force: true });
    }
  });
});
