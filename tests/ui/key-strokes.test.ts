import { describe, expect, it } from 'vitest';
import { LEAST } from '../../src/ui/too-small.ts';
import { PHONE, Player } from './player.ts';
import { demoScene } from './scene.ts';

/** Keys that `act` takes. */
function strokes(player: Player, act: () => void): number {
  const before = player.pressed;
  act();
  return player.pressed - before;
}

describe('almost no keys', () => {
  it('a straight set done as planned costs two', () => {
    const player = new Player().atFirstSet();
    expect(strokes(player, () => player.keys(' ').wait(40).keys(' '))).toBe(2);
    expect(player.sets(0)).toBe('7@-');
    expect(player.scene.facts().at(-1)).toMatchObject({ type: 'set-done', entered: 'as-planned' });
  });

  it('a whole cluster of five sets done as planned costs six', () => {
    const player = new Player().atCluster().wait(0);
    const cost = strokes(player, () => {
      player.keys(' ').wait(40).keys(' ');
      for (let mini = 0; mini < 4; mini++) player.wait(10 + 8).keys(' ');
    });
    expect(cost).toBe(6);
    expect(player.sets(2)).toBe('14@- 4@- 4@- 4@- 4@-');
    expect(player.scene.facts().at(-1)).toMatchObject({
      type: 'cluster-ended',
      reason: 'most-sets',
    });
  });

  it.each([
    ['its reps', '5<enter>', '5@- 6@-'],
    ['its reserve', '<tab>0<enter>', '7@0 6@-'],
    ['its reps and its reserve', '5<tab>0<enter>', '5@0 6@-'],
  ])('correcting %s after the set costs at most four', (_, keys, wanted) => {
    const player = new Player().atFirstSet().keys('  ');
    expect(strokes(player, () => player.keys(keys))).toBeLessThanOrEqual(4);
    player.wait(200).keys('  ');
    expect(player.sets(0)).toBe(wanted);
  });

  it.each([
    ['one more rep', 'b<up><enter>', '8@- 6@-'],
    ['other reps', 'b5<enter>', '5@- 6@-'],
    ['another reserve', 'b<tab>2<enter>', '7@2 6@-'],
  ])('correcting the set before the last one by %s costs at most four', (_, keys, wanted) => {
    const player = new Player().atFirstSet().keys('  ').wait(200).keys('  ');
    expect(strokes(player, () => player.keys(keys))).toBeLessThanOrEqual(4);
    expect(player.sets(0)).toBe(wanted);
  });

  it('every set of the session is confirmed with one key at its end', () => {
    const player = new Player().atFirstSet();
    for (let set = 0; set < 3; set++) player.keys(' ').wait(30).keys(' ').wait(190);
    player.keys('s');
    for (let set = 0; set < 2; set++) player.keys(' ').wait(30).keys(' ').wait(190);
    player.keys('s  ');
    for (let mini = 0; mini < 4; mini++) player.wait(16).keys(' ');
    player.wait(200).keys(' ').wait(45).keys(' ');
    expect(player.screen()).toContain('Saved as planned.');
    expect(strokes(player, () => player.keys(' '))).toBe(1);
    expect(player.store.model().ui.screen.kind).toBe('summary');
    const entered = player.scene
      .session()
      .exercises.flatMap(({ done }) => done.map((set) => set.entered));
    expect(new Set(entered)).toEqual(new Set(['confirmed']));
  });
});

describe('a space pressed again right after the last set', () => {
  it.each([PHONE, LEAST])('leaves the numbers that it would confirm in sight, at %o', (size) => {
    const player = new Player(size, { over: demoScene() }).keys(' ');
    for (let set = 0; player.scene.session().stage.kind !== 'all-done'; set++) {
      expect(set).toBeLessThan(60);
      player.keys(' ').wait(300);
      if (player.scene.session().stage.kind === 'all-done') break;
      player.keys(' ').wait(20);
    }
    player.keys('u').wait(20).keys(' ').wait(0.5);
    player.store.key({ kind: 'named', name: 'space' });
    const names = player.scene.session().exercises.map(({ prescribed }) => prescribed.name);
    const seen = player.screen();
    expect(seen).toContain('The last set was put down just');
    expect(seen).toContain(`${names[0]} · `);
    for (const name of names) {
      if (!seen.includes('↓ more')) expect(seen).toContain(`${name} · `);
    }
  });
});

