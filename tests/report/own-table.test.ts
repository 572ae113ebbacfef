import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/program/catalogue.ts';
import { readOwnTable } from '../../src/report/own-table/read-own-table.ts';
import { day } from '../cut/made.ts';

const LIFTS = ['bench-press', 'plank', 'pull-up'].map((key) => CATALOGUE.get(key)!);

/** A line of such a table, with what the cells that are not named usually hold. */
function read(cells: Readonly<Record<string, string>>) {
  const line = {
    ...{ date: '2026-01-02', exercise: 'bench-press', weight: '80', reps: '5', sets: '1' },
    ...cells,
  };
  const text = `${Object.keys(line).join(';')}\n${Object.values(line).join(';')}\n`;
  return readOwnTable(text, {
    columns: null,
    dayFirst: null,
    unit: 'kg',
    liftsOf: (name) => LIFTS.filter(({ key }) => key === name),
    until: day('2026-02-01'),
  });
}

/** What is told at each end of what can be, and one past it, which finds no place. */
test.each([
  ['reps', {}, ['1', '200'], ['0', '201', '2.5']],
  ['reps', { exercise: 'plank', weight: '0' }, ['1', '3600'], ['0', '3601']],
  ['sets', {}, ['1', '20'], ['0', '21', '1.5']],
  ['weight', {}, ['0', '1000'], ['-1', '1001']],
  ['weight', { exercise: 'pull-up' }, ['-1000', '1000'], ['-1001', '1001']],
  ['RPE', {}, ['1', '10'], ['0.5', '10.5']],
  ['RIR', {}, ['0', '10'], ['-1', '11']],
  ['body weight', {}, ['0.1'], ['0', '-1']],
  ['date', {}, ['2026-02-01'], ['2026-02-02']],
] as const)('%s %j', (column, usual, held, past) => {
  const isPlaced = (cell: string) => read({ ...usual, [column]: cell }).unplaced.length === 0;
  expect(held.filter((cell) => !isPlaced(cell))).toEqual([]);
  expect(past.filter(isPlaced)).toEqual([]);
});

test('a rating is told as the reps that it leaves at least, to the half', () => {
  // Zourdos 2016: 10 is none left, 9.5 perhaps one, 8 two; under 5 nothing is told.
  const reserve = (rpe: string) => read({ RPE: rpe }).sets[0]?.reserve;
  expect(['10', '9.5', '9', '8', '7,9', '4'].map(reserve)).toEqual([0, 0, 1, 2, 2, null]);
});
