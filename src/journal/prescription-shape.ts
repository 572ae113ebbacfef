import { LOADINGS, PATTERNS } from '../training/lift.ts';
import {
  anything,
  finite,
  listOf,
  maybe,
  oneOf,
  orNull,
  pairOf,
  text,
  whole,
  withFields,
  yesOrNo,
} from './shapes.ts';

const rest = withFields({ from: finite, to: finite });
const reason = withFields({ rule: text, facts: anything });

/** What every fold relies on in a prescribed exercise. */
export const exerciseShape = withFields({
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

export const prescriptionShape = withFields({
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
