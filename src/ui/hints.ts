import { BLANK, type Line, span, widthOf } from './line.ts';

/** A key and what it does. */
export interface Hint {
  readonly keys: string;
  readonly label: string;
}

/** Hints in exactly `rows` lines; what does not fit is left to the help, whose key always shows. */
export function hintLines(hints: readonly Hint[], columns: number, rows: number): readonly Line[] {
  const help = hints.find(({ label }) => label === 'keys');
  const others = hints.filter((hint) => hint !== help);
  for (let count = others.length; count >= 0; count--) {
    const shown = [...others.slice(0, count), ...(help ? [help] : [])];
    const lines = flowed(shown, columns);
    if (lines.length <= rows) {
      return [...lines, ...Array<Line>(rows - lines.length).fill(BLANK)];
    }
  }
  return Array<Line>(rows).fill(BLANK);
}

function flowed(hints: readonly Hint[], columns: number): readonly Line[] {
  const lines: Line[] = [];
  let current: Line = [];
  for (const { keys, label } of hints) {
    const piece = [span(keys, 'strong'), span(` ${label}`)];
    const longer = current.length === 0 ? piece : [...current, span('   '), ...piece];
    if (widthOf(longer) <= columns) {
      current = longer;
    } else {
      lines.push(current);
      current = piece;
    }
  }
  return current.length === 0 ? lines : [...lines, current];
}
