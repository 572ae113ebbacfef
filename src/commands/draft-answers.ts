import { CATALOGUE } from '../program/catalogue.ts';
import { DRAFT_LIMITS } from '../program/draft/draft-limits.ts';
import { type Best, MOST_REPS_OF_BEST, type Wishes } from '../program/draft/wishes.ts';
import { namedLift } from '../program/find-lifts.ts';
import type { Aim } from '../program/program.ts';
import { nearestKey } from '../text/nearest.ts';
import { WrongUse } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import { KITS, type Kit } from '../training/kits.ts';
import { JOINTS, type Joint, type Lift, MUSCLES, type Muscle } from '../training/lift.ts';
import { massOf, readQuantity, type Unit } from '../training/mass.ts';

/** What answers are read with: the lifts that may be named, and the unit of bare numbers. */
export interface AnswersInHand {
  readonly lifts: ReadonlyMap<string, Lift>;
  readonly unit: Unit;
}

/** Answers as they are typed, by option or question. All throw a Refusal that says what to write. */
export const readAnswer = {
  days: (text: string): Wishes['days'] => {
    const days = Number(text);
    if (days === 2 || days === 3 || days === 4) return days;
    throw wrong('days a week', text, 'Write 2, 3 or 4.');
  },
  minutes: (text: string): number => {
    const [low, high] = DRAFT_LIMITS.minutes;
    const minutes = /^\d+$/.test(text) ? Number(text) : Number.NaN;
    if (minutes >= low && minutes <= high) return minutes;
    throw wrong('minutes a session', text, `Write a whole number from ${low} to ${high}.`);
  },
  aim: (text: string): Aim => {
    if (text === 'cut' || text === 'maintain' || text === 'build') return text;
    throw wrong('aim', text, 'Write cut, maintain or build.');
  },
  kit: (text: string): Kit => {
    const name = text.trim().toLowerCase();
    const begun = KITS.filter((kit) => kit.name.startsWith(name));
    const named = KITS.find((kit) => kit.name === name) ?? (begun.length === 1 ? begun[0] : null);
    const kit = KITS[Number(text) - 1] ?? named;
    if (kit) return kit;
    const all = KITS.map((each, at) => `${at + 1} ${each.name}`).join('; ');
    throw wrong('the kit', text, `Write its number: ${all}.`);
  },
  unit: (text: string): Unit => {
    if (text === 'kg' || text === 'lb') return text;
    throw wrong('unit', text, 'Write kg or lb.');
  },
  name: (text: string): string => {
    const name = safeText(text).replace(/\s+/g, ' ').trim();
    if (name !== '' && name.length <= 60) return name;
    throw wrong('name', text, 'Write 1 to 60 letters.');
  },
  lifts: (text: string, { lifts }: AnswersInHand): readonly string[] =>
    parts(text).map((part) => liftNamed(part, lifts)),
  muscles: (text: string): readonly Muscle[] => [...new Set(parts(text).flatMap(musclesNamed))],
  joints: (text: string): readonly Joint[] =>
    parts(text).map((part) => {
      const found = JOINTS.find((joint) => joint === keyed(part) || `${joint}s` === keyed(part));
      if (found) return found;
      throw wrong('what hurts', part, `Write any of ${JOINTS.join(', ')}.`);
    }),
  bests: (text: string, reading: AnswersInHand): readonly Best[] =>
    parts(text).map((part) => bestOf(part, reading)),
} as const;

const parts = (text: string): readonly string[] =>
  text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');

const keyed = (text: string): string => text.toLowerCase().replace(/[\s_]+/g, '-');

function liftNamed(text: string, lifts: ReadonlyMap<string, Lift>): string {
  const key = keyed(text);
  if (lifts.has(key)) return key;
  const byName = namedLift(lifts, text);
  if (byName) return byName.key;
  const near = nearestKey(key, lifts.keys());
  throw new WrongUse({
    what: `There is no lift "${safeText(text)}".`,
    fix: near ? `Did you mean "${near}"?` : likely(key, lifts),
  });
}

function likely(key: string, lifts: ReadonlyMap<string, Lift>): string {
  const words = key.split('-').filter((word) => word.length > 2);
  const found = [...lifts.keys()].filter((one) => words.some((word) => one.includes(word)));
  return found.length > 0
    ? `Such lifts: ${found.slice(0, 6).join(', ')}.`
    : 'Write its key as programs do, such as back-squat.';
}

/** What gyms call several muscles together. Common practice. */
const MUSCLE_GROUPS: Readonly<Record<string, readonly Muscle[]>> = {
  legs: ['quads', 'hamstrings', 'glutes'],
  arms: ['biceps', 'triceps'],
  back: ['lats', 'upper-back'],
  shoulders: ['front-delts', 'side-delts', 'rear-delts'],
};

function musclesNamed(text: string): readonly Muscle[] {
  const key = keyed(text);
  const found = MUSCLES.find((muscle) => muscle === key);
  if (found) return [found];
  const group = Object.hasOwn(MUSCLE_GROUPS, key) ? MUSCLE_GROUPS[key] : undefined;
  if (group) return group;
  const all = [...MUSCLES, ...Object.keys(MUSCLE_GROUPS)];
  const near = nearestKey(key, all);
  throw new WrongUse({
    what: `There is no muscle "${safeText(text)}".`,
    fix: near ? `Did you mean "${near}"?` : `Write one of: ${all.join(', ')}.`,
  });
}

const BEST = /^(.+?)\s*=\s*(.+?)\s+for\s+(\d{1,2})(?:\s+leaving\s+(\d{1,2}))?$/i;

/** `back-squat=100kg for 5 leaving 2`; without `leaving` none were left. */
function bestOf(text: string, { lifts, unit }: AnswersInHand): Best {
  const found = BEST.exec(text);
  const quantity = found ? readQuantity(found[2] ?? '', unit) : null;
  const reps = Number(found?.[3]);
  if (
    !found ||
    !quantity ||
    Math.abs(quantity.amount) > 1000 ||
    reps < 1 ||
    reps > MOST_REPS_OF_BEST
  ) {
    const fix = `Write it as "back-squat=100kg for 5 leaving 2", of 1 to ${MOST_REPS_OF_BEST} reps.`;
    throw wrong('best', text, fix);
  }
  return {
    lift: liftNamed(found[1] ?? '', lifts),
    load: massOf(quantity),
    reps: Number(found[3]),
    reserve: Number(found[4] ?? 0),
  };
}

const wrong = (what: string, text: string, fix: string) =>
  new WrongUse({ what: `"${safeText(text)}" is no answer for ${what}.`, fix });

/** Lifts that may be named where no program is given. */
export const KNOWN_LIFTS: ReadonlyMap<string, Lift> = CATALOGUE;
