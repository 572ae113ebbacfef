import { describe, expect, test } from 'vitest';
import { crc32, tableCrc32 } from '../../src/journal/disk/crc32.ts';
import { decodeFile, decodeLine, encodeLine } from '../../src/journal/lines.ts';
import type { JournalEvent } from '../../src/journal/records.ts';
import { fold } from '../../src/session/apply.ts';
import { lift, play, prescription, setId, straight } from '../session/a-session.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const text = (given: Uint8Array) => new TextDecoder().decode(given);

/** Events of a session of at least sixty, with notes in other alphabets. */
function sixtyEvents(): readonly JournalEvent[] {
  const session = play(prescription(straight()));
  while (session.events().length < 60) {
    if (session.stage().kind === 'all-done') session.send('add-set');
    lift(session).wait(200);
    session.send({ do: 'amend', of: setId(session, 0, 0), numbers: { count: 5 } });
    session.send({ do: 'note', exercise: 0, text: 'Grip müde, 肩 ok – "fine"\n\u2028' });
  }
  return session.events().slice(0, 60);
}

const events = sixtyEvents();
const lines = events.map((event) => encodeLine(event, crc32));
const file = bytes(lines.map(text).join(''));

test('the check value is the CRC-32 of zlib and the ISO', () => {
  // Published check value of CRC-32/ISO-HDLC over "123456789": CBF43926 (CRC catalogue; memory).
  expect(crc32(bytes('123456789'))).toBe(0xcbf43926);
  expect(tableCrc32(bytes('123456789'))).toBe(0xcbf43926);
  for (const line of lines) expect(tableCrc32(line)).toBe(crc32(line));
});

test('a line is eight hex digits, a space, the JSON text and a newline', () => {
  for (const [index, line] of lines.entries()) {
    const [, check, json = ''] = /^([0-9a-f]{8}) (\{.*\})\n$/.exec(text(line)) ?? [];
    expect(Number.parseInt(check ?? '', 16)).toBe(crc32(bytes(json)));
    expect(JSON.parse(json)).toMatchObject({ v: 1, seq: index, id: `file:${index}`, zone: 60 });
  }
});

test('what was written is read back', () => {
  const { lines: read, tail, wholeBytes } = decodeFile(file, crc32);
  expect(read).toEqual(events.map((event) => ({ kind: 'event', event })));
  expect([tail, wholeBytes]).toEqual([0, file.length]);
});

test('the same line is read the same whatever the order of its keys', () => {
  for (const [at, line] of lines.entries()) {
    const entries = Object.entries(JSON.parse(text(line).slice(9)) as Record<string, unknown>);
    const json = JSON.stringify(Object.fromEntries(entries.toReversed()));
    const check = crc32(bytes(json)).toString(16).padStart(8, '0');
    expect(decodeLine(bytes(`${check} ${json}`), crc32)).toEqual({
      kind: 'event',
      event: events[at],
    });
  }
});

test('an empty line, also the first of a file, costs no other', () => {
  for (const at of [0, 1, 30]) {
    const withEmpty = lines.map(text).toSpliced(at, 0, '\n').join('');
    const { lines: read, tail } = decodeFile(bytes(withEmpty), crc32);
    expect(read.filter(({ kind }) => kind === 'event')).toHaveLength(60);
    expect(tail).toBe(0);
  }
});

test('a carriage return before the newline, from a checkout, is ignored', () => {
  const { lines: read, tail } = decodeFile(bytes(text(file).replaceAll('\n', '\r\n')), crc32);
  expect(read).toEqual(events.map((event) => ({ kind: 'event', event })));
  expect(tail).toBe(0);
});

