import { describe, expect, it } from 'vitest';
import { environment } from '../../src/terminal/environment.ts';

const around = (
  env: Record<string, string>,
  argv: string[] = [],
  stdoutIsTerminal = true,
  stdinIsTerminal = true,
) => environment({ env, argv, stdinIsTerminal, stdoutIsTerminal });

describe('colour', () => {
  // https://no-color.org: any non-empty value; the option on the command line is stronger.
  it.each<[string, Record<string, string>, string[], boolean, boolean]>([
    ['a terminal has it', {}, [], true, true],
    ['a pipe has not', {}, [], false, false],
    ['the option is strongest', { FORCE_COLOR: '1' }, ['--no-color'], true, false],
    ['an option after -- is none', {}, ['--', '--no-color'], true, true],
    ['an option before -- is one', {}, ['--no-color', '--', 'x'], true, false],
    ['NO_COLOR', { NO_COLOR: '1' }, [], true, false],
    ['NO_COLOR of any value', { NO_COLOR: '0' }, [], true, false],
    ['an empty NO_COLOR says nothing', { NO_COLOR: '' }, [], true, true],
    ['NO_COLOR beats FORCE_COLOR', { NO_COLOR: '1', FORCE_COLOR: '1' }, [], true, false],
    ['FORCE_COLOR in a pipe', { FORCE_COLOR: '1' }, [], false, true],
    ['FORCE_COLOR=0', { FORCE_COLOR: '0' }, [], true, false],
    ['FORCE_COLOR beats a dumb terminal', { FORCE_COLOR: '3', TERM: 'dumb' }, [], true, true],
    ['a dumb terminal', { TERM: 'dumb' }, [], true, false],
  ])('%s', (_, env, argv, terminal, wanted) => {
    const found = around(env, argv, terminal);
    expect(found.colour).toBe(wanted);
    expect(found.variables.FORCE_COLOR).toBe(wanted ? undefined : '0');
  });
});

describe('the full-screen program', () => {
  it.each<[string, Record<string, string>, boolean, boolean, boolean]>([
    ['needs a terminal on both sides', {}, true, true, true],
    ['not into a pipe', {}, false, true, false],
    ['not out of a pipe', {}, true, false, false],
    ['not on a dumb terminal', { TERM: 'dumb' }, true, true, false],
  ])('%s', (_, env, out, input, wanted) => {
    expect(around(env, [], out, input).interactive).toBe(wanted);
  });

  it('takes CI away from Ink, which would draw only the last frame', () => {
    const { variables } = around({ CI: 'true' });
    expect('CI' in variables && variables.CI === undefined).toBe(true);
    expect('CI' in around({ CI: 'true' }, [], false).variables).toBe(false);
  });
});

it.each([
  [{ INK_SCREEN_READER: 'true' }, true],
  [{ INK_SCREEN_READER: 'false' }, false],
  [{}, false],
])('with %j in the environment a screen reader is %s', (env, wanted) =>
  expect(around(env).screenReader).toBe(wanted),
);
