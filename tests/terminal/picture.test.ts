import { readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, onTestFinished, test } from 'vitest';
import { age } from '../bench/long-history.ts';
import { Emulated } from '../ui/emulated.ts';
import { aHome } from './a-session.ts';
import { BUILT, type Home, SIZES, type Size } from './home.ts';
import { Terminal } from './terminal.ts';
import { TINY_PROGRAM } from './tiny-program.ts';

/** The window's title is put away when the screens begin, after all was loaded. */
const SCREENS_BEGIN = '\u001b[22;2t';

let home: Home;
/** The screens were opened once since the last change, which is no news any more. */
beforeEach(async () => {
  home = aHome();
  const programs = { [home.data]: home.program(TINY_PROGRAM) };
  home.settings({ cautions: 'read', weightAdvice: 'no', programs });
  expect((await home.run(['weigh', '80', '--sure'])).status).toBe(0);
  await leave(open());
  age(home.folder);
  await leave(open());
});

function open(size?: Size, args: readonly string[] = []): Terminal {
  const terminal = home.open(args, size);
  onTestFinished(() => terminal.throwAway());
  return terminal;
}

async function leave(terminal: Terminal): Promise<void> {
  await terminal.until((screen) => screen.includes('begin') && isBegun(terminal));
  terminal.send('q');
  expect(await terminal.end()).toEqual({ exitCode: 0, signal: 0 });
}

const isBegun = ({ raw }: Terminal): boolean => raw.includes(SCREENS_BEGIN);

/** What was on the screen before anything was loaded that draws it. */
async function firstShown(terminal: Terminal): Promise<string> {
  await terminal.until((screen) => screen.includes('begin') && isBegun(terminal));
  return terminal.raw.slice(0, terminal.raw.indexOf(SCREENS_BEGIN));
}

test('what an earlier start began with stands there at once, and the screens are the same', async () => {
  const terminal = open();
  await terminal.until('begin');
  const [picture, modes] = [terminal.screen(), terminal.modes()];
  expect(modes).toMatchObject({ buffer: 'alternate', cursorHidden: true });
  expect(await firstShown(terminal)).toContain('begin');
  expect(terminal.screen()).toBe(picture);
});

test('it begins in the first place, wherever the cursor stood before', async () => {
  const terminal = new Terminal({
    command: '/bin/sh',
    args: ['-c', 'printf "\\n\\n\\n$ "; exec "$0" "$1"', process.execPath, BUILT],
    env: home.env(),
    cwd: home.folder,
  });
  onTestFinished(() => terminal.throwAway());
  await terminal.until('begin');
  const picture = terminal.screen();
  await firstShown(terminal);
  expect(terminal.screen()).toBe(picture);
  expect(picture).toMatch(/^ {2}Tiny/);
  await leave(terminal);
  expect(terminal.screen()).toBe('\n\n\n$');
});

test('nothing of what stood there before is left, where a terminal has no other screen', async () => {
  const terminal = open();
  await terminal.until(() => terminal.raw.split('space').length > 2);
  const other = new Emulated();
  other.stdout.write('7'.repeat(80 * 24));
  other.stdout.write(terminal.raw.replaceAll('\u001b[?1049h', ''));
  await other.until('begin');
  expect((await other.screen()).trimEnd()).toBe(terminal.screen());
});

test('a key that is pressed on it is not lost, and not echoed', async () => {
  const terminal = open();
  await terminal.until('begin');
  terminal.send(' ');
  await terminal.until('set 1 of 2');
});

test.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)('%s takes it away', async (signal) => {
  const terminal = open();
  await terminal.until('begin');
  terminal.kill(signal);
  await terminal.end();
  expect(terminal.modes()).toMatchObject({ buffer: 'normal', cursorHidden: false });
  expect(terminal.screen()).toBe('');
});

const NOT_SHOWN: Readonly<Record<string, () => Terminal | Promise<Terminal>>> = {
  'in another size': () => open(SIZES.wide),
  'to who asked for a day': () => open(SIZES.usual, ['--day', 'A']),
  'after a weigh-in': async () => {
    await home.run(['weigh', '81', '--sure']);
    return open();
  },
  'after the program was changed': () => {
    home.program(`${TINY_PROGRAM}\n# Anew.\n`);
    return open();
  },
};

test.each(Object.entries(NOT_SHOWN))('it is not shown %s', async (_, opened) => {
  expect(await firstShown(await opened())).not.toContain('begin');
});

test('what there is to be told stands on the screen below, not under the picture', async () => {
  const [name = ''] = readdirSync(join(home.data, 'journal'), {
    recursive: true,
    encoding: 'utf8',
  }).filter((each) => each.endsWith('.jsonl'));
  const path = join(home.data, 'journal', name);
  // Damaged in a way that does not show from outside.
  const { atime, mtime } = statSync(path);
  writeFileSync(path, readFileSync(path, 'utf8').replace('"weighed"', '"weighec"'));
  utimesSync(path, atime, mtime);
  const terminal = open();
  expect(await firstShown(terminal)).toMatch(/begin.*\u001b\[\?1049l.*holds no whole line/s);
  terminal.send('q');
  await terminal.end();
  expect(terminal.screen()).toContain('holds no whole line');
});
