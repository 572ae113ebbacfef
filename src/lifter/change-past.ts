import type { ReviewFinding } from '../cut/finding.ts';
import { WEEK_DAYS, weekdayName } from '../cut/relaid-week.ts';
import type { History, WaistReading, WeighIn } from '../journal/history.ts';
import { HURTS, hurtsOn } from '../progression/hurts.ts';
import { LIGHTER_WEEK } from '../progression/lighter-week.ts';
import type { Decision } from '../progression/past.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { amend } from '../session/decisions/lifting.ts';
import type { SetNumbers } from '../session/events.ts';
import { setsDone, worksOf } from '../session/next-set.ts';
import { dateOf } from '../session/results.ts';
import type { DoneSet, SessionState } from '../session/state.ts';
import { dayWords } from '../text/day-words.ts';
import { type Problem, Refusal } from '../text/problem.ts';
import { andText, howMany } from '../text/words.ts';
import { type Length, lengthText, tapeOf } from '../training/length.ts';
import type { Joint } from '../training/lift.ts';
import { loadWords } from '../training/load-words.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';
import { type ProgramEdit, writeProgram } from './change-program.ts';
import {
  keepReadings,
  rateAsked,
  readingsText,
  replacedWords,
  trendWords,
} from './keep-weigh-in.ts';
import { KIT_TODAY } from './kits.ts';
import type { Lifter } from './open-lifter.ts';
import type { SettingsKeeper } from './ports.ts';

type Makers = {
  readonly [Kind in RecordChange['kind']]: (
    change: Extract<RecordChange, { kind: Kind }>,
  ) => string;
};

/**
 * Gives what carries changes of the past out, each by new events, and says in a sentence what it
 * came to. It remembers the last one of this run, which can be taken back; an answer that changed the
 * program file cannot, for the file would not follow.
 * @throws Refusal when nothing was changed.
 */
