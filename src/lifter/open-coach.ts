import { type History, openSessionOf } from '../journal/history.ts';
import { CATALOGUE } from '../program/catalogue.ts';
import type { Program } from '../program/program.ts';
import { alternativesFor } from '../progression/alternatives.ts';
import { expectedSets } from '../progression/expected-sets.ts';
import { hurtsOn } from '../progression/hurts.ts';
import { LIMITS } from '../progression/limits.ts';
import { offerAfterSet } from '../progression/offer-after-set.ts';
import type { Circumstances } from '../progression/past.ts';
import { type Anew, prescribeAnew } from '../progression/prescribe-anew.ts';
import type { PrescribedExercise } from '../progression/prescription.ts';
import type { SessionCommand } from '../session/command.ts';
import { isOver, worksOf } from '../session/next-set.ts';
import type { SessionState } from '../session/state.ts';
import type { Settings } from '../settings/settings.ts';
import { lastOf } from '../text/once.ts';
import { orProblem, type Problem, Refusal } from '../text/problem.ts';
import type { Mass, Unit } from '../training/mass.ts';
import type { Reading } from '../training/reading.ts';
import { openProgramEditor } from './change-program.ts';
import type { Choices, Coach } from './coach.ts';
import { openDrafting } from './drafting.ts';
import { equipmentAfter, madeUp, nearLoads } from './gear.ts';
import { openLookBack } from './look-back.ts';
import type { Lifter } from './open-lifter.ts';
import type { KeepSettings } from './ports.ts';
import { programInForce, todayOf } from './prepare.ts';
import { reasonWords } from './rules.ts';
import {
  goesOnElsewhere,
  type LiveSession,
  minutesLeft,
  openWriter,
  runSession,
  shortenTo,
} from './run-session.ts';
import { sessionReview } from './session-review.ts';

const NONE: SessionState['loaded'] = [];

/** What makes a session a part of the past, or takes it out again. */
const MOVES_THE_PAST: ReadonlySet<SessionCommand['do']> = new Set([
  'close',
  'discard',
  'undo',
  'redo',
]);

/** Lifts offered in place of one; more is no help to someone out of breath. */
const ALTERNATIVES = 8;

