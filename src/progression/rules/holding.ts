import { COMMON, OURS } from '../../training/rule.ts';
import { LIMITS } from '../limits.ts';
import { rule, type Told } from './facts.ts';

/** Rules that keep the load, and say what to aim at. */
export const HOLDING_RULES = [
  rule('hold-add-rep', 'common practice', COMMON, (f) => {
    if (f.has('hard')) {
      return `Same ${f.load('load')}: one more in set ${f.number('set')}; set ${f.number('hard')} left less in reserve than wanted, so stop earlier there.`;
    }
    return f.text('counts') === 'seconds'
      ? `Same ${f.load('load')}: match last time, and hold set ${f.number('set')} for ${f.count('aim')}.`
      : `Same ${f.load('load')}: match last time, and do one more in set ${f.number('set')}.`;
  }),
  rule('hold-match', 'common practice', COMMON, (f) => `Same ${f.load('load')}: match last time.`),
  rule(
    'hold-reserve',
    'ours',
    OURS,
    (f) =>
      `Set ${f.number('set')} ended with ${f.number('left')} in reserve where ${f.number('wanted')} should be left: same ${f.load('load')}, and stop earlier. Fewer reps are no miss down to ${f.number('low')}.`,
  ),
  rule(
    'hold-reserve-at-low',
    'ours',
    OURS,
    (f) =>
      `Set ${f.number('set')} ended with ${f.number('left')} in reserve where ${f.number('wanted')} should be left, and your range holds no fewer than ${f.count('low')}: same ${f.load('load')} ${f.number('set') > 1 ? 'after a longer rest' : f.has('lower') ? 'once more, and less if it is as hard again' : 'once more'}.`,
  ),
  rule(
    'hold-fill-reserve',
    'ours',
    OURS,
    (f) =>
      `Set ${f.number('set')} ended with ${f.number('left')} in reserve where ${f.number('wanted')} ${f.number('wanted') === 1 ? 'is' : 'are'} enough: same ${f.load('load')}, more reps (${f.numbers('aims').join(', ')}).`,
  ),
  rule(
    'hold-reach-target',
    'ours',
    'steps of 2–10 %: ACSM 2009, MSSE 41(3):687–708; gate: ours',
    (f) =>
      f.has('share')
        ? `${f.load('load')} → ${f.load('next')} is ${article(f.number('share'))} ${f.percent('share')} step: first reach ${f.count('target')} in set 1${orMoreLeft(f)}.`
        : `${f.load('next')} is next: first reach ${f.count('target')} in set 1${orMoreLeft(f)}.`,
  ),
  rule(
    'hold-leave-more',
    'ours',
    'steps of 2–10 %: ACSM 2009, MSSE 41(3):687–708; gate: ours',
    (f) =>
      `${f.load('next')}${f.has('share') ? `, ${f.percent('share')} more,` : ''} is next once set 1 leaves ${f.number('leave')} in reserve after ${f.count('high')}.`,
  ),
  rule(
    'hold-gap',
    'ours',
    'steps of 2–10 %: ACSM 2009, MSSE 41(3):687–708; when out of reach: ours',
    (f) =>
      `${f.load('next')}${f.has('share') ? `, ${f.percent('share')} more,` : ''} is out of reach even from ${f.count('target')} at ${f.load('load')}: smaller plates or a band would close the gap.${f.number('target') > LIMITS.heavyReps ? ' Until then add reps.' : ''}`,
  ),
  rule(
    'hold-unlikely',
    'ours',
    OURS,
    (f) =>
      `${f.load('next')} is next, but set ${f.number('set')} is not likely to reach ${f.count('low')} there yet.`,
  ),
  rule(
    'hold-after-try',
    'ours',
    OURS,
    (f) =>
      `${f.load('next')} was too heavy last time: first reach ${f.count('target')} in set 1 at ${f.load('load')}.`,
  ),
  rule(
    'hold-once-after-tries',
    'ours',
    OURS,
    (f) =>
      `${f.count('done')} at ${f.load('load')} may have been a good day, and ${f.load('next')} was given up before: show it once more.`,
  ),
  rule(
    'hold-step-too-far',
    'ours',
    OURS,
    (f) =>
      `${f.count('done')} reached, but ${f.load('next')} would give only about ${f.number('expected')}: stay at ${f.load('load')}. Smaller plates or a band would close the gap.`,
  ),
  rule(
    'hold-no-heavier',
    'ours',
    OURS,
    (f) =>
      `${f.load('load')} is the heaviest you can make: ${f.number('done') < f.number('target') ? `go on to ${f.count('target')} in set 1, then ` : ''}more weight or a harder lift is needed.`,
  ),
  rule(
    'hold-missed',
    'common practice',
    COMMON,
    (f) =>
      `${setsText(f.numbers('sets'))} stopped under ${f.count('low')}: ${f.load('load')} again, and aim at ${f.number('low')} there.`,
  ),
  rule(
    'hold-short-often',
    'ours',
    OURS,
    (f) =>
      `A late set has stopped under ${f.number('low')} three sessions running: rest longer, or plan one set fewer.`,
  ),
  rule(
    'hold-nothing-lighter',
    'ours',
    OURS,
    (f) =>
      `${f.load('load')} is the lightest you can make: aim at what you did. A band, an easier lift or leaving it out are the ways on.`,
  ),
  rule(
    'hold-unfinished',
    'common practice',
    COMMON,
    (f) => `Not finished last time: the same ${f.load('load')} and the same aims.`,
  ),
  rule(
    'hold-unconfirmed',
    'ours',
    OURS,
    (f) =>
      `Last time was saved as planned and never looked at, so it earns no more load: ${f.load('load')} again.`,
  ),
  rule(
    'hold-mixed-loads',
    'ours',
    OURS,
    (f) => `Last time had sets at several loads: ${f.load('load')} for all of them.`,
  ),
  rule(
    'hold-cluster-minis',
    'ours',
    OURS,
    (f) =>
      `The lead set is there with ${f.number('done')}: same ${f.load('load')}, and do ${f.number('wanted')} mini-sets this time.`,
  ),
  rule('hold-lighter-week', 'common practice', COMMON, (f) =>
    f.text('style') === 'cluster'
      ? `Lighter week: the same ${f.load('load')}, the lead set two reps shorter and one mini-set.`
      : `Lighter week: the same ${f.load('load')}, half the sets, two reps fewer in each.`,
  ),
  rule(
    'holding-wins',
    'ours',
    'ours, carried over from maintenance in energy balance (Bickel 2011; Spiering 2021); in a deficit evidence is insufficient (Roth 2022)',
    (f) =>
      f.has('now')
        ? `In a cut the same load and reps count as success: you are ${f.mass('lost')} lighter, and lift ${f.number('now').toFixed(2)} × body weight where it was ${f.number('before').toFixed(2)}.`
        : 'In a cut the same load and reps count as success.',
  ),
  rule(
    'holding-body-weight',
    'ours',
    OURS,
    (f) =>
      `You are ${f.mass('lost')} lighter, so the same reps are now ${f.percent('share')} less work; about ${f.number('reps')} would be full strength.`,
  ),
  rule('holding-maintains', 'ours', OURS, () => 'Holding is the plan while you maintain.'),
  rule(
    'holding-builds',
    'ours',
    OURS,
    (f) =>
      `${f.number('sessions')} sessions at this load without a rep more: to build, eat and sleep more, or change the range.`,
  ),
] as const;

/** A rep that was left tells as much as one that was done; of seconds nothing is left. */
const orMoreLeft = (f: Told): string =>
  f.text('counts') === 'seconds' ? '' : ', or fewer with more left';

const article = (share: number): string =>
  [8, 11, 18].includes(Math.round(share * 100)) ? 'an' : 'a';

function setsText(sets: readonly number[]): string {
  if (sets.length === 0) return 'A set';
  if (sets.length === 1) return `Set ${sets[0]}`;
  return `Sets ${sets.slice(0, -1).join(', ')} and ${sets.at(-1)}`;
}
