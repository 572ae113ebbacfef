import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crc32 } from '../../src/journal/disk/crc32.ts';
import type { Files } from '../../src/journal/disk/files.ts';
import { encodeLine } from '../../src/journal/lines.ts';
import type { JournalEvent } from '../../src/journal/records.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { prescription, straight } from '../session/a-session.ts';
import {
  A_DAY,
  aDay,
  aDevice,
  aJournal,
  allOf,
  DATA,
  handClock,
  lift,
  send,
  train,
} from './a-journal.ts';
import { type MemoryDisk, memoryDisk } from './memory-files.ts';

/** How many random histories are tried: `HISTORIES=2000` for a long run. */
const RUNS = Number(process.env.HISTORIES ?? 60);

const CACHE = '/home/lifter/cache';

/** A lifter with two devices; files of one that the other lacks can be copied over. */
function twoDisks() {
  const clock = handClock();
  const disks: readonly [MemoryDisk, MemoryDisk] = [memoryDisk(), memoryDisk()];
  const devices = [{}, { name: 'tablet', machine: 'machine-2', boot: 'boot-2' }];
  const wait = (ms: number): void => {
    clock.wait(ms);
    for (const disk of disks) disk.now = clock.read().wall;
  };
  wait(0);
  const open = (at: number, cache = CACHE, files: Files = disks[at]!.files) =>
    aJournal(files, { clock, cache, device: aDevice(devices[at]) });
  return { clock, disks, wait, open };
}

type Lifter = ReturnType<typeof twoDisks>;

const told = (lifter: Lifter, at: number, cache?: string) =>
  allOf(lifter.open(at, cache).history());

/** That of every start, and that of the years before. */
const indexPaths = (disk: MemoryDisk): string[] =>
  disk.paths().filter((path) => path.startsWith(CACHE));

/** The same disk, which tells what is read from it. */
function watched(disk: MemoryDisk) {
  const read: string[] = [];
  const files: Files = {
    ...disk.files,
    read: (path) => {
      read.push(path);
      return disk.files.read(path);
    },
  };
  return { read, files };
}

const journalPaths = (disk: MemoryDisk): string[] =>
  disk.paths().filter((path) => path.endsWith('.jsonl'));

/** Ten sessions and weigh-ins, nine days apart. */
function threeMonths(lifter = twoDisks()): Lifter {
  for (let session = 0; session < 10; session += 1) {
    train(lifter.open(0), lifter.clock);
    lifter.open(0).record({ type: 'weighed', mass: kilograms(80 - session), on: '2026-11-25' });
    lifter.wait(9 * A_DAY);
  }
  return lifter;
}

/** Thirty sessions, of which the first ten are older than what every start reads. */
function threeSeasons(): Lifter {
  const lifter = twoDisks();
  for (let season = 0; season < 3; season += 1) {
    threeMonths(lifter);
    lifter.wait(800 * A_DAY);
  }
  return lifter;
}

