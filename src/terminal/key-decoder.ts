export type NamedKey =
  | 'space'
  | 'enter'
  | 'esc'
  | 'tab'
  | 'shift-tab'
  | 'backspace'
  | 'delete'
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'home'
  | 'end'
  | 'page-up'
  | 'page-down'
  | 'ctrl-c'
  | 'ctrl-d'
  | 'ctrl-l'
  | 'ctrl-u'
  | 'ctrl-z';

/** One thing that the lifter did at the keyboard or on the screen. */
export type Key =
  | { readonly kind: 'text'; readonly text: string; readonly repeat?: true }
  /** `repeat`: the terminal says that the key was held, not pressed again. */
  | { readonly kind: 'named'; readonly name: NamedKey; readonly repeat?: true }
  /** A press on the screen; both count from 1 at the top left. */
  | { readonly kind: 'tap'; readonly column: number; readonly row: number }
  /** Pasted text, without control characters. */
  | { readonly kind: 'paste'; readonly text: string };

/** How long a lone escape may be the start of a sequence that a slow line has not finished. */
export const ESCAPE_WAIT_MS = 50;

/** How long a paste may pause before it counts as over, should its end get lost. */
const PASTE_WAIT_MS = 2_000;

/** Longest unfinished sequence that is waited for; past it the bytes are noise. */
const LONGEST_SEQUENCE = 64;

/** Bytes that are not keys yet. */
export interface Pending {
  readonly text: string;
  /** Epoch ms at which the first of them came. */
  readonly since: number;
}

export interface Decoded {
  readonly keys: readonly Key[];
  readonly pending: Pending | null;
}

const ESCAPE = '\u001b';
const PASTE_START = '\u001b[200~';
const PASTE_END = '\u001b[201~';

const CONTROLS: Readonly<Record<string, NamedKey>> = {
  ' ': 'space',
  '\r': 'enter',
  '\n': 'enter',
  '\t': 'tab',
  '\u0003': 'ctrl-c',
  '\u0004': 'ctrl-d',
  '\u0008': 'backspace',
  '\u000c': 'ctrl-l',
  '\u0015': 'ctrl-u',
  '\u001a': 'ctrl-z',
  '\u007f': 'backspace',
};

/** Final letters of CSI and SS3 sequences. */
const LETTERS: Readonly<Record<string, NamedKey>> = {
  A: 'up',
  B: 'down',
  C: 'right',
  D: 'left',
  F: 'end',
  H: 'home',
  M: 'enter',
  Z: 'shift-tab',
};

const TILDES: Readonly<Record<string, NamedKey>> = {
  1: 'home',
  3: 'delete',
  4: 'end',
  5: 'page-up',
  6: 'page-down',
  7: 'home',
  8: 'end',
};

/** Code points that the kitty protocol reports as `CSI number u`. */
const CODES: Readonly<Record<string, NamedKey>> = {
  9: 'tab',
  13: 'enter',
  27: 'esc',
  32: 'space',
  127: 'backspace',
  57414: 'enter',
};

/** The same of letters, with the control key. */
const WITH_CTRL: Readonly<Record<string, NamedKey>> = {
  99: 'ctrl-c',
  117: 'ctrl-u',
  122: 'ctrl-z',
};

