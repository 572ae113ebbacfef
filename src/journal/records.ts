import type { Decision } from '../progression/past.ts';
import type { SessionEvent, SessionFact, Stamp } from '../session/events.ts';
import type { Gear } from '../training/gear.ts';
import type { Length } from '../training/length.ts';
import type { Mass } from '../training/mass.ts';

/** Facts that belong to no session. */
export type LooseFact =
  /** `on`: the local day weighed, `2026-11-25`. `sure`: it looked like a slip, and the lifter said that it is right. */
  | {
      readonly type: 'weighed';
      readonly mass: Mass;
      readonly on: string;
      readonly sure?: boolean;
    }
  | { readonly type: 'waist-measured'; readonly length: Length; readonly on: string }
  | ({ readonly type: 'decided' } & Pick<Decision, 'rule' | 'answer' | 'subject'>)
  | { readonly type: 'gear-set'; readonly gear: Gear }
  /** Gear of another place under a name; null: that name is forgotten. */
  | { readonly type: 'kit-kept'; readonly name: string; readonly gear: Gear | null }
  /** The event, set or session named by `of` never happened; of an import taken back all of it. */
  | { readonly type: 'deleted'; readonly of: string | readonly string[] }
  /** Sessions and weigh-ins that came in together, so that they can be taken back together. */
  | { readonly type: 'imported'; readonly of: readonly string[] }
  /** The device of that name goes on with a session that another one opened, in its own file. `after`: the last event of the session that it had read. */
  | {
      readonly type: 'session-taken-over';
      readonly session: string;
      readonly after: string;
      readonly device?: string;
    };

export type LooseEvent = LooseFact & Stamp;

/** Any line of a journal file. */
export type JournalEvent = SessionEvent | LooseEvent;

/** Corrections of sets and undos, written after their session was closed. */
export type Correction = Extract<
  SessionFact,
  { readonly type: 'set-amended' | 'sets-confirmed' | 'undone' }
>;
