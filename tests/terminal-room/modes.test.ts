import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import headless from '@xterm/headless';
import { describe, expect, it } from 'vitest';
import {
  enterModes,
  leaveModes,
  progressCode,
  tapMode,
  titleCode,
  writeLast,
} from '../../src/terminal/modes.ts';

async function terminalAfter(...bytes: string[]) {
  const terminal = new headless.Terminal({ cols: 20, rows: 5, allowProposedApi: true });
  let title = 'before';
  terminal.onTitleChange((next) => {
    title = next;
  });
  await new Promise<void>((resolve) => terminal.write(bytes.join(''), resolve));
  const { mouseTrackingMode, bracketedPasteMode } = terminal.modes;
  return {
    buffer: terminal.buffer.active.type,
    mouse: mouseTrackingMode,
    paste: bracketedPasteMode,
    title,
  };
}

const INK_ENTERS = '\u001b[?1049h\u001b[?25l';

describe('modes', () => {
  it('go in with taps and paste', async () => {
    expect(await terminalAfter(enterModes({ taps: true, progress: false }))).toMatchObject({
      mouse: 'vt200',
      paste: true,
    });
  });

  it('go in without taps where they are not wanted', async () => {
    expect(await terminalAfter(enterModes({ taps: false, progress: false }))).toMatchObject({
      mouse: 'none',
    });
  });

  it.each([true, false])('all go out, taps %s', async (taps) => {
    const wishes = { taps, progress: true };
    const end = await terminalAfter(
      INK_ENTERS,
      enterModes(wishes),
      titleCode('2:47 rest'),
      leaveModes(wishes),
    );
    expect(end).toEqual({ buffer: 'normal', mouse: 'none', paste: false, title: '' });
  });

  it('go out twice without harm', async () => {
    const out = leaveModes({ progress: false });
    expect(
      await terminalAfter(INK_ENTERS, enterModes({ taps: true, progress: false }), out, out),
    ).toMatchObject({
      buffer: 'normal',
      mouse: 'none',
    });
  });

  it('of taps are switched while the program runs', async () => {
    expect(await terminalAfter(tapMode(true))).toMatchObject({ mouse: 'vt200' });
    expect(await terminalAfter(tapMode(true), tapMode(false))).toMatchObject({ mouse: 'none' });
  });

  it('never ask for any-motion reports, which make a common Android terminal drop taps', () => {
    expect(enterModes({ taps: true, progress: true })).not.toContain('1003');
  });
});

it('progress is written in whole percent and taken away', () => {
  expect(progressCode(0.333)).toBe('\u001b]9;4;1;33\u0007');
  expect(progressCode(null)).toBe('\u001b]9;4;0\u0007');
  expect(leaveModes({ progress: true })).toContain('\u001b]9;4;0\u0007');
  expect(leaveModes({ progress: false })).not.toContain(']9;4');
});

it('writes its last at once, and nothing where the terminal is gone', () => {
  const folder = mkdtempSync(join(tmpdir(), 'holdfast-'));
  const path = join(folder, 'terminal');
  const fd = openSync(path, 'w');
  writeLast({ fd }, 'bye');
  expect(readFileSync(path, 'utf8')).toBe('bye');
  closeSync(fd);
  expect(() => writeLast({ fd }, 'again')).not.toThrow();
  expect(() => writeLast({}, 'again')).not.toThrow();
  rmSync(folder, { recursive: true });
});
