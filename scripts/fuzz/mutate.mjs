// Ways to damage a show. Each changes one file in the map and says what it did.

const STRANGE = [
  "\0",
  "\r",
  "\n",
  "\r\n",
  '"',
  '""',
  "'",
  ",",
  ";",
  "\t",
  "|",
  "#",
  "# ",
  ":",
  ": ",
  "- ",
  "&a ",
  "*a",
  "!!js ",
  "{",
  "}",
  "[",
  "]",
  "\ufeff",
  "\u202e",
  "é",
  "\u{1d11e}",
  "½",
  "∞",
  "−",
  "=HYPERLINK(1)",
  "<script>",
  "inf",
  "-inf",
  "NaN",
  "null",
  "0",
  "-1",
  "9999",
  "65535",
  "1e400",
  "__proto__",
  "constructor",
  "%{x}",
  "# rate: 0",
  "# rate: 1/0",
  "# drop_frame: yes",
  "# decimal: ,",
  "# clock_offset_frames: 99999999999",
  "\n# slate: 1\n",
  "timecode,timecode\n",
];
const HUGE = [
  "1e308",
  "-1e308",
  "1e-320",
  "9".repeat(400),
  "0.".concat("0".repeat(400), "1"),
  "-0",
  "4294967296",
  "9007199254740993",
  "1e999999",
];
const PATHS = [
  "../../etc/passwd",
  "..",
  "/etc/passwd",
  "C:\\Windows\\x",
  "..\\..\\x",
  "a/b",
  ".",
  "CON",
  "x".repeat(300),
  "%2e%2e%2f",
  "con.png",
  "\u202egnp.x",
];
const LABELS = [
  "23:59:59:23",
  "24:00:00:00",
  "00:00:00:00",
  "99:99:99:99",
  "10:00:00;00",
  "10:01:00;00",
  "10:00:00.29",
  "-1:00:00:00",
  "10:00:00",
  "1e1:00:00:00",
];
const SURROGATES = [
  Uint8Array.of(0xed, 0xa0, 0x80),
  Uint8Array.of(0xed, 0xb0, 0x80),
  new TextEncoder().encode("\\ud800"),
  Uint8Array.of(0xff, 0xfe),
  Uint8Array.of(0xc0, 0x80),
];

const ALIASES = [
  "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b, *b, *b]\ncompleted: [*c, *c]\n",
  "completed: &x [*x]\n",
  "accepted: &x\n  - {code: CHECK702, reason: &r seen}\n  - {code: *r, reason: *r, file: *x}\n",
  "contacts: &c {a: *c}\n",
  "<<: *nowhere\n",
  "check: &k {stop_difference: 1e308, meal_hours: -0, log_coverage: .nan}\n",
  "scheduled:\n  - {scene: ../../x, pages: 9999 7/8, seconds: 1e300}\n  - {scene: 1, pages: 1}\n  - {scene: 1, pages: 1}\ncompleted: [1, ../../x]\nnot_shot: [1]\n",
  "meals: [{out: 00:00, in: 23:59}, {out: 23:59+9}]\ncall: 00:00\nwrap: 23:59+9\n",
];

const decode = (bytes) => new TextDecoder("latin1").decode(bytes);
const encode = (text) => Uint8Array.from(text, (letter) => letter.charCodeAt(0) & 255);
const utf8 = (text) => new TextEncoder().encode(text);

function spliced(bytes, at, cut, put) {
  const result = new Uint8Array(Math.max(0, at) + put.length + Math.max(0, bytes.length - at - cut));
  result.set(bytes.subarray(0, at));
  result.set(put, at);
  result.set(bytes.subarray(Math.min(bytes.length, at + cut)), at + put.length);
  return result;
}

/** A mutation of the bytes of one file. */
function ofBytes(what, change) {
  return (files, random) => {
    const name = random.pick([...files.keys()]);
    if (name === undefined) return "nothing";
    files.set(name, change(files.get(name), random));
    return `${what} in ${name}`;
  };
}

/** A mutation of one match of a pattern in a file. */
function ofMatch(what, pattern, replacements) {
  return ofBytes(what, (bytes, random) => {
    const matches = [...decode(bytes).matchAll(pattern)];
    if (matches.length === 0) return bytes;
    const match = random.pick(matches);
    return spliced(bytes, match.index, match[0].length, utf8(random.pick(replacements)));
  });
}

function lines(bytes, random, change) {
  const all = decode(bytes).split("\n");
  const from = random.below(all.length);
  return encode(change(all, from, 1 + random.below(5)).join("\n"));
}

