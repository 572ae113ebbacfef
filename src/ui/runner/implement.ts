import type { Coach } from '../../lifter/coach.ts';
import type { PrescribedExercise } from '../../progression/prescription.ts';
import type { SessionState } from '../../session/state.ts';
import { columnsOf } from '../../text/columns.ts';
import type { Mass } from '../../training/mass.ts';
import { blockDigits } from '../digits.ts';
import { type Line, line, paragraph } from '../line.ts';
import { type Phase, placeOf } from '../phase.ts';
import { plannedSet } from '../set-plan.ts';
import { loadText } from '../words.ts';

/** What to put on and take off before the next set. */
export function implementLines(
  session: SessionState,
  phase: Phase,
  coach: Coach,
  columns: number,
): Line[] {
  const next = toChange(session, phase, coach);
  if (!next) return [];
  const { made } = next;
  if (!made) return unmadeLines(next, session, coach, columns);
  return made.change
    ? paragraph(made.change, columns, 'strong')
    : paragraph(`as it is: ${made.words}`, columns, 'plain', 2);
}

/** The next load and how it is made up; null while a set is being lifted, when nothing is changed. */
function toChange(session: SessionState, phase: Phase, coach: Coach) {
  const next = phase.kind === 'lifting' ? null : nextLoad(session, phase);
  return next && { ...next, made: coach.madeUp(next.exercise, next.load) };
}

/** The plates to change in block digits, to be read from the rack; none where they do not fit. */
export function plateDigits(
  session: SessionState,
  phase: Phase,
  coach: Coach,
  columns: number,
): Line[] {
  const digits = toChange(session, phase, coach)?.made?.digits ?? '';
  return (blockDigits(digits, columns, PLATE_ROWS) ?? []).map((row) => line(row));
}

/** At 3 m a digit should be about 4.5 lines high (ISO 9241). */
const PLATE_ROWS = 5;

/** The gear may have changed since the session began: another load is asked for, at once. A fixed dumbbell is named among those that take plates. */
function unmadeLines(
  { exercise, load }: Wanted,
  session: SessionState,
  coach: Coach,
  columns: number,
): Line[] {
  if (exercise.step !== null || !MADE_OF_PIECES.has(exercise.loading)) return [];
  const { below, exact, above } = coach.nearestLoads(exercise, load);
  if (exact !== null) {
    if (!isAmongLoaded(exercise, coach)) return [];
    return [line(exercise.hands === 2 ? 'fixed dumbbells' : 'a fixed dumbbell')];
  }
  const { unit } = session.prescription;
  const near = [below, above].filter((each) => each !== null);
  const words = near.map((each) => loadText(each, exercise, unit)).join(' or ');
  const instead = words ? `${words} can be` : 'change the gear, or choose another lift';
  return paragraph(
    `${loadText(load, exercise, unit)} cannot be made with your gear: ${instead}; c changes the load.`,
    columns,
    'alert',
  );
}

/** Does another set of it take plates? Then their silence would be missed. */
const isAmongLoaded = (exercise: PrescribedExercise, coach: Coach): boolean =>
  exercise.loading === 'dumbbell' &&
  [...exercise.warmUp.map(({ load }) => load), exercise.load].some(
    (load) => load !== null && coach.madeUp(exercise, load) !== null,
  );

const MADE_OF_PIECES: ReadonlySet<string> = new Set(['barbell', 'dumbbell']);

/** The implement from the side, where there is room. */
export function pictureLines(
  session: SessionState,
  phase: Phase,
  coach: Coach,
  columns: number,
): Line[] {
  const next = nextLoad(session, phase);
  if (!next) return [];
  const picture = coach.madeUp(next.exercise, next.load)?.picture(Math.min(columns, 72)) ?? [];
  // A picture that does not fit would be a wrong one.
  const fits = picture.every((row) => columnsOf(row) <= columns);
  return fits ? picture.map((row) => line(row, 'drawn')) : [];
}

interface Wanted {
  readonly exercise: PrescribedExercise;
  readonly load: Mass;
}

function nextLoad(session: SessionState, phase: Phase): Wanted | null {
  const place = placeOf(phase);
  const load = place && plannedSet(session, place)?.load;
  const exercise = place && session.exercises[place.exercise]?.prescribed;
  return exercise && load !== null && load !== undefined ? { exercise, load } : null;
}
