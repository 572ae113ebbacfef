import { Temporal } from 'temporal-polyfill';
import { type History, openSessionOf } from '../journal/history.ts';
import { dateOf } from '../session/results.ts';
import { nearestKey } from '../text/nearest.ts';
import { Refusal } from '../text/problem.ts';
import type { Gear } from '../training/gear.ts';
import { KITS } from '../training/kits.ts';
import type { Unit } from '../training/mass.ts';

/** Gear that is somewhere else than at home, under a name. */
export interface NamedKit {
  readonly name: string;
  readonly gear: Gear;
}

/** Decides what is trained with on one day; the subject is the kit's name. */
export const KIT_TODAY = 'kit-today';

/** The lifter's own kits, then the ready ones of other names. */
export function kitsOf({ kits }: Pick<History, 'kits'>, unit: Unit): readonly NamedKit[] {
  const ready = KITS.filter(({ name }) => !kits.some((own) => own.name === name));
  return [...kits, ...ready.map(({ name, gear }) => ({ name, gear: gear(unit) }))];
}

/**
 * The kit that is trained with today, as the lifter said last, on this day or since the session
 * that is open was begun; null: what they own.
 */
export function kitNow(
  { decisions, open }: Pick<History, 'decisions' | 'open'>,
  today: Temporal.PlainDate,
): string | null {
  const session = openSessionOf({ open });
  const from = session ? dateOf(session.state) : today;
  const said = decisions.findLast(
    ({ rule, date }) => rule === KIT_TODAY && Temporal.PlainDate.compare(date, from) >= 0,
  );
  return said?.answer === 'yes' ? said.subject : null;
}

/** @throws Refusal where there is no kit of that name. */
export function kitNamed(kits: readonly NamedKit[], name: string): NamedKit {
  const found = kits.find((kit) => kit.name.toLowerCase() === name.trim().toLowerCase());
  if (found) return found;
  const names = kits.map((kit) => kit.name);
  const near = nearestKey(name, names);
  throw new Refusal({
    what: `There is no kit "${name}".`,
    fix: near ? `Did you mean "${near}"?` : `There are: ${names.join('; ')}.`,
  });
}
