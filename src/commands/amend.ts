import type { JournalEvent } from '../journal/records.ts';
import { findRecord, type Recorded, recordWords } from '../lifter/change-past.ts';
import { deletedSessionOf } from '../lifter/deleted-records.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { amend } from '../session/decisions/lifting.ts';
import type { SetNumbers } from '../session/events.ts';
import { localDate } from '../session/results.ts';
import { dayWords } from '../text/day-words.ts';
import { jsonText } from '../text/json-text.ts';
import { type Problem, Refusal, WrongUse } from '../text/problem.ts';
import { howMany } from '../text/words.ts';
import { massOf } from '../training/mass.ts';
import type { AmendJson } from './amend-schema.ts';
import type { Call, Run } from './call.ts';
import { massOperand, wholeNumber } from './operands.ts';

/** Corrects a set, or deletes or brings back a set, a session or a weigh-in, by new events. */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, call.global);
  const [id = ''] = call.args;
  if (call.options.dryRun === true && call.options.delete !== true) {
    throw new WrongUse({
      what: '--dry-run is for --delete.',
      fix: 'All else can be taken back by itself.',
    });
  }
  if (call.options.restore === true) restore(call, lifter, id);
  else if (call.options.delete === true) remove(call, lifter, id);
  else correct(call, lifter, id);
  return 0;
};

function correct(call: Call, lifter: Lifter, id: string): void {
  const record = standing(lifter, id);
  if (record.kind !== 'set') throw new Refusal(NO_NUMBERS[record.kind]);
  const numbers = numbersAsked(call, record);
  const decided = amend(record.session, { do: 'amend', of: id, numbers });
  if (!decided.ok) throw new Refusal(decided.problem);
  const before = words(lifter, record);
  lifter.journal().record({ type: 'set-amended', of: id, ...numbers });
  const after = words(lifter, standing(lifter, id));
  answer(call, [before.what, `before  ${before.says}`, `after   ${after.says}`].join('\n'), {
    id,
    did: 'corrected',
    what: before.what,
    before: before.says,
    after: after.says,
  });
}

function remove(call: Call, lifter: Lifter, id: string): void {
  if (Object.keys(call.options).some((name) => NUMBERS.has(name))) {
    throw new WrongUse({
      what: '--delete was given with new numbers.',
      fix: 'Correct it or delete it: give one of the two.',
    });
  }
  const imported = importOf(lifter, id);
  const back = `"holdfast amend ${id} --restore" brings it back.`;
  const told = imported
    ? { what: 'import', says: importedText(imported) }
    : words(lifter, standing(lifter, id));
  const isTried = call.options.dryRun === true;
  if (!isTried) lifter.journal().record({ type: 'deleted', of: imported?.of ?? id });
  const done = imported ? `the import of ${told.says}` : `${told.what}: ${told.says}`;
  const text = isTried
    ? `Nothing is deleted yet. To go: ${done}.`
    : `${imported ? 'Taken back' : 'Deleted'}: ${done}. ${back}`;
  answer(call, text, { id, did: 'deleted', what: told.what, before: told.says, after: null });
}

function restore(call: Call, lifter: Lifter, id: string): void {
  const imported = importOf(lifter, id);
  const deletions = (imported?.of ?? [id]).flatMap((each) => deletionsOf(lifter, each));
  if (deletions.length === 0) {
    throw new Refusal({
      what: `Nothing of the id "${id}" is deleted.`,
      fix: 'Write the id that "holdfast amend ID --delete" was given.',
    });
  }
  // Two devices may have deleted the same thing.
  for (const of of new Set(deletions.map((each) => each.id))) {
    lifter.journal().record({ type: 'undone', of });
  }
  const record = findRecord(lifter.journal().history(), id);
  const found = record && words(lifter, record);
  const told = imported ? { what: 'import', says: importedText(imported) } : found;
  const text = imported
    ? `Brought back: the import of ${importedText(imported)}.`
    : told
      ? `Brought back: ${told.what}: ${told.says}.`
      : 'Brought back. It stays out of sight while the session that holds it is deleted.';
  const what = told?.what ?? 'record';
  answer(call, text, { id, did: 'restored', what, before: null, after: told?.says ?? null });
}

