import type { Problem } from '../text/problem.ts';
import type { JournalLine } from './line-codec.ts';

/** A journal file as it was read from disk. */
export interface JournalFile {
  /** Path below the journal's folder, for the lifter's eye. */
  readonly name: string;
  /** Made by this device. */
  readonly own: boolean;
  /** Lines up to the last whole one. */
  readonly lines: readonly JournalLine[];
  /** Lines behind the last whole one: a write was cut short. */
  readonly tail: number;
}

/** Something in the journal that could not be read, or was written by a newer version. */
export interface Damage {
  readonly file: string;
  readonly kind: 'tail' | 'damaged' | 'missing' | 'newer' | 'no-opening';
  readonly problem: Problem;
}
