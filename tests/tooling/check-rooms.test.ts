import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { checkRooms } from '../../src/tooling/check-rooms.mjs';
import { ROOT } from '../../src/tooling/root.mjs';

let root: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'holdfast-rooms-'));
  plant('src/text/clean.ts', 'export const clean = 1;');
  plant('src/training/mass.ts', `import { clean } from '../text/clean.ts';\nexport { clean };`);
  plant('src/session/state.ts', `export type { clean } from '../training/mass.ts';`);
  plant('src/cli.ts', `import './ui/screen.tsx';\nimport 'node:process';`);
  plant(
    'src/ui/screen.tsx',
    `import { Text } from 'ink';\nexport const a = <Text>Math.random()</Text>;`,
  );
});

afterEach(() => rmSync(root, { recursive: true }));

function plant(path: string, text: string) {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

test('the real tree keeps to its rooms', () => {
  const { files, rooms, faults } = checkRooms(ROOT);
  expect(faults).toEqual([]);
  expect(files).toBeGreaterThan(20);
  expect(rooms).toContain('training');
});

test('a tree that keeps to its rooms passes, and every file of it is seen', () => {
  expect(checkRooms(root)).toMatchObject({ files: 5, faults: [] });
});

test.each([
  ['static', `import { clean } from '../session/state.ts';`],
  ['type only', `import type { clean } from '../session/state.ts';`],
  ['one type of an import', `import { type clean } from '../session/state.ts';`],
  ['for its effect', `import '../session/state.ts';`],
  ['dynamic', `const late = () => import('../session/state.ts');`],
  ['inside a type', `type Late = typeof import('../session/state.ts');`],
  ['passed on', `export * from '../session/state.ts';`],
  ['type passed on', `export type * from '../session/state.ts';`],
])('an import against the flow is found: %s', (_, line) => {
  plant('src/training/bad.ts', `// first line\n${line}\n`);
  expect(checkRooms(root).faults).toEqual([
    'src/training/bad.ts:2: training must not import session (../session/state.ts)',
  ]);
});

test.each([
  ['training/bad.ts', `import { readFileSync } from 'node:fs';`],
  ['training/bad.ts', `import type { Stats } from 'fs';`],
  ['program/draft.ts', `import { readFileSync } from 'node:fs';`],
  ['journal/fold.ts', `import { readFileSync } from 'node:fs';`],
  ['ui/store.ts', `import { readFileSync } from 'node:fs';`],
  ['lifter/run.ts', `const ink = () => import('ink');`],
  ['program/bad.ts', `import Conf from 'conf';`],
  ['report/bad.ts', `import ink from 'ink';`],
  ['training/bad.ts', `import { it } from '../../tests/it.ts';`],
  ['training/bad.ts', `import { gone } from './gone.ts';`],
  ['training/bad.ts', 'export const at = Date.now();'],
  ['session/bad.ts', 'export const at = globalThis.performance.now();'],
  ['cut/bad.ts', 'export const at = new Date();'],
  ['report/bad.ts', 'export const at = Temporal.Now.instant();'],
  ['rehearsal/bad.ts', 'export const luck = () => Math.random();'],
  ['strange/bad.ts', 'export const room = 1;'],
])('a fault is found in src/%s: %s', (path, text) => {
  plant(`src/${path}`, text);
  expect(checkRooms(root).faults).toHaveLength(1);
});

test.each([
  ['program/read-file.ts', `import { readFileSync } from 'node:fs';`],
  ['journal/disk/append.ts', `import { writeSync } from 'node:fs';`],
  ['lifter/clock.ts', 'export const at = () => Date.now();'],
  ['training/day.ts', '/** Never Date.now(). */\nexport const at = (ms: number) => new Date(ms);'],
  ['report/chart.ts', `import { renderToString } from 'preact-render-to-string';`],
  ['ui/train.ts', `import { clean } from '../text/clean.ts';`],
])('what a room is for is allowed: src/%s', (path, text) => {
  plant(`src/${path}`, text);
  expect(checkRooms(root).faults).toEqual([]);
});

test('files that import each other are found, also by their types alone', () => {
  plant('src/training/a.ts', `import { b } from './b.ts';\nexport const d = b;`);
  plant('src/training/b.ts', `export type { c } from './c.ts';\nexport const b = 1;`);
  plant('src/training/c.ts', `import type { d } from './a.ts';\nexport const c: typeof d = 1;`);
  expect(checkRooms(root).faults).toEqual([
    'imports go in a circle: src/training/a.ts → src/training/b.ts → src/training/c.ts → src/training/a.ts',
  ]);
});

test('a name that two files export is found', () => {
  plant('src/training/a.ts', 'export const load = 1;');
  plant('src/session/a.ts', 'export type load = 1;');
  expect(checkRooms(root).faults).toEqual([
    'load is exported by src/session/a.ts and src/training/a.ts',
  ]);
});

test('a room without a file and a tree without a file fail', () => {
  mkdirSync(join(root, 'src/cut'));
  expect(checkRooms(root).faults).toEqual(['src/cut: no file was seen in this room']);
  rmSync(join(root, 'src'), { recursive: true });
  mkdirSync(join(root, 'src'));
  expect(checkRooms(root).faults).toEqual(['src: no file was seen']);
});
