import { loadWords } from '../progression/load-words.ts';
import { setsDone } from '../session/done-sets.ts';
import { dateOf } from '../session/results.ts';
import { dayWords } from '../text/day-words.ts';
import { massText, type Unit } from '../training/mass.ts';
import type { Recorded } from './find-record.ts';

/** What something recorded is, and what it says: `Row, set 2 of Wed 25 Nov 2026`, `80 kg × 6, 1 in reserve`. */
export interface RecordWords {
  readonly what: string;
  readonly says: string;
}

/** @param unit for body mass; a set is told in the unit of its session */
export function recordWords(record: Recorded, unit: Unit): RecordWords {
  switch (record.kind) {
    case 'weigh-in': {
      const { date, mass } = record.weighIn;
      return { what: `Weigh-in of ${dayWords(date)}`, says: massText(mass, unit) };
    }
    case 'session': {
      const { session } = record;
      const { program, day } = session.prescription;
      const sets = setsDone(session).length;
      return {
        what: `Session of ${dayWords(dateOf(session))}`,
        says: `${program}, day ${day}, ${sets} ${sets === 1 ? 'set' : 'sets'}`,
      };
    }
    case 'set': {
      const { set, exercise, session, position } = record;
      const load = loadWords(set.load, exercise.basis, session.prescription.unit);
      const count = exercise.counts === 'seconds' ? `${set.count} s` : `${set.count}`;
      const reserve = set.reserve === null ? '' : `, ${set.reserve} in reserve`;
      return {
        what: `${exercise.name}, set ${position + 1} of ${dayWords(dateOf(session))}`,
        says: `${load} × ${count}${reserve}`,
      };
    }
  }
}
