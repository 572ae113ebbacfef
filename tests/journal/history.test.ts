import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { crc32 } from '../../src/journal/disk/crc32.ts';
import { decodeFile, encodeLine } from '../../src/journal/lines.ts';
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
  NOON,
  send,
  train,
} from './a-journal.ts';
import { memoryDisk } from './memory-files.ts';

const tablet = () => aDevice({ name: 'tablet', machine: 'machine-2', boot: 'boot-2' });

/** One lifter with a laptop and a tablet, whose data folders are copied both ways. */
function twoDevices() {
  const [clock, one, two] = [handClock(), memoryDisk(), memoryDisk()];
  const laptop = () => aJournal(one.files, { clock });
  const other = () => aJournal(two.files, { clock, device: tablet() });
  const sync = () => {
    clock.wait(120_000);
    one.copyInto(DATA, two, DATA);
    two.copyInto(DATA, one, DATA);
  };
  return { clock, one, two, laptop, other, sync };
}

const setIdOf = (journal: ReturnType<typeof aJournal>, set: number): string =>
  journal.history().closed().at(-1)?.exercises[0]?.done[set]?.id ?? 'none';

const countsOf = (journal: ReturnType<typeof aJournal>) =>
  journal.history().results.map(({ sets }) => sets.map(({ count }) => count));

test('a session that was closed is a result, one that is open is not', () => {
  const [clock, { files }] = [handClock(), memoryDisk()];
  const journal = aJournal(files, { clock });
  train(journal, clock);
  clock.wait(A_DAY);
  lift(journal.beginSession(aDay()), clock);
  const { results, sessions, open } = aJournal(files, { clock }).history();
  expect(results.map(({ date, sets }) => [date.toString(), sets.length])).toEqual([
    ['2026-11-25', 3],
  ]);
  expect(sessions.map(({ setsDone, aim }) => [setsDone, aim])).toEqual([[3, 'cut']]);
  expect(open).toMatchObject([{ own: true, foreign: false, state: { device: 'laptop' } }]);
});

test('what the journal has written it knows without reading again', () => {
  const [clock, { files }] = [handClock(), memoryDisk()];
  const journal = aJournal(files, { clock });
  expect(journal.history().results).toEqual([]);
  train(journal, clock);
  journal.record({ type: 'weighed', mass: kilograms(80), on: '2026-11-25' });
  expect(allOf(journal.history())).toEqual(allOf(aJournal(files, { clock }).history()));
});

describe('a session goes on', () => {
  test('on the same device, in the same file', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const first = aJournal(disk.files, { clock }).beginSession(aDay());
    lift(first, clock);
    const paths = disk.paths().filter((path) => path.endsWith('.jsonl'));
    const journal = aJournal(disk.files, { clock });
    const again = journal.resumeSession(first.session);
    expect(again.state()).toEqual(first.state());
    lift(again, clock);
    expect(disk.paths().filter((path) => path.endsWith('.jsonl'))).toEqual(paths);
    expect(journal.history().open[0]?.state).toEqual(again.state());
  });

  test('also where a syncer left a copy of the file beside it', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const first = aJournal(disk.files, { clock }).beginSession(aDay());
    lift(first, clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    disk.put(path.replace(/-[0-9a-z]+-[0-9a-z]+\.jsonl$/, '-00-copy.jsonl'), disk.bytes(path));
    const again = aJournal(disk.files, { clock }).resumeSession(first.session);
    lift(again, clock);
    expect(disk.paths().filter((each) => each.endsWith('.jsonl'))).toHaveLength(2);
    expect(aJournal(disk.files, { clock }).history().open[0]?.state).toEqual(again.state());
  });

  test('on another device, in a file of its own, and back again', () => {
    const { clock, laptop, other, sync, one } = twoDevices();
    const begun = laptop().beginSession(prescription(straight()));
    lift(begun, clock);
    sync();
    expect(other().history().open).toMatchObject([{ own: false, state: { device: 'laptop' } }]);
    const taken = other().resumeSession(begun.session);
    lift(taken, clock);
    sync();
    const back = laptop().resumeSession(begun.session);
    expect(back.state()).toEqual(taken.state());
    lift(back, clock);
    send(back, { do: 'close', how: 'finished' }, clock);
    sync();
    expect(countsOf(laptop())).toEqual([[6, 6, 5]]);
    expect(countsOf(other())).toEqual([[6, 6, 5]]);
    expect(one.paths().filter((path) => path.endsWith('.jsonl'))).toHaveLength(3);
  });

  test('with a clock that is a day behind, what was taken over stays behind what it went on from', () => {
    const { clock, laptop, other, sync } = twoDevices();
    const begun = laptop().beginSession(prescription(straight()));
    lift(begun, clock);
    sync();
    clock.wait(-A_DAY);
    const taken = other().resumeSession(begun.session);
    lift(taken, clock);
    clock.wait(A_DAY);
    sync();
    expect(
      laptop()
        .history()
        .open[0]?.state.exercises[0]?.done.map(({ index }) => index),
    ).toEqual([0, 1]);
  });

  test('only while it is open', () => {
    const [clock, { files }] = [handClock(), memoryDisk()];
    const journal = aJournal(files, { clock });
    const session = train(journal, clock);
    expect(() => journal.resumeSession(session)).toThrow('This session is not open any more.');
    expect(journal.lock()).toBe(true);
  });
});

