import {
  countOf,
  type Entry,
  type GearPart,
  HEAVIEST,
  MOST_OWNED,
  massIn,
} from '../../training/change-gear.ts';
import { type Gear, hasStation, STATIONS } from '../../training/gear.ts';
import { type Quantity, quantityText, type Unit } from '../../training/mass.ts';

/** Parts of the gear that hold any number of things. */
export type ListPart = Extract<
  GearPart,
  'bars' | 'plates' | 'dumbbells' | 'handles' | 'stacks' | 'bands'
>;

/** One value of a thing, and what the keys make of it. */
export interface FormField {
  readonly name: string;
  readonly shown: string;
  /** The gear with this value; null where it is not typed. @throws Refusal for what cannot be read */
  readonly typed: ((text: string) => Gear) | null;
  /** One step more or less. */
  readonly stepped: (by: 1 | -1) => Gear;
}

/** One thing that is owned. */
export interface FormRow {
  readonly label: string;
  readonly part: ListPart | null;
  readonly fields: readonly FormField[];
  /** The gear without it; null for what is always there. */
  readonly without: Gear | null;
}

/** Every thing in the gear, in the order of the form. */
export function rowsOf(gear: Gear): FormRow[] {
  return [
    ...listRows(gear, 'bars', (bar, put) => ({
      label: bar.name,
      fields: [
        mass('mass', bar.mass, (next) => put({ ...bar, mass: next })),
        mass('collars', bar.collars, (next) => put({ ...bar, collars: next }), '0'),
      ],
    })),
    ...listRows(gear, 'plates', (plate, put) => ({
      label: `plate ${quantityText(plate.stamped)}`,
      fields: [
        // Two go on a bar at once.
        count('owned', plate.count, 2, (next) => put({ ...plate, count: next })),
        {
          ...mass('weighs', plate.measured ?? plate.stamped, (measured) =>
            put({ ...plate, measured }),
          ),
          shown: plate.measured ? quantityText(plate.measured) : 'as stamped',
        },
      ],
    })),
    ...listRows(gear, 'dumbbells', (dumbbell, put) => ({
      label: `dumbbell ${quantityText(dumbbell.stamped)}`,
      fields: [count('owned', dumbbell.count, 1, (next) => put({ ...dumbbell, count: next }))],
    })),
    ...listRows(gear, 'handles', (handle, put) => ({
      label: `handle ${quantityText(handle.mass)}`,
      fields: [
        count('owned', handle.count, 1, (next) => put({ ...handle, count: next })),
        mass('mass', handle.mass, (next) => put({ ...handle, mass: next })),
      ],
    })),
    ...listRows(gear, 'stacks', (stack, put) => ({
      label: stack.name,
      fields: [
        mass('from', stack.lowest, (lowest) => put({ ...stack, lowest }), '0'),
        mass('by', stack.step, (step) => put({ ...stack, step })),
        mass('to', stack.highest, (highest) => put({ ...stack, highest })),
      ],
    })),
    ...listRows(gear, 'bands', (band, put) => ({
      label: band.name,
      fields: [mass('takes off', band.assistance, (assistance) => put({ ...band, assistance }))],
    })),
    alone('belt', [choice('', gear.belt, 'no', 'yes', (belt) => ({ ...gear, belt }))]),
    alone('safeties', [
      choice('', gear.safeties, 'no', 'yes', (safeties) => ({ ...gear, safeties })),
    ]),
    ...STATIONS.map((station) =>
      alone(station, [
        choice('', hasStation(gear, station), 'no', 'yes', (has) => ({
          ...gear,
          stations: STATIONS.filter((one) => (one === station ? has : hasStation(gear, one))),
        })),
      ]),
    ),
    alone('other loads', [mass('by', gear.freeStep, (freeStep) => ({ ...gear, freeStep }))]),
    alone('unit', [
      choice('', gear.unit === 'lb', 'kg', 'lb', (isPounds) => ({
        ...gear,
        unit: isPounds ? 'lb' : 'kg',
      })),
    ]),
  ];
}

type Thing<Part extends ListPart> = Gear[Part][number];

/** A row for each thing of a part, or one that says there is none and where one can be added. */
function listRows<Part extends ListPart>(
  gear: Gear,
  part: Part,
  rowOf: (
    thing: Thing<Part>,
    put: (changed: Thing<Part>) => Gear,
  ) => Pick<FormRow, 'label' | 'fields'>,
): FormRow[] {
  const things: readonly Thing<Part>[] = gear[part];
  if (things.length === 0) return [{ label: `no ${part}`, part, fields: [], without: null }];
  return things.map((thing, at) => ({
    ...rowOf(thing, (changed) => ({ ...gear, [part]: things.with(at, changed) })),
    part,
    without: { ...gear, [part]: things.toSpliced(at, 1) },
  }));
}

const alone = (label: string, fields: readonly FormField[]): FormRow => ({
  label,
  part: null,
  fields,
  without: null,
});

const written = (name: string, text: string, unit: Unit): Entry => ({
  option: name,
  written: text,
  key: '',
  value: text,
  unit,
});

function count(name: string, now: number, step: number, put: (next: number) => Gear): FormField {
  return {
    name,
    shown: `${now}`,
    typed: (text) => put(countOf(written(name, text, 'kg'))),
    stepped: (by) => put(Math.min(MOST_OWNED, Math.max(0, now + by * step))),
  };
}

const STEPS: Readonly<Record<Unit, number>> = { kg: 0.5, lb: 1 };

function mass(
  name: string,
  now: Quantity,
  put: (next: Quantity) => Gear,
  least: 'above-0' | '0' = 'above-0',
): FormField {
  const step = STEPS[now.unit];
  return {
    name,
    shown: quantityText(now),
    typed: (text) => put(massIn(written(name, text, now.unit), text, least)),
    stepped: (by) => {
      const amount = Number((now.amount + by * step).toFixed(3));
      const lightest = least === '0' ? 0 : step;
      return put({ ...now, amount: Math.min(HEAVIEST, Math.max(lightest, amount)) });
    },
  };
}

function choice(
  name: string,
  isSecond: boolean,
  first: string,
  second: string,
  put: (isSecond: boolean) => Gear,
): FormField {
  return {
    name,
    shown: isSecond ? second : first,
    typed: null,
    stepped: () => put(!isSecond),
  };
}
