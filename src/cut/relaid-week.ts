import type { Temporal } from 'temporal-polyfill';
import { plannedHardSets } from '../program/check/planned-work.ts';
import type { Day, Program } from '../program/program.ts';
import type { Decision, Past } from '../progression/past.ts';
import { restAdvice } from '../progression/rest-advice.ts';
import { andText } from '../text/words.ts';
import type { Muscle } from '../training/lift.ts';
import type { Reason } from '../training/rule.ts';
import { weeklyVolume } from '../training/volume.ts';
import { reviewReason } from './cut-rules.ts';
import { weekLack } from './week-lack.ts';
import { mondayOf } from './work-done.ts';

/** Decides on which weekdays of this week there is time; the subject holds their numbers, Monday 1. */
export const WEEK_DAYS = 'days-this-week';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

export const weekdayName = (weekday: number): string => WEEKDAYS[weekday - 1] ?? '';

/** The weekdays of this week that the lifter has, Monday 1; null: as the program says. */
export function weekdaysSaid(
  decisions: readonly Decision[],
  today: Temporal.PlainDate,
): readonly number[] | null {
  const monday = mondayOf(today);
  const said = decisions.findLast(
    ({ rule, date }) => rule === WEEK_DAYS && mondayOf(date).equals(monday),
  );
  if (said?.answer !== 'yes' || said.subject === null) return null;
  return said.subject.split(' ').map(Number).filter(weekdayName);
}

/**
 * Which day of the program goes first in a week with fewer days than it has: of those not done this
 * week the one that gives most of what the week still lacks, one that lets what was trained lately
 * rest before one that does not. Null where the week has days enough, or nothing was said. Ours.
 */
export function relaidWeek(
  program: Program,
  past: Past,
  today: Temporal.PlainDate,
): { readonly day: Day; readonly why: Reason } | null {
  const days = weekdaysSaid(past.decisions, today);
  if (!days) return null;
  const left = days.filter((day) => day >= today.dayOfWeek).length;
  const open = daysOpen(program, past, today);
  if (left === 0 || left >= open.length) return null;
  const lacks = weekLack(program, past, today);
  const [first, ...others] = open
    .map((day) => ({
      day,
      rests: restAdvice(past, day, today).rest !== null,
      gain: gainOf(day, lacks),
    }))
    .sort((a, b) => Number(a.rests) - Number(b.rests) || b.gain - a.gain);
  if (!first) return null;
  const waiting = others.slice(left - 1).map(({ day }) => day.name);
  return {
    day: first.day,
    why: reviewReason('week-relaid', {
      days: andText(days.map(weekdayName)),
      day: first.day.name,
      waiting: andText(waiting),
    }),
  };
}

/** Days of the program of which less than half the sets were done this week. */
function daysOpen(program: Program, past: Past, today: Temporal.PlainDate): readonly Day[] {
  const monday = mondayOf(today);
  const done = past.sessions.filter(
    ({ date, program: name, setsDone, setsPlanned }) =>
      name === program.name && mondayOf(date).equals(monday) && setsDone * 2 >= setsPlanned,
  );
  return program.days.filter(({ name }) => !done.some(({ day }) => day === name));
}

const gainOf = ({ exercises }: Day, lacks: ReadonlyMap<Muscle, number>): number => {
  const gives = weeklyVolume(
    exercises.map((each) => ({ trains: each.lift.trains, hardSets: plannedHardSets(each) })),
  );
  return [...gives].reduce(
    (sum, [muscle, sets]) => sum + Math.max(0, Math.min(sets, lacks.get(muscle) ?? 0)),
    0,
  );
};
