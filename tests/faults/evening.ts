import { isDeepStrictEqual } from 'node:util';
import { expect } from 'vitest';
import type { Files } from '../../src/journal/disk/files.ts';
import type { Journal, SessionWriter } from '../../src/journal/disk/journal.ts';
import { fold } from '../../src/session/apply.ts';
import { Refusal } from '../../src/text/problem.ts';
import { kilograms } from '../../src/training/mass.ts';
import { aDay, aJournal, handClock, send, sendIfOpen } from '../journal/a-journal.ts';
import type { MemoryDisk } from '../journal/memory-files.ts';

/** Ids of the events that were said to be on disk. */
export type Acknowledged = Set<string>;

/** An expected error is a sentence for the lifter; anything else is a bug and fails the test. */
export function tried(act: () => void): void {
  try {
    act();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    expect(error.message).toMatch(/^[A-Z/].*\. .*\.$/s);
    expect(error.message).not.toMatch(/undefined|\bat .*\.ts:/);
  }
}

export interface Evening {
  readonly kept: Acknowledged;
  readonly writer: SessionWriter | null;
}

/** An evening with the program: whatever can be done is done, whatever is refused is tried once more. */
export function evening(files: Files): Evening {
  const clock = handClock();
  const kept: Acknowledged = new Set();
  const journal: Journal = aJournal(files, { clock });
  const twice = (act: () => void) => {
    tried(act);
    tried(act);
  };
  tried(() =>
    kept.add(journal.record({ type: 'weighed', mass: kilograms(80), on: '2026-11-25' }).id),
  );
  let writer: SessionWriter | null = null;
  twice(() => {
    writer ??= journal.beginSession(aDay());
  });
  const acts: ((session: SessionWriter) => void)[] = [
    (session) => sendIfOpen(session, 'start', clock),
    (session) => sendIfOpen(session, 'put-down', clock),
    (session) => sendIfOpen(session, 'start', clock),
    (session) => sendIfOpen(session, 'put-down', clock),
    (session) => send(session, { do: 'note', exercise: 0, text: 'slow' }, clock),
    (session) => sendIfOpen(session, 'undo', clock),
    (session) => send(session, { do: 'close', how: 'as-it-is' }, clock),
  ];
  for (const act of acts) {
    tried(() => {
      if (writer) act(writer);
    });
    for (const { id } of openedBy(writer)?.state().events ?? []) kept.add(id);
    clock.wait(2000);
  }
  openedBy(writer)?.close();
  tried(() =>
    kept.add(journal.record({ type: 'weighed', mass: kilograms(79), on: '2026-11-26' }).id),
  );
  tried(() => void journal.history());
  journal.release();
  return { kept, writer };
}

/** Assigned in a closure, which the compiler does not follow. */
const openedBy = (writer: SessionWriter | null): SessionWriter | null => writer;

/** What was acknowledged and is not read back, or is read otherwise: one sentence each. */
export function lostOf(disk: MemoryDisk, { kept, writer }: Evening): string[] {
  const history = aJournal(disk.files).history();
  const read = new Set(history.events().map(({ id }) => id));
  const lost = [...kept].filter((id) => !read.has(id)).map((id) => `Lost: ${id}`);
  const broken = history.unreadable.filter(({ kind }) => kind !== 'tail');
  const told = broken.map((each) => `Broken: ${JSON.stringify(each)}`);
  const state = openedBy(writer)?.state();
  if (!state) return [...lost, ...told];
  const ofSession = history
    .events()
    .filter(({ id }) => state.events.some((each) => each.id === id));
  const isSame = isDeepStrictEqual(fold(ofSession as never), state);
  return [...lost, ...told, ...(isSame ? [] : ['The session is another one.'])];
}
