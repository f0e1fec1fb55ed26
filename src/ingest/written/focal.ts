import { plainCharacters, type Reading, read, refuse } from "./reading.ts";
import type { Span } from "./spans.ts";

const SHORTEST_MM = 0.1;
const LONGEST_MM = 100_000;

/** A focal length or a range in mm, in the order written: `35`, `50mm`, `35-60`, `35 to 60 mm`. Refused: zero and other units. */
export function readFocal(text: string): Reading<Span> {
  const match = /^(\d+(?:\.\d+)?)\s*(?:mm)?(?:(?:\s*-\s*|\s+to\s+)(\d+(?:\.\d+)?)\s*(?:mm)?)?$/i.exec(plainCharacters(text));
  const from = Number(match?.[1]);
  const to = Number(match?.[2] ?? match?.[1]);
  if (Math.min(from, to) >= SHORTEST_MM && Math.max(from, to) <= LONGEST_MM) return read({ from, to });
  const comma = /^\d+,\d+$/.test(text.trim()) ? ` Write ${text.trim().replace(",", ".")} with a point.` : "";
  return refuse(`not a focal length: "${text.trim()}"`, `Write millimetres such as 35, or a range 35-60.${comma}`);
}
