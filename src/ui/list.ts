import { columnsOf } from '../text/columns.ts';
import { BLANK, indented, type Line, paragraph, span, textOf } from './line.ts';
import { type Acting, ask, type Effect, type Outcome, type Seen, show, tell } from './outcome.ts';
import { titled } from './page.ts';
import { HELP, type KeyRow, type ScreenModule } from './screen.ts';
import type { Screen } from './ui-state.ts';
import { scrollTo, windowOf } from './window.ts';

/** One row of a list to choose from. */
export interface Choice {
  readonly label: string;
  /** A quieter word behind it. */
  readonly detail?: string;
  readonly effects: readonly Effect[];
  /** Shown at once, where no effect has to be carried out first; worked out when it is chosen. */
  readonly to?: Screen | (() => Screen);
}

export interface ChoiceList {
  readonly title: string;
  readonly words: string | null;
  readonly choices: readonly Choice[];
}

/** A screen with a row that is chosen. */
type Chosen = Extract<Screen, { chosen: number }>;

/** How many rows there are, and how they are shown. */
export interface ListParts<S extends Chosen> {
  readonly list: (seen: Seen<S>) => ChoiceList;
  /** What the main key does where it is not what the chosen row says. */
  readonly choose?: Partial<KeyRow<S>>;
  /** Keys that the help names first; last, the way out before all. */
  readonly first?: readonly KeyRow<S>[];
  readonly last: readonly KeyRow<S>[];
}

/** A screen that is a list to choose from. */
export function listScreen<S extends Chosen>(parts: ListParts<S>): ScreenModule<S> {
  const { list, first = [], last } = parts;
  const choose: KeyRow<S> = {
    keys: ['space', 'enter'],
    label: 'choose',
    footer: 0,
    tap: { at: 0 },
    press: (acting) => chosenOf(acting, list(acting)),
    ...parts.choose,
  };
  return {
    keys: [...first, choose, ...moving<S>((seen) => list(seen).choices.length), HELP, ...last],
    lines: (seen, columns, rows) => listLines(list(seen), seen.screen.chosen, columns, rows),
    spoken: (seen) => listTexts(list(seen), seen.screen.chosen),
  };
}

function chosenOf(acting: Acting<Chosen>, { choices }: ChoiceList): Outcome {
  const choice = choices[acting.screen.chosen];
  if (!choice) return tell(acting, 'There is nothing to choose.');
  if (!choice.to) return ask(acting, ...choice.effects);
  return show(acting, typeof choice.to === 'function' ? choice.to() : choice.to);
}

/** The keys that move the mark over `count` rows, around the ends. */
export function moving<S extends Chosen>(count: (seen: Seen<S>) => number): KeyRow<S>[] {
  const by = (step: 1 | -1) => (acting: Acting<S>) => {
    const rows = count(acting);
    if (rows === 0) return ask(acting);
    const chosen = (acting.screen.chosen + step + rows) % rows;
    return show(acting, { ...acting.screen, chosen });
  };
  const row = (key: 'up' | 'down', at: number, says: string, step: 1 | -1): KeyRow<S> => ({
    keys: [key],
    label: key,
    footer: 1,
    pair: 'up, down',
    tap: { at, says },
    press: by(step),
  });
  return [row('up', 2, '↑', -1), row('down', 3, '↓', 1)];
}

/** The keys that move the mark by a screen of rows, and not around the ends. */
export function paging<S extends Chosen>(count: (seen: Seen<S>) => number): KeyRow<S>[] {
  const by = (step: 1 | -1) => (acting: Acting<S>) => {
    const rows = count(acting);
    if (rows === 0) return ask(acting);
    const far = step * Math.max(1, acting.model.size.rows - 8);
    const chosen = Math.min(rows - 1, Math.max(0, acting.screen.chosen + far));
    return show(acting, { ...acting.screen, chosen });
  };
  return [
    { keys: ['page-up'], label: 'page up', press: by(-1) },
    { keys: ['page-down'], label: 'page down', press: by(1) },
  ];
}

/** Something to choose from, the chosen row always in sight. */
export function listLines(
  { title, words, choices }: ChoiceList,
  chosen: number,
  columns: number,
  rows: number,
): Line[] {
  const head = titled(title, words, columns);
  const blocks = choices.map(({ label, detail = '' }, index) => {
    const mark = index === chosen ? '▸ ' : '  ';
    const role = index === chosen ? 'chosen' : 'plain';
    const oneLine = columnsOf(label) + columnsOf(detail) + 5 <= columns;
    const [first = BLANK, ...more] = paragraph(label, columns - 2, role);
    const name = [[span(mark, 'drawn'), ...first], ...more.map((one) => indented(one, 2))];
    if (detail === '') return name;
    return oneLine
      ? [[span(mark, 'drawn'), ...first, span(`   ${detail}`)]]
      : [...name, ...paragraph(detail, columns - 4).map((one) => indented(one, 4))];
  });
  const before = blocks.slice(0, chosen).reduce((sum, one) => sum + one.length, head.length);
  const end = before + (blocks[chosen]?.length ?? 0);
  return windowOf([...head, ...blocks.flat()], rows, scrollTo(before, end, rows));
}

export function listTexts(
  { title, words, choices }: ChoiceList,
  chosen: number,
): readonly string[] {
  const rows = choices.map(({ label, detail }, index) => {
    const said = detail ? `${label}, ${detail}` : label;
    return index === chosen ? `Chosen: ${said}` : said;
  });
  return [title, ...(words ? [words] : []), ...rows];
}

/** Lines with a mark, as they are said: what was set apart by blanks is set apart by a full stop. */
export const markedTexts = (lines: readonly Line[]): readonly string[] =>
  lines.map((line) => textOf(line).replace('▸ ', 'Chosen: ').trim().replace(/ {2,}/g, '. '));
