import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { COMMANDS } from '../../src/commands/command-table.ts';
import { VERSION } from '../../src/commands/version.ts';
import { CAUTIONS, READINESS_QUESTIONS } from '../../src/training/cautions.ts';
import { RUNNER_KEYS } from '../../src/ui/runner/keys.ts';
import { INTERRUPT } from '../../src/ui/screen.ts';
import { manPage } from './man-page.ts';
import { markdownTable, withParts } from './marked-parts.ts';

const README = fileURLToPath(new URL('../../README.md', import.meta.url));
const frame = (name: string) => () => {
  const path = fileURLToPath(new URL(`../ui/frames/${name}.txt`, import.meta.url));
  return `\`\`\`text\n${readFileSync(path, 'utf8').replace(/\n+$/, '')}\n\`\`\``;
};

/** Of the keys whose words hang on what is going on. */
const SAID: Readonly<Record<string, string>> = {
  space: 'lift, put down, lift now: the main act',
  s: 'skip this set, or the mini-sets left',
};

function keys(): string {
  const rows = [INTERRUPT, ...RUNNER_KEYS].map(({ keys, label }) => [
    keys.length > 4 ? 'digits' : keys.map((key) => `\`${key}\``).join(' '),
    typeof label === 'string' ? label : (SAID[keys[0] ?? ''] ?? ''),
  ]);
  return markdownTable(['key', 'does'], rows);
}

const commands = (): string =>
  markdownTable(
    ['command', 'does'],
    COMMANDS.map(({ name, operands, does }) => [`\`${`${name} ${operands}`.trim()}\``, does]),
  );

const cautions = (): string =>
  [
    ...CAUTIONS.map((text) => `- ${text}`),
    '',
    ...READINESS_QUESTIONS.map((text, at) => `${at + 1}. ${text}`),
  ].join('\n');

test('the README says what the tables of the program say (npm run docs writes it anew)', async () => {
  const made = withParts(readFileSync(README, 'utf8'), {
    keys,
    commands,
    cautions,
    'screen-preview': frame('80x24/preview'),
    'screen-resting': frame('120x40/resting'),
    'screen-cluster': frame('34x16/cluster-rest'),
    'screen-summary': frame('80x24/summary'),
  });
  await expect(made).toMatchFileSnapshot(README);
});

test('the manual page says what the table of commands says (npm run docs writes it anew)', async () => {
  const page = fileURLToPath(new URL('../../man/holdfast.1', import.meta.url));
  await expect(manPage(COMMANDS, VERSION, CAUTIONS)).toMatchFileSnapshot(page);
});

test('every file and folder of the source that the documents name is there', () => {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const named = ['README.md', 'DEVELOPERS.md'].flatMap(
    (page) =>
      readFileSync(`${root}${page}`, 'utf8').match(/\b(?:src|tests|programs)\/[\w./-]*\w/g) ?? [],
  );
  expect(named.length).toBeGreaterThan(20);
  expect(named.filter((path) => !existsSync(root + path))).toEqual([]);
});
