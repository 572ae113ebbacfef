import type { Coach } from '../../lifter/coach.ts';
import type { PrescribedExercise, Prescription } from '../../progression/prescription.ts';
import { lastLoads } from '../../progression/set-words.ts';
import { inTurnWords } from '../../session/pairs.ts';
import { shortDayWords } from '../../text/day-words.ts';
import { andText } from '../../text/words.ts';
import { type Mass, massText, type Unit } from '../../training/mass.ts';
import { BLANK, indented, type Line, line, paragraph, span, spread } from '../line.ts';
import { markedTexts, moving } from '../list.ts';
import { lessThan, noticeLines, noticesOf, stoppingErrors } from '../notices.ts';
import { type Act, ask, type Seen, show, tell } from '../outcome.ts';
import { OPEN } from '../page.ts';
import { detailTexts, planText } from '../plan-words.ts';
import { HELP, LEAVE_BY_TAP, type ScreenModule, SETTINGS_KEY, takingBack } from '../screen.ts';
import { screenAfter } from '../screen-after.ts';
import type { Screen } from '../ui-state.ts';
import { scrollTo, windowOf } from '../window.ts';
import { loadText, repsText } from '../words.ts';
import { findingsScreen, isStopping } from './findings.ts';
import { GEAR_KEY } from './gear.ts';
import { HISTORY_KEY } from './history.ts';
import { HURTS_KEY } from './hurts.ts';
import { KITS_KEY } from './kits.ts';
import { PROGRAM_KEY } from './program.ts';
import { REVIEW_KEY } from './review.ts';
import { WEIGH_KEY } from './weigh.ts';

type Preview = Extract<Screen, { kind: 'preview' }>;

const INDENT = 2;

/** Before the session: what was done last time, what is due, what changes and why. */
function lines(seen: Seen<Preview>, columns: number, rows: number): Line[] {
  const { screen, coach } = seen;
  const { today, chosen } = screen;
  const head = headLines(seen, columns, rows);
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

function headLines(seen: Seen<Preview>, columns: number, rows: number): Line[] {
  const { today } = seen.screen;
  const { prescription, minutes } = today;
  const title = [span(prescription.program), span(' · '), span(prescription.day, 'strong')];
  const facts = `${shortDayWords(prescription.date)} · ${Math.round(minutes)} min`;
  const wide = spread(title, [span(facts)], columns);
  const named = wide === title ? [title, line(facts)] : [wide];
  const notices = noticesIn(seen, columns);
  if (notices.length === 0) return named;
  return [...named, BLANK, ...noticeLines(notices, columns, rows - named.length - 1 - A_LIFT)];
}

/** Rows in which the first lift says what it is and what it asks for, and that there is more. */
const A_LIFT = 5;

const noticesIn = ({ model, screen, coach }: Seen<Preview>, columns: number): readonly string[] =>
  noticesOf(screen.today, model.choices.cautions === 'doctor-first', coach, columns);

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

/** Who answered yes to a question about health has to say more before the first session. */
const mayBegin = ({ model, screen: { today }, coach }: Seen<Preview>): true | string =>
  model.choices.cautions === 'doctor-first' &&
  today.state !== 'open' &&
  stoppingErrors(today, coach) === 0
    ? 'See a doctor first; y says that one knows that you train.'
    : true;

const BEGIN = { due: 'begin', 'done-today': 'begin', open: 'go on' } as const;

/** Reading down the list changes nothing: only the other key begins where the mark stands. */
const begin =
  (where: 'first' | 'here'): Act<Preview> =>
  (acting) => {
    const { today, chosen } = acting.screen;
    if (stoppingErrors(today, acting.coach) > 0) {
      const found = findingsScreen(acting);
      // Mended meanwhile in an editor, it begins after all, or says what has changed.
      if (typeof found === 'string') return tell(acting, found);
      if (found.findings.some(isStopping)) return show(acting, found);
    }
    const exercise = where === 'here' ? chosen : null;
    const { within, prescription } = today;
    return ask(acting, { do: 'begin', day: prescription.day, within, exercise });
  };

const otherDay: Act<Preview> = (acting) => {
  const { days, prescription, within } = acting.screen.today;
  const by = acting.name === 'left' ? -1 : 1;
  const next = days.at((days.indexOf(prescription.day) + by) % days.length);
  return show(acting, { kind: 'preview', today: acting.coach.today(next, within), chosen: 0 });
};

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
    about: noticesIn(acting, OPEN),
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
    {
      keys: ['space'],
      label: ({ screen, coach }) =>
        stoppingErrors(screen.today, coach) > 0 ? 'what stops it' : BEGIN[screen.today.state],
      when: mayBegin,
      footer: 0,
      tap: { at: 0 },
      press: begin('first'),
    },
    {
      keys: ['enter'],
      label: 'begin with it',
      when: (seen) => {
        const { screen, coach } = seen;
        if (screen.today.state === 'open') return 'Space goes on with the session.';
        if (stoppingErrors(screen.today, coach) > 0) return 'Space shows what stops it.';
        if (mayBegin(seen) !== true) return mayBegin(seen);
        return screen.chosen > 0 ? true : 'Space begins with it.';
      },
      footer: 0,
      press: begin('here'),
    },
    {
      keys: ['right', 'left'],
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
      label: 'yes, a doctor knows',
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
    ...takingBack(),
    PROGRAM_KEY,
    GEAR_KEY,
  ],
  lines,
  spoken: (seen) => markedTexts(lines(seen, OPEN, OPEN)),
};
