import type { PrescribedExercise } from '../progression/prescription.ts';
import { rackFor } from '../progression/rack.ts';
import type { LoadedSet } from '../session/state.ts';
import { gearSchema } from '../settings/gear-schema.ts';
import { orProblem, type Problem, Refusal } from '../text/problem.ts';
import { gearProblems } from '../training/check-gear.ts';
import { type Equipment, NOTHING_LOADED, type SetUp, setUp } from '../training/equipment.ts';
import type { Band, Gear, PlateKind } from '../training/gear.ts';
import { nextAbove, nextBelow } from '../training/loads.ts';
import { type Mass, readsAs, type Unit } from '../training/mass.ts';
import { platePicture } from '../training/plate-picture.ts';
import type { Lifter } from './open-lifter.ts';
import type { KeepSettings } from './ports.ts';

type Named = Pick<PrescribedExercise, 'loading' | 'bar' | 'step' | 'hands' | 'pattern'>;

/**
 * How the lifter's own gear makes a load, and what to do to get there from what is loaded now; null
 * where plates do not matter or the load cannot be made. `unit`: of the loads beside it.
 */
export function madeUp(
  exercise: Named,
  load: Mass,
  gear: Gear,
  unit: Unit,
  now: Equipment = NOTHING_LOADED,
): MadeUp | null {
  const made = setUp(exercise, load, gear, now);
  if (!made || made.on === 'nothing') return null;
  const { bar } = made;
  const bands = bandsChanging(made);
  const changes = [changing(made, exercise, gear, unit), bands].filter((words) => words !== null);
  return {
    words: standing(made, exercise, gear, unit),
    change: changes.length > 0 ? changes.join(', ') : null,
    digits: bands === null ? inDigits(made, gear) : null,
    picture: bar ? (width) => platePicture(bar, width) : () => [],
  };
}

/** The load wished for, where it can be made, and those next to it that can; null where there is none. */
export interface NearLoads {
  readonly below: Mass | null;
  readonly exact: Mass | null;
  readonly above: Mass | null;
}

/** Loads near `wish` that the gear makes, in the exercise's own basis. */
export function nearLoads(
  exercise: Parameters<typeof rackFor>[0],
  wish: Mass,
  gear: Gear,
  bodyMass: Mass | null,
  unit: Unit,
): NearLoads {
  const { loads } = rackFor(exercise, gear, bodyMass);
  // A bar in kg with plates in lb makes loads of many decimals: the one that is shown so is meant.
  const meant =
    [loads.atOrBelow(wish), nextAbove(loads, wish)].find(
      (load) => load !== null && readsAs(load, wish, unit),
    ) ?? null;
  return {
    below: nextBelow(loads, meant ?? wish),
    exact: meant,
    above: nextAbove(loads, meant ?? wish),
  };
}

/** What is loaded once the sets done so far were done, each as its load asks. */
export function equipmentAfter(loaded: readonly LoadedSet[], gear: Gear): Equipment {
  return loaded.reduce<Equipment>(
    (now, { exercise, load }) => setUp(exercise, load, gear, now)?.after ?? now,
    NOTHING_LOADED,
  );
}

function standing(made: SetUp, exercise: Named, gear: Gear, unit: Unit): string {
  const plates = plateWords(made.plates, gear, unit);
  switch (made.on) {
    case 'bands':
      return bandNames(made.bands);
    case 'belt':
      return made.plates.length === 0 ? 'nothing added' : `${plates} ${onBody(exercise)}`;
    default: {
      const empty = made.on === 'handles' ? 'empty handle' : 'empty bar';
      const loaded = made.plates.length > 0 ? `${plates} a side` : empty;
      // They are part of the load that is told.
      return (made.bar?.bar.collars.amount ?? 0) > 0 ? `${loaded}, collars on` : loaded;
    }
  }
}

const bandNames = (bands: readonly Band[]): string => bands.map(({ name }) => name).join(' and ');