describe('a set of a closed session', () => {
  test('is corrected, and the correction taken back', () => {
    const [clock, { files }] = [handClock(), memoryDisk()];
    const journal = aJournal(files, { clock });
    train(journal, clock);
    const of = setIdOf(journal, 1);
    const amended = journal.record({ type: 'set-amended', of, count: 8 });
    expect(countsOf(aJournal(files, { clock }))).toEqual([[6, 8, 5]]);
    const undone = journal.record({ type: 'undone', of: amended.id });
    expect(countsOf(aJournal(files, { clock }))).toEqual([[6, 6, 5]]);
    journal.record({ type: 'undone', of: undone.id });
    expect(countsOf(aJournal(files, { clock }))).toEqual([[6, 8, 5]]);
  });

  test('of two corrections the later instant wins, on whatever device it was made', () => {
    const { clock, laptop, other, sync } = twoDevices();
    train(laptop(), clock);
    sync();
    const of = setIdOf(laptop(), 0);
    laptop().record({ type: 'set-amended', of, count: 7, reserve: 0 });
    clock.wait(1000);
    other().record({ type: 'set-amended', of, count: 8 });
    sync();
    for (const journal of [laptop(), other()]) {
      expect(journal.history().results[0]?.sets[0]).toMatchObject({ count: 8, reserve: 0 });
    }
  });

  test.each([
    ['that was known to it, is the later one', true, 3],
    ['that it had not heard of, does not beat it', false, 7],
  ])('a correction from a clock that is behind, of one %s', (_, isKnown, count) => {
    const { clock, laptop, other, sync } = twoDevices();
    const writer = laptop().beginSession(prescription(straight()));
    lift(writer, clock);
    const of = writer.state().exercises[0]?.done[0]?.id ?? '';
    sync();
    send(writer, { do: 'amend', of, numbers: { count: 7 } }, clock);
    send(writer, { do: 'close', how: 'as-it-is' }, clock);
    if (isKnown) sync();
    clock.wait(-A_DAY);
    other().record({ type: 'set-amended', of, count: 3, reserve: 2 });
    clock.wait(A_DAY);
    sync();
    expect(laptop().history().results[0]?.sets[0]).toMatchObject({ count, reserve: 2 });
  });

  test('a clock set back within a file does not turn its order round', () => {
    const [clock, { files }] = [handClock(), memoryDisk()];
    const journal = aJournal(files, { clock });
    train(journal, clock);
    const of = setIdOf(journal, 0);
    journal.record({ type: 'set-amended', of, count: 7 });
    clock.wait(-60_000);
    journal.record({ type: 'set-amended', of, count: 8 });
    expect(countsOf(aJournal(files, { clock }))).toEqual([[8, 6, 5]]);
  });

  test('is deleted, or the session with all that is in it', () => {
    const [clock, { files }] = [handClock(), memoryDisk()];
    const journal = aJournal(files, { clock });
    const session = train(journal, clock);
    const gone = journal.record({ type: 'deleted', of: setIdOf(journal, 1) });
    expect(countsOf(journal)).toEqual([[6, 5]]);
    journal.record({ type: 'undone', of: gone.id });
    expect(countsOf(journal)).toEqual([[6, 6, 5]]);
    journal.record({ type: 'deleted', of: session });
    expect(allOf(journal.history())).toMatchObject({ results: [], sessions: [], closed: [] });
  });
});

