import type { Coach } from '../../lifter/coach.ts';
import type { Today } from '../../lifter/prepare.ts';
import type { PrescribedExercise, Prescription } from '../../progression/prescription.ts';
import { lastLoads } from '../../progression/set-words.ts';
import { inTurnWords } from '../../session/pairs.ts';
import { shortDayWords } from '../../text/day-words.ts';
import { andText, howMany } from '../../text/words.ts';
import { type Mass, massText, type Unit } from '../../training/mass.ts';
import { BLANK, indented, type Line, line, paragraph, span, spread } from '../line.ts';
import { markedTexts, moving } from '../list.ts';
import { type Act, ask, type Seen, show } from '../outcome.ts';
import { OPEN } from '../page.ts';
import { detailTexts, planText } from '../plan-words.ts';
import { HELP, LEAVE_BY_TAP, type ScreenModule, SETTINGS_KEY, TAKE_BACK } from '../screen.ts';
import { screenAfter } from '../screen-after.ts';
import type { Screen } from '../ui-state.ts';
import { scrollTo, windowOf } from '../window.ts';
import { loadText, repsText, shortText } from '../words.ts';
import { FINDINGS_KEY } from './findings.ts';
import { GEAR_KEY } from './gear.ts';
import { HISTORY_KEY } from './history.ts';
import { HURTS_KEY } from './hurts.ts';
import { KITS_KEY } from './kits.ts';
import { PROGRAM_KEY } from './program.ts';
import { NEW_PROGRAM_KEY } from './question.ts';
import { REVIEW_KEY } from './review.ts';
import { WEEK_KEY } from './week.ts';
import { WEIGH_KEY } from './weigh.ts';

type Preview = Extract<Screen, { kind: 'preview' }>;

const INDENT = 2;

/** Before the session: what was done last time, what is due, what changes and why. */
function lines({ model, screen, coach }: Seen<Preview>, columns: number, rows: number): Line[] {
  const { choices } = model;
  const { today, chosen } = screen;
  const head = headLines(today, choices.cautions === 'doctor-first', coach, columns);
  const blocks = today.prescription.exercises.map((exercise, index) => [
    BLANK,
    ...exerciseLines(exercise, index === chosen, today.prescription, coach, columns),
  ]);
  const before = blocks.slice(0, chosen).reduce((sum, one) => sum + one.length, head.length);
  const end = before + (blocks[chosen]?.length ?? 0);
  // With the first exercise the head is in sight: it holds what to know before starting.
  const scroll = chosen === 0 ? 0 : scrollTo(before + 1, end, rows);
  return windowOf([...head, ...blocks.flat()], rows, scroll);
}

const STATES: Readonly<Record<Today['state'], string | null>> = {
  due: null,
  open: 'This session is open: space goes on where you left it.',
  'done-today': 'You have trained today already. This is the session after it.',
};

function headLines(today: Today, doctorFirst: boolean, coach: Coach, columns: number): Line[] {
  const { prescription, minutes, state, elsewhere } = today;
  const title = [span(prescription.program), span(' · '), span(prescription.day, 'strong')];
  const facts = `${shortDayWords(prescription.date)} · ${Math.round(minutes)} min`;
  const said = [
    doctorFirst
      ? 'You answered yes to a question about your health: see a doctor first. y once a doctor knows that you train.'
      : null,
    elsewhere
      ? `This session is open on ${elsewhere.device} since ${elsewhere.since}. Space takes it over and goes on here.`
      : STATES[state],
    prescription.lighter ? 'A lighter week: fewer sets, same loads.' : null,
    today.kit === null ? null : `Today with ${today.kit}; j changes it.`,
    prescription.short
      ? `${shortText(prescription.short)} w says why, k ${lessThan(today) === undefined ? 'makes it whole again' : 'cuts further'}.`
      : null,
    ...today.troubles,
    ...prescription.warnings.map((reason) => coach.reasonWords(reason).text),
    state === 'open' ? null : findingsText(coach, columns),
  ].filter((text) => text !== null);
  const wide = spread(title, [span(facts)], columns);
  return [
    ...(wide === title ? [title, line(facts)] : [wide]),
    ...(said.length > 0 ? [BLANK] : []),
    ...said.flatMap((text) => paragraph(`! ${text}`, columns, 'alert', 2)),
  ];
}

/** Below this width the session needs the rows. */
const NARROW = 50;

/** How much the check has to say of the program. */
function findingsText({ editor }: Coach, columns: number): string | null {
  const open = editor.findings().filter(({ accepted }) => accepted === null);
  const errors = open.filter(({ severity }) => severity === 'error').length;
  if (open.length === 0) return null;
  const count = howMany(open.length, 'finding');
  if (columns < NARROW) return errors > 0 ? `${count}, ${errors} stop it: f` : `${count}: f`;
  return errors > 0
    ? `The check has ${count}, ${errors} of them an error that stops the session: f shows them.`
    : `The check has ${count} on the program: f shows them.`;
}

