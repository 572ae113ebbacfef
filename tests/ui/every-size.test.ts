import { expect, it } from 'vitest';
import { LEAST } from '../../src/ui/too-small.ts';
import { Player } from './player.ts';

/**
 * What there is room for as a window grows, kept as text: a line for each size, a sign for each of its
 * rows. `█` digits, `━` the rest that burns down, `·` nothing, a letter the word that a row begins with.
 */
const SCENES: Readonly<Record<string, (player: Player) => Player>> = {
  'before-the-session': (player) => player,
  'warming-up': (player) => player.keys(' '),
  lifting: (player) => player.atFirstSet().keys(' '),
  resting: (player) => player.atFirstSet().keys('  5').wait(61),
  'in-a-cluster': (player) => player.atCluster().keys(' ').wait(30).keys(' ').wait(3),
};

const signOf = (row: string): string => {
  if (/[█▀▄]/.test(row)) return '█';
  return row.includes('━') ? '━' : (row.trim()[0] ?? '·');
};

it.each(Object.entries(SCENES))('%s', async (name, play) => {
  const player = play(new Player());
  const seenAt = (columns: number, rows: number) => {
    player.store.resize({ columns, rows });
    return player.screen().split('\n').map(signOf).join('');
  };
  const grown = (least: number, most: number, at: (size: number) => string) =>
    Array.from({ length: most - least + 1 }, (_, by) => `${least + by} ${at(least + by)}`);
  const told = [
    'Rows, at 80 columns',
    ...grown(LEAST.rows, 44, (rows) => seenAt(80, rows)),
    'Columns, at 24 rows',
    ...grown(LEAST.columns, 124, (columns) => seenAt(columns, 24)),
  ];
  await expect(`${told.join('\n')}\n`).toMatchFileSnapshot(`frames/sizes/${name}.txt`);
});
