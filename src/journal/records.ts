import type { Decision } from '../progression/past.ts';
import type { SessionEvent, SessionFact, Stamp } from '../session/events.ts';
import type { Gear } from '../training/gear.ts';
import { LOADINGS, PATTERNS } from '../training/lift.ts';
import type { Mass } from '../training/mass.ts';

/** Tells whether a value has a shape. */
type Shape = (value: unknown) => boolean;

const text: Shape = (value) => typeof value === 'string';
const whole: Shape = (value) => Number.isSafeInteger(value);
const yesOrNo: Shape = (value) => typeof value === 'boolean';
const finite: Shape = (value) => Number.isFinite(value);
const anything: Shape = () => true;

const oneOf =
  (...names: readonly string[]): Shape =>
  (value) =>
    names.includes(value as string);

const orNull =
  (shape: Shape): Shape =>
  (value) =>
    value === null || shape(value);

/** The field may be missing. */
const maybe =
  (shape: Shape): Shape =>
  (value) =>
    value === undefined || shape(value);

const listOf =
  (shape: Shape): Shape =>
  (value) =>
    Array.isArray(value) && value.every(shape);

const pairOf =
  (shape: Shape): Shape =>
  (value) =>
    Array.isArray(value) && value.length === 2 && value.every(shape);

/** An object with at least these fields. */
function withFields(fields: Readonly<Record<string, Shape>>): Shape {
  const names = Object.keys(fields);
  const shapes = Object.values(fields);
  return (value) =>
    typeof value === 'object' &&
    value !== null &&
    shapes.every((shape, at) => shape((value as Record<string, unknown>)[names[at] as string]));
}

/** Facts that belong to no session. */
export type LooseFact =
  /** `on`: the local day weighed, `2026-11-25`. */
  | { readonly type: 'weighed'; readonly mass: Mass; readonly on: string }
  | ({ readonly type: 'decided' } & Pick<Decision, 'rule' | 'answer' | 'subject'>)
  | { readonly type: 'gear-set'; readonly gear: Gear }
  /** The event, set or session named by `of` never happened. */
  | { readonly type: 'deleted'; readonly of: string }
  /** The device of that name goes on with a session that another one opened, in its own file. `after`: the last event of the session that it had read. */
  | {
      readonly type: 'session-taken-over';
      readonly session: string;
      readonly after: string;
      readonly device?: string;
    };

export type LooseEvent = LooseFact & Stamp;

/** Any line of a journal file. */
export type JournalEvent = SessionEvent | LooseEvent;

/** Corrections of sets and undos, written after their session was closed. */
export type Correction = Extract<
  SessionFact,
  { readonly type: 'set-amended' | 'sets-confirmed' | 'undone' }
>;

const rest = withFields({ from: finite, to: finite });
const reason = withFields({ rule: text, facts: anything });

/** What every fold relies on in a prescribed exercise. */
const exerciseShape = withFields({
  lift: text,
  name: text,
  loading: oneOf(...LOADINGS),
  kind: oneOf('compound', 'isolation'),
  pattern: oneOf(...PATTERNS),
  trains: withFields({}),
  perSide: yesOrNo,
  counts: oneOf('reps', 'seconds'),
  hands: oneOf1or2,
  bodyShare: orNull(finite),
  track: text,
  style: oneOf('straight', 'cluster'),
  basis: oneOf('total', 'hand', 'stack', 'added', 'load'),
  load: orNull(whole),
  system: orNull(whole),
  bar: orNull(text),
  step: orNull(whole),
  range: pairOf(finite),
  reserve: pairOf(finite),
  reservePlanned: maybe(pairOf(finite)),
  sets: listOf(withFields({ aim: finite, range: pairOf(finite) })),
  setsPlanned: whole,
  minis: orNull(withFields({ mostSets: whole, aim: finite })),
  rest,
  warmUp: listOf(withFields({ load: whole, reps: whole })),
  warmsUp: maybe(yesOrNo),
  move: oneOf('start', 'up', 'hold', 'ease', 'return'),
  why: listOf(reason),
  last: orNull(withFields({ date: text, load: whole, counts: listOf(finite) })),
  askPain: yesOrNo,
  note: orNull(text),
  form: orNull(text),
  caution: orNull(text),
});

