import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { fileProblemText } from '../../src/program/file-problem.ts';
import { type ProgramFiles, readProgramFile } from '../../src/program/read-file.ts';
import { PLAIN } from './program-text.ts';

const folder = mkdtempSync(join(tmpdir(), 'holdfast-program-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

function problem(path: string, files?: ProgramFiles): string {
  const read = readProgramFile(path, files);
  return read.ok ? 'read' : read.problems.map(fileProblemText).join('\n').replaceAll(folder, '');
}

test('a program file is read', () => {
  const path = file('plan.yaml', PLAIN);
  const read = readProgramFile(path);
  expect(read).toMatchObject({ ok: true, program: { name: 'Lean spring', file: path } });
});

test('a byte order mark does no harm', () => {
  expect(problem(file('bom.yaml', `\ufeff${PLAIN}`))).toBe('read');
});

test('a file that is not there', () => {
  expect(problem(join(folder, 'none.yaml'))).toMatch(/^.none\.yaml: There is no such file\./);
  expect(problem(join(file('a.yaml', PLAIN), 'b.yaml'))).toMatch(/There is no such file/);
});

test('a folder', () => {
  mkdirSync(join(folder, 'plans'));
  expect(problem(join(folder, 'plans'))).toMatch(/^.plans: This is not a file\./);
});

test('a file that may not be read', () => {
  const files: ProgramFiles = {
    stat: () => ({ isFile: true, size: 10 }),
    read: () => {
      throw Object.assign(new Error('permission denied'), { code: 'EACCES' });
    },
  };
  expect(problem('plan.yaml', files)).toMatch(/^plan\.yaml: You may not read this file\./);
});

test('a disk that fails', () => {
  const files: ProgramFiles = {
    stat: () => ({ isFile: true, size: 10 }),
    read: () => {
      throw Object.assign(new Error('i/o error'), { code: 'EIO' });
    },
  };
  expect(problem('plan.yaml', files)).toMatch(/^plan\.yaml: The file cannot be read.* EIO/);
});

test('a file over 256 kB, which is not read at all', () => {
  const files: ProgramFiles = {
    stat: () => ({ isFile: true, size: 10_000_000 }),
    read: () => {
      throw new Error('It was read.');
    },
  };
  expect(problem('plan.yaml', files)).toBe(
    'plan.yaml: The file is 9766 kB long. A program is a page or two, 256 kB at most: is this the right file?',
  );
});

test.each([
  ['latin-1', new Uint8Array([0x6e, 0x61, 0x6d, 0x65, 0x3a, 0x20, 0xe9, 0x0a])],
  ['UTF-16', new Uint8Array([0xff, 0xfe, 0x6e, 0x00, 0x61, 0x00])],
  ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])],
])('text that is not UTF-8: %s', (name, bytes) => {
  expect(problem(file(`${name}.yaml`, bytes))).toMatch(/This file is not text in UTF-8\./);
});
