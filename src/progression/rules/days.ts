import { keyWords } from '../../text/words.ts';
import { COMMON, OURS } from '../../training/rule.ts';
import { lossWords, rule } from './facts.ts';

/** Days of a lifter's own table are called by their date. */
const ISO = /^\d{4}-\d\d-\d\d$/;

/** Rules about which day is due, rest days and lighter weeks. */
export const DAY_RULES = [
  rule('due-first', 'common practice', COMMON, (f) => `First session: ${f.text('day')}.`),
  rule(
    'due-next',
    'common practice',
    COMMON,
    (f) => `${f.text('day')} follows ${f.text('done')}, done on ${f.day('date')}.`,
  ),
  rule(
    'due-again',
    'common practice',
    COMMON,
    (f) =>
      `${f.text('day')} again: on ${f.day('date')} only ${f.number('setsDone')} of ${f.number('setsPlanned')} sets were done.`,
  ),
  rule(
    'day-matched',
    'ours',
    OURS,
    (f) =>
      `${ISO.test(f.text('done')) ? `What was trained on ${f.day('date')}` : `${f.text('done')} of ${f.text('program')}, trained on ${f.day('date')},`} is taken for ${f.text('matched')} of this program, by its lifts. If that is wrong, choose the day.`,
  ),
  rule(
    'day-unknown',
    'ours',
    OURS,
    (f) =>
      `No day of this program is the ${f.text('done')} trained on ${f.day('date')}, so that session does not count here. If that is wrong, choose the day.`,
  ),
  rule(
    'begun-day',
    'ours',
    OURS,
    (f) =>
      `${f.text('day')} was begun: ${f.text('names')} done already, so what is left comes now.`,
  ),
  rule(
    'results-ahead',
    'ours',
    OURS,
    (f) => `The last session lies ahead, on ${f.day('date')}: is this machine's clock right?`,
  ),
  rule('rest-trained-today', 'common practice', COMMON, (f) => {
    return `You have trained today. Next good day: ${f.day('next')}.`;
  }),
  rule('rest-third-day', 'common practice', COMMON, (f) => {
    return `This would be the third day running. Better rest; next good day: ${f.day('next')}.`;
  }),
  rule('rest-fifth-session', 'common practice', COMMON, (f) => {
    return `This would be the fifth session in seven days. Better rest; next good day: ${f.day('next')}.`;
  }),
  rule('rest-same-muscles', 'common practice', COMMON, (f) => {
    return `Yesterday trained the same muscles (${f.text('muscles')}). Better rest; next good day: ${f.day('next')}.`;
  }),
  rule(
    'lighter-week',
    'common practice',
    COMMON,
    (f) => `Lighter week until ${f.day('until')}: half the sets, the same loads, nothing judged.`,
  ),
  rule(
    'lighter-week-proposed',
    'ours',
    OURS,
    (f) =>
      `${
        f.has('odds')
          ? `All big lifts together: ${lossWords(f)}`
          : `${f.number('slipping')} of ${f.number('compounds')} big lifts are slipping`
      }: a lighter week is due. Half the sets, the same loads, for seven days?`,
  ),
  rule(
    'left-out-for-pain',
    'ours',
    OURS,
    (f) => `${f.text('name')} is left out today, as you said, because of pain.`,
  ),
  rule('short-rests', 'ours', OURS, (f) =>
    f.text('names') === ''
      ? 'Rests between exercises end at their early end.'
      : `Rests end at their early end, between exercises and in ${f.text('names')}.`,
  ),
  rule(
    'test-set',
    'ours',
    'how well reps in reserve are told differs between lifters: Halperin 2022; when it is asked for: ours',
    (f) =>
      `Last set of ${f.text('name')}, if you like: on until a rep fails, and z says so. It shows how well you tell what is left.`,
  ),
  rule(
    'short-pairs',
    'common practice',
    'lifts that leave each other their rest can alternate: Robbins 2010, JSCR 24:2873–2882, from memory',
    (f) => `In turn, one lift while the other rests: ${f.text('names')}.`,
  ),
  rule(
    'short-sets',
    'ours',
    'sets go before exercises: ours; few hard sets keep strength for the time-poor: Iversen 2021',
    (f) => `${f.text('name')}: ${f.number('sets')} of ${f.number('of')} sets, for want of time.`,
  ),
  rule('short-left-out', 'ours', 'compounds first: Iversen 2021; the order: ours', (f) => {
    const min = f.number('left');
    const left = min < 1 ? 'none is' : `${min} min ${min === 1 ? 'is' : 'are'}`;
    return `${f.text('name')} is left out: it takes ${f.number('takes')} min, and ${left} left after what the week lacks most.`;
  }),
  rule(
    'short-least',
    'ours',
    OURS,
    (f) => `No shorter session is worth its warm-up: this one takes ${f.number('minutes')} min.`,
  ),
  rule(
    'short-week-lacks',
    'ours',
    OURS,
    (f) =>
      `Cut today, in hard sets the week now lacks: ${keyWords(f.text('muscles'))}. The next short day takes these first; nothing is doubled up.`,
  ),
] as const;
