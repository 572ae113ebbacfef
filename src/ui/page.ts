import type { Coach } from '../lifter/coach.ts';
import { SPOKEN_WIDTH } from '../report/table.ts';
import { safeText } from '../text/safe-text.ts';
import { BLANK, type Line, line, paragraph, span, textOf } from './line.ts';
import type { Model } from './model.ts';
import { type Acting, type Outcome, type Seen, show } from './outcome.ts';
import { HELP, type KeyRow, type ScreenModule } from './screen.ts';
import type { Screen } from './ui-state.ts';
import { marginOf, TARGET_ROWS, windowOf } from './window.ts';

/** A screen that is read by scrolling. */
type Scrolled = Extract<Screen, { scroll: number }>;

type Contents<S extends Scrolled> = (seen: Seen<S>, columns: number) => readonly Line[];

export interface PageParts<S extends Scrolled> {
  /** All of its lines, however many. */
  readonly all: Contents<S>;
  /** Keys that the help names first; last, the way out before all. */
  readonly first?: readonly KeyRow<S>[];
  readonly last: readonly KeyRow<S>[];
  /** No boxes to turn it with, where its own keys take them all. */
  readonly unturned?: true;
  /** Says of the last of its lines that they never scroll away: how many they are. */
  readonly pinned?: (seen: Seen<S>, columns: number) => number;
}

/** A screen that is a page to read. */
export function pageScreen<S extends Scrolled>(parts: PageParts<S>): ScreenModule<S> {
  const { all, first = [], last, unturned, pinned = () => 0 } = parts;
  const row = (key: 'up' | 'down', at: number, says: string, by: 1 | -1): KeyRow<S> => ({
    keys: [key, `page-${key}`],
    label: key,
    footer: 5,
    pair: 'up, down',
    ...(unturned ? {} : { tap: { at, says } }),
    press: (acting) => scrolled(acting, all, by),
  });
  return {
    keys: [...first, row('up', 2, '↑', -1), row('down', 3, '↓', 1), HELP, ...last],
    lines: (seen, columns, rows) => {
      const lines = all(seen, columns);
      const fixed = pinned(seen, columns);
      const body = lines.slice(0, lines.length - fixed);
      return [
        ...windowOf(body, Math.min(body.length, rows - fixed), seen.screen.scroll),
        ...lines.slice(lines.length - fixed),
        ...Array<Line>(Math.max(0, rows - lines.length)).fill(BLANK),
      ];
    },
    spoken: (seen) => all(seen, OPEN).map(textOf).map(withoutBars),
  };
}

function scrolled<S extends Scrolled>(acting: Acting<S>, all: Contents<S>, by: 1 | -1): Outcome {
  const { screen, model, name } = acting;
  const step = name.startsWith('page') ? Math.max(1, model.size.rows - 6) : 1;
  const scroll = Math.min(mostScroll(acting, all), Math.max(0, screen.scroll + by * step));
  return show(acting, { ...screen, scroll });
}

/** Reads a page on, and at its end does `then`: one key is enough. */
export const readOn =
  <S extends Scrolled>(all: Contents<S>, then: (acting: Acting<S>) => Outcome) =>
  (acting: Acting<S>): Outcome =>
    isAtEnd(acting, all) ? then(acting) : scrolled({ ...acting, name: 'page-down' }, all, 1);

/** Is its last line in sight? */
export const isAtEnd = <S extends Scrolled>(seen: Seen<S>, all: Contents<S>): boolean =>
  seen.screen.scroll >= mostScroll(seen, all);

/** How far a page can be scrolled before its last line is in sight. */
function mostScroll<S extends Scrolled>(seen: Seen<S>, all: Contents<S>): number {
  const { columns, rows } = seen.model.size;
  const inner = columns - 2 * marginOf(columns);
  const banner = bannerLines(seen.coach, {}, inner).length;
  return Math.max(0, all(seen, inner).length - (rows - footRows(seen.model) - banner));
}

/** Rows at the foot of the screen: boxes for taps, or keys. */
export const footRows = (
  { choices, size }: Pick<Model, 'choices' | 'size'>,
  { atTheBar }: Pick<ScreenModule, 'atTheBar'> = {},
): number => (choices.taps ? TARGET_ROWS : atTheBar && size.rows < 24 ? 1 : 2);

/** Heading of a page, and a line under it. */
export const titled = (title: string, words: string | null, columns: number): Line[] => [
  [span(title, 'strong')],
  ...(words ? [BLANK, ...paragraph(words, columns)] : []),
  BLANK,
];

/** Wide enough that nothing is broken into lines: a screen reader wants whole sentences. */
export const OPEN = SPOKEN_WIDTH;

/** The number behind a bar says all of it. */
const withoutBars = (text: string): string => text.replace(/[█▌░│]+ */g, ' ');

/** A sentence about a full disk, with its folder, still fits; more would push the set off the screen. */
const MOST_ROWS = 5;

const SIGN = '» ';

/** What the last key led to, where it is a problem or why nothing happened. */
export const messageLines = (message: string, columns: number): Line[] =>
  paragraph(message, columns - SIGN.length, 'alert')
    .slice(0, MOST_ROWS)
    .map((one, row) => [row === 0 ? span(SIGN, 'sign') : span(' '.repeat(SIGN.length)), ...one]);

/** Below this width the session needs the rows. */
const NARROW = 60;

/** What stands above a screen: whole where it may and there is room, else in one line. */
export function bannerLines(
  { banner }: Pick<Coach, 'banner'>,
  { wholeBanner }: Pick<ScreenModule, 'wholeBanner'>,
  columns: number,
): Line[] {
  if (banner === null) return [];
  if (!wholeBanner) return [line(banner.name, 'alert')];
  return columns < NARROW
    ? [line(banner.short, 'alert')]
    : paragraph(safeText(banner.whole), columns, 'alert');
}
