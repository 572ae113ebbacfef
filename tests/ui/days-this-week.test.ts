import { describe, expect, it, vi } from 'vitest';
import { Player, WIDE } from './player.ts';
import { type Scene, scene } from './scene.ts';

vi.setConfig({ testTimeout: 60_000 });

const day = (name: string, lifts: readonly string[]) =>
  `  - name: ${name}\n    exercises:\n${lifts
    .map((lift) => `      - {lift: ${lift}, sets: 3, reps: 6-10, start: 40}\n`)
    .join('')}`;

/** Three days; the squat of C is that of A, the press and the row are those of B alone. */
const PROGRAM = `name: Three
unit: kg
aim: maintain
days_per_week: 3
days:
${day('A', ['back-squat', 'bench-press'])}${day('B', ['back-squat'])}${day('C', ['overhead-press', 'barbell-row'])}`;

const sets = (kg: number) => `${kg}x8@2 ${kg}x8@2 ${kg}x8@2`;
/** Today is a Wednesday; A was trained on Monday. */
const made = (): Scene =>
  scene({ program: PROGRAM, past: [{ ago: 2, day: 'A', sets: [sets(40), sets(40)] }] });
const player = (over: Scene) => new Player(WIDE, { over });
const due = (over: Scene) => over.coach.today().prescription.day;

describe('a week with fewer days than the program has', () => {
  it('is said on the preview, and taken back', () => {
    const over = made();
    expect(due(over)).toBe('B');
    const at = player(over).keys('j<up> ');
    expect(at.screen()).toContain('[ ] Wednesday');
    expect(at.screen()).not.toContain('Tuesday');
    at.keys('<down> ');
    expect(at.screen()).toContain('This week on Wednesday. u takes it back.');
    expect(at.screen()).toContain('[x] Wednesday');
    at.keys('u');
    expect(at.screen()).toContain('[ ] Wednesday');
    expect(due(over.again())).toBe('B');
  });

  it('begins with what it lacks most, says what waits, and goes by the program the week after', () => {
    const over = made();
    player(over).keys('j<up> <down> ');
    const later = over.again();
    // The squat was trained on Monday; the press and the row were not.
    expect(due(later)).toBe('C');
    expect(player(later).screen().replace(/\s+/g, ' ')).toContain(
      'This week there is time on Wednesday: C now, for what the week lacks most; B waits for another week.',
    );
    over.clock.set(over.clock.read().wall + 7 * 24 * 3600 * 1000);
    expect(due(over.again())).toBe('B');
  });

  it('with days enough goes by the program', () => {
    const over = made();
    player(over).keys('j<up> <down> <down><down> ');
    expect(due(over.again())).toBe('B');
  });

  it('goes by the program again once that is said', () => {
    const over = made();
    const at = player(over).keys('j<up> <down> ');
    at.keys('<up> ');
    expect(at.screen()).toContain('This week as the program says.');
    expect(due(over.again())).toBe('B');
  });
});