function exerciseLines(
  exercise: PrescribedExercise,
  isChosen: boolean,
  { unit, exercises }: Prescription,
  coach: Coach,
  columns: number,
): Line[] {
  const inner = columns - INDENT;
  const text = (words: string, role: 'plain' | 'quiet' | 'strong' = 'plain') =>
    paragraph(words, inner, role, 2).map((one) => indented(one, INDENT));
  const [reason] = exercise.why;
  const inTurn = inTurnWords(exercises, exercise);
  const name: Line = [span(isChosen ? '▸ ' : '  ', 'drawn'), span(exercise.name, 'strong')];
  const move = moveText(exercise, unit);
  const named = spread(name, [span(move, 'strong')], columns);
  return [
    named,
    // What changes is never left away for want of room.
    ...(named === name && move ? text(move, 'strong') : []),
    ...text(planText(exercise, unit), 'strong'),
    ...(inTurn ? text(inTurn) : []),
    ...text(lastText(exercise, unit)),
    ...(reason ? text(coach.reasonWords(reason).text) : []),
    ...(exercise.askPain ? text('Pain was marked last time; you will be asked first.') : []),
    ...(exercise.testSet ? text('Last set: on to a rep that fails, if you like.') : []),
    ...(exercise.hurts
      ? text(`Loads the ${andText(exercise.hurts)}, which hurts: asked first.`)
      : []),
    ...(isChosen ? detailTexts(exercise, unit, coach).flatMap((words) => text(words)) : []),
  ];
}

/** What progression does, in a word or two: `up 2.5 kg`, `hold`, `first time`. */
function moveText({ move, load, last }: PrescribedExercise, unit: Unit): string {
  if (move === 'start') return 'first time';
  const change = load === null || !last ? 0 : load - last.load;
  if (change === 0 || move === 'hold') return move;
  return `${move} ${massText(Math.abs(change) as Mass, unit)}`;
}

function lastText(exercise: PrescribedExercise, unit: Unit): string {
  const { last } = exercise;
  if (!last) return exercise.move === 'start' ? '' : 'not done in this way before';
  const sets = last.counts.map((count, at) => ({ count, reserve: last.reserves[at] ?? null }));
  const load = lastLoads(last, (each) => loadText(each, exercise, unit));
  return `${shortDayWords(last.date)}: ${load} · ${repsText(sets, exercise)}`;
}

/** Reading down the list changes nothing: only the other key begins where the mark stands. */
const begin =
  (where: 'first' | 'here'): Act<Preview> =>
  (acting) => {
    const { today, chosen } = acting.screen;
    const exercise = where === 'here' ? chosen : null;
    const { within, prescription } = today;
    return ask(acting, { do: 'begin', day: prescription.day, within, exercise });
  };

const otherDay: Act<Preview> = (acting) => {
  const { days, prescription, within } = acting.screen.today;
  const next = days[(days.indexOf(prescription.day) + 1) % days.length];
  return show(acting, { kind: 'preview', today: acting.coach.today(next, within), chosen: 0 });
};

/** Minutes to cut a day to, one after the other; then it is whole again. */
const TIMES = [60, 45, 30, 20, 15, 10] as const;

const lessThan = ({ minutes, within }: Today): number | undefined =>
  TIMES.find((time) => time < Math.min(minutes, within ?? Number.POSITIVE_INFINITY));

const lessTime: Act<Preview> = (acting) => {
  const { today: shown } = acting.screen;
  const today = acting.coach.today(shown.prescription.day, lessThan(shown) ?? null);
  return show(acting, { kind: 'preview', today, chosen: 0 });
};

const why: Act<Preview> = (acting) => {
  const { screen } = acting;
  const { exercises, unit, short } = screen.today.prescription;
  const chosen = exercises[screen.chosen];
  return show(acting, {
    kind: 'why',
    exercises: chosen ? [chosen] : exercises,
    unit,
    cut: short?.cut ?? [],
    back: screen,
    scroll: 0,
  });
};

const doctorKnows: Act<Preview> = (acting) =>
  ask(acting, {
    do: 'keep',
    choices: { ...acting.model.choices, cautions: 'read' },
    to: acting.screen,
  });

const IS_OPEN = 'A session is open; go on with it or close it first.';

export const PREVIEW_SCREEN: ScreenModule<Preview> = {
  anew: (_, coach) => screenAfter('preview', coach),
  wholeBanner: true,
  keys: [
    { keys: ['w'], label: 'why this', footer: 2, press: why },
    { keys: ['space'], label: 'begin', footer: 0, tap: { at: 0 }, press: begin('first') },
    {
      keys: ['enter'],
      label: 'begin with it',
      when: ({ screen }) => {
        if (screen.today.state === 'open') return 'Space goes on with the session.';
        return screen.chosen > 0 ? true : 'Space begins with it.';
      },
      footer: 0,
      press: begin('here'),
    },
    {
      keys: ['d'],
      label: 'another day',
      when: ({ screen }) => {
        if (screen.today.state === 'open') return IS_OPEN;
        return screen.today.days.length > 1 ? true : 'The program has one day.';
      },
      footer: 3,
      press: otherDay,
    },
    {
      keys: ['k'],
      label: 'less time',
      when: ({ screen }) => (screen.today.state === 'open' ? IS_OPEN : true),
      footer: 3,
      press: lessTime,
    },
    {
      keys: ['y'],
      label: 'a doctor knows',
      when: ({ model }) =>
        model.choices.cautions === 'doctor-first' ? true : 'There is nothing to answer.',
      footer: 0,
      press: doctorKnows,
    },
    ...moving<Preview>(({ screen }) => screen.today.prescription.exercises.length),
    SETTINGS_KEY,
    HELP,
    LEAVE_BY_TAP,
    REVIEW_KEY,
    HISTORY_KEY,
    WEIGH_KEY,
    HURTS_KEY,
    KITS_KEY,
    WEEK_KEY,
    TAKE_BACK,
    PROGRAM_KEY,
    GEAR_KEY,
    NEW_PROGRAM_KEY,
    FINDINGS_KEY,
  ],
  lines,
  spoken: (seen) => markedTexts(lines(seen, OPEN, OPEN)),
};
