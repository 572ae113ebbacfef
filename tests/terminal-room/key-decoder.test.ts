import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decodeKeys,
  ESCAPE_WAIT_MS,
  type Key,
  type Pending,
} from '../../src/terminal/key-decoder.ts';

/** Feeds chunks that come without a pause, then silence. */
function keysOf(...chunks: string[]): Key[] {
  const keys: Key[] = [];
  let pending: Pending | null = null;
  for (const chunk of chunks) {
    const decoded = decodeKeys(chunk, pending, 1_000);
    keys.push(...decoded.keys);
    pending = decoded.pending;
  }
  return [...keys, ...decodeKeys('', pending, 10_000).keys];
}

const words = (...chunks: string[]) =>
  keysOf(...chunks).map((key) =>
    key.kind === 'named'
      ? key.name
      : key.kind === 'tap'
        ? `tap ${key.column},${key.row}`
        : key.kind === 'paste'
          ? `paste ${key.text}`
          : key.text,
  );

describe('keys', () => {
  // What terminals send: ECMA-48 and the xterm control sequences document (ctlseqs).
  it.each([
    [' ', ['space']],
    ['\r', ['enter']],
    ['\n', ['enter']],
    ['\t', ['tab']],
    ['\u001b[Z', ['shift-tab']],
    ['\u007f', ['backspace']],
    ['\b', ['backspace']],
    ['\u001b', ['esc']],
    ['\u001b[A\u001b[B\u001b[C\u001b[D', ['up', 'down', 'right', 'left']],
    ['\u001bOA\u001bOB', ['up', 'down']],
    ['\u001b[5~\u001b[6~\u001b[3~', ['page-up', 'page-down', 'delete']],
    ['\u001b[H\u001b[F\u001b[1~\u001b[4~', ['home', 'end', 'home', 'end']],
    ['\u001b[7~\u001b[8~\u001bOH\u001bOF\u001bOM', ['home', 'end', 'home', 'end', 'enter']],
    ['\u001b[2~\u001b[9~\u001b[G', []],
    // C0 and C1 controls type nothing (ECMA-48); what comes after them does.
    ['\u0000\u001f\u0080\u0085\u009f', []],
    ['\u00a0~!', ['\u00a0', '~', '!']],
    // What no sequence begins with begins none: what comes after it is typed.
    ['\u001b[éq', ['é', 'q']],
    ['\u0003\u0015\u001a', ['ctrl-c', 'ctrl-u', 'ctrl-z']],
    [' 5\r', ['space', '5', 'enter']],
    ['né😀', ['n', 'é', '😀']],
    ['\u001b[1;2A', ['up']],
  ])('%j', (bytes, wanted) => expect(words(bytes)).toEqual(wanted));

  it.each([
    ['a press of the left button', '\u001b[<0;12;7M', ['tap 12,7']],
    ['a press of the middle button', '\u001b[<1;120;40M', ['tap 120,40']],
    ['a release', '\u001b[<0;12;7m', []],
    ['the right button', '\u001b[<2;12;7M', []],
    ['the wheel', '\u001b[<64;12;7M\u001b[<65;12;7M', []],
    ['a press outside', '\u001b[<0;0;7M\u001b[<0;12;0M', []],
    ['a drag', '\u001b[<32;12;7M', []],
    ['the old mouse form', '\u001b[M !!x', ['x']],
  ])('%s', (_, bytes, wanted) => expect(words(bytes)).toEqual(wanted));

  it.each([
    ['a paste', '\u001b[200~two\r\nlines \u001b[31m\u001b[201~q', ['paste two lines  [31m', 'q']],
    ['a paste that never ends', '\u001b[200~half', ['paste half']],
  ])('%s', (_, bytes, wanted) => expect(words(bytes)).toEqual(wanted));

  // https://sw.kovidgoyal.net/kitty/keyboard-protocol/
  it.each([
    ['escape', '\u001b[27u', ['esc']],
    ['a letter', '\u001b[113;1u', ['q']],
    ['its release', '\u001b[113;1:3u', []],
    ['control-c', '\u001b[99;5u', ['ctrl-c']],
    // One more than the sum of: shift 1, alt 2, control 4, super 8, hyper 16, meta 32, caps lock 64, num lock 128.
    ['a letter with alt', '\u001b[113;3u', []],
    ['a super key', '\u001b[113;9u', []],
    ['a hyper key', '\u001b[113;17u', []],
    ['a meta key', '\u001b[113;33u', []],
    ['a letter with num lock on', '\u001b[113;129u', ['q']],
    ['a letter with shift and both locks on', '\u001b[113;194;81u', ['Q']],
    ['control-c with both locks on', '\u001b[99;197u', ['ctrl-c']],
    ['shift-tab with num lock on', '\u001b[9;130u', ['shift-tab']],
    ['the first code that types', '\u001b[33u', ['!']],
    ['a shift key by itself', '\u001b[57441u', []],
    ['the first of the keys that type nothing', '\u001b[57344u', []],
    ['the last Hangul syllable', '\u001b[55203u', ['힣']],
    ['the last letter before the halves of pairs', '\u001b[55295u', ['\ud7ff']],
    ['half a pair', '\u001b[55296u\u001b[57343u', []],
    ['a code that types nothing', '\u001b[28u', []],
    ['no code at all', '\u001b[xu', ['u']],
    ['tab', '\u001b[9u', ['tab']],
    ['enter', '\u001b[13u', ['enter']],
    ['enter of the pad', '\u001b[57414u', ['enter']],
    ['space', '\u001b[32u', ['space']],
    ['backspace', '\u001b[127u', ['backspace']],
    ['tab with shift', '\u001b[9;2u', ['shift-tab']],
    ['a letter with shift', '\u001b[113;2;81u', ['Q']],
    ['a letter with caps lock on', '\u001b[113;65u', ['q']],
    ['control-u', '\u001b[117;5u', ['ctrl-u']],
    ['control-z', '\u001b[122;5u', ['ctrl-z']],
  ])('kitty: %s', (_, bytes, wanted) => expect(words(bytes)).toEqual(wanted));

  it('kitty: a key that is held is told from one that is pressed again', () => {
    const kinds = keysOf('\u001b[113;1:1u', '\u001b[113;1:2u', '\u001b[1;1:2A', '\u001b[1;1:1A');
    expect(kinds).toEqual([
      { kind: 'text', text: 'q' },
      { kind: 'text', text: 'q', repeat: true },
      { kind: 'named', name: 'up', repeat: true },
      { kind: 'named', name: 'up' },
    ]);
  });

  it('a reply that never ends is waited for up to 4096 characters; then keys are keys again', () => {
    const reply = (length: number) => '\u001b]'.padEnd(length, 'x');
    expect(decodeKeys(reply(4096), null, 0)).toMatchObject({ keys: [], pending: { since: 0 } });
    expect(decodeKeys(reply(4097), null, 0)).toEqual({ keys: [], pending: null });
    expect(words(reply(4000), 'x'.repeat(97), 'q')).toEqual(['q']);
  });

  it.each([
    ['focus in and out', '\u001b[I\u001b[O'],
    ['device attributes', '\u001b[?62;22c'],
    ['a colour reply', '\u001b]11;rgb:0000/0000/0000\u001b\\'],
    ['a colour reply ended by bell', '\u001b]11;rgb:0000/0000/0000\u0007'],
    ['a sequence cut off', '\u001b[12;'],
    ['function keys', '\u001b[15~\u001bOP'],
  ])('nothing: %s', (_, bytes) => expect(words(bytes)).toEqual([]));
});