/** `use heavy band`, `add light band`, `without light band`; null where they are those of before. */
function bandsChanging({ bands, bandsBefore }: SetUp): string | null {
  const without = (some: readonly Band[], others: readonly Band[]) =>
    some.filter(({ name }) => others.every((other) => other.name !== name));
  const [on, off] = [without(bands, bandsBefore), without(bandsBefore, bands)];
  if (on.length + off.length === 0) return null;
  if (off.length === 0 && bandsBefore.length > 0) return `add ${bandNames(on)}`;
  return on.length === 0 ? `without ${bandNames(off)}` : `use ${bandNames(bands)}`;
}

/** `strip the bar, take off 5, put on 10 + 2.5 a side`; null where nothing changes. */
function changing(
  { on, change, strip }: SetUp,
  exercise: Named,
  gear: Gear,
  unit: Unit,
): string | null {
  const first = strip.map((name) => `strip the ${name}`);
  const where = on === 'belt' || on === 'bands' ? onBody(exercise) : 'a side';
  const parts = [
    ...(change.off.length > 0 ? [`take off ${plateWords(change.off, gear, unit)}`] : []),
    ...(change.on.length > 0 ? [`put on ${plateWords(change.on, gear, unit)}`] : []),
  ];
  const own = parts.length > 0 ? [`${parts.join(', ')} ${where}`] : [];
  return first.length + own.length === 0 ? null : [...first, ...own].join(', ');
}

/** `-5 +10 +2.5`: what comes off and goes on, for large digits; null where those would not say all. */
function inDigits({ change, strip }: SetUp, gear: Gear): string | null {
  const handled = [...change.off, ...change.on];
  if (handled.length === 0 || strip.length > 0 || isMixed(gear)) return null;
  const signed = (sign: string) => (plate: PlateKind) => `${sign}${plate.stamped.amount}`;
  return [...change.off.map(signed('-')), ...change.on.map(signed('+'))].join(' ');
}

/** A sit-up's plate is held; a pull-up's hangs. */
const onBody = ({ pattern }: Named): string => (pattern === 'trunk' ? 'held' : 'on the belt');

const isMixed = ({ plates }: Gear): boolean =>
  new Set(plates.map(({ stamped }) => stamped.unit)).size > 1;

/**
 * `20 + 10`, with the unit named for each where plates of both are owned, as a 2.5 may be either, and
 * behind the last where it is another than that of the load: `45 + 10 lb`.
 */
export function plateWords(plates: readonly PlateKind[], gear: Gear, unit: Unit): string {
  const mixed = isMixed(gear);
  const words = plates.map(({ stamped }) =>
    mixed ? `${stamped.amount} ${stamped.unit}` : `${stamped.amount}`,
  );
  const [first] = plates;
  const other = !mixed && first && first.stamped.unit !== unit ? ` ${first.stamped.unit}` : '';
  return `${words.join(' + ')}${other}`;
}

/**
 * Records what the lifter owns. It is in force on every device that reads this journal; the copy in
 * the settings serves a data folder without one, so failing to renew it is only a problem to tell.
 * @throws Refusal when the gear cannot be right or the journal cannot be written; then nothing changed.
 */
export function keepGear(
  lifter: Pick<Lifter, 'journal'>,
  gear: Gear,
  keepSettings: KeepSettings,
): Problem | null {
  const problems = gearProblems(gear);
  if (problems.length > 0) throw new Refusal(...problems);
  lifter.journal().record({ type: 'gear-set', gear: gearSchema().parse(gear) });
  return orProblem(() => {
    keepSettings({ gear });
    return null;
  });
}

/** How an implement is made up for a load. */
export interface MadeUp {
  /** `20 + 10 a side`, `empty bar`, `body weight + 10 on the belt`. */
  readonly words: string;
  /** `take off 5, put on 10 + 2.5 a side`, from what is loaded now; null where it is as it should be. */
  readonly change: string | null;
  /** The same for large digits, `-5 +10 +2.5`; null where nothing changes or digits would not say all. */
  readonly digits: string | null;
  /** Lines of a side view no wider than `width` columns; none where there is nothing to draw. */
  readonly picture: (width: number) => readonly string[];
}
