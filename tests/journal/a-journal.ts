import type { Device } from '../../src/journal/disk/device.ts';
import type { Files } from '../../src/journal/disk/files.ts';
import type { Journal, SessionWriter } from '../../src/journal/disk/journal.ts';
import { openJournal } from '../../src/journal/disk/open-journal.ts';
import type { History } from '../../src/journal/history.ts';
import type { SessionCommand } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { problemText } from '../../src/text/problem.ts';
import type { Reading } from '../../src/training/reading.ts';
import { cluster, prescription, straight } from '../session/a-session.ts';

export const NOON = Date.UTC(2026, 10, 25, 11);
export const A_DAY = 86_400_000;

/** A clock that goes where the test puts it, an hour ahead of UTC. */
export function handClock(start = NOON) {
  let wall = start;
  return {
    read: (): Reading => ({ wall, up: null, boot: null }),
    zone: () => 60,
    wait: (ms: number) => {
      wall += ms;
    },
    set: (to: number) => {
      wall = to;
    },
  };
}

export type HandClock = ReturnType<typeof handClock>;

let names = 0;
let processes = 100;

/** A process of its own on the laptop: the ones before it have ended. */
export function aDevice(changes: Partial<Device> = {}): Device {
  processes += 1;
  const pid = processes;
  return {
    name: 'laptop',
    machine: 'machine-1',
    boot: 'boot-1',
    space: 'pid:[1]',
    pid,
    startOf: (asked) => (asked === pid ? `start of ${pid}` : null),
    random: (length) => {
      names += 1;
      return names.toString(36).padStart(length, '0');
    },
    ...changes,
  };
}

export const DATA = '/home/lifter/data';

export function aJournal(
  files: Files,
  {
    clock = handClock(),
    device = aDevice(),
    dataDir = DATA,
    home = '/home/lifter',
    cache = '',
  } = {},
): Journal {
  const [stateDir, configDir] = [`${home}/state`, `${home}/config`];
  const cacheDir = cache === '' ? {} : { cacheDir: cache };
  return openJournal({ dataDir, stateDir, configDir, ...cacheDir, files, clock, device });
}

/** Everything in a history that can be compared. */
export function allOf({ lately, bodyMassOn, closed, events, unreadable, ...rest }: History) {
  const days = rest.sessions.map(({ date }) => date);
  return {
    ...rest,
    lately: [lately.results, lately.sessions],
    bodyMass: days.map(bodyMassOn),
    closed: closed(),
    events: events(),
    unreadable: unreadable.map((each) => JSON.stringify(each)).sort(),
  };
}

/** Two rows of three sets, and a cluster. */
export const aDay = () => prescription(straight(), cluster());

/** Carries a command out on disk. */
export function send(
  writer: SessionWriter,
  command: SessionCommand | SessionCommand['do'],
  clock: HandClock,
): void {
  const at = clock.read();
  const given = typeof command === 'string' ? ({ do: command } as SessionCommand) : command;
  const decided = decide(writer.state(), given, at);
  if (!decided.ok) throw new Error(problemText(decided.problem));
  writer.write(decided.facts, at);
}

/** Carries a command out where it makes sense now. */
export function sendIfOpen(
  writer: SessionWriter,
  command: SessionCommand['do'],
  clock: HandClock,
): void {
  const given = { do: command } as SessionCommand;
  if (decide(writer.state(), given, clock.read()).ok) send(writer, given, clock);
}

/** A set as planned, and the rest behind it. */
export function lift(writer: SessionWriter, clock: HandClock): void {
  send(writer, 'start', clock);
  clock.wait(20_000);
  send(writer, 'put-down', clock);
  clock.wait(200_000);
}

/** A whole session, begun, lifted and closed. */
export function train(
  journal: Journal,
  clock: HandClock,
  given = prescription(straight()),
): string {
  const writer = journal.beginSession(given);
  const sets = given.exercises.reduce((sum, { sets: of }) => sum + of.length, 0);
  for (let set = 0; set < sets; set += 1) lift(writer, clock);
  send(writer, { do: 'close', how: 'as-it-is' }, clock);
  writer.close();
  journal.release();
  return writer.session;
}