describe('beside sessions', () => {
  test('weigh-ins stand by their day, and one can be deleted', () => {
    const [clock, { files }] = [handClock(), memoryDisk()];
    const journal = aJournal(files, { clock });
    const typo = journal.record({ type: 'weighed', mass: kilograms(824), on: '2026-11-25' });
    journal.record({ type: 'weighed', mass: kilograms(82.4), on: '2026-11-25' });
    journal.record({ type: 'weighed', mass: kilograms(82.9), on: '2026-11-20' });
    journal.record({ type: 'deleted', of: typo.id });
    const read = aJournal(files, { clock }).history().weighIns;
    expect(read.map(({ date, mass }) => [date.toString(), mass])).toEqual([
      ['2026-11-20', kilograms(82.9)],
      ['2026-11-25', kilograms(82.4)],
    ]);
  });

  test('decisions carry the day they were made, gear is the latest of all devices', () => {
    const { clock, laptop, other, sync } = twoDevices();
    laptop().record({ type: 'gear-set', gear: defaultGear('kg') });
    other().record({ type: 'decided', rule: 'lighter-week', answer: 'yes', subject: null });
    clock.wait(1000);
    other().record({ type: 'gear-set', gear: defaultGear('lb') });
    sync();
    const { gear, decisions } = laptop().history();
    expect(gear).toEqual(defaultGear('lb'));
    expect(decisions.map(({ date, at }) => [date.toString(), at])).toEqual([['2026-11-25', NOON]]);
  });

  test('those of one month share a file, which the next month leaves alone', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const journal = aJournal(disk.files, { clock });
    const weigh = () => journal.record({ type: 'weighed', mass: kilograms(80), on: '2026-11-25' });
    weigh();
    weigh();
    clock.wait(A_DAY);
    weigh();
    clock.wait(5 * A_DAY);
    weigh();
    const names = disk.paths().filter((path) => path.includes('/journal/'));
    expect(names.map((path) => path.slice(DATA.length, -24))).toHaveLength(2);
    expect(names[0]).toMatch(/\/journal\/2026-11\/2026-11-25-[0-9a-z]+-[0-9a-z]+\.jsonl$/);
    expect(names[1]).toContain('/journal/2026-12/2026-12-01-');
  });
});

