import { expect, test } from 'vitest';
import { type PastDay, scene } from '../ui/scene.ts';

const stateAfter = (...past: readonly PastDay[]) => scene({ past }).coach.today().state;

test('today is done once a set of it was', () => {
  const left = { day: 'A', sets: ['-', '-', '-', '-'] };
  const begun = { day: 'A', sets: ['80x8@2', '-', '-', '-'] };
  expect(stateAfter({ ago: 0, ...begun })).toBe('done-today');
  expect(stateAfter({ ago: 0, ...left })).toBe('due');
  expect(stateAfter({ ago: 1, ...begun })).toBe('due');
});
