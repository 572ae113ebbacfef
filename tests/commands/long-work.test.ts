import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { longWork } from '../../src/commands/long-work.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

const busy = (ms: number): void => {
  const until = performance.now() + ms;
  while (performance.now() < until);
};

function onTerminal(said: string[], quiet = false) {
  const ports = home.ports([], said);
  const stderr = Object.assign(Object.create(ports.stderr), { isTTY: true });
  const global = { data: null, program: null, json: false, colour: true, quiet };
  return { ports: { ...ports, stderr: stderr as typeof ports.stderr }, global };
}

test('shows how far it is, and clears the line at the end', async () => {
  const said: string[] = [];
  const steps = [1, 2, 3].map((step) => () => {
    busy(60);
    return step;
  });
  expect(await longWork(onTerminal(said), 'Importing', steps)).toEqual([1, 2, 3]);
  expect(said).toContain('\rImporting: 2 of 3');
  expect(said.at(-1)).toBe('\r\u001b[K');
  const quiet: string[] = [];
  await longWork(onTerminal(quiet, true), 'Importing', steps);
  expect(quiet).toEqual([]);
});

test('ctrl-c stops between two steps', async () => {
  const steps = [1, 2, 3].map((step) => () => {
    busy(60);
    if (step === 2) process.emit('SIGINT');
    return step;
  });
  const before = process.listenerCount('SIGINT');
  expect(await longWork(onTerminal([]), 'Importing', steps)).toEqual([1, 2]);
  expect(process.listenerCount('SIGINT')).toBe(before);
});

const WEIGHTS = Array.from({ length: 90 }, (_, at) => {
  const day = new Date(Date.UTC(2026, 7, 1 + at)).toISOString().slice(0, 10);
  return `${day},${(84 + (at % 7) / 10).toFixed(1)},kg`;
});

test('weigh-ins of years become one file a month, and an import that was stopped is whole', async () => {
  writeFileSync(join(home.folder, 'w.csv'), ['date,body_mass,unit', ...WEIGHTS, ''].join('\n'));
  await home.run('import', 'w.csv');
  const journal = join(home.data, 'journal');
  const files = readdirSync(journal, { recursive: true }).filter((name) =>
    String(name).endsWith('.jsonl'),
  );
  // August, September and October, and the note of the import, of today.
  expect(files.map((name) => String(name).slice(0, 7)).toSorted()).toEqual([
    '2026-08',
    '2026-09',
    '2026-10',
    '2026-11',
  ]);
  const { weigh_ins } = await home.json('history');
  expect(weigh_ins).toHaveLength(90);
  expect((await home.run('import', 'w.csv')).out).toContain('0 weigh-ins added, 90 were here');
});
