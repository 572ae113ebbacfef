import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { nodeDevice } from '../../src/journal/disk/device.ts';
import { nodeFiles } from '../../src/journal/disk/files.ts';
import type { SessionWriter } from '../../src/journal/disk/journal.ts';
import { openJournal } from '../../src/journal/disk/open-journal.ts';
import { Refusal } from '../../src/text/problem.ts';
import { kilograms } from '../../src/training/mass.ts';
import { aDay, aDevice, handClock, sendIfOpen } from '../journal/a-journal.ts';
import type { Numbers } from './seeded-numbers.ts';

/** What was said to be saved on either device, and which of it is nowhere after the last sync. */
export interface GitEvening {
  readonly saved: number;
  readonly lost: readonly string[];
}

const STEPS = 24;

/**
 * An evening of two devices that keep one folder by git: a session runs on the laptop, the tablet
 * weighs in and goes on with it, both commit, pull and push at any moment, as the numbers say.
 */
export function gitEvening(numbers: Numbers): GitEvening {
  const home = mkdtempSync(join(tmpdir(), 'holdfast-git-'));
  try {
    return played(home, numbers);
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

function played(home: string, numbers: Numbers): GitEvening {
  const clock = handClock();
  const bare = join(home, 'bare.git');
  git(home, 'init', '-q', '--bare', '-b', 'main', bare);
  const devices = ['laptop', 'tablet'].map((name) => {
    const data = join(home, name);
    git(home, 'clone', '-q', bare, data);
    git(data, 'checkout', '-q', '-B', 'main');
    const journal = openJournal({
      dataDir: data,
      stateDir: join(home, `${name}-state`),
      configDir: join(home, `${name}-config`),
      files: nodeFiles,
      clock,
      device: {
        ...nodeDevice(name),
        ...aDevice({ name, machine: name }),
        random: nodeDevice(name).random,
      },
    });
    return { data, journal, writer: null as SessionWriter | null };
  });
  const [first] = devices;
  if (!first) throw new Error('There are two.');
  mkdirSync(join(first.data, 'journal'), { recursive: true });
  writeFileSync(join(first.data, '.gitkeep'), '');
  commit(first.data);
  git(first.data, 'push', '-q', 'origin', 'main');
  const saved = new Set<string>();
  for (let step = 0; step < STEPS; step += 1) {
    clock.wait(60_000);
    const device = devices[numbers(2)] ?? first;
    const acts = [
      () => {
        device.writer ??= begunOrResumed(device.journal);
        sendIfOpen(device.writer, 'start', clock);
        clock.wait(20_000);
        sendIfOpen(device.writer, 'put-down', clock);
        for (const { id } of device.writer.state().events) saved.add(id);
      },
      () => {
        const mass = kilograms(80 + step / 10);
        saved.add(device.journal.record({ type: 'weighed', mass, on: '2026-11-25' }).id);
      },
      () => commit(device.data),
      () => {
        commit(device.data);
        git(device.data, 'pull', '-q', '--rebase', 'origin', 'main');
      },
      () => git(device.data, 'push', '-q', 'origin', 'main'),
      () => git(device.data, 'stash', '-u', '-q'),
      () => git(device.data, 'stash', 'pop', '-q'),
      () => {
        device.writer?.close();
        device.writer = null;
        device.journal.release();
      },
    ];
    tried(acts[[0, 0, 0, 1, 2, 3, 3, 4, 5, 6, 7][numbers(11)] ?? 0]);
  }
  for (const { journal, writer } of devices) {
    writer?.close();
    journal.release();
  }
  for (const { data } of [...devices, ...devices]) {
    while (tried(() => git(data, 'stash', 'pop', '-q')));
    commit(data);
    tried(() => git(data, 'pull', '-q', '--rebase', 'origin', 'main'));
    tried(() => git(data, 'push', '-q', 'origin', 'main'));
  }
  // Git itself may give up on a device in the middle of a rebase; what was pushed is at the other end.
  const whole = join(home, 'whole');
  git(home, 'clone', '-q', bare, whole);
  const read = new Set([whole, ...devices.map(({ data }) => data)].flatMap(idsIn));
  return { saved: saved.size, lost: [...saved].filter((id) => !read.has(id)) };
}

function begunOrResumed(journal: ReturnType<typeof openJournal>): SessionWriter {
  journal.reload();
  const open = journal.history().open.findLast(({ foreign }) => !foreign);
  return open ? journal.resumeSession(open.session) : journal.beginSession(aDay());
}

function idsIn(data: string): readonly string[] {
  const journal = openJournal({
    dataDir: data,
    stateDir: `${data}-read-state`,
    configDir: `${data}-read-config`,
    files: nodeFiles,
    clock: handClock(),
    device: aDevice(),
  });
  return journal
    .history()
    .events()
    .map(({ id }) => id);
}

/** Refused by git or by us is no loss; what is wrong shows in what is read at the end. */
function tried(act: (() => unknown) | undefined): boolean {
  try {
    act?.();
    return true;
  } catch (error) {
    if (error instanceof Refusal || (error as { status?: unknown }).status !== undefined)
      return false;
    throw error;
  }
}

const git = (folder: string, ...args: string[]): string =>
  execFileSync(
    'git',
    [
      '-c',
      'user.name=Lifter',
      '-c',
      'user.email=lifter@example.org',
      '-c',
      'commit.gpgsign=false',
      ...args,
    ],
    { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] },
  );

function commit(folder: string): void {
  git(folder, 'add', '-A');
  tried(() => git(folder, 'commit', '-q', '-m', 'training'));
}
