import { LIGHTER_WEEK } from '../progression/lighter-week.ts';
import { amend } from '../session/decisions/lifting.ts';
import type { Settings } from '../settings/settings.ts';
import { type Problem, Refusal } from '../text/problem.ts';
import { massText, type Unit } from '../training/mass.ts';
import { writeProgram } from './change-program.ts';
import { findRecord } from './find-record.ts';
import { keepWeighIn, replacedWords } from './keep-weigh-in.ts';
import type { KeepSettings } from './open-bench.ts';
import type { Workbench } from './open-workbench.ts';
import { recordWords } from './record-words.ts';
import { trendWords } from './trend-words.ts';
import type { Change } from './watch.ts';

/** Settings as they are now, and the way to change them. */
export interface SettingsDesk {
  readonly now: () => Settings;
  readonly keep: KeepSettings;
}

type Makers = {
  readonly [Kind in Change['kind']]: (change: Extract<Change, { kind: Kind }>) => string;
};

/**
 * Gives what carries changes of the past out, each by new events, and says in a sentence what it
 * came to. It remembers the last one of this run, which can be taken back; an answer to advice
 * cannot, for the program file would not follow.
 * @throws Refusal when nothing was changed.
 */
export function pastChanger(
  workbench: Workbench,
  settings: SettingsDesk,
  unit: () => Unit,
): (change: Change) => string {
  const history = () => workbench.journal().history();
  let last: readonly string[] = [];
  const record = (...fact: Parameters<ReturnType<Workbench['journal']>['record']>) => {
    last = [workbench.journal().record(...fact).id];
  };
  const makers: Makers = {
    weigh: ({ mass }) => {
      const on = workbench.today();
      const kept = keepWeighIn(workbench.journal(), mass, on);
      last = kept.ids;
      const words = trendWords(history(), on, unit(), settings.now().weightAdvice === 'yes');
      return [
        `Saved: ${massText(mass, unit())}.`,
        replacedWords(kept.replaced, unit()),
        words,
        'u takes it back.',
      ]
        .filter(Boolean)
        .join(' ');
    },
    answer: ({ finding: { reason, subject }, answer, edit }) => {
      const takes = answer === 'yes';
      const path = takes && edit ? writeProgram(workbench, settings, edit) : null;
      record({ type: 'decided', rule: reason.rule, answer, subject });
      last = [];
      if (path !== null) return `Written to ${path}.`;
      return takes ? (TAKEN[reason.rule] ?? 'Kept.') : 'Put aside for three weeks.';
    },
    'weight-advice': ({ answer }) => {
      settings.keep({ weightAdvice: answer });
      return answer === 'yes'
        ? 'Kept. "holdfast settings weight-advice" changes it.'
        : 'Kept: nothing is said about losing weight, and training goes on as it is.';
    },
    correct: ({ set: of, numbers }) => {
      const found = findRecord(history(), of);
      if (found?.kind !== 'set') throw new Refusal(GONE);
      const decided = amend(found.session, { do: 'amend', of, numbers });
      if (!decided.ok) throw new Refusal(decided.problem);
      record({ type: 'set-amended', of, ...numbers });
      const now = findRecord(history(), of);
      return `Corrected${now ? `: ${recordWords(now, unit()).says}` : ''}. u takes it back.`;
    },
    delete: ({ of }) => {
      const found = findRecord(history(), of);
      if (!found) throw new Refusal(GONE);
      record({ type: 'deleted', of });
      return `Deleted: ${recordWords(found, unit()).what}. u takes it back.`;
    },
    'take-back': () => {
      if (last.length === 0) throw new Refusal({ what: 'There is nothing to take back.' });
      for (const of of last.toReversed()) workbench.journal().record({ type: 'undone', of });
      last = [];
      return 'Taken back.';
    },
  };
  return (change) => (makers[change.kind] as (change: Change) => string)(change);
}

const GONE: Problem = { what: 'That is not there any more.' };

const TAKEN: Readonly<Record<string, string>> = {
  [LIGHTER_WEEK]: 'A lighter week begins with the next session and lasts seven days.',
};