describe('numbers', () => {
  it('typed while the rest runs amend the set that was put down', () => {
    const player = new Player().atFirstSet().keys('  ').wait(30).keys('8<enter>');
    expect(player.sets(0)).toBe('8@-');
    expect(player.screen()).toContain('saved: 8 reps');
  });

  it('typed before the bar is put down are saved with it', () => {
    const player = new Player().atFirstSet().keys(' 4<tab>0 ');
    expect(player.sets(0)).toBe('4@0');
  });

  it('typed and not entered are saved when the next set is started', () => {
    const player = new Player().atFirstSet().keys('  5').wait(190).keys(' ');
    expect(player.sets(0)).toBe('5@-');
  });

  it('typed in a cluster and not entered are saved when the next mini-set starts by itself', () => {
    const player = new Player().atCluster().keys(' ').wait(40).keys(' 12').wait(11);
    expect(player.sets(2)).toBe('12@-');
    expect(player.screen()).toMatch(/LIFT .*mini-set 1 of 4/);
  });

  it('end the cluster when a mini-set has fewer reps than the first', () => {
    const player = new Player().atCluster().keys(' ').wait(40).keys(' ');
    player.wait(18).keys(' ').wait(18).keys(' 3<enter>');
    expect(player.sets(2)).toBe('14@- 4@- 3@-');
    expect(player.screen()).toContain('Cluster done: fewer reps.');
  });

  it('corrected late let the cluster go on', () => {
    const player = new Player().atCluster().keys(' ').wait(40).keys(' ');
    player.wait(18).keys(' ').wait(18).keys(' 3<enter>').keys('4<enter>');
    expect(player.screen()).toContain('mini-set 3 of 4');
  });

  it.each([
    ['99 reps', '99<enter>', 'A set cannot have 99 reps'],
    ['a letter', 'j', 'j does nothing here'],
  ])('that make no sense are refused in a sentence: %s', (_, keys, sentence) => {
    const player = new Player().atFirstSet().keys('  ').keys(keys);
    expect(player.screen()).toContain(sentence);
    expect(player.sets(0)).toBe('7@-');
  });

  it('of the load are typed with a point or a comma, and stepped by what can be made', () => {
    const player = new Player().atFirstSet().keys('  <tab><tab>77,5<enter>');
    expect(player.screen()).toMatch(/77\.5 +kg/);
    player.keys('<left><up><enter>');
    expect(player.screen()).toMatch(/80 +kg/);
  });
});

describe('numbers typed and not yet saved', () => {
  // At a rest after the first set, whose seven reps were four.
  const typed = () => new Player().atFirstSet().keys('  4');

  it.each(['c', 'm', 'w', 'x', 'k', 'g', 'f', 's'])('are saved when %s leads away', (key) => {
    expect(typed().keys(key).sets(0)).toBe('4@-');
  });

  it('are saved when the lifter leaves', () => {
    const player = typed().keys('q');
    expect([player.sets(0), player.left]).toEqual(['4@-', [0]]);
  });

  it('are saved when a finger opens all that can be done', () => {
    const player = new Player(undefined, { settings: { taps: true } }).atFirstSet().keys('  4');
    expect(player.tap(10, 5).sets(0)).toBe('4@-');
  });

  it('are saved once with the rep that failed', () => {
    const player = typed().keys('z');
    expect(player.sets(0)).toBe('4@0');
    expect(player.keys('u').sets(0)).toBe('4@-');
  });

  it('are gone only by undo and escape', () => {
    for (const key of ['u', '<esc>']) expect(typed().keys(`${key}x`).sets(0)).not.toContain('4@');
  });

  it('stay where nothing leads away, and no key leads away from what is no number', () => {
    expect(typed().keys('+').screen()).toContain('‹4› reps');
    const odd = typed().keys('<right><right>.x');
    expect(odd.screen()).toContain('is not a load');
  });
});
