import { type CST, isMap, isScalar, isSeq, type Node, type YAMLMap, type YAMLSeq } from 'yaml';

/** A piece of a text, from one offset up to another, and what takes its place. */
export interface Splice {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** An exercise cut out of its list, as it was written. */
export interface Cut {
  readonly splices: readonly Splice[];
  /** With the comment above it; from its dash on, where the list has dashes. */
  readonly text: string;
  /** Column of its dash; null out of a list in brackets. */
  readonly column: number | null;
  /** Empty lines that set it off. */
  readonly gap: string;
}

/** The exercises of a day where they stand in a text: a list of dashes, or one in brackets. */
export interface ExerciseList {
  readonly cut: (index: number) => Cut;
  /** Puts an exercise behind that of index `after`, or before the first where that is null. */
  readonly put: (after: number | null, what: Cut) => readonly Splice[];
  readonly added: (exercise: { readonly dashed: string; readonly flow: string }) => Cut;
}

export const exerciseList = (text: string, list: YAMLSeq<Node>): ExerciseList =>
  list.flow ? inBrackets(text, list) : ofDashes(text, list);

/** Joins splices into a text; they may touch, but never overlap. */
export const spliced = (text: string, splices: readonly Splice[]): string =>
  splices
    .toSorted((a, b) => b.from - a.from || b.to - a.to)
    .reduce((rest, { from, to, text: put }) => rest.slice(0, from) + put + rest.slice(to), text);

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** The offset behind the line's end. */
function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end + 1;
}

const isBlank = (line: string): boolean => line.trim() === '';
const isComment = (line: string): boolean => /^\s*#/.test(line);
const columnOf = (line: string): number => line.search(/\S/);
/** An entry of the list that was commented out is nobody's comment, and stays where it is. */
const ENTRY_LEFT_OUT = /^\s*#\s*-\s/;

function ofDashes(text: string, list: YAMLSeq<Node>): ExerciseList {
  const token = list.srcToken as CST.BlockSequence;
  const dashes = token.items.flatMap(({ start }) =>
    start.flatMap(({ type, offset }) => (type === 'seq-item-ind' ? [offset] : [])),
  );
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const columnAt = (dash: number) => dash - lineStart(text, dash);
  const column = columnAt(dashes[0] ?? 0);
  /** The offset behind its last line, comments that stand deeper than its dash among them. */
  const endOf = (index: number): number => {
    let end = lineEnd(text, lastOf(list.items[index], text));
    for (;;) {
      const line = text.slice(end, lineEnd(text, end));
      if (!isComment(line) || columnOf(line) <= column || ENTRY_LEFT_OUT.test(line)) return end;
      end += line.length;
    }
  };
  const startOf = (index: number): number =>
    ownComment(text, lineStart(text, dashes[index] ?? 0), index === 0 ? 0 : endOf(index - 1));
  /** Empty lines above it; of the first one, below. */
  const gapOf = (index: number): [from: number, to: number] => {
    if (index === 0) {
      const from = endOf(0);
      let to = from;
      while (to < text.length && isBlank(text.slice(to, lineEnd(text, to)))) to = lineEnd(text, to);
      return [from, dashes.length > 1 ? to : from];
    }
    const to = startOf(index);
    let from = to;
    while (from > 0 && isBlank(text.slice(lineStart(text, from - 1), from)))
      from = lineStart(text, from - 1);
    return [from, to];
  };
  return {
    cut: (index) => {
      const [from, to] = [startOf(index), endOf(index)];
      const [gapFrom, gapTo] = gapOf(index);
      return {
        splices: [{ from: Math.min(from, gapFrom), to: Math.max(to, gapTo), text: '' }],
        text: text.slice(from, to),
        column,
        gap: text.slice(gapFrom, gapTo),
      };
    },
    put: (after, what) => {
      const dashed = what.column === null ? `- ${what.text}${newline}` : what.text;
      const lines = shifted(dashed, column - (what.column ?? 0));
      const at = after === null ? startOf(0) : endOf(after);
      return [{ from: at, to: at, text: after === null ? lines + what.gap : what.gap + lines }];
    },
    added: ({ dashed }) => {
      const first = list.items[0];
      const width = isMap(first) && !first.flow ? (first.range?.[0] ?? 0) - (dashes[0] ?? 0) : 2;
      // Where the dash stands alone on its line the keys are no model for a new one.
      const wide = width > 1 && width < 9 ? width : 2;
      const lines = dashed
        .trimEnd()
        .split('\n')
        .map((line, at) => `${(at === 0 ? '-' : '').padEnd(wide)}${line}`);
      const isSpaced = dashes.some((_, index) => index > 0 && gapOf(index)[0] < gapOf(index)[1]);
      return {
        splices: [],
        text: lines.map((line) => line + newline).join(''),
        column: 0,
        gap: isSpaced ? newline : '',
      };
    },
  };
}

/** Where the comment that belongs to a line begins: right above it, and not above `least`. */
function ownComment(text: string, start: number, least: number): number {
  let top = start;
  while (top > least && isComment(text.slice(lineStart(text, top - 1), top)))
    top = lineStart(text, top - 1);
  let own = top;
  let leftOut: number | null = null;
  for (let at = top; at < start; at = lineEnd(text, at)) {
    const line = text.slice(at, lineEnd(text, at));
    const depth = line.indexOf('#') + 1 + columnOf(line.slice(line.indexOf('#') + 1));
    if (ENTRY_LEFT_OUT.test(line)) leftOut = depth;
    else if (leftOut !== null && depth <= leftOut) leftOut = null;
    if (leftOut !== null) own = lineEnd(text, at);
  }
  return own;
}