const prescriptionShape = withFields({
  program: text,
  day: text,
  date: text,
  unit: oneOf('kg', 'lb'),
  aim: oneOf('cut', 'maintain', 'build'),
  lighter: yesOrNo,
  restBetween: rest,
  exercises: listOf(exerciseShape),
  short: maybe(withFields({ minutes: finite, cut: listOf(reason) })),
  warnings: listOf(reason),
});

function oneOf1or2(value: unknown): boolean {
  return value === 1 || value === 2;
}

const place = { exercise: whole, role: oneOf('warm-up', 'straight', 'lead', 'mini'), index: whole };
const exercise = { exercise: whole };
const quantity = withFields({ amount: finite, unit: oneOf('kg', 'lb') });
const day: Shape = (value) => typeof value === 'string' && /^\d{4}-\d\d-\d\d$/.test(value);
const gear = withFields({
  unit: oneOf('kg', 'lb'),
  bars: listOf(withFields({ name: text, mass: quantity, collars: quantity })),
  plates: listOf(withFields({ stamped: quantity, count: whole })),
  dumbbells: listOf(withFields({ stamped: quantity, count: whole })),
  handles: listOf(withFields({ mass: quantity, count: whole })),
  stacks: listOf(withFields({ name: text, lowest: quantity, step: quantity, highest: quantity })),
  bands: listOf(withFields({ name: text, assistance: quantity })),
  freeStep: quantity,
});

/** What each kind of event carries beside its stamp. */
const SHAPES: Readonly<Record<JournalEvent['type'], Shape>> = {
  'session-opened': withFields({ session: text, device: text, prescription: prescriptionShape }),
  'set-started': withFields(place),
  'start-withdrawn': withFields({}),
  'set-done': withFields({
    ...place,
    load: whole,
    count: finite,
    reserve: orNull(finite),
    failed: maybe(yesOrNo),
    entered: oneOf('as-planned', 'typed'),
  }),
  'set-amended': withFields({
    of: text,
    load: maybe(whole),
    count: maybe(finite),
    reserve: maybe(orNull(finite)),
    failed: maybe(yesOrNo),
  }),
  'sets-confirmed': withFields({ of: listOf(text) }),
  'set-skipped': withFields(place),
  'warm-ups-skipped': withFields(exercise),
  'exercise-skipped': withFields(exercise),
  'exercise-chosen': withFields(exercise),
  'set-added': withFields(exercise),
  'cluster-ended': withFields({ ...exercise, reason: oneOf('fewer-reps', 'most-sets', 'lifter') }),
  'cluster-resumed': withFields(exercise),
  'exercise-replaced': withFields({ ...exercise, by: exerciseShape, because: text }),
  'rest-changed': withFields({ by: finite }),
  paused: withFields({}),
  resumed: withFields({}),
  'pain-marked': withFields(exercise),
  'note-written': withFields({ exercise: orNull(whole), text }),
  undone: withFields({ of: text }),
  'session-closed': withFields({ how: oneOf('finished', 'as-it-is') }),
  'session-discarded': withFields({}),
  weighed: withFields({ mass: whole, on: day }),
  decided: withFields({
    rule: text,
    answer: oneOf('yes', 'no', 'lighter', 'other-lift', 'leave-out', 'go-on'),
    subject: orNull(text),
  }),
  'gear-set': withFields({ gear }),
  deleted: withFields({ of: text }),
  'session-taken-over': withFields({
    session: text,
    after: text,
    device: (value) => value === undefined || text(value),
  }),
};

const stamp = withFields({
  id: (value) => typeof value === 'string' && /^[^:]+:\d+$/.test(value),
  at: withFields({ wall: finite, up: orNull(finite), boot: orNull(text) }),
  zone: finite,
});

/** The value as an event; null where it is of a kind, or of a shape, that is not known. */
export function readEvent(value: unknown): JournalEvent | null {
  if (!stamp(value)) return null;
  const event = value as JournalEvent;
  // Own keys only: an event may be named like a thing that every object has.
  const shape = Object.hasOwn(SHAPES, event.type) ? SHAPES[event.type] : undefined;
  return shape?.(event) ? event : null;
}
