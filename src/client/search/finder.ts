/** Search itself, without a page around it: codes by scanning, words by the vocabulary; every term must hold. */
import { type CodeTerm, type SearchTerm, searchTerms } from "../../core/search-query.ts";
import type { SearchRows, SearchTake } from "../../core/search-rows.ts";
import { hasDigit } from "../../core/search-words.ts";
import { type Entry, type Prepared, prepare } from "./entries.ts";
import { type Advice, adviceFor } from "./nearest.ts";
import type { Postings } from "./postings.ts";
import { addressBonus, codeScore, fieldScore, focalScore, signedCodeScore, stopScore, timeScore, typedCode } from "./score.ts";
import type { WordMatch } from "./vocabulary.ts";

export interface Found {
  /** Best first; takes that fit alike in the order they were shot. */
  readonly takes: readonly SearchTake[];
  readonly terms: readonly SearchTerm[];
  /** Folded words to mark in remarks. */
  readonly marks: ReadonlySet<string>;
  /** What to try instead; only when nothing was found. Worked out each time it is read: as dear as the search itself. */
  readonly advice: readonly Advice[];
}

export interface Finder {
  readonly rows: SearchRows;
  find(query: string): Found;
  /** Makes the index of words now rather than at the first query: for a moment in which nobody waits. */
  warm(): void;
}

/** Makes rows ready to be searched; the words of the remarks follow with the first query, or with `warm`. */
export function finderOf(rows: SearchRows): Finder {
  const prepared = prepare(rows);
  return {
    rows,
    warm: () => void prepared.text(),
    find(query) {
      const terms = searchTerms(query);
      if (terms.length === 0) return { takes: [], terms, marks: new Set(), advice: [] };
      const marks = new Set<string>();
      const takes = matching(terms, prepared, marks);
      const count = (some: readonly SearchTerm[]) => matching(some, prepared, new Set()).length;
      return {
        takes,
        terms,
        marks,
        get advice() {
          return takes.length > 0 ? [] : adviceFor(terms, prepared, count);
        },
      };
    },
  };
}

type Score = (e: Entry, place: number) => number;

function matching(terms: readonly SearchTerm[], prepared: Prepared, marks: Set<string>): readonly SearchTake[] {
  const scores = terms.map((term) => ({ score: scorer(term, prepared, marks), light: term.kind === "word" && term.light }));
  const keys = terms.flatMap((term) => (term.kind === "code" || term.kind === "word" ? [term.key] : []));
  const joined = joinedKey(terms);
  const whole = joined === "" ? null : typedCode(joined);
  // Scores are few: a list for each keeps the order of shooting inside it, and nothing large is sorted.
  const byScore = new Map<number, SearchTake[]>();
  prepared.entries.forEach((e, place) => {
    let sum = 0;
    for (const { score, light } of scores) {
      const one = score(e, place);
      if (one === 0 && !light) {
        sum = 0;
        break;
      }
      sum += one;
    }
    if (sum > 0 && keys.length > 1) sum += addressBonus(keys, e);
    if (whole !== null) {
      const one = codeScore(whole, e, prepared.lenses[e.lens]);
      if (one > 90) sum = Math.max(sum, one + 45);
    }
    if (sum === 0) return;
    const alike = byScore.get(sum);
    if (alike === undefined) byScore.set(sum, [e.row]);
    else alike.push(e.row);
  });
  return [...byScore].sort(([a], [b]) => b - a).flatMap(([, takes]) => takes);
}

/**
 * A code typed in pieces: "24 b 3" is 24B take 3, "a012 c003" is one clip. Two numbers are never run together: 1 and 12 are
 * not 11 and 2.
 */
function joinedKey(terms: readonly SearchTerm[]): string {
  if (terms.length < 2) return "";
  let key = "";
  for (const term of terms) {
    if (term.kind !== "code" || term.parts.length > 1) return "";
    if (/\d$/.test(key) && /^\d/.test(term.key)) return "";
    key += term.key;
  }
  return key;
}

function scorer(term: SearchTerm, prepared: Prepared, marks: Set<string>): Score {
  const lensOf = (e: Entry) => prepared.lenses[e.lens];
  switch (term.kind) {
    case "code":
    case "word": {
      const inText = wordScore(term.key, prepared, marks, term.kind === "code" ? 8 : 30);
      const codes = term.kind === "code" && term.parts.length > 1 ? signedScore(term, prepared) : plainScore(term.key, prepared);
      return inText === null ? codes : (e, place) => Math.max(codes(e, place), inText(e, place));
    }
    case "note": {
      const inText = placeScores(lookup(term.key, prepared), prepared.text().inRemarks, prepared.entries.length, 30, marks);
      return (_, place) => inText?.[place] ?? 0;
    }
    case "time":
      return (e) => timeScore(term, e);
    case "stop":
      return (e) => stopScore(term, e);
    case "focal":
      return (e) => focalScore(term, e);
    case "field":
      return (e) => fieldScore(term, e, lensOf(e), prepared.rows.days[e.row[0]]);
  }
}

function plainScore(key: string, { lenses }: Prepared): Score {
  const code = typedCode(key);
  return (e) => codeScore(code, e, lenses[e.lens]);
}

function signedScore(term: CodeTerm, { lenses }: Prepared): Score {
  const parts = term.parts.map(typedCode);
  return (e) => signedCodeScore(term, e, lenses[e.lens], () => parts.map((part) => codeScore(part, e, lenses[e.lens])));
}

/** A word in the remarks, in the standing or in the lens's name; `null` when it is nowhere. */
function wordScore(key: string, prepared: Prepared, marks: Set<string>, points: number): Score | null {
  const matches = lookup(key, prepared);
  const { entries, lenses } = prepared;
  const { inRemarks, inStandings, inLenses } = prepared.text();
  const remarks = placeScores(matches, inRemarks, entries.length, points, marks);
  const standings = placeScores(matches, inStandings, entries.length, points - 5);
  const names = placeScores(matches, inLenses, lenses.length, points - 5);
  if (remarks === null && standings === null && names === null) return null;
  return (e, place) => Math.max(remarks?.[place] ?? 0, standings?.[e.standing] ?? 0, names?.[e.lens] ?? 0);
}

function lookup(key: string, { text }: Prepared): readonly WordMatch[] {
  // A single letter is a camera; as the beginning of a word it would find nearly every take.
  return key.length === 1 && !hasDigit(key) ? [] : text().vocabulary.lookup(key);
}

function placeScores(
  matches: readonly WordMatch[],
  postings: Postings,
  count: number,
  points: number,
  marks?: Set<string>,
): Float32Array | null {
  let scores: Float32Array | null = null;
  for (const { word, weight } of matches) {
    const found = postings.places(word);
    if (found === null) continue;
    marks?.add(word);
    scores ??= new Float32Array(count);
    const score = points * weight;
    for (const place of found) if (score > (scores[place] ?? 0)) scores[place] = score;
  }
  return scores;
}
