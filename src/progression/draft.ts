import type { Range } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import type { Move } from './prescription.ts';

/** What was decided about one exercise of today, before it is written out. */
export interface ExerciseDraft {
  readonly move: Move;
  /** Null: the lifter is asked. */
  readonly load: Mass | null;
  /** Per straight set; of a cluster the lead set. */
  readonly aims: readonly number[];
  /** The lead and mini-sets of a cluster; not read for straight sets. */
  readonly mostSets: number;
  readonly miniAim: number;
  readonly low: number;
  /** What set 1 may rise to. */
  readonly top: number;
  readonly reserve: Range;
  readonly why: readonly Reason[];
  readonly askPain: boolean;
}

/** What the lifter asks for in place of what the rules give. */
export type AskedChange =
  | { readonly kind: 'load'; readonly load: Mass }
  /** Because of pain: at most 80 %. */
  | { readonly kind: 'lighter' }
  /** Last time's pain is gone. */
  | { readonly kind: 'go-on' };

/** Moves of a track that goes its way; a start or a return is a case of its own. */
export const MOVED: ReadonlySet<Move> = new Set<Move>(['up', 'hold', 'ease']);

/** Half the sets of a lighter week or of a first session after a layoff, rounded up. */
export const half = (sets: number): number => Math.ceil(sets / 2);
