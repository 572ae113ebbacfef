import type { PastSession } from '../../lifter/look-back.ts';
import { countsText, e1rmPlot, loadsText, plotSays } from '../../report/history-text.ts';
import { shortDayWords } from '../../text/day-words.ts';
import { safeText } from '../../text/safe-text.ts';
import { howMany } from '../../text/words.ts';
import { type Mass, massText, type Unit } from '../../training/mass.ts';
import { BLANK, type Line, line, textOf } from '../line.ts';
import { type Choice, type ChoiceList, listLines, listScreen, paging } from '../list.ts';
import { type Act, type Acting, ask, type Outcome, type Seen, show, tell } from '../outcome.ts';
import { OPEN, titled } from '../page.ts';
import {
  backBy,
  type KeyRow,
  type ScreenModule,
  TO_PREVIEW,
  takingBack,
  textTyped,
} from '../screen.ts';
import { resultsAnew } from '../screen-after.ts';
import type { LiftsScreen, ResultsScreen, Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';

type Search = Extract<Screen, { kind: 'search' }>;

/** From the preview: every lift that has results. */
export const HISTORY_KEY: KeyRow = {
  keys: ['h'],
  label: 'history',
  footer: 6,
  press: (acting) =>
    show(acting, { kind: 'lifts', lifts: acting.coach.lookBack.lifts(''), query: '', chosen: 0 }),
};

const bestText = (best: number | null, unit: Unit): string | null =>
  best === null ? null : `best e1RM ${massText(Math.round(best) as Mass, unit, 1)}`;

const joined = (parts: readonly (string | null | false)[]): string =>
  parts.filter((part) => part !== null && part !== false && part !== '').join(' · ');

function liftList({ screen, coach }: Seen<LiftsScreen>): ChoiceList {
  const { lifts, query } = screen;
  const unit = coach.lookBack.unit();
  const wide = Math.max(0, ...lifts.map(({ name }) => name.length));
  return {
    title: query === '' ? 'History' : `History: ${safeText(query)}`,
    words: lifts.length > 0 ? null : NOTHING[query === '' ? 'yet' : 'found'],
    choices: lifts.map(({ name, sessions, last, best }): Choice => {
      const count = howMany(sessions, 'session');
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

const openLift: Act<LiftsScreen> = (acting) => {
  const { lifts, chosen, query } = acting.screen;
  const lift = lifts[chosen]?.lift;
  if (lift === undefined) return tell(acting, 'There is nothing to choose.');
  const { lookBack } = acting.coach;
  const results = lookBack.results(lift, query);
  const strength = lookBack.strength(lift);
  return show(acting, { kind: 'results', lift, results, strength, query, chosen: 0 });
};

const SEARCH_KEY: KeyRow<LiftsScreen | ResultsScreen> = {
  keys: ['/'],
  label: 'search',
  footer: 2,
  press: (acting) => {
    const { screen } = acting;
    return show(acting, { kind: 'search', typed: screen.query, back: screen });
  },
};

export const LIFTS_SCREEN: ScreenModule<LiftsScreen> = {
  ...listScreen<LiftsScreen>({
    list: liftList,
    choose: { press: openLift },
    last: [
      TO_PREVIEW,
      SEARCH_KEY,
      ...paging<LiftsScreen>(({ screen }) => screen.lifts.length),
      ...takingBack(),
    ],
  }),
  anew: (screen, { lookBack }) => ({ ...screen, lifts: lookBack.lifts(screen.query) }),
};

function resultList({ screen }: Seen<ResultsScreen>): ChoiceList {
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

/** Rows that a plot takes, and how many must be left for the sessions. */
const PLOT_ROWS = { tall: 14, usual: 9 } as const;
const LEAST_LIST_ROWS = 9;

/** The sessions of a lift, with a plot of its estimate where there is room for one. */
function resultLines(seen: Seen<ResultsScreen>, columns: number, rows: number): readonly Line[] {
  const { screen } = seen;
  const list = resultList(seen);
  const height = rows >= 34 ? PLOT_ROWS.tall : PLOT_ROWS.usual;
  const roomy = rows - height - 2 >= LEAST_LIST_ROWS && columns >= 50;
  const [newest] = screen.results;
  const plotted = roomy && newest ? screen.results.map(({ row }) => row).toReversed() : [];
  const plot = e1rmPlot(plotted, screen.strength, newest?.unit ?? 'kg', {
    width: columns,
    height,
    glyphs: 'braille',
  });
  if (plot.length === 0) return listLines(list, screen.chosen, columns, rows);
  const above = [
    line(`${list.title}: e1RM, ${newest?.unit}`, 'strong'),
    ...plot.map((row) => line(row, 'drawn')),
    line(plotSays(screen.strength), 'quiet'),
    BLANK,
  ];
  const below = listLines({ ...list, title: '' }, screen.chosen, columns, rows - above.length + 2);
  return [...above, ...below.slice(2)];
}

const backToLifts: Act<ResultsScreen> = (acting) => {
  const { query, lift } = acting.screen;
  const lifts = acting.coach.lookBack.lifts(query);
  const chosen = lifts.findIndex((each) => each.lift === lift);
  return show(acting, { kind: 'lifts', lifts, query, chosen: Math.max(0, chosen) });
};

export const RESULTS_SCREEN: ScreenModule<ResultsScreen> = {
  ...listScreen<ResultsScreen>({
    list: resultList,
    last: [
      backBy(backToLifts),
      SEARCH_KEY,
      ...paging<ResultsScreen>(({ screen }) => screen.results.length),
      ...takingBack(),
    ],
  }),
  lines: resultLines,
  anew: resultsAnew,
};

/** What is searched for. */
const searchLines = ({ screen }: Seen<Search>, columns: number): Line[] => [
  ...titled('Search', 'Words of a lift, a program, a day, a note, or a date: 2026-11.', columns),
  line(`> ${screen.typed}_`, 'strong'),
];

const LONGEST_SEARCH = 60;

const typeSearch = (acting: Acting<Search>, typed: string): Outcome =>
  show(acting, { ...acting.screen, typed: typed.slice(0, LONGEST_SEARCH) });

const find: Act<Search> = (acting) => {
  const { back, typed } = acting.screen;
  const query = typed.trim();
  const { lookBack } = acting.coach;
  if (back.kind === 'results') {
    const results = lookBack.results(back.lift, query);
    if (results.length > 0) return show(acting, { ...back, results, query, chosen: 0 });
  }
  return show(acting, { kind: 'lifts', lifts: lookBack.lifts(query), query, chosen: 0 });
};

export const SEARCH_SCREEN: ScreenModule<Search> = {
  keys: [
    backBy<Search>((acting) => show(acting, acting.screen.back), { keys: ['esc'] }),
    {
      keys: ['backspace', 'delete'],
      label: 'rub out',
      press: (acting) => typeSearch(acting, acting.screen.typed.slice(0, -1)),
    },
    { keys: ['enter'], label: 'find', footer: 0, tap: { at: 0 }, press: find },
  ],
  lines: (seen, columns, rows) => windowOf(searchLines(seen, columns), rows, 0),
  spoken: (seen) => searchLines(seen, OPEN).map(textOf),
  otherKey: (acting, key) => {
    const text = textTyped(key);
    return text === null ? ask(acting) : typeSearch(acting, acting.screen.typed + text);
  },
};
