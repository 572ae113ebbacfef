import type { PrescribedExercise } from '../progression/prescription.ts';
import type { Replacement, SetNumbers, ShorterSession } from './events.ts';

/** What the lifter asks for; `decide` turns it into facts, or into the sentence why not. */
export type SessionCommand =
  /** Starts the next set now; a rest that still runs is cut. */
  | { readonly do: 'start' }
  /** The set has ended: saved with the aims unless numbers are given. */
  | { readonly do: 'put-down'; readonly numbers?: Partial<SetNumbers> }
  | { readonly do: 'withdraw-start' }
  | { readonly do: 'amend'; readonly of: string; readonly numbers: Partial<SetNumbers> }
  | { readonly do: 'confirm' }
  /** The next set; of warm-ups and of a cluster what is left of them. */
  | { readonly do: 'skip-set' }
  | { readonly do: 'skip-exercise'; readonly exercise: number }
  | { readonly do: 'choose-exercise'; readonly exercise: number }
  /** Lets the sets of an exercise alternate with those of the one that the lifter is at. */
  | { readonly do: 'pair'; readonly exercise: number }
  | { readonly do: 'part-pair'; readonly exercise: number }
  | { readonly do: 'add-set' }
  | { readonly do: 'end-cluster' }
  | ({ readonly do: 'shorten' } & ShorterSession)
  | {
      readonly do: 'replace';
      readonly exercise: number;
      readonly by: PrescribedExercise;
      readonly because: Replacement;
    }
  /** Seconds, negative to shorten. */
  | { readonly do: 'change-rest'; readonly by: number }
  | { readonly do: 'pause' }
  | { readonly do: 'resume' }
  | { readonly do: 'mark-pain'; readonly exercise: number }
  | { readonly do: 'note'; readonly exercise: number | null; readonly text: string }
  | { readonly do: 'undo' }
  /** Takes back the undo just made. */
  | { readonly do: 'redo' }
  | { readonly do: 'close'; readonly how: 'finished' | 'as-it-is' }
  | { readonly do: 'discard' };
