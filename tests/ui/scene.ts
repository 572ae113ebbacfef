import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Coach } from '../../src/lifter/coach.ts';
import { demoHistory } from '../../src/lifter/demo.ts';
import { openCoach } from '../../src/lifter/open-coach.ts';
import { type Lifter, openLifter } from '../../src/lifter/open-lifter.ts';
import type { Ports } from '../../src/lifter/ports.ts';
import type { SessionFact } from '../../src/session/events.ts';
import type { SessionState } from '../../src/session/state.ts';
import type { Settings } from '../../src/settings/settings.ts';
import { writeSettings } from '../../src/settings/write-settings.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { type MemoryDisk, memoryDisk } from '../journal/memory-files.ts';
import { HeldClock } from './held-clock.ts';
import { LEAN_SPRING } from './lean-spring.ts';

const SHIPPED = fileURLToPath(new URL('../../programs/', import.meta.url));

/** Wednesday, 25 November 2026, 17:40 UTC. */
export const NOW = Date.UTC(2026, 10, 25, 17, 40);

/** What the lifter of the scene owns: a usual home gym, safeties and a pair of 25 kg plates more. */
export const GEAR: Gear = {
  ...defaultGear('kg'),
  plates: [
    { stamped: { amount: 25, unit: 'kg' }, count: 2 },
    ...defaultGear('kg').plates.filter(({ stamped }) => stamped.amount < 25),
  ],
  safeties: true,
};

/**
 * A session of the past: the day's name, how many days before the scene, and of each exercise what
 * was done, as `80x8@2 80x8@1 80x8@1`; `-` leaves one out, `!` behind it marks pain.
 */
export interface PastDay {
  readonly ago: number;
  readonly day: string;
  readonly sets: readonly string[];
  /** Sets beyond those asked for are not done. */
  readonly asAsked?: true;
}

/** The Friday and the Monday before: every squat at the top of its range, the rest inside theirs. */
export const LAST_DAYS: readonly PastDay[] = [
  {
    ago: 5,
    day: 'A',
    sets: ['80x8@2 80x8@1 80x8@1', '5x8@1 5x7@1', '8x13@0 8x4 8x4 8x3', '0x40'],
  },
  { ago: 2, day: 'B', sets: ['60x7@2 60x7@1 60x6@1', '50x8@2 50x8@2 50x8@1'] },
];

export interface SceneOptions {
  /** Text of the program file; null: the first of the shipped programs. */
  readonly program?: string | null;
  /** Null: nobody ever said what is owned. */
  readonly gear?: Gear | null;
  readonly past?: readonly PastDay[];
  readonly weighIns?: readonly (readonly [ago: number, kg: number])[];
  readonly settings?: Partial<Settings>;
  /** Changes the ports before anything is opened. */
  readonly ports?: (ports: Ports) => Ports;
  /** What else is recorded before the scene begins. */
  readonly before?: (lifter: Lifter) => void;
}

export interface Scene {
  readonly coach: Coach;
  readonly lifter: Lifter;
  readonly clock: HeldClock;
  readonly disk: MemoryDisk;
  /** Path of the program file. */
  readonly program: string;
  readonly session: () => SessionState;
  /** Facts of the present session. */
  readonly facts: () => readonly SessionFact[];
  /** The program started once more over the same disk. */
  readonly again: () => Scene;
}

let demoEvents: ReturnType<typeof demoHistory> | null = null;

/** The demo's twelve invented weeks on the shipped program, as if they were the lifter's own. */
export const demoScene = (options: SceneOptions = {}): Scene =>
  scene({
    program: null,
    past: [],
    weighIns: [],
    before: (lifter) => {
      demoEvents ??= demoHistory(lifter.program(), lifter.today(), 0);
      for (const events of demoEvents) lifter.journal().importEvents(events);
    },
    ...options,
  });

const folders: string[] = [];
const throwAway = () => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
};
// A thread of the test runner is ended without an exit of its own.
if (process.env.VITEST) (await import('vitest')).afterAll(throwAway);
else process.on('exit', throwAway);