/** What the screens ask, answered for this lifter; with the minutes there are and the day, where they were given at the start. */
export function openCoach(
  opened: Lifter,
  keepSettings: KeepSettings,
  minutes: number | null = null,
  dayAsked: string | null = null,
): Coach {
  const { ports } = opened;
  let live: LiveSession | null = null;
  let asked = minutes;
  /** Named at the start: until a session is begun. */
  let named = dayAsked;
  let settings = opened.settings().settings;
  // What is kept in this run counts at once.
  const lifter: Lifter = {
    ...opened,
    settings: () => ({ ...opened.settings(), settings }),
  };
  /** What lies behind the live session: its own sets are no part of it until it is closed. */
  let behind: { readonly history: History; readonly circumstances: Circumstances } | null = null;
  const behindIt = () => {
    behind ??= {
      history: lifter.journal().history(),
      circumstances: lifter.circumstances(),
    };
    return behind;
  };
  /** Looks at it anew at once, so that no frame has to ask the clock what day it is. */
  const changed = () => {
    behind = null;
    behindIt();
  };
  const changing = <Found>(act: () => Found): Found => {
    const found = act();
    changed();
    return found;
  };
  /** Another window may have changed the gear, or weighed in, at any moment. */
  const freshened = (): boolean => {
    const journal = lifter.journal();
    if (!journal.changedElsewhere()) return false;
    journal.reload();
    changed();
    return true;
  };
  const history = () => behindIt().history;
  const gear = () => behindIt().circumstances.gear;
  const bodyMass = () => history().bodyMassOn(behindIt().circumstances.today);
  const unit = (): Unit => live?.state().prescription.unit ?? lifter.unit();
  /** An exercise of the live session at another load, lighter, or as another lift. */
  const anew = (exercise: PrescribedExercise, change: Anew): PrescribedExercise => {
    const session = live?.state();
    if (!session) throw new Error('An exercise is prescribed anew in a session only.');
    // A list asks for the same ones with every frame.
    const made = madeAnew(session, history());
    const position = session.exercises.findIndex(({ prescribed }) => prescribed === exercise);
    const key = `${position} ${exercise.track} ${JSON.stringify('lift' in change ? change.lift.key : change)}`;
    const known = made.get(key);
    if (known) return known;
    const found = anewIn(session, exercise, change);
    made.set(key, found);
    return found;
  };
  const madeAnew = lastOf(
    (_session: SessionState, _past: History) => new Map<string, PrescribedExercise>(),
  );
  const anewIn = (
    session: SessionState,
    exercise: PrescribedExercise,
    change: Anew,
  ): PrescribedExercise => {
    const own = session.exercises.find(({ prescribed }) => prescribed === exercise);
    return prescribeAnew(
      exercise,
      change,
      {
        prescription: session.prescription,
        lifts: lifts(),
        done: own?.done.slice(own.doneBeforeChange) ?? [],
        trained: session.exercises
          .flatMap(worksOf)
          .filter(({ done }) => done.length > 0)
          .map(({ prescribed }) => prescribed),
        equipment: equipment(),
      },
      history().lately,
      behindIt().circumstances,
    );
  };
  /** A session that is open goes on whatever becomes of the program file. */
  const orNull = (read: () => Program): Program | null => {
    try {
      return read();
    } catch (error) {
      if (error instanceof Refusal) return null;
      throw error;
    }
  };
  const readable = () =>
    orNull(() => programInForce({ ...lifter, today: () => behindIt().circumstances.today }));
  // Not as it is in force: that follows from all that was recorded, and would be asked after every set.
  const lifts = () => orNull(lifter.program)?.lifts ?? CATALOGUE;
  const after = lastOf(equipmentAfter);
  const equipment = () => after(live?.state().loaded ?? NONE, gear());
  const reviewed = lastOf((session: SessionState, past: History) =>
    sessionReview(session, {
      history: past,
      program: readable(),
      // Gear of another place is there for a day.
      circumstances: { ...behindIt().circumstances, gear: lifter.gear() },
      sentence: (reason) => reasonWords(reason, unit()).text,
    }),
  );
  const keepNow: KeepSettings = (change) => {
    settings = keepSettings(change);
    return settings;
  };
  const settingsKeeper = { now: () => settings, keep: keepNow };
  const drafting = openDrafting(lifter, settingsKeeper);
  const lookBack = openLookBack(lifter, settingsKeeper, unit);
  const shortenSources = (now: Reading) => ({
    now,
    history: history(),
    program: readable(),
    circumstances: behindIt().circumstances,
  });
  /** Lifts in place of one that load nothing hard that hurts. */
  const sparing = (exercise: PrescribedExercise) => {
    const { today } = behindIt().circumstances;
    const hurts = new Set(hurtsOn(history().decisions, today).map(({ joint }) => joint));
    return alternativesFor(exercise, lifts(), gear()).filter(
      ({ joints }) => !joints.some((joint) => hurts.has(joint)),
    );
  };
  const withLoad = (exercise: PrescribedExercise, load: Mass) =>
    anew(exercise, { kind: 'load', load });

  return {
    today: (day = named ?? undefined, within = asked) => {
      if (!freshened()) behindIt();
      asked = within;
      return todayOf(lifter, day ?? null, within);
    },
    begin: (day = named ?? undefined, within = asked) =>
      orProblem(() => {
        if (freshened() && !openSessionOf(lifter.journal().history()))
          throw new Refusal(RECORDED_ELSEWHERE);
        const writer = openWriter(lifter, day ?? null, within, keepNow);
        named = null;
        changed();
        const run = runSession(writer, () => ports.clock.read());
        live = {
          ...run,
          send: (command) => {
            freshened();
            const elsewhere = goesOnElsewhere(run.state(), history());
            if (elsewhere) return elsewhere;
            const problem = run.send(command);
            if (MOVES_THE_PAST.has(command.do)) changed();
            return problem;
          },
        };
        return live;
      }),
    live: () => live,
    madeUp: (exercise, load) => madeUp(exercise, load, gear(), unit(), equipment()),
    alternatives: (exercise) =>
      sparing(exercise)
        .slice(0, ALTERNATIVES)
        .map((lift) => anew(exercise, { kind: 'other-lift', lift })),
    minutesLeft: () => (live ? minutesLeft(live.state(), shortenSources(live.now())) : 0),
    shortenTo: (minutes) => {
      if (!live) throw new Error('Only a session that runs is shortened.');
      return shortenTo(live.state(), minutes, shortenSources(live.now()));
    },
    hasAlternatives: (exercise) => sparing(exercise).length > 0,
    withLoad,
    lighter: (exercise) => {
      const lighter = anew(exercise, { kind: 'lighter' });
      const isLighter = (lighter.load ?? 0) < (exercise.load ?? Number.POSITIVE_INFINITY);
      return lighter.load !== null && isLighter ? lighter : null;
    },
    painGone: (exercise) => anew(exercise, { kind: 'go-on' }),
    answerPain: (subject, answer) =>
      orProblem(() => {
        changing(() =>
          lifter.journal().record({ type: 'decided', rule: 'pain-asked', answer, subject }),
        );
        return null;
      }),
    offer: (index) => {
      const exercise = live?.state().exercises[index];
      if (!exercise) return null;
      const offer = offerAfterSet(
        exercise.prescribed,
        exercise.done.slice(exercise.doneBeforeChange),
        gear(),
        bodyMass(),
      );
      if (!offer || exercise.leftOut) return null;
      const addsSet = isOver(exercise);
      const isLast = exercise.done.length >= LIMITS.setsToFind;
      if (addsSet && (isLast || offer.reason.rule !== 'offer-heavier')) return null;
      const by = withLoad(exercise.prescribed, offer.load);
      return { exercise: index, by, words: reasonWords(offer.reason, unit()).text, addsSet };
    },
    nearestLoads: (exercise, wish) => nearLoads(exercise, wish, gear(), bodyMass(), unit()),
    reasonWords: (reason) => reasonWords(reason, unit()),
    expected: (exercise) =>
      expectedSets(history().lately, exercise, behindIt().circumstances.today),
    review: () => {
      const session = live?.state();
      return session
        ? reviewed(session, history())
        : { hardReps: null, clusters: null, bests: [], next: [] };
    },
    choices: () => choicesOf(settings),
    keep: (choices) => {
      // Only what was changed: another setting may hold what this version does not understand.
      const before = choicesOf(settings);
      const changed = Object.fromEntries(
        Object.entries(choices).filter(([key, value]) => value !== before[key as keyof Choices]),
      );
      const kept = orProblem(() => keepNow(changed));
      return isProblem(kept) ? kept : null;
    },
    lookBack: {
      ...lookBack,
      change: (change) => changing(() => lookBack.change(change)),
    },
    editor: openProgramEditor(lifter, settingsKeeper),
    drafting: {
      ...drafting,
      take: (answers) => changing(() => drafting.take(answers)),
      keepGear: (gear) => changing(() => drafting.keepGear(gear)),
    },
    banner: ports.demoFolder
      ? {
          whole: `Demo: twelve invented weeks in ${ports.demoFolder}, removed when you leave.`,
          short: 'Demo · removed when you leave',
          name: 'Demo',
        }
      : null,
  };
}

const RECORDED_ELSEWHERE: Problem = {
  what: 'Something was changed in another window meanwhile.',
  fix: 'This is what follows from it; space begins it.',
};

const choicesOf = ({
  bell,
  flash,
  speech,
  spoken,
  notification,
  taps,
  theme,
  cautions,
}: Settings): Choices => ({ bell, flash, speech, spoken, notification, taps, theme, cautions });

const isProblem = (value: object): value is Problem => 'what' in value;
