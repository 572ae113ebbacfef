import type { Range } from '../program/program.ts';
import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import type { Move } from './prescription.ts';

/** What was decided about one exercise of today, before it is written out. */
export interface Draft {
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
