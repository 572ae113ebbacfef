import stringWidth from 'string-width';

/** Latin letters, punctuation, arrows, box and block drawing: one column each, no joining. */
const PLAIN = /^[\u0020-\u007e\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2190-\u21ff\u2500-\u25ff]*$/;

/** Colours and other styles: they take no column. */
const STYLES = /\u001b\[[\d;]*m/g;

/**
 * Columns that a text takes on the screen. Nearly all texts here are plain, and measuring one by
 * graphemes costs more than drawing it.
 */
export function columnsOf(text: string): number {
  if (PLAIN.test(text)) return text.length;
  const shown = text.replace(STYLES, '');
  return PLAIN.test(shown) ? shown.length : stringWidth(text);
}
