import { EventEmitter } from 'node:events';
import { afterEach, expect, test, vi } from 'vitest';
import { tellWriteErrors } from '../../src/terminal/write-errors.ts';

afterEach(() => {
  vi.restoreAllMocks();
  process.exitCode = undefined;
});

/** What is said and left where writing to such an output fails with such a code. */
function failing(code: string, isTTY: boolean) {
  const said: string[] = [];
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => said.push(String(text)) > 0);
  const stdout = Object.assign(new EventEmitter(), { isTTY });
  tellWriteErrors(stdout as unknown as NodeJS.WriteStream);
  stdout.emit('error', Object.assign(new Error(code), { code }));
  return { said: said.join(''), status: process.exitCode };
}

test('a full disk is told, and the status is 2', () => {
  expect(failing('ENOSPC', false)).toEqual({
    said: 'Nothing could be written: ENOSPC.\n',
    status: 2,
  });
});

test('a reader that has seen enough, and a window that was closed, are no errors', () => {
  expect(failing('EPIPE', false)).toEqual({ said: '', status: undefined });
  expect(failing('EIO', true)).toEqual({ said: '', status: undefined });
});

test('a file that a broken disk holds is one', () => {
  expect(failing('EIO', false)).toMatchObject({ status: 2 });
});
