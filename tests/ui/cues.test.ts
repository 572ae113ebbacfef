import { describe, expect, it } from 'vitest';
import type { Cue } from '../../src/terminal/cue.ts';
import { LEAN_SPRING } from './lean-spring.ts';
import { Player } from './player.ts';
import { scene } from './scene.ts';

const heardAs = (one: Cue): string => {
  if (one.cue === 'tick') return `tick ${one.left}`;
  if (one.cue === 'rest-soon') return `soon ${one.seconds}`;
  return one.cue === 'next'
    ? `next ${[one.lift, one.load, one.aim, one.plates].filter((each) => each !== null).join(', ')}`
    : one.cue;
};

const heard = (player: Player) => player.cues.splice(0).map((one) => heardAs(one));

describe('a rest of straight sets', () => {
  it('rings at its early and at its late end, once each', () => {
    const player = new Player().atFirstSet().keys('  ');
    heard(player);
    expect(heard(player.wait(179))).toEqual(['soon 60', 'soon 10']);
    expect(heard(player.wait(1))).toEqual(['rest-early']);
    expect(heard(player.wait(119))).toEqual([]);
    expect(heard(player.wait(1))).toEqual(['rest-late']);
    expect(heard(player.wait(600))).toEqual([]);
  });

  it('rings for the end that has passed when the process was stopped over both', () => {
    const player = new Player().atFirstSet().keys('  ');
    heard(player);
    player.scene.clock.jump(400_000);
    expect(heard(player.wait(1))).toEqual(['rest-late']);
  });

  it('is silent while paused, and rings later by the pause', () => {
    const player = new Player().atFirstSet().keys('  ').wait(100).keys('p');
    heard(player);
    expect(heard(player.wait(300))).toEqual([]);
    player.keys('p');
    expect(heard(player.wait(79))).toEqual(['soon 60', 'soon 10']);
    expect(heard(player.wait(1))).toEqual(['rest-early']);
  });

  it('rings later when it is made longer', () => {
    const player = new Player().atFirstSet().keys('  ').wait(170).keys('+');
    heard(player);
    expect(heard(player.wait(39))).toEqual(['soon 10']);
    expect(heard(player.wait(1))).toEqual(['rest-early']);
  });
});

describe('a cluster', () => {
  it('ticks three times before a mini-set starts by itself', () => {
    const player = new Player().atCluster().keys(' ').wait(30).keys(' ');
    heard(player);
    expect(heard(player.wait(6.9))).toEqual([]);
    expect(heard(player.wait(3.1))).toEqual(['tick 3', 'tick 2', 'tick 1', 'go']);
  });

  it('says that the next one is the last, and when it is done', () => {
    const player = new Player().atCluster().keys(' ').wait(30).keys(' ');
    for (let mini = 0; mini < 2; mini++) player.wait(16).keys(' ');
    player.wait(16);
    heard(player);
    expect(heard(player.keys(' '))).toEqual(['last-one']);
    player.wait(16);
    heard(player);
    expect(heard(player.keys(' '))[0]).toBe('cluster-done');
  });

  it('does not tick for seconds that were slept through', () => {
    const player = new Player().atCluster().keys(' ').wait(30).keys(' ');
    heard(player);
    player.scene.clock.jump(60_000);
    expect(heard(player.wait(0.001))).toEqual(['go']);
  });
});

it('a hold says when its seconds are reached', () => {
  const player = new Player().keys('<down><down><down><enter>').keys(' ');
  heard(player);
  expect(heard(player.wait(44))).toEqual([]);
  expect(heard(player.wait(1))).toEqual(['hold-reached']);
});

it('a hold of each side says when it is the other one, and when both are done', () => {
  const program = LEAN_SPRING.replace(/(lift: plank\n)/, '$1        sides: each\n');
  const over = scene({ program });
  const player = new Player(undefined, { over }).keys('<down><down><down><enter>').keys(' ');
  heard(player);
  expect(player.screen()).toContain('of 2 × 45 seconds, one side');
  expect(heard(player.wait(45))).toEqual(['other-side']);
  expect(player.screen()).toContain('of 2 × 45 seconds, the other side');
  expect(heard(player.wait(44))).toEqual([]);
  expect(heard(player.wait(1))).toEqual(['hold-reached']);
  // A space comes two seconds later.
  const { exercises } = player.keys(' ').scene.session();
  expect(exercises[3]?.done).toMatchObject([{ count: 46 }]);
});

it('another load is called out, the same one is not', () => {
  const player = new Player().keys(' ');
  expect(heard(player)).toEqual(['next Back squat, 30, 8 reps, put on 5 a side']);
  expect(heard(player.keys('  '))).toEqual(['next 45, 5 reps, take off 5, put on 10 + 2.5 a side']);
  expect(heard(player.keys('s'))).toEqual([]);
  expect(heard(player.keys('  '))).toEqual([]);
});
