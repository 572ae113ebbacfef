import type { Unit } from './mass.ts';

/** Numbers and words that a rule used, as plain data; masses in micrograms. Kept in the journal as it is. */
export type Facts = Readonly<Record<string, number | string | boolean | null | readonly number[]>>;

/** Why something was decided: a rule's key and what it saw. Sentences are made at the edge, in the lifter's unit. */
export interface Reason<Key extends string = string> {
  readonly rule: Key;
  readonly facts: Facts;
}

/** How well founded a rule is. */
export type Standing =
  | 'printed' // a published source says it
  | 'common practice' // the trade's rule of thumb, no source
  | 'ours'; // a choice made here

/** What the source of a rule says where there is none to name. */
export const COMMON = 'common practice';
export const OURS = 'ours';

/** A training rule as data, so that screens, `check`, `why`, docs and tests say the same. */
export interface Rule<Key extends string = string> {
  readonly key: Key;
  readonly sentence: (facts: Facts, unit: Unit) => string;
  /** Citation, or the words "common practice" or "ours" with what it is carried over from. */
  readonly source: string;
  readonly standing: Standing;
}

/** A reason as the lifter reads it. The rooms' rules are joined in the room `lifter`, which hands this in. */
export type ReasonWords = (reason: Reason) => { readonly text: string; readonly source: string };
