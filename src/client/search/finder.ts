/** Search itself, without a page around it: codes by scanning, words by the vocabulary; every term must hold. */
import type { SearchTable } from "../../core/packed-rows.ts";
import { type CodeTerm, type SearchTerm, searchTerms, unknownFields } from "../../core/search-query.ts";
import { hasDigit } from "../../core/search-words.ts";
import type { WordPlaces } from "../../core/word-places.ts";
import { type Entry, type Prepared, prepare } from "./entries.ts";
import { type Advice, adviceFor } from "./nearest.ts";
import {
  addressBonus,
  codeScore,
  dayScoresOf,
  fieldScore,
  focalScore,
  signedCodeScore,
  stopScore,
  timeScore,
  typedCode,
} from "./score.ts";
import type { WordMatch } from "./vocabulary.ts";

export interface Found {
  /** Rows of the table, best first; takes that fit alike in the order they were shot. */
  readonly places: readonly number[];
  readonly terms: readonly SearchTerm[];
  /** Words that stand where a field word would: "colour" of `colour:red`. */
  readonly unknownFields: readonly string[];
  /** Folded words to mark in remarks. */
  readonly marks: ReadonlySet<string>;
  /** What to try instead; only when nothing was found. Worked out each time it is read: as dear as the search itself. */
  readonly advice: readonly Advice[];
}

export interface Finder {
  readonly table: SearchTable;
  find(query: string): Found;
  /** Gets what the first query would wait for: what typing errors are found with, and code that has run before. */
  warm(): void;
}

/** Makes rows ready for any query. */
export function finderOf(table: SearchTable): Finder {
  const prepared = prepare(table);
  return {
    table,
    warm() {
      prepared.text.vocabulary.warm();
      matching(searchTerms("1"), prepared, new Set());
    },
    find(query) {
      const terms = searchTerms(query);
      if (terms.length === 0) return { places: [], terms, unknownFields: [], marks: new Set(), advice: [] };
      const marks = new Set<string>();
      const places = matching(terms, prepared, marks);
      const count = (some: readonly SearchTerm[]) => matching(some, prepared, new Set()).length;
      return {
        places,
        terms,
        unknownFields: unknownFields(query),
        marks,
        get advice() {
          return places.length > 0 ? [] : adviceFor(terms, prepared, count);
        },
      };
    },
  };
}

type Score = (e: Entry, place: number) => number;

function matching(terms: readonly SearchTerm[], prepared: Prepared, marks: Set<string>): readonly number[] {
  const scores = terms.map((term) => ({ score: scorer(term, prepared, marks), light: term.kind === "word" && term.light }));
  const keys = terms.flatMap((term) => (term.kind === "code" || term.kind === "word" ? [term.key] : []));
  const joined = joinedKey(terms);
  const whole = joined === "" ? null : typedCode(joined);
  // Scores are few: a list for each keeps the order of shooting inside it, and nothing large is sorted.
  const byScore = new Map<number, number[]>();
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
      const one = codeScore(whole, e, prepared.lenses[e.lens], prepared.columns);
      if (one > 90) sum = Math.max(sum, one + 45);
    }
    if (sum === 0) return;
    const alike = byScore.get(sum);
    if (alike === undefined) byScore.set(sum, [place]);
    else alike.push(place);
  });
  return [...byScore].sort(([a], [b]) => b - a).flatMap(([, places]) => places);
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
      const inText = placeScores(lookup(term.key, prepared), prepared.text.inRemarks, prepared.entries.length, 30, marks);
      return (_, place) => inText?.[place] ?? 0;
    }
    case "time":
      return (e) => timeScore(term, e, prepared.columns);
    case "stop":
      return (e) => stopScore(term, e, prepared.columns);
    case "focal":
      return (e) => focalScore(term, e, prepared.columns);
    case "field": {
      const dayScores = dayScoresOf(term, prepared.days);
      return (e) => fieldScore(term, e, lensOf(e), prepared.columns, dayScores);
    }
  }
}

function plainScore(key: string, { lenses, columns }: Prepared): Score {
  const code = typedCode(key);
  return (e) => codeScore(code, e, lenses[e.lens], columns);
}

function signedScore(term: CodeTerm, { lenses, columns }: Prepared): Score {
  const parts = term.parts.map(typedCode);
  return (e) => {
    const lens = lenses[e.lens];
    return signedCodeScore(term, e, lens, columns, () => parts.map((part) => codeScore(part, e, lens, columns)));
  };
}

/** A word in the remarks, in the standing or in the lens's name; `null` when it is nowhere. */
function wordScore(key: string, prepared: Prepared, marks: Set<string>, points: number): Score | null {
  const matches = lookup(key, prepared);
  const { entries, lenses } = prepared;
  const { inRemarks, inStandings, inLenses } = prepared.text;
  const remarks = placeScores(matches, inRemarks, entries.length, points, marks);
  const standings = placeScores(matches, inStandings, entries.length, points - 5);
  const names = placeScores(matches, inLenses, lenses.length, points - 5);
  if (remarks === null && standings === null && names === null) return null;
  return (e, place) => Math.max(remarks?.[place] ?? 0, standings?.[e.standing] ?? 0, names?.[e.lens] ?? 0);
}

function lookup(key: string, { text }: Prepared): readonly WordMatch[] {
  // A single letter is a camera; as the beginning of a word it would find nearly every take.
  return key.length === 1 && !hasDigit(key) ? [] : text.vocabulary.lookup(key);
}

function placeScores(
  matches: readonly WordMatch[],
  index: WordPlaces,
  count: number,
  points: number,
  marks?: Set<string>,
): Float32Array | null {
  let scores: Float32Array | null = null;
  for (const { word, weight } of matches) {
    const found = index.places(word);
    if (found.length === 0) continue;
    marks?.add(word);
    scores ??= new Float32Array(count);
    const score = points * weight;
    for (const place of found) if (score > (scores[place] ?? 0)) scores[place] = score;
  }
  return scores;
}
