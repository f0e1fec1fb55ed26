/**
 * What the report prints can be typed into the notes again: print, read, print gives the same text. Printing rounds, so that the value
 * comes back within the rounding only; both are asked.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { collectFindings } from "../../src/core/findings/collect.ts";
import { fps, kelvin } from "../../src/format/amounts.ts";
import { shutter } from "../../src/format/degrees.ts";
import { distance, distanceRange, millimetres, millimetresRange } from "../../src/format/length.ts";
import { eighths } from "../../src/format/pages.ts";
import { fStop, stopRange, stops, tStop } from "../../src/format/stop.ts";
import { dayMinutes } from "../../src/format/time.ts";
import { readNotes } from "../../src/ingest/notes.ts";
import { readClock } from "../../src/ingest/written/clock.ts";
import { readDistance } from "../../src/ingest/written/distance.ts";
import { readFocal } from "../../src/ingest/written/focal.ts";
import { readNd } from "../../src/ingest/written/nd.ts";
import { readPages } from "../../src/ingest/written/pages.ts";
import { readFocus } from "../../src/ingest/written/range.ts";
import type { Reading } from "../../src/ingest/written/reading.ts";
import { readShutter } from "../../src/ingest/written/shutter.ts";
import { readStop } from "../../src/ingest/written/stop.ts";
import { stopsBetween } from "../../src/optics/exposure.ts";
import { isStopLabel, THIRD_STOPS } from "../../src/optics/stop-series.ts";

/** A lens's stops, focal lengths and distances, and the angles and filters that there are. */
const aStop = fc.double({ min: 0.7, max: 45, noNaN: true });
const metres = fc.oneof(
  fc.double({ min: 0.05, max: 20, noNaN: true }),
  fc.double({ min: 20, max: 5000, noNaN: true }),
  fc.constant(Number.POSITIVE_INFINITY),
);
const focal = fc.double({ min: 4, max: 2000, noNaN: true });

function readValue<T>(reading: Reading<T>, text: string): T {
  if (!reading.ok) throw new Error(`"${text}": ${reading.problem}`);
  return reading.value;
}

/** Prints, reads and prints again. */
function comesBack<V, T>(
  arbitrary: fc.Arbitrary<V>,
  print: (value: V) => string,
  read: (text: string) => Reading<T>,
  again: (value: T) => string,
): void {
  fc.assert(
    fc.property(arbitrary, (value) => {
      const text = print(value);
      expect(again(readValue(read(text), text))).toBe(text);
    }),
    { numRuns: 500 },
  );
}

const inMetres = (dioptres: number): number => 1 / dioptres;

describe("what the report prints comes back from the notes as the same text", () => {
  // 3.3 and 3.4 are both written for the stop half way from 2.8 to 4: a label of the half series comes back as that stop.
  const tenths = fc
    .integer({ min: 7, max: 450 })
    .map((n) => n / 10)
    .filter((stop) => !isStopLabel(stop) || THIRD_STOPS.some(({ label }) => label === stop));
  const printed = fc.oneof(tenths, fc.constantFrom(...THIRD_STOPS.map(({ exact }) => exact)));

  it("T-stops and f-stops, labels and tenths", () => {
    comesBack(printed, tStop, readStop, (span) => tStop(span.from));
    comesBack(printed, fStop, readStop, (span) => fStop(span.from));
  });

  it("ranges of stops", () => {
    comesBack(
      fc.tuple(printed, printed),
      ([a, b]) => stopRange(a, b),
      readStop,
      (span) => stopRange(span.from, span.to),
    );
  });

  it.each(["metric", "imperial"] as const)("%s distances and ranges of them, infinity too", (system) => {
    comesBack(
      metres,
      (m) => distance(m, system),
      readDistance,
      (m) => distance(m, system),
    );
    comesBack(
      fc.tuple(metres, metres),
      ([a, b]) => distanceRange(a, b, system),
      readFocus,
      (span) => distanceRange(inMetres(span.fromDioptres), inMetres(span.toDioptres), system),
    );
  });

  it("focal lengths and ranges of them", () => {
    comesBack(focal, millimetres, readFocal, (span) => millimetres(span.from));
    comesBack(
      fc.tuple(focal, focal),
      ([a, b]) => millimetresRange(a, b),
      readFocal,
      (span) => millimetresRange(span.from, span.to),
    );
  });

  it("shutters, with and without the exposure time", () => {
    const angle = fc.double({ min: 1, max: 360, noNaN: true });
    const degreesOf = (value: { readonly degrees: number } | { readonly seconds: number }): number =>
      "degrees" in value ? value.degrees : 0;
    comesBack(
      angle,
      (a) => shutter(a, null),
      readShutter,
      (value) => shutter(degreesOf(value), null),
    );
    fc.assert(
      fc.property(angle, fc.constantFrom(24000 / 1001, 24, 25, 48, 120), (a, rate) => {
        const text = shutter(a, rate);
        const back = degreesOf(readValue(readShutter(text), text));
        expect(Math.abs(back - a)).toBeLessThanOrEqual(0.05 + 1e-9);
      }),
    );
  });

  it("neutral densities in stops", () => {
    comesBack(fc.double({ min: 0, max: 20, noNaN: true }), stops, readNd, stops);
  });

  it("pages, every count of eighths", () => {
    for (let count = 0; count <= 2000; count++) expect(readValue(readPages(eighths(count)), eighths(count))).toBe(count);
  });

  it("hours of the shooting day, every minute to the end of the next day", () => {
    for (let minutes = 0; minutes < 2880; minutes++)
      expect(readValue(readClock(dayMinutes(minutes)), dayMinutes(minutes))).toBe(minutes);
  });

  it("colour temperatures and speeds", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 20_000 }),
        fc.constantFrom(23.976, 24, 25, 29.97, 47.952, 48, 96, 120),
        (k, rate) => {
          const found = collectFindings();
          const text = `slate,take,camera,wb,capture_fps\n1,1,A,${kelvin(k)},${fps(rate)}\n`;
          const [note] = readNotes(text, "notes.csv", { blankSlateRepeats: false }, found);
          expect(found.list()).toEqual([]);
          expect(note?.whiteBalanceK?.value).toBe(k);
          expect(fps(note?.captureFps?.value ?? 0)).toBe(fps(rate));
        },
      ),
    );
  });
});

describe("values come back within what printing rounds away", () => {
  it("a stop within half a tenth and what its label is rounded by: 1.2 stands for 1.26, which is 0.14 stop", () => {
    fc.assert(
      fc.property(aStop, (stop) => {
        const back = readValue(readStop(tStop(stop)), tStop(stop)).from;
        expect(Math.abs(stopsBetween(stop, back))).toBeLessThanOrEqual(0.141 + stopsBetween(stop, stop + 0.05));
      }),
      { numRuns: 1000 },
    );
  });

  it("a centimetre below ten metres, an eighth of an inch in feet and inches", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 9.99, noNaN: true }), (m) => {
        expect(Math.abs(readValue(readDistance(distance(m, "metric")), "") - m)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect(Math.abs(readValue(readDistance(distance(m, "imperial")), "") - m)).toBeLessThanOrEqual(0.0254 / 8 + 1e-9);
      }),
    );
  });
});
