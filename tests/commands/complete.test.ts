import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COMMANDS, GLOBAL_OPTIONS } from '../../src/commands/command-table.ts';
import { AHome } from './a-home.ts';

const home = new AHome();
const script = (shell: string) => join(home.folder, `completion.${shell}`);

beforeAll(async () => {
  for (const shell of ['bash', 'zsh', 'fish']) {
    const { status, out } = await home.run('complete', shell);
    expect(status).toBe(0);
    writeFileSync(script(shell), out);
  }
  mkdirSync(join(home.folder, 'weeks and weeks'));
  writeFileSync(join(home.folder, 'weeks.json'), '{}');
});
afterAll(() => home.throwAway());

const isHere = (shell: string): boolean =>
  ['/bin', '/usr/bin', '/usr/local/bin', '/opt/homebrew/bin'].some((folder) =>
    existsSync(join(folder, shell)),
  );

const said = (shell: string, args: readonly string[]): string[] =>
  execFileSync(shell, args, {
    cwd: home.folder,
    encoding: 'utf8',
    env: { ...process.env, HOME: home.folder },
  })
    .split('\n')
    .filter(Boolean);

/** What bash would offer for the last of these words. */
const bash = (...words: string[]): string[] =>
  said('bash', [
    '--norc',
    '-c',
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is the shell's.
    'source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _holdfast; printf "%s\\n" "${COMPREPLY[@]}"',
    'bash',
    script('bash'),
    'holdfast',
    ...words,
  ]);

/** What fish would offer at the end of this line, without the descriptions. */
const fish = (...words: string[]): string[] =>
  said('fish', [
    '--no-config',
    '-c',
    'source $argv[1]; complete -C $argv[2]',
    script('fish'),
    ['holdfast', ...words].join(' '),
  ]).map((line) => line.split('\t')[0] ?? '');

describe.each([
  ['bash', bash],
  ['fish', fish],
] as const)('%s', (shell, offered) => {
  test.skipIf(!isHere(shell))('offers every command, and those that begin as typed', () => {
    const names = COMMANDS.map(({ name }) => name);
    expect(offered('').toSorted()).toEqual(expect.arrayContaining(names));
    expect(offered('re').toSorted()).toEqual(['rehearse', 'review']);
  });

  test.skipIf(!isHere(shell))(
    'offers the options of the command, and those of every command',
    () => {
      for (const { name, options } of COMMANDS) {
        const found = offered(name, '--');
        for (const { flags } of [...options, ...GLOBAL_OPTIONS]) {
          expect([name, found]).toEqual([name, expect.arrayContaining([flags.split(' ')[0]])]);
        }
      }
      expect(offered('weigh', '--')).not.toContain('--weeks');
    },
  );

  test.skipIf(!isHere(shell))('offers what an option or an operand may be', () => {
    expect(offered('export', '--as', '').toSorted()).toEqual(['csv', 'html', 'ics', 'json']);
    expect(offered('gear', '--belt', '').toSorted()).toEqual(['no', 'yes']);
    expect(offered('schema', 're').toSorted()).toEqual(['rehearse', 'review']);
    expect(offered('settings', 'be')).toEqual(['bell']);
    expect(offered('settings', 'bell', '').toSorted()).toEqual(['no', 'yes']);
    expect(offered('draft', '--hurts', 'k')).toEqual(['knee']);
  });

  test.skipIf(!isHere(shell))(
    'sees the command behind options with values, and behind demo',
    () => {
      expect(offered('--data', 'anywhere', '--json', 'set')).toEqual(['settings']);
      expect(offered('--program', 'weigh', 'export', '--as', 'c')).toEqual(['csv']);
      expect(offered('demo', 'rev')).toEqual(['review']);
    },
  );

  test.skipIf(!isHere(shell))('offers one operand, and files where one is asked for', () => {
    expect(offered('settings', 'bell', 'be')).toEqual([]);
    expect(offered('import', 'weeks.')).toEqual(['weeks.json']);
    expect(offered('--data', 'weeks').map((found) => found.replace(/\/$/, ''))).toEqual([
      expect.stringMatching(/^weeks\\? and\\? weeks$/),
    ]);
  });
});

test.skipIf(!isHere('zsh'))('zsh takes its script', () => {
  expect(said('zsh', ['-f', '-n', script('zsh')])).toEqual([]);
  // biome-ignore lint/suspicious/noTemplateCurlyInString: it is the shell's.
  const loaded = 'autoload -Uz compinit; compinit -u -D; source "$1"; print ${_comps[holdfast]}';
  expect(said('zsh', ['-f', '-c', loaded, 'zsh', script('zsh')])).toEqual(['_holdfast']);
});

test('another shell is refused in a sentence', async () => {
  const { status, err } = await home.run('complete', 'csh');
  expect([status, err]).toEqual([2, expect.stringContaining('bash, zsh, fish')]);
});

test('tells the scripts the lifts, days and programs of this machine', async () => {
  expect((await home.run('complete', '--words', 'lifts')).out).toContain('back-squat\n');
  expect((await home.run('complete', '--words', 'days')).out.split('\n')).toContain('A');
  expect((await home.run('complete', '--words', 'programs')).out.split('\n')).toContain(
    'three-day',
  );
});
