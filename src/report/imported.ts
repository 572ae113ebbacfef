import type { SessionFact } from '../session/events.ts';
import type { Mass } from '../training/mass.ts';

/** A session read from an exported file, as facts in order. */
export interface ImportedSession {
  readonly session: string;
  /** Epoch milliseconds at its start; every fact of it is stamped with it. */
  readonly start: number;
  /** Minutes that local time was ahead of UTC, as far as the exported dates tell. */
  readonly zone: number;
  /** `device` of the opening fact is left for the journal to fill. */
  readonly facts: readonly SessionFact[];
}

/** What an exported file adds to a history. */
export interface Imported {
  readonly sessions: readonly ImportedSession[];
  readonly weighIns: readonly { readonly on: string; readonly mass: Mass }[];
  /** Sessions and weigh-ins that were there already, and were left as they are. */
  readonly known: number;
}

/** What a history holds already: nothing of it is imported twice. */
export interface Holdings {
  readonly sessions: ReadonlySet<string>;
  /** {@link weighInKey} of every weigh-in. */
  readonly weighIns: ReadonlySet<string>;
}

/** Two weigh-ins of one day with the same mass are one. */
export const weighInKey = (on: string, mass: Mass): string => `${on} ${mass}`;