describe('an escape', () => {
  it('waits for the rest of a sequence, and is a key when none comes', () => {
    const first = decodeKeys('\u001b', null, 0);
    expect(first.keys).toEqual([]);
    expect(decodeKeys('', first.pending, ESCAPE_WAIT_MS - 1).keys).toEqual([]);
    expect(decodeKeys('', first.pending, ESCAPE_WAIT_MS).keys).toEqual([
      { kind: 'named', name: 'esc' },
    ]);
    expect(decodeKeys('[A', first.pending, ESCAPE_WAIT_MS - 1).keys).toEqual([
      { kind: 'named', name: 'up' },
    ]);
  });

  it('waits for a twentieth of a second, the end of a paste for two seconds after its last piece', () => {
    const isOver = (text: string, ms: number) =>
      decodeKeys('', { text, since: 0 }, ms).pending === null;
    expect([isOver('\u001b', 49), isOver('\u001b', 50)]).toEqual([false, true]);
    const paste = '\u001b[200~half';
    expect([isOver(paste, 1_999), isOver(paste, 2_000)]).toEqual([false, true]);
  });

  it('that begins a sequence of more than 64 characters begins none', () => {
    const sequence = (length: number) => decodeKeys('\u001b['.padEnd(length, '1'), null, 0).pending;
    expect([sequence(64)?.text.length, sequence(65)]).toEqual([64, null]);
  });

  it('of a reply is over where the reply is: the next key counts', () => {
    expect(words('\u001b]11;rgb:0000/0000/0000\u0007q\u001b]11;x\u001b\\w')).toEqual(['q', 'w']);
  });

  it('that comes together with a key is two keys', () => {
    expect(words('\u001bq')).toEqual(['esc', 'q']);
  });
});

it('the same bytes give the same keys however they are split', () => {
  const piece = fc.constantFrom(
    ...[' ', '5', '\r', 'q', '\u001b', '\u001b[A', '\u001bOB', '\u001b[<0;5;5M', '\u001b[<0;5;5m'],
    ...[
      '\u001b[200~ab\u001b[201~',
      '\u001b[27u',
      '\u001b[113;1:3u',
      '\u001b[3~',
      '\u001b[I',
      '\u0003',
    ],
    ...['é', '😀', '\u001b]2;x\u0007', '\u001b[?62c', '\u001b[M !!', '[', 'O', ';'],
  );
  fc.assert(
    fc.property(
      fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join('')),
      fc.array(fc.nat(40), { maxLength: 8 }),
      (bytes, cuts) => {
        const at = [...new Set(cuts)].filter((cut) => cut < bytes.length).sort((a, b) => a - b);
        // A stream decoded as UTF-8 never splits a character, so neither do the cuts.
        const fair = at.filter((cut) => !/[\ud800-\udbff]/.test(bytes[cut - 1] ?? ''));
        const chunks = [...fair, bytes.length].map((end, i) => bytes.slice(fair[i - 1] ?? 0, end));
        expect(keysOf(...chunks)).toEqual(keysOf(bytes));
      },
    ),
    { numRuns: 1_000 },
  );
});

it('never fails and never swallows what comes after silence', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (noise) => {
      const decoded = decodeKeys(noise, null, 0);
      const flushed = decodeKeys('', decoded.pending, 10_000);
      expect(flushed.pending).toBeNull();
      expect(decodeKeys('q', flushed.pending, 20_000).keys).toEqual([{ kind: 'text', text: 'q' }]);
    }),
    { numRuns: 500 },
  );
});
