import fc from 'fast-check';
import { afterAll, describe, expect, test, vi } from 'vitest';
import type { Files } from '../../src/journal/disk/files.ts';
import { aDay, aJournal } from '../journal/a-journal.ts';
import { type Fault, failingFiles, shortWriting } from '../journal/failing-files.ts';
import { memoryDisk, systemError } from '../journal/memory-files.ts';
import { evening, lostOf } from './evening.ts';
import { gitEvening } from './git-evening.ts';
import { BAD_IMPORTS, BAD_PROGRAMS, type Told, toldOf } from './mutated-files.ts';
import { seededNumbers } from './seeded-numbers.ts';

/** `npm run faults` asks for the long form; the test command takes a part of each sweep. */
const IS_LONG = process.env.MODE === 'faults';
const many = (long: number, short: number): number => (IS_LONG ? long : short);

vi.setConfig({ testTimeout: IS_LONG ? 1_800_000 : 120_000 });

interface Row {
  readonly sweep: string;
  readonly tried: number;
  readonly acknowledged: number;
  readonly lost: number;
}

const rows: Row[] = [];
afterAll(() => {
  if (IS_LONG) console.table(rows);
});

const CODES = ['ENOSPC', 'EIO', 'EROFS', 'EACCES'];
const KINDS = CODES.flatMap((code) => [
  { code, times: 1, halfWritten: false },
  { code, times: 1, halfWritten: true },
  { code, times: 2, halfWritten: true },
  { code, times: Number.POSITIVE_INFINITY, halfWritten: true },
]);

describe('whichever call of the disk fails, nothing that was acknowledged is lost', () => {
  test.each(KINDS)('$code, $times times, half written: $halfWritten', (kind) => {
    let [at, acknowledged] = [1, 0];
    const lost: string[] = [];
    for (let isSpent = true; isSpent; at += 1) {
      const disk = memoryDisk();
      const failing = failingFiles(disk.files, { at, ...kind });
      const done = evening(failing.files);
      acknowledged += done.kept.size;
      lost.push(...lostOf(disk, done), ...lostOf(disk.afterPowerCut(), done));
      isSpent = failing.isSpent();
    }
    rows.push({
      sweep: `call N fails, ${kind.code}, ${kind.times} times${kind.halfWritten ? ', half written' : ''}`,
      tried: at - 1,
      acknowledged,
      lost: lost.length,
    });
    expect(lost).toEqual([]);
    expect(at).toBeGreaterThan(60);
  });

  test('without a fault, everything is acknowledged and stays on disk without power', () => {
    const disk = memoryDisk();
    const done = evening(disk.files);
    expect(done.kept.size).toBe(10);
    expect(lostOf(disk.afterPowerCut(), done)).toEqual([]);
    expect(aJournal(disk.files).history().events()).toHaveLength(10);
  });

  test.each([1, 7, 64])('writes of %i bytes at a time go on until all is written', (most) => {
    const disk = memoryDisk();
    const done = evening(shortWriting(disk.files, most));
    expect(done.kept.size).toBe(10);
    expect(lostOf(disk.afterPowerCut(), done)).toEqual([]);
  });

  test('a disk that writes nothing is a full one', () => {
    const files = { ...memoryDisk().files, write: () => 0 };
    expect(() => aJournal(files).beginSession(aDay())).toThrow('the disk is full');
  });

  test('whatever fails, in whatever mixture', () => {
    let [tried, acknowledged] = [0, 0];
    const fault: fc.Arbitrary<Fault> = fc.record({
      at: fc.integer({ min: 1, max: 120 }),
      times: fc.integer({ min: 1, max: 5 }),
      code: fc.constantFrom(...CODES),
      halfWritten: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(fault, { minLength: 1, maxLength: 4 }), (faults) => {
        const disk = memoryDisk();
        const files = faults.reduce((each, one) => failingFiles(each, one).files, disk.files);
        const done = evening(files);
        tried += 1;
        acknowledged += done.kept.size;
        expect(lostOf(disk, done)).toEqual([]);
        expect(lostOf(disk.afterPowerCut(), done)).toEqual([]);
      }),
      { numRuns: many(5_000, 200) },
    );
    rows.push({ sweep: 'up to four faults at once', tried, acknowledged, lost: 0 });
  });
});

describe('the power goes', () => {
  /** Every call from the N-th on fails: the process is gone with the power. */
  const until = (files: Files, last: number): Files => {
    let calls = 0;
    return new Proxy(files, {
      get: (of, name) => {
        const act = of[name as keyof Files] as (...args: unknown[]) => unknown;
        return (...args: unknown[]) => {
          calls += 1;
          if (calls > last) throw systemError('EIO');
          return act(...args);
        };
      },
    });
  };

  test('after any call, with whatever was not flushed on the disk or not', () => {
    let [tried, acknowledged] = [0, 0];
    const lost: string[] = [];
    for (let last = 1; last < 400; last += 1) {
      const disk = memoryDisk();
      const done = evening(until(disk.files, last));
      acknowledged += done.kept.size;
      for (let seed = 1; seed <= many(60, 4); seed += 1) {
        tried += 1;
        lost.push(...lostOf(disk.afterPowerCut(seededNumbers(last * 1000 + seed)), done));
      }
      if (done.kept.size === 10) break;
    }
    rows.push({
      sweep: 'power cut after call N, reordered',
      tried,
      acknowledged,
      lost: lost.length,
    });
    expect(lost).toEqual([]);
    expect(tried).toBeGreaterThan(200);
  });
});

test('two devices by git, with a session running: every set that was saved is there in the end', () => {
  const count = many(200, 4);
  let [acknowledged, lost] = [0, 0];
  for (let seed = 1; seed <= count; seed += 1) {
    const done = gitEvening(seededNumbers(seed));
    acknowledged += done.saved;
    lost += done.lost.length;
    expect(done.lost, `seed ${seed}`).toEqual([]);
  }
  rows.push({ sweep: 'two devices by git, a session running', tried: count, acknowledged, lost });
});

describe('whatever a file holds', () => {
  test.each([
    ['imports', BAD_IMPORTS],
    ['programs', BAD_PROGRAMS],
  ] as const)('%s are read or refused, soon and without raw codes', async (name, kind) => {
    const count = many(10_000, 60);
    const told: Told[] = [];
    for (let seed = 1; seed <= count; seed += 1) told.push(await toldOf(kind, seededNumbers(seed)));
    const bad = told.filter(
      ({ status, ms, hasRawCode }) => ![0, 1, 2].includes(status) || ms > 2000 || hasRawCode,
    );
    rows.push({
      sweep: `mutated ${name}: wrong exit, over 2 s or a raw code`,
      tried: count,
      acknowledged: told.filter(({ status }) => status === 0).length,
      lost: bad.length,
    });
    expect(bad).toEqual([]);
  });
});