/** The real coach over a disk in memory, a clock held by the test, and a made past. */
export function scene(options: SceneOptions = {}): Scene {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-scene-'));
  folders.push(folder);
  const program = join(folder, 'program.yaml');
  writeFileSync(program, options.program ?? LEAN_SPRING);
  const config = join(folder, 'config', 'holdfast');
  mkdirSync(config, { recursive: true });
  writeFileSync(
    join(config, 'settings.json'),
    JSON.stringify({
      program: options.program === null ? null : program,
      cautions: 'read',
      weightAdvice: 'yes',
      speech: true,
      ...options.settings,
    }),
  );
  const clock = new HeldClock(NOW);
  const disk = memoryDisk();
  const made = openScene(folder, clock, disk, options);
  const { past = LAST_DAYS, weighIns = [[6, 82]], gear = GEAR } = options;
  const first = Math.max(1, ...past.map(({ ago }) => ago), ...weighIns.map(([ago]) => ago));
  if (gear) at(clock, first + 1, () => made.lifter.journal().record({ type: 'gear-set', gear }));
  const days = [
    ...past.map((day) => ({ ago: day.ago, act: () => playPast(made, day) })),
    ...weighIns.map(([ago, kg]) => ({ ago, act: () => weigh(made, ago, kg) })),
  ].toSorted((a, b) => b.ago - a.ago);
  for (const { ago, act } of days) at(clock, ago, act);
  options.before?.(made.lifter);
  made.lifter.journal().release();
  // The screens see the past as a start of the program does.
  return openScene(folder, clock, disk, options);
}

function openScene(
  folder: string,
  clock: HeldClock,
  disk: MemoryDisk,
  options: SceneOptions,
): Scene {
  const own: Ports = {
    clock,
    files: disk.files,
    env: {
      XDG_CONFIG_HOME: join(folder, 'config'),
      XDG_STATE_HOME: join(folder, 'state'),
      XDG_CACHE_HOME: join(folder, 'cache'),
      HOLDFAST_DATA: join(folder, 'data'),
    },
    platform: 'linux',
    home: folder,
    cwd: folder,
    machineName: 'laptop',
    shippedPrograms: SHIPPED,
    stdin: { isTTY: false } as unknown as NodeJS.ReadStream,
    stdout: { columns: 80, write: () => true } as unknown as NodeJS.WriteStream,
    stderr: { columns: 80, write: () => true } as unknown as NodeJS.WriteStream,
    spawn: () => {},
    build: null,
  };
  const ports = options.ports?.(own) ?? own;
  const lifter = openLifter(ports, { data: null, program: null });
  const coach = openCoach(lifter, (change) => writeSettings(lifter.folders.config, change));
  const session = () => {
    const live = coach.live();
    if (!live) throw new Error('No session was begun in this scene.');
    return live.state();
  };
  return {
    coach,
    lifter,
    clock,
    disk,
    program: join(folder, 'program.yaml'),
    session,
    facts: () => session().events,
    again: () => {
      lifter.journal().release();
      return openScene(folder, clock, disk, options);
    },
  };
}

const DAY_MS = 24 * 60 * 60 * 1000;

/** Does something as many days before the scene. */
function at(clock: HeldClock, ago: number, act: () => void): void {
  clock.set(NOW - ago * DAY_MS);
  act();
  clock.set(NOW);
}

function weigh({ lifter }: Scene, ago: number, kg: number): void {
  const on = new Date(NOW - ago * DAY_MS).toISOString().slice(0, 10);
  lifter.journal().record({ type: 'weighed', mass: kilograms(kg), on });
}

/** Trains a day of the past set by set, as a lifter would have. */
function playPast({ coach, lifter, clock }: Scene, { day, sets, asAsked }: PastDay): void {
  const live = coach.begin(day);
  if ('what' in live) throw new Error(live.what);
  const send = (command: Parameters<typeof live.send>[0]) => {
    const problem = live.send(command);
    if (problem) throw new Error(`${problem.what} ${JSON.stringify(command)}`);
  };
  for (const [exercise, text] of sets.entries()) {
    if (text === '-') {
      send({ do: 'skip-exercise', exercise });
      continue;
    }
    send({ do: 'choose-exercise', exercise });
    if (live.state().exercises[exercise]?.prescribed.warmUp.length) send({ do: 'skip-set' });
    for (const set of text.replace('!', '').split(' ')) {
      const { prescribed, done = [] } = live.state().exercises[exercise] ?? {};
      if (asAsked && done.length >= (prescribed?.sets.length ?? 0)) break;
      const [, load = '0', count = '0', reserve] = /^(-?[\d.]+)x(\d+)(?:@(\d+))?$/.exec(set) ?? [];
      send({ do: 'start' });
      clock.set(clock.read().wall + 30_000);
      send({
        do: 'put-down',
        numbers: {
          load: kilograms(Number(load)),
          count: Number(count),
          reserve: reserve === undefined ? null : Number(reserve),
        },
      });
      clock.set(clock.read().wall + 180_000);
    }
    if (text.endsWith('!')) send({ do: 'mark-pain', exercise });
  }
  send({ do: 'close', how: live.state().stage.kind === 'all-done' ? 'finished' : 'as-it-is' });
  lifter.journal().release();
}
