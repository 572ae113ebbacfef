import { describe, expect, test } from 'vitest';
import { type Lock, lockFor } from '../../src/journal/disk/lock.ts';
import { Refusal } from '../../src/text/problem.ts';
import { kilograms } from '../../src/training/mass.ts';
import { aDay, aDevice, aJournal, DATA, handClock } from './a-journal.ts';
import { failingFiles } from './failing-files.ts';
import { memoryDisk, systemError } from './memory-files.ts';

/** Two processes of one machine that both run. */
function two() {
  const started = new Map([
    [1, 'a'],
    [2, 'b'],
  ]);
  const startOf = (pid: number) => started.get(pid) ?? null;
  const [one, other] = [1, 2].map((pid) => aDevice({ pid, startOf }));
  if (!one || !other) throw new Error('There are two.');
  return { one, other, started };
}

const aMinuteOn = (disk: ReturnType<typeof memoryDisk>) => () => disk.now + 60_000;

const lock = (disk: ReturnType<typeof memoryDisk>, device: ReturnType<typeof aDevice>) =>
  lockFor(disk.files, '/state', DATA, device, aMinuteOn(disk));

/** Refused with a sentence is not held. */
function attempt(each: Lock): boolean {
  try {
    return each.take();
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

describe('one process at a time', () => {
  test('has the lock, until it gives it back', () => {
    const [{ one, other }, disk] = [two(), memoryDisk()];
    const [first, second] = [lock(disk, one), lock(disk, other)];
    expect([first.take(), second.take(), first.take()]).toEqual([true, false, true]);
    expect(() => second.demand()).toThrow(
      `Another holdfast is at work on ${DATA} (process 1). Go on there, or end it first.`,
    );
    first.release();
    expect([second.take(), first.take()]).toEqual([true, false]);
  });

  test('loses it by ending, however it ended', () => {
    const [{ one, other, started }, disk] = [two(), memoryDisk()];
    lock(disk, one).take();
    started.delete(1);
    expect(lock(disk, other).take()).toBe(true);
  });

  test('loses it to a later process that was given the same number', () => {
    const [{ one, other, started }, disk] = [two(), memoryDisk()];
    lock(disk, one).take();
    started.set(1, 'another start');
    expect(lock(disk, other).take()).toBe(true);
  });

  test('loses it when the machine was started again', () => {
    const [{ one, other }, disk] = [two(), memoryDisk()];
    lock(disk, one).take();
    expect(lock(disk, { ...other, boot: 'boot-2' }).take()).toBe(true);
  });

  test('an empty lock that a power cut left is nobody’s', () => {
    const [{ one, other }, disk] = [two(), memoryDisk()];
    const first = lock(disk, one);
    first.take();
    const [path = ''] = disk.paths();
    disk.put(path, new Uint8Array());
    expect(lock(disk, other).take()).toBe(true);
  });

  test('whatever fails while a lock is taken, two never have it', () => {
    for (let at = 1, isSpent = true; isSpent; at += 1) {
      const [{ one, other, started }, disk] = [two(), memoryDisk()];
      lockFor(disk.files, '/state', DATA, aDevice({ pid: 3 }), aMinuteOn(disk)).take();
      started.delete(3);
      const failing = failingFiles(disk.files, { at, times: 2, code: 'EIO', halfWritten: true });
      const first = lockFor(failing.files, '/state', DATA, one, aMinuteOn(disk));
      const second = lock(disk, other);
      const held = [first, second].filter(attempt);
      expect(held.length).toBeLessThan(2);
      for (const each of held) each.release();
      // Nothing that the fault left behind stands in the way of the next try.
      started.delete(2);
      const tries = [1, 2, 3].map(() => attempt(first));
      expect(tries.at(-1)).toBe(true);
      isSpent = failing.isSpent();
    }
  });

  test('a stale lock that another took while it was looked at is left to them', () => {
    const [{ one, other, started }, disk] = [two(), memoryDisk()];
    const left = aDevice({ pid: 3 });
    lockFor(disk.files, '/state', DATA, left, aMinuteOn(disk)).take();
    started.delete(3);
    let isTaken = false;
    const link = (from: string, to: string) => {
      if (to.endsWith('.stale') && !isTaken) isTaken = lock(disk, other).take();
      disk.files.link(from, to);
    };
    const late = lockFor({ ...disk.files, link }, '/state', DATA, one, aMinuteOn(disk));
    expect([late.take(), isTaken]).toEqual([false, true]);
    expect(late.take()).toBe(false);
  });

  test('is taken to run where it cannot be seen: in another container or sandbox', () => {
    const [{ one, other, started }, disk] = [two(), memoryDisk()];
    lock(disk, one).take();
    started.delete(1);
    const inside = lock(disk, { ...other, space: 'pid:[2]' });
    expect(inside.take()).toBe(false);
    expect(() => inside.demand()).toThrow(/another container or sandbox.*delete \/state\/.*\.lock/);
    expect(lock(disk, { ...other, space: 'pid:[2]', boot: 'boot-2' }).take()).toBe(true);
  });

  test.each(['EPERM', 'ENOTSUP', 'ENOSYS'])(
    'has the lock also on a disk without links (%s)',
    (code) => {
      const [{ one, other, started }, disk] = [two(), memoryDisk()];
      const link = () => {
        throw systemError(code);
      };
      const files = { ...disk.files, link };
      const [first, second] = [one, other].map((device) =>
        lockFor(files, '/state', DATA, device, aMinuteOn(disk)),
      ) as [Lock, Lock];
      expect([first.take(), second.take()]).toEqual([true, false]);
      first.release();
      expect([second.take(), first.take()]).toEqual([true, false]);
      started.delete(2);
      expect(first.take()).toBe(true);
      expect(disk.paths()).toEqual([expect.stringMatching(/^\/state\/[0-9a-f]+\.lock$/)]);
    },
  );

  test('a lock that is being made without links is not taken for an empty one', () => {
    const [{ one, other }, disk] = [two(), memoryDisk()];
    const first = lock(disk, one);
    first.take();
    const [path = ''] = disk.paths();
    disk.put(path, new Uint8Array());
    const { modified } = disk.files.about(path) ?? { modified: 0 };
    const after = (ms: number) =>
      lockFor(disk.files, '/state', DATA, other, () => modified + ms).take();
    // Five seconds either way, for clocks are set back, too.
    expect([0, 4999, -4999].map(after)).toEqual([false, false, false]);
    expect(after(5000)).toBe(true);
  });

  test('the lock is not in the data, where it would travel', () => {
    const disk = memoryDisk();
    aJournal(disk.files).beginSession(aDay());
    const locks = disk.paths().filter((path) => path.endsWith('.lock'));
    expect(locks).toEqual([expect.stringMatching(/^\/home\/lifter\/state\//)]);
  });
});

describe('while another process trains', () => {
  test('no session is begun, but a weigh-in is kept, in a file of its own', () => {
    const [{ one, other }, disk, clock] = [two(), memoryDisk(), handClock()];
    const training = aJournal(disk.files, { clock, device: one });
    training.record({ type: 'weighed', mass: kilograms(80), on: '2026-11-24' });
    training.beginSession(aDay());
    const second = aJournal(disk.files, { clock, device: other });
    expect(() => second.beginSession(aDay())).toThrow('Another holdfast is at work');
    second.record({ type: 'weighed', mass: kilograms(81), on: '2026-11-25' });
    training.record({ type: 'weighed', mass: kilograms(82), on: '2026-11-26' });
    const files = disk.paths().filter((path) => path.endsWith('.jsonl'));
    expect(files).toHaveLength(3);
    expect(aJournal(disk.files, { clock }).history().weighIns).toHaveLength(3);
  });
});

describe('the id of a device', () => {
  const idOf = (disk: ReturnType<typeof memoryDisk>) =>
    disk
      .paths()
      .filter((path) => path.endsWith('.jsonl'))
      .map((path) => path.split('-').at(-2));

  test('stays in the settings folder, and is renewed on another machine', () => {
    const [disk, clock] = [memoryDisk(), handClock()];
    const begin = (machine: string) =>
      aJournal(disk.files, { clock, device: aDevice({ machine }) }).beginSession(aDay());
    begin('machine-1');
    begin('machine-1');
    expect(new Set(idOf(disk)).size).toBe(1);
    begin('machine-2');
    expect(new Set(idOf(disk)).size).toBe(2);
  });

  test('that cannot be kept or read is a fresh one', () => {
    const disk = memoryDisk();
    disk.put('/home/lifter/config/device.json', new TextEncoder().encode('{"id":"../x"'));
    aJournal(disk.files).beginSession(aDay());
    expect(idOf(disk)).toEqual([expect.stringMatching(/^[0-9a-z]{6}$/)]);
  });
});
