import type { Case, Ruling } from './case.ts';
import { build, match, moreMinis, stepTooFar, unfinished } from './judge-holding.ts';
import {
  dropSet,
  ease,
  isFarOff,
  isMissedAgain,
  isSpentAgain,
  keepsLoad,
  missed,
} from './judge-missed.ts';
import { afterPain, beginAgain, comeBack, upAfterReturn, wayBack } from './judge-returning.ts';
import { everyHigh, goUp, isEarned, minisMissing } from './judge-up.ts';

interface Row {
  readonly name: string;
  /** Null where the row does not fit the case. */
  readonly judge: (each: Case) => Ruling | null;
}

const when = (fits: (each: Case) => boolean, then: (each: Case) => Ruling): Row['judge'] => {
  return (each) => (fits(each) ? then(each) : null);
};

/**
 * The table of moves for a track that has been trained before, straight sets and clusters alike
 * (of a cluster the lead set is judged). Tried in this order; the first row that fits wins.
 */
const MOVES: readonly Row[] = [
  { name: 'pain', judge: when(({ last, painGone }) => last.pains > 0 && !painGone, afterPain) },
  {
    name: 'range left',
    judge: (each) => (each.left ? beginAgain(each, each.left) : null),
  },
  { name: 'away', judge: (each) => (each.layoff ? comeBack(each, each.layoff) : null) },
  {
    name: 'pain is gone',
    judge: when(
      ({ last }) => last.pains > 0,
      (each) => match(each, 'pain-gone'),
    ),
  },
  {
    name: 'missed again, load kept',
    judge: when((each) => isMissedAgain(each) && keepsLoad(each), dropSet),
  },
  {
    name: 'missed again',
    judge: when((each) => isMissedAgain(each) || isFarOff(each), ease),
  },
  {
    name: 'a set missed',
    judge: when(({ last, range }) => last.sets.some(({ count }) => count < range[0]), missed),
  },
  { name: 'nothing left again', judge: when(isSpentAgain, ease) },
  { name: 'unfinished', judge: when(({ last }) => !last.result.finished, unfinished) },
  {
    name: 'way back',
    judge: (each) => {
      const to = wayBack(each);
      return to === null ? null : upAfterReturn(each, to);
    },
  },
  {
    name: 'earned, at several loads',
    judge: when(
      (each) => isEarned(each) && each.last.mixed,
      (each) => match(each, 'hold-mixed-loads'),
    ),
  },
  {
    name: 'earned, never looked at',
    judge: when(
      (each) => isEarned(each) && each.last.unseen,
      (each) => match(each, 'hold-unconfirmed'),
    ),
  },
  { name: 'earned', judge: when(isEarned, goUp) },
  {
    name: 'mini-sets short',
    judge: when((each) => each.gate.kind === 'open' && minisMissing(each) > 0, moreMinis),
  },
  {
    name: 'step too far',
    judge: when((each) => each.gate.kind === 'far' && everyHigh(each), stepTooFar),
  },
  { name: 'building', judge: build },
];

/** The verdict of the first row that fits. */
export function judge(each: Case): Ruling {
  for (const row of MOVES) {
    const verdict = row.judge(each);
    if (verdict) return verdict;
  }
  throw new Error('The last row fits every case.');
}
