// What a terminal may act on: control sequences (CSI), strings for the terminal (OSC, DCS, SOS, PM,
// APC) where they end on the same line, other escapes of two or three characters. A string that
// never ends only loses its beginning: the rest may be words with a wrongly decoded quote in front.
const SEQUENCES =
  /(?:\u001b\[|\u009b)[0-?]*[ -/]*[@-~]?|(?:\u001b[\]PX^_]|[\u009d\u0090\u0098\u009e\u009f])[^\u0007\u001b\u009c\n\r]*(?:\u0007|\u001b\\|\u009c)|\u001b[ -/]*[0-~]?/g;

// Controls (C0, C1, DEL), the marks that turn text around or hide it, line separators, and halves
// of a broken surrogate pair.
const UNSEEN =
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}\p{Cs}]/gu;

/**
 * Text from outside as it may be written to a terminal: without control characters, escape
 * sequences, bidirectional marks or characters that take no room. Tabs and line breaks become
 * spaces; with `lines: 'keep'` line breaks stay, as `\n`.
 */
export function safeText(
  text: string,
  { lines = 'join' }: { lines?: 'join' | 'keep' } = {},
): string {
  return text
    .replace(SEQUENCES, '')
    .split(/\r\n|[\n\r\u0085\u2028\u2029]/)
    .map((line) => line.replaceAll('\t', ' ').replace(UNSEEN, ''))
    .join(lines === 'keep' ? '\n' : ' ');
}

const UNSEEN_BUT_LINES = new RegExp(`(?![\\t\\n\\r])${UNSEEN.source}`, 'gu');

/**
 * A whole output, as it may go to a terminal or into a file: tabs and line breaks as they are, and
 * nothing that acts on a terminal, turns text around or cannot be seen.
 */
export const safeOutput = (text: string): string =>
  text.replace(SEQUENCES, '').replace(UNSEEN_BUT_LINES, '');
