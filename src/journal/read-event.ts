import { GEAR_LIMITS } from '../training/gear.ts';
import { LOADINGS, PATTERNS } from '../training/lift.ts';
import type { JournalEvent } from './records.ts';

/** Tells whether a value has a shape. */
type Shape = (value: unknown) => boolean;

const LONGEST_TEXT = 20_000;

const text: Shape = (value) => typeof value === 'string' && value.length <= LONGEST_TEXT;
const yesOrNo: Shape = (value) => typeof value === 'boolean';

const between =
  (least: number, most: number): Shape =>
  (value) =>
    typeof value === 'number' && value >= least && value <= most;

const wholeBetween =
  (least: number, most: number): Shape =>
  (value) =>
    Number.isInteger(value) && (value as number) >= least && (value as number) <= most;

// Wider than anything that was ever done, and narrow enough that no fold takes minutes, leaves the
// calendar or shows a number that fits no screen. Ours.
/** Micrograms: a tonne either way, for assistance counts below 0. */
const load = wholeBetween(-1e12, 1e12);
/** Micrograms of body weight, up to a tonne. */
const bodyMass = wholeBetween(1, 1e12);
const waist = wholeBetween(1, 1e7);
/** Reps, or the seconds of a hold that ran through the night. */
const count = between(0, 86_400);
const reserve = between(0, 1000);
/** Seconds of a rest. */
const seconds = between(-86_400, 86_400);
/** How many there are of a thing, or which of them. */
const number = wholeBetween(0, 1000);
/** Instants from 1900 to 2200, in milliseconds. */
const instant = between(Date.UTC(1900, 0), Date.UTC(2200, 0));
/** Minutes ahead of UTC. */
const offset = wholeBetween(-24 * 60 + 1, 24 * 60 - 1);

