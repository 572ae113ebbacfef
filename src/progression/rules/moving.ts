import { COMMON, OURS } from '../../training/rule.ts';
import { rule } from './facts.ts';

const ACSM = 'size of the step: ACSM 2009, MSSE 41(3):687–708; when: common practice';

/** Rules that choose the load. */
export const MOVING_RULES = [
  rule('start-program', 'ours', OURS, (f) => `First time: ${f.load('load')}, as the program says.`),
  rule(
    'start-not-loadable',
    'ours',
    OURS,
    (f) =>
      `${f.has('name') ? `${f.text('name')}: the` : 'The'} program starts at ${f.load('wish')}, which cannot be made with your gear: ${f.load('load')} instead.`,
  ),
  rule('start-ask', 'common practice', COMMON, (f) =>
    f.text('counts') === 'seconds'
      ? `First time: choose a load that you could hold for ${f.count('reps')}.`
      : `First time: choose a load that you could lift ${f.number('reps')} times.`,
  ),
  rule('start-body', 'ours', OURS, () => 'First time: body weight alone.'),
  rule(
    'start-other-range',
    'ours',
    'strength curve: Brzycki 1993, Epley 1985; 95 % of it: ours',
    (f) =>
      f.has('reps')
        ? `Known from another range: ${f.count('reps')} at ${f.load('from')} point to ${f.load('load')} here, with a little in hand.`
        : `Done in another range of reps so far, with ${f.load('from')}: ${f.load('load')} to begin with here.`,
  ),
  rule(
    'start-range-again',
    'ours',
    'strength curve: Brzycki 1993, Epley 1985; 95 % of it, and when: ours',
    (f) =>
      `${f.load('from')} in this range was last done on ${f.day('date')}. ${f.count('done')} at ${f.load('next')} since then ${f.number('done') === 1 ? 'points' : 'point'} to less${f.has('days') ? `, and ${f.number('days')} days without this lift to less still` : ''}: begin at ${f.load('load')}.`,
  ),
  rule(
    'up-in-range',
    'common practice',
    ACSM,
    (f) =>
      `Every set reached ${f.number('high')} at ${f.load('from')}, so on to ${f.load('load')}.`,
  ),
  rule(
    'up-by-more',
    'ours',
    'at most 10 %: ACSM 2009, MSSE 41(3):687–708; two steps of up to 12.5 % while every set leaves much in reserve, 25 % after a first session, and when: ours',
    (f) =>
      `Every set reached ${f.number('high')} at ${f.load('from')} with much to spare, so on to ${f.load('load')}, ${f.percent('share')} more.`,
  ),
  rule(
    'up-big-step',
    'ours',
    OURS,
    (f) =>
      `${f.count('done')} at ${f.load('from')} is as far as reps go. ${f.load('load')} is next: expect about ${f.number('expected')}, and ${f.number('low')} will do for ${f.number('sessions')} sessions.`,
  ),
  rule(
    'up-after-return',
    'ours',
    OURS,
    (f) =>
      `Every set held at ${f.load('from')}, so on to ${f.load('load')}, on the way back to ${f.load('goal')}.`,
  ),
  rule(
    'up-cluster',
    'ours',
    'size of the step: ACSM 2009, MSSE 41(3):687–708; when: ours',
    (f) =>
      `The lead set reached ${f.number('done')} at ${f.load('from')} with ${f.number('minis')} mini-sets after it, so on to ${f.load('load')}.`,
  ),
  rule(
    'ease-missed-twice',
    'common practice',
    COMMON,
    (f) =>
      `Set 1 stopped under ${f.count('low')} ${f.number('times') > 2 ? `${f.number('times')} times` : 'twice'} running at ${f.load('from')}, so down to ${f.load('load')}, to build up again.`,
  ),
  rule(
    'ease-many-sets',
    'ours',
    OURS,
    (f) =>
      `Half the sets or more stopped under ${f.count('low')} ${f.number('times')} times running at ${f.load('from')}, so down to ${f.load('load')}, to build up again.`,
  ),
  rule(
    'ease-spent',
    'ours',
    OURS,
    (f) =>
      `${f.count('done')} at ${f.load('from')} left less than ${f.number('wanted')} in reserve ${f.number('spent') > 2 ? `${f.number('spent')} times` : 'twice'} running, and your range holds no fewer: down to ${f.load('load')}, to build up again.`,
  ),
  rule(
    'ease-far-off',
    'ours',
    OURS,
    (f) =>
      `Set 1 stopped at ${f.count('done')} where ${f.number('low')} are the least, so down to ${f.load('load')}.`,
  ),
  rule(
    'ease-back',
    'ours',
    OURS,
    (f) =>
      `${f.load('from')} never gave ${f.count('low')}, so back to ${f.load('load')}. ${f.has('leave') ? `Leave ${f.number('leave')} in reserve` : `Reach ${f.number('target')}`} in set 1 before ${f.load('from')} is tried again.`,
  ),
  rule(
    'return-short',
    'common practice',
    COMMON,
    (f) =>
      `${f.number('days')} days away from this lift: ${f.load('load')} instead of ${f.load('from')}.`,
  ),
  rule(
    'return-short-same',
    'ours',
    OURS,
    (f) =>
      `${f.number('days')} days away from this lift, and ${f.has('lower') ? 'the next lighter load is a long way down' : 'nothing lighter can be made'}: ${f.load('load')} again, two fewer in each set.`,
  ),
  rule(
    'return-medium',
    'common practice',
    COMMON,
    (f) =>
      `${f.number('days')} days away from this lift: ${f.load('load')} instead of ${f.load('from')}, half the sets, one more in reserve.`,
  ),
  rule(
    'return-long',
    'common practice',
    COMMON,
    (f) =>
      `${f.number('days')} days away from this lift: ${f.load('load')} instead of ${f.load('from')}, half the sets, one more in reserve.`,
  ),
  rule(
    'start-again',
    'ours',
    OURS,
    (f) =>
      `${f.number('days')} days away from this lift: begin anew at ${f.load('load')}, half the sets, and go up within the session if it is easy.`,
  ),
  rule('pain-asked', 'ours', OURS, (f) =>
    f.number('load') < f.number('from')
      ? `Pain was marked last time at ${f.load('from')}. If it is gone, ${f.load('load')} today; or another lift, or leave it out.`
      : `Pain was marked last time at ${f.load('from')}, and your gear makes nothing lighter. If it is gone, the same today; or another lift, or leave it out.`,
  ),
  rule(
    'pain-eased',
    'ours',
    OURS,
    (f) =>
      `Pain was marked last time; at ${f.load('load')} in its place every set was done. If it is gone, ${f.load('load')} again; or another lift, or leave it out.`,
  ),
  rule(
    'pain-first',
    'ours',
    OURS,
    () =>
      'Pain was marked last time before a set was done. If it is gone, go on; or another lift, or leave it out.',
  ),
  rule(
    'pain-twice',
    'ours',
    OURS,
    (f) =>
      `Pain was marked twice running. Leave this lift out today and have it looked at; ${f.load('load')} if you must.`,
  ),
  rule(
    'pain-lighter',
    'ours',
    OURS,
    (f) => `Because of pain ${f.load('load')} in place of ${f.load('from')}.`,
  ),
  rule(
    'pain-gone',
    'ours',
    OURS,
    (f) => `You said the pain is gone: ${f.load('load')} again, and no more than last time.`,
  ),
  rule(
    'gear-changed',
    'ours',
    OURS,
    (f) =>
      `${f.has('name') ? `${f.text('name')}: ` : ''}${f.load('wish')} cannot be made with your gear: ${f.load('load')} instead.`,
  ),
  rule(
    'gear-changed-many',
    'ours',
    OURS,
    (f) =>
      `The loads of ${f.text('names')} cannot be made with your gear: each is done with one that can.`,
  ),
  rule(
    'gear-light',
    'ours',
    'strength curve: Brzycki 1993, Epley 1985; when: ours',
    (f) =>
      `${f.load('wish')} cannot be made with today's gear: ${f.load('load')} for more ${f.text('counts') === 'seconds' ? 'seconds' : 'reps'}, and from ${f.load('wish')} on where that can be made.`,
  ),
  rule(
    'gear-missing',
    'ours',
    OURS,
    (f) =>
      `${f.text('name')} needs ${f.text('missing')}, and your gear has none: it asks for another lift when it is due.`,
  ),
  rule(
    'gear-missing-many',
    'ours',
    OURS,
    (f) =>
      `Your gear does not allow ${f.text('names')}: each asks for another lift when it is due.`,
  ),
  rule(
    'one-load-a-day',
    'ours',
    OURS,
    (f) =>
      `The day holds this lift and range more than once: ${f.load('load')} here, too, so that no load rises within the day.`,
  ),
  rule('own-load', 'ours', OURS, (f) => `${f.load('load')}, as you chose.`),
  rule(
    'offer-lighter',
    'ours',
    OURS,
    (f) =>
      `${f.count('done')} at ${f.load('from')} is under ${f.number('low')}: ${f.load('load')} fits the range better for the next sets.`,
  ),
  rule(
    'offer-heavier',
    'ours',
    OURS,
    (f) => `${f.load('from')} was too light for a start: try ${f.load('load')} in the next set.`,
  ),
] as const;
