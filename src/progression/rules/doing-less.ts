import { OURS } from '../../training/rule.ts';
import { lossWords, rule } from './facts.ts';

const CARRIED =
  'ours, carried over from maintenance in energy balance (Bickel 2011; Spiering 2021); in a deficit evidence is insufficient (Roth 2022)';

/** Rules about slipping, sets and reserve. */
export const DOING_LESS_RULES = [
  rule(
    'slipping-cut',
    'ours',
    OURS,
    (f) => `Slipping: ${lossWords(f)}. In a cut the load stays and the work gets less.`,
  ),
  rule(
    'slipping-maintain',
    'ours',
    OURS,
    (f) => `Slipping: ${lossWords(f)}. Check sleep and food before the load.`,
  ),
  rule(
    'slipping-build',
    'ours',
    OURS,
    (f) => `Slipping: ${lossWords(f)}. To build, eat and sleep more.`,
  ),
  rule('one-set-fewer', 'ours', CARRIED, (f) => {
    const sets = f.text('style') === 'cluster' ? 'mini-set' : 'set';
    return `One ${sets} fewer than planned while the cut costs strength.`;
  }),
  rule('set-comes-back', 'ours', OURS, () => 'Holding again: the dropped set comes back.'),
  rule(
    'volume-at-floor',
    'ours',
    'at least 4 sets a muscle a week: Iversen 2021, Sports Med 51(10):2079–2095; as the floor: ours',
    () => 'No set can go: its muscles would fall under 4 hard sets a week.',
  ),
  rule(
    'reserve-without-safeties',
    'common practice',
    'deaths at the bench press happen to people lifting alone',
    () => 'Without safeties, always leave at least one rep in reserve.',
  ),
  rule(
    'loads-what-hurts',
    'common practice',
    'what loads a sore joint hard rests: common practice; which lifts: common practice',
    (f) =>
      `${f.text('name')} loads the ${f.text('joints')} hard, and you said that hurts: before its first set you are asked, with other lifts to choose.`,
  ),
  rule(
    'hurts-long',
    'common practice',
    'common practice',
    (f) =>
      `Your ${f.text('joint')} has hurt for ${f.number('days')} days: have it looked at by someone who is licensed. m takes it back.`,
  ),
  rule(
    'start-helped',
    'ours',
    OURS,
    (f) => `${f.load('load')}, as much help as in ${f.text('from')}.`,
  ),
  rule(
    'start-like',
    'common practice',
    '90 % of the usual ratio between the two lifts: common practice, from memory',
    (f) => `${f.load('load')}, 90 % of what ${f.text('from')} usually points to: a careful start.`,
  ),
  rule(
    'weigh-in-missing',
    'ours',
    OURS,
    () =>
      'No weigh-in yet: weigh in once, and body weight lifts are judged by what they really move.',
  ),
] as const;
