import { type DayLoad, emptyLoad, loadDay } from './day-load.ts';
import type { Pace } from './draft-limits.ts';
import type { Option, OptionRow } from './draft-option.ts';
import { hasLift, type Plan, withOption, withoutLift } from './plan.ts';
import type { Score } from './score-plan.ts';

export interface Found {
  readonly plan: Plan;
  readonly score: number;
}

/** What a search goes through: the lifts, how plans are compared, and how long rests are. */
export interface Search {
  readonly rows: readonly OptionRow[];
  readonly score: Score;
  readonly pace: Pace;
}

interface Standing extends Found {
  readonly loads: readonly DayLoad[];
}

/** Days with what they shall hold in place of what they do. */
type Step = readonly (readonly [at: number, day: readonly Option[]])[];

/**
 * The best plan that small steps lead to, each taken as soon as it helps. Nothing is left to
 * chance: the same start and lifts give the same plan.
 */
export function descend(start: Plan, search: Search): Found {
  let here: Standing = standing(start, search);
  for (let before: Standing | null = null; before !== here; ) {
    before = here;
    for (const family of FAMILIES) here = family(here, search);
  }
  return here;
}

/**
 * The plan with one lift taken out everywhere, then with one day emptied, each put right again by
 * small steps: as long as one of them comes out better, and until `most` plans were looked at.
 */
export function shake(start: Plan, search: Search, most: number): Found {
  const counted = { count: 0 };
  const score: Score = (plan, loads) => {
    counted.count += 1;
    return search.score(plan, loads);
  };
  const counting = { ...search, score };
  let best = descend(start, counting);
  for (let before: Found | null = null; before !== best; ) {
    before = best;
    for (const shaken of shakes(before.plan)) {
      if (counted.count > most) return best;
      const found = descend(shaken, counting);
      if (found.score < best.score - LEAST) best = found;
    }
  }
  return best;
}

const LEAST = 1e-9;

function standing(plan: Plan, { score, pace }: Search): Standing {
  const loads = plan.map((day) => loadDay(emptyLoad(), day, pace));
  return { plan, loads, score: score(plan, loads) };
}

function tried(here: Standing, step: Step, search: Search): Standing {
  const plan = [...here.plan];
  const loads = [...here.loads];
  for (let index = 0; index < step.length; index += 1) {
    const [at, day] = step[index]!;
    plan[at] = day;
    loads[at] = loadDay(SCRATCH[index]!, day, search.pace);
  }
  return search.score(plan, loads) < here.score - LEAST ? standing(plan, search) : here;
}

/** Of the at most two days of a step, while it is only tried. */
const SCRATCH = [emptyLoad(), emptyLoad()];

/** A lift more, a lift less, other sets, or another lift, on one day or on two at once. */
function changeLifts(from: Standing, search: Search): Standing {
  let here = from;
  for (const days of someDays(from.plan.length)) {
    for (const row of search.rows) {
      const order = row[0]?.order ?? 0;
      const count = days.filter((at) => hasLift(here.plan[at], order)).length;
      if (count === 0) {
        for (const option of row) here = tried(here, changed(here, days, order, option), search);
      } else if (count === days.length) {
        here = tried(here, changed(here, days, order, null), search);
        for (const option of row) here = tried(here, changed(here, days, order, option), search);
      }
    }
  }
  return here;
}

/** Another lift for some of the same muscles in place of one. */
function exchangeLifts(from: Standing, search: Search): Standing {
  let here = from;
  for (const days of someDays(from.plan.length)) {
    for (const row of search.rows) {
      const order = row[0]?.order ?? 0;
      for (const other of search.rows) {
        const [first] = other;
        if (!first || ((row[0]?.direct ?? 0) & first.direct) === 0) continue;
        const mayGo = days.every(
          (at) => hasLift(here.plan[at], order) && !hasLift(here.plan[at], first.order),
        );
        if (!mayGo) continue;
        for (const option of other) {
          here = tried(here, changed(here, days, order, option), search);
        }
      }
    }
  }
  return here;
}

/** An exercise of one day done on another, or in exchange for one of that day. */
function moveLifts(from: Standing, search: Search): Standing {
  let here = from;
  for (const at of from.plan.keys()) {
    for (const to of from.plan.keys()) {
      if (to === at) continue;
      for (const option of here.plan[at] ?? []) {
        if (hasLift(here.plan[to], option.order) || !hasLift(here.plan[at], option.order)) continue;
        const left = withoutLift(here.plan[at] ?? [], option.order);
        const target = here.plan[to] ?? [];
        const moved: Step = [
          [at, left],
          [to, withOption(target, option)],
        ];
        const next = tried(here, moved, search);
        if (next !== here) {
          here = next;
          continue;
        }
        for (const other of target) {
          if (hasLift(here.plan[at], other.order)) continue;
          const swapped: Step = [
            [at, withOption(left, other)],
            [to, withOption(withoutLift(target, other.order), option)],
          ];
          const found = tried(here, swapped, search);
          if (found === here) continue;
          here = found;
          break;
        }
      }
    }
  }
  return here;
}

const FAMILIES = [changeLifts, exchangeLifts, moveLifts] as const;

function changed(
  { plan }: Standing,
  days: readonly number[],
  order: number,
  option: Option | null,
): Step {
  return days.map((at) => {
    const left = withoutLift(plan[at] ?? [], order);
    return [at, option ? withOption(left, option) : left];
  });
}

/** Each day, and each two: most muscles want two. */
function someDays(count: number): readonly (readonly number[])[] {
  const all = Array.from({ length: count }, (_, at) => at);
  const twos = all.flatMap((one) => all.slice(one + 1).map((other) => [one, other]));
  return [...twos, ...all.map((one) => [one])];
}

function* shakes(plan: Plan): Generator<Plan> {
  const orders = new Set(plan.flat().map(({ order }) => order));
  for (const order of orders) yield plan.map((day) => withoutLift(day, order));
  for (const at of plan.keys()) yield plan.map((day, other) => (other === at ? [] : day));
}
