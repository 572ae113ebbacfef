import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { aHome } from './a-session.ts';
import { type Home, SIZES, type Size } from './home.ts';
import type { Terminal } from './terminal.ts';

/** Opens the demo in a terminal; gives the folder that it says it is in. */
async function openDemo(
  size: Size = SIZES.usual,
): Promise<{ home: Home; terminal: Terminal; folder: string }> {
  const home = aHome();
  // Inside the home, so that it goes with it even where a test fails on the way.
  const terminal = home.open(['demo'], size, { TMPDIR: home.folder });
  onTestFinished(() => terminal.throwAway());
  const screen = await terminal.until('begin');
  expect(screen).toMatch(/Demo: twelve|Demo · removed when you leave/);
  const name = readdirSync(home.folder).find((each) => each.startsWith('holdfast-demo-')) ?? '';
  const folder = join(home.folder, name);
  return { home, terminal, folder };
}

describe('the demo in a terminal', () => {
  it('says what it is and where, opens everything, and leaves nothing behind', async () => {
    const { home, terminal, folder } = await openDemo();
    // A long path is broken over lines.
    expect(terminal.screen().replace(/\s+/g, '')).toContain(folder);
    expect(existsSync(folder)).toBe(true);
    await terminal.press('t', 'Strength kept');
    expect(terminal.screen()).toMatch(/^ *Demo$/m);
    await terminal.press('\u001b', 'begin');
    await terminal.press('h', 'History');
    await terminal.press('\r', 'e1RM, kg');
    await terminal.press('\r', 'Set 1');
    await terminal.press('\u001b', 'e1RM, kg');
    await terminal.press('\u001b', 'History');
    await terminal.press('\u001b', 'begin');
    await terminal.press(' ', /WARM UP|READY/);
    terminal.send('q');
    expect(await terminal.end()).toMatchObject({ exitCode: 0 });
    expect(terminal.modes()).toMatchObject({ buffer: 'normal', cursorHidden: false });
    expect(existsSync(folder)).toBe(false);
    expect(home.events()).toEqual([]);
  });

  it.each([
    ['ctrl-c', (terminal: Terminal) => terminal.send('\u0003'), 130],
    ['a signal', (terminal: Terminal) => terminal.kill('SIGTERM'), 143],
  ] as const)('takes its folder away after %s', async (_, leave, status) => {
    const { terminal, folder } = await openDemo();
    leave(terminal);
    expect(await terminal.end()).toMatchObject({ exitCode: status });
    expect(existsSync(folder)).toBe(false);
  });

  it('shows review, history and scales on the smallest screen', async () => {
    const { terminal } = await openDemo(SIZES.upright);
    await terminal.press('t', /▸ (Do less|You may do more)/);
    await terminal.press('q', 'begin');
    await terminal.press('h', /sessions/);
    await terminal.press('q', 'begin');
    await terminal.press('i', 'Weigh in');
    await terminal.press('79.3', /[█▀▄]/);
    await terminal.press('\r', 'Saved: 79.3 kg.');
  });
});