describe('files from elsewhere', () => {
  test('are noticed by a journal that is open, once; what it writes itself is nothing new', () => {
    const { clock, laptop, other, sync } = twoDevices();
    const mine = laptop();
    expect(mine.changedElsewhere()).toBe(false);
    train(mine, clock);
    expect(mine.changedElsewhere()).toBe(false);
    train(other(), clock);
    expect(mine.changedElsewhere()).toBe(false);
    sync();
    expect([mine.changedElsewhere(), mine.changedElsewhere()]).toEqual([true, false]);
  });

  test('the same file twice, under whatever name, counts once', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    train(aJournal(disk.files, { clock }), clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    disk.put(path.replace('.jsonl', ' (conflicted copy).jsonl'), disk.bytes(path));
    const { results, unreadable } = aJournal(disk.files, { clock }).history();
    expect([results.length, unreadable]).toEqual([1, []]);
  });

  test('sessions are in order of their start, whatever the files are called', () => {
    const { clock, laptop, other, sync } = twoDevices();
    const order = [train(laptop(), clock), '', ''];
    clock.wait(-A_DAY / 2);
    order[1] = train(other(), clock);
    clock.wait(A_DAY);
    order[2] = train(laptop(), clock);
    sync();
    const read = laptop()
      .history()
      .sessions.map(({ session }) => session);
    expect(read).toEqual([order[1], order[0], order[2]]);
    expect(
      other()
        .history()
        .sessions.map(({ session }) => session),
    ).toEqual(read);
  });

  test('a session with an event of a newer version moves no load, and is named', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const journal = aJournal(disk.files, { clock });
    train(journal, clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    const id =
      journal
        .history()
        .events()
        .at(-1)
        ?.id.replace(/\d+$/, (n) => `${Number(n) + 1}`) ?? '';
    const newer = encodeLine({ type: 'tempo-changed', id, ...stamp(clock) } as never, crc32);
    disk.put(path, Uint8Array.from([...disk.bytes(path), ...newer]));
    const { sessions, results, unreadable } = aJournal(disk.files, { clock }).history();
    expect(sessions).toMatchObject([{ foreign: true, setsDone: 3 }]);
    expect(results).toHaveLength(1);
    expect(unreadable).toMatchObject([
      { kind: 'newer', problem: { fix: expect.stringMatching(/^Update holdfast on this device/) } },
    ]);
  });

  test('a copy of a session that tells a set otherwise is shown, and moves no load', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    train(aJournal(disk.files, { clock }), clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    const lines = decodeFile(disk.bytes(path), crc32).lines.map((line) => {
      const event = line.kind === 'event' ? line.event : null;
      const other = event?.type === 'set-done' ? { ...event, count: event.count + 2 } : event;
      return encodeLine(other as never, crc32);
    });
    const copy = path.replace('.jsonl', ' (conflicted copy).jsonl');
    disk.put(copy, Uint8Array.from(lines.flatMap((line) => [...line])));
    const { sessions, results, unreadable } = aJournal(disk.files, { clock }).history();
    expect(results[0]?.sets.map(({ count }) => count)).toEqual([6, 6, 5]);
    expect(sessions).toMatchObject([{ foreign: true }]);
    expect(unreadable).toMatchObject([
      {
        kind: 'conflict',
        problem: { what: expect.stringMatching(/conflicted copy.*tells the same sets otherwise/) },
      },
    ]);
  });

  test('a copy that tells the same is nothing to tell', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    train(aJournal(disk.files, { clock }), clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    disk.put(path.replace('.jsonl', ' (copy).jsonl'), disk.bytes(path));
    const { sessions, unreadable } = aJournal(disk.files, { clock }).history();
    expect([sessions.length, sessions[0]?.foreign, unreadable]).toEqual([1, false, []]);
  });

  test('a byte order mark in front of a file is skipped', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    train(aJournal(disk.files, { clock }), clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    disk.put(path, Uint8Array.from([0xef, 0xbb, 0xbf, ...disk.bytes(path)]));
    const { sessions, unreadable } = aJournal(disk.files, { clock }).history();
    expect([sessions.length, unreadable]).toEqual([1, []]);
  });

  test('a newer event in another file that names a set makes its session so', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const journal = aJournal(disk.files, { clock });
    train(journal, clock);
    const newer = { type: 'form-rated', of: setIdOf(journal, 0), id: 'later:0', ...stamp(clock) };
    disk.put(`${DATA}/journal/2026-11/x.jsonl`, encodeLine(newer as never, crc32));
    expect(aJournal(disk.files, { clock }).history().sessions).toMatchObject([{ foreign: true }]);
  });

  test('a damaged line in the middle is named, left alone, and its session moves no load', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    train(aJournal(disk.files, { clock }), clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    const broken = disk.bytes(path).slice();
    const second = broken.indexOf(0x0a) + 20;
    broken[second] = (broken[second] ?? 0) ^ 1;
    disk.put(path, broken);
    const { sessions, unreadable } = aJournal(disk.files, { clock }).history();
    expect(sessions).toMatchObject([{ foreign: true }]);
    expect(unreadable.map(({ problem }) => problem.what)).toEqual([
      `${path.slice(DATA.length + 1)} has a damaged line: 2.`,
    ]);
    expect(disk.bytes(path)).toEqual(broken);
  });

  test('without its opening a session cannot be read, and that is said', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    train(aJournal(disk.files, { clock }), clock);
    const path = disk.paths().find((each) => each.endsWith('.jsonl')) ?? '';
    const bytes = disk.bytes(path);
    disk.put(path, bytes.slice(bytes.indexOf(0x0a) + 1));
    const { sessions, unreadable } = aJournal(disk.files, { clock }).history();
    expect(sessions).toEqual([]);
    expect(unreadable.map(({ kind }) => kind)).toEqual(['missing', 'no-opening']);
  });
});

