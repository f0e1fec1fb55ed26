/** Facts: a name, a value with its unit, and the word for where it comes from. */
import type { Source } from "../core/quantity.ts";

export interface Fact {
  readonly term: string;
  readonly value: string;
  /** Class of the value: `absent`, `v-focus`, `v-stop`, `nb` or empty. */
  readonly cls: string;
  readonly source: string;
  readonly linked: boolean;
  readonly href: string;
  readonly id: string;
  readonly hasId: boolean;
}

export interface FactOptions {
  readonly source?: Source | string;
  readonly cls?: string;
  readonly href?: string;
  readonly id?: string;
}

export function fact(term: string, value: string, options: FactOptions = {}): Fact {
  return {
    term,
    value,
    cls: options.cls ?? "",
    source: options.source ?? "",
    linked: options.href !== undefined,
    href: options.href ?? "",
    id: options.id ?? "",
    hasId: options.id !== undefined,
  };
}

/** The value, or the words for what is absent; an absent value has no source. */
export function factOr(term: string, value: string | null, absentWord: string, options: FactOptions = {}): Fact {
  if (value !== null) return fact(term, value, options);
  const { id } = options;
  return fact(term, absentWord, id === undefined ? { cls: "absent" } : { cls: "absent", id });
}
