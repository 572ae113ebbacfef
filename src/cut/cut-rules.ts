import { lossWords, rule } from '../progression/rules/facts.ts';
import { keyWords } from '../text/words.ts';
import { COMMON, type Facts, OURS, type Reason, type Rule } from '../training/rule.ts';
import { rateErrorText } from './rate-of-loss.ts';
import {
  gainedText,
  missingText,
  notDoneText,
  rateWords,
  reachedText,
  stayText,
} from './verdict-words.ts';

const BAND = 'Helms 2014, JISSN 11:20';
const VOLUME =
  'hard sets a week, in a cut 6 to 10: common practice; at least 4: Iversen 2021, Sports Med 51(10):2079–2095; in a deficit evidence is insufficient (Roth 2022, Eur J Appl Physiol 122:1129–1151)';
const LESS =
  'ours, carried over from maintenance in energy balance (Bickel 2011; Spiering 2021); in a deficit evidence is insufficient (Roth 2022)';

const CYCLE =
  'ours; where weight follows a monthly cycle, monthly_cycle: true in the program compares with four weeks before';

const one = (value: number): string => value.toFixed(1);

/** Rules of the weekly review. */
const RULES = [
  rule(
    'lose-far-too-fast',
    'printed',
    `${BAND}; the line at 1.5 %: ours`,
    (f) =>
      `You lose ${one(f.number('rate'))} % a week, far above the ${f.number('low')}–${f.number('high')} % planned, in each of the last two reviews: slow down. If you did not intend this, see a doctor.`,
  ),
  rule(
    'cut-not-answered',
    'common practice',
    'no weight loss under 18, in pregnancy or with an eating disorder: common practice',
    () =>
      'Trained as maintenance until one question is answered: t asks it on the screen, "holdfast review" prints it.',
  ),
  rule(
    'pause-wanted',
    'common practice',
    'two weeks at maintenance: common practice',
    () => 'Two weeks at maintenance, because you asked for them.',
  ),
  rule(
    'pause-in-force',
    'common practice',
    'two weeks at maintenance: common practice',
    (f) =>
      `The cut is paused until ${f.day('until')}: hold your weight; training is that of maintenance. It goes on by itself the day after.`,
  ),
  rule(
    'cut-at-rest',
    'ours',
    OURS,
    (f) =>
      `The cut ${f.has('ended') ? 'is over' : 'rests'} since ${f.day('since')}, on your word: training is that of maintenance. A yes in the week's review begins it again.`,
  ),
  rule(
    'week-relaid',
    'ours',
    OURS,
    (f) =>
      `This week there is time on ${f.text('days')}: ${f.text('day')} now, for what the week lacks most${f.text('waiting') === '' ? '' : `; ${f.text('waiting')} ${f.text('waiting').includes(' and ') ? 'wait' : 'waits'} for another week`}. j changes it.`,
  ),
  rule('goal-reached', 'ours', OURS, reachedText),
  rule(
    'goal-too-soon',
    'printed',
    BAND,
    (f) =>
      `To be at ${f.mass('mass')} by ${f.day('date')} takes ${one(f.number('needed'))} % a week, over the ${f.number('high')} % planned at most: plan a later day (${f.day('early')} at the earliest) or a weight nearer by.`,
  ),
  rule(
    'goal-too-far',
    'ours',
    OURS,
    (f) =>
      `${f.mass('mass')} is more than ${f.percent('share')} under your ${f.mass('now')}: nothing is planned for so long a way. Choose a nearer goal first, and speak with a doctor about the last.`,
  ),
  rule(
    'goal-above-start',
    'ours',
    OURS,
    (f) =>
      `The goal of ${f.mass('mass')} is no less than what you ${f.has('toCome') ? 'weigh now' : 'weighed when the cut began'}: a cut does not lead there. Write a lower goal_weight into the program, or none.`,
  ),
  rule(
    'set-comes-back-to-file',
    'common practice',
    'one step a week: common practice; which sets: ours',
    (f) =>
      `The cut is over: give ${f.text('name')} its set back. ${f.number('from')} → ${f.number('to')}.`,
  ),
  rule(
    'day-comes-back-to-file',
    'common practice',
    'one step a week: common practice; which days: ours',
    (f) =>
      `The cut is over: give a day of training back. ${f.number('from')} → ${f.number('to')} days a week${f.number('to') < f.number('before') ? `; it was ${f.number('before')}` : ''}.`,
  ),
  rule(
    'cut-ended',
    'ours',
    OURS,
    () => 'The cut is over, on your word: training is that of maintenance.',
  ),
  rule(
    'next-program',
    'common practice',
    COMMON,
    () =>
      'The next program is due: draft it from what you lift now? Yes opens it on the screen; "holdfast draft --aim maintain" asks for it in a line.',
  ),
  rule('not-enough-data', 'ours', OURS, missingText),
  rule(
    'cut-not-begun',
    'ours',
    OURS,
    () =>
      'Rate of loss and strength kept are told from the first day of the cut on, and no session lately was trained for it: train one, or write the day it began into the program, as cut_from: YYYY-MM-DD.',
  ),
  rule(
    'cut-to-come',
    'ours',
    OURS,
    (f) =>
      `The cut begins on ${f.day('date')}, as the program says: rate of loss and strength kept are told from then on.`,
  ),
  rule(
    'lose-slower',
    'printed',
    `${BAND}; the leaner, the slower: ISSN 2017, JISSN 14:16; two reviews running: ours`,
    (f) =>
      `You lose ${one(f.number('rate'))} % a week (± ${rateErrorText(f.number('error'))}), above the ${f.number('low')}–${f.number('high')} % planned, in each of the last two reviews: slow down. The leaner you are, the slower it should be.`,
  ),
  rule(
    'pause-cut',
    'common practice',
    'two weeks at maintenance: common practice; when: ours',
    (f) =>
      `${f.percent('kept')} of your strength is left and no set can go any more: pause the cut for two weeks at maintenance.`,
  ),
  rule(
    'pause-cut-long',
    'common practice',
    'two weeks at maintenance: common practice; after 16 weeks: ours',
    (f) =>
      `${f.number('weeks')} weeks without a pause: hold your weight for two weeks, then go on with the cut.`,
  ),
  rule(
    'do-less-in-file',
    'ours',
    LESS,
    (f) =>
      `Do less: ${f.text('name')} has done one set fewer since ${f.day('since')}. Take that set out of the program: ${f.number('from')} → ${f.number('to')}.`,
  ),
  rule('do-less', 'ours', LESS, (f) =>
    f.has('since')
      ? `Do less: ${f.text('name')} does one set fewer since ${f.day('since')}, until it holds again.`
      : `Do less: ${f.text('name')} slips: ${lossWords(f)}. It does one set fewer from the next session on.`,
  ),
  rule(
    'may-do-more-under',
    'common practice',
    VOLUME,
    (f) =>
      `You may do more: ${keyWords(f.text('muscle'))} had ${one(f.number('sets'))} hard sets a week, under ${f.number('low')}, as planned, and nothing that trains it slips. One set more of ${f.text('name')}: ${f.number('from')} → ${f.number('to')}.`,
  ),
  rule(
    'may-do-more-plateau',
    'ours',
    VOLUME,
    (f) =>
      `You may do more: nothing slips, and no lift for ${keyWords(f.text('muscle'))} (${one(f.number('sets'))} hard sets a week) has gained a rep or load in four weeks. One set more of ${f.text('name')}: ${f.number('from')} → ${f.number('to')}.`,
  ),
  rule(
    'not-a-cut',
    'ours',
    OURS,
    (f) =>
      `Not a cut so far: ${rateWords(f)}${gainedText(f)}. Is a cut meant? Yes keeps the plan; no trains as maintenance.`,
  ),
  rule(
    'rate-so-far',
    'ours',
    `${BAND}; one review judges no rate: ours`,
    (f) =>
      `It is early to judge: ${rateWords(f)} so far, where a loss of ${f.number('low')}–${f.number('high')} % is planned. ${f.number('rate') > f.number('high') ? 'If the next review says the same, slow down.' : 'The next review says more; training holds as it is.'}`,
  ),
  rule(
    'weight-stands-still',
    'ours',
    CYCLE,
    (f) =>
      `Weight all but stands still: ${rateWords(f)}, where a loss of ${f.number('low')}–${f.number('high')} % is planned. Is a cut meant? Yes keeps the plan; no trains as maintenance.`,
  ),
  rule(
    'hardly-trained',
    'common practice',
    COMMON,
    (f) =>
      `Train first: ${f.number('done')} of ${f.number('planned')} planned sessions were done in the last two full weeks, too few to judge the plan by. Where there are not more days, "holdfast draft" makes a program for those there are.`,
  ),
  rule('planned-not-done', 'common practice', VOLUME, notDoneText),
  rule('stay-the-course', 'common practice', COMMON, stayText),
  rule(
    'slower-than-planned',
    'printed',
    BAND,
    (f) =>
      `Slower than planned: ${rateWords(f)}, where a loss of ${f.number('low')}–${f.number('high')} % is planned. Training holds as it is.`,
  ),
  rule(
    'over-range',
    'common practice',
    VOLUME,
    (f) =>
      `${keyWords(f.text('muscles'))} had more than ${f.number('high')} hard sets a week in the last two full weeks.`,
  ),
  rule(
    'sessions-missed',
    'common practice',
    COMMON,
    (f) =>
      `${f.number('done')} of ${f.number('planned')} planned sessions were done in the last two full weeks; missed days move on, they are not doubled up.`,
  ),
] as const;

/** Names a rule of the weekly review. */
export type CutRule = (typeof RULES)[number]['key'];

/** Every rule of the weekly review: its key, the sentence for the lifter, its source and how well founded it is. */
export const cutRules: readonly Rule<CutRule>[] = RULES;

/** Says that a rule of this room was used, and what it saw. */
export const reviewReason = (rule: CutRule, facts: Facts = {}): Reason<CutRule> => ({
  rule,
  facts,
});
