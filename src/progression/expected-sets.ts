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
  const { lift, track, loading, load, system, counts, reserve, sets } = exercise;
  const lifted = loading === 'bodyweight' ? system : load;
  if (counts === 'seconds' || lifted === null || lifted <= 0) return null;
  const strengths = recentStrength(past, on);
  const known = strengths.lifts.get(lift);
  const session = strengths.session(lift, track);
  if (!known || !session || known.sessions < LIMITS.slipSessions) return null;
  return sets.map(({ aim }, place) =>
    setExpected(session, known.fall, { lifted, aim, reserve: reserve[0], place }),
  );
}
