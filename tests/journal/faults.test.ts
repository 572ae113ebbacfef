import { describe, expect, test } from 'vitest';
import type { Files } from '../../src/journal/disk/files.ts';
import { kilograms } from '../../src/training/mass.ts';
import { tried } from '../faults/evening.ts';
import { aDay, aJournal, DATA, handClock, lift, send } from './a-journal.ts';
import { type Fault, failingFiles } from './failing-files.ts';
import { type MemoryDisk, memoryDisk, systemError } from './memory-files.ts';

describe('a session whose write failed', () => {
  /** Calls 1 and 2 look whether the file is as it was left; 3 writes, 4 syncs. */
  const begun = (fault: Fault) => {
    const [clock, disk] = [handClock(), memoryDisk()];
    let files = disk.files;
    const through = new Proxy(disk.files, { get: (_, name) => files[name as keyof Files] });
    const writer = aJournal(through, { clock }).beginSession(aDay());
    files = failingFiles(disk.files, fault).files;
    return { clock, disk, writer };
  };

  test('is as it was, and takes the same command again', () => {
    const { clock, disk, writer } = begun({ at: 3, times: 1, code: 'ENOSPC', halfWritten: true });
    const before = writer.state();
    expect(() => send(writer, 'start', clock)).toThrow(
      /^Nothing was saved in .*: the disk is full\. Free some space/,
    );
    expect(writer.state()).toBe(before);
    send(writer, 'start', clock);
    expect(aJournal(disk.files).history().open[0]?.state).toEqual(writer.state());
  });

  test('does not say saved after a sync that failed, and cuts off what may stand there', () => {
    // The sync fails, and then the cutting back of a line that is longer than the next one.
    const { clock, disk, writer } = begun({ at: 4, times: 2, code: 'EIO', halfWritten: false });
    const note = { do: 'note', exercise: null, text: 'long '.repeat(200) } as const;
    expect(() => send(writer, note, clock)).toThrow('the disk reports an error of its own');
    send(writer, 'start', clock);
    clock.wait(20_000);
    send(writer, 'put-down', clock);
    const { unreadable, open } = aJournal(disk.files).history();
    expect(unreadable).toEqual([]);
    expect(open[0]?.state).toEqual(writer.state());
  });
});

describe('a file that could not be made', () => {
  /** Calls fail where the journal is; locks and settings are on a disk that is well. */
  const failing = (
    disk: MemoryDisk,
    ...names: readonly ('write' | 'sync' | 'syncFolder' | 'remove')[]
  ) => {
    const ofJournal = new Set<number>();
    const isJournal = (place: string | number) =>
      typeof place === 'string' ? place.includes('/journal') : ofJournal.has(place);
    const guarded = names.map((name) => {
      const act = disk.files[name] as (place: string | number, ...rest: unknown[]) => unknown;
      return [
        name,
        (place: string | number, ...rest: unknown[]) => {
          if (isJournal(place)) throw systemError('EIO');
          return act(place, ...rest);
        },
      ];
    });
    const create = (path: string) => {
      const file = disk.files.create(path);
      if (isJournal(path)) ofJournal.add(file);
      return file;
    };
    return { ...disk.files, create, ...Object.fromEntries(guarded) } as Files;
  };

  test('leaves no session behind that the lifter never saw begin', () => {
    const disk = memoryDisk();
    for (const name of ['sync', 'syncFolder', 'write'] as const) {
      expect(() => aJournal(failing(disk, name)).beginSession(aDay())).toThrow('Nothing was saved');
    }
    expect(disk.paths().filter((path) => path.includes('/journal/'))).toEqual([]);
  });

  test('nor removed, is on disk with its name before anything behind it counts', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const weighed = { type: 'weighed', mass: kilograms(80), on: '2026-11-25' } as const;
    const broken = aJournal(failing(disk, 'syncFolder', 'remove'), { clock });
    expect(() => broken.record(weighed)).toThrow('Nothing was saved');
    const { id } = aJournal(disk.files, { clock }).record(weighed);
    const kept = aJournal(disk.afterPowerCut().files, { clock }).history();
    expect(kept.events().map((event) => event.id)).toContain(id);
  });
});

describe('a file cut short by a crash', () => {
  const torn = (cut: number) => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const writer = aJournal(disk.files, { clock }).beginSession(aDay());
    lift(writer, clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    const bytes = disk.bytes(path);
    disk.put(path, bytes.slice(0, bytes.length - cut));
    return { clock, disk, path, bytes, session: writer.session };
  };

  test('is reported, read up to its last whole line, and not touched by reading', () => {
    const { clock, disk, path, bytes } = torn(5);
    const { open, unreadable } = aJournal(disk.files, { clock }).history();
    expect(open[0]?.state.stage.kind).toBe('lifting');
    expect(unreadable).toMatchObject([{ kind: 'tail' }]);
    expect(disk.bytes(path)).toHaveLength(bytes.length - 5);
  });

  test('is cut back when the session goes on, and what was cut off is kept beside it', () => {
    const { clock, disk, path, bytes, session } = torn(5);
    const writer = aJournal(disk.files, { clock }).resumeSession(session);
    send(writer, 'put-down', clock);
    const kept = disk.paths().find((each) => each.startsWith(`${path}.cut-`)) ?? '';
    const whole = bytes.lastIndexOf(0x0a, bytes.length - 2) + 1;
    expect(disk.bytes(kept)).toEqual(bytes.slice(whole, bytes.length - 5));
    const { open, unreadable } = aJournal(disk.files, { clock }).history();
    expect(unreadable).toEqual([]);
    expect(open[0]?.state).toEqual(writer.state());
  });

  test('is repaired on request, which says so', () => {
    const { clock, disk } = torn(1);
    const journal = aJournal(disk.files, { clock });
    expect(journal.repair()).toEqual([expect.stringContaining('the half-written end was cut off')]);
    expect(journal.repair()).toEqual([]);
    expect(journal.problems()).toEqual([]);
  });

  test('goes on wherever a fault meets the repair', () => {
    for (let at = 1, isSpent = true; isSpent; at += 1) {
      const { clock, disk, session } = torn(5);
      const failing = failingFiles(disk.files, { at, times: 1, code: 'EIO', halfWritten: true });
      tried(() => void aJournal(failing.files, { clock }).resumeSession(session));
      const writer = aJournal(disk.files, { clock }).resumeSession(session);
      send(writer, 'put-down', clock);
      writer.close();
      const journal = aJournal(disk.files, { clock });
      journal.repair();
      const { open, unreadable } = journal.history();
      expect([open[0]?.state, unreadable]).toEqual([writer.state(), []]);
      isSpent = failing.isSpent();
    }
  });

  test('of another device is never cut back, and reported only when it has had time to arrive', () => {
    const { clock, disk, bytes } = torn(5);
    const other = memoryDisk();
    other.now = clock.read().wall;
    disk.copyInto(DATA, other, DATA);
    const path = other.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    const journal = aJournal(other.files, { clock });
    expect(journal.problems()).toEqual([]);
    clock.wait(61_000);
    journal.reload();
    expect(journal.problems()).toHaveLength(1);
    // To a clock that was set back it is of days ahead, not of just now.
    clock.wait(-40 * 86_400_000);
    journal.reload();
    expect(journal.problems()).toHaveLength(1);
    expect(journal.repair()).toEqual([]);
    expect(other.bytes(path)).toEqual(bytes.slice(0, -5));
  });
});
