import { columnsOf } from '../../text/columns.ts';
import { bindingsOf, labelOf, shownKey } from '../keymap.ts';
import { BLANK, indented, type Line, line, paragraph, span } from '../line.ts';
import type { ChoiceList } from '../outcome.ts';
import type { Phase } from '../phase.ts';
import type { Model } from '../ui-state.ts';
import { scrollTo, windowOf } from '../window.ts';
import { titled } from './pages.ts';

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

/** The keys of here: what each does, or why it does nothing now. */
export function helpLines(model: Model, phase: Phase | null, columns: number): Line[] {
  const rows = bindingsOf(model.ui.screen.kind).map((binding) => {
    const may = binding.when(model, phase);
    const keys =
      binding.keys.length > 4
        ? `${binding.keys[0]}–${binding.keys[9]}`
        : binding.keys.map(shownKey).join(' ');
    return { keys, label: labelOf(binding, model, phase), reason: may === true ? null : may };
  });
  const width = Math.min(18, Math.max(...rows.map(({ keys }) => keys.length)) + 2);
  const shown = (keys: string, label: string, works: boolean): Line[] => {
    const [first = BLANK, ...more] = paragraph(label, columns - width);
    const key = span(keys.padEnd(width), works ? 'strong' : 'plain');
    return [[key, ...first], ...more.map((one) => indented(one, width))];
  };
  const works = rows.filter(({ reason }) => reason === null);
  const waits = rows.filter(({ reason }) => reason !== null);
  return [
    line('The keys of here', 'strong'),
    BLANK,
    ...works.flatMap(({ keys, label }) => shown(keys, label, true)),
    ...(waits.length > 0 ? [BLANK, line('Not now', 'strong'), BLANK] : []),
    ...waits.flatMap(({ keys, label, reason }) => shown(keys, `${label}: ${reason}`, false)),
  ];
}
