import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { aHome, drivenSession } from './a-session.ts';
import { BUILT, type Home } from './home.ts';
import { TINY_PROGRAM } from './tiny-program.ts';

const STACK_TRACE = /\n\s+at |\.(ts|js|mjs):\d+:\d+|node:internal/;
const COLOUR = /\u001b\[[0-9;]*m/;

/** Runs the program without a terminal; whatever it says, it says it in sentences. */
async function run(home: Home, args: readonly string[], env: Record<string, string> = {}) {
  const found = await home.run(args, env);
  expect(found.stdout + found.stderr).not.toMatch(STACK_TRACE);
  expect(found.stdout + found.stderr).not.toContain('error of its own');
  return found;
}

const withProgram = (change: (text: string) => string) => {
  const home = aHome();
  return { home, args: ['--program', home.program(change(TINY_PROGRAM))] };
};

describe('what cannot be read is named, with its place, and nothing is made', () => {
  const expectRefused = async (home: Home, args: readonly string[], wanted: readonly RegExp[]) => {
    const { status, stdout, stderr } = await run(home, args);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    for (const words of wanted) expect(stderr).toMatch(words);
    expect(home.events()).toEqual([]);
  };

  test('an unknown program', async () => {
    await expectRefused(aHome(), ['--program', 'no-such'], [/no program "no-such"/]);
    await expectRefused(aHome(), ['--program', 'tree-day'], [/Did you mean "three-day"\?/]);
  });

  test('a program that is not YAML', async () => {
    const { home, args } = withProgram(() => 'name: "Tiny\ndays: [\n');
    await expectRefused(home, args, [/own\.yaml:\d+:\d+: /]);
  });

  test('a program that is empty', async () => {
    const { home, args } = withProgram(() => '');
    await expectRefused(home, args, [/own\.yaml/]);
  });

  test('wrong types, all of them at once', async () => {
    const { home, args } = withProgram((text) =>
      text.replace('sets: 2', 'sets: two').replace('unit: kg', 'unit: stone'),
    );
    await expectRefused(home, args, [/own\.yaml:2:7: .*stone/, /own\.yaml:10:15: .*two/]);
  });

  test.each(['0', '99', 'many', '8-5', '-3', '5-8-9', '1.5'])('reps of %s', async (reps) => {
    const { home, args } = withProgram((text) => text.replace('reps: 5-8', `reps: ${reps}`));
    await expectRefused(home, args, [new RegExp(`own\\.yaml:11:15: .*${reps}`)]);
  });

  test('an unknown key, with the nearest known one', async () => {
    const { home, args } = withProgram((text) => text.replace('reps: 5-8', 'resp: 5-8'));
    await expectRefused(home, args, [/own\.yaml:11:9: .*resp/, /reps/]);
  });

  test('an unknown day', async () => {
    const { home, args } = withProgram((text) => text);
    await expectRefused(home, [...args, '--day', 'Z'], [/no day "Z"/]);
  });
});

describe('folders and files that cannot be used', () => {
  test.each(['/dev/null/data', '/proc/none/data'])('%s as the data folder', async (data) => {
    const home = aHome();
    const args = ['--program', home.program(TINY_PROGRAM), '--data', data];
    const { status, stderr } = await run(home, ['weigh', '80 kg', ...args]);
    expect(status).toBe(2);
    expect(stderr).toMatch(new RegExp(`${data}.*(a file stands|not there|--data)`));
  });

  test('a data folder that cannot be made, found when a session begins', async () => {
    const { terminal } = await drivenSession({ args: ['--data', '/proc/none'] });
    await terminal.until('space begin');
    const screen = await terminal.press(' ', 'Nothing was saved in /proc/none');
    expect(screen).toContain('space begin');
    terminal.send('q');
    expect((await terminal.end()).exitCode).toBe(0);
  });

  test('a file in place of the data folder', async () => {
    const home = aHome();
    writeFileSync(join(home.folder, 'taken'), '');
    const { terminal } = await drivenSession({ home, args: ['--data', 'taken'] });
    expect((await terminal.end()).exitCode).toBe(2);
    expect(terminal.screen().replace(/\n/g, '')).toContain(
      'a file stands where a folder should be',
    );
  });

  test('a folder in place of the settings file', async () => {
    const home = aHome();
    home.settings({});
    const settings = join(home.folder, 'other', 'holdfast', 'settings.json');
    mkdirSync(settings, { recursive: true });
    const { status, stderr } = await run(home, ['today', '--program', home.program(TINY_PROGRAM)], {
      XDG_CONFIG_HOME: join(home.folder, 'other'),
    });
    expect(status).toBe(0);
    expect(stderr).toContain('The settings in');
  });

  test('settings that are no JSON', async () => {
    const home = aHome();
    writeFileSync(join(home.folder, 'config', 'holdfast', 'settings.json'), '{"bell": ');
    const { status, stderr } = await run(home, ['today']);
    expect(status).toBe(0);
    expect(stderr).toContain('it is not JSON');
  });
});

describe('a disk that fails in mid-session', () => {
  test.each([
    ['ENOSPC', /the disk is full\.[^.]* do it again\./],
    ['EIO', /the disk reports an error[^.]*\.[^.]* do it again\./],
    ['EROFS', /can only be read\.[^.]*--data\./],
  ])('%s is said, nothing is lost, and it goes on', async (code, words) => {
    const { home, terminal, order } = await drivenSession();
    await terminal.press(' ', 'set 1 of 2');
    await terminal.press(' ', '▐ LIFT');
    const before = home.events();
    await order({ do: 'pass', ms: 2_000 });
    await terminal.until('space put down');
    await order({ do: 'fail', code, after: 0 });
    terminal.send(' ');
    // Whatever the code, it is a sentence with what to do, and the set is not called saved.
    await terminal.until(/Nothing was saved in/);
    expect(terminal.screen()).toMatch(words);
    expect(terminal.screen()).not.toContain('saved as planned');
    expect(terminal.screen()).toContain('▐ LIFT');
    expect(home.events()).toEqual(before);
    await order({ do: 'mend' });
    await terminal.press(' ', 'saved as planned: 6 reps');
    expect(home.of('set-done')).toHaveLength(1);
    terminal.send('q');
    expect((await terminal.end()).exitCode).toBe(0);
    const { stderr } = await run(home, ['today', '--program', home.program(TINY_PROGRAM)]);
    expect(stderr).toBe('');
  });
});

describe('the command line', () => {
  test('an unknown command is named, with the nearest', async () => {
    const { status, stdout, stderr } = await run(aHome(), ['tody']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/no command "tody".*"today"/);
  });

  test('an unknown option is named, with the nearest', async () => {
    const { status, stdout, stderr } = await run(aHome(), ['today', '--jsn']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/--jsn[\s\S]*--json/);
  });

  test('an operand too many, an option without its value', async () => {
    expect((await run(aHome(), ['today', 'A'])).status).toBe(2);
    expect((await run(aHome(), ['today', '--day'])).status).toBe(2);
  });

  test('--help and --version go to stdout', async () => {
    const help = await run(aHome(), ['--help']);
    expect(help).toMatchObject({ status: 0, stderr: '' });
    expect(help.stdout).toMatch(/^holdfast runs your strength sessions/);
    expect(help.stdout).toContain('Not medical advice');
    expect((await run(aHome(), ['today', '--help'])).stdout).toContain('--day');
    const version = await run(aHome(), ['--version']);
    expect(version).toMatchObject({ status: 0, stderr: '' });
    expect(version.stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  test('global options stand before or after the command', async () => {
    const home = aHome();
    const program = home.program(TINY_PROGRAM);
    const before = await run(home, ['--program', program, '--json', 'today']);
    const after = await run(home, ['today', '--json', `--program=${program}`]);
    expect(before.stdout).toBe(after.stdout);
    expect(JSON.parse(after.stdout)).toMatchObject({ program: 'Tiny' });
  });
});

describe('without a terminal', () => {
  test('the bare command prints today, and makes no file', async () => {
    const home = aHome();
    const found = await run(home, ['--program', home.program(TINY_PROGRAM)]);
    expect(found).toMatchObject({ status: 0, stderr: '' });
    expect(found.stdout).toContain('Back squat');
    expect(found.stdout).toContain('40 kg');
    expect(found.stdout).not.toContain('\u001b');
    expect(readdirSync(home.folder)).not.toContain('data');
  });

  test('train prints today as well', async () => {
    const home = aHome();
    const { status, stdout } = await run(home, ['train', '--program', home.program(TINY_PROGRAM)]);
    expect(status).toBe(0);
    expect(stdout).toContain('Back squat');
  });
});

describe('where the output goes', () => {
  const shell = (home: Home, command: string) =>
    new Promise<{ status: number | null; stdout: string; stderr: string }>((resolve) => {
      const child = spawn('/bin/sh', ['-c', command], { env: home.env(), cwd: home.folder });
      let [stdout, stderr] = ['', ''];
      child.stdout.on('data', (data) => {
        stdout += data;
      });
      child.stderr.on('data', (data) => {
        stderr += data;
      });
      child.on('close', (status) => resolve({ status, stdout, stderr }));
    });
  const program = `'${process.execPath}' '${BUILT}'`;

  test('a reader that has seen enough is no error', async () => {
    const found = await shell(aHome(), `${program} --help | head -1`);
    expect(found).toMatchObject({ status: 0, stderr: '' });
    expect(found.stdout).toMatch(/^holdfast runs your strength sessions.*\n$/);
  });

  test.each(['today', '--version'])(
    '%s to a full device is an error in a sentence',
    async (words) => {
      const { status, stderr } = await shell(aHome(), `${program} ${words} > /dev/full`);
      expect(status).toBe(2);
      expect(stderr).toBe('Nothing could be written: ENOSPC.\n');
    },
  );

  test('a large document arrives whole in a pipe', async () => {
    const { stdout } = await shell(aHome(), `${program} today --json | cat`);
    expect(JSON.parse(stdout)).toHaveProperty('exercises');
  });

  test('TERM=dumb prints today in place of the screens, without any code', async () => {
    const home = aHome();
    const terminal = home.open(['--program', home.program(TINY_PROGRAM)], undefined, {
      TERM: 'dumb',
    });
    expect((await terminal.end()).exitCode).toBe(0);
    expect(terminal.screen()).toContain('Back squat');
    expect(terminal.raw).not.toContain('\u001b');
  });

  test.each([
    ['NO_COLOR', { NO_COLOR: '1' }, []],
    ['--no-color', {}, ['--no-color']],
  ])('%s takes every colour from the screens', async (_, env, args) => {
    const { terminal, pass } = await drivenSession({ env, args });
    await terminal.press(' ', 'set 1 of 2');
    await terminal.press(' ', '▐ LIFT');
    await terminal.press(' ', 'saved as planned');
    await pass(9);
    await terminal.until('the rest ended');
    expect(terminal.raw).not.toMatch(COLOUR);
  });

  test('without NO_COLOR there are colours', async () => {
    const { terminal } = await drivenSession();
    await terminal.until('space begin');
    expect(terminal.raw).toMatch(COLOUR);
  });

  test('FORCE_COLOR does not colour what goes to a file', async () => {
    const home = aHome();
    const { stdout } = await run(home, ['today'], { FORCE_COLOR: '1' });
    expect(stdout).not.toMatch(COLOUR);
  });
});

test('every file of a session is the lifter’s alone', async () => {
  const { home, terminal } = await drivenSession();
  await terminal.press(' ', 'set 1 of 2');
  const files = readdirSync(home.data, { recursive: true, encoding: 'utf8' });
  const journal = files.filter((name) => name.endsWith('.jsonl'));
  expect(journal).toHaveLength(1);
  expect(statSync(join(home.data, journal[0] ?? '')).mode & 0o077).toBe(0);
  expect(statSync(home.data).mode & 0o077).toBe(0);
});
