import type { Temporal } from 'temporal-polyfill';
import type { DatedMass } from '../journal/daily-mass.ts';
import type { Program } from '../program/program.ts';
import type { Decision } from '../progression/past.ts';
import type { SessionEvent } from '../session/events.ts';
import { type RehearsalOptions, rehearse } from './rehearse.ts';

export interface HistoryOptions extends Omit<RehearsalOptions, 'from'> {
  /** The last day of the history; no session and no weigh-in is later. */
  readonly until: Temporal.PlainDate;
}

/** What a lifter would have in the journal after following a program. */
export interface RehearsedHistory {
  /** Events of each session, oldest first: complete and closed, ids are of the session's own. */
  readonly sessions: readonly (readonly SessionEvent[])[];
  readonly weighIns: readonly DatedMass[];
  readonly decisions: readonly Decision[];
}

/** A history of `weeks` full weeks that ends on a day. The same program and options give the same. */
export function rehearsedHistory(program: Program, options: HistoryOptions): RehearsedHistory {
  const { until, ...rest } = options;
  const from = until.subtract({ days: options.weeks * 7 - 1 });
  const { sessions, weighIns, past } = rehearse(program, { ...rest, from });
  return {
    sessions: sessions.map(({ events }) => events),
    weighIns,
    decisions: past.decisions,
  };
}
