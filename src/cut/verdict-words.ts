import type { Told } from '../progression/rules/facts.ts';
import { CUT_LIMITS } from './cut-limits.ts';

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
  if (f.has('rate')) seen.push(`${f.number('rate').toFixed(1)} % of body weight a week`);
  seen.push(`${f.number('done')} of ${f.number('planned')} sessions in two weeks`);
  return `Stay the course: ${seen.join(', ')}.`;
}

/** Muscles as words: `side delts`. */
export const muscleWords = (keys: string): string => keys.replaceAll('-', ' ');
