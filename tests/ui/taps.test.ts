import { describe, expect, it } from 'vitest';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';

const SIZES = [
  ['34x16', PHONE],
  ['80x24', LAPTOP],
  ['120x40', WIDE],
] as const;

/** Where a word stands on the screen, counted from 1. */
function spotOf(player: Player, word: string): [column: number, row: number] {
  const rows = player.screen().split('\n');
  const row = rows.findLastIndex((text) => text.includes(word));
  return [(rows[row] ?? '').indexOf(word) + 1, row + 1];
}

const tap = (player: Player, word: string) => player.tap(...spotOf(player, word));

describe.each(SIZES)('taps at %s', (_, size) => {
  const resting = () => {
    const player = new Player(size, { settings: { taps: true } });
    tap(player, 'BEGIN');
    player.keys('s');
    tap(player, 'LIFT');
    player.wait(2);
    tap(player, 'DOWN');
    return player;
  };

  it('begin, lift and put down', () => {
    expect(resting().sets(0)).toBe('7@-');
  });

  it('plus, minus and undo', () => {
    const player = resting();
    tap(player, '+');
    expect(player.screen()).toContain('‹8› reps');
    tap(player, '−');
    tap(player, '−');
    expect(player.screen()).toContain('‹6› reps');
    tap(player, 'UNDO');
    expect(player.screen()).toContain('‹7› reps');
    tap(player, 'UNDO');
    expect(player.sets(0)).toBe('');
  });

  it('need targets of two rows and eight columns at least', () => {
    const player = resting();
    const rows = player.screen().split('\n');
    const box = rows.at(-2) ?? '';
    const widths = [...box.matchAll(/│[^│]*│/g)].map(([text]) => text.length);
    expect(widths.length).toBe(4);
    for (const width of widths) expect(width).toBeGreaterThanOrEqual(8);
    for (const row of [size.rows - 2, size.rows - 1, size.rows]) {
      const again = resting();
      const [column] = spotOf(again, 'UNDO');
      expect(again.tap(column, row).sets(0)).toBe('');
    }
  });

  it('anywhere else change nothing, and open the list of all that can be done', () => {
    const player = resting();
    player.tap(10, 4);
    expect(player.sets(0)).toBe('7@-');
    expect(player.screen()).toContain('What can be done now');
    // Down to the pause, with the finger.
    for (let tries = 0; !/▸ pause/.test(player.screen()) && tries < 30; tries += 1)
      tap(player, '↓');
    tap(player, 'CHOOSE');
    expect(player.screen()).toContain('PAUSED');
  });

  it('reach the reserve, the load, pain, an offer and the end of a cluster', () => {
    const player = resting().tap(10, 4);
    const seen = new Set<string>();
    for (let tries = 0; tries < 40; tries += 1) {
      seen.add(
        /▸ ([a-z, ]+?) {2,}|▸ ([a-z, ]+)$/m.exec(player.screen())?.slice(1).find(Boolean) ?? '',
      );
      tap(player, '↓');
    }
    for (const act of [
      'next number',
      'change the load',
      'mark pain, note',
      'next rep failed',
      'pause or go on',
    ])
      expect([...seen]).toContain(act);
  });
});

it('taps do nothing while they are switched off', () => {
  const player = new Player(LAPTOP).atFirstSet();
  player.tap(5, 23);
  expect(player.screen()).toContain('READY');
});
