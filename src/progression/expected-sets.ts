import type { Temporal } from 'temporal-polyfill';
import { type SetExpected, setExpected } from '../strength/set-expected.ts';
import { LIMITS } from './limits.ts';
import type { Past } from './past.ts';
import type { PrescribedExercise } from './prescription.ts';
import { recentStrength } from './slipping.ts';

type Asked = Pick<
  PrescribedExercise,
  'lift' | 'track' | 'loading' | 'load' | 'system' | 'counts' | 'reserve' | 'sets'
>;

/**
 * What each set of an exercise is likely to bring on that day (of a cluster: its lead). Null of what
 * counts seconds, without a load, and with fewer than four sessions that tell.
 */
export function expectedSets(
  past: Past,
  exercise: Asked,
  on: Temporal.PlainDate,
): readonly SetExpected[] | null {
  const { loading, load, system, counts, sets } = exercise;
  if (counts === 'seconds') return null;
  const lifted = loading === 'bodyweight' ? system : load;
  return setsExpected(past, { ...exercise, lifted, aims: sets.map(({ aim }) => aim) }, on);
}

interface SetsAsked extends Pick<PrescribedExercise, 'lift' | 'track' | 'reserve'> {
  /** What is really lifted, in micrograms. */
  readonly lifted: number | null;
  readonly aims: readonly number[];
}

/** The same of sets with these aims, so much really lifted. */
export function setsExpected(
  past: Past,
  { lift, track, reserve, lifted, aims }: SetsAsked,
  on: Temporal.PlainDate,
): readonly SetExpected[] | null {
  if (lifted === null || lifted <= 0) return null;
  const strengths = recentStrength(past, on);
  const known = strengths.lifts.get(lift);
  const session = strengths.session(lift, track);
  if (!known || !session || known.sessions < LIMITS.slipSessions) return null;
  return aims.map((aim, place) =>
    setExpected(session, known.fall, { lifted, aim, reserve: reserve[0], place }),
  );
}