export const mutations = [
  ofBytes("bits flipped", (bytes, random) => {
    const copy = Uint8Array.from(bytes);
    for (let i = 0; i < 1 + random.below(8) && copy.length > 0; i++) copy[random.below(copy.length)] ^= 1 << random.below(8);
    return copy;
  }),
  ofBytes("truncated", (bytes, random) => bytes.subarray(0, random.below(bytes.length + 1))),
  ofBytes("a stretch lost", (bytes, random) => spliced(bytes, random.below(bytes.length + 1), random.below(60), new Uint8Array(0))),
  ofBytes("strange signs put in", (bytes, random) =>
    spliced(bytes, random.below(bytes.length + 1), random.below(3), utf8(random.pick(STRANGE))),
  ),
  ofBytes("lone surrogate put in", (bytes, random) => spliced(bytes, random.below(bytes.length + 1), 0, random.pick(SURROGATES))),
  ofBytes("delimiters swapped", (bytes, random) => {
    const [from, to] = [random.pick([",", ";", "\t", "|", ":"]), random.pick([",", ";", "\t", "|", " "])];
    return encode(decode(bytes).replaceAll(from, to));
  }),
  ofBytes("one delimiter swapped", (bytes, random) => {
    const at = decode(bytes).indexOf(random.pick([",", ";", ":"]), random.below(bytes.length + 1));
    return at < 0 ? bytes : spliced(bytes, at, 1, utf8(random.pick([",", ";", "\t", "|", "", ",,,,,,,,,,"])));
  }),
  ofBytes("line ends changed", (bytes, random) => encode(decode(bytes).replaceAll("\n", random.pick(["\r", "\r\n", "\n\n", ""])))),
  ofBytes("lines repeated", (bytes, random) =>
    lines(bytes, random, (all, from, count) => all.toSpliced(from, 0, ...all.slice(from, from + count))),
  ),
  ofBytes("lines moved", (bytes, random) =>
    lines(bytes, random, (all, from, count) => {
      const rest = all.toSpliced(from, count);
      return rest.toSpliced(random.below(rest.length + 1), 0, ...all.slice(from, from + count));
    }),
  ),
  ofBytes("all repeated", (bytes) => spliced(bytes, bytes.length, 0, bytes)),
  ofBytes("nested deep", (bytes, random) => {
    const [open, close] = random.pick([
      ["[", "]"],
      ['{"a":', "}"],
      ["- ", ""],
      ["{a: ", "}"],
      ["? ", ""],
      ['"', '"'],
      ["&a [*a, ", "]"],
    ]);
    const depth = random.pick([5, 50, 500, 5000]);
    return spliced(
      bytes,
      random.below(bytes.length + 1),
      0,
      utf8(open.repeat(depth) + (random.chance(0.7) ? close.repeat(depth) : "")),
    );
  }),
  ofBytes("a block repeated many times", (bytes, random) =>
    lines(bytes, random, (all, from, count) => {
      const block = all.slice(from, from + count * 4);
      return all.toSpliced(from, 0, ...Array.from({ length: random.pick([2, 20, 300]) }, () => block).flat());
    }),
  ),
  ofBytes("a column repeated or lost", (bytes, random) => {
    const [cell, twice] = [random.below(8), random.chance(0.5)];
    const change = (line) => {
      const cells = line.split(",");
      return (twice ? cells.toSpliced(cell, 0, cells[cell] ?? "") : cells.toSpliced(cell, 1)).join(",");
    };
    return encode(
      decode(bytes)
        .split("\n")
        .map((line) => (line.startsWith("#") ? line : change(line)))
        .join("\n"),
    );
  }),
  ofBytes("aliases put in", (bytes, random) =>
    spliced(bytes, decode(bytes).indexOf("\n", random.below(bytes.length + 1)) + 1, 0, utf8(random.pick(ALIASES))),
  ),
  ofMatch("a value made another kind", /(?<=: ?)(?:"[^"\n]*"|[\w./-]+)/g, [
    "[a, b]",
    "{a: b}",
    "[]",
    "{}",
    "*a",
    "null",
    "true",
    '""',
    "[[1],[2]]",
    '{"a":[{"b":null}]}',
  ]),
  ofMatch("a key made another", /^[ \t"-]*[a-z_]+(?="?:)/gm, [
    "__proto__",
    "constructor",
    "accepted",
    "completed",
    "scheduled",
    "meals",
    "toString",
    "rate",
  ]),
  ofBytes("in UTF-16", (bytes, random) => {
    const text = new TextDecoder().decode(bytes);
    const words = Uint16Array.from(random.chance(0.8) ? `\ufeff${text}` : text, (letter) => letter.charCodeAt(0));
    return new Uint8Array(words.buffer);
  }),
  ofBytes("a byte order mark before", (bytes) => spliced(bytes, 0, 0, Uint8Array.of(0xef, 0xbb, 0xbf))),
  ofMatch("a number made huge", /-?\d+(?:\.\d+)?/g, HUGE),
  ofMatch("a number changed", /\d/g, ["0", "9", "99", "-", ".", ",", "O", ""]),
  ofMatch("a word made a path", /[A-Za-z][\w-]*/g, PATHS),
  ofMatch("a word made another", /[A-Za-z][\w-]*/g, STRANGE),
  ofMatch("a timecode changed", /\d\d:\d\d:\d\d[:;]\d\d/g, LABELS),
  ofMatch("a rate changed", /(?<=rate: ?)[\d/.]+/g, [
    "1",
    "0",
    "120",
    "1000000",
    "24000/1001",
    "60000/1001",
    "-24",
    "1/1000000",
    "1e9",
  ]),
  (files, random) => {
    const [from, to] = [random.pick([...files.keys()]), random.pick([...files.keys()])];
    if (from === undefined) return "nothing";
    files.set(to, files.get(from));
    return `${from} copied over ${to}`;
  },
  (files, random) => {
    const name = random.pick([...files.keys()]);
    if (name === undefined) return "nothing";
    files.delete(name);
    return `${name} deleted`;
  },
  (files, random) => {
    const name = random.pick([...files.keys()]);
    if (name === undefined) return "nothing";
    const parts = name.split("/");
    const at = random.below(parts.length);
    parts[at] = random.pick([
      "2031-02-30",
      "2031-05-07",
      "x.csv",
      "X.CSV",
      "..csv",
      "a..b.exr",
      "\u0000",
      "é.png",
      "show.yaml",
      "con.jsonl",
      " .csv",
      "notes.csv",
      "x".repeat(250),
    ]);
    const content = files.get(name);
    files.delete(name);
    files.set(parts.join("/"), content);
    return `${name} renamed ${parts.join("/")}`;
  },
];
