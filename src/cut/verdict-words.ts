import type { Told } from '../progression/rules/facts.ts';
import { keyWords } from '../text/words.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { rateErrorText } from './rate-of-loss.ts';

/** What is missing before a week can be judged. */
export function missingText(f: Told): string {
  const missing: string[] = [];
  if (f.has('noSession')) missing.push('train the first session');
  if (f.has('weighInsMissing')) {
    const count = f.number('weighInsMissing');
    missing.push(`weigh in on ${count} more ${count === 1 ? 'day' : 'days'}`);
  }
  if (f.has('rateFrom')) missing.push(`the rate of loss shows from ${f.day('rateFrom')} on`);
  if (f.has('judgedFrom')) missing.push(`two weeks of training are full on ${f.day('judgedFrom')}`);
  if (f.has('sessionsOfALift')) {
    missing.push(
      `strength kept takes ${CUT_LIMITS.keptSessions} sessions of a lift that count (${f.number('sessionsOfALift') - 1} so far)`,
    );
  }
  if (f.has('bodyMass')) missing.push('weigh in once, so that body weight lifts can be judged');
  return `Not enough data yet: ${missing.join('; ')}.`;
}

/** Nothing to change, with the numbers that say so. */
export function stayText(f: Told): string {
  const seen: string[] = [];
  if (f.has('kept')) seen.push(`${f.percent('kept')} of your strength kept`);
  if (f.has('slipping')) seen.push(slippingText(f.number('slipping')));
  if (f.has('rate')) seen.push(courseText(f.number('rate')));
  seen.push(`${f.number('done')} of ${f.number('planned')} sessions in two weeks`);
  return `${courseWords(f)}: ${seen.join(', ')}.`;
}

function courseWords(f: Told): string {
  if (f.has('answered') || f.has('slipping')) return 'Nothing new';
  return f.has('lost')
    ? 'Some strength is lost, though no lift is found to slip'
    : 'Go on as you are';
}

/** Of none alone, all of them do. */
const slippingText = (lifts: number): string =>
  lifts === 0
    ? 'the big lifts together slip'
    : lifts === 1
      ? 'one lift slips'
      : `${lifts} lifts slip`;

/** `body weight falls by 0.7 % a week`; steady where it moves by less than is shown. */
function courseText(percentAWeek: number): string {
  const by = Math.abs(percentAWeek).toFixed(1);
  if (by === '0.0') return 'body weight is steady';
  return `body weight ${percentAWeek > 0 ? 'falls' : 'rises'} by ${by} % a week`;
}

/** {@link courseText} of a finding about the rate, with its error. */
export const rateWords = (f: Told): string =>
  `${courseText(f.number('rate'))} (± ${rateErrorText(f.number('error'))})`;

/** `; 2.1 kg more than at the start, in 8 weeks`; empty where the start is not known. */
export function gainedText(f: Told): string {
  if (!f.has('gained') || f.number('gained') <= 0) return '';
  const weeks = f.number('weeks');
  return `, ${f.mass('gained')} more than ${weeks} ${weeks === 1 ? 'week' : 'weeks'} ago at the start`;
}

/** What a cut came to, and whether it ends. */
export function reachedText(f: Told): string {
  const weeks = f.number('weeks');
  const what = f.has('mass') ? `${f.mass('mass')} is reached` : `${f.day('date')} is here`;
  const seen = [
    ...(f.has('kept') ? [`${f.percent('kept')} of your strength kept`] : []),
    ...(f.has('lost') && f.number('lost') > 0 ? [`${f.mass('lost')} lost`] : []),
    `${f.number('done')} of ${f.number('planned')} sessions in ${weeks} ${weeks === 1 ? 'week' : 'weeks'}`,
  ];
  return `${what}: ${seen.join(', ')}. Does the cut end here? Yes trains as maintenance and gives sets back step by step; no goes on.`;
}

/** Why a muscle had fewer hard sets than the program plans. */
export function notDoneText(f: Told): string {
  const sets = (name: string) => `${f.number(name)} ${f.number(name) === 1 ? 'set' : 'sets'}`;
  const why = [
    ...(f.number('left') > 0 ? [`${sets('left')} not done`] : []),
    ...(f.number('light') > 0 ? [`${sets('light')} too far from failure to count`] : []),
  ];
  return `${keyWords(f.text('muscle'))} had ${f.number('sets').toFixed(1)} of ${f.number('planned').toFixed(1)} planned hard sets a week: in two weeks ${why.join(', ')}. Do what is planned before planning more.`;
}