describe('once there is an index', () => {
  test('only files of this month are read, and in its first days those of the last', () => {
    const lifter = threeMonths();
    const [disk] = lifter.disks;
    const monthsRead = () => {
      lifter.open(0).history();
      const { read, files } = watched(disk);
      const { sessions, weighIns } = lifter.open(0, CACHE, files).history();
      expect([sessions.length, weighIns.length]).toEqual([10, 10]);
      const months = read
        .filter((path) => path.endsWith('.jsonl'))
        .map((path) => path.split('/').at(-2));
      return [...new Set(months)].sort();
    };
    // From 25 November on in steps of nine days it is 23 February now.
    expect(monthsRead()).toEqual(['2027-02']);
    lifter.wait(7 * A_DAY);
    expect(monthsRead()).toEqual(['2027-02']);
    lifter.wait(5 * A_DAY);
    expect(monthsRead()).toEqual(['2027-02']);
    lifter.wait(A_DAY);
    expect(monthsRead()).toEqual([]);
  });

  test('a file whose time lies ahead does not have all of them read each time', () => {
    const lifter = threeMonths();
    const [disk] = lifter.disks;
    const path = journalPaths(disk)[0] ?? '';
    disk.now += 400 * A_DAY;
    disk.put(path, disk.bytes(path));
    lifter.wait(0);
    lifter.open(0).history();
    const { read, files } = watched(disk);
    expect(lifter.open(0, CACHE, files).history().lately.sessions).toHaveLength(10);
    expect(read).not.toContain(path);
    expect(told(lifter, 0)).toEqual(told(lifter, 0, ''));
  });

  test('what is only in the events is still there', () => {
    const lifter = threeMonths();
    lifter.open(0).history();
    expect(told(lifter, 0)).toEqual(told(lifter, 0, ''));
  });

  test('a set of long ago can be corrected, and the correction taken back', () => {
    const lifter = threeMonths();
    const counts = () =>
      lifter
        .open(0)
        .history()
        .results[0]?.sets.map(({ count }) => count);
    expect(counts()).toEqual([6, 6, 5]);
    const of = lifter.open(0).history().closed()[0]?.exercises[0]?.done[0]?.id ?? '';
    const { id } = lifter.open(0).record({ type: 'set-amended', of, count: 11 });
    expect(counts()).toEqual([11, 6, 5]);
    lifter.open(0).record({ type: 'undone', of: id });
    expect(counts()).toEqual([6, 6, 5]);
    // Months later both are old themselves.
    lifter.wait(100 * A_DAY);
    lifter.open(0).record({ type: 'set-amended', of, count: 12 });
    expect(counts()).toEqual([12, 6, 5]);
  });

  test('it may be deleted, cut short, or have any byte flipped', () => {
    const lifter = threeMonths();
    const [disk] = lifter.disks;
    const right = told(lifter, 0);
    const paths = indexPaths(disk);
    expect(paths).toHaveLength(2);
    for (const path of paths) {
      const whole = disk.bytes(path).slice();
      const outcomes = (bytes: Uint8Array) => {
        disk.put(path, bytes);
        expect(told(lifter, 0)).toEqual(right);
        expect(disk.bytes(path)).toEqual(whole);
      };
      disk.files.remove(path);
      expect(told(lifter, 0)).toEqual(right);
      expect(disk.bytes(path)).toEqual(whole);
      outcomes(new Uint8Array());
      outcomes(whole.slice(0, whole.length / 2));
      fc.assert(
        fc.property(fc.nat(whole.length * 8 - 1), (bit) => {
          const flipped = whole.slice();
          flipped[bit >> 3] = (flipped[bit >> 3] ?? 0) ^ (1 << (bit & 7));
          outcomes(flipped);
        }),
        { numRuns: 60 },
      );
    }
  });

  test('neither of its files is taken for the other', () => {
    const lifter = threeSeasons();
    const [disk] = lifter.disks;
    const right = told(lifter, 0);
    const paths = indexPaths(disk);
    const others = paths.map((path) => disk.bytes(path).slice()).reverse();
    for (const [at, path] of paths.entries()) {
      disk.put(path, others[at]!);
      expect(told(lifter, 0)).toEqual(right);
    }
  });

  test('what is older than two years is read when it is asked for', () => {
    const lifter = threeSeasons();
    const [disk] = lifter.disks;
    lifter.open(0).history();
    const { read, files } = watched(disk);
    const history = lifter.open(0, CACHE, files).history();
    expect(history.lately.sessions).toHaveLength(20);
    expect(read.filter((path) => path.endsWith('.older'))).toEqual([]);
    expect(history.sessions).toHaveLength(30);
    expect(read.filter((path) => path.endsWith('.older'))).toHaveLength(1);
    expect(read.filter((path) => path.endsWith('.jsonl'))).toEqual([]);
  });

  test('one session of a clock that was far ahead pushes no other out of what is lately', () => {
    const lifter = threeMonths();
    const lately = () => lifter.open(0).history().lately.sessions.length;
    threeMonths(lifter);
    threeMonths(lifter);
    expect(lately()).toBe(30);
    lifter.wait(3000 * A_DAY);
    train(lifter.open(0), lifter.clock);
    lifter.wait(-3000 * A_DAY);
    expect(lately()).toBe(31);
  });

  test('a file that went bad on the disk by itself is still found', () => {
    const lifter = threeMonths();
    const [disk] = lifter.disks;
    lifter.open(0).history();
    const path = journalPaths(disk)[0] ?? '';
    const written = disk.files.about(path)?.modified ?? 0;
    const bytes = disk.bytes(path).slice();
    bytes[100] = 0x21;
    disk.now = written;
    disk.put(path, bytes);
    lifter.wait(0);
    const journal = lifter.open(0);
    expect(journal.problems()).toEqual([]);
    journal.readAnew();
    expect(journal.problems()[0]?.what).toContain('damaged line');
    expect(lifter.open(0).problems()).toEqual(journal.problems());
  });

  test('of another device it is not used', () => {
    const lifter = threeMonths();
    const [laptop, tablet] = lifter.disks;
    lifter.open(0).history();
    laptop.copyInto(DATA, tablet, DATA);
    laptop.copyInto(CACHE, tablet, CACHE);
    lifter.wait(A_DAY);
    expect(told(lifter, 1)).toEqual(told(lifter, 1, ''));
  });

  test('where it cannot be written, all files are read each time', () => {
    const lifter = threeMonths();
    const [disk] = lifter.disks;
    const files: Files = {
      ...disk.files,
      create: () => {
        throw Object.assign(new Error('EROFS'), { code: 'EROFS' });
      },
    };
    expect(allOf(lifter.open(0, CACHE, files).history())).toEqual(told(lifter, 0, ''));
  });
});