function shifted(lines: string, by: number): string {
  if (by === 0) return lines;
  const [less, more] = [new RegExp(`^ {0,${Math.max(0, -by)}}`, 'gm'), ' '.repeat(Math.max(0, by))];
  return by < 0 ? lines.replace(less, '') : lines.replace(/^(?=[^\r\n])/gm, more);
}

/** The offset of its last character, in the deepest of its values. */
function lastOf(node: unknown, text: string): number {
  let end = 0;
  const seen = (each: unknown): void => {
    if ((isMap(each) || isSeq(each)) && !each.flow) {
      for (const item of each.items as unknown[]) {
        const pair = item as { key?: unknown; value?: unknown };
        if (isMap(each)) for (const part of [pair.key, pair.value]) seen(part);
        else seen(item);
      }
      return;
    }
    const range = (each as Node | null)?.range;
    if (range) end = Math.max(end, range[1]);
  };
  seen(node);
  while (end > 0 && isBlank(text.slice(end - 1, end))) end -= 1;
  return Math.max(0, end - 1);
}

function inBrackets(text: string, list: YAMLSeq<Node>): ExerciseList {
  const token = list.srcToken as CST.FlowCollection;
  const spanOf = (index: number): [from: number, to: number] => {
    const { range } = list.items[index] ?? {};
    const anchor = token.items[index]?.start.find(({ type }) => type === 'anchor');
    return [anchor?.offset ?? range?.[0] ?? 0, range?.[1] ?? 0];
  };
  /** The offset of the comma behind it; null where there is none. */
  const commaOf = (index: number): number | null =>
    token.items[index + 1]?.start.find(({ type }) => type === 'comma')?.offset ?? null;
  const indentOf = (from: number): string => text.slice(lineStart(text, from), from);
  /** The offset behind its last line where it has its lines to itself; null where it shares them. */
  const ownLines = (index: number): number | null => {
    const [from, to] = spanOf(index);
    const comma = commaOf(index);
    const end = lineEnd(text, to);
    const behind = text.slice(comma !== null && comma < end ? comma + 1 : to, end);
    const isAlone = isBlank(indentOf(from)) && (isBlank(behind) || isComment(behind));
    return isAlone && (comma ?? 0) < end && end < text.length ? end : null;
  };
  const startOf = (index: number): number => ownComment(text, lineStart(text, spanOf(index)[0]), 0);
  return {
    cut: (index) => {
      const [from, to] = spanOf(index);
      const end = ownLines(index);
      const cut = { text: text.slice(from, to), column: null, gap: '' };
      const comma = commaOf(index);
      if (end !== null) return { ...cut, splices: [{ from: startOf(index), to: end, text: '' }] };
      if (index === 0 && comma !== null) {
        const spaces = /^ */.exec(text.slice(comma + 1))?.[0].length ?? 0;
        return { ...cut, splices: [{ from, to: comma + 1 + spaces, text: '' }] };
      }
      const before = commaOf(index - 1);
      const spaces = / *$/.exec(text.slice(0, from))?.[0].length ?? 0;
      const taken = { from: from - spaces, to, text: '' };
      if (before === null) return { ...cut, splices: [taken] };
      return { ...cut, splices: [{ from: before, to: before + 1, text: '' }, taken] };
    },
    put: (after, { text: put }) => {
      const [from, to] = spanOf(after ?? 0);
      const end = ownLines(after ?? 0);
      const newline = text.includes('\r\n') ? '\r\n' : '\n';
      if (after === null) {
        const at = end === null ? from : startOf(0);
        const tail = end === null ? ', ' : `,${newline}`;
        return [{ from: at, to: at, text: `${end === null ? '' : indentOf(from)}${put}${tail}` }];
      }
      if (end === null) return [{ from: to, to, text: `, ${put}` }];
      const line = `${indentOf(from)}${put}`;
      return commaOf(after) !== null
        ? [{ from: end, to: end, text: `${line},${newline}` }]
        : [
            { from: to, to, text: ',' },
            { from: end, to: end, text: `${line}${newline}` },
          ];
    },
    added: ({ flow }) => ({ splices: [], text: flow.trim(), column: null, gap: '' }),
  };
}

/** Gives a cluster its most sets, behind its lead set. */
export function withMostSets(
  text: string,
  cluster: YAMLMap<unknown, unknown>,
  sets: number,
): readonly Splice[] {
  const pair = cluster.items.find(({ key }) => isScalar(key) && key.value === 'lead');
  const to = (pair?.value as Node | null)?.range?.[1] ?? 0;
  if (cluster.flow) return [{ from: to, to, text: `, most_sets: ${sets}` }];
  const at = lineEnd(text, to);
  const from = (pair?.key as Node | null)?.range?.[0] ?? 0;
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const indent = ' '.repeat(from - lineStart(text, from));
  return [{ from: at, to: at, text: `${indent}most_sets: ${sets}${newline}` }];
}
