import { answersTo } from '../cut/answers.ts';
import { weighInDoubt } from '../cut/weigh-in-doubt.ts';
import { liftRows } from '../report/lift-rows.ts';
import { liftSummaries } from '../report/lift-summaries.ts';
import { searchHistory } from '../report/search-history.ts';
import { dayWords } from '../text/day-words.ts';
import { massText, type Unit } from '../training/mass.ts';
import { programEdit } from './change-program.ts';
import type { Workbench } from './open-workbench.ts';
import { orProblem } from './or-problem.ts';
import { pastChanger, type SettingsDesk } from './past-changer.ts';
import { reasonWords } from './reason-words.ts';
import { reviewOf } from './review-of.ts';
import { sessionNotes } from './session-notes.ts';
import { trendWords } from './trend-words.ts';
import type { Advice, PastSession, Watch } from './watch.ts';

/** Calendar weeks that the review on the screen looks back on. */
const WEEKS = 4;

/** The past as the screens ask for it. */
export function openWatch(workbench: Workbench, settings: SettingsDesk, unit: () => Unit): Watch {
  const history = () => workbench.journal().history();
  const advises = () => settings.now().weightAdvice === 'yes';
  const changePast = pastChanger(workbench, settings, unit);
  const found = (query: string) => searchHistory(history().results, query, sessionNotes(history()));

  return {
    unit,
    weightAdvice: () => settings.now().weightAdvice,
    review: () => {
      const review = reviewOf(workbench, WEEKS, settings.now());
      const program = workbench.program();
      const { headline, below } = review.verdict;
      const advice = [headline, ...below].map((finding): Advice => {
        const { text, source } = reasonWords(finding.reason, program.unit);
        const { yes, no } = answersTo(finding);
        return { finding, text, source, mayTake: yes, mayRefuse: no };
      });
      return { review, unit: program.unit, advice };
    },
    programEdit: ({ changes }) => orProblem(() => programEdit(workbench, changes)),
    weighing: () => {
      const date = workbench.today();
      const before = history().weighIns.at(-1);
      const words = [
        before ? `Last: ${massText(before.mass, unit())} on ${dayWords(before.date)}.` : null,
        trendWords(history(), date, unit(), advises()),
      ];
      return {
        date,
        unit: unit(),
        last: before?.id ?? null,
        words: words.filter((each) => each !== null),
      };
    },
    doubt: (mass) => weighInDoubt(mass, workbench.today(), history().weighIns, unit()),
    lifts: (query) => liftSummaries(liftRows(found(query), null, history().bodyMassOn)),
    results: (lift, query) => {
      const { closed, bodyMassOn } = history();
      const sessions = new Map(closed().map((state) => [state.session, state]));
      const notesOf = sessionNotes({ closed });
      return liftRows(found(query), lift, bodyMassOn)
        .toReversed()
        .map((row): PastSession => {
          const { session } = row.result;
          const state = sessions.get(session);
          const own = state?.prescription.unit ?? unit();
          return { session, row, unit: own, notes: notesOf(session) };
        });
    },
    change: (change) => orProblem(() => ({ said: changePast(change) })),
  };
}
