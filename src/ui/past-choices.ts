import { countsText, loadsText } from '../report/history-text.ts';
import { shortDayWords } from '../text/day-words.ts';
import { safeText } from '../text/safe-text.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';
import type { PastSession } from '../workbench/look-back.ts';
import type { Choice, ChoiceList } from './outcome.ts';
import type { LiftsScreen, PastSessionScreen, ResultsScreen, Screen } from './ui-state.ts';
import { loadText, numbersText } from './words.ts';

/** The lists of screens that look at the past; null for the others. */
export function pastChoices(screen: Screen, unit: Unit): ChoiceList | null {
  switch (screen.kind) {
    case 'lifts':
      return liftList(screen, unit);
    case 'results':
      return resultList(screen);
    case 'past-session':
      return setList(screen);
    case 'delete':
      return deleteList(screen);
    default:
      return null;
  }
}

const bestText = (best: number | null, unit: Unit): string | null =>
  best === null ? null : `e1RM ${massText(Math.round(best) as Mass, unit, 1)}`;

const joined = (parts: readonly (string | null | false)[]): string =>
  parts.filter((part) => part !== null && part !== false && part !== '').join(' · ');

function liftList({ lifts, query }: LiftsScreen, unit: Unit): ChoiceList {
  const wide = Math.max(0, ...lifts.map(({ name }) => name.length));
  return {
    title: query === '' ? 'History' : `History: ${safeText(query)}`,
    words: lifts.length > 0 ? null : NOTHING[query === '' ? 'yet' : 'found'],
    choices: lifts.map(({ name, sessions, last, best }): Choice => {
      const count = `${sessions} ${sessions === 1 ? 'session' : 'sessions'}`;
      // So that what stands behind the names can be read down the list.
      const blank = ' '.repeat(wide - name.length);
      const facts = joined([count, `last ${shortDayWords(last.toString())}`, bestText(best, unit)]);
      // What it leads to has to be asked for first.
      return { label: safeText(name), detail: blank + facts, effects: [] };
    }),
  };
}

const NOTHING = {
  yet: 'No results yet: they come with the first session that is closed.',
  found: 'Nothing fits. A search finds lifts, programs, days, dates (2026-11) and notes.',
} as const;

function resultList(screen: ResultsScreen): ChoiceList {
  const { results, query } = screen;
  const name = safeText(results[0]?.row.result.exercise.name ?? '');
  return {
    title: query === '' ? name : `${name}: ${safeText(query)}`,
    words: null,
    choices: results.map((past) => ({
      label: past.row.result.date.toString(),
      detail: resultText(past),
      effects: [],
      to: { kind: 'past-session', past, chosen: 0, back: screen },
    })),
  };
}

/** `100 kg · 6 5 4 · reserve 1 1 0 · e1RM 128 kg · up`; a hold goes without saying. */
function resultText({ row: { result, best }, unit, notes }: PastSession): string {
  const { move } = result.exercise;
  const rated = result.sets.some(({ reserve }) => reserve !== null);
  return joined([
    loadsText(result, unit),
    countsText(result),
    rated && `reserve ${result.sets.map(({ reserve }) => reserve ?? '–').join(' ')}`,
    bestText(best, unit),
    move !== 'hold' && move,
    result.pain && 'pain',
    result.lighter && 'lighter week',
    !result.finished && 'unfinished',
    notes.length > 0 && 'note',
  ]);
}

function setList({ past }: PastSessionScreen): ChoiceList {
  const { row, unit, notes } = past;
  const { sets, exercise, date, program, day } = row.result;
  const where = `${program}, day ${day}`;
  return {
    title: safeText(`${exercise.name}, ${shortDayWords(date.toString())} ${date.year}`),
    words: safeText([where, ...notes.map((note) => `“${note}”`)].join(' · ')),
    choices: [
      ...sets.map(
        (set, index): Choice => ({
          label: `Set ${index + 1}`,
          detail: `${loadText(set.load, exercise, unit)} · ${numbersText(set, exercise)}`,
          effects: [],
        }),
      ),
      { label: 'The whole session', detail: 'd deletes it, with all its lifts', effects: [] },
    ],
  };
}

function deleteList({ of, words, back }: Extract<Screen, { kind: 'delete' }>): ChoiceList {
  return {
    title: 'Delete?',
    words,
    choices: [
      { label: 'Keep it', effects: [], to: back },
      {
        label: 'Delete it',
        detail: 'u brings it back, as long as you are here',
        effects: [{ do: 'change', change: { kind: 'delete', of }, to: 'results' }],
      },
    ],
  };
}
