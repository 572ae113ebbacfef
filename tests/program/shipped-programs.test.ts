import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkProgram } from '../../src/program/check/check-program.ts';
import { programFigures } from '../../src/program/check/figures.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { programOf } from './check-report.ts';

const folder = new URL('../../programs/', import.meta.url);
const files = readdirSync(folder).filter((file) => file.endsWith('.yaml'));
const shipped = (file: string) => programOf(readFileSync(new URL(file, folder), 'utf8'));

test('four programs are shipped', () => {
  expect(files.sort()).toEqual([
    'four-day.yaml',
    'three-day-lb.yaml',
    'three-day.yaml',
    'try-out.yaml',
  ]);
});

test.each(files)('%s: with a home gym the check has no word that is not accepted', (file) => {
  const program = shipped(file);
  const gear = { ...defaultGear(program.unit), safeties: true };
  expect(checkProgram(program, gear).filter(({ accepted }) => accepted === null)).toEqual([]);
});

test.each(files)('%s: without safeties it says so, and nothing else', (file) => {
  const program = shipped(file);
  const open = checkProgram(program, defaultGear(program.unit)).filter(
    ({ accepted }) => accepted === null,
  );
  expect(open.filter(({ rule, severity }) => rule !== 'safeties' || severity === 'error')).toEqual(
    [],
  );
});

describe.each(files.filter((file) => file !== 'try-out.yaml'))('%s', (file) => {
  const figures = programFigures(shipped(file));

  // Common practice in a cut; the numbers are ours.
  test('every muscle with work of its own gets 6 to 10 hard sets on two or three days', () => {
    const direct = figures.muscles.filter(({ directDays }) => directDays > 0);
    expect(direct.length).toBeGreaterThan(8);
    for (const { muscle, hardSets, days } of direct) {
      expect(hardSets, muscle).toBeGreaterThanOrEqual(6);
      expect(hardSets, muscle).toBeLessThanOrEqual(10);
      expect(days, muscle).toBeGreaterThanOrEqual(2);
      expect(days, muscle).toBeLessThanOrEqual(3);
    }
  });

  test('a session takes half an hour to an hour', () => {
    for (const { name, minutes } of figures.days) {
      expect(minutes, name).toBeGreaterThanOrEqual(30);
      expect(minutes, name).toBeLessThanOrEqual(60);
    }
  });
});

test('a day of the program for trying things out is over in three minutes', () => {
  for (const { minutes } of programFigures(shipped('try-out.yaml')).days) {
    expect(minutes).toBeLessThanOrEqual(3);
  }
});