test('cut at any byte, every whole line is read and the rest is a tail', () => {
  const ends: number[] = [];
  for (const { length } of lines) ends.push((ends.at(-1) ?? 0) + length);
  for (let size = 0; size <= file.length; size += 1) {
    const { lines: read, tail, wholeBytes } = decodeFile(file.subarray(0, size), crc32);
    const whole = ends.filter((end) => end <= size).length;
    if (read.length !== whole || wholeBytes !== (ends[whole - 1] ?? 0)) {
      throw new Error(`Cut at byte ${size}: ${read.length} lines of ${whole}.`);
    }
    if (tail !== (wholeBytes === size ? 0 : 1)) throw new Error(`Cut at ${size}: tail ${tail}.`);
  }
  for (const whole of ends.keys()) expect(fold(events.slice(0, whole + 1) as never)).not.toBeNull();
}, 30_000);

test('no single flipped bit is taken for an event', () => {
  let flips = 0;
  for (const line of lines) {
    const content = line.slice(0, -1);
    for (let bit = 0; bit < content.length * 8; bit += 1) {
      const at = bit >> 3;
      content[at] = (content[at] ?? 0) ^ (1 << (bit & 7));
      if (decodeLine(content, crc32).kind !== 'damaged') throw new Error(`Bit ${bit} went by.`);
      content[at] = (content[at] ?? 0) ^ (1 << (bit & 7));
      flips += 1;
    }
  }
  expect(flips).toBeGreaterThan(60_000);
});

test('a newline that is flipped loses the two lines it parted, and no other', () => {
  const broken = file.slice();
  broken[lines[0]!.length + lines[1]!.length - 1] = 0x0b;
  const { lines: read } = decodeFile(broken, crc32);
  expect(read.map(({ kind }) => kind)).toEqual([
    'event',
    'damaged',
    ...Array.from({ length: 57 }, () => 'event'),
  ]);
});

describe('a line that is whole but not of this version is kept apart', () => {
  const written = (value: object) => {
    const json = JSON.stringify(value);
    return bytes(`${crc32(bytes(json)).toString(16).padStart(8, '0')} ${json}`);
  };
  const known = { v: 1, seq: 3, id: 'x:3', at: { wall: 1, up: null, boot: null }, zone: 0 };
  test.each([
    ['a newer version', { ...known, v: 2, type: 'paused' }, 'newer'],
    ['an unknown kind', { ...known, type: 'heart-rate', of: 'x:1' }, 'newer'],
    ['a kind named like a thing of every object', { ...known, type: 'constructor' }, 'newer'],
    ['a known kind of another shape', { ...known, type: 'set-added' }, 'newer'],
    ['a known kind with more in it', { ...known, type: 'paused', why: 'a child' }, 'event'],
    ['a number that is not its own', { ...known, seq: 4, type: 'paused' }, 'damaged'],
    ['no id', { v: 1, seq: 3, type: 'paused' }, 'damaged'],
  ])('%s', (_, value, kind) => {
    expect(decodeLine(written(value), crc32).kind).toBe(kind);
  });

  test('with the ids that it speaks of', () => {
    const line = written({ ...known, type: 'heart-rate', of: 'x:1', session: 's' });
    expect(decodeLine(line, crc32)).toEqual({ kind: 'newer', id: 'x:3', names: ['x:1', 's'] });
  });
});

test('bytes that are no UTF-8, and a mark of byte order, are damage even where the check value is right', () => {
  const [line] = lines;
  const json = line!.subarray(9, -1);
  const withBytes = (...parts: readonly Uint8Array[]) => {
    const given = Buffer.concat(parts);
    const check = crc32(given).toString(16).padStart(8, '0');
    return decodeLine(Buffer.concat([bytes(`${check} `), given]), crc32).kind;
  };
  const note = bytes(
    '{"v":1,"seq":0,"id":"file:0","at":{"wall":0,"up":null,"boot":null},"zone":0,',
  );
  const [before, after] = [bytes('"type":"note-written","exercise":null,"text":"'), bytes('"}')];
  expect(withBytes(json)).toBe('event');
  expect(withBytes(note, before, bytes('ü'), after)).toBe('event');
  expect(withBytes(note, before, Uint8Array.of(0xff), after)).toBe('damaged');
  expect(withBytes(Uint8Array.of(0xef, 0xbb, 0xbf), json)).toBe('damaged');
});