/** Whatever may be done to a journal over years; `pick` chooses what it is done to. */
const ACTS: Readonly<Record<string, (lifter: Lifter, at: number, pick: number) => void>> = {
  train: ({ open, clock }, at) => void train(open(at), clock),
  'train much': ({ open, clock }, at) => void train(open(at), clock, aDay()),
  weigh: ({ open }, at, pick) =>
    void open(at).record({ type: 'weighed', mass: kilograms(70 + (pick % 20)), on: '2026-11-25' }),
  decide: ({ open }, at) =>
    void open(at).record({
      type: 'decided',
      rule: 'pain-asked',
      answer: 'go-on',
      subject: 'squat',
    }),
  'set gear': ({ open }, at, pick) =>
    void open(at).record({ type: 'gear-set', gear: defaultGear(pick % 2 ? 'kg' : 'lb') }),
  'begin and leave': ({ open, clock }, at) => {
    const journal = open(at);
    const writer = journal.beginSession(prescription(straight()));
    lift(writer, clock);
    writer.close();
    journal.release();
  },
  'go on and close': ({ open, clock }, at, pick) => {
    const journal = open(at);
    const session = chosen(journal.history().open, pick)?.session;
    if (session === undefined) return;
    const writer = journal.resumeSession(session);
    send(writer, pick % 3 ? { do: 'close', how: 'as-it-is' } : 'discard', clock);
    writer.close();
    journal.release();
  },
  amend: ({ open }, at, pick) => {
    const of = chosen(open(at).history().closed(), pick)?.exercises[0]?.done[0]?.id;
    if (of) open(at).record({ type: 'set-amended', of, count: pick % 20 });
  },
  'delete a set': ({ open }, at, pick) => {
    const of = chosen(open(at).history().closed(), pick)?.exercises[0]?.done[1]?.id;
    if (of) open(at).record({ type: 'deleted', of });
  },
  'delete a session': ({ open }, at, pick) => {
    const of = chosen(open(at).history().sessions, pick)?.session;
    if (of) open(at).record({ type: 'deleted', of });
  },
  'delete a weigh-in': ({ open }, at, pick) => {
    const of = chosen(open(at).history().weighIns, pick)?.id;
    if (of) open(at).record({ type: 'deleted', of });
  },
  undo: ({ open }, at, pick) => {
    const of = chosen(open(at).history().events().filter(canBeUndone), pick)?.id;
    if (of) open(at).record({ type: 'undone', of });
  },
  'write what only a newer version knows': ({ disks, open }, at, pick) => {
    const disk = disks[at]!;
    const named = chosen(open(at).history().events(), pick)?.id ?? 'x:0';
    const event = { type: 'tempo-changed', of: named, id: `newer${pick}:0`, at: 0, zone: 0 };
    disk.put(`${monthFolder(disk, pick)}/newer-${pick}.jsonl`, encodeLine(event as never, crc32));
  },
  'copy a file into another month': ({ disks }, at, pick) => {
    const disk = disks[at]!;
    const path = chosen(journalPaths(disk), pick);
    if (path) disk.put(`${monthFolder(disk, pick >> 3)}/copy-${pick}.jsonl`, disk.bytes(path));
  },
  'damage a file': ({ disks }, at, pick) => {
    const disk = disks[at]!;
    const path = chosen(journalPaths(disk), pick);
    if (!path) return;
    const bytes = disk.bytes(path).slice();
    bytes[pick % bytes.length] = 0x21;
    disk.put(path, bytes);
  },
  'cut a file short': ({ disks }, at, pick) => {
    const disk = disks[at]!;
    const path = chosen(journalPaths(disk), pick);
    if (path) disk.put(path, disk.bytes(path).slice(0, -(pick % 300) - 1));
  },
  repair: ({ open }, at) => void open(at).repair(),
  synchronise: ({ disks: [one, two] }) => {
    const [there, here] = [new Set(journalPaths(two)), new Set(journalPaths(one))];
    for (const path of here) if (!there.has(path)) two.put(path, one.bytes(path));
    for (const path of there) if (!here.has(path)) one.put(path, two.bytes(path));
  },
  'set the clock back': ({ wait }) => wait(-40 * A_DAY),
  'stay away': ({ wait }, _, pick) => wait((pick % 90) * A_DAY),
  'stay away for years': ({ wait }, _, pick) => wait((pick % 900) * A_DAY),
};