const CSI = /^\u001b\[([\x30-\x3f]*)[\x20-\x2f]*([\x40-\x7e])/;
const UNFINISHED = /^\u001b(?:$|\[[\x20-\x3f]*$|O$|\[M[\s\S]{0,2}$)/;
const STRING_REPLY = /^\u001b[\]P_^X](?:(?!\u001b\\|\u0007)[\s\S])*(\u001b\\|\u0007)?/;

/**
 * Turns what came from the terminal into keys. However the same bytes are split into chunks, the
 * same keys come out. A lone escape becomes a key once {@link ESCAPE_WAIT_MS} have passed without
 * more, so call again with an empty chunk while something is pending.
 */
export function decodeKeys(chunk: string, pending: Pending | null, now: number): Decoded {
  const keys: Key[] = [];
  const since = pending && chunk === '' ? pending.since : now;
  let rest = (pending?.text ?? '') + chunk;
  while (rest !== '') {
    let step = nextKey(rest);
    if (step === 'unfinished') {
      if (now - since < patience(rest)) return { keys, pending: { text: rest, since } };
      step = givenUp(rest);
    }
    if (step.key) keys.push(step.key);
    rest = rest.slice(step.length);
  }
  return { keys, pending: null };
}

const patience = (text: string): number =>
  text.startsWith(PASTE_START) ? PASTE_WAIT_MS : ESCAPE_WAIT_MS;

/** What an unfinished sequence is when its end never came. */
function givenUp(text: string): Step {
  if (text === ESCAPE) return { length: text.length, key: named('esc') };
  if (text.startsWith(PASTE_START)) return pasted(text, text.length, text.length);
  return noise(text);
}

interface Step {
  readonly length: number;
  /** Null for what is no key of ours: replies, releases, wheels, unknown sequences. */
  readonly key: Key | null;
}

function nextKey(text: string): Step | 'unfinished' {
  if (text[0] !== ESCAPE) return plainKey(text);
  if (text.startsWith(PASTE_START)) return paste(text);
  if (UNFINISHED.test(text)) return text.length > LONGEST_SEQUENCE ? noise(text) : 'unfinished';
  const reply = STRING_REPLY.exec(text);
  if (reply) {
    if (reply[1]) return { length: reply[0].length, key: null };
    return text.length > 4096 ? noise(text) : 'unfinished';
  }
  if (text.startsWith('\u001b[M')) return { length: 6, key: null };
  const csi = CSI.exec(text);
  if (csi) return { length: csi[0].length, key: csiKey(csi[1] ?? '', csi[2] ?? '') };
  if (text[1] === '[') return { length: 2, key: null };
  if (text[1] === 'O') return { length: 3, key: named(LETTERS[text[2] ?? '']) };
  // A slow line may deliver escape and the next key together; there are no Alt keys here to mistake it for.
  return { length: 1, key: named('esc') };
}

const noise = (text: string): Step => ({ length: text.length, key: null });

function plainKey(text: string): Step {
  const [character = ''] = text;
  const { length } = character;
  const name = CONTROLS[character];
  if (name) return { length, key: named(name) };
  return { length, key: TYPES_NOTHING.test(character) ? null : { kind: 'text', text: character } };
}

/** C0 and C1 controls (ECMA-48). */
const TYPES_NOTHING = /[\u0000-\u001f\u0080-\u009f]/;

function paste(text: string): Step | 'unfinished' {
  const end = text.indexOf(PASTE_END);
  return end === -1 ? 'unfinished' : pasted(text, end, end + PASTE_END.length);
}

function pasted(text: string, end: number, length: number): Step {
  const clean = text.slice(PASTE_START.length, end).replace(/[\u0000-\u001f\u007f-\u009f]+/g, ' ');
  return { length, key: clean === '' ? null : { kind: 'paste', text: clean } };
}

function csiKey(parameters: string, final: string): Key | null {
  if (parameters.startsWith('<')) return tap(parameters, final);
  if (/^[?>=]/.test(parameters)) return null;
  const [first = '', modifiers = '', text = ''] = parameters.split(';');
  const [shift = '', event = ''] = modifiers.split(':');
  if (event === '3') return null;
  const key =
    final === 'u'
      ? kittyKey(first.split(':')[0] ?? '', Number(shift || 1), text)
      : named(final === '~' ? TILDES[first] : final === 'M' ? undefined : LETTERS[final]);
  return key && event === '2' ? { ...key, repeat: true } : key;
}

/** What can be held down. */
type Pressed = Extract<Key, { readonly kind: 'text' | 'named' }>;

/** Behind it come halves of pairs, which are no letters, and from 0xe000 on the keys that type nothing. */
const LAST_LETTER = 0xd7ff;

/** Shift and both locks: with any other, a letter is not typed. */
const WITH_A_LETTER = 0b1100_0001;

/** @param text code points that the key types, where the terminal tells them: the keyboard's layout is its own */
function kittyKey(code: string, modifiers: number, text: string): Pressed | null {
  const bits = modifiers - 1;
  if (bits & 4) return named(WITH_CTRL[code]);
  if (bits & ~WITH_A_LETTER) return null;
  if (code === '9' && bits & 1) return named('shift-tab');
  if (CODES[code]) return named(CODES[code]);
  const point = Number(text.split(':')[0] || code);
  if (!Number.isInteger(point) || point < 33 || point > LAST_LETTER) return null;
  return { kind: 'text', text: String.fromCodePoint(point) };
}

/** SGR mouse report: a press of the left or the middle button is a tap, anything else is not ours. */
function tap(parameters: string, final: string): Key | null {
  const [button, column, row] = parameters.slice(1).split(';').map(Number);
  if (final !== 'M' || (button !== 0 && button !== 1) || !column || !row) return null;
  return { kind: 'tap', column, row };
}

const named = (name: NamedKey | undefined): Pressed | null =>
  name ? { kind: 'named', name } : null;
