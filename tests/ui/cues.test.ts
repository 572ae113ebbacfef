import { describe, expect, it } from 'vitest';
import { Player } from './player.ts';

const heard = (player: Player) =>
  player.cues
    .splice(0)
    .map((one) =>
      one.cue === 'tick' ? `tick ${one.left}` : one.cue === 'load' ? `load ${one.amount}` : one.cue,
    );

describe('a rest of straight sets', () => {
  it('rings at its early and at its late end, once each', () => {
    const player = new Player().atFirstSet().keys('  ');
    heard(player);
    expect(heard(player.wait(179))).toEqual([]);
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
    expect(heard(player.wait(79))).toEqual([]);
    expect(heard(player.wait(1))).toEqual(['rest-early']);
  });

  it('rings later when it is made longer', () => {
    const player = new Player().atFirstSet().keys('  ').wait(170).keys('+');
    heard(player);
    expect(heard(player.wait(39))).toEqual([]);
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

it('another load is called out, the same one is not', () => {
  const player = new Player().keys(' ');
  expect(heard(player)).toEqual(['load 30']);
  expect(heard(player.keys('  '))).toEqual(['load 45']);
  expect(heard(player.keys('s'))).toEqual([]);
  expect(heard(player.keys('  '))).toEqual([]);
});
