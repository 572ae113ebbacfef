import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { COMMANDS } from '../../src/commands/command-table.ts';
import { AHome } from './a-home.ts';
import { doSession, lifterOf, withTinyProgram } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
  withTinyProgram(home);
});
afterEach(() => home.throwAway());

/** Puts text on the clipboard of most terminals, and turns what follows around. */
const RAW = '\u001b]52;c;aGVsbG8=\u0007\u009b31m\u202eevil';
const ACTS_ON_A_TERMINAL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e]/;

test.each(COMMANDS.map(({ name }) => name).filter((name) => name !== 'train' && name !== 'demo'))(
  'whatever %s is asked with, no raw code is told back',
  async (name) => {
    for (const args of [[RAW], ['--out', RAW], ['--as', RAW], [RAW, RAW], ['--day', RAW]]) {
      const { out, err, status } = await home.run(name, ...args);
      expect(`${out}${err}`).not.toMatch(ACTS_ON_A_TERMINAL);
      expect([0, 1, 2]).toContain(status);
    }
  },
);

test('notes, bars and file names come out without raw codes, by whatever way', async () => {
  doSession(home);
  const lifter = lifterOf(home);
  const journal = lifter.journal();
  const [session] = journal.history().closed();
  const gear = lifter.gear();
  journal.record({
    type: 'gear-set',
    gear: { ...gear, bars: gear.bars.map((bar) => ({ ...bar, name: RAW })) },
  });
  expect(session).toBeDefined();
  writeFileSync(join(home.folder, 'tiny.yaml'), `name: "\\e]52;c;aGk=\\a${'x'}"\n`);
  for (const command of [
    ['gear'],
    ['doctor'],
    ['today'],
    ['history'],
    ['export', '--as', 'csv'],
    ['export', '--as', 'ics'],
    ['export', '--as', 'html'],
    ['import', join(home.folder, `${RAW}.json`)],
  ]) {
    const { out, err } = await home.run(...command);
    expect(`${out}${err}`, command.join(' ')).not.toMatch(ACTS_ON_A_TERMINAL);
  }
});
