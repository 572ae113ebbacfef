import { describe, expect, it } from 'vitest';
import { expectedText } from '../../src/ui/plan-words.ts';

describe('what sets are likely to bring, in words', () => {
  it('is reps and odds set by set, odds to five percent', () => {
    const sets = [
      { reps: 8.4, odds: 0.78 },
      { reps: 6.6, odds: 0.62 },
    ];
    expect(expectedText(sets)).toBe('Likely 8 and 7 reps; the aims with odds of 80 and 60 %.');
  });

  it('never promises, and never rules out', () => {
    expect(expectedText([{ reps: 12, odds: 0.999 }])).toBe(
      'Likely 12 reps; the aim with odds of 95 %.',
    );
    expect(expectedText([{ reps: -1, odds: 0.001 }])).toBe(
      'Likely 0 reps; the aim with odds of 5 %.',
    );
  });
});
