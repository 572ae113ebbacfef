import type { Coach } from '../lifter/coach.ts';
import type { Today } from '../lifter/prepare.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import { cutTo } from '../text/columns.ts';
import { howMany } from '../text/words.ts';
import type { Reason } from '../training/rule.ts';
import { type Line, line, paragraph, span, textOf } from './line.ts';
import { isStopping } from './screens/findings.ts';
import { shortText } from './words.ts';

/** What is to be known before the session, in sentences, shorter ones for few columns, the most pressing first. */
export function noticesOf(
  today: Today,
  doctorFirst: boolean,
  coach: Coach,
  columns: number,
): readonly string[] {
  const { prescription, state, elsewhere, kit, troubles } = today;
  const errors = stoppingErrors(today, coach) > 0;
  // With the next good day.
  const isRestTold =
    state === 'done-today' &&
    prescription.warnings.some(({ rule }) => rule === 'rest-trained-today');
  const said = [
    doctorFirst && state !== 'open' ? DOCTOR_FIRST : null,
    elsewhere
      ? `This session is open on ${elsewhere.device} since ${elsewhere.since}. Space takes it over and goes on here.`
      : isRestTold
        ? null
        : STATES[state],
    kit === null ? null : `Today with ${kit}; j changes it.`,
    prescription.short
      ? `${shortText(prescription.short)} w says why, k ${lessThan(today) === undefined ? 'makes it whole again' : 'cuts further'}.`
      : null,
    ...troubles,
    ...prescription.warnings
      .filter((reason) => !isToldElsewhere(reason, prescription.exercises, errors))
      .map((reason) => coach.reasonWords(reason).text),
    state === 'open' ? null : findingsText(coach, columns),
  ];
  return said.filter((text) => text !== null);
}

const DOCTOR_FIRST =
  'You answered yes to a question about your health: see a doctor first. Does one know that you train? y says so.';

const STATES: Readonly<Record<Today['state'], string | null>> = {
  due: null,
  open: 'This session is open: space goes on where you left it.',
  'done-today': 'You have trained today already. This is the session after it.',
};

/** At its lift; or it is not so, where an error lets no lift become due. */
function isToldElsewhere(
  { rule, facts }: Reason,
  exercises: readonly PrescribedExercise[],
  errors: boolean,
): boolean {
  if (rule === 'gear-missing-many' && errors) return true;
  if (rule === 'gear-changed-many') return true;
  return exercises.some(({ name, why: [first] }) => first?.rule === rule && facts.name === name);
}

const openFindings = ({ editor }: Coach) =>
  editor.findings().filter(({ accepted }) => accepted === null);

/** How many errors of the program let no session begin; an open one goes on by its own copy. */
export const stoppingErrors = ({ state }: Today, coach: Coach): number =>
  state === 'open' ? 0 : coach.editor.findings().filter(isStopping).length;

/** Below this width the session needs the rows. */
const NARROW = 50;

/** How much the check has to say of the program. */
function findingsText(coach: Coach, columns: number): string | null {
  const open = openFindings(coach);
  const errors = open.filter(isStopping).length;
  if (open.length === 0) return null;
  const count = howMany(open.length, 'finding');
  if (columns < NARROW)
    return errors > 0 ? `${count}, ${errors} stop it: space` : `${count}: e, then w`;
  return errors > 0
    ? `The check has ${count}, ${errors} of them an error that stops the session: space shows them.`
    : `The check has ${count} on the program: e, then w, shows them.`;
}

/** Minutes to cut a day to, one after the other; then it is whole again. */
const TIMES = [60, 45, 30, 20, 15, 10] as const;

/** The next of them under what the day takes now; undefined where none is. */
export const lessThan = ({ minutes, within }: Today): number | undefined =>
  TIMES.find((time) => time < Math.min(minutes, within ?? Number.POSITIVE_INFINITY));

/**
 * Notices in at most `rows` lines where each can have one: what is left out of one is marked, and
 * stands whole behind `w`. The first ones get what the others do not need.
 */
export function noticeLines(notices: readonly string[], columns: number, rows: number): Line[] {
  const blocks = notices.map((text) => paragraph(`! ${text}`, columns, 'alert', 2));
  let spare = rows - blocks.length;
  return blocks.flatMap((block) => {
    const more = Math.min(block.length - 1, Math.max(0, spare));
    spare -= more;
    return more === block.length - 1 ? block : cutShort(block.slice(0, more + 1), columns);
  });
}

function cutShort(block: readonly Line[], columns: number): Line[] {
  const last = textOf(block.at(-1) ?? line(''));
  return [...block.slice(0, -1), [span(cutTo(`${last.trimEnd()}…`, columns), 'alert')]];
}