export function pastChanger(
  lifter: Lifter,
  settings: SettingsKeeper,
  unit: () => Unit,
): (change: RecordChange) => string {
  const history = () => lifter.journal().history();
  let last: readonly string[] = [];
  // What the last undo wrote, and what it took back with it.
  let undone: { readonly ids: readonly string[]; readonly of: readonly string[] } | null = null;
  // It may be taken back on a screen on which nothing of it is seen.
  let was = '';
  let why: Problem = NOTHING;
  const kept = (what: string, ids: readonly string[]) => {
    last = ids;
    undone = null;
    was = what;
    why = NOTHING;
  };
  const record = (
    what: string,
    ...fact: Parameters<ReturnType<Lifter['journal']>['record']>
  ): void => kept(what, [lifter.journal().record(...fact).id]);
  const undo = (of: string): string => lifter.journal().record({ type: 'undone', of }).id;
  const wasText = (): string => `${was}${was.endsWith('”') ? '' : '.'}`;
  const makers: Makers = {
    weigh: ({ mass, length, instead }) => {
      const on = instead?.date ?? lifter.today();
      const readings = { mass, length };
      const weighed = keepReadings(lifter.journal(), readings, on, instead ? [instead] : []);
      const told = readingsText(readings, unit());
      kept(
        andText([
          ...(mass === null ? [] : [`the weigh-in of ${massText(mass, unit())}`]),
          ...(length === null ? [] : [`the ${readingsText({ mass: null, length }, unit())}`]),
        ]),
        weighed.ids,
      );
      const asked = () => rateAsked(lifter, on, settings.now());
      return [
        `Saved: ${told}.`,
        replacedWords(weighed, unit()),
        mass === null ? null : trendWords(history(), on, unit(), asked()),
        'u takes it back.',
      ]
        .filter(Boolean)
        .join(' ');
    },
    hurts: ({ joint, lasts }) => {
      const before = hurtsOn(history().decisions, lifter.today()).find(
        (each) => each.joint === joint,
      );
      const { lasting, today } = HURTS;
      const off = before && !before.forToday ? lasting : today;
      const rule = lasts === null ? off : lasts === 'today' ? today : lasting;
      const answer = lasts === null ? 'no' : 'yes';
      record(`what was said of the ${joint}`, { type: 'decided', rule, answer, subject: joint });
      if (lasts === null) return `Good: nothing spares the ${joint} any more.`;
      const until = lasts === 'today' ? 'today' : 'until you take it back';
      return `The ${joint} is spared ${until}: lifts that load it hard ask first.`;
    },
    kit: ({ name }) => {
      const subject = name ?? lifter.kitToday();
      const answer = name === null ? 'no' : 'yes';
      record('the gear of today', { type: 'decided', rule: KIT_TODAY, answer, subject });
      return name === null
        ? 'Today with what you own. u takes it back.'
        : `Today with ${name}. u takes it back.`;
    },
    week: ({ days }) => {
      const said = { rule: WEEK_DAYS, subject: days === null ? null : days.join(' ') };
      const answer = days === null ? 'no' : 'yes';
      record('the days of this week', { type: 'decided', answer, ...said });
      return days === null
        ? 'This week as the program says. u takes it back.'
        : `This week on ${andText(days.map(weekdayName))}. u takes it back.`;
    },
    answer: ({ finding: { reason, subject }, answer, edit }) => {
      const takes = answer === 'yes';
      const path = takes && edit ? writeProgram(lifter, settings, edit) : null;
      const said = takes
        ? (TAKEN[reason.rule] ?? 'Kept.')
        : (REFUSED[reason.rule] ?? 'Put aside for three weeks.');
      record(`“${said}”`, { type: 'decided', rule: reason.rule, answer, subject });
      if (path !== null) {
        last = [];
        undone = null;
        why = IN_THE_FILE;
        return `Written to ${path}.`;
      }
      return `${said} u takes it back.`;
    },
    'weight-advice': ({ answer }) => {
      settings.keep({ weightAdvice: answer });
      return answer === 'yes'
        ? 'Kept. "holdfast settings weight-advice" changes it.'
        : 'Kept: nothing is said about losing weight, and a cut is trained as maintenance.';
    },
    correct: ({ set: of, numbers }) => {
      const found = findRecord(history(), of);
      if (found?.kind !== 'set') throw new Refusal(GONE);
      const decided = amend(found.session, { do: 'amend', of, numbers });
      if (!decided.ok) throw new Refusal(decided.problem);
      record(`the correction of ${recordWords(found, unit()).what}`, {
        type: 'set-amended',
        of,
        ...numbers,
      });
      const now = findRecord(history(), of);
      return `Corrected${now ? `: ${recordWords(now, unit()).says}` : ''}. u takes it back.`;
    },
    delete: ({ of }) => {
      const found = findRecord(history(), of);
      if (!found) throw new Refusal(GONE);
      const { what } = recordWords(found, unit());
      record(`the deletion of ${what}`, { type: 'deleted', of });
      return `Deleted: ${what}. u takes it back.`;
    },
    'take-back': () => {
      if (last.length === 0) throw new Refusal(why);
      const ids = last.toReversed().map((of) => undo(of));
      undone = { ids, of: last };
      last = [];
      why = NOTHING;
      return `Taken back: ${wasText()} ctrl-u brings it back.`;
    },
    'bring-back': () => {
      if (undone === null) throw new Refusal(NOTHING_UNDONE);
      for (const of of undone.ids.toReversed()) undo(of);
      last = undone.of;
      undone = null;
      return `There again: ${wasText()} u takes it back.`;
    },
  };
  return (change) => (makers[change.kind] as (change: RecordChange) => string)(change);
}

const GONE: Problem = { what: 'That is not there any more.' };

const NOTHING: Problem = { what: 'There is nothing to take back.' };

const NOTHING_UNDONE: Problem = { what: 'Nothing was taken back just now.' };

const IN_THE_FILE: Problem = {
  what: 'The change stands in the program file, which no key takes back.',
  fix: 'e on the preview changes the program.',
};

const PAUSED = 'The cut is paused from today on, for two weeks at maintenance.';
const RESTS = 'Trained as maintenance from now on; the review takes the cut up again.';
const OVER = 'The cut is over: trained as maintenance from now on.';
const GOES_ON = 'Kept: the cut goes on.';

