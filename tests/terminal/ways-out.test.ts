import { expect, test } from 'vitest';
import { aHome, drivenSession, realSession } from './a-session.ts';
import type { Home } from './home.ts';
import type { Terminal } from './terminal.ts';

/** Nothing may be left switched on, and the session stays open with its set. */
function expectLeftInOrder(terminal: Terminal, home: Home): void {
  expect(terminal.modes()).toEqual({
    buffer: 'normal',
    mouse: 'none',
    paste: false,
    cursorHidden: false,
  });
  expect(terminal.title).toBe('');
  expect(home.of('set-done')).toHaveLength(1);
  expect(home.of('session-closed')).toHaveLength(0);
}

/** With everything on that can be: taps, title, paste, alternate screen. */
const withTaps = (): Home => {
  const home = aHome();
  home.settings({ cautions: 'read', taps: true });
  return home;
};

async function inARest(terminal: Terminal): Promise<void> {
  await terminal.until('BEGIN');
  await terminal.press(' ', 'set 1 of 2');
  await terminal.press(' ', ' WAIT ');
  await terminal.press(' ', 'saved as planned');
  expect(terminal.modes()).toMatchObject({
    buffer: 'alternate',
    mouse: 'vt200',
    paste: true,
    cursorHidden: true,
  });
}

const STAYS_OPEN =
  /^The session stays open\. Day A, begun \w+ \d+ \w+: [01] of 3 sets done\. "holdfast" goes on with it\.$/;

const WAYS: readonly [name: string, status: number, go: (terminal: Terminal) => void][] = [
  ['q', 0, (terminal) => terminal.send('q')],
  ['esc', 0, (terminal) => terminal.send('\u001b')],
  ['ctrl-c', 130, (terminal) => terminal.send('\u0003')],
  ['SIGINT', 130, (terminal) => terminal.kill('SIGINT')],
  ['SIGTERM', 143, (terminal) => terminal.kill('SIGTERM')],
];

test.each(WAYS)('%s ends with %i, everything as it was before', async (_, status, go) => {
  const { home, terminal } = realSession({ home: withTaps() });
  await inARest(terminal);
  go(terminal);
  expect(await terminal.end()).toEqual({ exitCode: status, signal: 0 });
  expectLeftInOrder(terminal, home);
  // Whoever leaves on purpose is told what stays open; nothing else stands there.
  expect(terminal.screen().replace(/\n/g, '')).toMatch(status === 0 ? STAYS_OPEN : /^$/);
});

test('a hang-up ends by its signal, which is 129 to a shell, and no complaint about the terminal that is gone', async () => {
  const { home, terminal } = realSession({ home: withTaps() });
  await inARest(terminal);
  terminal.hangUp();
  expect(await terminal.end()).toEqual({ exitCode: 0, signal: 1 });
  expect(home.of('set-done')).toHaveLength(1);
  const again = realSession({ home });
  await again.terminal.until('set 2 of 2');
});

test('a hang-up to a terminal that is still there leaves everything as it was before', async () => {
  const { home, terminal } = realSession({ home: withTaps() });
  await inARest(terminal);
  terminal.kill('SIGHUP');
  expect(await terminal.end()).toEqual({ exitCode: 0, signal: 1 });
  expectLeftInOrder(terminal, home);
});

test('a bug ends with a sentence in place of a stack trace, everything as it was before', async () => {
  const { home, terminal, order } = await drivenSession({ home: withTaps() });
  await inARest(terminal);
  await order({ do: 'crash' });
  const { exitCode } = await terminal.end();
  expect(exitCode).toBe(70);
  expectLeftInOrder(terminal, home);
  const said = terminal.screen().replace(/\n/g, '');
  expect(said).toMatch(/^holdfast met an error of its own: a bug, as the test ordered/);
  expect(said).toContain('Every set it showed as saved is on disk.');
  expect(said).not.toMatch(/\bat .*:\d+:\d+|\.ts|\.js/);
  expect(terminal.screen()).not.toContain('Back squat');
});

test('after each of them the session goes on where it was', async () => {
  const { home, terminal } = realSession({ home: withTaps() });
  await inARest(terminal);
  terminal.kill('SIGTERM');
  await terminal.end();
  const again = realSession({ home });
  await again.terminal.until('set 2 of 2');
});

test('what stood on the screen before stands there afterwards', async () => {
  const { terminal } = realSession();
  await terminal.press(' ', 'set 1 of 2');
  terminal.send('q');
  await terminal.end();
  expect(terminal.screen().replace(/\n/g, '')).toMatch(STAYS_OPEN);
});
