import { expect, test } from 'vitest';
import { LEAN_SPRING } from './lean-spring.ts';
import { Player } from './player.ts';

const restingOn = (rest: string) =>
  new Player(undefined, { program: LEAN_SPRING.replaceAll('rest: 3-5 min', `rest: ${rest}`) })
    .atFirstSet()
    .keys('  ')
    .wait(61)
    .screen();

test('a rest with an early and a late end tells what may be added, one of one length does not', () => {
  expect(restingOn('3-5 min')).toContain('+2:00 at most');
  expect(restingOn('3 min')).toContain('to the next set');
  expect(restingOn('3 min')).not.toContain('at most');
  expect(restingOn('3-5 min')).toContain('╂');
  expect(restingOn('3 min')).not.toContain('╂');
});
