import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { main } from '../../src/commands/main.ts';
import { AHome } from './a-home.ts';

let home: AHome;
beforeEach(async () => {
  home = new AHome();
  writeFileSync(join(home.folder, 'table.csv'), TABLE);
  await home.run('gear', '--plates', '20kg=4');
});
afterEach(() => home.throwAway());

const TABLE = `Date,Movement,Weight,Reps
2026-11-16,Back squat,100,5
`;

/** Runs a command with a terminal on one side, or both; what it said, and where `answer` was asked for. */
async function at(
  sides: { readonly stdin: boolean; readonly stdout: boolean },
  line: readonly string[],
  answer = '',
) {
  const stdin = Object.assign(new PassThrough(), { isTTY: sides.stdin, setRawMode: () => {} });
  const stdout = Object.assign(new PassThrough(), { isTTY: sides.stdout, columns: 80 });
  const said: string[] = [];
  let asked = 0;
  stdout.on('data', (bytes: Buffer) => {
    said.push(String(bytes));
    if (!String(bytes).endsWith(': ')) return;
    asked += 1;
    stdin.write(`${answer}\n`);
  });
  const ports = {
    ...home.ports(),
    stdin: stdin as unknown as NodeJS.ReadStream,
    stdout: stdout as unknown as NodeJS.WriteStream,
  };
  const status = await main(ports, line);
  return { status, asked, said: said.join('') };
}

const BOTH = { stdin: true, stdout: true };
const owned = async () => (await home.json('gear')).gear;

describe.each([
  ['gear', ['gear', '--defaults', 'lb']],
  ['import', ['import', 'table.csv']],
  ['draft', ['draft', '--print']],
])('%s', (_, line) => {
  test.each([
    ['what is typed comes from elsewhere', { stdin: false, stdout: true }],
    ['what is said goes elsewhere', { stdin: true, stdout: false }],
  ])('asks nobody where %s', async (__, sides) => {
    expect((await at(sides, line)).asked).toBe(0);
  });

  test('asks at a terminal', async () => {
    expect((await at(BOTH, line)).asked).toBeGreaterThan(0);
  });
});

test('a document is printed without a question', async () => {
  for (const line of [
    ['gear', '--defaults', 'lb', '--json'],
    ['import', 'table.csv', '--json'],
  ]) {
    expect((await at(BOTH, line)).asked).toBe(0);
  }
});

test('only a yes takes the gear away; what is neither yes nor no is the usual answer, no', async () => {
  const own = await owned();
  for (const answer of ['', 'no', 'n', 'perhaps']) {
    await at(BOTH, ['gear', '--defaults', 'lb'], answer);
    expect(await owned()).toEqual(own);
  }
  await at(BOTH, ['gear', '--defaults', 'lb'], 'Y');
  expect(await owned()).toMatchObject({ unit: 'lb' });
});