/** A day of the calendar: `2026-11-25`. */
const day: Shape = (value) => {
  if (typeof value !== 'string' || !/^(19|20|21)\d\d-\d\d-\d\d$/.test(value)) return false;
  const at = new Date(`${value}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(value);
};

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

const LONGEST_LIST = 1000;

const listOf =
  (shape: Shape): Shape =>
  (value) =>
    Array.isArray(value) && value.length <= LONGEST_LIST && value.every(shape);

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

/** An object with this under each of its names, whatever they are. */
function eachOf(shape: Shape): Shape {
  return (value) =>
    typeof value === 'object' && value !== null && Object.values(value).every(shape);
}

const rest = withFields({ from: seconds, to: seconds });

const fact: Shape = (value) =>
  value === null ||
  yesOrNo(value) ||
  Number.isFinite(value) ||
  (text(value) && isNoBadDay(value as string)) ||
  listOf((one) => Number.isFinite(one))(value);

/** A text that looks like a day is told as one. */
const isNoBadDay = (value: string): boolean => !/^\d{4}-\d\d-\d\d$/.test(value) || day(value);

const reason = withFields({ rule: text, facts: eachOf(fact) });

/** What every fold relies on in a prescribed exercise. */
const exerciseShape = withFields({
  lift: text,
  name: text,
  loading: oneOf(...LOADINGS),
  kind: oneOf('compound', 'isolation'),
  pattern: oneOf(...PATTERNS),
  // Shares of a muscle: 1 trained directly, 0.5 along.
  trains: eachOf(between(0, 1)),
  perSide: yesOrNo,
  counts: oneOf('reps', 'seconds'),
  hands: (value) => value === 1 || value === 2,
  bodyShare: orNull(between(-10, 10)),
  track: text,
  pair: maybe(text),
  inProgram: maybe(withFields({ day: text, position: number, lift: text })),
  style: oneOf('straight', 'cluster'),
  basis: oneOf('total', 'hand', 'stack', 'added', 'load'),
  load: orNull(load),
  system: orNull(load),
  bar: orNull(text),
  step: orNull(load),
  range: pairOf(count),
  reserve: pairOf(reserve),
  reservePlanned: maybe(pairOf(reserve)),
  sets: listOf(withFields({ aim: count, range: pairOf(count) })),
  setsPlanned: number,
  minis: orNull(withFields({ mostSets: wholeBetween(1, 100), aim: count })),
  rest,
  warmUp: listOf(withFields({ load, reps: count })),
  warmsUp: maybe(yesOrNo),
  move: oneOf('start', 'up', 'hold', 'ease', 'return'),
  why: listOf(reason),
  last: orNull(withFields({ date: day, load, counts: listOf(count) })),
  askPain: yesOrNo,
  hurts: maybe(listOf(text)),
  note: orNull(text),
  form: orNull(text),
  caution: orNull(text),
  testSet: maybe(yesOrNo),
});

const prescriptionShape = withFields({
  program: text,
  day: text,
  date: day,
  unit: oneOf('kg', 'lb'),
  aim: oneOf('cut', 'maintain', 'build'),
  lighter: yesOrNo,
  daysPerWeek: maybe(between(1, 14)),
  restBetween: rest,
  exercises: listOf(exerciseShape),
  short: maybe(withFields({ minutes: between(0, 1440), cut: listOf(reason) })),
  warnings: listOf(reason),
});

const place = {
  exercise: number,
  role: oneOf('warm-up', 'straight', 'lead', 'mini'),
  index: number,
};
const exercise = { exercise: number };

/** As gear is typed: see {@link GEAR_LIMITS}. */
const quantity = withFields({
  amount: between(0, GEAR_LIMITS.amount),
  unit: oneOf('kg', 'lb'),
});
const gearName: Shape = (value) =>
  typeof value === 'string' && value.length >= 1 && value.length <= GEAR_LIMITS.name;
const pieces = wholeBetween(0, GEAR_LIMITS.pieces);
const kindsOf = (fields: Readonly<Record<string, Shape>>): Shape => {
  const list = listOf(withFields(fields));
  return (value) => list(value) && (value as readonly unknown[]).length <= GEAR_LIMITS.kinds;
};
const gear = withFields({
  unit: oneOf('kg', 'lb'),
  bars: kindsOf({ name: gearName, mass: quantity, collars: quantity }),
  plates: kindsOf({ stamped: quantity, count: pieces }),
  dumbbells: kindsOf({ stamped: quantity, count: pieces }),
  handles: kindsOf({ mass: quantity, count: pieces }),
  stacks: kindsOf({ name: gearName, lowest: quantity, step: quantity, highest: quantity }),
  bands: kindsOf({ name: gearName, assistance: quantity }),
  freeStep: quantity,
});

/** An import of many years names many. */
function isIds(value: unknown): boolean {
  return Array.isArray(value) && value.length <= 100_000 && value.every(text);
}

/** What each kind of event carries beside its stamp. */
const SHAPES: Readonly<Record<JournalEvent['type'], Shape>> = {
  'session-opened': withFields({ session: text, device: text, prescription: prescriptionShape }),
  'set-started': withFields(place),
  'start-withdrawn': withFields({}),
  'set-done': withFields({
    ...place,
    load,
    count,
    reserve: orNull(reserve),
    failed: maybe(yesOrNo),
    entered: oneOf('as-planned', 'typed'),
  }),
  'set-amended': withFields({
    of: text,
    load: maybe(load),
    count: maybe(count),
    reserve: maybe(orNull(reserve)),
    failed: maybe(yesOrNo),
  }),
  'sets-confirmed': withFields({ of: listOf(text) }),
  'set-skipped': withFields(place),
  'warm-ups-skipped': withFields(exercise),
  'exercise-skipped': withFields(exercise),
  'exercise-chosen': withFields(exercise),
  paired: withFields({ exercises: listOf(number) }),
  'pair-parted': withFields(exercise),
  'set-added': withFields(exercise),
  'day-shortened': withFields({
    minutes: between(0, 1440),
    exercises: listOf(withFields({ ...exercise, sets: wholeBetween(0, 100), rest })),
    pairs: maybe(listOf(listOf(number))),
    restBetween: rest,
    cut: listOf(reason),
  }),
  'cluster-ended': withFields({ ...exercise, reason: oneOf('fewer-reps', 'most-sets', 'lifter') }),
  'cluster-resumed': withFields(exercise),
  'exercise-replaced': withFields({ ...exercise, by: exerciseShape, because: text }),
  'rest-changed': withFields({ by: seconds }),
  paused: withFields({}),
  resumed: withFields({}),
  'pain-marked': withFields(exercise),
  'note-written': withFields({ exercise: orNull(number), text }),
  undone: withFields({ of: text }),
  'session-closed': withFields({ how: oneOf('finished', 'as-it-is') }),
  'session-discarded': withFields({}),
  weighed: withFields({ mass: bodyMass, on: day, sure: maybe(yesOrNo) }),
  'waist-measured': withFields({ length: waist, on: day }),
  decided: withFields({
    rule: text,
    answer: oneOf('yes', 'no', 'lighter', 'other-lift', 'leave-out', 'go-on'),
    subject: orNull(text),
  }),
  'gear-set': withFields({ gear }),
  'kit-kept': withFields({ name: gearName, gear: orNull(gear) }),
  deleted: withFields({ of: (value) => text(value) || isIds(value) }),
  imported: withFields({ of: isIds }),
  'session-taken-over': withFields({
    session: text,
    after: text,
    device: maybe(text),
  }),
};

/** Every kind of event that this version writes. */
export const EVENT_TYPES = Object.keys(SHAPES) as readonly JournalEvent['type'][];

const stamp = withFields({
  id: (value) => typeof value === 'string' && /^[^:]+:\d+$/.test(value),
  at: withFields({
    wall: instant,
    up: orNull(between(0, Number.MAX_SAFE_INTEGER)),
    boot: orNull(text),
  }),
  zone: offset,
});

/** The value as an event; null where it is of a kind, or of a shape, that is not known. */
export function readEvent(value: unknown): JournalEvent | null {
  if (!stamp(value)) return null;
  const event = value as JournalEvent;
  // Own keys only: an event may be named like a thing that every object has.
  const shape = Object.hasOwn(SHAPES, event.type) ? SHAPES[event.type] : undefined;
  return shape?.(event) ? event : null;
}