function answer(
  { global, options, print }: Call,
  text: string,
  told: Omit<AmendJson, 'schema' | 'written'>,
): void {
  const json: AmendJson = { schema: 1, written: options.dryRun !== true, ...told };
  print(global.json ? jsonText(json) : text);
}

type Import = Extract<JournalEvent, { type: 'imported' }>;

const importOf = (lifter: Lifter, id: string): Import | undefined =>
  lifter
    .journal()
    .history()
    .events()
    .find((event): event is Import => event.type === 'imported' && event.id === id);

const importedText = ({ of, at, zone }: Import): string =>
  `${dayWords(localDate(at.wall, zone))}, ${howMany(of.length, 'record')}`;

const NUMBERS: ReadonlySet<string> = new Set(['load', 'reps', 'reserve']);

const deletionsOf = (lifter: Lifter, id: string) =>
  lifter
    .journal()
    .history()
    .deletions.filter(({ of }) => of === id);

const words = (lifter: Lifter, record: Recorded) => recordWords(record, lifter.unit());

function standing(lifter: Lifter, id: string): Recorded {
  const record = findRecord(lifter.journal().history(), id);
  if (record) return record;
  throw new Refusal(missing(lifter, id));
}

function missing(lifter: Lifter, id: string): Problem {
  if (deletionsOf(lifter, id).length > 0) {
    return {
      what: `"${id}" was deleted.`,
      fix: `"holdfast amend ${id} --restore" brings it back.`,
    };
  }
  const history = lifter.journal().history();
  const session = deletedSessionOf(history, id);
  if (session !== null) {
    return {
      what: `"${id}" belongs to a session that was deleted.`,
      fix: `"holdfast amend ${session} --restore" brings the session back.`,
    };
  }
  const { open } = history;
  const isOpen = open.some(
    ({ session, state }) => session === id || state.events.some((event) => event.id === id),
  );
  return isOpen
    ? {
        what: `"${id}" belongs to a session that is still open.`,
        fix: 'Correct it in "holdfast train", or close the session first.',
      }
    : {
        what: `Nothing recorded has the id "${id}".`,
        fix: '"holdfast history --ids" shows the ids of sessions, sets and weigh-ins.',
      };
}

const NO_NUMBERS: Readonly<Record<'session' | 'weigh-in' | 'waist', Problem>> = {
  session: {
    what: 'A session has no numbers of its own to correct.',
    fix: 'Name one of its sets, or delete the session with --delete.',
  },
  'weigh-in': {
    what: 'A weigh-in is not corrected.',
    fix: 'Delete it with --delete, then record it anew with "holdfast weigh MASS --date DAY".',
  },
  waist: {
    what: 'A waist reading is not corrected.',
    fix: 'Delete it with --delete, then record it anew with "holdfast weigh --waist LENGTH --date DAY".',
  },
};

function numbersAsked(
  { options }: Call,
  { session, exercise }: Extract<Recorded, { kind: 'set' }>,
): Partial<SetNumbers> {
  const { load, reps, reserve } = options;
  const numbers: Partial<SetNumbers> = {
    ...(typeof load === 'string' && {
      load: massOf(massOperand(load, session.prescription.unit)),
    }),
    ...(typeof reps === 'string' && { count: wholeNumber(reps, '--reps', 0, 900) }),
    ...(typeof reserve === 'string' && {
      reserve: reserve === 'none' ? null : wholeNumber(reserve, '--reserve', 0, 10),
    }),
  };
  if (Object.keys(numbers).length > 0) return numbers;
  throw new WrongUse({
    what: `Nothing was said about what to correct in this set of ${exercise.name}.`,
    fix: 'Give --load, --reps or --reserve, or --delete.',
  });
}
