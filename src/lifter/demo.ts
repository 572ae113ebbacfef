import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Temporal } from 'temporal-polyfill';
import type { JournalEvent } from '../journal/records.ts';
import type { Program } from '../program/program.ts';
import { LIFTER_MODEL } from '../rehearsal/lifter-model.ts';
import { rehearsedHistory } from '../rehearsal/rehearsed-history.ts';
import type { SessionEvent, SessionFact } from '../session/events.ts';
import { writeSettings } from '../settings/write-settings.ts';
import { defaultGear } from '../training/default-gear.ts';
import { kilograms } from '../training/mass.ts';
import { openLifter } from './open-lifter.ts';
import type { Ports } from './ports.ts';

/** Variables that would lead out of the demo's folder, into the lifter's own data. */
const LEADING_OUT: ReadonlySet<string> = new Set([
  'HOLDFAST_DATA',
  'XDG_DATA_HOME',
  'XDG_CONFIG_HOME',
  'XDG_STATE_HOME',
  'XDG_CACHE_HOME',
  'APPDATA',
  'LOCALAPPDATA',
]);

/**
 * Writes the demo into a new temporary folder and does something there, on ports that know no
 * other folder. The folder is removed again, whatever happens.
 */
export async function withDemo<Result>(
  ports: Ports,
  act: (demo: Ports & { readonly demoFolder: string }) => Promise<Result>,
): Promise<Result> {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-demo-'));
  try {
    const env = Object.fromEntries(
      Object.entries(ports.env).filter(([name]) => !LEADING_OUT.has(name)),
    );
    const data = join(folder, 'data');
    mkdirSync(data);
    const demo = {
      ...ports,
      env: { ...env, HOLDFAST_DATA: data },
      home: folder,
      demoFolder: folder,
    };
    writeDemo(demo);
    return await act(demo);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function writeDemo(ports: Ports): void {
  const lifter = openLifter(ports, { data: null, program: null });
  // The invented lifter has read the cautions, and has said that nothing speaks against losing weight.
  writeSettings(lifter.folders.config, { cautions: 'read', weightAdvice: 'yes' });
  const today = lifter.today();
  const zone = ports.clock.zone(ports.clock.read().wall);
  for (const events of demoHistory(lifter.program(), today, zone)) {
    lifter.journal().importEvents(events);
  }
}

/**
 * An invented lifter of 84.6 kg who loses 0.65 % a week and keeps their strength: one week was
 * missed, one muscle may have a set more, two sessions carry a note.
 */
const STORY = {
  weeks: 12,
  loss: 0.65,
  // Chance of many would show no advice in its last week: this one was looked for, and so was a
  // strength that just holds, to show what an advice looks like. It is no usual course.
  seed: 36,
  model: { ...LIFTER_MODEL, growth: -0.0008 },
  bodyMass: kilograms(84.6),
  away: [[35, 42]],
} as const;

/** What the lifter begins with, in kg; the shipped program starts at what a beginner can lift. */
const FIRST_LOADS: Readonly<Record<string, number>> = {
  'back-squat': 100,
  'bench-press': 75,
  'barbell-row': 65,
  'romanian-deadlift': 100,
  'overhead-press': 45,
  'dumbbell-side-raise': 8,
  'dumbbell-curl': 10,
  'split-squat': 17,
  'dumbbell-bench-press': 24.5,
  'dumbbell-row': 27,
};

/** Notes by the number of the session, from 0. */
const NOTES: ReadonlyMap<number, string> = new Map([
  [7, 'Slept five hours, everything felt heavy.'],
  [22, 'Moved the rack to the other wall; the bar is level again.'],
]);

/** Events of one journal file, whose ids carry the file's own. */
export type FileOfEvents = readonly JournalEvent[];

/** Twelve invented weeks that end on `until`, as the files of a journal. The same day gives the same. */
export function demoHistory(
  program: Program,
  until: Temporal.PlainDate,
  zone: number,
): readonly FileOfEvents[] {
  const gear = defaultGear(program.unit);
  const { sessions, weighIns, decisions } = rehearsedHistory(withFirstLoads(program), {
    ...STORY,
    until,
    gear,
    zone,
  });
  const weighed = weighIns.map(({ date, mass }) => ({
    fact: { type: 'weighed', mass, on: date.toString() } as const,
    wall: atSeven(date, zone),
  }));
  const decided = decisions.map(({ rule, answer, subject, at }) => ({
    fact: { type: 'decided', rule, answer, subject } as const,
    wall: at,
  }));
  const loose = [...weighed, ...decided].map(
    ({ fact, wall }, index): JournalEvent => ({
      ...fact,
      id: `demo:${index}`,
      at: { wall, up: null, boot: null },
      zone,
    }),
  );
  return [loose, ...sessions.map((events, index) => sessionFile(events, NOTES.get(index)))];
}

function withFirstLoads(program: Program): Program {
  const days = program.days.map((day) => ({
    ...day,
    exercises: day.exercises.map((exercise) => {
      const first = FIRST_LOADS[exercise.lift.key];
      return first === undefined ? exercise : { ...exercise, start: kilograms(first) };
    }),
  }));
  return { ...program, days };
}

const atSeven = (date: Temporal.PlainDate, zone: number): number =>
  date.toZonedDateTime({ timeZone: 'UTC', plainTime: { hour: 7 } }).epochMilliseconds -
  zone * 60_000;

/** The events as a file numbers them, from 0, with a note before the last. */
function sessionFile(events: readonly SessionEvent[], note: string | undefined): FileOfEvents {
  const [opened] = events;
  const last = events.at(-1);
  if (opened?.type !== 'session-opened' || !last) return [];
  const written: SessionFact | null =
    note === undefined ? null : { type: 'note-written', exercise: null, text: note };
  const all = written
    ? [...events.slice(0, -1), { ...written, at: last.at, zone: last.zone }, last]
    : events;
  // Nobody should take an invented session for one that was trained.
  const session = opened.session.replace(/^[a-z]+/, 'demo');
  return all.map((event, index) => ({
    ...event,
    ...(event.type === 'session-opened' ? { session } : {}),
    id: `${session}:${index}`,
  }));
}
