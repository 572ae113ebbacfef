import { durationRangeText } from '../../text/durations.ts';
import { howMany, keyWords } from '../../text/words.ts';
import type { Basis } from '../../training/lift.ts';
import { loadWords } from '../../training/load-words.ts';
import type { Mass } from '../../training/mass.ts';
import type { Facts, Reason, Rule, Standing } from '../../training/rule.ts';

const ours = (key: string, sentence: Rule['sentence'], source = 'ours') => ({
  key,
  standing: (source === 'ours' ? 'ours' : 'common practice') as Standing,
  source,
  sentence,
});

const CAUSES: Readonly<Record<string, string>> = {
  gear: 'your gear holds nothing for it',
  safeties: 'it needs safeties, and your gear lists none',
  hurts: 'it loads what hurts you (common practice; see someone who is licensed if it lasts)',
  without: 'you left it out',
  time: 'the time does not reach',
  long: 'sessions of this aim are kept shorter than the time you have',
  others: 'what the week needs more comes first',
  recovery: 'more would leave too little time to recover',
  full: 'no day has room for another lift of that kind',
  unknown: 'there is no such lift',
};

const title = (muscle: unknown): string => {
  const words = keyWords(String(muscle));
  return words.charAt(0).toUpperCase() + words.slice(1);
};

const cause = ({ cause: why }: Facts): string => CAUSES[String(why)] ?? String(why);

/** Of a movement or a muscle, which many lifts could serve. */
const causeOfAll = (facts: Facts): string =>
  facts.cause === 'without' ? 'you left out what there is for it' : cause(facts);

/** Why a drafted program is what it is, and what it could not do. */
export const DRAFT_RULES: readonly Rule[] = [
  ours(
    'draft-days',
    ({ days, longest, minutes }) =>
      `${days} days a week; the longest takes about ${longest} of your ${minutes} minutes.`,
  ),
  ours(
    'draft-volume',
    ({ count, low, high }) =>
      `${count} ${count === 1 ? 'muscle gets' : 'muscles get'} ${low}–${high} hard sets a week, those trained directly on at least two days.`,
    'common practice; counted 1 direct, 0.5 indirect (Pelland 2024)',
  ),
  ours(
    'draft-apart',
    () => 'Days that follow each other train no muscle directly twice, since two of four touch.',
  ),
  ours('draft-liked', ({ lift }) => `${lift} is in, as you wished.`),
  ours(
    'draft-focus',
    ({ muscle, sets, days }) =>
      `${title(muscle)}, to bring up: ${howMany(sets, 'set')} a week on ${days} days.`,
  ),
  ours(
    'draft-clusters',
    ({ lifts }) => `Done as clusters, about two minutes each: ${lifts}.`,
    'common practice',
  ),
  ours(
    'draft-rests',
    ({ from, to }) =>
      `Rests between heavy sets are ${durationRangeText([Number(from), Number(to)])}, so that more fits into your time.`,
  ),
  ours(
    'draft-pairs',
    ({ names }) => `Their sets alternate, so that more fits into your time: ${names}.`,
    'common practice; Robbins 2010, JSCR 24:2873–2882, from memory',
  ),
  ours(
    'draft-lone',
    () => 'Your gear has no safeties, so no lift can pin you under a bar.',
    'common practice',
  ),
  ours(
    'draft-start',
    ({ lift, start, from, load, reps, reserve, share, isHeaviest, basis, fromBasis }, unit) =>
      `${lift} starts at ${loadWords(Number(start) as Mass, basis as Basis, unit)}${isHeaviest ? ', the heaviest that your gear makes; below' : ':'} ${share} % of what ${loadWords(Number(load) as Mass, fromBasis as Basis, unit)} × ${reps} with ${reserve} in reserve${
        from === lift ? '' : ` of ${from}`
      } points to${isHeaviest ? '' : ', rounded down'}.`,
  ),
  ours(
    'draft-ask',
    ({ lifts }) => `The first session asks for the loads of lifts without a recent best: ${lifts}.`,
  ),
  ours(
    'draft-start-made',
    ({ lifts }) => `First loads are the next below that your gear can make: ${lifts}.`,
  ),
  ours('draft-kept', ({ count, of }) => `${count} of ${of} exercises of the program before stay.`),
  ours(
    'draft-muscle-low',
    ({ muscles, low, ...facts }) =>
      `Under ${low} hard sets a week: ${keyWords(String(muscles))}; ${causeOfAll(facts)}.`,
  ),
  ours(
    'draft-muscle-out',
    ({ muscles, ...facts }) =>
      `No work of its own: ${keyWords(String(muscles))}; ${causeOfAll(facts)}.`,
  ),
  ours('draft-movement-out', ({ movement, ...facts }) => `No ${movement}: ${causeOfAll(facts)}.`),
  ours('draft-liked-out', ({ lift, ...facts }) => `${lift} is not in: ${cause(facts)}.`),
  ours(
    'draft-pinned',
    ({ lift }) =>
      `${lift} is in as you wished, though it can pin you and your gear has no safeties: set some first.`,
    'common practice',
  ),
  ours('draft-left-out', ({ lifts, ...facts }) => `No more in it: ${lifts}; ${cause(facts)}.`),
  ours(
    'draft-best-unused',
    ({ lift, isIn }) =>
      `Your best of ${lift} gives no first load: ${
        isIn ? 'it was too many reps, or your body weight is not known' : 'no lift like it is in'
      }.`,
  ),
];

const BY_KEY = new Map(DRAFT_RULES.map((rule) => [rule.key, rule]));

/** A reason of a draft. The key must be one of {@link DRAFT_RULES}. */
export function draftReason(rule: string, facts: Facts = {}): Reason {
  if (!BY_KEY.has(rule)) throw new RangeError(`There is no rule ${rule}.`);
  return { rule, facts };
}
