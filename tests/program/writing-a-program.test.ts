import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type WholeFileDisk, writeWholeFile } from '../../src/program/write-file.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'holdfast-write-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const path = () => join(folder, 'plan.yaml');
const content = () => readFileSync(path(), 'utf8');

test('a new file is for this user alone', () => {
  expect(writeWholeFile(path(), 'name: New\n', 'a')).toBeNull();
  expect(content()).toBe('name: New\n');
  if (process.platform !== 'win32') expect(statSync(path()).mode & 0o777).toBe(0o600);
});

test('an old file is replaced, keeps its rights, and leaves nothing beside it', () => {
  writeFileSync(path(), 'name: Old\n');
  chmodSync(path(), 0o644);
  expect(writeWholeFile(path(), 'name: Möre\n', 'a')).toBeNull();
  expect(content()).toBe('name: Möre\n');
  if (process.platform !== 'win32') expect(statSync(path()).mode & 0o777).toBe(0o644);
  expect(readdirSync(folder)).toEqual(['plan.yaml']);
});

test.skipIf(process.platform === 'win32')('a link stays a link', () => {
  writeFileSync(join(folder, 'real.yaml'), 'name: Old\n');
  symlinkSync(join(folder, 'real.yaml'), path());
  expect(writeWholeFile(path(), 'name: New\n', 'a')).toBeNull();
  expect(readFileSync(join(folder, 'real.yaml'), 'utf8')).toBe('name: New\n');
  expect(readdirSync(folder).sort()).toEqual(['plan.yaml', 'real.yaml']);
});

test('a folder that is not there is said', () => {
  expect(writeWholeFile(join(folder, 'none', 'plan.yaml'), 'x', 'a')).toMatchObject({
    why: 'There is no such folder, or the system lets nothing be made in it.',
  });
});

/** A disk in memory whose n-th call fails; writes take three bytes at a time. */
function failing(nth: number, code: string) {
  const files = new Map([['plan.yaml', 'name: Old\n']]);
  let calls = 0;
  const call = <T>(act: () => T): T => {
    calls += 1;
    if (calls === nth) throw Object.assign(new Error(code), { code });
    return act();
  };
  const open: string[] = [];
  const disk: WholeFileDisk = {
    realPath: (name) => call(() => name),
    mode: () => call(() => 0o600),
    create: (name) =>
      call(() => {
        files.set(name, '');
        return open.push(name) - 1;
      }),
    write: (file, bytes) =>
      call(() => {
        const part = bytes.subarray(0, 3);
        const name = open[file] ?? '';
        files.set(name, (files.get(name) ?? '') + new TextDecoder().decode(part));
        return part.length;
      }),
    sync: () => call(() => undefined),
    syncFolder: () => call(() => undefined),
    close: () => call(() => undefined),
    rename: (from, to) =>
      call(() => {
        files.set(to, files.get(from) ?? '');
        files.delete(from);
      }),
    remove: (name) => call(() => void files.delete(name)),
  };
  return { disk, files, calls: () => calls };
}

describe('whichever call to the disk fails', () => {
  test.each(['ENOSPC', 'EIO', 'EROFS', 'EACCES'])(
    'with %s, the file is old or new, never half',
    (code) => {
      for (let nth = 1; ; nth += 1) {
        const { disk, files, calls } = failing(nth, code);
        const problem = writeWholeFile('plan.yaml', 'name: New one\n', 'a', disk);
        const wanted = problem === null ? 'name: New one\n' : 'name: Old\n';
        expect(files.get('plan.yaml')).toBe(wanted);
        expect([...files.keys()]).toEqual(['plan.yaml']);
        if (calls() < nth) {
          expect(problem).toBeNull();
          expect(nth).toBeGreaterThan(8);
          break;
        }
        // Once the name is there a folder that cannot be flushed is no reason to say otherwise.
        if (problem) expect(problem.what).toContain('is as it was');
      }
    },
  );
});

test('a disk that takes no byte is a full one, and no endless loop', () => {
  const { disk, files } = failing(0, '');
  const problem = writeWholeFile('plan.yaml', 'name: New\n', 'a', { ...disk, write: () => 0 });
  expect(problem?.why).toBe('The disk is full.');
  expect(files.get('plan.yaml')).toBe('name: Old\n');
});
