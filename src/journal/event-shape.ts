import { exerciseShape, prescriptionShape } from './prescription-shape.ts';
import type { JournalEvent } from './records.ts';
import {
  finite,
  listOf,
  maybe,
  oneOf,
  orNull,
  type Shape,
  text,
  whole,
  withFields,
  yesOrNo,
} from './shapes.ts';

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