const chosen = <T>(from: readonly T[], pick: number): T | undefined => from[pick % from.length];

const canBeUndone = ({ type }: JournalEvent): boolean =>
  ['set-amended', 'deleted', 'undone', 'weighed', 'decided'].includes(type);

function monthFolder(disk: MemoryDisk, pick: number): string {
  const path = chosen(journalPaths(disk), pick);
  return path ? path.slice(0, path.lastIndexOf('/')) : `${DATA}/journal/2026-11`;
}

const act = fc.record({
  name: fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom('train', 'stay away') },
    { weight: 4, arbitrary: fc.constantFrom(...Object.keys(ACTS)) },
  ),
  at: fc.constantFrom(0, 1),
  pick: fc.nat(10_000),
});

test('with and without an index the history is the same, whatever happens over the years', () => {
  let used = 0;
  fc.assert(
    fc.property(fc.array(act, { minLength: 5, maxLength: 40 }), (acts) => {
      const lifter = twoDisks();
      for (const { name, at, pick } of acts) {
        ACTS[name]?.(lifter, at, pick);
        lifter.wait(2 * A_DAY);
        const right = told(lifter, at, '');
        expect(told(lifter, at)).toEqual(right);
        // Now there is one that fits, where there are old sessions.
        expect(told(lifter, at)).toEqual(right);
        if (indexPaths(lifter.disks[at]!).length > 0) used += 1;
      }
    }),
    { numRuns: RUNS },
  );
  expect(used).toBeGreaterThan(100);
}, 120_000);