const TAKEN: Readonly<Record<string, string>> = {
  'pause-cut': PAUSED,
  'pause-cut-long': PAUSED,
  'pause-wanted': PAUSED,
  'not-a-cut': GOES_ON,
  'weight-stands-still': GOES_ON,
  'cut-at-rest': 'The cut begins again.',
  'goal-reached': OVER,
  'cut-ended': OVER,
  'do-less': 'Kept: one set fewer until it holds again.',
  [LIGHTER_WEEK]: 'A lighter week begins with the next session and lasts seven days.',
};

const REFUSED: Readonly<Record<string, string>> = {
  'pause-in-force': 'The pause is over; the cut goes on.',
  'not-a-cut': RESTS,
  'weight-stands-still': RESTS,
  'do-less': 'Kept: no set is dropped, for three weeks.',
};

/** Something recorded that a later event may correct, delete or bring back. */
export type Recorded =
  | {
      readonly kind: 'set';
      readonly set: DoneSet;
      /** Position among the work sets of its lift, from 0. */
      readonly position: number;
      readonly exercise: PrescribedExercise;
      readonly session: SessionState;
    }
  | { readonly kind: 'session'; readonly session: SessionState }
  | { readonly kind: 'weigh-in'; readonly weighIn: WeighIn }
  | { readonly kind: 'waist'; readonly waist: WaistReading };

/** What stands under an id in the history, deletions applied; null where nothing does. */
export function findRecord({ closed, weighIns, waists }: History, id: string): Recorded | null {
  const weighIn = weighIns.find((each) => each.id === id);
  if (weighIn) return { kind: 'weigh-in', weighIn };
  const waist = waists.find((each) => each.id === id);
  if (waist) return { kind: 'waist', waist };
  for (const session of closed()) {
    if (session.session === id) return { kind: 'session', session };
    for (const work of session.exercises.flatMap(worksOf)) {
      const position = work.done.findIndex((set) => set.id === id);
      const set = work.done[position];
      const exercise = work.judgedBy ?? work.prescribed;
      if (set) return { kind: 'set', set, position, exercise, session };
    }
  }
  return null;
}

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
    case 'waist': {
      const { date, length } = record.waist;
      return { what: `Waist of ${dayWords(date)}`, says: lengthText(length, tapeOf(unit)) };
    }
    case 'session': {
      const { session } = record;
      const { program, day } = session.prescription;
      const sets = setsDone(session).length;
      return {
        what: `Session of ${dayWords(dateOf(session))}`,
        says: `${program}, day ${day}, ${howMany(sets, 'set')}`,
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

/** Something that the lifter adds to, or changes in, what is recorded. */
export type RecordChange =
  /** Weight, waist or both of today, or a weight in place of a reading that was wrong. */
  | {
      readonly kind: 'weigh';
      readonly mass: Mass | null;
      readonly length: Length | null;
      readonly instead: WeighIn | null;
    }
  /** A joint hurts today, until it is taken back, or no more (null). */
  | { readonly kind: 'hurts'; readonly joint: Joint; readonly lasts: 'today' | 'on' | null }
  /** Trained with today: a kit by its name, or what is owned (null). */
  | { readonly kind: 'kit'; readonly name: string | null }
  /** Weekdays of this week that there are, Monday 1; null: as the program says. */
  | { readonly kind: 'week'; readonly days: readonly number[] | null }
  | {
      readonly kind: 'answer';
      readonly finding: ReviewFinding;
      readonly answer: Extract<Decision['answer'], 'yes' | 'no'>;
      /** What was shown of the program file and is written with a yes; null where nothing is. */
      readonly edit: ProgramEdit | null;
    }
  | { readonly kind: 'weight-advice'; readonly answer: 'yes' | 'no' }
  | { readonly kind: 'correct'; readonly set: string; readonly numbers: Partial<SetNumbers> }
  /** `of`: a set, a session, a weigh-in or a waist reading. */
  | { readonly kind: 'delete'; readonly of: string }
  /** The last change of this run never happened. */
  | { readonly kind: 'take-back' }
  /** It did: the undo is undone. */
  | { readonly kind: 'bring-back' };