test('a whole session from elsewhere is imported under the day it was done', () => {
  const [clock, { files }] = [handClock(), memoryDisk()];
  const journal = aJournal(files, { clock });
  journal.importSession({
    start: Date.UTC(2024, 0, 5, 23, 30),
    end: Date.UTC(2024, 0, 6, 0, 40),
    zone: 60,
    facts: [
      {
        type: 'session-opened',
        session: 'old',
        device: '',
        prescription: prescription(straight()),
      },
      { type: 'session-closed', how: 'finished' },
    ],
  });
  expect(journal.history().sessions.map(({ session, date }) => [session, date.toString()])).toEqual(
    [['old', '2024-01-06']],
  );
});

test('events from elsewhere keep their ids, and nothing is ever written behind them', () => {
  const { clock, laptop, other, two } = twoDevices();
  laptop().record({ type: 'weighed', mass: kilograms(80), on: '2026-11-25' });
  train(laptop(), clock);
  const events = laptop().history().events();
  const journal = other();
  for (const file of new Set(events.map(({ id }) => id.split(':')[0]))) {
    journal.importEvents(events.filter(({ id }) => id.startsWith(`${file}:`)));
  }
  journal.record({ type: 'weighed', mass: kilograms(79), on: '2026-11-25' });
  const read = aJournal(two.files, { clock, device: tablet() }).history();
  expect(new Set(read.events().map(({ id }) => id)).size).toBe(events.length + 1);
  expect(read.unreadable).toEqual([]);
});

describe('the trend of body mass on a day', () => {
  const day = (on: string) => Temporal.PlainDate.from(on);
  const journalWith = (...weighed: readonly (readonly [on: string, kg: number])[]) => {
    const journal = aJournal(memoryDisk().files);
    for (const [on, kg] of weighed) {
      journal.record({ type: 'weighed', mass: kilograms(kg), on });
    }
    return journal.history().bodyMassOn;
  };

  test('is nothing before the first weigh-in, nor when the last is over 120 days ago', () => {
    const massOn = journalWith(['2026-11-25', 80]);
    expect(massOn(day('2026-11-24'))).toBeNull();
    expect(massOn(day('2027-03-24'))).toBe(kilograms(80));
    expect(massOn(day('2027-03-25'))).toBeNull();
  });

  test('is between the first readings, and never uses later ones', () => {
    const massOn = journalWith(['2026-11-01', 80], ['2026-11-03', 81], ['2026-11-30', 60]);
    expect(massOn(day('2026-11-02'))).toBe(kilograms(80));
    const third = massOn(day('2026-11-03'))!;
    expect(third).toBeGreaterThan(kilograms(80.4));
    expect(third).toBeLessThan(kilograms(80.6));
    expect(massOn(day('2026-11-29'))).toBe(third);
  });

  test('counts several readings of a day as their mean', () => {
    const massOn = journalWith(['2026-11-01', 80], ['2026-11-01', 82]);
    expect(massOn(day('2026-11-01'))).toBe(kilograms(81));
  });
});

const stamp = (clock: ReturnType<typeof handClock>) => ({ at: clock.read(), zone: 60 });

describe('a clock that was set back, or runs behind', () => {
  test('does not make a correction come before what it corrects', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const journal = aJournal(disk.files, { clock });
    train(journal, clock);
    const of = setIdOf(journal, 0);
    journal.record({ type: 'set-amended', of, count: 9 });
    clock.set(NOON - 30 * A_DAY);
    const later = aJournal(disk.files, { clock });
    later.record({ type: 'set-amended', of, count: 11 });
    expect(countsOf(later)[0]?.[0]).toBe(11);
    expect(countsOf(aJournal(disk.files, { clock }))[0]?.[0]).toBe(11);
  });

  test('does not make an undo of an undo be ignored', () => {
    const [clock, disk] = [handClock(), memoryDisk()];
    const journal = aJournal(disk.files, { clock });
    const session = train(journal, clock);
    const gone = journal.record({ type: 'deleted', of: session });
    expect(journal.history().sessions).toEqual([]);
    clock.set(NOON - 30 * A_DAY);
    const behind = aJournal(disk.files, { clock, device: tablet() });
    const undone = behind.record({ type: 'undone', of: gone.id });
    expect(behind.history().sessions).toHaveLength(1);
    clock.set(NOON - 60 * A_DAY);
    const further = aJournal(disk.files, { clock });
    further.record({ type: 'undone', of: undone.id });
    expect(aJournal(disk.files, { clock }).history().sessions).toEqual([]);
  });
});
