import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';
import { isPlain, segmenter } from './graphemes.ts';

/** Colours and other styles: they take no column. */
const STYLES = /\u001b\[[\d;]*m/g;

/**
 * Columns that a text takes on the screen. Nearly all texts here are plain, and measuring one by
 * graphemes costs more than drawing it.
 */
export function columnsOf(text: string): number {
  if (isPlain(text)) return text.length;
  const shown = text.replace(STYLES, '');
  return isPlain(shown) ? shown.length : stringWidth(text);
}

/** `text` cut to at most `columns`, the last of them `…` where something was cut. */
export function cutTo(text: string, columns: number): string {
  if (columnsOf(text) <= columns) return text;
  if (columns < 1) return '';
  let kept = '';
  for (const { segment } of segmenter.segment(text)) {
    if (columnsOf(kept + segment) > columns - 1) break;
    kept += segment;
  }
  return `${kept}…`;
}

/**
 * `text` broken into lines of at most `columns`, at spaces where there are any; lines after the
 * first start with `indent`. No line for a text without words.
 */
export function wrapped(text: string, columns: number, indent = ''): string[] {
  const words = text.split(/\s+/).filter(Boolean).join(' ');
  const [first] = broken(words, columns);
  if (first === undefined) return [];
  const rest = words.slice(first.length).trimStart();
  return [first, ...broken(rest, columns - columnsOf(indent)).map((each) => `${indent}${each}`)];
}

function broken(words: string, columns: number): string[] {
  if (words === '') return [];
  if (columnsOf(words) <= columns) return [words];
  return wrapAnsi(words, Math.max(1, columns), { hard: true }).split('\n');
}
