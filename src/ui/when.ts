import { draftNumbers, entryTarget, setsPutDown } from './entry.ts';
import { loadWanted, type Phase, placeOf } from './phase.ts';
import { type Model, type Screen, sheetRows, type Typing } from './ui-state.ts';

type When = (model: Model, phase: Phase | null) => true | string;

const draftOf = ({ ui }: Model): Typing | null =>
  ui.screen.kind === 'runner' ? ui.screen.draft : null;

const during =
  (kinds: readonly Phase['kind'][], reason: string): When =>
  (_, phase) =>
    phase && kinds.includes(phase.kind) ? true : reason;

const BETWEEN: readonly Phase['kind'][] = ['ready', 'resting', 'over'];

const NOTHING_TYPED: Readonly<Partial<Record<Phase['kind'], string>>> = {
  lifting: 'Nothing was typed; space puts the set down.',
  resting: 'Nothing was typed; the set is saved as it stands.',
  over: 'Nothing was typed; the set is saved as it stands.',
  'all-done': 'Nothing was typed; space finishes the session.',
};

/** Whether a key does something now; the sentence why it does not, otherwise. */
export const can = {
  always: () => true,
  act: () => true,
  inSession: ({ session }) => (session ? true : 'No session is open.'),
  save: (model, phase) => {
    const nothing =
      NOTHING_TYPED[phase?.kind ?? 'ready'] ?? 'Nothing was typed; space starts the set.';
    return draftNumbers(draftOf(model), model.session?.prescription.unit ?? 'kg') === null
      ? nothing
      : true;
  },
  typeNumber: ({ session, ui }, phase) =>
    session &&
    phase &&
    (loadWanted(session, phase) !== null ||
      entryTarget(session, phase, ui.screen.kind === 'runner' ? ui.screen.draft : null))
      ? true
      : 'There is no set to put numbers on yet.',
  type: ({ session, ui }, phase) =>
    session &&
    phase &&
    entryTarget(session, phase, ui.screen.kind === 'runner' ? ui.screen.draft : null)
      ? true
      : 'There is no set to put numbers on yet.',
  fail: ({ session, ui }, phase) => {
    const target =
      session &&
      phase &&
      entryTarget(session, phase, ui.screen.kind === 'runner' ? ui.screen.draft : null);
    if (!target?.of) return 'Put the set down first; then z says that the next rep failed.';
    return target.exercise.counts === 'seconds' ? 'A hold has no reps.' : true;
  },
  undo: ({ session }) =>
    session && session.events.length > 1 ? true : 'There is nothing to undo yet.',
  redo: ({ session }) =>
    session?.events.at(-1)?.type === 'undone' ? true : 'There is no undo to take back.',
  takeOffer: ({ offer }) => (offer ? true : 'There is nothing on offer now.'),
  goBack: ({ session }) =>
    session && setsPutDown(session).length > 0 ? true : 'There is no set before this one.',
  goForth: (model) => (draftOf(model)?.of ? true : 'This is the newest set.'),
  withdraw: ({ session }) =>
    session?.stage.kind === 'lifting' ? true : 'No set was started by hand.',
  changeRest: ({ session }) => (session?.stage.kind === 'resting' ? true : 'No rest is running.'),
  pause: during([...BETWEEN, 'lifting'], 'There is nothing to pause.'),
  endCluster: (_, phase) =>
    phase && placeOf(phase)?.role === 'mini' ? true : 'No cluster is under way.',
  changeLoad: during(BETWEEN, 'The load can be changed between sets.'),
  changeExercise: (_, phase) => (phase && placeOf(phase) ? true : 'Every exercise is done.'),
  askWhy: () => true,
  addSet: ({ session }, phase) => {
    if (phase?.kind === 'lifting') return 'A set can be added between sets.';
    const place = phase && placeOf(phase);
    const exercise = place && session?.exercises[place.exercise];
    return exercise?.prescribed.style === 'cluster'
      ? 'A cluster ends by its own rule; it takes no more sets.'
      : true;
  },
  skipSet: during(BETWEEN, 'A set can be skipped before it starts.'),
  finish: (_, phase) => (phase?.kind === 'lifting' ? 'Put the set down first.' : true),
  begin: () => true,
  beginHere: ({ ui }) => {
    if (ui.screen.kind !== 'preview' || ui.screen.today.state === 'open') {
      return 'Space goes on with the session.';
    }
    return ui.screen.chosen > 0 ? true : 'Space begins with it.';
  },
  otherDay: ({ ui }) => {
    if (ui.screen.kind !== 'preview') return true;
    if (ui.screen.today.state === 'open')
      return 'A session is open; go on with it or close it first.';
    return ui.screen.today.days.length > 1 ? true : 'The program has one day.';
  },
  lessTime: ({ ui }) =>
    ui.screen.kind === 'preview' && ui.screen.today.state === 'open'
      ? 'A session is open; go on with it or close it first.'
      : true,
  takeAdvice: ({ ui }) =>
    adviceOf(ui.screen)?.mayTake ? true : 'There is nothing here to change in the program.',
  refuse: ({ ui }) => (adviceOf(ui.screen)?.mayRefuse ? true : 'There is no advice to put aside.'),
  nextAdvice: ({ ui }) =>
    ui.screen.kind === 'review' && ui.screen.page.advice.filter((each) => each.mayRefuse).length > 1
      ? true
      : 'There is no other advice.',
  editExercise: ({ ui }) =>
    ui.screen.kind === 'program' && sheetRows(ui.screen.sheet)[ui.screen.chosen]?.exercise === null
      ? 'Choose a lift first.'
      : true,
  saveProgram: ({ ui }) =>
    ui.screen.kind === 'program' && ui.screen.sheet.text === ui.screen.sheet.before
      ? 'Nothing was changed.'
      : true,
  undoEdit: ({ ui }) =>
    ui.screen.kind === 'program' && ui.screen.past.length === 0
      ? 'There is nothing to undo yet.'
      : true,
  correct: ({ ui }) =>
    ui.screen.kind === 'past-session' && ui.screen.past.row.result.sets[ui.screen.chosen]
      ? true
      : 'A session has no numbers of its own; choose one of its sets.',
} satisfies Record<string, When>;

const adviceOf = (screen: Screen) =>
  screen.kind === 'review' ? screen.page.advice[screen.chosen] : undefined;
