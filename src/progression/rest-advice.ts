import type { Day } from '../program/program.ts';
import { keyWords } from '../text/words.ts';
import { directMuscles, type Muscle } from '../training/lift.ts';
import type { Reason } from '../training/rule.ts';
import type { Circumstances, Past } from './past.ts';
import { because, type ProgressionRule } from './rules/progression-rules.ts';

type Today = Circumstances['today'];

export interface RestAdvice {
  readonly rest: Reason | null;
  readonly nextGood: Today;
}

/** Does anything speak for rest today, and when is the next day on which nothing does? */
export function restAdvice(past: Past, day: Day, today: Today): RestAdvice {
  const found = restOn(past, day, today);
  if (!found) return { rest: null, nextGood: today };
  const nextGood = nextGoodDay(past, day, today);
  const facts = {
    next: nextGood.toString(),
    ...(found.muscles.length > 0 ? { muscles: keyWords(found.muscles.join(', ')) } : {}),
  };
  return { rest: because(found.rule, facts), nextGood };
}

/** Seven days on at the latest nothing trained by today is near any more. */
function nextGoodDay(past: Past, day: Day, today: Today): Today {
  for (let days = 1; days < 7; days += 1) {
    const date = today.add({ days });
    if (!restOn(past, day, date)) return date;
  }
  return today.add({ days: 7 });
}

interface Rest {
  readonly rule: ProgressionRule;
  readonly muscles: readonly Muscle[];
}

function restOn(past: Past, day: Day, today: Today): Rest | null {
  const ago = lately(past.sessions, today)
    .filter(({ setsDone }) => setsDone > 0)
    .map(({ date }) => date.until(today, { largestUnit: 'days' }).days)
    .filter((days) => days >= 0 && days < 7);
  if (ago.includes(0)) return { rule: 'rest-trained-today', muscles: [] };
  if (ago.includes(1) && ago.includes(2)) return { rule: 'rest-third-day', muscles: [] };
  if (ago.length >= 4) return { rule: 'rest-fifth-session', muscles: [] };
  const muscles = musclesAgain(past, day, today);
  return muscles.length > 0 ? { rule: 'rest-same-muscles', muscles } : null;
}

/** Muscles that this day trains directly and that were trained directly the day before. */
function musclesAgain(past: Past, day: Day, today: Today): readonly Muscle[] {
  const yesterday = today.subtract({ days: 1 });
  const trained = new Set(
    lately(past.results, today)
      .filter(({ date, sets }) => sets.length > 0 && date.equals(yesterday))
      .flatMap(({ exercise }) => directMuscles(exercise.trains)),
  );
  const due = new Set(day.exercises.flatMap(({ lift }) => directMuscles(lift.trains)));
  return [...due].filter((muscle) => trained.has(muscle));
}

/** The latest of what is in order of time, from eight days ago on. */
function lately<T extends { readonly date: Today }>(all: readonly T[], today: Today): readonly T[] {
  const from = today.subtract({ days: 8 });
  const before = all.findLastIndex(({ date }) => date.until(from).sign > 0);
  return all.slice(before + 1);
}
